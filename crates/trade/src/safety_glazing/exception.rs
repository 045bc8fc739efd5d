//! Exceptions that may excuse a hazardous location. They are stated by the caller, looked at by a person, and never assumed.
//!
//! A protective rail may excuse a large pane near a walking surface; it excuses no door. What counts as one is in
//! [`Exception::words`] and, where it can be measured, in [`Exception::by_measures`].
//!
//! Source: the exceptions of IRC R308.4.1 to R308.4.7, R324.4.2 and R324.4.3 as quoted in secondary texts. The distances that
//! excuse water (more than 60 in) and stairs (36 in or more) are compared by the locations themselves.

use super::{Location, Site};
use crate::basis::Basis;
use crate::truth::Truth;

/// An exception that a caller says applies.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Exception {
    /// Decorative glass.
    Decorative,
    /// An opening of a door that a sphere of 3 in does not pass.
    SmallDoorOpening,
    /// A wall or another permanent barrier between door and glass.
    BarrierToDoor,
    /// A door to a closet or storage of at most 3 ft depth. Large panes are then asked all the same.
    ShallowCloset,
    /// Beside the fixed panel of a patio door.
    BesideFixedPatioPanel,
    /// A rail 34 to 38 in above the walking surface that takes 50 lb a foot without touching the glass, at least 1 1/2 in high.
    ProtectiveRail,
    /// The outboard pane of insulating glass whose bottom edge is 25 ft or more above ground, roof and walking surface.
    OutboardPaneHighUp,
    /// A guard whose railing is more than 18 in from the glass.
    GuardAwayFromGlass,
}

impl Exception {
    /// Every exception, in order.
    pub const ALL: [Exception; 8] = [
        Exception::Decorative,
        Exception::SmallDoorOpening,
        Exception::BarrierToDoor,
        Exception::ShallowCloset,
        Exception::BesideFixedPatioPanel,
        Exception::ProtectiveRail,
        Exception::OutboardPaneHighUp,
        Exception::GuardAwayFromGlass,
    ];

    /// Says whether it may excuse glass in a location.
    ///
    /// # Examples
    /// ## A rail is no excuse by a tub
    /// ```
    /// use astragal_trade::safety_glazing::{Exception, Location};
    /// assert!(Exception::ProtectiveRail.may_excuse(Location::LargePane));
    /// assert!(!Exception::ProtectiveRail.may_excuse(Location::WetPlace));
    /// ```
    #[must_use]
    pub fn may_excuse(self, location: Location) -> bool {
        match self {
            Self::Decorative => {
                matches!(
                    location,
                    Location::InDoor | Location::BesideDoor | Location::LargePane
                )
            }
            Self::SmallDoorOpening => location == Location::InDoor,
            Self::BarrierToDoor | Self::ShallowCloset | Self::BesideFixedPatioPanel => {
                location == Location::BesideDoor
            }
            Self::ProtectiveRail | Self::OutboardPaneHighUp => location == Location::LargePane,
            Self::GuardAwayFromGlass => matches!(location, Location::Stair | Location::BottomLanding),
        }
    }

    /// Returns the words for it, with the numbers that it has.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Decorative => "decorative glass",
            Self::SmallDoorOpening => "an opening that a sphere of 3 in does not pass",
            Self::BarrierToDoor => "a wall or a permanent barrier between door and glass",
            Self::ShallowCloset => "a door to a closet or storage of at most 3 ft depth",
            Self::BesideFixedPatioPanel => "beside the fixed panel of a patio door",
            Self::ProtectiveRail => {
                "a protective rail 34 to 38 in above the walking surface that is at least 1 1/2 in high in its section and takes \
                 50 lb a foot without touching the glass"
            }
            Self::OutboardPaneHighUp => {
                "an outboard pane of insulating glass whose bottom edge is 25 ft or more above the ground, the roof or the \
                 walking surface below it"
            }
            Self::GuardAwayFromGlass => "a guard whose railing is more than 18 in from the glass",
        }
    }

    /// Returns what no measure decides here, and somebody has to look at.
    #[must_use]
    pub fn to_be_looked_at(self) -> &'static str {
        match self {
            Self::Decorative => "whether the glass is decorative by the words of the code in force",
            Self::SmallDoorOpening => "each opening of the door by itself",
            Self::BarrierToDoor => "whether it is permanent, and stands between the door and the glass",
            Self::ShallowCloset => "whether the door leads to nothing but a closet or storage",
            Self::BesideFixedPatioPanel => "whether the panel next to the glass is the fixed one",
            Self::ProtectiveRail => "whether it bends against the glass under its load",
            Self::OutboardPaneHighUp => "whether the pane is the outboard one, and what lies below it",
            Self::GuardAwayFromGlass => "whether what stands there is a guard by the code in force",
        }
    }

    /// Returns where it stands.
    ///
    /// # Examples
    /// ## It was seen in a text that quotes it
    /// ```
    /// use astragal_trade::Status;
    /// use astragal_trade::safety_glazing::Exception;
    /// let basis = Exception::ProtectiveRail.basis();
    /// assert_eq!((basis.section, basis.status), ("R308.4.3, exceptions", Status::SecondHand));
    /// ```
    #[must_use]
    pub fn basis(self) -> Basis {
        match self {
            Self::Decorative => Basis::second_hand("IRC", "R308.4.1 to R308.4.3, exceptions"),
            Self::SmallDoorOpening => Basis::second_hand("IRC", "R308.4.1, exceptions"),
            Self::BarrierToDoor | Self::ShallowCloset | Self::BesideFixedPatioPanel => {
                Basis::second_hand("IRC", "R308.4.2, exceptions")
            }
            Self::ProtectiveRail | Self::OutboardPaneHighUp => {
                Basis::second_hand("IRC", "R308.4.3, exceptions")
            }
            Self::GuardAwayFromGlass => Basis::second_hand("IBC", "2406.4.6 and 2406.4.7, exceptions"),
        }
    }
}

/// The exceptions that are stated for a location: those that may hold, and those that what was measured rules out.
pub(super) fn stated(location: Location, site: &Site) -> (Vec<Exception>, Vec<Exception>) {
    let mut stated: Vec<Exception> = site
        .exceptions
        .iter()
        .copied()
        .filter(|exception| exception.may_excuse(location))
        .collect();
    stated.sort_unstable();
    stated.dedup();
    stated
        .into_iter()
        .partition(|exception| exception.by_measures(&site.measured) != Truth::No)
}
