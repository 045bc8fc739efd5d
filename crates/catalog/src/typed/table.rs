//! Tables of a catalog: a sheet becomes rows over the subjects that its columns name.
//!
//! The sheet
//!
//! ```text
//! exterior, unit_width, thickness
//! white   , ..36      , 3/32
//! dark    , 36<..72   , 1/8
//! ```
//!
//! is a figure's table of two rows, the value in the column `thickness`. Rules have lists without a value, or a
//! matrix of two subjects.
//!
//! Always holds: a table that is returned has a row; every cell has the type of its column; a figure's table gives one
//! key one value, and under `only` no two of its rows can match at once. Otherwise findings say why there is none.
//! Cost: O(cells), and what [`disjoint`] takes.

mod cells;
mod columns;
mod disjoint;
mod matrix;
mod reports;
mod rows;

use std::sync::Arc;

use astragal_model::{PartIndex, Row, RowMatch, Subject, Table, Value, ValueType};

pub(crate) use cells::CellText;
use columns::{Columns, KeyedBy, all_columns, column_named, key_columns, subjects};
use matrix::{Side, matrix_rows};
pub(crate) use reports::Reports;
use rows::plain_rows;
pub(crate) use rows::{Key, ValueColumn, valued_rows};

use crate::finding::Finding;
use crate::sheet::Sheet;
use crate::typed::{Names, PlacedText, Scope, Type};

/// What to do about rows of a figure's table that meet.
const MEETING_HELP: &str =
    "narrow one of them, or say which counts: `match = \"first\"`, `\"least\"` or `\"greatest\"`";

/// A rule's list: every column is a subject. One table an entry of `parts`.
pub(crate) fn list_table(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
) -> Option<Vec<Table>> {
    if parts.is_empty() {
        return Some(Vec::new());
    }
    let columns = all_columns(sheet, scope, parts, None);
    let rows = plain_rows(sheet, &keys(&columns.keys), scope.names, scope.findings);
    if !columns.is_whole {
        return None;
    }
    Some(tables(&columns.keys, parts, rows?))
}

/// A rule's matrix: `down` names the subject of the first column, `across` that of the first row.
pub(crate) fn matrix_table(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
    down: &PlacedText,
    across: &PlacedText,
) -> Option<Vec<Table>> {
    if parts.is_empty() {
        return Some(Vec::new());
    }
    let (down_side, across_side) = (subjects(down, scope, parts), subjects(across, scope, parts));
    let ((down_subjects, down_type), (across_subjects, across_type)) = (down_side?, across_side?);
    let both = || down_subjects.iter().zip(&across_subjects);
    if both().any(|(down, across)| down == across) {
        let message = format!("`down` and `across` are both `{}`", down.text);
        let finding = Finding::error("DUPLICATE_COLUMN", message).at(across.place.clone());
        scope
            .findings
            .push(finding.with_help("name two different subjects"));
        return None;
    }
    let down_side = Side {
        name: &down.text,
        of: &down_type,
    };
    let across_side = Side {
        name: &across.text,
        of: &across_type,
    };
    let rows = Arc::new(matrix_rows(
        sheet,
        &down_side,
        &across_side,
        scope.names,
        scope.findings,
    )?);
    let table = |(down, across): (&Subject, &Subject)| Table {
        columns: vec![*down, *across],
        rows: Arc::clone(&rows),
    };
    Some(both().map(table).collect())
}

/// A figure's table: `keys` are its key columns (all but the value's when left out), `value` its value column.
pub(crate) fn figure_table(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
    keyed_by: Option<&[PlacedText]>,
    value: &PlacedText,
    value_type: ValueType,
    row_match: RowMatch,
) -> Option<Vec<Table>> {
    if parts.is_empty() {
        return Some(Vec::new());
    }
    if !value_type.is_ordered() {
        let message = format!(
            "the values of a table are numbers, lengths, areas or dates, not {}",
            value_type.words()
        );
        let finding = Finding::error("WRONG_TYPE", message).at(value.place.clone());
        scope.findings.push(finding.with_help("use a formula"));
        return None;
    }
    let value_column = column_named(sheet, value, scope);
    let columns = match keyed_by {
        Some(keyed_by) => key_columns(sheet, scope, parts, keyed_by),
        // Without a value column any other may be it, misspelt.
        None => all_columns(sheet, scope, parts, Some(value_column?)),
    };
    let value_column = value_column?;
    if columns.keys.iter().any(|key| key.column == value_column) {
        let message = format!("the column `{}` cannot be both a key and the value", value.text);
        let finding = Finding::error("DUPLICATE_COLUMN", message).at(value.place.clone());
        scope.findings.push(finding.with_help("take it out of `keys`"));
        return None;
    }
    let of = Type::plain(value_type);
    let read = |text: &CellText<'_>| figure_value(text, &of, scope.names);
    let column = ValueColumn {
        column: value_column,
        read: &read,
        row_match,
        help: MEETING_HELP,
    };
    let rows = valued_rows_of(sheet, &columns, &column, scope)?;
    Some(tables(&columns.keys, parts, rows))
}

/// The rows when all columns are there; otherwise what is wrong with the cells of those that are.
fn valued_rows_of(
    sheet: &Sheet,
    columns: &Columns,
    value: &ValueColumn<'_>,
    scope: &Scope<'_>,
) -> Option<Vec<Row>> {
    let keys = keys(&columns.keys);
    if columns.is_whole {
        return valued_rows(sheet, &keys, value, scope.names, scope.findings);
    }
    // Rows that differ in a column which cannot be read would seem to meet: only the cells are looked at.
    let _ = rows::checked_cells(sheet, &keys, value, scope.names, scope.findings);
    None
}

/// The value of a row: one number, length, area or date.
fn figure_value(text: &CellText<'_>, of: &Type, names: &Names) -> Result<Value, Box<Finding>> {
    if !text.text.is_empty() {
        return text.value(text.text, &(0..text.text.len()), of, names);
    }
    let message = format!("found an empty cell, expected {}", of.value_type.words());
    let finding = Finding::error("EMPTY_CELL", message).at((text.place)());
    Err(Box::new(finding.with_help(
        "write the value, or delete the row: without a row the figure has no value",
    )))
}

fn keys(columns: &[KeyedBy]) -> Vec<Key<'_>> {
    let key = |column: &'_ KeyedBy| column.column;
    columns
        .iter()
        .map(|column| Key {
            column: key(column),
            of: &column.of,
        })
        .collect()
}

fn tables(columns: &[KeyedBy], parts: &[Option<PartIndex>], rows: Vec<Row>) -> Vec<Table> {
    let rows = Arc::new(rows);
    let of_part = |part: usize| Table {
        columns: columns
            .iter()
            .filter_map(|column| column.subjects.get(part).copied())
            .collect(),
        rows: Arc::clone(&rows),
    };
    (0..parts.len()).map(of_part).collect()
}

#[cfg(test)]
mod tests;
