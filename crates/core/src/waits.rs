//! What must be known before it is certain that an option can be had.
//!
//! For every option that is not ruled out the best unit with it is taken, everything unknown counted as holding: fewest changes, then
//! the least subtotal, where an amount that is not known counts as less than any other. The option waits for what that unit's
//! gates and cells want. A casement whose width limit waits for the width waits for the width; an awning beside it for nothing.
//!
//! Always holds: an option that waits for nothing is certain. Not the other way round: a dearer unit may wait for less.
//! Cost: the two passes, and a walk up and down with marks.

use astragal_model::{Want, Wants};

use crate::diagram::Diagram;
use crate::network::Variable;
use crate::options::{Answers, Least, OptionAnswer, Picked, answers, picked};
use crate::pass::witness::{Mark, Marked, marked};
use crate::prepare::{Certainty, Prepared};
use crate::rank::{Aim, Counts, Rank, UNKNOWN_CENTS};
use crate::weights::{Cost, Weight, Weights};

/// LIMIT: distinct wants that are told apart; where more are wanted the last place stands for all the others.
const TOLD_APART: usize = 128;

/// What the best unit waits for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wait {
    /// What must be known. Where the setting wants more than 128 things, those from the 128th on are named together.
    pub wants: Wants,
    /// What the unit comes to if all turns out as it needs; `None` where an amount is not known.
    pub least: Option<Least>,
}

/// What the selection and every option waits for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Waits {
    /// The best unit; `None` when nothing holds.
    pub best: Option<Wait>,
    /// By attribute and value; `None` for an option that is ruled out.
    pub options: Vec<Vec<Option<Wait>>>,
}

/// Nobody waits where everything is known.
fn known(answers: Answers) -> Waits {
    let wait = |answer: OptionAnswer| {
        let least = Some(answer.certain?);
        Some(Wait {
            wants: Wants::new(),
            least,
        })
    };
    let of_attribute = |options: Vec<OptionAnswer>| options.into_iter().map(wait).collect();
    Waits {
        best: wait(answers.selection),
        options: answers.options.into_iter().map(of_attribute).collect(),
    }
}

/// What every option waits for.
pub(crate) fn waits(diagram: &Diagram, prepared: &Prepared, picks: &[Picked]) -> Waits {
    if prepared.is_known() {
        return known(answers(diagram, prepared, picks));
    }
    let all: Vec<Want> = prepared.wants().into_iter().collect();
    let place = |want: &Want| all.binary_search(want).unwrap_or(0).min(TOLD_APART - 1);
    let mark = |wants: &Wants| wants.iter().fold(0, |mark: Mark, want| mark | (1 << place(want)));
    let of_label = |label| {
        let wants = prepared.settled.wants_of(label);
        wants.fold(0, |marks, wants| marks | mark(wants))
    };
    let marks: Vec<Mark> = diagram.labels().iter().map(of_label).collect();
    let (best, options) = marked(diagram, &ranks(diagram, prepared, picks), &marks);
    let wait = |marked: &Marked<Rank>, own: i64| {
        let counts = marked
            .weight
            .is_feasible()
            .then(|| marked.weight.counts(Aim::Cheapest))?;
        let places = all.iter().enumerate();
        let wants = places.filter(|(at, _)| marked.mark >> (*at).min(TOLD_APART - 1) & 1 == 1);
        Some(Wait {
            wants: wants.map(|(_, want)| want.clone()).collect(),
            least: (counts.cents > UNKNOWN_CENTS / 2).then_some(Least {
                changes: counts.changes - own,
                cents: counts.cents,
            }),
        })
    };
    let of_option = |position: usize, value: usize| {
        let option = diagram.option(Variable::at(position), value)?;
        let own = picks.iter().rfind(|pick| pick.attribute.0 == position);
        let own = i64::from(own.is_some_and(|pick| pick.value != value));
        wait(options.get(option)?, own)
    };
    let domains = diagram.domains().iter().enumerate();
    Waits {
        best: wait(&best, 0),
        options: domains
            .map(|(position, domain)| (0..domain.size).map(|value| of_option(position, value)).collect())
            .collect(),
    }
}

/// Changes, then cents, everything unknown counted as holding.
fn ranks(diagram: &Diagram, prepared: &Prepared, picks: &[Picked]) -> Weights<Rank> {
    let weights = picked(diagram, prepared.weights(Certainty::NotRuledOut), picks);
    let rank = |weight: &Weight, is_unknown: bool| {
        if !weight.is_feasible() {
            return Rank::INFEASIBLE;
        }
        let counts = Counts {
            changes: weight.changes(),
            cents: if is_unknown { UNKNOWN_CENTS } else { weight.cents() },
            ..Counts::default()
        };
        Rank::new(Aim::Cheapest, counts)
    };
    let labels = diagram.labels().iter().zip(&weights.labels);
    Weights {
        options: weights.options.iter().map(|weight| rank(weight, false)).collect(),
        labels: labels
            .map(|(label, weight)| rank(weight, prepared.settled.has_unknown_amount(label)))
            .collect(),
    }
}
