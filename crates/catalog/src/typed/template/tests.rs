//! Messages: which names stand in braces, and what is said of others.

use std::collections::BTreeMap;
use std::rc::Rc;

use astragal_model::measure_text::LengthUnit;
use astragal_model::{AttributeIndex, FigureIndex, Id, Number, OptionEntry, PartIndex, Value, ValueType};
use expect_test::{Expect, expect};

use super::*;
use crate::finding::{Findings, Place};
use crate::render::{RenderStyle, render};
use crate::typed::{AttributeShape, Names, Type};

fn names() -> Names {
    let mut names = Names::new(LengthUnit::Inch);
    let upper = names.add_part(&Id::new("upper"), &Id::new("sash"));
    let lower = names.add_part(&Id::new("lower"), &Id::new("sash"));
    let mut white = OptionEntry::plain("white");
    white.properties = BTreeMap::from([(Id::new("gloss"), Value::Number(Number::ONE))]);
    let options = Rc::new(vec![white]);
    let shape = |id: &str| AttributeShape {
        id: Id::new(id),
        options: Rc::clone(&options),
        conditional: true,
    };
    names.add_attribute(AttributeIndex(0), None, shape("exterior"));
    names.add_attribute(AttributeIndex(1), Some(upper), shape("glazing"));
    names.add_attribute(AttributeIndex(2), Some(lower), shape("glazing"));
    names.add_figure(FigureIndex(0), &Id::new("unit_width"), None, Some(Type::plain(ValueType::Length)));
    names
}

fn check(part: Option<PartIndex>, written: &str, expected: Expect) {
    let (findings, mut sources, names) = (Findings::new(), Sources::new(), names());
    let file = sources.add("catalog.toml", written);
    let text = PlacedText::new(written.to_owned(), Place::new(file, 0..written.len()), &sources);
    let read = template(&text, &Scope::new(&names, &findings).in_part(part));
    let sorted = findings.into_sorted(&sources);
    assert_eq!(read.is_none(), !sorted.is_empty());
    let out = match read {
        Some(template) => format!("{:?}\n", template.pieces),
        None => render(&sorted, &sources, RenderStyle { colour: false }),
    };
    expected.assert_eq(&out);
}

#[test]
fn names_properties_and_parts_are_read() {
    check(None, "{unit_width} {exterior}: {exterior.gloss}, {glazing.upper} {glazing.lower.gloss}", expect![[r#""#]]);
    check(None, "plain {{text}}", expect![[r#""#]]);
}

#[test]
fn a_bare_name_is_this_part() {
    check(Some(PartIndex(1)), "{glazing} {glazing.gloss}", expect![[r#""#]]);
    check(None, "{glazing} {glazing.gloss}", expect![[r#""#]]);
}

#[test]
fn every_unknown_name_is_a_finding() {
    check(None, "{unit_wdith} {exterior.glos} {nothing} {exterior.sheen}", expect![[r#""#]]);
    check(None, "{unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}", expect![[r#""#]]);
}

#[test]
fn braces_that_do_not_match_are_underlined() {
    check(None, "it is {unit_width", expect![[r#""#]]);
}
