//! Adds, subtracts, multiplies, divides and negates exact numbers.
//!
//! Every operator takes its sides by reference or by value: `&a + &b`, `a + b`, `a + &b`, `&a + b`.
//!
//! Invariant: the result is exact and in lowest terms; nothing overflows and nothing panics.
//! Cost: constant for parts of a machine word; otherwise that of big integers and one greatest common divisor.

use super::{Number, Parts};
use num_bigint::BigInt;
use std::iter::{Product, Sum};
use std::ops::{Add, AddAssign, Mul, MulAssign, Neg, Sub, SubAssign};

impl Number {
    /// Returns `self / divisor`; `None` when the divisor is zero.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// let area = Number::from(820_i64); // square inches
    /// let square_feet = area.checked_div(&Number::from(144_i64));
    /// assert_eq!(square_feet, Number::ratio(205, 36));
    /// assert_eq!(area.checked_div(&Number::ZERO), None);
    /// ```
    pub fn checked_div(&self, divisor: &Number) -> Option<Number> {
        if let (Parts::Small(a, b), Parts::Small(c, d)) = (&self.0, &divisor.0) {
            let (a, b, c, d) = (i128::from(*a), i128::from(*b), i128::from(*c), i128::from(*d));
            return Number::from_wide(a * d, b * c);
        }
        Number::from_bigs(
            self.numerator() * divisor.denominator(),
            self.denominator() * divisor.numerator(),
        )
    }
}

fn sum(left: &Number, right: &Number) -> Number {
    if let (Parts::Small(a, b), Parts::Small(c, d)) = (&left.0, &right.0) {
        let (a, b, c, d) = (i128::from(*a), i128::from(*b), i128::from(*c), i128::from(*d));
        return if b == d {
            from_positive_wide(a + c, b)
        } else {
            from_positive_wide(a * d + c * b, b * d)
        };
    }
    let (b, d) = (left.denominator(), right.denominator());
    from_positive_bigs(left.numerator() * &d + right.numerator() * &b, b * d)
}

fn product(left: &Number, right: &Number) -> Number {
    if let (Parts::Small(a, b), Parts::Small(c, d)) = (&left.0, &right.0) {
        return from_positive_wide(i128::from(*a) * i128::from(*c), i128::from(*b) * i128::from(*d));
    }
    from_positive_bigs(
        left.numerator() * right.numerator(),
        left.denominator() * right.denominator(),
    )
}

fn difference(left: &Number, right: &Number) -> Number {
    sum(left, &negated(right))
}

fn negated(number: &Number) -> Number {
    match &number.0 {
        Parts::Small(numerator, denominator) => {
            from_positive_wide(-i128::from(*numerator), i128::from(*denominator))
        }
        Parts::Big(parts) => from_positive_bigs(-&parts.0, parts.1.clone()),
    }
}

/// The denominator is a product of denominators, hence never zero: the default is never taken.
fn from_positive_wide(numerator: i128, denominator: i128) -> Number {
    Number::from_wide(numerator, denominator).unwrap_or_default()
}

/// As `from_positive_wide`, for parts of any size.
fn from_positive_bigs(numerator: BigInt, denominator: BigInt) -> Number {
    Number::from_bigs(numerator, denominator).unwrap_or_default()
}

/// Writes one operator four times over the same function, by reference and by value.
macro_rules! operator {
    ($operation:ident, $method:ident, $function:ident) => {
        impl $operation<&Number> for &Number {
            type Output = Number;
            fn $method(self, other: &Number) -> Number {
                $function(self, other)
            }
        }
        impl $operation<Number> for Number {
            type Output = Number;
            fn $method(self, other: Number) -> Number {
                $function(&self, &other)
            }
        }
        impl $operation<&Number> for Number {
            type Output = Number;
            fn $method(self, other: &Number) -> Number {
                $function(&self, other)
            }
        }
        impl $operation<Number> for &Number {
            type Output = Number;
            fn $method(self, other: Number) -> Number {
                $function(self, &other)
            }
        }
    };
}

operator!(Add, add, sum);
operator!(Sub, sub, difference);
operator!(Mul, mul, product);

impl Neg for &Number {
    type Output = Number;
    fn neg(self) -> Number {
        negated(self)
    }
}

impl Neg for Number {
    type Output = Number;
    fn neg(self) -> Number {
        negated(&self)
    }
}

impl AddAssign<&Number> for Number {
    fn add_assign(&mut self, other: &Number) {
        *self = sum(self, other);
    }
}

impl SubAssign<&Number> for Number {
    fn sub_assign(&mut self, other: &Number) {
        *self = difference(self, other);
    }
}

impl MulAssign<&Number> for Number {
    fn mul_assign(&mut self, other: &Number) {
        *self = product(self, other);
    }
}

impl Sum for Number {
    fn sum<I: Iterator<Item = Number>>(numbers: I) -> Number {
        numbers.fold(Number::ZERO, |total, number| total + number)
    }
}

impl<'a> Sum<&'a Number> for Number {
    fn sum<I: Iterator<Item = &'a Number>>(numbers: I) -> Number {
        numbers.fold(Number::ZERO, |total, number| total + number)
    }
}

impl Product for Number {
    fn product<I: Iterator<Item = Number>>(numbers: I) -> Number {
        numbers.fold(Number::ONE, |total, number| total * number)
    }
}
