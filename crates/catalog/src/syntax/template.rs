//! The templates of messages: `A casement is 15 to 36 in wide; this one is {unit_width}.`
//!
//! A template is plain text and placeholders in braces; a placeholder holds a name or a member, and white space around it is
//! ignored. `{{` and `}}` stand for the braces themselves.
//!
//! What always holds: no two literal parts follow each other, none is empty; a placeholder's tree is
//! [`ExprKind::Name`] or members of one, at most [`DEPTH_MAX`] deep. Cost: one pass over the text.

use super::DEPTH_MAX;
use super::ast::{Expr, ExprKind, Placed};
use super::error::{Span, SyntaxError};
use super::token::{is_keyword, is_reserved};

/// One part of a message, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// What the part is.
    pub kind: PartKind,
    /// Bytes of the template's text; a placeholder's span holds its braces.
    pub span: Span,
}

/// What a part of a message is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PartKind {
    /// Text that is printed as it is; doubled braces are resolved.
    Literal(String),
    /// A name, or a member such as `glazing.upper`, whose value is printed. Spans are those of the template's text.
    Placeholder(Expr),
}

/// Reads the text of a message template.
///
/// # Examples
///
/// One placeholder between two literals:
///
/// ```
/// use astragal_catalog::syntax::{PartKind, parse_template};
///
/// let parts = parse_template("This one is {unit_width}.").unwrap();
/// let PartKind::Placeholder(name) = &parts[1].kind else { panic!("a placeholder") };
/// assert_eq!((name.to_string().as_str(), name.span.clone()), ("unit_width", 13..23));
/// ```
///
/// # Errors
///
/// A brace that is not closed, a `}` that closes nothing, an empty placeholder, and a placeholder that holds more than a name.
pub fn parse_template(text: &str) -> Result<Vec<Part>, SyntaxError> {
    let mut parts = Vec::new();
    let mut literal = String::new();
    let mut literal_start = 0;
    let mut rest = text;
    while let Some(brace) = rest.find(['{', '}']) {
        let (before, from_brace) = rest.split_at(brace);
        literal.push_str(before);
        let at = text.len() - from_brace.len();
        if let Some(after) = from_brace.strip_prefix("{{") {
            literal.push('{');
            rest = after;
        } else if let Some(after) = from_brace.strip_prefix("}}") {
            literal.push('}');
            rest = after;
        } else if let Some(inside) = from_brace.strip_prefix('{') {
            let (placeholder, after) = placeholder(inside, at)?;
            push_literal(&mut parts, std::mem::take(&mut literal), literal_start..at);
            literal_start = text.len() - after.len();
            parts.push(Part {
                kind: PartKind::Placeholder(placeholder),
                span: at..literal_start,
            });
            rest = after;
        } else {
            return Err(SyntaxError::new(at..at + 1, "found `}` that closes nothing")
                .with_help("write `}}` to print a brace"));
        }
    }
    literal.push_str(rest);
    push_literal(&mut parts, literal, literal_start..text.len());
    Ok(parts)
}

fn push_literal(parts: &mut Vec<Part>, literal: String, span: Span) {
    if !literal.is_empty() {
        parts.push(Part {
            kind: PartKind::Literal(literal),
            span,
        });
    }
}

/// The name after the brace at `brace`, and what follows the closing brace.
fn placeholder(inside: &str, brace: usize) -> Result<(Expr, &str), SyntaxError> {
    let end = inside
        .find(['{', '}'])
        .filter(|end| inside.split_at(*end).1.starts_with('}'));
    let Some((name, after)) = end.and_then(|end| inside.split_at_checked(end)) else {
        return Err(SyntaxError::new(brace..brace + 1, "found `{` that is not closed")
            .with_help("close it with `}`, or write `{{` to print a brace"));
    };
    let after = after.strip_prefix('}').unwrap_or(after);
    let whole = brace..brace + name.len() + 2;
    if name.trim().is_empty() {
        return Err(
            SyntaxError::new(whole, "found an empty placeholder, expected a name in the braces")
                .with_help("write a name, such as `{unit_width}`, or `{{}}` to print braces"),
        );
    }
    Ok((path(name, brace + 1)?, after))
}

/// `glazing.upper` as a tree; `start` is where `text` begins in the template.
fn path(text: &str, start: usize) -> Result<Expr, SyntaxError> {
    let trimmed = text.trim();
    let start = start + text.len() - text.trim_start().len();
    let whole = start..start + trimmed.len();
    let mut words = trimmed.split('.');
    let first = words.next().unwrap_or_default();
    if !is_word(first) || is_reserved(first) || words.clone().any(|word| !is_word(word) || is_keyword(word)) {
        return Err(SyntaxError::new(
            whole,
            format!("found `{trimmed}` in a placeholder, expected a name or a member"),
        )
        .with_help("to print what a formula gives, declare a figure and write its name"));
    }
    if words.clone().count() > DEPTH_MAX {
        return Err(SyntaxError::new(
            whole,
            format!("found more than {DEPTH_MAX} members of members"),
        ));
    }
    let mut end = start + first.len();
    let mut tree = Expr {
        kind: ExprKind::Name(first.to_owned()),
        span: start..end,
    };
    for word in words {
        let name = Placed {
            text: word.to_owned(),
            span: end + 1..end + 1 + word.len(),
        };
        end = name.span.end;
        tree = Expr {
            kind: ExprKind::Member {
                base: Box::new(tree),
                name,
            },
            span: start..end,
        };
    }
    Ok(tree)
}

fn is_word(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_alphabetic() || c == '_')
        && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '_')
}

#[cfg(test)]
mod tests {
    use expect_test::{Expect, expect};

    use super::super::error::shown;
    use super::*;

    /// Each template's parts with their places, or its error.
    fn check(templates: &[&str], expected: Expect) {
        let lines = templates.iter().map(|text| match parse_template(text) {
            Ok(parts) => parts.iter().map(|part| described(text, part)).collect(),
            Err(error) => shown(text, &error),
        });
        expected.assert_eq(&lines.collect::<Vec<_>>().join("\n"));
    }

    fn described(text: &str, part: &Part) -> String {
        let under = &text[part.span.clone()];
        match &part.kind {
            PartKind::Literal(literal) => format!("{:?} {literal:?}, written `{under}`\n", part.span),
            PartKind::Placeholder(name) => {
                assert_eq!(text[name.span.clone()], name.to_string());
                format!("{:?} {name} at {:?}, written `{under}`\n", part.span, name.span)
            }
        }
    }

    #[test]
    fn names_in_braces_are_placeholders() {
        check(
            &[
                "A casement is 15 to 36 in wide; this one is {unit_width}.",
                "{interior}{ exterior }",
                "é {glazing.upper.gloss}",
                "plain",
                "",
            ],
            expect![[r#"
                0..44 "A casement is 15 to 36 in wide; this one is ", written `A casement is 15 to 36 in wide; this one is `
                44..56 unit_width at 45..55, written `{unit_width}`
                56..57 ".", written `.`

                0..10 interior at 1..9, written `{interior}`
                10..22 exterior at 12..20, written `{ exterior }`

                0..3 "é ", written `é `
                3..24 glazing.upper.gloss at 4..23, written `{glazing.upper.gloss}`

                0..5 "plain", written `plain`

            "#]],
        );
    }

    #[test]
    fn doubled_braces_are_printed_as_braces() {
        check(
            &["{{a}} {b}", "{{{a}}}", "}}{{"],
            expect![[r#"
            0..6 "{a} ", written `{{a}} `
            6..9 b at 7..8, written `{b}`

            0..2 "{", written `{{`
            2..5 a at 3..4, written `{a}`
            5..7 "}", written `}}`

            0..4 "}{", written `}}{{`
        "#]],
        );
    }

    #[test]
    fn braces_that_do_not_match_are_errors() {
        check(
            &["a {b", "a } b", "{a {b}", "{a}}", "{"],
            expect![[r#"
            a {b
              ^ found `{` that is not closed
            help: close it with `}`, or write `{{` to print a brace

            a } b
              ^ found `}` that closes nothing
            help: write `}}` to print a brace

            {a {b}
            ^ found `{` that is not closed
            help: close it with `}`, or write `{{` to print a brace

            {a}}
               ^ found `}` that closes nothing
            help: write `}}` to print a brace

            {
            ^ found `{` that is not closed
            help: close it with `}`, or write `{{` to print a brace
        "#]],
        );
    }

    #[test]
    fn placeholders_hold_a_name_and_nothing_else() {
        check(
            &[
                "{}",
                "{  }",
                "{a + b}",
                "{a.}",
                "{.a}",
                "{1}",
                "{in}",
                "{a.null}",
                "{a:.2}",
                "{größe}",
                "{f(x)}",
            ],
            expect![[r#"
                {}
                ^^ found an empty placeholder, expected a name in the braces
                help: write a name, such as `{unit_width}`, or `{{}}` to print braces

                {  }
                ^^^^ found an empty placeholder, expected a name in the braces
                help: write a name, such as `{unit_width}`, or `{{}}` to print braces

                {a + b}
                 ^^^^^ found `a + b` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {a.}
                 ^^ found `a.` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {.a}
                 ^^ found `.a` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {1}
                 ^ found `1` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {in}
                 ^^ found `in` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {a.null}
                 ^^^^^^ found `a.null` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {a:.2}
                 ^^^^ found `a:.2` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {größe}
                 ^^^^^ found `größe` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name

                {f(x)}
                 ^^^^ found `f(x)` in a placeholder, expected a name or a member
                help: to print what a formula gives, declare a figure and write its name
            "#]],
        );
    }

    #[test]
    fn members_of_members_have_a_limit() {
        assert!(parse_template(&format!("{{a{}}}", ".b".repeat(DEPTH_MAX))).is_ok());
        let error = parse_template(&format!("{{a{}}}", ".b".repeat(DEPTH_MAX + 1))).unwrap_err();
        assert_eq!(error.message, "found more than 64 members of members");
        assert!(parse_template(&format!("{{a{}}}", ".b".repeat(100_000))).is_err());
    }
}
