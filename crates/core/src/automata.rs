//! Automata: every relation as a reduced, shared decision graph over one order of the variables.
//!
//! A node tests the variable of its rank and goes on by value; a leaf says *forbidden* or carries a label. Nodes whose
//! children are all the same are left out, equal nodes are one, across all relations. "Not grey with triple glass" over
//! the order colour, glass is one node for colour, whose grey child tests glass.
//!
//! Always holds: ranks rise along every path; no node has equal children throughout; no two nodes are equal.
//! Cost: one visit a state and value of each relation, layer by layer; never recursive.
//! Source: R. E. Bryant, Graph-based algorithms for Boolean function manipulation, IEEE TC 35 (1986), for many values.

use rustc_hash::{FxBuildHasher, FxHashMap};

use crate::label::{LabelId, Labels};
use crate::limit::{Limit, Limits};
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

    /// Whether it is a leaf.
    #[must_use]
    pub fn is_leaf(self) -> bool {
        self.0 & LEAF != 0
    }

    fn index(self) -> usize {
        self.0 as usize
    }
}

/// A node: where its children stand, and its rank.
#[derive(Clone, Copy, Debug)]
struct Head {
    rank: u32,
    first: u32,
}

/// All automata over one order.
#[derive(Debug, Default)]
pub struct Automata {
    /// The labels of all leaves, and later of all edges.
    pub labels: Labels,
    heads: Vec<Head>,
    children: Vec<StateId>,
    numbers: FxHashMap<(u32, Box<[StateId]>), StateId>,
}

/// One layer of a relation while it is read: its states, and for each that is open the states after each value.
struct Layer {
    states: Vec<RelationState>,
    after: Vec<Vec<RelationState>>,
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
        let start = relation.start(&order)?;
        let layers = read(relation, &order, start, limits)?;
        let mut below: FxHashMap<RelationState, StateId> = FxHashMap::default();
        for (position, layer) in layers.iter().enumerate().rev() {
            let rank = order.get(position).map_or(0, rank);
            let mut here = FxHashMap::with_capacity_and_hasher(layer.states.len(), FxBuildHasher);
            for (state, after) in layer.states.iter().zip(&layer.after) {
                let built = match relation.decision(*state, position) {
                    Decision::Forbidden => StateId::FORBIDDEN,
                    Decision::Allowed(label) => StateId::leaf(self.labels.number(label)),
                    Decision::Open => {
                        let below = |state| below.get(state).copied().unwrap_or(StateId::FORBIDDEN);
                        self.node(rank, after.iter().map(below).collect())
                    }
                };
                here.insert(*state, built);
            }
            below = here;
        }
        Ok(below.get(&start).copied().unwrap_or(StateId::EMPTY))
    }

    /// The rank that a node tests; `None` for a leaf.
    #[must_use]
    pub fn rank(&self, state: StateId) -> Option<u32> {
        if state.is_leaf() {
            return None;
        }
        self.heads.get(state.index()).map(|head| head.rank)
    }

    /// The child of a node for a value; the state itself for a leaf.
    #[must_use]
    pub fn child(&self, state: StateId, value: usize) -> StateId {
        let head = (!state.is_leaf())
            .then(|| self.heads.get(state.index()))
            .flatten();
        let child = head.and_then(|head| self.children.get(head.first as usize + value));
        child.copied().unwrap_or(state)
    }

    /// The ranks that an automaton tests, rising.
    #[must_use]
    pub fn support(&self, root: StateId) -> Vec<u32> {
        let mut ranks = std::collections::BTreeSet::new();
        let mut seen = std::collections::HashSet::from([root]);
        let mut stack = vec![root];
        while let Some(state) = stack.pop() {
            let Some(head) = (!state.is_leaf())
                .then(|| self.heads.get(state.index()))
                .flatten()
            else {
                continue;
            };
            ranks.insert(head.rank);
            let first = head.first as usize;
            let end = self
                .heads
                .get(state.index() + 1)
                .map_or(self.children.len(), |next| next.first as usize);
            for child in self.children.get(first..end).unwrap_or_default() {
                if seen.insert(*child) {
                    stack.push(*child);
                }
            }
        }
        ranks.into_iter().collect()
    }

    fn node(&mut self, rank: u32, children: Box<[StateId]>) -> StateId {
        if let Some((first, rest)) = children.split_first()
            && rest.iter().all(|child| child == first)
        {
            return *first;
        }
        let key = (rank, children);
        if let Some(number) = self.numbers.get(&key) {
            return *number;
        }
        let number = StateId(u32::try_from(self.heads.len()).unwrap_or(LEAF - 1));
        self.heads.push(Head {
            rank,
            first: u32::try_from(self.children.len()).unwrap_or(u32::MAX),
        });
        self.children.extend_from_slice(&key.1);
        self.numbers.insert(key, number);
        number
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
    let mut states = vec![start];
    let mut room = limits.relation_states;
    for position in 0..=order.len() {
        room = room
            .checked_sub(states.len())
            .ok_or_else(|| too_many(relation, limits))?;
        let mut after = Vec::with_capacity(states.len());
        let mut next = Vec::new();
        // A layer is looked at while it grows: one of many states with many values each would be long before it is whole.
        let mut look_at = room;
        for state in &states {
            let mut reached = Vec::new();
            if relation.decision(*state, position) == Decision::Open {
                relation.after(*state, position, &mut reached)?;
            }
            next.extend_from_slice(&reached);
            after.push(reached);
            if next.len() > look_at {
                next.sort_unstable();
                next.dedup();
                if next.len() > room {
                    return Err(too_many(relation, limits));
                }
                look_at = next.len() + room / 4;
            }
        }
        next.sort_unstable();
        next.dedup();
        layers.push(Layer { states, after });
        states = next;
    }
    Ok(layers)
}

fn too_many(relation: &dyn Relation, limits: &Limits) -> Limit {
    Limit::RelationStates {
        relation: relation.name().to_owned(),
        limit: limits.relation_states,
    }
}
