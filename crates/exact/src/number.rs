//! An exact number: every length, area, amount and percentage of the engine is one.
//!
//! A `Number` is a fraction in lowest terms with a positive denominator. `35 5/8` is 285/8, `0.1` is 1/10, and
//! a third of a dollar stays a third until something asks for it to be rounded.
//!
//! Invariant: one value has one representation (lowest terms, positive denominator, two machine words whenever
//! both parts fit), so equality and hashing by parts are equality and hashing by value.
//! Cost: parts that fit a machine word are worked in 128 bits, which never overflow; larger ones in big
//! integers, whose size only memory limits: a caller that lets others choose the numbers watches `bits`.

mod arithmetic;
mod step;
mod text;

pub use text::NumberTextError;

use num_bigint::{BigInt, Sign};
use num_integer::Integer;
use num_traits::{One, Signed, ToPrimitive, Zero};
use std::cmp::Ordering;

/// Holds one exact rational number.
///
/// It is compared by value, never rounded, and prints as an exact decimal when it has one (`35.625`), otherwise
/// as a fraction (`1/3`).
///
/// # Examples
/// Numbers are exact where binary fractions are not:
/// ```
/// use astragal_exact::number::Number;
/// let tenth = Number::from_decimal("0.1").ok_or("not a decimal")?;
/// let fifth = Number::from_decimal("0.2").ok_or("not a decimal")?;
/// assert_eq!((tenth + fifth).to_string(), "0.3");
/// # Ok::<(), &str>(())
/// ```
/// There is no division by zero to trip over:
/// ```
/// use astragal_exact::number::Number;
/// assert_eq!(Number::ratio(1, 0), None);
/// assert_eq!(Number::ONE.checked_div(&Number::ZERO), None);
/// ```
#[derive(Clone, PartialEq, Eq, Hash)]
pub struct Number(Parts);

/// INVARIANT: lowest terms, denominator above zero; `Small` whenever both parts fit an `i64`.
#[derive(Clone, PartialEq, Eq, Hash)]
enum Parts {
    Small(i64, i64),
    Big(Box<(BigInt, BigInt)>),
}

impl Number {
    /// Nothing: 0.
    pub const ZERO: Number = Number(Parts::Small(0, 1));
    /// One whole: 1.
    pub const ONE: Number = Number(Parts::Small(1, 1));

    /// Returns `numerator / denominator`; `None` when the denominator is zero.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// assert_eq!(Number::ratio(-6, -8), Number::ratio(3, 4));
    /// assert_eq!(Number::ratio(3, 0), None);
    /// ```
    pub fn ratio(numerator: i64, denominator: i64) -> Option<Number> {
        Number::from_wide(i128::from(numerator), i128::from(denominator))
    }

    /// Returns `numerator / denominator`, however large the parts; `None` when the denominator is zero.
    pub fn from_bigs(numerator: BigInt, denominator: BigInt) -> Option<Number> {
        if denominator.is_zero() {
            return None;
        }
        let divisor = numerator.gcd(&denominator);
        let divisor = if denominator.is_negative() {
            -divisor
        } else {
            divisor
        };
        let (numerator, denominator) = (numerator / &divisor, denominator / &divisor);
        Some(Number(match (numerator.to_i64(), denominator.to_i64()) {
            (Some(small_numerator), Some(small_denominator)) => {
                Parts::Small(small_numerator, small_denominator)
            }
            _ => Parts::Big(Box::new((numerator, denominator))),
        }))
    }

    /// Returns the numerator in lowest terms; it carries the sign.
    pub fn numerator(&self) -> BigInt {
        match &self.0 {
            Parts::Small(numerator, _) => BigInt::from(*numerator),
            Parts::Big(parts) => parts.0.clone(),
        }
    }

    /// Returns the denominator in lowest terms; it is above zero.
    pub fn denominator(&self) -> BigInt {
        match &self.0 {
            Parts::Small(_, denominator) => BigInt::from(*denominator),
            Parts::Big(parts) => parts.1.clone(),
        }
    }

    /// Returns the size of the larger part in bits, without the sign; 0 has a denominator of one bit.
    pub fn bits(&self) -> u64 {
        match &self.0 {
            Parts::Small(numerator, denominator) => {
                let zeros = (numerator.unsigned_abs() | denominator.unsigned_abs()).leading_zeros();
                u64::from(u64::BITS - zeros)
            }
            Parts::Big(parts) => parts.0.bits().max(parts.1.bits()),
        }
    }

    /// Says whether the number is 0.
    pub fn is_zero(&self) -> bool {
        matches!(self.0, Parts::Small(0, _))
    }

    /// Says whether the number is below 0.
    pub fn is_negative(&self) -> bool {
        match &self.0 {
            Parts::Small(numerator, _) => *numerator < 0,
            Parts::Big(parts) => parts.0.is_negative(),
        }
    }

    /// Says whether the number is above 0.
    pub fn is_positive(&self) -> bool {
        !self.is_zero() && !self.is_negative()
    }

    /// Says whether the number is whole.
    pub fn is_integer(&self) -> bool {
        match &self.0 {
            Parts::Small(_, denominator) => *denominator == 1,
            Parts::Big(parts) => parts.1.is_one(),
        }
    }

    /// Returns -1, 0 or 1, as the number is below, at or above 0.
    pub fn signum(&self) -> i8 {
        match &self.0 {
            Parts::Small(numerator, _) => match numerator.cmp(&0) {
                Ordering::Less => -1,
                Ordering::Equal => 0,
                Ordering::Greater => 1,
            },
            Parts::Big(parts) => match parts.0.sign() {
                Sign::Minus => -1,
                Sign::NoSign => 0,
                Sign::Plus => 1,
            },
        }
    }

    /// Returns the number without its sign.
    pub fn abs(&self) -> Number {
        if self.is_negative() { -self } else { self.clone() }
    }

    /// Returns the number as an `i64`; `None` when it is not whole or does not fit.
    pub fn to_i64(&self) -> Option<i64> {
        match &self.0 {
            Parts::Small(numerator, 1) => Some(*numerator),
            _ => None,
        }
    }

    /// `None` when the denominator is zero.
    ///
    /// Sums and products of two machine-word fractions stay below 2^127 in both parts, so callers never overflow.
    fn from_wide(numerator: i128, denominator: i128) -> Option<Number> {
        if let (Ok(whole), 1) = (i64::try_from(numerator), denominator) {
            return Some(Number(Parts::Small(whole, 1)));
        }
        let divisor = greatest_common_divisor(numerator.unsigned_abs(), denominator.unsigned_abs());
        let small = i128::try_from(divisor).ok().and_then(|divisor| {
            let divisor = if denominator < 0 {
                divisor.checked_neg()?
            } else {
                divisor
            };
            let numerator = numerator.checked_div(divisor)?;
            let denominator = denominator.checked_div(divisor)?;
            (denominator > 0).then_some(())?;
            Some(Parts::Small(
                i64::try_from(numerator).ok()?,
                i64::try_from(denominator).ok()?,
            ))
        });
        match small {
            Some(parts) => Some(Number(parts)),
            None => Number::from_bigs(BigInt::from(numerator), BigInt::from(denominator)),
        }
    }
}

impl Default for Number {
    fn default() -> Number {
        Number::ZERO
    }
}

impl From<i64> for Number {
    fn from(whole: i64) -> Number {
        Number(Parts::Small(whole, 1))
    }
}

impl From<i32> for Number {
    fn from(whole: i32) -> Number {
        Number::from(i64::from(whole))
    }
}

impl From<u32> for Number {
    fn from(whole: u32) -> Number {
        Number::from(i64::from(whole))
    }
}

impl From<BigInt> for Number {
    fn from(whole: BigInt) -> Number {
        Number(match whole.to_i64() {
            Some(small) => Parts::Small(small, 1),
            None => Parts::Big(Box::new((whole, BigInt::one()))),
        })
    }
}

impl Ord for Number {
    fn cmp(&self, other: &Number) -> Ordering {
        if let (Parts::Small(a, b), Parts::Small(c, d)) = (&self.0, &other.0) {
            return (i128::from(*a) * i128::from(*d)).cmp(&(i128::from(*c) * i128::from(*b)));
        }
        match self.signum().cmp(&other.signum()) {
            Ordering::Equal => {
                (self.numerator() * other.denominator()).cmp(&(other.numerator() * self.denominator()))
            }
            unequal => unequal,
        }
    }
}

impl PartialOrd for Number {
    fn partial_cmp(&self, other: &Number) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// Most parts fit 64 bits, where the algorithm is several times faster.
fn greatest_common_divisor(left: u128, right: u128) -> u128 {
    match (u64::try_from(left), u64::try_from(right)) {
        (Ok(left), Ok(right)) => u128::from(left.gcd(&right)),
        _ => left.gcd(&right),
    }
}

#[cfg(test)]
mod tests;
