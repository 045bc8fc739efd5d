//! Builds a diagram from the leaves up: equal parts are one; at the end what cannot be reached is left out.
//!
//! Cost: a hash of each part.

use rustc_hash::FxHashMap;

use crate::diagram::{AndId, Branch, BranchId, Diagram, Edge, NodeId, SetId};
use crate::index::number;
use crate::label::{LabelId, Labels};
use crate::lists::Lists;
use crate::network::{Domain, Variable};

/// A diagram in the making.
pub(crate) struct Builder {
    domains: Vec<Domain>,
    first_option: Vec<u32>,
    labels: Labels,
    joined: FxHashMap<(LabelId, LabelId), LabelId>,
    /// The values of each set under its variable.
    sets: Lists<u16>,
    branches: Vec<Branch>,
    branch_numbers: FxHashMap<Branch, BranchId>,
    ands: Lists<NodeId>,
    /// The edges of each node under its variable.
    nodes: Lists<Edge>,
    /// For each node how many AND nodes were made before it.
    ands_before: Vec<u32>,
}

impl Builder {
    pub(crate) fn new(domains: &[Domain], labels: Labels) -> Self {
        let mut first_option = Vec::with_capacity(domains.len() + 1);
        let mut count = 0;
        for domain in domains {
            first_option.push(number(count));
            count += domain.size;
        }
        first_option.push(number(count));
        Self {
            domains: domains.to_vec(),
            first_option,
            labels,
            joined: FxHashMap::default(),
            sets: Lists::default(),
            branches: Vec::new(),
            branch_numbers: FxHashMap::default(),
            ands: Lists::default(),
            nodes: Lists::default(),
            ands_before: Vec::new(),
        }
    }

    pub(crate) fn node_count(&self) -> usize {
        self.nodes.len()
    }

    /// How many bytes its nodes, AND nodes and sets take.
    pub(crate) fn bytes(&self) -> usize {
        self.nodes.bytes() + self.ands.bytes() + self.sets.bytes()
    }

    /// The label of both.
    pub(crate) fn label(&mut self, one: LabelId, other: LabelId) -> LabelId {
        if one == LabelId::EMPTY {
            return other;
        }
        if other == LabelId::EMPTY {
            return one;
        }
        if let Some(joined) = self.joined.get(&(one, other)) {
            return *joined;
        }
        let label = self.labels.label(one).and(self.labels.label(other));
        let joined = self.labels.number(label);
        self.joined.insert((one, other), joined);
        joined
    }

    pub(crate) fn and(&mut self, children: &[NodeId]) -> AndId {
        AndId(self.ands.number(0, children))
    }

    /// The node with these edges, whose values are in no two of them.
    pub(crate) fn node(&mut self, variable: Variable, edges: &[Edge]) -> NodeId {
        let node = self.nodes.number(variable.0, edges);
        if self.nodes.len() > self.ands_before.len() {
            self.ands_before.push(number(self.ands.len()));
        }
        NodeId(node)
    }

    /// The set of these values, which rise.
    pub(crate) fn set(&mut self, variable: Variable, values: &[u16]) -> SetId {
        SetId(self.sets.number(variable.0, values))
    }

    /// The branch of this set and label.
    pub(crate) fn branch(&mut self, branch: Branch) -> BranchId {
        let next = BranchId(number(self.branches.len()));
        let found = *self.branch_numbers.entry(branch).or_insert(next);
        if found == next {
            self.branches.push(branch);
        }
        found
    }

    /// The three variables that have most nodes.
    pub(crate) fn busiest(&self, domains: &[Domain]) -> Vec<String> {
        let mut counts: FxHashMap<Variable, usize> = FxHashMap::default();
        for (variable, _) in self.nodes.iter() {
            *counts.entry(Variable(variable)).or_default() += 1;
        }
        let mut counts: Vec<(usize, &String)> = counts
            .iter()
            .filter_map(|(variable, count)| Some((*count, &domains.get(variable.index())?.name)))
            .collect();
        counts.sort_by(|one, other| other.cmp(one));
        counts.into_iter().take(3).map(|(_, name)| name.clone()).collect()
    }

    /// Leaves out what cannot be reached, and lays the rest flat.
    pub(crate) fn finish(self, root: Option<AndId>, root_label: LabelId) -> Diagram {
        let (nodes, ands) = self.reached(root);
        let mut flat = Diagram {
            labels: self.labels.all().to_vec(),
            root_label,
            ..Diagram::empty(self.domains, self.first_option)
        };
        let mut sets: Vec<Option<SetId>> = vec![None; self.sets.len()];
        let mut branches: Vec<Option<BranchId>> = vec![None; self.branches.len()];
        let (mut passed, mut before) = (0, 0);
        for (place, ((_, edges), ands_before)) in self.nodes.iter().zip(&self.ands_before).enumerate() {
            if nodes.get(place).copied().flatten().is_none() {
                continue;
            }
            while passed < *ands_before as usize {
                before += u32::from(ands.get(passed).copied().flatten().is_some());
                passed += 1;
            }
            flat.ands_before.push(before);
            for edge in edges {
                let at = edge.branch.0 as usize;
                let (Some(known), Some(branch)) = (branches.get_mut(at), self.branches.get(at)) else {
                    continue;
                };
                let Some(set) = sets.get_mut(branch.set.0 as usize) else {
                    continue;
                };
                let branch = *known.get_or_insert_with(|| {
                    let set = *set.get_or_insert_with(|| flat.push_set(&self.sets, branch.set));
                    flat.branches.push(Branch { set, ..*branch });
                    BranchId(number(flat.branches.len() - 1))
                });
                let and = ands
                    .get(edge.and.0 as usize)
                    .copied()
                    .flatten()
                    .unwrap_or(AndId(0));
                flat.edges.push(Edge { branch, and });
            }
            flat.first_edge.push(number(flat.edges.len()));
        }
        for (place, (_, children)) in self.ands.iter().enumerate() {
            if ands.get(place).copied().flatten().is_some() {
                let children = children
                    .iter()
                    .filter_map(|child| nodes.get(child.0 as usize).copied().flatten());
                flat.children.extend(children);
                flat.first_child.push(number(flat.children.len()));
            }
        }
        flat.root = root.and_then(|root| ands.get(root.0 as usize).copied().flatten());
        flat
    }

    /// The new numbers of the nodes and AND nodes that the root reaches.
    fn reached(&self, root: Option<AndId>) -> (Vec<Option<NodeId>>, Vec<Option<AndId>>) {
        let mut nodes = vec![false; self.nodes.len()];
        let mut ands = vec![false; self.ands.len()];
        let mut stack: Vec<AndId> = root.into_iter().collect();
        while let Some(and) = stack.pop() {
            match ands.get_mut(and.0 as usize) {
                Some(seen) if !*seen => *seen = true,
                _ => continue,
            }
            for child in self.ands.list(and.0) {
                match nodes.get_mut(child.0 as usize) {
                    Some(seen) if !*seen => *seen = true,
                    _ => continue,
                }
                let edges = self.nodes.list(child.0);
                stack.extend(edges.iter().map(|edge| edge.and));
            }
        }
        (numbered(&nodes, NodeId), numbered(&ands, AndId))
    }
}

fn numbered<T>(reached: &[bool], make: impl Fn(u32) -> T) -> Vec<Option<T>> {
    let mut next = 0;
    let mut numbers = Vec::with_capacity(reached.len());
    for is_reached in reached {
        numbers.push(is_reached.then(|| make(next)));
        next += u32::from(*is_reached);
    }
    numbers
}

impl Diagram {
    fn push_set(&mut self, sets: &Lists<u16>, set: SetId) -> SetId {
        let new = SetId(number(self.set_variable.len()));
        if let Some(variable) = sets.tag(set.0).map(Variable) {
            let first = self.first_option.get(variable.index()).copied().unwrap_or(0);
            let values = sets.list(set.0).iter();
            self.set_options
                .extend(values.map(|value| first + u32::from(*value)));
            self.set_variable.push(variable);
        }
        self.first_of_set.push(number(self.set_options.len()));
        new
    }
}
