//! Completions of picks in small random catalogs, against the best of every configuration judged one by one.

#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    reason = "these are tests"
)]

use std::collections::BTreeMap;

use astragal_core::complete::{Aim, Completed, Completion, Wish};
use astragal_core::engine::Engine;
use astragal_core::ground::needs_own_diagram;
use astragal_core::limit::Limits;
use astragal_core::options::Picked;
use astragal_model::{Choice, Origin, Outcome, Setting, Standard, Value, Verdict, Want, fill, judge, slots};
use astragal_oracle::generate::{Case, Size, World};

use crate::completing::expected::{Asked, Counts, Unpicked, without_standard};
use crate::completing::found::{check_unit, compare_found};
use crate::completing::selection::{Selection, case_picks};
use crate::judged::{judged, unit};

mod completing;
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

#[test]
fn completions_are_the_first_of_every_configuration_judged() {
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
            one_setting(&setting, &case, seed, number, &mut met);
        }
    }
    println!("{met:?}");
    for (what, least) in [
        ("selections", 20_000),
        ("found", 3_000),
        ("found without a book", 1_000),
        ("impossible", 10_000),
        ("depends", 1_500),
        ("depends, though something is certain", 15),
        ("depends, and a part may be the first", 12),
        ("depends, and a part follows the first", 12),
        ("equally good units", 300),
        ("a pick changed", 800),
        ("two picks changed", 200),
        ("a pin matters", 200),
        ("dearer, since fewer picks change", 15),
        ("dearer, since it is standard", 6),
        ("departs", 500),
        ("departs twice", 50),
        ("stays near", 100),
        ("three or more", 300),
        ("what is filled holds", 1_000),
        ("a policy on the diagram of its catalog", 200),
        ("something stays open", 400),
        ("a pick is honoured", 100),
        ("a subtotal below zero", 200),
    ] {
        assert!(met.get(what) >= Some(&least), "{what}: {met:?}");
    }
}

fn one_setting(setting: &Setting<'_>, case: &Case, seed: u64, number: u64, met: &mut Met) {
    let picks = case_picks(setting, case);
    // To the judge a pick without a quote is as good as a standard, so that one judging serves all rounds.
    let quoted = Selection::new(setting, &picks, 0);
    let origin = |attribute, value| quoted.origin(attribute, value);
    let Some(all) = judged(setting, &origin) else {
        return;
    };
    let possible = all.iter().filter(|one| one.verdict != Verdict::Broken);
    let possible: Vec<Unpicked<'_>> = possible.map(|one| Unpicked::new(setting, one)).collect();
    let policy = setting.policy.map(|policy| &policy.terms);
    // A policy without rules and the like of its own comes in when a question is prepared.
    let compiled = policy.filter(|policy| needs_own_diagram(setting.catalog, policy));
    let engine = Engine::new(
        setting.catalog,
        compiled,
        setting.authorities,
        0,
        &Limits::default(),
    )
    .unwrap();
    let Ok(prepared) = engine.prepare(setting) else {
        return;
    };
    meet(
        met,
        "a policy on the diagram of its catalog",
        policy.is_some() && compiled.is_none(),
    );
    let without = without_standard(setting, &all);
    for round in 0..ROUNDS {
        let dice = seed * 100 + number * 30 + round * 7;
        let selection = Selection::new(setting, &picks, dice);
        let near = (dice.is_multiple_of(3)).then(|| {
            all[(dice as usize).wrapping_mul(7_919) % all.len()]
                .values
                .as_slice()
        });
        let asked = Asked {
            selection: &selection,
            aim: if round % 2 == 0 {
                Aim::Standard
            } else {
                Aim::Cheapest
            },
            near,
            count: 1 + (dice as usize / 5) % 4,
            is_priced: setting.book.is_some(),
            without: &without,
        };
        let near = near.map(|near| unit(setting.catalog, near, &|_, _| Origin::Standard));
        let answer = engine.complete(
            &prepared,
            &Wish {
                setting,
                picks: &selection.picks,
                quoted: &selection.quoted,
                aim: asked.aim,
                near: near.as_ref(),
                count: asked.count,
            },
        );
        let place = format!("seed {seed}, case {number}, round {round}");
        let answer = answer.unwrap_or_else(|error| panic!("{place}: {error}"));
        compare(answer, setting, &asked, &possible, &place, met);
    }
}

/// Compares the answer to one question.
fn compare(
    answer: Completion,
    setting: &Setting<'_>,
    asked: &Asked<'_>,
    possible: &[Unpicked<'_>],
    place: &str,
    met: &mut Met,
) {
    meet(met, "selections", true);
    let key = |one: &Unpicked<'_>| one.counts(asked).key(asked.aim);
    let kept = possible
        .iter()
        .filter(|one| asked.selection.keeps_pins(&one.judged.values));
    let (mut holds, others): (Vec<_>, Vec<_>) = kept.partition(|one| one.judged.verdict == Verdict::Holds);
    holds.sort_by_key(|one| (key(one), &one.judged.values));
    let least_certain = holds.first().map(|one| key(one));
    let least_other = others.iter().map(|one| key(one)).min();
    let held = possible.iter().filter(|one| one.judged.verdict == Verdict::Holds);
    meet(met, "a pin matters", held.map(key).min() != least_certain);
    let is_certain = least_certain.is_some_and(|least| least_other.is_none_or(|other| least <= other));
    match answer {
        Completion::Found(found) => {
            assert!(is_certain, "{place}: {found:?}");
            compare_found(&found, setting, asked, &holds, place);
            meet_found(met, setting, asked, &holds, &found);
        }
        Completion::Depends(unit) => {
            assert!(!is_certain, "{place}");
            let least = least_other.unwrap();
            let of_unit = others
                .iter()
                .find(|one| one.judged.values == unit.values)
                .unwrap();
            // Among units with unknown amounts any may come first.
            let (mut of_unit, mut least) = (key(of_unit), least);
            if asked.aim == Aim::Cheapest && least.1.is_none() {
                (of_unit, least) = ((of_unit.0, of_unit.1, 0, 0, None), (least.0, None, 0, 0, None));
            }
            if least.4.is_none() {
                of_unit.4 = None;
            }
            assert_eq!(of_unit, least, "{place}");
            assert_eq!(unit.judgement.verdict, Verdict::Undecided, "{place}");
            check_unit(&unit, setting, asked, place);
            meet_depends(met, setting, asked, &unit);
            meet(met, "depends, though something is certain", !holds.is_empty());
        }
        Completion::Impossible => {
            assert!(holds.is_empty() && others.is_empty(), "{place}");
            meet(met, "impossible", true);
        }
    }
}

/// Of what is `ask` on a later part: what stands at the first one, and whether that is there, may not be known.
fn meet_depends(met: &mut Met, setting: &Setting<'_>, asked: &Asked<'_>, unit: &Completed) {
    let slots = slots(setting, &unit.unit);
    let attributes = setting.catalog.declarations().attributes.positions();
    let later = attributes.filter(|index| {
        let asks = matches!(setting.standard(*index), Standard::Ask) && !asked.selection.has(*index);
        asks && !setting.catalog.earlier_parts(*index).is_empty()
    });
    let standards: Vec<&Outcome> = later.map(|index| &slots.at(index).standard).collect();
    let waits_for_facts = |outcome: &&&Outcome| {
        let wants = outcome.wants();
        wants.is_some_and(|wants| !wants.iter().any(|want| matches!(want, Want::Choice(_))))
    };
    let cheapest = asked.aim == Aim::Cheapest;
    for (what, is_met) in [
        ("depends", true),
        (
            "depends, and a part may be the first",
            cheapest && standards.iter().any(|one| waits_for_facts(&one)),
        ),
        (
            "depends, and a part follows the first",
            cheapest
                && standards
                    .iter()
                    .any(|one| matches!(one, Outcome::Known(Value::Option(_)))),
        ),
    ] {
        meet(met, what, is_met);
    }
}

fn meet_found(
    met: &mut Met,
    setting: &Setting<'_>,
    asked: &Asked<'_>,
    holds: &[&Unpicked<'_>],
    found: &[Completed],
) {
    let first = &found[0];
    let of_first = holds[0].counts(asked);
    let honoured = |pick: &Picked| pick.honoured && first.values[pick.attribute.0] == pick.value;
    let cheaper = |one: &&&Unpicked<'_>| one.judged.cents < holds[0].judged.cents;
    let same = |one: &&&Unpicked<'_>| one.counts(asked).changes == first.changes;
    let equal = holds
        .iter()
        .filter(|one| one.counts(asked).key(asked.aim) == of_first.key(asked.aim));
    let far = |one: &&&Unpicked<'_>| {
        let counts = one.counts(asked);
        let without = |counts: Counts| Counts { moves: 0, ..counts }.key(asked.aim);
        counts.moves > of_first.moves && without(counts) <= without(of_first)
    };
    for (what, is_met) in [
        ("found", true),
        ("found without a book", setting.book.is_none()),
        ("a pick changed", first.changes > 0),
        ("two picks changed", first.changes > 1),
        ("a pick is honoured", asked.selection.picks.iter().any(honoured)),
        ("a subtotal below zero", first.cents < Some(0)),
        ("departs", first.departures > 0),
        ("departs twice", first.departures > 1),
        ("three or more", found.len() > 2),
        ("equally good units", equal.count() > 1),
        (
            "dearer, since fewer picks change",
            holds.iter().filter(cheaper).any(|one| !same(&one)),
        ),
        (
            "dearer, since it is standard",
            asked.aim == Aim::Standard && holds.iter().filter(same).any(|one| cheaper(&one)),
        ),
        (
            "stays near",
            asked.near.is_some() && holds.iter().any(|one| far(&one)),
        ),
        (
            "what is filled holds",
            judge(setting, &fill(setting, &asked.selection.as_picks(setting))).verdict == Verdict::Holds,
        ),
        (
            "something stays open",
            first.unit.choices.values().any(|one| *one == Choice::Open),
        ),
    ] {
        meet(met, what, is_met);
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
        let quoted = BTreeMap::new();
        let ask = |setting| {
            engine.complete(
                &prepared,
                &Wish {
                    setting,
                    picks: &[],
                    quoted: &quoted,
                    aim: Aim::Cheapest,
                    near: None,
                    count: 1,
                },
            )
        };
        if matches!(ask(&setting), Ok(Completion::Found(_))) {
            let answer = ask(&later);
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
