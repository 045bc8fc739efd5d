//! Random catalogs against judging every configuration: a hundred thousand in a few lines each, and small wild ones.
//!
//! The first kind has what tells a diagram from a list: options that do not go together, conditions on sizes in both senses,
//! attributes that are not always asked, amounts below zero. The second kind has every expression, table and figure.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_core::options::Picked;
use astragal_model::{Origin, Setting};
use astragal_oracle::chance::Chance;
use astragal_oracle::generate::{Size, World};

use crate::compared::{Compared, Met};
use crate::judged::judged;
use crate::plain::random::{picks, plain, sizes};
use crate::plain::{Plain, site};

mod compared;
mod judged;
mod plain;

const CATALOGS: u64 = 100_000;
const WORLDS: u64 = 30_000;
/// How many configurations a catalog may have; a star has more.
const CONFIGURATIONS: usize = 36;

#[test]
fn a_hundred_thousand_catalogs_are_answered_as_judging_says() {
    let halves = [0..CATALOGS / 2, CATALOGS / 2..CATALOGS];
    let met = std::thread::scope(|scope| {
        let halves = halves.map(|seeds| {
            scope.spawn(|| {
                let mut met = Met::default();
                seeds.for_each(|seed| compare_plain(seed, &mut met));
                met
            })
        });
        let mut met = Met::default();
        for half in halves {
            for (what, count) in half.join().unwrap().0 {
                met.add(what, count);
            }
        }
        met
    });
    met.at_least(&[
        ("catalogs", CATALOGS),
        ("settings", CATALOGS),
        ("unsatisfiable", 2_000),
        ("unique", 2_000),
        ("both senses of a condition", 10_000),
        ("a total below zero", 10_000),
        ("two changes or more", 10_000),
        ("cheapest ties", 10_000),
        ("asked by a condition on sizes", 10_000),
        ("something unknown", 10_000),
        ("six around one", 4_000),
    ]);
}

fn compare_plain(seed: u64, met: &mut Met) {
    let mut chance = Chance::new(seed);
    let plain = plain(&mut chance, CONFIGURATIONS);
    let made = plain.made();
    let site = site(&sizes(&mut chance));
    let setting = made.setting(&site);
    let picks = [picks(&mut chance, &plain), picks(&mut chance, &plain)];
    met.meet("catalogs");
    census(&plain, met);
    compare(&setting, seed, &picks, met);
}

/// Counts what a catalog has.
fn census(plain: &Plain, met: &mut Met) {
    let togethers = plain
        .forbidden
        .iter()
        .chain(plain.priced.iter().map(|(one, _)| one));
    let gates: Vec<_> = togethers.filter_map(|one| one.gate).collect();
    let has_opposite = gates.iter().any(|gate| {
        let mut opposite = *gate;
        opposite.holds = !gate.holds;
        gates.contains(&opposite)
    });
    if has_opposite {
        met.meet("both senses of a condition");
    }
    let conditions = plain.attributes.iter().filter_map(|one| one.applies.as_ref());
    if conditions.filter_map(|one| one.gate).count() > 0 {
        met.meet("asked by a condition on sizes");
    }
    if plain.attributes.len() == 7 {
        met.meet("six around one");
    }
}

fn compare(setting: &Setting<'_>, seed: u64, picks: &[Vec<Picked>], met: &mut Met) {
    let Some(all) = judged(setting, &|_, _| Origin::Standard) else {
        return;
    };
    let place = format!("seed {seed}");
    let policy = setting.policy.map(|policy| &policy.terms);
    let limits = Limits::default();
    let engine = Engine::new(setting.catalog, policy, setting.authorities, seed, &limits).unwrap();
    let Ok(prepared) = engine.prepare(setting) else {
        met.meet("too much money");
        return;
    };
    let compared = Compared::new(&engine, &prepared, &all, &place, met);
    for picks in picks {
        compared.picks(picks, &place, met);
    }
}

#[test]
fn small_wild_catalogs_are_answered_as_judging_says() {
    let mut met = Met::default();
    for seed in 0..WORLDS {
        let size = Size::LADDER[(seed % 3) as usize];
        // Seeds of their own: the larger test of wild catalogs begins at 0.
        let seed = seed + (1 << 32);
        let Some(world) = World::new(seed, size) else {
            continue;
        };
        met.meet("catalogs");
        let case = world.case(0);
        let setting = world.setting(&case);
        let picks = wild_picks(&mut Chance::new(seed), &setting);
        compare(&setting, seed, &[picks], &mut met);
    }
    met.at_least(&[
        ("catalogs", WORLDS),
        ("settings", 25_000),
        ("unsatisfiable", 2_000),
        ("unique", 1_000),
        ("something unknown", 1_000),
        ("two changes or more", 100),
        ("a total below zero", 100),
        ("cheapest ties", 100),
        ("too much money", 10),
    ]);
}

fn wild_picks(chance: &mut Chance, setting: &Setting<'_>) -> Vec<Picked> {
    let mut picks = Vec::new();
    for (attribute, entry) in setting.catalog.declarations().attributes.iter() {
        if !entry.options.is_empty() && chance.percent(70) {
            picks.push(Picked {
                attribute,
                value: chance.below(entry.options.len()),
                pinned: chance.percent(10),
                honoured: false,
            });
        }
    }
    picks
}
