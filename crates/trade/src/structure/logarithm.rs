//! How far an area stands between 10 and 500 sq ft on a logarithmic scale, between two bounds.
//!
//! 10 sq ft is 0, 500 is 1, and 15 is log10(1.5) / log10(50) = 0.10364...
//!
//! Always holds: the share lies between the bounds; below 10 sq ft it is 0 and above 500 it is 1, both exact.
//! Cost: 44 squarings of machine words; no big integer but the ones that the area brings.
//!
//! Source: the binary digits of a logarithm by repeated squaring, a classic (no text was looked up). A digit that rounding leaves
//! open ends it, with bounds from the chord and the tangent of the logarithm at 2.

use astragal_exact::Number;
use num_bigint::BigInt;
use num_traits::ToPrimitive;

use crate::constant::over;
use crate::interval::Interval;

/// The places after the binary point of a number whose logarithm is taken.
const PLACES: u32 = 62;
/// One, counted in steps.
const ONE: u128 = 1 << PLACES;
/// The places of a logarithm.
const DIGITS: u32 = 44;
/// The places of a share.
const SHARE_PLACES: u32 = 40;

/// Returns where the logarithmic share of an area between 10 and 500 sq ft lies; the area is in square inches.
///
/// # Cost
/// 90 squarings of machine words; one to two microseconds.
///
/// # Examples
/// ## 15 sq ft
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::structure::area_share;
/// let share = area_share(&Number::from(15 * 144));
/// assert_eq!(share.low().to_fixed(9), "0.103645891");
/// assert_eq!(share.high().to_fixed(9), "0.103645891");
/// ```
/// ## At and beyond the ends it is exact
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// use astragal_trade::structure::area_share;
/// assert_eq!(area_share(&Number::from(1440)), Interval::exact(Number::ZERO));
/// assert_eq!(area_share(&Number::from(72_001)), Interval::exact(Number::ONE));
/// ```
#[must_use]
pub fn area_share(square_inches: &Number) -> Interval {
    let in_tens = square_inches * &over::<1440>(1);
    let fifty = Number::from(50);
    if in_tens <= Number::ONE {
        return Interval::exact(Number::ZERO);
    }
    if in_tens >= fifty {
        return Interval::exact(Number::ONE);
    }
    share(&in_tens, &fifty).unwrap_or_else(|| Interval::between(Number::ZERO, Number::ONE))
}

fn share(number: &Number, whole: &Number) -> Option<Interval> {
    let (part, all) = (binary_logarithm(number)?, binary_logarithm(whole)?);
    let low = (part.low << SHARE_PLACES).checked_div(all.high)?;
    let high = (part.high << SHARE_PLACES).div_ceil(all.low);
    let bound = |steps: u128| Number::ratio(i64::try_from(steps).ok()?, 1 << SHARE_PLACES);
    Some(Interval::between(bound(low)?, bound(high)?))
}

/// A number between two counts of the same step.
struct Bounds {
    low: u128,
    high: u128,
}

/// Returns where the binary logarithm of a number from 1 to 64 lies, in steps of 2^-44; `None` outside.
fn binary_logarithm(number: &Number) -> Option<Bounds> {
    let whole = (0_u32..6).find(|whole| *number < Number::from(2_i64 << whole))?;
    if *number < Number::ONE {
        return None;
    }
    let scaled = number * &Number::from(BigInt::from(ONE >> whole));
    let mut rest = Bounds {
        low: scaled.floor().numerator().to_u128()?,
        high: scaled.ceil().numerator().to_u128()?,
    };
    let mut found = u128::from(whole) << DIGITS;
    for place in (0..DIGITS).rev() {
        let squared = Bounds {
            low: (rest.low * rest.low) >> PLACES,
            high: (rest.high * rest.high).div_ceil(ONE),
        };
        if squared.low >= 2 * ONE {
            found += 1 << place;
            rest = Bounds {
                low: squared.low / 2,
                high: squared.high.div_ceil(2),
            };
        } else if squared.high <= 2 * ONE {
            rest = squared;
        } else {
            return Some(near_two(found, place, &squared));
        }
    }
    Some(Bounds {
        low: found,
        high: found + 1,
    })
}

/// The square lies on both sides of 2: its logarithm is at least its lower bound less 1 (the chord from 1 to 2) and at most
/// its upper bound less 1 (above the tangent at 2).
fn near_two(found: u128, place: u32, squared: &Bounds) -> Bounds {
    Bounds {
        low: found + (((squared.low - ONE) << place) >> PLACES),
        high: found + ((squared.high - ONE) << place).div_ceil(ONE),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use num_traits::Pow;
    use proptest::prelude::*;

    fn bounds(number: &Number) -> (u128, u128) {
        let found = binary_logarithm(number).expect("from 1 to 64");
        (found.low, found.high)
    }

    #[test]
    fn powers_of_two_have_whole_logarithms() {
        for whole in 0_u32..6 {
            let (low, high) = bounds(&Number::from(1_i64 << whole));
            assert_eq!(
                (low, high),
                (u128::from(whole) << DIGITS, (u128::from(whole) << DIGITS) + 1)
            );
        }
        assert!(binary_logarithm(&Number::from(64)).is_none());
        assert!(binary_logarithm(&over::<2>(1)).is_none());
    }

    /// A fraction so near to the root of 2 that its square cannot be told from 2 here: the logarithm is one half, nearly.
    #[test]
    fn a_digit_that_rounding_leaves_open_is_bounded_all_the_same() {
        let root = crate::interval::square_root(&Number::from(2)).expect("a root");
        let half = 1_u128 << (DIGITS - 1);
        // Just below the root it is below one half, just above it above: the bounds must leave room for that.
        let (low, high) = bounds(root.low());
        assert!(low < half && half <= high && high - low <= 4, "{low} {high}");
        let (low, high) = bounds(root.high());
        assert!(low <= half && half < high && high - low <= 4, "{low} {high}");
    }

    #[test]
    fn a_number_just_below_a_power_of_two_has_the_logarithm_of_it_nearly() {
        let just_below = Number::from(4) - Number::from_decimal("1e-30").expect("a number");
        let (low, high) = bounds(&just_below);
        let two = 2_u128 << DIGITS;
        assert!(low <= two && high >= two - 1 && high - low <= 4, "{low} {high}");
    }

    /// 2^(low/16) <= x^... would need roots; instead: 2^k <= x^n, with n a power of two, checked by big integers.
    #[test]
    fn the_first_digits_agree_with_big_integers() {
        let n = 1_u32 << 10;
        for tens in [11_i64, 15, 20, 23, 50, 100, 499] {
            let number = Number::ratio(tens, 10).expect("above zero");
            let (low, high) = bounds(&number);
            let (top, bottom) = (number.numerator().pow(n), number.denominator().pow(n));
            // floor(n log2 x): the largest k with 2^k <= x^n.
            let quotient: BigInt = top / bottom;
            let floor = u128::from(quotient.bits() - 1);
            let scaled = |value: u128| value >> (DIGITS - 10);
            assert!(scaled(low) <= floor && floor <= scaled(high), "{tens}");
        }
    }

    proptest! {
        /// log(x) + log(y) = log(xy): the intervals overlap.
        #[test]
        fn products_have_sums(x in 1_i64..=56, y in 1_i64..=56) {
            let number = |value: i64| Number::ratio(value + 7, 8).expect("above zero");
            let (one, other) = (bounds(&number(x)), bounds(&number(y)));
            let product = number(x) * number(y);
            prop_assume!(product < Number::from(64));
            let both = bounds(&product);
            prop_assert!(both.0 <= one.1 + other.1 && one.0 + other.0 <= both.1);
            prop_assert!(both.1 - both.0 <= 4);
        }

        #[test]
        fn a_larger_area_has_no_smaller_share(area in 1_i64..90_000) {
            let (one, next) = (area_share(&Number::from(area)), area_share(&Number::from(area + 1)));
            prop_assert!(one.low() <= next.high());
            prop_assert!(!one.low().is_negative() && *one.high() <= Number::ONE);
            prop_assert!(one.high() - one.low() < over::<1_000_000_000>(1));
        }
    }
}
