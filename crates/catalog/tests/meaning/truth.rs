//! Unknown follows Kleene; undefined is a value of its own; a rule is `!when || require`.

use crate::{Case, NONE, attribute, fact, measures, rule, table_figure};

/// `width > "1"` and `height > "1"` are unknown, `weight > 0` is undefined.
fn case() -> Case {
    Case::new(&measures(&["width", "height"]))
        .and(&fact("year_built", "house", "number"))
        .and(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&attribute("finish", "plain bright", "standard = \"ask\""))
        .and(&table_figure("weight", "keys = [\"glass\"]"))
        .file("catalog/weight.csv", "glass,weight\ndouble,3\n")
}

#[test]
fn false_decides_a_conjunction_whatever_stands_on_the_other_side() {
    let found = case().truths(&[
        r#"width > "1" && false"#,
        r#"false && width > "1""#,
        "weight > 0 && false",
    ]);
    assert_eq!(found, ["false"; 3]);
}

#[test]
fn true_decides_a_disjunction_whatever_stands_on_the_other_side() {
    let found = case().truths(&[
        r#"width > "1" || true"#,
        r#"true || width > "1""#,
        "weight > 0 || true",
    ]);
    assert_eq!(found, ["true"; 3]);
}

#[test]
fn unknown_stays_unknown_where_the_other_side_does_not_decide() {
    let found = case().truths(&[
        r#"width > "1" && true"#,
        r#"width > "1" || false"#,
        r#"!(width > "1")"#,
    ]);
    assert_eq!(found, ["unknown: WIDTH"; 3]);
}

#[test]
fn two_unknown_sides_want_both() {
    let found = case().truths(&[r#"width > "1" && height > "1""#, r#"width > "1" || height > "1""#]);
    assert_eq!(found, ["unknown: WIDTH, HEIGHT"; 2]);
}

#[test]
fn undefined_stays_undefined_where_the_other_side_does_not_decide() {
    let found = case().truths(&["weight > 0 && true", "weight > 0 || false", "!(weight > 0)"]);
    assert_eq!(found, ["undefined"; 3]);
}

#[test]
fn undefined_beside_unknown_is_unknown_since_the_unknown_side_may_decide() {
    let found = case().truths(&[r#"weight > 0 && width > "1""#, r#"weight > 0 || width > "1""#]);
    assert_eq!(found, ["unknown: WIDTH"; 2]);
}

#[test]
fn an_operator_other_than_and_and_or_is_undefined_when_an_operand_is_even_beside_unknown() {
    let found = case().truths(&["weight + year_built > 0", "weight == year_built"]);
    assert_eq!(found, ["undefined"; 2]);
}

#[test]
fn a_choice_between_two_with_an_unknown_condition_is_unknown_even_where_both_agree() {
    let found = case().truths(&[
        r#"(width > "1" ? 3 : 3) == 3"#,
        r#"(width > "1" ? 3 : 4) == 3"#,
        r#"(width > "1" ? 3 : year_built) == 3"#,
    ]);
    assert_eq!(
        found,
        ["unknown: WIDTH", "unknown: WIDTH", "unknown: WIDTH, YEAR_BUILT"]
    );
}

#[test]
fn a_choice_between_two_without_a_value_has_none_and_a_known_condition_takes_one_side() {
    let found = case().truths(&[
        r#"(width > "1" ? weight : weight) == 3"#,
        "(true ? 3 : weight) == 3",
        "(true ? 3 : year_built) == 3",
        "(weight > 0 ? 3 : 3) == 3",
    ]);
    assert_eq!(found, ["undefined", "true", "true", "undefined"]);
}

#[test]
fn a_missing_measure_is_an_answer_that_names_it_and_no_bad_input() {
    let judged = case()
        .pick("finish", "plain")
        .and(&rule("wide", r#"require = 'width >= "15"'"#))
        .answer();
    assert_eq!(judged.undecided(), ["wide: WIDTH"]);
    assert_eq!(judged.verdict(), "undecided");
}

#[test]
fn a_missing_fact_is_an_answer_that_names_it_and_no_bad_input() {
    let judged = case()
        .pick("finish", "plain")
        .and(&rule("old", "require = 'year_built < 1978'"))
        .answer();
    assert_eq!(judged.undecided(), ["old: YEAR_BUILT"]);
    assert_eq!(judged.verdict(), "undecided");
}

#[test]
fn an_open_attribute_reads_as_unknown() {
    let found = case().truths(&[
        r#"finish == "plain""#,
        r#"finish != "plain""#,
        r#"finish in ["plain", "bright"]"#,
    ]);
    assert_eq!(found, ["unknown: FINISH"; 3]);
}

#[test]
fn a_rule_holds_where_its_when_is_false_whatever_it_requires() {
    let judged = case()
        .and(&rule("a", "when = 'false'\nrequire = 'false'"))
        .and(&rule("b", "when = 'false'\nrequire = 'weight > 0'"))
        .and(&rule("c", "when = 'false'\nrequire = 'year_built > 0'"))
        .answer();
    assert_eq!((judged.broken(), judged.undecided()), (vec![], vec![]));
}

#[test]
fn a_rule_is_broken_where_its_when_is_true_and_its_requirement_false() {
    let judged = case()
        .and(&rule("a", "when = 'true'\nrequire = 'false'"))
        .answer();
    assert_eq!(judged.broken(), ["a"]);
}

#[test]
fn a_rule_holds_where_its_requirement_is_true_whatever_its_when() {
    let judged = case()
        .and(&rule("a", "when = 'weight > 0'\nrequire = 'true'"))
        .and(&rule("b", "when = 'year_built > 0'\nrequire = 'true'"))
        .answer();
    assert_eq!((judged.broken(), judged.undecided()), (vec![], vec![]));
}

#[test]
fn a_rule_is_undecided_where_its_when_is_unknown_and_its_requirement_false() {
    let judged = case()
        .and(&rule("a", "when = 'year_built > 0'\nrequire = 'false'"))
        .answer();
    assert_eq!(judged.undecided(), ["a: YEAR_BUILT"]);
    assert_eq!(judged.broken(), NONE);
}

#[test]
fn a_rule_is_broken_with_reason_no_row_where_the_result_is_undefined() {
    let judged = case()
        .and(&rule("a", "require = 'weight > 0'"))
        .and(&rule("b", "when = 'weight > 0'\nrequire = 'false'"))
        .and(&rule("c", "when = 'weight > 0'\nrequire = 'weight > 1'"))
        .answer();
    assert_eq!(judged.broken(), ["a (no row)", "b (no row)", "c (no row)"]);
    assert_eq!(judged.verdict(), "broken");
}

#[test]
fn a_rule_that_reads_a_figure_without_a_row_is_broken_without_that_reason_where_the_other_side_decides() {
    let judged = case().and(&rule("a", "require = 'weight > 0 && 1 > 2'")).answer();
    assert_eq!(judged.broken(), ["a"]);
}

#[test]
fn a_completion_leaves_open_only_what_is_to_choose_and_what_depends_on_it() {
    let judged = case()
        .and(&attribute(
            "handle",
            "round flat",
            "standard = 'finish == \"plain\" ? \"round\" : \"flat\"'",
        ))
        .answer();
    assert_eq!(judged.open(), ["finish: FINISH", "handle: FINISH"]);
    assert_eq!(judged.value("glass"), "triple (standard)");
    let picked = case().pick("finish", "plain").answer();
    assert_eq!(picked.open(), NONE);
}

#[test]
fn a_unit_with_open_attributes_is_judged_as_well_as_a_finished_one() {
    let case = case()
        .and(&rule("double", r#"require = 'glass == "double"'"#))
        .pick("finish", "plain");
    let finished = case.answer();
    assert_eq!(
        (finished.broken(), finished.verdict()),
        (vec!["double".to_owned()], "broken")
    );
    let open = finished.given(&[("glass", "open")]);
    assert_eq!(
        (open.undecided(), open.verdict()),
        (vec!["double: GLASS".to_owned()], "undecided")
    );
    let done = finished.given(&[("glass", "double")]);
    assert_eq!((done.broken(), done.verdict()), (vec![], "holds"));
}
