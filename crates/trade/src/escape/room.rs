//! Whether a room has at least one opening to escape by.
//!
//! A bedroom with a casement of 20 x 44 in and a slider of 20 x 32 in has one: the casement. That the slider is too small is no error.
//!
//! Always holds: an opening that qualifies settles the room, whatever is missing elsewhere; a room without one is never called met
//! because a code may excuse an opening. The openings given need not be all that the room has: an order names those that are
//! replaced, and a door to the outside may qualify as well.
//! Cost: that of its openings.
//! Source: IRC 2018 and 2021 R310.1, IRC 2024 R319.1, which adds the room that a sleeping loft opens to.

use super::values::values;
use super::{Answer, Excuse, Opening, Verdict};
use super::{checks, refuse};
use crate::basis::Basis;
use crate::building_code::Edition;
use crate::fact::Fact;
use crate::facts_error::FactsError;
use crate::truth::{Missing, Truth};

/// What a room is used for, as far as escape asks.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RoomUse {
    /// People sleep in it.
    Sleeping,
    /// A basement with habitable space. One where that is in doubt is given as this.
    Basement,
    /// A habitable attic.
    HabitableAttic,
    /// A room that a sleeping loft opens to.
    BelowSleepingLoft,
    /// None of these.
    Other,
}

/// A room and what is known of its openings.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Room {
    /// What it is used for; `None` when that is not known.
    pub room_use: Option<RoomUse>,
    /// The openings that are known of, in any order.
    pub openings: Vec<Opening>,
}

/// Whether a room has an opening to escape by.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RoomVerdict {
    /// Escape is not asked of it.
    NotAsked,
    /// One of its openings at least has what is asked.
    HasOne,
    /// Each of the openings given falls short.
    NoneOfThoseGiven,
    /// No opening was given.
    NoOpeningsGiven,
    /// It depends on what is missing.
    Undecided,
}

/// The answer about a room.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RoomAnswer {
    /// The edition it was asked by.
    pub edition: Edition,
    /// What it is used for.
    pub room_use: Option<RoomUse>,
    /// Whether it has one.
    pub verdict: RoomVerdict,
    /// The answer about each opening, in the order they were given.
    pub openings: Vec<Answer>,
    /// What would have to be known to decide; empty when it is decided.
    pub missing: Missing,
    /// Where it is asked of rooms.
    pub basis: Basis,
}

/// Returns whether a room has at least one opening to escape by, and the answer about each opening.
///
/// # Errors
/// Those of [`super::opening`], for the first opening whose facts cannot be.
///
/// # Examples
/// ## A second, smaller window is no error
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::control_device::Device;
/// use astragal_trade::escape::{Edition, Opening, Room, RoomUse, RoomVerdict, room};
/// let window = |name: &str, width: i64, height: i64| Opening {
///     name: name.into(),
///     clear_width: Some(Number::from(width).into()),
///     clear_height: Some(Number::from(height).into()),
///     bottom: Some(Number::from(30)),
///     sill_above_grade: Some(Number::from(120)),
///     device: Some(Device::Nothing),
///     opens_without_keys: Some(true),
///     ..Opening::default()
/// };
/// let bedroom = Room {
///     room_use: Some(RoomUse::Sleeping),
///     openings: vec![window("left", 20, 32), window("right", 20, 44)],
/// };
/// let answer = room(Edition::Irc2021, &bedroom).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, RoomVerdict::HasOne);
/// assert_eq!(answer.qualifying().map(|opening| opening.name.as_str()).collect::<Vec<_>>(), ["right"]);
/// # Ok::<(), String>(())
/// ```
/// ## No opening was given
/// ```
/// use astragal_trade::escape::{Edition, Room, RoomUse, RoomVerdict, room};
/// let bedroom = Room { room_use: Some(RoomUse::Sleeping), openings: Vec::new() };
/// let answer = room(Edition::Irc2021, &bedroom).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, RoomVerdict::NoOpeningsGiven);
/// # Ok::<(), String>(())
/// ```
pub fn room(edition: Edition, room: &Room) -> Result<RoomAnswer, FactsError> {
    for opening in &room.openings {
        refuse::facts(opening)?;
    }
    let openings: Vec<Answer> = room
        .openings
        .iter()
        .map(|opening| checks::answer(edition, opening))
        .collect();
    let (verdict, missing) = verdict(&is_asked(edition, room.room_use), &openings);
    Ok(RoomAnswer {
        edition,
        room_use: room.room_use,
        verdict,
        openings,
        missing,
        basis: values(edition).rooms,
    })
}

/// Whether an edition asks escape of a room; open where its text was not seen to name such a room.
fn is_asked(edition: Edition, room_use: Option<RoomUse>) -> Truth {
    let wording = || Truth::Unknown(Missing::from([Fact::WordingInForce]));
    match room_use {
        None => Truth::Unknown(Missing::from([Fact::RoomUse])),
        // Of NFPA 101 the sizes were seen, and not of which rooms but bedrooms they are asked.
        Some(RoomUse::Sleeping) => Truth::Yes,
        Some(_) if edition == Edition::Nfpa101 => wording(),
        Some(RoomUse::Other) => Truth::No,
        Some(RoomUse::Basement) => Truth::Yes,
        Some(RoomUse::HabitableAttic) if edition.is_residential() => Truth::Yes,
        Some(RoomUse::BelowSleepingLoft) if edition == Edition::Irc2024 => Truth::Yes,
        Some(RoomUse::HabitableAttic | RoomUse::BelowSleepingLoft) => wording(),
    }
}

fn verdict(asked: &Truth, openings: &[Answer]) -> (RoomVerdict, Missing) {
    let any = |verdict: Verdict| openings.iter().any(|answer| answer.verdict == verdict);
    if *asked == Truth::No {
        return (RoomVerdict::NotAsked, Missing::new());
    }
    if any(Verdict::Meets) {
        return (RoomVerdict::HasOne, Missing::new());
    }
    let mut missing = asked.missing();
    for answer in openings {
        if answer.verdict == Verdict::Undecided {
            missing.extend(answer.missing.iter().copied());
        }
    }
    if !missing.is_empty() {
        (RoomVerdict::Undecided, missing)
    } else if openings.is_empty() {
        (RoomVerdict::NoOpeningsGiven, missing)
    } else {
        (RoomVerdict::NoneOfThoseGiven, missing)
    }
}

impl RoomAnswer {
    /// Returns whether the room has what is asked of it, as a truth: yes as well when nothing is asked, no as well when no opening
    /// was given.
    ///
    /// # Examples
    /// ## A hall needs none
    /// ```
    /// use astragal_trade::Truth;
    /// use astragal_trade::escape::{Edition, Room, RoomUse, room};
    /// let hall = Room { room_use: Some(RoomUse::Other), openings: Vec::new() };
    /// let answer = room(Edition::Irc2021, &hall).map_err(|error| error.to_string())?;
    /// assert_eq!(answer.has_what_is_asked(), Truth::Yes);
    /// # Ok::<(), String>(())
    /// ```
    #[must_use]
    pub fn has_what_is_asked(&self) -> Truth {
        match self.verdict {
            RoomVerdict::NotAsked | RoomVerdict::HasOne => Truth::Yes,
            RoomVerdict::NoneOfThoseGiven | RoomVerdict::NoOpeningsGiven => Truth::No,
            RoomVerdict::Undecided => Truth::Unknown(self.missing.clone()),
        }
    }

    /// Returns the openings that have what is asked, in the order they were given.
    pub fn qualifying(&self) -> impl Iterator<Item = &Answer> {
        self.openings
            .iter()
            .filter(|answer| answer.verdict == Verdict::Meets)
    }

    /// Returns the openings that may be excused, in the order they were given. None of them meets what is asked.
    pub fn excusable(&self) -> impl Iterator<Item = &Answer> {
        self.openings
            .iter()
            .filter(|answer| matches!(answer.excuse, Excuse::MayBeExcused { .. }))
    }
}
