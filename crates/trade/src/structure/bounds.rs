//! Numbers of at least 0 between two counts of 2^-40, for the last few products of a pressure.
//!
//! 0.7 lies between 769658139443 and 769658139444 steps.
//!
//! Always holds: each operation rounds the lower count down and the upper one up, so that the exact result stays between them.
//! Cost: a few machine words each. The same in exact fractions took ten times as long, for their common divisors.
//! LIMIT: numbers below 2^23, so that a product of two counts fits 128 bits.

use astragal_exact::Number;
use num_bigint::BigInt;
use num_integer::Integer;
use num_traits::ToPrimitive;

use crate::interval::Interval;

/// The places after the binary point.
const PLACES: u32 = 40;
/// The largest count.
const MOST: u128 = 1 << (PLACES + 23);

/// Two counts of 2^-40. INVARIANT: `low` is at most `high`, which is at most [`MOST`].
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Bounds {
    low: u128,
    high: u128,
}

impl Bounds {
    /// Returns the counts around an interval; `None` below 0 or above the limit.
    pub(super) fn around(interval: &Interval) -> Option<Self> {
        let low = scaled(interval.low()).0;
        let (floor, is_whole) = scaled(interval.high());
        let high = if is_whole { floor } else { floor + 1 };
        Self {
            low: low.to_u128()?,
            high: high.to_u128()?,
        }
        .limited()
    }

    /// Returns where the product lies; `None` above the limit.
    pub(super) fn times(self, other: Self) -> Option<Self> {
        Self {
            low: (self.low * other.low) >> PLACES,
            high: (self.high * other.high).div_ceil(1 << PLACES),
        }
        .limited()
    }

    /// Returns where the sum lies; `None` above the limit.
    pub(super) fn plus(self, other: Self) -> Option<Self> {
        Self {
            low: self.low + other.low,
            high: self.high + other.high,
        }
        .limited()
    }

    /// Returns where the difference lies; `None` unless it is at least 0 throughout.
    pub(super) fn minus(self, other: Self) -> Option<Self> {
        Some(Self {
            low: self.low.checked_sub(other.high)?,
            high: self.high.checked_sub(other.low)?,
        })
    }

    /// Returns the interval around it with ends in millionths.
    pub(super) fn in_millionths(self) -> Option<Interval> {
        const MILLION: u128 = 1_000_000;
        let end = |count: u128| Number::ratio(i64::try_from(count).ok()?, 1_000_000);
        let low = end((self.low * MILLION) >> PLACES)?;
        let high = end((self.high * MILLION).div_ceil(1 << PLACES))?;
        Some(Interval::between(low, high))
    }

    fn limited(self) -> Option<Self> {
        (self.high <= MOST).then_some(self)
    }
}

/// The whole counts in a number, and whether nothing is left over.
fn scaled(number: &Number) -> (BigInt, bool) {
    let (count, rest) = (number.numerator() << PLACES).div_mod_floor(&number.denominator());
    (count, rest == BigInt::ZERO)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn exact(number: &Number) -> Bounds {
        Bounds::around(&Interval::exact(number.clone())).expect("in range")
    }

    #[test]
    fn what_is_out_of_range_has_no_bounds() {
        let most = Number::from(1_i64 << 23);
        let below = Interval::exact(Number::from(-1));
        let above = Interval::exact(&most + &Number::ONE);
        assert!(Bounds::around(&Interval::exact(most.clone())).is_some());
        assert_eq!((Bounds::around(&below), Bounds::around(&above)), (None, None));
        assert_eq!(exact(&most).times(exact(&Number::from(2))), None);
        assert_eq!(exact(&most).plus(exact(&most)), None);
        assert_eq!(exact(&Number::ONE).minus(exact(&Number::from(2))), None);
    }

    #[test]
    fn what_is_a_count_is_exact() {
        let half = Number::ratio(1, 2).expect("above zero");
        let quarter = exact(&half).times(exact(&half)).and_then(Bounds::in_millionths);
        assert_eq!(quarter, Number::from_decimal("0.25").map(Interval::exact));
    }

    proptest! {
        #[test]
        fn exact_results_lie_between_the_bounds(
            a in 1_i64..100_000, b in 1_i64..1_000, c in 1_i64..100_000, d in 1_i64..1_000
        ) {
            let (one, other) = (Number::ratio(a, b).expect("above"), Number::ratio(c, d).expect("above"));
            let (x, y) = (exact(&one), exact(&other));
            if let Some(product) = x.times(y).and_then(Bounds::in_millionths) {
                prop_assert!(product.contains(&(&one * &other)));
            }
            let sum = x.plus(y).and_then(Bounds::in_millionths).expect("a sum");
            prop_assert!(sum.contains(&(&one + &other)));
            if let Some(difference) = x.minus(y).and_then(Bounds::in_millionths) {
                prop_assert!(difference.contains(&(&one - &other)));
            }
        }
    }
}
