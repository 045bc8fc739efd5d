//! Work on a house for which a code has a section of its own beside those on escape openings, of which only the heading was seen.
//!
//! IRC 2021 R310.6 is about additions to a dwelling. What it asks there is not known here: ask for the wording in force.
//!
//! Always holds: nothing of these sections is compared; a room is asked as any other room is.
//! Source: the headings of IRC 2021 chapter 3 in a state's map of adopted sections; the numbers of 2018 from memory.

use crate::basis::Basis;
use crate::building_code::Edition;

/// Work that a code treats in a section of its own.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum OwnSection {
    /// Something is added to a dwelling.
    Addition,
    /// A basement that is there already is altered or repaired.
    AlteredBasement,
}

impl OwnSection {
    /// Both, in the order of the sections.
    pub const ALL: [OwnSection; 2] = [OwnSection::Addition, OwnSection::AlteredBasement];

    /// Returns the words for it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Addition => "additions to a dwelling",
            Self::AlteredBasement => "existing basements that are altered or repaired",
        }
    }

    /// Returns the section whose heading says so; `None` where none was seen or recalled, which does not say that there is none.
    ///
    /// # Examples
    /// ## Seen as a heading, and recalled
    /// ```
    /// use astragal_trade::Status;
    /// use astragal_trade::escape::{Edition, OwnSection};
    /// let basis = OwnSection::Addition.basis(Edition::Irc2021);
    /// assert_eq!(basis.map(|basis| (basis.section, basis.status)), Some(("R310.6", Status::SecondHand)));
    /// assert_eq!(OwnSection::Addition.basis(Edition::Irc2024), None);
    /// ```
    #[must_use]
    pub fn basis(self, edition: Edition) -> Option<Basis> {
        match (edition, self) {
            (Edition::Irc2018, Self::Addition) => Some(Basis::from_memory("IRC 2018", "R310.5")),
            (Edition::Irc2018, Self::AlteredBasement) => Some(Basis::from_memory("IRC 2018", "R310.6")),
            (Edition::Irc2021, Self::Addition) => Some(Basis::second_hand("IRC 2021", "R310.6")),
            (Edition::Irc2021, Self::AlteredBasement) => Some(Basis::second_hand("IRC 2021", "R310.7")),
            (Edition::Irc2024 | Edition::Ibc2018 | Edition::Ibc2021 | Edition::Nfpa101, _) => None,
        }
    }
}
