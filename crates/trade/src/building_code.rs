//! The editions of the model building codes whose values are known here.
//!
//! `IRC 2021` is one. What an edition does not say is not carried over from another: each room of this crate names the section
//! and how far it was seen.
//!
//! Always holds: a model code is not the law of a place; the adopted and amended local code is.
//! Source: titles and years of the International Residential Code, the International Building Code and NFPA 101.

use std::fmt;

use crate::refusal::shown;

/// An edition of a model code.
///
/// # Examples
/// ## An edition by its name, in either order
/// ```
/// use astragal_trade::building_code::Edition;
/// assert_eq!(Edition::from_text("IRC 2021"), Ok(Edition::Irc2021));
/// assert_eq!(Edition::from_text("2018 ibc"), Ok(Edition::Ibc2018));
/// ```
/// ## An edition that is not known is never replaced by a near one
/// ```
/// use astragal_trade::building_code::Edition;
/// let refused = Edition::from_text("IRC 2012").map_err(|error| error.to_string());
/// assert!(refused.is_err_and(|text| text.contains("`IRC 2012`") && text.contains("IRC 2018")));
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Edition {
    /// International Residential Code, 2018.
    Irc2018,
    /// International Residential Code, 2021.
    Irc2021,
    /// International Residential Code, 2024, which numbers its sections anew.
    Irc2024,
    /// International Building Code, 2018.
    Ibc2018,
    /// International Building Code, 2021.
    Ibc2021,
    /// NFPA 101, one- and two-family dwellings, as a state sheet of 2017 has it. The edition is not named there.
    Nfpa101,
}

/// A text that names no edition known here.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct EditionTextError {
    /// What was found, at most 40 characters of it.
    pub found: String,
}

impl Edition {
    /// Every edition, in order.
    pub const ALL: &[Edition] = &[
        Edition::Irc2018,
        Edition::Irc2021,
        Edition::Irc2024,
        Edition::Ibc2018,
        Edition::Ibc2021,
        Edition::Nfpa101,
    ];

    /// Returns the edition that a text names: code and year in either order, in any case; spaces, `-`, `_` and `.` do not count.
    ///
    /// # Errors
    /// [`EditionTextError`] for any other text, a year without a code among them.
    ///
    /// # Examples
    /// ## A year alone names no code
    /// ```
    /// use astragal_trade::building_code::Edition;
    /// assert!(Edition::from_text("2021").is_err());
    /// assert_eq!(Edition::from_text("irc_2024"), Ok(Edition::Irc2024));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, EditionTextError> {
        let plain: String = text
            .chars()
            .filter(|letter| !matches!(letter, ' ' | '-' | '_' | '.'))
            .map(|letter| letter.to_ascii_lowercase())
            .collect();
        match plain.as_str() {
            "irc2018" | "2018irc" => Ok(Self::Irc2018),
            "irc2021" | "2021irc" => Ok(Self::Irc2021),
            "irc2024" | "2024irc" => Ok(Self::Irc2024),
            "ibc2018" | "2018ibc" => Ok(Self::Ibc2018),
            "ibc2021" | "2021ibc" => Ok(Self::Ibc2021),
            "nfpa101" => Ok(Self::Nfpa101),
            _ => Err(EditionTextError { found: shown(text) }),
        }
    }

    /// Returns its name as people write it: `IRC 2021`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Irc2018 => "IRC 2018",
            Self::Irc2021 => "IRC 2021",
            Self::Irc2024 => "IRC 2024",
            Self::Ibc2018 => "IBC 2018",
            Self::Ibc2021 => "IBC 2021",
            Self::Nfpa101 => "NFPA 101",
        }
    }

    /// Says whether it is an edition of the residential code.
    #[must_use]
    pub fn is_residential(self) -> bool {
        matches!(self, Self::Irc2018 | Self::Irc2021 | Self::Irc2024)
    }
}

impl fmt::Display for Edition {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.name())
    }
}

impl fmt::Display for EditionTextError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            formatter,
            "`{}` is no edition that is known here; expected",
            self.found
        )?;
        let mut before = " ";
        for edition in Edition::ALL {
            write!(formatter, "{before}{edition}")?;
            before = ", ";
        }
        Ok(())
    }
}

impl std::error::Error for EditionTextError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_edition_reads_its_own_name() {
        for edition in Edition::ALL {
            assert_eq!(Edition::from_text(edition.name()), Ok(*edition));
        }
    }

    #[test]
    fn a_text_that_names_no_edition_is_refused_with_what_is_known() {
        for text in [
            "",
            "IRC",
            "2021",
            "IRC 2012",
            "IRC 20211",
            "irc 2021 ",
            "NFPA 5000",
        ] {
            let read = Edition::from_text(text);
            if text == "irc 2021 " {
                assert_eq!(read, Ok(Edition::Irc2021));
                continue;
            }
            assert_eq!(
                read.unwrap_err().to_string(),
                format!(
                    "`{text}` is no edition that is known here; expected IRC 2018, IRC 2021, IRC 2024, IBC 2018, IBC 2021, NFPA 101"
                )
            );
        }
    }
}
