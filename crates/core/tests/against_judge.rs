//! Every configuration of small random catalogs, judged one by one, against counts, least totals and options.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    reason = "these are tests"
)]

use std::collections::BTreeMap;

use astragal_core::engine::{Certainty, Engine};
use astragal_core::limit::Limits;
use astragal_core::options::{Least, Picked};
use astragal_model::{AmountKind, Catalog, Origin, Setting, Verdict};
use astragal_oracle::generate::{Size, World};
use num_bigint::BigUint;

use crate::judged::{Judged, judged};

mod judged;

/// How many random catalogs are looked at, and how many settings of each.
const WORLDS: u64 = 3_000;
const CASES: u64 = 3;

fn least<'a>(units: impl Iterator<Item = &'a Judged>, picks: &[Picked], own: usize) -> Option<Least> {
    let weigh = |unit: &Judged| Least {
        changes: picks
            .iter()
            .filter(|pick| pick.attribute.0 != own && unit.values[pick.attribute.0] != pick.value)
            .count() as i64,
        cents: unit.cents.unwrap_or(0),
    };
    units.map(weigh).min()
}

/// What was met while comparing.
type Met = BTreeMap<&'static str, u64>;

fn meet(met: &mut Met, what: &'static str) {
    *met.entry(what).or_default() += 1;
}

#[test]
fn counts_totals_and_options_are_what_judging_every_configuration_says() {
    let mut met = Met::new();
    for seed in 0..WORLDS {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        for number in 0..CASES {
            let case = world.case(number);
            let setting = world.setting(&case);
            if let Some(all) = judged(&setting, &|_, _| Origin::Standard) {
                compare(&setting, &all, seed, number, &mut met);
            }
        }
    }
    println!("{met:?}");
    for (what, least) in [
        ("settings", 5_000),
        ("options", 50_000),
        ("some hold", 800),
        ("something unknown", 800),
        ("two changes or more", 300),
        ("a total below zero", 50),
        ("too much money", 50),
    ] {
        assert!(met.get(what) >= Some(&least), "{what}: {met:?}");
    }
}

/// A pick that is honoured opens its own option, and not the price book.
#[test]
fn nothing_is_possible_with_a_book_that_is_not_in_force_however_it_was_quoted() {
    let mut tried = 0;
    for seed in 0..WORLDS {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        let case = world.case(0);
        let mut setting = world.setting(&case);
        let Some(until) = setting.book.and_then(|book| book.until) else {
            continue;
        };
        setting.date = until.tomorrow().unwrap();
        let policy = setting.policy.map(|policy| &policy.terms);
        let limits = Limits::default();
        let engine = Engine::new(setting.catalog, policy, setting.authorities, seed, &limits).unwrap();
        let Ok(prepared) = engine.prepare(&setting) else {
            continue;
        };
        let count = setting.catalog.declarations().attributes.len();
        let honoured = |attribute| Picked {
            attribute: astragal_model::AttributeIndex(attribute),
            value: 0,
            pinned: false,
            honoured: true,
        };
        let picks: Vec<Picked> = (0..count).map(honoured).collect();
        assert_eq!(engine.selection(&prepared, &picks).possible, None, "seed {seed}");
        for answer in engine.options(&prepared, &picks).iter().flatten() {
            assert_eq!((answer.possible, answer.certain), (None, None), "seed {seed}");
        }
        tried += 1;
    }
    assert!(tried > 50, "{tried} books end");
}

/// Rare among random catalogs, so looked for: a percentage `per` part of an item that other parts of the kind have too.
#[test]
fn a_percentage_per_part_is_of_its_own_part_here_too() {
    let mut met = Met::new();
    for seed in WORLDS..WORLDS + 20_000 {
        let world = World::new(seed, Size::USUAL).filter(|world| has_share_per_part(&world.catalog));
        let Some(world) = world else { continue };
        for number in 0..CASES {
            let case = world.case(number);
            let setting = world.setting(&case);
            if let Some(all) = judged(&setting, &|_, _| Origin::Standard) {
                compare(&setting, &all, seed, number, &mut met);
            }
        }
    }
    println!("{met:?}");
    assert!(met.get("some hold") >= Some(&20), "{met:?}");
}

fn has_share_per_part(catalog: &Catalog) -> bool {
    let declared = catalog.declarations();
    let kind = |part: astragal_model::PartIndex| &declared.parts.at(part).kind;
    declared.items.values().any(|item| {
        let AmountKind::Percent(named) = &item.amount else {
            return false;
        };
        declared.items.values().any(|other| {
            let parts = item.part.zip(other.part);
            named.contains(&other.id) && parts.is_some_and(|(own, of)| own != of && kind(own) == kind(of))
        })
    })
}

/// Compares one setting: counts, the cheapest, and every option.
fn compare(setting: &Setting<'_>, all: &[Judged], seed: u64, number: u64, met: &mut Met) {
    let place = format!("seed {seed}, case {number}");
    let policy = setting.policy.map(|policy| &policy.terms);
    let limits = Limits::default();
    let engine = Engine::new(setting.catalog, policy, setting.authorities, seed, &limits).unwrap();
    let Ok(prepared) = engine.prepare(setting) else {
        meet(met, "too much money");
        return;
    };
    let holds: Vec<&Judged> = all.iter().filter(|unit| unit.verdict == Verdict::Holds).collect();
    let not_broken: Vec<&Judged> = all
        .iter()
        .filter(|unit| unit.verdict != Verdict::Broken)
        .collect();
    for (certainty, units) in [
        (Certainty::Certain, &holds),
        (Certainty::NotRuledOut, &not_broken),
    ] {
        let counted = engine.count(&prepared, certainty);
        assert_eq!(counted, BigUint::from(units.len()), "{place}: {certainty:?}");
    }
    let cheapest = holds.iter().map(|unit| unit.cents.unwrap_or(0)).min();
    assert_eq!(
        engine.cheapest(&prepared, Certainty::Certain),
        cheapest,
        "{place}: cheapest"
    );
    meet(met, "settings");
    meet(
        met,
        if holds.is_empty() {
            "none holds"
        } else {
            "some hold"
        },
    );
    if holds.len() < not_broken.len() {
        meet(met, "something unknown");
    }
    if cheapest.is_some_and(|cents| cents < 0) {
        meet(met, "a total below zero");
    }
    let picks = picks(all, seed, number);
    for (attribute, values) in engine.options(&prepared, &picks).iter().enumerate() {
        for (value, answer) in values.iter().enumerate() {
            let with = |unit: &&&Judged| unit.values[attribute] == value && keeps_pins(unit, &picks);
            let certain = least(holds.iter().filter(with).copied(), &picks, attribute);
            let possible = least(not_broken.iter().filter(with).copied(), &picks, attribute);
            let changes = |least: Option<Least>| least.map(|least| least.changes);
            assert_eq!(
                answer.certain, certain,
                "{place}: attribute {attribute}, value {value}"
            );
            assert_eq!(
                answer.possible,
                changes(possible),
                "{place}: attribute {attribute}, value {value}"
            );
            meet(met, "options");
            if changes(certain) >= Some(2) {
                meet(met, "two changes or more");
            }
        }
    }
}

fn keeps_pins(unit: &Judged, picks: &[Picked]) -> bool {
    let mut pins = picks.iter().filter(|pick| pick.pinned);
    pins.all(|pick| unit.values[pick.attribute.0] == pick.value)
}

/// Some picks, one of them pinned at times.
fn picks(all: &[Judged], seed: u64, number: u64) -> Vec<Picked> {
    let wanted = &all[(seed as usize * 7 + number as usize * 13) % all.len()].values;
    let mut picks = Vec::new();
    for (attribute, value) in wanted.iter().enumerate() {
        let dice = (seed >> (attribute % 16)) % 4;
        if dice != 0 {
            picks.push(Picked {
                attribute: astragal_model::AttributeIndex(attribute),
                value: *value,
                pinned: dice == 3 && attribute == 0,
                honoured: false,
            });
        }
    }
    picks
}
