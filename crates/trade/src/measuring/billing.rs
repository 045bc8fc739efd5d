//! The area and the perimeter by which a unit is billed.
//!
//! 36 x 60 in is 15 square feet and 16 feet around.
//!
//! Always holds: both go by the ordered size, not by the tested size and not by the glass; nothing is rounded.
//! Source: common practice, no source.

use astragal_exact::Number;

use super::size::Size;
use crate::constant::over;
use crate::input::InputError;

/// Returns the area of the ordered size in square feet, exactly.
///
/// # Errors
/// [`InputError`] when the width or the height is not above 0 and at most 50 ft.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ## A common size
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Size, billed_area};
/// let ordered = Size::new(Number::from(36), Number::from(60));
/// assert_eq!(billed_area(&ordered)?.to_fixed(3), "15.000");
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A size of less than nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Size, billed_area};
/// assert!(billed_area(&Size::new(Number::from(-36), Number::from(60))).is_err());
/// ```
pub fn billed_area(ordered: &Size) -> Result<Number, InputError> {
    Ok(ordered.clone().checked()?.area() * over::<144>(1))
}

/// Returns the way around the ordered size in feet, exactly.
///
/// # Errors
/// [`InputError`] when the width or the height is not above 0 and at most 50 ft.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ## A common size
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Size, billed_perimeter};
/// let ordered = Size::new(Number::from(36), Number::from(60));
/// assert_eq!(billed_perimeter(&ordered)?.to_fixed(3), "16.000");
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A size of less than nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{Size, billed_perimeter};
/// assert!(billed_perimeter(&Size::new(Number::from(36), Number::ZERO)).is_err());
/// ```
pub fn billed_perimeter(ordered: &Size) -> Result<Number, InputError> {
    Ok(ordered.clone().checked()?.perimeter() * over::<12>(1))
}
