//! What is left of a catalog when its attributes are gone: gates, cells and standards, to be worked out for each setting.
//!
//! Always holds: every term is one of these or a part of one; none reads an attribute.

use crate::ground::Shared;
use crate::term::{Arena, Term, TermId};

/// Conditions and charges over measures, facts and waivers.
#[derive(Debug, Default)]
pub(crate) struct Residual {
    pub(crate) arena: Arena,
    /// By [`GateId`](crate::label::GateId).
    pub(crate) gates: Vec<TermId>,
    /// Charges and departures, by [`CellId`](crate::label::CellId).
    pub(crate) cells: Vec<TermId>,
    /// For each attribute its standard, where that reads no attribute.
    pub(crate) standards: Vec<Option<TermId>>,
}

impl Residual {
    pub(crate) fn new(shared: Shared) -> Self {
        let (mut gates, mut cells, mut standards) = (shared.gates, shared.cells, shared.standards);
        let roots = gates.iter_mut().chain(&mut cells);
        let roots = roots.chain(standards.iter_mut().flatten());
        let arena = shared.terms.into_arena().keep(roots);
        Self {
            arena,
            gates,
            cells,
            standards,
        }
    }

    /// How many cells are charges.
    pub(crate) fn charge_count(&self) -> usize {
        let is_charge = |cell: &&TermId| matches!(self.arena.term(**cell), Term::Charge { .. });
        self.cells.iter().filter(is_charge).count()
    }
}
