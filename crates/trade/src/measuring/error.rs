//! Why readings cannot be worked with.
//!
//! *Diagonals of 70 and 75 in* on 36 x 60 in: no opening has them, and the error says which were expected.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use super::deduction::DeductedBy;
use super::length_error::LengthError;
use crate::interval::Interval;

/// The one of two that something is about.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Side {
    /// The width.
    Width,
    /// The height.
    Height,
}

/// Why readings, or what is to be done with them, cannot be worked with.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum MeasuringError {
    /// A reading that cannot be one.
    Input(LengthError),
    /// A diagonal longer than width and height together, or shorter than their difference.
    DiagonalTooFar {
        /// What was read.
        found: Number,
        /// What any opening of these sides allows, outward to a sixteenth.
        allowed: Interval,
    },
    /// Two diagonals that do not go with the sides.
    DiagonalsOfNoOpening {
        /// The shorter and the longer, as read.
        found: (Number, Number),
        /// Where the diagonals of a rectangle of these sides lie, outward to a sixteenth.
        expected: Interval,
    },
    /// More than half of the shorter side would be lost to sides that lean or a head that slopes.
    LeansTooFar {
        /// What is lost.
        side: Side,
        /// How much of it, in inches.
        lost: Number,
        /// The most that is taken for an opening: half of the shorter side, in inches.
        most: Number,
    },
    /// Nothing is left of a width or height.
    NothingLeft {
        /// Which.
        side: Side,
        /// What there was, in inches.
        whole: Number,
        /// What comes off, in inches.
        off: Number,
    },
    /// A deduction from what was deducted from already.
    DeductedTwice {
        /// From what.
        side: Side,
        /// Who has deducted already.
        by: DeductedBy,
        /// What is asked to come off again, in inches.
        off: Number,
    },
    /// One has deducted from the width, another from the height.
    DeductedByTwo {
        /// Who from the width.
        width: DeductedBy,
        /// Who from the height.
        height: DeductedBy,
    },
}

impl MeasuringError {
    /// Returns it as a sentence with its lengths in `unit`; `Display` is in inches.
    ///
    /// # Examples
    /// ## Diagonals that no opening has, in millimetres
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::{Readings, measure};
    /// let three = |inches: i64| [(); 3].map(|()| Some(Number::from(inches)));
    /// let diagonals = [Some(Number::from(200)), None];
    /// let readings = Readings { widths: three(36), heights: three(60), diagonals, ..Readings::default() };
    /// let text = measure(&readings).err().map(|error| error.text(LengthUnit::Millimetre)).unwrap_or_default();
    /// assert!(text.starts_with("diagonal of the opening is `5080 mm`; expected `603.25 mm` to `2444.75 mm`"), "{text}");
    /// ```
    /// ## The same in inches
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::{Readings, measure};
    /// let three = |inches: i64| [(); 3].map(|()| Some(Number::from(inches)));
    /// let diagonals = [Some(Number::from(200)), None];
    /// let readings = Readings { widths: three(36), heights: three(60), diagonals, ..Readings::default() };
    /// let error = measure(&readings).err();
    /// let texts = error.map(|error| (error.to_string(), error.text(LengthUnit::Inch)));
    /// assert!(texts.is_some_and(|(shown, inches)| shown == inches && inches.contains("`200 in`")));
    /// ```
    #[must_use]
    pub fn text(&self, unit: LengthUnit) -> String {
        let shown = |inches: &Number| format!("`{}`", format_length(inches, unit));
        match self {
            Self::Input(error) => error.text(unit),
            Self::DiagonalTooFar { found, allowed } => {
                let (found, allowed) = (shown(found), span(allowed, unit));
                format!("diagonal of the opening is {found}; expected {allowed}")
            }
            Self::DiagonalsOfNoOpening { found, expected } => format!(
                "diagonals of the opening are {} and {}; expected {}, or one as much longer as the other is shorter",
                shown(&found.0),
                shown(&found.1),
                span(expected, unit)
            ),
            Self::LeansTooFar { side, lost, most } => format!(
                "the opening stands so far askew that {} of the {side} is lost; expected at most {}, half of the \
                 shorter side",
                shown(lost),
                shown(most)
            ),
            Self::NothingLeft { side, whole, off } => {
                format!(
                    "nothing is left of the {side} {} less {}",
                    shown(whole),
                    shown(off)
                )
            }
            Self::DeductedTwice { side, by, off } => format!(
                "the {} has deducted from the {side} already, and {} is to come off again",
                by.word(),
                shown(off)
            ),
            Self::DeductedByTwo { width, height } => format!(
                "the {} has deducted from the width and the {} from the height; expected one of them",
                width.word(),
                height.word()
            ),
        }
    }

    /// Returns what to do about it, in one line.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self {
            Self::Input(_) => "correct the reading, or leave it out",
            Self::DiagonalTooFar { .. } => "measure the diagonal again, from corner to corner",
            Self::DiagonalsOfNoOpening { .. } => {
                "measure all again, diagonals and sides at the same faces; \
                 where something was deducted from the sides, give what was read"
            }
            Self::LeansTooFar { .. } => {
                "measure the diagonals again, and hold a level to the sill and a jamb"
            }
            Self::NothingLeft { .. } => "correct what comes off",
            Self::DeductedTwice { .. } => "take it off once: say that nobody has deducted, or ask for 0",
            Self::DeductedByTwo { .. } => "have one person measure, and say once who deducts",
        }
    }
}

impl From<LengthError> for MeasuringError {
    fn from(error: LengthError) -> Self {
        Self::Input(error)
    }
}

impl fmt::Display for Side {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Width => "width",
            Self::Height => "height",
        })
    }
}

impl fmt::Display for MeasuringError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.text(LengthUnit::Inch))
    }
}

impl std::error::Error for MeasuringError {}

/// Two ends, each in backticks.
fn span(interval: &Interval, unit: LengthUnit) -> String {
    let (low, high) = (
        format_length(interval.low(), unit),
        format_length(interval.high(), unit),
    );
    format!("`{low}` to `{high}`")
}
