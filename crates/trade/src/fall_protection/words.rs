//! Answers about falls as sentences that a person reads.
//!
//! `fixed stop: goes with protection from falls; defeats escape`.
//!
//! Always holds: no sentence says that anything is approved; a screen is never named as protection.

use super::{Answer, BothAnswer, DeviceAnswer, Means, Serving, Verdict};
use crate::control_device::Device;
use crate::truth::{Truth, listed};

impl Answer {
    /// Returns the answer as sentences: the verdict first, then what does not count.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut sentences = vec![self.verdict_sentence()];
        let matters = matches!(
            self.verdict,
            Verdict::Protected | Verdict::Unprotected | Verdict::Undecided
        );
        if self.insect_screen && matters {
            sentences.push("an insect screen does not protect from falls".to_owned());
        }
        if self.device == Some(Device::VentLatch) && matters {
            sentences.push("a vent latch does not count as protection from falls".to_owned());
        }
        sentences
    }

    fn verdict_sentence(&self) -> String {
        let basis = self.basis;
        match self.verdict {
            Verdict::DoesNotOpen => "it does not open: protection from falls is not asked".to_owned(),
            Verdict::NotCalledFor => {
                format!("protection from falls is not called for by {basis}; check with the local code")
            }
            Verdict::Protected => {
                let means: Vec<&str> = self.means.iter().map(|means| means.words()).collect();
                format!(
                    "protection from falls as {basis} asks it, where it asks it: {}; check with the local code",
                    means.join(", ")
                )
            }
            Verdict::Unprotected => {
                format!("{basis} calls for protection from falls, and nothing of what is known protects")
            }
            Verdict::Undecided => format!(
                "protection from falls by {basis} cannot be decided; missing: {}",
                listed(&self.missing)
            ),
        }
    }
}

impl Means {
    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::NarrowOpening => "a sphere of 4 in does not pass",
            Self::FallPrevention => "fall prevention device (ASTM F2090)",
            Self::ReleasableControl => "releasable control device (ASTM F2090)",
        }
    }
}

impl BothAnswer {
    /// Returns which devices may serve, what the one that is there does to escape, then what each would do.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut sentences = vec![self.serving.sentence()];
        sentences.extend(self.fitted_sentence());
        if self.serving != Serving::NoneNeeded {
            sentences.extend(self.devices.iter().map(DeviceAnswer::sentence));
        }
        sentences
    }

    /// What the device that is there does to an opening that the room relies on, or may: called for or not.
    fn fitted_sentence(&self) -> Option<String> {
        let device = self.fitted?;
        let does = match device {
            Device::FixedStop
            | Device::FallPrevention {
                releases: Some(false),
            } => "defeats escape",
            Device::FallPrevention { releases: None } => {
                "defeats escape unless it lets go, which is not known"
            }
            Device::Nothing
            | Device::VentLatch
            | Device::ReleasableControl
            | Device::FallPrevention { releases: Some(true) } => return None,
        };
        match self.relied_on {
            Some(false) => None,
            Some(true) => Some(format!(
                "the {device} that is fitted {does}, and the room relies on this opening"
            )),
            None => Some(format!(
                "the {device} that is fitted {does}; not known whether the room relies on this opening"
            )),
        }
    }
}

impl Serving {
    /// Returns it as a sentence.
    #[must_use]
    pub fn sentence(&self) -> String {
        match self {
            Self::NoneNeeded => {
                "no device is called for by what was asked; check with the local code".to_owned()
            }
            Self::AnyOf(devices) => {
                let words: Vec<&str> = devices.iter().map(|device| device.words()).collect();
                format!(
                    "may serve this opening: {}; check with the local code",
                    words.join(", ")
                )
            }
            Self::NoneServes => "none of the devices serves this opening".to_owned(),
            Self::Undecided(missing) => format!(
                "which devices may serve this opening cannot be decided; missing: {}",
                listed(missing)
            ),
        }
    }
}

impl DeviceAnswer {
    /// Returns what the device would do, as a sentence.
    #[must_use]
    pub fn sentence(&self) -> String {
        let falls = match &self.protects {
            Truth::Yes => "goes with protection from falls".to_owned(),
            Truth::No => "does not protect from falls".to_owned(),
            Truth::Unknown(missing) => format!("falls cannot be decided without {}", listed(missing)),
        };
        let escape = match &self.keeps_escape {
            Truth::Yes => "leaves escape".to_owned(),
            Truth::No if self.device == Device::FixedStop => "defeats escape".to_owned(),
            Truth::No => "the opening falls short for escape with it".to_owned(),
            Truth::Unknown(missing) => format!("escape cannot be decided without {}", listed(missing)),
        };
        format!("{}: {falls}; {escape}", self.device)
    }
}
