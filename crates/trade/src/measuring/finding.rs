//! What the readings of one opening show that somebody should look at, and the tolerances behind it.
//!
//! Widths of 36 and 36 1/4 in lie 1/4 apart where 1/8 is common: measure again, or have it looked at in the field.
//!
//! Always holds: a reading exactly at its tolerance is within it. A finding changes no number.
//! Source: tolerances of common practice, read in measuring guides of installers; no code and no standard has them. A plant
//! or an installer may ask for less.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use super::error::Side;
use crate::basis::Basis;
use crate::constant::over;
use crate::fact::Fact;

/// The tolerances of common practice, in inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Tolerances {
    /// The most that three readings of a side lie apart: 1/8 in.
    pub spread: Number,
    /// The most that the diagonals differ: 1/4 in.
    pub diagonals: Number,
    /// The most that an opening is out of plumb or out of level: 1/8 in.
    pub level: Number,
    /// The least depth of a pocket, between its stops: 3 1/4 in.
    pub pocket_depth: Number,
}

/// Returns the tolerances of common practice.
///
/// # Source
/// Measuring guides of installers; see [`Finding::basis`].
///
/// # Examples
/// ## A quarter of an inch between the diagonals
/// ```
/// use astragal_trade::measuring::tolerances;
/// assert_eq!(tolerances().diagonals.to_string(), "0.25");
/// ```
#[must_use]
pub fn tolerances() -> Tolerances {
    Tolerances {
        spread: over::<8>(1),
        diagonals: over::<4>(1),
        level: over::<8>(1),
        pocket_depth: over::<4>(13),
    }
}

/// Something about the readings that somebody should look at.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
#[non_exhaustive]
pub enum Finding {
    /// The three readings of a side lie further apart than is common, in inches.
    Spread(Side, Number),
    /// The diagonals differ by more than is common, in inches.
    DiagonalsDiffer(Number),
    /// The jambs lean by more than is common, in inches.
    OutOfPlumb(Number),
    /// Head and sill slope by more than is common, in inches.
    OutOfLevel(Number),
    /// The pocket is shallower than is common, in inches.
    PocketShallow(Number),
    /// What the level says does not go with what the diagonals say.
    LevelAgainstDiagonals,
    /// Fewer than three readings of a side; so many were taken.
    FewerReadings(Side, usize),
    /// A diagonal is missing.
    DiagonalsMissing,
    /// The diagonals differ and no level tells which sides stand askew.
    EitherWay,
    /// No level was held to a jamb, or to the sill; where it was not.
    NotLevelled(Fact),
}

impl Finding {
    /// Says whether something lies outside what is common; otherwise something was not read.
    #[must_use]
    pub fn is_warning(&self) -> bool {
        !matches!(
            self,
            Self::FewerReadings(..) | Self::DiagonalsMissing | Self::EitherWay | Self::NotLevelled(_)
        )
    }

    /// Returns the name that programs use: small letters and underscores.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::Spread(..) => "readings_apart",
            Self::DiagonalsDiffer(_) => "diagonals_differ",
            Self::OutOfPlumb(_) => "out_of_plumb",
            Self::OutOfLevel(_) => "out_of_level",
            Self::PocketShallow(_) => "pocket_shallow",
            Self::LevelAgainstDiagonals => "level_against_diagonals",
            Self::FewerReadings(..) => "fewer_readings",
            Self::DiagonalsMissing => "diagonals_missing",
            Self::EitherWay => "either_way",
            Self::NotLevelled(_) => "not_levelled",
        }
    }

    /// Returns where the tolerance was seen; `None` for what follows from geometry or was not read.
    #[must_use]
    pub fn basis(&self) -> Option<Basis> {
        match self {
            Self::Spread(..) | Self::DiagonalsDiffer(_) | Self::OutOfPlumb(_) | Self::OutOfLevel(_) => {
                Some(Basis::second_hand("an installer's how-to page", ""))
            }
            Self::PocketShallow(_) => Some(Basis::second_hand(
                "a measuring guide for replacement windows",
                "",
            )),
            Self::FewerReadings(..) => Some(Basis::second_hand("measuring guides of installers", "")),
            _ => None,
        }
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let allowed = tolerances();
        match self {
            Self::Spread(side, spread) => outside(
                formatter,
                format_args!("readings of the {side} lie `{}` apart", inches(spread)),
                "at most",
                &allowed.spread,
            ),
            Self::DiagonalsDiffer(difference) => outside(
                formatter,
                format_args!("the diagonals differ by `{}`", inches(difference)),
                "at most",
                &allowed.diagonals,
            ),
            Self::OutOfPlumb(reading) => outside(
                formatter,
                format_args!("the jambs are out of plumb by `{}`", inches(reading)),
                "at most",
                &allowed.level,
            ),
            Self::OutOfLevel(reading) => outside(
                formatter,
                format_args!("head and sill are out of level by `{}`", inches(reading)),
                "at most",
                &allowed.level,
            ),
            Self::PocketShallow(depth) => outside(
                formatter,
                format_args!("the pocket is `{}` deep", inches(depth)),
                "at least",
                &allowed.pocket_depth,
            ),
            Self::LevelAgainstDiagonals => formatter.write_str(
                "what the level says does not go with the diagonals: measure again or have it looked at in the field",
            ),
            Self::FewerReadings(side, read) => write!(
                formatter,
                "{read} of 3 readings of the {side}: a smaller one may not have been read"
            ),
            Self::DiagonalsMissing => {
                formatter.write_str("diagonals missing: not known whether it is square")
            }
            Self::EitherWay => formatter.write_str(
                "the sides lean or head and sill slope, and a level would tell which: the size fits either way",
            ),
            Self::NotLevelled(Fact::OutOfLevel) => {
                formatter.write_str("no level was held to the sill: not known whether it is level")
            }
            Self::NotLevelled(_) => {
                formatter.write_str("no level was held to a jamb: not known whether it is plumb")
            }
        }
    }
}

fn outside(
    formatter: &mut fmt::Formatter<'_>,
    found: fmt::Arguments<'_>,
    at: &str,
    allowed: &Number,
) -> fmt::Result {
    write!(
        formatter,
        "{found}; common practice is {at} `{}`: measure again or have it looked at in the field",
        inches(allowed)
    )
}

fn inches(number: &Number) -> String {
    format_length(number, LengthUnit::Inch)
}
