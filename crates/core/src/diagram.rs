//! The diagram: nodes, AND nodes, option sets and labels in flat arrays, children before parents.
//!
//! A node picks a value of one variable. Each edge has a *branch*, which is a set of values after which nothing differs with a
//! label, and an AND node: the list of what hangs side by side below. With two colours that go with every one of three glasses, the diagram is one
//! AND node over two nodes of one edge each.
//!
//! Always holds: the children of an AND node have smaller numbers than every node that has it; equal nodes, AND nodes,
//! branches, sets and labels stand once; every node can be reached from the root.
//! Memory: 8 bytes an edge, 8 a branch, 8 a node, 4 a child, 4 a value of a set.

pub(crate) mod build;
mod cut;

use crate::label::{Label, LabelId};
use crate::network::{Domain, Variable};

/// A node by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct NodeId(pub(crate) u32);

/// A list of nodes that hang side by side, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct AndId(pub(crate) u32);

/// A set of values of one variable, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct SetId(pub(crate) u32);

/// A set of values with a label, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) struct BranchId(pub(crate) u32);

/// A set of values, and what each of them carries.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub(crate) struct Branch {
    pub(crate) set: SetId,
    pub(crate) label: LabelId,
}

/// One edge.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub(crate) struct Edge {
    pub(crate) branch: BranchId,
    pub(crate) and: AndId,
}

/// A compiled network.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Diagram {
    pub(crate) domains: Vec<Domain>,
    /// For each variable where its options begin among all options; one more at the end.
    pub(crate) first_option: Vec<u32>,
    /// For each node where its edges begin; one more at the end.
    pub(crate) first_edge: Vec<u32>,
    pub(crate) edges: Vec<Edge>,
    pub(crate) branches: Vec<Branch>,
    /// For each AND node where its children begin; one more at the end.
    pub(crate) first_child: Vec<u32>,
    pub(crate) children: Vec<NodeId>,
    /// For each node how many AND nodes were made before it.
    pub(crate) ands_before: Vec<u32>,
    /// For each set where its options begin; one more at the end.
    pub(crate) first_of_set: Vec<u32>,
    /// Options of sets, by their position among all options.
    pub(crate) set_options: Vec<u32>,
    pub(crate) set_variable: Vec<Variable>,
    pub(crate) labels: Vec<Label>,
    /// What hangs at the top; `None` when nothing holds, whatever is known.
    pub(crate) root: Option<AndId>,
    /// What everything carries.
    pub(crate) root_label: LabelId,
}

/// The places that belong to one number, where `firsts` says for each where its places begin, and at the end where they end.
#[expect(
    clippy::indexing_slicing,
    reason = "the builder of a diagram gives every number that is used here"
)]
pub(crate) fn range(firsts: &[u32], at: usize) -> std::ops::Range<usize> {
    firsts[at] as usize..firsts[at + 1] as usize
}

impl Diagram {
    /// A diagram of these variables over which nothing holds, and the empty label alone.
    fn empty(domains: Vec<Domain>, first_option: Vec<u32>) -> Self {
        Self {
            domains,
            first_option,
            first_edge: vec![0],
            edges: Vec::new(),
            branches: Vec::new(),
            first_child: vec![0],
            children: Vec::new(),
            ands_before: Vec::new(),
            first_of_set: vec![0],
            set_options: Vec::new(),
            set_variable: Vec::new(),
            labels: vec![Label::empty()],
            root: None,
            root_label: LabelId::EMPTY,
        }
    }

    /// How many nodes there are.
    #[must_use]
    pub fn node_count(&self) -> usize {
        self.ands_before.len()
    }

    /// How many edges there are.
    #[must_use]
    pub fn edge_count(&self) -> usize {
        self.edges.len()
    }

    /// How many options all variables have together.
    #[must_use]
    pub fn option_count(&self) -> usize {
        self.first_option.last().map_or(0, |last| *last as usize)
    }

    /// The position of an option among the options of all variables.
    #[must_use]
    pub fn option(&self, variable: Variable, value: usize) -> Option<usize> {
        let domain = self.domains.get(variable.index())?;
        let first = self.first_option.get(variable.index())?;
        (value < domain.size).then_some(*first as usize + value)
    }

    /// The variables by position.
    #[must_use]
    pub fn domains(&self) -> &[Domain] {
        &self.domains
    }

    /// The labels of edges by number.
    #[must_use]
    pub fn labels(&self) -> &[Label] {
        &self.labels
    }

    /// How many bytes its arrays take.
    #[must_use]
    pub fn bytes(&self) -> usize {
        fn of<T>(array: &[T]) -> usize {
            size_of_val(array)
        }
        of(&self.first_option)
            + of(&self.first_edge)
            + of(&self.edges)
            + of(&self.branches)
            + of(&self.first_child)
            + of(&self.children)
            + of(&self.ands_before)
            + of(&self.first_of_set)
            + of(&self.set_options)
            + of(&self.set_variable)
    }
}
