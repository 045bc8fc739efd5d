//! Completions of picks in small random catalogs, against the best of every configuration judged one by one.

#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::cast_possible_wrap,
    reason = "these are tests"
)]

use std::collections::BTreeMap;

use astragal_core::complete::{Completed, Completion};
use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_core::options::Picked;
use astragal_model::{AttributeIndex, Date, Origin, Pick, RuleName, Setting, Standing, Verdict, fill, judge};
use astragal_oracle::generate::{Case, Size, World};

use crate::judged::{Judged, judged, unit};

mod judged;

/// How many random catalogs are looked at, and how many settings of each.
const WORLDS: u64 = 2_500;
const CASES: u64 = 3;

/// How many selections are completed in each setting.
const ROUNDS: u64 = 4;

/// What was met while comparing.
type Met = BTreeMap<&'static str, u64>;

fn meet(met: &mut Met, what: &'static str, is_met: bool) {
    *met.entry(what).or_default() += u64::from(is_met);
}

/// Picks, and the dates of the quotes from which some are.
struct Selection {
    picks: Vec<Picked>,
    quoted: BTreeMap<AttributeIndex, Date>,
}

/// The picks of a case, and elsewhere options that are no longer offered, quoted on the last day.
fn case_picks(setting: &Setting<'_>, case: &Case) -> Vec<Pick> {
    let mut picks = case.picks.clone();
    for (attribute, entry) in setting.catalog.declarations().attributes.iter() {
        let gone = entry.options.iter().find(|one| {
            let until = one.validity.offered_until;
            until.is_some_and(|until| until < setting.date)
                && one.validity.honoured_until >= Some(setting.date)
        });
        if let Some(gone) = gone.filter(|_| picks.iter().all(|pick| pick.attribute != attribute)) {
            picks.push(Pick {
                attribute,
                option: gone.id.clone(),
                quoted: gone.validity.offered_until,
            });
        }
    }
    picks
}

impl Selection {
    /// Of two picks of one attribute the later; in later rounds more picks by dice, and pins.
    fn new(setting: &Setting<'_>, picks: &[Pick], dice: u64) -> Self {
        let stands = judge(setting, &fill(setting, picks));
        let is_honoured = |attribute| {
            let mut findings = stands.rules.iter();
            findings.any(|one| one.rule == RuleName::Offered(attribute) && one.standing == Standing::Warns)
        };
        let mut selection = Self {
            picks: Vec::new(),
            quoted: BTreeMap::new(),
        };
        for (index, attribute) in setting.catalog.declarations().attributes.iter() {
            let dice = (dice + index.0 as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 40;
            let dice = dice as usize;
            let pick = picks.iter().rfind(|pick| pick.attribute == index);
            let named = pick.and_then(|pick| attribute.options.iter().position(|one| one.id == pick.option));
            let by_dice = (!dice.is_multiple_of(3)).then_some(dice / 3 % attribute.options.len().max(1));
            let Some(value) = named.or(by_dice) else { continue };
            if let Some(date) = pick.filter(|_| named.is_some()).and_then(|pick| pick.quoted) {
                selection.quoted.insert(index, date);
            }
            selection.picks.push(Picked {
                attribute: index,
                value,
                pinned: (dice / 64).is_multiple_of(4),
                honoured: named.is_some() && is_honoured(index),
            });
        }
        selection
    }

    fn origin(&self, attribute: usize, value: usize) -> Origin {
        let kept = |pick: &Picked| pick.attribute.0 == attribute && pick.value == value;
        if self.picks.iter().any(kept) {
            let quoted = self.quoted.get(&AttributeIndex(attribute)).copied();
            Origin::Picked { quoted }
        } else {
            Origin::Standard
        }
    }

    fn changes(&self, values: &[usize]) -> i64 {
        let changed = |pick: &&Picked| values[pick.attribute.0] != pick.value;
        self.picks.iter().filter(changed).count() as i64
    }

    fn keeps_pins(&self, values: &[usize]) -> bool {
        let mut pins = self.picks.iter().filter(|pick| pick.pinned);
        pins.all(|pick| values[pick.attribute.0] == pick.value)
    }
}

#[test]
fn a_completion_is_the_first_of_the_best_of_every_configuration_judged() {
    let mut met = Met::new();
    for seed in 0..WORLDS {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        for number in 0..CASES {
            let case = world.case(number);
            let mut setting = world.setting(&case);
            if (seed + number) % 5 == 0 {
                setting.book = None;
            }
            let picks = case_picks(&setting, &case);
            // To the judge a pick without a quote is as good as a standard, so that one judging serves all rounds.
            let quoted = Selection::new(&setting, &picks, 0);
            let origin = |attribute, value| quoted.origin(attribute, value);
            let Some(all) = judged(&setting, &origin) else {
                continue;
            };
            let policy = setting.policy.map(|policy| &policy.terms);
            let limits = Limits::default();
            let engine = Engine::new(setting.catalog, policy, setting.authorities, 0, &limits).unwrap();
            let Ok(prepared) = engine.prepare(&setting) else {
                continue;
            };
            for round in 0..ROUNDS {
                let selection = Selection::new(&setting, &picks, seed * 100 + number * 30 + round * 7);
                let answer = engine.complete(&prepared, &setting, &selection.picks, &selection.quoted);
                let place = format!("seed {seed}, case {number}, round {round}");
                let answer = answer.unwrap_or_else(|error| panic!("{place}: {error}"));
                compare(answer, &setting, &selection, &all, &place, &mut met);
            }
        }
    }
    println!("{met:?}");
    for (what, least) in [
        ("selections", 20_000),
        ("found", 3_000),
        ("found without a book", 1_000),
        ("impossible", 10_000),
        ("unknown", 2_000),
        ("equally good units", 800),
        ("a pick changed", 1_500),
        ("two picks changed", 400),
        ("a pin matters", 200),
        ("dearer, since fewer picks change", 20),
        ("a pick is honoured", 100),
        ("a subtotal below zero", 200),
    ] {
        assert!(met.get(what) >= Some(&least), "{what}: {met:?}");
    }
}

#[test]
fn a_unit_that_judging_does_not_bear_out_is_not_handed_out() {
    let mut refused = 0;
    for seed in 0..1_500 {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        let case = world.case(0);
        let setting = world.setting(&case);
        let policy = setting.policy.map(|policy| &policy.terms);
        let engine = Engine::new(
            setting.catalog,
            policy,
            setting.authorities,
            0,
            &Limits::default(),
        )
        .unwrap();
        let Ok(prepared) = engine.prepare(&setting) else {
            continue;
        };
        // Judged on a day after the book was in force, which is not the day that was prepared.
        let until = setting.book.and_then(|book| book.until);
        let Some(date) = until.and_then(|until| until.tomorrow().ok()) else {
            continue;
        };
        let later = Setting { date, ..setting };
        let found = engine.complete(&prepared, &setting, &[], &BTreeMap::new());
        if matches!(found, Ok(Completion::Found(_))) {
            let answer = engine.complete(&prepared, &later, &[], &BTreeMap::new());
            let disagreement = answer.unwrap_err();
            assert_eq!(
                disagreement.verdict,
                Verdict::Broken,
                "seed {seed}: {disagreement}"
            );
            refused += 1;
        }
    }
    assert!(refused >= 10, "{refused} were refused");
}

/// Compares the answer for one selection.
fn compare(
    answer: Completion,
    setting: &Setting<'_>,
    selection: &Selection,
    all: &[Judged],
    place: &str,
    met: &mut Met,
) {
    let kept = all.iter().filter(|one| selection.keeps_pins(&one.values));
    let (holds, others): (Vec<&Judged>, Vec<&Judged>) = kept.partition(|one| one.verdict == Verdict::Holds);
    let weigh = |one: &Judged| (selection.changes(&one.values), one.cents.unwrap_or(0));
    let best = holds.iter().min_by_key(|one| (weigh(one), &one.values));
    meet(met, "selections", true);
    let held = all.iter().filter(|one| one.verdict == Verdict::Holds);
    let unpinned = held.min_by_key(|one| (weigh(one), &one.values));
    let values = |one: Option<&Judged>| one.map(|one| one.values.clone());
    meet(met, "a pin matters", values(unpinned) != values(best.copied()));
    match (answer, best) {
        (Completion::Found(found), Some(best)) => {
            let (changes, cents) = weigh(best);
            assert_eq!(
                (found.changes, found.cents, &found.values),
                (changes, cents, &best.values),
                "{place}"
            );
            let origin = |attribute, value| selection.origin(attribute, value);
            assert_eq!(
                found.unit,
                unit(setting.catalog, &best.values, &origin),
                "{place}"
            );
            let equal = holds.iter().filter(|one| weigh(one) == (changes, cents)).count();
            meet(met, "equally good units", equal > 1);
            let dearer = holds.iter().any(|one| one.cents.unwrap_or(0) < cents);
            meet(met, "dearer, since fewer picks change", dearer);
            meet_found(met, setting, selection, &found);
        }
        (Completion::Unknown { wants }, None) => {
            assert!(
                others.iter().any(|one| one.verdict == Verdict::Undecided),
                "{place}"
            );
            assert!(!wants.is_empty(), "{place}: nothing is wanted");
            meet(met, "unknown", true);
        }
        (Completion::Impossible, None) => {
            assert!(others.iter().all(|one| one.verdict == Verdict::Broken), "{place}");
            meet(met, "impossible", true);
        }
        (answer, best) => panic!("{place}: {answer:?}, but {:?}", best.map(|best| &best.values)),
    }
}

fn meet_found(met: &mut Met, setting: &Setting<'_>, selection: &Selection, found: &Completed) {
    let honoured = |pick: &Picked| pick.honoured && found.values[pick.attribute.0] == pick.value;
    for (what, is_met) in [
        ("found", true),
        ("found without a book", setting.book.is_none()),
        ("a pick changed", found.changes > 0),
        ("two picks changed", found.changes > 1),
        ("a pick is honoured", selection.picks.iter().any(honoured)),
        ("a subtotal below zero", found.cents < 0),
    ] {
        meet(met, what, is_met);
    }
}
