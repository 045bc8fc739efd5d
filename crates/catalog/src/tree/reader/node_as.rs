//! One node of a file under the type that its reader expects, and what is said where it has another.

use jiff::civil::Date;

use super::TableReader;
use crate::finding::{Finding, Place};
use crate::source::FileId;
use crate::tree::{Node, NodeValue, Spanned};

/// A node under a type; `what` names it in the finding: "`label`", "element 3 of `options`".
impl<'a> TableReader<'a> {
    /// The node as text.
    pub fn as_text(&self, node: &Node, what: &str) -> Option<Spanned<String>> {
        match &node.value {
            NodeValue::Text(text) => Some(Spanned::new(text.clone(), node.span.clone())),
            _ => self.wrong(what, node, "text"),
        }
    }

    /// The node as true or false.
    pub fn as_bool(&self, node: &Node, what: &str) -> Option<Spanned<bool>> {
        match node.value {
            NodeValue::Bool(value) => Some(Spanned::new(value, node.span.clone())),
            _ => self.wrong(what, node, "true or false"),
        }
    }

    /// The node as a whole number.
    pub fn as_integer(&self, node: &Node, what: &str) -> Option<Spanned<i64>> {
        let NodeValue::Integer(digits) = &node.value else {
            return self.wrong(what, node, "a whole number");
        };
        if let Ok(value) = digits.parse() {
            return Some(Spanned::new(value, node.span.clone()));
        }
        let text = format!("{what} is {digits}, which is too large a number");
        self.findings
            .push(Finding::error("NUMBER_TOO_LARGE", text).at(self.place_of(&node.span)));
        None
    }

    /// The node as a number written out, as number or text.
    pub fn as_decimal_text(&self, node: &Node, what: &str) -> Option<Spanned<String>> {
        match &node.value {
            NodeValue::Decimal(text) if text.contains(['e', 'E']) => {
                let message = format!("{what} is `{text}`, a number with an exponent");
                let finding = Finding::error("NUMBER_WITH_EXPONENT", message).at(self.place_of(&node.span));
                self.findings
                    .push(finding.with_help("write the number out: 1500, not 1.5e3"));
                None
            }
            NodeValue::Decimal(text) | NodeValue::Integer(text) | NodeValue::Text(text) => {
                Some(Spanned::new(text.clone(), node.span.clone()))
            }
            _ => self.wrong(what, node, "a number"),
        }
    }

    /// The node as a date.
    pub fn as_date(&self, node: &Node, what: &str) -> Option<Spanned<Date>> {
        let text = match &node.value {
            NodeValue::Date(date) => return Some(Spanned::new(*date, node.span.clone())),
            NodeValue::Text(text) => text,
            _ => return self.wrong(what, node, "a date"),
        };
        if let Some(date) = date_of(text) {
            return Some(Spanned::new(date, node.span.clone()));
        }
        let message = format!("{what} is `{text}`; expected a date like 2024-06-01");
        self.findings.push(
            Finding::error("NOT_A_DATE", message)
                .at(self.place_of(&node.span))
                .with_help("write year, month and day, all in digits: 2024-06-01"),
        );
        None
    }

    /// The node as an array.
    pub fn as_array(&self, node: &'a Node, what: &str) -> Option<Spanned<&'a [Node]>> {
        match &node.value {
            NodeValue::Array(nodes) => Some(Spanned::new(nodes.as_slice(), node.span.clone())),
            _ => self.wrong(what, node, "a list"),
        }
    }

    pub(super) fn wrong<T>(&self, what: &str, node: &Node, expected: &str) -> Option<T> {
        self.findings.push(wrong_type(what, node, expected, self.file));
        None
    }
}

/// Says what was found and what was expected, with what to write instead.
pub(super) fn wrong_type(what: &str, node: &Node, expected: &str, file: FileId) -> Finding {
    let text = format!("{what} is {}; expected {expected}", node.kind());
    let finding = Finding::error("WRONG_TYPE", text).at(Place::new(file, node.span.clone()));
    let key = what.trim_matches('`');
    match (&node.value, expected) {
        (NodeValue::Null, _) => finding.with_help("leave the key out"),
        (NodeValue::Table(_), "a list") if what.starts_with('`') && key != "picks" => {
            finding.with_help(format!("write the heading with two brackets: `[[{key}]]`"))
        }
        (NodeValue::Table(_), "a list") => {
            finding.with_help("write a list of tables: `[{ attribute = \"exterior\", option = \"white\" }]`")
        }
        (NodeValue::Text(text), "a list") => finding.with_help(format!("write `[\"{text}\"]`")),
        (NodeValue::Text(text), "true or false") => match text.trim().to_ascii_lowercase().as_str() {
            "true" | "yes" => finding.with_help("write `true` without quotes"),
            "false" | "no" => finding.with_help("write `false` without quotes"),
            _ => finding.with_help("write `true` or `false`"),
        },
        (_, "true or false") => finding.with_help("write `true` or `false`"),
        (NodeValue::Text(text), "a whole number") if text.bytes().all(|byte| byte.is_ascii_digit()) => {
            finding.with_help(format!("write `{text}` without quotes"))
        }
        (_, "a whole number") => finding.with_help("write it like `2`"),
        (NodeValue::Integer(_) | NodeValue::Decimal(_), "text") => finding.with_help("put it in quotes"),
        (NodeValue::Text(_), "a table") => finding.with_help("write `{ key = \"value\" }`"),
        _ => finding,
    }
}

/// The date that `2024-06-01` writes; nothing else is a date.
fn date_of(text: &str) -> Option<Date> {
    let mut parts = text.split('-');
    let mut part = |digits: usize| {
        let part = parts.next()?;
        (part.len() == digits && part.bytes().all(|byte| byte.is_ascii_digit())).then_some(part)
    };
    let (year, month, day) = (part(4)?, part(2)?, part(2)?);
    if parts.next().is_some() {
        return None;
    }
    Date::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?).ok()
}
