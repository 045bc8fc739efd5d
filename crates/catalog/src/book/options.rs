//! The sheet of an item by option: one amount for each set of options of one or more attributes.
//!
//! ```text
//! hardware_finish , amount
//! white|tan       , 0.00
//! metal           , 24.00
//! ```
//!
//! gives every option of the family `metal` 24.00. The columns are the attributes of the item's `by`, by their
//! names; those of the item's own part by their bare ones.

use astragal_model::{AmountKind, AttributeIndex, Cell, Id, PriceItem, RowMatch, SheetRow, Subject, Value};

use super::Reading;
use super::amount_text::money;
use super::amounts::{amount_code, columns, wrong_kind};
use super::raw::RawSheet;
use super::together::without_item;
use crate::finding::Finding;
use crate::typed::{CellText, Key, Names, Reports, Type, ValueColumn, valued_rows};

/// The rows of a sheet; `None` means that findings say why.
pub(super) fn read(reading: &mut Reading<'_>, raw: &RawSheet) -> Option<Vec<SheetRow>> {
    let catalog = reading.catalog;
    let mut items = catalog.declarations().items.values();
    let Some(item) = items.find(|item| item.id.as_str() == raw.item.text) else {
        let finding = without_item("sheet", &raw.item.text, raw.item.place.clone(), catalog);
        reading.findings.push(finding);
        return None;
    };
    let AmountKind::By(attributes) = &item.amount else {
        let finding = wrong_kind(item, "a sheet by options", raw.item.place.clone());
        reading.findings.push(finding);
        return None;
    };
    let sheet = reading.sheet(&raw.table)?;
    let names = Names::of_catalog(catalog.declarations());
    let headers: Vec<String> = attributes
        .iter()
        .map(|attribute| header(reading, item, *attribute))
        .collect();
    let wanted: Vec<&str> = headers.iter().map(String::as_str).chain(["amount"]).collect();
    let mut reports = Reports::new(reading.findings);
    let found = columns(&sheet, &wanted, &mut reports);
    if !reports.finish() {
        return None;
    }
    let (amount, keys) = found.split_last()?;
    let types: Vec<Type> = attributes
        .iter()
        .map(|attribute| names.type_of(Subject::Attribute(*attribute)))
        .collect::<Option<_>>()?;
    let keys: Vec<Key<'_>> = keys
        .iter()
        .zip(&types)
        .filter_map(|(column, of)| {
            Some(Key {
                column: (*column)?,
                of,
            })
        })
        .collect();
    let value = ValueColumn {
        column: (*amount)?,
        read: &amount_cell,
        row_match: RowMatch::Only,
        help: "narrow one of them, so that every unit has one row",
    };
    let rows = valued_rows(&sheet, &keys, &value, &names, reading.findings)?;
    rows.into_iter().map(sheet_row).collect()
}

/// What the column of an attribute is called: bare, unless it is of another part than the item.
fn header(reading: &Reading<'_>, item: &PriceItem, attribute: AttributeIndex) -> String {
    let declarations = reading.catalog.declarations();
    match declarations.attributes.get(attribute) {
        Some(found) if found.part.is_none() || found.part == item.part => found.id.to_string(),
        _ => reading.catalog.name_of(Subject::Attribute(attribute)),
    }
}

/// The amount of a row.
fn amount_cell(text: &CellText<'_>) -> Result<Value, Box<Finding>> {
    money(text.text).map(Value::Number).map_err(|(message, help)| {
        let help = if text.text.is_empty() {
            "write the amount, 0 for nothing".to_owned()
        } else {
            help
        };
        Box::new(
            Finding::error(amount_code(text.text), message)
                .at((text.place)())
                .with_help(help),
        )
    })
}

fn sheet_row(row: astragal_model::Row) -> Option<SheetRow> {
    let options = row.cells.into_iter().map(|cell| match cell {
        Cell::OneOf(values) => {
            let ids = values.iter().filter_map(|value| match value {
                Value::Option(id) => Some(id.clone()),
                _ => None,
            });
            Some(ids.collect::<std::collections::BTreeSet<Id>>())
        }
        Cell::Any | Cell::Within(_) => None,
    });
    let amount = row.value?.magnitude()?.clone();
    Some(SheetRow {
        options: options.collect(),
        amount,
    })
}
