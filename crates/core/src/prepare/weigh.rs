//! Turns gates, cells and masks into weights: what is not ruled out, and what is certain.

use crate::diagram::Diagram;
use crate::prepare::settled::{LabelState, Settled};
use crate::weights::{Cost, Weight, Weights};

/// What is asked for: whatever is not ruled out, or what is certain.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Certainty {
    /// What is unknown counts as if it held.
    NotRuledOut,
    /// What is unknown counts as if it did not hold.
    Certain,
}

/// The weights of options and labels before any pick.
pub(crate) fn weights(settled: &Settled, diagram: &Diagram, masks: &[bool], certainty: Certainty) -> Weights {
    let label = |state: LabelState| match (state, certainty) {
        (LabelState::Closed, _) | (LabelState::Unknown(_), Certainty::Certain) => Weight::INFEASIBLE,
        (LabelState::Open(cents), _) | (LabelState::Unknown(cents), Certainty::NotRuledOut) => {
            Weight::new(0, cents)
        }
    };
    let labels = diagram.labels().iter().map(|one| label(settled.label(one)));
    let options = masks
        .iter()
        .map(|open| if *open { Weight::ZERO } else { Weight::INFEASIBLE });
    Weights {
        options: options.collect(),
        labels: labels.collect(),
    }
}
