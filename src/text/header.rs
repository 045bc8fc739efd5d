//! The head of a quote: the house, the day, and which revisions of what were used.

use astragal_model::Revision;

use crate::quote::work::{Quote, Used};
use crate::text::page::{Page, Tone};

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    let order = quote.order;
    page.rule("=");
    if !order.label.is_empty() && order.label != order.id {
        page.heading(0, Tone::Strong, &order.label);
    }
    day(page, quote);
    for used in quote.used {
        page.blank();
        catalog(page, used);
    }
}

/// The order, the day and the currency.
pub(super) fn day(page: &mut Page, quote: &Quote<'_>) {
    let order = quote.order;
    let given = if quote.date_given { " (by --date)" } else { "" };
    let text = format!(
        "Order {}, judged as of {}{given}, prices in {}",
        order.id, order.date, order.currency
    );
    page.text(0, &text);
}

/// The catalog, its price book and policy, each with its revision.
pub(super) fn catalog(page: &mut Page, used: &Used<'_>) {
    let declarations = used.catalog.declarations();
    let mut line = |head: &str, label: &str, id: &str, revision: Revision| {
        let named = if label == id {
            id.to_owned()
        } else {
            format!("{label} ({id})")
        };
        let right = format!("revision {}", revision.short());
        page.spread(0, Tone::Plain, &format!("{head}{named}"), &right);
    };
    line(
        "Catalog: ",
        &declarations.label,
        used.id.as_str(),
        used.catalog.revision(),
    );
    line(
        "Price book: ",
        &used.book.label,
        used.book.id.as_str(),
        used.book.revision(),
    );
    if let Some(policy) = used.policy {
        let revision = Revision::of_policy(&policy.terms, used.catalog);
        line(
            "Dealer policy: ",
            &policy.terms.label,
            policy.terms.id.as_str(),
            revision,
        );
    }
}
