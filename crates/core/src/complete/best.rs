//! The best units in order: the least rank, and among equals the first in catalog order.
//!
//! The unit after the best agrees with it up to some attribute and differs there: one part of what is left for each
//! attribute. The best of the parts comes next, and its part is cut again (Lawler's partition).
//!
//! Always holds: a unit comes once; `free` attributes, which nobody may fill, are chosen but never told apart.
//! Cost: two ways up for the best unit; then one an attribute for each next one.
//! Source: E. L. Lawler, A procedure for computing the k best solutions to discrete optimization problems, Management
//! Science 18 (1972).

use std::cmp::Reverse;
use std::collections::{BTreeSet, BinaryHeap};

use crate::diagram::Diagram;
use crate::network::Variable;
use crate::pass::optimal::first_of_the_best;
use crate::pass::{Scratch, least};
use crate::rank::Rank;
use crate::weights::{Cost, Weights};

/// The units of a diagram, best first.
pub(super) struct Best<'a> {
    diagram: &'a Diagram,
    weights: Weights<Rank>,
    free: &'a BTreeSet<usize>,
    scratch: Scratch<Rank>,
    waiting: BinaryHeap<Reverse<Part>>,
    /// The unit that came last and its part, which is cut only when another is asked for.
    last: Option<(Vec<usize>, Cut)>,
}

/// A part of all units: the rank of its best one, that one where it is known, and what cuts the part out.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
struct Part {
    rank: Rank,
    values: Option<Vec<usize>>,
    cut: Cut,
}

#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug, Default)]
struct Cut {
    /// The first attributes have these values.
    same: Vec<usize>,
    /// The next one has none of these.
    others: Vec<usize>,
}

impl<'a> Best<'a> {
    pub(super) fn new(diagram: &'a Diagram, weights: Weights<Rank>, free: &'a BTreeSet<usize>) -> Self {
        let mut scratch = Scratch::default();
        let rank = least(diagram, &weights, &mut scratch);
        let whole = rank.is_feasible().then(|| {
            Reverse(Part {
                rank,
                values: None,
                cut: Cut::default(),
            })
        });
        Self {
            diagram,
            weights,
            free,
            scratch,
            waiting: whole.into_iter().collect(),
            last: None,
        }
    }

    /// The rank of the next unit.
    pub(super) fn rank(&self) -> Option<Rank> {
        self.waiting.peek().map(|part| part.0.rank)
    }

    /// Every part of the unit after its best, pushed.
    fn cut(&mut self, values: &[usize], cut: Cut) {
        let mut weights = self.within(&cut);
        let from = cut.same.len();
        for (at, value) in values.iter().copied().enumerate().skip(from) {
            if self.free.contains(&at) {
                continue;
            }
            let others = if at == from {
                cut.others.clone()
            } else {
                Vec::new()
            };
            let cut = Cut {
                same: values.iter().copied().take(at).collect(),
                others: [others.as_slice(), &[value]].concat(),
            };
            let taken = close(self.diagram, &mut weights, at, |other| other == value);
            let rank = least(self.diagram, &weights, &mut self.scratch);
            if rank.is_feasible() {
                self.waiting.push(Reverse(Part {
                    rank,
                    values: None,
                    cut,
                }));
            }
            for (option, rank) in taken {
                if let Some(weight) = weights.options.get_mut(option) {
                    *weight = rank;
                }
            }
            close(self.diagram, &mut weights, at, |other| other != value);
        }
    }

    /// The weights within a part.
    fn within(&self, cut: &Cut) -> Weights<Rank> {
        let mut weights = self.weights.clone();
        for (at, value) in cut.same.iter().enumerate() {
            if !self.free.contains(&at) {
                close(self.diagram, &mut weights, at, |other| other != *value);
            }
        }
        close(self.diagram, &mut weights, cut.same.len(), |other| {
            cut.others.contains(&other)
        });
        weights
    }
}

impl Iterator for Best<'_> {
    type Item = (Rank, Vec<usize>);

    fn next(&mut self) -> Option<Self::Item> {
        if let Some((values, cut)) = self.last.take() {
            self.cut(&values, cut);
        }
        while let Some(Reverse(part)) = self.waiting.pop() {
            let Some(values) = part.values else {
                // Parts of equal rank are told apart by their best units, which are looked for only here.
                let weights = self.within(&part.cut);
                let values = first_of_the_best(self.diagram, &weights, &mut self.scratch)?;
                self.waiting.push(Reverse(Part {
                    values: Some(values),
                    ..part
                }));
                continue;
            };
            self.last = Some((values.clone(), part.cut));
            return Some((part.rank, values));
        }
        None
    }
}

/// Closes the options of a variable for which this is so; returns what they were.
fn close(
    diagram: &Diagram,
    weights: &mut Weights<Rank>,
    at: usize,
    is_closed: impl Fn(usize) -> bool,
) -> Vec<(usize, Rank)> {
    let size = diagram.domains().get(at).map_or(0, |domain| domain.size);
    let mut taken = Vec::new();
    for value in (0..size).filter(|value| is_closed(*value)) {
        let Some(option) = diagram.option(Variable::at(at), value) else {
            continue;
        };
        if let Some(weight) = weights.options.get_mut(option) {
            taken.push((option, *weight));
            *weight = Rank::INFEASIBLE;
        }
    }
    taken
}
