//! The pressures that a grade was tested to, derived from it.
//!
//! PG35 of class LC: structural test at 52.5 psf, water test at 5.25 psf.
//!
//! Always holds: a water test pressure is at least the minimum and at most the cap of its market.
//!
//! Source: NAFS, as the standards body's page and a trade journal state it. The minimum water pressure stands there as 140 Pa and
//! as 2.90 psf (140 Pa are 2.924 psf); older editions and trade lists print 2.86 psf (from memory). It is a parameter.

use astragal_exact::Number;

use super::{Class, Grade};
use crate::constant::over;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError};

/// Where the structural factors, the water percentages, the minimum and the caps stand.
pub const TEST_BASIS: Basis =
    Basis::verified("NAFS, the standards body's summary", "performance class overview");

/// LIMIT: the largest design pressure that is taken for one, in psf.
const PRESSURE_MOST: i64 = 500;

/// What is tested.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Product {
    /// A window or a door: 1.5 times the design pressure.
    WindowOrDoor,
    /// A skylight: twice the design pressure.
    Skylight,
}

/// Where a product is sold: the cap of the water test differs.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Market {
    /// United States: at most 12 psf.
    UnitedStates,
    /// Canada: at most 15 psf.
    Canada,
}

impl Market {
    /// Returns the most that the water test asks for, in psf ([`TEST_BASIS`]).
    #[must_use]
    pub fn water_cap(self) -> i64 {
        match self {
            Self::UnitedStates => 12,
            Self::Canada => 15,
        }
    }

    /// Returns the same in pascals, as the standards body prints it: a round number, not a conversion.
    #[must_use]
    pub fn water_cap_pascals_printed(self) -> i64 {
        match self {
            Self::UnitedStates => 580,
            Self::Canada => 720,
        }
    }
}

/// Returns the structural test pressure of a design pressure, both in psf.
///
/// # Errors
/// [`InputError`] for a design pressure that is not above 0 and at most 500.
///
/// # Source
/// [`TEST_BASIS`].
///
/// # Examples
/// ## One and a half times
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{Product, structural_test};
/// assert_eq!(structural_test(&Number::from(35), Product::WindowOrDoor)?.to_string(), "52.5");
/// assert!(structural_test(&Number::from(-35), Product::WindowOrDoor).is_err());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn structural_test(design_pressure: &Number, product: Product) -> Result<Number, InputError> {
    positive(Fact::DesignPressure, design_pressure)?;
    Ok(design_pressure
        * &match product {
            Product::WindowOrDoor => over::<2>(3),
            Product::Skylight => Number::from(2),
        })
}

/// Returns the water test pressure of a grade, in psf: 15 % of it, 20 % for class AW, from the minimum to the market's cap.
///
/// The minimum is [`water_minimum_printed`] unless an older edition is meant ([`water_minimum_earlier`]).
///
/// # Errors
/// [`InputError`] for a grade below that of the class, and for a minimum that is not above 0.
///
/// # Source
/// [`TEST_BASIS`].
///
/// # Examples
/// ## The lowest grade has the minimum
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{Class, Grade, Market, water_minimum_printed, water_test};
/// let test = |class, grade: i64| {
///     water_test(class, Grade::new(&Number::from(grade))?, Market::UnitedStates, &water_minimum_printed())
/// };
/// assert_eq!(test(Class::R, 15)?.to_string(), "2.9");
/// assert_eq!(test(Class::AW, 40)?.to_string(), "8");
/// assert!(test(Class::AW, 35).is_err());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn water_test(
    class: Class,
    grade: Grade,
    market: Market,
    minimum: &Number,
) -> Result<Number, InputError> {
    class.check(grade)?;
    positive(Fact::DesignPressure, minimum)?;
    let share = match class {
        Class::R | Class::LC | Class::CW => over::<100>(15),
        Class::AW => over::<100>(20),
    };
    Ok((grade.pounds_per_square_foot() * share)
        .max(minimum.clone())
        .min(Number::from(market.water_cap())))
}

/// Returns 2.90 psf, the minimum of the water test as the standards body prints it.
#[must_use]
pub fn water_minimum_printed() -> Number {
    over::<100>(290)
}

/// Returns 2.86 psf, the minimum of the water test as older editions and trade lists print it, from memory.
#[must_use]
pub fn water_minimum_earlier() -> Number {
    over::<100>(286)
}

/// Returns 5.0 gallons by square foot and hour, the spray of the water test; read in a secondary text.
#[must_use]
pub fn water_spray_rate() -> Number {
    Number::from(5)
}

fn positive(fact: Fact, pressure: &Number) -> Result<(), InputError> {
    if pressure.is_positive() && *pressure <= Number::from(PRESSURE_MOST) {
        return Ok(());
    }
    Err(refused(
        fact,
        pressure,
        "a pressure in psf above 0 and at most 500",
    ))
}
