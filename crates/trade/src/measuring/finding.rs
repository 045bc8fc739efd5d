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

const NOT_SQUARE: &str = "not known whether it is square";
const LEVEL_AGAINST_DIAGONALS: &str =
    "what the level says does not go with the diagonals: measure again or have it looked at in the field";
const EITHER_WAY: &str = "the sides lean or head and sill slope, and a level would tell which: the size fits either way, \
                          unless both do and work against each other";
/// What is said where one side was not read of an opening that stands askew.
const NOT_TAKEN_OFF: &str = "it stands askew and only one side was read: what that takes away is not taken off, and a unit of this \
                             size may not fit; read the other side as well";
const ONE_LEVEL: &str = "the size holds unless lean and slope work against each other";

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
    /// Fewer than three readings of a side; so many were taken, which may be none.
    FewerReadings(Side, usize),
    /// So many diagonals are missing, 1 or 2.
    DiagonalsMissing(usize),
    /// The diagonals differ and no level tells which sides stand askew.
    EitherWay,
    /// The opening stands askew and one side was not read: what lean or slope takes away is not taken off.
    NotTakenOff,
    /// The diagonals differ, and one level was held and was off: lean and slope may work together or against each other; where
    /// no level was held.
    OneLevel(Fact),
    /// No level was held to a jamb, or to the sill; where it was not.
    NotLevelled(Fact),
}

impl Finding {
    /// Returns it as a sentence with its lengths in `unit`; `Display` is in inches.
    ///
    /// # Examples
    /// ## A tolerance in millimetres
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::Finding;
    /// let text = Finding::OutOfPlumb(Number::from(1)).text(LengthUnit::Millimetre);
    /// assert!(text.starts_with("the jambs are out of plumb by `25.4 mm`; common practice is at most `3.175 mm`"), "{text}");
    /// ```
    /// ## In inches
    /// ```
    /// use astragal_exact::{LengthUnit, Number};
    /// use astragal_trade::measuring::Finding;
    /// let finding = Finding::OutOfPlumb(Number::from(1));
    /// assert_eq!(finding.text(LengthUnit::Inch), finding.to_string());
    /// ```
    #[must_use]
    pub fn text(&self, unit: LengthUnit) -> String {
        let allowed = tolerances();
        let shown = |inches: &Number| format!("`{}`", format_length(inches, unit));
        let most = |found: String, most: &Number| outside(&found, "at most", most, unit);
        match self {
            Self::Spread(side, apart) => {
                let found = format!("readings of the {side} lie {} apart", shown(apart));
                most(found, &allowed.spread)
            }
            Self::DiagonalsDiffer(by) => most(
                format!("the diagonals differ by {}", shown(by)),
                &allowed.diagonals,
            ),
            Self::OutOfPlumb(by) => most(
                format!("the jambs are out of plumb by {}", shown(by)),
                &allowed.level,
            ),
            Self::OutOfLevel(by) => {
                let found = format!("head and sill are out of level by {}", shown(by));
                most(found, &allowed.level)
            }
            Self::PocketShallow(depth) => {
                let found = format!("the pocket is {} deep", shown(depth));
                outside(&found, "at least", &allowed.pocket_depth, unit)
            }
            Self::FewerReadings(side, 0) => format!("no {side} was read"),
            Self::FewerReadings(side, read) => {
                format!("{read} of 3 readings of the {side}: a smaller one may not have been read")
            }
            Self::DiagonalsMissing(1) => format!("one diagonal missing: {NOT_SQUARE}"),
            Self::DiagonalsMissing(_) => format!("diagonals missing: {NOT_SQUARE}"),
            Self::LevelAgainstDiagonals => LEVEL_AGAINST_DIAGONALS.to_owned(),
            Self::EitherWay => EITHER_WAY.to_owned(),
            Self::NotTakenOff => NOT_TAKEN_OFF.to_owned(),
            Self::OneLevel(not_held) => format!("{ONE_LEVEL}: hold a level to {} too", held_to(*not_held)),
            Self::NotLevelled(not_held) => no_level(*not_held),
        }
    }

    /// Says whether something lies outside what is common; otherwise something was not read.
    #[must_use]
    pub fn is_warning(&self) -> bool {
        !matches!(
            self,
            Self::FewerReadings(..)
                | Self::DiagonalsMissing(_)
                | Self::EitherWay
                | Self::NotTakenOff
                | Self::OneLevel(_)
                | Self::NotLevelled(_)
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
            Self::DiagonalsMissing(_) => "diagonals_missing",
            Self::EitherWay => "either_way",
            Self::NotTakenOff => "not_taken_off",
            Self::OneLevel(_) => "one_level",
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
        formatter.write_str(&self.text(LengthUnit::Inch))
    }
}

fn no_level(reading: Fact) -> String {
    let known = if reading == Fact::OutOfLevel {
        "level"
    } else {
        "plumb"
    };
    format!(
        "no level was held to {}: not known whether it is {known}",
        held_to(reading)
    )
}

/// What a level is held to.
fn held_to(reading: Fact) -> &'static str {
    match reading {
        Fact::OutOfLevel => "the sill",
        _ => "a jamb",
    }
}

/// A reading that lies outside what is common.
fn outside(found: &str, at: &str, allowed: &Number, unit: LengthUnit) -> String {
    let allowed = format_length(allowed, unit);
    format!("{found}; common practice is {at} `{allowed}`: measure again or have it looked at in the field")
}
