//! Rules over a room in the program's answers, where two catalogs stand in one room.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use std::fs;

use program::{changed_house, json, run};

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
