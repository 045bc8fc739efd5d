//! The voluntary energy programme: each of its rows, by zone.

use std::collections::BTreeMap;

use astragal_model::Number;
use astragal_trade::energy::ProgrammeZone;
use astragal_trade::energy::programme::{CRITERIA, check};
use astragal_trade::energy::rating::Ratings;

use crate::case::{Case, number};
use crate::code_file::CodeFile;
use crate::energy_code::RATINGS;
use crate::random::Random;
use crate::said::Said;

/// The options of `programme_zone`, and what they are to the crate; `not-wanted` is an answer that the crate is not asked for.
const ZONES: [(&str, ProgrammeZone); 4] = [
    ("northern", ProgrammeZone::Northern),
    ("north-central", ProgrammeZone::NorthCentral),
    ("south-central", ProgrammeZone::SouthCentral),
    ("southern", ProgrammeZone::Southern),
];

fn compare(
    file: &CodeFile,
    zone: Option<(&str, ProgrammeZone)>,
    ratings: &Ratings,
    counts: &mut BTreeMap<String, usize>,
) {
    let case = Case::default()
        .option("programme_zone", zone.map(|(option, _)| option))
        .number("u_factor", ratings.u_factor.as_ref())
        .number("shgc", ratings.solar_heat_gain.as_ref());
    let answer = check(zone.map(|(_, zone)| zone), ratings).unwrap();
    let said = file.judge(&case).rule("energy-programme");
    assert_eq!(said, Said::from(answer.within), "{zone:?} {ratings:?}");
    *counts.entry(format!("{zone:?} {said:?}")).or_default() += 1;
}

/// A rating of so many hundredths, as labels print them.
fn hundredths(hundredths: i64) -> Option<Number> {
    Number::ratio(hundredths, 100)
}

#[test]
fn every_rating_agrees_in_every_zone() {
    let (file, mut counts) = (CodeFile::load("energy-star-7", RATINGS), BTreeMap::new());
    let heat_gains = [1, 16, 17, 18, 22, 23, 24, 34, 35, 36, 39, 40, 41, 99];
    for zone in ZONES.map(Some).into_iter().chain([None]) {
        for u_factor in 19..=36 {
            for shgc in heat_gains {
                let ratings = Ratings {
                    u_factor: hundredths(u_factor),
                    solar_heat_gain: hundredths(shgc),
                };
                compare(&file, zone, &ratings, &mut counts);
            }
        }
    }
    for zone in ZONES {
        for said in ["Yes", "No"] {
            let seen = counts
                .get(&format!("{:?} {said}", Some(zone)))
                .copied()
                .unwrap_or(0);
            assert!(seen >= 10, "{zone:?} says {said} {seen} times");
        }
    }
}

#[test]
fn what_is_missing_is_asked_for_only_where_it_matters() {
    let (file, mut counts) = (CodeFile::load("energy-star-7", RATINGS), BTreeMap::new());
    for seed in 0..1_000 {
        let mut random = Random::new(seed);
        let u_factors: Vec<Number> = (20..34).filter_map(hundredths).collect();
        let heat_gains: Vec<Number> = (14..44).filter_map(hundredths).collect();
        let ratings = Ratings {
            u_factor: random.known(&u_factors),
            solar_heat_gain: random.known(&heat_gains),
        };
        compare(&file, random.known(&ZONES), &ratings, &mut counts);
    }
    for zone in ZONES {
        let seen = counts
            .get(&format!("{:?} Unknown", Some(zone)))
            .copied()
            .unwrap_or(0);
        assert!(seen >= 10, "{zone:?} is undecided {seen} times");
    }
}

#[test]
fn the_sheet_has_as_many_rows_as_the_crate_has_criteria() {
    let sheet =
        std::fs::read_to_string(crate::code_file::examples().join("codes/energy-star-7.csv")).unwrap();
    assert_eq!(sheet.lines().skip(1).count(), CRITERIA.len());
}

#[test]
fn a_label_that_is_not_wanted_is_not_checked() {
    let file = CodeFile::load("energy-star-7", RATINGS);
    let case = Case::default()
        .option("programme_zone", Some("not-wanted"))
        .number("u_factor", Some(&number("0.90")));
    assert_eq!(file.judge(&case).rule("energy-programme"), Said::Yes);
}
