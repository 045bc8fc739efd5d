//! Types of expressions: what fits, what does not, and what is said of it.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    AttributeIndex, Expression, FactIndex, FigureIndex, Id, MeasureIndex, Number, OptionEntry, Subject, Value, ValueType,
};
use expect_test::{Expect, expect};

use super::{AttributeShape, Names, Parsed, PlacedText, Scope, Type};
use crate::finding::{Findings, Place};
use crate::render::{RenderStyle, render};
use crate::source::Sources;

fn option(id: &str, families: &[&str], properties: &[(&str, Value)]) -> OptionEntry {
    let mut option = OptionEntry::plain(id);
    option.families = families.iter().map(|family| Id::new(family)).collect();
    option.properties = properties.iter().map(|(id, value)| (Id::new(id), value.clone())).collect();
    option
}

/// operation, exterior (asked only sometimes; families, gloss), glazing per sash, sizes, facts and figures.
fn names() -> Names {
    let shape = |id: &str, options: Vec<OptionEntry>, conditional: bool| AttributeShape {
        id: Id::new(id),
        options: Rc::new(options),
        conditional,
    };
    let mut names = Names::new(LengthUnit::Inch);
    let upper = names.add_part(&Id::new("upper"), &Id::new("sash"));
    let lower = names.add_part(&Id::new("lower"), &Id::new("sash"));
    let operations = vec![option("casement", &[], &[]), option("hung", &[], &[]), option("fixed", &[], &[])];
    names.add_attribute(AttributeIndex(0), None, shape("operation", operations, false));
    let gloss = |value: i64| [("gloss", Value::Number(Number::from(value)))];
    let colours = vec![option("white", &[], &gloss(60)), option("grey", &["dark"], &gloss(30)), option("black", &["dark"], &[])];
    names.add_attribute(AttributeIndex(1), None, shape("exterior", colours.clone(), true));
    let glass = || vec![option("annealed", &[], &[]), option("tempered", &["safety"], &[])];
    names.add_attribute(AttributeIndex(2), Some(upper), shape("glazing", glass(), false));
    names.add_attribute(AttributeIndex(3), Some(lower), shape("glazing", glass(), false));
    names.add_attribute(AttributeIndex(4), None, shape("interior", colours, false));
    names.add_measure(MeasureIndex(0), &Id::new("opening_width"), ValueType::Length);
    names.add_measure(MeasureIndex(1), &Id::new("lites"), ValueType::Number);
    names.add_fact(FactIndex(0), &Id::new("year_built"), ValueType::Number, BTreeSet::new());
    let zones = [Id::new("northern"), Id::new("southern")].into_iter().collect();
    names.add_fact(FactIndex(1), &Id::new("zone"), ValueType::Option, zones);
    names.add_fact(FactIndex(2), &Id::new("sleeping_room"), ValueType::Bool, BTreeSet::new());
    names.add_fact(FactIndex(3), &Id::new("permit_on"), ValueType::Date, BTreeSet::new());
    names.add_figure(FigureIndex(0), &Id::new("clear_area"), None, Some(Type::plain(ValueType::Area)));
    names.add_figure(FigureIndex(1), &Id::new("sash_weight"), Some(upper), Some(Type::plain(ValueType::Number)));
    names.add_figure(FigureIndex(2), &Id::new("sash_weight"), Some(lower), Some(Type::plain(ValueType::Number)));
    let hung = Expression::is_option(AttributeIndex(0), "hung");
    names.set_part_conditions(BTreeMap::from([(upper, hung)]));
    names
}

/// Types `written` by `with` and gives the findings as printed, or what came out.
fn typed<T: std::fmt::Debug>(written: &str, with: impl Fn(&Scope<'_>, &Parsed) -> Option<T>) -> String {
    let (findings, mut sources, names) = (Findings::new(), Sources::new(), names());
    let file = sources.add("catalog.toml", written);
    let text = PlacedText::new(written.to_owned(), Place::new(file, 0..written.len()), &sources);
    let scope = Scope::new(&names, &findings);
    let out = Parsed::parse(text, &findings).and_then(|parsed| with(&scope, &parsed));
    let sorted = findings.into_sorted(&sources);
    match out {
        Some(out) => {
            assert!(sorted.is_empty(), "something came out in spite of findings");
            format!("{out:?}")
        }
        None => {
            assert!(!sorted.is_empty(), "nothing came out, and no finding says why");
            render(&sorted, &sources, RenderStyle { colour: false })
        }
    }
}

fn check_condition(written: &str, expected: Expect) {
    expected.assert_eq(&typed(written, |scope, parsed| scope.condition(parsed)));
}

fn is_condition(written: &str) {
    let out = typed(written, |scope, parsed| scope.condition(parsed));
    assert!(!out.contains("error"), "{written}\n{out}");
}

/// The type of an expression, in words.
fn type_of(written: &str) -> String {
    typed(written, |scope, parsed| scope.any_type(parsed).map(|typed| typed.of.value_type))
}

#[test]
fn a_quoted_text_takes_the_type_and_unit_of_the_other_side_whichever_side_it_stands_on() {
    let length = r#"Some(Compare(GreaterOrEqual, Read(Measure(MeasureIndex(0))), Literal(Length(15))))"#;
    let left = typed("opening_width >= \"15\"", |scope, parsed| Some(scope.condition(parsed)));
    assert_eq!(left, length);
    is_condition("\"15\" <= opening_width");
    is_condition("operation == \"casement\"");
    is_condition("clear_area >= \"5.7 ft2\"");
    is_condition("permit_on < \"2026-11-25\"");
    is_condition("zone == \"northern\"");
    is_condition("opening_width.deducted_by == \"nobody\"");
    is_condition("lites == \"3\"");
}

#[test]
fn a_metric_length_is_the_same_value_as_its_inches() {
    let metric = typed("opening_width == \"381 mm\"", |scope, parsed| scope.condition(parsed));
    assert_eq!(metric, typed("opening_width == \"15\"", |scope, parsed| scope.condition(parsed)));
}

#[test]
fn lengths_multiply_to_areas_and_functions_give_numbers() {
    assert_eq!(type_of("opening_width * opening_width"), "Area");
    assert_eq!(type_of("2 * opening_width"), "Length");
    assert_eq!(type_of("opening_width - \"1/2\""), "Length");
    assert_eq!(type_of("floor_to(opening_width - \"1/2\", \"1/8\")"), "Length");
    assert_eq!(type_of("max(in_ft2(clear_area), 5)"), "Number");
    assert_eq!(type_of("in_inches(opening_width) / 2 + lites"), "Number");
    assert_eq!(type_of("operation == \"hung\" ? \"1 in\" : opening_width"), "Length");
    assert_eq!(type_of("sum(sash_weight)"), "Number");
    assert_eq!(type_of("min(\"2\", opening_width)"), "Length");
    assert_eq!(type_of("max(permit_on, \"2026-01-01\")"), "Date");
}

#[test]
fn families_are_expanded_into_their_options() {
    check_condition(
        r#"interior in family("dark")"#,
        expect![[r#"In(Read(Attribute(AttributeIndex(4))), [Literal(Option(`grey`)), Literal(Option(`black`))])"#]],
    );
}

#[test]
fn any_and_all_go_over_the_parts_that_the_unit_has() {
    check_condition(
        r#"any(glazing == "tempered")"#,
        expect![[r#"Or([And([Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`hung`))), Compare(Equal, Read(Attribute(AttributeIndex(2))), Literal(Option(`tempered`)))]), Compare(Equal, Read(Attribute(AttributeIndex(3))), Literal(Option(`tempered`)))])"#]],
    );
    is_condition(r#"all(glazing == "tempered" && sash_weight < 40)"#);
    is_condition(r#"glazing.upper == glazing.lower"#);
}

#[test]
fn reading_a_property_needs_a_guard_where_the_attribute_may_be_not_asked() {
    is_condition("interior.gloss > 30");
    is_condition("is_asked(exterior) && exterior.gloss > 30");
    is_condition("exterior.gloss > 30 && is_asked(exterior)");
    is_condition("!is_asked(exterior) || exterior.gloss > 30");
    is_condition("exterior == \"grey\" && exterior.gloss > 30");
    is_condition("is_asked(exterior) ? exterior.gloss > 30 : true");
    is_condition("exterior == \"grey\"");
    check_condition(
        "exterior.gloss > 30 || is_asked(exterior)",
        expect![[r#"
            error[NOT_GUARDED]: `exterior` may be not asked here, and then it has no `gloss`
             --> catalog.toml:1:1
              |
            1 | exterior.gloss > 30 || is_asked(exterior)
              | ^^^^^^^^^^^^^^
              |
              = help: write `is_asked(exterior) && ...` or `!is_asked(exterior) || ...`

        "#]],
    );
    // Either side may be the true one, so that neither guards.
    let either = typed("(is_asked(exterior) || sleeping_room) && exterior.gloss > 30", |scope, parsed| {
        scope.condition(parsed)
    });
    assert!(either.contains("NOT_GUARDED"), "{either}");
}

#[test]
fn what_may_be_wrong_is_said_with_its_place_and_a_way_out() {
    let mut all = String::new();
    for written in [
        "operaton == \"hung\"",
        "operation == \"casment\"",
        "opening_width >= 15",
        "opening_width == \"35,5\"",
        "clear_area >= \"5.7\"",
        "opening_width / lites > \"2\"",
        "lites / 0 == 1",
        "glazing == \"tempered\"",
        "glazing.left == \"tempered\"",
        "operation < \"hung\"",
        "operation == zone",
        "interior in family(\"dakr\")",
        "interior in [\"white\", \"blue\"]",
        "floor_to(opening_width, lites) > \"1\"",
        "flor_to(opening_width, \"1/8\") > \"1\"",
        "sleeping_room + 1 > 2",
        "any(operation == \"hung\")",
        "clear_area * opening_width == clear_area",
        "\"12\" == \"12\"",
        "1 < 2 < 3",
        "opening_width",
        "interior.sheen > 3",
        "year_built.zone == 3",
        "is_asked(year_built)",
        "permit_on < \"25.11.2026\"",
    ] {
        let out = typed(written, |scope, parsed| scope.condition(parsed));
        let short: Vec<&str> = out
            .lines()
            .filter(|line| line.starts_with("error") || line.contains("help") || line.contains('^'))
            .map(str::trim_end)
            .collect();
        all.push_str(&format!("{written}\n{}\n", short.join("\n")));
    }
    expect![[r#"
        operaton == "hung"
        error[UNKNOWN_NAME]: `operaton` is not a name of this catalog
          | ^^^^^^^^
          = help: did you mean `operation`?
        operation == "casment"
        error[UNKNOWN_OPTION]: `casment` is not an option of `operation`
          |              ^^^^^^^^^
          = help: did you mean `casement`?
        opening_width >= 15
        error[WRONG_TYPE]: this is a number; expected a length
          |                  ^^
          = help: a length is written in quotes: "15" or "35 5/8"
        opening_width == "35,5"
        error[WRONG_VALUE]: `35,5` has a decimal comma
          |                  ^^^^^^
          = help: write a decimal point: `35.5`, or no comma if it separates thousands
        clear_area >= "5.7"
        error[WRONG_VALUE]: `5.7` has no unit
          |               ^^^^^
          = help: units are `sq in`, `sq ft`, `mm2`, `cm2`, `m2`
        opening_width / lites > "2"
        error[DIVISION]: only division by a written number is allowed
          |                 ^^^^^
          = help: write the number, such as `/ 2`; multiply by what is not written as a number
        lites / 0 == 1
        error[DIVISION]: this divides by zero
          |         ^
          = help: write the number, such as `/ 2`; multiply by what is not written as a number
        glazing == "tempered"
        error[PART_NOT_SAID]: `glazing` is one a sash, and here nothing says which sash
          | ^^^^^^^
          = help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts
        glazing.left == "tempered"
        error[PART_NOT_SAID]: `glazing` is one a sash, and here nothing says which sash
          | ^^^^^^^^^^^^
          = help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts
        operation < "hung"
        error[WRONG_TYPE]: an option has no order
          | ^^^^^^^^^^^^^^^^^^
          = help: compare with `==` or `!=`, or read a property: `exterior.gloss`
        operation == zone
        error[NEVER_EQUAL]: `operation` and `zone` have no option in common
          | ^^^^^^^^^^^^^^^^^
          = help: options are compared by their ids
        interior in family("dakr")
        error[UNKNOWN_FAMILY]: no option of `interior` is in the family `dakr`
          |                    ^^^^^^
          = help: did you mean `dark`?
        interior in ["white", "blue"]
        error[UNKNOWN_OPTION]: `blue` is not an option of `interior`
          |                       ^^^^^^
          = help: options of `interior` are `black`, `grey`, `white`
        floor_to(opening_width, lites) > "1"
        error[WRONG_TYPE]: this is a number; expected a length
          |                         ^^^^^
          = help: a length is written in quotes: "15" or "35 5/8"
        flor_to(opening_width, "1/8") > "1"
        error[UNKNOWN_FUNCTION]: `flor_to` is not a function
          | ^^^^^^^
          = help: did you mean `floor_to`?
        sleeping_room + 1 > 2
        error[WRONG_TYPE]: a yes or no is nothing to calculate with
          | ^^^^^^^^^^^^^
          = help: calculate with numbers, lengths and areas
        any(operation == "hung")
        error[NO_PARTS]: nothing in here is one a part
          | ^^^^^^^^^^^^^^^^^^^^^^^^
          = help: any, all and sum go over attributes and figures that are `per` part
        clear_area * opening_width == clear_area
        error[WRONG_TYPE]: a length times an area is neither
          | ^^^^^^^^^^^^^^^^^^^^^^^^^^
          = help: multiply by a number, or two lengths
        "12" == "12"
        error[UNCLEAR_TEXT]: nothing says what `12` is
          | ^^^^
          = help: a text takes the type of the other side; here write a length or an area with its unit, such as "35 5/8 in"
        1 < 2 < 3
        error[WRONG_TYPE]: two comparisons stand in a chain
          | ^^^^^^^^^
          = help: join them: `a < b && b < c`
        opening_width
        error[WRONG_TYPE]: this is a length; expected a yes or no
          | ^^^^^^^^^^^^^
          = help: compare it with something: `>=`, `==`
        interior.sheen > 3
        error[UNKNOWN_PROPERTY]: no option of `interior` has a property `sheen`
          | ^^^^^^^^^^^^^^
          = help: give the options of `interior` a property `sheen`
        year_built.zone == 3
        error[UNKNOWN_MEMBER]: `year_built` has no member `zone`
          | ^^^^^^^^^^^^^^^
          = help: a fact has no members
        is_asked(year_built)
        error[NOT_AN_ATTRIBUTE]: this is not an attribute
          |          ^^^^^^^^^^
          = help: is_asked takes the name of an attribute: `is_asked(exterior)`
        permit_on < "25.11.2026"
        error[WRONG_VALUE]: `25.11.2026` is not a date
          |             ^^^^^^^^^^^^
          = help: write it like 2026-11-25
    "#]].assert_eq(&all);
}

#[test]
fn a_standard_may_give_only_options_that_its_attribute_has() {
    let wanted = names().type_of(Subject::Attribute(AttributeIndex(0)));
    let standard = |written: &str| typed(written, |scope, parsed| scope.option_of(parsed, wanted.as_ref()?));
    assert!(standard("zone == \"northern\" ? \"hung\" : \"fixed\"").starts_with("Conditional"));
    let strange = standard("sleeping_room ? \"hung\" : interior");
    assert!(strange.contains("UNKNOWN_OPTION") || strange.contains("this may give"), "{strange}");
    assert!(standard("sleeping_room ? \"hung\" : \"sliding\"").contains("`sliding` is not an option of `operation`"));
}
