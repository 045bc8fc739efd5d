//! Escape openings against published values, through rules and measures of an ordinary catalog.
//!
//! Sources: a section in a row is one of the International Residential Code 2021 (2024: R319.2.1 to R319.2.3), read in
//! secondary texts: at least 5.7 ft2, or 5.0 ft2 at grade floor (R310.2.1), 24 in high and 20 in wide (R310.2.2), the
//! bottom at most 44 in above the floor (R310.2.3); equal passes. The areas are worked by hand from width x height: 1 ft2
//! is 144 in2, so that 5.7 ft2 is 820.8 in2. Codes are models; the adopted local code governs, and an answer here is a
//! check, never an approval.

use crate::judged::Judged;
use crate::{Case, fact, figure, measures, rule};

/// The rules over a clear opening; nothing has a step.
fn rules() -> String {
    [
        fact("grade_floor", "opening", "bool"),
        measures(&["bottom"]),
        figure("clear_area", "clear_width * clear_height"),
        figure("square_inches", "in_in2(clear_area)"),
        figure("square_feet", "in_ft2(clear_area)"),
        rule(
            "area",
            "when = '!grade_floor'\nrequire = 'clear_area >= \"5.7 ft2\"'",
        ),
        rule(
            "area-at-grade",
            "when = 'grade_floor'\nrequire = 'clear_area >= \"5.0 ft2\"'",
        ),
        rule("height", "require = 'clear_height >= \"24\"'"),
        rule("width", "require = 'clear_width >= \"20\"'"),
        rule("bottom", "require = 'bottom <= \"44\"'"),
    ]
    .concat()
}

fn clear(width: &str, height: &str, grade_floor: bool) -> Judged {
    Case::new(&measures(&["clear_width", "clear_height"]))
        .and(&rules())
        .measure("clear_width", width)
        .measure("clear_height", height)
        .measure("bottom", "44")
        .fact("grade_floor", if grade_floor { "true" } else { "false" })
        .answer()
}

/// Sizes in inches, the area in in2 and in ft2 cut after four places, the rules broken above grade and at grade.
const ROWS: &str = "\
both minima at once always fail     | 20     | 24      | 480    | 3.3333… | area  | area-at-grade | R310.2.1
trap: 5.694 rounds to 5.7           | 20     | 41      | 820    | 5.6944… | area  |               | R310.2.1
exactly at the limit                | 20     | 41.04   | 820.8  | 5.7     |       |               | R310.2.1
the next sixteenth                  | 20     | 41 1/16 | 821.25 | 5.7031… |       |               | R310.2.1
just above                          | 20     | 41.1    | 822    | 5.7083… |       |               | R310.2.1
trap: 5.667 rounds to 5.7           | 34     | 24      | 816    | 5.6666… | area  |               | R310.2.1
exactly at the limit, the other way | 34.2   | 24      | 820.8  | 5.7     |       |               | R310.2.1
the next quarter                    | 34 1/4 | 24      | 822    | 5.7083… |       |               | R310.2.1
exactly at the limit at grade       | 20     | 36      | 720    | 5       | area  |               | R310.2.1, exception
the same the other way              | 30     | 24      | 720    | 5       | area  |               | R310.2.1, exception
area alone is not enough            | 19.75  | 44      | 869    | 6.0347… | width | width         | R310.2.2
lowest that is allowed              | 60     | 24      | 1440   | 10      |       |               | R310.2.2
too low, and large enough           | 60     | 23 7/8  | 1432.5 | 9.9479… | height| height        | R310.2.2
narrowest that is allowed           | 20     | 60      | 1200   | 8.3333… |       |               | R310.2.2
too narrow, and large enough        | 19 7/8 | 60      | 1192.5 | 8.2812… | width | width         | R310.2.2";

/// The cells of the rows of a table in text, and the row itself to name it by.
fn rows<const N: usize>(text: &'static str) -> impl Iterator<Item = ([&'static str; N], &'static str)> {
    text.lines().map(|line| {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        (<[&str; N]>::try_from(cells).unwrap(), line)
    })
}

/// The rules that a cell names.
fn named(cell: &'static str) -> Vec<&'static str> {
    cell.split_whitespace().collect()
}

#[test]
fn the_escape_rules_agree_with_the_published_limits_in_every_row() {
    for ([_, width, height, square_inches, square_feet, above, at_grade, _], row) in rows(ROWS) {
        let judged = clear(width, height, false);
        assert_eq!(judged.figure("square_inches"), square_inches, "{row}");
        assert_eq!(judged.figure("square_feet"), square_feet, "{row}");
        assert_eq!(judged.broken(), named(above), "{row}");
        assert_eq!(clear(width, height, true).broken(), named(at_grade), "{row}");
    }
    assert_eq!(ROWS.lines().count(), 15);
}

#[test]
fn the_bottom_of_the_opening_may_be_44_inches_above_the_floor_and_not_more() {
    // IRC 2021 R310.2.3: not more than 44 in.
    let case = |bottom: &str| {
        Case::new(&measures(&["clear_width", "clear_height"]))
            .and(&rules())
            .measure("clear_width", "36")
            .measure("clear_height", "36")
            .measure("bottom", bottom)
            .fact("grade_floor", "false")
            .answer()
            .broken()
    };
    assert_eq!(case("44"), [""; 0]);
    assert_eq!(case("43 63/64"), [""; 0]);
    assert_eq!(case("44 1/64"), ["bottom"]);
}

#[test]
fn without_knowing_the_grade_an_opening_between_the_two_limits_is_undecided_and_says_why() {
    let case = |width: &str, height: &str| {
        Case::new(&measures(&["clear_width", "clear_height"]))
            .and(&rules())
            .measure("clear_width", width)
            .measure("clear_height", height)
            .measure("bottom", "44")
            .answer()
    };
    assert_eq!(case("20", "41").undecided(), ["area: GRADE_FLOOR"]);
    assert_eq!(case("20", "42").undecided(), [""; 0]);
    assert_eq!(
        case("20", "24").undecided(),
        ["area: GRADE_FLOOR", "area-at-grade: GRADE_FLOOR"]
    );
}

/// Operation, frame size, clear size, ft2 cut after four places, the rules broken above grade and at grade. The geometry
/// is common practice, no source; the deductions are invented: 4 in of width, 4.5 in (hung) or 4 in of height, 4 in more
/// of width for the sash of a casement. The areas are worked by hand.
const FRAMES: &str = "\
hung     | 36    | 60   | 32 in     | 25 1/2 in | 5.6666… | area  |               | common practice; deductions invented
hung     | 36    | 60.5 | 32 in     | 25 3/4 in | 5.7222… |       |               | common practice; deductions invented
hung     | 36    | 62   | 32 in     | 26 1/2 in | 5.8888… |       |               | common practice; deductions invented
slider   | 60    | 42   | 26 in     | 38 in     | 6.8611… |       |               | common practice; deductions invented
slider   | 48    | 36   | 20 in     | 32 in     | 4.4444… | area  | area-at-grade | common practice; deductions invented
casement | 28    | 48   | 20 in     | 44 in     | 6.1111… |       |               | common practice; deductions invented
casement | 27.75 | 48   | 19 3/4 in | 44 in     | 6.0347… | width | width         | common practice; deductions invented";

fn frame(operation: &str, width: &str, height: &str, grade_floor: bool) -> Judged {
    let clear_width = r#"operation == "slider" ? width / 2 - "4" : operation == "casement" ? width - "4" - "4" : width - "4""#;
    let clear_height = r#"operation == "hung" ? height / 2 - "4.5" : height - "4""#;
    Case::new(&measures(&["width", "height"]))
        .and(&crate::attribute(
            "operation",
            "hung slider casement",
            "standard = \"ask\"",
        ))
        .and(&figure("clear_width", clear_width))
        .and(&figure("clear_height", clear_height))
        .and(&rules())
        .pick("operation", operation)
        .measure("width", width)
        .measure("height", height)
        .measure("bottom", "30")
        .fact("grade_floor", if grade_floor { "true" } else { "false" })
        .answer()
}

#[test]
fn clear_openings_worked_out_of_frame_sizes_agree_with_hand_arithmetic() {
    let each = rows(FRAMES);
    for (
        [
            operation,
            width,
            height,
            clear_width,
            clear_height,
            square_feet,
            above,
            at_grade,
            _,
        ],
        row,
    ) in each
    {
        let judged = frame(operation, width, height, false);
        assert_eq!(judged.figure("clear_width"), clear_width, "{row}");
        assert_eq!(judged.figure("clear_height"), clear_height, "{row}");
        assert_eq!(judged.figure("square_feet"), square_feet, "{row}");
        assert_eq!(judged.broken(), named(above), "{row}");
        assert_eq!(
            frame(operation, width, height, true).broken(),
            named(at_grade),
            "{row}"
        );
    }
    assert_eq!(FRAMES.lines().count(), 7);
}
