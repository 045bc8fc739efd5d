//! Fractions that the code itself writes down.
//!
//! `over::<100>(22)` is 0.22. The denominator is checked when the crate is built, so that no constant can fail.

use astragal_exact::Number;

/// Returns `numerator / DENOMINATOR`; a denominator of 0 does not compile.
pub(crate) fn over<const DENOMINATOR: i64>(numerator: i64) -> Number {
    const { assert!(DENOMINATOR != 0, "a fraction has a denominator") };
    Number::ratio(numerator, DENOMINATOR).unwrap_or_default()
}

/// Returns a text as a message shows it: at most 40 characters of it.
pub(crate) fn shown(text: &str) -> String {
    const CHARACTERS_MOST: usize = 40;
    if text.chars().count() <= CHARACTERS_MOST {
        return text.to_owned();
    }
    let start: String = text.chars().take(CHARACTERS_MOST).collect();
    format!("{start}…")
}

/// Returns a text in small letters, with one space for each run of spaces, `_` and `-` between words.
///
/// A `-` in front stays, so that -1 does not turn into 1.
pub(crate) fn plain(text: &str) -> String {
    let text = text.trim().to_lowercase();
    if text.starts_with('-') {
        return text;
    }
    text.split([' ', '_', '-', '\t'])
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}
