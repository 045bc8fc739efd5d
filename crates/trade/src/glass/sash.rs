//! The frame of a sash by its perimeter, the sash with its glass, and whether the hardware carries it.
//!
//! A sash of 28 x 28 in at 0.6 lb/ft has 5.6 lb of frame: a third of its double glass, so that a share of the glass would be
//! wrong for small sashes.
//!
//! Always holds: the weight by the foot is the caller's; equal to the hardware's limit is within; a limit that is not known
//! is missing, never enough.

use astragal_exact::Number;

use super::weight::Weight;
use crate::constant::over;
use crate::refusal::refused;
use crate::{Basis, Fact, InputError, Truth, input};

/// Where the assumed weight of a frame stands: nowhere that was seen.
pub const FRAME_BASIS: Basis = Basis::from_memory("common practice, no source", "");

/// LIMIT: the heaviest frame that is taken for one, in pounds by the foot.
const POUNDS_PER_FOOT_MOST: i64 = 20;
/// LIMIT: the heaviest sash that hardware is believed to carry, in pounds.
const HARDWARE_POUNDS_MOST: i64 = 5_000;

/// Returns 0.6 lb by the foot, for a sash frame of which nothing is known. It is from memory ([`FRAME_BASIS`]).
#[must_use]
pub fn assumed_frame_pounds_per_foot() -> Number {
    over::<10>(6)
}

/// Returns the weight of a sash frame: its perimeter in feet times the weight by the foot.
///
/// Width and height are those of the sash, in inches. Without a weight by the foot it is unknown; a caller that uses
/// [`assumed_frame_pounds_per_foot`] says so.
///
/// # Errors
/// [`InputError`] for a size or a weight by the foot that is none.
///
/// # Examples
/// ## By perimeter
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::glass::{assumed_frame_pounds_per_foot, frame_weight};
/// let weight = frame_weight(&Number::from(28), &Number::from(28), Some(&assumed_frame_pounds_per_foot()))?;
/// assert_eq!(weight.pounds().map(|pounds| pounds.to_string()).as_deref(), Some("5.6"));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## Nothing is assumed unless the caller does
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::glass::{Weight, frame_weight};
/// let weight = frame_weight(&Number::from(28), &Number::from(28), None)?;
/// assert_eq!(weight, Weight::missing(Fact::FrameWeightPerFoot));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn frame_weight(
    width: &Number,
    height: &Number,
    pounds_per_foot: Option<&Number>,
) -> Result<Weight, InputError> {
    input::size(Fact::UnitWidth, width)?;
    input::size(Fact::UnitHeight, height)?;
    let Some(pounds) = pounds_per_foot else {
        return Ok(Weight::missing(Fact::FrameWeightPerFoot));
    };
    if !pounds.is_positive() || *pounds > Number::from(POUNDS_PER_FOOT_MOST) {
        let expected = "a weight in pounds above 0 and at most 20";
        return Err(refused(Fact::FrameWeightPerFoot, pounds, expected));
    }
    let perimeter_feet = (width + height) * over::<6>(1);
    Ok(Weight::Known(perimeter_feet * pounds))
}

/// Returns the weight of a sash: its glass and its frame.
#[must_use]
pub fn sash_weight(glass: &Weight, frame: &Weight) -> Weight {
    glass.plus(frame)
}

/// Returns whether a sash is at most as heavy as its hardware carries. Equal is within.
///
/// # Errors
/// [`InputError`] for a limit that is none.
///
/// # Examples
/// ## A third lite breaks the limit
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Truth;
/// use astragal_trade::glass::{Nominal, glass_weight, within_hardware_limit};
/// let weight = |lites: &[Nominal]| glass_weight(&Number::from(30), &Number::from(60), Some(lites));
/// let limit = Number::from(41);
/// assert_eq!(within_hardware_limit(&weight(&[Nominal::OneEighth; 2])?, Some(&limit))?, Truth::Yes);
/// assert_eq!(within_hardware_limit(&weight(&[Nominal::OneEighth; 3])?, Some(&limit))?, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A limit that is not known
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::glass::{Weight, within_hardware_limit};
/// let answer = within_hardware_limit(&Weight::Known(Number::from(41)), None)?;
/// assert_eq!(answer.missing(), [Fact::HardwareLimit].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn within_hardware_limit(sash: &Weight, limit: Option<&Number>) -> Result<Truth, InputError> {
    match limit {
        Some(limit) if !limit.is_positive() || *limit > Number::from(HARDWARE_POUNDS_MOST) => {
            let expected = "a weight in pounds above 0 and at most 5,000";
            Err(refused(Fact::HardwareLimit, limit, expected))
        }
        _ => Ok(compared(sash, limit)),
    }
}

fn compared(sash: &Weight, limit: Option<&Number>) -> Truth {
    match (sash, limit) {
        (Weight::Known(pounds), limit) => Truth::of(Fact::HardwareLimit, limit, |limit| pounds <= limit),
        (Weight::Unknown(missing), limit) => {
            let mut missing = missing.clone();
            if limit.is_none() {
                missing.insert(Fact::HardwareLimit);
            }
            Truth::Unknown(missing)
        }
    }
}
