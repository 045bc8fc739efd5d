//! One node in the making: its values in groups after which nothing differs.
//!
//! Always holds: the groups stand in the order of their first value; a group's values rise; forbidden values are in none.

use rustc_hash::FxHashMap;

use crate::automata::{Automata, StateId};
use crate::compile::plan::At;
use crate::diagram::build::Builder;
use crate::diagram::{AndId, NodeId};
use crate::label::LabelId;
use crate::network::Variable;

/// One node in the making.
pub(crate) struct Frame {
    pub(crate) variable: Variable,
    pub(crate) state: Box<[StateId]>,
    pub(crate) groups: Vec<Group>,
    /// The group that is being visited.
    pub(crate) group: usize,
    /// The children of that group so far.
    pub(crate) below: Vec<NodeId>,
    pub(crate) edges: Vec<(LabelId, AndId, Vec<u16>)>,
}

/// Values after which nothing differs.
pub(crate) struct Group {
    pub(crate) values: Vec<u16>,
    pub(crate) label: LabelId,
    slots: Vec<StateId>,
}

impl Group {
    /// What the automaton in a slot has come to; leaves are paid for already.
    pub(crate) fn state(&self, slot: usize) -> StateId {
        self.slots.get(slot).copied().unwrap_or(StateId::EMPTY)
    }
}

impl Frame {
    pub(crate) fn new(
        automata: &Automata,
        at: &At,
        variable: Variable,
        size: usize,
        state: Box<[StateId]>,
        builder: &mut Builder,
    ) -> Self {
        let before: Vec<StateId> = state.iter().chain(&at.beginning).copied().collect();
        let active: Vec<usize> = (0..before.len())
            .filter(|slot| before.get(*slot).and_then(|state| automata.rank(*state)) == Some(at.rank))
            .collect();
        let mut places: FxHashMap<Vec<StateId>, usize> = FxHashMap::default();
        let mut groups: Vec<Group> = Vec::new();
        let mut after = Vec::with_capacity(active.len());
        for value in 0..size {
            after.clear();
            let children = active.iter().filter_map(|slot| before.get(*slot));
            after.extend(children.map(|state| automata.child(*state, value)));
            if after.contains(&StateId::FORBIDDEN) {
                continue;
            }
            let value = u16::try_from(value).unwrap_or(u16::MAX);
            if let Some(group) = places.get(&after).and_then(|place| groups.get_mut(*place)) {
                group.values.push(value);
                continue;
            }
            places.insert(after.clone(), groups.len());
            groups.push(group(&before, &active, &after, value, builder));
        }
        Self {
            variable,
            state,
            groups,
            group: 0,
            below: Vec::new(),
            edges: Vec::new(),
        }
    }
}

/// A group of one value so far: its label is what the automata that end here carry.
fn group(
    before: &[StateId],
    active: &[usize],
    after: &[StateId],
    value: u16,
    builder: &mut Builder,
) -> Group {
    let mut slots = before.to_vec();
    let mut label = LabelId::EMPTY;
    for (slot, state) in active.iter().zip(after) {
        let come_to = match state.label() {
            Some(ended) => {
                label = builder.label(label, ended);
                StateId::EMPTY
            }
            None => *state,
        };
        if let Some(place) = slots.get_mut(*slot) {
            *place = come_to;
        }
    }
    Group {
        values: vec![value],
        label,
        slots,
    }
}
