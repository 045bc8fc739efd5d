//! Brings an exact number to a multiple of a step: down, up, or to the nearest.
//!
//! 35-15/16 less 1/4 is 35-11/16; down to a step of 1/8 that is 35-5/8, down to 1/4 it is 35-1/2. Measures go
//! down (a window that is too small fits, one that is too large does not), united inches go up, money goes to
//! the nearest.
//!
//! Invariant: the result is a multiple of the step, less than one step away, and never rounded twice.
//! Cost: one division and one multiplication.
//!
//! Source: rounding down to 1/8 in is common practice in measuring guides; half away from zero is what the
//! Streamlined Sales and Use Tax Agreement, section 324, asks of tax ("up when the third decimal is greater than four").

use super::{Number, Parts};
use num_bigint::BigInt;
use num_integer::Integer;

impl Number {
    /// Returns the largest whole number that is not above this one.
    pub fn floor(&self) -> Number {
        match &self.0 {
            Parts::Small(numerator, denominator) => Number::from(numerator.div_euclid(*denominator)),
            Parts::Big(parts) => Number::from(parts.0.div_floor(&parts.1)),
        }
    }

    /// Returns the smallest whole number that is not below this one.
    pub fn ceil(&self) -> Number {
        -(-self).floor()
    }

    /// Returns the nearest whole number; a half goes away from zero.
    pub fn round(&self) -> Number {
        let size = self.abs();
        let doubled: BigInt = size.numerator() * 2 + size.denominator();
        let nearest = Number::from(doubled.div_floor(&(size.denominator() * BigInt::from(2))));
        if self.is_negative() { -nearest } else { nearest }
    }

    /// Returns the largest multiple of `step` that is not above this number; `None` unless the step is above 0.
    ///
    /// # Examples
    /// A measure, less its clearance, down to an eighth:
    /// ```
    /// use astragal_exact::number::Number;
    /// let eighth = Number::ratio(1, 8).ok_or("zero denominator")?;
    /// let opening = Number::ratio(575, 16).ok_or("zero denominator")?; // 35 15/16
    /// let clearance = Number::ratio(1, 4).ok_or("zero denominator")?;
    /// assert_eq!((opening - clearance).floor_to(&eighth), Number::ratio(285, 8)); // 35 5/8
    /// # Ok::<(), &str>(())
    /// ```
    /// Down means towards minus infinity, and a step of nothing has no multiples to go to:
    /// ```
    /// use astragal_exact::number::Number;
    /// let number = Number::from(-7_i64);
    /// assert_eq!(number.floor_to(&Number::from(4_i64)), Some(Number::from(-8_i64)));
    /// assert_eq!(number.floor_to(&Number::ZERO), None);
    /// ```
    pub fn floor_to(&self, step: &Number) -> Option<Number> {
        self.in_steps(step).map(|steps| steps.floor() * step)
    }

    /// Returns the smallest multiple of `step` that is not below this number; `None` unless the step is above 0.
    pub fn ceil_to(&self, step: &Number) -> Option<Number> {
        self.in_steps(step).map(|steps| steps.ceil() * step)
    }

    /// Returns the nearest multiple of `step`, a half away from zero; `None` unless the step is above 0.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// let cent = Number::ratio(1, 100).ok_or("zero denominator")?;
    /// let amount = Number::from_decimal("-1.005").ok_or("not a decimal")?;
    /// assert_eq!(amount.round_to(&cent), Number::from_decimal("-1.01"));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn round_to(&self, step: &Number) -> Option<Number> {
        self.in_steps(step).map(|steps| steps.round() * step)
    }

    /// Says whether the number is a whole number of steps; false unless the step is above 0.
    pub fn is_multiple_of(&self, step: &Number) -> bool {
        self.in_steps(step).is_some_and(|steps| steps.is_integer())
    }

    fn in_steps(&self, step: &Number) -> Option<Number> {
        if step.is_positive() {
            self.checked_div(step)
        } else {
            None
        }
    }
}
