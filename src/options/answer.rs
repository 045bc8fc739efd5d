//! The options of one unit of an order, asked of the engine.
//!
//! Cost: one compile of the catalog, then some passes over its diagram.

use astragal_model::{Authorities, Verdict};

use crate::options::engine::EngineOptions;
use crate::quote::ask::UsedOn;
use crate::quote::engines::compile;
use crate::quote::picked::Picks;
use crate::quote::work::QuotedUnit;

/// All options of one unit.
pub(crate) struct UnitOptions<'a> {
    pub(crate) unit: &'a QuotedUnit<'a>,
    pub(crate) options: EngineOptions<'a>,
}

impl<'a> UnitOptions<'a> {
    /// Asks the engine.
    pub(crate) fn new(unit: &'a QuotedUnit<'a>) -> Result<Self, String> {
        let used = unit.used;
        let authorities = Authorities::default();
        let setting = used.setting(unit.opening, unit.request, &authorities, unit.date);
        let engine = compile(used.catalog, used.policy, &authorities)?;
        let prepared = engine.prepare(&setting).map_err(|error| error.to_string())?;
        let request = unit.request;
        let on = UsedOn {
            used,
            date: unit.date,
        };
        let judgement = Some(&unit.judgement);
        let picks = Picks::new(used.catalog, &request.picks, &request.pins, judgement).picks;
        Ok(Self {
            unit,
            options: EngineOptions::new(&engine, &prepared, on, &picks),
        })
    }
}

/// The worst verdict of the units of an opening.
pub(crate) fn worst(units: &[UnitOptions<'_>]) -> Verdict {
    units
        .iter()
        .map(|unit| unit.options.verdict())
        .max()
        .unwrap_or(Verdict::Holds)
}
