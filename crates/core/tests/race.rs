//! The race of the seeds: the same winner in every order, no seed that stops the others, caps that double, limits that end it.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use astragal_core::compile;
use astragal_core::count::count;
use astragal_core::engine::Engine;
use astragal_core::ground::ground;
use astragal_core::label::Label;
use astragal_core::limit::{Limit, Limits};
use astragal_core::network::Network;
use astragal_core::race::{Caps, FIRST_CAPS, Race, SEEDS, Taken, race, race_from};
use astragal_core::rows::{Row, Rows};
use astragal_model::{Authorities, Catalog};
use astragal_oracle::chance::Chance;
use astragal_oracle::generate::{Size, World};
use serde_json::Value;

use crate::json_network::Instance;
use crate::plain::random::{plain, shuffled};

mod json_network;
mod plain;

const ALL: [u64; 8] = [0, 1, 2, 3, 4, 5, 6, 7];

fn json(name: &str) -> Value {
    let path = format!("{}/tests/instances/{name}.json", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn network(name: &str) -> Network {
    Instance::new(json(name)).network
}

/// Caps of so many of each.
fn caps(most: usize) -> Caps {
    Caps {
        relation_states: most,
        states: most,
        nodes: most,
    }
}

/// What must not depend on any order: the winner, the rounds, and for every seed what it took. A seed that was stopped is stopped
/// in every order, but not at the same attribute.
fn steady(race: &Race) -> (u64, usize, Caps, Vec<(u64, Option<Taken>)>) {
    let runs = race.runs.iter();
    let runs = runs.map(|run| (run.seed, run.outcome.as_ref().ok().copied()));
    (race.seed, race.rounds, race.caps, runs.collect())
}

fn raced(catalog: &Catalog, seeds: &[u64], first: Caps) -> Race {
    let mut ground = ground(catalog, None, &Authorities::default());
    let raced = race_from(&mut ground.network, seeds, first, &Limits::default());
    raced.unwrap().0
}

#[test]
fn the_seeds_are_those_that_are_told() {
    assert_eq!(SEEDS.collect::<Vec<u64>>(), ALL);
}

#[test]
fn the_order_of_attributes_options_rules_and_seeds_changes_no_race() {
    let (mut winners, mut later, mut stopped) = ([0; 8], 0, 0);
    for seed in 0..2_000 {
        let mut chance = Chance::new(seed);
        let plain = plain(&mut chance, 200);
        let (other, _) = shuffled(&mut chance, &plain);
        let mut seeds = [ALL.to_vec(), ALL[2..4].to_vec()].concat();
        chance.shuffle(&mut seeds);
        let first = caps(chance.between(1, 12));
        let one = raced(&plain.made().catalog, &ALL, first);
        let two = raced(&other.made().catalog, &seeds, first);
        assert_eq!(steady(&one), steady(&two), "seed {seed}");
        winners[usize::try_from(one.seed).unwrap()] += 1;
        later += usize::from(one.rounds > 1);
        stopped += usize::from(one.runs.iter().any(|run| run.outcome.is_err()));
    }
    println!("winners {winners:?}, {later} in a later round, {stopped} with a seed that was stopped");
    let winning = winners.iter().filter(|wins| **wins > 20).count();
    assert!(winning > 4, "{winners:?}");
    assert!(later > 500 && stopped > 200, "{later}, {stopped}");
}

#[test]
fn the_order_of_the_rules_of_wild_catalogs_changes_no_race() {
    let mut later = 0;
    for seed in 0..300 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let reversed = world.reversed().unwrap();
        let first = caps(1 + usize::try_from(seed).unwrap() % 20);
        let (one, two) = (
            raced(&world.catalog, &ALL, first),
            raced(&reversed.catalog, &ALL, first),
        );
        assert_eq!(steady(&one), steady(&two), "seed {seed}");
        later += usize::from(one.rounds > 1);
    }
    assert!(later > 100, "{later} in a later round");
}

/// An instance whose attributes, tables and clauses stand in another order.
fn moved(mut json: Value, chance: &mut Chance) -> Value {
    let attributes = json["attributes"].as_array().unwrap().iter();
    let prices = json["option_prices"].as_array().unwrap().iter();
    let mut both: Vec<(Value, Value)> = attributes.cloned().zip(prices.cloned()).collect();
    chance.shuffle(&mut both);
    let (attributes, prices): (Vec<Value>, Vec<Value>) = both.into_iter().unzip();
    json["attributes"] = attributes.into();
    json["option_prices"] = prices.into();
    for kind in ["tables", "clauses", "pair_prices"] {
        if let Some(list) = json[kind].as_array_mut() {
            chance.shuffle(list);
        }
    }
    json
}

#[test]
fn an_instance_in_another_order_has_the_same_winner() {
    for (name, first) in [("vehicle-medium", 500), ("unit", 4_000)] {
        let mut chance = Chance::new(11);
        let raced = |json: Value, seeds: &[u64]| {
            let mut network = Instance::new(json).network;
            race_from(&mut network, seeds, caps(first), &Limits::default())
                .unwrap()
                .0
        };
        let as_written = raced(json(name), &ALL);
        let mut seeds = ALL;
        chance.shuffle(&mut seeds);
        let other = raced(moved(json(name), &mut chance), &seeds);
        assert_eq!(steady(&as_written), steady(&other), "{name}");
        assert!(as_written.rounds > 1, "{name}");
    }
}

/// Every seed done in one round: each took what it takes alone, counts the same, and the least of them won.
#[test]
fn the_winner_has_the_fewest_edges_then_nodes_of_those_that_are_done() {
    let mut network = network("vehicle-medium");
    let (race, diagram) = race(&mut network, &ALL, &Limits::default()).unwrap();
    let instance = Instance::new(json("vehicle-medium"));
    let mut places = Vec::new();
    for run in &race.runs {
        let taken = run.outcome.as_ref().unwrap();
        let alone = compile(&mut self::network("vehicle-medium"), run.seed, &Limits::default()).unwrap();
        assert_eq!(
            (taken.edges, taken.nodes),
            (alone.edge_count(), alone.node_count())
        );
        assert_eq!(count(&alone, &instance.weights(&alone)).to_string(), "278744");
        assert_eq!(run.seed == race.seed, alone == diagram, "seed {}", run.seed);
        assert!(taken.states >= taken.nodes, "seed {}", run.seed);
        places.push((taken.edges, taken.nodes, run.seed));
    }
    assert_eq!(places.iter().min().map(|place| place.2), Some(race.seed));
    assert!(places.iter().any(|place| place.0 > places[0].0));
}

/// With seed 7 `unit` makes six times the nodes that it makes with seed 6.
#[test]
fn a_bad_seed_is_left_behind() {
    let limits = Limits {
        nodes: 20_000,
        ..Limits::default()
    };
    let alone = compile(&mut network("unit"), 7, &limits).unwrap_err();
    assert!(matches!(alone, Limit::Nodes { .. }), "{alone}");
    let (race, diagram) = race(&mut network("unit"), &[7, 6], &limits).unwrap();
    assert_eq!(race.seed, 6);
    assert!(race.runs[1].outcome.is_err(), "{:?}", race.runs);
    let weights = Instance::new(json("unit")).weights(&diagram);
    assert_eq!(count(&diagram, &weights).to_string(), "16641964390586580");
}

#[test]
fn a_cap_one_below_what_the_winner_needs_doubles_once_more() {
    let (all, _) = race(&mut network("vehicle-medium"), &ALL, &Limits::default()).unwrap();
    let needs = all.runs.iter().filter_map(|run| run.outcome.as_ref().ok());
    let least = needs.map(|taken| taken.states).min().unwrap();
    let rounds = |states: usize| {
        let first = Caps { states, ..FIRST_CAPS };
        let mut network = network("vehicle-medium");
        let (race, _) = race_from(&mut network, &ALL, first, &Limits::default()).unwrap();
        assert_eq!(race.caps.states, states << (race.rounds - 1));
        race.rounds
    };
    assert_eq!((rounds(least), rounds(least - 1)), (1, 2));
    assert_eq!((rounds(least.div_ceil(4)), rounds((least - 1) / 4)), (3, 4));
}

#[test]
fn each_of_the_three_caps_doubles() {
    let limits = Limits::default();
    let rounds = |first: Caps| {
        let (race, _) = race_from(&mut network("vehicle-medium"), &[3], first, &limits).unwrap();
        race.rounds
    };
    for (name, first) in [
        (
            "states of a relation",
            Caps {
                relation_states: 1,
                ..FIRST_CAPS
            },
        ),
        (
            "states",
            Caps {
                states: 1,
                ..FIRST_CAPS
            },
        ),
        (
            "nodes",
            Caps {
                nodes: 1,
                ..FIRST_CAPS
            },
        ),
        ("nothing at all", caps(0)),
    ] {
        assert!(rounds(first) > 2, "{name}");
    }
    assert_eq!(rounds(FIRST_CAPS), 1);
    assert_eq!(rounds(caps(usize::MAX)), 1, "caps beyond the limits");
}

#[test]
fn where_no_seed_is_done_the_error_is_that_of_the_smallest_compiled_alone() {
    let nodes = Limits {
        nodes: 300,
        ..Limits::default()
    };
    let states = Limits {
        states: 300,
        ..Limits::default()
    };
    let relation_states = Limits {
        relation_states: 3,
        ..Limits::default()
    };
    for (name, limits) in [
        ("nodes", nodes),
        ("states", states),
        ("states of a rule", relation_states),
    ] {
        let alone = compile(&mut network("vehicle-medium"), 2, &limits).unwrap_err();
        for first in [1, 299, 1_000] {
            let mut network = network("vehicle-medium");
            let together = race_from(&mut network, &[5, 2, 3], caps(first), &limits).unwrap_err();
            assert_eq!(together, alone, "{name}, from {first}");
            assert!(together.to_string().contains('`'), "{together}");
        }
    }
}

/// The table allows itself ten states, which no doubling changes.
#[test]
fn a_limit_of_a_rule_of_its_own_ends_the_race() {
    let mut network = Network::default();
    let scope: Vec<_> = ["a", "b", "c"].map(|name| network.variable(name, 9)).to_vec();
    let row = |value: usize| Row {
        cells: vec![Some(vec![value]); 3],
        label: Some(Label::empty()),
    };
    let rows = Rows::new("own", scope, vec![9; 3], (0..9).map(row).collect(), None, 10);
    network.relations.push(Box::new(rows));
    let limit = race_from(&mut network, &ALL, caps(1), &Limits::default()).unwrap_err();
    assert_eq!(limit.to_string(), "rule `own` has more than 10 states");
}

#[test]
fn without_seeds_the_first_runs_alone() {
    let (race, _) = race(&mut network("vehicle-medium"), &[], &Limits::default()).unwrap();
    assert_eq!((race.seed, race.runs.len()), (0, 1));
}

/// What a seed leaves behind in the rules that all share does not change what the next one takes.
#[test]
fn an_engine_with_the_stored_seed_is_the_winner_and_every_seed_took_what_it_takes_alone() {
    let mut others = 0;
    for seed in 0..300 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let case = world.case(0);
        let setting = world.setting(&case);
        let policy = setting.policy.map(|policy| &policy.terms);
        let limits = Limits::default();
        let race = Engine::race(setting.catalog, policy, setting.authorities, &ALL, &limits).unwrap();
        let mut counts = Vec::new();
        for run in &race.runs {
            let engine =
                Engine::new(setting.catalog, policy, setting.authorities, run.seed, &limits).unwrap();
            assert_eq!(engine.seed(), run.seed);
            let taken = run.outcome.as_ref().unwrap();
            let diagram = engine.diagram();
            let sizes = (diagram.edge_count(), diagram.node_count());
            assert_eq!((taken.edges, taken.nodes), sizes, "seed {seed}, {}", run.seed);
            counts.push(engine.configurations());
        }
        counts.dedup();
        assert_eq!(counts.len(), 1, "seed {seed}");
        others += usize::from(race.seed != 0);
    }
    assert!(others > 20, "{others} worlds are not won by the first seed");
}

#[test]
fn a_catalog_that_is_too_large_is_refused_before_the_race() {
    let made = plain::Plain::of(&[1; 513]).made();
    let limits = Limits::default();
    let limit = Engine::race(&made.catalog, None, &Authorities::default(), &ALL, &limits).unwrap_err();
    assert_eq!(limit, Limit::Attributes { count: 513 });
}
