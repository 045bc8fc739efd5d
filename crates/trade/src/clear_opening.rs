//! The net clear opening of a unit: the free width and height that its normal operation leaves.
//!
//! A hung window of 36 x 60 in that loses 4 in of width and 4 1/2 in of height leaves 32 x 25 1/2 in, which are 816 sq in or
//! 5.6666… sq ft: not 5.7.
//!
//! The formulas are plane geometry; what they take away is data of a catalog. With unit `W x H`, losses `a` (width) and `b`
//! (height):
//!
//! | operation | clear width | clear height |
//! |---|---|---|
//! | hung, one sash opens | `W - a` | `H * min(share, 1 - share) - b` |
//! | slider, one sash of the share `f` slides | `W * f - a` | `H - b` |
//! | casement, opens to 90 degrees or more | `W - a - k`, `k` the intrusion of hinge and sash | `H - b` |
//! | casement stopped below 90 degrees | `W - a - (p + s * cosine + t * sine)` | `H - b` |
//! | awning, hopper | 0, unless the catalog states a clear opening for escape | 0, unless stated |
//! | fixed | 0 | 0 |
//!
//! A sash that takes more than half of the height slides behind the smaller one, so that the smaller share is what opens. Sashes
//! that are taken or tilted out do not count, and the screen is off.
//!
//! Always holds: nothing is rounded; a width or a height is never below 0, and where nothing is left the reason is given; a larger
//! unit of the same operation and losses never has a smaller clear opening.
//! Cost: a few operations on exact numbers.
//!
//! Source: geometry, computed; that operation is the normal one from the inside: IRC 2021 R310.1.1. What an awning or a hopper is
//! taken for: common practice, no source.

mod checks;

use std::fmt;

use astragal_exact::Number;

use crate::facts_error::FactsError;
use crate::interval::Interval;

/// Width and height that frame and sash take from the unit when it is fully open, in inches, both sides together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Losses {
    /// What jambs and sash take from the width.
    pub width: Number,
    /// What head, sill and sash take from the height.
    pub height: Number,
}

/// How a unit opens, with what a catalog says about it.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum Operation {
    /// Single or double hung: one sash slides past the other, upwards or downwards.
    Hung {
        /// The share of the height that the opening sash takes, between 0 and 1: 1/2 for equal sashes.
        sash_share: Number,
    },
    /// A horizontal slider: one sash slides past another.
    Slider {
        /// The share of the width that the sliding sash takes, above 0 and at most 1/2: 1/2 of two lites, 1/3 or 1/4 of three.
        vent_fraction: Number,
    },
    /// A casement that opens to 90 degrees or more.
    Casement {
        /// How far hinge and sash stand in the opening, in inches.
        hinge_intrusion: Number,
    },
    /// A casement that is stopped below 90 degrees.
    StoppedCasement(StoppedSash),
    /// An awning or a hopper, whose sash lies in the path.
    Projecting {
        /// The clear opening that the catalog states for escape, where it states one.
        escape_rating: Option<EscapeRating>,
    },
    /// It does not open.
    Fixed,
}

/// The sash of a casement that is stopped below 90 degrees; lengths in inches.
///
/// The angle is given by its cosine and sine, since those of most angles are no fractions: the caller gives exact ones, or
/// intervals rounded outwards that have them in them. No float and no angle in degrees is taken.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct StoppedSash {
    /// The width of the sash.
    pub width: Number,
    /// The thickness of the sash.
    pub thickness: Number,
    /// How far the hinge line stands from the frame.
    pub hinge_offset: Number,
    /// The cosine of the angle between closed and open, from 0 to 1.
    pub cosine: Interval,
    /// The sine of the same angle, from 0 to 1.
    pub sine: Interval,
}

/// A clear opening that a catalog states for escape, in inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct EscapeRating {
    /// The stated clear width.
    pub width: Number,
    /// The stated clear height.
    pub height: Number,
}

/// The free width and height that normal operation leaves, in inches.
///
/// Both ends of an interval are one number, unless the angle of a stopped casement is known only between two.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ClearOpening {
    /// The clear width, 0 or more.
    pub width: Interval,
    /// The clear height, 0 or more.
    pub height: Interval,
    /// Why there is no opening; `None` when there is one, or may be.
    pub nothing: Option<NoOpening>,
}

/// Why a unit has no clear opening.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum NoOpening {
    /// It does not open.
    Fixed,
    /// The open sash of an awning or a hopper lies in the path, and no clear opening is stated for escape.
    SashInThePath,
    /// Frame, sash and hinge take all of the width.
    WidthUsedUp,
    /// Frame and sash take all of the height.
    HeightUsedUp,
}

/// Returns the net clear opening of a unit of `width` x `height` inches.
///
/// # Errors
/// - [`FactsError::Input`]: a size that is not above 0 and at most 50 ft; a loss, intrusion, offset or thickness below 0 or above
///   50 ft; a share of a hung sash that is not between 0 and 1, of a slider not above 0 and at most 1/2; a cosine or sine not
///   between 0 and 1.
/// - [`FactsError::Contradiction`]: cosine and sine that no angle has; a sash or a stated opening larger than the unit.
///
/// # Examples
/// ## A hung window
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::clear_opening::{Losses, Operation, clear_opening};
/// let half = Number::ratio(1, 2).ok_or("no number")?;
/// let losses = Losses { width: Number::from(4), height: Number::ratio(9, 2).ok_or("no number")? };
/// let operation = Operation::Hung { sash_share: half };
/// let opening = clear_opening(&Number::from(36), &Number::from(60), &losses, &operation).map_err(|error| error.to_string())?;
/// assert_eq!((opening.width.to_string(), opening.height.to_string()), ("32".into(), "25.5".into()));
/// assert_eq!(opening.area().to_string(), "816");
/// # Ok::<(), String>(())
/// ```
/// ## A share that no slider has
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::clear_opening::{Losses, Operation, clear_opening};
/// let losses = Losses { width: Number::from(4), height: Number::from(4) };
/// let operation = Operation::Slider { vent_fraction: Number::ratio(2, 3).ok_or("no number")? };
/// let refused = clear_opening(&Number::from(60), &Number::from(42), &losses, &operation);
/// let text = refused.err().ok_or("taken")?.to_string();
/// assert_eq!(text, "share of the width that the sliding sash takes is `0.66666666…`; expected a share above 0 and at most 1/2");
/// # Ok::<(), &str>(())
/// ```
pub fn clear_opening(
    width: &Number,
    height: &Number,
    losses: &Losses,
    operation: &Operation,
) -> Result<ClearOpening, FactsError> {
    checks::unit(width, height, losses, operation)?;
    let full = Interval::exact(width - &losses.width);
    let tall = Interval::exact(height - &losses.height);
    Ok(match operation {
        Operation::Hung { sash_share } => {
            let other = Number::ONE - sash_share;
            let opens = sash_share.clone().min(other);
            opened(full, (height * &opens - &losses.height).into())
        }
        Operation::Slider { vent_fraction } => opened((width * vent_fraction - &losses.width).into(), tall),
        Operation::Casement { hinge_intrusion } => {
            opened(full.minus(&Interval::exact(hinge_intrusion.clone())), tall)
        }
        Operation::StoppedCasement(sash) => opened(full.minus(&sash.stands_in_the_way()), tall),
        Operation::Projecting { escape_rating: None } => closed(NoOpening::SashInThePath),
        Operation::Projecting {
            escape_rating: Some(rating),
        } => opened(rating.width.clone().into(), rating.height.clone().into()),
        Operation::Fixed => closed(NoOpening::Fixed),
    })
}

fn opened(width: Interval, height: Interval) -> ClearOpening {
    let nothing = if !width.high().is_positive() {
        Some(NoOpening::WidthUsedUp)
    } else if !height.high().is_positive() {
        Some(NoOpening::HeightUsedUp)
    } else {
        None
    };
    ClearOpening {
        width: not_below_nothing(&width),
        height: not_below_nothing(&height),
        nothing,
    }
}

fn closed(reason: NoOpening) -> ClearOpening {
    ClearOpening {
        width: Number::ZERO.into(),
        height: Number::ZERO.into(),
        nothing: Some(reason),
    }
}

fn not_below_nothing(length: &Interval) -> Interval {
    let raised = |end: &Number| end.clone().max(Number::ZERO);
    Interval::between(raised(length.low()), raised(length.high()))
}

impl StoppedSash {
    /// `p + s * cosine + t * sine`.
    fn stands_in_the_way(&self) -> Interval {
        let leaf = self.cosine.scaled(&self.width);
        let edge = self.sine.scaled(&self.thickness);
        leaf.plus(&edge).plus(&Interval::exact(self.hinge_offset.clone()))
    }
}

impl ClearOpening {
    /// Returns the clear area in square inches: width times height.
    ///
    /// # Examples
    /// ## An exact limit is compared before anything is rounded
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::clear_opening::ClearOpening;
    /// let opening = ClearOpening {
    ///     width: Number::from(20).into(),
    ///     height: Number::from(41).into(),
    ///     nothing: None,
    /// };
    /// let limit = Number::from_decimal("820.8"); // 5.7 sq ft
    /// assert_eq!(limit.and_then(|limit| opening.area().at_least(&limit)), Some(false));
    /// ```
    #[must_use]
    pub fn area(&self) -> Interval {
        self.width.times(&self.height)
    }
}

impl NoOpening {
    /// Returns the reason as a person reads it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Fixed => "it does not open",
            Self::SashInThePath => {
                "the open sash lies in the path, and no clear opening is stated for escape"
            }
            Self::WidthUsedUp => "frame, sash and hinge take all of the width",
            Self::HeightUsedUp => "frame and sash take all of the height",
        }
    }
}

impl fmt::Display for NoOpening {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.words())
    }
}
