//! What a window may leak, how that is tested, and which figures of leakage may stand beside each other.
//!
//! A window of class R and one of class AW both leak 0.3 cfm by the square foot: the second was tested at a higher pressure, and is the
//! tighter one. The figures cannot be compared.
//!
//! Always holds: no pressure of the air test is known here; that of class AW is known to be higher, and no more.
//!
//! Source: NAFS in a secondary text, which has 0.3 cfm/ft2 for most windows and a higher pressure for class AW; ASTM E283 as the method
//! in secondary texts. The pressures themselves, and the limit of the few other windows, were recalled and are not encoded.

use astragal_exact::Number;

use super::Class;
use crate::Basis;
use crate::constant::over;

/// Where the most that a window may leak stands, and that class AW is tested at a higher pressure.
pub const AIR_BASIS: Basis = Basis::second_hand("NAFS", "air leakage");

/// How leakage is tested.
pub const AIR_TEST_METHOD: &str = "ASTM E283";

/// Where the method stands.
pub const AIR_TEST_BASIS: Basis = Basis::second_hand("NAFS", "air leakage, test method");

/// Returns 0.3 cubic feet by minute and square foot, the most that most windows may leak ([`AIR_BASIS`]).
#[must_use]
pub fn air_leakage_most() -> Number {
    over::<10>(3)
}

/// Returns 1.5 litres by second and square metre, the same as the standard's metric column prints it: no conversion.
#[must_use]
pub fn air_leakage_most_litres_printed() -> Number {
    over::<10>(15)
}

/// Says whether figures of leakage of two classes come from one test pressure, so that they may be compared ([`AIR_BASIS`]).
///
/// # Examples
/// ## The same figure is not the same leakage
/// ```
/// use astragal_trade::structure::{Class, air_leakage_compares};
/// assert!(air_leakage_compares(Class::R, Class::CW));
/// assert!(!air_leakage_compares(Class::R, Class::AW));
/// ```
#[must_use]
pub fn air_leakage_compares(one: Class, other: Class) -> bool {
    one.is_air_tested_higher() == other.is_air_tested_higher()
}

impl Class {
    /// Says whether units of this class are tested for air at a higher pressure than those of the others ([`AIR_BASIS`]).
    #[must_use]
    pub fn is_air_tested_higher(self) -> bool {
        match self {
            Self::R | Self::LC | Self::CW => false,
            Self::AW => true,
        }
    }
}
