//! When the size of a replacement window may be excused. A question for the building official, never an answer.
//!
//! A casement that replaces a casement, is the largest standard size that fits, and is not part of a change of occupancy may be
//! excused from the sizes of a new opening. For units that are made to order, "the largest standard size" has no plain meaning,
//! so that the official decides.
//!
//! Always holds: the verdict stays *falls short*; only sizes and the height of the bottom may be excused, never a fixed stop, a key
//! or a window well. A clear width or height of 0 is not a size: a unit that does not open is never excused.
//! Source: IEBC 505.3, read; IRC 2018 R310.2.5, described in a secondary text; IRC 2021 R310.5, its heading seen. The section of
//! IRC 2024 was not seen.

use astragal_exact::{AreaUnit, Number, format_area};

use super::values::Values;
use super::{Opening, Requirement, Shortfall};
use crate::basis::Basis;
use crate::fact::Fact;
use crate::input::{self, InputError};
use crate::interval::Interval;
use crate::truth::{Missing, Truth};

/// What is known of the window that stands there now, and of the unit that replaces it.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Existing {
    /// Whether no larger unit among the plant's standard sizes goes into the frame, or the rough opening, that is there.
    pub largest_standard_size_fits: Option<bool>,
    /// Whether the unit opens as the existing window does.
    pub same_operation: Option<bool>,
    /// The clear opening of the existing window, in square inches.
    pub clear_area: Option<Number>,
    /// Whether it is part of a change of occupancy.
    pub change_of_occupancy: Option<bool>,
}

/// Whether a code may excuse what an opening lacks.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum Excuse {
    /// The opening meets everything, or is not said to be a replacement.
    NotAsked,
    /// The code was not seen to excuse replacements.
    NotInEdition,
    /// It may be excused; ask the building official.
    MayBeExcused {
        /// Where the exception stands.
        basis: Basis,
        /// What it excuses.
        scope: Scope,
    },
    /// It is not excused, since these conditions are not met.
    NotExcused(Vec<Condition>),
    /// It depends on what is missing.
    Undecided(Missing),
}

/// What a replacement is excused from, by edition.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Scope {
    /// The height of the sill and the sections that the text lists, as the text of 2015 does.
    SillAndListedSections,
    /// All of the section on the sizes of openings.
    WholeSection,
    /// The text was not seen.
    NotSeen,
}

/// What must hold for a replacement to be excused.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Condition {
    /// No larger standard size goes into the frame, or the rough opening, that is there.
    LargestStandardSize,
    /// It opens as the old window does, or leaves no less of an opening.
    SameOperationOrNoLess,
    /// It is not part of a change of occupancy.
    NoChangeOfOccupancy,
    /// Only sizes or the height of the bottom are lacking.
    OnlySizes,
    /// It opens: a clear width or height of 0 is no size that may be too small.
    Opens,
}

pub(super) fn of(opening: &Opening, values: &Values, shortfalls: &[Shortfall], missing: &Missing) -> Excuse {
    let Some(existing) = &opening.existing else {
        return Excuse::NotAsked;
    };
    let Some((basis, scope)) = values.replacement else {
        return Excuse::NotInEdition;
    };
    let conditions = [
        (
            Condition::LargestStandardSize,
            Truth::fact(Fact::LargestStandardSizeFits, existing.largest_standard_size_fits),
        ),
        (
            Condition::SameOperationOrNoLess,
            operation_or_area(opening, existing),
        ),
        (
            Condition::NoChangeOfOccupancy,
            Truth::fact(Fact::ChangeOfOccupancy, existing.change_of_occupancy).opposite(),
        ),
        (Condition::OnlySizes, only_sizes(shortfalls, missing)),
        (Condition::Opens, opens(opening)),
    ];
    let failed: Vec<Condition> = conditions
        .iter()
        .filter(|(_, truth)| *truth == Truth::No)
        .map(|(condition, _)| *condition)
        .collect();
    let missing: Missing = conditions.iter().flat_map(|(_, truth)| truth.missing()).collect();
    if !failed.is_empty() {
        Excuse::NotExcused(failed)
    } else if !missing.is_empty() {
        Excuse::Undecided(missing)
    } else {
        Excuse::MayBeExcused { basis, scope }
    }
}

/// The same operation, or a clear area that is equal or greater.
fn operation_or_area(opening: &Opening, existing: &Existing) -> Truth {
    let same = Truth::fact(Fact::ExistingOperation, existing.same_operation);
    let sides = opening.clear_width.as_ref().zip(opening.clear_height.as_ref());
    let no_less = match (sides, &existing.clear_area) {
        (Some((width, height)), Some(area)) => match width.times(height).at_least(area) {
            Some(is_so) => Truth::known(is_so),
            None => Truth::Unknown(Missing::from([Fact::ClearWidth])),
        },
        (_, None) => Truth::Unknown(Missing::from([Fact::ExistingClearArea])),
        (None, Some(_)) => Truth::Unknown(Missing::from([Fact::ClearWidth, Fact::ClearHeight])),
    };
    Truth::any([same, no_less])
}

/// Whether there is a clear opening at all.
fn opens(opening: &Opening) -> Truth {
    let above_nothing = |fact, side: Option<&Interval>| match side {
        Some(side) if side.low().is_positive() => Truth::Yes,
        Some(side) if !side.high().is_positive() => Truth::No,
        _ => Truth::Unknown(Missing::from([fact])),
    };
    Truth::all([
        above_nothing(Fact::ClearWidth, opening.clear_width.as_ref()),
        above_nothing(Fact::ClearHeight, opening.clear_height.as_ref()),
    ])
}

/// Whether nothing but sizes and the height of the bottom is lacking; open while something else may be.
fn only_sizes(shortfalls: &[Shortfall], missing: &Missing) -> Truth {
    let is_size = |requirement: Requirement| {
        matches!(
            requirement,
            Requirement::Area | Requirement::Width | Requirement::Height | Requirement::Bottom
        )
    };
    if !shortfalls.iter().all(|shortfall| is_size(shortfall.requirement)) {
        return Truth::No;
    }
    let sizes = [Fact::ClearWidth, Fact::ClearHeight, Fact::BottomOfClearOpening];
    let others: Missing = missing
        .iter()
        .copied()
        .filter(|fact| !sizes.contains(fact))
        .collect();
    if others.is_empty() {
        Truth::Yes
    } else {
        Truth::Unknown(others)
    }
}

/// Refuses an existing clear area that no window has.
pub(super) fn refuse(opening: &Opening) -> Result<(), InputError> {
    let area = opening
        .existing
        .as_ref()
        .and_then(|existing| existing.clear_area.as_ref());
    let Some(area) = area else {
        return Ok(());
    };
    let most = Number::from(input::SIZE_MOST * input::SIZE_MOST);
    if !area.is_negative() && *area <= most {
        return Ok(());
    }
    Err(InputError {
        fact: Fact::ExistingClearArea,
        found: format_area(area, AreaUnit::SquareFoot),
        expected: "an area of 0 or more, at most 2,500 sq ft".to_owned(),
    })
}
