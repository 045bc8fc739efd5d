//! What the sheet of an order says beside its drawings, and what is said of a unit that cannot be drawn.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use std::fs;
use std::path::Path;

use program::{block, changed_house, check_says, order, run};

const HOUSE: &str = "examples/corner-house/order.toml";

/// The words of one opening on a sheet, without its drawing.
fn cell<'a>(sheet: &'a str, tag: &str) -> &'a str {
    let name = format!("<strong class=\"tag\">{tag}</strong>");
    let start = sheet.find(&name);
    let cell = start
        .map(|start| &sheet[start..])
        .and_then(|rest| rest.split("</article>").next());
    cell.unwrap_or_else(|| panic!("no opening {tag} on the sheet"))
}

/// The demo house with a change in the drawing of one of its catalogs.
fn drawn_house(catalog: &str, before: &str, after: &str) -> (tempfile::TempDir, String) {
    let (folder, order) = changed_house("B1", "tag", "tag");
    let path = folder.path().join("library").join(catalog).join("drawing.toml");
    let text = fs::read_to_string(&path).expect("the drawing");
    assert!(text.contains(before), "no `{before}`");
    fs::write(&path, text.replacen(before, after, 1)).expect("the changed drawing");
    (folder, order)
}

/// What `check` writes of the library beside an order, and how it ends.
fn checked(folder: &Path) -> (Option<i32>, String) {
    let library = folder.join("library");
    let checked = run(&["check", library.to_str().expect("a path")]);
    (checked.code, checked.err)
}

#[test]
fn what_was_filled_in_beside_the_standard_is_marked_as_filled_in() {
    let sheet = run(&["draw", HOUSE]).out;
    let line = "Filled in: Hinge: Hinge that clears the opening (the standard is Ordinary hinge)";
    check_says(cell(&sheet, "B1"), &[line]);
    let filled = |tag: &str| cell(&sheet, tag).contains("Filled in:");
    let quote = run(&["quote", HOUSE]).out;
    for tag in ["L1", "L2", "S1", "B1", "B2"] {
        assert_eq!(
            filled(tag),
            block(&quote, tag).contains("\n      filled in  "),
            "{tag}"
        );
    }
}

#[test]
fn warnings_of_the_quote_stand_on_the_sheet() {
    let sheet = run(&["draw", HOUSE]).out;
    let warning =
        "<li>Warning: With a U-factor of 0.23 and a solar heat gain of 0.23 this unit does not qualify";
    check_says(cell(&sheet, "L2"), &[warning]);
    assert!(!cell(&sheet, "L2").contains("Needs a sign-off"));
}

#[test]
fn a_sheet_is_drawn_of_an_order_that_is_broken_or_cannot_be_decided() {
    let broken = run(&["draw", &order("broken")]);
    check_says(&broken.out, &["does not hold"]);
    let undecided = run(&["draw", &order("undecided")]);
    check_says(&undecided.out, &["Ask or measure: "]);
}

/// All that may be said of one opening at once: that it needs a sign-off, is an alternate and is not included.
#[test]
fn a_long_status_does_not_keep_the_sheet_from_being_drawn() {
    let text = fs::read_to_string(HOUSE).expect("the order");
    let tag = "B".repeat(40);
    let long = text.replace("tag = \"B1\"", &format!("tag = \"{tag}\""));
    let (folder, path) = changed_house("B1", "tag", "tag");
    let alternate = format!("tag = \"B2\"\nalternate_of = \"{tag}\"\nincluded = false");
    fs::write(&path, long.replacen("tag = \"B2\"", &alternate, 1)).expect("the order");
    let drawn = run(&["draw", &path]);
    check_says(
        cell(&drawn.out, "B2"),
        &[&format!("an alternate to {tag}"), "not included"],
    );
    drop(folder);
}

#[test]
fn a_drawing_that_makes_no_sense_is_found_by_check_with_its_place() {
    for (catalog, before, after, line, says) in [
        (
            "sliding",
            "'upper_sash_height'",
            "'upper_sash_height * 3'",
            14,
            "divider 1 is at",
        ),
        (
            "hinged",
            "frame = '\"1 1/2\"'",
            "frame = '\"40\"'",
            7,
            "which leaves no opening in a unit",
        ),
        (
            "hinged",
            "frame = '\"1 1/2\"'",
            "frame = '\"0\" - \"4\"'",
            7,
            "the face of the frame is",
        ),
        (
            "hinged",
            "sash = '\"1 1/8\"'",
            "sash = '\"30\"'",
            13,
            "which leaves no glass in a panel",
        ),
        ("hinged", "'unit_width'", "'unit_width * 0'", 5, "the width is"),
        (
            "hinged",
            "'operation == \"fixed\"'",
            "'false'",
            4,
            "no layout of the drawing is for such a unit",
        ),
    ] {
        let (folder, _) = drawn_house(catalog, before, after);
        let (code, err) = checked(folder.path());
        let place = format!("{catalog}/drawing.toml:{line}:");
        check_says(
            &err,
            &["error[NOT_DRAWN]: example `", "cannot be drawn: ", says, &place],
        );
        assert_eq!(code, Some(5), "{err}");
    }
}

#[test]
fn an_opening_that_cannot_be_drawn_says_where_its_catalog_is_wrong() {
    let (_folder, order) = drawn_house("hinged", "frame = '\"1 1/2\"'", "frame = '\"40\"'");
    let drawn = run(&["draw", &order, "--opening", "B1"]);
    let says = [
        "error[NOT_DRAWN]: opening `B1` cannot be drawn: the frame is `40 in` wide on each side",
        "hinged/drawing.toml:7:",
        "help: check the size of the unit and the face of its frame",
        "nothing was drawn",
    ];
    check_says(&drawn.err, &says);
    assert_eq!((drawn.code, drawn.out.as_str()), (Some(5), ""));
    let sheet = run(&["draw", &order]);
    check_says(
        &sheet.out,
        &["Not drawn: </strong>its catalog cannot draw it: the frame is"],
    );
}

#[test]
fn of_a_side_that_was_not_read_that_alone_is_said_and_asked() {
    let (_folder, path) = changed_house(
        "B1",
        "widths = [\"28 1/2\", \"28 9/16\", \"28 1/2\"]",
        "widths = []",
    );
    let quote = run(&["quote", &path]).out;
    let found = block(&quote, "B1");
    check_says(
        found,
        &[
            "45 5/8 in, the smallest reading",
            "- No width was read.",
            "> Measure Opening width: it was not taken",
        ],
    );
    for wrong in ["Say who has deducted", "0 of 3", "upright", "fits either way"] {
        assert!(!found.contains(wrong), "{found}");
    }
}
