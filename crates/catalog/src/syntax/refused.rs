//! What an expression may not hold, and what to write in its place.
//!
//! `%` is CEL but not in the subset; `=` is a slip for `==`; `≥` and curly quotes come from word processors. Each gets a
//! message that names it.

use super::error::{Span, SyntaxError};

/// The error for the piece of `text` at `span`, which is no token.
pub(super) fn refusal(text: &str, span: Span) -> SyntaxError {
    let found = text.get(span.clone()).unwrap_or_default();
    let is_quote = |c| matches!(c, '"' | '\'');
    if found.ends_with("\"\"\"") || found.ends_with("'''") {
        return outside(
            found,
            span,
            "a text in triple quotes",
            Some("put the text in one pair of quotes"),
        );
    }
    if found.starts_with(is_quote) {
        return unclosed_quote(found, span);
    }
    if found.ends_with(is_quote) {
        return outside(
            found,
            span,
            "a bytes or raw literal",
            Some("write the text in quotes without a prefix"),
        );
    }
    if found.starts_with('.') {
        let help = format!("write a digit before the point: `0{found}`");
        return outside(found, span, "a number that begins with its point", Some(&help));
    }
    if found.starts_with(|c: char| c.is_ascii_digit()) {
        let what = if found.starts_with("0x") || found.starts_with("0X") {
            "a hexadecimal number"
        } else {
            "an unsigned number"
        };
        return outside(
            found,
            span,
            what,
            Some("write a decimal number, such as `12` or `0.5`"),
        );
    }
    match found {
        "%" => outside(found, span, "the remainder", None),
        "{" | "}" => outside(
            found,
            span,
            "a map or a message",
            Some("lists are written `[\"white\", \"grey\"]`"),
        ),
        "`" => SyntaxError::new(span, "a name in backquotes is CEL but not in astragal's subset")
            .with_help("write a name without quotes, a text in `\"...\"`"),
        _ => foreign(found, span),
    }
}

/// CEL has it; we do not.
pub(super) fn outside(found: &str, span: Span, what: &str, help: Option<&str>) -> SyntaxError {
    let error = SyntaxError::new(
        span,
        format!("`{found}` ({what}) is CEL but not in astragal's subset"),
    );
    match help {
        Some(help) => error.with_help(help),
        None => error,
    }
}

fn unclosed_quote(found: &str, span: Span) -> SyntaxError {
    let quote = found.get(..1).unwrap_or_default();
    let end = span.end;
    SyntaxError::new(
        span.start..span.start + 1,
        format!("found a quote `{quote}` that is not closed on its line"),
    )
    .with_help(format!(
        "close the text with `{quote}`; inside it write `\\{quote}`"
    ))
    .with_related(end..end, "the line ends here")
}

/// What is no CEL at all.
fn foreign(found: &str, span: Span) -> SyntaxError {
    let first = found.chars().next().unwrap_or_default();
    if first != ' '
        && (first.is_whitespace()
            || first.is_control()
            || matches!(first, '\u{feff}' | '\u{200b}'..='\u{200f}' | '\u{2060}'))
    {
        let message = format!("found an invisible character, U+{:04X}", u32::from(first));
        return SyntaxError::new(span, message).with_help("delete it, or type a plain space");
    }
    let help = match found {
        "=" => "compare with `==`",
        "=>" => "\"greater or equal\" is written `>=`",
        "=<" => "\"less or equal\" is written `<=`",
        "<>" | "≠" => "\"not equal\" is written `!=`",
        "≥" => "\"greater or equal\" is written `>=`",
        "≤" => "\"less or equal\" is written `<=`",
        "&" => "\"and\" is written `&&`",
        "|" => "\"or\" is written `||`",
        "“" | "”" | "„" | "‘" | "’" | "‚" | "«" | "»" | "″" | "′" => {
            "use straight quotes, `\"` or `'`"
        }
        "−" | "–" | "—" => "minus is written `-`",
        "×" | "·" => "times is written `*`",
        "÷" => "division is written `/`",
        "½" | "¼" | "¾" | "⅛" | "⅜" | "⅝" | "⅞" => "a size is written in quotes: `\"35 5/8\"`",
        _ if first.is_alphabetic() => "names are made of the letters a to z, digits and `_`",
        _ => "write a text in quotes, `\"...\"`",
    };
    SyntaxError::new(span, format!("found `{found}`, which no expression holds")).with_help(help)
}
