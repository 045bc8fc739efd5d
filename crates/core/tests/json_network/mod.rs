//! An instance in JSON as a network: attributes, tables, clauses and prices. `instances/README.md` tells the format.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    reason = "these are tests"
)]

use astragal_core::diagram::Diagram;
use astragal_core::label::{CellId, Label};
use astragal_core::limit::Limits;
use astragal_core::network::{Network, Variable};
use astragal_core::rows::{Row, Rows};
use astragal_core::weights::{Weight, Weights};
use serde_json::Value;

/// An instance as a network, with the price of each cell.
pub(crate) struct Instance {
    pub(crate) network: Network,
    cells: Vec<i64>,
    json: Value,
}

impl Instance {
    /// Reads an instance. Panics when it is not one.
    pub(crate) fn new(json: Value) -> Self {
        let mut instance = Self {
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
                    .map(|one| {
                        (*one == named(&json, &member["attribute"])).then(|| numbers(&member["options"]))
                    })
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
        instance
    }

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

    /// The prices as weights, with nothing picked.
    pub(crate) fn weights(&self, diagram: &Diagram) -> Weights {
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
