//! The energy code: the largest U-factor and solar heat gain by zone and edition, and the places that may have more.
//!
//! The files leave zones out of which what was seen disagrees or nothing was seen, and say so in a notice: 0 and 1 in 2021, of which
//! the crate has values from memory, and 0 to 2 in 2024. The solar heat gain of 2024 is in neither.

use std::collections::BTreeMap;

use astragal_model::Number;
use astragal_trade::energy::CodeZone;
use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Place, Quantity, check};

use crate::case::{Case, around, number};
use crate::code_file::CodeFile;
use crate::random::Random;
use crate::said::Said;

/// The two ratings of a unit.
pub(crate) const RATINGS: &str = r#"
[[measure]]
id = "u_factor"
label = "U-factor"
type = "number"

[[measure]]
id = "shgc"
label = "Solar heat gain"
type = "number"
"#;

/// The options of `code_zone`, and what they are to the crate.
const ZONES: [(&str, CodeZone); 10] = [
    ("0", CodeZone::Zone0),
    ("1", CodeZone::Zone1),
    ("2", CodeZone::Zone2),
    ("3", CodeZone::Zone3),
    ("4", CodeZone::Zone4),
    ("4-marine", CodeZone::Marine4),
    ("5", CodeZone::Zone5),
    ("6", CodeZone::Zone6),
    ("7", CodeZone::Zone7),
    ("8", CodeZone::Zone8),
];

const EDITIONS: [(EnergyCode, &str); 2] = [
    (EnergyCode::Iecc2021, "iecc-2021"),
    (EnergyCode::Iecc2024, "iecc-2024"),
];

/// What is known of a unit and its place.
#[derive(Clone, Default, Debug)]
struct Rated {
    zone: Option<(&'static str, CodeZone)>,
    u_factor: Option<Number>,
    shgc: Option<Number>,
    elevation: Option<Number>,
    windborne: Option<bool>,
}

impl Rated {
    fn case(&self) -> Case {
        Case::default()
            .option("code_zone", self.zone.map(|(option, _)| option))
            .number("u_factor", self.u_factor.as_ref())
            .number("shgc", self.shgc.as_ref())
            .length("elevation", self.elevation.as_ref())
            .truth("windborne_debris", self.windborne)
    }

    fn expected(&self, code: EnergyCode, quantity: Quantity) -> Said {
        let place = Place {
            elevation: self.elevation.clone(),
            windborne_debris_region: self.windborne,
        };
        let value = match quantity {
            Quantity::SolarHeatGain => self.shgc.as_ref(),
            _ => self.u_factor.as_ref(),
        };
        let zone = self.zone.map(|(_, zone)| zone);
        match check(code, zone, quantity, value, &place).unwrap() {
            CodeAnswer::NotEncoded => Said::NoValue,
            CodeAnswer::NoRequirement(_) => Said::Yes,
            CodeAnswer::Compared { within, .. } => within.into(),
        }
    }

    /// Whether the file leaves the zone out: [`a_zone_that_is_left_out_is_told_in_a_notice`].
    fn is_left_out(&self, code: EnergyCode) -> bool {
        let left_out: &[CodeZone] = match code {
            EnergyCode::Iecc2024 => &[CodeZone::Zone0, CodeZone::Zone1, CodeZone::Zone2],
            _ => &[CodeZone::Zone0, CodeZone::Zone1],
        };
        self.zone.is_some_and(|(_, zone)| left_out.contains(&zone))
    }

    /// Where the two are not meant to say the same: [`a_low_solar_heat_gain_needs_no_zone`].
    fn needs_no_zone(&self) -> bool {
        self.zone.is_none() && self.shgc.as_ref().is_some_and(|shgc| *shgc <= number("0.25"))
    }
}

fn compare(files: &[(EnergyCode, CodeFile)], rated: &Rated, counts: &mut BTreeMap<String, usize>) {
    let case = rated.case();
    for (code, file) in files {
        let answers = file.judge(&case);
        let mut agree = |rule: &str, quantity: Quantity| {
            let said = answers.rule(rule);
            assert_eq!(said, rated.expected(*code, quantity), "{code} {rule}: {rated:?}");
            *counts.entry(format!("{code} {rule} {said:?}")).or_default() += 1;
        };
        if rated.is_left_out(*code) {
            continue;
        }
        agree("energy-code-u-factor", Quantity::UFactor);
        if *code == EnergyCode::Iecc2021 && !rated.needs_no_zone() {
            agree("energy-code-shgc", Quantity::SolarHeatGain);
        }
    }
}

fn files() -> Vec<(EnergyCode, CodeFile)> {
    let load = |(code, name): (EnergyCode, &str)| (code, CodeFile::load(name, RATINGS));
    EDITIONS.into_iter().map(load).collect()
}

/// Every value of the tables, a thousandth below and above.
fn values(limits: &[&str]) -> Vec<Number> {
    let step = number("0.001");
    let all = limits.iter().map(|limit| number(limit));
    all.flat_map(|limit| [&limit - &step, limit.clone(), &limit + &step])
        .collect()
}

const U_FACTORS: [&str; 6] = ["0.27", "0.28", "0.30", "0.32", "0.35", "0.40"];
const HEAT_GAINS: [&str; 2] = ["0.25", "0.40"];

#[test]
fn every_zone_agrees_at_both_sides_of_every_value_high_and_low() {
    let (files, mut counts) = (files(), BTreeMap::new());
    let elevations: Vec<Option<Number>> = around(&["48000"]).into_iter().map(Some).chain([None]).collect();
    for zone in ZONES.map(Some).into_iter().chain([None]) {
        for u_factor in values(&U_FACTORS) {
            for elevation in &elevations {
                for windborne in [None, Some(false), Some(true)] {
                    let rated = Rated {
                        zone,
                        u_factor: Some(u_factor.clone()),
                        shgc: None,
                        elevation: elevation.clone(),
                        windborne,
                    };
                    compare(&files, &rated, &mut counts);
                }
            }
        }
        for shgc in values(&HEAT_GAINS) {
            let rated = Rated {
                zone,
                shgc: Some(shgc),
                ..Rated::default()
            };
            compare(&files, &rated, &mut counts);
        }
    }
    for (rule, says) in [
        (
            "IECC 2021 energy-code-u-factor",
            ["Yes", "No", "Unknown"].as_slice(),
        ),
        ("IECC 2021 energy-code-shgc", &["Yes", "No", "Unknown"]),
        ("IECC 2024 energy-code-u-factor", &["Yes", "No", "Unknown"]),
    ] {
        for said in says {
            let seen = counts.get(&format!("{rule} {said}")).copied().unwrap_or(0);
            assert!(seen >= 8, "{rule} says {said} {seen} times");
        }
    }
}

#[test]
fn random_ratings_agree_whatever_is_missing() {
    let (files, mut counts) = (files(), BTreeMap::new());
    for seed in 0..4_000 {
        let mut random = Random::new(seed);
        let rated = Rated {
            zone: random.known(&ZONES),
            u_factor: random.known(&values(&U_FACTORS)),
            shgc: random.known(&values(&HEAT_GAINS)),
            elevation: random.known(&around(&["48000", "0"])),
            windborne: random.truth(),
        };
        compare(&files, &rated, &mut counts);
    }
    assert!(counts.values().all(|seen| *seen >= 20), "{counts:?}");
    assert_eq!(counts.len(), 3 + 3 + 3);
}

/// Nothing is called met there: a notice says that it was not checked.
#[test]
fn a_zone_that_is_left_out_is_told_in_a_notice() {
    for (code, file) in files() {
        for zone in ZONES {
            let rated = Rated {
                zone: Some(zone),
                u_factor: Some(number("2")),
                shgc: Some(number("1")),
                ..Rated::default()
            };
            let answers = file.judge(&rated.case());
            let is_told = answers.notice("energy-code-zone-not-checked").is_some();
            assert_eq!(is_told, rated.is_left_out(code), "{code} {zone:?}");
            let said = answers.rule("energy-code-u-factor");
            assert_eq!(said == Said::Yes, is_told, "{code} {zone:?}");
            let of_heat = answers.notice("energy-code-shgc-not-checked").is_some();
            let has_no_limit = rated.expected(code, Quantity::SolarHeatGain) != Said::No;
            assert_eq!(
                of_heat,
                has_no_limit || rated.is_left_out(code),
                "{code} {zone:?}"
            );
        }
    }
}

/// At most 0.25 is within every zone's limit that the file has: a table's rows say so without the zone. The crate names the zone,
/// since it has none to compare with.
#[test]
fn a_low_solar_heat_gain_needs_no_zone() {
    let files = files();
    let (code, file) = &files[0];
    for (shgc, is_enough) in [("0.25", true), ("0.251", false)] {
        let rated = Rated {
            shgc: Some(number(shgc)),
            ..Rated::default()
        };
        assert_eq!(rated.needs_no_zone(), is_enough);
        assert_eq!(rated.expected(*code, Quantity::SolarHeatGain), Said::Unknown);
        let said = if is_enough { Said::Yes } else { Said::Unknown };
        assert_eq!(file.judge(&rated.case()).rule("energy-code-shgc"), said, "{shgc}");
    }
}
