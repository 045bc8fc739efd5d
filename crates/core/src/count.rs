//! Counts configurations: one walk up, with big integers.
//!
//! Always holds: an option whose weight is infeasible, and an edge whose label is, count nothing. *Not asked* counts once.
//! Cost: one multiplication a child and edge, of numbers as long as the count.

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

use num_bigint::BigUint;

use crate::diagram::{Diagram, range};
use crate::weights::{Cost, Weights};

/// How many configurations can be had under these weights.
#[must_use]
pub fn count(diagram: &Diagram, weights: &Weights) -> BigUint {
    let zero = BigUint::ZERO;
    let Some(root) = diagram.root else { return zero };
    if !weights.labels[diagram.root_label.index()].is_feasible() {
        return zero;
    }
    let mut nodes: Vec<BigUint> = Vec::with_capacity(diagram.node_count());
    let product = |nodes: &[BigUint], and: usize| {
        let children = &diagram.children[range(&diagram.first_child, and)];
        children.iter().fold(BigUint::from(1_u8), |product, child| {
            product * &nodes[child.0 as usize]
        })
    };
    let sets: Vec<u32> = (0..diagram.set_variable.len())
        .map(|set| open_options(diagram, weights, set))
        .collect();
    let mut ands: Vec<BigUint> = Vec::new();
    for node in 0..diagram.node_count() {
        while ands.len() < diagram.ands_before[node] as usize {
            ands.push(product(&nodes, ands.len()));
        }
        let mut sum = BigUint::ZERO;
        for edge in &diagram.edges[range(&diagram.first_edge, node)] {
            let branch = diagram.branches[edge.branch.0 as usize];
            if weights.labels[branch.label.index()].is_feasible() {
                sum += &ands[edge.and.0 as usize] * sets[branch.set.0 as usize];
            }
        }
        nodes.push(sum);
    }
    while ands.len() < diagram.first_child.len() - 1 {
        ands.push(product(&nodes, ands.len()));
    }
    ands.swap_remove(root.0 as usize)
}

fn open_options(diagram: &Diagram, weights: &Weights, set: usize) -> u32 {
    let options = &diagram.set_options[range(&diagram.first_of_set, set)];
    let open = options
        .iter()
        .filter(|option| weights.options[**option as usize].is_feasible());
    u32::try_from(open.count()).unwrap_or(u32::MAX)
}
