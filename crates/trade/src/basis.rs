//! Where a value stands, and how far it was seen there.
//!
//! `IRC 2021 R310.2.1, read in a secondary text` is the basis of the 5.7 sq ft of an escape opening.
//!
//! Always holds: a value that was recalled with little confidence has no basis, since it is not in this crate.

use std::fmt;

/// Where a published value stands, and how far it was seen there.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Basis {
    /// The document with its edition: `IRC 2021`.
    pub document: &'static str,
    /// The section, table or clause in it; empty when it has none.
    pub section: &'static str,
    /// How far it was seen there.
    pub status: Status,
}

/// How far a value was seen in its source. All texts were read in part, in copies of unknown age.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Status {
    /// Seen in the text of a code, a regulation, a government page or a standards body.
    Verified,
    /// Seen in a text that quotes it.
    SecondHand,
    /// Worked out from a stated formula.
    Computed,
    /// Recalled, its text not seen. Confirm it before it is relied on.
    FromMemory,
}

impl Basis {
    /// A basis whose text was seen.
    #[must_use]
    pub const fn verified(document: &'static str, section: &'static str) -> Self {
        Self {
            document,
            section,
            status: Status::Verified,
        }
    }

    /// A basis seen in a text that quotes it.
    #[must_use]
    pub const fn second_hand(document: &'static str, section: &'static str) -> Self {
        Self {
            document,
            section,
            status: Status::SecondHand,
        }
    }

    /// A value worked out from a formula of the document.
    #[must_use]
    pub const fn computed(document: &'static str, section: &'static str) -> Self {
        Self {
            document,
            section,
            status: Status::Computed,
        }
    }

    /// A basis recalled, whose text was not seen.
    #[must_use]
    pub const fn from_memory(document: &'static str, section: &'static str) -> Self {
        Self {
            document,
            section,
            status: Status::FromMemory,
        }
    }
}

impl Status {
    /// The words for it, as pages and answers use them.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Verified => "read in the text itself",
            Self::SecondHand => "read in a text that quotes it",
            Self::Computed => "worked out from its formula",
            Self::FromMemory => "from memory, to be confirmed",
        }
    }
}

impl fmt::Display for Basis {
    /// `IRC 2021 R310.2.1`, and for what was recalled `(from memory, to be confirmed)` behind it.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.document)?;
        if !self.section.is_empty() {
            write!(formatter, " {}", self.section)?;
        }
        if self.status == Status::FromMemory {
            write!(formatter, " ({})", self.status.words())?;
        }
        Ok(())
    }
}
