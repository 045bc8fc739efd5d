//! What each edition asks of an escape opening, with section and standing of every value.
//!
//! IRC 2021: area 5.7 sq ft (R310.2.1), width 20 in and height 24 in (R310.2.2), bottom at most 44 in (R310.2.3).
//!
//! Always holds: an edition that was not seen to say something has no value for it.
//! Source: IRC 2018 to 2024 as quoted in secondary texts; NFPA 101 24.2.2.3 in a state fire marshal's sheet of 2017, which says
//! nothing of control devices. Of IBC 2021 only the number 1031.3 was seen, in IEBC 505.3, as the equal of IRC R310.2: its values are
//! those of the IRC, and from memory.

use astragal_exact::Number;

use super::excuse::Scope;
use crate::basis::Basis;
use crate::building_code::Edition;
use crate::constant::over;

/// The sill of a grade-floor opening is at most this far above or below the adjacent ground, in inches.
pub(super) const GRADE_FLOOR_MOST: i64 = 44;

/// A limit and where it stands; inches or square inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Limit {
    /// The least or the most that is taken.
    pub value: Number,
    /// Where it stands.
    pub basis: Basis,
}

/// What an edition asks of an escape opening. `None` is what it was not seen to say.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Values {
    /// The least clear area, in square inches: 5.7 sq ft.
    pub area: Limit,
    /// The least clear area of a grade-floor opening, in square inches: 5.0 sq ft.
    pub area_grade_floor: Option<Limit>,
    /// That the smaller area counts for every opening below the ground, too.
    pub below_grade: Option<Basis>,
    /// The least clear width: 20 in.
    pub width: Limit,
    /// The least clear height: 24 in.
    pub height: Limit,
    /// The highest that the bottom of the clear opening may be above the floor: 44 in.
    pub bottom: Limit,
    /// That it opens from the inside without keys or tools.
    pub without_keys: Basis,
    /// That a control device may serve which lets go.
    pub devices: Basis,
    /// How far it may be above the ground outside, unless rescuers reach it otherwise: 20 ft.
    pub reach: Option<Limit>,
    /// That an opening below the ground has a window well.
    pub well: Option<Basis>,
    /// That the size of a replacement may be excused, and what of it.
    pub replacement: Option<(Basis, Scope)>,
    /// The rooms it is asked of.
    pub rooms: Basis,
}

/// Where the values of an edition stand.
struct Sections {
    area: Basis,
    grade_floor: Option<Basis>,
    below_grade: Option<Basis>,
    sides: Basis,
    bottom: Basis,
    without_keys: Basis,
    devices: Basis,
    reach: Option<Basis>,
    well: Option<Basis>,
    replacement: Option<(Basis, Scope)>,
    rooms: Basis,
}

/// Returns what `edition` asks of an escape opening.
///
/// The sizes are alike in all of these editions; their sections, and what stands beside them, are not.
///
/// # Examples
/// ## A value with its section
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::escape::{Edition, values};
/// let bottom = values(Edition::Irc2024).bottom;
/// assert_eq!((bottom.value, bottom.basis.to_string()), (Number::from(44), "IRC 2024 R319.2.3".into()));
/// ```
/// ## What an edition does not say
/// ```
/// use astragal_trade::escape::{Edition, values};
/// assert_eq!(values(Edition::Nfpa101).area_grade_floor, None);
/// assert_eq!(values(Edition::Irc2021).reach, None);
/// ```
#[must_use]
pub fn values(edition: Edition) -> Values {
    let sections = sections(edition);
    let limit = |value: Number, basis: Basis| Limit { value, basis };
    let inches = |value: i64, basis: Basis| limit(Number::from(value), basis);
    Values {
        area: limit(square_feet_tenths(57), sections.area),
        area_grade_floor: sections
            .grade_floor
            .map(|basis| limit(square_feet_tenths(50), basis)),
        below_grade: sections.below_grade,
        width: inches(20, sections.sides),
        height: inches(24, sections.sides),
        bottom: inches(44, sections.bottom),
        without_keys: sections.without_keys,
        devices: sections.devices,
        reach: sections.reach.map(|basis| inches(240, basis)),
        well: sections.well,
        replacement: sections.replacement,
        rooms: sections.rooms,
    }
}

/// Tenths of a square foot in square inches.
fn square_feet_tenths(tenths: i64) -> Number {
    over::<10>(tenths * 144)
}

fn sections(edition: Edition) -> Sections {
    match edition {
        Edition::Irc2018 => irc_2018(),
        Edition::Irc2021 => irc_2021(),
        Edition::Irc2024 => irc_2024(),
        Edition::Ibc2018 => ibc_2018(),
        Edition::Ibc2021 => ibc_2021(),
        Edition::Nfpa101 => nfpa(),
    }
}

fn irc_2018() -> Sections {
    let at = |section| Basis::second_hand("IRC 2018", section);
    Sections {
        area: at("R310.2.1"),
        grade_floor: Some(at("R310.2.1, exception")),
        below_grade: Some(Basis::from_memory("IRC 2018", "R310.2.1, exception")),
        sides: at("R310.2.1"),
        bottom: at("R310.2.2"),
        without_keys: at("R310.1.1"),
        devices: at("R310.1.1"),
        reach: None,
        well: Some(at("R310.2.3")),
        replacement: Some((at("R310.2.5"), Scope::SillAndListedSections)),
        rooms: at("R310.1"),
    }
}

fn irc_2021() -> Sections {
    let at = |section| Basis::second_hand("IRC 2021", section);
    Sections {
        area: at("R310.2.1"),
        grade_floor: Some(at("R310.2.1, exception")),
        below_grade: Some(Basis::from_memory("IRC 2021", "R310.2.1, exception")),
        sides: at("R310.2.2"),
        bottom: at("R310.2.3"),
        without_keys: at("R310.1.1"),
        devices: at("R310.1.1"),
        reach: None,
        well: Some(at("R310.4")),
        replacement: Some((at("R310.5"), Scope::WholeSection)),
        rooms: at("R310.1"),
    }
}

fn irc_2024() -> Sections {
    let at = |section| Basis::second_hand("IRC 2024", section);
    let recalled = |section| Basis::from_memory("IRC 2024", section);
    Sections {
        area: at("R319.2.1"),
        grade_floor: Some(at("R319.2.1, exception")),
        below_grade: Some(recalled("R319.2.1, exception")),
        sides: at("R319.2.2"),
        bottom: at("R319.2.3"),
        without_keys: at("R319.2.2"),
        devices: recalled("R319, control devices"),
        reach: None,
        well: Some(recalled("R319.4")),
        replacement: Some((recalled("R319, section number not seen"), Scope::NotSeen)),
        rooms: at("R319.1"),
    }
}

fn ibc_2018() -> Sections {
    let base = Basis::from_memory("IBC 2018", "1030");
    ibc(base, base, Basis::from_memory("IEBC 2018", "505.3"))
}

/// Of section 1031 only the number 1031.3 was seen, as the equal of IRC R310.2; its text and its other numbers were not.
fn ibc_2021() -> Sections {
    Sections {
        rooms: Basis::from_memory("IBC 2021", "1031.2"),
        ..ibc(
            Basis::from_memory("IBC 2021", "1031.3"),
            Basis::from_memory("IBC 2021", "1031"),
            Basis::verified("IEBC 2021", "505.3"),
        )
    }
}

fn ibc(base: Basis, without_keys: Basis, replacement: Basis) -> Sections {
    Sections {
        area: base,
        grade_floor: Some(base),
        below_grade: None,
        sides: base,
        bottom: base,
        without_keys,
        devices: Basis::second_hand("IEBC", "505.3.1"),
        reach: None,
        well: Some(Basis::from_memory(base.document, "window wells")),
        replacement: Some((replacement, Scope::WholeSection)),
        rooms: base,
    }
}

fn nfpa() -> Sections {
    let base = Basis::second_hand("NFPA 101", "24.2.2.3");
    Sections {
        area: base,
        grade_floor: None,
        below_grade: None,
        sides: base,
        bottom: base,
        without_keys: base,
        devices: Basis::from_memory("NFPA 101", "24.2.2.3, control devices"),
        reach: Some(base),
        well: None,
        replacement: None,
        rooms: Basis::from_memory("NFPA 101", "24.2.2"),
    }
}
