//! What cannot be drawn is refused in one sentence, with what was found, what was expected, and what to do.

#![expect(clippy::panic, reason = "these are tests")]

mod reading;

use astragal_drawing::limit::{CELLS_MOST, DIMENSIONS_MOST, LABEL_MOST, PANELS_MOST, TEXT_MOST};
use astragal_drawing::{
    Along, Arrangement, Cell, Dimension, Divider, DrawingError, Elevation, Floor, Grille, GrillePattern,
    Operation, Panel, Picture, Room, Sheet, check_elevation, elevation_svg, sheet_html,
};
use astragal_exact::{LengthUnit, Number};
use reading::{colonial, inches, meeting, one, sash, unit, white};

fn plain() -> Elevation {
    one("28", "45", sash(Operation::Fixed))
}

fn refused(unit: &Elevation) -> DrawingError {
    match elevation_svg(unit) {
        Ok(text) => panic!("drawn: {text}"),
        Err(error) => {
            assert_eq!(check_elevation(unit).as_ref(), Err(&error));
            error
        }
    }
}

fn with(change: impl FnOnce(&mut Elevation)) -> Elevation {
    let mut unit = plain();
    change(&mut unit);
    unit
}

fn beside(panels: usize, dividers: &[&str]) -> Elevation {
    let panels = vec![Panel::new(Operation::Fixed); panels];
    let dividers = dividers.iter().map(|at| meeting(at)).collect();
    unit("60", "40", Arrangement::SideBySide { panels, dividers })
}

fn with_grille(grille: Option<Grille>) -> Elevation {
    one(
        "28",
        "45",
        Panel {
            grille,
            ..Panel::new(Operation::Fixed)
        },
    )
}

fn colonial_with(columns: u32, bar: &str) -> Option<Grille> {
    let pattern = GrillePattern::Colonial { columns, rows: 1 };
    Some(Grille {
        pattern,
        bar: inches(bar),
        colour: white(),
    })
}

fn with_dimension(from: &str, to: &str) -> Elevation {
    let dimension = Dimension {
        along: Along::Width,
        from: inches(from),
        to: inches(to),
        label: String::new(),
    };
    with(|unit| unit.dimensions.push(dimension))
}

fn check(rows: &[(Elevation, &str)]) {
    for (unit, expected) in rows {
        let error = refused(unit);
        assert_eq!(error.to_string(), *expected);
        assert!(!error.help().is_empty());
    }
}

#[test]
fn sizes_and_frames_that_leave_nothing_are_refused() {
    check(&[
        (
            with(|unit| unit.width = Number::ZERO),
            "the width is `0 in`; expected 1 in to 600 in",
        ),
        (
            with(|unit| unit.height = Number::from(-45)),
            "the height is `-45 in`; expected 1 in to 600 in",
        ),
        (
            with(|unit| unit.height = inches("600 1/16")),
            "the height is `600 1/16 in`; expected 1 in to 600 in",
        ),
        (
            with(|unit| unit.width = inches("15/16")),
            "the width is `15/16 in`; expected 1 in to 600 in",
        ),
        (
            with(|unit| unit.frame.face = Number::from(-1)),
            "the face of the frame is `-1 in`; expected a length of 0 or more",
        ),
        (
            with(|unit| unit.frame.face = Number::from(14)),
            "the frame is `14 in` wide on each side, which leaves no opening in a unit of `28 in x 45 in`",
        ),
    ]);
}

#[test]
fn panels_and_dividers_that_do_not_fit_are_refused() {
    let bar = |bar: &str| Divider {
        at: inches("30"),
        bar: inches(bar),
    };
    check(&[
        (beside(0, &[]), "there are `0` panels; expected 1 to 12"),
        (beside(13, &[]), "there are `13` panels; expected 1 to 12"),
        (
            beside(2, &[]),
            "there are `0` dividers for `2` panels; expected one between each two",
        ),
        (
            beside(2, &["20", "40"]),
            "there are `2` dividers for `2` panels; expected one between each two",
        ),
        (
            beside(2, &["2"]),
            "divider 1 is at `2 in`; expected it with its bar between 2 in and 58 in",
        ),
        (
            beside(2, &["58"]),
            "divider 1 is at `58 in`; expected it with its bar between 2 in and 58 in",
        ),
        (
            beside(2, &["1"]),
            "divider 1 is at `1 in`; expected it with its bar between 2 in and 58 in",
        ),
        (
            beside(2, &["70"]),
            "divider 1 is at `70 in`; expected it with its bar between 2 in and 58 in",
        ),
        (
            beside(3, &["40", "20"]),
            "divider 2 is at `20 in`; expected it with its bar between 40 in and 58 in",
        ),
        (
            unit(
                "60",
                "40",
                Arrangement::SideBySide {
                    panels: vec![Panel::new(Operation::Fixed); 2],
                    dividers: vec![bar("-1")],
                },
            ),
            "the bar of a divider is `-1 in`; expected a length of 0 or more",
        ),
    ]);
}

#[test]
fn sashes_and_grilles_that_leave_no_glass_are_refused() {
    let prairie = |inset: &str| {
        let pattern = GrillePattern::Prairie { inset: inches(inset) };
        Some(Grille {
            pattern,
            bar: inches("1"),
            colour: white(),
        })
    };
    check(&[
        (
            one(
                "28",
                "45",
                Panel {
                    sash: Some(inches("12")),
                    ..Panel::new(Operation::Fixed)
                },
            ),
            "the sash of panel 1 is `12 in` wide on each side, which leaves no glass in a panel of `24 in x 41 in`",
        ),
        (
            one(
                "28",
                "45",
                Panel {
                    sash: Some(Number::ZERO),
                    ..Panel::new(Operation::Fixed)
                },
            ),
            "the face of a sash is `0 in`; expected a length above 0",
        ),
        (
            with_grille(colonial(0, 2)),
            "the grille of panel 1 has `0` lites across and `2` down; expected 1 to 24 each way",
        ),
        (
            with_grille(colonial(3, 25)),
            "the grille of panel 1 has `3` lites across and `25` down; expected 1 to 24 each way",
        ),
        (
            with_grille(colonial_with(3, "12")),
            "the grille of panel 1 leaves no glass between its bars; the glass is `24 in x 41 in`",
        ),
        (
            with_grille(prairie("11 1/2")),
            "the grille of panel 1 leaves no glass between its bars; the glass is `24 in x 41 in`",
        ),
        (
            with_grille(prairie("12")),
            "the grille of panel 1 leaves no glass between its bars; the glass is `24 in x 41 in`",
        ),
        (
            with_grille(prairie("-1")),
            "the inset of the grille is `-1 in`; expected a length above 0",
        ),
    ]);
}

#[test]
fn dimensions_outside_the_unit_and_long_texts_are_refused() {
    check(&[
        (
            with_dimension("10", "10"),
            "a dimension runs from `10 in` to `10 in`; expected it to end beyond its beginning, within 0 and 28 in",
        ),
        (
            with_dimension("0", "28 1/64"),
            "a dimension runs from `0 in` to `28 1/64 in`; expected it to end beyond its beginning, within 0 and 28 in",
        ),
        (
            with(|unit| unit.tag = "K".repeat(LABEL_MOST + 1)),
            "the tag has `41` letters; expected at most 40",
        ),
        (
            with(|unit| unit.title = vec!["x".repeat(TEXT_MOST + 1)]),
            "the title has `1001` letters; expected at most 1000",
        ),
        (
            with(|unit| unit.title = vec![String::new(); 101]),
            "the title has `101` lines; expected at most 100",
        ),
    ]);
}

#[test]
fn lengths_are_refused_in_the_unit_of_the_drawing() {
    let mut unit = plain();
    unit.unit = LengthUnit::Millimetre;
    unit.width = Number::ZERO;
    assert_eq!(
        refused(&unit).to_string(),
        "the width is `0 mm`; expected 25.4 mm to 15240 mm"
    );
}

#[test]
fn a_length_of_thousands_of_digits_is_refused_before_it_is_worked_with() {
    let mut tiny = Number::ratio(1, 3).unwrap_or_default();
    for _ in 0..12 {
        tiny = &tiny * &tiny;
    }
    let error = refused(&with(|unit| unit.width = Number::from(28) + tiny));
    assert_eq!(
        error.to_string(),
        "the width is `a number of 6497 bits`; expected 1 in to 600 in"
    );
}

#[test]
fn what_is_just_within_the_limits_is_drawn() {
    let dimension = Dimension {
        along: Along::Width,
        from: Number::ZERO,
        to: inches("28"),
        label: String::new(),
    };
    let within = [
        with(|unit| unit.height = Number::from(600)),
        with_thin_frame(one("1", "600", Panel::new(Operation::Fixed))),
        with(|unit| unit.frame.face = Number::ZERO),
        with(|unit| unit.frame.face = inches("12 31/64")),
        unit(
            "60",
            "40",
            Arrangement::Stacked {
                panels: vec![Panel::new(Operation::Fixed); PANELS_MOST],
                dividers: (1..12)
                    .map(|number| meeting(&(number * 3 + 1).to_string()))
                    .collect(),
            },
        ),
        with(|unit| unit.dimensions = vec![dimension; DIMENSIONS_MOST]),
        with_grille(colonial(24, 24)),
        with_grille(colonial_with(3, "11 63/64")),
    ];
    for (position, unit) in within.into_iter().enumerate() {
        assert!(
            elevation_svg(&unit).is_ok(),
            "row {position}: {:?}",
            elevation_svg(&unit).err()
        );
    }
}

fn with_thin_frame(mut unit: Elevation) -> Elevation {
    unit.frame.face = inches("1/4");
    unit
}

#[test]
fn a_sheet_of_too_many_openings_is_refused() {
    let cell = Cell {
        tag: "K1".to_owned(),
        quantity: 1,
        picture: Picture::NotDrawn("not measured".to_owned()),
        status: None,
        lines: Vec::new(),
        cautions: Vec::new(),
        notes: Vec::new(),
    };
    let sheet = |cells: usize| {
        let rooms = vec![Room {
            name: "Hall".to_owned(),
            cells: vec![cell.clone(); cells],
        }];
        let floors = vec![Floor {
            name: "Ground floor".to_owned(),
            rooms,
        }];
        let unit = LengthUnit::Inch;
        Sheet {
            title: "Many".to_owned(),
            lines: Vec::new(),
            unit,
            floors,
            notes: Vec::new(),
        }
    };
    assert!(sheet_html(&sheet(CELLS_MOST)).is_ok());
    let error = sheet_html(&sheet(CELLS_MOST + 1))
        .err()
        .map(|error| error.to_string());
    assert_eq!(
        error.as_deref(),
        Some("the sheet has `1001` openings; expected at most 1000")
    );
}
