//! The federal standard for glass in doors, enclosures and the like: what it covers, what its categories are hit with, whose tests.
//!
//! A storm door is covered; a lite of Category II takes 400 foot-pounds.
//!
//! Always holds: each value names its standing.
//! Source: 16 CFR 1201, what it covers read in a copy of its text, Category II in texts that quote it, Category I from memory; whose tests
//! it takes since 22 April 2016, read in the Federal Register.

use jiff::civil::{Date, date};

use super::notes::Category;
use crate::basis::Basis;

/// What 16 CFR 1201 covers ([`COVERED_BASIS`]).
pub const COVERED: [&str; 4] = [
    "storm doors",
    "doors",
    "bath and shower doors and enclosures",
    "sliding doors of the patio kind",
];

/// Where it stands what is covered.
pub const COVERED_BASIS: Basis = Basis::verified("16 CFR 1201", "scope");

/// Whose tests they are.
pub const TEST_STANDARD: &str = "ANSI Z97.1-2015";

/// The day from which the tests are those of [`TEST_STANDARD`].
pub const TESTS_SINCE: Date = date(2016, 4, 22);

/// Where that stands.
pub const TESTS_BASIS: Basis = Basis::verified("Federal Register 2016-06523", "");

impl Category {
    /// Returns what a lite of this category is hit with, in foot-pounds, and where that was seen.
    ///
    /// # Examples
    /// ## Category II was seen quoted
    /// ```
    /// use astragal_trade::Status;
    /// use astragal_trade::safety_glazing::Category;
    /// let (foot_pounds, basis) = Category::Two.foot_pounds();
    /// assert_eq!((foot_pounds, basis.status), (400, Status::SecondHand));
    /// ```
    /// ## Category I is from memory
    /// ```
    /// use astragal_trade::Status;
    /// use astragal_trade::safety_glazing::Category;
    /// let (foot_pounds, basis) = Category::One.foot_pounds();
    /// assert_eq!((foot_pounds, basis.status), (150, Status::FromMemory));
    /// ```
    #[must_use]
    pub fn foot_pounds(self) -> (i64, Basis) {
        match self {
            Self::One => (150, Basis::from_memory("16 CFR 1201", "Category I")),
            Self::Two => (400, Basis::second_hand("16 CFR 1201", "Category II")),
        }
    }
}
