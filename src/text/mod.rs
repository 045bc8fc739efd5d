//! A quote for a person at a table: what was ordered, one block an opening, and what it comes to.
//!
//! Always holds: attributes of the plant are not shown; what is not known is said to be not known; an opening that is
//! not included is shown and marked.

mod checked;
pub(crate) mod chosen;
mod completed;
mod explained;
mod header;
mod measured;
mod notices;
mod opening;
mod options;
mod page;
mod prices;
mod rooms;
mod rules;
mod sale;
mod totals;
mod why;

pub(crate) use checked::checked;
pub(crate) use explained::explained;
pub(crate) use options::options;
pub(crate) use page::Page;

use crate::quote::work::Quote;

/// The quote as text; `why` is the tag of the opening whose price is explained.
pub(crate) fn quote(quote: &Quote<'_>, why: Option<&str>) -> String {
    let mut page = Page::default();
    header::write(&mut page, quote);
    let shared = notices::Shared::of(quote);
    for unit in &quote.units {
        let explained = why == Some(unit.opening.tag.as_str());
        opening::write(&mut page, quote, unit, &shared, explained);
    }
    rooms::write(&mut page, quote);
    notices::write_shared(&mut page, quote, &shared);
    totals::write(&mut page, quote);
    page.into_text()
}
