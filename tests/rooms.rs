//! Rules over a room in the program's answers: what is asked, what is to be signed, what contradicts the room.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use std::fs;

use program::{changed_house, check_says, json, run};

/// The living room has windows of two catalogs. A fact that one of them declares before all others moves the position of every
/// other fact, so that a position of one catalog names something else in the other.
#[test]
fn what_a_room_waits_for_is_named_by_the_catalog_that_waits_for_it() {
    let (folder, path) = changed_house("K1", "kitchen", "kitchen");
    let order = fs::read_to_string(&path).expect("the order");
    let at = order.find("id = \"living-room\"").expect("the room");
    let unsaid = order[at..].replacen("room_use = \"other\", ", "", 1);
    fs::write(&path, format!("{}{unsaid}", &order[..at])).expect("an order");
    let sliding = folder.path().join("library/sliding");
    let fact =
        "format = 1\n\n[[site_fact]]\nid = \"first\"\nlabel = \"First\"\nof = \"house\"\ntype = \"bool\"\n";
    fs::write(sliding.join("first.toml"), fact).expect("a file");
    let catalog = sliding.join("catalog.toml");
    let text = fs::read_to_string(&catalog).expect("the catalog");
    fs::write(
        &catalog,
        text.replacen("include = [", "include = [\n  \"first.toml\",", 1),
    )
    .expect("a catalog");

    let shown = run(&["quote", &path]).out;
    let rooms = shown.split("\nRooms\n").nth(1).expect("rooms");
    let living = rooms.split("  Living room").nth(1).expect("the living room");
    let living = living.split_whitespace().collect::<Vec<_>>().join(" ");
    for asked in [
        "Ask or measure: Another window or door of the room, not in this order, serves for escape; What the room is used for; ",
        "; Bottom of the new unit's clear opening above the floor (L2);",
    ] {
        assert!(living.contains(asked), "{living}");
    }

    let answer = json(&["quote", &path, "--format", "json"]);
    let living = answer["rooms"].as_array().expect("rooms");
    let living = living
        .iter()
        .find(|room| room["id"] == "living-room")
        .expect("the living room");
    for opening in living["rules"][0]["openings"].as_array().expect("openings") {
        let wants = opening["wants"].as_array().expect("wants");
        let has_use = wants
            .iter()
            .any(|want| want["label"] == "What the room is used for");
        assert!(
            has_use && wants.iter().all(|want| want["label"] != "First"),
            "{opening}"
        );
    }
}

/// A piece of the order of the demo house is replaced, after the tag of an opening or the id of a room.
fn change(path: &str, after: &str, before: &str, by: &str) {
    let order = fs::read_to_string(path).expect("the order");
    let at = order.find(after).expect("the place");
    assert!(order[at..].contains(before), "{after}: {before}");
    let changed = order[at..].replacen(before, by, 1);
    fs::write(path, format!("{}{changed}", &order[..at])).expect("an order");
}

/// What stands under a room, on one line.
fn of_room(shown: &str, room: &str) -> String {
    let rooms = shown.split("\nRooms\n").nth(1).expect("rooms");
    let (_, room) = rooms.split_once(&format!("  {room} ")).expect("the room");
    let room = room.split("\n\n").next().expect("its lines");
    room.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn room<'a>(answer: &'a serde_json::Value, id: &str) -> &'a serde_json::Value {
    let mut rooms = answer["rooms"].as_array().expect("rooms").iter();
    rooms.find(|room| room["id"] == id).expect("the room")
}

fn rule<'a>(room: &'a serde_json::Value, id: &str) -> &'a serde_json::Value {
    let mut rules = room["rules"].as_array().expect("rules").iter();
    rules.find(|rule| rule["id"] == id).expect("the rule")
}

#[test]
fn an_opening_does_not_silence_a_rule_over_its_room() {
    let (_folder, path) = changed_house("B3", "facts = { ", "facts = { room_use = \"other\", ");
    let ran = run(&["quote", &path]);
    assert_eq!(ran.code, Some(5), "{}{}", ran.out, ran.err);
    check_says(
        &ran.err,
        &[
            "ROOM_FACT_DIFFERS",
            "fact `room_use` is `other` by opening `B3` and `sleeping` by room `front-bedroom`",
            "`escape-opening` reads it for the whole room",
        ],
    );
}

/// B1 says by its room that somebody sleeps there; B2 does not know, and need not.
#[test]
fn what_the_room_is_for_is_not_asked_where_one_opening_says_it() {
    let (_folder, path) = changed_house("B2", "facts = { ", "facts = { room_use = \"unknown\", ");
    change(&path, "tag = \"B1\"", "bottom_of_clear_opening = \"32\", ", "");
    let use_of_room = "What the room is used for";
    let shown = of_room(&run(&["quote", &path]).out, "Back bedroom");
    assert!(
        shown.contains("cannot be decided yet") && shown.contains("Ask or measure: "),
        "{shown}"
    );
    assert!(!shown.contains(use_of_room), "{shown}");
    let answer = json(&["quote", &path, "--format", "json"]);
    let finding = rule(room(&answer, "back-bedroom"), "escape-opening");
    assert_eq!(
        (&finding["applies"], &finding["state"]),
        (&true.into(), &"undecided".into())
    );
    let mut openings = finding["openings"].as_array().expect("openings").iter();
    let wants = openings
        .clone()
        .flat_map(|opening| opening["wants"].as_array().expect("wants"));
    assert!(wants.count() > 0, "{finding}");
    assert!(
        openings.all(|opening| !opening["wants"].to_string().contains(use_of_room)),
        "{finding}"
    );
}

#[test]
fn who_must_sign_for_a_room_is_said_with_the_rule() {
    let order = "examples/corner-house/order.toml";
    let shown = run(&["quote", order]).out;
    for name in ["Front bedroom", "Basement room"] {
        let said = of_room(&shown, name);
        assert!(
            said.starts_with("cannot be decided yet, may need a sign-off"),
            "{said}"
        );
        assert!(
            said.contains("May have to be signed: ") && said.contains("(escape-opening-not-excused, "),
            "{said}"
        );
    }
    let said = of_room(&shown, "Back bedroom");
    assert!(said.starts_with("holds - ") && !said.contains("sign"), "{said}");
    let answer = json(&["quote", order, "--format", "json"]);
    let summary = &answer["summary"];
    assert_eq!(
        summary["rooms_that_may_sign"],
        serde_json::json!(["Front bedroom", "Basement room"])
    );
    assert_eq!(summary["rooms_to_sign"], serde_json::json!([]));
}

/// B3 takes the place of a smaller window, and is large enough only by the exception for that.
#[test]
fn a_room_to_be_signed_says_so_beside_a_rule_that_was_not_applied() {
    let existing = "facts = { existing_operation = \"double-hung\", existing_clear_square_feet = 4, \
                    largest_standard_size_fits = true, ";
    let (folder, path) = changed_house("B3", "facts = { ", existing);
    let codes = folder.path().join("library/codes/irc-2021.toml");
    let text = fs::read_to_string(&codes).expect("the code");
    let (before, rule) = text
        .split_once("id = \"escape-opening-not-excused\"")
        .expect("the rule");
    let more = "\n[[room_rule]]\nid = \"never\"\nlabel = \"What nothing is\"\nauthority = \"programme\"\n\
                when = 'room_use == \"sleeping\"'\nat_least_one = '1 > 2'\nmessage = \"None is.\"\n";
    let changed = format!("{before}id = \"escape-opening-not-excused\"{rule}{more}");
    fs::write(&codes, changed).expect("a code");

    let shown = run(&["quote", &path, "--without", "programme"]).out;
    let said = of_room(&shown, "Front bedroom");
    assert!(
        said.starts_with("holds without the rules that were not applied, needs a sign-off"),
        "{said}"
    );
    assert!(
        said.contains("To be signed: None of the openings of this room in this order has the sizes"),
        "{said}"
    );
    assert!(said.contains("Not applied: None is."), "{said}");
}

#[test]
fn a_rule_that_holds_has_no_message_that_it_does_not() {
    let answer = json(&["quote", "examples/corner-house/order.toml", "--format", "json"]);
    let mut states = std::collections::BTreeSet::new();
    for room in answer["rooms"].as_array().expect("rooms") {
        for rule in room["rules"].as_array().expect("rules") {
            let state = rule["state"].as_str().expect("a state");
            assert_eq!(rule["message"].is_null(), state == "holds", "{rule}");
            states.insert(state.to_owned());
        }
    }
    assert!(states.contains("holds") && states.len() > 1, "{states:?}");
}
