//! Devices that limit how far a window opens.
//!
//! Three look alike at a glance. A *fixed stop* holds the sash so that a child does not pass, and nobody else either: no escape.
//! A *vent latch* holds the sash ajar for comfort; the codes give it no standing. A *releasable control device* holds the sash,
//! lets go by hand, and takes hold again: the one that may serve a bedroom.
//!
//! Source: window opening control devices and fall prevention devices are those of ASTM F2090, whose own text was not seen; that
//! IRC R310.1.1 and R312.2 take them was read in texts that quote it. The word *vent latch* is common practice, no source.

use std::fmt;

/// What limits how far a window opens.
///
/// # Examples
/// ## The three that are offered for a window
/// ```
/// use astragal_trade::control_device::Device;
/// let words: Vec<String> = Device::OFFERED.iter().map(ToString::to_string).collect();
/// assert_eq!(words, ["fixed stop", "vent latch", "releasable control device (ASTM F2090)"]);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Device {
    /// Nothing: it is known that there is none.
    Nothing,
    /// A stop that stays where it is and leaves a gap that a sphere of 4 in does not pass.
    FixedStop,
    /// A latch that holds the sash ajar for air, folded back by hand.
    VentLatch,
    /// A window opening control device of ASTM F2090: it lets go by hand and takes hold again by itself.
    ReleasableControl,
    /// A fall prevention device of ASTM F2090, such as a guard of bars.
    FallPrevention {
        /// Whether it lets go from the inside without keys or tools; `None` when that is not known.
        releases: Option<bool>,
    },
}

impl Device {
    /// The three that are offered for a window.
    pub const OFFERED: [Device; 3] = [Device::FixedStop, Device::VentLatch, Device::ReleasableControl];

    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Nothing => "no device",
            Self::FixedStop => "fixed stop",
            Self::VentLatch => "vent latch",
            Self::ReleasableControl => "releasable control device (ASTM F2090)",
            Self::FallPrevention { .. } => "fall prevention device (ASTM F2090)",
        }
    }
}

impl fmt::Display for Device {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.words())
    }
}
