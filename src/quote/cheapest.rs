//! The cheapest unit with the same picks, beside the one that is quoted.
//!
//! Cost: one completion.

use astragal_core::complete::Aim;
use astragal_model::{AttributeIndex, Choice, Judgement, Money, Number, Total, Verdict};

use crate::quote::asking::Asking;
use crate::quote::completion::Quoted;

/// The cheapest unit with the same picks.
#[derive(Default)]
pub(crate) enum Cheapest {
    /// There is none, or it was not asked for.
    #[default]
    None,
    /// It depends on what is not known.
    Depends,
    /// The quoted unit costs no more.
    Quoted,
    /// Another unit costs less.
    Less(Box<Less>),
}

/// Two units with the same picks, of which one costs less.
pub(crate) struct Less {
    /// What the cheapest costs.
    pub(crate) cheapest: Money,
    /// How much more the other one costs.
    pub(crate) saves: Money,
    /// What the other unit has where they differ: with standards where the cheapest is quoted, the cheapest otherwise.
    pub(crate) instead: Vec<(AttributeIndex, Choice)>,
}

/// Compares a unit with the cheapest, and quotes that one where it is the aim.
///
/// # Errors
/// When the engine and the judge disagree.
pub(crate) fn compare(quoted: &mut Quoted, asking: &Asking<'_>, aim: Aim) -> Result<Cheapest, String> {
    if quoted.verdict() == Verdict::Broken {
        return Ok(Cheapest::None);
    }
    let Some(best) = asking.best(Aim::Cheapest, Some(&quoted.unit))? else {
        return Ok(Cheapest::None);
    };
    if best.depends {
        return Ok(Cheapest::Depends);
    }
    let mut other = best.completed;
    let (Some(cheapest), Some(dear)) = (total(&other.judgement), total(&quoted.judgement)) else {
        return Ok(Cheapest::None);
    };
    let saves = dear.plus(&cheapest.times(&Number::from(-1)));
    let Some(saves) = saves.filter(|saves| !saves.amount().is_zero()) else {
        return Ok(Cheapest::Quoted);
    };
    let cheapest = cheapest.clone();
    if aim == Aim::Cheapest {
        std::mem::swap(&mut quoted.unit, &mut other.unit);
        std::mem::swap(&mut quoted.judgement, &mut other.judgement);
    }
    let here = &quoted.unit.choices;
    let differs = |(attribute, choice): &(AttributeIndex, &Choice)| {
        here.get(*attribute).and_then(Choice::option) != choice.option()
    };
    let instead = other.unit.choices.iter().filter(differs);
    Ok(Cheapest::Less(Box::new(Less {
        cheapest,
        saves,
        instead: instead
            .map(|(attribute, choice)| (attribute, choice.clone()))
            .collect(),
    })))
}

fn total(judgement: &Judgement) -> Option<&Money> {
    match &judgement.total {
        Total::Known(total) => Some(total),
        Total::NotPriced | Total::Unknown(_) | Total::NoPrice => None,
    }
}
