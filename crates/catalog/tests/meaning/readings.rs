//! Raw readings of an opening: three widths, three heights, two diagonals, plumb and level.

use crate::{Case, NONE};

/// Width and height, and two facts, that are worked out from readings.
fn case() -> Case {
    let taken = |kind: &str, id: &str, more: &str| {
        format!(
            "\n[[{kind}]]\nid = \"{id}\"\nlabel = \"{}\"\n{more}\n",
            id.to_uppercase()
        )
    };
    let of_opening = "of = \"opening\"\ntype = \"length\"\n";
    Case::new(
        &[
            taken("measure", "width", "taken_as = \"width\"\nstep = \"1/16\""),
            taken("measure", "height", "taken_as = \"height\""),
            taken(
                "site_fact",
                "askew",
                &format!("{of_opening}taken_as = \"diagonal-difference\""),
            ),
            taken(
                "site_fact",
                "spread",
                &format!("{of_opening}taken_as = \"width-spread\""),
            ),
        ]
        .concat(),
    )
}

fn read(readings: &str) -> Case {
    case().opening(&format!("readings = {{ {readings} }}"))
}

fn size(readings: &str) -> [String; 2] {
    let judged = read(readings).answer();
    [judged.measure("width"), judged.measure("height")]
}

#[test]
fn the_measures_are_the_sides_of_the_largest_upright_rectangle() {
    assert_eq!(
        size("widths = [36, \"35 15/16\", 36], heights = [60, 60, \"60 1/4\"]"),
        ["35 15/16 in", "60 in"]
    );
    // Out of plumb by 1/4 in over the height, out of level by 1/8 in over the width: each comes off its side.
    assert_eq!(
        size("widths = [36], heights = [60], out_of_plumb = \"1/4\", out_of_level = \"1/8\""),
        ["35 3/4 in", "59 7/8 in"]
    );
}

/// (70^2 - 69.5^2) / 4 is 17.4375: over the width of 36 in it is 31/64, over the height of 60 in 93/320.
#[test]
fn what_is_worked_out_is_exact_and_comes_down_to_the_step_of_its_measure() {
    let readings = "widths = [36], heights = [60], diagonals = [70, \"69 1/2\"]";
    let exact = read(readings).truths(&[
        r#"width == "35 1/2""#,
        r#"height * 320 == "19200 in" - "93 in""#,
        r#"askew == "1/2""#,
    ]);
    assert_eq!(exact, ["true", "true", "true"]);
    // A step that is longer than the side is none to come down to.
    assert_eq!(size("widths = [\"1/32\"], heights = [1]"), ["1/32 in", "1 in"]);
}

#[test]
fn who_deducted_goes_with_both_sides() {
    assert_eq!(
        size("widths = [36], heights = [60], deducted_by = \"dealer\""),
        ["36 in, dealer has deducted", "60 in, dealer has deducted"]
    );
}

#[test]
fn of_one_side_alone_the_smallest_reading_is_taken() {
    assert_eq!(size("widths = [36, 37, 36]"), ["36 in", "not known"]);
    assert_eq!(read("widths = [36, 37, 36]").values(&["spread"]), ["1 in"]);
}

#[test]
fn what_is_written_and_worked_out_is_an_error_and_never_overruled() {
    let sides = "widths = [36, 37], heights = [60], diagonals = [70, 70]";
    assert_eq!(read(sides).measure("width", "36").codes(), ["GIVEN_TWICE"]);
    assert_eq!(read(sides).fact("spread", "1").codes(), ["GIVEN_TWICE"]);
    assert_eq!(read(sides).fact("askew", "\"unknown\"").codes(), ["GIVEN_TWICE"]);
}

#[test]
fn what_the_readings_do_not_say_may_be_written() {
    let sides = "widths = [36], heights = [60]";
    assert_eq!(
        read(sides).fact("askew", "\"1/8\"").values(&["askew"]),
        ["1/8 in"]
    );
    assert_eq!(
        read(sides).values(&["askew", "spread"]),
        ["unknown: ASKEW", "unknown: SPREAD"]
    );
}

#[test]
fn readings_that_no_opening_has_are_an_error() {
    let sides = "widths = [36], heights = [60]";
    assert_eq!(read(sides).codes(), NONE);
    for bad in [
        "widths = [-36], heights = [60]",
        "widths = [36], heights = [0]",
        "widths = [700], heights = [60]",
        "widths = [36], heights = [60], diagonals = [70, 75]",
        "widths = [36], heights = [60], out_of_plumb = -1",
        "widths = [36], heights = [60], out_of_plumb = 20",
    ] {
        assert_eq!(read(bad).codes(), ["READINGS_IMPOSSIBLE"], "{bad}");
    }
}

#[test]
fn a_catalog_without_such_measures_takes_no_readings() {
    let plain = Case::new(&crate::measures(&["width", "height"]))
        .opening("readings = { widths = [36], heights = [60] }");
    assert_eq!(plain.codes(), ["NO_READINGS_HERE"]);
}
