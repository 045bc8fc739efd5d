//! Whether a unit is within the size that its grade was tested at.
//!
//! Tested at 36 x 60 in: 36 x 60 is within, 36-1/8 x 48 is not, though its area is smaller.
//!
//! Always holds: wider **or** taller than tested is not qualified; units that are joined are rated as an assembly, and the grade of
//! one of them decides nothing about it.
//!
//! Source: NAFS, the largest size tested, read in an excerpt of the 2008 edition and in a proposal of 2017.
//! The other end, the least size that may be tested, is [`is_gateway_size`](super::is_gateway_size).

use crate::measuring::Size;
use crate::{Basis, Fact, InputError, Missing, Truth};

/// Where the rule stands.
pub const SIZE_BASIS: Basis = Basis::second_hand("NAFS", "largest size tested");

/// Returns whether a unit's own size is within the tested one. Equal is within.
///
/// A unit that is joined to others cannot be decided: the grade of the assembly is missing, whatever the unit's own.
///
/// # Errors
/// [`InputError`] for a width or height that is none.
///
/// # Source
/// [`SIZE_BASIS`].
///
/// # Examples
/// ## Wider but smaller
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Truth;
/// use astragal_trade::structure::{Size, size_is_qualified};
/// let size = |width: i64, height: i64| Size { width: Number::from(width), height: Number::from(height) };
/// let tested = size(36, 60);
/// assert_eq!(size_is_qualified(&size(36, 60), Some(&tested), Some(false))?, Truth::Yes);
/// assert_eq!(size_is_qualified(&size(37, 48), Some(&tested), Some(false))?, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## Joined units
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::structure::{Size, size_is_qualified};
/// let size = Size { width: Number::from(36), height: Number::from(60) };
/// let answer = size_is_qualified(&size, Some(&size), Some(true))?;
/// assert_eq!(answer.missing(), [Fact::AssemblyGrade].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn size_is_qualified(
    unit: &Size,
    tested: Option<&Size>,
    mulled: Option<bool>,
) -> Result<Truth, InputError> {
    unit.check()?;
    if let Some(tested) = tested {
        tested.check()?;
    }
    match mulled {
        Some(true) => return Ok(Truth::Unknown(Missing::from([Fact::AssemblyGrade]))),
        Some(false) => {}
        None => {
            let tested = tested.is_none().then_some(Fact::TestedSize);
            return Ok(Truth::Unknown([Fact::Mulled].into_iter().chain(tested).collect()));
        }
    }
    Ok(Truth::of(Fact::TestedSize, tested, |tested| {
        unit.width <= tested.width && unit.height <= tested.height
    }))
}
