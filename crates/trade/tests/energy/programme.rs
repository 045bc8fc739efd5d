//! The programme's criteria, both sides of each row.

use crate::{number, ratings};
use astragal_trade::energy::ProgrammeZone;
use astragal_trade::energy::programme::{self, Path};
use astragal_trade::metric::metric_u_factor;
use astragal_trade::{Fact, Missing, Status, Truth};

fn letters(answers: &[(ProgrammeZone, programme::ProgrammeAnswer)]) -> String {
    let letter = |truth: &Truth| match truth {
        Truth::Yes => 'y',
        Truth::No => 'n',
        Truth::Unknown(_) => '?',
    };
    answers.iter().map(|(_, answer)| letter(&answer.within)).collect()
}

/// Zones in the order Northern, North-Central, South-Central, Southern. `-` is a rating that is not known.
#[test]
fn the_programme_takes_a_unit_in_these_zones() {
    let table = "ENERGY STAR Residential Windows 7.0";
    let computed = "ENERGY STAR Residential Windows 7.0, computed";
    let six = "version 6, in an agency's help article: U at most 0.27 in the north, and with SHGC at most 0.25 in every zone";
    let rows = [
        // The rows on which the zones agree and disagree.
        (computed, "0.22", "0.20", "yyyy"),
        (computed, "0.22", "0.16", "nyyy"),
        (computed, "0.25", "0.41", "ynnn"),
        (computed, "0.26", "0.40", "ynnn"),
        (computed, "0.27", "0.00", "nnyy"),
        (computed, "0.27", "0.40", "nnnn"),
        (computed, "0.27", "1.00", "nnnn"),
        (computed, "0.28", "0.24", "nnnn"),
        // What version 6 took in every zone, 7 takes in none; with two hundredths of SHGC less, in the two southern zones.
        (six, "0.27", "0.25", "nnnn"),
        (six, "0.27", "0.23", "nnyy"),
        // What version 6 took in the north whatever its SHGC, 7 never takes there.
        (six, "0.27", "0.17", "nnyy"),
        (six, "0.27", "0.35", "nnnn"),
        // Northern, prescriptive: U at most 0.22, SHGC at least 0.17.
        (table, "0.21", "0.17", "yyyy"),
        (table, "0.22", "0.17", "yyyy"),
        (table, "0.22", "0.18", "yyyy"),
        (table, "0.23", "0.17", "nyyy"),
        (table, "0.22", "1.00", "ynnn"),
        // Northern, 0.23 with at least 0.35.
        (table, "0.23", "0.34", "nynn"),
        (table, "0.23", "0.35", "yynn"),
        (table, "0.23", "0.36", "yynn"),
        // Northern, 0.24 with at least 0.35.
        (table, "0.24", "0.34", "nynn"),
        (table, "0.24", "0.35", "yynn"),
        (table, "0.24", "0.36", "yynn"),
        // Northern, 0.25 with at least 0.40.
        (table, "0.25", "0.35", "nynn"),
        (table, "0.25", "0.39", "nynn"),
        (table, "0.25", "0.40", "yynn"),
        // Northern, 0.26 with at least 0.40; North-Central ends at 0.25.
        (table, "0.26", "0.39", "nnnn"),
        (table, "0.26", "0.40", "ynnn"),
        (table, "0.26", "0.41", "ynnn"),
        (table, "0.27", "0.41", "nnnn"),
        // North-Central: U at most 0.25, SHGC at most 0.40.
        (table, "0.24", "0.40", "yynn"),
        (table, "0.24", "0.41", "ynnn"),
        (table, "0.25", "0.23", "nyyy"),
        (table, "0.26", "0.23", "nnyy"),
        // South-Central: U at most 0.28, SHGC at most 0.23.
        (table, "0.27", "0.23", "nnyy"),
        (table, "0.28", "0.22", "nnyy"),
        (table, "0.28", "0.23", "nnyy"),
        (table, "0.29", "0.23", "nnny"),
        (table, "0.25", "0.24", "nynn"),
        // Southern: U at most 0.32, SHGC at most 0.23.
        (table, "0.31", "0.23", "nnny"),
        (table, "0.32", "0.23", "nnny"),
        (table, "0.32", "0.24", "nnnn"),
        (table, "0.33", "0.23", "nnnn"),
        // What is not known is asked for only where it decides.
        (table, "0.22", "-", "????"),
        (table, "0.27", "-", "nn??"),
        (table, "0.33", "-", "nnnn"),
        (table, "-", "0.16", "n???"),
        (table, "-", "0.24", "??nn"),
        (table, "-", "0.41", "?nnn"),
        (table, "-", "-", "????"),
    ];
    for (source, u_factor, shgc, zones) in rows {
        let answers = programme::in_each_zone(&ratings(u_factor, shgc)).unwrap();
        assert_eq!(letters(&answers), zones, "{source}: U {u_factor}, SHGC {shgc}");
        for (zone, answer) in answers {
            assert_eq!(programme::check(Some(zone), &ratings(u_factor, shgc)), Ok(answer));
        }
    }
}

/// Source: ENERGY STAR Residential Windows 7.0, as quoted; its days in trade press.
#[test]
fn the_row_that_was_used_is_named() {
    let rows = [
        ("0.22", "0.40", Some(Path::Prescriptive)),
        ("0.24", "0.35", Some(Path::EquivalentEnergyPerformance)),
        ("0.24", "0.34", None),
    ];
    for (u_factor, shgc, path) in rows {
        let answer = programme::check(Some(ProgrammeZone::Northern), &ratings(u_factor, shgc)).unwrap();
        assert_eq!(answer.by.map(|row| row.path), path, "U {u_factor}, SHGC {shgc}");
        assert_eq!(answer.basis.status, Status::SecondHand);
    }
    let days = [
        ("final", programme::FINAL, "2022-10-20"),
        ("in force", programme::IN_FORCE, "2023-10-23"),
    ];
    for (name, day, expected) in days {
        assert_eq!(day.to_string(), expected, "{name} (trade press on version 7.0)");
    }
    assert_eq!(programme::DATES_BASIS.status, Status::SecondHand);
    assert_eq!(programme::CRITERIA.len(), 8);
}

/// SI values of the U column, two decimals. Source: computed; 1 Btu/h ft2 F is 5.67826 W/m2K by a unit library.
#[test]
fn u_factors_in_si_units() {
    let rows = [
        ("0.22", "1.25"),
        ("0.23", "1.31"),
        ("0.24", "1.36"),
        ("0.25", "1.42"),
        ("0.26", "1.48"),
        ("0.28", "1.59"),
        ("0.32", "1.82"),
    ];
    for (customary, si) in rows {
        let found = metric_u_factor(&number(customary));
        assert_eq!(found.to_fixed(2), si, "{customary}");
    }
    assert_eq!(metric_u_factor(&number("1")).to_fixed(5), "5.67826");
}

#[test]
fn without_a_zone_the_zone_is_missing() {
    let answer = programme::check(None, &ratings("0.22", "0.20")).unwrap();
    assert_eq!(answer.within.missing(), Missing::from([Fact::ProgrammeZone]));
}

/// Source: ratings of two decimals, from memory. The least and the most that are taken are our limits.
#[test]
fn what_is_no_rating_is_refused() {
    let rows = [
        ("U of three decimals", "0.225", "0.20", Fact::UFactor),
        (
            "U of three decimals that is nearly two",
            "0.2200001",
            "0.20",
            Fact::UFactor,
        ),
        ("SHGC of three decimals", "0.22", "0.175", Fact::SolarHeatGain),
        ("U of nothing", "0", "0.20", Fact::UFactor),
        ("U below nothing", "-0.22", "0.20", Fact::UFactor),
        ("U that lost its point", "22", "0.20", Fact::UFactor),
        ("U just above what is taken", "2.01", "0.20", Fact::UFactor),
        ("SHGC below nothing", "0.22", "-0.01", Fact::SolarHeatGain),
        ("SHGC above one", "0.22", "1.01", Fact::SolarHeatGain),
    ];
    for (name, u_factor, shgc, fact) in rows {
        let error = programme::check(Some(ProgrammeZone::Northern), &ratings(u_factor, shgc));
        assert_eq!(error.map_err(|error| error.fact), Err(fact), "{name}");
    }
    let taken = [("2", "1"), ("0.01", "0"), ("2.00", "1.00"), ("0.2", "0.3")];
    for (u_factor, shgc) in taken {
        assert_eq!(
            ratings(u_factor, shgc).check(),
            Ok(()),
            "U {u_factor}, SHGC {shgc}"
        );
    }
}
