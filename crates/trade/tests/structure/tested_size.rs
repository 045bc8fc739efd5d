//! Whether a unit is within the size that was tested.

use crate::number;
use astragal_trade::structure::{GATEWAY_BASIS, SIZE_BASIS, Size, is_gateway_size, size_is_qualified};
use astragal_trade::{Fact, Missing, Status, Truth};

fn size(width: &str, height: &str) -> Size {
    Size {
        width: number(width),
        height: number(height),
    }
}

/// Source: NAFS, wider or taller than the largest size tested is not qualified, in a proposal of 2017 and an excerpt of 2008.
#[test]
fn wider_or_taller_than_tested_is_not_qualified() {
    let rows = [
        ("equal", "36", "60", Truth::Yes),
        ("one step less each way", "35.875", "59.875", Truth::Yes),
        ("one step wider", "36.0625", "60", Truth::No),
        ("one step taller", "36", "60.0625", Truth::No),
        ("wider, though smaller in area", "36.125", "48", Truth::No),
        ("taller, though smaller in area", "24", "60.125", Truth::No),
        ("turned on its side", "60", "36", Truth::No),
    ];
    for (name, width, height, expected) in rows {
        let found = size_is_qualified(&size(width, height), Some(&size("36", "60")), Some(false));
        assert_eq!(found, Ok(expected), "{name}");
    }
    assert_eq!(SIZE_BASIS.status, Status::SecondHand);
}

/// Source: mulled assemblies are rated as assemblies, common practice.
#[test]
fn the_grade_of_a_unit_says_nothing_of_an_assembly() {
    let unit = size("36", "60");
    let unknown = |facts: &[Fact]| Truth::Unknown(facts.iter().copied().collect::<Missing>());
    let rows = [
        (
            "joined, size tested",
            Some(&unit),
            Some(true),
            unknown(&[Fact::AssemblyGrade]),
        ),
        (
            "joined, size not known",
            None,
            Some(true),
            unknown(&[Fact::AssemblyGrade]),
        ),
        (
            "not known whether joined",
            Some(&unit),
            None,
            unknown(&[Fact::Mulled]),
        ),
        (
            "neither known",
            None,
            None,
            unknown(&[Fact::Mulled, Fact::TestedSize]),
        ),
        (
            "alone, size not known",
            None,
            Some(false),
            unknown(&[Fact::TestedSize]),
        ),
    ];
    for (name, tested, mulled, expected) in rows {
        assert_eq!(size_is_qualified(&unit, tested, mulled), Ok(expected), "{name}");
    }
}

/// No source: what is taken for a size is our limit.
#[test]
fn a_size_that_is_none_is_refused() {
    let good = size("36", "60");
    let rows = [
        ("no width", size("0", "60"), good.clone(), Fact::UnitWidth),
        (
            "height below nothing",
            size("36", "-60"),
            good.clone(),
            Fact::UnitHeight,
        ),
        ("51 ft wide", size("612", "60"), good.clone(), Fact::UnitWidth),
        (
            "tested at nothing",
            good.clone(),
            size("36", "0"),
            Fact::UnitHeight,
        ),
        ("tested at 51 ft", good, size("612", "60"), Fact::UnitWidth),
    ];
    for (name, unit, tested, fact) in rows {
        let found = size_is_qualified(&unit, Some(&tested), Some(true));
        assert_eq!(found.map_err(|error| error.fact), Err(fact), "{name}");
    }
}

/// Source: NAFS 2008, clause 4.2, in an excerpt: at least the gateway size in both width and height. The gateway of 36 x 60 is invented.
#[test]
fn a_specimen_is_at_least_the_gateway_size_in_both_ways() {
    let gateway = size("36", "60");
    let rows = [
        ("equal", "36", "60", Truth::Yes),
        ("larger both ways", "36.0625", "60.0625", Truth::Yes),
        ("one step narrower", "35.9375", "60", Truth::No),
        ("one step lower", "36", "59.9375", Truth::No),
        ("wider and lower, larger in area", "60", "59.9375", Truth::No),
        ("taller and narrower, larger in area", "35.9375", "96", Truth::No),
        ("turned on its side", "60", "36", Truth::No),
    ];
    for (name, width, height, expected) in rows {
        let specimen = size(width, height);
        assert_eq!(is_gateway_size(&specimen, Some(&gateway)), Ok(expected), "{name}");
    }
    let unknown = is_gateway_size(&gateway, None).unwrap();
    assert_eq!(unknown.missing(), Missing::from([Fact::GatewaySize]));
    assert!(is_gateway_size(&size("0", "60"), Some(&gateway)).is_err());
    assert!(is_gateway_size(&gateway, Some(&size("36", "-60"))).is_err());
    assert_eq!(GATEWAY_BASIS.status, Status::SecondHand);
}
