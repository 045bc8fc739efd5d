//! The caution about lifting a unit.
//!
//! A unit above 51 lb needs two people or a lift. One whose weight is not known gets the caution as well, with what is missing.
//!
//! Always holds: only a weight that is known and at most 51 lb gets no caution. That is no promise that one person can lift it:
//! 51 lb is for ideal conditions, and a window on a ladder is not one.
//!
//! Source: the load constant of 51 lb (23 kg) of the NIOSH lifting equation, from memory.

use astragal_exact::Number;

use super::weight::Weight;
use crate::{Basis, Missing};

/// Where 51 lb stands.
pub const LIFTING_BASIS: Basis = Basis::from_memory("NIOSH lifting equation", "load constant");

/// The heaviest unit without a caution, in pounds.
pub const LIFTING_POUNDS_MOST: i64 = 51;

/// What is to be said about lifting a unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Lifting {
    /// It is above 51 lb.
    Caution,
    /// Its weight is not known.
    WeightUnknown(Missing),
    /// It is at most 51 lb.
    NoCaution,
}

/// Returns what is to be said about lifting a unit of this weight.
///
/// # Source
/// [`LIFTING_BASIS`].
///
/// # Examples
/// ## Heavy, and unknown
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::glass::{Lifting, Weight, lifting};
/// assert_eq!(lifting(&Weight::Known(Number::from(52))), Lifting::Caution);
/// let unknown = lifting(&Weight::missing(Fact::GlassThickness));
/// assert!(unknown.text().is_some_and(|text| text.contains("thickness of the glass")));
/// ```
#[must_use]
pub fn lifting(unit: &Weight) -> Lifting {
    match unit {
        Weight::Unknown(missing) => Lifting::WeightUnknown(missing.clone()),
        Weight::Known(pounds) if *pounds > Number::from(LIFTING_POUNDS_MOST) => Lifting::Caution,
        Weight::Known(_) => Lifting::NoCaution,
    }
}

impl Lifting {
    /// The words of the caution; nothing when there is none.
    #[must_use]
    pub fn text(&self) -> Option<String> {
        match self {
            Self::NoCaution => None,
            Self::Caution => Some(
                "check: above 51 lb, needs two people or a lift (limit from memory, to be confirmed)"
                    .to_owned(),
            ),
            Self::WeightUnknown(missing) => {
                let facts: Vec<String> = missing.iter().map(ToString::to_string).collect();
                Some(format!(
                    "check: weight not known, may need two people or a lift; missing: {}",
                    facts.join(", ")
                ))
            }
        }
    }
}
