//! How a unit was filled in, as the contract has it, and the way out where it does not hold.
//!
//! Nothing is worked out here: every field is read off what the quote found.

use astragal_model::Subject;

use crate::quote::ask::UsedOn;
use crate::quote::completion::Completing;
use crate::quote::nearest::{ChangedPick, Nearest};
use crate::serve::options::count;
use crate::serve::v1::{self, changed_pick::Becomes};

/// How a unit was filled in.
pub(super) fn fill_in(on: UsedOn<'_>, completion: &Completing) -> v1::FillIn {
    let because = completion.because.iter().map(|(rule, message)| v1::MendedRule {
        rule: rule.clone(),
        message: message.clone(),
    });
    let departures = completion.departures.iter();
    let departures = departures.map(|(attribute, standard)| v1::Departure {
        attribute: on.used.catalog.name_of(Subject::Attribute(*attribute)),
        standard: standard.to_string(),
    });
    v1::FillIn {
        because: because.collect(),
        departures: departures.collect(),
        least_changes: completion.least_changes.map(count),
        impossible: completion.is_impossible,
        changes_without_pins: completion.changes_without_pins.map(count),
        nearest: completion.nearest.as_ref().map(|one| nearest(on, one)),
    }
}

fn nearest(on: UsedOn<'_>, nearest: &Nearest) -> v1::NearestUnit {
    v1::NearestUnit {
        changed: changed_picks(on, &nearest.changed),
        depends: nearest.depends,
    }
}

/// The picks that a unit changes.
pub(super) fn changed_picks(on: UsedOn<'_>, changed: &[ChangedPick]) -> Vec<v1::ChangedPick> {
    let one = |pick: &ChangedPick| v1::ChangedPick {
        attribute: on.used.catalog.name_of(Subject::Attribute(pick.attribute)),
        from: pick.from.to_string(),
        becomes: Some(match &pick.to {
            Some(to) => Becomes::To(to.to_string()),
            None => Becomes::NotAsked(true),
        }),
    };
    changed.iter().map(one).collect()
}
