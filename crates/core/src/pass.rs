//! The two passes over a diagram: the least weight of every option, in one walk up and one walk down.
//!
//! Up: a node's weight is the least over its edges of the branch, which is the least option of its set with its label, and the
//! sum below. Down: what the rest of the unit weighs at least around each node. An option's weight is the least over the edges it
//! is on of what is above, the label, what is below, and itself.
//!
//! Always holds: the way down skips an edge that cannot be had, and the way up relies on a sum with something infeasible being
//! so, so that only finite weights are subtracted.
//! Cost: one visit a node, edge, branch, child and value of a set; no allocation when the scratch is used again.
//! The passes do not know what they add up: any [`Cost`].

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

pub(crate) mod optimal;
pub(crate) mod witness;

use crate::diagram::{Branch, Diagram, range};
use crate::weights::{Cost, Weight, Weights};

/// Arrays that are used again from question to question.
#[derive(Clone, Debug, Default)]
pub struct Scratch<C = Weight> {
    sets: Vec<C>,
    /// What the least option of a branch and its label weigh.
    branches: Vec<C>,
    through_branches: Vec<C>,
    through_sets: Vec<C>,
    nodes: Vec<C>,
    ands: Vec<C>,
    nodes_above: Vec<C>,
    ands_above: Vec<C>,
}

/// The least weight of the whole.
#[must_use]
pub fn least<C: Cost>(diagram: &Diagram, weights: &Weights<C>, scratch: &mut Scratch<C>) -> C {
    up(diagram, weights, scratch);
    match diagram.root {
        Some(root) => scratch.ands[root.0 as usize].plus(weights.labels[diagram.root_label.index()]),
        None => C::INFEASIBLE,
    }
}

/// The least weight of the whole, and of the whole with each option, by position among all options.
pub fn options<C: Cost>(
    diagram: &Diagram,
    weights: &Weights<C>,
    scratch: &mut Scratch<C>,
    best: &mut Vec<C>,
) -> C {
    let least = least(diagram, weights, scratch);
    best.clear();
    best.resize(diagram.option_count(), C::INFEASIBLE);
    if !least.is_feasible() {
        return least;
    }
    down(diagram, weights, scratch);
    for (set, through) in scratch.through_sets.iter().enumerate() {
        if !through.is_feasible() {
            continue;
        }
        for option in range(&diagram.first_of_set, set) {
            let option = diagram.set_options[option] as usize;
            best[option] = best[option].least(through.plus(weights.options[option]));
        }
    }
    least
}

fn fill<C: Cost>(array: &mut Vec<C>, count: usize) {
    array.clear();
    array.resize(count, C::INFEASIBLE);
}

fn up<C: Cost>(diagram: &Diagram, weights: &Weights<C>, scratch: &mut Scratch<C>) {
    fill(&mut scratch.sets, diagram.set_variable.len());
    fill(&mut scratch.nodes, diagram.node_count());
    fill(&mut scratch.ands, diagram.first_child.len() - 1);
    for (set, least) in scratch.sets.iter_mut().enumerate() {
        for option in range(&diagram.first_of_set, set) {
            *least = (*least).least(weights.options[diagram.set_options[option] as usize]);
        }
    }
    scratch.branches.clear();
    let sets = &scratch.sets;
    let branch = |branch: &Branch| sets[branch.set.0 as usize].plus(weights.labels[branch.label.index()]);
    scratch.branches.extend(diagram.branches.iter().map(branch));
    let mut and = 0;
    for node in 0..diagram.node_count() {
        while and < diagram.ands_before[node] as usize {
            scratch.ands[and] = sum(diagram, &scratch.nodes, and);
            and += 1;
        }
        let mut least = C::INFEASIBLE;
        for edge in &diagram.edges[range(&diagram.first_edge, node)] {
            let below = scratch.ands[edge.and.0 as usize];
            least = least.least(below.plus(scratch.branches[edge.branch.0 as usize]));
        }
        scratch.nodes[node] = least;
    }
    while and < scratch.ands.len() {
        scratch.ands[and] = sum(diagram, &scratch.nodes, and);
        and += 1;
    }
}

fn sum<C: Cost>(diagram: &Diagram, nodes: &[C], and: usize) -> C {
    let children = &diagram.children[range(&diagram.first_child, and)];
    children
        .iter()
        .fold(C::ZERO, |sum, child| sum.plus(nodes[child.0 as usize]))
}

fn down<C: Cost>(diagram: &Diagram, weights: &Weights<C>, scratch: &mut Scratch<C>) {
    fill(&mut scratch.through_branches, diagram.branches.len());
    fill(&mut scratch.nodes_above, diagram.node_count());
    fill(&mut scratch.ands_above, diagram.first_child.len() - 1);
    let Some(root) = diagram.root else { return };
    scratch.ands_above[root.0 as usize] = weights.labels[diagram.root_label.index()];
    let mut and = scratch.ands.len();
    for node in (0..diagram.node_count()).rev() {
        while and > diagram.ands_before[node] as usize {
            and -= 1;
            share(diagram, scratch, and);
        }
        let above = scratch.nodes_above[node];
        if !above.is_feasible() {
            continue;
        }
        for edge in &diagram.edges[range(&diagram.first_edge, node)] {
            let (and, branch) = (edge.and.0 as usize, edge.branch.0 as usize);
            let (own, below) = (scratch.branches[branch], scratch.ands[and]);
            if !own.is_feasible() || !below.is_feasible() {
                continue;
            }
            let through = &mut scratch.through_branches[branch];
            *through = through.least(above.plus(below));
            scratch.ands_above[and] = scratch.ands_above[and].least(above.plus(own));
        }
    }
    through_sets(diagram, weights, scratch);
}

/// Brings what is around each branch to its set.
fn through_sets<C: Cost>(diagram: &Diagram, weights: &Weights<C>, scratch: &mut Scratch<C>) {
    fill(&mut scratch.through_sets, diagram.set_variable.len());
    for (branch, through) in diagram.branches.iter().zip(&scratch.through_branches) {
        let set = &mut scratch.through_sets[branch.set.0 as usize];
        *set = set.least(through.plus(weights.labels[branch.label.index()]));
    }
}

/// Hands what is above an AND node down to each of its children, with what the other children weigh.
fn share<C: Cost>(diagram: &Diagram, scratch: &mut Scratch<C>, and: usize) {
    let (above, all) = (scratch.ands_above[and], scratch.ands[and]);
    if !above.is_feasible() || !all.is_feasible() {
        return;
    }
    let whole = above.plus(all);
    for child in range(&diagram.first_child, and) {
        let child = diagram.children[child].0 as usize;
        let around = whole.minus(scratch.nodes[child]);
        scratch.nodes_above[child] = scratch.nodes_above[child].least(around);
    }
}
