//! For every option one best unit with it, and what its labels are marked with.
//!
//! A mark is a set of up to 128 things, as bits; the mark of a unit is that of all its labels together. With one unknown gate, marked
//! `1`, on "casement, wide", the best unit with a casement is marked `1`, and one with an awning not at all.
//!
//! A walk of its own beside the passes: a weight can be taken out of a sum again, and a mark cannot.
//!
//! Always holds: of units that weigh the same one is taken, the same every time.
//! Cost: one walk down more than the passes, two words a node.

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

use crate::diagram::{Diagram, range};
use crate::pass::{Scratch, options};
use crate::weights::{Cost, Weights};

/// A set of up to 128 things.
pub(crate) type Mark = u128;

/// What one best unit, or a part of one, weighs, and its mark.
#[derive(Clone, Copy)]
pub(crate) struct Marked<C> {
    pub(crate) weight: C,
    pub(crate) mark: Mark,
}

impl<C: Cost + Ord> Marked<C> {
    const NOTHING: Self = Self {
        weight: C::INFEASIBLE,
        mark: 0,
    };

    fn lower(&mut self, weight: C, mark: Mark) {
        if weight < self.weight {
            *self = Self { weight, mark };
        }
    }
}

/// The best of all units, and the best with each option by its position among all; `marks` has one mark a label.
pub(crate) fn marked<C: Cost + Ord>(
    diagram: &Diagram,
    weights: &Weights<C>,
    marks: &[Mark],
) -> (Marked<C>, Vec<Marked<C>>) {
    let mut scratch = Scratch::default();
    let least = options(diagram, weights, &mut scratch, &mut Vec::new());
    let mut reached = vec![Marked::NOTHING; diagram.option_count()];
    let Some(root) = diagram.root.filter(|_| least.is_feasible()) else {
        return (Marked::NOTHING, reached);
    };
    let mut walk = Walk {
        diagram,
        weights,
        marks,
        nodes: vec![0; diagram.node_count()],
        ands: vec![0; scratch.ands.len()],
        scratch,
    };
    walk.up();
    for (set, through) in walk.down(root.0 as usize).iter().enumerate() {
        for option in range(&diagram.first_of_set, set) {
            let option = diagram.set_options[option] as usize;
            reached[option].lower(through.weight.plus(weights.options[option]), through.mark);
        }
    }
    let best = Marked {
        weight: least,
        mark: walk.ands[root.0 as usize] | marks[diagram.root_label.index()],
    };
    (best, reached)
}

struct Walk<'a, C> {
    diagram: &'a Diagram,
    weights: &'a Weights<C>,
    marks: &'a [Mark],
    /// The mark of one best part below every node and AND node.
    nodes: Vec<Mark>,
    ands: Vec<Mark>,
    scratch: Scratch<C>,
}

impl<C: Cost + Ord> Walk<'_, C> {
    fn up(&mut self) {
        let diagram = self.diagram;
        let mut and = 0;
        for node in 0..diagram.node_count() {
            while and < diagram.ands_before[node] as usize {
                self.ands[and] = self.below(and);
                and += 1;
            }
            let mut least = Marked::NOTHING;
            for edge in &diagram.edges[range(&diagram.first_edge, node)] {
                let (and, branch) = (edge.and.0 as usize, edge.branch.0 as usize);
                let mark = self.ands[and] | self.mark_of(branch);
                let below = self.scratch.ands[and];
                least.lower(below.plus(self.scratch.branches[branch]), mark);
            }
            self.nodes[node] = least.mark;
        }
        while and < self.ands.len() {
            self.ands[and] = self.below(and);
            and += 1;
        }
    }

    fn mark_of(&self, branch: usize) -> Mark {
        self.marks[self.diagram.branches[branch].label.index()]
    }

    fn below(&self, and: usize) -> Mark {
        let children = &self.diagram.children[range(&self.diagram.first_child, and)];
        children
            .iter()
            .fold(0, |mark, child| mark | self.nodes[child.0 as usize])
    }

    /// What the rest weighs around each set, with its mark.
    fn down(&self, root: usize) -> Vec<Marked<C>> {
        let diagram = self.diagram;
        let mut sets = vec![Marked::NOTHING; diagram.set_variable.len()];
        let mut nodes = vec![Marked::NOTHING; diagram.node_count()];
        let mut ands = vec![Marked::NOTHING; self.ands.len()];
        let label = diagram.root_label.index();
        ands[root].lower(self.weights.labels[label], self.marks[label]);
        let mut and = ands.len();
        for node in (0..diagram.node_count()).rev() {
            while and > diagram.ands_before[node] as usize {
                and -= 1;
                self.share(and, ands[and], &mut nodes);
            }
            let above = nodes[node];
            if !above.weight.is_feasible() {
                continue;
            }
            for edge in &diagram.edges[range(&diagram.first_edge, node)] {
                let (and, at) = (edge.and.0 as usize, edge.branch.0 as usize);
                let (own, below) = (self.scratch.branches[at], self.scratch.ands[and]);
                if own.is_feasible() && below.is_feasible() {
                    let branch = diagram.branches[at];
                    let mark = above.mark | self.mark_of(at);
                    let around = above.weight.plus(self.weights.labels[branch.label.index()]);
                    sets[branch.set.0 as usize].lower(around.plus(below), mark | self.ands[and]);
                    ands[and].lower(above.weight.plus(own), mark);
                }
            }
        }
        sets
    }

    /// Hands what is above an AND node down to each child, with the marks of the other children.
    fn share(&self, and: usize, above: Marked<C>, nodes: &mut [Marked<C>]) {
        let all = self.scratch.ands[and];
        if !above.weight.is_feasible() || !all.is_feasible() {
            return;
        }
        let whole = above.weight.plus(all);
        let children = &self.diagram.children[range(&self.diagram.first_child, and)];
        let mut after: Vec<Mark> = children
            .iter()
            .map(|child| self.nodes[child.0 as usize])
            .collect();
        for at in (1..after.len()).rev() {
            after[at - 1] |= after[at];
        }
        let mut before = above.mark;
        for (at, child) in children.iter().enumerate() {
            let child = child.0 as usize;
            let others = before | after.get(at + 1).copied().unwrap_or(0);
            nodes[child].lower(whole.minus(self.scratch.nodes[child]), others);
            before |= self.nodes[child];
        }
    }
}
