//! One node in the making: its values in groups after which nothing differs.
//!
//! The *active* slots are those whose automata read the variable. Values after which all active automata have come to the same
//! are one group. With white leading both automata to `a b`, and grey and brown to `a c`, there are the groups white, and grey
//! with brown.
//!
//! Always holds: the groups stand in the order of their first value; forbidden values are in none.
//! Cost: one visit a value and active slot. A frame that is begun again keeps its memory.

use crate::automata::{Automata, StateId};
use crate::compile::plan::{At, Child};
use crate::diagram::build::Builder;
use crate::diagram::{AndId, NodeId};
use crate::label::LabelId;
use crate::lists::Lists;
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
    active: Vec<usize>,
    /// For each group what the active automata have come to.
    groups: Lists<StateId>,
    /// For each group what the automata that end here carry.
    labels: Vec<LabelId>,
    /// For each value that is not forbidden its group.
    group_of: Vec<(u16, u32)>,
    /// For each value what the active automata come to.
    after: Vec<StateId>,
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
        let is_active = |(_, state): &(usize, &StateId)| automata.rank(**state) == Some(at.rank);
        let active = self.slots.iter().enumerate().filter(is_active);
        self.active.clear();
        self.active.extend(active.map(|(slot, _)| slot));
        self.read(automata, size);
        self.group(size);
        self.label(builder);
        self.enter();
    }

    /// Reads what the active automata come to, value after value.
    fn read(&mut self, automata: &Automata, size: usize) {
        let count = self.active.len();
        self.after.clear();
        self.after.resize(size * count, StateId::FORBIDDEN);
        for (column, slot) in self.active.iter().enumerate() {
            let state = self.slots.get(*slot).copied().unwrap_or(StateId::EMPTY);
            let cells = self.after.iter_mut().skip(column).step_by(count);
            for (cell, child) in cells.zip(automata.children(state)) {
                *cell = *child;
            }
        }
    }

    fn group(&mut self, size: usize) {
        let count = self.active.len();
        self.groups.clear();
        self.group_of.clear();
        for value in 0..size {
            let after = self.after.get(value * count..(value + 1) * count);
            let after = after.unwrap_or_default();
            if !after.contains(&StateId::FORBIDDEN) {
                let value = u16::try_from(value).unwrap_or(u16::MAX);
                self.group_of.push((value, self.groups.number(0, after)));
            }
        }
    }

    fn label(&mut self, builder: &mut Builder) {
        self.labels.clear();
        for (_, after) in self.groups.iter() {
            let ended = after.iter().filter_map(|state| state.label());
            let label = ended.fold(LabelId::EMPTY, |all, one| builder.label(all, one));
            self.labels.push(label);
        }
    }

    /// Puts into the slots what the group to be visited has come to; leaves are paid for already.
    fn enter(&mut self) {
        let group = u32::try_from(self.edges.len()).unwrap_or(u32::MAX);
        for (slot, state) in self.active.iter().zip(self.groups.list(group)) {
            if let Some(place) = self.slots.get_mut(*slot) {
                *place = if state.is_leaf() { StateId::EMPTY } else { *state };
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
    pub(crate) fn close(&mut self) {
        self.edges.push(None);
        self.below.clear();
        self.enter();
    }

    /// Ends a group whose children are all known.
    pub(crate) fn keep(&mut self, builder: &mut Builder) {
        let label = self.labels.get(self.edges.len()).copied();
        let and = builder.and(&self.below);
        self.edges.push(Some((label.unwrap_or(LabelId::EMPTY), and)));
        self.below.clear();
        self.enter();
    }

    /// The values that something holds below, rising, each with its edge.
    pub(crate) fn values(&self) -> impl Iterator<Item = (u16, LabelId, AndId)> {
        self.group_of.iter().filter_map(|(value, group)| {
            let (label, and) = self.edges.get(*group as usize).copied().flatten()?;
            Some((*value, label, and))
        })
    }
}
