//! Who takes how much off a measured size, and down to which step of the plant.
//!
//! 35 15/16 in less 1/4 in is 35 11/16; a plant that makes eighths makes 35 5/8.
//!
//! Always holds: nothing is taken off twice. Who has deducted must be said; while it is not, there is no ordered size.
//! The ordered size is a multiple of the step and never above the measured size less the deduction.
//! Source: that one must say who deducts, and to go down to the step, are common practice (down to 1/8 in was read in a
//! measuring guide). How much is taken off is the caller's.

use astragal_exact::Number;

use super::error::{MeasuringError, Side};
use super::length_error::{self, ExpectedLength};
use super::opening::left_of;
use super::size::Size;
use crate::fact::Fact;
use crate::truth::Missing;

/// Who has taken the deduction off a measured size already.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum DeductedBy {
    /// Nobody: it is the size of the opening.
    Nobody,
    /// The dealer, before the size was written down.
    Dealer,
    /// The customer, before the size was written down.
    Customer,
}

/// What was said about who has deducted, each side by itself; `None` is unstated.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub struct StatedDeduction {
    /// Who has deducted from the width.
    pub width: Option<DeductedBy>,
    /// Who has deducted from the height.
    pub height: Option<DeductedBy>,
}

/// What is to be taken off now, and the step of the plant.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Deduction {
    /// Off the width, in inches, 0 or more.
    pub width: Number,
    /// Off the height, in inches, 0 or more.
    pub height: Number,
    /// The size is a multiple of this, in inches, above 0.
    pub step: Number,
}

/// The size to order, or what must be said first.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Ordered {
    /// This size, down to the step.
    Size(Size),
    /// It cannot be said, for want of these facts.
    Unknown(Missing),
}

impl DeductedBy {
    /// All three, in order.
    pub const ALL: [Self; 3] = [Self::Nobody, Self::Dealer, Self::Customer];

    /// Returns the word for it, in small letters.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Nobody => "nobody",
            Self::Dealer => "dealer",
            Self::Customer => "customer",
        }
    }
}

impl StatedDeduction {
    /// Returns that the same has deducted from both, nobody included.
    #[must_use]
    pub fn both(by: DeductedBy) -> Self {
        Self {
            width: Some(by),
            height: Some(by),
        }
    }
}

/// Returns the size to order: `measured` less the deduction, down to the plant's step.
///
/// A size that was deducted from already goes down to the step alone. A deduction of 0 is asked for by writing 0.
///
/// # Errors
/// - [`MeasuringError::Input`]: a size that is not above 0 and at most 50 ft; a deduction below 0; a step that is not
///   above 0.
/// - [`MeasuringError::DeductedByTwo`]: dealer and customer have both deducted, one from the width, one from the height.
/// - [`MeasuringError::DeductedTwice`]: a deduction above 0 from what was deducted from already.
/// - [`MeasuringError::NothingLeft`]: the deduction, or the step, takes all of it.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// ## Nobody has deducted: a quarter off, down to an eighth
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{DeductedBy, Deduction, Ordered, Size, StatedDeduction, deduct};
/// let inches = |numerator, denominator| Number::ratio(numerator, denominator).ok_or("no number");
/// let measured = Size::new(inches(575, 16)?, inches(957, 16)?);
/// let off = Deduction { width: inches(1, 4)?, height: inches(1, 4)?, step: inches(1, 8)? };
/// let ordered = deduct(&measured, StatedDeduction::both(DeductedBy::Nobody), &off)?;
/// assert_eq!(ordered, Ordered::Size(Size::new(inches(285, 8)?, inches(119, 2)?)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
/// ## The dealer has, and it is asked for again
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::measuring::{DeductedBy, Deduction, Size, StatedDeduction, deduct};
/// let quarter = Number::ratio(1, 4).ok_or("no number")?;
/// let off = Deduction { width: quarter.clone(), height: Number::ZERO, step: quarter };
/// let measured = Size::new(Number::from(36), Number::from(60));
/// let error = deduct(&measured, StatedDeduction::both(DeductedBy::Dealer), &off).err();
/// let text = "the dealer has deducted from the width already, and `1/4 in` is to come off again";
/// assert_eq!(error.map(|error| error.to_string()).as_deref(), Some(text));
/// # Ok::<(), &str>(())
/// ```
/// ## Nobody has said
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::measuring::{Deduction, Ordered, Size, StatedDeduction, deduct};
/// let off = Deduction { width: Number::ZERO, height: Number::ZERO, step: Number::ONE };
/// let measured = Size::new(Number::from(36), Number::from(60));
/// let ordered = deduct(&measured, StatedDeduction::default(), &off)?;
/// assert_eq!(ordered, Ordered::Unknown([Fact::DeductedBy].into()));
/// # Ok::<(), astragal_trade::measuring::MeasuringError>(())
/// ```
pub fn deduct(
    measured: &Size,
    stated: StatedDeduction,
    deduction: &Deduction,
) -> Result<Ordered, MeasuringError> {
    length_error::size(Fact::OpeningWidth, "", &measured.width)?;
    length_error::size(Fact::OpeningHeight, "", &measured.height)?;
    length_error::distance(Fact::DeductionWidth, &deduction.width)?;
    length_error::distance(Fact::DeductionHeight, &deduction.height)?;
    length_error::size(Fact::PlantStep, "", &deduction.step)?;
    only_one_person(stated)?;
    let (Some(by_width), Some(by_height)) = (stated.width, stated.height) else {
        return Ok(Ordered::Unknown(Missing::from([Fact::DeductedBy])));
    };
    let step = &deduction.step;
    let width = one_side(Side::Width, &measured.width, by_width, &deduction.width, step)?;
    let height = one_side(Side::Height, &measured.height, by_height, &deduction.height, step)?;
    Ok(Ordered::Size(Size::new(width, height)))
}

fn only_one_person(stated: StatedDeduction) -> Result<(), MeasuringError> {
    let person = |by: Option<DeductedBy>| by.filter(|by| *by != DeductedBy::Nobody);
    match (person(stated.width), person(stated.height)) {
        (Some(width), Some(height)) if width != height => {
            Err(MeasuringError::DeductedByTwo { width, height })
        }
        _ => Ok(()),
    }
}

fn one_side(
    side: Side,
    measured: &Number,
    by: DeductedBy,
    off: &Number,
    step: &Number,
) -> Result<Number, MeasuringError> {
    if by != DeductedBy::Nobody && off.is_positive() {
        let off = off.clone();
        return Err(MeasuringError::DeductedTwice { side, by, off });
    }
    let left = left_of(side, measured, off)?;
    match left.floor_to(step) {
        Some(size) if size.is_positive() => Ok(size),
        _ => {
            let expected = ExpectedLength::StepOf(side, left);
            Err(length_error::refused(Fact::PlantStep, "", step, expected).into())
        }
    }
}
