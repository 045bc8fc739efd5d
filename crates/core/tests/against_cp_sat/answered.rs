//! What the engine says of a problem, with nothing picked and with picks.

use astragal_core::compile;
use astragal_core::diagram::Diagram;
use astragal_core::limit::{Limit, Limits};
use astragal_core::network::Variable;
use astragal_core::pass::{Scratch, options};

use astragal_core::weights::{Cost, Weight, Weights};
use astragal_oracle::chance::Chance;
use serde_json::{Map, Value, json};

use crate::json_network::Instance;
use crate::problem::{name, problem};

/// LIMIT: problems whose diagram has more nodes are passed over, and counted.
const NODES_MAX: usize = 300_000;

/// How many options are asked for their changes and least total.
const ASKED: usize = 6;

/// A compiled problem.
struct Engine {
    diagram: Diagram,
    weights: Weights,
    sizes: Vec<usize>,
}

/// An attribute's position and the picked option.
type Pick = (usize, usize);

/// A line for the script: the problem, the picks, and what the engine says.
pub(crate) fn answered(seed: u64) -> Result<Value, Limit> {
    let json = problem(seed);
    let mut instance = Instance::new(json.clone());
    let limits = Limits {
        nodes: NODES_MAX,
        states: 2_000_000,
        ..Limits::default()
    };
    let diagram = compile(&mut instance.network, seed, &limits)?;
    let engine = Engine {
        weights: instance.weights(&diagram),
        sizes: diagram.domains().iter().map(|domain| domain.size).collect(),
        diagram,
    };
    let mut chance = Chance::new(!seed);
    let picks = engine.picks(&mut chance);
    let (least, best) = engine.ask(&[]);
    let (picked_least, picked_best) = engine.ask(&picks);
    let asked = (0..ASKED).map(|_| {
        let attribute = chance.below(engine.sizes.len());
        let option = chance.below(engine.sizes[attribute]);
        let answer = engine.option(&picked_best, &picks, attribute, option);
        json!({
            "attribute": name(attribute),
            "option": option,
            "changes": answer.map(|(changes, _)| changes),
            "total": answer.map(|(_, total)| total),
        })
    });
    let pairs = picks.iter().map(|(at, option)| (name(*at), json!(option)));
    Ok(json!({
        "problem": json,
        "picks": pairs.collect::<Map<_, _>>(),
        "nodes": engine.diagram.node_count(),
        "answers": {
            "possible": engine.options_where(&best, &[], |_| true),
            "cheapest": least.is_feasible().then(|| least.cents()),
            "changes": picked_least.is_feasible().then(|| picked_least.changes()),
            "total": picked_least.is_feasible().then(|| picked_least.cents()),
            "free": engine.options_where(&picked_best, &picks, |changes| changes == 0),
            "asked": asked.collect::<Vec<_>>(),
        },
    }))
}

impl Engine {
    /// The least weight of the whole and of every option, under picks.
    fn ask(&self, picks: &[Pick]) -> (Weight, Vec<Weight>) {
        let mut weights = self.weights.clone();
        for (attribute, picked) in picks {
            for option in (0..self.sizes[*attribute]).filter(|option| option != picked) {
                let weight = &mut weights.options[self.position(*attribute, option)];
                *weight = weight.plus(Weight::new(1, 0));
            }
        }
        let mut best = Vec::new();
        let least = options(&self.diagram, &weights, &mut Scratch::default(), &mut best);
        (least, best)
    }

    fn position(&self, attribute: usize, option: usize) -> usize {
        self.diagram.option(Variable::at(attribute), option).unwrap()
    }

    /// The fewest picks besides the attribute's own that must change for an option, and the least total among those.
    fn option(&self, best: &[Weight], picks: &[Pick], attribute: usize, option: usize) -> Option<(i64, i64)> {
        let weight = best[self.position(attribute, option)];
        let own = picks
            .iter()
            .any(|(at, picked)| *at == attribute && *picked != option);
        weight
            .is_feasible()
            .then(|| (weight.changes() - i64::from(own), weight.cents()))
    }

    /// By attribute the options that can be had with changes as wanted.
    fn options_where(&self, best: &[Weight], picks: &[Pick], wanted: fn(i64) -> bool) -> Vec<Vec<usize>> {
        let of = |attribute: usize| {
            let is_wanted = |option: &usize| {
                let answer = self.option(best, picks, attribute, *option);
                answer.is_some_and(|(changes, _)| wanted(changes))
            };
            (0..self.sizes[attribute]).filter(is_wanted).collect()
        };
        (0..self.sizes.len()).map(of).collect()
    }

    /// Up to eight picks; most go with those before them, so that some selections hold and some do not.
    fn picks(&self, chance: &mut Chance) -> Vec<Pick> {
        let mut attributes: Vec<usize> = (0..self.sizes.len()).collect();
        chance.shuffle(&mut attributes);
        attributes.truncate(chance.between(1, 8));
        let careful = chance.percent(35);
        let mut picks = Vec::new();
        for attribute in attributes {
            let free = if careful || chance.percent(25) {
                let (_, best) = self.ask(&picks);
                self.options_where(&best, &picks, |changes| changes == 0)[attribute].clone()
            } else {
                Vec::new()
            };
            let option = chance.one_of(&free).copied();
            picks.push((
                attribute,
                option.unwrap_or_else(|| chance.below(self.sizes[attribute])),
            ));
        }
        picks
    }
}
