//! The average of a rating over the openings of a house, each by its area.
//!
//! 10 sq ft of U 0.28 and 30 sq ft of U 0.32 have together U 0.31.
//!
//! Always holds: it is exact, and lies between the least and the largest value; one value that is missing leaves the average
//! unknown, whatever its area.
//! Cost: two exact operations an opening.
//!
//! Source: a code may let openings make up for each other by area (IECC R402.3.1 and R402.3.2, from memory). Compare the
//! average with the maximum as it is, before it is rounded for showing.

use astragal_exact::Number;

use super::rating;
use crate::constant::over;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError, Missing};

/// Where averaging stands.
pub const BASIS: Basis = Basis::from_memory("IECC 2021", "R402.3.1 and R402.3.2");

/// LIMIT: the openings of one house that are averaged.
pub const OPENINGS_MOST: usize = 1_000;

/// LIMIT: the largest area of one opening, in square inches: 50 ft each way.
pub const AREA_MOST: i64 = 600 * 600;

/// One opening with its rating.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RatedOpening {
    /// The area of the unit, in square inches.
    pub area: Number,
    /// The rating; nothing when it is not known.
    pub value: Option<Number>,
}

/// An average, or what is missing for it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Average {
    /// The average, exact.
    Known(Number),
    /// A rating is missing.
    Unknown(Missing),
}

/// Returns the average U-factor of openings by area.
///
/// # Errors
/// [`InputError`] for no opening at all, more than [`OPENINGS_MOST`], an area that is none, or a value that is no U-factor.
///
/// # Source
/// [`BASIS`].
///
/// # Examples
/// ## Areas count, not windows
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::average::{Average, RatedOpening, u_factor};
/// let opening = |area: i64, value| RatedOpening { area: Number::from(area * 144), value: Number::from_decimal(value) };
/// let average = u_factor(&[opening(10, "0.28"), opening(30, "0.32")])?;
/// assert_eq!(average, Average::Known(Number::from_decimal("0.31").unwrap_or_default()));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## One missing rating leaves it open
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::average::{Average, RatedOpening, u_factor};
/// use astragal_trade::{Fact, Missing};
/// let unrated = RatedOpening { area: Number::from(144), value: None };
/// assert_eq!(u_factor(&[unrated])?, Average::Unknown(Missing::from([Fact::UFactor])));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn u_factor(openings: &[RatedOpening]) -> Result<Average, InputError> {
    average(Fact::UFactor, openings, rating::u_factor)
}

/// Returns the average solar heat gain of openings by area.
///
/// # Errors
/// As [`u_factor`], for a value that is no solar heat gain coefficient.
///
/// # Source
/// [`BASIS`].
///
/// # Examples
/// ## No opening has no average
/// ```
/// use astragal_trade::energy::average::solar_heat_gain;
/// assert!(solar_heat_gain(&[]).is_err());
/// ```
pub fn solar_heat_gain(openings: &[RatedOpening]) -> Result<Average, InputError> {
    average(Fact::SolarHeatGain, openings, rating::solar_heat_gain)
}

fn average(
    fact: Fact,
    openings: &[RatedOpening],
    check: fn(&Number) -> Result<(), InputError>,
) -> Result<Average, InputError> {
    let (mut areas, mut products) = (Number::ZERO, Number::ZERO);
    let mut missing = Missing::new();
    if openings.len() > OPENINGS_MOST {
        return Err(count(openings.len(), "at most 1000 openings"));
    }
    for opening in openings {
        area(&opening.area)?;
        match &opening.value {
            Some(value) => {
                check(value)?;
                areas += &opening.area;
                products += &(&opening.area * value);
            }
            None => {
                missing.insert(fact);
            }
        }
    }
    if !missing.is_empty() {
        return Ok(Average::Unknown(missing));
    }
    match products.checked_div(&areas) {
        Some(average) => Ok(Average::Known(average)),
        None => Err(count(0, "one opening at least")),
    }
}

/// Takes an area of something that is there.
pub(super) fn area(square_inches: &Number) -> Result<(), InputError> {
    if square_inches.is_positive() && *square_inches <= Number::from(AREA_MOST) {
        return Ok(());
    }
    let square_feet = square_inches * &over::<144>(1);
    let expected = "an area in square feet above 0 and at most 2,500";
    Err(refused(Fact::GlazingArea, &square_feet, expected))
}

fn count(found: usize, expected: &str) -> InputError {
    InputError {
        fact: Fact::GlazingArea,
        found: format!("{found} openings"),
        expected: expected.to_owned(),
    }
}
