//! Glass: weights, thicknesses, sashes and lifting. Each row names where its answer is known from.

#![expect(clippy::panic, reason = "these are tests")]

use astragal_exact::Number;
use astragal_trade::glass::{
    FRAME_BASIS, LIFTING_BASIS, Lifting, Nominal, THICKNESS_BASIS, Weight, assumed_frame_pounds_per_foot,
    frame_weight, glass_weight, lifting, millimetre, sash_weight, within_hardware_limit,
};
use astragal_trade::{Fact, Missing, Status, Truth};
use proptest::prelude::*;

fn number(text: &str) -> Number {
    Number::from_decimal(text).unwrap_or_else(|| panic!("{text}"))
}

const PUBLISHED: &str = "a glass supplier's table";
const COMPUTED: &str = "computed, 156 lb/ft3";
const ASSOCIATION: &str = "a window film association's table";

#[test]
fn each_thickness_has_its_weight_and_its_least_measure() {
    let rows = [
        (COMPUTED, "3/32", "1.22", Status::Computed, "0.085"),
        (PUBLISHED, "1/8", "1.64", Status::SecondHand, "0.115"),
        (COMPUTED, "5/32", "2.03", Status::Computed, "0.149"),
        (PUBLISHED, "3/16", "2.45", Status::SecondHand, "0.180"),
        (PUBLISHED, "1/4", "3.27", Status::SecondHand, "0.219"),
        (COMPUTED, "5/16", "4.06", Status::Computed, "0.292"),
        (PUBLISHED, "3/8", "4.91", Status::SecondHand, "0.355"),
        (PUBLISHED, "1/2", "6.54", Status::SecondHand, "0.469"),
    ];
    assert_eq!(rows.len(), Nominal::ALL.len());
    for (source, text, pounds, status, least) in rows {
        let nominal = Nominal::from_text(text).unwrap();
        let weight = nominal.weight();
        assert_eq!(weight.pounds.to_fixed(2), pounds, "{source}: {text}");
        assert_eq!(weight.basis.status, status, "{source}: {text}");
        assert_eq!(
            nominal.least_actual_inches(),
            number(least),
            "{ASSOCIATION}: {text}"
        );
        assert!(nominal.least_actual_inches() < nominal.inches(), "{text}");
    }
    assert_eq!(THICKNESS_BASIS.status, Status::SecondHand);
}

/// Source: computed, 156 lb/ft3 times the nominal thickness.
#[test]
fn the_weight_by_density_is_as_computed() {
    let rows = [
        ("1/8", "1.625"),
        ("3/16", "2.438"),
        ("1/4", "3.250"),
        ("3/8", "4.875"),
        ("1/2", "6.500"),
    ];
    for (text, pounds) in rows {
        let nominal = Nominal::from_text(text).unwrap();
        assert_eq!(nominal.weight_by_density().to_fixed(3), pounds, "{text}");
    }
}

/// Published weights imply a density of about 157 lb/ft3; 2500 kg/m3 are 156.07 (a unit library, computed). They agree
/// within 1 %, in exact fractions.
#[test]
fn published_weights_agree_with_the_density_of_glass_within_one_percent() {
    let pounds_in_kilogram = Number::ratio(100_000_000, 45_359_237).unwrap();
    let cubic_metres_in_cubic_foot = number("0.028316846592");
    let density = Number::from(2500) * pounds_in_kilogram * cubic_metres_in_cubic_foot;
    assert_eq!(density.to_fixed(2), "156.07");
    let implied = [
        ("1/8", "157.4"),
        ("3/16", "156.8"),
        ("1/4", "157.0"),
        ("3/8", "157.1"),
        ("1/2", "157.0"),
    ];
    for (text, shown) in implied {
        let nominal = Nominal::from_text(text).unwrap();
        let feet = nominal.inches().checked_div(&Number::from(12)).unwrap();
        let published = nominal.weight().pounds.checked_div(&feet).unwrap();
        assert_eq!(published.to_fixed(1), shown, "{text}");
        let share = (published - &density).abs().checked_div(&density).unwrap();
        assert!(share < Number::ratio(1, 100).unwrap(), "{text}: {share}");
    }
}

/// Source: computed, 2.5 kg for each square metre and millimetre.
#[test]
fn a_weight_by_millimetres_is_another_convention() {
    for (millimetres, pounds) in [(3, "1.536"), (4, "2.048"), (5, "2.560"), (6, "3.072")] {
        let weight = millimetre::pounds_per_square_foot(&Number::from(millimetres)).unwrap();
        assert_eq!(weight.to_fixed(3), pounds, "{millimetres} mm");
    }
    // 1/8 in against 3 mm: about 6 %.
    let by_millimetre = millimetre::pounds_per_square_foot(&Number::from(3)).unwrap();
    let ratio = Nominal::OneEighth
        .weight()
        .pounds
        .checked_div(&by_millimetre)
        .unwrap();
    assert!(ratio > number("1.06") && ratio < number("1.07"), "{ratio}");
    assert!(Nominal::from_text("3 mm").is_err());
    assert_eq!(millimetre::BASIS.status, Status::Computed);
}

/// Source: computed from published weights by area.
#[test]
fn the_glass_of_a_unit_weighs_as_computed() {
    let rows = [
        ("28 x 28 double", 28, 28, Nominal::OneEighth, 2, "17.86"),
        ("28 x 28 triple", 28, 28, Nominal::OneEighth, 3, "26.79"),
        ("30 x 60 double", 30, 60, Nominal::OneEighth, 2, "41.00"),
        ("30 x 60 triple", 30, 60, Nominal::OneEighth, 3, "61.50"),
        ("48 x 72 double", 48, 72, Nominal::ThreeSixteenths, 2, "117.60"),
        ("60 x 72 double", 60, 72, Nominal::OneQuarter, 2, "196.20"),
    ];
    for (name, width, height, nominal, lites, pounds) in rows {
        let lites = vec![nominal; lites];
        let weight = glass_weight(&Number::from(width), &Number::from(height), Some(&lites)).unwrap();
        assert_eq!(weight.pounds().unwrap().to_fixed(2), pounds, "{name}");
    }
}

/// Source: computed from published weights by area, and from 2.5 kg by square metre and millimetre.
#[test]
fn lites_of_two_thicknesses_add_up() {
    let lites = [Nominal::OneEighth, Nominal::ThreeSixteenths];
    let weight = glass_weight(&Number::from(12), &Number::from(12), Some(&lites)).unwrap();
    assert_eq!(weight, Weight::Known(number("4.09")));
    let lites = [Number::from(3), Number::from(4)];
    let weight = millimetre::glass_weight(&Number::from(12), &Number::from(12), Some(&lites)).unwrap();
    assert_eq!(weight.pounds().unwrap().to_fixed(3), "3.584");
}

#[test]
fn a_small_sash_carries_more_frame_than_a_share_of_its_glass() {
    // 0.6 lb/ft, from memory; the rest computed.
    let assumed = assumed_frame_pounds_per_foot();
    assert_eq!(
        (assumed.clone(), FRAME_BASIS.status),
        (number("0.6"), Status::FromMemory)
    );
    let rows = [
        ("28 x 28", 28, 28, "5.60"),
        ("12 x 12", 12, 12, "2.40"),
        ("30 x 60", 30, 60, "9.00"),
    ];
    for (name, width, height, pounds) in rows {
        let frame = frame_weight(&Number::from(width), &Number::from(height), Some(&assumed)).unwrap();
        assert_eq!(frame.pounds().unwrap().to_fixed(2), pounds, "{name}");
    }
    let side = Number::from(12);
    let glass = glass_weight(&side, &side, Some(&[Nominal::OneEighth; 2])).unwrap();
    let frame = frame_weight(&side, &side, Some(&assumed)).unwrap();
    let quarter = glass.pounds().unwrap().checked_div(&Number::from(4)).unwrap();
    assert!(*frame.pounds().unwrap() > quarter);
    assert_eq!(sash_weight(&glass, &frame), Weight::Known(number("5.68")));
}

/// No source: a sash weighs at most what its hardware carries, common practice; 41 lb is invented.
#[test]
fn hardware_carries_up_to_its_limit() {
    let unknown = |facts: &[Fact]| Truth::Unknown(facts.iter().copied().collect::<Missing>());
    let known = |text| Weight::Known(number(text));
    let no_glass = Weight::missing(Fact::GlassThickness);
    let rows = [
        ("below", known("40.99"), Some("41"), Truth::Yes),
        ("equal", known("41"), Some("41"), Truth::Yes),
        ("above", known("41.01"), Some("41"), Truth::No),
        ("no limit", known("41"), None, unknown(&[Fact::HardwareLimit])),
        (
            "no weight",
            no_glass.clone(),
            Some("41"),
            unknown(&[Fact::GlassThickness]),
        ),
        (
            "neither",
            no_glass,
            None,
            unknown(&[Fact::GlassThickness, Fact::HardwareLimit]),
        ),
    ];
    for (name, weight, limit, expected) in rows {
        let limit = limit.map(number);
        assert_eq!(
            within_hardware_limit(&weight, limit.as_ref()),
            Ok(expected),
            "{name}"
        );
    }
}

#[test]
fn a_sum_with_an_unknown_part_names_all_that_is_missing() {
    let glass = Weight::missing(Fact::GlassThickness);
    let frame = Weight::missing(Fact::FrameWeightPerFoot);
    let known = Weight::Known(number("5"));
    assert_eq!(
        sash_weight(&glass, &frame),
        Weight::Unknown(Missing::from([Fact::GlassThickness, Fact::FrameWeightPerFoot]))
    );
    assert_eq!(sash_weight(&known, &frame), frame);
    assert_eq!(sash_weight(&glass, &known), glass);
    assert_eq!(glass.pounds(), None);
}

/// Source: the load constant of the NIOSH lifting equation, from memory.
#[test]
fn a_heavy_or_unknown_unit_has_a_lifting_caution() {
    let rows = [
        ("light", Some("50.99"), Lifting::NoCaution),
        ("at the limit", Some("51"), Lifting::NoCaution),
        ("above", Some("51.001"), Lifting::Caution),
        (
            "unknown",
            None,
            Lifting::WeightUnknown(Missing::from([Fact::UnitWeight])),
        ),
    ];
    for (name, pounds, expected) in rows {
        let weight = pounds.map_or(Weight::missing(Fact::UnitWeight), |text| {
            Weight::Known(number(text))
        });
        let found = lifting(&weight);
        assert_eq!(found, expected, "{name}");
        let text = found.text();
        assert_eq!(text.is_none(), expected == Lifting::NoCaution, "{name}");
        assert!(
            text.is_none_or(|text| text.contains("two people or a lift")),
            "{name}"
        );
    }
    assert_eq!(LIFTING_BASIS.status, Status::FromMemory);
}

#[test]
fn what_cannot_be_a_piece_of_glass_is_refused() {
    let thin: &[Nominal] = &[Nominal::OneEighth];
    let rows = [
        ("no width", "0", "60", Some(thin), Fact::GlassWidth),
        ("width below nothing", "-3", "60", Some(thin), Fact::GlassWidth),
        ("900 ft", "30", "10800", Some(thin), Fact::GlassHeight),
        (
            "refused even when the thickness is missing",
            "0",
            "60",
            None,
            Fact::GlassWidth,
        ),
        ("no lite", "30", "60", Some(&[][..]), Fact::GlassThickness),
        (
            "nine lites",
            "30",
            "60",
            Some(&[Nominal::OneEighth; 9][..]),
            Fact::GlassThickness,
        ),
    ];
    for (name, width, height, lites, fact) in rows {
        let error = glass_weight(&number(width), &number(height), lites);
        assert_eq!(error.map_err(|error| error.fact), Err(fact), "{name}");
    }
    let eight = glass_weight(
        &Number::from(30),
        &Number::from(60),
        Some(&[Nominal::OneEighth; 8]),
    );
    assert!(eight.is_ok());
    let millimetres = [
        ("0", false),
        ("-3", false),
        ("0.001", true),
        ("25", true),
        ("25.001", false),
    ];
    for (text, taken) in millimetres {
        let lites = [number(text)];
        let by_area = millimetre::pounds_per_square_foot(&number(text));
        let weight = millimetre::glass_weight(&Number::from(30), &Number::from(60), Some(&lites));
        assert_eq!((by_area.is_ok(), weight.is_ok()), (taken, taken), "{text} mm");
    }
    let side = Number::from(30);
    assert_eq!(
        millimetre::glass_weight(&side, &side, None),
        Ok(Weight::missing(Fact::GlassThickness))
    );
    assert!(millimetre::glass_weight(&side, &side, Some(&[])).is_err());
}

#[test]
fn weights_that_are_none_are_refused() {
    let side = Number::from(30);
    for (text, taken) in [
        ("0", false),
        ("-1", false),
        ("0.01", true),
        ("20", true),
        ("20.01", false),
    ] {
        let frame = frame_weight(&side, &side, Some(&number(text)));
        assert_eq!(frame.is_ok(), taken, "{text} lb/ft");
    }
    assert!(frame_weight(&Number::ZERO, &side, None).is_err());
    assert!(frame_weight(&side, &Number::from(601), None).is_err());
    let sash = Weight::Known(Number::from(10));
    for (text, taken) in [
        ("0", false),
        ("-1", false),
        ("0.01", true),
        ("5000", true),
        ("5000.1", false),
    ] {
        let answer = within_hardware_limit(&sash, Some(&number(text)));
        assert_eq!(answer.is_ok(), taken, "{text} lb");
    }
}

#[test]
fn thicknesses_are_read_as_the_trade_writes_them() {
    let rows = [
        ("1/8", true),
        (" 1/8 in", true),
        ("1/8\"", true),
        ("1/8in", true),
        ("0.125", false),
        ("3 mm", false),
        ("1/16", false),
        ("2/16", false),
        ("", false),
        ("in", false),
        ("1/8 inin", false),
    ];
    for (text, taken) in rows {
        assert_eq!(Nominal::from_text(text).is_ok(), taken, "{text}");
    }
    for nominal in Nominal::ALL {
        assert_eq!(Nominal::from_text(&nominal.to_string()), Ok(nominal));
    }
}

proptest! {
    /// More glass and thicker glass are heavier, whatever the size.
    #[test]
    fn thicker_glass_is_heavier(width in 1_i64..=600, height in 1_i64..=600, index in 0_usize..7) {
        let (width, height) = (Number::from(width), Number::from(height));
        let of = |index: usize| {
            let lite = Nominal::ALL.get(index).copied().unwrap();
            glass_weight(&width, &height, Some(&[lite])).unwrap().pounds().cloned().unwrap()
        };
        prop_assert!(of(index) < of(index + 1));
    }

    #[test]
    fn no_text_panics(text in "\\PC*") {
        let _ = Nominal::from_text(&text);
    }
}
