//! Until when the buyer may cancel, by the federal rule on sales away from the seller's shop.
//!
//! Always holds: asked of orders in US dollars alone, since the rule is one of the United States; what is not known is said; the
//! amount is that of the openings that count, before tax and order charges, and only where it is complete.

use astragal_model::Number;
use astragal_trade::cooling_off::{CoolingOff, Sale, cooling_off};

use crate::quote::work::Quote;

/// What the rule says of an order; `None` where it is not asked, or the day lies outside what is known.
pub(crate) fn cooling(quote: &Quote<'_>) -> Option<CoolingOff> {
    let order = quote.order;
    if order.currency.code() != "USD" {
        return None;
    }
    let sale = Sale {
        place: order.sale.place,
        signed: order.sale.signed,
        price: price(quote),
    };
    cooling_off(&sale).ok()
}

/// At least this is the price; tax and charges come on top. Credits alone make no price.
fn price(quote: &Quote<'_>) -> Option<Number> {
    let totals = quote.totals();
    let known = totals
        .known
        .as_ref()
        .filter(|_| totals.without_total.is_empty())?;
    let amount = known.amount().clone();
    (!amount.is_negative()).then_some(amount)
}
