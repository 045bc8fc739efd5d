//! The weight of the lites of a unit, and weights that may not be known.
//!
//! 28 x 28 in in two lites of 1/8 in: 784/144 sq ft x 2 x 1.64 lb = 17.857 lb.
//!
//! Always holds: a sum with an unknown part is unknown and names what is missing.

use astragal_exact::Number;

use super::Nominal;
use crate::constant::over;
use crate::{Fact, InputError, Missing, input};

/// LIMIT: the lites of one set of glass.
pub(super) const LITES_MOST: usize = 8;

/// A weight in pounds, or what is missing for it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Weight {
    /// The weight in pounds, exact.
    Known(Number),
    /// Something is missing.
    Unknown(Missing),
}

impl Weight {
    /// The weight of one fact that is missing.
    #[must_use]
    pub fn missing(fact: Fact) -> Self {
        Self::Unknown(Missing::from([fact]))
    }

    /// The weight of both together.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        match (self, other) {
            (Self::Known(one), Self::Known(other)) => Self::Known(one + other),
            (Self::Unknown(one), Self::Unknown(other)) => Self::Unknown(one | other),
            (Self::Unknown(missing), Self::Known(_)) | (Self::Known(_), Self::Unknown(missing)) => {
                Self::Unknown(missing.clone())
            }
        }
    }

    /// The weight in pounds, when it is known.
    #[must_use]
    pub fn pounds(&self) -> Option<&Number> {
        match self {
            Self::Known(pounds) => Some(pounds),
            Self::Unknown(_) => None,
        }
    }
}

/// Returns the weight of the lites of a set of glass, one thickness a lite, by nominal fractions of an inch.
///
/// Width and height are those of the glass, in inches. Spacer, gas and coatings weigh nothing here.
///
/// # Errors
/// [`InputError`] for a size that is none, and for no lite or more than eight.
///
/// # Cost
/// One exact operation a lite.
///
/// # Source
/// [`Nominal::weight`].
///
/// # Examples
/// ## A double
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::glass::{Nominal, glass_weight};
/// let lites = [Nominal::ThreeSixteenths; 2];
/// let weight = glass_weight(&Number::from(48), &Number::from(72), Some(&lites))?;
/// assert_eq!(weight.pounds().map(|pounds| pounds.to_string()).as_deref(), Some("117.6"));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## The thickness is not known
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::glass::{Weight, glass_weight};
/// let weight = glass_weight(&Number::from(48), &Number::from(72), None)?;
/// assert_eq!(weight, Weight::missing(Fact::GlassThickness));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn glass_weight(
    width: &Number,
    height: &Number,
    lites: Option<&[Nominal]>,
) -> Result<Weight, InputError> {
    let square_feet = square_feet(width, height)?;
    let Some(lites) = lites else {
        return Ok(Weight::missing(Fact::GlassThickness));
    };
    lite_count(lites.len())?;
    let by_area: Number = lites.iter().map(|lite| lite.weight().pounds).sum();
    Ok(Weight::Known(square_feet * by_area))
}

pub(super) fn square_feet(width: &Number, height: &Number) -> Result<Number, InputError> {
    input::size(Fact::GlassWidth, width)?;
    input::size(Fact::GlassHeight, height)?;
    Ok(width * height * over::<144>(1))
}

pub(super) fn lite_count(count: usize) -> Result<(), InputError> {
    if (1..=LITES_MOST).contains(&count) {
        return Ok(());
    }
    Err(InputError {
        fact: Fact::GlassThickness,
        found: format!("{count} lites"),
        expected: "one to eight lites, each with its thickness".to_owned(),
    })
}
