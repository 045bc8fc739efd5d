//! The pressure of the wind on a window of a low building, inwards and outwards, as the allowable-stress design uses it.
//!
//! 130 mph, exposure B, 30 ft, 15 sq ft: +17.7 psf inwards, -19.3 psf outwards, -23.4 psf outwards near a corner.
//!
//! `q = 0.00256 Kz Kzt Kd V^2` with Kd 0.85; `p = 0.6 q (GCp +- 0.18)`. GCp falls in a straight line with the logarithm of the
//! effective wind area from 10 to 500 sq ft: inwards +1.0 to +0.7, outwards -1.1 to -0.8, near a corner -1.4 to -0.8; times 0.9
//! where the roof slopes at most 10 degrees.
//!
//! The effective wind area is the area of the **unit**. The speed is the ultimate one of the standard's maps, not that of
//! editions before 2010.
//!
//! Always holds: the pressure by the formula lies in the interval, whose ends are multiples of 0.000001 psf. What is not known
//! and would lower the pressure is not applied, and said ([`Assumption`]). The code's floor of 10 psf for positive loads is
//! **not** applied: the lowest grade is 15, so that no grade depends on it.
//! Cost: a few microseconds.
//!
//! Source: ASCE 7-10 and 7-16, components and cladding, h <= 60 ft: the end points of GCp, 0.18 and the factor 0.9 in a repository
//! that works with them, the formula in secondary texts, Kd partly from memory. The residential code tabulates the same thing
//! (IRC 2018 Table R301.2(2)) for 30 ft and exposure B.

use astragal_exact::Number;

use super::bounds::Bounds;
use super::exposure::{Exposure, ExposureReading, HEIGHT_MOST, WindStandard, exposure_coefficient};
use super::logarithm::area_share;
use crate::constant::over;
use crate::interval::Interval;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError, Missing, input};

/// Where the pressures stand.
pub const PRESSURE_BASIS: Basis = Basis::second_hand("ASCE 7-10 and 7-16", "components and cladding, walls");

/// The lowest speed that is covered here, in mph.
pub const SPEED_LEAST: i64 = 85;
/// The highest speed that is covered here, in mph.
pub const SPEED_MOST: i64 = 200;
/// LIMIT: the highest speed that is taken for one, in mph.
const SPEED_BELIEVED: i64 = 400;
/// LIMIT: the largest topographic factor that is taken for one.
const TOPOGRAPHIC_MOST: i64 = 3;
/// The slope up to which a roof counts as flat, in degrees.
const FLAT_ROOF_DEGREES: i64 = 10;
/// LIMIT: the largest effective wind area, in square inches: 50 ft each way.
const AREA_MOST: i64 = 600 * 600;

/// The place of a building, as the wind meets it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WindSite {
    /// The edition of the standard.
    pub standard: WindStandard,
    /// How the exposure coefficient is read.
    pub reading: ExposureReading,
    /// The basic (ultimate) wind speed, in mph.
    pub speed: Option<Number>,
    /// The ground around.
    pub exposure: Option<Exposure>,
    /// The mean roof height, in inches.
    pub roof_height: Option<Number>,
    /// The slope of the roof, in degrees. Not known: taken as steep, which is the higher pressure.
    pub roof_slope: Option<Number>,
    /// The topographic factor. Not known: taken as 1, flat ground, and said.
    pub topographic_factor: Option<Number>,
}

/// Pressures on a window, or why there are none.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum WindAnswer {
    /// They were worked out.
    Pressures(NetPressures),
    /// Something has to be known first.
    Missing(Missing),
    /// It is beyond what is covered here; the sentence says what.
    NotCovered(&'static str),
}

/// Net allowable-stress pressures in psf, as intervals.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NetPressures {
    /// Inwards, above 0; the same near a corner and away from it (zones 4 and 5).
    pub inward: Interval,
    /// Outwards away from corners (zone 4), below 0.
    pub outward: Interval,
    /// Outwards near a corner (zone 5), below 0.
    pub outward_near_corner: Interval,
    /// What was assumed.
    pub assumptions: Vec<Assumption>,
}

/// Something that was taken as given.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Assumption {
    /// The building is enclosed (internal pressure 0.18).
    Enclosed,
    /// The ground is flat (topographic factor 1).
    FlatGround,
    /// The slope of the roof is not known: the lower pressure of a flat roof was not used.
    RoofSlopeNotKnown,
    /// The floor of 10 psf for positive loads was not applied.
    FloorNotApplied,
}

/// Returns the net pressures on a window; its effective wind area is the area of the unit, in square inches.
///
/// # Errors
/// [`InputError`] for a speed, height, slope, factor or area that cannot be one.
///
/// # Cost
/// A few microseconds.
///
/// # Source
/// [`PRESSURE_BASIS`].
///
/// # Examples
/// ## A window of 36 x 60 in in a suburb
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::{
///     Exposure, ExposureReading, WindAnswer, WindSite, WindStandard, net_pressures,
/// };
/// let site = WindSite {
///     standard: WindStandard::Asce7In2016,
///     reading: ExposureReading::Printed,
///     speed: Some(Number::from(130)),
///     exposure: Some(Exposure::B),
///     roof_height: Some(Number::from(360)),
///     roof_slope: None,
///     topographic_factor: None,
/// };
/// let WindAnswer::Pressures(found) = net_pressures(&site, &Number::from(36 * 60))? else {
///     return Err("pressures were expected".into());
/// };
/// assert_eq!(found.inward.low().to_fixed(1), "17.7");
/// assert_eq!(found.outward_near_corner.low().to_fixed(1), "-23.4");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
/// ## A hurricane beyond the maps
/// ```
/// # use astragal_exact::Number;
/// # use astragal_trade::structure::{
/// #     Exposure, ExposureReading, WindAnswer, WindSite, WindStandard, net_pressures,
/// # };
/// # let site = WindSite {
/// #     standard: WindStandard::Asce7In2016,
/// #     reading: ExposureReading::Printed,
/// #     speed: None,
/// #     exposure: Some(Exposure::B),
/// #     roof_height: Some(Number::from(360)),
/// #     roof_slope: None,
/// #     topographic_factor: None,
/// # };
/// let site = WindSite { speed: Some(Number::from(210)), ..site };
/// let answer = net_pressures(&site, &Number::from(36 * 60))?;
/// assert_eq!(answer, WindAnswer::NotCovered("wind speeds below 85 or above 200 mph are not covered here"));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn net_pressures(site: &WindSite, wind_area: &Number) -> Result<WindAnswer, InputError> {
    site.check()?;
    if !wind_area.is_positive() || *wind_area > Number::from(AREA_MOST) {
        let square_feet = wind_area * &over::<144>(1);
        let expected = "an area in square feet above 0 and at most 2,500";
        return Err(refused(Fact::WindArea, &square_feet, expected));
    }
    if let Some(sentence) = site.not_covered() {
        return Ok(WindAnswer::NotCovered(sentence));
    }
    let (Some(speed), Some(exposure), Some(height)) = (&site.speed, site.exposure, &site.roof_height) else {
        return Ok(WindAnswer::Missing(site.missing()));
    };
    let coefficient = exposure_coefficient(site.standard, exposure, height, site.reading)?;
    let factor = site.pressure_without_exposure(speed);
    let found = pressures(&coefficient, factor, &area_share(wind_area), site);
    Ok(found.map_or(WindAnswer::NotCovered(OUT_OF_RANGE), WindAnswer::Pressures))
}

/// What is said when numbers are too large to be worked with; the limits on speed and factor keep them smaller.
const OUT_OF_RANGE: &str = "pressures of this size are not covered here";

fn pressures(
    coefficient: &Interval,
    factor: Number,
    share: &Interval,
    site: &WindSite,
) -> Option<NetPressures> {
    let exactly = |number: Number| Bounds::around(&Interval::exact(number));
    let velocity = Bounds::around(coefficient)?.times(exactly(factor)?)?;
    let share = Bounds::around(share)?;
    let roof = exactly(if site.roof_is_flat() {
        over::<10>(9)
    } else {
        Number::ONE
    })?;
    let internal = exactly(over::<100>(18))?;
    let net = |line: Line| {
        let fall = share.times(exactly(over::<10>(line.fall))?)?;
        let outside = exactly(over::<10>(line.at_ten))?.minus(fall)?.times(roof)?;
        velocity.times(outside.plus(internal)?)?.in_millionths()
    };
    let negative = Number::from(-1);
    Some(NetPressures {
        inward: net(INWARD)?,
        outward: net(OUTWARD)?.scaled(&negative),
        outward_near_corner: net(OUTWARD_NEAR_CORNER)?.scaled(&negative),
        assumptions: site.assumptions(),
    })
}

/// A straight line over the logarithm of the area: its size at 10 sq ft, and by how much it is smaller at 500, in tenths.
struct Line {
    at_ten: i64,
    fall: i64,
}

const INWARD: Line = Line { at_ten: 10, fall: 3 };
const OUTWARD: Line = Line { at_ten: 11, fall: 3 };
const OUTWARD_NEAR_CORNER: Line = Line { at_ten: 14, fall: 6 };

impl WindSite {
    /// `0.6 x 0.00256 x Kd x Kzt x V^2`, in psf.
    fn pressure_without_exposure(&self, speed: &Number) -> Number {
        let constants = over::<10>(6) * over::<100_000>(256) * over::<100>(85);
        let square = speed * speed;
        match &self.topographic_factor {
            Some(factor) => constants * square * factor,
            None => constants * square,
        }
    }

    fn roof_is_flat(&self) -> bool {
        self.roof_slope
            .as_ref()
            .is_some_and(|slope| *slope <= Number::from(FLAT_ROOF_DEGREES))
    }

    fn assumptions(&self) -> Vec<Assumption> {
        let flat = self
            .topographic_factor
            .is_none()
            .then_some(Assumption::FlatGround);
        let slope = self.roof_slope.is_none().then_some(Assumption::RoofSlopeNotKnown);
        [
            Some(Assumption::Enclosed),
            flat,
            slope,
            Some(Assumption::FloorNotApplied),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    fn missing(&self) -> Missing {
        let facts = [
            (Fact::WindSpeed, self.speed.is_none()),
            (Fact::Exposure, self.exposure.is_none()),
            (Fact::RoofHeight, self.roof_height.is_none()),
        ];
        facts
            .into_iter()
            .filter_map(|(fact, is_missing)| is_missing.then_some(fact))
            .collect()
    }

    fn not_covered(&self) -> Option<&'static str> {
        let above = |value: &Option<Number>, most: i64| {
            value.as_ref().is_some_and(|value| *value > Number::from(most))
        };
        let slow = self
            .speed
            .as_ref()
            .is_some_and(|speed| *speed < Number::from(SPEED_LEAST));
        if slow || above(&self.speed, SPEED_MOST) {
            return Some("wind speeds below 85 or above 200 mph are not covered here");
        }
        above(&self.roof_height, HEIGHT_MOST).then_some("mean roof heights above 60 ft are not covered here")
    }

    fn check(&self) -> Result<(), InputError> {
        if let Some(speed) = &self.speed
            && (!speed.is_positive() || *speed > Number::from(SPEED_BELIEVED))
        {
            let expected = "a speed in mph above 0 and at most 400";
            return Err(refused(Fact::WindSpeed, speed, expected));
        }
        if let Some(height) = &self.roof_height {
            input::distance(Fact::RoofHeight, height)?;
            if height.is_zero() {
                return Err(refused(Fact::RoofHeight, height, "a height above 0"));
            }
        }
        if let Some(slope) = &self.roof_slope
            && (slope.is_negative() || *slope >= Number::from(90))
        {
            let expected = "a slope in degrees from 0 to below 90";
            return Err(refused(Fact::RoofSlope, slope, expected));
        }
        match &self.topographic_factor {
            Some(factor) if *factor < Number::ONE || *factor > Number::from(TOPOGRAPHIC_MOST) => {
                let expected = "a factor from 1, flat ground, to 3";
                Err(refused(Fact::TopographicFactor, factor, expected))
            }
            _ => Ok(()),
        }
    }
}

impl Assumption {
    /// What to tell a person.
    #[must_use]
    pub fn text(self) -> &'static str {
        match self {
            Self::Enclosed => "worked out for an enclosed building",
            Self::FlatGround => "worked out for flat ground; a hill or ridge has higher pressures",
            Self::RoofSlopeNotKnown => {
                "slope of the roof not known: the lower pressure of a flat roof was not used"
            }
            Self::FloorNotApplied => {
                "the code's least load of 10 psf was not applied; the lowest grade is above it"
            }
        }
    }
}
