//! Strict JSON into a tree.
//!
//! `{"a": [1.50, null]}` is a table that holds the key `a` with an array of the number 1.50 and
//! nothing. Remarks, trailing commas, and single quotes are mistakes, as RFC 8259 wants.
//!
//! What always holds: a file with a mistake in its grammar gives no tree; a key that stands twice is
//! placed at both.
//! Cost: O(length log keys). The parser stops at its first mistake, so that only one is reported.
//! Source: RFC 8259, read by the crate `jsonc-parser` with its additions switched off, and with the
//! two that cannot be switched off (other white space, control characters in text) looked for here.

use std::collections::BTreeMap;
use std::ops::Range;

use jsonc_parser::ast::{Object, Value};
use jsonc_parser::common::Ranged;
use jsonc_parser::errors::ParseErrorKind;
use jsonc_parser::{CollectOptions, ParseOptions, ParseStringErrorKind, parse_to_ast};

use super::depth::{self, Language};
use super::{DEPTH_LIMIT, Entry, Node, NodeValue, Spanned};
use crate::finding::{Finding, Findings, Place};
use crate::source::FileId;

const STRICT: ParseOptions = ParseOptions {
    allow_comments: false,
    allow_loose_object_property_names: false,
    allow_trailing_commas: false,
    allow_missing_commas: false,
    allow_single_quoted_strings: false,
    allow_hexadecimal_numbers: false,
    allow_unary_plus_numbers: false,
    allow_bare_decimal_point_numbers: false,
    allow_non_finite_numbers: false,
    allow_extended_string_escapes: false,
};

/// Reads JSON; `None` when its grammar is broken.
pub(super) fn read(text: &str, file: FileId, findings: &Findings) -> Option<Node> {
    if let Some(span) = depth::too_deep(text, Language::Json) {
        findings.push(depth::finding(file, span));
        return None;
    }
    if let Some((span, message)) = foreign_character(text) {
        findings.push(not_json(message, Place::new(file, span)));
        return None;
    }
    match parse_to_ast(text, &CollectOptions::default(), &STRICT) {
        Ok(result) => match result.value {
            Some(value) => Some(node(value, 1, &Reading { file, findings })),
            None => {
                findings.push(not_json("there is no value", Place::new(file, 0..0)));
                None
            }
        },
        Err(error) => {
            let range = error.range();
            let start = range.start.min(text.len());
            let span = start..range.end.clamp(start, text.len());
            findings.push(not_json(&message_of(error.kind()), Place::new(file, span)));
            None
        }
    }
}

struct Reading<'a> {
    file: FileId,
    findings: &'a Findings,
}

/// Recursion is bounded: the scan before has seen at most `DEPTH_LIMIT` levels.
fn node(value: Value<'_>, level: usize, reading: &Reading<'_>) -> Node {
    let range = value.range();
    let span = range.start..range.end;
    let value = match value {
        Value::StringLit(text) => NodeValue::Text(text.value.into_owned()),
        Value::NumberLit(number) if number.value.contains(['.', 'e', 'E']) => {
            NodeValue::Decimal(number.value.to_owned())
        }
        Value::NumberLit(number) => NodeValue::Integer(number.value.to_owned()),
        Value::BooleanLit(value) => NodeValue::Bool(value.value),
        Value::NullKeyword(_) => NodeValue::Null,
        _ if level > DEPTH_LIMIT => {
            reading.findings.push(depth::finding(reading.file, span.clone()));
            NodeValue::Null
        }
        Value::Array(array) => NodeValue::Array(
            array
                .elements
                .into_iter()
                .map(|value| node(value, level + 1, reading))
                .collect(),
        ),
        Value::Object(object) => NodeValue::Table(table(object, level + 1, reading)),
    };
    Node { value, span }
}

fn table(object: Object<'_>, level: usize, reading: &Reading<'_>) -> Vec<Entry> {
    let mut first: BTreeMap<String, Range<usize>> = BTreeMap::new();
    let mut entries = Vec::new();
    for property in object.properties {
        let range = property.name.range();
        let span = range.start..range.end;
        let key = property.name.into_string();
        if let Some(before) = first.get(&key) {
            reading
                .findings
                .push(duplicate_key(&key, reading.file, span, before.clone()));
            continue;
        }
        first.insert(key.clone(), span.clone());
        entries.push(Entry {
            key: Spanned::new(key, span),
            node: node(property.value, level, reading),
        });
    }
    entries
}

fn duplicate_key(key: &str, file: FileId, again: Range<usize>, first: Range<usize>) -> Finding {
    Finding::error(
        "DUPLICATE_KEY",
        format!("key `{key}` stands twice in the same table"),
    )
    .at(Place::new(file, again))
    .with_help("keep one of the two")
    .with_related(Place::new(file, first), format!("`{key}` stands here first"))
}

fn not_json(message: &str, place: Place) -> Finding {
    Finding::error("JSON_GRAMMAR", format!("this is not JSON: {message}")).at(place)
}

/// A character that JSON forbids where it stands, and that the parser lets pass.
fn foreign_character(text: &str) -> Option<(Range<usize>, &'static str)> {
    let mut is_text = false;
    let mut is_escaped = false;
    for (at, letter) in text.char_indices() {
        let span = at..at + letter.len_utf8();
        if is_text && letter < ' ' {
            return Some((
                span,
                "a line end, tab or other control character stands in a text",
            ));
        }
        if !is_text && letter.is_whitespace() && !matches!(letter, ' ' | '\t' | '\n' | '\r') {
            return Some((span, "white space other than space, tab and line end"));
        }
        if letter == '"' && !is_escaped {
            is_text = !is_text;
        }
        is_escaped = is_text && letter == '\\' && !is_escaped;
    }
    None
}

fn message_of(kind: &ParseErrorKind) -> String {
    if let ParseErrorKind::String(ParseStringErrorKind::InvalidUnicodeEscapeSequence(value)) = kind {
        return format!("`\\u{value}` is no character");
    }
    let text = kind.to_string();
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| {
        first.to_lowercase().chain(letters).collect()
    })
}
