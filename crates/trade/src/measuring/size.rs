//! A width and a height, always named in that order.
//!
//! `35 5/8 in x 59 1/2 in` is 35 5/8 wide and 59 1/2 high.
//!
//! Always holds: width comes first, in code and in text. Inches, exact.
//! Source: width before height is the order of the measuring guides that were seen.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use crate::fact::Fact;
use crate::input::{self, InputError};

/// Holds the width and the height of something, in inches.
///
/// It is written width by height.
///
/// # Examples
/// ## Width first
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::Size;
/// let size = Size::new(Number::from(36), Number::from(60));
/// assert_eq!(size.to_string(), "36 in x 60 in");
/// assert_eq!(size.area(), Number::from(2160));
/// ```
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Size {
    /// From side to side, in inches.
    pub width: Number,
    /// From bottom to top, in inches.
    pub height: Number,
}

impl Size {
    /// Returns the size of this width and this height, in this order.
    #[must_use]
    pub fn new(width: Number, height: Number) -> Self {
        Self { width, height }
    }

    /// Returns the area in square inches.
    #[must_use]
    pub fn area(&self) -> Number {
        &self.width * &self.height
    }

    /// Returns the way around in inches.
    #[must_use]
    pub fn perimeter(&self) -> Number {
        (&self.width + &self.height) * Number::from(2)
    }

    /// Takes a size whose width and height are above nothing and at most 50 ft.
    ///
    /// # Errors
    /// [`InputError`] that names the one that is not, as the width or the height of a unit.
    ///
    /// # Examples
    /// ## A unit of nothing is no unit
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::Size;
    /// let error = Size::new(Number::from(36), Number::ZERO).checked().err();
    /// let text = "height of the unit is `0 in`; expected a length above 0 and at most 50 ft";
    /// assert_eq!(error.map(|error| error.to_string()).as_deref(), Some(text));
    /// ```
    pub fn checked(self) -> Result<Self, InputError> {
        self.check()?;
        Ok(self)
    }

    /// Says what is wrong with a size that a unit cannot have.
    ///
    /// # Errors
    /// [`InputError`] with the side that is not above 0 and at most 50 ft.
    pub fn check(&self) -> Result<(), InputError> {
        input::size(Fact::UnitWidth, &self.width)?;
        input::size(Fact::UnitHeight, &self.height)
    }
}

impl fmt::Display for Size {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let width = format_length(&self.width, LengthUnit::Inch);
        let height = format_length(&self.height, LengthUnit::Inch);
        write!(formatter, "{width} x {height}")
    }
}
