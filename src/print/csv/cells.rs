//! One CSV file: rows of cells that no spreadsheet takes for formulas.

use std::path::PathBuf;

use crate::print::pages::{Condition, Parts};

/// One file to write.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct File {
    /// Where, below the folder that was asked for.
    pub(crate) path: PathBuf,
    /// What.
    pub(crate) bytes: Vec<u8>,
}

/// Makes a file of its heading and rows.
pub(super) fn file(
    path: String,
    heading: &[&str],
    rows: impl IntoIterator<Item = Vec<String>>,
) -> Result<File, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(heading.iter().map(|cell| safe(cell)))?;
    for row in rows {
        writer.write_record(row.iter().map(|cell| safe(cell)))?;
    }
    let bytes = writer
        .into_inner()
        .map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(File {
        path: PathBuf::from(path),
        bytes,
    })
}

/// The words and the text of a condition; empty where there is none.
pub(super) fn both(condition: Option<&Condition>) -> [String; 2] {
    match condition {
        None => [String::new(), String::new()],
        Some(condition) => [
            condition.written.clone().unwrap_or_default(),
            condition.words.clone(),
        ],
    }
}

/// The labels of the parts; empty where there are none.
pub(super) fn parts(parts: Option<&Parts>) -> String {
    let labels = parts.iter().flat_map(|parts| &parts.parts);
    labels
        .map(|(label, _)| label.as_str())
        .collect::<Vec<_>>()
        .join("|")
}

/// A truth value as a cell.
pub(super) fn yes_no(is: bool) -> String {
    if is { "yes" } else { "no" }.to_owned()
}

/// The text of something that may be missing.
pub(super) fn or_empty(thing: Option<impl ToString>) -> String {
    thing.map(|thing| thing.to_string()).unwrap_or_default()
}

/// A cell that is no formula.
fn safe(cell: &str) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && !is_plain_number(cell) {
        format!("'{cell}")
    } else {
        cell.to_owned()
    }
}

/// Digits with at most one point, and a sign in front.
fn is_plain_number(cell: &str) -> bool {
    let digits = cell.strip_prefix(['-', '+']).unwrap_or(cell);
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, "0"));
    let all = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    all(whole) && all(fraction)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_spreadsheet_would_run_gets_an_apostrophe_and_numbers_do_not() {
        for (cell, shown) in [
            ("=1+1", "'=1+1"),
            ("@sum", "'@sum"),
            ("+cmd", "'+cmd"),
            ("-2+3", "'-2+3"),
            ("-", "'-"),
            ("-1/3", "'-1/3"),
            ("-.5", "'-.5"),
            ("\tx", "'\tx"),
            ("-21.50", "-21.50"),
            ("+4", "+4"),
            ("-1234", "-1234"),
            ("a=b", "a=b"),
            ("", ""),
            ("'quoted", "'quoted"),
        ] {
            assert_eq!(safe(cell), shown, "{cell:?}");
        }
    }
}
