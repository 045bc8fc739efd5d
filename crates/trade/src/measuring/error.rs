//! Why readings cannot be worked with.
//!
//! *Diagonals of 70 and 75 in* on 36 x 60 in: no opening has them, and the error says which were expected.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use super::deduction::DeductedBy;
use crate::input::InputError;
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
    Input(InputError),
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

impl From<InputError> for MeasuringError {
    fn from(error: InputError) -> Self {
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
        match self {
            Self::Input(error) => error.fmt(formatter),
            Self::DiagonalTooFar { found, allowed } => write!(
                formatter,
                "diagonal of the opening is `{}`; expected `{}` to `{}`",
                inches(found),
                inches(allowed.low()),
                inches(allowed.high())
            ),
            Self::DiagonalsOfNoOpening { found, expected } => write!(
                formatter,
                "diagonals of the opening are `{}` and `{}`; expected `{}` to `{}`, or one as much longer as the other \
                 is shorter",
                inches(&found.0),
                inches(&found.1),
                inches(expected.low()),
                inches(expected.high())
            ),
            Self::LeansTooFar { side, lost, most } => write!(
                formatter,
                "the opening stands so far askew that `{}` of the {side} is lost; expected at most `{}`, half of the \
                 shorter side",
                inches(lost),
                inches(most)
            ),
            Self::NothingLeft { side, whole, off } => write!(
                formatter,
                "nothing is left of the {side} `{}` less `{}`",
                inches(whole),
                inches(off)
            ),
            Self::DeductedTwice { side, by, off } => write!(
                formatter,
                "the {} has deducted from the {side} already, and `{}` is to come off again",
                by.word(),
                inches(off)
            ),
            Self::DeductedByTwo { width, height } => write!(
                formatter,
                "the {} has deducted from the width and the {} from the height; expected one of them",
                width.word(),
                height.word()
            ),
        }
    }
}

impl std::error::Error for MeasuringError {}

fn inches(number: &Number) -> String {
    format_length(number, LengthUnit::Inch)
}
