//! What holds for every rating, and the names that are read.

use astragal_exact::Number;
use astragal_trade::energy::average::{self, Average, RatedOpening};
use astragal_trade::energy::code::{self, CodeAnswer, EnergyCode, Place, Quantity};
use astragal_trade::energy::programme;
use astragal_trade::energy::rating::{self, Ratings};
use astragal_trade::energy::{CodeZone, ProgrammeZone};
use astragal_trade::{Fact, Truth};
use proptest::prelude::*;

/// Source: the programme's four zones and the code's as their tables name them; that marine 4 is written 4C as well, from memory.
#[test]
fn zones_and_editions_are_read_in_the_spellings_of_the_trade() {
    let programme = [
        ("northern", Some(ProgrammeZone::Northern)),
        ("North-Central", Some(ProgrammeZone::NorthCentral)),
        ("south_central", Some(ProgrammeZone::SouthCentral)),
        (" SOUTHERN ", Some(ProgrammeZone::Southern)),
        ("north", None),
        ("central", None),
        ("5", None),
        ("", None),
    ];
    for (text, zone) in programme {
        assert_eq!(ProgrammeZone::from_text(text).ok(), zone, "{text}");
    }
    let code = [
        ("0", Some(CodeZone::Zone0)),
        ("1A", Some(CodeZone::Zone1)),
        ("3c", Some(CodeZone::Zone3)),
        ("4", Some(CodeZone::Zone4)),
        ("4 except marine", Some(CodeZone::Zone4)),
        ("4B", Some(CodeZone::Zone4)),
        ("4C", Some(CodeZone::Marine4)),
        ("marine_4", Some(CodeZone::Marine4)),
        ("4 marine", Some(CodeZone::Marine4)),
        ("zone 8", Some(CodeZone::Zone8)),
        ("9", None),
        ("4d", None),
        ("northern", None),
        ("", None),
        ("4aa", None),
        ("-1", None),
    ];
    for (text, zone) in code {
        assert_eq!(CodeZone::from_text(text).ok(), zone, "{text}");
    }
    for zone in CodeZone::ALL {
        assert_eq!(CodeZone::from_text(zone.id()), Ok(zone));
        assert_eq!(CodeZone::from_text(&zone.to_string()), Ok(zone));
    }
    for edition in EnergyCode::ALL {
        assert_eq!(EnergyCode::from_text(edition.id()), Ok(edition));
    }
    for text in ["iecc_2018", "2021", "IRC 2021", ""] {
        let error = EnergyCode::from_text(text).unwrap_err();
        assert_eq!(error.fact, Fact::EnergyCodeEdition);
        assert!(error.expected.contains("`iecc_2024`"), "{error}");
    }
    let error = ProgrammeZone::from_text(&"x".repeat(100_000)).unwrap_err();
    assert!(error.found.chars().count() <= 41, "{}", error.found.len());
}

fn hundredths(least: i64, most: i64) -> impl Strategy<Value = Number> {
    (least..=most).prop_map(|value| Number::ratio(value, 100).unwrap())
}

proptest! {
    /// Learning a rating never changes a yes or a no.
    #[test]
    fn a_missing_rating_only_leaves_open(u_factor in hundredths(1, 200), shgc in hundredths(0, 100)) {
        let full = Ratings { u_factor: Some(u_factor), solar_heat_gain: Some(shgc) };
        let without_u = Ratings { u_factor: None, ..full.clone() };
        let without_shgc = Ratings { solar_heat_gain: None, ..full.clone() };
        for zone in ProgrammeZone::ALL {
            let known = programme::check(Some(zone), &full).unwrap().within;
            for less in [&without_u, &without_shgc] {
                let answer = programme::check(Some(zone), less).unwrap().within;
                prop_assert!(answer == known || matches!(answer, Truth::Unknown(_)));
            }
        }
    }

    #[test]
    fn an_average_lies_between_the_least_and_the_largest(
        openings in proptest::collection::vec((1_i64..50_000, hundredths(1, 200)), 1..20)
    ) {
        let openings: Vec<RatedOpening> = openings
            .into_iter()
            .map(|(area, value)| RatedOpening { area: Number::from(area), value: Some(value) })
            .collect();
        let values = || openings.iter().filter_map(|opening| opening.value.clone());
        let (least, most) = (values().min().unwrap(), values().max().unwrap());
        let Average::Known(average) = average::u_factor(&openings).unwrap() else {
            return Err(TestCaseError::fail("a known average"));
        };
        prop_assert!(least <= average && average <= most);
        prop_assert!(rating::u_factor(&average).is_ok());
    }

    /// A lower U-factor is never worse for a code, wherever the house is.
    #[test]
    fn a_lower_u_factor_is_never_worse_for_a_code(
        value in hundredths(1, 199), feet in 0_i64..9_000, region in any::<bool>(), index in 0_usize..10
    ) {
        let place = Place {
            elevation: Some(Number::from(feet * 12)),
            windborne_debris_region: Some(region),
        };
        let higher = &value + &Number::ratio(1, 100).unwrap();
        let zone = CodeZone::ALL.get(index).copied();
        for edition in EnergyCode::ALL {
            let ask = |value: &Number| code::check(edition, zone, Quantity::UFactor, Some(value), &place).unwrap();
            if let (CodeAnswer::Compared { within: low, .. }, CodeAnswer::Compared { within: high, .. }) =
                (ask(&value), ask(&higher))
            {
                prop_assert!(low == Truth::Yes || high == Truth::No);
            }
        }
    }

    #[test]
    fn no_text_panics(text in "\\PC*") {
        let _ = ProgrammeZone::from_text(&text);
        let _ = CodeZone::from_text(&text);
        let _ = EnergyCode::from_text(&text);
    }
}
