//! The zones of the programme and of the code: two facts that sound alike.
//!
//! A county may lie in programme zone Northern and code zone 5; neither follows from the other.

use std::fmt;

use crate::refusal::{plain, unknown};
use crate::{Fact, InputError};

/// A zone of the voluntary programme. Zones are assigned **by county**; which county lies where is not known here.
///
/// # Source
/// ENERGY STAR Residential Windows 7.0.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum ProgrammeZone {
    /// Northern.
    Northern,
    /// North-Central.
    NorthCentral,
    /// South-Central.
    SouthCentral,
    /// Southern.
    Southern,
}

/// A climate zone of the energy code.
///
/// # Source
/// International Energy Conservation Code, chapter 3, from memory: marine 4 is the zone that is also written 4C, and zone 0
/// came in with the 2021 edition.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum CodeZone {
    /// Zone 0.
    Zone0,
    /// Zone 1.
    Zone1,
    /// Zone 2.
    Zone2,
    /// Zone 3.
    Zone3,
    /// Zone 4 except marine.
    Zone4,
    /// Marine 4, also written 4C. It goes with zone 5, not with zone 4.
    Marine4,
    /// Zone 5.
    Zone5,
    /// Zone 6.
    Zone6,
    /// Zone 7.
    Zone7,
    /// Zone 8.
    Zone8,
}

impl ProgrammeZone {
    /// Every zone of the programme, north to south.
    pub const ALL: [Self; 4] = [
        Self::Northern,
        Self::NorthCentral,
        Self::SouthCentral,
        Self::Southern,
    ];

    /// The name that programs use: small letters and underscores.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Northern => "northern",
            Self::NorthCentral => "north_central",
            Self::SouthCentral => "south_central",
            Self::Southern => "southern",
        }
    }

    /// Reads a zone: `northern`, `North-Central`, `south_central`; letters of either case.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the zones that are known. A zone of the energy code is refused as well.
    ///
    /// # Examples
    /// ## A name in any spelling
    /// ```
    /// use astragal_trade::energy::ProgrammeZone;
    /// assert_eq!(ProgrammeZone::from_text("North-Central"), Ok(ProgrammeZone::NorthCentral));
    /// ```
    /// ## A code zone is not a programme zone
    /// ```
    /// use astragal_trade::energy::ProgrammeZone;
    /// let error = ProgrammeZone::from_text("5").err().map(|error| error.to_string());
    /// let expected = "zone of the voluntary energy programme is `5`; expected one of `northern`, `north_central`, \
    ///                 `south_central`, `southern`";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        let wanted = plain(text);
        Self::ALL
            .into_iter()
            .find(|zone| plain(zone.id()) == wanted)
            .ok_or_else(|| unknown(Fact::ProgrammeZone, text, &Self::ALL.map(Self::id)))
    }
}

impl fmt::Display for ProgrammeZone {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Northern => "Northern",
            Self::NorthCentral => "North-Central",
            Self::SouthCentral => "South-Central",
            Self::Southern => "Southern",
        })
    }
}

impl CodeZone {
    /// Every zone of the code, warm to cold; marine 4 stands behind 4.
    pub const ALL: [Self; 10] = [
        Self::Zone0,
        Self::Zone1,
        Self::Zone2,
        Self::Zone3,
        Self::Zone4,
        Self::Marine4,
        Self::Zone5,
        Self::Zone6,
        Self::Zone7,
        Self::Zone8,
    ];

    /// The name that programs use.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Zone0 => "0",
            Self::Zone1 => "1",
            Self::Zone2 => "2",
            Self::Zone3 => "3",
            Self::Zone4 => "4",
            Self::Marine4 => "marine_4",
            Self::Zone5 => "5",
            Self::Zone6 => "6",
            Self::Zone7 => "7",
            Self::Zone8 => "8",
        }
    }

    /// Reads a zone: `5`, `5A`, `marine 4`, `4C`. A moisture letter (A moist, B dry, C marine) makes a difference only in 4C.
    ///
    /// A bare `4` is zone 4 except marine, as the code's own tables name it.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the zones that are known.
    ///
    /// # Examples
    /// ## Marine 4 is a zone of its own
    /// ```
    /// use astragal_trade::energy::CodeZone;
    /// assert_eq!(CodeZone::from_text("4C"), Ok(CodeZone::Marine4));
    /// assert_eq!(CodeZone::from_text("4A"), Ok(CodeZone::Zone4));
    /// ```
    /// ## A zone that is not known
    /// ```
    /// use astragal_trade::energy::CodeZone;
    /// let error = CodeZone::from_text("9").err().map(|error| error.to_string());
    /// assert!(error.is_some_and(|text| text.contains("`9`") && text.contains("`marine_4`")));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        let wanted = plain(text);
        let wanted = wanted.strip_prefix("zone ").unwrap_or(&wanted);
        match wanted {
            "4c" | "4 marine" | "marine 4" => return Ok(Self::Marine4),
            "4 except marine" => return Ok(Self::Zone4),
            _ => {}
        }
        let number = wanted.strip_suffix(['a', 'b', 'c']).unwrap_or(wanted);
        Self::ALL
            .into_iter()
            .find(|zone| zone.id() == number)
            .ok_or_else(|| unknown(Fact::CodeZone, text, &Self::ALL.map(Self::id)))
    }
}

impl fmt::Display for CodeZone {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Marine4 => formatter.write_str("marine 4"),
            Self::Zone4 => formatter.write_str("4 except marine"),
            zone => formatter.write_str(zone.id()),
        }
    }
}
