//! The largest U-factor and solar heat gain that an edition of the energy code takes, by its zone.
//!
//! IECC 2021, zone 5: U at most 0.30, or 0.32 above 4,000 ft or in a windborne-debris region. IECC 2024, zone 1: not
//! encoded, which says nothing about what the code asks there.
//!
//! Always holds: each value has its own standing; *no requirement* is said only where a table says it; equal is within; a
//! value is compared as it is, before any rounding. The elevation has to be **above** 4,000 ft.
//!
//! The code that governs is the one adopted and amended locally. Some printed summaries give 0.27 for the cold zones of
//! 2021; that value belongs to zones 7 and 8 of 2024, and to some states' amendments. For the solar heat gain of zone 0 in 2021 it is
//! 0.25 by memory and 0.40 by a page of little weight: sources disagree, and it is not encoded. A small area of glazing may be excused
//! by the code; ask the building official. Replacement units are asked the same as new ones, says the trade press; the section of
//! the code that says so is from memory (R503.1.1.1).
//!
//! Source: the tables named in [`EnergyCode`]; each cell says how it was seen.

use std::fmt;

use astragal_exact::Number;

use super::{CodeZone, rating};
use crate::constant::over;
use crate::refusal::{plain, refused, unknown};
use crate::{Basis, Fact, InputError, Missing, Status, Truth};

mod table;

/// LIMIT: elevations from 2,000 ft under the sea to 30,000 ft above are taken for one, in inches.
pub const ELEVATION_LEAST: i64 = -2_000 * 12;
/// LIMIT: the highest elevation that is taken for one, in inches.
pub const ELEVATION_MOST: i64 = 30_000 * 12;
/// The elevation above which a higher U-factor is taken, in inches: 4,000 ft.
pub const HIGH_ELEVATION: i64 = 4_000 * 12;

/// A table of maxima.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum EnergyCode {
    /// IECC 2021, Table R402.1.2, which is IRC 2021 N1102.1.2. Read in trade press and public repositories, part from memory.
    Iecc2021,
    /// IECC 2024, Table R402.1.2. Read in a public repository; U-factors of zones 3 to 8 only.
    Iecc2024,
    /// A city's table of 2018, the one complete primary text: Philadelphia Code, Table R-N1102.1.2. It has no zone 0.
    ///
    /// In zones 1 to 3 it lets skylights out of the solar heat gain maximum when theirs is at most 0.30; that is not
    /// encoded.
    AdoptedCity2018,
}

/// What a maximum is of.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Quantity {
    /// U-factor of windows and doors, skylights excluded.
    UFactor,
    /// U-factor of skylights.
    SkylightUFactor,
    /// Solar heat gain of glazed openings.
    SolarHeatGain,
}

/// One cell of a table.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Maximum {
    /// The cell is not known here. What the code asks there has to be looked up.
    NotEncoded,
    /// The table says that there is no requirement.
    NoRequirement(Basis),
    /// The table has a number.
    AtMost(Limit),
}

/// A number of a table, with the higher one that some places may use.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Limit {
    /// The maximum.
    pub value: Number,
    /// Where it stands.
    pub basis: Basis,
    /// The maximum above 4,000 ft or in a windborne-debris region, where the table has one.
    pub allowance: Option<(Number, Basis)>,
}

/// What has to be known of the place for the higher maximum.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Place {
    /// The elevation above the sea, in inches.
    pub elevation: Option<Number>,
    /// Whether it is in a windborne-debris region.
    pub windborne_debris_region: Option<bool>,
}

/// How a value stands to a maximum.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum CodeAnswer {
    /// The table's value is not known here: look it up. It is not "no requirement".
    NotEncoded,
    /// The table asks nothing here.
    NoRequirement(Basis),
    /// The value was compared.
    Compared {
        /// Whether it is at most the maximum.
        within: Truth,
        /// The maximum; nothing when the zone is what is missing.
        limit: Option<Limit>,
    },
}

/// Returns the cell of a table.
///
/// # Cost
/// One look through at most seven rows.
///
/// # Examples
/// ## A number that is eased for some places
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Status;
/// use astragal_trade::energy::CodeZone;
/// use astragal_trade::energy::code::{EnergyCode, Maximum, Quantity, maximum};
/// let Maximum::AtMost(limit) = maximum(EnergyCode::Iecc2021, CodeZone::Zone5, Quantity::UFactor) else {
///     return Err("a number was expected");
/// };
/// assert_eq!(Some(limit.value), Number::from_decimal("0.30"));
/// assert_eq!(limit.basis.status, Status::SecondHand);
/// assert_eq!(limit.allowance.map(|(value, _)| value), Number::from_decimal("0.32"));
/// # Ok::<(), &str>(())
/// ```
/// ## A cell that is not known is not a cell without requirement
/// ```
/// use astragal_trade::energy::CodeZone;
/// use astragal_trade::energy::code::{EnergyCode, Maximum, Quantity, maximum};
/// assert_eq!(maximum(EnergyCode::Iecc2024, CodeZone::Zone1, Quantity::UFactor), Maximum::NotEncoded);
/// ```
#[must_use]
pub fn maximum(code: EnergyCode, zone: CodeZone, quantity: Quantity) -> Maximum {
    table::cell(code, zone, quantity)
}

/// Returns how a value, rated or averaged, stands to the maximum of a code in a zone.
///
/// Where a higher maximum exists for high places and windborne-debris regions, what is not known of the place is named only
/// when the value lies between the two.
///
/// # Errors
/// [`InputError`] for a value or an elevation that cannot be one.
///
/// # Cost
/// One look through at most seven rows, two comparisons.
///
/// # Examples
/// ## Between the two maxima the place decides
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::CodeZone;
/// use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Place, Quantity, check};
/// use astragal_trade::{Fact, Missing, Truth};
/// let value = Number::from_decimal("0.31");
/// let ask = |place: &Place| {
///     let zone = Some(CodeZone::Zone6);
///     match check(EnergyCode::Iecc2021, zone, Quantity::UFactor, value.as_ref(), place)? {
///         CodeAnswer::Compared { within, .. } => Ok(within),
///         other => Ok::<Truth, astragal_trade::InputError>(Truth::known(other == CodeAnswer::NotEncoded)),
///     }
/// };
/// let missing = Missing::from([Fact::Elevation, Fact::WindborneDebrisRegion]);
/// assert_eq!(ask(&Place::default())?, Truth::Unknown(missing));
/// let mountain = Place { elevation: Some(Number::from(5_280 * 12)), windborne_debris_region: None };
/// assert_eq!(ask(&mountain)?, Truth::Yes);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn check(
    code: EnergyCode,
    zone: Option<CodeZone>,
    quantity: Quantity,
    value: Option<&Number>,
    place: &Place,
) -> Result<CodeAnswer, InputError> {
    if let Some(value) = value {
        match quantity {
            Quantity::UFactor | Quantity::SkylightUFactor => rating::u_factor(value)?,
            Quantity::SolarHeatGain => rating::solar_heat_gain(value)?,
        }
    }
    place.check()?;
    let Some(zone) = zone else {
        return Ok(CodeAnswer::Compared {
            within: Truth::Unknown(Missing::from([Fact::CodeZone])),
            limit: None,
        });
    };
    Ok(match maximum(code, zone, quantity) {
        Maximum::NotEncoded => CodeAnswer::NotEncoded,
        Maximum::NoRequirement(basis) => CodeAnswer::NoRequirement(basis),
        Maximum::AtMost(limit) => CodeAnswer::Compared {
            within: limit.takes(quantity.fact(), value, place),
            limit: Some(limit),
        },
    })
}

impl Limit {
    fn takes(&self, fact: Fact, value: Option<&Number>, place: &Place) -> Truth {
        let plain = Truth::at_most(fact, value, &self.value);
        let Some((eased, _)) = &self.allowance else {
            return plain;
        };
        Truth::any([
            plain,
            Truth::all([Truth::at_most(fact, value, eased), place.is_eased()]),
        ])
    }
}

impl Place {
    /// Returns whether the place is above 4,000 ft or in a windborne-debris region.
    #[must_use]
    pub fn is_eased(&self) -> Truth {
        Truth::any([
            self.is_high(),
            Truth::fact(Fact::WindborneDebrisRegion, self.windborne_debris_region),
        ])
    }

    /// Returns what a place that is, or may be, high or in a windborne-debris region needs and is not covered here.
    ///
    /// Empty only where both are known not to be so.
    #[must_use]
    pub fn not_covered(&self) -> Vec<&'static str> {
        let mut found = Vec::new();
        if self.is_high() != Truth::No {
            found.push("high altitude (breather tubes, gas filling) is not covered here");
        }
        if self.windborne_debris_region != Some(false) {
            found.push("impact and windborne-debris glazing is not covered here");
        }
        found
    }

    fn is_high(&self) -> Truth {
        let elevation = self.elevation.as_ref();
        Truth::above(Fact::Elevation, elevation, &Number::from(HIGH_ELEVATION))
    }

    fn check(&self) -> Result<(), InputError> {
        match &self.elevation {
            Some(inches)
                if *inches < Number::from(ELEVATION_LEAST) || *inches > Number::from(ELEVATION_MOST) =>
            {
                let feet = inches * &over::<12>(1);
                let expected = "a height in feet from -2,000 to 30,000";
                Err(refused(Fact::Elevation, &feet, expected))
            }
            _ => Ok(()),
        }
    }
}

impl Quantity {
    fn fact(self) -> Fact {
        match self {
            Self::UFactor | Self::SkylightUFactor => Fact::UFactor,
            Self::SolarHeatGain => Fact::SolarHeatGain,
        }
    }
}

impl EnergyCode {
    /// Every table that is known.
    pub const ALL: [Self; 3] = [Self::Iecc2021, Self::Iecc2024, Self::AdoptedCity2018];

    /// The name that programs use.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Iecc2021 => "iecc_2021",
            Self::Iecc2024 => "iecc_2024",
            Self::AdoptedCity2018 => "adopted_city_2018",
        }
    }

    /// Reads the name of a table: `iecc_2021`, `IECC 2024`, `adopted_city_2018`.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the tables that are known. An edition that is not among them is not
    /// guessed from its neighbours.
    ///
    /// # Examples
    /// ## An edition that is not known
    /// ```
    /// use astragal_trade::energy::code::EnergyCode;
    /// assert_eq!(EnergyCode::from_text("IECC 2021"), Ok(EnergyCode::Iecc2021));
    /// let error = EnergyCode::from_text("iecc_2019").err().map(|error| error.to_string());
    /// let expected = "edition of the energy code is `iecc_2019`; expected one of `iecc_2021`, `iecc_2024`, \
    ///                 `adopted_city_2018`";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        let wanted = plain(text);
        Self::ALL
            .into_iter()
            .find(|code| plain(code.id()) == wanted)
            .ok_or_else(|| unknown(Fact::EnergyCodeEdition, text, &Self::ALL.map(Self::id)))
    }

    fn basis(self, status: Status) -> Basis {
        let (document, section) = match self {
            Self::Iecc2021 => ("IECC 2021", "Table R402.1.2"),
            Self::Iecc2024 => ("IECC 2024", "Table R402.1.2"),
            Self::AdoptedCity2018 => ("Philadelphia Code (2018 table)", "Table R-N1102.1.2"),
        };
        Basis {
            document,
            section,
            status,
        }
    }
}

impl fmt::Display for EnergyCode {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Iecc2021 => "IECC 2021",
            Self::Iecc2024 => "IECC 2024",
            Self::AdoptedCity2018 => "a city's adopted table of 2018",
        })
    }
}
