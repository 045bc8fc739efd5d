//! The answer to *options*: for every option of every attribute, the fewest picks that must change and the least subtotal.
//!
//! An option is *free* when no pick but its attribute's own must change. Two questions are asked: with what is unknown
//! counted as holding, which gives what is not ruled out, and as not holding, which gives what is certain.
//!
//! Always holds: a change of the attribute's own pick does not count; a pinned pick never changes.
//! Cost: two passes each, or for both together where nothing is unknown.

use astragal_model::AttributeIndex;

use crate::diagram::Diagram;
use crate::network::Variable;
use crate::pass::{Scratch, least, options};
use crate::prepare::{Certainty, Prepared};
use crate::weights::{Cost, Weight, Weights};

/// A pick: the attribute, the position of the option, whether it may change.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Picked {
    /// The attribute.
    pub attribute: AttributeIndex,
    /// The position of the option among the attribute's values.
    pub value: usize,
    /// Whether the pick must never change.
    pub pinned: bool,
    /// Whether the option is honoured although it is no longer offered.
    pub honoured: bool,
}

/// What is to be said of one option.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct OptionAnswer {
    /// With what is unknown counted as holding, how many picks, the attribute's own left out, must change; `None` when the
    /// option is ruled out. What it would cost then is said by [`Waits`](crate::waits::Waits), where it is known.
    pub possible: Option<i64>,
    /// With what is unknown counted as not holding; `None` when nothing is certain.
    pub certain: Option<Least>,
    /// Whether something unknown may still make it better than what is certain.
    pub depends: bool,
}

impl OptionAnswer {
    fn new(possible: Option<Least>, certain: Option<Least>) -> Self {
        Self {
            possible: possible.map(|least| least.changes),
            certain,
            depends: possible != certain,
        }
    }
}

/// The fewest changes, and the least subtotal among those.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Least {
    /// How many picks, the attribute's own left out, must change.
    pub changes: i64,
    /// The least subtotal in minor units.
    pub cents: i64,
}

/// The picks that stand: of two of one attribute the later.
pub(crate) fn standing(picks: &[Picked]) -> Vec<Picked> {
    let later = |at: usize, pick: &Picked| {
        let mut after = picks.iter().skip(at + 1);
        after.any(|other| other.attribute == pick.attribute)
    };
    let standing = picks.iter().enumerate().filter(|(at, pick)| !later(*at, pick));
    standing.map(|(_, pick)| *pick).collect()
}

/// The answer for the picks as they stand.
pub(crate) fn selection(diagram: &Diagram, prepared: &Prepared, picks: &[Picked]) -> OptionAnswer {
    let mut scratch = Scratch::default();
    let mut of = |certainty| {
        let weights = picked(diagram, prepared.weights(certainty), picks);
        let weight = least(diagram, &weights, &mut scratch);
        weight.is_feasible().then(|| Least {
            changes: weight.changes(),
            cents: weight.cents(),
        })
    };
    OptionAnswer::new(of(Certainty::NotRuledOut), of(Certainty::Certain))
}

/// The answer for the picks as they stand, and for every option by attribute and value.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Answers {
    /// The picks as they stand.
    pub selection: OptionAnswer,
    /// For every attribute its values.
    pub options: Vec<Vec<OptionAnswer>>,
}

/// The answers; one question does where nothing is unknown.
pub(crate) fn answers(diagram: &Diagram, prepared: &Prepared, picks: &[Picked]) -> Answers {
    let mut scratch = Scratch::default();
    let mut ask = |certainty, best: &mut Vec<Weight>| {
        let weights = picked(diagram, prepared.weights(certainty), picks);
        options(diagram, &weights, &mut scratch, best)
    };
    let (mut possible, mut certain) = (Vec::new(), Vec::new());
    let least_possible = ask(Certainty::NotRuledOut, &mut possible);
    let least_certain = if prepared.is_known() {
        least_possible
    } else {
        ask(Certainty::Certain, &mut certain)
    };
    let certain = if prepared.is_known() { &possible } else { &certain };
    let said = |weight: Weight, own: i64| {
        weight.is_feasible().then(|| Least {
            changes: weight.changes() - own,
            cents: weight.cents(),
        })
    };
    let of = |position: usize, value: usize| {
        let option = diagram.option(Variable::at(position), value)?;
        let own = picks.iter().rfind(|pick| pick.attribute.0 == position);
        let own = i64::from(own.is_some_and(|pick| pick.value != value));
        let said = |weights: &[Weight]| weights.get(option).and_then(|weight| said(*weight, own));
        Some(OptionAnswer::new(said(&possible), said(certain)))
    };
    let domains = diagram.domains().iter().enumerate();
    Answers {
        selection: OptionAnswer::new(said(least_possible, 0), said(least_certain, 0)),
        options: domains
            .map(|(position, domain)| (0..domain.size).filter_map(|value| of(position, value)).collect())
            .collect(),
    }
}

/// Weights with a change for every option that is not picked, where another is.
pub(crate) fn picked(diagram: &Diagram, base: &Weights, picks: &[Picked]) -> Weights {
    let mut weights = base.clone();
    for pick in picks {
        let size = diagram
            .domains()
            .get(pick.attribute.0)
            .map_or(0, |domain| domain.size);
        for value in 0..size {
            let Some(option) = diagram.option(Variable::at(pick.attribute.0), value) else {
                continue;
            };
            let Some(weight) = weights.options.get_mut(option) else {
                continue;
            };
            if value == pick.value {
                if pick.honoured {
                    *weight = Weight::ZERO;
                }
            } else if pick.pinned {
                *weight = Weight::INFEASIBLE;
            } else {
                *weight = weight.plus(Weight::new(1, 0));
            }
        }
    }
    weights
}
