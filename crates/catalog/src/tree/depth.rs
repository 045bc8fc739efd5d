//! Looks at the brackets of a text before a parser does, so that no nesting can exhaust the stack.
//!
//! The *depth* of a text is the most brackets that stand open at once, outside strings and remarks:
//! `[[1], "[["]` has depth 2.
//!
//! What always holds: a text that passes has at most `DEPTH_LIMIT` levels of brackets; the scan uses
//! no recursion. Where the text is broken the depth may be guessed too high, never too low for the
//! parsers behind, which keep limits of their own.
//! Cost: one pass. Source: TOML 1.0 and RFC 8259 for what a string is.

use std::ops::Range;

use super::DEPTH_LIMIT;
use crate::finding::{Finding, Place};
use crate::source::FileId;

/// Which strings and remarks a text may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Language {
    /// Four kinds of string; `#` begins a remark.
    Toml,
    /// Only `"`.
    Json,
}

/// The bracket at which a text becomes too deep.
pub(super) fn too_deep(text: &str, language: Language) -> Option<Range<usize>> {
    let open = open_brackets(text, language);
    let last = open.get(DEPTH_LIMIT)?;
    Some(*last..*last + 1)
}

/// The innermost bracket that stands open at the end of a text.
pub(super) fn open_bracket(text: &str, language: Language) -> Option<Range<usize>> {
    let last = open_brackets(text, language).pop()?;
    Some(last..last + 1)
}

/// The brackets that stand open at the end of a text, or where it becomes too deep.
fn open_brackets(text: &str, language: Language) -> Vec<usize> {
    let bytes = text.as_bytes();
    let mut open = Vec::new();
    let mut at = 0;
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'[' | b'{' => {
                open.push(at);
                if open.len() > DEPTH_LIMIT {
                    return open;
                }
            }
            b']' | b'}' => {
                open.pop();
            }
            b'#' if language == Language::Toml => at = line_end(bytes, at),
            b'"' => at = string_end(bytes, at, language),
            b'\'' if language == Language::Toml => at = string_end(bytes, at, language),
            _ => {}
        }
        at += 1;
    }
    open
}

/// The finding for a text that is nested too deeply.
pub(super) fn finding(file: FileId, span: Range<usize>) -> Finding {
    let text = format!("tables and arrays are nested more than {DEPTH_LIMIT} deep");
    Finding::error("TOO_DEEP", text)
        .at(Place::new(file, span))
        .with_help(format!(
            "{DEPTH_LIMIT} levels are the limit; is a bracket left open?"
        ))
}

/// The last byte of the line, its line end excluded.
fn line_end(bytes: &[u8], from: usize) -> usize {
    let rest = bytes.iter().skip(from);
    from + rest.take_while(|byte| **byte != b'\n').count().saturating_sub(1)
}

/// The last byte of the string that begins at `from`; of the line or text when it does not end.
fn string_end(bytes: &[u8], from: usize, language: Language) -> usize {
    let quote = bytes.get(from).copied().unwrap_or(b'"');
    let triple = [quote; 3];
    let is_long = language == Language::Toml && bytes.get(from..from + 3) == Some(triple.as_slice());
    let mut at = if is_long { from + 3 } else { from + 1 };
    while let Some(byte) = bytes.get(at) {
        match byte {
            b'\\' if quote == b'"' => at += 1,
            b'\n' if !is_long => return at,
            byte if *byte == quote && !is_long => return at,
            byte if *byte == quote && bytes.get(at..at + 3) == Some(triple.as_slice()) => return at + 2,
            _ => {}
        }
        at += 1;
    }
    bytes.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn depth_is_fine(text: &str) -> bool {
        too_deep(text, Language::Toml).is_none()
    }

    #[test]
    fn sixty_four_levels_are_fine_and_one_more_is_not() {
        let nested = |levels: usize| format!("a = {}{}", "[".repeat(levels), "]".repeat(levels));
        assert!(depth_is_fine(&nested(DEPTH_LIMIT)));
        assert_eq!(too_deep(&nested(DEPTH_LIMIT + 1), Language::Toml), Some(68..69));
        assert_eq!(too_deep(&"[".repeat(10_000), Language::Json), Some(64..65));
        assert_eq!(
            too_deep(&"{\"a\":".repeat(10_000), Language::Json),
            Some(64 * 5..64 * 5 + 1)
        );
    }

    #[test]
    fn brackets_in_strings_and_remarks_do_not_count() {
        let many = "[".repeat(100);
        for text in [
            format!("a = \"{many}\""),
            format!("a = \"\\\"{many}\""),
            format!("a = '{many}\\'"),
            format!("a = \"\"\"\n\"{many}\n\"\"\""),
            format!("a = '''\n'{many}\n'''"),
            format!("# {many}\na = 1"),
        ] {
            assert!(depth_is_fine(&text), "{text}");
            assert!(!depth_is_fine(&format!("{text}\nb = {many}")), "{text}");
        }
    }

    #[test]
    fn brackets_that_are_closed_again_do_not_add_up() {
        assert!(depth_is_fine(&"[a]\n".repeat(1_000)));
    }
}
