//! Laws that need no second opinion: another order, one more rule, the same thing twice.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::hash::{DefaultHasher, Hash, Hasher};
use std::process::Command;

use astragal_core::engine::{Certainty, Engine};
use astragal_core::limit::Limits;
use astragal_core::options::{Least, OptionAnswer, Picked};
use astragal_core::prepare::Prepared;
use astragal_model::{Authorities, Catalog, Setting, Site};
use astragal_oracle::chance::Chance;
use astragal_oracle::generate::{Size, World};
use num_bigint::BigUint;

use crate::plain::random::{one_more, picks, plain, shuffled, sizes};
use crate::plain::{Made, site};

mod plain;

const CATALOGS: u64 = 5_000;
const CONFIGURATIONS: usize = 200;
const BOTH: [Certainty; 2] = [Certainty::NotRuledOut, Certainty::Certain];

/// An engine that is prepared.
struct Ready {
    engine: Engine,
    prepared: Prepared,
}

impl Ready {
    fn new(made: &Made, site: &Site, seed: u64) -> Self {
        let limits = Limits::default();
        let engine = Engine::new(&made.catalog, None, &Authorities::default(), seed, &limits).unwrap();
        let prepared = engine.prepare(&made.setting(site)).unwrap();
        Self { engine, prepared }
    }

    fn counts(&self) -> [BigUint; 2] {
        BOTH.map(|certainty| self.engine.count(&self.prepared, certainty))
    }

    fn cheapest(&self) -> [Option<i64>; 2] {
        BOTH.map(|certainty| self.engine.cheapest(&self.prepared, certainty))
    }

    fn selection(&self, picks: &[Picked]) -> OptionAnswer {
        self.engine.selection(&self.prepared, picks)
    }

    fn options(&self, picks: &[Picked]) -> Vec<Vec<OptionAnswer>> {
        self.engine.options(&self.prepared, picks)
    }
}

#[test]
fn the_order_of_attributes_options_rules_and_items_changes_no_answer() {
    for seed in 0..CATALOGS {
        let mut chance = Chance::new(seed);
        let plain = plain(&mut chance, CONFIGURATIONS);
        let (other, places) = shuffled(&mut chance, &plain);
        let site = site(&sizes(&mut chance));
        let picks = picks(&mut chance, &plain);
        let one = Ready::new(&plain.made(), &site, 0);
        let two = Ready::new(&other.made(), &site, 0);
        assert_eq!(one.counts(), two.counts(), "seed {seed}");
        assert_eq!(one.cheapest(), two.cheapest(), "seed {seed}");
        let moved = places.picks(&picks);
        assert_eq!(one.selection(&picks), two.selection(&moved), "seed {seed}");
        let others = two.options(&moved);
        for (attribute, answers) in one.options(&picks).iter().enumerate() {
            for (option, answer) in answers.iter().enumerate() {
                let (there, at) = places.option(attribute, option);
                assert_eq!(*answer, others[there][at], "seed {seed}: {attribute}, {option}");
            }
        }
    }
}

#[test]
fn the_seed_of_the_order_changes_no_answer() {
    let mut different = 0;
    for seed in 0..CATALOGS {
        let mut chance = Chance::new(seed);
        let plain = plain(&mut chance, CONFIGURATIONS);
        let site = site(&sizes(&mut chance));
        let picks = picks(&mut chance, &plain);
        let made = plain.made();
        let one = Ready::new(&made, &site, 0);
        let two = Ready::new(&made, &site, 1);
        assert_eq!(one.counts(), two.counts(), "seed {seed}");
        assert_eq!(one.cheapest(), two.cheapest(), "seed {seed}");
        assert_eq!(one.options(&picks), two.options(&picks), "seed {seed}");
        different += usize::from(one.engine.diagram() != two.engine.diagram());
    }
    assert!(different > 1_000, "{different} catalogs had another diagram");
}

#[test]
fn the_order_of_the_rules_of_wild_catalogs_changes_no_answer() {
    let mut compared = 0;
    for seed in 0..1_500 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let reversed = world.reversed().unwrap();
        let case = world.case(0);
        let (one, two) = (world.setting(&case), reversed.setting(&case));
        let answers = |setting: &Setting<'_>| {
            let engine = wild(setting, 0);
            let prepared = engine.prepare(setting).ok()?;
            let counts = BOTH.map(|certainty| engine.count(&prepared, certainty));
            Some((counts, engine.options(&prepared, &[])))
        };
        let (one, two) = (answers(&one), answers(&two));
        assert_eq!(one, two, "seed {seed}");
        compared += usize::from(one.is_some());
    }
    assert!(compared > 1_000, "{compared} were compared");
}

#[test]
fn one_more_rule_never_gives_more_nor_anything_better() {
    let mut fewer = 0;
    for seed in 0..CATALOGS {
        let mut chance = Chance::new(seed);
        let plain = plain(&mut chance, CONFIGURATIONS);
        let mut narrower = plain.clone();
        narrower.forbidden.push(one_more(&mut chance, &plain));
        let site = site(&sizes(&mut chance));
        let picks = picks(&mut chance, &plain);
        let one = Ready::new(&plain.made(), &site, 0);
        let two = Ready::new(&narrower.made(), &site, 0);
        let (before, after) = (one.counts(), two.counts());
        assert!(before[0] >= after[0] && before[1] >= after[1], "seed {seed}");
        fewer += usize::from(before != after);
        let (before, after) = (one.options(&picks), two.options(&picks));
        for (before, after) in before.iter().flatten().zip(after.iter().flatten()) {
            let worst = Least {
                changes: i64::MAX,
                cents: i64::MAX,
            };
            let (after_least, before_least) =
                (after.certain.unwrap_or(worst), before.certain.unwrap_or(worst));
            assert!(after_least >= before_least, "seed {seed}");
            let changes = |possible: Option<i64>| possible.unwrap_or(i64::MAX);
            assert!(changes(after.possible) >= changes(before.possible), "seed {seed}");
        }
    }
    assert!(fewer > 1_000, "{fewer} catalogs had fewer configurations");
}

fn wild(setting: &Setting<'_>, seed: u64) -> Engine {
    let policy = setting.policy.map(|policy| &policy.terms);
    Engine::new(
        setting.catalog,
        policy,
        setting.authorities,
        seed,
        &Limits::default(),
    )
    .unwrap()
}

#[test]
fn the_same_catalog_gives_the_same_diagram_twice() {
    for seed in 0..1_000 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let again = World::new(seed, Size::USUAL).unwrap();
        let (case, same) = (world.case(0), again.case(0));
        let (one, two) = (
            wild(&world.setting(&case), seed),
            wild(&again.setting(&same), seed),
        );
        assert_eq!(one.diagram(), two.diagram(), "seed {seed}");
        let counts = |engine: &Engine| (engine.gate_count(), engine.cell_count());
        assert_eq!(counts(&one), counts(&two), "seed {seed}");
    }
}

/// A hash of the diagrams of many catalogs.
fn diagrams() -> u64 {
    let mut hasher = DefaultHasher::new();
    for seed in 0..300 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let case = world.case(0);
        format!("{:?}", wild(&world.setting(&case), seed).diagram()).hash(&mut hasher);
    }
    for seed in 0..300 {
        let made = plain(&mut Chance::new(seed), CONFIGURATIONS).made();
        format!("{:?}", compiled(&made.catalog).diagram()).hash(&mut hasher);
    }
    hasher.finish()
}

fn compiled(catalog: &Catalog) -> Engine {
    Engine::new(catalog, None, &Authorities::default(), 0, &Limits::default()).unwrap()
}

/// Runs itself in two processes of their own, where every address and every seed of the standard library's maps is another.
#[test]
fn two_processes_make_the_same_diagrams() {
    const ALONE: &str = "ASTRAGAL_TEST_DIAGRAMS";
    let mark = "diagrams come to ";
    if std::env::var_os(ALONE).is_some() {
        println!("{mark}{}", diagrams());
        return;
    }
    let run = || {
        let mut command = Command::new(std::env::current_exe().unwrap());
        command.args(["--exact", "two_processes_make_the_same_diagrams", "--nocapture"]);
        let output = command.env(ALONE, "1").output().unwrap();
        let text = String::from_utf8(output.stdout).unwrap();
        let (_, rest) = text.split_once(mark).unwrap();
        rest.lines().next().unwrap().to_owned()
    };
    let here = diagrams().to_string();
    assert_eq!((run(), run()), (here.clone(), here));
}
