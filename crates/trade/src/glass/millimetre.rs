//! The weight of glass whose thickness is given in millimetres: 2.5 kg for each square metre and millimetre.
//!
//! 3 mm weighs 1.536 lb/ft2. That is 6 % less than what the trade prints for 1/8 in: the two conventions are not mixed.
//!
//! Always holds: it is exact; pounds and feet are converted by their definitions.
//!
//! Source: 2500 kg/m3, the density that is used for float glass (156.07 lb/ft3); 1 lb = 0.45359237 kg, 1 ft = 0.3048 m.

use astragal_exact::Number;

use super::weight::{Weight, lite_count, square_feet};
use crate::constant::over;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError};

/// Where the weight stands.
pub const BASIS: Basis = Basis::computed("2500 kg/m3 by thickness in millimetres", "");

/// LIMIT: the thickest lite that is taken for one, in millimetres.
pub const MILLIMETRES_MOST: i64 = 25;

/// Returns what a square foot of one lite weighs, in pounds, from its thickness in millimetres.
///
/// # Errors
/// [`InputError`] for a thickness that is not above 0 and at most [`MILLIMETRES_MOST`].
///
/// # Examples
/// ## 4 mm
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::glass::millimetre::pounds_per_square_foot;
/// assert_eq!(pounds_per_square_foot(&Number::from(4))?.to_fixed(3), "2.048");
/// assert!(pounds_per_square_foot(&Number::from(0)).is_err());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn pounds_per_square_foot(millimetres: &Number) -> Result<Number, InputError> {
    if !millimetres.is_positive() || *millimetres > Number::from(MILLIMETRES_MOST) {
        let expected = "a thickness in millimetres above 0 and at most 25";
        return Err(refused(Fact::GlassThickness, millimetres, expected));
    }
    let kilograms_per_square_metre = millimetres * &over::<2>(5);
    let square_metres_in_square_foot = over::<100_000_000>(9_290_304);
    let pounds_in_kilogram = over::<45_359_237>(100_000_000);
    Ok(kilograms_per_square_metre * square_metres_in_square_foot * pounds_in_kilogram)
}

/// Returns the weight of the lites of a set of glass, one thickness in millimetres a lite; the size is in inches.
///
/// # Errors
/// [`InputError`] for a size or a thickness that is none, and for no lite or more than eight.
///
/// # Source
/// [`BASIS`].
///
/// # Examples
/// ## A double of 4 mm
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::glass::millimetre::glass_weight;
/// let lites = [Number::from(4), Number::from(4)];
/// let weight = glass_weight(&Number::from(30), &Number::from(60), Some(&lites))?;
/// assert_eq!(weight.pounds().map(|pounds| pounds.to_fixed(1)).as_deref(), Some("51.2"));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn glass_weight(width: &Number, height: &Number, lites: Option<&[Number]>) -> Result<Weight, InputError> {
    let square_feet = square_feet(width, height)?;
    let Some(lites) = lites else {
        return Ok(Weight::missing(Fact::GlassThickness));
    };
    lite_count(lites.len())?;
    let mut by_area = Number::ZERO;
    for lite in lites {
        by_area += &pounds_per_square_foot(lite)?;
    }
    Ok(Weight::Known(square_feet * by_area))
}
