//! One helper: an order's measures and facts in, values and findings out.

use expect_test::{Expect, expect};

use astragal_model::{Id, Scope};

use super::*;
use crate::source::Sources;
use crate::tree;

fn declared_measure(name: &str) -> Option<Measure> {
    let (value_type, step) = match name {
        "width" => (ValueType::Length, Number::ratio(1, 16)),
        "clear" => (ValueType::Length, None),
        "panes" => (ValueType::Number, Some(Number::ONE)),
        _ => return None,
    };
    Some(Measure {
        id: Id::new(name),
        label: name.to_owned(),
        value_type,
        step,
    })
}

fn declared_fact(name: &str) -> Option<SiteFact> {
    let value_type = match name {
        "sleeping_room" => ValueType::Bool,
        "year_built" => ValueType::Number,
        "sill_height" => ValueType::Length,
        "surveyed" => ValueType::Date,
        "zone" => ValueType::Option,
        _ => return None,
    };
    let zones = [
        ("north".into(), "North".to_owned()),
        ("south".into(), "South".to_owned()),
    ];
    Some(SiteFact {
        id: Id::new(name),
        label: name.to_owned(),
        value_type,
        options: if value_type == ValueType::Option {
            zones.to_vec()
        } else {
            Vec::new()
        },
        of: Scope::House,
    })
}

fn check(text: &str, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add("order.toml", text);
    let findings = Findings::new();
    let root = tree::read(&sources, file, &findings).unwrap();
    let mut reader = TableReader::new(&root, file, "opening", &findings).unwrap();
    let mut out = String::new();
    for raw in raw_measures(&mut reader, "measures") {
        let value = declared_measure(&raw.name).and_then(|m| measured(&raw, &m, LengthUnit::Inch, &findings));
        out += &format!("{} = {value:?}\n", raw.name);
    }
    for raw in raw_facts(&mut reader, "facts") {
        let value = declared_fact(&raw.name).map(|f| fact_value(&raw, &f, LengthUnit::Inch, &findings));
        out += &format!("{} = {value:?}\n", raw.name);
    }
    reader.finish();
    for finding in findings.into_sorted(&sources) {
        let place = finding.place().unwrap();
        let at = (sources.position(place).line, sources.text_at(place));
        out += &format!("{at:?} {} {}\n", finding.code(), finding.message());
        out += &finding.help().map_or(String::new(), |h| format!("  help: {h}\n"));
    }
    expected.assert_eq(&out);
}

#[test]
fn measures_are_exact_and_say_who_deducted() {
    check(
        "[measures]\nwidth = { size = \"35 5/8\", deducted_by = \"dealer\" }\nclear = \"904.875 mm\"\npanes = 3\n",
        expect![""],
    );
}

#[test]
fn a_measure_off_its_step_is_never_brought_to_it() {
    check(
        "[measures]\nwidth = \"35.7\"\npanes = \"1.5\"\nclear = \"35.7\"\n",
        expect![""],
    );
}

#[test]
fn a_size_that_is_no_length_says_how_to_write_one() {
    check(
        "[measures]\nwidth = \"35,625\"\nclear = \"8-May\"\npanes = \"wide\"\n",
        expect![""],
    );
    check(
        "[measures]\nwidth = true\nclear = { deducted_by = \"nobody\" }\npanes = { size = 2, deducted_by = \"me\", depth = 1 }\n",
        expect![""],
    );
}

#[test]
fn facts_have_the_type_that_the_catalog_declares() {
    check(
        "[facts]\nsleeping_room = true\nyear_built = 1964\nsill_height = \"1 ft\"\nsurveyed = 2026-05-02\nzone = \"north\"\n",
        expect![""],
    );
    check(
        "[facts]\nsleeping_room = \"yes\"\nyear_built = false\nsill_height = \"low\"\nsurveyed = \"2026-05-02T10:00\"\nzone = \"nort\"\n",
        expect![""],
    );
}

#[test]
fn unknown_may_be_written_for_every_fact() {
    check(
        "[facts]\nsleeping_room = \"unknown\"\nyear_built = \"unknown\"\nsurveyed = \"unknown\"\nzone = \"unknown\"\nsill_height = [1]\n",
        expect![""],
    );
}
