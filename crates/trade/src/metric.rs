//! Pressures and U-factors in metric units, exactly.
//!
//! A pound-force per square foot is 47.88 Pa; a U-factor of 1 Btu/(h sq ft F) is 5.678 W/(m2 K).
//!
//! Always holds: the factors are exact fractions that follow from definitions; nothing is rounded. Lengths and areas are
//! converted by `astragal_exact`.
//! Cost: one multiplication.
//!
//! Source: the international pound (0.45359237 kg) and foot (0.3048 m), standard gravity (9.80665 m/s2) and the Btu of the
//! international table (1055.05585262 J), all exact by definition, from memory; compared with the Python package `pint`.
//! Another Btu, of 1055.056 J, differs in the seventh digit.

use astragal_exact::Number;

use crate::constant::over;

/// Returns a pressure in pascals, from pounds-force per square foot.
///
/// # Examples
/// ## The least water test pressure that is often repeated
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::pascals;
/// let pressure = Number::ratio(286, 100).ok_or("no number")?;
/// assert_eq!(pascals(&pressure).to_fixed(2), "136.94");
/// # Ok::<(), &str>(())
/// ```
/// ## Suction is below nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::pascals;
/// assert_eq!(pascals(&Number::from(-1)).to_fixed(4), "-47.8803");
/// ```
#[must_use]
pub fn pascals(pounds_per_square_foot: &Number) -> Number {
    pounds_per_square_foot * pascals_in_a_pound()
}

/// Returns a pressure in pounds-force per square foot, from pascals.
///
/// # Examples
/// ## There and back
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::{pascals, pounds_per_square_foot};
/// let pressure = Number::from(15);
/// assert_eq!(pounds_per_square_foot(&pascals(&pressure)), pressure);
/// ```
/// ## 140 Pa
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::pounds_per_square_foot;
/// assert_eq!(pounds_per_square_foot(&Number::from(140)).to_fixed(2), "2.92");
/// ```
#[must_use]
pub fn pounds_per_square_foot(pascals: &Number) -> Number {
    divided(pascals, &pascals_in_a_pound())
}

/// Returns a U-factor in W/(m2 K), from Btu/(h sq ft F).
///
/// # Examples
/// ## A unit of 0.22, as tables print it beside
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::metric_u_factor;
/// let u_factor = Number::ratio(22, 100).ok_or("no number")?;
/// assert_eq!(metric_u_factor(&u_factor).to_fixed(2), "1.25");
/// # Ok::<(), &str>(())
/// ```
/// ## A unit of 0.30
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::metric_u_factor;
/// let u_factor = Number::ratio(30, 100).ok_or("no number")?;
/// assert_eq!(metric_u_factor(&u_factor).to_fixed(3), "1.703");
/// # Ok::<(), &str>(())
/// ```
/// ## Nothing stays nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::metric::metric_u_factor;
/// assert_eq!(metric_u_factor(&Number::ZERO), Number::ZERO);
/// ```
#[must_use]
pub fn metric_u_factor(u_factor: &Number) -> Number {
    let joules = over::<100_000_000>(105_505_585_262);
    let metres_and_kelvins = square_metres_in_a_square_foot() * over::<9>(5) * Number::from(3600);
    u_factor * divided(&joules, &metres_and_kelvins)
}

fn pascals_in_a_pound() -> Number {
    let newtons = over::<100_000_000>(45_359_237) * over::<100_000>(980_665);
    divided(&newtons, &square_metres_in_a_square_foot())
}

fn square_metres_in_a_square_foot() -> Number {
    let foot = over::<10_000>(3048);
    &foot * &foot
}

/// The divisors of this room are above 0: the default is never taken.
fn divided(number: &Number, by: &Number) -> Number {
    number.checked_div(by).unwrap_or_default()
}
