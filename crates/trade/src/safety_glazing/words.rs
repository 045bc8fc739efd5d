//! Answers about safety glazing as sentences that a person reads.
//!
//! `safety glazing is called for: a large pane near a walking surface (IRC 2021 R308.4.3)`.
//!
//! Always holds: no sentence says that anything is approved; an exception is something to have looked at.

use super::{Answer, Exception, Location, LocationAnswer, Overall};
use crate::truth::{Truth, listed};

impl Answer {
    /// Returns the answer as sentences: the whole first, then each location that calls for it, then what is missing.
    #[must_use]
    pub fn sentences(&self) -> Vec<String> {
        let mut sentences = vec![self.overall_sentence()];
        sentences.extend(self.calling_for_it().map(LocationAnswer::sentence));
        if !self.missing.is_empty() && self.overall != Overall::CannotDecide {
            sentences.push(format!("not known beside that: {}", listed(&self.missing)));
        }
        sentences
    }

    fn overall_sentence(&self) -> String {
        let name = if self.name.is_empty() {
            "the lite".to_owned()
        } else {
            format!("`{}`", self.name)
        };
        let edition = self.edition;
        match self.overall {
            Overall::CalledFor => {
                format!("safety glazing is called for in {name} by {edition}; check with the local code")
            }
            Overall::MayBeExcused => format!(
                "safety glazing is called for in {name} by {edition}, and may be excused; have it looked at"
            ),
            Overall::CannotDecide => format!(
                "whether safety glazing is called for in {name} by {edition} cannot be decided; missing: {}",
                listed(&self.missing)
            ),
            Overall::NotByWhatWasAsked => {
                let asked: Vec<&str> = self
                    .locations
                    .iter()
                    .map(|found| found.location.words())
                    .collect();
                format!(
                    "safety glazing is not called for in {name} by what was asked of {edition}: {}; check with the local code",
                    asked.join(", ")
                )
            }
        }
    }
}

impl LocationAnswer {
    /// Returns it as a sentence, with what may excuse it.
    #[must_use]
    pub fn sentence(&self) -> String {
        let place = self.location.words();
        let basis = self.basis;
        match &self.calls_for_it {
            Truth::No => format!("not called for: {place} ({basis})"),
            Truth::Unknown(missing) => {
                format!(
                    "cannot be decided: {place} ({basis}); missing: {}",
                    listed(missing)
                )
            }
            Truth::Yes => format!("called for: {place} ({basis}){}", self.of_exceptions()),
        }
    }

    /// What may excuse it, and what was stated and does not, each behind a semicolon.
    fn of_exceptions(&self) -> String {
        let words = |exceptions: &[Exception]| {
            let words: Vec<&str> = exceptions.iter().map(|exception| exception.words()).collect();
            words.join(", ")
        };
        let mut said = String::new();
        if !self.stated_exceptions.is_empty() {
            let stated = words(&self.stated_exceptions);
            said += &format!("; may be excused by {stated}: have it looked at");
        }
        if !self.ruled_out.is_empty() {
            let ruled_out = words(&self.ruled_out);
            said += &format!("; by what was measured not excused by {ruled_out}");
        }
        said
    }
}

impl Location {
    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::InDoor => "in a door",
            Self::BesideDoor => "beside a door",
            Self::LargePane => "a large pane near a walking surface",
            Self::Guard => "in a guard or railing",
            Self::WetPlace => "by a tub, shower, spa, sauna or pool",
            Self::Stair => "beside a stair or ramp",
            Self::BottomLanding => "at the bottom landing of a stair",
        }
    }
}
