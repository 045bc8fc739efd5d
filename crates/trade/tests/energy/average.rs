//! Whole units and whole houses: what is weighted by area.

use crate::number;
use astragal_exact::Number;
use astragal_trade::energy::CodeZone;
use astragal_trade::energy::average::{self, Average, RatedOpening};
use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Place, Quantity, check};
use astragal_trade::energy::label_range::{self, Glazing};
use astragal_trade::energy::rating::Ratings;
use astragal_trade::energy::whole_product::{self, Part, areas_of_one_lite};
use astragal_trade::{Fact, Missing, Status, Truth};

/// Source: computed, with the edge band of 2.5 in of NFRC 100 (from memory).
#[test]
fn the_u_factor_of_a_whole_unit_is_weighted_by_area() {
    let areas = areas_of_one_lite(&number("47.24"), &number("59.06"), &number("2.75")).unwrap();
    let square_feet = |area: &Number| area.checked_div(&Number::from(144)).unwrap().to_fixed(4);
    assert_eq!(
        [
            square_feet(&areas.centre),
            square_feet(&areas.edge),
            square_feet(&areas.frame)
        ],
        ["12.3895", "3.1354", "3.8500"]
    );
    let part = |area: &Number, u_factor: &str| Part {
        area: area.clone(),
        u_factor: number(u_factor),
    };
    let whole = whole_product::u_factor(
        &part(&areas.centre, "0.25"),
        &part(&areas.edge, "0.33"),
        &part(&areas.frame, "0.30"),
    )
    .unwrap();
    assert_eq!(whole.to_fixed(5), "0.27288");
    assert_eq!(whole.to_fixed(2), "0.27");
    // It is not a rating: it has more decimals than a label prints.
    let as_rating = Ratings {
        u_factor: Some(whole),
        solar_heat_gain: None,
    };
    assert!(as_rating.check().is_err());
}

#[test]
fn a_frame_must_leave_glass_beyond_the_edge_bands() {
    let rows = [
        ("glass of 5.01 in", "10.01", "2.5", true),
        ("glass of 5 in is all edge", "10", "2.5", false),
        ("no frame", "10", "0", false),
        ("frame below nothing", "10", "-1", false),
        ("no width", "0", "1", false),
        ("51 ft wide", "612", "1", false),
    ];
    for (name, width, frame, taken) in rows {
        let areas = areas_of_one_lite(&number(width), &number("60"), &number(frame));
        assert_eq!(areas.is_ok(), taken, "{name}");
    }
    let tall = areas_of_one_lite(&number("60"), &number("10"), &number("2.5"));
    assert!(tall.is_err());
}

#[test]
fn an_average_is_compared_before_it_is_rounded() {
    // 0.3013: it rounds to 0.30 and is not within 0.30. Source: computed.
    let opening = |area: i64, value: &str| RatedOpening {
        area: Number::from(area * 144),
        value: Some(number(value)),
    };
    let rows = [
        ("just above", 26, 4, "0.301333", false),
        ("exactly", 30, 0, "0.300000", true),
    ];
    for (name, better, worse, shown, within) in rows {
        let mut openings = vec![opening(better, "0.30")];
        if worse > 0 {
            openings.push(opening(worse, "0.31"));
        }
        let Average::Known(average) = average::u_factor(&openings).unwrap() else {
            panic!("{name}");
        };
        assert_eq!(average.to_fixed(6), shown, "{name}");
        let zone = Some(CodeZone::Zone4);
        let answer = check(
            EnergyCode::Iecc2021,
            zone,
            Quantity::UFactor,
            Some(&average),
            &Place::default(),
        );
        assert!(
            matches!(answer, Ok(CodeAnswer::Compared { within: found, .. }) if found == Truth::known(within)),
            "{name}"
        );
    }
}

/// No source: what is taken for an area or a value is our limit.
#[test]
fn an_average_of_nothing_or_of_what_is_none_is_refused() {
    let of = |area: i64, value: Option<&str>| RatedOpening {
        area: Number::from(area),
        value: value.map(number),
    };
    let rows = [
        ("no opening", vec![], false),
        ("no area", vec![of(0, Some("0.3"))], false),
        ("area below nothing", vec![of(-1, Some("0.3"))], false),
        (
            "the largest area",
            vec![of(average::AREA_MOST, Some("0.3"))],
            true,
        ),
        (
            "more than that",
            vec![of(average::AREA_MOST + 1, Some("0.3"))],
            false,
        ),
        ("value that is none", vec![of(144, Some("1.5"))], false),
        (
            "a missing value does not hide an area that is none",
            vec![of(144, None), of(0, None)],
            false,
        ),
        (
            "as many as are taken",
            vec![of(144, Some("0.3")); average::OPENINGS_MOST],
            true,
        ),
        (
            "one more",
            vec![of(144, Some("0.3")); average::OPENINGS_MOST + 1],
            false,
        ),
    ];
    for (name, openings, taken) in rows {
        assert_eq!(average::solar_heat_gain(&openings).is_ok(), taken, "{name}");
    }
    assert_eq!(
        average::solar_heat_gain(&[of(144, None), of(144, Some("0.3"))]),
        Ok(Average::Unknown(Missing::from([Fact::SolarHeatGain])))
    );
    assert_eq!(average::BASIS.status, Status::FromMemory);
}

/// Source: from memory, no source.
#[test]
fn an_unusual_u_factor_asks_for_a_look_at_the_label() {
    let rows = [
        (Glazing::SingleClearAluminium, "1.10", "1.30"),
        (Glazing::SingleClear, "0.80", "0.90"),
        (Glazing::DoubleClear, "0.45", "0.55"),
        (Glazing::DoubleLowEmissivityArgon, "0.26", "0.32"),
        (Glazing::DoubleWithInteriorCoating, "0.22", "0.26"),
        (Glazing::TripleTwoCoatingsArgon, "0.17", "0.24"),
    ];
    assert_eq!(rows.len(), Glazing::ALL.len());
    let step = number("0.01");
    for (glazing, least, most) in rows {
        let hint = |value: Number| label_range::u_factor(glazing, &value).unwrap();
        assert_eq!(hint(number(least)), None, "{glazing:?}");
        assert_eq!(hint(number(most)), None, "{glazing:?}");
        assert!(hint(number(least) - &step).is_some(), "{glazing:?}");
        let above = hint(number(most) + &step).unwrap();
        assert!(above.text().contains("from memory"), "{}", above.text());
        assert_eq!(above.basis.status, Status::FromMemory);
    }
    assert!(label_range::u_factor(Glazing::DoubleClear, &Number::ZERO).is_err());
}
