//! Nominal thicknesses by fractions of an inch, with their weights and the least that each may really measure.
//!
//! | nominal | lb/ft2 | least actual, in |
//! |---|---|---|
//! | 3/32 | 1.22 (worked out) | 0.085 |
//! | 1/8 | 1.64 | 0.115 |
//! | 5/32 | 2.03 (worked out) | 0.149 |
//! | 3/16 | 2.45 | 0.180 |
//! | 1/4 | 3.27 | 0.219 |
//! | 5/16 | 4.06 (worked out) | 0.292 |
//! | 3/8 | 4.91 | 0.355 |
//! | 1/2 | 6.54 | 0.469 |
//!
//! Always holds: a weight that the trade publishes is used where there is one; the others are worked out with 156 lb/ft3 and say
//! so. The published ones imply about 157 lb/ft3, within 1 % of 2500 kg/m3.
//!
//! Source: weights from a glass supplier's published table; thicknesses from a window film trade association's table. A military
//! handbook prints rounder weights (1.6, 3.1 ...); they are another set and not used.

use std::fmt;

use astragal_exact::Number;

use crate::constant::over;
use crate::refusal::unknown;
use crate::{Basis, Fact, InputError};

/// Where the least actual thicknesses stand.
pub const THICKNESS_BASIS: Basis =
    Basis::second_hand("window film trade association, glass thickness table", "");

const TRADE: Basis = Basis::second_hand("glass supplier's table of weights", "");
const WORKED_OUT: Basis = Basis::computed("156 lb/ft3 by nominal thickness", "");

/// A nominal thickness of glass, by fractions of an inch.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Nominal {
    /// 3/32 in.
    ThreeThirtySeconds,
    /// 1/8 in.
    OneEighth,
    /// 5/32 in.
    FiveThirtySeconds,
    /// 3/16 in.
    ThreeSixteenths,
    /// 1/4 in.
    OneQuarter,
    /// 5/16 in.
    FiveSixteenths,
    /// 3/8 in.
    ThreeEighths,
    /// 1/2 in.
    OneHalf,
}

/// What a square foot of one lite weighs.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PoundsPerSquareFoot {
    /// The weight in pounds, exact.
    pub pounds: Number,
    /// Where it stands.
    pub basis: Basis,
}

impl Nominal {
    /// Every thickness that is known, thin to thick.
    pub const ALL: [Self; 8] = [
        Self::ThreeThirtySeconds,
        Self::OneEighth,
        Self::FiveThirtySeconds,
        Self::ThreeSixteenths,
        Self::OneQuarter,
        Self::FiveSixteenths,
        Self::ThreeEighths,
        Self::OneHalf,
    ];

    /// The fraction of an inch, as text: `3/16`.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::ThreeThirtySeconds => "3/32",
            Self::OneEighth => "1/8",
            Self::FiveThirtySeconds => "5/32",
            Self::ThreeSixteenths => "3/16",
            Self::OneQuarter => "1/4",
            Self::FiveSixteenths => "5/16",
            Self::ThreeEighths => "3/8",
            Self::OneHalf => "1/2",
        }
    }

    /// The nominal thickness in inches. The glass itself is thinner.
    #[must_use]
    pub fn inches(self) -> Number {
        over::<32>(match self {
            Self::ThreeThirtySeconds => 3,
            Self::OneEighth => 4,
            Self::FiveThirtySeconds => 5,
            Self::ThreeSixteenths => 6,
            Self::OneQuarter => 8,
            Self::FiveSixteenths => 10,
            Self::ThreeEighths => 12,
            Self::OneHalf => 16,
        })
    }

    /// The least that glass of this nominal thickness may measure, in inches ([`THICKNESS_BASIS`]).
    ///
    /// # Examples
    /// ## A quarter of an inch is not a quarter of an inch
    /// ```
    /// use astragal_trade::glass::Nominal;
    /// assert_eq!(Nominal::OneQuarter.least_actual_inches().to_string(), "0.219");
    /// ```
    #[must_use]
    pub fn least_actual_inches(self) -> Number {
        over::<1000>(match self {
            Self::ThreeThirtySeconds => 85,
            Self::OneEighth => 115,
            Self::FiveThirtySeconds => 149,
            Self::ThreeSixteenths => 180,
            Self::OneQuarter => 219,
            Self::FiveSixteenths => 292,
            Self::ThreeEighths => 355,
            Self::OneHalf => 469,
        })
    }

    /// What a square foot of one lite weighs, in pounds.
    ///
    /// # Examples
    /// ## A published weight, and one that is worked out
    /// ```
    /// use astragal_trade::Status;
    /// use astragal_trade::glass::Nominal;
    /// assert_eq!(Nominal::OneEighth.weight().pounds.to_string(), "1.64");
    /// let worked_out = Nominal::FiveSixteenths.weight();
    /// assert_eq!((worked_out.pounds.to_string().as_str(), worked_out.basis.status), ("4.0625", Status::Computed));
    /// ```
    #[must_use]
    pub fn weight(self) -> PoundsPerSquareFoot {
        let hundredths = match self {
            Self::OneEighth => 164,
            Self::ThreeSixteenths => 245,
            Self::OneQuarter => 327,
            Self::ThreeEighths => 491,
            Self::OneHalf => 654,
            Self::ThreeThirtySeconds | Self::FiveThirtySeconds | Self::FiveSixteenths => {
                return PoundsPerSquareFoot {
                    pounds: self.weight_by_density(),
                    basis: WORKED_OUT,
                };
            }
        };
        PoundsPerSquareFoot {
            pounds: over::<100>(hundredths),
            basis: TRADE,
        }
    }

    /// What a square foot of the nominal thickness weighs at 156 lb/ft3, in pounds.
    #[must_use]
    pub fn weight_by_density(self) -> Number {
        self.inches() * over::<12>(156)
    }

    /// Reads a thickness: `1/8`, `1/8 in`, `1/8"`. Millimetres are another convention and refused.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the thicknesses that are known.
    ///
    /// # Examples
    /// ## A thickness that is not known
    /// ```
    /// use astragal_trade::glass::Nominal;
    /// assert_eq!(Nominal::from_text("3/16 in"), Ok(Nominal::ThreeSixteenths));
    /// let error = Nominal::from_text("7/32").err().map(|error| error.to_string());
    /// let expected = "thickness of the glass is `7/32`; expected one of `3/32`, `1/8`, `5/32`, `3/16`, `1/4`, `5/16`, \
    ///                 `3/8`, `1/2`";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        let wanted = text.trim();
        let wanted = wanted
            .strip_suffix("in")
            .or_else(|| wanted.strip_suffix('"'))
            .unwrap_or(wanted)
            .trim_end();
        Self::ALL
            .into_iter()
            .find(|nominal| nominal.id() == wanted)
            .ok_or_else(|| unknown(Fact::GlassThickness, text, &Self::ALL.map(Self::id)))
    }
}

impl fmt::Display for Nominal {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} in", self.id())
    }
}
