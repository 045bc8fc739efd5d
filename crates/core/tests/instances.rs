//! Instances with known answers: exact counts and optima, whatever the seed and the order of declaration.
//!
//! Source of each instance and of its answers: `instances/README.md`. The count of `vehicle-medium` is published with the
//! data set (BR4CP benchmark collection, IRIT, Toulouse); the optima of unit, hard and vehicle-medium were proven by CP-SAT 9.15.

#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_core::compile;
use astragal_core::count::count;
use astragal_core::limit::{Limit, Limits};
use astragal_core::pass::{Scratch, options};
use astragal_core::weights::Cost;

use crate::json_network::Instance;

mod json_network;

fn read(name: &str, reversed: bool) -> Instance {
    let path = format!("{}/tests/instances/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let json = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let mut instance = Instance::new(json);
    if reversed {
        instance.network.relations.reverse();
    }
    instance
}

/// Compiles and answers: nodes, count, least total, options that can never be chosen.
fn answers(name: &str, seed: u64, reversed: bool) -> (usize, String, i64, usize) {
    let mut instance = read(name, reversed);
    let diagram = compile(&mut instance.network, seed, &Limits::default()).unwrap();
    let weights = instance.weights(&diagram);
    let mut best = Vec::new();
    let least = options(&diagram, &weights, &mut Scratch::default(), &mut best);
    let dead = best.iter().filter(|weight| !weight.is_feasible()).count();
    (
        diagram.node_count(),
        count(&diagram, &weights).to_string(),
        least.cents(),
        dead,
    )
}

#[test]
fn counts_and_optima_are_the_known_ones_for_every_seed_and_order() {
    for (name, count, cheapest, seeds) in [
        ("vehicle-medium", "278744", 683_550, 0..4),
        ("unit", "16641964390586580", 5_416, 0..2),
        (
            "wide",
            "2664410890857484133726267797103412177107578225",
            154_700,
            0..2,
        ),
        ("hard", "17165524", 79_875, 1..2),
    ] {
        for seed in seeds {
            let (nodes, counted, least, _) = answers(name, seed, false);
            println!("{name}, seed {seed}: {nodes} nodes");
            assert_eq!(
                (counted.as_str(), least),
                (count, cheapest),
                "{name}, seed {seed}"
            );
        }
    }
    let (_, counted, least, dead) = answers("unit", 0, true);
    assert_eq!(
        (counted.as_str(), least, dead),
        ("16641964390586580", 5_416, 3),
        "relations reversed"
    );
}

#[test]
fn the_same_network_and_seed_give_the_same_diagram() {
    let compiled = || {
        let mut instance = read("vehicle-medium", false);
        compile(&mut instance.network, 7, &Limits::default()).unwrap()
    };
    assert_eq!(compiled(), compiled());
}

#[test]
fn a_compile_that_passes_a_limit_says_what_ties_the_knot() {
    let mut instance = read("unit", false);
    let limits = Limits {
        nodes: 1_000,
        ..Limits::default()
    };
    let limit = compile(&mut instance.network, 0, &limits).unwrap_err();
    assert!(
        matches!(&limit, Limit::Nodes { variables, limit: 1_000 } if variables.len() == 3),
        "{limit}"
    );
}
