//! What comes off for an opening that stands askew, worked by hand from d1^2 - d2^2 = 4 (W lean + H slope) for 36 x 60 in.

use super::{COMPUTED, columns, ids, inches, plain};
use astragal_exact::Number;
use astragal_trade::interval::Interval;
use astragal_trade::measuring::{MeasuringError, Readings, Size, expected_diagonal, measure};

/// Diagonals of 70 and 69 1/2: D = 139.5 x 0.5 / 4 = 17.4375; D / 36 = 0.484375, D / 60 = 0.290625.
///
/// Equal diagonals and jambs out by 1/2: head and sill slope by 36 x 0.5 / 60 = 0.3 the other way round.
/// Diagonals of 70 and 69 3/4: D = 8.734375; jambs out by 3/4 say 27, which is more by 18.3 where 8.7 is allowed, so that the
/// larger slope is taken, (27 + D) / 60.
#[test]
fn an_opening_loses_what_its_sides_lean_and_its_head_slopes() {
    let rows = [
        "equal diagonals          | diagonals 70, 70                              | 0         | 0         | not_levelled not_levelled",
        "no level: either way     | diagonals 70, 69.5                            | 0.484375  | 0.290625  | diagonals_differ either_way not_levelled not_levelled",
        "the other one is longer  | diagonals 69.5, 70                            | 0.484375  | 0.290625  | diagonals_differ either_way not_levelled not_levelled",
        "jambs explain all of it  | diagonals 70, 69.5; plumb 0.484375            | 0.484375  | 0         | diagonals_differ out_of_plumb one_level not_levelled",
        "jambs are plumb          | diagonals 70, 69.5; plumb 0                   | 0         | 0.290625  | diagonals_differ not_levelled",
        "jambs explain half of it | diagonals 70, 69.5; plumb 0.2421875           | 0.2421875 | 0.1453125 | diagonals_differ out_of_plumb one_level not_levelled",
        "the sill is level        | diagonals 70, 69.5; level 0                   | 0.484375  | 0         | diagonals_differ not_levelled",
        "sill explains all of it  | diagonals 70, 69.5; level 0.290625            | 0         | 0.290625  | diagonals_differ out_of_level one_level not_levelled",
        "sill explains half of it | diagonals 70, 69.5; level 0.1453125           | 0.2421875 | 0.1453125 | diagonals_differ out_of_level one_level not_levelled",
        "a level on both          | diagonals 70, 69.5; plumb 0.484375; level 0   | 0.484375  | 0         | diagonals_differ out_of_plumb",
        "square but crooked       | diagonals 70, 70; plumb 0.5; level 0.3        | 0.5       | 0.3       | out_of_plumb out_of_level",
        "crooked, a jamb read     | diagonals 70, 70; plumb 0.125                 | 0.125     | 0.075     | not_levelled",
        "crooked, the sill read   | diagonals 70, 70; level 0.075                 | 0.125     | 0.075     | not_levelled",
        "level true, diagonals no | diagonals 70, 69.5; plumb 0; level 0          | 0.484375  | 0.290625  | diagonals_differ level_against_diagonals",
        "level says more than all | diagonals 70, 69.5; plumb 1.5; level 1.5      | 1.5       | 1.5       | diagonals_differ out_of_plumb out_of_level level_against_diagonals",
        "jambs lean more          | diagonals 70, 70; plumb 0.5                   | 0.5       | 0.3       | out_of_plumb level_against_diagonals not_levelled",
        "sill slopes more         | diagonals 70, 70; level 0.3                   | 0.5       | 0.3       | out_of_level level_against_diagonals not_levelled",
        "the larger slope         | diagonals 70, 69.75; plumb 0.75               | 0.75      | 0.595572916666 | out_of_plumb level_against_diagonals not_levelled",
        "no diagonals, no level   | diagonals -, -                                | 0         | 0         | diagonals_missing not_levelled not_levelled",
        "one diagonal             | diagonals 70, -                               | 0         | 0         | diagonals_missing not_levelled not_levelled",
        "a level alone            | plumb 0.125; level 0.0625                     | 0.125     | 0.0625    | diagonals_missing",
    ];
    let hair = inches("0.0000000001");
    for row in rows {
        let [name, also, lean, slope, findings] = columns(row);
        let measured = measure(&plain(also)).unwrap();
        for (found, expected) in [(&measured.lean, lean), (&measured.slope, slope)] {
            assert!(
                (found - inches(expected)).abs() < hair,
                "{name} ({COMPUTED}): {found}, expected {expected}"
            );
        }
        let left = Size::new(inches("36") - &measured.lean, inches("60") - &measured.slope);
        assert_eq!(measured.upright, Some(left), "{name}");
        assert_eq!(ids(&measured), findings, "{name}");
    }
}

#[test]
fn the_smallest_readings_are_what_something_comes_off() {
    let measured = measure(&Readings {
        widths: [Some(inches("36")), Some(inches("35 15/16")), Some(inches("36"))],
        ..plain("plumb 1/16; level 1/8")
    });
    let expected = Size::new(inches("35 7/8"), inches("59 7/8"));
    assert_eq!(measured.unwrap().upright, Some(expected), "{COMPUTED}");
}

/// The tolerance of the check against a level, from both sides: diagonals 1/4 in from what it asks for.
///
/// Equal diagonals of 70 allow 140 / 16 = 8.75; 36 in times 0.24305 is 8.7499, 60 in times 0.14583 is 8.7498.
/// Out by 0.5 and 0.3, the sides ask for 18 + 18 = 36 or 18 - 18 = 0; diagonals of 70.5 and 69.47 say 36.04, of 70.25 and
/// 69.75 say 17.5.
#[test]
fn a_level_and_diagonals_a_quarter_apart_agree_and_more_do_not() {
    let rows = [
        "1/4 apart, read true       | diagonals 70, 69.75; plumb 0; level 0       | agree",
        "17/64 apart, read true     | diagonals 70, 69 47/64; plumb 0; level 0    | contradict",
        "just what is allowed       | diagonals 70, 70; plumb 0.24305             | agree",
        "just more                  | diagonals 70, 70; plumb 0.24306             | contradict",
        "sill: just what is allowed | diagonals 70, 70; level 0.14583             | agree",
        "sill: just more            | diagonals 70, 70; level 0.14584             | contradict",
        "both out, the same way     | diagonals 70.5, 69.47; plumb 0.5; level 0.3 | agree",
        "both out, against          | diagonals 70, 70; plumb 0.5; level 0.3      | agree",
        "both out, neither way      | diagonals 70.25, 69.75; plumb 0.5; level 0.3 | contradict",
        "both far out, neither way  | diagonals 70.25, 69.75; plumb 0.75; level 0.45 | contradict",
        "both far out, same way     | diagonals 70.75, 69.22; plumb 0.75; level 0.45 | agree",
    ];
    for row in rows {
        let [name, also, expected] = columns(row);
        let measured = measure(&plain(also)).unwrap();
        let contradict = ids(&measured).contains("level_against_diagonals");
        let found = if contradict { "contradict" } else { "agree" };
        assert_eq!(found, expected, "{name} ({COMPUTED})");
    }
}

/// Half of the shorter side is taken for an opening, a hair more is not.
#[test]
fn an_opening_too_far_askew_is_refused() {
    let rows = [
        "half, by the jambs    | plumb 18      | taken",
        "more, by the jambs    | plumb 18 1/64 | refused",
        "half, by the sill     | level 18      | taken",
        "more, by the sill     | level 18 1/64 | refused",
    ];
    for row in rows {
        let [name, also, expected] = columns(row);
        let found = match measure(&plain(also)) {
            Ok(_) => "taken",
            Err(MeasuringError::LeansTooFar { .. }) => "refused",
            Err(error) => panic!("{name}: {error}"),
        };
        assert_eq!(found, expected, "{name} (our own choice)");
    }
}

/// A corner moved 1/4 in sideways changes the two diagonals of 36 x 60 in by 0.257 in, and back.
#[test]
fn a_corner_that_is_moved_is_found() {
    let exactly = |text: &str| Interval::exact(inches(text));
    let longer = expected_diagonal(&exactly("36.25"), &exactly("60")).unwrap();
    let shorter = expected_diagonal(&exactly("35.75"), &exactly("60")).unwrap();
    let change = longer.minus(&shorter);
    for end in [change.low(), change.high()] {
        assert_eq!(end.to_fixed(3), "0.257", "{COMPUTED}");
    }
    let diagonals = [longer, shorter].map(|diagonal| Some(diagonal.low().clone()));
    let measured = measure(&Readings {
        diagonals,
        ..plain("level 0")
    })
    .unwrap();
    assert_eq!(measured.lean.to_fixed(12), "0.250000000000", "{COMPUTED}");
    assert_eq!(measured.slope, Number::ZERO);
}
