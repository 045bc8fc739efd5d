//! Texts in quotes and their escapes: `"5\" wide"` holds `5" wide`.
//!
//! What always holds: [`unescape`] of [`quoted`] gives the text back. Cost: one pass.

use super::error::{Span, SyntaxError};

/// The text of a literal; `literal` stands at `span` and holds its quotes.
pub(super) fn unescape(literal: &str, span: &Span) -> Result<String, SyntaxError> {
    let mut text = String::with_capacity(literal.len());
    let inside = literal
        .get(1..literal.len().saturating_sub(1))
        .unwrap_or_default();
    let mut rest = inside;
    while let Some((before, escape)) = rest.split_once('\\') {
        text.push_str(before);
        let start = span.end.saturating_sub(escape.len() + 2);
        let (resolved, length) = resolve(escape).ok_or_else(|| unknown_escape(escape, start))?;
        text.push(resolved);
        rest = escape.get(length..).unwrap_or_default();
    }
    text.push_str(rest);
    Ok(text)
}

/// A literal in double quotes that holds the text.
pub(super) fn quoted(text: &str) -> String {
    let mut literal = String::with_capacity(text.len() + 2);
    literal.push('"');
    for c in text.chars() {
        match c {
            '"' | '\\' => literal.extend(['\\', c]),
            '\n' => literal.push_str("\\n"),
            '\t' => literal.push_str("\\t"),
            _ if c.is_control() => literal.push_str(&format!("\\u{:04X}", u32::from(c))),
            _ => literal.push(c),
        }
    }
    literal.push('"');
    literal
}

/// What stands for the escape after a backslash, and how many bytes it takes.
fn resolve(escape: &str) -> Option<(char, usize)> {
    match escape.chars().next()? {
        c @ ('\\' | '\'' | '"') => Some((c, 1)),
        'n' => Some(('\n', 1)),
        't' => Some(('\t', 1)),
        'u' => {
            let digits = escape
                .get(1..5)
                .filter(|digits| digits.chars().all(|c| c.is_ascii_hexdigit()))?;
            Some((char::from_u32(u32::from_str_radix(digits, 16).ok()?)?, 5))
        }
        _ => None,
    }
}

/// `start` is where the backslash stands.
fn unknown_escape(escape: &str, start: usize) -> SyntaxError {
    let length = match escape.chars().next() {
        Some('u') => {
            1 + escape
                .chars()
                .skip(1)
                .take(4)
                .take_while(char::is_ascii_hexdigit)
                .count()
        }
        Some(c) => c.len_utf8(),
        None => 0,
    };
    let found = escape.get(..length).unwrap_or_default();
    let message = format!("found the escape `\\{found}`, which a text cannot hold");
    SyntaxError::new(start..start + 1 + length, message)
        .with_help("the escapes are `\\\\`, `\\'`, `\\\"`, `\\n`, `\\t` and `\\uXXXX` with four hexadecimal digits of a character")
}
