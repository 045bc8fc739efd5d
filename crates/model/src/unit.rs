//! A unit: an option, *not asked* or *open* for every attribute of its catalog.

use jiff::civil::Date;

use crate::id::{AttributeIndex, Id, Indexed};

/// An option, *not asked* or *open* for every attribute.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Unit {
    /// One choice an attribute, in catalog order.
    pub choices: Indexed<AttributeIndex, Choice>,
}

/// What stands at one attribute.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Choice {
    /// Nothing yet; it reads as unknown.
    Open,
    /// The attribute is not asked.
    NotAsked,
    /// An option.
    Chosen {
        /// The option's id.
        option: Id,
        /// Where it comes from.
        origin: Origin,
    },
}

/// Where a choice comes from.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Origin {
    /// The customer chose it, perhaps in a quote of this date.
    Picked {
        /// The date of the quote in which it was chosen.
        quoted: Option<Date>,
    },
    /// It was filled in with its standard.
    Standard,
    /// A completion filled it in, with something other than its standard.
    Completed,
}

/// An option that the customer chose.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Pick {
    /// The attribute.
    pub attribute: AttributeIndex,
    /// The option's id.
    pub option: Id,
    /// The date of the quote in which it was chosen, if it was carried over.
    pub quoted: Option<Date>,
}

impl Choice {
    /// The option that stands there, if one does.
    #[must_use]
    pub fn option(&self) -> Option<&Id> {
        match self {
            Self::Chosen { option, .. } => Some(option),
            _ => None,
        }
    }

    /// Whether the customer chose it.
    #[must_use]
    pub fn is_picked(&self) -> bool {
        matches!(
            self,
            Self::Chosen {
                origin: Origin::Picked { .. },
                ..
            }
        )
    }

    /// A choice of the customer.
    #[must_use]
    pub fn picked(option: &str) -> Self {
        Self::Chosen {
            option: Id::new(option),
            origin: Origin::Picked { quoted: None },
        }
    }

    /// A choice that was filled in.
    #[must_use]
    pub fn standard(option: &str) -> Self {
        Self::Chosen {
            option: Id::new(option),
            origin: Origin::Standard,
        }
    }
}
