//! What is asked of the engine about one unit of a quote.

use astragal_core::complete::{Aim, Completed, Completion, Wish};
use astragal_core::engine::Engine;
use astragal_core::prepare::Prepared;
use astragal_model::{Judgement, Setting, Unit, UnitRequest};

use crate::quote::picked::Picks;

/// One unit with its picks, in a setting that is prepared.
pub(crate) struct Asking<'a> {
    pub(crate) engine: &'a Engine,
    pub(crate) prepared: &'a Prepared,
    pub(crate) setting: &'a Setting<'a>,
    pub(crate) request: &'a UnitRequest,
    pub(crate) picks: Picks,
}

/// The best unit that the engine finds.
pub(crate) struct Best {
    pub(crate) completed: Completed,
    /// It is the best, and holds, only if what is not known turns out well.
    pub(crate) depends: bool,
}

impl<'a> Asking<'a> {
    /// `judgement` is of the unit with standards alone.
    pub(crate) fn new(
        engine: &'a Engine,
        prepared: &'a Prepared,
        setting: &'a Setting<'a>,
        request: &'a UnitRequest,
        judgement: &Judgement,
    ) -> Self {
        Self {
            engine,
            prepared,
            setting,
            request,
            picks: Picks::new(setting.catalog, &request.picks, &request.pins, Some(judgement)),
        }
    }

    /// The same with every pin loosened; nothing where nothing is pinned.
    pub(crate) fn without_pins(&self) -> Option<Self> {
        let picks = self.picks.without_pins()?;
        Some(Self { picks, ..*self })
    }

    /// Whether some unit with all picks is not ruled out.
    pub(crate) fn may_hold(&self) -> bool {
        let selection = self.engine.selection(self.prepared, &self.picks.picks);
        selection.possible == Some(0)
    }

    /// The best unit, which changes as few picks as can be; nothing where nothing holds.
    ///
    /// # Errors
    /// When the engine and the judge disagree.
    pub(crate) fn best(&self, aim: Aim, near: Option<&Unit>) -> Result<Option<Best>, String> {
        let wish = Wish {
            setting: self.setting,
            picks: &self.picks.picks,
            quoted: &self.picks.quoted,
            aim,
            near,
            count: 1,
        };
        let completion = self.engine.complete(self.prepared, &wish);
        let (completed, depends) = match completion.map_err(|error| error.to_string())? {
            Completion::Impossible => (None, false),
            Completion::Depends(unit) => (Some(*unit), true),
            Completion::Found(units) => (units.into_iter().next(), false),
        };
        Ok(completed.map(|completed| Best { completed, depends }))
    }
}
