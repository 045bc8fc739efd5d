//! Exceptions that may excuse a hazardous location. They are stated by the caller, looked at by a person, and never assumed.
//!
//! A protective rail may excuse a large pane near a walking surface; it excuses no door.
//!
//! Source: the exceptions of IRC R308.4.1 to R308.4.7, R324.4.2 and R324.4.3 as quoted in secondary texts. The distances that
//! excuse water (more than 60 in) and stairs (36 in or more) are compared by the locations themselves.

use super::{Location, Site};

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

    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Decorative => "decorative glass",
            Self::SmallDoorOpening => "an opening that a sphere of 3 in does not pass",
            Self::BarrierToDoor => "a wall or barrier between door and glass",
            Self::ShallowCloset => "a door to a closet of at most 3 ft depth",
            Self::BesideFixedPatioPanel => "beside the fixed panel of a patio door",
            Self::ProtectiveRail => "a protective rail",
            Self::OutboardPaneHighUp => "an outboard pane 25 ft or more above what is below it",
            Self::GuardAwayFromGlass => "a guard more than 18 in from the glass",
        }
    }
}

pub(super) fn stated(location: Location, site: &Site) -> Vec<Exception> {
    let mut stated: Vec<Exception> = site
        .exceptions
        .iter()
        .copied()
        .filter(|exception| exception.may_excuse(location))
        .collect();
    stated.sort_unstable();
    stated.dedup();
    stated
}
