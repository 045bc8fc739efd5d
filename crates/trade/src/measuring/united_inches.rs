//! United inches: width and height added, by the rule of rounding that is asked for.
//!
//! 35 1/4 x 59 1/4 in is 94 1/2 exactly, 96 when each side first goes up to a whole inch, and 95 when the sum does.
//!
//! Always holds: exact, at most the sum rounded up, at most the sides rounded up first. There is no rule by default.
//! Source: the sum, and 32 + 54 = 86, were read in an installer's how-to page; the two roundings are from memory.

use astragal_exact::Number;

use super::size::Size;
use crate::basis::Basis;
use crate::input::InputError;

/// How united inches are rounded. A price book says which it means.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum UnitedInches {
    /// Width and height added, not rounded.
    Exact,
    /// Each side up to a whole inch, then added.
    EachSideUp,
    /// Added, then up to a whole inch.
    SumUp,
}

impl UnitedInches {
    /// Every rule.
    pub const ALL: [Self; 3] = [Self::Exact, Self::EachSideUp, Self::SumUp];

    /// Returns the united inches of a size by this rule.
    ///
    /// # Errors
    /// [`InputError`] when the width or the height is not above 0 and at most 50 ft.
    ///
    /// # Examples
    /// ## The rule decides
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Size, UnitedInches};
    /// let quarter = Number::ratio(1, 4).ok_or("no number")?;
    /// let size = Size::new(Number::from(35) + &quarter, Number::from(59) + &quarter);
    /// let by = |rule: UnitedInches| rule.of(&size).map(|inches| inches.to_string());
    /// assert_eq!(by(UnitedInches::Exact)?, "94.5");
    /// assert_eq!(by(UnitedInches::EachSideUp)?, "96");
    /// assert_eq!(by(UnitedInches::SumUp)?, "95");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    /// ## A size of nothing has none
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::measuring::{Size, UnitedInches};
    /// assert!(UnitedInches::Exact.of(&Size::new(Number::ZERO, Number::from(60))).is_err());
    /// ```
    pub fn of(self, size: &Size) -> Result<Number, InputError> {
        let Size { width, height } = size.clone().checked()?;
        Ok(match self {
            Self::Exact => width + height,
            Self::EachSideUp => width.ceil() + height.ceil(),
            Self::SumUp => (width + height).ceil(),
        })
    }

    /// Returns where the rule was seen.
    #[must_use]
    pub fn basis(self) -> Basis {
        match self {
            Self::Exact => Basis::second_hand("an installer's how-to page", ""),
            Self::EachSideUp | Self::SumUp => Basis::from_memory("common practice", ""),
        }
    }
}
