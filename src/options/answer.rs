//! The options of one unit of an order, asked of the engine.
//!
//! Always holds: the unit beside them is completed as a quote completes it with standards.
//! Cost: one compile of the catalog, then some passes over its diagram.

use astragal_model::Authorities;

use crate::options::engine::EngineOptions;
use crate::options::selection::SelectionState;
use crate::quote::ask::UsedOn;
use crate::quote::completion::standard;
use crate::quote::engines::compile;
use crate::quote::picked::Picks;
use crate::quote::work::QuotedUnit;

/// All options of one unit.
pub(crate) struct UnitOptions<'a> {
    pub(crate) unit: QuotedUnit<'a>,
    pub(crate) options: EngineOptions<'a>,
}

impl<'a> UnitOptions<'a> {
    /// Asks the engine. `unit` is filled with standards alone.
    ///
    /// # Errors
    /// When a limit is passed, or the engine and the judge disagree.
    pub(crate) fn new(unit: &QuotedUnit<'a>) -> Result<Self, String> {
        let (used, opening, request) = (unit.used, unit.opening, unit.request);
        let authorities = Authorities::default();
        let setting = used.setting(opening, request, &authorities, unit.date);
        let engine = compile(used.catalog, used.policy, &authorities)?;
        let prepared = engine.prepare(&setting).map_err(|error| error.to_string())?;
        let on = UsedOn {
            used,
            date: unit.date,
        };
        let judgement = Some(&unit.judgement);
        let picks = Picks::new(used.catalog, &request.picks, &request.pins, judgement).picks;
        let quoted = standard(&engine, &prepared, &setting, request)?;
        Ok(Self {
            options: EngineOptions::new(&engine, &prepared, on, &picks),
            unit: QuotedUnit::new(opening, request, used, &setting, quoted),
        })
    }
}

impl UnitOptions<'_> {
    /// Whether the picks go together.
    pub(crate) fn state(&self) -> SelectionState {
        SelectionState::of(self.options.selection())
    }
}

/// The worst state of the units of an opening.
pub(crate) fn worst(units: &[UnitOptions<'_>]) -> SelectionState {
    let states = units.iter().map(UnitOptions::state);
    states.max().unwrap_or(SelectionState::GoesTogether)
}
