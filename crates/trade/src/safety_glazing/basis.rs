//! Where each hazardous location stands, by edition, and how far it was seen there.
//!
//! Stairs: `IBC 2018 2406.4.6`, read in a text that quotes it; `IRC 2021 R308.4.6`, from memory. Guards were read in the text of 2024 alone.
//!
//! Source: IRC 2015 R308.4.1 to R308.4.3 and IRC R308.4.3 as quoted, carried to 2018 and 2021 under the same numbers; IRC 2024 R324.4.2
//! to R324.4.4 in a copy typed by others; IBC 2406.4.3 in a state's article; IBC 2406.4.6 and 2406.4.7 and IRC R308.4.7 in forum quotations;
//! the wet rule in trade press.

use super::Location;
use crate::basis::{Basis, Status};
use crate::building_code::Edition;

/// Returns where a hazardous location stands in an edition. NFPA 101 is from memory: nothing about it is known here.
///
/// # Examples
/// ## The numbers of 2024 are new
/// ```
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::safety_glazing::{Location, basis};
/// assert_eq!(basis(Edition::Irc2021, Location::LargePane).to_string(), "IRC 2021 R308.4.3");
/// assert_eq!(basis(Edition::Irc2024, Location::LargePane).to_string(), "IRC 2024 R324.4.3");
/// ```
#[must_use]
pub fn basis(edition: Edition, location: Location) -> Basis {
    let (r308, r324, section_2406) = sections(location);
    let (section, seen) = match edition {
        Edition::Irc2018 | Edition::Irc2021 => (r308, !matches!(location, Location::Stair | Location::Guard)),
        Edition::Irc2024 => (r324, seen_in_2024(location)),
        Edition::Ibc2018 | Edition::Ibc2021 => (section_2406, seen_in_ibc(location)),
        Edition::Nfpa101 => ("", false),
    };
    let status = if seen {
        Status::SecondHand
    } else {
        Status::FromMemory
    };
    Basis {
        document: edition.name(),
        section,
        status,
    }
}

fn seen_in_2024(location: Location) -> bool {
    matches!(
        location,
        Location::BesideDoor | Location::LargePane | Location::Guard
    )
}

fn seen_in_ibc(location: Location) -> bool {
    matches!(
        location,
        Location::LargePane | Location::Stair | Location::BottomLanding
    )
}

fn sections(location: Location) -> (&'static str, &'static str, &'static str) {
    match location {
        Location::InDoor => ("R308.4.1", "R324.4.1", "2406.4.1"),
        Location::BesideDoor => ("R308.4.2", "R324.4.2", "2406.4.2"),
        Location::LargePane => ("R308.4.3", "R324.4.3", "2406.4.3"),
        Location::Guard => ("R308.4.4", "R324.4.4", "2406.4.4"),
        Location::WetPlace => ("R308.4.5", "R324.4.5", "2406.4.5"),
        Location::Stair => ("R308.4.6", "R324.4.6", "2406.4.6"),
        Location::BottomLanding => ("R308.4.7", "R324.4.7", "2406.4.7"),
    }
}
