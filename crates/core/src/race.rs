//! The race of the seeds: which of several orders makes the smallest diagram, found without a clock.
//!
//! A seed breaks the ties of the order, and a bad one can make a diagram many times as large as a good one. So every seed is
//! compiled under small caps on states and nodes. As long as none is done, the caps are doubled and all are compiled again.
//! Of the seeds that are done in one round, the one with the fewest edges wins, then the fewest nodes, then the smallest
//! seed. With seeds that take 900, 1,500 and 40,000 states and a first cap of 500, nobody is done in the first round, and in
//! the second, under a cap of 1,000, the first seed wins alone. The third was stopped at 500 and at 1,000.
//!
//! Always holds: the winner depends on the network, the set of seeds, the first caps and the limits; not on the order of
//! either, on the machine, or on how long anything takes. A compile with the winner's seed makes the diagram that won.
//! Cost: for each seed at most twice the states of the last caps, but every relation is read anew in every round. In
//! memory are one compile and the best diagram of the round so far.
//! Source: doubling a limit until something is done, as in M. Luby, A. Sinclair, D. Zuckerman, Optimal speedup of Las Vegas
//! algorithms (1993); that time chooses nothing is our own demand.

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use crate::compile::compile_counted;
use crate::diagram::Diagram;
use crate::limit::{Limit, Limits};
use crate::network::Network;

/// The seeds that race where nobody says which.
pub const SEEDS: Range<u64> = 0..8;

/// What one seed may take in the first round.
pub const FIRST_CAPS: Caps = Caps {
    relation_states: 1 << 14,
    states: 1 << 14,
    nodes: 1 << 14,
};

/// What one seed may take in a round.
///
/// No cap is beyond the limit of its name in [`Limits`]. A state makes at most one node.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Caps {
    /// States of one relation while it is read.
    pub relation_states: usize,
    /// States of the compile.
    pub states: usize,
    /// Nodes of the diagram.
    pub nodes: usize,
}

/// Who won, and what every seed took.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Race {
    /// The winner: the seed to compile with.
    pub seed: u64,
    /// How many rounds it took; the caps were doubled in all but the first.
    pub rounds: usize,
    /// The caps of the last round.
    pub caps: Caps,
    /// Every seed once, rising.
    pub runs: Vec<Run>,
}

/// How far one seed came in the last round.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Run {
    /// The seed.
    pub seed: u64,
    /// What it took, or the cap or limit that stopped it.
    pub outcome: Result<Taken, Limit>,
}

/// What a compile took.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Taken {
    /// Edges of the diagram.
    pub edges: usize,
    /// Nodes of the diagram.
    pub nodes: usize,
    /// States of the compile.
    pub states: usize,
}

/// Races seeds over a network, from [`FIRST_CAPS`] on; returns the race with the winner's diagram.
///
/// The order of the seeds does not matter, nor does one that stands twice. Without any, seed 0 runs alone.
///
/// # Errors
/// When no seed is done within the limits: what stopped the smallest of them, with the rule or the attributes that tie the knot.
///
/// # Examples
/// Four attributes in a ring, neighbours different: every seed finishes, and the winner compiled alone gives the same diagram.
/// ```
/// use astragal_core::label::Label;
/// use astragal_core::limit::Limits;
/// use astragal_core::network::Network;
/// use astragal_core::race::{SEEDS, race};
/// use astragal_core::rows::{Row, Rows};
///
/// let ring = || {
///     let mut network = Network::default();
///     let all: Vec<_> = ["a", "b", "c", "d"].map(|name| network.variable(name, 3)).to_vec();
///     for (one, next) in all.iter().zip(all.iter().cycle().skip(1)) {
///         let equal = (0..3).map(|value| Row { cells: vec![Some(vec![value]); 2], label: None });
///         let rows = Rows::new("different", vec![*one, *next], vec![3, 3], equal.collect(), Some(Label::empty()), 100);
///         network.relations.push(Box::new(rows));
///     }
///     network
/// };
/// let seeds: Vec<u64> = SEEDS.collect();
/// let (race, diagram) = race(&mut ring(), &seeds, &Limits::default())?;
/// assert_eq!((race.rounds, race.runs.len()), (1, 8));
/// assert_eq!(astragal_core::compile(&mut ring(), race.seed, &Limits::default())?, diagram);
/// # Ok::<(), astragal_core::limit::Limit>(())
/// ```
///
/// Too little for any seed: the error is that of a compile.
/// ```
/// use astragal_core::limit::{Limit, Limits};
/// use astragal_core::network::Network;
/// use astragal_core::race::race;
///
/// let mut network = Network::default();
/// network.variable("glass", 2);
/// network.variable("colour", 2);
/// let limits = Limits { nodes: 1, ..Limits::default() };
/// assert!(matches!(race(&mut network, &[3, 1], &limits), Err(Limit::Nodes { limit: 1, .. })));
/// ```
pub fn race(network: &mut Network, seeds: &[u64], limits: &Limits) -> Result<(Race, Diagram), Limit> {
    race_from(network, seeds, FIRST_CAPS, limits)
}

/// Races seeds like [`race()`], with other caps in the first round.
///
/// # Errors
/// When no seed is done within the limits, as for [`race()`].
pub fn race_from(
    network: &mut Network,
    seeds: &[u64],
    first: Caps,
    limits: &Limits,
) -> Result<(Race, Diagram), Limit> {
    let mut field = Field::new(seeds);
    let mut caps = first.within(limits);
    let mut rounds = 1;
    loop {
        if let Some(((_, _, seed), diagram)) = field.round(network, &caps, limits) {
            let race = Race {
                seed,
                rounds,
                caps,
                runs: field.runs(),
            };
            return Ok((race, diagram));
        }
        field.leave_out(&caps, limits)?;
        caps = caps.doubled().within(limits);
        rounds += 1;
    }
}

/// By what a winner is chosen: edges, nodes, seed, each the fewer the better.
type Place = (usize, usize, u64);

/// The seeds in a race.
struct Field {
    /// The seeds that more room may help.
    runners: BTreeSet<u64>,
    /// How far each seed came when it ran last.
    outcomes: BTreeMap<u64, Result<Taken, Limit>>,
}

impl Field {
    fn new(seeds: &[u64]) -> Self {
        let mut runners: BTreeSet<u64> = seeds.iter().copied().collect();
        if runners.is_empty() {
            runners.insert(SEEDS.start);
        }
        Self {
            runners,
            outcomes: BTreeMap::new(),
        }
    }

    /// Compiles every runner under these caps; returns the best that is done.
    fn round(&mut self, network: &mut Network, caps: &Caps, limits: &Limits) -> Option<(Place, Diagram)> {
        let limits = caps.of(limits);
        let mut best: Option<(Place, Diagram)> = None;
        for seed in &self.runners {
            let compiled = compile_counted(network, *seed, &limits);
            let outcome = compiled.map(|(diagram, states)| {
                let (edges, nodes) = (diagram.edge_count(), diagram.node_count());
                let place = (edges, nodes, *seed);
                if best.as_ref().is_none_or(|(least, _)| place < *least) {
                    best = Some((place, diagram));
                }
                Taken { edges, nodes, states }
            });
            self.outcomes.insert(*seed, outcome);
        }
        best
    }

    /// Leaves out the seeds that no doubling helps; an error when none is left.
    fn leave_out(&mut self, caps: &Caps, limits: &Limits) -> Result<(), Limit> {
        let outcomes = &self.outcomes;
        self.runners.retain(|seed| match outcomes.get(seed) {
            Some(Err(passed)) => caps.leave_room(passed, limits),
            _ => true,
        });
        match outcomes.values().next() {
            Some(Err(first)) if self.runners.is_empty() => Err(first.clone()),
            _ => Ok(()),
        }
    }

    fn runs(self) -> Vec<Run> {
        let runs = self.outcomes.into_iter();
        runs.map(|(seed, outcome)| Run { seed, outcome }).collect()
    }
}

impl Caps {
    /// At most the limits.
    fn within(self, limits: &Limits) -> Self {
        Self {
            relation_states: self.relation_states.min(limits.relation_states),
            states: self.states.min(limits.states),
            nodes: self.nodes.min(limits.nodes),
        }
    }

    /// Twice as much; a cap of nothing becomes one.
    fn doubled(self) -> Self {
        let double = |cap: usize| cap.saturating_mul(2).max(1);
        Self {
            relation_states: double(self.relation_states),
            states: double(self.states),
            nodes: double(self.nodes),
        }
    }

    /// The limits with these caps instead.
    fn of(&self, limits: &Limits) -> Limits {
        Limits {
            relation_states: self.relation_states,
            states: self.states,
            nodes: self.nodes,
            ..*limits
        }
    }

    /// Whether what was passed is one of these caps, and not yet as large as its limit.
    fn leave_room(&self, passed: &Limit, limits: &Limits) -> bool {
        match passed {
            // A relation may have a limit of its own as well.
            Limit::RelationStates { limit, .. } => {
                *limit == self.relation_states && *limit < limits.relation_states
            }
            Limit::RelationRows { .. } => self.relation_states < limits.relation_states,
            Limit::States { .. } => self.states < limits.states,
            Limit::Nodes { .. } => self.nodes < limits.nodes,
            _ => false,
        }
    }
}
