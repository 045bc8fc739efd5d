//! Says in plain words what is wrong with the grammar of a TOML file, and what to write instead.
//!
//! The parser says `string values must be quoted, expected literal string` of `waivable = yes`; a person reads
//! ``found `yes`, expected true or false``.
//!
//! What always holds: what is not known here is said in the words of the parser; of several mistakes those that follow
//! from a bracket or a comma are left out, since every later line is then a mistake.
//! Cost: O(length of the text) a mistake. Source: TOML 1.0 (toml.io); the slips are common practice, no source.

use std::ops::Range;

use super::depth::{self, Language};
use crate::finding::{Finding, Place};

/// Whether all that is reported after this mistake mostly follows from it.
pub(super) fn upsets_the_rest(message: &str) -> bool {
    [
        "missing comma",
        "missing key for inline",
        "missing assignment between",
        "extra comma",
        "invalid inline table element",
        "unexpected `=` in array",
        "unclosed",
    ]
    .iter()
    .any(|start| message.starts_with(start))
}

/// The finding for a mistake that the parser reports.
pub(super) fn finding(text: &str, message: &str, place: Place) -> Finding {
    let file = place.file;
    let (said, help, opened) = words(text, message, &place.span);
    let said = if said.is_empty() {
        format!("this is not TOML: {message}")
    } else {
        said
    };
    let mut finding = Finding::error("TOML_GRAMMAR", said);
    if let Some(span) = opened {
        finding = finding.with_related(Place::new(file, span), "opened here");
    }
    if !help.is_empty() {
        finding = finding.with_help(help);
    }
    finding.at(place)
}

type Words = (String, String, Option<Range<usize>>);

fn words(text: &str, message: &str, span: &Range<usize>) -> Words {
    let found = text.get(span.clone()).unwrap_or("").trim();
    let rest = text.get(span.start..).unwrap_or("");
    if let Some((what, help)) = strange_letter(rest) {
        return (format!("found {what}"), help.to_owned(), None);
    }
    let is = |start: &str| message.starts_with(start);
    if is("missing comma")
        || is("missing key for inline")
        || is("missing assignment between")
        || is("unclosed")
    {
        return not_closed(text, message, span);
    }
    let (said, help) = if is("string values must be quoted") && found.is_empty() || is("missing value") {
        (
            "a value is missing".to_owned(),
            "write it after the `=`; text stands in quotes".to_owned(),
        )
    } else if is("string values must be quoted")
        || is_no_number(message)
        || (is("invalid date") && found.split('-').count() != 3)
    {
        bare_value(found)
    } else if is("invalid basic string") || is("invalid literal string") {
        let quote = if is("invalid basic") { '"' } else { '\'' };
        (
            format!("a text that begins with `{quote}` is not closed on its line"),
            format!(
                "close it with `{quote}`; a text of several lines stands between `{0}{0}{0}`",
                quote
            ),
        )
    } else if is("unexpected key or value") {
        (
            format!("found `{}` after the end of the value", first_word(rest)),
            "did a quote in the text end it? then put the text between `'''` and `'''`; otherwise begin a new line"
                .to_owned(),
        )
    } else if is("key with no value") {
        (
            format!("`{}` has no `=` and no value", line_of(text, span.start).trim()),
            "write `key = value`, or a heading like `[[rule]]`".to_owned(),
        )
    } else if is("invalid unquoted key") {
        (
            format!("found `{}`, expected a key", first_word(rest)),
            "a key holds letters, digits, `-` and `_`".to_owned(),
        )
    } else if (is("invalid date") || is("invalid time")) && found.split('-').count() == 3 {
        (
            format!("`{found}` is no day of the calendar"),
            "write a date like 2026-11-25".to_owned(),
        )
    } else {
        (String::new(), String::new())
    };
    (said, help, None)
}

fn is_no_number(message: &str) -> bool {
    ["float", "mantissa", "fraction", "exponent", "integer", "boolean"]
        .iter()
        .any(|word| {
            message
                .strip_prefix("invalid ")
                .is_some_and(|rest| rest.starts_with(word))
        })
        || message.starts_with("unexpected leading zero")
}

/// A value that stands without quotes.
fn bare_value(found: &str) -> (String, String) {
    let said = |expected: &str| format!("found `{found}`, expected {expected}");
    let lower = found.to_ascii_lowercase();
    let parts: Vec<&str> = found.split(['/', '.']).collect();
    let is_date = parts.len() == 3 && parts.iter().all(|part| is_digits(part));
    match lower.as_str() {
        "yes" | "true" | "y" => (said("true or false"), "write `true`".to_owned()),
        "no" | "false" | "n" => (said("true or false"), "write `false`".to_owned()),
        _ if is_date => (said("a date"), "write the year first, like 2026-11-25".to_owned()),
        _ => (
            said("a value"),
            format!("put text and sizes in quotes: `\"{found}\"`"),
        ),
    }
}

/// A list or table that is not closed, or in which a comma is missing.
fn not_closed(text: &str, message: &str, span: &Range<usize>) -> Words {
    let before = text.get(..span.start).unwrap_or("");
    let rest = text.get(span.start..).unwrap_or("");
    let opened = depth::open_bracket(before, Language::Toml);
    let bracket = opened.clone().and_then(|span| text.get(span)).unwrap_or("[");
    let close = if bracket == "{" { "}" } else { "]" };
    if message.starts_with("unclosed table") || message.starts_with("unclosed array table") {
        let said = "the brackets of the heading are not closed".to_owned();
        return (said, "write `[name]` or `[[name]]`".to_owned(), None);
    }
    let begins_line = before.ends_with('\n') || span.start >= text.trim_end().len();
    let line = rest.lines().next().unwrap_or("");
    let heading = line
        .trim()
        .strip_prefix('[')
        .and_then(|line| line.strip_suffix(']'));
    let goes_on = line.starts_with("[[")
        || heading.is_some_and(is_key)
        || line.split_once('=').is_some_and(|(key, _)| is_key(key));
    if message.starts_with("unclosed")
        || (begins_line && goes_on && bracket == "[")
        || span.start >= text.len()
    {
        let said = format!("a bracket `{bracket}` is not closed before this");
        return (said, format!("close it with `{close}`"), opened);
    }
    if rest.starts_with(['"', '\'']) && before.ends_with(['"', '\'']) {
        let help =
            "leave an inch mark out: `\"35 5/8\"`; a text with quotes in it stands between `'''` and `'''`";
        return (
            "found one more quote after the end of a text".to_owned(),
            help.to_owned(),
            None,
        );
    }
    if rest.starts_with('{') && bracket == "{" {
        let said = format!("a bracket `{bracket}` is not closed before this");
        return (said, format!("close it with `{close}`"), opened);
    }
    let said = format!("found `{}`, expected a comma or `{close}`", first_word(rest));
    (said, "write a comma between the entries".to_owned(), opened)
}

/// A letter that looks like an ordinary one and is none, at the beginning of a text.
fn strange_letter(rest: &str) -> Option<(String, &'static str)> {
    let letter = rest.chars().next()?;
    match letter {
        '\u{201c}' | '\u{201d}' | '\u{201e}' | '\u{2018}' | '\u{2019}' => Some((
            format!("a curly quote `{letter}`"),
            "use straight quotes, `\"` or `'`",
        )),
        '\u{a0}' | '\u{202f}' | '\u{2007}' => Some((
            "a space that is no ordinary one (a non-breaking space)".to_owned(),
            "delete it and write an ordinary space",
        )),
        '\u{200b}' | '\u{feff}' => Some(("a letter that cannot be seen".to_owned(), "delete it")),
        _ => None,
    }
}

fn line_of(text: &str, at: usize) -> &str {
    let start = text
        .get(..at)
        .and_then(|before| before.rfind('\n'))
        .map_or(0, |end| end + 1);
    text.get(start..)
        .and_then(|rest| rest.lines().next())
        .unwrap_or("")
}

fn first_word(rest: &str) -> &str {
    let end = rest
        .char_indices()
        .find(|(at, letter)| {
            *at > 0 && (letter.is_whitespace() || matches!(letter, ',' | '=' | '"' | '\'' | '[' | '{'))
        })
        .map_or(rest.len(), |(at, _)| at);
    rest.get(..end).unwrap_or(rest).trim()
}

fn is_key(text: &str) -> bool {
    let text = text.trim();
    !text.is_empty()
        && text
            .chars()
            .all(|letter| letter.is_ascii_alphanumeric() || matches!(letter, '_' | '-' | '.'))
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}
