//! The answer to *complete, cheapest*: one whole unit with the fewest changed picks, and the least subtotal among those.
//!
//! What is unknown counts as not holding, so that what is found holds for certain. Among units that are equally good the first in
//! catalog order is taken: the first option of the first attribute that one of them has, then of the second among those
//! that are left. With white or grey, and plain or tempered glass, all at no price and grey not made in plain glass,
//! white in plain glass is found.
//!
//! Always holds: a pinned pick never changes; the unit is judged before it is handed out, and its subtotal is what judging says.
//! Cost: two passes, two more for each attribute at which units that are equally good differ, and judging once. A unit that
//! may hold may need fewer changes than the one that is found; `Engine::selection` says so.

use std::collections::BTreeMap;

use astragal_model::{AttributeIndex, Choice, Date, Judgement, Origin, Setting, Unit, Verdict, Wants, judge};
use thiserror::Error;

use crate::diagram::Diagram;
use crate::network::Variable;
use crate::options::{Picked, picked};
use crate::pass::{Scratch, least, options};
use crate::prepare::{Certainty, Prepared};
use crate::weights::{Weight, Weights};

/// What comes of completing picks.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Completion {
    /// Nothing holds, even with everything unknown counted as holding.
    Impossible,
    /// Something may hold, but nothing is certain.
    Unknown {
        /// Everything that some gate or price of the catalog would need to be known: more than one unit needs.
        wants: Wants,
    },
    /// This unit holds.
    Found(Box<Completed>),
}

/// A whole unit that holds.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Completed {
    /// For each attribute the position among its values: the options, then *not asked* where it has a condition.
    pub values: Vec<usize>,
    /// How many picks were changed.
    pub changes: i64,
    /// The subtotal in minor units; nothing without a book.
    pub cents: i64,
    /// The unit. What a pick chose and kept is picked, everything else is filled in.
    pub unit: Unit,
    /// What judging says of the unit.
    pub judgement: Judgement,
}

/// Judging a completed unit says something else than the diagram, which is a fault of this program, or of a setting
/// that is not the one that was prepared.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error(
    "the engine found a unit that holds at {cents} minor units, and judging it gives `{verdict:?}` at {judged:?}; nothing is answered"
)]
pub struct Disagreement {
    /// The position of the value of each attribute.
    pub values: Vec<usize>,
    /// The subtotal that the diagram gives.
    pub cents: i64,
    /// The verdict of judging.
    pub verdict: Verdict,
    /// The subtotal of judging in minor units, where it is known.
    pub judged: Option<i64>,
}

/// What is asked for: picks, at most one an attribute, and the dates of the quotes from which some were carried over.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Asked<'a> {
    pub(crate) picks: &'a [Picked],
    pub(crate) quoted: &'a BTreeMap<AttributeIndex, Date>,
}

/// The completion of picks.
pub(crate) fn complete(
    diagram: &Diagram,
    prepared: &Prepared,
    setting: &Setting<'_>,
    asked: Asked<'_>,
) -> Result<Completion, Disagreement> {
    let mut scratch = Scratch::default();
    let certain = picked(diagram, prepared.weights(Certainty::Certain), asked.picks);
    let Some((weight, values)) = first_of_the_best(diagram, certain, &mut scratch) else {
        let possible = picked(diagram, prepared.weights(Certainty::NotRuledOut), asked.picks);
        return Ok(if least(diagram, &possible, &mut scratch).is_feasible() {
            Completion::Unknown {
                wants: prepared.wants(),
            }
        } else {
            Completion::Impossible
        });
    };
    let completed = judged(setting, asked, weight, values)?;
    Ok(Completion::Found(Box::new(completed)))
}

/// The unit of these values, judged.
fn judged(
    setting: &Setting<'_>,
    asked: Asked<'_>,
    weight: Weight,
    values: Vec<usize>,
) -> Result<Completed, Disagreement> {
    let unit = unit(setting, asked, &values);
    let judgement = judge(setting, &unit);
    let cents = weight.cents();
    let subtotal = judgement.subtotal.as_ref();
    let judged = subtotal.and_then(astragal_model::Money::minor_units);
    let agrees = judgement.verdict == Verdict::Holds && (setting.book.is_none() || judged == Some(cents));
    if !agrees {
        return Err(Disagreement {
            values,
            cents,
            verdict: judgement.verdict,
            judged,
        });
    }
    Ok(Completed {
        values,
        changes: weight.changes(),
        cents,
        unit,
        judgement,
    })
}

/// The least weight, and of the units that have it the first in catalog order; `None` when nothing can be had.
fn first_of_the_best(
    diagram: &Diagram,
    mut weights: Weights,
    scratch: &mut Scratch,
) -> Option<(Weight, Vec<usize>)> {
    let mut best = Vec::new();
    let least = options(diagram, &weights, scratch, &mut best);
    if !least.is_feasible() {
        return None;
    }
    let mut values = Vec::new();
    for (position, domain) in diagram.domains().iter().enumerate() {
        let option = |value: usize| diagram.option(Variable::at(position), value);
        let weighs_least = |value: &usize| {
            let weight = option(*value).and_then(|option| best.get(option));
            weight == Some(&least)
        };
        let mut tied = (0..domain.size).filter(weighs_least);
        values.push(tied.next()?);
        let others: Vec<usize> = tied.filter_map(option).collect();
        if others.is_empty() {
            continue;
        }
        for other in others {
            if let Some(weight) = weights.options.get_mut(other) {
                *weight = Weight::INFEASIBLE;
            }
        }
        options(diagram, &weights, scratch, &mut best);
    }
    Some((least, values))
}

/// The unit of these values.
fn unit(setting: &Setting<'_>, asked: Asked<'_>, values: &[usize]) -> Unit {
    let attributes = setting.catalog.declarations().attributes.iter();
    let choice = |((index, attribute), value): ((AttributeIndex, &astragal_model::Attribute), &usize)| {
        let is_kept = |pick: &Picked| pick.attribute == index && pick.value == *value;
        let Some(option) = attribute.options.get(*value) else {
            return Choice::NotAsked;
        };
        Choice::Chosen {
            option: option.id.clone(),
            origin: if asked.picks.iter().any(is_kept) {
                Origin::Picked {
                    quoted: asked.quoted.get(&index).copied(),
                }
            } else {
                Origin::Standard
            },
        }
    };
    Unit {
        choices: attributes.zip(values).map(choice).collect(),
    }
}
