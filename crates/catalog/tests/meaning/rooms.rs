//! Rules over a room: at least one of its openings meets a condition.

use crate::{Case, NONE, fact, measures};

/// A bedroom whose one rule asks for an opening of 20 in; its first opening is as wide as is said.
fn bedroom(width: Option<&str>, keys: &str) -> Case {
    room("true", width, keys)
}

/// The same in a room that says so much of whether somebody sleeps there.
fn room(sleeps: &str, width: Option<&str>, keys: &str) -> Case {
    let catalog = [
        measures(&["width"]),
        fact("sleeps", "room", "bool"),
        format!(
            "\n[[room_rule]]\nid = \"wide\"\nlabel = \"A wide one\"\nwhen = 'sleeps'\nat_least_one = 'width >= \"20\"'\n\
             message = \"m\"\n{keys}\n"
        ),
    ];
    let case = Case::new(&catalog.concat())
        .places(&format!(
            "[[room]]\nid = \"bedroom\"\nfacts = {{ sleeps = {sleeps} }}\n[[room]]\nid = \"bath\"\nfacts = {{ sleeps = true }}\n"
        ))
        .opening("room = \"bedroom\"");
    match width {
        Some(width) => case.measure("width", width),
        None => case,
    }
}

/// Another opening of a room, as the order has it.
fn another(tag: &str, room: &str, measures: &str, catalog: &str) -> String {
    format!(
        "[[opening]]\ntag = \"{tag}\"\nroom = \"{room}\"\nmeasures = {{ {measures} }}\n[[opening.unit]]\ncatalog = \"{catalog}\"\n"
    )
}

#[test]
fn a_room_holds_when_at_least_one_of_its_openings_meets_the_condition() {
    assert_eq!(bedroom(Some("20"), "").answer().room(), ["wide holds"]);
    assert_eq!(bedroom(Some("19 15/16"), "").answer().room(), ["wide is broken"]);
    let beside = another("K2", "bedroom", "width = 20", "c");
    assert_eq!(
        bedroom(Some("10"), "").beside(&beside).answer().room(),
        ["wide holds"]
    );
}

#[test]
fn an_opening_that_does_not_meet_it_is_no_error_beside_one_that_does() {
    let beside = another("K2", "bedroom", "width = 10", "c");
    let judged = bedroom(Some("20"), "").beside(&beside).answer();
    assert_eq!(judged.room(), ["wide holds"]);
    assert_eq!(judged.verdict(), "holds");
}

#[test]
fn a_rule_over_a_room_is_no_rule_of_a_unit() {
    let judged = bedroom(Some("10"), "").answer();
    assert_eq!((judged.broken(), judged.verdict()), (Vec::new(), "holds"));
    assert_eq!(judged.room(), ["wide is broken"]);
}

#[test]
fn openings_of_another_room_do_not_count() {
    let beside = another("K2", "bath", "width = 30", "c");
    assert_eq!(
        bedroom(Some("10"), "").beside(&beside).answer().room(),
        ["wide is broken"]
    );
}

#[test]
fn what_is_not_known_matters_only_while_no_opening_meets_it() {
    assert_eq!(bedroom(None, "").answer().room(), ["wide waits for WIDTH"]);
    let narrow = another("K2", "bedroom", "width = 10", "c");
    assert_eq!(
        bedroom(None, "").beside(&narrow).answer().room(),
        ["wide waits for WIDTH"]
    );
    let wide = another("K2", "bedroom", "width = 30", "c");
    assert_eq!(bedroom(None, "").beside(&wide).answer().room(), ["wide holds"]);
}

#[test]
fn a_condition_that_is_undefined_counts_as_not_met() {
    let odd = bedroom(Some("30"), "").and(
        "\n[[room_rule]]\nid = \"odd\"\nlabel = \"O\"\nat_least_one = 'pounds_of_glass(width, width * width) > 1'\nmessage = \"m\"\n",
    );
    assert_eq!(odd.answer().room(), ["wide holds", "odd is broken"]);
}

#[test]
fn a_rule_whose_when_is_false_is_not_said_and_one_whose_when_is_unknown_waits() {
    let with = |value: &str| room(value, Some("10"), "").answer().room();
    assert_eq!(with("false"), NONE);
    assert_eq!(with("\"unknown\""), ["wide waits for SLEEPS"]);
    assert_eq!(
        room("\"unknown\"", Some("20"), "").answer().room(),
        ["wide holds"]
    );
}

#[test]
fn an_opening_that_says_something_else_than_its_room_is_an_error_of_the_order() {
    let with = |value: &str| bedroom(Some("10"), "").fact("sleeps", value);
    assert_eq!(with("false").codes(), ["ROOM_FACT_DIFFERS"]);
    assert_eq!(with("true").answer().room(), ["wide is broken"]);
}

#[test]
fn unknown_of_an_opening_contradicts_nothing_and_silences_no_rule() {
    let unknown = |width| bedroom(Some(width), "").fact("sleeps", "\"unknown\"");
    assert_eq!(unknown("10").answer().room(), ["wide waits for SLEEPS"]);
    assert_eq!(unknown("20").answer().room(), ["wide holds"]);
    let beside = another("K2", "bedroom", "width = 10", "c");
    let judged = unknown("10").beside(&beside).answer();
    assert_eq!(
        judged.room(),
        ["wide is broken"],
        "the other one says that somebody sleeps there"
    );
}

#[test]
fn its_effect_and_its_authority_say_what_follows() {
    let with = |keys: &str| bedroom(Some("10"), keys);
    assert_eq!(
        with("effect = \"warn\"").answer().room(),
        ["wide is broken (warns)"]
    );
    assert_eq!(
        with("effect = \"sign_off\"").answer().room(),
        ["wide is broken (wants a sign-off)"]
    );
    let code = with("authority = \"code\"");
    assert_eq!(code.clone().answer().room(), ["wide is broken"]);
    assert_eq!(
        code.without("code").answer().room(),
        ["wide is broken (is not applied)"]
    );
}

#[test]
fn a_rule_over_a_room_is_not_waived() {
    let judged = bedroom(Some("10"), "").waiver("wide", "from = 2026-01-01");
    assert_eq!(judged.codes(), ["UNKNOWN_RULE"]);
}

/// A second catalog, whose openings need 30 in for the same rule, or have no such rule.
fn with_another_catalog(case: Case, rule: &str) -> Case {
    let head = "format = 1\n[catalog]\nid = \"d\"\nlabel = \"D\"\nlength = { unit = \"in\" }\n";
    let catalog = format!(
        "{head}{}{}{rule}",
        measures(&["width"]),
        fact("sleeps", "room", "bool")
    );
    let book = "format = 1\n[book]\nid = \"e\"\nlabel = \"E\"\ncatalog = \"d\"\ncurrency = \"USD\"\nround_to = \"0.01\"\n";
    case.file("other/catalog.toml", &catalog)
        .file("other-book/book.toml", book)
        .places("[[catalog]]\nid = \"d\"\nfolder = \"library/other\"\nbook = \"library/other-book\"\n")
}

#[test]
fn units_of_several_catalogs_stand_in_one_room_each_by_its_own_condition() {
    let rule = "\n[[room_rule]]\nid = \"wide\"\nlabel = \"W\"\nwhen = 'sleeps'\nat_least_one = 'width >= \"30\"'\nmessage = \"m\"\n";
    for (width, room) in [("29", "wide is broken"), ("30", "wide holds")] {
        let beside = another("K2", "bedroom", &format!("width = {width}"), "d");
        let case = with_another_catalog(bedroom(Some("19"), ""), rule).beside(&beside);
        assert_eq!(case.answer().room(), [room], "{width}");
    }
}

#[test]
fn a_unit_whose_catalog_does_not_have_the_rule_leaves_open_what_no_other_meets() {
    let beside = another("K2", "bedroom", "width = 99", "d");
    for (width, room) in [("19", "wide waits for "), ("20", "wide holds")] {
        let case = with_another_catalog(bedroom(Some(width), ""), "").beside(&beside);
        assert_eq!(case.answer().room(), [room], "{width}");
    }
}
