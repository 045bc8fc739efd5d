//! The code's tables, cell by cell, and how a value is compared with one.

use crate::number;
use astragal_exact::Number;
use astragal_trade::energy::CodeZone;
use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Maximum, Place, Quantity, check, maximum};
use astragal_trade::{Fact, Missing, Status, Truth};

/// A cell as the table prints it; `m` behind it: from memory, `2`: second hand, `v`: read in the text; `-`: not encoded.
fn cell(code: EnergyCode, zone: CodeZone, quantity: Quantity) -> String {
    let mark = |status| match status {
        Status::Verified => 'v',
        Status::SecondHand => '2',
        Status::Computed => 'c',
        Status::FromMemory => 'm',
    };
    match maximum(code, zone, quantity) {
        Maximum::NotEncoded => "-".to_owned(),
        Maximum::NoRequirement(basis) => format!("NR {}", mark(basis.status)),
        Maximum::AtMost(limit) => {
            let eased = limit
                .allowance
                .map(|(value, _)| format!("/{}", value.to_fixed(2)));
            format!(
                "{}{} {}",
                limit.value.to_fixed(2),
                eased.unwrap_or_default(),
                mark(limit.basis.status)
            )
        }
    }
}

/// Table, zone, U, skylight U, SHGC, and where the row was seen.
const CELLS: &str = "
iecc_2021         | 0        | 0.50 m      | 0.75 m | -      | IECC 2021, from memory; SHGC: sources disagree, 0.25 against 0.40
iecc_2021         | 1        | 0.50 m      | 0.75 m | 0.25 m | IECC 2021, from memory
iecc_2021         | 2        | 0.40 2      | 0.65 2 | 0.25 2 | a repository that cites IECC 2021 R402.1.2
iecc_2021         | 3        | 0.30 2      | 0.55 m | 0.25 2 | trade press; skylights from memory
iecc_2021         | 4        | 0.30 2      | 0.55 m | 0.40 m | trade press; the rest from memory
iecc_2021         | marine_4 | 0.30/0.32 2 | 0.55 m | 0.40 2 | trade press; skylights from memory
iecc_2021         | 5        | 0.30/0.32 2 | 0.55 m | 0.40 2 | trade press; skylights from memory
iecc_2021         | 6        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2021         | 7        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2021         | 8        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2024         | 0        | -           | -      | -      | not seen
iecc_2024         | 1        | -           | -      | -      | not seen
iecc_2024         | 2        | -           | -      | -      | not seen
iecc_2024         | 3        | 0.30 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | 4        | 0.30 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | marine_4 | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 5        | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 6        | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 7        | 0.27 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | 8        | 0.27 2      | -      | -      | a repository with IECC 2024 values
adopted_city_2018 | 0        | -           | -      | -      | Philadelphia Code: it has no zone 0
adopted_city_2018 | 1        | NR v        | 0.75 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 2        | 0.40 v      | 0.65 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 3        | 0.35 v      | 0.55 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 4        | 0.32 v      | 0.55 v | 0.40 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | marine_4 | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 5        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 6        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 7        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 8        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
";

#[test]
fn every_cell_of_the_tables_is_as_it_was_seen() {
    let rows = CELLS.trim().lines();
    assert_eq!(rows.clone().count(), CodeZone::ALL.len() * EnergyCode::ALL.len());
    for row in rows {
        let columns: Vec<&str> = row.split('|').map(str::trim).collect();
        let [edition, zone, u_factor, skylight, shgc, _source] = columns[..] else {
            panic!("{row}");
        };
        let (edition, zone) = (
            EnergyCode::from_text(edition).unwrap(),
            CodeZone::from_text(zone).unwrap(),
        );
        let found = [
            Quantity::UFactor,
            Quantity::SkylightUFactor,
            Quantity::SolarHeatGain,
        ]
        .map(|quantity| cell(edition, zone, quantity));
        assert_eq!(found, [u_factor, skylight, shgc], "{row}");
    }
}

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
