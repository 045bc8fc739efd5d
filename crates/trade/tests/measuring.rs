//! From readings to sizes, row by row, each with where its numbers come from.
#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_exact::{Number, parse_length};
use astragal_trade::interval::Interval;
use astragal_trade::measuring::{
    Clearance, DeductedBy, Deduction, Measured, MeasuringError, NetFrame, Ordered, Readings, RoughOpening,
    Size, StatedDeduction, UnitedInches, billed_area, billed_perimeter, deduct, expected_diagonal, measure,
};
use astragal_trade::{Fact, Status};

const PRACTICE: &str = "common practice, no source";
const COMPUTED: &str = "computed";
const GUIDE: &str = "an installer's how-to page";

/// Inches as a tape shows them; the tests read no other unit.
fn inches(text: &str) -> Number {
    parse_length(text, Some(astragal_exact::LengthUnit::Inch)).unwrap()
}

fn three(text: &str) -> [Option<Number>; 3] {
    let mut readings = text.split(',').map(|one| match one.trim() {
        "-" => None,
        one => Some(inches(one)),
    });
    [(); 3].map(|()| readings.next().unwrap())
}

fn two(text: &str) -> [Option<Number>; 2] {
    let [first, second, _] = three(&format!("{text},-"));
    [first, second]
}

fn size(width: &str, height: &str) -> Size {
    Size::new(inches(width), inches(height))
}

fn readings(widths: &str, heights: &str, diagonals: &str) -> Readings {
    Readings {
        widths: three(widths),
        heights: three(heights),
        diagonals: two(diagonals),
        ..Readings::default()
    }
}

fn ids(measured: &Measured) -> Vec<&'static str> {
    measured.findings.iter().map(|finding| finding.id()).collect()
}

#[test]
fn the_smallest_reading_governs() {
    let rows = [
        ("smallest first", "35 7/8, 36, 36", "35 7/8", "1/8", 3),
        (
            "smallest in the middle",
            "36, 35 15/16, 36",
            "35 15/16",
            "1/16",
            3,
        ),
        ("smallest last", "36 1/4, 36 1/8, 36", "36", "1/4", 3),
        ("two were read", "-, 36, 36 1/8", "36", "1/8", 2),
        ("one was read", "-, -, 36", "36", "0", 1),
    ];
    for (name, three, smallest, spread, read) in rows {
        for readings in [readings(three, "-,-,-", "-,-"), readings("-,-,-", three, "-,-")] {
            let either = readings.governing_width().or(readings.governing_height());
            let governing = either.unwrap();
            assert_eq!(governing.smallest, inches(smallest), "{name} ({GUIDE})");
            assert_eq!(governing.spread(), inches(spread), "{name}");
            assert_eq!(governing.read, read, "{name}");
        }
    }
    assert_eq!(readings("-,-,-", "60,60,60", "-,-").governing_width(), None);
}

/// Each limit from both sides: at it is within it.
#[test]
fn what_lies_outside_common_practice_is_found() {
    let square = || Readings {
        out_of_plumb: Some(Number::ZERO),
        out_of_level: Some(Number::ZERO),
        ..readings("36,36,36", "60,60,60", "69 31/32, 69 31/32")
    };
    let wide = |width: &str| Readings {
        widths: three(&format!("36,36,{width}")),
        ..square()
    };
    let high = |height: &str| Readings {
        heights: three(&format!("60,{height},60")),
        ..square()
    };
    let crossed = |diagonal: &str| Readings {
        diagonals: two(&format!("69 31/32, {diagonal}")),
        ..square()
    };
    let plumb = |reading: &str| Readings {
        out_of_plumb: Some(inches(reading)),
        ..square()
    };
    let level = |reading: &str| Readings {
        out_of_level: Some(inches(reading)),
        ..square()
    };
    let pocket = |depth: &str| Readings {
        pocket_depth: Some(inches(depth)),
        ..square()
    };
    let pocket_guide = "a measuring guide for replacement windows";
    let rows = [
        ("all square", square(), None, GUIDE),
        ("widths 1/8 apart", wide("36 1/8"), None, GUIDE),
        (
            "widths 9/64 apart",
            wide("36 9/64"),
            Some("readings_apart"),
            GUIDE,
        ),
        ("heights 1/8 apart", high("60 1/8"), None, GUIDE),
        (
            "heights 9/64 apart",
            high("60 9/64"),
            Some("readings_apart"),
            GUIDE,
        ),
        ("diagonals 1/4 apart", crossed("70 7/32"), None, GUIDE),
        (
            "diagonals 17/64 apart",
            crossed("70 15/64"),
            Some("diagonals_differ"),
            GUIDE,
        ),
        ("1/8 out of plumb", plumb("1/8"), None, GUIDE),
        ("9/64 out of plumb", plumb("9/64"), Some("out_of_plumb"), GUIDE),
        ("1/8 out of level", level("1/8"), None, GUIDE),
        ("9/64 out of level", level("9/64"), Some("out_of_level"), GUIDE),
        ("a pocket of 3 1/4", pocket("3 1/4"), None, pocket_guide),
        (
            "a pocket of 3 15/64",
            pocket("3 15/64"),
            Some("pocket_shallow"),
            pocket_guide,
        ),
    ];
    for (name, readings, expected, source) in rows {
        let measured = measure(&readings).unwrap();
        let warnings = measured.findings.iter().filter(|finding| finding.is_warning());
        let found: Vec<&str> = warnings
            .clone()
            .map(|finding| finding.id())
            .filter(|id| *id != "level_against_diagonals")
            .collect();
        assert_eq!(found, Vec::from_iter(expected), "{name} ({source})");
        for finding in warnings {
            let text = finding.to_string();
            assert!(
                text.ends_with("measure again or have it looked at in the field"),
                "{text}"
            );
            if finding.id() != "level_against_diagonals" {
                let basis = finding.basis().unwrap();
                assert_eq!(
                    (basis.document, basis.status),
                    (source, Status::SecondHand),
                    "{name}"
                );
            }
        }
    }
}

#[test]
fn a_finding_says_what_was_read_and_what_is_common() {
    let measured = measure(&readings("36,36,36 1/4", "60,60,60", "-,-")).unwrap();
    let texts: Vec<String> = measured.findings.iter().map(ToString::to_string).collect();
    assert_eq!(
        texts,
        [
            "readings of the width lie `1/4 in` apart; common practice is at most `1/8 in`: measure again or have it \
             looked at in the field",
            "diagonals missing: not known whether it is square",
            "no level was held to a jamb: not known whether it is plumb",
            "no level was held to the sill: not known whether it is level",
        ]
    );
    assert_eq!(
        measured.missing,
        [Fact::OpeningDiagonal, Fact::OutOfPlumb, Fact::OutOfLevel].into()
    );
}

/// What comes off for an opening that stands askew; worked by hand from d1^2 - d2^2 = 4 (W lean + H slope).
#[test]
fn an_opening_askew_loses_what_its_sides_lean_and_its_head_slopes() {
    // 36 x 60, diagonals 70 and 69 1/2: D = 139.5 x 0.5 / 4 = 17.4375; D / 36 = 0.484375, D / 60 = 0.290625.
    let rows = [
        (
            "equal diagonals",
            "70,70",
            None,
            None,
            "0",
            "0",
            &["not_levelled", "not_levelled"][..],
        ),
        (
            "no level: either way",
            "70,69.5",
            None,
            None,
            "0.484375",
            "0.290625",
            &["diagonals_differ", "either_way", "not_levelled", "not_levelled"],
        ),
        (
            "the other diagonal is longer",
            "69.5,70",
            None,
            None,
            "0.484375",
            "0.290625",
            &["diagonals_differ", "either_way", "not_levelled", "not_levelled"],
        ),
        (
            "the jambs explain all of it",
            "70,69.5",
            Some("0.484375"),
            None,
            "0.484375",
            "0",
            &["diagonals_differ", "out_of_plumb", "not_levelled"],
        ),
        (
            "the jambs are plumb",
            "70,69.5",
            Some("0"),
            None,
            "0",
            "0.290625",
            &["diagonals_differ", "not_levelled"],
        ),
        (
            "the jambs explain half of it",
            "70,69.5",
            Some("0.2421875"),
            None,
            "0.2421875",
            "0.1453125",
            &["diagonals_differ", "out_of_plumb", "not_levelled"],
        ),
        (
            "the sill is level",
            "70,69.5",
            None,
            Some("0"),
            "0.484375",
            "0",
            &["diagonals_differ", "not_levelled"],
        ),
        (
            "the sill explains all of it",
            "70,69.5",
            None,
            Some("0.290625"),
            "0",
            "0.290625",
            &["diagonals_differ", "out_of_level", "not_levelled"],
        ),
        (
            "a level held to both",
            "70,69.5",
            Some("0.484375"),
            Some("0"),
            "0.484375",
            "0",
            &["diagonals_differ", "out_of_plumb"],
        ),
        // Equal diagonals, both out by what a rectangle that stands crooked shows: 36 x 0.5 = 60 x 0.3.
        (
            "square but crooked",
            "70,70",
            Some("0.5"),
            Some("0.3"),
            "0.5",
            "0.3",
            &["out_of_plumb", "out_of_level"],
        ),
        (
            "crooked, only the jamb read",
            "70,70",
            Some("0.125"),
            None,
            "0.125",
            "0.075",
            &["not_levelled"],
        ),
        (
            "a level on both says true, the diagonals do not",
            "70,69.5",
            Some("0"),
            Some("0"),
            "0.484375",
            "0.290625",
            &["diagonals_differ", "level_against_diagonals"],
        ),
        // Equal diagonals, jambs out by 1/2: the head must slope by 36 x 0.5 / 60 = 0.3, far more than diagonals err.
        (
            "the jambs lean more than the diagonals show",
            "70,70",
            Some("0.5"),
            None,
            "0.5",
            "0.3",
            &["out_of_plumb", "level_against_diagonals", "not_levelled"],
        ),
        // D = 139.75 x 0.25 / 4 = 8.734375; the jambs say 36 x 0.75 = 27, which is more by 18.3 where 8.7 is allowed.
        // The head slopes by (27 - D) / 60 or by (27 + D) / 60: the larger is taken.
        (
            "against the diagonals, the larger slope",
            "70,69.75",
            Some("0.75"),
            None,
            "0.75",
            "0.59557291666666666666",
            &["out_of_plumb", "level_against_diagonals", "not_levelled"],
        ),
        (
            "no diagonals, no level",
            "-,-",
            None,
            None,
            "0",
            "0",
            &["diagonals_missing", "not_levelled", "not_levelled"],
        ),
        (
            "one diagonal",
            "70,-",
            None,
            None,
            "0",
            "0",
            &["diagonals_missing", "not_levelled", "not_levelled"],
        ),
        (
            "no diagonals, a level on both",
            "-,-",
            Some("0.125"),
            Some("0.0625"),
            "0.125",
            "0.0625",
            &["diagonals_missing"],
        ),
    ];
    let hair = inches("0.0000000001");
    for (name, diagonals, plumb, level, lean, slope, findings) in rows {
        let measured = measure(&Readings {
            out_of_plumb: plumb.map(inches),
            out_of_level: level.map(inches),
            ..readings("36,36,36", "60,60,60", diagonals)
        })
        .unwrap();
        let near = |found: &Number, expected: &str| (found - inches(expected)).abs() < hair;
        assert!(
            near(&measured.lean, lean),
            "{name} ({COMPUTED}): lean {}",
            measured.lean
        );
        assert!(
            near(&measured.slope, slope),
            "{name} ({COMPUTED}): slope {}",
            measured.slope
        );
        let expected = Size::new(inches("36") - &measured.lean, inches("60") - &measured.slope);
        assert_eq!(measured.upright.as_ref(), Some(&expected), "{name}");
        assert_eq!(ids(&measured), findings, "{name}");
    }
}

/// The tolerance of the check against a level, from both sides: diagonals that differ by 1/4 in from what it asks for.
#[test]
fn a_level_and_diagonals_a_quarter_apart_agree_and_more_do_not() {
    let rows = [
        (
            "1/4 apart, both read true",
            "70,69.75",
            Some("0"),
            Some("0"),
            false,
        ),
        (
            "17/64 apart, both read true",
            "70,69 47/64",
            Some("0"),
            Some("0"),
            true,
        ),
        // Equal diagonals of 70: 140 / 16 = 8.75 is allowed, and 36 in times 0.24305 is 8.7499.
        (
            "jambs lean by just what is allowed",
            "70,70",
            Some("0.24305"),
            None,
            false,
        ),
        ("jambs lean by just more", "70,70", Some("0.24306"), None, true),
        (
            "sill slopes by just what is allowed",
            "70,70",
            None,
            Some("0.14583"),
            false,
        ),
        ("sill slopes by just more", "70,70", None, Some("0.14584"), true),
        // 36 x 0.5 + 60 x 0.3 = 36 with the diagonals, or 0 against each other.
        (
            "both out, the same way",
            "70.5,69.47",
            Some("0.5"),
            Some("0.3"),
            false,
        ),
        (
            "both out, against each other",
            "70,70",
            Some("0.5"),
            Some("0.3"),
            false,
        ),
        (
            "both out, neither way",
            "70.25,69.75",
            Some("0.5"),
            Some("0.3"),
            true,
        ),
    ];
    for (name, diagonals, plumb, level, contradicted) in rows {
        let measured = measure(&Readings {
            out_of_plumb: plumb.map(inches),
            out_of_level: level.map(inches),
            ..readings("36,36,36", "60,60,60", diagonals)
        })
        .unwrap();
        assert_eq!(
            ids(&measured).contains(&"level_against_diagonals"),
            contradicted,
            "{name} ({COMPUTED})"
        );
    }
}

#[test]
fn without_a_width_or_a_height_there_is_no_size() {
    let rows = [
        (
            "no width",
            readings("-,-,-", "60,60,60", "70,70"),
            Fact::OpeningWidth,
        ),
        (
            "no height",
            readings("36,36,36", "-,-,-", "70,70"),
            Fact::OpeningHeight,
        ),
    ];
    for (name, readings, fact) in rows {
        let measured = measure(&readings).unwrap();
        assert_eq!(measured.upright, None, "{name}");
        assert!(measured.missing.contains(&fact), "{name}");
        assert!(ids(&measured).contains(&"fewer_readings"), "{name}");
    }
    let nothing = measure(&Readings::default()).unwrap();
    assert_eq!(nothing.missing.len(), 5);
    let one = measure(&readings("36,-,-", "60,60,60", "-,-")).unwrap();
    assert_eq!(
        one.findings.first().map(ToString::to_string).as_deref(),
        Some("1 of 3 readings of the width: a smaller one may not have been read")
    );
}

/// Diagonals on both sides of what a tape right to 1/8 in allows; 36 x 60 has 69.971.
#[test]
fn diagonals_that_no_opening_has_are_refused() {
    let rows = [
        (
            "as a rectangle has them",
            "36,36,36",
            "60,60,60",
            "69.971,69.971",
            None,
        ),
        // Sides 1/8 longer, a lean of 0.245 that the tapes allow, and 1/8 on the diagonal: 70.26836. Shorter: 69.67494.
        (
            "just long enough to be a slip of the tape",
            "36,36,36",
            "60,60,60",
            "70.2683,70.2683",
            None,
        ),
        (
            "just too long",
            "36,36,36",
            "60,60,60",
            "70.268,70.268",
            Some("diagonals"),
        ),
        ("just short enough", "36,36,36", "60,60,60", "69.675,69.675", None),
        (
            "just too short",
            "36,36,36",
            "60,60,60",
            "69.6749,69.6749",
            Some("diagonals"),
        ),
        (
            "one of them is wrong",
            "36,36,36",
            "60,60,60",
            "70,75",
            Some("diagonals"),
        ),
        (
            "the same, the other way round",
            "36,36,36",
            "60,60,60",
            "75,70",
            Some("diagonals"),
        ),
        (
            "one longer, one as much shorter",
            "36,36,36",
            "60,60,60",
            "70.5,69.4375",
            None,
        ),
        (
            "sides that differ stand for all between",
            "36,36,38",
            "60,60,60",
            "71,71",
            None,
        ),
        (
            "the same with sides that do not",
            "36,36,36",
            "60,60,60",
            "71,71",
            Some("diagonals"),
        ),
        (
            "longer than both sides together",
            "36,36,36",
            "60,60,60",
            "96.376,-",
            Some("diagonal"),
        ),
        (
            "as long as both sides together, alone",
            "36,36,36",
            "60,60,60",
            "96.375,-",
            None,
        ),
        (
            "shorter than their difference",
            "36,36,36",
            "60,60,60",
            "23.62,-",
            Some("diagonal"),
        ),
        (
            "as short as their difference, alone",
            "36,36,36",
            "60,60,60",
            "23.625,-",
            None,
        ),
        // 83.9^2 + 52.5^2 is near 2 (36^2 + 60^2); 83.9^2 - 52.5^2 asks for 29.7 in of lean.
        (
            "the law holds, the lean is absurd",
            "36,36,36",
            "60,60,60",
            "83.9,52.5",
            Some("askew"),
        ),
    ];
    for (name, widths, heights, diagonals, expected) in rows {
        let found = match measure(&readings(widths, heights, diagonals)) {
            Ok(_) => None,
            Err(MeasuringError::DiagonalTooFar { .. }) => Some("diagonal"),
            Err(MeasuringError::DiagonalsOfNoOpening { .. }) => Some("diagonals"),
            Err(MeasuringError::LeansTooFar { .. }) => Some("askew"),
            Err(_) => Some("something else"),
        };
        assert_eq!(found, expected, "{name} ({COMPUTED})");
    }
}

#[test]
fn an_error_says_what_was_expected_and_what_to_do() {
    let error = |readings: Readings| {
        let error = measure(&readings).unwrap_err();
        (error.to_string(), error.help())
    };
    let rows = [
        (
            readings("36,36,36", "60,60,60", "70,75"),
            "diagonals of the opening are `70 in` and `75 in`; expected `69 3/4 in` to `70 3/16 in`, or one as much \
             longer as the other is shorter",
            "measure all again",
        ),
        (
            readings("36,36,36", "60,60,60", "100,-"),
            "diagonal of the opening is `100 in`; expected `23 3/4 in` to `96 1/4 in`",
            "from corner to corner",
        ),
        (
            readings("36,36,36", "60,60,60", "83.9,52.5"),
            "the opening stands so far askew that `29.742… in` of the width is lost; expected at most `18 in`, half of \
             the shorter side",
            "hold a level",
        ),
        (
            readings("36,-36,36", "60,60,60", "-,-"),
            "width of the opening is `-36 in, middle`; expected a length above 0 and at most 50 ft",
            "leave it out",
        ),
    ];
    for (readings, text, help) in rows {
        let (found, found_help) = error(readings);
        assert_eq!(found, text);
        assert!(found_help.contains(help), "{found_help}");
    }
}

#[test]
fn readings_that_cannot_be_any_are_refused() {
    let good = || readings("36,36,36", "60,60,60", "70,70");
    let one = |text: &str| Some(inches(text));
    let rows = [
        (
            "width of nothing",
            Readings {
                widths: three("0,36,36"),
                ..good()
            },
            Fact::OpeningWidth,
        ),
        (
            "width of 900 ft",
            Readings {
                widths: three("36,36,10800"),
                ..good()
            },
            Fact::OpeningWidth,
        ),
        (
            "height below nothing",
            Readings {
                heights: three("60,-60,60"),
                ..good()
            },
            Fact::OpeningHeight,
        ),
        (
            "diagonal of nothing",
            Readings {
                diagonals: two("0,70"),
                ..good()
            },
            Fact::OpeningDiagonal,
        ),
        (
            "diagonal below nothing",
            Readings {
                diagonals: two("70,-70"),
                ..good()
            },
            Fact::OpeningDiagonal,
        ),
        (
            "diagonal of 4,000 ft",
            Readings {
                diagonals: two("48000,70"),
                ..good()
            },
            Fact::OpeningDiagonal,
        ),
        (
            "plumb below nothing",
            Readings {
                out_of_plumb: one("-1/8"),
                ..good()
            },
            Fact::OutOfPlumb,
        ),
        (
            "level below nothing",
            Readings {
                out_of_level: one("-1/8"),
                ..good()
            },
            Fact::OutOfLevel,
        ),
        (
            "pocket of nothing",
            Readings {
                pocket_depth: one("0"),
                ..good()
            },
            Fact::PocketDepth,
        ),
    ];
    for (name, readings, fact) in rows {
        match measure(&readings) {
            Err(MeasuringError::Input(error)) => assert_eq!(error.fact, fact, "{name}"),
            other => panic!("{name}: {other:?}"),
        }
    }
    let askew = Readings {
        out_of_plumb: one("18 1/64"),
        ..readings("36,36,36", "60,60,60", "-,-")
    };
    assert!(matches!(measure(&askew), Err(MeasuringError::LeansTooFar { .. })));
    let just = Readings {
        out_of_plumb: one("18"),
        ..readings("36,36,36", "60,60,60", "-,-")
    };
    assert!(measure(&just).is_ok(), "half of the shorter side");
    let high = Readings {
        out_of_level: one("18 1/64"),
        ..readings("36,36,36", "60,60,60", "-,-")
    };
    assert!(matches!(measure(&high), Err(MeasuringError::LeansTooFar { .. })));
}

/// 36 x 60 in: 69.971 in. 30 x 40: 50. A corner moved 1/4 in sideways changes the two diagonals by 0.257 in.
#[test]
fn diagonals_as_computed_elsewhere() {
    let exactly = |text: &str| Interval::exact(inches(text));
    let diagonal = expected_diagonal(&exactly("36"), &exactly("60")).unwrap();
    for (end, digits) in [(diagonal.low(), "69.971"), (diagonal.high(), "69.971")] {
        assert_eq!(end.to_fixed(3), digits, "{COMPUTED}");
    }
    assert_eq!(
        expected_diagonal(&exactly("30"), &exactly("40")),
        Some(exactly("50")),
        "{COMPUTED}"
    );
    let longer = expected_diagonal(&exactly("36.25"), &exactly("60")).unwrap();
    let shorter = expected_diagonal(&exactly("35.75"), &exactly("60")).unwrap();
    let change = longer.minus(&shorter);
    assert_eq!(
        (change.low().to_fixed(3), change.high().to_fixed(3)),
        ("0.257".into(), "0.257".into())
    );
    // And back: those two diagonals say that the sides lean by a quarter of an inch.
    let measured = measure(&Readings {
        diagonals: [Some(longer.low().clone()), Some(shorter.low().clone())],
        ..readings("36,36,36", "60,60,60", "-,-")
    })
    .unwrap();
    assert_eq!(measured.lean.to_fixed(12), "0.250000000000", "{COMPUTED}");
}

#[test]
fn a_deduction_is_taken_off_once_and_the_step_goes_down() {
    let rows = [
        ("a quarter off, by eighths", "35 15/16", "1/4", "1/8", "35 5/8"),
        ("a quarter off, by quarters", "35 15/16", "1/4", "1/4", "35 1/2"),
        ("a half off, by eighths", "35 15/16", "1/2", "1/8", "35 3/8"),
        (
            "a quarter off the height, by eighths",
            "59 13/16",
            "1/4",
            "1/8",
            "59 1/2",
        ),
        ("on the step already", "36", "1/4", "1/8", "35 3/4"),
        ("one step under it", "36", "17/64", "1/8", "35 5/8"),
        (
            "nothing off, a step of a sixteenth",
            "35 15/16",
            "0",
            "1/16",
            "35 15/16",
        ),
    ];
    for (name, measured, off, step, ordered) in rows {
        let deduction = Deduction {
            width: inches(off),
            height: inches(off),
            step: inches(step),
        };
        let found = deduct(
            &size(measured, measured),
            StatedDeduction::both(DeductedBy::Nobody),
            &deduction,
        );
        assert_eq!(
            found,
            Ok(Ordered::Size(size(ordered, ordered))),
            "{name} ({COMPUTED})"
        );
    }
}

#[test]
fn nothing_is_deducted_twice_and_who_deducts_must_be_said() {
    use DeductedBy::{Customer, Dealer, Nobody};
    #[derive(Debug, PartialEq)]
    enum Answer {
        Size,
        Missing,
        Twice,
        Two,
    }
    let rows = [
        (
            "nobody, a deduction asked for",
            Some(Nobody),
            Some(Nobody),
            "1/4",
            Answer::Size,
        ),
        (
            "nobody, none asked for",
            Some(Nobody),
            Some(Nobody),
            "0",
            Answer::Size,
        ),
        (
            "the dealer, none asked for",
            Some(Dealer),
            Some(Dealer),
            "0",
            Answer::Size,
        ),
        (
            "the dealer, and again",
            Some(Dealer),
            Some(Dealer),
            "1/4",
            Answer::Twice,
        ),
        (
            "the dealer, and a hair again",
            Some(Dealer),
            Some(Dealer),
            "1/64",
            Answer::Twice,
        ),
        (
            "the customer, and again",
            Some(Customer),
            Some(Customer),
            "1/4",
            Answer::Twice,
        ),
        (
            "from the height alone, and again",
            Some(Nobody),
            Some(Dealer),
            "1/4",
            Answer::Twice,
        ),
        (
            "from the height alone, none asked for",
            Some(Nobody),
            Some(Dealer),
            "0",
            Answer::Size,
        ),
        ("two people", Some(Dealer), Some(Customer), "0", Answer::Two),
        (
            "two people the other way round",
            Some(Customer),
            Some(Dealer),
            "1/4",
            Answer::Two,
        ),
        (
            "unstated for the width",
            None,
            Some(Nobody),
            "1/4",
            Answer::Missing,
        ),
        (
            "unstated for the height",
            Some(Nobody),
            None,
            "1/4",
            Answer::Missing,
        ),
        ("unstated, and none asked for", None, None, "0", Answer::Missing),
    ];
    for (name, width, height, off, expected) in rows {
        let deduction = Deduction {
            width: inches(off),
            height: inches(off),
            step: inches("1/8"),
        };
        let found = match deduct(&size("36", "60"), StatedDeduction { width, height }, &deduction) {
            Ok(Ordered::Size(_)) => Answer::Size,
            Ok(Ordered::Unknown(missing)) => {
                assert_eq!(missing, [Fact::DeductedBy].into());
                Answer::Missing
            }
            Err(error @ MeasuringError::DeductedTwice { .. }) => {
                assert!(error.help().starts_with("take it off once"));
                Answer::Twice
            }
            Err(MeasuringError::DeductedByTwo { .. }) => Answer::Two,
            Err(error) => panic!("{name}: {error}"),
        };
        assert_eq!(found, expected, "{name} ({PRACTICE})");
    }
}

#[test]
fn deductions_that_cannot_be_are_refused() {
    let off = |width: &str, height: &str, step: &str| Deduction {
        width: inches(width),
        height: inches(height),
        step: inches(step),
    };
    let rows = [
        (
            "below nothing",
            off("-1/4", "0", "1/8"),
            "deduction from the width is `-1/4 in`; expected a length of 0",
        ),
        (
            "of the height",
            off("0", "-1/4", "1/8"),
            "deduction from the height is `-1/4 in`; expected a length of 0",
        ),
        (
            "a step of nothing",
            off("0", "0", "0"),
            "step of the plant's sizes is `0 in`; expected a length above 0",
        ),
        (
            "a step below nothing",
            off("0", "0", "-1/8"),
            "step of the plant's sizes is `-1/8 in`; expected",
        ),
        (
            "all of it",
            off("36", "0", "1/8"),
            "nothing is left of the width `36 in` less `36 in`",
        ),
        (
            "more than all of it",
            off("0", "61", "1/8"),
            "nothing is left of the height `60 in` less `61 in`",
        ),
        (
            "a step above the size",
            off("0", "0", "37"),
            "step of the plant's sizes is `37 in`; expected a step of at most the width of `36 in`",
        ),
    ];
    for (name, deduction, text) in rows {
        let nobody = StatedDeduction::both(DeductedBy::Nobody);
        let error = deduct(&size("36", "60"), nobody, &deduction)
            .unwrap_err()
            .to_string();
        assert!(error.starts_with(text), "{name}: {error}");
    }
    let nobody = StatedDeduction::both(DeductedBy::Nobody);
    assert!(deduct(&size("0", "60"), nobody, &off("0", "0", "1/8")).is_err());
    assert!(deduct(&size("36", "601"), nobody, &off("0", "0", "1/8")).is_err());
    let whole = deduct(&size("36", "60"), nobody, &off("0", "0", "36"));
    assert_eq!(
        whole,
        Ok(Ordered::Size(size("36", "36"))),
        "a step as large as the width"
    );
}

#[test]
fn conventions_of_opening_convert_by_the_callers_clearance() {
    let each = |text: &str| Clearance {
        width: inches(text),
        height: inches(text),
    };
    let frame = NetFrame(size("35 1/2", "59 1/2"));
    let rough = RoughOpening(size("36", "60"));
    assert_eq!(frame.rough_opening(&each("1/2")), Ok(rough.clone()), "{PRACTICE}");
    assert_eq!(rough.net_frame(&each("1/2")), Ok(frame.clone()), "{PRACTICE}");
    let daylight = frame
        .daylight_opening(&Clearance {
            width: inches("5"),
            height: inches("7 1/2"),
        })
        .unwrap();
    assert_eq!(daylight.0, size("30 1/2", "52"), "{PRACTICE}");
    assert!(rough.net_frame(&each("-1/2")).is_err());
    assert!(matches!(
        rough.net_frame(&each("36")),
        Err(MeasuringError::NothingLeft { .. })
    ));
    assert!(rough.net_frame(&each("35 63/64")).is_ok());
    assert!(
        NetFrame(size("600", "60")).rough_opening(&each("1/2")).is_err(),
        "above 50 ft"
    );
}

#[test]
fn the_ordered_size_is_billed() {
    let rows = [
        ("36 x 60", size("36", "60"), 3, "15.000", "16.000"),
        ("35.5 x 59.25", size("35.5", "59.25"), 4, "14.6068", "15.7917"),
    ];
    for (name, ordered, places, area, perimeter) in rows {
        assert_eq!(
            billed_area(&ordered).unwrap().to_fixed(places),
            area,
            "{name} ({COMPUTED})"
        );
        assert_eq!(
            billed_perimeter(&ordered).unwrap().to_fixed(places),
            perimeter,
            "{name} ({COMPUTED})"
        );
    }
    assert!(billed_area(&size("0", "60")).is_err());
    assert!(billed_perimeter(&size("36", "-60")).is_err());
}

#[test]
fn united_inches_follow_the_rule_that_is_asked_for() {
    let rows = [
        ("whole inches", "32", "54", ["86", "86", "86"], GUIDE),
        (
            "both rules give 96",
            "35.625",
            "59.75",
            ["95.375", "96", "96"],
            COMPUTED,
        ),
        (
            "the rules differ",
            "35.25",
            "59.25",
            ["94.5", "96", "95"],
            COMPUTED,
        ),
        (
            "a hair above",
            "36 1/64",
            "60",
            ["96.015625", "97", "97"],
            COMPUTED,
        ),
    ];
    for (name, width, height, expected, source) in rows {
        for (rule, expected) in UnitedInches::ALL.into_iter().zip(expected) {
            let found = rule.of(&size(width, height)).unwrap();
            assert_eq!(found, inches(expected), "{name}, {rule:?} ({source})");
        }
    }
    assert!(UnitedInches::SumUp.of(&size("36", "0")).is_err());
    assert_eq!(UnitedInches::Exact.basis().status, Status::SecondHand);
    assert_eq!(UnitedInches::SumUp.basis().status, Status::FromMemory);
}

#[test]
fn a_size_is_written_width_by_height() {
    assert_eq!(
        size("35 5/8", "59 1/2").to_string(),
        "35 5/8 in x 59 1/2 in",
        "{GUIDE}"
    );
}
