//! Whether a rating looks unusual for the glass it is said to be of, so that somebody looks at the label again.
//!
//! Double low-e with argon usually has U 0.26 to 0.32; one of 0.62 is likely a slip.
//!
//! Always holds: it is a hint and decides nothing; a value on the ends of a range is usual.
//!
//! Source: from memory, no source. Every answer is flagged so.

use astragal_exact::Number;

use super::rating;
use crate::constant::over;
use crate::{Basis, InputError};

/// Where the ranges stand.
pub const BASIS: Basis = Basis::from_memory("common practice, no source", "");

/// A kind of glazing with its frame.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Glazing {
    /// Single clear glass in aluminium.
    SingleClearAluminium,
    /// Single clear glass in wood or vinyl.
    SingleClear,
    /// Double clear glass in wood or vinyl.
    DoubleClear,
    /// Double with one low-emissivity coating and argon, in vinyl.
    DoubleLowEmissivityArgon,
    /// The same with a second coating on the room side.
    DoubleWithInteriorCoating,
    /// Triple with two coatings and argon.
    TripleTwoCoatingsArgon,
}

/// A hint that a value is out of the ordinary.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LooksUnusual {
    /// The least that is usual.
    pub usual_least: Number,
    /// The most that is usual.
    pub usual_most: Number,
    /// Where the range stands.
    pub basis: Basis,
}

impl LooksUnusual {
    /// What to tell a person.
    #[must_use]
    pub fn text(&self) -> String {
        format!(
            "looks unusual: {} to {} would be usual (from memory); check the label",
            self.usual_least.to_fixed(2),
            self.usual_most.to_fixed(2)
        )
    }
}

/// Returns a hint when a U-factor is outside of what is usual for a kind of glazing; nothing when it is inside.
///
/// # Errors
/// [`InputError`] for a number that is no U-factor.
///
/// # Examples
/// ## A slip in the second decimal
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::energy::label_range::{Glazing, u_factor};
/// let hint = u_factor(Glazing::DoubleLowEmissivityArgon, &Number::from_decimal("0.62").unwrap_or_default())?;
/// let expected = "looks unusual: 0.26 to 0.32 would be usual (from memory); check the label";
/// assert_eq!(hint.map(|hint| hint.text()).as_deref(), Some(expected));
/// let usual = Number::from_decimal("0.32").unwrap_or_default();
/// assert_eq!(u_factor(Glazing::DoubleLowEmissivityArgon, &usual)?, None);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn u_factor(glazing: Glazing, value: &Number) -> Result<Option<LooksUnusual>, InputError> {
    rating::u_factor(value)?;
    let (least, most) = glazing.usual_u_hundredths();
    let (usual_least, usual_most) = (over::<100>(least), over::<100>(most));
    let is_usual = usual_least <= *value && *value <= usual_most;
    Ok((!is_usual).then_some(LooksUnusual {
        usual_least,
        usual_most,
        basis: BASIS,
    }))
}

impl Glazing {
    /// Every kind.
    pub const ALL: [Self; 6] = [
        Self::SingleClearAluminium,
        Self::SingleClear,
        Self::DoubleClear,
        Self::DoubleLowEmissivityArgon,
        Self::DoubleWithInteriorCoating,
        Self::TripleTwoCoatingsArgon,
    ];

    fn usual_u_hundredths(self) -> (i64, i64) {
        match self {
            Self::SingleClearAluminium => (110, 130),
            Self::SingleClear => (80, 90),
            Self::DoubleClear => (45, 55),
            Self::DoubleLowEmissivityArgon => (26, 32),
            Self::DoubleWithInteriorCoating => (22, 26),
            Self::TripleTwoCoatingsArgon => (17, 24),
        }
    }
}
