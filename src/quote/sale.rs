//! Until when the buyer may cancel, by the federal rule on sales away from the seller's shop.
//!
//! Always holds: asked of orders in US dollars alone, since the rule is one of the United States; what is not known is said; the
//! amount is that of the openings that count, before tax and order charges, and some may have no total yet; it is a lower bound.
//! So the price says that the rule is for a sale where it is enough, and never that it is not.

use astragal_model::Number;
use astragal_trade::cooling_off::{
    CoolingOff, PRICE_AT_HOME_LEAST, PRICE_ELSEWHERE_LEAST, PlaceOfSale, Sale, cooling_off,
};

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
        price: enough(quote),
    };
    cooling_off(&sale).ok()
}

/// Whether the last day lies before the day as of which the order is judged; `None` where no last day is known. No clock is read.
pub(crate) fn has_passed(quote: &Quote<'_>, answer: &CoolingOff) -> Option<bool> {
    answer.last_day.map(|last| last.day < quote.order.date)
}

/// What is known of the price where that is enough for the place, or for every place where nobody says which.
fn enough(quote: &Quote<'_>) -> Option<Number> {
    let least = match quote.order.sale.place {
        Some(PlaceOfSale::BuyersHome) => PRICE_AT_HOME_LEAST,
        _ => PRICE_ELSEWHERE_LEAST.max(PRICE_AT_HOME_LEAST),
    };
    let known = quote.totals().known?.amount().clone();
    (known >= Number::from(least)).then_some(known)
}
