//! Asks a compiled instance: counts, the cheapest, and every option under a selection.

use std::time::{Duration, Instant};

use astragal_core::count::count;
use astragal_core::diagram::Diagram;
use astragal_core::limit::Limits;
use astragal_core::network::Variable;
use astragal_core::pass::{Scratch, least, options};
use astragal_core::weights::{Cost, Weight, Weights};
use serde_json::{Map, Value, json};

use crate::instance::{Instance, Pick};
use crate::problem::Problem;

/// How often a question is asked for the median.
const TIMES: usize = 101;

/// A compiled instance with arrays that are used from question to question.
pub(crate) struct Asked<'a> {
    instance: &'a Instance,
    diagram: Diagram,
    compile: Duration,
    /// With nothing picked.
    base: Weights,
    /// With the picks of the question.
    weights: Weights,
    scratch: Scratch,
    best: Vec<Weight>,
}

impl<'a> Asked<'a> {
    /// Compiles an instance.
    pub(crate) fn compile(instance: &'a Instance, seed: u64) -> Result<Self, Problem> {
        let begun = Instant::now();
        let mut network = instance.network();
        let diagram = astragal_core::compile(&mut network, seed, &Limits::default())?;
        let compile = begun.elapsed();
        let cost = |label: &astragal_core::label::Label| {
            let cells = label.cells().iter();
            let prices = cells.filter_map(|cell| instance.cells.get(cell.0 as usize));
            Weight::new(0, prices.sum())
        };
        let prices = instance.option_prices.iter().flatten();
        let base = Weights {
            options: prices.map(|price| Weight::new(0, *price)).collect(),
            labels: diagram.labels().iter().map(cost).collect(),
        };
        Ok(Self {
            instance,
            diagram,
            compile,
            weights: base.clone(),
            base,
            scratch: Scratch::default(),
            best: Vec::new(),
        })
    }

    /// The diagram.
    pub(crate) fn diagram(&self) -> &Diagram {
        &self.diagram
    }

    /// The least weight with nothing picked.
    pub(crate) fn least(&mut self) -> Weight {
        least(&self.diagram, &self.base, &mut self.scratch)
    }

    /// The instance and its diagram in one object.
    pub(crate) fn summary(&mut self) -> Result<Value, Problem> {
        let mut least = Weight::INFEASIBLE;
        let median = median(|| least = self.ask(&[]));
        Ok(json!({
            "name": self.instance.name,
            "attributes": self.instance.attributes.len(),
            "compile_ms": thousandths(self.compile.as_micros()),
            "nodes": self.diagram().node_count(),
            "edges": self.diagram().edge_count(),
            "count": count(&self.diagram, &self.base).to_string(),
            "cheapest": least.is_feasible().then(|| least.cents()),
            "options_us": thousandths(median.as_nanos()),
        }))
    }

    /// The least total alone, and the median time that it takes.
    pub(crate) fn cheapest(&mut self) -> Value {
        let mut least = Weight::INFEASIBLE;
        let median = median(|| least = self.least());
        json!({
            "cheapest": least.is_feasible().then(|| least.cents()),
            "cheapest_us": thousandths(median.as_nanos()),
        })
    }

    /// What holds, costs and remains under picks.
    pub(crate) fn selection(&mut self, picks: &[Pick]) -> Value {
        let begun = Instant::now();
        let least = self.ask(picks);
        let taken = begun.elapsed();
        let holds = least.is_feasible() && least.changes() == 0;
        let mut free = Map::new();
        for (position, attribute) in self.instance.attributes.iter().enumerate() {
            let variable = Variable::at(position);
            let own = picks.iter().find(|(picked, _)| *picked == variable);
            let is_free = |value: &usize| {
                let option = self.diagram.option(variable, *value);
                let best = option.and_then(|option| self.best.get(option));
                let own_change = i64::from(own.is_some_and(|(_, picked)| picked != value));
                best.is_some_and(|best| best.is_feasible() && best.changes() == own_change)
            };
            let values: Vec<usize> = (0..attribute.options).filter(is_free).collect();
            free.insert(attribute.name.clone(), values.into());
        }
        json!({
            "holds": holds,
            "cheapest": holds.then(|| least.cents()),
            "free_options": free,
            "microseconds": thousandths(taken.as_nanos()),
        })
    }

    /// The least weight under picks; a change for every option that is not picked where another is.
    pub(crate) fn ask(&mut self, picks: &[Pick]) -> Weight {
        self.weights.options.clone_from(&self.base.options);
        for (variable, picked) in picks {
            let size = self.instance.attributes.get(variable.index());
            for value in 0..size.map_or(0, |attribute| attribute.options) {
                let option = self.diagram.option(*variable, value);
                let weight = option.and_then(|option| self.weights.options.get_mut(option));
                if let Some(weight) = weight.filter(|_| value != *picked) {
                    *weight = weight.plus(Weight::new(1, 0));
                }
            }
        }
        options(&self.diagram, &self.weights, &mut self.scratch, &mut self.best)
    }
}

/// The median time that something takes.
fn median(mut something: impl FnMut()) -> Duration {
    let mut times = Vec::with_capacity(TIMES);
    for _ in 0..TIMES {
        let begun = Instant::now();
        something();
        times.push(begun.elapsed());
    }
    times.sort_unstable();
    times.get(TIMES / 2).copied().unwrap_or_default()
}

/// A number of thousandths as a JSON number, exactly.
fn thousandths(count: u128) -> Value {
    let written = format!("{}.{:03}", count / 1000, count % 1000);
    serde_json::from_str(&written).unwrap_or(Value::Null)
}
