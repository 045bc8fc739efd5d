//! Lengths that no opening, unit or deduction has, kept as numbers so that they can be said in any unit.
//!
//! A width of -36 in: `width of the opening is -36 in, middle`, or for who works in metric units `-914.4 mm, middle`.
//!
//! Always holds: what is taken is what [`crate::input`] takes; the text in inches is the one that it gives.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use super::error::Side;
use super::size::Size;
use crate::fact::Fact;
use crate::input;

/// A length that cannot be what it is said to be.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LengthError {
    /// What it was given as.
    pub fact: Fact,
    /// Where it was read, `middle`; empty where there is but one.
    pub place: &'static str,
    /// What was found, in inches.
    pub found: Number,
    /// What is expected instead.
    pub expected: ExpectedLength,
}

/// Which lengths are taken.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum ExpectedLength {
    /// Above 0 and at most [`input::SIZE_MOST`].
    Size,
    /// From 0 to [`input::DISTANCE_MOST`].
    Distance,
    /// Above 0 and at most [`input::DISTANCE_MOST`].
    Diagonal,
    /// At most what is left of a side, in inches: a step of a plant.
    StepOf(Side, Number),
}

impl LengthError {
    /// Returns it as a sentence with its lengths in `unit`.
    ///
    /// # Examples
    /// ## In millimetres
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::Readings;
    /// let widths = [Some(Number::from(-36)), None, None];
    /// let error = Readings { widths, ..Readings::default() }.checked().err();
    /// let text = "width of the opening is `-914.4 mm, top`; expected a length above 0 and at most 15240 mm";
    /// assert_eq!(error.map(|error| error.text(LengthUnit::Millimetre)).as_deref(), Some(text));
    /// ```
    /// ## In inches
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::Readings;
    /// let widths = [Some(Number::from(-36)), None, None];
    /// let error = Readings { widths, ..Readings::default() }.checked().err();
    /// let text = "width of the opening is `-36 in, top`; expected a length above 0 and at most 50 ft";
    /// assert_eq!(error.map(|error| error.text(LengthUnit::Inch)).as_deref(), Some(text));
    /// ```
    #[must_use]
    pub fn text(&self, unit: LengthUnit) -> String {
        let Self { fact, place, .. } = self;
        let found = format_length(&self.found, unit);
        let comma = if place.is_empty() { "" } else { ", " };
        format!(
            "{fact} is `{found}{comma}{place}`; expected {}",
            self.expected.text(unit)
        )
    }
}

impl ExpectedLength {
    fn text(&self, unit: LengthUnit) -> String {
        let most = |inches: i64, feet: &str| match unit {
            LengthUnit::Inch | LengthUnit::Foot => feet.to_owned(),
            LengthUnit::Millimetre | LengthUnit::Centimetre | LengthUnit::Metre => {
                format_length(&Number::from(inches), unit)
            }
        };
        match self {
            Self::Size => format!("a length above 0 and at most {}", most(input::SIZE_MOST, "50 ft")),
            Self::Distance => format!(
                "a length of 0 or more, at most {}",
                most(input::DISTANCE_MOST, "3,000 ft")
            ),
            Self::Diagonal => format!(
                "a length above 0 and at most {}",
                most(input::DISTANCE_MOST, "3,000 ft")
            ),
            Self::StepOf(side, left) => {
                format!("a step of at most the {side} of `{}`", format_length(left, unit))
            }
        }
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.text(LengthUnit::Inch))
    }
}

impl std::error::Error for LengthError {}

/// Takes a size as [`input::size`] does.
pub(super) fn size(fact: Fact, place: &'static str, inches: &Number) -> Result<(), LengthError> {
    input::size(fact, inches).map_err(|_| refused(fact, place, inches, ExpectedLength::Size))
}

/// Takes a distance as [`input::distance`] does.
pub(super) fn distance(fact: Fact, inches: &Number) -> Result<(), LengthError> {
    input::distance(fact, inches).map_err(|_| refused(fact, "", inches, ExpectedLength::Distance))
}

/// Takes a unit as [`Size::checked`] does.
pub(super) fn unit(unit: &Size) -> Result<(), LengthError> {
    size(Fact::UnitWidth, "", &unit.width)?;
    size(Fact::UnitHeight, "", &unit.height)
}

pub(super) fn refused(
    fact: Fact,
    place: &'static str,
    found: &Number,
    expected: ExpectedLength,
) -> LengthError {
    LengthError {
        fact,
        place,
        found: found.clone(),
        expected,
    }
}
