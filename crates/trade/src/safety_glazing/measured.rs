//! What can be measured of an exception, and whether its numbers hold.
//!
//! A rail 36 in above the floor, of a section 1 1/2 in high, that takes 50 lb a foot without touching the glass: its numbers hold. At
//! 33 15/16 in they do not, and it excuses nothing, whatever else is so.
//!
//! Always holds: numbers that hold excuse nothing by themselves: what no number decides has to be looked at. A number that is missing
//! is named; one that does not hold decides.
//! Cost: three comparisons at most.
//!
//! Source: the exceptions of IRC R308.4.1 to R308.4.3 and of IBC 2406.4.6 and 2406.4.7, as quoted in secondary texts
//! ([`Exception::basis`]). That an opening of 3 in exactly lets the sphere of 3 in pass is our reading, the careful one.

use astragal_exact::Number;

use super::Exception;
use crate::constant::over;
use crate::fact::Fact;
use crate::truth::Truth;

/// A sphere passes an opening in a door from this width on, in inches.
const SPHERE: i64 = 3;
/// A closet is shallow up to this depth, in inches: 3 ft.
const CLOSET_DEPTH_MOST: i64 = 36;
/// A rail is this high above the walking surface, in inches.
const RAIL_LEAST: i64 = 34;
const RAIL_MOST: i64 = 38;
/// Half inches that the section of a rail is high, at least: 1 1/2 in.
const RAIL_SECTION_LEAST_HALVES: i64 = 3;
/// Pounds that a rail takes by the foot without touching the glass, at least.
const RAIL_LOAD_LEAST: i64 = 50;
/// An outboard pane is high up from this height on, in inches: 25 ft.
const OUTBOARD_LEAST: i64 = 25 * 12;
/// A guard is away from the glass above this distance, in inches.
const GUARD_ABOVE: i64 = 18;

/// What was measured of what may excuse; `None` is what nobody measured. Lengths in inches.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Measured {
    /// The narrowest way across an opening in a door.
    pub door_opening: Option<Number>,
    /// The depth of the closet or storage behind a door.
    pub closet_depth: Option<Number>,
    /// A rail before the glass.
    pub rail: Rail,
    /// The bottom edge of the outboard pane above the ground, roof or walking surface below it, whichever is nearest.
    pub outboard_pane: Option<Number>,
    /// How far the railing of a guard is from the glass.
    pub guard: Option<Number>,
}

/// A rail before the glass.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Rail {
    /// How high it is above the walking surface, in inches.
    pub height: Option<Number>,
    /// How high its section is, in inches.
    pub section: Option<Number>,
    /// What it takes without touching the glass, in pounds by the foot.
    pub load: Option<Number>,
}

impl Exception {
    /// Returns whether the numbers of this exception hold, as far as it has any: yes where it has none.
    ///
    /// Yes does not say that the exception holds: [`Exception::to_be_looked_at`] says what else there is.
    ///
    /// # Examples
    /// ## A rail that is too low
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::Truth;
    /// use astragal_trade::safety_glazing::{Exception, Measured, Rail};
    /// let at = |height: i64| Measured {
    ///     rail: Rail {
    ///         height: Some(Number::from(height)),
    ///         section: Some(Number::from(2)),
    ///         load: Some(Number::from(50)),
    ///     },
    ///     ..Measured::default()
    /// };
    /// assert_eq!(Exception::ProtectiveRail.by_measures(&at(34)), Truth::Yes);
    /// assert_eq!(Exception::ProtectiveRail.by_measures(&at(33)), Truth::No);
    /// ```
    /// ## Nobody measured
    /// ```
    /// use astragal_trade::Fact;
    /// use astragal_trade::safety_glazing::{Exception, Measured};
    /// let truth = Exception::GuardAwayFromGlass.by_measures(&Measured::default());
    /// assert_eq!(truth.missing(), [Fact::GuardDistance].into());
    /// ```
    #[must_use]
    pub fn by_measures(self, measured: &Measured) -> Truth {
        match self {
            Self::Decorative | Self::BarrierToDoor | Self::BesideFixedPatioPanel => Truth::Yes,
            Self::SmallDoorOpening => {
                let across = measured.door_opening.as_ref();
                Truth::below(Fact::DoorOpeningWidth, across, &Number::from(SPHERE))
            }
            Self::ShallowCloset => {
                let depth = measured.closet_depth.as_ref();
                Truth::at_most(Fact::ClosetDepth, depth, &Number::from(CLOSET_DEPTH_MOST))
            }
            Self::ProtectiveRail => measured.rail.protects(),
            Self::OutboardPaneHighUp => {
                let height = measured.outboard_pane.as_ref();
                Truth::at_least(Fact::OutboardPaneHeight, height, &Number::from(OUTBOARD_LEAST))
            }
            Self::GuardAwayFromGlass => {
                let distance = measured.guard.as_ref();
                Truth::above(Fact::GuardDistance, distance, &Number::from(GUARD_ABOVE))
            }
        }
    }
}

impl Rail {
    fn protects(&self) -> Truth {
        let height = self.height.as_ref();
        let section_least = over::<2>(RAIL_SECTION_LEAST_HALVES);
        Truth::all([
            Truth::at_least(Fact::RailHeight, height, &Number::from(RAIL_LEAST)),
            Truth::at_most(Fact::RailHeight, height, &Number::from(RAIL_MOST)),
            Truth::at_least(Fact::RailSection, self.section.as_ref(), &section_least),
            Truth::at_least(Fact::RailLoad, self.load.as_ref(), &Number::from(RAIL_LOAD_LEAST)),
        ])
    }
}
