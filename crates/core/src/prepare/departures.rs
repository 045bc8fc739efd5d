//! Which options and cells of a prepared setting are departures from the standard.
//!
//! Always holds: what a policy sets as a standard on the catalog's own diagram replaces the catalog's.

use std::collections::BTreeMap;

use astragal_model::{AttributeIndex, Outcome, Setting, Standard, Value};

use crate::ground::Residual;
use crate::label::CellId;
use crate::term::{Outcomes, Term, TermId};

/// The position of a standard that is no option of its attribute, from which every option departs.
const ABSENT: usize = usize::MAX;

/// Departures from the standard.
#[derive(Clone, Debug, Default)]
pub(crate) struct Departures {
    /// For each attribute whose standard reads no other and is known, its position among the options, or [`ABSENT`].
    alone: Vec<Option<usize>>,
    /// For each attribute whether its standard reads no other and has no value.
    none: Vec<bool>,
    /// For each cell the attribute and position of the option that departs; `None` when none does.
    cells: Vec<Option<(AttributeIndex, usize)>>,
}

impl Departures {
    pub(crate) fn new(residual: &Residual, setting: &Setting<'_>, outcomes: &Outcomes) -> Self {
        let position = |attribute: AttributeIndex, value: &Value| {
            let options = &setting.catalog.declarations().attributes.get(attribute)?.options;
            let Value::Option(id) = value else { return None };
            options.iter().position(|option| option.id == *id)
        };
        let standard = |attribute: AttributeIndex, value: &Value| {
            let is_option = matches!(value, Value::Option(_));
            is_option.then(|| position(attribute, value).unwrap_or(ABSENT))
        };
        let replaced = replaced(setting);
        let alone = residual.standards.iter().enumerate().map(|(at, term)| {
            let attribute = AttributeIndex(at);
            if let Some(value) = replaced.get(&attribute) {
                return standard(attribute, value);
            }
            match outcomes.of((*term)?) {
                Outcome::Known(value) => standard(attribute, value),
                Outcome::Unknown(_) | Outcome::Undefined(_) => None,
            }
        });
        let alone: Vec<Option<usize>> = alone.collect();
        let reads_none = residual.standards.iter().map(Option::is_some);
        let none = reads_none
            .zip(&alone)
            .map(|(reads_none, standard)| reads_none && standard.is_none());
        let departs = |cell: &TermId| {
            let Term::Departure {
                attribute,
                own,
                standard,
            } = residual.arena.term(*cell)
            else {
                return None;
            };
            let Term::Constant(Some(own)) = residual.arena.term(*own) else {
                return None;
            };
            let departs = standard.is_none_or(|standard| {
                matches!(outcomes.of(standard), Outcome::Known(value @ Value::Option(_)) if value != own)
            });
            if !departs || replaced.contains_key(attribute) {
                return None;
            }
            Some((*attribute, position(*attribute, own)?))
        };
        Self {
            none: none.collect(),
            alone,
            cells: residual.cells.iter().map(departs).collect(),
        }
    }

    /// Whether an option departs, whatever else is chosen. `options` is how many the attribute has.
    pub(crate) fn option(&self, attribute: AttributeIndex, value: usize, options: usize) -> bool {
        let standard = self.alone.get(attribute.0).copied().flatten();
        value < options && standard.is_some_and(|standard| standard != value)
    }

    /// Whether the standard of an attribute comes to no option, whatever else is chosen.
    pub(crate) fn has_none(&self, attribute: AttributeIndex) -> bool {
        self.none.get(attribute.0).copied().unwrap_or(false)
    }

    /// The option that departs where a cell is incurred.
    pub(crate) fn cell(&self, cell: CellId) -> Option<(AttributeIndex, usize)> {
        self.cells.get(cell.0 as usize).copied().flatten()
    }
}

/// What a policy sets where the diagram may be the catalog's own: on a later part it cannot be, and is compiled in.
fn replaced(setting: &Setting<'_>) -> BTreeMap<AttributeIndex, Value> {
    let policy = setting.policy.iter();
    let standards = policy.flat_map(|policy| &policy.terms.standards);
    let replaced = standards.filter_map(|(attribute, standard)| match standard {
        Standard::Option(option) if setting.catalog.earlier_parts(*attribute).is_empty() => {
            Some((*attribute, Value::Option(option.clone())))
        }
        Standard::Option(_) | Standard::Ask | Standard::Formula(_) => None,
    });
    replaced.collect()
}
