//! One node in the making: which group of its values is being visited, and what the groups before came to.
//!
//! The *active* slots are those whose automata read the variable; only what they have come to decides the groups.
//!
//! Cost: one visit an active slot for each group. A frame that is begun again keeps its memory.

use crate::automata::{Automata, StateId};
use crate::compile::grouping::{Grouping, Groupings};
use crate::compile::plan::{At, Child};
use crate::diagram::build::Builder;
use crate::diagram::{AndId, NodeId};
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
    grouping: Grouping,
}

impl Frame {
    /// Begins a node; `state` is what crosses into its subtree from above.
    pub(crate) fn begin(
        &mut self,
        automata: &Automata,
        at: &At,
        size: usize,
        state: &[StateId],
        groupings: &mut Groupings,
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
        let states = self.active.iter().map(|(_, state)| *state);
        self.grouping = groupings.find(automata, self.variable, size, states, builder);
        self.enter(automata, groupings);
    }

    /// Puts into the slots what the group to be visited has come to; leaves are paid for already.
    fn enter(&mut self, automata: &Automata, groupings: &Groupings) {
        let Some(value) = groupings.first_value(self.grouping, self.edges.len()) else {
            return;
        };
        for (slot, state) in &self.active {
            let after = automata.child(*state, value);
            if let Some(place) = self.slots.get_mut(*slot) {
                *place = if after.is_leaf() { StateId::EMPTY } else { after };
            }
        }
    }

    /// Whether all groups were visited.
    pub(crate) fn is_done(&self) -> bool {
        self.edges.len() >= self.grouping.count()
    }

    /// The state of a child after the group that is being visited.
    pub(crate) fn state_of(&self, child: &Child) -> impl Iterator<Item = StateId> {
        let slots = child.slots.iter();
        slots.map(|slot| self.slots.get(*slot).copied().unwrap_or(StateId::EMPTY))
    }

    /// Ends a group below which nothing holds.
    pub(crate) fn close(&mut self, automata: &Automata, groupings: &Groupings) {
        self.edges.push(None);
        self.below.clear();
        self.enter(automata, groupings);
    }

    /// Ends a group whose children are all known.
    pub(crate) fn keep(&mut self, automata: &Automata, groupings: &Groupings, builder: &mut Builder) {
        let label = groupings.label(self.grouping, self.edges.len());
        let and = builder.and(&self.below);
        self.edges.push(Some((label, and)));
        self.below.clear();
        self.enter(automata, groupings);
    }

    /// The values that something holds below, rising, each with its edge.
    pub(crate) fn values(&self, groupings: &Groupings) -> impl Iterator<Item = (u16, LabelId, AndId)> {
        groupings
            .values(self.grouping)
            .iter()
            .filter_map(|(value, group)| {
                let (label, and) = self.edges.get(*group as usize).copied().flatten()?;
                Some((*value, label, and))
            })
    }
}
