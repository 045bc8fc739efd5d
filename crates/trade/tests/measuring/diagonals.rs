//! Diagonals that no opening of the sides that were read has.

use super::{COMPUTED, columns, inches, plain, readings};
use astragal_trade::interval::Interval;
use astragal_trade::measuring::{Finding, MeasuringError, expected_diagonal, measure};

#[test]
fn a_rectangle_has_the_diagonals_of_pythagoras() {
    let exactly = |text: &str| Interval::exact(inches(text));
    let diagonal = expected_diagonal(&exactly("36"), &exactly("60")).unwrap();
    for end in [diagonal.low(), diagonal.high()] {
        assert_eq!(end.to_fixed(3), "69.971", "{COMPUTED}");
    }
    assert_eq!(
        expected_diagonal(&exactly("30"), &exactly("40")),
        Some(exactly("50")),
        "{COMPUTED}"
    );
    assert_eq!(expected_diagonal(&exactly("30"), &exactly("-40")), None);
}

/// Both sides of what a tape right to 1/8 in allows.
///
/// 36 x 60 in: sides 1/8 longer, 0.245 of lean that the tapes allow and 1/8 on the diagonal make 70.26836; all shorter, 69.67494.
/// 83.9^2 + 52.5^2 is near 2 (36^2 + 60^2), so that the law holds, but 83.9^2 - 52.5^2 asks for 29.7 in of lean.
#[test]
fn diagonals_that_no_opening_has_are_refused() {
    let rows = [
        "as a rectangle has them         | diagonals 69.971, 69.971                     | taken",
        "just long enough                | diagonals 70.2683, 70.2683                   | taken",
        "just too long                   | diagonals 70.2684, 70.2684                   | no opening",
        "just short enough               | diagonals 69.675, 69.675                     | taken",
        "just too short                  | diagonals 69.6749, 69.6749                   | no opening",
        "one of them is wrong            | diagonals 70, 75                             | no opening",
        "the same, the other way round   | diagonals 75, 70                             | no opening",
        "one longer, one as much shorter | diagonals 70.5, 69.4375                      | taken",
        "sides that differ               | width 36, 36, 38; diagonals 71, 71           | taken",
        "the same with sides that do not | diagonals 71, 71                             | no opening",
        "heights that differ             | height 60, 61 1/4, 60; diagonals 71, 71      | taken",
        "as long as both sides           | diagonals 96.375, -                          | taken",
        "longer than both sides          | diagonals 96.376, -                          | too far",
        "the other of the two            | diagonals -, 96.376                          | too far",
        "as short as their difference    | diagonals 23.625, -                          | taken",
        "shorter than their difference   | diagonals 23.624, -                          | too far",
        "shorter, and wider than high    | width 60, 60, 60; height 36, 36, 36; diagonals 23.624, - | too far",
        "a square, and nearly nothing    | width 60, 60, 60; diagonals 0.01, 84.85      | no opening",
        "the law holds, the lean does not | diagonals 83.9, 52.5                        | askew",
        "more than any lean explains      | diagonals 95, 40                            | no opening",
        "too small for a tape            | width 0.1, 0.1, 0.1; height 0.1, 0.1, 0.1; diagonals 0.14, 0.14 | taken",
    ];
    for row in rows {
        let [name, also, expected] = columns(row);
        let found = match measure(&plain(also)) {
            Ok(_) => "taken",
            Err(MeasuringError::DiagonalTooFar { .. }) => "too far",
            Err(MeasuringError::DiagonalsOfNoOpening { .. }) => "no opening",
            Err(MeasuringError::LeansTooFar { .. }) => "askew",
            Err(error) => panic!("{name}: {error}"),
        };
        assert_eq!(found, expected, "{name} ({COMPUTED})");
    }
}

#[test]
fn an_error_says_what_was_expected_and_what_to_do() {
    let rows = [
        (
            "diagonals 70, 75",
            "diagonals of the opening are `70 in` and `75 in`; expected `69 3/4 in` to `70 3/16 in`, or one as much longer \
             as the other is shorter",
            "measure all again",
        ),
        (
            "diagonals 100, -",
            "diagonal of the opening is `100 in`; expected `23 3/4 in` to `96 1/4 in`",
            "from corner to corner",
        ),
        (
            "diagonals 83.9, 52.5",
            "the opening stands so far askew that `29.742… in` of the width is lost; expected at most `18 in`, half of the \
             shorter side",
            "hold a level",
        ),
        (
            "diagonals 70, -70",
            "diagonal of the opening is `-70 in`; expected a length above 0 and at most 3,000 ft",
            "leave it out",
        ),
    ];
    for (also, text, help) in rows {
        let error = measure(&plain(also)).unwrap_err();
        assert_eq!(error.to_string(), text);
        assert!(error.help().contains(help), "{}", error.help());
    }
}

/// Without both sides nothing can be said about a diagonal.
#[test]
fn diagonals_alone_are_not_refused() {
    assert!(measure(&readings("width 36, 36, 36; diagonals 700, 20")).is_ok());
}

/// Of one side alone nothing is taken off; where the opening is known to stand askew, that is said. Geometry, no source.
#[test]
fn one_side_of_an_opening_that_stands_askew_is_said_not_to_be_enough() {
    let rows = [
        ("width 28 1/2, 28 1/2, 28 1/2; diagonals 53 7/8, 53 5/8", true),
        ("height 45, 45, 45; diagonals 53 7/8, 53 13/16", true),
        ("width 28 1/2, 28 1/2, 28 1/2; plumb 1/16", true),
        ("width 28 1/2, 28 1/2, 28 1/2; diagonals 53 7/8, 53 7/8", false),
        ("width 28 1/2, 28 1/2, 28 1/2; plumb 0; level 0", false),
        ("diagonals 53 7/8, 53 5/8", false),
        ("width 36, 36, 36; height 60, 60, 60; diagonals 70, 69 7/8", false),
    ];
    for (text, said) in rows {
        let measured = measure(&readings(text)).unwrap();
        let is_said = measured.findings.contains(&Finding::NotTakenOff);
        assert_eq!(is_said, said, "{text}");
        assert_eq!(measured.upright.is_none(), !text.contains("height 60"), "{text}");
    }
}
