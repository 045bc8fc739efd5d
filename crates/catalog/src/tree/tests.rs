//! One helper: a file's text in, the tree or the values taken and the findings out.

mod json;
mod nesting;
mod reader;
mod toml;

use expect_test::Expect;

use super::*;
use crate::finding::{Finding, Place};

/// `line:column-column code message`, then help and related places, for each finding.
fn lines_of(findings: Findings, sources: &Sources) -> String {
    let mut out = String::new();
    for finding in findings.into_sorted(sources) {
        out += &format!(
            "{} {} {}\n",
            shown(finding.place(), sources),
            finding.code(),
            finding.message()
        );
        out += &finding
            .help()
            .map_or(String::new(), |help| format!("  help: {help}\n"));
        for (place, what) in finding.related() {
            out += &format!("  {}: {what}\n", shown(Some(place), sources));
        }
    }
    out
}

fn shown(place: Option<&Place>, sources: &Sources) -> String {
    place.map_or("-".to_owned(), |place| {
        let position = sources.position(place);
        format!(
            "{}:{} {:?}",
            position.line,
            position.column,
            sources.text_at(place)
        )
    })
}

/// The tree in one line: keys and values, without spans.
fn tree_of(node: &Node) -> String {
    let join = |parts: Vec<String>| parts.join(", ");
    match &node.value {
        NodeValue::Table(entries) => {
            let entry = |entry: &Entry| format!("{}: {}", entry.key.value, tree_of(&entry.node));
            format!("{{{}}}", join(entries.iter().map(entry).collect()))
        }
        NodeValue::Array(nodes) => format!("[{}]", join(nodes.iter().map(tree_of).collect())),
        NodeValue::Text(text) => format!("{text:?}"),
        NodeValue::Integer(text) => format!("integer {text}"),
        NodeValue::Decimal(text) => format!("decimal {text}"),
        NodeValue::Bool(value) => value.to_string(),
        NodeValue::Date(date) => format!("date {date}"),
        NodeValue::Null => "null".to_owned(),
    }
}

fn check(path: &str, text: &str, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add(path, text);
    let findings = Findings::new();
    let tree = read(&sources, file, &findings).map_or("no tree".to_owned(), |node| tree_of(&node));
    expected.assert_eq(&format!("{tree}\n{}", lines_of(findings, &sources)));
}

fn check_reader(path: &str, text: &str, take: impl FnOnce(&mut TableReader<'_>) -> String, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add(path, text);
    let findings = Findings::new();
    let root = read(&sources, file, &findings).unwrap();
    let mut reader = TableReader::new(&root, file, "attribute", &findings).unwrap();
    let taken = take(&mut reader);
    reader.finish();
    expected.assert_eq(&format!("{taken}\n{}", lines_of(findings, &sources)));
}
