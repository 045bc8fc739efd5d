//! The part of a diagram in which every configuration weighs least, and its first configuration in catalog order.
//!
//! After the way up, an edge is kept when it is as light as its node, and of its set the lightest options. What can be reached
//! from the root is small, and each of its configurations is as good as any other. With white and grey at no price, both glasses, and grey
//! not made in plain, three configurations are left, and white in plain is the first.
//!
//! Always holds: whatever is left alive is on some configuration that has all values fixed so far.
//! Cost: a visit an edge of the part, for each variable of which more than one value is left.

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

use rustc_hash::FxHashMap;

use crate::diagram::{Diagram, NodeId, range};
use crate::pass::{Scratch, least};
use crate::weights::{Cost, Weights};

/// The best configurations.
struct Optimal {
    /// Children before their parents.
    nodes: Vec<Node>,
    /// The nodes that hang at the top.
    top: Vec<usize>,
}

struct Node {
    variable: usize,
    edges: Vec<Edge>,
    is_alive: bool,
    is_reached: bool,
}

struct Edge {
    values: Vec<usize>,
    children: Vec<usize>,
}

/// Of the configurations that weigh least the first in catalog order, by the position of each value; `None` when nothing can be had.
pub(crate) fn first_of_the_best<C: Cost>(
    diagram: &Diagram,
    weights: &Weights<C>,
    scratch: &mut Scratch<C>,
) -> Option<Vec<usize>> {
    if !least(diagram, weights, scratch).is_feasible() {
        return None;
    }
    Optimal::new(diagram, weights, scratch)?.first(diagram.domains().len())
}

impl Optimal {
    fn new<C: Cost>(diagram: &Diagram, weights: &Weights<C>, scratch: &Scratch<C>) -> Option<Self> {
        let top = children(diagram, diagram.root?.0 as usize);
        let mut kept: FxHashMap<usize, Vec<usize>> = FxHashMap::default();
        let mut stack: Vec<usize> = top.clone();
        while let Some(node) = stack.pop() {
            if kept.contains_key(&node) {
                continue;
            }
            let edges = range(&diagram.first_edge, node).filter(|at| {
                let edge = &diagram.edges[*at];
                let below = scratch.ands[edge.and.0 as usize];
                below.plus(scratch.branches[edge.branch.0 as usize]) == scratch.nodes[node]
            });
            let edges: Vec<usize> = edges.collect();
            for edge in &edges {
                stack.extend(children(diagram, diagram.edges[*edge].and.0 as usize));
            }
            kept.insert(node, edges);
        }
        let mut order: Vec<usize> = kept.keys().copied().collect();
        order.sort_unstable();
        let places: FxHashMap<usize, usize> =
            order.iter().enumerate().map(|(at, node)| (*node, at)).collect();
        let edge = |at: &usize| {
            let edge = &diagram.edges[*at];
            let set = diagram.branches[edge.branch.0 as usize].set.0 as usize;
            let first = diagram.first_option[diagram.set_variable[set].index()] as usize;
            let options = range(&diagram.first_of_set, set).map(|at| diagram.set_options[at] as usize);
            Edge {
                values: options
                    .filter(|option| weights.options[*option] == scratch.sets[set])
                    .map(|option| option - first)
                    .collect(),
                children: children(diagram, edge.and.0 as usize)
                    .iter()
                    .map(|child| places[child])
                    .collect(),
            }
        };
        let node = |node: &usize| {
            let edges: Vec<Edge> = kept[node].iter().map(edge).collect();
            let first = diagram.edges[diagram.first_edge[*node] as usize];
            let set = diagram.branches[first.branch.0 as usize].set;
            Node {
                variable: diagram.set_variable[set.0 as usize].index(),
                edges,
                is_alive: true,
                is_reached: true,
            }
        };
        Some(Self {
            nodes: order.iter().map(node).collect(),
            top: top.iter().map(|node| places[node]).collect(),
        })
    }

    /// Fixes one variable after the other to the first value that is left.
    fn first(mut self, variables: usize) -> Option<Vec<usize>> {
        let mut values = Vec::with_capacity(variables);
        for variable in 0..variables {
            let reached = self
                .nodes
                .iter()
                .filter(|node| node.is_reached && node.variable == variable);
            let left = reached
                .flat_map(|node| &node.edges)
                .flat_map(|edge| &edge.values)
                .copied();
            let first = left.clone().min()?;
            values.push(first);
            if left.max() != Some(first) {
                self.fix(variable, first);
            }
        }
        Some(values)
    }

    /// Leaves a variable one value, and drops what then leads nowhere.
    fn fix(&mut self, variable: usize, value: usize) {
        for at in 0..self.nodes.len() {
            let mut edges = std::mem::take(&mut self.nodes[at].edges);
            if self.nodes[at].variable == variable {
                edges
                    .iter_mut()
                    .for_each(|edge| edge.values.retain(|other| *other == value));
            }
            edges.retain(|edge| {
                !edge.values.is_empty() && edge.children.iter().all(|child| self.nodes[*child].is_alive)
            });
            let node = &mut self.nodes[at];
            node.is_alive = !edges.is_empty();
            node.is_reached = false;
            node.edges = edges;
        }
        for top in &self.top {
            self.nodes[*top].is_reached = true;
        }
        for at in (0..self.nodes.len()).rev() {
            if !self.nodes[at].is_reached {
                continue;
            }
            let edges = std::mem::take(&mut self.nodes[at].edges);
            for child in edges.iter().flat_map(|edge| &edge.children) {
                self.nodes[*child].is_reached = true;
            }
            self.nodes[at].edges = edges;
        }
    }
}

fn children(diagram: &Diagram, and: usize) -> Vec<usize> {
    let children = &diagram.children[range(&diagram.first_child, and)];
    children.iter().map(|child: &NodeId| child.0 as usize).collect()
}
