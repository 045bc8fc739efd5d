//! The U-factor of a whole unit from those of its centre of glass, edge of glass and frame.
//!
//! 47.24 x 59.06 in with 2.75 in of frame all round, U 0.25 at the centre, 0.33 at the edge and 0.30 in the frame: 0.27288 for
//! the whole, which a label would print as 0.27.
//!
//! Always holds: it is exact, and lies between the least and the largest of the three; the three areas add up to the unit.
//! It is not a rating: a rating is given by a laboratory for a model size.
//!
//! Source: the weighting and the edge band of 2.5 in of the NFRC 100 procedure, from memory.

use astragal_exact::{LengthUnit, Number, format_length};

use super::average::area;
use super::rating;
use crate::constant::over;
use crate::{Basis, Fact, InputError, input};

/// Where the weighting stands.
pub const BASIS: Basis = Basis::from_memory("NFRC 100", "total product U-factor");

/// A part of a unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Part {
    /// Its area, in square inches.
    pub area: Number,
    /// Its U-factor, in Btu/h ft2 F.
    pub u_factor: Number,
}

/// The three areas of a unit with one lite, in square inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Areas {
    /// The glass more than the edge band from its edges.
    pub centre: Number,
    /// The band along the edges of the glass.
    pub edge: Number,
    /// The frame.
    pub frame: Number,
}

/// Returns the width of the edge band, in inches: 2.5, from memory.
#[must_use]
pub fn edge_band() -> Number {
    over::<2>(5)
}

/// Returns the three areas of a unit with one lite and the same frame all round. Everything is in inches.
///
/// # Errors
/// [`InputError`] for a size that is none, and for a frame that leaves no glass outside the edge bands.
///
/// # Examples
/// ## A picture unit
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::whole_product::areas_of_one_lite;
/// let areas = areas_of_one_lite(&Number::from(36), &Number::from(60), &Number::from(3))?;
/// assert_eq!(areas.frame, Number::from(36 * 60 - 30 * 54));
/// assert_eq!(areas.centre, Number::from(25 * 49));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A frame that leaves nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::whole_product::areas_of_one_lite;
/// assert!(areas_of_one_lite(&Number::from(10), &Number::from(60), &Number::from(3)).is_err());
/// ```
pub fn areas_of_one_lite(width: &Number, height: &Number, frame: &Number) -> Result<Areas, InputError> {
    input::size(Fact::UnitWidth, width)?;
    input::size(Fact::UnitHeight, height)?;
    let frame_both = frame * &Number::from(2);
    let band_both = edge_band() * Number::from(2);
    let (glass_width, glass_height) = (width - &frame_both, height - &frame_both);
    let (centre_width, centre_height) = (&glass_width - &band_both, &glass_height - &band_both);
    if !frame.is_positive() || !centre_width.is_positive() || !centre_height.is_positive() {
        return Err(InputError {
            fact: Fact::GlazingArea,
            found: format!(
                "what a frame of {} leaves",
                format_length(frame, LengthUnit::Inch)
            ),
            expected: "a frame above 0 that leaves more glass than the two edge bands of 2.5 in".to_owned(),
        });
    }
    let glass = &glass_width * &glass_height;
    let centre = &centre_width * &centre_height;
    Ok(Areas {
        edge: &glass - &centre,
        frame: width * height - glass,
        centre,
    })
}

/// Returns the U-factor of a unit from its three parts.
///
/// # Errors
/// [`InputError`] for an area that is none or a value that is no U-factor.
///
/// # Cost
/// Seven exact operations.
///
/// # Source
/// [`BASIS`].
///
/// # Examples
/// ## Equal areas give the plain mean
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::whole_product::{Part, u_factor};
/// let part = |u_factor| Part { area: Number::from(100), u_factor: Number::from_decimal(u_factor).unwrap_or_default() };
/// let whole = u_factor(&part("0.24"), &part("0.34"), &part("0.32"))?;
/// assert_eq!(whole.to_string(), "0.3");
/// assert!(u_factor(&part("0.24"), &part("-0.34"), &part("0.32")).is_err());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn u_factor(centre: &Part, edge: &Part, frame: &Part) -> Result<Number, InputError> {
    let (mut areas, mut products) = (Number::ZERO, Number::ZERO);
    for part in [centre, edge, frame] {
        area(&part.area)?;
        rating::u_factor(&part.u_factor)?;
        areas += &part.area;
        products += &(&part.area * &part.u_factor);
    }
    // Three areas above 0 have a sum above 0.
    Ok(products.checked_div(&areas).unwrap_or_default())
}
