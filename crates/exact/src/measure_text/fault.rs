//! Recognises what spreadsheets and other countries do to numbers: dates, decimal commas, separated thousands.
//!
//! A spreadsheet turns `5/8` into `8-May` or `5-Aug`, and shows that as `2024-05-08`, `5/8/2024` or `05.08.2024`.
//! Which fraction it was cannot be told from the date, so none is guessed.
//!
//! Source: common practice, no source.

use super::error::LengthTextErrorKind;

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// Returns the fault that this trimmed text shows, `None` if it shows none of them.
pub(super) fn fault_of(text: &str) -> Option<LengthTextErrorKind> {
    if is_date(text) {
        return Some(LengthTextErrorKind::SpreadsheetDate);
    }
    let number = text
        .trim_start_matches('-')
        .trim_end_matches(|c: char| !c.is_ascii_digit());
    comma_fault(number)
        .or_else(|| has_spaced_thousands(number).then_some(LengthTextErrorKind::ThousandsSeparator))
}

/// One comma and nothing else that separates is a decimal comma; `35,625` is one, since a plant has more use for
/// thousandths than a window for 35625 inches.
fn comma_fault(number: &str) -> Option<LengthTextErrorKind> {
    let commas = number.matches(',').count();
    if commas == 0 || !number.starts_with(|c: char| c.is_ascii_digit() || c == ',') {
        return None;
    }
    if commas > 1 || number.contains('.') {
        return Some(LengthTextErrorKind::ThousandsSeparator);
    }
    let (before, after) = number.split_once(',')?;
    let digits_around = before.ends_with(|c: char| c.is_ascii_digit()) || before.is_empty();
    let digits_after = after.starts_with(|c: char| c.is_ascii_digit());
    (digits_around && digits_after).then_some(LengthTextErrorKind::DecimalComma)
}

/// `1 234` or `1 234.5`: a group of three digits after a space, and no fraction.
fn has_spaced_thousands(number: &str) -> bool {
    let mut groups = number.split(char::is_whitespace);
    let first = groups.next().unwrap_or_default();
    let mut rest = groups.peekable();
    rest.peek().is_some() && (1..=3).contains(&first.len()) && is_digits(first) && {
        rest.all(|group| {
            let whole = group.split_once('.').map_or(group, |(whole, _)| whole);
            whole.len() == 3 && is_digits(whole)
        })
    }
}

fn is_date(text: &str) -> bool {
    let day = text.split(['T', ' ']).next().unwrap_or_default();
    ['/', '-', '.']
        .iter()
        .any(|separator| is_numeric_date(day, *separator))
        || is_month_date(text)
}

/// `2024-05-08`, `5/8/2024`, `8/5/24`, `05.08.2024`: three numbers, the outer of which may be a year.
fn is_numeric_date(text: &str, separator: char) -> bool {
    let groups: Vec<&str> = text.split(separator).collect();
    let [first, middle, last] = groups.as_slice() else {
        return false;
    };
    let short = |group: &str| is_digits(group) && group.len() <= 2;
    let year = |group: &str| is_digits(group) && (group.len() == 2 || group.len() == 4);
    short(middle) && ((short(first) && year(last)) || (year(first) && short(last)))
}

/// `5-Aug`, `Aug-5`, `8-May-24`, `May 8, 2024`: the name of a month among numbers.
fn is_month_date(text: &str) -> bool {
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || "-/.,".contains(c))
        .filter(|word| !word.is_empty())
        .collect();
    let months = words.iter().filter(|word| is_month(word)).count();
    let numbers = words
        .iter()
        .filter(|word| is_digits(word) && (word.len() <= 2 || word.len() == 4))
        .count();
    months == 1 && (1..=2).contains(&numbers) && months + numbers == words.len()
}

fn is_month(word: &str) -> bool {
    let word = word.to_ascii_lowercase();
    word.len() >= 3 && MONTHS.iter().any(|month| month.starts_with(&word)) || word == "sept"
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}
