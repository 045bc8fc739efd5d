//! Diagonals that no opening of the sides that were read has.
//!
//! 36 x 60 in has diagonals of about 69.97 in. Read as 70 and 75, one of them is wrong: when one diagonal of a
//! parallelogram is longer, the other is as much shorter, by the law d1^2 + d2^2 = 2 (a^2 + b^2) of its sides a and b.
//!
//! The tape: every reading is taken to be right to 1/8 in either way (our own choice; it is the step to which measuring
//! guides record), and readings of a side that differ stand for all between them. Only what no such opening has is
//! refused, so that no honest reading is.
//!
//! Sides that lean: the law asks for the length of the sides, and a height is read plumb. A jamb that leans by e is
//! longer than its height h, a^2 = h^2 + e^2, and a sloping head likewise. So the sum may be larger by 2 e^2, where e is at
//! most what the diagonals themselves say (see the header of `upright`), and at most half of the shorter side.
//!
//! Always holds: readings of a parallelogram that stands no further askew, each right to 1/8 in, are never refused.
//! Cost: two square roots.
//! Source: the parallelogram law and the triangle inequality; the tolerance is ours.

use astragal_exact::Number;

use super::error::MeasuringError;
use crate::constant::over;
use crate::interval::{Interval, square_root};

/// How far a tape is taken to be right, either way, in eighths of an inch: our own choice.
pub const TAPE_TOLERANCE_EIGHTHS: i64 = 1;

/// Returns where the diagonal of a rectangle lies whose sides lie in these intervals; `None` when one may be below 0.
///
/// # Cost
/// Two square roots, outward-rounded.
///
/// # Examples
/// ## Sides that are known exactly
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::measuring::expected_diagonal;
/// let side = |inches| Interval::exact(Number::from(inches));
/// assert_eq!(expected_diagonal(&side(30), &side(40)), Some(side(50)));
/// ```
/// ## No sides
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::measuring::expected_diagonal;
/// let side = |inches| Interval::exact(Number::from(inches));
/// assert_eq!(expected_diagonal(&side(-30), &side(40)), None);
/// ```
#[must_use]
pub fn expected_diagonal(width: &Interval, height: &Interval) -> Option<Interval> {
    if width.low().is_negative() || height.low().is_negative() {
        return None;
    }
    let shortest = square_root(&(squared(width.low()) + squared(height.low())))?;
    let longest = square_root(&(squared(width.high()) + squared(height.high())))?;
    Some(shortest.hull(&longest))
}

/// Refuses a diagonal, or two, that no opening with such sides has.
pub(super) fn possible(
    width: &Interval,
    height: &Interval,
    diagonals: &[Option<Number>; 2],
) -> Result<(), MeasuringError> {
    let tape = over::<8>(TAPE_TOLERANCE_EIGHTHS);
    let (width, height) = (widened(width, &tape), widened(height, &tape));
    for found in diagonals.iter().flatten() {
        triangle(&width, &height, found, &tape)?;
    }
    if let [Some(first), Some(second)] = diagonals {
        parallelogram(&width, &height, (first.min(second), first.max(second)), &tape)?;
    }
    Ok(())
}

fn triangle(
    width: &Interval,
    height: &Interval,
    found: &Number,
    tape: &Number,
) -> Result<(), MeasuringError> {
    let least = width.minus(height).abs().low().clone();
    let allowed = Interval::between(least, width.high() + height.high());
    if Interval::around(found, tape).overlaps(&allowed) {
        return Ok(());
    }
    Err(MeasuringError::DiagonalTooFar {
        found: found.clone(),
        allowed: to_sixteenths(allowed),
    })
}

fn parallelogram(
    width: &Interval,
    height: &Interval,
    (shorter, longer): (&Number, &Number),
    tape: &Number,
) -> Result<(), MeasuringError> {
    let (short, long) = (
        at_least_nothing(Interval::around(shorter, tape)),
        Interval::around(longer, tape),
    );
    let found = short.times(&short).plus(&long.times(&long));
    let (wide, high) = (width.times(width), height.times(height));
    let askew = squared(&askew_at_most(width, height, &short, &long));
    let sides = wide.plus(&high);
    let sides = sides.plus(&Interval::between(Number::ZERO, askew));
    if found.overlaps(&sides.scaled(&Number::from(2))) {
        return Ok(());
    }
    let expected = expected_diagonal(width, height).unwrap_or_else(|| width.plus(height));
    Err(MeasuringError::DiagonalsOfNoOpening {
        found: (shorter.clone(), longer.clone()),
        expected: to_sixteenths(expected),
    })
}

/// The most that a side leans or slopes: by what the diagonals differ, and half of the shorter side.
fn askew_at_most(width: &Interval, height: &Interval, short: &Interval, long: &Interval) -> Number {
    let shortest = width.low().min(height.low());
    let most = width.high().min(height.high()) * &over::<2>(1);
    let quarter = (squared(long.high()) - squared(short.low())) * over::<4>(1);
    match quarter.checked_div(shortest) {
        Some(askew) => askew.min(most),
        None => most,
    }
}

fn widened(side: &Interval, tape: &Number) -> Interval {
    at_least_nothing(side.plus(&Interval::around(&Number::ZERO, tape)))
}

fn at_least_nothing(interval: Interval) -> Interval {
    let low = interval.low().clone().max(Number::ZERO);
    Interval::between(low, interval.high().clone().max(Number::ZERO))
}

/// A sixteenth is above 0, so that the interval itself is never taken.
fn to_sixteenths(interval: Interval) -> Interval {
    interval.outward_to(&over::<16>(1)).unwrap_or(interval)
}

fn squared(number: &Number) -> Number {
    number * number
}
