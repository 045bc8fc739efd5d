//! Recognises what spreadsheets do to cells, so that a finding can say so.
//!
//! A spreadsheet that opens `5/8` shows and saves the fifth of August. A cell `5-Aug` where a length
//! is expected was most likely `8/5` or `5/8`.
//!
//! What always holds: this only adds a help to a finding that somebody else makes; it never decides
//! that a cell is wrong.
//! Cost: O(length of the cell). Source: common practice of spreadsheets, from memory.

/// What a spreadsheet probably did to a cell that should hold a number, length or range.
///
/// # Examples
///
/// A fraction that became a date, and a cell that looks like no known damage:
///
/// ```
/// use astragal_catalog::sheet::spreadsheet_help;
///
/// assert!(spreadsheet_help("5-Aug").is_some_and(|help| help.contains("date")));
/// assert_eq!(spreadsheet_help("35 5/8"), None);
/// ```
#[must_use]
pub fn spreadsheet_help(cell: &str) -> Option<&'static str> {
    let cell = cell.trim();
    if looks_like_date(cell) {
        Some("a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text")
    } else if looks_like_decimal_comma(cell) {
        Some("write a decimal point, not a comma")
    } else if cell.len() > 1 && cell.bytes().all(|byte| byte == b'#') {
        Some("the column of the spreadsheet was too narrow when it was saved")
    } else if cell.starts_with('#') && cell.ends_with(['!', '?', 'A']) {
        Some("the formula of the spreadsheet failed; put it right there and save again")
    } else if cell.starts_with('=') {
        Some("this is the formula of a spreadsheet; save the values")
    } else if looks_like_exponent(cell) {
        Some("a spreadsheet shortened this number; format the column as text or as number")
    } else {
        None
    }
}

fn is_number(text: &str, digits: std::ops::RangeInclusive<usize>) -> bool {
    digits.contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_month(text: &str) -> bool {
    const MONTHS: [&str; 12] = [
        "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
    ];
    let lower = text.to_ascii_lowercase();
    lower.get(..3).is_some_and(|start| MONTHS.contains(&start))
        && lower.len() <= 9
        && lower.bytes().all(|byte| byte.is_ascii_lowercase())
}

/// `5-Aug`, `Aug-05`, `5/8/2024`, `2024-08-05`, `05.08.2024`.
fn looks_like_date(cell: &str) -> bool {
    let parts: Vec<&str> = cell.split(['-', '/', '.', ' ']).collect();
    match parts.as_slice() {
        [a, b] => (is_number(a, 1..=2) && is_month(b)) || (is_month(a) && is_number(b, 1..=4)),
        [a, b, c] => {
            let day_first =
                is_number(a, 1..=2) && (is_number(b, 1..=2) || is_month(b)) && is_number(c, 4..=4);
            let year_first = is_number(a, 4..=4) && is_number(b, 1..=2) && is_number(c, 1..=2);
            day_first || year_first
        }
        _ => false,
    }
}

fn looks_like_decimal_comma(cell: &str) -> bool {
    let digits = cell.trim_start_matches(['-', '+']);
    digits
        .rsplit_once(',')
        .is_some_and(|(whole, part)| is_number(part, 1..=9) && is_number(&whole.replace('.', ""), 1..=12))
}

fn looks_like_exponent(cell: &str) -> bool {
    cell.split_once(['E', 'e']).is_some_and(|(number, exponent)| {
        is_number(&number.replace('.', ""), 1..=20)
            && is_number(exponent.trim_start_matches(['+', '-']), 1..=3)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_spreadsheets_do_is_recognised() {
        for (cell, word) in [
            ("5-Aug", "date"),
            ("Aug-05", "date"),
            ("08-May-2024", "date"),
            ("5/8/2024", "date"),
            ("2024-08-05", "date"),
            ("05.08.2024", "date"),
            ("12,50", "point"),
            ("1.234,5", "point"),
            ("####", "narrow"),
            ("#REF!", "failed"),
            ("#N/A", "failed"),
            ("=A1*2", "formula"),
            ("1.2E+05", "shortened"),
        ] {
            assert!(
                spreadsheet_help(cell).is_some_and(|help| help.contains(word)),
                "{cell}"
            );
        }
    }

    #[test]
    fn what_people_write_is_not_taken_for_damage() {
        for cell in [
            "",
            "5/8",
            "35 5/8",
            "35-5/8\"",
            "15..36",
            "12.50",
            "-3",
            "a|b",
            "*",
            "low_e",
            "904.875 mm",
            "#",
        ] {
            assert_eq!(spreadsheet_help(cell), None, "{cell}");
        }
    }
}
