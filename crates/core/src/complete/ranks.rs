//! The ranks of options and labels under a wish.

use astragal_model::{AttributeIndex, Choice, Unit};

use crate::complete::Wish;
use crate::diagram::Diagram;
use crate::label::Label;
use crate::network::Variable;
use crate::prepare::{Certainty, Prepared};
use crate::rank::{Counts, Rank, UNKNOWN_CENTS};
use crate::weights::{Cost, Weights};

/// What every option and label counts. Where an amount is not known, it counts as less than every other.
pub(super) fn ranks(
    diagram: &Diagram,
    prepared: &Prepared,
    wish: &Wish<'_>,
    certainty: Certainty,
) -> Weights<Rank> {
    let base = prepared.weights(certainty);
    let mut ranks = Weights {
        options: vec![Rank::INFEASIBLE; diagram.option_count()],
        labels: Vec::with_capacity(diagram.labels().len()),
    };
    for (position, domain) in diagram.domains().iter().enumerate() {
        for value in 0..domain.size {
            let Some(option) = diagram.option(Variable::at(position), value) else {
                continue;
            };
            let is_open = base
                .options
                .get(option)
                .is_some_and(|weight| weight.is_feasible());
            if let Some(rank) = ranks.options.get_mut(option) {
                *rank = of_option(prepared, wish, AttributeIndex(position), value, is_open);
            }
        }
    }
    let labels = diagram.labels().iter().zip(&base.labels);
    ranks.labels.extend(labels.map(|(label, weight)| {
        if weight.is_feasible() {
            of_label(prepared, wish, label, weight.cents())
        } else {
            Rank::INFEASIBLE
        }
    }));
    ranks
}

fn of_option(
    prepared: &Prepared,
    wish: &Wish<'_>,
    attribute: AttributeIndex,
    value: usize,
    is_open: bool,
) -> Rank {
    let pick = wish.pick(attribute);
    let kept = pick.filter(|pick| pick.value == value);
    if !is_open && !kept.is_some_and(|pick| pick.honoured) {
        return Rank::INFEASIBLE;
    }
    if kept.is_some() {
        return Rank::ZERO;
    }
    if pick.is_some_and(|pick| pick.pinned) {
        return Rank::INFEASIBLE;
    }
    let moves = wish.near.and_then(|near| position(wish, near, attribute));
    let counts = Counts {
        changes: i64::from(pick.is_some()),
        departures: i64::from(prepared.departs(attribute, value)),
        moves: i64::from(moves.is_some_and(|stands| stands != value)),
        cents: 0,
    };
    Rank::new(wish.aim, counts)
}

fn of_label(prepared: &Prepared, wish: &Wish<'_>, label: &Label, cents: i64) -> Rank {
    let departs = |(attribute, value)| wish.pick(attribute).is_none_or(|pick| pick.value != value);
    let departing = label
        .cells()
        .iter()
        .filter_map(|cell| prepared.departures.cell(*cell));
    let departures = departing.filter(|one| departs(*one)).count();
    let counts = Counts {
        departures: i64::try_from(departures).unwrap_or(i64::MAX),
        cents: if prepared.settled.has_unknown_amount(label) {
            UNKNOWN_CENTS
        } else {
            cents
        },
        ..Counts::default()
    };
    Rank::new(wish.aim, counts)
}

/// The position of what stands at an attribute of a unit; `None` where it is open, or not of this catalog.
fn position(wish: &Wish<'_>, unit: &Unit, attribute: AttributeIndex) -> Option<usize> {
    let options = &wish
        .setting
        .catalog
        .declarations()
        .attributes
        .get(attribute)?
        .options;
    match unit.choices.get(attribute)? {
        Choice::Open => None,
        Choice::NotAsked => Some(options.len()),
        Choice::Chosen { option, .. } => options.iter().position(|entry| entry.id == *option),
    }
}
