//! What options of small random catalogs wait for, against what judging one configuration after the other wants.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    reason = "these are tests"
)]

use std::collections::BTreeSet;

use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_core::options::Picked;
use astragal_core::waits::Wait;
use astragal_model::{
    AttributeIndex, Origin, RuleState, Setting, Standing, Total, Verdict, Want, Wants, judge,
};
use astragal_oracle::generate::{Size, World};

use crate::judged::{judged, unit};

mod judged;

/// What was met while comparing.
#[derive(Default, Debug)]
struct Met {
    options: u64,
    /// Units whose price is known.
    priced: u64,
    waiting: u64,
    of_one: BTreeSet<String>,
    differs_from_the_best: u64,
    certain_beside_waiting: u64,
    waiting_at_a_price: u64,
}

#[test]
fn an_option_waits_for_what_a_best_unit_with_it_wants() {
    let mut met = Met::default();
    for seed in 0..2_000 {
        let Some(world) = World::new(seed, Size::USUAL) else {
            continue;
        };
        for number in 0..3 {
            let case = world.case(number);
            let setting = world.setting(&case);
            let place = format!("seed {seed}, case {number}");
            one_setting(&setting, seed, &place, &mut met);
        }
    }
    println!("{met:?}");
    assert!(met.options > 5_000 && met.waiting > 1_500, "{met:?}");
    assert!(met.of_one.len() > 10 && met.differs_from_the_best > 80, "{met:?}");
    assert!(met.certain_beside_waiting > 12 && met.priced > 1_000, "{met:?}");
    assert!(met.waiting_at_a_price > 100, "{met:?}");
}

/// A configuration that is not ruled out.
struct Possible {
    values: Vec<usize>,
    /// The subtotal; an unknown one is `None`, which is less than any other.
    cents: Option<i64>,
    wants: Wants,
}

fn one_setting(setting: &Setting<'_>, seed: u64, place: &str, met: &mut Met) {
    let policy = setting.policy.map(|policy| &policy.terms);
    let engine = Engine::new(
        setting.catalog,
        policy,
        setting.authorities,
        seed,
        &Limits::default(),
    )
    .unwrap();
    let (Some(all), Ok(prepared)) = (judged(setting, &|_, _| Origin::Standard), engine.prepare(setting))
    else {
        return;
    };
    let possible = all.into_iter().filter(|one| one.verdict != Verdict::Broken);
    let possible: Vec<Possible> = possible
        .map(|one| Possible {
            wants: wants(setting, &one.values),
            cents: if setting.book.is_some() {
                one.cents
            } else {
                Some(0)
            },
            values: one.values,
        })
        .collect();
    let attributes = setting.catalog.declarations().attributes.iter();
    let picked = attributes.filter(|(index, _)| (seed as usize + index.0).is_multiple_of(3));
    let picks: Vec<Picked> = picked
        .map(|(attribute, entry)| Picked {
            attribute,
            value: seed as usize % entry.options.len(),
            pinned: false,
            honoured: false,
        })
        .collect();
    let waits = engine.waits(&prepared, &picks);
    for (at, answers) in engine.options(&prepared, &picks).iter().enumerate() {
        let some_are_certain = answers.iter().any(|answer| answer.certain.is_some());
        for (value, answer) in answers.iter().enumerate() {
            let place = format!("{place}: {at} {value}");
            let wait = waits.options[at][value].as_ref();
            let with: Vec<&Possible> = possible.iter().filter(|one| one.values[at] == value).collect();
            check(wait, &with, &picks, at, &place);
            let Some(wait) = wait else { continue };
            met.options += 1;
            met.priced += u64::from(wait.least.is_some());
            if wait.wants.is_empty() {
                assert!(
                    answer.certain.is_some() && answer.certain == wait.least,
                    "{place}"
                );
                continue;
            }
            met.waiting += 1;
            met.differs_from_the_best +=
                u64::from(waits.best.as_ref().is_some_and(|best| best.wants != wait.wants));
            met.certain_beside_waiting += u64::from(some_are_certain);
            met.waiting_at_a_price += u64::from(setting.book.is_some() && wait.least.is_some());
            if wait.wants.len() == 1 {
                met.of_one.insert(format!("{:?}", wait.wants));
            }
        }
    }
}

/// What an option waits for is what one of the best units with it wants.
fn check(wait: Option<&Wait>, with: &[&Possible], picks: &[Picked], at: usize, place: &str) {
    let changes = |one: &Possible| {
        let others = picks.iter().filter(|pick| pick.attribute != AttributeIndex(at));
        others
            .filter(|pick| one.values[pick.attribute.0] != pick.value)
            .count()
    };
    let key = |one: &Possible| (changes(one), one.cents);
    let (Some(least), Some(wait)) = (with.iter().map(|one| key(one)).min(), wait) else {
        assert!(
            with.is_empty() && wait.is_none(),
            "{place} is ruled out, or is not"
        );
        return;
    };
    let said = wait.least.map(|least| (least.changes, Some(least.cents)));
    let expected = least
        .1
        .map(|cents| (i64::try_from(least.0).unwrap(), Some(cents)));
    assert_eq!(said, expected, "{place}");
    // Files cannot say `ask` of an attribute of the plant; the engine names that choice where the judge stops before it.
    let is_choice = |want: &&Want| matches!(want, Want::Choice(_));
    let without_choices: Wants = wait
        .wants
        .iter()
        .filter(|want| !is_choice(want))
        .cloned()
        .collect();
    let is_said = |one: &&Possible| one.wants == wait.wants || one.wants == without_choices;
    let mut best = with.iter().copied().filter(|one| key(one) == least);
    assert!(
        best.any(|one| is_said(&one)),
        "{place} waits for {:?}",
        wait.wants
    );
}

/// What the rules that bind and the total of a configuration want.
fn wants(setting: &Setting<'_>, values: &[usize]) -> Wants {
    let judgement = judge(setting, &unit(setting.catalog, values, &|_, _| Origin::Standard));
    let binding = judgement
        .rules
        .iter()
        .filter(|rule| rule.standing == Standing::Binds);
    let of_rules = binding.filter_map(|rule| match &rule.state {
        RuleState::Undecided(wants) => Some(wants.clone()),
        _ => None,
    });
    let of_total = match &judgement.total {
        Total::Unknown(wants) => Some(wants.clone()),
        _ => None,
    };
    of_rules.chain(of_total).flatten().collect()
}
