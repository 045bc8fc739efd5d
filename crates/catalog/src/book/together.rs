//! A book and its catalog together: every entry belongs to an item, and every item has an entry.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{Amount, AmountKind, Catalog, Id};

use super::raw::RawBook;
use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};

/// Whether the book is for this catalog; a finding when it says another one.
pub(super) fn is_for(raw: &RawBook, catalog: &Catalog, findings: &Findings) -> bool {
    let Some(header) = &raw.header else { return true };
    let id = &catalog.declarations().id;
    if header.catalog.text == id.as_str() {
        return true;
    }
    let message = format!(
        "book `{}` is for catalog `{}`, not for `{id}`",
        header.head.id, header.catalog.text
    );
    let finding = Finding::error("BOOK_FOR_OTHER_CATALOG", message).at(header.catalog.place.clone());
    findings.push(finding.with_help(format!("use a book of `{id}`, or write catalog = \"{id}\"")));
    false
}

/// Says that an entry of the book belongs to no item. `what` is "amount", "sheet" or "grid".
pub(super) fn without_item(what: &str, id: &str, place: Place, catalog: &Catalog) -> Finding {
    let items = catalog.declarations().items.values();
    let known: BTreeSet<&str> = items
        .filter_map(|item| match (&item.amount, what) {
            (AmountKind::Grid { grid, .. }, "grid") => Some(grid.as_str()),
            (AmountKind::By(_), "sheet") | (AmountKind::Flat | AmountKind::Percent(_), "amount") => {
                Some(item.id.as_str())
            }
            _ => None,
        })
        .collect();
    let message = if what == "grid" {
        format!("grid `{id}` belongs to nothing: no price item of the catalog uses it")
    } else {
        format!("{what} of `{id}` belongs to nothing: the catalog has no such price item")
    };
    let help = match nearest(id, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => "take it out; no price item of the catalog takes one".to_owned(),
        None => format!("there are {}", quoted_list(known.iter().copied())),
    };
    Finding::error("AMOUNT_WITHOUT_ITEM", message)
        .at(place)
        .with_help(help)
}

/// Every item has an entry. One that is given in the wrong way has a finding already. `amounts` is `None` when the amounts file could not be read.
pub(super) fn nothing_is_left_out(
    raw: &RawBook,
    catalog: &Catalog,
    amounts: Option<&BTreeMap<Id, Option<Amount>>>,
    findings: &Findings,
) {
    // An entry that is nearly of this item, and of no other, is a slip that has its finding already.
    let items = &catalog.declarations().items;
    let is_slip = |given: &str, id: &Id| {
        items.values().all(|item| item.id.as_str() != given) && nearest(given, [id.as_str()]).is_some()
    };
    let has_slip = |id: &Id| {
        amounts.is_some_and(|amounts| amounts.keys().any(|given| is_slip(given.as_str(), id)))
            || raw.sheets.iter().any(|sheet| is_slip(&sheet.item.text, id))
    };
    let has_grid_slip = |grid: &Id| {
        let grids = || {
            items.values().filter_map(|item| match &item.amount {
                AmountKind::Grid { grid, .. } => Some(grid),
                _ => None,
            })
        };
        let mut given = raw.grids.iter().map(|grid| &grid.head.id);
        given.any(|given| {
            grids().all(|known| known != given) && nearest(given.as_str(), [grid.as_str()]).is_some()
        })
    };
    let mut said: BTreeSet<&Id> = BTreeSet::new();
    for item in catalog.declarations().items.values() {
        let id = &item.id;
        let (is_there, help) = match &item.amount {
            AmountKind::Flat | AmountKind::Percent(_) => {
                let is_there = amounts.is_none_or(|amounts| amounts.contains_key(id));
                let example = if item.amount == AmountKind::Flat {
                    "12.50"
                } else {
                    "15 %"
                };
                (
                    is_there,
                    format!("add a row such as `{id},{example}` to the amounts file"),
                )
            }
            AmountKind::By(_) => (
                raw.sheets.iter().any(|sheet| sheet.item.text == id.as_str()) || raw.unread.contains(id),
                format!("add a `[[sheet]]` with item = \"{id}\""),
            ),
            AmountKind::Grid { grid, .. } => (
                raw.grids.iter().any(|raw| raw.head.id == *grid) || raw.unread.contains(grid),
                format!("add a `[[grid]]` with id = \"{grid}\""),
            ),
        };
        let is_elsewhere = raw.sheets.iter().any(|sheet| sheet.item.text == id.as_str())
            || amounts.is_some_and(|amounts| amounts.contains_key(id));
        let is_slip = match &item.amount {
            AmountKind::Grid { grid, .. } => has_grid_slip(grid),
            _ => has_slip(id),
        };
        if !is_there && !is_elsewhere && !is_slip && said.insert(id) {
            let message = format!("price item `{id}` has no amount in the book");
            let finding = Finding::error("ITEM_WITHOUT_AMOUNT", message).at(raw.place.clone());
            findings.push(finding.with_help(help));
        }
    }
}
