//! Small networks and questions about them, answered tuple by tuple and by a diagram.
//!
//! A [`Net`] says the same as a network, in numbers that are read the obvious way: for every tuple each table is searched
//! from its first row. A gate `2k` stands for condition `k`, and `2k + 1` for its opposite.
//!
//! Always holds: [`Net::by_tuples`] shares nothing with the engine.

#![allow(dead_code, reason = "every test that includes this uses a part of it")]

pub(crate) mod random;

use astragal_core::count::count;
use astragal_core::diagram::Diagram;
use astragal_core::label::{CellId, GateId, Label};
use astragal_core::limit::Limits;
use astragal_core::network::{Network, Variable};
use astragal_core::pass::{Scratch, options};
use astragal_core::rows::{Row, Rows};
use astragal_core::weights::{Cost, Weight, Weights};

/// Variables by how many values they have, and tables over them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Net {
    pub(crate) names: Vec<String>,
    pub(crate) sizes: Vec<usize>,
    pub(crate) tables: Vec<Table>,
}

/// For each variable of a scope the values that match, or `None` where all do.
pub(crate) type Cells = Vec<Option<Vec<usize>>>;

/// What the first row that matches says; what is said when none does.
#[derive(Clone, Debug)]
pub(crate) struct Table {
    pub(crate) scope: Vec<usize>,
    pub(crate) rows: Vec<(Cells, Option<Tag>)>,
    pub(crate) otherwise: Option<Tag>,
}

/// Gates that must be open, and cells that are paid.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Tag {
    pub(crate) gates: Vec<u32>,
    pub(crate) cells: Vec<u32>,
}

/// What is known when a net is asked.
#[derive(Clone, Debug)]
pub(crate) struct Question {
    /// Whether each gate is open.
    pub(crate) open: Vec<bool>,
    /// What each cell costs.
    pub(crate) cells: Vec<i64>,
    /// Values that may not be chosen.
    pub(crate) hidden: Vec<(usize, usize)>,
    /// At most one a variable: the variable, the value, and whether it is pinned.
    pub(crate) picks: Vec<(usize, usize, bool)>,
}

/// Changes, then cents.
pub(crate) type Least = Option<(i64, i64)>;

/// What is answered.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Answer {
    /// How many tuples there are, changes not counted; picks that are pinned must be kept.
    pub(crate) count: u64,
    pub(crate) least: Least,
    /// For each variable and value.
    pub(crate) options: Vec<Vec<Least>>,
}

impl Table {
    /// What it says of a tuple of all variables.
    pub(crate) fn says(&self, tuple: &[usize]) -> Option<&Tag> {
        let matches = |cells: &[Option<Vec<usize>>]| {
            let mut pairs = cells.iter().zip(&self.scope);
            pairs.all(|(cell, variable)| cell.as_ref().is_none_or(|set| set.contains(&tuple[*variable])))
        };
        let row = self.rows.iter().find(|(cells, _)| matches(cells));
        row.map_or(self.otherwise.as_ref(), |(_, tag)| tag.as_ref())
    }
}

impl Question {
    /// What a tag costs; nothing when a gate is closed.
    pub(crate) fn cost(&self, tag: &Tag) -> Option<i64> {
        let is_open = tag.gates.iter().all(|gate| self.open[*gate as usize]);
        is_open.then(|| tag.cells.iter().map(|cell| self.cells[*cell as usize]).sum())
    }
}

impl Net {
    /// Every tuple.
    fn tuples(&self) -> impl Iterator<Item = Vec<usize>> {
        let count: usize = self.sizes.iter().product();
        (0..count).map(|mut number| {
            let digit = |size: &usize| {
                let digit = number % size;
                number /= size;
                digit
            };
            self.sizes.iter().map(digit).collect()
        })
    }

    /// The changes and cents of every tuple that can be had.
    pub(crate) fn weighed(&self, question: &Question) -> Vec<(Vec<usize>, (i64, i64))> {
        let weigh = |tuple: Vec<usize>| {
            let has = |(variable, value): &(usize, usize)| tuple[*variable] == *value;
            if question.hidden.iter().any(has) {
                return None;
            }
            let mut changes = 0;
            for (variable, value, pinned) in &question.picks {
                if tuple[*variable] != *value {
                    if *pinned {
                        return None;
                    }
                    changes += 1;
                }
            }
            let mut cents = 0;
            for table in &self.tables {
                cents += question.cost(table.says(&tuple)?)?;
            }
            Some((tuple, (changes, cents)))
        };
        self.tuples().filter_map(weigh).collect()
    }

    /// The answer, tuple by tuple.
    pub(crate) fn by_tuples(&self, question: &Question) -> Answer {
        let weighed = self.weighed(question);
        let mut options: Vec<Vec<Least>> = self.sizes.iter().map(|size| vec![None; *size]).collect();
        for (tuple, weight) in &weighed {
            for (variable, value) in tuple.iter().enumerate() {
                let least = &mut options[variable][*value];
                *least = Some(least.map_or(*weight, |least| least.min(*weight)));
            }
        }
        Answer {
            count: weighed.len() as u64,
            least: weighed.iter().map(|(_, weight)| *weight).min(),
            options,
        }
    }

    /// The same as a network.
    pub(crate) fn network(&self) -> Network {
        let mut network = Network::default();
        for (name, size) in self.names.iter().zip(&self.sizes) {
            network.variable(name, *size);
        }
        for (number, table) in self.tables.iter().enumerate() {
            let row = |(cells, tag): &(Cells, Option<Tag>)| Row {
                cells: cells.clone(),
                label: tag.as_ref().map(Tag::label),
            };
            let rows = Rows::new(
                &format!("table {number}"),
                table
                    .scope
                    .iter()
                    .map(|variable| Variable::at(*variable))
                    .collect(),
                table.scope.iter().map(|variable| self.sizes[*variable]).collect(),
                table.rows.iter().map(row).collect(),
                table.otherwise.as_ref().map(Tag::label),
                Limits::default().relation_states,
            );
            network.relations.push(Box::new(rows));
        }
        network
    }
}

impl Tag {
    fn label(&self) -> Label {
        Label::new(
            self.gates.iter().copied().map(GateId).collect(),
            self.cells.iter().copied().map(CellId).collect(),
        )
    }
}

/// The answer of a diagram.
pub(crate) fn by_diagram(diagram: &Diagram, question: &Question, scratch: &mut Scratch) -> Answer {
    let weights = weights(diagram, question);
    let mut best = Vec::new();
    let least = options(diagram, &weights, scratch, &mut best);
    let read = |weight: Weight| weight.is_feasible().then(|| (weight.changes(), weight.cents()));
    let mut best = best.into_iter().map(read);
    let domains = diagram.domains().iter();
    Answer {
        count: u64::try_from(count(diagram, &weights)).unwrap(),
        least: read(least),
        options: domains
            .map(|domain| best.by_ref().take(domain.size).collect())
            .collect(),
    }
}

fn weights(diagram: &Diagram, question: &Question) -> Weights {
    let label = |label: &Label| {
        let tag = Tag {
            gates: label.gates().iter().map(|gate| gate.0).collect(),
            cells: label.cells().iter().map(|cell| cell.0).collect(),
        };
        question
            .cost(&tag)
            .map_or(Weight::INFEASIBLE, |cents| Weight::new(0, cents))
    };
    let mut weights = Weights {
        options: vec![Weight::ZERO; diagram.option_count()],
        labels: diagram.labels().iter().map(label).collect(),
    };
    let place = |variable, value| diagram.option(Variable::at(variable), value).unwrap();
    for (variable, picked, pinned) in &question.picks {
        for value in (0..diagram.domains()[*variable].size).filter(|value| value != picked) {
            weights.options[place(*variable, value)] = if *pinned {
                Weight::INFEASIBLE
            } else {
                Weight::new(1, 0)
            };
        }
    }
    for (variable, value) in &question.hidden {
        weights.options[place(*variable, *value)] = Weight::INFEASIBLE;
    }
    weights
}
