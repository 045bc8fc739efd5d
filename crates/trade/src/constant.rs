//! Fractions that the code itself writes down.
//!
//! `over::<100>(22)` is 0.22. The denominator is checked when the crate is built, so that no constant can fail.

use astragal_exact::Number;

/// Returns `numerator / DENOMINATOR`; a denominator of 0 does not compile.
pub(crate) fn over<const DENOMINATOR: i64>(numerator: i64) -> Number {
    const { assert!(DENOMINATOR != 0, "a fraction has a denominator") };
    Number::ratio(numerator, DENOMINATOR).unwrap_or_default()
}
