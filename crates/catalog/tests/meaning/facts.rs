//! Facts: where they are set, which place wins, and who has deducted from a size.

use crate::{Case, NONE, fact, measures};

const PLACES: &str = "[[floor]]\nid = \"ground\"\nFLOOR\n[[room]]\nid = \"kitchen\"\nfloor = \"ground\"\nROOM\n\
                      [[face]]\nid = \"front\"\nFACE\n";

/// The year is a fact of the house, set where `set` says: pairs of a place and a value.
fn year(set: &[(&str, &str)]) -> Case {
    let facts = |place: &str| {
        let found = set.iter().find(|(at, _)| *at == place);
        found.map_or(String::new(), |(_, value)| {
            format!("facts = {{ year = {value} }}")
        })
    };
    let places = PLACES
        .replace("FLOOR", &facts("floor"))
        .replace("ROOM", &facts("room"))
        .replace("FACE", &facts("face"));
    let house = format!("[house]\n{}\n", facts("house"));
    let case = Case::new(&fact("year", "house", "number"))
        .places(&(house + &places))
        .opening("room = \"kitchen\"\nface = \"front\"");
    match set.iter().find(|(at, _)| *at == "opening") {
        Some((_, value)) => case.fact("year", value),
        None => case,
    }
}

fn known(set: &[(&str, &str)]) -> String {
    year(set).values(&["year"]).remove(0)
}

#[test]
fn an_opening_inherits_what_the_house_says() {
    assert_eq!(known(&[("house", "1964")]), "1964");
}

#[test]
fn the_nearest_place_wins() {
    assert_eq!(known(&[("house", "1"), ("floor", "2")]), "2");
    assert_eq!(known(&[("house", "1"), ("floor", "2"), ("room", "3")]), "3");
    assert_eq!(known(&[("house", "1"), ("floor", "2"), ("face", "4")]), "4");
    assert_eq!(
        known(&[
            ("house", "1"),
            ("floor", "2"),
            ("room", "3"),
            ("face", "3"),
            ("opening", "5")
        ]),
        "5"
    );
}

#[test]
fn a_room_and_a_face_that_disagree_are_an_error() {
    assert_eq!(year(&[("room", "3"), ("face", "4")]).codes(), ["FACTS_DISAGREE"]);
    assert_eq!(known(&[("room", "3"), ("face", "3")]), "3");
    assert_eq!(
        year(&[("room", "3"), ("face", "\"unknown\"")]).codes(),
        ["FACTS_DISAGREE"]
    );
}

#[test]
fn unknown_may_be_written_and_hides_a_higher_value() {
    assert_eq!(
        known(&[("house", "1964"), ("opening", "\"unknown\"")]),
        "unknown: YEAR"
    );
    assert_eq!(
        known(&[("house", "1964"), ("floor", "\"unknown\"")]),
        "unknown: YEAR"
    );
    assert_eq!(
        known(&[("house", "1964"), ("floor", "\"unknown\""), ("room", "1970")]),
        "1970"
    );
}

#[test]
fn a_fact_that_nobody_set_is_unknown() {
    assert_eq!(known(&[]), "unknown: YEAR");
}

/// Places at which a fact of this scope may be set, by the house, floor, room, face and opening.
fn may_be_set(of: &str) -> Vec<&'static str> {
    let may = |place: &&str| {
        let set = [(*place, "1")];
        let case = year(&set);
        let case = Case::new(&fact("year", of, "number")).with_places_of(&case);
        case.codes() == NONE
    };
    ["house", "floor", "room", "face", "opening"]
        .into_iter()
        .filter(may)
        .collect()
}

#[test]
fn of_is_the_highest_scope_at_which_a_fact_may_be_set() {
    assert_eq!(may_be_set("house"), ["house", "floor", "room", "face", "opening"]);
    assert_eq!(may_be_set("floor"), ["floor", "room", "face", "opening"]);
    assert_eq!(may_be_set("room"), ["room", "opening"]);
    assert_eq!(may_be_set("face"), ["face", "opening"]);
    assert_eq!(may_be_set("opening"), ["opening"]);
}

fn width() -> Case {
    Case::new(&measures(&["width"]))
}

#[test]
fn who_deducted_goes_with_each_size() {
    let deduction = [r#"width - (width.deducted_by == "nobody" ? "1/2" : "0")"#];
    assert_eq!(
        width().deducted("width", "36", "nobody").values(&deduction),
        ["35 1/2 in"]
    );
    assert_eq!(
        width().deducted("width", "36", "dealer").values(&deduction),
        ["36 in"]
    );
    assert_eq!(
        width().deducted("width", "36", "customer").values(&deduction),
        ["36 in"]
    );
    let by = r#"width.deducted_by == "customer""#;
    assert_eq!(
        width().deducted("width", "36", "customer").truths(&[by]),
        ["true"]
    );
    assert_eq!(width().deducted("width", "36", "dealer").truths(&[by]), ["false"]);
}

#[test]
fn a_size_of_which_nobody_says_who_deducted_leaves_that_undecided_and_nothing_else() {
    let found = width()
        .measure("width", "36")
        .truths(&[r#"width.deducted_by == "nobody""#, r#"width <= "36""#]);
    assert_eq!(found, ["unknown: who deducts from WIDTH", "true"]);
}

#[test]
fn one_size_says_nothing_of_who_deducted_from_another() {
    let case = Case::new(&measures(&["width", "height"]))
        .deducted("width", "36", "nobody")
        .measure("height", "48");
    assert_eq!(
        case.truths(&[r#"height.deducted_by == "nobody""#]),
        ["unknown: who deducts from HEIGHT"]
    );
}
