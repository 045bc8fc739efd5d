//! Instances with known answers: exact counts and optima, whatever the seed and the order of declaration.
//!
//! Source of each instance and of its answers: `instances/README.md`. The count of `vehicle-medium` is published with the
//! data set (BR4CP benchmark collection, IRIT, Toulouse); the optima of unit, hard and vehicle-medium were proven by CP-SAT 9.15.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    reason = "these are tests"
)]

use astragal_core::compile;
use astragal_core::count::count;
use astragal_core::diagram::Diagram;
use astragal_core::label::{CellId, Label};
use astragal_core::limit::{Limit, Limits};
use astragal_core::network::{Network, Variable};
use astragal_core::pass::{Scratch, options};
use astragal_core::rows::{Row, Rows};
use astragal_core::weights::{Cost, Weight, Weights};
use serde_json::Value;

/// An instance as a network, with the price of each cell.
struct Instance {
    network: Network,
    cells: Vec<i64>,
    json: Value,
}

fn read(name: &str, reversed: bool) -> Instance {
    let path = format!("{}/tests/instances/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let json: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let mut instance = Instance {
        network: Network::default(),
        cells: Vec::new(),
        json: json.clone(),
    };
    for attribute in list(&json, "attributes") {
        let size = attribute["options"].as_u64().unwrap() as usize;
        instance
            .network
            .variable(attribute["name"].as_str().unwrap(), size);
    }
    for (number, table) in list(&json, "tables").iter().enumerate() {
        let row = |row: &Value| Row {
            cells: numbers(row).into_iter().map(|value| Some(vec![value])).collect(),
            label: Some(Label::empty()),
        };
        let rows = list(table, "allowed").iter().map(row).collect();
        let scope = scope(&json, table);
        instance.relate(&format!("table {number}"), scope, rows);
    }
    for (number, clause) in list(&json, "clauses").iter().enumerate() {
        let members = clause.as_array().unwrap();
        let mut scope: Vec<Variable> = members
            .iter()
            .map(|one| named(&json, &one["attribute"]))
            .collect();
        scope.sort_unstable();
        scope.dedup();
        let row = |member: &Value| Row {
            cells: scope
                .iter()
                .map(|one| (*one == named(&json, &member["attribute"])).then(|| numbers(&member["options"])))
                .collect(),
            label: Some(Label::empty()),
        };
        let rows = members.iter().map(row).collect();
        instance.relate(&format!("clause {number}"), scope, rows);
    }
    for (number, pair) in list(&json, "pair_prices").iter().enumerate() {
        let mut rows = Vec::new();
        for (first, prices) in list(pair, "price").iter().enumerate() {
            for (second, price) in prices.as_array().unwrap().iter().enumerate() {
                let label = instance.label(price.as_i64().unwrap());
                rows.push(Row {
                    cells: vec![Some(vec![first]), Some(vec![second])],
                    label: Some(label),
                });
            }
        }
        let scope = scope(&json, pair);
        instance.relate(&format!("pair prices {number}"), scope, rows);
    }
    if reversed {
        instance.network.relations.reverse();
    }
    instance
}

impl Instance {
    fn label(&mut self, price: i64) -> Label {
        let place = self.cells.iter().position(|cell| *cell == price);
        let place = place.unwrap_or_else(|| {
            self.cells.push(price);
            self.cells.len() - 1
        });
        Label::new(Vec::new(), vec![CellId(place as u32)])
    }

    fn relate(&mut self, name: &str, scope: Vec<Variable>, rows: Vec<Row>) {
        let sizes = scope
            .iter()
            .map(|one| self.network.domains[one.index()].size)
            .collect();
        let limit = Limits::default().relation_states;
        let relation = Rows::new(name, scope, sizes, rows, None, limit);
        self.network.relations.push(Box::new(relation));
    }

    fn weights(&self, diagram: &Diagram) -> Weights {
        let prices = list(&self.json, "option_prices")
            .iter()
            .flat_map(|row| row.as_array().unwrap());
        let cost = |label: &Label| label.cells().iter().map(|cell| self.cells[cell.0 as usize]).sum();
        Weights {
            options: prices
                .map(|price| Weight::new(0, price.as_i64().unwrap()))
                .collect(),
            labels: diagram
                .labels()
                .iter()
                .map(|label| Weight::new(0, cost(label)))
                .collect(),
        }
    }
}

fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    value[key].as_array().unwrap()
}

fn numbers(value: &Value) -> Vec<usize> {
    let numbers = value.as_array().unwrap().iter();
    numbers.map(|number| number.as_u64().unwrap() as usize).collect()
}

fn named(json: &Value, name: &Value) -> Variable {
    let place = list(json, "attributes")
        .iter()
        .position(|one| one["name"] == *name);
    Variable(place.unwrap() as u32)
}

fn scope(json: &Value, table: &Value) -> Vec<Variable> {
    list(table, "scope")
        .iter()
        .map(|name| named(json, name))
        .collect()
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
