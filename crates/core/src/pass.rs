//! The two passes over a diagram: the least weight of every option, in one walk up and one walk down.
//!
//! Up: a node's weight is the least over its edges of the least option of the set, the label, and the sum below. Down:
//! what the rest of the unit weighs at least around each node. An option's weight is the least over the edges it is on of
//! what is above, the label, what is below, and itself.
//!
//! Always holds: an edge that cannot be had is skipped in both passes, so that the way down subtracts only finite weights.
//! Cost: one visit a node, edge, child and value of a set; no allocation when the scratch is used again.
//! The passes do not know what they add up: any [`Cost`].

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

pub(crate) mod optimal;
pub(crate) mod witness;

use crate::diagram::Diagram;
use crate::weights::{Cost, Weight, Weights};

/// Arrays that are used again from question to question.
#[derive(Clone, Debug, Default)]
pub struct Scratch<C = Weight> {
    sets: Vec<C>,
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
            best[option] = best[option].min(through.plus(weights.options[option]));
        }
    }
    least
}

fn range(firsts: &[u32], at: usize) -> std::ops::Range<usize> {
    firsts[at] as usize..firsts[at + 1] as usize
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
            *least = (*least).min(weights.options[diagram.set_options[option] as usize]);
        }
    }
    let mut and = 0;
    for node in 0..diagram.node_count() {
        while and < diagram.ands_before[node] as usize {
            scratch.ands[and] = sum(diagram, &scratch.nodes, and);
            and += 1;
        }
        let mut least = C::INFEASIBLE;
        for edge in &diagram.edges[range(&diagram.first_edge, node)] {
            let below = scratch.ands[edge.and.0 as usize].plus(weights.labels[edge.label.index()]);
            least = least.min(below.plus(scratch.sets[edge.set.0 as usize]));
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
    fill(&mut scratch.through_sets, diagram.set_variable.len());
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
            let (and, set) = (edge.and.0 as usize, edge.set.0 as usize);
            let around = above.plus(weights.labels[edge.label.index()]);
            let below = scratch.ands[and];
            if !around.is_feasible() || !below.is_feasible() {
                continue;
            }
            scratch.through_sets[set] = scratch.through_sets[set].min(around.plus(below));
            scratch.ands_above[and] = scratch.ands_above[and].min(around.plus(scratch.sets[set]));
        }
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
        scratch.nodes_above[child] = scratch.nodes_above[child].min(around);
    }
}
