//! Exit codes: what a script learns without reading the answer.
//!
//! 0 all holds, 3 something cannot be decided, 4 something does not hold, 5 input cannot be read. The worst wins: an
//! order with one opening that does not hold and one that cannot be decided ends with 4. 2 is wrong usage, and 1 means
//! that the answer could not be written. `options` says 0 for picks that go together, 3 where that depends on what is not known, 4
//! where some must change or nothing holds, and 5 also where a limit is passed.

use std::process::ExitCode;

use astragal_model::Verdict;

use crate::options::selection::SelectionState;

/// How the program ends; the order is from best to worst.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(crate) enum Exit {
    /// All holds.
    Holds,
    /// Something cannot be decided, and nothing is worse.
    Undecided,
    /// Something does not hold.
    Broken,
    /// Input cannot be read.
    Unreadable,
    /// An argument names nothing that is there.
    Usage,
    /// The answer could not be written.
    Unwritten,
}

impl Exit {
    /// The number that the shell sees.
    pub(crate) fn code(self) -> u8 {
        match self {
            Self::Holds => 0,
            Self::Unwritten => 1,
            Self::Usage => 2,
            Self::Undecided => 3,
            Self::Broken => 4,
            Self::Unreadable => 5,
        }
    }
}

impl From<Verdict> for Exit {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Holds => Self::Holds,
            Verdict::Undecided => Self::Undecided,
            Verdict::Broken => Self::Broken,
        }
    }
}

impl From<SelectionState> for Exit {
    fn from(state: SelectionState) -> Self {
        match state {
            SelectionState::GoesTogether => Self::Holds,
            SelectionState::Depends => Self::Undecided,
            SelectionState::Conflicts | SelectionState::Impossible => Self::Broken,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worst_of_an_order_decides_how_the_program_ends() {
        let ends = [Verdict::Undecided, Verdict::Broken, Verdict::Holds].map(Exit::from);
        assert_eq!(ends.into_iter().max().map(Exit::code), Some(4));
        assert!(Exit::Unreadable > Exit::Broken && Exit::Undecided > Exit::Holds);
    }
}
