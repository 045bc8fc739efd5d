//! Which reading governs, and what lies outside common practice.

use super::{GUIDE, columns, inches, plain, readings};
use astragal_exact::{LengthUnit, Number};
use astragal_trade::measuring::{Finding, MeasuringError, Readings, measure};
use astragal_trade::{Fact, Status};

#[test]
fn the_smallest_reading_governs() {
    let rows = [
        "smallest first         | 35 7/8, 36, 36     | 35 7/8   | 1/8  | 3",
        "smallest in the middle | 36, 35 15/16, 36   | 35 15/16 | 1/16 | 3",
        "smallest last          | 36 1/4, 36 1/8, 36 | 36       | 1/4  | 3",
        "two were read          | -, 36, 36 1/8      | 36       | 1/8  | 2",
        "one was read           | -, -, 36           | 36       | 0    | 1",
    ];
    for row in rows {
        let [name, three, smallest, spread, read] = columns(row);
        let wide = readings(&format!("width {three}")).governing_width().unwrap();
        let high = readings(&format!("height {three}")).governing_height().unwrap();
        assert_eq!(wide, high, "{name} ({GUIDE})");
        assert_eq!(
            (&wide.smallest, wide.spread()),
            (&inches(smallest), inches(spread)),
            "{name}"
        );
        assert_eq!(wide.read.to_string(), read, "{name}");
    }
    assert_eq!(readings("height 60, 60, 60").governing_width(), None);
    assert_eq!(readings("width 60, 60, 60").governing_height(), None);
}

/// Each limit from both sides: at it is within it.
#[test]
fn what_lies_outside_common_practice_is_found() {
    let pocket_guide = "a measuring guide for replacement windows";
    let square = "width 36, 36, 36; height 60, 60, 60; diagonals 69 31/32, 69 31/32; plumb 0; level 0";
    let rows = [
        ("all square            | plumb 0                        |", GUIDE),
        ("widths 1/8 apart      | width 36, 36, 36 1/8           |", GUIDE),
        (
            "widths 9/64 apart     | width 36, 36 9/64, 36          | readings_apart",
            GUIDE,
        ),
        ("heights 1/8 apart     | height 60, 60 1/8, 60          |", GUIDE),
        (
            "heights 9/64 apart    | height 60, 60, 60 9/64         | readings_apart",
            GUIDE,
        ),
        ("diagonals 1/4 apart   | diagonals 69 31/32, 70 7/32    |", GUIDE),
        (
            "diagonals 17/64 apart | diagonals 70 15/64, 69 31/32; plumb - | diagonals_differ",
            GUIDE,
        ),
        ("1/8 out of plumb      | plumb 1/8                      |", GUIDE),
        (
            "9/64 out of plumb     | plumb 9/64                     | out_of_plumb",
            GUIDE,
        ),
        ("1/8 out of level      | level 1/8                      |", GUIDE),
        (
            "9/64 out of level     | level 9/64                     | out_of_level",
            GUIDE,
        ),
        (
            "a pocket of 3 1/4     | pocket 3 1/4                   |",
            pocket_guide,
        ),
        (
            "a pocket of 3 15/64   | pocket 3 15/64                 | pocket_shallow",
            pocket_guide,
        ),
    ];
    for (row, source) in rows {
        let [name, also, expected] = columns(row);
        let measured = measure(&readings(&format!("{square}; {also}"))).unwrap();
        let warnings: Vec<&Finding> = measured
            .findings
            .iter()
            .filter(|finding| finding.is_warning())
            .collect();
        let found: Vec<&str> = warnings.iter().map(|finding| finding.id()).collect();
        assert_eq!(found.join(" "), expected, "{name} ({source})");
        for finding in warnings {
            let basis = finding.basis().unwrap();
            assert_eq!(
                (basis.document, basis.status),
                (source, Status::SecondHand),
                "{name}"
            );
            let text = finding.to_string();
            assert!(
                text.ends_with("measure again or have it looked at in the field"),
                "{text}"
            );
        }
    }
}

const ASKEW: &str =
    "width 36, 36, 36 1/4; height 60, 60 1/2, 60; diagonals 70 1/4, 69 3/4; plumb 1/4; level 1/4; pocket 3";

/// What was read, and a sentence about it.
const SAID: &[(&str, &str)] = &[
    (
        ASKEW,
        "readings of the width lie `1/4 in` apart; common practice is at most `1/8 in`: measure again",
    ),
    (
        ASKEW,
        "readings of the height lie `1/2 in` apart; common practice is at most `1/8 in`: measure again",
    ),
    (
        ASKEW,
        "the diagonals differ by `1/2 in`; common practice is at most `1/4 in`: measure again",
    ),
    (
        ASKEW,
        "the jambs are out of plumb by `1/4 in`; common practice is at most `1/8 in`: measure again",
    ),
    (
        ASKEW,
        "head and sill are out of level by `1/4 in`; common practice is at most `1/8 in`: measure",
    ),
    (
        ASKEW,
        "the pocket is `3 in` deep; common practice is at least `3 1/4 in`: measure again",
    ),
    (
        "width 36, -, -; height 60, 60, 60",
        "1 of 3 readings of the width: a smaller one may not have been read",
    ),
    ("height 60, 60, 60", "no width was read"),
    ("width 36, 36, 36", "no height was read"),
    (
        "width 36, 36, 36",
        "diagonals missing: not known whether it is square",
    ),
    (
        "width 36, 36, 36",
        "no level was held to a jamb: not known whether it is plumb",
    ),
    (
        "width 36, 36, 36",
        "no level was held to the sill: not known whether it is level",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals 70, 69 3/4",
        "the sides lean or head and sill slope, and a level would tell which: the size fits either way, unless both do and work against each other",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals 70, 69 1/2; plumb 1/4",
        "the size holds unless lean and slope work against each other: hold a level to the sill too",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals 70, 69 1/2; level 1/8",
        "the size holds unless lean and slope work against each other: hold a level to a jamb too",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals 70, -",
        "one diagonal missing: not known whether it is square",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals -, 70",
        "one diagonal missing: not known whether it is square",
    ),
    (
        "width 36, 36, 36; height 60, 60, 60; diagonals 70, 69 1/2; plumb 0; level 0",
        "what the level says does not go with the diagonals: measure again or have it looked at in the field",
    ),
];

#[test]
fn a_finding_says_what_was_read_and_what_is_common() {
    for (written, text) in SAID {
        let measured = measure(&readings(written)).unwrap();
        let texts: Vec<String> = measured.findings.iter().map(ToString::to_string).collect();
        assert!(
            texts.iter().any(|found| found.starts_with(text)),
            "{text}: {texts:#?}"
        );
    }
}

/// The same findings and errors for a caller who works in another unit: no inch and no foot is left in them.
#[test]
fn findings_and_errors_are_said_in_the_unit_of_who_asks() {
    let measured = measure(&readings(ASKEW)).unwrap();
    let found: Vec<String> = measured
        .findings
        .iter()
        .map(|it| it.text(LengthUnit::Millimetre))
        .collect();
    let again = "measure again or have it looked at in the field";
    let expected = [
        "readings of the width lie `6.35 mm` apart; common practice is at most `3.175 mm`",
        "readings of the height lie `12.7 mm` apart; common practice is at most `3.175 mm`",
        "the diagonals differ by `12.7 mm`; common practice is at most `6.35 mm`",
        "the jambs are out of plumb by `6.35 mm`; common practice is at most `3.175 mm`",
        "head and sill are out of level by `6.35 mm`; common practice is at most `3.175 mm`",
        "the pocket is `76.2 mm` deep; common practice is at least `82.55 mm`",
    ];
    assert_eq!(found, expected.map(|text| format!("{text}: {again}")));
    let rows = [
        (
            "width 36, -36, 36",
            "width of the opening is `-914.4 mm, middle`; expected a length above 0 and at most 15240 mm",
        ),
        (
            "diagonals 0, 70",
            "diagonal of the opening is `0 mm`; expected a length above 0 and at most 914400 mm",
        ),
        (
            "plumb -1/8",
            "how far the jambs are out of plumb is `-3.175 mm`; expected a length of 0 or more, at most 914400 mm",
        ),
        (
            "diagonals 200, -",
            "diagonal of the opening is `5080 mm`; expected `603.25 mm` to `2444.75 mm`",
        ),
        (
            "diagonals 70, 75",
            "diagonals of the opening are `1778 mm` and `1905 mm`; expected `1771.65 mm` to `1782.7625 mm`, or one as much longer as the other is shorter",
        ),
        (
            "plumb 20",
            "the opening stands so far askew that `508 mm` of the width is lost; expected at most `457.2 mm`, half of the shorter side",
        ),
    ];
    for (also, text) in rows {
        let error = measure(&plain(also)).unwrap_err();
        assert_eq!(error.text(LengthUnit::Millimetre), text, "{also}");
        assert_eq!(error.text(LengthUnit::Inch), error.to_string(), "{also}");
    }
}

#[test]
fn without_a_width_or_a_height_there_is_no_size() {
    let rows = [
        ("height 60, 60, 60; diagonals 70, 70", Fact::OpeningWidth),
        ("width 36, 36, 36; diagonals 70, 70", Fact::OpeningHeight),
    ];
    for (written, fact) in rows {
        let measured = measure(&readings(written)).unwrap();
        assert_eq!(measured.upright, None, "{written}");
        assert!(measured.missing.contains(&fact), "{written}");
    }
    let nothing = measure(&Readings::default()).unwrap();
    let all = [
        Fact::OpeningWidth,
        Fact::OpeningHeight,
        Fact::OpeningDiagonal,
        Fact::OutOfPlumb,
        Fact::OutOfLevel,
    ];
    assert_eq!(nothing.missing, all.into());
    let full = measure(&plain("diagonals 70, 70; plumb 0; level 0")).unwrap();
    assert!(full.missing.is_empty() && full.findings.is_empty(), "{full:?}");
    assert_eq!(full.lean, Number::ZERO);
}

#[test]
fn readings_that_cannot_be_any_are_refused() {
    let rows = [
        (
            "width 0, 36, 36",
            "width of the opening is `0 in, top`; expected a length above 0 and at most 50 ft",
        ),
        (
            "width 36, 36, 10800",
            "width of the opening is `10800 in, bottom`; expected a length above 0",
        ),
        (
            "width 36, -36, 36",
            "width of the opening is `-36 in, middle`; expected a length above 0",
        ),
        (
            "height -60, 60, 60",
            "height of the opening is `-60 in, left`; expected a length above 0",
        ),
        (
            "height 60, 601, 60",
            "height of the opening is `601 in, centre`; expected a length above 0",
        ),
        (
            "height 60, 60, 0",
            "height of the opening is `0 in, right`; expected a length above 0",
        ),
        (
            "diagonals 0, 70",
            "diagonal of the opening is `0 in`; expected a length above 0 and at most 3,000 ft",
        ),
        (
            "diagonals 70, -70",
            "diagonal of the opening is `-70 in`; expected a length above 0 and at most 3,000 ft",
        ),
        (
            "diagonals 48000, 70",
            "diagonal of the opening is `48000 in`; expected a length above 0 and at most 3,000 ft",
        ),
        (
            "plumb -1/8",
            "how far the jambs are out of plumb is `-1/8 in`; expected a length of 0 or more",
        ),
        (
            "level -1/8",
            "how far the head and sill are out of level is `-1/8 in`; expected a length of 0",
        ),
        (
            "pocket 0",
            "depth of the pocket in the old frame is `0 in`; expected a length above 0",
        ),
    ];
    for (also, text) in rows {
        let error = measure(&plain(also)).unwrap_err();
        assert!(matches!(error, MeasuringError::Input(_)), "{also}");
        assert!(error.to_string().starts_with(text), "{also}: {error}");
    }
}
