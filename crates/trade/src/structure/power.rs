//! A number to the power of a fraction, between two bounds.
//!
//! (1/32)^(2/5) is 1/4: the bounds stand around it. (30/1200)^(2/7) is 0.34855...
//!
//! Always holds: the power lies between the bounds. Numbers are counted in steps of 2^-62; every product is rounded to the side
//! that keeps the bound one.
//! Cost: about 40 halvings with about ten products of machine words each; no big integer.
//! LIMIT: the base is from 1/128 to 1 and the whole power at most 8, so that nothing shrinks below what is counted; the bounds
//! are multiples of 2^-40.
//!
//! Source: a bound `x` on the root is one on the power, since x -> x^b grows: x^b <= r^a means x <= r^(a/b).

use astragal_exact::Number;
use num_bigint::BigInt;
use num_traits::ToPrimitive;

use crate::constant::over;
use crate::interval::Interval;

/// The places after the binary point of everything counted here.
const PLACES: u32 = 62;
/// One, counted in steps.
const ONE: u128 = 1 << PLACES;
/// The places of the bounds that are given back.
const BOUND_PLACES: u32 = 40;
/// The places by which a bound is a coarser count.
const STEP: u32 = PLACES - BOUND_PLACES;
/// One, as a count of bound steps.
const MOST: u128 = 1 << BOUND_PLACES;

/// The least base, as its denominator.
const BASE_LEAST: i64 = 128;
/// The largest whole power.
const NUMERATOR_MOST: u32 = 8;

/// Returns where `base` to the power of `numerator / denominator` lies; `None` unless the base is from 1/128 to 1, the
/// numerator at most 8 and the denominator above 0.
pub(super) fn power(base: &Number, numerator: u32, denominator: u32) -> Option<Interval> {
    let in_range = over::<BASE_LEAST>(1) <= *base && *base <= Number::ONE;
    if !in_range || numerator > NUMERATOR_MOST || denominator == 0 {
        return None;
    }
    let scaled = base * &Number::from(BigInt::from(ONE));
    let least = raised(scaled.floor().numerator().to_u128()?, numerator, down);
    let most = raised(scaled.ceil().numerator().to_u128()?, numerator, up);
    let low = last(|x| raised(x, denominator, up) <= least);
    let high = first_above(low, |x| raised(x, denominator, down) >= most);
    Some(Interval::between(bound(low)?, bound(high)?))
}

/// Returns a count of bound steps above `low` for which a condition holds; strides double, and mostly the first one does.
fn first_above(low: u128, holds: impl Fn(u128) -> bool) -> u128 {
    let (mut high, mut stride) = (low + 1, 1);
    while high < MOST && !holds(high << STEP) {
        high += stride;
        stride *= 2;
    }
    high.min(MOST)
}

/// Returns the last count of bound steps, from 0 to one whole, for which a condition holds that holds up to some point and
/// not beyond; 0 when it holds nowhere.
fn last(holds: impl Fn(u128) -> bool) -> u128 {
    let (mut low, mut high) = (0, MOST + 1);
    while high - low > 1 {
        let middle = low.midpoint(high);
        if holds(middle << STEP) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// Returns `base` to a whole power, each product rounded by `rounded`.
fn raised(base: u128, exponent: u32, rounded: fn(u128) -> u128) -> u128 {
    let (mut result, mut square, mut rest) = (ONE, base, exponent);
    while rest > 0 {
        if rest % 2 == 1 {
            result = rounded(result * square);
        }
        rest /= 2;
        if rest > 0 {
            square = rounded(square * square);
        }
    }
    result
}

/// A product of two counts of at most one whole, as a count: rounded down.
fn down(product: u128) -> u128 {
    product >> PLACES
}

/// The same, rounded up.
fn up(product: u128) -> u128 {
    product.div_ceil(ONE)
}

fn bound(steps: u128) -> Option<Number> {
    Number::ratio(i64::try_from(steps).ok()?, 1 << BOUND_PLACES)
}

#[cfg(test)]
mod tests {
    use super::*;
    use num_traits::Pow;
    use proptest::prelude::*;

    fn ratio(numerator: i64, denominator: i64) -> Number {
        Number::ratio(numerator, denominator).expect("above zero")
    }

    fn whole_power(number: &Number, exponent: u32) -> Number {
        let parts = (
            number.numerator().pow(exponent),
            number.denominator().pow(exponent),
        );
        Number::from_bigs(parts.0, parts.1).expect("above zero")
    }

    #[test]
    fn powers_that_are_fractions_lie_between_their_bounds() {
        let rows = [
            ("(1/32)^(2/5)", ratio(1, 32), 2, 5, ratio(1, 4)),
            ("(1/128)^(2/7)", ratio(1, 128), 2, 7, ratio(1, 4)),
            (
                "((7/8)^19)^(4/19)",
                whole_power(&ratio(7, 8), 19),
                4,
                19,
                whole_power(&ratio(7, 8), 4),
            ),
            (
                "((5/6)^23)^(4/23)",
                whole_power(&ratio(5, 6), 23),
                4,
                23,
                whole_power(&ratio(5, 6), 4),
            ),
            ("1^(2/7)", Number::ONE, 2, 7, Number::ONE),
            ("(2/3)^(3/3)", ratio(2, 3), 3, 3, ratio(2, 3)),
            ("(2/3)^0", ratio(2, 3), 0, 3, Number::ONE),
        ];
        for (name, base, numerator, denominator, expected) in rows {
            let found = power(&base, numerator, denominator).expect("a power");
            assert!(found.contains(&expected), "{name}: {found}");
            assert!(found.high() - found.low() < ratio(1, 1 << 38), "{name}: {found}");
        }
    }

    #[test]
    fn what_is_out_of_range_has_no_power() {
        assert_eq!(power(&Number::ZERO, 2, 7), None);
        assert_eq!(power(&Number::from(-1), 2, 7), None);
        assert_eq!(power(&ratio(9, 8), 2, 7), None);
        assert_eq!(power(&ratio(1, 129), 2, 7), None);
        assert!(power(&ratio(1, 128), 8, 7).is_some());
        assert_eq!(power(&ratio(1, 8), 9, 7), None);
        assert_eq!(power(&ratio(1, 8), 2, 0), None);
    }

    proptest! {
        /// Checked with big integers, by another way than the bounds were found: low^b <= base^a <= high^b.
        #[test]
        fn the_bounds_hold_exactly(top in 1_i64..=720, bottom in 1_i64..=14_400, exponent in 0_usize..3) {
            prop_assume!(top <= bottom && top * 100 >= bottom);
            let (numerator, denominator) = [(2, 7), (4, 19), (4, 23)][exponent];
            let base = ratio(top, bottom);
            let found = power(&base, numerator, denominator).expect("a power");
            let target = whole_power(&base, numerator);
            prop_assert!(whole_power(found.low(), denominator) <= target);
            prop_assert!(whole_power(found.high(), denominator) >= target);
            prop_assert!(found.high() - found.low() < ratio(1, 1 << 30));
        }
    }
}
