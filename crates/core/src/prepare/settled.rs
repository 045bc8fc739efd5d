//! Gates and cells as they are in a setting, and what a label of them comes to.

use astragal_model::Wants;

use crate::label::{CellId, Label};
use crate::prepare::charge::Charge;

/// What a gate is in a setting.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum GateState {
    Open,
    Closed,
    Unknown(Wants),
}

/// Every gate and cell in a setting.
#[derive(Clone, Debug)]
pub(crate) struct Settled {
    pub(super) gates: Vec<GateState>,
    pub(super) cells: Vec<Charge>,
}

/// What a label comes to in a setting.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum LabelState {
    /// It can be had for so many minor units.
    Open(i64),
    /// A gate is closed, or something has no price.
    Closed,
    /// It depends on what is wanted; the minor units of what is known.
    Unknown(i64),
}

impl Settled {
    /// What each unknown gate and cell of a label wants.
    pub(crate) fn wants_of(&self, label: &Label) -> impl Iterator<Item = &Wants> {
        let gates = label
            .gates()
            .iter()
            .filter_map(|gate| match self.gates.get(gate.0 as usize) {
                Some(GateState::Unknown(wants)) => Some(wants),
                _ => None,
            });
        let cells = label
            .cells()
            .iter()
            .filter_map(|cell| match self.cells.get(cell.0 as usize) {
                Some(Charge::Unknown(wants)) => Some(wants),
                _ => None,
            });
        gates.chain(cells)
    }

    /// Whether an amount of a label is not known.
    pub(crate) fn has_unknown_amount(&self, label: &Label) -> bool {
        let cell = |cell: &CellId| self.cells.get(cell.0 as usize);
        let mut cells = label.cells().iter();
        cells.any(|one| matches!(cell(one), Some(Charge::Unknown(_))))
    }

    /// What a label comes to.
    pub(crate) fn label(&self, label: &Label) -> LabelState {
        let mut unknown = false;
        for gate in label.gates() {
            match self.gates.get(gate.0 as usize) {
                Some(GateState::Open) => {}
                Some(GateState::Unknown(_)) => unknown = true,
                Some(GateState::Closed) | None => return LabelState::Closed,
            }
        }
        let mut sum = 0_i64;
        for cell in label.cells() {
            match self.cells.get(cell.0 as usize) {
                Some(Charge::Amount(amount)) => sum = sum.saturating_add(*amount),
                Some(Charge::Unknown(_)) => unknown = true,
                Some(Charge::NoPrice | Charge::TooLarge) | None => return LabelState::Closed,
            }
        }
        if unknown {
            LabelState::Unknown(sum)
        } else {
            LabelState::Open(sum)
        }
    }
}
