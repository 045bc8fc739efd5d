//! Emergency escape and rescue openings: whether a window may be climbed out of, and whether a room has one that may.
//!
//! An opening of 20 x 41 in whose bottom is 30 in above the floor falls short by IRC 2021: its area is 5.6944… sq ft, less than
//! 5.7. With 20 x 41 1/16 in it meets them all. The question is one of a **room**: a bedroom with one such opening has what is
//! asked, and a second, smaller window in it is no error ([`room()`]).
//!
//! The height that counts here is that of the *bottom of the clear opening* above the floor. The lowest part of the opening, for
//! falls, and the exposed edge of the glass, for safety glazing, are other heights; none of them stands for another.
//!
//! Always holds: limits are inclusive and compared before anything is rounded; a fact that is missing is named and never guessed;
//! what falls short is never called met because a code may excuse it.
//! Cost: a few comparisons an opening.
//!
//! Source: IRC 2018 and 2021 R310, IRC 2024 R319, IBC 2018 1030, IBC 2021 1031, NFPA 101 24.2.2.3, IEBC 505.3; [`Values`] says of
//! each value where it stands and how far it was seen there. Local amendments govern.

mod checks;
mod excuse;
mod own_section;
mod refuse;
mod requirement;
mod room;
mod values;
mod well;
mod words;

use astragal_exact::Number;

pub use crate::building_code::Edition;
pub use excuse::{Condition, Excuse, Existing, Scope};
pub use own_section::OwnSection;
pub use room::{Room, RoomAnswer, RoomUse, RoomVerdict, room};
pub use values::{Limit, Values, values};
pub use well::Well;

use crate::basis::Basis;
use crate::control_device::Device;
use crate::facts_error::FactsError;
use crate::interval::Interval;
use crate::truth::{Missing, Truth};

/// What is known of an opening; `None` is what is not known. Lengths in inches.
///
/// The clear sizes are those of normal operation from the inside, fully open, any releasable device let go, the screen off.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Opening {
    /// What the answer calls it: a tag of the order.
    pub name: String,
    /// The width of the clear opening.
    pub clear_width: Option<Interval>,
    /// The height of the clear opening.
    pub clear_height: Option<Interval>,
    /// The bottom of the clear opening above the floor.
    pub bottom: Option<Number>,
    /// The sill above the adjacent ground; below zero when it lies under it.
    pub sill_above_grade: Option<Number>,
    /// The device that limits how far it opens.
    pub device: Option<Device>,
    /// Whether it opens from the inside without keys, tools or special effort.
    pub opens_without_keys: Option<bool>,
    /// The window well, asked for unless the sill is known not to lie below the ground.
    pub well: Well,
    /// How rescuers reach it, asked for by NFPA 101 alone.
    pub reach: Reach,
    /// What stands there now, when the unit replaces it.
    pub existing: Option<Existing>,
}

/// How an opening is reached from outside; any one is enough.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Reach {
    /// The opening above the ground outside, in inches.
    pub height_above_grade: Option<Number>,
    /// Whether rescue apparatus reaches it directly.
    pub rescue_access: Option<bool>,
    /// Whether it opens onto a balcony outside.
    pub onto_balcony: Option<bool>,
}

/// Whether an opening has what is asked of an escape opening. A check, no approval.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Verdict {
    /// It has all that is asked.
    Meets,
    /// It lacks something, whatever else is missing.
    FallsShort,
    /// It depends on what is missing.
    Undecided,
}

/// The answer about one opening.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Answer {
    /// The name of the opening.
    pub name: String,
    /// The edition it was asked by.
    pub edition: Edition,
    /// Whether it has what is asked.
    pub verdict: Verdict,
    /// What it lacks, in the order of [`Requirement`]; empty unless it falls short.
    pub shortfalls: Vec<Shortfall>,
    /// What else would have to be known; empty when it meets everything.
    pub missing: Missing,
    /// Whether a code may excuse what it lacks.
    pub excuse: Excuse,
    /// What is to be said beside it, in the order of [`Remark`].
    pub remarks: Vec<Remark>,
    /// The values that were compared with, and where they stand.
    pub bases: Vec<Basis>,
}

/// One thing that an escape opening must have.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Requirement {
    /// Enough clear area.
    Area,
    /// Enough clear width.
    Width,
    /// Enough clear height.
    Height,
    /// A bottom that is low enough.
    Bottom,
    /// Opens from the inside without keys or tools.
    WithoutKeys,
    /// No device that keeps it shut: a fixed stop does, and so does a guard that does not let go.
    Device,
    /// Within reach of rescuers.
    Reach,
    /// A window well of enough area.
    WellArea,
    /// A window well that reaches out far enough.
    WellProjection,
    /// A window well that is wide enough.
    WellWidth,
    /// A ladder or steps in a deep window well.
    WellLadder,
}

/// One thing that an opening lacks.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shortfall {
    /// What it lacks.
    pub requirement: Requirement,
    /// By how much; `None` where it is not a matter of size.
    pub amount: Option<Amount>,
    /// Where it is asked.
    pub basis: Basis,
}

/// By how much a size falls short: square inches for areas, inches for the rest.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Amount {
    /// What was found.
    pub found: Interval,
    /// The least or the most that is taken.
    pub limit: Number,
    /// How far it is from the limit, above 0.
    pub by: Interval,
}

/// What is to be said beside an answer.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Remark {
    /// It counts as a grade-floor opening, since its sill is at most 44 in above or below the adjacent ground.
    GradeFloor,
    /// It counts with the smaller area, since it lies below the ground.
    BelowGrade,
    /// It lies below the ground or may, and what this code asks of a window well is not known here.
    WellNotKnown,
    /// A vent latch has no standing: the sizes count with it folded back by hand.
    VentLatch,
    /// The sizes count after the device has let go.
    AfterRelease,
}

/// Returns whether an opening has what `edition` asks of an escape opening, what it lacks and by how much.
///
/// The verdict is [`Verdict::FallsShort`] as soon as one thing is known to be lacking; [`Verdict::Undecided`] when nothing is
/// known to be, and something is missing. Whether the *room* needs such an opening is another question: [`room()`].
///
/// # Errors
/// - [`FactsError::Input`]: a clear size below 0 or above 50 ft; a bottom below 0; a height or depth past 3,000 ft.
/// - [`FactsError::Contradiction`]: a window well of more area than its projection times its width.
///
/// # Examples
/// ## An area that rounds to 5.7 and does not make it
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::control_device::Device;
/// use astragal_trade::escape::{Edition, Opening, Requirement, Verdict, opening};
/// let window = Opening {
///     clear_width: Some(Number::from(20).into()),
///     clear_height: Some(Number::from(41).into()),
///     bottom: Some(Number::from(30)),
///     sill_above_grade: Some(Number::from(120)),
///     device: Some(Device::Nothing),
///     opens_without_keys: Some(true),
///     ..Opening::default()
/// };
/// let answer = opening(Edition::Irc2021, &window).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, Verdict::FallsShort);
/// assert_eq!(answer.shortfalls.len(), 1);
/// assert_eq!(
///     answer.sentences()[1],
///     "clear area is 5.6944… sq ft, 0.0055… sq ft less than 5.7 sq ft (IRC 2021 R310.2.1)"
/// );
/// # Ok::<(), String>(())
/// ```
/// ## What is missing is named
/// ```
/// use astragal_trade::Fact;
/// use astragal_trade::escape::{Edition, Opening, Verdict, opening};
/// let answer = opening(Edition::Irc2021, &Opening::default()).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, Verdict::Undecided);
/// assert!(answer.missing.contains(&Fact::ClearWidth) && answer.missing.contains(&Fact::BottomOfClearOpening));
/// # Ok::<(), String>(())
/// ```
pub fn opening(edition: Edition, opening: &Opening) -> Result<Answer, FactsError> {
    refuse::facts(opening)?;
    Ok(checks::answer(edition, opening))
}

impl Answer {
    /// Returns the verdict as a truth: yes when it meets everything, no when it falls short.
    ///
    /// # Examples
    /// ## What is missing comes with it
    /// ```
    /// use astragal_trade::Truth;
    /// use astragal_trade::escape::{Edition, Opening, opening};
    /// let answer = opening(Edition::Irc2021, &Opening::default()).map_err(|error| error.to_string())?;
    /// assert_eq!(answer.meets(), Truth::Unknown(answer.missing.clone()));
    /// # Ok::<(), String>(())
    /// ```
    #[must_use]
    pub fn meets(&self) -> Truth {
        match self.verdict {
            Verdict::Meets => Truth::Yes,
            Verdict::FallsShort => Truth::No,
            Verdict::Undecided => Truth::Unknown(self.missing.clone()),
        }
    }

    /// Says whether a value that was recalled without its text takes part.
    #[must_use]
    pub fn rests_on_memory(&self) -> bool {
        self.bases
            .iter()
            .any(|basis| basis.status == crate::basis::Status::FromMemory)
    }
}
