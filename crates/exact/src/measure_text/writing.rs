//! Shows lengths and areas, exactly or visibly cut.
//!
//! 285/8 inches are `35 5/8 in`; a third of an inch is `0.333… in`, because no decimal is exact; 820 square
//! inches are `5.6944… sq ft`, which nobody will take for 5.7.
//!
//! Invariant: nothing is rounded. A text without an ellipsis is exact; one with an ellipsis is cut towards zero.
//! LIMIT: tape-measure fractions go to sixty-fourths; exact decimals of a length to 12 places.

use super::{AreaUnit, LengthUnit};
use crate::number::Number;

/// LIMIT: the finest fraction of an inch that is shown as one.
const INCH_DENOMINATOR_MAX: u32 = 64;
/// LIMIT: a decimal with more places than this is cut.
const EXACT_PLACES_MAX: u64 = 12;
/// Where an area is cut.
const AREA_PLACES: u32 = 4;

/// Returns a length in `unit`, from inches.
///
/// Inches are shown as a whole and a fraction when the denominator is a power of two up to 64 (`35 5/8 in`),
/// otherwise as a decimal (`35.7 in`); other units as a decimal (`904.875 mm`). A length without an exact decimal
/// of at most 12 places is cut and says so (`11.333… in`).
///
/// # Examples
/// ```
/// use astragal_exact::measure_text::{LengthUnit, format_length};
/// use astragal_exact::number::Number;
/// let width = Number::ratio(285, 8).ok_or("zero denominator")?;
/// assert_eq!(format_length(&width, LengthUnit::Inch), "35 5/8 in");
/// assert_eq!(format_length(&width, LengthUnit::Millimetre), "904.875 mm");
/// let third = Number::ratio(34, 3).ok_or("zero denominator")?;
/// assert_eq!(format_length(&third, LengthUnit::Inch), "11.333… in");
/// # Ok::<(), &str>(())
/// ```
pub fn format_length(inches: &Number, unit: LengthUnit) -> String {
    let symbol = unit.symbol();
    if let (LengthUnit::Inch, Some(mixed)) = (unit, inches.to_mixed_fraction(INCH_DENOMINATOR_MAX)) {
        return format!("{mixed} {symbol}");
    }
    let count = in_unit(inches, &unit.in_inches());
    if count
        .decimal_places()
        .is_some_and(|places| places <= EXACT_PLACES_MAX)
    {
        return format!("{count} {symbol}");
    }
    format!("{} {symbol}", cut(&count, cut_places(unit)))
}

/// Returns an area in `unit`, from square inches, cut after four places.
///
/// # Examples
/// ```
/// use astragal_exact::measure_text::{AreaUnit, format_area};
/// use astragal_exact::number::Number;
/// let clear_opening = Number::from(820_i64); // 20 x 41 in
/// assert_eq!(format_area(&clear_opening, AreaUnit::SquareFoot), "5.6944… sq ft");
/// assert_eq!(format_area(&clear_opening, AreaUnit::SquareMetre), "0.5290… m2");
/// assert_eq!(format_area(&Number::from(720_i64), AreaUnit::SquareFoot), "5 sq ft");
/// ```
pub fn format_area(square_inches: &Number, unit: AreaUnit) -> String {
    let count = in_unit(square_inches, &unit.in_square_inches());
    format!("{} {}", cut(&count, AREA_PLACES), unit.symbol())
}

/// A unit is never nothing: the default is never taken.
fn in_unit(number: &Number, unit: &Number) -> Number {
    number.checked_div(unit).unwrap_or_default()
}

/// Cuts at the same place whatever the digits are, so that the ellipsis stands for what follows that place.
fn cut(number: &Number, places: u32) -> String {
    let (digits, exact) = number.to_decimal_truncated(places);
    if exact {
        digits
    } else {
        format!("{}…", padded(&digits, places))
    }
}

fn padded(digits: &str, places: u32) -> String {
    let (whole, fraction) = digits.split_once('.').unwrap_or((digits, ""));
    match usize::try_from(places) {
        Ok(width) => format!("{whole}.{fraction:0<width$}"),
        Err(_) => digits.to_string(),
    }
}

/// The places that reach about a hundredth of a millimetre or finer.
fn cut_places(unit: LengthUnit) -> u32 {
    match unit {
        LengthUnit::Inch | LengthUnit::Millimetre => 3,
        LengthUnit::Centimetre | LengthUnit::Foot => 4,
        LengthUnit::Metre => 6,
    }
}
