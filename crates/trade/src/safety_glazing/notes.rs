//! What goes with safety glazing and was recalled, not read: categories of impact, marks, wired glass.
//!
//! A lite of at most 9 sq ft in a hinged door is Category I, a larger one Category II: from memory, to be confirmed.
//!
//! Always holds: everything here names its standing, and most of it is from memory.
//! Source: 16 CFR 1201, whose tests are those of ANSI Z97.1-2015 since 22 April 2016 (Federal Register 2016-06523, read); the categories by
//! location are recalled from IRC Table R308.3.1(1), whose text was not seen.

use astragal_exact::Number;

use super::Location;
use super::federal::TESTS_BASIS;
use crate::basis::Basis;

/// Lites above this area are Category II everywhere, in square inches: 9 sq ft.
const AREA_MOST: i64 = 1296;

/// Where the categories by location stand: recalled, the table was not seen.
pub const CATEGORY_BASIS: Basis =
    Basis::from_memory("16 CFR 1201 by IRC Table R308.3.1(1)", "categories by location");

/// A category of impact of 16 CFR 1201.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Category {
    /// The lighter blow: [`foot_pounds`](Self::foot_pounds).
    One,
    /// The heavier one.
    Two,
}

/// Something to be said beside an answer, with its standing.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Note {
    /// The sentence.
    pub words: &'static str,
    /// Where it stands.
    pub basis: Basis,
}

/// Returns the category of a lite that is called for, as recalled ([`CATEGORY_BASIS`]); `None` where none is recalled.
///
/// `area` is in square inches. `sliding_door` says whether a door is a sliding one.
///
/// # Examples
/// ## Above 9 sq ft it is the second everywhere
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::safety_glazing::{CATEGORY_BASIS, Category, Location, category};
/// let at = |area: i64, location| category(location, &Number::from(area), false);
/// assert_eq!(at(1296, Location::InDoor), Some(Category::One));
/// assert_eq!(at(1297, Location::InDoor), Some(Category::Two));
/// assert_eq!(at(100, Location::WetPlace), Some(Category::Two));
/// assert!(CATEGORY_BASIS.to_string().contains("from memory"));
/// ```
/// ## Where none is recalled, none is said
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::safety_glazing::{Location, category};
/// assert_eq!(category(Location::Stair, &Number::from(100), false), None);
/// ```
#[must_use]
pub fn category(location: Location, area: &Number, sliding_door: bool) -> Option<Category> {
    if *area > Number::from(AREA_MOST) {
        return Some(Category::Two);
    }
    match location {
        Location::WetPlace => Some(Category::Two),
        Location::InDoor if sliding_door => Some(Category::Two),
        Location::InDoor => Some(Category::One),
        Location::BesideDoor
        | Location::LargePane
        | Location::Guard
        | Location::Stair
        | Location::BottomLanding => None,
    }
}

/// Returns what is to be said wherever safety glazing is called for.
///
/// # Examples
/// ## Wired glass is flagged as recalled
/// ```
/// use astragal_trade::{Status, safety_glazing::notes};
/// let wired = notes().into_iter().find(|note| note.words.starts_with("wired glass"));
/// assert_eq!(wired.map(|note| note.basis.status), Some(Status::FromMemory));
/// ```
#[must_use]
pub fn notes() -> [Note; 4] {
    [
        Note {
            words: "ordinary safety glazing is fully tempered or laminated; in insulating glass each exposed lite is asked",
            basis: Basis::from_memory("common practice", ""),
        },
        Note {
            words: "wired glass does not serve in most hazardous locations",
            basis: Basis::from_memory("IRC", "R308"),
        },
        Note {
            words: "each safety lite carries a permanent mark",
            basis: Basis::from_memory("IRC", "R308.1"),
        },
        Note {
            words: "16 CFR 1201 takes its tests from ANSI Z97.1-2015 since 22 April 2016",
            basis: TESTS_BASIS,
        },
    ]
}
