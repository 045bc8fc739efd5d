//! Filling: one order over all that depends on something, what stays open, and what is to choose.

use crate::{Case, NONE, attribute, fact, figure, item, measures, rule, table_figure};

fn colours() -> Case {
    Case::new(&attribute("exterior", "white grey", "standard = \"white\""))
}

#[test]
fn what_nobody_picked_gets_its_standard_and_a_pick_stands() {
    assert_eq!(colours().answer().value("exterior"), "white (standard)");
    assert_eq!(
        colours().pick("exterior", "white").answer().value("exterior"),
        "white (picked)"
    );
    assert_eq!(
        colours().pick("exterior", "grey").answer().value("exterior"),
        "grey (picked)"
    );
}

#[test]
fn filling_goes_by_what_depends_on_what_and_not_by_the_order_of_the_file() {
    let case = Case::new(&attribute("trim", "white grey", "standard = 'interior'"))
        .and(&attribute("interior", "white grey", "standard = 'exterior'"))
        .and(&attribute("exterior", "white grey", "standard = \"white\""));
    assert_eq!(case.answer().value("trim"), "white (standard)");
    assert_eq!(
        case.pick("exterior", "grey").answer().value("trim"),
        "grey (standard)"
    );
}

#[test]
fn filling_goes_through_figures_and_conditions() {
    let case = Case::new(&attribute(
        "handle",
        "small large",
        "standard = 'weight > 5 ? \"large\" : \"small\"'",
    ))
    .and(&table_figure("weight", "keys = [\"glass\"]"))
    .file("catalog/weight.csv", "glass,weight\ndouble,3\ntriple,9\n")
    .and(&attribute(
        "glass",
        "double triple",
        "standard = \"triple\"\napplies_when = 'operation == \"hung\"'",
    ))
    .and(&attribute("operation", "hung fixed", "standard = \"hung\""));
    assert_eq!(case.clone().answer().value("handle"), "large (standard)");
    assert_eq!(
        case.clone().pick("glass", "double").answer().value("handle"),
        "small (standard)"
    );
    assert_eq!(case.pick("operation", "fixed").answer().value("handle"), "open");
}

#[test]
fn a_circle_through_standards_conditions_or_figures_is_a_finding() {
    let standards =
        Case::new(&attribute("a", "x y", "standard = 'b'")).and(&attribute("b", "x y", "standard = 'a'"));
    assert_eq!(standards.codes(), ["CYCLE"]);
    let figures = Case::new(&figure("a", "b + 1")).and(&figure("b", "a + 1"));
    assert_eq!(figures.codes(), ["CYCLE"]);
    let conditions = Case::new(&attribute(
        "a",
        "x y",
        "standard = \"x\"\napplies_when = 'b == \"x\"'",
    ))
    .and(&attribute(
        "b",
        "x y",
        "standard = \"x\"\napplies_when = 'is_asked(a)'",
    ));
    assert_eq!(conditions.codes(), ["CYCLE"]);
    let mixed = Case::new(&attribute("a", "x y", "standard = 'f > 1 ? \"x\" : \"y\"'"))
        .and(&attribute(
            "b",
            "x y",
            "standard = \"x\"\napplies_when = 'a == \"x\"'",
        ))
        .and(&table_figure("f", "keys = [\"b\"]"))
        .file("catalog/f.csv", "b,f\nx,1\ny,2\n");
    assert_eq!(mixed.codes(), ["CYCLE"]);
}

#[test]
fn a_circle_through_per_is_a_finding() {
    let case = Case::new("\n[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\n")
        .and("\n[[part]]\nid = \"lower\"\nkind = \"sash\"\nlabel = \"L\"\nwhen = 'glazing.upper == \"a\"'\n")
        .and(&attribute(
            "glazing",
            "a b",
            "per = \"sash\"\nstandard = 'total > 1 ? \"a\" : \"b\"'",
        ))
        .and(&figure("total", "sum(glazing == \"a\" ? 1 : 0)"));
    assert_eq!(case.codes(), ["CYCLE"]);
}

#[test]
fn a_source_that_is_open_leaves_the_target_open() {
    let case = Case::new(&attribute("exterior", "white grey", "standard = \"ask\"")).and(&attribute(
        "interior",
        "white grey",
        "standard = 'exterior'",
    ));
    let judged = case.answer();
    assert_eq!(
        (judged.value("interior"), judged.open()[1].as_str()),
        ("open".to_owned(), "interior: EXTERIOR")
    );
    assert_eq!(judged.to_choose(), ["exterior"]);
}

#[test]
fn a_source_that_is_unknown_leaves_the_target_open() {
    let case = Case::new(&fact("year_built", "house", "number")).and(&attribute(
        "kit",
        "a b",
        "standard = 'year_built < 1978 ? \"a\" : \"b\"'",
    ));
    let judged = case.answer();
    assert_eq!(
        (judged.value("kit"), judged.open()),
        ("open".to_owned(), vec!["kit: YEAR_BUILT".to_owned()])
    );
    assert_eq!(
        case.fact("year_built", "1964").answer().value("kit"),
        "a (standard)"
    );
}

#[test]
fn a_source_that_is_not_asked_leaves_the_target_open() {
    let case = Case::new(&attribute("operation", "hung fixed", "standard = \"fixed\""))
        .and(&attribute(
            "screen",
            "white grey",
            "standard = \"grey\"\napplies_when = 'operation == \"hung\"'",
        ))
        .and(&attribute("screen_trim", "white grey", "standard = 'screen'"));
    assert_eq!(case.answer().value("screen_trim"), "open");
    assert_eq!(
        case.pick("operation", "hung").answer().value("screen_trim"),
        "grey (standard)"
    );
}

fn asks() -> Case {
    Case::new(&attribute("operation", "hung fixed", "standard = \"ask\""))
        .and(&attribute(
            "handle",
            "a b",
            "standard = \"ask\"\napplies_when = 'operation == \"hung\"'",
        ))
        .and(&item("base", "when = 'operation == \"hung\"'"))
        .and(&item("freight", ""))
        .amount("base", "100.00")
        .amount("freight", "5.00")
}

#[test]
fn what_asks_is_never_filled_and_is_listed_as_still_to_choose() {
    let judged = asks().answer();
    assert_eq!(
        (judged.value("operation"), judged.to_choose()),
        ("open".to_owned(), vec!["operation".to_owned()])
    );
    assert_eq!(judged.verdict(), "undecided");
    assert_eq!(asks().pick("operation", "hung").answer().to_choose(), ["handle"]);
    assert_eq!(asks().pick("operation", "fixed").answer().to_choose(), NONE);
}

#[test]
fn items_that_depend_on_what_is_still_to_choose_and_the_total_are_unknown() {
    let judged = asks().answer();
    assert_eq!(judged.item("base"), ["unknown: OPERATION"]);
    assert_eq!(judged.item("freight"), ["5.00 standard"]);
    assert_eq!(judged.total(), "unknown: OPERATION");
    assert_eq!(asks().pick("operation", "fixed").answer().total(), "5.00");
}

#[test]
fn a_total_that_depends_on_nothing_still_to_choose_is_known() {
    let judged = Case::new(&attribute("handle", "a b", "standard = \"ask\""))
        .and(&item("base", ""))
        .amount("base", "100.00")
        .answer();
    assert_eq!(
        (judged.total().as_str(), judged.verdict()),
        ("100.00", "undecided")
    );
}

#[test]
fn a_rule_between_a_pick_and_a_standard_names_the_standard_and_changes_nothing() {
    let case = Case::new(&attribute("exterior", "white grey", "standard = \"white\""))
        .and(&attribute("interior", "white oak", "standard = \"white\""))
        .and(&attribute("mesh", "fine coarse", "standard = \"fine\""))
        .and(&rule(
            "pairs",
            r#"require = 'exterior == "white" || interior == "oak"'"#,
        ));
    let judged = case.clone().pick("exterior", "grey").answer();
    assert_eq!(
        (judged.broken(), judged.value("interior")),
        (vec!["pairs".to_owned()], "white (standard)".to_owned())
    );
    assert_eq!(judged.standards_against_picks("pairs"), ["interior"]);
    let both = case.pick("exterior", "grey").pick("interior", "white").answer();
    assert_eq!(
        (both.broken().len(), both.standards_against_picks("pairs")),
        (1, vec![])
    );
}

#[test]
fn a_rule_among_standards_alone_is_not_laid_on_a_pick() {
    let judged = Case::new(&attribute("exterior", "white grey", "standard = \"grey\""))
        .and(&attribute("interior", "white oak", "standard = \"white\""))
        .and(&rule(
            "pairs",
            r#"require = 'exterior == "white" || interior == "oak"'"#,
        ))
        .answer();
    assert_eq!(
        (judged.broken().len(), judged.standards_against_picks("pairs")),
        (1, vec![])
    );
}

#[test]
fn the_standards_behind_a_figure_are_named_as_well() {
    let judged = Case::new(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&attribute("hinge", "light heavy", "standard = \"heavy\""))
        .and(&table_figure("weight", "keys = [\"glass\"]"))
        .file("catalog/weight.csv", "glass,weight\ndouble,3\ntriple,9\n")
        .and(&rule("hinges", r#"require = 'weight < 5 || hinge == "heavy"'"#))
        .pick("hinge", "light")
        .answer();
    assert_eq!(judged.standards_against_picks("hinges"), ["glass"]);
}

#[test]
fn a_pick_stands_where_it_is_not_asked_and_breaks_the_implicit_rule() {
    let case = Case::new(&attribute("operation", "hung fixed", "standard = \"fixed\"")).and(&attribute(
        "screen",
        "half full",
        "standard = \"half\"\napplies_when = 'operation == \"hung\"'",
    ));
    let judged = case.pick("screen", "full").answer();
    assert_eq!(
        (judged.value("screen"), judged.broken()),
        ("full (picked)".to_owned(), vec!["screen.applies".to_owned()])
    );
    assert_eq!(judged.given(&[("screen", "not asked")]).broken(), NONE);
    assert_eq!(
        judged
            .given(&[("operation", "hung"), ("screen", "not asked")])
            .broken(),
        ["screen.applies"]
    );
}

#[test]
fn a_standard_that_reads_a_measure_not_taken_is_open() {
    let case = Case::new(&measures(&["width"])).and(&attribute(
        "locks",
        "one two",
        r#"standard = 'width > "30" ? "two" : "one"'"#,
    ));
    assert_eq!(case.answer().open(), ["locks: WIDTH"]);
    assert_eq!(
        case.clone().measure("width", "30").answer().value("locks"),
        "one (standard)"
    );
    assert_eq!(
        case.measure("width", "30 1/16").answer().value("locks"),
        "two (standard)"
    );
}
