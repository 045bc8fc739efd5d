//! Draws tables: two attributes against each other as marks, everything else as rows that read well.
//!
//! The marks of a pair are worked out from the cells: in an allowed table a pair goes together when a row matches it, in a
//! forbidden one when none does. So `*`, families and sets need no second reading.
//! LIMIT: a drawing of more than [`MARKS_MAX`] marks is printed as rows.

use std::collections::BTreeSet;

use astragal_model::{Attribute, Cell, Interval, OptionEntry, Row, Subject, Table, Value};

use super::pages::{Drawing, Marks};
use super::reading::Reading;
use super::words::Words;

/// LIMIT: how many marks are drawn for one table.
const MARKS_MAX: usize = 10_000;

/// How a rule's table is drawn.
pub(crate) fn drawing(reading: Reading<'_>, words: Words<'_>, table: &Table, is_allowed: bool) -> Drawing {
    if let [Subject::Attribute(down), Subject::Attribute(across)] = table.columns.as_slice() {
        let attributes = &reading.declarations().attributes;
        let [down, across] = [*down, *across].map(|index| (Subject::Attribute(index), attributes.at(index)));
        if down.1.options.len().saturating_mul(across.1.options.len()) <= MARKS_MAX {
            return Drawing::Marks(marks(words, table, down, across, is_allowed));
        }
    }
    let (columns, rows) = list(words, table);
    Drawing::List { columns, rows }
}

/// The columns and rows of a table as a person reads them; the values of a figure's table come last.
pub(crate) fn list(words: Words<'_>, table: &Table) -> (Vec<String>, Vec<Vec<String>>) {
    let columns = table.columns.iter().map(|subject| words.label(*subject));
    let row = |row: &Row| -> Vec<String> {
        let cells = table.columns.iter().zip(&row.cells);
        let cells = cells.map(|(subject, cell)| self::cell(words, *subject, cell));
        cells
            .chain(row.value.iter().map(|value| words.value(value, None)))
            .collect()
    };
    (columns.collect(), table.rows.iter().map(row).collect())
}

fn marks(
    words: Words<'_>,
    table: &Table,
    (down_subject, down): (Subject, &Attribute),
    (across_subject, across): (Subject, &Attribute),
    is_allowed: bool,
) -> Marks {
    let goes = |one: &OptionEntry, other: &OptionEntry| {
        let values = [&one.id, &other.id].map(|id| Value::Option(id.clone()));
        let matches = |row: &Row| {
            row.cells
                .iter()
                .zip(&values)
                .all(|(cell, value)| cell.admits(value))
        };
        table.rows.iter().any(matches) == is_allowed
    };
    Marks {
        down: words.label(down_subject),
        across: words.label(across_subject),
        columns: across.options.iter().map(|option| option.label.clone()).collect(),
        rows: down
            .options
            .iter()
            .map(|one| {
                let marks = across.options.iter().map(|other| goes(one, other)).collect();
                (one.label.clone(), marks)
            })
            .collect(),
    }
}

fn cell(words: Words<'_>, subject: Subject, cell: &Cell) -> String {
    match cell {
        Cell::Any => "any".to_owned(),
        Cell::OneOf(values) => one_of(words, subject, values),
        Cell::Within(intervals) => {
            let said = intervals.iter().map(|interval| within(words, subject, interval));
            said.collect::<Vec<_>>().join(" or ")
        }
    }
}

/// Options in the order of their attribute or fact, other values in their own.
fn one_of(words: Words<'_>, subject: Subject, values: &BTreeSet<Value>) -> String {
    let order = words.options(subject);
    let place = |value: &Value| match value {
        Value::Option(id) => order.iter().position(|known| known == id),
        _ => None,
    };
    let mut sorted: Vec<&Value> = values.iter().collect();
    sorted.sort_by_key(|value| place(value));
    let said = sorted.iter().map(|value| words.value(value, Some(subject)));
    said.collect::<Vec<_>>().join(" or ")
}

fn within(words: Words<'_>, subject: Subject, interval: &Interval) -> String {
    let say = |value: &Value| words.value(value, Some(subject));
    match (&interval.lower, &interval.upper) {
        (None, None) => "any".to_owned(),
        (None, Some(upper)) => format!("up to {}", say(upper)),
        (Some(lower), None) if lower.open => format!("over {}", say(&lower.value)),
        (Some(lower), None) => format!("{} or more", say(&lower.value)),
        (Some(lower), Some(upper)) if lower.open => {
            format!("over {} to {}", say(&lower.value), say(upper))
        }
        (Some(lower), Some(upper)) if lower.value == *upper => say(upper),
        (Some(lower), Some(upper)) => format!("{} to {}", say(&lower.value), say(upper)),
    }
}
