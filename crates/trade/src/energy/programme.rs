//! The criteria of a voluntary energy programme for windows, by its zone.
//!
//! Northern asks for U at most 0.22 and SHGC **at least** 0.17, or for one of four trade-off rows in which a higher U is made
//! up for by more solar heat; the other zones ask for U and SHGC **at most**.
//!
//! | zone | U | SHGC |
//! |---|---|---|
//! | Northern, prescriptive | at most 0.22 | at least 0.17 |
//! | Northern, equivalent energy performance | 0.23 | at least 0.35 |
//! | | 0.24 | at least 0.35 |
//! | | 0.25 | at least 0.40 |
//! | | 0.26 | at least 0.40 |
//! | North-Central | at most 0.25 | at most 0.40 |
//! | South-Central | at most 0.28 | at most 0.23 |
//! | Southern | at most 0.32 | at most 0.23 |
//!
//! Always holds: rated values of two decimals are compared as they are; no direction of SHGC is the better one. Zones go by
//! county. Air leakage, doors and skylights are not looked at. Earlier versions are not encoded: of
//! version 6 no whole table was seen, and it is in force no longer.
//!
//! Source: ENERGY STAR Residential Windows, version 7.0, final 20 October 2022, in force 23 October 2023; read in a glass
//! supplier's copy of the table and in a public repository, not on the agency's own page.

use astragal_exact::Number;
use jiff::civil::{Date, date};

use super::ProgrammeZone;
use super::rating::Ratings;
use crate::constant::over;
use crate::{Basis, Fact, InputError, Missing, Truth};

/// Where the criteria stand.
pub const BASIS: Basis = Basis::second_hand("ENERGY STAR Residential Windows 7.0", "window criteria");

/// Where the two days stand.
pub const DATES_BASIS: Basis =
    Basis::second_hand("ENERGY STAR Residential Windows 7.0", "dates, by trade press");

/// The day on which version 7.0 was final.
pub const FINAL: Date = date(2022, 10, 20);

/// The day from which version 7.0 is in force.
pub const IN_FORCE: Date = date(2023, 10, 23);

/// How a row of the table is met.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Path {
    /// The row that every unit may use.
    Prescriptive,
    /// A row in which more solar heat makes up for a higher U-factor; Northern only.
    EquivalentEnergyPerformance,
}

/// A bound on a rated value, in hundredths.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Bound {
    /// At most so many hundredths.
    AtMost(i64),
    /// Exactly so many hundredths.
    Exactly(i64),
    /// At least so many hundredths.
    AtLeast(i64),
}

/// One row of the table.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Criterion {
    /// The zone it belongs to.
    pub zone: ProgrammeZone,
    /// How it is met.
    pub path: Path,
    /// The bound on the U-factor.
    pub u_factor: Bound,
    /// The bound on the solar heat gain.
    pub solar_heat_gain: Bound,
}

/// Whether a unit's ratings are within the criteria.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ProgrammeAnswer {
    /// Whether one row of the zone holds. It is a check of two numbers; the programme's own list of certified products decides.
    pub within: Truth,
    /// The first row that holds, when one does.
    pub by: Option<Criterion>,
    /// Where the row stands.
    pub basis: Basis,
}

/// The table, every row.
pub const CRITERIA: [Criterion; 8] = [
    row(
        ProgrammeZone::Northern,
        Path::Prescriptive,
        Bound::AtMost(22),
        Bound::AtLeast(17),
    ),
    trade_off(23, 35),
    trade_off(24, 35),
    trade_off(25, 40),
    trade_off(26, 40),
    row(
        ProgrammeZone::NorthCentral,
        Path::Prescriptive,
        Bound::AtMost(25),
        Bound::AtMost(40),
    ),
    row(
        ProgrammeZone::SouthCentral,
        Path::Prescriptive,
        Bound::AtMost(28),
        Bound::AtMost(23),
    ),
    row(
        ProgrammeZone::Southern,
        Path::Prescriptive,
        Bound::AtMost(32),
        Bound::AtMost(23),
    ),
];

/// Returns whether the ratings of a unit are within the criteria of a zone.
///
/// A rating that is missing is named where it matters: a U of 0.27 fails Northern whatever the solar heat. Without a zone
/// the zone is what is missing; [`in_each_zone`] answers for all four.
///
/// # Errors
/// [`InputError`] for a number that is no rating of two decimals.
///
/// # Cost
/// At most five comparisons of each rating.
///
/// # Source
/// [`BASIS`].
///
/// # Examples
/// ## More solar heat helps in one zone and spoils it in the next
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Truth;
/// use astragal_trade::energy::ProgrammeZone::{NorthCentral, Northern};
/// use astragal_trade::energy::{programme, rating::Ratings};
/// let ratings = Ratings {
///     u_factor: Number::from_decimal("0.25"),
///     solar_heat_gain: Number::from_decimal("0.41"),
/// };
/// assert_eq!(programme::check(Some(Northern), &ratings)?.within, Truth::Yes);
/// assert_eq!(programme::check(Some(NorthCentral), &ratings)?.within, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## What is missing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::ProgrammeZone::Northern;
/// use astragal_trade::energy::{programme, rating::Ratings};
/// use astragal_trade::{Fact, Missing};
/// let ratings = Ratings { u_factor: Number::from_decimal("0.23"), solar_heat_gain: None };
/// let answer = programme::check(Some(Northern), &ratings)?;
/// assert_eq!(answer.within.missing(), Missing::from([Fact::SolarHeatGain]));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn check(zone: Option<ProgrammeZone>, ratings: &Ratings) -> Result<ProgrammeAnswer, InputError> {
    ratings.check()?;
    Ok(match zone {
        Some(zone) => within(zone, ratings),
        None => ProgrammeAnswer {
            within: Truth::Unknown(Missing::from([Fact::ProgrammeZone])),
            by: None,
            basis: BASIS,
        },
    })
}

/// Returns the answer of [`check`] for each zone, north to south.
///
/// # Errors
/// [`InputError`] for a number that is no rating of two decimals.
///
/// # Examples
/// ## In all zones
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Truth;
/// use astragal_trade::energy::{programme, rating::Ratings};
/// let ratings = Ratings {
///     u_factor: Number::from_decimal("0.22"),
///     solar_heat_gain: Number::from_decimal("0.20"),
/// };
/// let answers = programme::in_each_zone(&ratings)?;
/// assert!(answers.iter().all(|(_, answer)| answer.within == Truth::Yes));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn in_each_zone(ratings: &Ratings) -> Result<[(ProgrammeZone, ProgrammeAnswer); 4], InputError> {
    ratings.check()?;
    Ok(ProgrammeZone::ALL.map(|zone| (zone, within(zone, ratings))))
}

fn within(zone: ProgrammeZone, ratings: &Ratings) -> ProgrammeAnswer {
    let rows = || CRITERIA.into_iter().filter(move |row| row.zone == zone);
    ProgrammeAnswer {
        within: Truth::any(rows().map(|row| row.holds(ratings))),
        by: rows().find(|row| row.holds(ratings) == Truth::Yes),
        basis: BASIS,
    }
}

impl Criterion {
    /// Returns whether the row holds for these ratings.
    #[must_use]
    pub fn holds(&self, ratings: &Ratings) -> Truth {
        Truth::all([
            self.u_factor.holds(Fact::UFactor, ratings.u_factor.as_ref()),
            self.solar_heat_gain
                .holds(Fact::SolarHeatGain, ratings.solar_heat_gain.as_ref()),
        ])
    }
}

impl Bound {
    fn holds(self, fact: Fact, value: Option<&Number>) -> Truth {
        Truth::of(fact, value, |value| match self {
            Self::AtMost(hundredths) => *value <= over::<100>(hundredths),
            Self::Exactly(hundredths) => *value == over::<100>(hundredths),
            Self::AtLeast(hundredths) => *value >= over::<100>(hundredths),
        })
    }
}

const fn row(zone: ProgrammeZone, path: Path, u_factor: Bound, solar_heat_gain: Bound) -> Criterion {
    Criterion {
        zone,
        path,
        u_factor,
        solar_heat_gain,
    }
}

const fn trade_off(u_factor: i64, solar_heat_gain: i64) -> Criterion {
    row(
        ProgrammeZone::Northern,
        Path::EquivalentEnergyPerformance,
        Bound::Exactly(u_factor),
        Bound::AtLeast(solar_heat_gain),
    )
}
