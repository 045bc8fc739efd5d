//! What was read in one opening, before anything is concluded from it.
//!
//! Widths of 36, 35 15/16 and 36 in at the top, in the middle and at the bottom: the smallest, 35 15/16, governs, and their
//! spread is 1/16.
//!
//! Always holds: a reading that was not taken is absent, never nought. Inches, exact, as read.
//! Source: three widths, three heights, the smallest of each, were read in two measuring guides of installers.

use astragal_exact::Number;

use super::length_error::{self, ExpectedLength, LengthError};
use crate::fact::Fact;
use crate::input;

/// Holds the readings of one opening, in inches; what was not read is `None`.
///
/// Widths are read level, heights plumb, diagonals from corner to corner, all at the same faces. Out of plumb is how far a
/// jamb leans over the whole height, out of level how far the sill falls over the whole width, without a sign.
///
/// # Examples
/// ## A square opening, read in full
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::Readings;
/// let thirty_six = || Number::from(36);
/// let readings = Readings {
///     widths: [Some(thirty_six()), Some(thirty_six()), Some(thirty_six())],
///     ..Readings::default()
/// };
/// assert_eq!(readings.governing_width().map(|width| width.smallest), Some(thirty_six()));
/// ```
/// ## Nothing was read
/// ```
/// use astragal_trade::measuring::Readings;
/// assert_eq!(Readings::default().governing_width(), None);
/// ```
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Readings {
    /// At the top, in the middle, at the bottom.
    pub widths: [Option<Number>; 3],
    /// At the left, in the centre, at the right.
    pub heights: [Option<Number>; 3],
    /// From each lower corner to the opposite upper one.
    pub diagonals: [Option<Number>; 2],
    /// How far the jambs lean over the whole height.
    pub out_of_plumb: Option<Number>,
    /// How far head and sill slope over the whole width.
    pub out_of_level: Option<Number>,
    /// The depth of the pocket of an old frame, between its stops.
    pub pocket_depth: Option<Number>,
}

/// Which of three readings governs, and how far they lie apart.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Governing {
    /// The smallest: the one that governs.
    pub smallest: Number,
    /// The largest.
    pub largest: Number,
    /// How many of the three were read, 1 to 3.
    pub read: usize,
}

impl Governing {
    /// Returns how far the readings lie apart; 0 when only one was read.
    #[must_use]
    pub fn spread(&self) -> Number {
        &self.largest - &self.smallest
    }
}

impl Readings {
    /// Returns which width governs; `None` when none was read.
    #[must_use]
    pub fn governing_width(&self) -> Option<Governing> {
        governing(&self.widths)
    }

    /// Returns which height governs; `None` when none was read.
    #[must_use]
    pub fn governing_height(&self) -> Option<Governing> {
        governing(&self.heights)
    }

    /// Takes readings each of which can be one.
    ///
    /// # Errors
    /// [`LengthError`] for the first that cannot, with the place where it was read: a width, height or pocket that is not
    /// above 0 and at most 50 ft, a diagonal not above 0 and at most 3,000 ft, an out-of-plumb or out-of-level below 0.
    ///
    /// # Examples
    /// ## A slip of the pen
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::Readings;
    /// let readings = Readings {
    ///     widths: [None, Some(Number::from(-36)), None],
    ///     ..Readings::default()
    /// };
    /// let text = "width of the opening is `-36 in, middle`; expected a length above 0 and at most 50 ft";
    /// assert_eq!(readings.checked().err().map(|error| error.to_string()).as_deref(), Some(text));
    /// ```
    pub fn checked(&self) -> Result<(), LengthError> {
        let widths = ["top", "middle", "bottom"].into_iter().zip(&self.widths);
        for (place, reading) in widths {
            sized(Fact::OpeningWidth, place, reading.as_ref())?;
        }
        let heights = ["left", "centre", "right"].into_iter().zip(&self.heights);
        for (place, reading) in heights {
            sized(Fact::OpeningHeight, place, reading.as_ref())?;
        }
        self.diagonals.iter().flatten().try_for_each(diagonal)?;
        sized(Fact::PocketDepth, "", self.pocket_depth.as_ref())?;
        if let Some(reading) = &self.out_of_plumb {
            length_error::distance(Fact::OutOfPlumb, reading)?;
        }
        if let Some(reading) = &self.out_of_level {
            length_error::distance(Fact::OutOfLevel, reading)?;
        }
        Ok(())
    }
}

fn governing(readings: &[Option<Number>; 3]) -> Option<Governing> {
    let read = || readings.iter().flatten();
    Some(Governing {
        smallest: read().min()?.clone(),
        largest: read().max()?.clone(),
        read: read().count(),
    })
}

fn sized(fact: Fact, place: &'static str, reading: Option<&Number>) -> Result<(), LengthError> {
    reading.map_or(Ok(()), |reading| length_error::size(fact, place, reading))
}

/// A diagonal of two sides of 50 ft is above 50 ft, so that the limit of a distance is the one that fits.
fn diagonal(reading: &Number) -> Result<(), LengthError> {
    if reading.is_positive() && input::distance(Fact::OpeningDiagonal, reading).is_ok() {
        return Ok(());
    }
    Err(length_error::refused(
        Fact::OpeningDiagonal,
        "",
        reading,
        ExpectedLength::Diagonal,
    ))
}
