//! Tables of cases as text: one row a line, columns between bars, the first of them the row's name.

#![allow(dead_code, reason = "each test uses its part")]
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

use astragal_exact::Number;

/// The rows of a table, each a list of columns without the space around them; the first row names the columns.
///
/// Every row has as many columns as the first, and a name of its own.
pub(crate) fn rows(table: &'static str) -> Vec<Vec<&'static str>> {
    let mut lines = table.lines().map(str::trim).filter(|line| !line.is_empty());
    let header = lines.next().unwrap().split('|').count();
    let rows: Vec<Vec<&str>> = lines
        .map(|line| line.split('|').map(str::trim).collect())
        .collect();
    let names: std::collections::BTreeSet<&str> = rows.iter().map(|row: &Vec<&str>| row[0]).collect();
    assert_eq!(names.len(), rows.len(), "two rows have one name");
    for row in &rows {
        assert_eq!(row.len(), header, "{row:?}");
    }
    assert!(!rows.is_empty());
    rows
}

/// `12`, `-0.5` or `1/3`.
pub(crate) fn number(text: &str) -> Number {
    let part = |text: &str| {
        text.parse::<Number>()
            .unwrap_or_else(|error| panic!("`{text}`: {error}"))
    };
    match text.split_once('/') {
        Some((top, bottom)) => part(top).checked_div(&part(bottom)).unwrap(),
        None => part(text),
    }
}

/// `?` is a number that is not known.
pub(crate) fn maybe(text: &str) -> Option<Number> {
    (text != "?").then(|| number(text))
}

/// `yes`, `no`, or `?` for what is not known.
pub(crate) fn said(text: &str) -> Option<bool> {
    match text {
        "yes" => Some(true),
        "no" => Some(false),
        "?" => None,
        other => panic!("`{other}` is neither yes, no nor ?"),
    }
}

/// `36 x 60`.
pub(crate) fn pair(text: &str) -> (Number, Number) {
    let (one, other) = text.split_once(" x ").unwrap();
    (number(one), number(other))
}
