//! Prepares a diagram for a setting: each gate once to open, closed or unknown, each cell once to minor units.
//!
//! Measures, facts, waivers, the day, the book and the policy are looked at here and nowhere later. A gate that is unknown
//! counts as open when asking what is not ruled out, and as closed when asking what is certain.
//!
//! What closed gates rule out is cut from the diagram, so that questions do not walk over it.
//!
//! Always holds: one preparation serves any number of questions; the compiled diagram is not touched.
//! Cost: one visit a part of a gate or charge, one a node, edge and label, and a copy of what is left.

mod charge;
mod departures;
mod settled;
mod weigh;

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{AttributeIndex, ItemIndex, Outcome, Setting, Value, Wants};
use thiserror::Error;

use crate::diagram::Diagram;
use crate::ground::Residual;
use crate::network::Variable;
use crate::prepare::charge::{Charge, Charging};
use crate::prepare::departures::Departures;
use crate::prepare::settled::{GateState, LabelState, Settled};
use crate::term::{Known, Term};
use crate::weights::{CENTS_LIMIT, Cost, Weight, Weights};

pub use crate::prepare::weigh::Certainty;
use crate::prepare::weigh::weights;

/// A diagram in a setting: what is left of it, with what everything comes to.
#[derive(Clone, Debug)]
pub struct Prepared {
    pub(crate) settled: Settled,
    pub(crate) departures: Departures,
    /// For each attribute how many options it has.
    option_counts: Vec<usize>,
    is_known: bool,
    /// What closed gates leave of the diagram.
    pub(crate) diagram: Diagram,
    possible: Weights,
    certain: Weights,
}

/// Why a setting cannot be prepared.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Error)]
pub enum NotPrepared {
    /// The amounts of a unit could add up to more minor units than are counted with.
    #[error("the amounts of one unit could reach {CENTS_LIMIT} minor units, more than is counted with")]
    TooMuchMoney,
    /// Other authorities bind than those that were compiled.
    #[error("other authorities bind in this setting than were compiled; compile the catalog for them")]
    OtherAuthorities,
    /// The policy needs a diagram of its own, and another or none was compiled in; or one was, and the setting has another.
    #[error("the policy of this setting is not the one that was compiled in; compile the catalog with it")]
    OtherPolicy,
}

impl Prepared {
    /// Looks at a setting.
    ///
    /// # Errors
    /// When the amounts of a unit could add up to more than is counted with.
    pub(crate) fn new(
        residual: &Residual,
        diagram: &Diagram,
        setting: &Setting<'_>,
    ) -> Result<Self, NotPrepared> {
        let waivers: BTreeSet<_> = setting
            .waivers
            .iter()
            .filter(|waiver| waiver.holds_on(setting.date))
            .map(|waiver| &waiver.rule)
            .collect();
        let known = Known {
            site: setting.site,
            waived: &|rule| waivers.contains(rule),
        };
        let outcomes = residual.arena.work_out(&known);
        let gates = residual.gates.iter().map(|term| match outcomes.of(*term) {
            Outcome::Known(Value::Bool(true)) => GateState::Open,
            Outcome::Unknown(wants) => GateState::Unknown(wants.clone()),
            Outcome::Known(_) | Outcome::Undefined(_) => GateState::Closed,
        });
        let charging = Charging {
            arena: &residual.arena,
            setting,
            outcomes: &outcomes,
        };
        let cells = charging.all(&residual.cells);
        refuse_too_much(residual, &cells)?;
        let settled = Settled {
            gates: gates.collect(),
            cells,
        };
        let states = diagram.labels().iter().map(|label| settled.label(label));
        let open: Vec<bool> = states.map(|state| state != LabelState::Closed).collect();
        let diagram = diagram.cut(&open);
        let mut labels = diagram.labels().iter();
        let is_known = labels.all(|label| matches!(settled.label(label), LabelState::Open(_)));
        let attributes = setting.catalog.declarations().attributes.values();
        let masks = masks(&diagram, setting);
        let weighed = |certainty| {
            let mut weights = weights(&settled, &diagram, &masks, certainty);
            if !is_in_force(setting) {
                // Labels and not options, since a pick that is honoured opens its option again.
                weights.labels.fill(Weight::INFEASIBLE);
            }
            weights
        };
        Ok(Self {
            possible: weighed(Certainty::NotRuledOut),
            certain: weighed(Certainty::Certain),
            departures: Departures::new(residual, setting, &outcomes),
            option_counts: attributes.map(|one| one.options.len()).collect(),
            settled,
            diagram,
            is_known,
        })
    }

    /// How many edges the diagram has that are left in this setting: what a question walks over.
    #[must_use]
    pub fn edge_count(&self) -> usize {
        self.diagram.edge_count()
    }

    /// Everything that some gate or price would need to be known and is not, of those that still matter in this setting.
    ///
    /// More than one question needs: what a single option depends on is among it.
    #[must_use]
    pub fn wants(&self) -> Wants {
        let labels = self.diagram.labels().iter();
        let wants = labels.flat_map(|label| self.settled.wants_of(label));
        wants.flatten().cloned().collect()
    }

    /// The weights before any pick.
    pub(crate) fn weights(&self, certainty: Certainty) -> &Weights {
        match certainty {
            Certainty::NotRuledOut => &self.possible,
            Certainty::Certain => &self.certain,
        }
    }

    /// Whether everything is known that matters in this setting.
    pub(crate) fn is_known(&self) -> bool {
        self.is_known
    }

    /// Whether an option departs from the standard of its attribute, whatever else is chosen.
    pub(crate) fn departs(&self, attribute: AttributeIndex, value: usize) -> bool {
        let options = self.option_counts.get(attribute.0).copied().unwrap_or(0);
        self.departures.option(attribute, value, options)
    }
}

/// Refuses when the largest amounts of all items together reach the limit.
fn refuse_too_much(residual: &Residual, cells: &[Charge]) -> Result<(), NotPrepared> {
    let mut largest: BTreeMap<ItemIndex, u64> = BTreeMap::new();
    for (term, charge) in residual.cells.iter().zip(cells) {
        let Term::Charge { item, .. } = residual.arena.term(*term) else {
            continue;
        };
        let amount = match charge {
            Charge::Amount(amount) => amount.unsigned_abs(),
            Charge::TooLarge => u64::MAX,
            Charge::Unknown(_) | Charge::NoPrice => 0,
        };
        let so_far = largest.entry(*item).or_default();
        *so_far = amount.max(*so_far);
    }
    let sum = largest
        .values()
        .fold(0_u64, |sum, amount| sum.saturating_add(*amount));
    if sum < CENTS_LIMIT.unsigned_abs() {
        Ok(())
    } else {
        Err(NotPrepared::TooMuchMoney)
    }
}

/// Whether the day lies within the dates of the price book, if there is one.
fn is_in_force(setting: &Setting<'_>) -> bool {
    let date = setting.date;
    setting.book.is_none_or(|book| {
        book.from.is_none_or(|from| from <= date) && book.until.is_none_or(|until| date <= until)
    })
}

/// For each option whether it may be chosen on the day: offered, and not hidden by the policy.
fn masks(diagram: &Diagram, setting: &Setting<'_>) -> Vec<bool> {
    let mut masks = vec![true; diagram.option_count()];
    for (index, attribute) in setting.catalog.declarations().attributes.iter() {
        let size = diagram.domains().get(index.0).map_or(0, |domain| domain.size);
        for value in 0..size {
            let entry = attribute.options.get(value);
            let offered = entry
                .is_none_or(|entry| entry.validity.offers(setting.date) && !setting.hides(index, &entry.id));
            let mask = diagram
                .option(Variable::at(index.0), value)
                .and_then(|option| masks.get_mut(option));
            if let Some(mask) = mask {
                *mask = offered;
            }
        }
    }
    masks
}
