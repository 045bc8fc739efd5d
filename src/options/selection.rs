//! Whether picks go together, which is another question than whether a unit holds: a unit whose picks go together may be unfinished.

use astragal_core::options::OptionAnswer;

/// Whether the picks go together; the order is from best to worst.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) enum SelectionState {
    /// Something holds with all of them.
    GoesTogether,
    /// Something does if what is not known turns out well.
    Depends,
    /// Some must change.
    Conflicts,
    /// Nothing holds that keeps the pins.
    Impossible,
}

impl SelectionState {
    /// What the engine's answer for the picks as they stand comes to.
    pub(crate) fn of(selection: &OptionAnswer) -> Self {
        match selection.possible {
            _ if selection.certain.is_some_and(|least| least.changes == 0) => Self::GoesTogether,
            Some(0) => Self::Depends,
            Some(_) => Self::Conflicts,
            None => Self::Impossible,
        }
    }
}
