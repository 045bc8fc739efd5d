//! Cuts a diagram down to what closed labels leave: for one opening most conditions on measures are settled, and what they rule
//! out need not be walked over again at every question.
//!
//! Always holds: the same configurations with the same labels are left, under other numbers; options that are not offered stay,
//! since a pick may be honoured.
//! Cost: one visit a node, edge, child and label, and a copy of what is left.

#![expect(
    clippy::indexing_slicing,
    reason = "walks the flat arrays of a diagram, whose builder gave every number that is used here"
)]

use crate::diagram::{AndId, Branch, BranchId, Diagram, Edge, NodeId, SetId, range};
use crate::index::number;
use crate::label::LabelId;
use crate::network::Variable;

/// Which nodes and AND nodes are left.
struct Left {
    nodes: Vec<bool>,
    ands: Vec<bool>,
}

impl Diagram {
    /// What is left where only these labels are open.
    pub(crate) fn cut(&self, open: &[bool]) -> Self {
        let is_open = |label: LabelId| open[label.index()];
        let root = self.root.filter(|_| is_open(self.root_label));
        let left = self.left(root, &is_open);
        let root = root.filter(|root| left.ands[root.0 as usize]);
        Cutting {
            from: self,
            sets: vec![None; self.set_variable.len()],
            branches: vec![None; self.branches.len()],
            labels: std::iter::once(Some(LabelId::EMPTY))
                .chain(std::iter::repeat_n(None, self.labels.len().saturating_sub(1)))
                .collect(),
            made: Self::empty(self.domains.clone(), self.first_option.clone()),
        }
        .run(root, &left, &is_open)
    }

    /// What something can be had below and the root reaches.
    fn left(&self, root: Option<AndId>, is_open: &impl Fn(LabelId) -> bool) -> Left {
        let open: Vec<bool> = self.branches.iter().map(|branch| is_open(branch.label)).collect();
        let mut alive = Left {
            nodes: vec![false; self.node_count()],
            ands: vec![false; self.and_count()],
        };
        let mut and = 0;
        for node in 0..self.node_count() {
            while and < self.ands_before[node] as usize {
                alive.ands[and] = self.children_of(and).all(|child| alive.nodes[child]);
                and += 1;
            }
            let mut edges = self.edges[range(&self.first_edge, node)].iter();
            alive.nodes[node] =
                edges.any(|edge| open[edge.branch.0 as usize] && alive.ands[edge.and.0 as usize]);
        }
        while and < self.and_count() {
            alive.ands[and] = self.children_of(and).all(|child| alive.nodes[child]);
            and += 1;
        }
        let mut left = Left {
            nodes: vec![false; self.node_count()],
            ands: vec![false; self.and_count()],
        };
        let mut stack: Vec<usize> = root.map(|root| root.0 as usize).into_iter().collect();
        while let Some(and) = stack.pop() {
            if !alive.ands[and] || std::mem::replace(&mut left.ands[and], true) {
                continue;
            }
            for child in self.children_of(and) {
                if !std::mem::replace(&mut left.nodes[child], true) {
                    let edges = self.edges[range(&self.first_edge, child)].iter();
                    let open = edges.filter(|edge| open[edge.branch.0 as usize]);
                    stack.extend(open.map(|edge| edge.and.0 as usize));
                }
            }
        }
        left
    }

    fn children_of(&self, and: usize) -> impl Iterator<Item = usize> {
        let children = &self.children[range(&self.first_child, and)];
        children.iter().map(|child| child.0 as usize)
    }

    fn and_count(&self) -> usize {
        self.first_child.len() - 1
    }
}

/// A copy in the making, with the new numbers given so far.
struct Cutting<'a> {
    from: &'a Diagram,
    sets: Vec<Option<SetId>>,
    branches: Vec<Option<BranchId>>,
    labels: Vec<Option<LabelId>>,
    made: Diagram,
}

impl Cutting<'_> {
    fn run(mut self, root: Option<AndId>, left: &Left, is_open: &impl Fn(LabelId) -> bool) -> Diagram {
        let from = self.from;
        let (nodes, ands) = (numbers(&left.nodes), numbers(&left.ands));
        self.made.root_label = self.label(from.root_label);
        for node in (0..from.node_count()).filter(|node| left.nodes[*node]) {
            self.made.ands_before.push(ands[from.ands_before[node] as usize]);
            for edge in &from.edges[range(&from.first_edge, node)] {
                let branch = from.branches[edge.branch.0 as usize];
                if left.ands[edge.and.0 as usize] && is_open(branch.label) {
                    let branch = self.branch(edge.branch);
                    let and = AndId(ands[edge.and.0 as usize]);
                    self.made.edges.push(Edge { branch, and });
                }
            }
            self.made.first_edge.push(number(self.made.edges.len()));
        }
        for and in (0..from.and_count()).filter(|and| left.ands[*and]) {
            let children = from.children_of(and).map(|child| NodeId(nodes[child]));
            self.made.children.extend(children);
            self.made.first_child.push(number(self.made.children.len()));
        }
        self.made.root = root.map(|root| AndId(ands[root.0 as usize]));
        self.made
    }

    fn branch(&mut self, old: BranchId) -> BranchId {
        if let Some(known) = self.branches[old.0 as usize] {
            return known;
        }
        let Branch { set, label } = self.from.branches[old.0 as usize];
        let (set, label) = (self.set(set), self.label(label));
        self.made.branches.push(Branch { set, label });
        let new = BranchId(number(self.made.branches.len() - 1));
        self.branches[old.0 as usize] = Some(new);
        new
    }

    fn set(&mut self, old: SetId) -> SetId {
        if let Some(known) = self.sets[old.0 as usize] {
            return known;
        }
        let options = range(&self.from.first_of_set, old.0 as usize);
        self.made
            .set_options
            .extend_from_slice(&self.from.set_options[options]);
        self.made.first_of_set.push(number(self.made.set_options.len()));
        let variable: Variable = self.from.set_variable[old.0 as usize];
        self.made.set_variable.push(variable);
        let new = SetId(number(self.made.set_variable.len() - 1));
        self.sets[old.0 as usize] = Some(new);
        new
    }

    fn label(&mut self, old: LabelId) -> LabelId {
        if let Some(known) = self.labels[old.index()] {
            return known;
        }
        self.made.labels.push(self.from.labels[old.index()].clone());
        let new = LabelId(number(self.made.labels.len() - 1));
        self.labels[old.index()] = Some(new);
        new
    }
}

/// For each place how many before it are left, which is the new number of one that is; one more at the end.
fn numbers(left: &[bool]) -> Vec<u32> {
    let mut next = 0;
    let mut numbers = Vec::with_capacity(left.len() + 1);
    for is_left in left {
        numbers.push(next);
        next += u32::from(*is_left);
    }
    numbers.push(next);
    numbers
}
