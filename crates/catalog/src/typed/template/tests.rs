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
    names.add_figure(
        FigureIndex(0),
        &Id::new("unit_width"),
        None,
        Some(Type::plain(ValueType::Length)),
    );
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
    check(
        None,
        "{unit_width} {exterior}: {exterior.gloss}, {glazing.upper} {glazing.lower.gloss}",
        expect![[r#"
        [Value(Figure(FigureIndex(0))), Text(" "), Value(Attribute(AttributeIndex(0))), Text(": "), Property(AttributeIndex(0), `gloss`), Text(", "), Value(Attribute(AttributeIndex(1))), Text(" "), Property(AttributeIndex(2), `gloss`)]
    "#]],
    );
    check(
        None,
        "plain {{text}}",
        expect![[r#"
        [Text("plain {text}")]
    "#]],
    );
}

#[test]
fn a_bare_name_is_this_part() {
    check(
        Some(PartIndex(1)),
        "{glazing} {glazing.gloss}",
        expect![[r#"
        [Value(Attribute(AttributeIndex(2))), Text(" "), Property(AttributeIndex(2), `gloss`)]
    "#]],
    );
    check(
        None,
        "{glazing} {glazing.gloss}",
        expect![[r#"
        error[PART_NOT_SAID]: `glazing` is one a sash, and here nothing says which sash
         --> catalog.toml:1:2
          |
        1 | {glazing} {glazing.gloss}
          |  ^^^^^^^
          |
          = help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts

        error[PART_NOT_SAID]: `glazing` is one a sash, and here nothing says which sash
         --> catalog.toml:1:12
          |
        1 | {glazing} {glazing.gloss}
          |            ^^^^^^^
          |
          = help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts

    "#]],
    );
}

#[test]
fn every_unknown_name_is_a_finding() {
    check(
        None,
        "{unit_wdith} {exterior.glos} {nothing} {exterior.sheen}",
        expect![[r#"
        error[UNKNOWN_NAME]: `unit_wdith` is not a name of this catalog
         --> catalog.toml:1:2
          |
        1 | {unit_wdith} {exterior.glos} {nothing} {exterior.sheen}
          |  ^^^^^^^^^^
          |
          = help: did you mean `unit_width`?

        error[UNKNOWN_PROPERTY]: no option of `exterior` has a property `glos`
         --> catalog.toml:1:24
          |
        1 | {unit_wdith} {exterior.glos} {nothing} {exterior.sheen}
          |                        ^^^^
          |
          = help: did you mean `gloss`?

        error[UNKNOWN_NAME]: `nothing` is not a name of this catalog
         --> catalog.toml:1:31
          |
        1 | {unit_wdith} {exterior.glos} {nothing} {exterior.sheen}
          |                               ^^^^^^^
          |
          = help: names are `exterior`, `glazing`, `lower`, `unit_width`, `upper`

        error[UNKNOWN_PROPERTY]: no option of `exterior` has a property `sheen`
         --> catalog.toml:1:50
          |
        1 | {unit_wdith} {exterior.glos} {nothing} {exterior.sheen}
          |                                                  ^^^^^
          |
          = help: properties are `gloss`

    "#]],
    );
    check(
        None,
        "{unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}",
        expect![[r#"
        error[UNKNOWN_MEMBER]: `unit_width` has no member `gloss`
         --> catalog.toml:1:2
          |
        1 | {unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}
          |  ^^^^^^^^^^^^^^^^
          |
          = help: a figure has no members but its parts

        error[UNKNOWN_NAME]: found `.more` after a property
         --> catalog.toml:1:36
          |
        1 | {unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}
          |                                    ^^^^
          |
          = help: a property has no parts; leave it out

        error[NOT_A_VALUE]: `upper` is a part, not a value
         --> catalog.toml:1:43
          |
        1 | {unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}
          |                                           ^^^^^
          |
          = help: name an attribute of the part: `glazing.upper`

        error[PART_NOT_SAID]: `glazing` is one a sash, and here nothing says which sash
         --> catalog.toml:1:51
          |
        1 | {unit_width.gloss} {exterior.gloss.more} {upper} {glazing.middle}
          |                                                   ^^^^^^^
          |
          = help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts

    "#]],
    );
}

#[test]
fn braces_that_do_not_match_are_underlined() {
    check(
        None,
        "it is {unit_width",
        expect![[r#"
        error[SYNTAX]: found `{` that is not closed
         --> catalog.toml:1:7
          |
        1 | it is {unit_width
          |       ^
          |
          = help: close it with `}`, or write `{{` to print a brace

    "#]],
    );
}
