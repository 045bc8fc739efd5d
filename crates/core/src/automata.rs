//! Automata: every relation as a reduced, shared decision graph over one order of the variables.
//!
//! A node tests the variable of its rank and goes on by value; a leaf says *forbidden* or carries a label. Nodes whose
//! children are all the same are left out, equal nodes are one, across all relations. "Not grey with triple glass" over
//! the order colour, glass is one node for colour, whose grey child tests glass.
//!
//! Always holds: ranks rise along every path; no node has equal children throughout; no two nodes are equal.
//! Cost: one visit a state and value of each relation, layer by layer; never recursive.
//! Source: R. E. Bryant, Graph-based algorithms for Boolean function manipulation, IEEE TC 35 (1986), for many values.

use rustc_hash::FxHashMap;

use crate::label::{LabelId, Labels};
use crate::limit::{Limit, Limits};
use crate::lists::Lists;
use crate::network::{Decision, Relation, RelationState, Variable};

/// A node or a leaf.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct StateId(u32);

const LEAF: u32 = 1 << 31;

impl StateId {
    /// The leaf of what is forbidden.
    pub const FORBIDDEN: Self = Self(u32::MAX);
    /// The leaf that asks for nothing and costs nothing.
    pub const EMPTY: Self = Self(LEAF);

    /// The leaf that carries a label.
    #[must_use]
    pub fn leaf(label: LabelId) -> Self {
        Self(LEAF | label.0)
    }

    /// The label of a leaf that is not forbidden.
    #[must_use]
    pub fn label(self) -> Option<LabelId> {
        (self.0 & LEAF != 0 && self != Self::FORBIDDEN).then_some(LabelId(self.0 & !LEAF))
    }

    /// A hash of something, with this mixed into it; the upper half is the better one.
    #[must_use]
    pub(crate) fn mixed_into(self, hash: u64) -> u64 {
        // The multiplier of splitmix64: odd, and no pattern in its bits.
        (hash.rotate_left(23) ^ u64::from(self.0)).wrapping_mul(0x9e37_79b9_7f4a_7c15)
    }

    /// Whether it is a leaf.
    #[must_use]
    pub fn is_leaf(self) -> bool {
        self.0 & LEAF != 0
    }
}

/// All automata over one order.
#[derive(Debug, Default)]
pub struct Automata {
    /// The labels of all leaves, and later of all edges.
    pub labels: Labels,
    /// The children of each node under its rank.
    nodes: Lists<StateId>,
}

/// One layer of a relation while it is read.
struct Layer {
    /// Its states, each with what it decides and where the states after it end.
    states: Vec<(RelationState, Decision, usize)>,
    /// The states after each value of each state that is open.
    after: Vec<RelationState>,
}

impl Automata {
    /// Builds the automaton of a relation. `rank_of` gives the rank of each variable by its position.
    ///
    /// # Errors
    /// When a limit is passed.
    pub fn build(
        &mut self,
        relation: &mut dyn Relation,
        rank_of: &[u32],
        limits: &Limits,
    ) -> Result<StateId, Limit> {
        let rank = |variable: &Variable| rank_of.get(variable.index()).copied().unwrap_or(0);
        let mut order = relation.scope().to_vec();
        order.sort_by_key(rank);
        let start = relation.start(&order, limits)?;
        let layers = read(relation, &order, start, limits)?;
        let mut below: FxHashMap<RelationState, StateId> = FxHashMap::default();
        for (position, layer) in layers.into_iter().enumerate().rev() {
            let rank = order.get(position).map_or(0, rank);
            below = self.layer(layer, rank, &below);
        }
        Ok(below.get(&start).copied().unwrap_or(StateId::EMPTY))
    }

    /// The nodes of a layer; `below` are those of the next.
    fn layer(
        &mut self,
        layer: Layer,
        rank: u32,
        below: &FxHashMap<RelationState, StateId>,
    ) -> FxHashMap<RelationState, StateId> {
        let mut here = FxHashMap::default();
        here.reserve(layer.states.len());
        let mut children = Vec::new();
        let mut begin = 0;
        for (state, decision, end) in layer.states {
            let after = layer.after.get(begin..end).unwrap_or_default();
            begin = end;
            let built = match decision {
                Decision::Forbidden => StateId::FORBIDDEN,
                Decision::Allowed(label) => StateId::leaf(self.labels.number(label)),
                Decision::Open => {
                    children.clear();
                    let runs = after.chunk_by(PartialEq::eq);
                    for run in runs {
                        let child = run.first().and_then(|state| below.get(state)).copied();
                        let child = child.unwrap_or(StateId::FORBIDDEN);
                        children.extend(run.iter().map(|_| child));
                    }
                    self.node(rank, &children)
                }
            };
            here.insert(state, built);
        }
        here
    }

    /// The rank that a node tests; `None` for a leaf.
    #[must_use]
    pub fn rank(&self, state: StateId) -> Option<u32> {
        self.nodes.tag(state.0)
    }

    /// The children of a node by value; none of a leaf.
    #[must_use]
    pub fn children(&self, state: StateId) -> &[StateId] {
        self.nodes.list(state.0)
    }

    /// What a node comes to after a value.
    pub(crate) fn child(&self, state: StateId, value: u16) -> StateId {
        let child = self.children(state).get(usize::from(value)).copied();
        child.unwrap_or(StateId::EMPTY)
    }

    /// How many bytes the nodes of all automata take.
    pub(crate) fn bytes(&self) -> usize {
        self.nodes.bytes()
    }

    /// The ranks that an automaton tests, rising.
    #[must_use]
    pub fn support(&self, root: StateId) -> Vec<u32> {
        let mut ranks = std::collections::BTreeSet::new();
        let mut seen = rustc_hash::FxHashSet::from_iter([root]);
        let mut stack = vec![root];
        while let Some(state) = stack.pop() {
            ranks.extend(self.rank(state));
            let runs = self.children(state).chunk_by(PartialEq::eq);
            for child in runs.filter_map(<[StateId]>::first) {
                if !child.is_leaf() && seen.insert(*child) {
                    stack.push(*child);
                }
            }
        }
        ranks.into_iter().collect()
    }

    fn node(&mut self, rank: u32, children: &[StateId]) -> StateId {
        match children.split_first() {
            Some((first, rest)) if rest.iter().all(|child| child == first) => *first,
            _ => StateId(self.nodes.number(rank, children).min(LEAF - 1)),
        }
    }
}

/// Reads a relation layer by layer, every state once.
fn read(
    relation: &mut dyn Relation,
    order: &[Variable],
    start: RelationState,
    limits: &Limits,
) -> Result<Vec<Layer>, Limit> {
    let mut layers = Vec::with_capacity(order.len() + 1);
    let mut reached = vec![start];
    let mut room = limits.relation_states;
    let mut held = 0;
    for position in 0..=order.len() {
        room = room
            .checked_sub(reached.len())
            .ok_or_else(|| too_many(relation, limits))?;
        let mut states = Vec::with_capacity(reached.len());
        let mut after = Vec::new();
        let mut growth = Growth::new(room);
        for state in &reached {
            let decision = relation.decision(*state, position);
            if decision == Decision::Open {
                relation.after(*state, position, &mut after)?;
            }
            states.push((*state, decision, after.len()));
            if growth.is_past(&after) {
                return Err(too_many(relation, limits));
            }
            if held + size_of_val(after.as_slice()) > limits.bytes {
                return Err(Limit::RelationBytes {
                    relation: relation.name().to_owned(),
                    limit: limits.bytes,
                });
            }
        }
        reached.clear();
        let runs = after.chunk_by(PartialEq::eq);
        reached.extend(runs.filter_map(<[RelationState]>::first));
        reached.sort_unstable();
        reached.dedup();
        held += size_of_val(after.as_slice());
        layers.push(Layer { states, after });
    }
    Ok(layers)
}

/// Looks at a layer while it grows: one of many states with many values each would be long before it is whole.
struct Growth {
    room: usize,
    /// How many states were looked at, and how many there may be before they are looked at again.
    looked_at: usize,
    next: usize,
    distinct: Vec<RelationState>,
}

impl Growth {
    fn new(room: usize) -> Self {
        Self {
            room,
            looked_at: 0,
            next: room,
            distinct: Vec::new(),
        }
    }

    /// Whether the states of the next layer are more than there is room for.
    fn is_past(&mut self, after: &[RelationState]) -> bool {
        if after.len() <= self.next {
            return false;
        }
        self.distinct
            .extend_from_slice(after.get(self.looked_at..).unwrap_or_default());
        self.distinct.sort_unstable();
        self.distinct.dedup();
        self.looked_at = after.len();
        self.next = after.len() + self.room / 4;
        self.distinct.len() > self.room
    }
}

fn too_many(relation: &dyn Relation, limits: &Limits) -> Limit {
    Limit::RelationStates {
        relation: relation.name().to_owned(),
        limit: limits.relation_states,
    }
}
