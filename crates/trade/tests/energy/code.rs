//! How a value is compared with a cell of the code's tables; the cells themselves are in `cells`.

use crate::number;
use astragal_exact::Number;
use astragal_trade::energy::CodeZone;
use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Maximum, Place, Quantity, check, maximum};
use astragal_trade::{Fact, Missing, Status, Truth};

/// A place by its elevation in feet and whether it is in a windborne-debris region.
fn place(elevation_feet: Option<&str>, windborne_debris_region: Option<bool>) -> Place {
    Place {
        elevation: elevation_feet.map(|feet| number(feet) * Number::from(12)),
        windborne_debris_region,
    }
}

#[test]
fn a_u_factor_is_compared_with_the_maximum_of_its_place() {
    let both = Truth::Unknown(Missing::from([Fact::Elevation, Fact::WindborneDebrisRegion]));
    let debris = Truth::Unknown(Missing::from([Fact::WindborneDebrisRegion]));
    let press = "IECC 2021 R402.1.2 in trade press";
    let (low, high) = (Some("4000"), Some("4000.01"));
    let rows = [
        (press, "0.29", None, None, Truth::Yes),
        (press, "0.30", None, None, Truth::Yes),
        (press, "0.300001", None, None, both.clone()),
        (press, "0.31", None, None, both.clone()),
        (press, "0.32", None, None, both),
        (press, "0.320001", None, None, Truth::No),
        (press, "0.33", high, Some(true), Truth::No),
        (press, "0.32", high, None, Truth::Yes),
        (press, "0.32", high, Some(false), Truth::Yes),
        (press, "0.32", low, Some(false), Truth::No),
        (press, "0.32", Some("3999.99"), Some(false), Truth::No),
        (press, "0.32", low, Some(true), Truth::Yes),
        (press, "0.32", low, None, debris),
        (press, "0.32", None, Some(true), Truth::Yes),
        (
            press,
            "0.32",
            None,
            Some(false),
            Truth::Unknown(Missing::from([Fact::Elevation])),
        ),
    ];
    for (source, value, elevation, region, expected) in rows {
        let answer = check(
            EnergyCode::Iecc2021,
            Some(CodeZone::Zone5),
            Quantity::UFactor,
            Some(&number(value)),
            &place(elevation, region),
        );
        let CodeAnswer::Compared { within, limit } = answer.unwrap() else {
            panic!("{source}: {value}");
        };
        assert_eq!(
            within, expected,
            "{source}: U {value}, {elevation:?} ft, {region:?}"
        );
        assert_eq!(limit.unwrap().value, number("0.30"));
    }
}

/// Source: Philadelphia Code R-N1102.1.2 of 2018, read: zone 4 has 0.40 and a skylight 0.55, zone 5 no solar heat gain; IECC 2024 was
/// not seen there.
#[test]
fn each_kind_of_cell_has_its_own_answer() {
    let nowhere = Place::default();
    let ask = |code, zone, quantity, value: Option<&Number>| check(code, zone, quantity, value, &nowhere);
    let (low, high) = (number("0.40"), number("0.41"));
    let compared = |answer: Result<CodeAnswer, _>| match answer {
        Ok(CodeAnswer::Compared { within, .. }) => within,
        other => panic!("{other:?}"),
    };
    let (zone4, zone5) = (Some(CodeZone::Zone4), Some(CodeZone::Zone5));
    let shgc = Quantity::SolarHeatGain;
    assert_eq!(
        compared(ask(EnergyCode::AdoptedCity2018, zone4, shgc, Some(&low))),
        Truth::Yes
    );
    assert_eq!(
        compared(ask(EnergyCode::AdoptedCity2018, zone4, shgc, Some(&high))),
        Truth::No
    );
    assert_eq!(
        compared(ask(EnergyCode::AdoptedCity2018, zone4, shgc, None)).missing(),
        Missing::from([Fact::SolarHeatGain])
    );
    assert_eq!(
        compared(ask(EnergyCode::AdoptedCity2018, None, shgc, Some(&low))).missing(),
        Missing::from([Fact::CodeZone])
    );
    assert!(matches!(
        ask(EnergyCode::AdoptedCity2018, zone5, shgc, Some(&high)),
        Ok(CodeAnswer::NoRequirement(basis)) if basis.status == Status::Verified
    ));
    assert_eq!(
        ask(EnergyCode::Iecc2024, zone5, shgc, Some(&high)),
        Ok(CodeAnswer::NotEncoded)
    );
    let skylight = Quantity::SkylightUFactor;
    assert_eq!(
        compared(ask(
            EnergyCode::AdoptedCity2018,
            zone4,
            skylight,
            Some(&number("0.55"))
        )),
        Truth::Yes
    );
    assert_eq!(
        compared(ask(
            EnergyCode::AdoptedCity2018,
            zone4,
            skylight,
            Some(&number("0.551"))
        )),
        Truth::No
    );
}

/// Source: IECC 2021 Table R402.1.2, zone 1, from memory.
#[test]
fn what_is_from_memory_says_so_where_it_is_printed() {
    let Maximum::AtMost(limit) = maximum(EnergyCode::Iecc2021, CodeZone::Zone1, Quantity::UFactor) else {
        panic!("a number was expected");
    };
    assert_eq!(
        limit.basis.to_string(),
        "IECC 2021 Table R402.1.2 (from memory, to be confirmed)"
    );
}

/// No source: the elevations that are taken are our limits.
#[test]
fn an_elevation_that_is_none_is_refused() {
    let rows = [
        ("-2001", false),
        ("-2000", true),
        ("0", true),
        ("30000", true),
        ("30001", false),
    ];
    for (feet, taken) in rows {
        let answer = check(
            EnergyCode::Iecc2021,
            Some(CodeZone::Zone5),
            Quantity::UFactor,
            Some(&number("0.30")),
            &place(Some(feet), None),
        );
        assert_eq!(answer.is_ok(), taken, "{feet} ft");
    }
    let error = check(
        EnergyCode::Iecc2021,
        None,
        Quantity::UFactor,
        None,
        &place(Some("52800"), None),
    );
    assert_eq!(
        error.map_err(|error| error.to_string()),
        Err(
            "elevation of the house above the sea is `52800`; expected a height in feet from -2,000 to 30,000"
                .to_owned()
        )
    );
}

/// Source: 4,000 ft and windborne-debris regions, IECC 2021 in trade press; what is not covered are gaps of ours.
#[test]
fn what_is_not_covered_is_said_unless_it_is_known_not_to_be_so() {
    let rows = [
        ("nothing known", None, None, 2),
        ("low, no debris region", Some("4000"), Some(false), 0),
        ("high, no debris region", Some("4001"), Some(false), 1),
        ("low, region not known", Some("4000"), None, 1),
        ("high and in a debris region", Some("4001"), Some(true), 2),
    ];
    for (name, elevation, region, count) in rows {
        let found = place(elevation, region).not_covered();
        assert_eq!(found.len(), count, "{name}: {found:?}");
    }
}
