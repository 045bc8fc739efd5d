//! One node in the making: its values in groups after which nothing differs.
//!
//! The *active* slots are those whose automata read the variable. Values after which all active automata have come to the same
//! are one group. With white leading both automata to `a b`, and grey and brown to `a c`, there are the groups white, and grey
//! with brown.
//!
//! Always holds: the groups stand in the order of their first value; forbidden values are in none.
//! Cost: two visits a value and active slot. A frame that is begun again keeps its memory.

use crate::automata::{Automata, StateId};
use crate::compile::plan::{At, Child};
use crate::diagram::build::Builder;
use crate::diagram::{AndId, NodeId};
use crate::index::Index;
use crate::label::LabelId;
use crate::network::Variable;

/// One node in the making.
#[derive(Default)]
pub(crate) struct Frame {
    pub(crate) variable: Variable,
    /// The number of its state.
    pub(crate) state: u32,
    /// The children of the group that is being visited, so far.
    pub(crate) below: Vec<NodeId>,
    /// For each group that was visited its edge; `None` when nothing holds below.
    edges: Vec<Option<(LabelId, AndId)>>,
    /// What every slot has come to after the group that is being visited.
    slots: Vec<StateId>,
    /// The active slots with the states that they had before.
    active: Vec<(usize, StateId)>,
    /// For each group its first value, which stands for all.
    groups: Vec<u16>,
    /// The groups by hash.
    index: Index,
    /// For each group what the automata that end here carry.
    labels: Vec<LabelId>,
    /// For each value that is not forbidden its group.
    group_of: Vec<(u16, u32)>,
    /// For each value a hash of what the active automata come to, and whether none forbids it.
    hashes: Vec<(u64, bool)>,
}

impl Frame {
    /// Begins a node; `state` is what crosses into its subtree from above.
    pub(crate) fn begin(
        &mut self,
        automata: &Automata,
        at: &At,
        size: usize,
        state: &[StateId],
        builder: &mut Builder,
    ) {
        self.below.clear();
        self.edges.clear();
        self.slots.clear();
        self.slots.extend(state.iter().chain(&at.beginning));
        self.active.clear();
        for slot in &at.reads {
            let state = self.slots.get(*slot).copied();
            let active = state.filter(|state| automata.rank(*state) == Some(at.rank));
            self.active.extend(active.map(|state| (*slot, state)));
        }
        self.read(automata, size);
        self.group(automata);
        self.label(automata, builder);
        self.enter(automata);
    }

    /// Hashes what the active automata come to, automaton after automaton.
    fn read(&mut self, automata: &Automata, size: usize) {
        self.hashes.clear();
        self.hashes.resize(size, (0, true));
        for (_, state) in &self.active {
            for ((hash, allowed), child) in self.hashes.iter_mut().zip(automata.children(*state)) {
                *hash = child.mixed_into(*hash);
                *allowed &= *child != StateId::FORBIDDEN;
            }
        }
    }

    fn group(&mut self, automata: &Automata) {
        let Self {
            active,
            groups,
            index,
            ..
        } = self;
        groups.clear();
        index.clear();
        self.group_of.clear();
        for (value, (hash, _)) in self
            .hashes
            .iter()
            .enumerate()
            .filter(|(_, (_, allowed))| *allowed)
        {
            let same = |group: u32| {
                let first = groups.get(group as usize).copied().map(usize::from);
                active.iter().all(|(_, state)| {
                    let children = automata.children(*state);
                    first.and_then(|first| children.get(first)) == children.get(value)
                })
            };
            let short = u16::try_from(value).unwrap_or(u16::MAX);
            let group = index.find(*hash, same).unwrap_or_else(|| {
                let group = u32::try_from(groups.len()).unwrap_or(u32::MAX - 1);
                groups.push(short);
                index.insert(*hash, group);
                group
            });
            self.group_of.push((short, group));
        }
    }

    fn label(&mut self, automata: &Automata, builder: &mut Builder) {
        self.labels.clear();
        for value in &self.groups {
            let after = self
                .active
                .iter()
                .map(|(_, state)| automata.child(*state, *value));
            let ended = after.filter_map(StateId::label);
            let label = ended.fold(LabelId::EMPTY, |all, one| builder.label(all, one));
            self.labels.push(label);
        }
    }

    /// Puts into the slots what the group to be visited has come to; leaves are paid for already.
    fn enter(&mut self, automata: &Automata) {
        let Some(value) = self.groups.get(self.edges.len()) else {
            return;
        };
        for (slot, state) in &self.active {
            let after = automata.child(*state, *value);
            if let Some(place) = self.slots.get_mut(*slot) {
                *place = if after.is_leaf() { StateId::EMPTY } else { after };
            }
        }
    }

    /// Whether all groups were visited.
    pub(crate) fn is_done(&self) -> bool {
        self.edges.len() >= self.groups.len()
    }

    /// The state of a child after the group that is being visited.
    pub(crate) fn state_of(&self, child: &Child) -> impl Iterator<Item = StateId> {
        let slots = child.slots.iter();
        slots.map(|slot| self.slots.get(*slot).copied().unwrap_or(StateId::EMPTY))
    }

    /// Ends a group below which nothing holds.
    pub(crate) fn close(&mut self, automata: &Automata) {
        self.edges.push(None);
        self.below.clear();
        self.enter(automata);
    }

    /// Ends a group whose children are all known.
    pub(crate) fn keep(&mut self, automata: &Automata, builder: &mut Builder) {
        let label = self.labels.get(self.edges.len()).copied();
        let and = builder.and(&self.below);
        self.edges.push(Some((label.unwrap_or(LabelId::EMPTY), and)));
        self.below.clear();
        self.enter(automata);
    }

    /// The values that something holds below, rising, each with its edge.
    pub(crate) fn values(&self) -> impl Iterator<Item = (u16, LabelId, AndId)> {
        self.group_of.iter().filter_map(|(value, group)| {
            let (label, and) = self.edges.get(*group as usize).copied().flatten()?;
            Some((*value, label, and))
        })
    }
}
