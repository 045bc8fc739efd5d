//! U-factor and solar heat gain as numbers that can be what they are said to be.
//!
//! A label prints 0.27 and 0.30. 0.275 is on no label, -0.2 is no U-factor, and a U-factor of 27 has lost its point.
//!
//! Always holds: nothing is rounded. A rating with more than two decimals is refused where a *rating* is asked for, and taken
//! where an average or a worked-out value is.
//!
//! Source: ratings have two decimals (the NFRC 100 and 200 rating procedures, from memory).

use astragal_exact::Number;

use crate::constant::over;
use crate::refusal::refused;
use crate::{Fact, InputError};

/// LIMIT: the largest U-factor that is taken for one, in Btu/h ft2 F. Single glass in plain aluminium has about 1.3.
pub const U_FACTOR_MOST: i64 = 2;

/// What a label says of a unit; what is not known is left out.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Ratings {
    /// The U-factor of the whole unit, in Btu/h ft2 F, two decimals.
    pub u_factor: Option<Number>,
    /// The solar heat gain coefficient of the whole unit, from 0 to 1, two decimals.
    pub solar_heat_gain: Option<Number>,
}

impl Ratings {
    /// Takes two ratings of at most two decimals.
    ///
    /// # Errors
    /// [`InputError`] for a number that cannot be such a rating.
    ///
    /// # Examples
    /// ## Two decimals are taken, more are not
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::energy::rating::Ratings;
    /// let of = |u_factor| Ratings { u_factor: Number::from_decimal(u_factor), solar_heat_gain: None };
    /// assert!(of("0.27").check().is_ok());
    /// let error = of("0.275").check().err().map(|error| error.to_string());
    /// let expected = "U-factor of the whole unit is `0.275`; expected the rating on the label, which has two decimals";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// ```
    pub fn check(&self) -> Result<(), InputError> {
        if let Some(value) = &self.u_factor {
            u_factor(value)?;
            two_decimals(Fact::UFactor, value)?;
        }
        if let Some(value) = &self.solar_heat_gain {
            solar_heat_gain(value)?;
            two_decimals(Fact::SolarHeatGain, value)?;
        }
        Ok(())
    }
}

/// Takes a U-factor of any decimals: above 0, at most [`U_FACTOR_MOST`].
///
/// # Errors
/// [`InputError`] with what was found.
pub fn u_factor(value: &Number) -> Result<(), InputError> {
    if value.is_positive() && *value <= Number::from(U_FACTOR_MOST) {
        return Ok(());
    }
    let expected = "a number above 0 and at most 2 (Btu/h ft2 F)";
    Err(refused(Fact::UFactor, value, expected))
}

/// Takes a solar heat gain coefficient of any decimals: from 0 to 1.
///
/// # Errors
/// [`InputError`] with what was found.
pub fn solar_heat_gain(value: &Number) -> Result<(), InputError> {
    if !value.is_negative() && *value <= Number::ONE {
        return Ok(());
    }
    Err(refused(Fact::SolarHeatGain, value, "a number from 0 to 1"))
}

fn two_decimals(fact: Fact, value: &Number) -> Result<(), InputError> {
    if value.is_multiple_of(&over::<100>(1)) {
        return Ok(());
    }
    let expected = "the rating on the label, which has two decimals";
    Err(refused(fact, value, expected))
}
