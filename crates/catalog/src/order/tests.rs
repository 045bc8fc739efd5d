//! One helper each: the text of an order in, its findings or what an opening knows out.

use expect_test::{Expect, expect};

use super::*;

mod facts;
mod json;
mod library;
mod openings;
mod readings;
mod room_facts;
mod units;
mod used;

/// The head of an order that uses one catalog.
const HEAD: &str = r#"format = 1
[order]
id = "1042"
date = 2026-11-25
currency = "USD"
[[catalog]]
id = "hinged"
folder = "library/hinged"
book = "library/hinged-book"
policy = "library/policy"
"#;

/// The end of an opening: its one unit.
const UNIT: &str = "[[opening.unit]]\ncatalog = \"hinged\"\n";

/// An opening that has nothing but a tag and a unit.
const OPENING: &str = "[[opening]]\ntag = \"K1\"\n[[opening.unit]]\ncatalog = \"hinged\"\n";

fn read_file(name: &str, text: &[u8], options: &ReadOptions) -> ReadOrder {
    let folder = tempfile::tempdir().unwrap();
    library::write(folder.path());
    let path = folder.path().join(name);
    std::fs::write(&path, text).unwrap();
    let read = read_order(&path, options);
    let has_error = read.findings.iter().any(Finding::is_error);
    assert_eq!(
        read.order.is_none(),
        has_error,
        "an order exactly when there is no error"
    );
    read
}

fn read_text(text: &str) -> ReadOrder {
    read_file("order.toml", text.as_bytes(), &ReadOptions::default())
}

/// `line "text" CODE message`, then help and related places, for each finding.
fn lines_of(read: &ReadOrder) -> String {
    let shown = |place: Option<&Place>| {
        place.map_or("-".to_owned(), |place| {
            let path = read.sources.path(place.file);
            let path = if path.starts_with("order.") {
                String::new()
            } else {
                format!("{path}:")
            };
            let line = read.sources.position(place).line;
            format!("{path}{line} {:?}", read.sources.text_at(place))
        })
    };
    let mut out = String::new();
    for finding in &read.findings {
        let severity = if finding.is_error() { "" } else { "warning " };
        out += &format!(
            "{} {severity}{} {}\n",
            shown(finding.place()),
            finding.code(),
            finding.message()
        );
        for (place, what) in finding.related() {
            out += &format!("  {}: {what}\n", shown(Some(place)));
        }
        out += &finding
            .help()
            .map_or(String::new(), |help| format!("  help: {help}\n"));
    }
    if out.is_empty() {
        "no findings\n".to_owned()
    } else {
        out
    }
}

/// Compares the findings about a whole order.
fn check_whole(text: &str, expected: Expect) {
    expected.assert_eq(&lines_of(&read_text(text)));
}

/// Compares the findings about an order of which the text is what follows the head, on line 11.
fn check(text: &str, expected: Expect) {
    check_whole(&format!("{HEAD}{text}"), expected);
}

/// The order that follows the head; it must have no error.
fn order_of(text: &str) -> OrderFile {
    let read = read_text(&format!("{HEAD}{text}"));
    let lines = lines_of(&read);
    read.order.unwrap_or_else(|| panic!("{lines}"))
}

/// The fact of the opening `K1` as its catalog types it.
fn fact_of(text: &str, fact: &str) -> String {
    let file = order_of(text);
    let opening = file
        .order
        .openings
        .iter()
        .find(|opening| opening.tag == "K1")
        .unwrap();
    let catalog = &file.catalogs[&opening.units[0].catalog].catalog.catalog;
    let (index, _) = catalog
        .declarations()
        .facts
        .iter()
        .find(|(_, found)| found.id.as_str() == fact)
        .unwrap();
    match opening.site.facts.at(index) {
        None => "unknown".to_owned(),
        Some(value) => format!("{value:?}"),
    }
}
