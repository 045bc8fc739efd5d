//! Deductions, conventions of opening, billing and united inches.

use super::{COMPUTED, GUIDE, PRACTICE, columns, inches, size};
use astragal_trade::measuring::{
    Clearance, DeductedBy, Deduction, MeasuringError, NetFrame, Ordered, RoughOpening, StatedDeduction,
    UnitedInches, billed_area, billed_perimeter, deduct,
};
use astragal_trade::{Fact, Status};

fn deduction(off: &str, step: &str) -> Deduction {
    let (width, height) = off.split_once(" x ").unwrap_or((off, off));
    Deduction {
        width: inches(width),
        height: inches(height),
        step: inches(step),
    }
}

#[test]
fn a_deduction_is_taken_off_and_the_step_goes_down() {
    let rows = [
        "a quarter off, by eighths     | 35 15/16 x 59 13/16 | 1/4       | 1/8  | 35 5/8 x 59 1/2",
        "a quarter off, by quarters    | 35 15/16 x 59 13/16 | 1/4       | 1/4  | 35 1/2 x 59 1/2",
        "a half off, by eighths        | 35 15/16 x 59 13/16 | 1/2       | 1/8  | 35 3/8 x 59 1/4",
        "each by itself                | 35 15/16 x 59 13/16 | 1/4 x 1/2 | 1/8  | 35 5/8 x 59 1/4",
        "on the step already           | 36 x 60             | 1/4       | 1/8  | 35 3/4 x 59 3/4",
        "a hair under the step         | 36 x 60             | 17/64     | 1/8  | 35 5/8 x 59 5/8",
        "nothing off                   | 35 15/16 x 60       | 0         | 1/16 | 35 15/16 x 60",
        "a step as large as the width  | 36 x 60             | 0         | 36   | 36 x 36",
    ];
    for row in rows {
        let [name, measured, off, step, ordered] = columns(row);
        let nobody = StatedDeduction::both(DeductedBy::Nobody);
        let found = deduct(&size(measured), nobody, &deduction(off, step));
        assert_eq!(found, Ok(Ordered::Size(size(ordered))), "{name} ({COMPUTED})");
    }
}

/// No source: common practice, who deducts must be said; the sizes are computed.
#[test]
fn nothing_is_deducted_twice_and_who_deducts_must_be_said() {
    let rows = [
        "nobody, a deduction asked for         | nobody   | nobody   | 1/4     | 35 3/4 x 59 3/4",
        "nobody, none asked for                | nobody   | nobody   | 0       | 36 x 60",
        "the dealer, none asked for            | dealer   | dealer   | 0       | 36 x 60",
        "the customer, none asked for          | customer | customer | 0       | 36 x 60",
        "the dealer, and again                 | dealer   | dealer   | 1/4     | twice",
        "the dealer, and a hair again          | dealer   | dealer   | 1/64    | twice",
        "the customer, and again               | customer | customer | 1/4     | twice",
        "from the height alone, and again      | nobody   | dealer   | 1/4     | twice",
        "from the width alone, and again       | dealer   | nobody   | 1/4     | twice",
        "from the height, the width asked for  | nobody   | dealer   | 1/4 x 0 | 35 3/4 x 60",
        "two people                            | dealer   | customer | 0       | two",
        "two people the other way round        | customer | dealer   | 1/4     | two",
        "unstated for the width                | -        | nobody   | 1/4     | missing",
        "unstated for the height               | nobody   | -        | 1/4     | missing",
        "unstated, and none asked for          | -        | -        | 0       | missing",
    ];
    let by = |word: &str| {
        let all = [DeductedBy::Nobody, DeductedBy::Dealer, DeductedBy::Customer];
        all.into_iter().find(|by| by.word() == word)
    };
    for row in rows {
        let [name, width, height, off, expected] = columns(row);
        let stated = StatedDeduction {
            width: by(width),
            height: by(height),
        };
        let found = deduct(&size("36 x 60"), stated, &deduction(off, "1/8"));
        match expected {
            "twice" => assert!(
                matches!(found, Err(MeasuringError::DeductedTwice { .. })),
                "{name}: {found:?}"
            ),
            "two" => assert!(
                matches!(found, Err(MeasuringError::DeductedByTwo { .. })),
                "{name}: {found:?}"
            ),
            "missing" => assert_eq!(found, Ok(Ordered::Unknown([Fact::DeductedBy].into())), "{name}"),
            ordered => assert_eq!(found, Ok(Ordered::Size(size(ordered))), "{name} ({PRACTICE})"),
        }
    }
}

#[test]
fn a_deduction_that_cannot_be_is_refused() {
    let rows = [
        (
            "36 x 60",
            "-1/4 x 0",
            "1/8",
            "deduction from the width is `-1/4 in`; expected a length of 0 or more",
        ),
        (
            "36 x 60",
            "0 x -1/4",
            "1/8",
            "deduction from the height is `-1/4 in`; expected a length of 0 or more",
        ),
        (
            "36 x 60",
            "0",
            "0",
            "step of the plant's sizes is `0 in`; expected a length above 0",
        ),
        (
            "36 x 60",
            "0",
            "-1/8",
            "step of the plant's sizes is `-1/8 in`; expected a length above 0",
        ),
        (
            "36 x 60",
            "36 x 0",
            "1/8",
            "nothing is left of the width `36 in` less `36 in`",
        ),
        (
            "36 x 60",
            "0 x 61",
            "1/8",
            "nothing is left of the height `60 in` less `61 in`",
        ),
        (
            "36 x 60",
            "0",
            "37",
            "step of the plant's sizes is `37 in`; expected a step of at most the width of `36 in`",
        ),
        (
            "0 x 60",
            "0",
            "1/8",
            "width of the opening is `0 in`; expected a length above 0",
        ),
        (
            "36 x 601",
            "0",
            "1/8",
            "height of the opening is `601 in`; expected a length above 0",
        ),
    ];
    for (measured, off, step, text) in rows {
        let nobody = StatedDeduction::both(DeductedBy::Nobody);
        let error = deduct(&size(measured), nobody, &deduction(off, step)).unwrap_err();
        assert!(error.to_string().starts_with(text), "{error}");
    }
}

#[test]
fn an_error_of_deductions_says_what_to_do() {
    let stated = |width, height| StatedDeduction {
        width: Some(width),
        height: Some(height),
    };
    let (dealer, customer) = (DeductedBy::Dealer, DeductedBy::Customer);
    let twice = deduct(
        &size("36 x 60"),
        stated(dealer, dealer),
        &deduction("0 x 1/4", "1/8"),
    )
    .unwrap_err();
    assert_eq!(
        (twice.to_string().as_str(), twice.help()),
        (
            "the dealer has deducted from the height already, and `1/4 in` is to come off again",
            "take it off once: say that nobody has deducted, or ask for 0"
        )
    );
    let two = deduct(&size("36 x 60"), stated(dealer, customer), &deduction("0", "1/8")).unwrap_err();
    assert_eq!(
        (two.to_string().as_str(), two.help()),
        (
            "the dealer has deducted from the width and the customer from the height; expected one of them",
            "have one person measure, and say once who deducts"
        )
    );
}

#[test]
fn conventions_of_opening_convert_by_the_callers_clearance() {
    let clearance = |text: &str| {
        let (width, height) = text.split_once(" x ").unwrap();
        Clearance {
            width: inches(width),
            height: inches(height),
        }
    };
    let frame = NetFrame(size("35 1/2 x 59 3/4"));
    let rough = RoughOpening(size("36 x 60"));
    assert_eq!(
        frame.rough_opening(&clearance("1/2 x 1/4")),
        Ok(rough.clone()),
        "{PRACTICE}"
    );
    assert_eq!(
        rough.net_frame(&clearance("1/2 x 1/4")),
        Ok(frame.clone()),
        "{PRACTICE}"
    );
    let daylight = frame.daylight_opening(&clearance("5 x 7 1/2")).unwrap();
    assert_eq!(daylight.0, size("30 1/2 x 52 1/4"), "{PRACTICE}");

    for refused in ["-1/2 x 0", "0 x -1/2", "36 x 0", "0 x 60"] {
        assert!(rough.net_frame(&clearance(refused)).is_err(), "{refused}");
    }
    assert!(rough.net_frame(&clearance("35 63/64 x 59 63/64")).is_ok());
    assert!(frame.rough_opening(&clearance("-1 x 0")).is_err());
    assert!(
        NetFrame(size("600 x 60"))
            .rough_opening(&clearance("1/2 x 0"))
            .is_err(),
        "above 50 ft"
    );
    assert!(
        RoughOpening(size("0 x 60"))
            .net_frame(&clearance("0 x 0"))
            .is_err()
    );
}

#[test]
fn the_ordered_size_is_billed() {
    let rows = [
        ("36 x 60", 3, "15.000", "16.000"),
        ("35.5 x 59.25", 4, "14.6068", "15.7917"),
    ];
    for (ordered, places, area, perimeter) in rows {
        let ordered = size(ordered);
        assert_eq!(
            billed_area(&ordered).unwrap().to_fixed(places),
            area,
            "{ordered} ({COMPUTED})"
        );
        assert_eq!(
            billed_perimeter(&ordered).unwrap().to_fixed(places),
            perimeter,
            "{ordered} ({COMPUTED})"
        );
    }
    assert!(billed_area(&size("0 x 60")).is_err());
    assert!(billed_perimeter(&size("36 x -60")).is_err());
}

#[test]
fn united_inches_follow_the_rule_that_is_asked_for() {
    let rows = [
        ("whole inches     | 32 x 54        | 86       | 86 | 86", GUIDE),
        ("both rules agree | 35.625 x 59.75 | 95.375   | 96 | 96", COMPUTED),
        ("the rules differ | 35.25 x 59.25  | 94.5     | 96 | 95", COMPUTED),
        (
            "a hair above     | 36 1/64 x 60   | 96.015625 | 97 | 97",
            COMPUTED,
        ),
    ];
    for (row, source) in rows {
        let [name, measured, exact, each_up, sum_up] = columns(row);
        for (rule, expected) in UnitedInches::ALL.into_iter().zip([exact, each_up, sum_up]) {
            let found = rule.of(&size(measured)).unwrap();
            assert_eq!(found, inches(expected), "{name}, {rule:?} ({source})");
        }
    }
    assert!(UnitedInches::SumUp.of(&size("36 x 0")).is_err());
    assert_eq!(UnitedInches::Exact.basis().status, Status::SecondHand);
    assert_eq!(UnitedInches::SumUp.basis().status, Status::FromMemory);
}

#[test]
fn a_size_is_written_width_by_height() {
    assert_eq!(
        size("35 5/8 x 59 1/2").to_string(),
        "35 5/8 in x 59 1/2 in",
        "{GUIDE}"
    );
}
