//! Why facts about an opening cannot be worked with.
//!
//! A lowest part of 26 in above a bottom of 25 in is a slip: no opening has them both.
//!
//! Always holds: what is only missing is no error; it is an answer that says what to ask.

use std::fmt;

use crate::building_code::Edition;
use crate::fact::Fact;
use crate::input::InputError;

/// Facts that cannot be worked with.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum FactsError {
    /// A number that cannot be what it is said to be.
    Input(InputError),
    /// Two facts that no opening has together.
    Contradiction(Contradiction),
    /// The edition says nothing here about what is asked.
    NotInEdition {
        /// The edition.
        edition: Edition,
        /// What was asked, as a person reads it.
        asked: &'static str,
    },
}

/// Two facts that no opening has together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Contradiction {
    /// The one, and what it was given as.
    pub one: (Fact, String),
    /// The other, and what it was given as.
    pub other: (Fact, String),
    /// What is expected of the two.
    pub expected: &'static str,
}

impl From<InputError> for FactsError {
    fn from(error: InputError) -> Self {
        Self::Input(error)
    }
}

impl fmt::Display for Contradiction {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { one, other, expected } = self;
        write!(
            formatter,
            "{} is `{}` and {} is `{}`; expected {expected}",
            one.0, one.1, other.0, other.1
        )
    }
}

impl fmt::Display for FactsError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Input(error) => write!(formatter, "{error}"),
            Self::Contradiction(error) => write!(formatter, "{error}"),
            Self::NotInEdition { edition, asked } => write!(
                formatter,
                "nothing about {asked} is known here for `{edition}`; expected an edition of the IRC or the IBC"
            ),
        }
    }
}

impl std::error::Error for FactsError {}
