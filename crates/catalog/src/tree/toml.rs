//! TOML into a tree.
//!
//! `[a]` then `b = 2024-06-01` is a table that holds the key `a` with a table that holds the key `b`
//! with a date.
//!
//! What always holds: a file with a mistake in its grammar gives no tree, so that nothing partial
//! looks whole; the first mistake of each line is reported, up to twenty, and a key that stands twice
//! is placed at both.
//! Cost: O(length), and O(keys) more for each key that stands twice.
//! Source: TOML 1.0 (toml.io), read by the crate `toml`.

use std::ops::Range;

use jiff::civil::Date;
use toml::de::{DeFloat, DeInteger, DeTable, DeValue};
use toml::value::Datetime;

use super::depth::{self, Language};
use super::{DEPTH_LIMIT, Entry, Node, NodeValue, Spanned, grammar, twice};
use crate::finding::{Finding, Findings, Place};
use crate::source::FileId;

/// LIMIT: the most mistakes of one kind that are reported one by one.
const REPORTS_LIMIT: usize = 20;

/// Reads TOML; `None` when its grammar is broken.
pub(super) fn read(text: &str, file: FileId, findings: &Findings) -> Option<Node> {
    if let Some(span) = depth::too_deep(text, Language::Toml) {
        findings.push(depth::finding(file, span));
        return None;
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    let (twice, mut broken): (Vec<_>, Vec<_>) = errors
        .into_iter()
        .partition(|error| error.message() == "duplicate key");
    report_twice(text, file, &twice, table.get_ref(), findings);
    if !broken.is_empty() {
        report_grammar(text, file, &mut broken, findings);
        return None;
    }
    // Of a heading that stands twice only the last is kept: what the others declare would be missed everywhere.
    if twice
        .iter()
        .any(|error| is_in_heading(text, &within(text, error.span())))
    {
        return None;
    }
    let mut reading = Reading {
        file,
        findings,
        is_too_deep: false,
    };
    let entries = reading.table(table.into_inner(), 1);
    if reading.is_too_deep {
        None
    } else {
        Some(Node::new(NodeValue::Table(entries), 0..0))
    }
}

struct Reading<'a> {
    file: FileId,
    findings: &'a Findings,
    is_too_deep: bool,
}

impl Reading<'_> {
    /// Recursion is bounded by `DEPTH_LIMIT`.
    fn node(&mut self, value: toml::Spanned<DeValue<'_>>, level: usize) -> Node {
        let span = value.span();
        let value = match value.into_inner() {
            DeValue::String(text) => NodeValue::Text(text.into_owned()),
            DeValue::Integer(number) => self.integer(&number, &span),
            DeValue::Float(number) => self.decimal(&number, &span),
            DeValue::Boolean(value) => NodeValue::Bool(value),
            DeValue::Datetime(value) => self.date(&value, &span),
            _ if level > DEPTH_LIMIT => self.too_deep(&span),
            DeValue::Array(nodes) => {
                NodeValue::Array(nodes.into_iter().map(|node| self.node(node, level + 1)).collect())
            }
            DeValue::Table(table) => NodeValue::Table(self.table(table, level + 1)),
        };
        Node { value, span }
    }

    fn table(&mut self, table: DeTable<'_>, level: usize) -> Vec<Entry> {
        let entry = |(key, value): (toml::Spanned<std::borrow::Cow<'_, str>>, _)| Entry {
            key: Spanned::new(key.get_ref().to_string(), key.span()),
            node: self.node(value, level),
        };
        let mut entries: Vec<Entry> = table.into_iter().map(entry).collect();
        entries.sort_by_key(|entry| entry.key.span.start);
        entries
    }

    fn too_deep(&mut self, span: &Range<usize>) -> NodeValue {
        if !self.is_too_deep {
            self.findings.push(depth::finding(self.file, span.clone()));
        }
        self.is_too_deep = true;
        NodeValue::Null
    }

    fn integer(&self, number: &DeInteger<'_>, span: &Range<usize>) -> NodeValue {
        let digits = number.as_str();
        let text = if number.radix() == 10 {
            Some(digits.strip_prefix('+').unwrap_or(digits).to_owned())
        } else {
            i128::from_str_radix(digits, number.radix())
                .ok()
                .map(|value| value.to_string())
        };
        if text.is_none() {
            self.report(
                "NUMBER_TOO_LARGE",
                span,
                format!("`{number}` is too large a number"),
                "write it in decimal digits",
            );
        }
        NodeValue::Integer(text.unwrap_or_else(|| "0".to_owned()))
    }

    fn decimal(&self, number: &DeFloat<'_>, span: &Range<usize>) -> NodeValue {
        let text = number.as_str();
        if text.ends_with("inf") || text.ends_with("nan") {
            let message = format!("`{text}` is no number that can be reckoned with");
            self.report(
                "NOT_A_NUMBER",
                span,
                message,
                "write a number, or leave the key out",
            );
        }
        NodeValue::Decimal(text.strip_prefix('+').unwrap_or(text).to_owned())
    }

    fn date(&self, value: &Datetime, span: &Range<usize>) -> NodeValue {
        let date = value.date.and_then(|date| {
            let year = i16::try_from(date.year).ok()?;
            let (month, day) = (i8::try_from(date.month).ok()?, i8::try_from(date.day).ok()?);
            Date::new(year, month, day).ok()
        });
        if date.is_none() || value.time.is_some() {
            let message = format!("`{value}` has a time of day; expected a date");
            self.report(
                "NOT_A_DATE",
                span,
                message,
                "write the date alone, like 2024-06-01",
            );
        }
        NodeValue::Date(date.unwrap_or(Date::ZERO))
    }

    fn report(&self, code: &'static str, span: &Range<usize>, message: String, help: &str) {
        self.findings.push(
            Finding::error(code, message)
                .at(Place::new(self.file, span.clone()))
                .with_help(help),
        );
    }
}

fn report_twice(
    text: &str,
    file: FileId,
    errors: &[toml::de::Error],
    root: &DeTable<'_>,
    findings: &Findings,
) {
    // A key without letters is what the parser makes of a mistake that it reports as well.
    let places = errors
        .iter()
        .map(|error| within(text, error.span()))
        .filter(|span| !span.is_empty());
    let mut left_out = LeftOut::default();
    for again in places {
        let place = Place::new(file, again.clone());
        if left_out.is_one_more(&place) {
            continue;
        }
        findings.push(duplicate_key(text, place, twice::first(text, &again, root)));
    }
    left_out.report("DUPLICATE_KEY", "keys that stand twice", findings);
}

/// Reports one mistake a line: those after the first mostly follow from it.
fn report_grammar(text: &str, file: FileId, errors: &mut [toml::de::Error], findings: &Findings) {
    let place_of = |error: &toml::de::Error| Place::new(file, within(text, error.span()));
    // INVARIANT: sorted, so that what comes after a bracket that is not closed comes after it here too.
    let line_of = |place: &Place| text.get(..place.span.start).and_then(|text| text.rfind('\n'));
    // What is not closed says more than what the parser met in it.
    errors.sort_by_cached_key(|error| {
        let place = place_of(error);
        let is_quote = |at: Option<usize>| {
            at.and_then(|at| text.as_bytes().get(at))
                .is_some_and(|byte| b"\"'".contains(byte))
        };
        let start = place.span.start;
        // A quote behind a quote leaves everything open that stood open.
        let rank = match error.message() {
            _ if is_quote(Some(start)) && is_quote(start.checked_sub(1)) => 0,
            message if message.starts_with("unclosed") => 1,
            _ => 2,
        };
        (line_of(&place), rank, start)
    });
    let mut last_line = None;
    let mut left_out = LeftOut::default();
    let upset = errors
        .iter()
        .position(|error| grammar::upsets_the_rest(error.message()))
        .map_or(errors.len(), |first| first + 1);
    for error in errors.iter().take(upset) {
        let place = place_of(error);
        let line = Some(line_of(&place));
        if line != last_line && !left_out.is_one_more(&place) {
            findings.push(not_toml(text, error.message(), place));
        }
        last_line = line;
    }
    left_out.report("TOML_GRAMMAR", "lines that are not TOML", findings);
}

/// Counts reports, and remembers the first that is left out.
#[derive(Default)]
struct LeftOut {
    reports: usize,
    first: Option<Place>,
}

impl LeftOut {
    /// Counts one more report; true when it is to be left out.
    fn is_one_more(&mut self, place: &Place) -> bool {
        self.reports += 1;
        if self.reports > REPORTS_LIMIT && self.first.is_none() {
            self.first = Some(place.clone());
        }
        self.reports > REPORTS_LIMIT
    }

    fn report(self, code: &'static str, what: &str, findings: &Findings) {
        if let Some(place) = self.first {
            let text = format!(
                "{} more {what}, from here on",
                self.reports.saturating_sub(REPORTS_LIMIT)
            );
            findings.push(Finding::error(code, text).at(place));
        }
    }
}

fn not_toml(text: &str, message: &str, place: Place) -> Finding {
    if message == "recursion limit" {
        return depth::finding(place.file, place.span);
    }
    grammar::finding(text, message, place)
}

/// Bytes inside the text, whatever the parser said.
fn within(text: &str, span: Option<Range<usize>>) -> Range<usize> {
    let span = span.unwrap_or(0..0);
    let start = span.start.min(text.len());
    start..span.end.clamp(start, text.len())
}

fn is_in_heading(text: &str, span: &Range<usize>) -> bool {
    let before = text.get(..span.start).unwrap_or("");
    let line = before.rsplit('\n').next().unwrap_or("").trim_start();
    line.starts_with('[') && !line.contains('=')
}

fn duplicate_key(text: &str, again: Place, first: Option<Range<usize>>) -> Finding {
    let key = text
        .get(again.span.clone())
        .unwrap_or("")
        .trim_matches(['"', '\'']);
    let file = again.file;
    let (message, help) = if is_in_heading(text, &again.span) {
        (
            format!("the heading `{key}` stands twice"),
            format!("write `[[{key}]]`, with two brackets, each time, or keep one of the two"),
        )
    } else {
        (
            format!("key `{key}` stands twice in the same table"),
            "keep one of the two".to_owned(),
        )
    };
    let finding = Finding::error("DUPLICATE_KEY", message).at(again).with_help(help);
    match first {
        Some(span) => finding.with_related(Place::new(file, span), format!("`{key}` stands here first")),
        None => finding,
    }
}
