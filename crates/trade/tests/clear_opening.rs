//! What the clear opening of a unit is, by operation, row by row.
//!
//! Losses, sizes and angles are invented; the results are computed from the formulas of the module's header.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod text_rows;

use astragal_exact::{AreaUnit, Number, format_area};
use astragal_trade::FactsError;
use astragal_trade::clear_opening::{
    ClearOpening, EscapeRating, Losses, Operation, StoppedSash, clear_opening,
};
use astragal_trade::interval::{Interval, square_root};
use proptest::prelude::*;
use text_rows::{number, pair, rows};

/// `hung 1/2`, `slider 1/3`, `casement 4`, `awning`, `awning 40 x 24`, `fixed`, and
/// `stopped s t p cosine sine`, in which an interval is written `0.5..0.6`.
fn operation(text: &str) -> Operation {
    let (kind, rest) = text.split_once(' ').unwrap_or((text, ""));
    match kind {
        "hung" => Operation::Hung {
            sash_share: number(rest),
        },
        "slider" => Operation::Slider {
            vent_fraction: number(rest),
        },
        "casement" => Operation::Casement {
            hinge_intrusion: number(rest),
        },
        "stopped" => Operation::StoppedCasement(stopped(rest)),
        "awning" if rest.is_empty() => Operation::Projecting { escape_rating: None },
        "awning" => {
            let (width, height) = pair(rest);
            Operation::Projecting {
                escape_rating: Some(EscapeRating { width, height }),
            }
        }
        "fixed" => Operation::Fixed,
        other => panic!("`{other}` is no operation"),
    }
}

fn stopped(text: &str) -> StoppedSash {
    let parts: Vec<Interval> = text.split(' ').map(interval).collect();
    StoppedSash {
        width: parts[0].low().clone(),
        thickness: parts[1].low().clone(),
        hinge_offset: parts[2].low().clone(),
        cosine: parts[3].clone(),
        sine: parts[4].clone(),
    }
}

fn interval(text: &str) -> Interval {
    match text.split_once("..") {
        Some((low, high)) => Interval::between(number(low), number(high)),
        None => number(text).into(),
    }
}

fn opening(unit: &str, lost: &str, operation_text: &str) -> Result<ClearOpening, FactsError> {
    let (width, height) = pair(unit);
    let (lost_width, lost_height) = pair(lost);
    let losses = Losses {
        width: lost_width,
        height: lost_height,
    };
    clear_opening(&width, &height, &losses, &operation(operation_text))
}

/// Source of every row: computed from the formula; sizes and losses invented. Areas are cut after four places.
const OPENINGS: &str = "
    row                            | unit      | lost    | operation              | clear      | area
    hung                           | 36 x 60   | 4 x 4.5 | hung 1/2               | 32 x 25.5  | 5.6666… sq ft
    hung, a half inch taller       | 36 x 60.5 | 4 x 4.5 | hung 1/2               | 32 x 25.75 | 5.7222… sq ft
    hung, two inches taller        | 36 x 62   | 4 x 4.5 | hung 1/2               | 32 x 26.5  | 5.8888… sq ft
    hung, the small sash opens     | 36 x 60   | 4 x 4.5 | hung 2/5               | 32 x 19.5  | 4.3333… sq ft
    hung, the large sash opens     | 36 x 60   | 4 x 4.5 | hung 3/5               | 32 x 19.5  | 4.3333… sq ft
    slider 60 x 42                 | 60 x 42   | 4 x 4   | slider 1/2             | 26 x 38    | 6.8611… sq ft
    slider 48 x 36                 | 48 x 36   | 4 x 4   | slider 1/2             | 20 x 32    | 4.4444… sq ft
    slider of three thirds         | 72 x 42   | 4 x 4   | slider 1/3             | 20 x 38    | 5.2777… sq ft
    slider with quarters outside   | 96 x 42   | 4 x 4   | slider 1/4             | 20 x 38    | 5.2777… sq ft
    casement                       | 28 x 48   | 4 x 4   | casement 4             | 20 x 44    | 6.1111… sq ft
    casement, a quarter narrower   | 27.75 x 48| 4 x 4   | casement 4             | 19.75 x 44 | 6.0347… sq ft
    casement, egress hinge         | 28 x 48   | 4 x 4   | casement 0             | 24 x 44    | 7.3333… sq ft
    casement stopped at cosine 3/5 | 36 x 48   | 4 x 4   | stopped 24 2 1 0.6 0.8 | 15 x 44    | 4.5833… sq ft
    casement stopped at 90 degrees | 36 x 48   | 4 x 4   | stopped 24 2 1 0 1     | 29 x 44    | 8.8611… sq ft
    awning with a stated opening   | 48 x 40   | 4 x 4   | awning 40 x 24         | 40 x 24    | 6.6666… sq ft
    a sliver is left               | 8.0625 x 40 | 8 x 4 | casement 0             | 0.0625 x 36 | 0.0156… sq ft
";

#[test]
fn the_clear_opening_follows_from_unit_and_operation() {
    for row in rows(OPENINGS) {
        let name = row[0];
        let found = opening(row[1], row[2], row[3]).unwrap();
        let (width, height) = pair(row[4]);
        assert_eq!(
            (found.width.clone(), found.height.clone()),
            (width.into(), height.into()),
            "{name}"
        );
        let area = found.area();
        assert_eq!(area.low(), area.high(), "{name}");
        assert_eq!(format_area(area.low(), AreaUnit::SquareFoot), row[5], "{name}");
        assert_eq!(found.nothing, None, "{name}");
    }
}

/// Clear sizes whose areas lie about 5 and 5.7 sq ft, those limits from IRC 2021 R310.2.1. Computed; the sheet of a state fire marshal on
/// NFPA 101 24.2.2.3 prints 3.33 for the first.
const AREAS: &str = "
    row             | clear        | square inches | area           | 5.7 | 5
    both least      | 20 x 24      | 480           | 3.3333… sq ft  | no  | no
    20 x 41         | 20 x 41      | 820           | 5.6944… sq ft  | no  | yes
    exactly 5.7     | 20 x 41.04   | 820.8         | 5.7 sq ft      | yes | yes
    20 x 41 1/16    | 20 x 657/16  | 821.25        | 5.7031… sq ft  | yes | yes
    20 x 41.1       | 20 x 41.1    | 822           | 5.7083… sq ft  | yes | yes
    34 x 24         | 34 x 24      | 816           | 5.6666… sq ft  | no  | yes
    34.2 x 24       | 34.2 x 24    | 820.8         | 5.7 sq ft      | yes | yes
    34 1/4 x 24     | 34.25 x 24   | 822           | 5.7083… sq ft  | yes | yes
    20 x 36         | 20 x 36      | 720           | 5 sq ft        | no  | yes
    30 x 24         | 30 x 24      | 720           | 5 sq ft        | no  | yes
    19 3/4 x 44     | 19.75 x 44   | 869           | 6.0347… sq ft  | yes | yes
";

#[test]
fn areas_are_exact_and_none_is_rounded_up_to_a_limit() {
    for row in rows(AREAS) {
        let name = row[0];
        let (width, height) = pair(row[1]);
        let opening = ClearOpening {
            width: width.into(),
            height: height.into(),
            nothing: None,
        };
        let area = opening.area();
        assert_eq!(area, number(row[2]).into(), "{name}");
        assert_eq!(format_area(area.low(), AreaUnit::SquareFoot), row[3], "{name}");
        assert_eq!(area.at_least(&number("820.8")), Some(row[4] == "yes"), "{name}");
        assert_eq!(area.at_least(&number("720")), Some(row[5] == "yes"), "{name}");
    }
}

/// Source of every row: computed; that an awning counts for nothing unless it is stated: common practice, no source.
const NO_OPENINGS: &str = "
    row                       | unit    | lost    | operation  | clear  | reason
    fixed                     | 48 x 48 | 4 x 4   | fixed      | 0 x 0  | it does not open
    awning or hopper          | 48 x 40 | 4 x 4   | awning     | 0 x 0  | the open sash lies in the path, and no clear opening is stated for escape
    all of the width lost     | 8 x 40  | 8 x 4   | casement 0 | 0 x 36 | frame, sash and hinge take all of the width
    more than all of it lost  | 8 x 40  | 6 x 4   | casement 4 | 0 x 36 | frame, sash and hinge take all of the width
    all of the height lost    | 36 x 9  | 4 x 4.5 | hung 1/2   | 32 x 0 | frame and sash take all of the height
    more than all height lost | 36 x 8  | 4 x 4.5 | hung 1/2   | 32 x 0 | frame and sash take all of the height
    all of both lost          | 8 x 8   | 9 x 9   | casement 0 | 0 x 0  | frame, sash and hinge take all of the width
    hardly opened             | 30 x 48 | 4 x 4   | stopped 25 2 1 1 0 | 0 x 44 | frame, sash and hinge take all of the width
";

#[test]
fn where_nothing_is_left_the_opening_is_0_with_a_reason() {
    for row in rows(NO_OPENINGS) {
        let name = row[0];
        let found = opening(row[1], row[2], row[3]).unwrap();
        let (width, height) = pair(row[4]);
        assert_eq!(
            (found.width.clone(), found.height.clone()),
            (width.into(), height.into()),
            "{name}"
        );
        assert_eq!(found.area(), Number::ZERO.into(), "{name}");
        let reason = found.nothing.map(|reason| reason.to_string());
        assert_eq!(reason.as_deref(), Some(row[5]), "{name}");
    }
}

/// 60 degrees has cosine 1/2; its sine, the root of 3/4, no fraction is. 36 - 4 - (1 + 12 + 2 * 0.8660254...) = 17.2679491924...
#[test]
fn a_sine_that_is_no_fraction_gives_a_width_between_two() {
    let sash = StoppedSash {
        sine: square_root(&number("3/4")).unwrap(),
        ..stopped("24 2 1 0.5 0")
    };
    let losses = Losses {
        width: number("4"),
        height: number("4"),
    };
    let operation = Operation::StoppedCasement(sash);
    let found = clear_opening(&number("36"), &number("48"), &losses, &operation).unwrap();
    assert!(*found.width.low() > number("17.2679491924311"));
    assert!(*found.width.high() < number("17.2679491924312"));
    assert_ne!(found.width.low(), found.width.high());
}

#[test]
fn an_interval_that_reaches_below_0_is_cut_there_and_is_still_an_opening() {
    let found = opening("30 x 48", "4 x 4", "stopped 24 2 1 0.8..1 0..0.6").unwrap();
    assert_eq!(found.width, interval("0..5.8"));
    assert_eq!(found.area(), interval("0..255.2"));
    assert_eq!(found.nothing, None);
}

const REFUSED: &str = "
    row                         | unit     | lost     | operation              | refused
    width below nothing         | -3 x 60  | 4 x 4    | hung 1/2               | width of the unit is `-3 in`
    width of nothing            | 0 x 60   | 4 x 4    | hung 1/2               | width of the unit is `0 in`
    width past 50 ft            | 601 x 60 | 4 x 4    | hung 1/2               | width of the unit is `601 in`
    height of nothing           | 36 x 0   | 4 x 4    | fixed                  | height of the unit is `0 in`
    width loss below nothing    | 36 x 60  | -1 x 4   | hung 1/2               | loss of clear width to jambs and sash is `-1 in`
    height loss below nothing   | 36 x 60  | 4 x -1/8 | hung 1/2               | loss of clear height to head, sill and sash is `-1/8 in`
    height loss past 50 ft      | 36 x 60  | 4 x 601  | hung 1/2               | loss of clear height to head, sill and sash is `601 in`
    share of 0                  | 36 x 60  | 4 x 4    | hung 0                 | share of the height that the opening sash takes is `0`
    share of 1                  | 36 x 60  | 4 x 4    | hung 1                 | share of the height that the opening sash takes is `1`
    share past 1                | 36 x 60  | 4 x 4    | hung 1.01              | share of the height that the opening sash takes is `1.01`
    share below 0               | 36 x 60  | 4 x 4    | hung -0.5              | share of the height that the opening sash takes is `-0.5`
    vent of 0                   | 36 x 60  | 4 x 4    | slider 0               | share of the width that the sliding sash takes is `0`
    vent past a half            | 36 x 60  | 4 x 4    | slider 0.5001          | share of the width that the sliding sash takes is `0.5001`
    intrusion below 0           | 36 x 60  | 4 x 4    | casement -1            | intrusion of hinge and sash into the opening is `-1 in`
    cosine past 1               | 36 x 60  | 4 x 4    | stopped 24 2 1 1.1 0.1 | angle to which the sash opens is `1.1`
    cosine below 0              | 36 x 60  | 4 x 4    | stopped 24 2 1 -0.6 0.8 | angle to which the sash opens is `-0.6`
    sine below 0                | 36 x 60  | 4 x 4    | stopped 24 2 1 0.6 -0.8 | angle to which the sash opens is `-0.8`
    sine past 1                 | 36 x 60  | 4 x 4    | stopped 24 2 1 0 1.01  | angle to which the sash opens is `1.01`
    no sash                     | 36 x 60  | 4 x 4    | stopped 0 2 1 0.6 0.8  | width of the sash is `0 in`
    thickness below 0           | 36 x 60  | 4 x 4    | stopped 24 -2 1 0.6 0.8 | thickness of the sash is `-2 in`
    offset below 0              | 36 x 60  | 4 x 4    | stopped 24 2 -1 0.6 0.8 | offset of the hinge from the frame is `-1 in`
    stated width of nothing     | 36 x 60  | 4 x 4    | awning 0 x 30          | clear opening that the catalog states for escape is `0 in`
    stated height below 0       | 36 x 60  | 4 x 4    | awning 20 x -1         | clear opening that the catalog states for escape is `-1 in`
    cosine and sine of no angle | 36 x 60  | 4 x 4    | stopped 24 2 1 0.8 0.8 | angle to which the sash opens is `cosine 0.8` and
    squares that stay below 1   | 36 x 60  | 4 x 4    | stopped 24 2 1 0.6 0.7 | angle to which the sash opens is `cosine 0.6` and
    sash wider than the unit    | 36 x 60  | 4 x 4    | stopped 36.5 2 1 0.6 0.8 | width of the sash is `36 1/2 in` and width of the unit is `36 in`
    stated wider than the unit  | 36 x 60  | 4 x 4    | awning 36.5 x 24       | clear opening that the catalog states for escape is `36 1/2 in` and width of the unit is `36 in`
    stated taller than the unit | 36 x 60  | 4 x 4    | awning 20 x 60.5       | clear opening that the catalog states for escape is `60 1/2 in` and height of the unit is `60 in`
";

#[test]
fn what_no_unit_is_is_refused_with_its_name() {
    for row in rows(REFUSED) {
        let refused = opening(row[1], row[2], row[3]).unwrap_err().to_string();
        assert!(refused.starts_with(row[4]), "{}: {refused}", row[0]);
        assert!(refused.contains("; expected "), "{}: {refused}", row[0]);
    }
}

#[test]
fn the_last_that_is_taken_is_taken() {
    let last = [
        ("slider of halves", "36 x 60", "0 x 0", "slider 1/2"),
        (
            "stated opening as large as the unit",
            "36 x 60",
            "0 x 0",
            "awning 36 x 60",
        ),
        (
            "sash as wide as the unit",
            "36 x 60",
            "0 x 0",
            "stopped 36 2 1 1 0",
        ),
        (
            "the largest unit with the largest losses",
            "600 x 600",
            "600 x 600",
            "casement 600",
        ),
    ];
    for (name, unit, lost, operation) in last {
        assert!(opening(unit, lost, operation).is_ok(), "{name}");
    }
}

fn sixteenths() -> impl Strategy<Value = Number> {
    (1_i64..1600).prop_map(|count| Number::ratio(count, 16).unwrap())
}

fn any_operation() -> impl Strategy<Value = Operation> {
    let of = |count, parts| Number::ratio(count, parts).unwrap();
    prop_oneof![
        (1_i64..16).prop_map(move |share| Operation::Hung {
            sash_share: of(share, 16)
        }),
        (1_i64..=8).prop_map(move |share| Operation::Slider {
            vent_fraction: of(share, 16)
        }),
        (0_i64..80).prop_map(move |inches| Operation::Casement {
            hinge_intrusion: of(inches, 8)
        }),
        Just(Operation::Projecting { escape_rating: None }),
        Just(Operation::Fixed),
    ]
}

proptest! {
    #[test]
    fn a_larger_unit_never_opens_less(
        width in sixteenths(), height in sixteenths(), wider in 0_i64..64, taller in 0_i64..64,
        lost in (0_i64..160, 0_i64..160), operation in any_operation(),
    ) {
        let sixteenth = |count| Number::ratio(count, 16).unwrap();
        let losses = Losses { width: sixteenth(lost.0), height: sixteenth(lost.1) };
        let small = clear_opening(&width, &height, &losses, &operation).unwrap();
        let (wide, tall) = (&width + &sixteenth(wider), &height + &sixteenth(taller));
        let large = clear_opening(&wide, &tall, &losses, &operation).unwrap();
        prop_assert!(small.width.low() <= large.width.low() && small.height.low() <= large.height.low());
        prop_assert!(!small.width.low().is_negative() && !small.height.low().is_negative());
        prop_assert_eq!(small.area(), Interval::exact(small.width.low() * small.height.low()));
        prop_assert_eq!(small.nothing.is_some(), small.area().high().is_zero());
        prop_assert!(*small.width.low() <= width && *small.height.low() <= height);
    }

    #[test]
    fn either_sash_of_a_hung_window_opens_the_same(share in 1_i64..16, height in 10_i64..100) {
        let opens = |share: i64| opening(&format!("36 x {height}"), "4 x 4.5", &format!("hung {share}/16"));
        prop_assert_eq!(opens(share), opens(16 - share));
    }

    #[test]
    fn the_width_of_an_exact_angle_lies_in_that_of_an_interval_around_it(part in 1_i64..40, more in 0_i64..8) {
        // cosine and sine of (1 - q2) / (1 + q2) and 2q / (1 + q2) are exact for any fraction q
        let q = Number::ratio(part, 40).unwrap();
        let square = &q * &q;
        let whole = Number::ONE + &square;
        let cosine = (Number::ONE - &square).checked_div(&whole).unwrap();
        let sine = (&q + &q).checked_div(&whole).unwrap();
        let margin = Number::ratio(more, 100).unwrap();
        let wide = |middle: &Number| {
            let around = Interval::around(middle, &margin);
            Interval::between(around.low().clone().max(Number::ZERO), around.high().clone().min(Number::ONE))
        };
        let width = |cosine: Interval, sine: Interval| {
            let sash = StoppedSash { cosine, sine, ..stopped("24 2 1 1 0") };
            let losses = Losses { width: number("2"), height: number("2") };
            clear_opening(&number("30"), &number("48"), &losses, &Operation::StoppedCasement(sash)).unwrap().width
        };
        let exact = width(cosine.clone().into(), sine.clone().into());
        let around = width(wide(&cosine), wide(&sine));
        prop_assert_eq!(exact.low(), exact.high());
        prop_assert!(around.contains(exact.low()));
    }
}
