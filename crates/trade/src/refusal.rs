//! How a name or a number that cannot be one is refused.
//!
//! `zone of the voluntary energy programme is `5`; expected one of `northern`, ...`

use astragal_exact::Number;

use crate::{Fact, InputError};

/// Returns the error of a number that cannot be what it is said to be; at most 8 decimals of it are shown.
pub(crate) fn refused(fact: Fact, value: &Number, expected: &str) -> InputError {
    let (decimal, exact) = value.to_decimal_truncated(8);
    let found = if exact { decimal } else { format!("{decimal}…") };
    InputError {
        fact,
        found,
        expected: expected.to_owned(),
    }
}

/// Returns the error of a name that is not among the known ones.
pub(crate) fn unknown(fact: Fact, found: &str, known: &[&str]) -> InputError {
    let known: Vec<String> = known.iter().map(|name| format!("`{name}`")).collect();
    InputError {
        fact,
        found: shown(found),
        expected: format!("one of {}", known.join(", ")),
    }
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
