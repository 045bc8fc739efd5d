//! What a rule, a figure or a function of the trade says, in one word.

use astragal_model::{Outcome, RoomState, RuleState, Value};
use astragal_trade::Truth;

/// Yes, no, cannot be decided, or no value at all.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Said {
    /// It is so; a rule holds.
    Yes,
    /// It is not so; a rule is broken.
    No,
    /// It depends on what is missing.
    Unknown,
    /// A figure that decides has no row, or a function does not cover the values.
    NoValue,
}

impl From<&Truth> for Said {
    fn from(truth: &Truth) -> Self {
        match truth {
            Truth::Yes => Self::Yes,
            Truth::No => Self::No,
            Truth::Unknown(_) => Self::Unknown,
        }
    }
}

impl From<Truth> for Said {
    fn from(truth: Truth) -> Self {
        Self::from(&truth)
    }
}

impl From<Option<&RuleState>> for Said {
    /// A rule without a finding holds.
    fn from(state: Option<&RuleState>) -> Self {
        match state {
            None => Self::Yes,
            Some(RuleState::Broken) => Self::No,
            Some(RuleState::NoRow(_)) => Self::NoValue,
            Some(RuleState::Undecided(_)) => Self::Unknown,
        }
    }
}

impl From<Option<RoomState>> for Said {
    /// A rule that is left out does not apply.
    fn from(state: Option<RoomState>) -> Self {
        match state {
            None | Some(RoomState::Holds) => Self::Yes,
            Some(RoomState::Broken) => Self::No,
            Some(RoomState::Undecided) => Self::Unknown,
        }
    }
}

impl From<&Outcome> for Said {
    fn from(outcome: &Outcome) -> Self {
        match outcome {
            Outcome::Known(Value::Bool(true)) => Self::Yes,
            Outcome::Known(Value::Bool(false)) => Self::No,
            Outcome::Known(other) => panic!("{other:?} is no yes or no"),
            Outcome::Unknown(_) => Self::Unknown,
            Outcome::Undefined(_) => Self::NoValue,
        }
    }
}

/// The truth that a word stands for, without what is missing.
pub(crate) fn truth(said: Said) -> Truth {
    match said {
        Said::Yes => Truth::Yes,
        Said::No => Truth::No,
        Said::Unknown => Truth::Unknown(astragal_trade::Missing::from([astragal_trade::Fact::Operation])),
        Said::NoValue => panic!("no value is no truth"),
    }
}
