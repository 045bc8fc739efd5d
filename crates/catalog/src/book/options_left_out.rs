//! Warns of options without a row in the sheet of an item that goes by their attribute: a unit with one has no price.
//!
//! With a new option `forest` of `exterior`, and a sheet of `exterior,amount` that ends with `black`, the warning names
//! `forest`. Looked at are items by one attribute whose condition does not read that attribute, since a condition may
//! leave the option out on purpose; an option that was retired before the book begins needs no row.
//!
//! Cost: options x rows of such a sheet.

use astragal_model::{AmountKind, AttributeIndex, Book, Catalog, Id, PriceItem, SheetRow, Subject};

use super::raw::RawSheet;
use crate::finding::{Finding, Findings};

/// Warns of every option that has no amount; one warning a sheet.
pub(super) fn warn(sheets: &[RawSheet], book: &Book, catalog: &Catalog, findings: &Findings) {
    let mut said: Vec<&Id> = Vec::new();
    for item in catalog.declarations().items.values() {
        let AmountKind::By(by) = &item.amount else {
            continue;
        };
        let ([attribute], Some(rows)) = (by.as_slice(), book.sheets.get(&item.id)) else {
            continue;
        };
        if said.contains(&&item.id) || is_conditional(item, *attribute) {
            continue;
        }
        let left_out = left_out(catalog, *attribute, rows, book);
        let sheet = sheets.iter().find(|sheet| sheet.item.text == item.id.as_str());
        let (Some(first), Some(sheet)) = (left_out.first(), sheet) else {
            continue;
        };
        said.push(&item.id);
        let named: Vec<String> = left_out.iter().map(|option| format!("`{option}`")).collect();
        let name = catalog.name_of(Subject::Attribute(*attribute));
        let message = format!(
            "the sheet of `{}` has no row for {} of `{name}`: a unit with that has no price",
            item.id,
            named.join(", ")
        );
        findings.push(
            Finding::warning("OPTION_WITHOUT_AMOUNT", message)
                .at(sheet.table.place.clone())
                .with_help(format!(
                    "add a row such as `{first},0.00` to {}",
                    sheet.table.text
                )),
        );
    }
}

/// Whether an item's condition reads the attribute, and so may leave some of its options out.
fn is_conditional(item: &PriceItem, attribute: AttributeIndex) -> bool {
    item.when.as_ref().is_some_and(|when| {
        let reads = when.reads();
        reads.contains(&Subject::Attribute(attribute))
            || reads.iter().any(|subject| matches!(subject, Subject::Figure(_)))
    })
}

/// The options in force with the book that no row covers, in catalog order.
fn left_out<'a>(
    catalog: &'a Catalog,
    attribute: AttributeIndex,
    rows: &[SheetRow],
    book: &Book,
) -> Vec<&'a Id> {
    let options = &catalog.declarations().attributes.at(attribute).options;
    let is_covered = |option: &Id| {
        rows.iter().any(|row| {
            let cell = row.options.first().and_then(Option::as_ref);
            cell.is_none_or(|set| set.contains(option))
        })
    };
    let is_gone =
        |until: Option<astragal_model::Date>| until.zip(book.from).is_some_and(|(until, from)| until < from);
    options
        .iter()
        .filter(|option| !is_covered(&option.id) && !is_gone(option.validity.offered_until))
        .map(|option| &option.id)
        .collect()
}
