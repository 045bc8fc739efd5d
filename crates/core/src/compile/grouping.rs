//! The values of a variable in groups after which nothing differs.
//!
//! Values after which all active automata have come to the same are one group. With white leading both automata to `a b`, and grey
//! and brown to `a c`, there are the groups white, and grey with brown.
//!
//! Always holds: the groups stand in the order of their first value; forbidden values are in none; the same active states
//! have the same groups, found once.
//! Cost: two visits a value and active automaton; a look-up where the groups are known.

use crate::automata::{Automata, StateId};
use crate::diagram::build::Builder;
use crate::index::Index;
use crate::label::LabelId;
use crate::lists::Lists;
use crate::network::Variable;

/// Where the groups of some active states stand.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Grouping {
    first_group: usize,
    end_group: usize,
    first_value: usize,
    end_value: usize,
}

impl Grouping {
    /// How many groups there are.
    pub(crate) fn count(self) -> usize {
        self.end_group - self.first_group
    }
}

/// All groups found so far.
#[derive(Default)]
pub(crate) struct Groupings {
    /// The active states under their variable.
    known: Lists<StateId>,
    found: Vec<Grouping>,
    /// For each group its first value, which stands for all, and what the automata that end here carry.
    groups: Vec<(u16, LabelId)>,
    /// Each value that is not forbidden, with its group among those of its grouping.
    values: Vec<(u16, u32)>,
    /// Memory that is used again: the states asked for; for each value a hash of what they come to, and whether none forbids
    /// it; the groups by hash.
    states: Vec<StateId>,
    hashes: Vec<(u64, bool)>,
    index: Index,
}

impl Groupings {
    /// The groups of a variable with so many values after these states.
    pub(crate) fn find(
        &mut self,
        automata: &Automata,
        variable: Variable,
        size: usize,
        states: impl Iterator<Item = StateId>,
        builder: &mut Builder,
    ) -> Grouping {
        self.states.clear();
        self.states.extend(states);
        let number = self.known.number(variable.0, &self.states) as usize;
        if let Some(found) = self.found.get(number) {
            return *found;
        }
        let (first_group, first_value) = (self.groups.len(), self.values.len());
        self.read(automata, size);
        self.group(automata, first_group);
        self.pay(automata, first_group, builder);
        let grouping = Grouping {
            first_group,
            end_group: self.groups.len(),
            first_value,
            end_value: self.values.len(),
        };
        self.found.push(grouping);
        grouping
    }

    /// How many bytes they take.
    pub(crate) fn bytes(&self) -> usize {
        self.known.bytes() + size_of_val(self.groups.as_slice()) + size_of_val(self.values.as_slice())
    }

    /// The first value of a group.
    pub(crate) fn first_value(&self, grouping: Grouping, group: usize) -> Option<u16> {
        self.of(grouping).get(group).map(|(value, _)| *value)
    }

    /// What the automata that end with a group carry.
    pub(crate) fn label(&self, grouping: Grouping, group: usize) -> LabelId {
        self.of(grouping)
            .get(group)
            .map_or(LabelId::EMPTY, |(_, label)| *label)
    }

    /// The values that are not forbidden, rising, each with its group.
    pub(crate) fn values(&self, grouping: Grouping) -> &[(u16, u32)] {
        let values = self.values.get(grouping.first_value..grouping.end_value);
        values.unwrap_or_default()
    }

    fn of(&self, grouping: Grouping) -> &[(u16, LabelId)] {
        let groups = self.groups.get(grouping.first_group..grouping.end_group);
        groups.unwrap_or_default()
    }

    /// Hashes what the active automata come to, automaton after automaton.
    fn read(&mut self, automata: &Automata, size: usize) {
        self.hashes.clear();
        self.hashes.resize(size, (0, true));
        for state in &self.states {
            for ((hash, allowed), child) in self.hashes.iter_mut().zip(automata.children(*state)) {
                *hash = child.mixed_into(*hash);
                *allowed &= *child != StateId::FORBIDDEN;
            }
        }
    }

    /// Puts each value that is not forbidden into its group.
    fn group(&mut self, automata: &Automata, first_group: usize) {
        self.index.clear();
        let allowed = self.hashes.iter().enumerate();
        for (value, (hash, _)) in allowed.filter(|(_, (_, allowed))| *allowed) {
            let (states, groups) = (&self.states, &self.groups);
            let same = |group: u32| {
                let first = groups.get(first_group + group as usize);
                let first = first.map(|(value, _)| usize::from(*value));
                states.iter().all(|state| {
                    let children = automata.children(*state);
                    first.and_then(|first| children.get(first)) == children.get(value)
                })
            };
            let short = u16::try_from(value).unwrap_or(u16::MAX);
            let next = u32::try_from(groups.len() - first_group).unwrap_or(u32::MAX);
            let group = self.index.find(*hash, same).unwrap_or(next);
            if group == next {
                self.groups.push((short, LabelId::EMPTY));
                self.index.insert(*hash, group);
            }
            self.values.push((short, group));
        }
    }

    /// Joins what the automata that end with each group carry.
    fn pay(&mut self, automata: &Automata, first_group: usize, builder: &mut Builder) {
        for (value, label) in self.groups.iter_mut().skip(first_group) {
            let after = self.states.iter().map(|state| automata.child(*state, *value));
            let ended = after.filter_map(StateId::label);
            *label = ended.fold(LabelId::EMPTY, |all, one| builder.label(all, one));
        }
    }
}
