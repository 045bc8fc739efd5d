//! Until when the buyer may cancel, by the federal rule on sales away from the seller's shop.
//!
//! Always holds: asked of orders in US dollars alone, since the rule is one of the United States; what is not known is said; the
//! amount is that of the openings that count, before tax and order charges; where some have no total yet, what is known counts
//! when it is enough already.

use astragal_model::Number;
use astragal_trade::cooling_off::{
    CoolingOff, PRICE_AT_HOME_LEAST, PRICE_ELSEWHERE_LEAST, Sale, cooling_off,
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
        price: price(quote),
    };
    cooling_off(&sale).ok()
}

/// Whether the last day lies before the day as of which the order is judged; `None` where no last day is known. No clock is read.
pub(crate) fn has_passed(quote: &Quote<'_>, answer: &CoolingOff) -> Option<bool> {
    answer.last_day.map(|last| last.day < quote.order.date)
}

/// What is known of the price, before tax and charges: all of it, or a part that is enough for every place already.
fn price(quote: &Quote<'_>) -> Option<Number> {
    let totals = quote.totals();
    let known = totals.known.as_ref()?.amount().clone();
    let is_enough = known >= Number::from(PRICE_ELSEWHERE_LEAST.max(PRICE_AT_HOME_LEAST));
    let is_whole = totals.without_total.is_empty() && !known.is_negative();
    (is_whole || is_enough).then_some(known)
}
