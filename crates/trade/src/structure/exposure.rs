//! How the wind grows with height over different ground: the velocity pressure exposure coefficient.
//!
//! At 30 ft it is 0.70 over suburban ground (B), 0.98 in open country (C) and 1.16 at the coast (D).
//!
//! The coefficient is 2.01 (z / zg)^(2 / alpha), with z the mean roof height, and alpha 7.0, 9.5, 11.5 and zg 1200, 900, 700 ft
//! for B, C, D. The standard prints it to two decimals as well, and the residential code's table was worked out from 0.70 where
//! the formula gives 0.70059: eleven of its figures differ by 0.1 psf. So the reading is a choice ([`ExposureReading`]).
//!
//! Always holds: a root lies between two bounds; the height that counts is never below 15 ft.
//!
//! Source: ASCE 7-10 and 7-16, the constants in repositories that work with them; the least height of 30 ft for exposure B in
//! ASCE 7-10 is its Table 30.3-1, note 1, in a text that quotes it; the least height of 15 ft otherwise is from memory. A page that prints 1.11 for D at 30 ft is wrong by the formula.

use std::fmt;

use astragal_exact::Number;

use super::power::power;
use crate::constant::over;
use crate::interval::Interval;
use crate::refusal::{refused, unknown};
use crate::{Basis, Fact, InputError};

/// The highest mean roof height that is covered here, in inches: 60 ft.
pub(super) const HEIGHT_MOST: i64 = 60 * 12;

/// The ground around a building, upwind.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Exposure {
    /// B: towns, suburbs, woods.
    B,
    /// C: open country with scattered obstructions.
    C,
    /// D: flat ground without obstructions, and the shores of large water.
    D,
}

/// The edition of the standard for loads.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum WindStandard {
    /// ASCE 7-10: over ground B no height below 30 ft counts for a window.
    Asce7In2010,
    /// ASCE 7-16.
    Asce7In2016,
}

/// How the coefficient is read.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum ExposureReading {
    /// To two decimals, as the standard's table and the residential code's table have it.
    #[default]
    Printed,
    /// From the formula, not rounded.
    Formula,
}

/// Returns where the coefficient lies for a mean roof height in inches.
///
/// # Errors
/// [`InputError`] for a height that is not above 0 and at most 60 ft.
///
/// # Cost
/// One root: two to three microseconds.
///
/// # Source
/// See the constants above; which height counts at least: [`height_basis`].
///
/// # Examples
/// ## As printed, and from the formula
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{Exposure, ExposureReading, WindStandard, exposure_coefficient};
/// let at_30_ft = |reading| {
///     exposure_coefficient(WindStandard::Asce7In2016, Exposure::B, &Number::from(360), reading)
/// };
/// assert_eq!(at_30_ft(ExposureReading::Printed)?.to_string(), "0.7");
/// assert_eq!(at_30_ft(ExposureReading::Formula)?.low().to_fixed(8), "0.70059112");
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A tower
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{Exposure, ExposureReading, WindStandard, exposure_coefficient};
/// let height = Number::from(61 * 12);
/// let reading = ExposureReading::Printed;
/// assert!(exposure_coefficient(WindStandard::Asce7In2016, Exposure::B, &height, reading).is_err());
/// ```
pub fn exposure_coefficient(
    standard: WindStandard,
    exposure: Exposure,
    roof_height: &Number,
    reading: ExposureReading,
) -> Result<Interval, InputError> {
    let refusal = || {
        let feet = roof_height * &over::<12>(1);
        refused(Fact::RoofHeight, &feet, "a height in feet above 0 and at most 60")
    };
    if !roof_height.is_positive() || *roof_height > Number::from(HEIGHT_MOST) {
        return Err(refusal());
    }
    let least = Number::from(12 * standard.least_height_feet(exposure));
    let height = if *roof_height < least { &least } else { roof_height };
    let (gradient_feet, exponent) = exposure.constants();
    let share = height
        .checked_div(&Number::from(12 * gradient_feet))
        .ok_or_else(refusal)?;
    let factor = over::<100>(201);
    let formula = power(&share, exponent.0, exponent.1)
        .ok_or_else(refusal)?
        .scaled(&factor);
    Ok(match reading {
        ExposureReading::Formula => formula,
        ExposureReading::Printed => printed(&formula),
    })
}

/// Where the least height that counts stands: the 30 ft of exposure B in 7-10, the 15 ft of 7-16.
#[must_use]
pub fn height_basis(standard: WindStandard) -> Basis {
    match standard {
        WindStandard::Asce7In2010 => Basis::second_hand("ASCE 7-10", "Table 30.3-1, note 1"),
        WindStandard::Asce7In2016 => Basis::from_memory("ASCE 7-16", "Table 26.10-1"),
    }
}

fn printed(formula: &Interval) -> Interval {
    let two_decimals = |end: &Number| end.round_to(&over::<100>(1)).unwrap_or_default();
    Interval::between(two_decimals(formula.low()), two_decimals(formula.high()))
}

impl WindStandard {
    /// The height below which no roof counts as lower, in feet.
    fn least_height_feet(self, exposure: Exposure) -> i64 {
        match (self, exposure) {
            (Self::Asce7In2010, Exposure::B) => 30,
            _ => 15,
        }
    }
}

impl Exposure {
    /// Every exposure, sheltered to open.
    pub const ALL: [Self; 3] = [Self::B, Self::C, Self::D];

    /// The letter.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::B => "B",
            Self::C => "C",
            Self::D => "D",
        }
    }

    /// Reads an exposure: `B`, `c`.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the exposures that are known.
    ///
    /// # Examples
    /// ## A category that the standard gave up
    /// ```
    /// use astragal_trade::structure::Exposure;
    /// assert_eq!(Exposure::from_text("c"), Ok(Exposure::C));
    /// let error = Exposure::from_text("A").err().map(|error| error.to_string());
    /// assert_eq!(error.as_deref(), Some("wind exposure of the site is `A`; expected one of `B`, `C`, `D`"));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        Self::ALL
            .into_iter()
            .find(|exposure| exposure.id().eq_ignore_ascii_case(text.trim()))
            .ok_or_else(|| unknown(Fact::Exposure, text, &Self::ALL.map(Self::id)))
    }

    /// The gradient height zg in feet, and 2 / alpha as a fraction of whole numbers.
    fn constants(self) -> (i64, (u32, u32)) {
        match self {
            Self::B => (1200, (2, 7)),
            Self::C => (900, (4, 19)),
            Self::D => (700, (4, 23)),
        }
    }
}

impl fmt::Display for Exposure {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.id())
    }
}
