//! Three heights of one opening, never one: the bottom of the clear opening (escape), its lowest part (falls), the exposed edge of the
//! glass (safety glazing). They differ by inches, and the safe direction is another for each.
//!
//! Sizes are invented; limits of IRC 2021 R310.2.3 (at most 44 in), R312.2.1 (below 24 in) and R308.4.3 (below 18 in).

#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_exact::Number;
use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::{Truth, escape, fall_protection, safety_glazing};

/// Whether escape meets, whether falls call for protection, whether the pane is large and near.
fn answers(bottom: i64, lowest: i64, edge: i64) -> (bool, bool, bool) {
    let way_out = escape::Opening {
        clear_width: Some(Number::from(40).into()),
        clear_height: Some(Number::from(30).into()),
        bottom: Some(Number::from(bottom)),
        sill_above_grade: Some(Number::from(130)),
        device: Some(Device::Nothing),
        opens_without_keys: Some(true),
        ..escape::Opening::default()
    };
    let escaped = escape::opening(Edition::Irc2021, &way_out).unwrap();
    let opening = fall_protection::Opening {
        opens: Some(true),
        height_above_grade: Some(Number::from(130)),
        lowest_part: Some(Number::from(lowest)),
        ..fall_protection::Opening::default()
    };
    let falls = fall_protection::fall_protection(Edition::Irc2021, &opening).unwrap();
    let pane = safety_glazing::Lite {
        area: Some(Number::from(1500)),
        bottom_edge: Some(Number::from(edge)),
        top_edge: Some(Number::from(edge + 40)),
        ..safety_glazing::Lite::default()
    };
    let site = safety_glazing::Site {
        walking_surface: Some(Number::from(0)),
        ..safety_glazing::Site::default()
    };
    let glazing = safety_glazing::lite(Edition::Irc2021, &pane, &site).unwrap();
    let large = glazing.locations.iter().any(|found| {
        found.location == safety_glazing::Location::LargePane && found.calls_for_it == Truth::Yes
    });
    (
        escaped.verdict == escape::Verdict::Meets,
        falls.called_for == Truth::Yes,
        large,
    )
}

/// A tall unit with a fixed lite below: the sash opens 46 in up, a hopper vent at 20 in, the glass begins 16 in above the floor.
#[test]
fn one_opening_has_three_heights_and_three_answers() {
    let (bottom, lowest, edge) = (46, 20, 16);
    assert_eq!(answers(bottom, lowest, edge), (false, true, true));
    // Whichever of them stands for all three, one answer is another.
    assert_eq!(answers(bottom, bottom, bottom), (false, false, false));
    assert_eq!(answers(lowest, lowest, lowest), (true, true, false));
    assert_eq!(answers(edge, edge, edge), (true, true, true));
}

/// What a pocket replacement does: all three rise, here by 3 in.
#[test]
fn a_unit_set_higher_loses_escape_and_gains_the_other_two() {
    assert_eq!(answers(43, 22, 17), (true, true, true));
    assert_eq!(answers(46, 25, 20), (false, false, false));
}

/// One inch apart and three answers: the glass is below 18 in, the lowest part below 24 in, the bottom above 44 in, or none of it.
#[test]
fn each_limit_is_that_of_its_own_height() {
    let rows = [
        ("each on the near side", (44, 23, 17), (true, true, true)),
        ("bottom one more", (45, 23, 17), (false, true, true)),
        ("lowest part one more", (44, 24, 17), (true, false, true)),
        ("edge one more", (44, 23, 18), (true, true, false)),
    ];
    for (name, (bottom, lowest, edge), expected) in rows {
        assert_eq!(answers(bottom, lowest, edge), expected, "{name}");
    }
}
