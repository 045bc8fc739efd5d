//! Types of expressions: what fits, what does not, and what is said of it.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    AttributeIndex, Expression, FactIndex, FigureIndex, Id, MeasureIndex, Number, OptionEntry, Subject,
    Value, ValueType,
};
use expect_test::{Expect, expect, expect_file};

use super::{AttributeShape, Names, Parsed, PlacedText, Scope, Type};
use crate::finding::{Findings, Place};
use crate::render::{RenderStyle, render};
use crate::source::Sources;

fn option(id: &str, families: &[&str], properties: &[(&str, Value)]) -> OptionEntry {
    let mut option = OptionEntry::plain(id);
    option.families = families.iter().map(|family| Id::new(family)).collect();
    option.properties = properties
        .iter()
        .map(|(id, value)| (Id::new(id), value.clone()))
        .collect();
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
    let operations = vec![
        option("casement", &[], &[]),
        option("hung", &[], &[]),
        option("fixed", &[], &[]),
    ];
    names.add_attribute(AttributeIndex(0), None, shape("operation", operations, false));
    let gloss = |value: i64| [("gloss", Value::Number(Number::from(value)))];
    let colours = vec![
        option("white", &[], &gloss(60)),
        option("grey", &["dark"], &gloss(30)),
        option("black", &["dark"], &[]),
    ];
    names.add_attribute(AttributeIndex(1), None, shape("exterior", colours.clone(), true));
    let glass = || vec![option("annealed", &[], &[]), option("tempered", &["safety"], &[])];
    names.add_attribute(AttributeIndex(2), Some(upper), shape("glazing", glass(), false));
    names.add_attribute(AttributeIndex(3), Some(lower), shape("glazing", glass(), false));
    names.add_attribute(AttributeIndex(4), None, shape("interior", colours, false));
    names.add_measure(MeasureIndex(0), &Id::new("opening_width"), ValueType::Length);
    names.add_measure(MeasureIndex(1), &Id::new("lites"), ValueType::Number);
    names.add_fact(
        FactIndex(0),
        &Id::new("year_built"),
        ValueType::Number,
        BTreeSet::new(),
    );
    let zones = [Id::new("northern"), Id::new("southern")].into_iter().collect();
    names.add_fact(FactIndex(1), &Id::new("zone"), ValueType::Option, zones);
    names.add_fact(
        FactIndex(2),
        &Id::new("sleeping_room"),
        ValueType::Bool,
        BTreeSet::new(),
    );
    names.add_fact(
        FactIndex(3),
        &Id::new("permit_on"),
        ValueType::Date,
        BTreeSet::new(),
    );
    names.add_figure(
        FigureIndex(0),
        &Id::new("clear_area"),
        None,
        Some(Type::plain(ValueType::Area)),
    );
    names.add_figure(
        FigureIndex(1),
        &Id::new("sash_weight"),
        Some(upper),
        Some(Type::plain(ValueType::Number)),
    );
    names.add_figure(
        FigureIndex(2),
        &Id::new("sash_weight"),
        Some(lower),
        Some(Type::plain(ValueType::Number)),
    );
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
    typed(written, |scope, parsed| {
        scope.any_type(parsed).map(|typed| typed.of.value_type)
    })
}

#[test]
fn a_quoted_text_takes_the_type_and_unit_of_the_other_side_whichever_side_it_stands_on() {
    let length = r#"Some(Compare(GreaterOrEqual, Read(Measure(MeasureIndex(0))), Literal(Length(15))))"#;
    let left = typed("opening_width >= \"15\"", |scope, parsed| {
        Some(scope.condition(parsed))
    });
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
    let metric = typed("opening_width == \"381 mm\"", |scope, parsed| {
        scope.condition(parsed)
    });
    assert_eq!(
        metric,
        typed("opening_width == \"15\"", |scope, parsed| scope.condition(parsed))
    );
}

#[test]
fn lengths_multiply_to_areas_and_functions_give_numbers() {
    assert_eq!(type_of("opening_width * opening_width"), "Area");
    assert_eq!(type_of("2 * opening_width"), "Length");
    assert_eq!(type_of("opening_width - \"1/2\""), "Length");
    assert_eq!(type_of("floor_to(opening_width - \"1/2\", \"1/8\")"), "Length");
    assert_eq!(type_of("max(in_ft2(clear_area), 5)"), "Number");
    assert_eq!(type_of("in_inches(opening_width) / 2 + lites"), "Number");
    assert_eq!(
        type_of("operation == \"hung\" ? \"1 in\" : opening_width"),
        "Length"
    );
    assert_eq!(type_of("sum(sash_weight)"), "Number");
    assert_eq!(type_of("min(\"2\", opening_width)"), "Length");
    assert_eq!(type_of("max(permit_on, \"2026-01-01\")"), "Date");
}

#[test]
fn families_are_expanded_into_their_options() {
    check_condition(
        r#"interior in family("dark")"#,
        expect![[
            r#"In(Read(Attribute(AttributeIndex(4))), [Literal(Option(`grey`)), Literal(Option(`black`))])"#
        ]],
    );
}

#[test]
fn any_and_all_go_over_the_parts_that_the_unit_has() {
    check_condition(
        r#"any(glazing == "tempered")"#,
        expect![[
            r#"Or([And([Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`hung`))), Compare(Equal, Read(Attribute(AttributeIndex(2))), Literal(Option(`tempered`)))]), Compare(Equal, Read(Attribute(AttributeIndex(3))), Literal(Option(`tempered`)))])"#
        ]],
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
    let either = typed(
        "(is_asked(exterior) || sleeping_room) && exterior.gloss > 30",
        |scope, parsed| scope.condition(parsed),
    );
    assert!(either.contains("NOT_GUARDED"), "{either}");
}

/// Expressions with one thing wrong each; what is said of them stands in `tests/wrong_expressions.txt`.
const WRONG: [&str; 25] = [
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
];

#[test]
fn what_may_be_wrong_is_said_with_its_place_and_a_way_out() {
    let mut all = String::new();
    for written in WRONG {
        let out = typed(written, |scope, parsed| scope.condition(parsed));
        let short: Vec<&str> = out
            .lines()
            .filter(|line| line.starts_with("error") || line.contains("help") || line.contains('^'))
            .map(str::trim_end)
            .collect();
        all.push_str(&format!("{written}\n{}\n\n", short.join("\n")));
    }
    expect_file!["tests/wrong_expressions.txt"].assert_eq(&all);
}

#[test]
fn a_standard_may_give_only_options_that_its_attribute_has() {
    let wanted = names().type_of(Subject::Attribute(AttributeIndex(0)));
    let standard = |written: &str| typed(written, |scope, parsed| scope.option_of(parsed, wanted.as_ref()?));
    assert!(standard("zone == \"northern\" ? \"hung\" : \"fixed\"").starts_with("Conditional"));
    let strange = standard("sleeping_room ? \"hung\" : interior");
    assert!(
        strange.contains("UNKNOWN_OPTION") || strange.contains("this may give"),
        "{strange}"
    );
    assert!(
        standard("sleeping_room ? \"hung\" : \"sliding\"")
            .contains("`sliding` is not an option of `operation`")
    );
}

#[test]
fn deep_nests_of_sums_and_calls_are_typed_once_a_node() {
    let calls = format!(
        "{}opening_width{} > \"1\"",
        "floor_to(".repeat(60),
        ", \"1/8\")".repeat(60)
    );
    is_condition(&calls);
    let sums = format!(
        "{}opening_width{} > \"1\"",
        "(".repeat(60),
        " + \"1\")".repeat(60)
    );
    is_condition(&sums);
    let choices = format!(
        "{}opening_width{} > \"1\"",
        "(sleeping_room ? \"1\" : ".repeat(30),
        ")".repeat(30)
    );
    is_condition(&choices);
}

#[test]
fn any_all_and_sum_stand_at_most_two_levels_deep() {
    is_condition("any(sash_weight > sum(sash_weight) / 2)");
    let three = typed(
        "any(sash_weight > sum(sash_weight + sum(sash_weight)))",
        |scope, parsed| scope.condition(parsed),
    );
    assert!(three.contains("LIMIT"), "{three}");
}
