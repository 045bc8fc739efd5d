//! Until when the buyer may cancel, in a sentence.

use astragal_trade::cooling_off::{
    APPLIES_ALSO, APPLIES_ALSO_BASIS, BUSINESS_DAYS, CoolingOff, DAYS_BASIS, NOT_COVERED, STATE_LAW,
};
use astragal_trade::{Fact, Truth};

use crate::quote::sale::{cooling, has_passed};
use crate::quote::work::Quote;
use crate::text::page::Page;

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    let Some(answer) = cooling(quote) else { return };
    page.blank();
    let sale = quote.order.sale;
    if sale.place.is_none() && sale.signed.is_none() {
        page.text(
            0,
            &format!(
                "Until when the buyer may cancel is not said: the order does not say where it is agreed to (`sold_at`) and when \
                 it is signed (`signed`). Ask; {STATE_LAW} ({DAYS_BASIS})."
            ),
        );
        return;
    }
    let passed = has_passed(quote, &answer) == Some(true);
    page.text(0, &sentence(&answer, passed));
    if passed {
        let date = quote.order.date;
        page.text(
            0,
            &format!("That day has passed: the order is judged as of {date}."),
        );
    }
    if answer.applies != Truth::No {
        page.text(
            0,
            &format!("The rule applies as well when {APPLIES_ALSO} ({APPLIES_ALSO_BASIS})."),
        );
        let cases: Vec<&str> = NOT_COVERED.iter().map(|(case, _)| *case).collect();
        page.text(
            0,
            &format!("The rule leaves a sale out when {}.", cases.join("; or when ")),
        );
    }
}

fn sentence(answer: &CoolingOff, passed: bool) -> String {
    let wants: Vec<&str> = answer.missing.iter().map(|fact| wanted(*fact)).collect();
    match (&answer.applies, answer.last_day) {
        (Truth::No, _) => {
            format!("Check: by its place the federal cooling-off rule is not for this sale; {STATE_LAW}.")
        }
        (Truth::Yes, Some(last)) => {
            let may = if passed { "could" } else { "may" };
            format!("Check: the buyer {may} cancel {last} ({DAYS_BASIS}).")
        }
        (_, Some(last)) => format!(
            "Whether the buyer may cancel waits for: {}. If so, {last} ({DAYS_BASIS}).",
            wants.join(", ")
        ),
        (_, None) => format!(
            "Whether and until when the buyer may cancel waits for: {}. Where the rule applies, until midnight of business \
             day {BUSINESS_DAYS} after signing; {STATE_LAW} ({DAYS_BASIS}).",
            wants.join(", ")
        ),
    }
}

/// What is known of the price is before tax and order charges, and is too little to tell.
fn wanted(fact: Fact) -> &'static str {
    match fact {
        Fact::Price => "price of the sale with tax and all charges",
        fact => fact.label(),
    }
}
