//! The amounts file of a book: one line an item, money or a percentage.

use std::collections::BTreeMap;

use astragal_model::{Amount, AmountKind, Id, Number, PriceItem};

use super::Reading;
use super::amount_text::{money, percentage};
use super::raw::given_twice;
use super::together::without_item;
use crate::finding::{Finding, Place};
use crate::nearest::{nearest, quoted_list};
use crate::sheet::{ColumnId, Row, Sheet};
use crate::typed::{PlacedText, Reports};

/// The amounts by item, `None` for one that could not be read; nothing when the whole file could not be.
pub(super) fn read(reading: &mut Reading<'_>, path: &PlacedText) -> Option<BTreeMap<Id, Option<Amount>>> {
    let sheet = reading.sheet(path)?;
    let mut reports = Reports::new(reading.findings);
    let columns = columns(&sheet, &["item", "amount"], &mut reports);
    let (Some(Some(item)), Some(Some(amount))) = (columns.first().copied(), columns.get(1).copied()) else {
        reports.finish();
        return None;
    };
    let mut amounts: BTreeMap<Id, (Option<Amount>, Place)> = BTreeMap::new();
    for row in sheet.rows() {
        let id = row.cell(item);
        if let Some((_, first)) = amounts.get(id) {
            reports.push(given_twice(id, row.place(item), first.clone()));
            continue;
        }
        match amount_of(reading, row, item, amount) {
            Ok(read) => {
                amounts.insert(Id::new(id), (Some(read), row.place(item)));
            }
            Err(finding) => {
                reports.push(*finding);
                if !id.is_empty() {
                    amounts.insert(Id::new(id), (None, row.place(item)));
                }
            }
        }
    }
    reports.finish();
    Some(
        amounts
            .into_iter()
            .map(|(id, (amount, _))| (id, amount))
            .collect(),
    )
}

fn amount_of(
    reading: &Reading<'_>,
    row: Row<'_>,
    item_column: ColumnId,
    amount_column: ColumnId,
) -> Result<Amount, Box<Finding>> {
    let id = row.cell(item_column);
    if id.is_empty() {
        let finding = Finding::error(
            "EMPTY_CELL",
            "found an empty cell, expected the id of a price item",
        );
        let finding = finding.at(row.place(item_column));
        return Err(Box::new(finding.with_help("name the item, or delete the row")));
    }
    let mut items = reading.catalog.declarations().items.values();
    let Some(item) = items.find(|item| item.id.as_str() == id) else {
        return Err(Box::new(without_item(
            "amount",
            id,
            row.place(item_column),
            reading.catalog,
        )));
    };
    let text = row.cell(amount_column);
    let read = match &item.amount {
        AmountKind::Flat => money(text).map(Amount::Money),
        AmountKind::Percent(_) => percentage(text).map(Amount::Percent),
        AmountKind::By(_) | AmountKind::Grid { .. } => {
            return Err(Box::new(wrong_kind(item, "an amount", row.place(item_column))));
        }
    };
    read.map_err(|(message, help)| {
        let (message, help) = match &item.amount {
            AmountKind::Flat if text.contains('%') => (
                format!("`{id}` is an amount of money, and `{text}` is a percentage"),
                "write the amount without `%`, or give the item `percent_of` in the catalog".to_owned(),
            ),
            AmountKind::Percent(_) if !text.contains('%') && !text.is_empty() => (
                format!("`{id}` is a percentage, and `{text}` has no `%`"),
                match Number::from_decimal(text) {
                    Some(number) if number > Number::from(0) && number < Number::from(1) => format!(
                        "a spreadsheet writes 15 % as 0.15: write it like `15 %`, or `{text} %` if it is that little"
                    ),
                    Some(_) => format!("write `{text} %`, or take `percent_of` out of the catalog"),
                    None => "write it like `15 %`".to_owned(),
                },
            ),
            _ => (message, help),
        };
        Box::new(
            Finding::error(amount_code(text), message)
                .at(row.place(amount_column))
                .with_help(help),
        )
    })
}

/// The code of a finding about the text of an amount.
pub(super) fn amount_code(text: &str) -> &'static str {
    let number = Number::from_decimal(text.trim_end_matches('%').trim());
    match number {
        _ if text.is_empty() => "EMPTY_CELL",
        Some(number) if number.abs() > super::amount_limit() => "AMOUNT_TOO_LARGE",
        _ => "BAD_AMOUNT",
    }
}

/// Says that an item takes its amount from something else.
pub(super) fn wrong_kind(item: &PriceItem, given: &str, place: Place) -> Finding {
    let (is, help) = match &item.amount {
        AmountKind::Flat => ("a flat amount", "give it a row in the amounts file".to_owned()),
        AmountKind::Percent(_) => (
            "a percentage",
            "give it a row in the amounts file, such as `15 %`".to_owned(),
        ),
        AmountKind::By(_) => (
            "an amount by options",
            format!("give it a `[[sheet]]` with item = \"{}\"", item.id),
        ),
        AmountKind::Grid { grid, .. } => (
            "an amount by size",
            format!("give it a `[[grid]]` with id = \"{grid}\""),
        ),
    };
    let message = format!("`{}` is given {given}; in the catalog it is {is}", item.id);
    Finding::error("WRONG_KIND_OF_AMOUNT", message)
        .at(place)
        .with_help(help)
}

/// Finds the columns of a sheet that must be there, and reports all others that are no remarks.
pub(super) fn columns(sheet: &Sheet, wanted: &[&str], reports: &mut Reports<'_>) -> Vec<Option<ColumnId>> {
    let spoken = || sheet.columns().filter(|(_, name)| !name.starts_with('#'));
    for (column, name) in spoken().filter(|(_, name)| !wanted.contains(name)) {
        let help = match nearest(name, wanted.iter().copied()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!(
                "columns are {}; one of remarks begins with `#`",
                quoted_list(wanted.iter().copied())
            ),
        };
        let finding = Finding::error("UNKNOWN_COLUMN", format!("unknown column `{name}`"));
        reports.push(finding.at(sheet.column_place(column)).with_help(help));
    }
    let find = |name: &&str| {
        let found = sheet.column(name);
        if found.is_none() {
            let finding = Finding::error("MISSING_COLUMN", format!("the sheet has no column `{name}`"));
            let help = format!("columns are {}", quoted_list(wanted.iter().copied()));
            reports.push(finding.at(sheet.header_place()).with_help(help));
        }
        found
    };
    wanted.iter().map(find).collect()
}
