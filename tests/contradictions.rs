//! What nobody can have measured, and what cannot be true together, is refused with its place: in orders and in examples.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use std::fs;

use program::{changed_house, check_says, copy_folder, run};

/// What the demo house says when this text of an opening is changed: it cannot be read.
fn check_refused(tag: &str, old: &str, new: &str, pieces: &[&str]) {
    let (_folder, path) = changed_house(tag, old, new);
    let ran = run(&["quote", &path]);
    assert_eq!(
        ran.code,
        Some(5),
        "{tag}: {old} -> {new}\n{}\n{}",
        ran.out,
        ran.err
    );
    check_says(&ran.err, pieces);
}

#[test]
fn an_opening_begins_between_its_sill_and_its_head() {
    // Ten inches would make an upper bedroom a grade-floor opening, which may be smaller.
    check_refused(
        "B3",
        "sill_above_grade = \"126\"",
        "sill_above_grade = \"10\"",
        &[
            "CONTRADICTION",
            "opening `B3`: the opening would begin higher above the ground than its own head",
            "look at them again, one is wrong (check `opening-below-its-head`)",
            "128 in",
            "10 in",
        ],
    );
    // A minus that slipped in would silence the check for falls.
    check_refused(
        "B1",
        "height_above_grade = \"134\"",
        "height_above_grade = \"-134\"",
        &[
            "CONTRADICTION",
            "opening `B1`: the opening would begin lower than its own sill",
        ],
    );
    check_refused(
        "B1",
        "sill_above_grade = \"134\"",
        "sill_above_grade = \"-134\"",
        &["CONTRADICTION", "opening `B1`"],
    );
}

#[test]
fn what_only_one_end_is_known_of_contradicts_nothing() {
    let (_folder, path) = changed_house("B1", "sill_above_grade = \"134\", ", "");
    let ran = run(&["quote", &path]);
    assert_eq!(ran.code, Some(4), "{}", ran.err);
}

#[test]
fn what_nobody_can_have_measured_is_refused() {
    let rows = [
        (
            "T1",
            "water_edge_distance = \"6\"",
            "water_edge_distance = \"60000\"",
            "expected 0 in to 36000 in",
        ),
        (
            "T1",
            "water_edge_distance = \"6\"",
            "water_edge_distance = \"-6\"",
            "expected 0 in to",
        ),
        (
            "B1",
            "bottom_of_clear_opening = \"32\"",
            "bottom_of_clear_opening = \"-32\"",
            "expected 0 in to 600 in",
        ),
        (
            "B1",
            "existing_clear_square_feet = 6.1",
            "existing_clear_square_feet = -1",
            "expected 0 to 1000",
        ),
        (
            "D1",
            "opening_width = { size = \"30 1/2\"",
            "opening_width = { size = \"36000\"",
            "expected 6 in to 600 in",
        ),
    ];
    for (tag, old, new, expected) in rows {
        check_refused(tag, old, new, &["OUT_OF_RANGE", expected]);
    }
    let house = [
        ("year_built = 1964", "year_built = 19644", "expected 1500 to 2200"),
        ("year_built = 1964", "year_built = 1499", "expected 1500 to 2200"),
        ("wind_speed = 115", "wind_speed = -115", "expected 1 to 400"),
        (
            "mean_roof_height = \"24 ft\"",
            "mean_roof_height = \"-24 ft\"",
            "expected 0 in to",
        ),
        (
            "elevation = \"900 ft\"",
            "elevation = \"9000000 ft\"",
            "expected -18000 in to 360000 in",
        ),
    ];
    for (old, new, expected) in house {
        let (_folder, path) = changed_house("K1", "kitchen", "kitchen");
        let order = fs::read_to_string(&path).expect("the order");
        fs::write(&path, order.replacen(old, new, 1)).expect("an order");
        let ran = run(&["quote", &path]);
        assert_eq!(ran.code, Some(5), "{new}");
        check_says(&ran.err, &["OUT_OF_RANGE", expected]);
    }
}

#[test]
fn readings_of_a_mouse_hole_are_refused() {
    // A digit was lost in all of them: 5 1/2 in for 24 1/2 in.
    check_refused(
        "S1",
        "widths = [\"24 1/2\", \"24 9/16\", \"24 1/2\"], heights = [\"48 11/16\", \"48 5/8\", \"48 5/8\"], diagonals = [\"54 7/16\", \"54 7/16\"],",
        "widths = [\"5 1/2\", \"5 9/16\", \"5 1/2\"], heights = [\"48 11/16\", \"48 5/8\", \"48 5/8\"],",
        &[
            "OUT_OF_RANGE",
            "by the readings of opening `S1`, measure `opening_width` is 5 1/2 in; expected 6 in to 600 in",
        ],
    );
}

#[test]
fn an_example_of_a_catalog_contradicts_itself() {
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/library", folder.path());
    let path = folder.path().join("hinged/examples/codes.toml");
    let text = fs::read_to_string(&path).expect("examples");
    let spoilt = text.replacen("height_above_grade = \"134\"", "height_above_grade = \"30\"", 1);
    assert_ne!(text, spoilt);
    fs::write(&path, spoilt).expect("examples");
    let ran = run(&["check", &folder.path().to_string_lossy()]);
    assert_eq!(ran.code, Some(5), "{}", ran.out);
    let said = ran.out + &ran.err;
    check_says(
        &said,
        &["CONTRADICTION", "the opening would begin lower than its own sill"],
    );
}
