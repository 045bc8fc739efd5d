//! The performance grade to look for on a window, from the pressures of the wind.
//!
//! +17.7 and -23.4 psf at a corner need 23.4 psf; the lowest grade that has it is PG25.
//!
//! Always holds: the grade is at least the larger of both pressures, whichever numbers of the intervals they are. An interval with
//! a grade inside it cannot be decided between that grade and the next. Near a corner or not: when that is not known, the answer
//! is one grade only where both agree.
//!
//! Source: grade at least the larger of the two pressures, common practice; steps of 5 psf from memory.

use super::class::Grade;
use super::wind::NetPressures;
use crate::interval::Interval;
use crate::{Fact, Missing};

/// The grade to look for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum GradeAnswer {
    /// The lowest grade that is enough. It is one to look for, not a promise: the size tested, the assembly and the anchors count.
    Grade(Grade),
    /// The pressure cannot be told from the lower grade: look for the higher one, or have it worked out.
    CannotDecide {
        /// The grade that the pressure is very near to.
        lower: Grade,
        /// The next grade; nothing behind the last.
        higher: Option<Grade>,
    },
    /// It depends on whether the window is near a corner.
    ByCorner {
        /// The answer near a corner.
        near_corner: Box<GradeAnswer>,
        /// The answer away from corners.
        away: Box<GradeAnswer>,
        /// What has to be known: [`Fact::NearCorner`].
        missing: Missing,
    },
    /// No grade reaches the pressure.
    AboveAllGrades,
}

/// Returns the larger of the inward and the outward pressure, without signs, in psf.
///
/// # Examples
/// ## Near a corner and away from it
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::structure::{NetPressures, needed_pressure};
/// let psf = |value: i64| Interval::exact(Number::from(value));
/// let pressures =
///     NetPressures { inward: psf(18), outward: psf(-17), outward_near_corner: psf(-24), assumptions: vec![] };
/// assert_eq!(needed_pressure(&pressures, true), psf(24));
/// assert_eq!(needed_pressure(&pressures, false), psf(18));
/// ```
#[must_use]
pub fn needed_pressure(pressures: &NetPressures, near_corner: bool) -> Interval {
    let outward = if near_corner {
        &pressures.outward_near_corner
    } else {
        &pressures.outward
    };
    let (inward, outward) = (pressures.inward.abs(), outward.abs());
    Interval::between(
        inward.low().max(outward.low()).clone(),
        inward.high().max(outward.high()).clone(),
    )
}

/// Returns the grade to look for.
///
/// # Cost
/// A few exact operations.
///
/// # Examples
/// ## The corner decides
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::structure::{Grade, GradeAnswer, NetPressures, grade_to_look_for};
/// let psf = |value: i64| Interval::exact(Number::from(value));
/// let pressures =
///     NetPressures { inward: psf(18), outward: psf(-19), outward_near_corner: psf(-24), assumptions: vec![] };
/// let grade = |value: i64| Grade::new(&Number::from(value)).map(GradeAnswer::Grade);
/// assert_eq!(Ok(grade_to_look_for(&pressures, Some(true))), grade(25));
/// assert_eq!(Ok(grade_to_look_for(&pressures, Some(false))), grade(20));
/// assert!(matches!(grade_to_look_for(&pressures, None), GradeAnswer::ByCorner { .. }));
/// ```
/// ## A pressure that cannot be told from a grade
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::structure::{GradeAnswer, NetPressures, grade_to_look_for};
/// let near_25 = Interval::around(&Number::from(25), &Number::from_decimal("0.000001").unwrap_or_default());
/// let pressures = NetPressures {
///     inward: near_25.clone(),
///     outward: near_25.clone(),
///     outward_near_corner: near_25,
///     assumptions: vec![],
/// };
/// assert!(matches!(grade_to_look_for(&pressures, Some(true)), GradeAnswer::CannotDecide { .. }));
/// ```
#[must_use]
pub fn grade_to_look_for(pressures: &NetPressures, near_corner: Option<bool>) -> GradeAnswer {
    let answer = |near_corner| grade_for(&needed_pressure(pressures, near_corner));
    if let Some(near_corner) = near_corner {
        return answer(near_corner);
    }
    let (near_corner, away) = (answer(true), answer(false));
    if near_corner == away {
        return near_corner;
    }
    GradeAnswer::ByCorner {
        near_corner: Box::new(near_corner),
        away: Box::new(away),
        missing: Missing::from([Fact::NearCorner]),
    }
}

fn grade_for(needed: &Interval) -> GradeAnswer {
    let (lower, higher) = (Grade::least_for(needed.low()), Grade::least_for(needed.high()));
    match lower {
        None => GradeAnswer::AboveAllGrades,
        Some(lower) if higher == Some(lower) => GradeAnswer::Grade(lower),
        Some(lower) => GradeAnswer::CannotDecide { lower, higher },
    }
}
