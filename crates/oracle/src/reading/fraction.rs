//! Fractions of the oracle: another library's numbers, rounded by whole-number arithmetic.
//!
//! Always holds: nothing here uses the arithmetic of the model's numbers; they are only taken apart.

use astragal_model::Number;
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, Zero};

/// Which multiple of a step is meant.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Way {
    /// The greatest that is not above.
    Down,
    /// The least that is not below.
    Up,
    /// The nearest; a half goes away from zero.
    Nearest,
}

/// The same number in the oracle's arithmetic.
pub(crate) fn fraction(number: &Number) -> BigRational {
    BigRational::new(number.numerator(), number.denominator())
}

/// A whole number.
pub(crate) fn whole(number: i64) -> BigRational {
    BigRational::from_integer(BigInt::from(number))
}

/// The multiple of `step` that is meant; `None` unless the step is above zero.
pub(crate) fn multiple(of: &BigRational, step: &BigRational, way: Way) -> Option<BigRational> {
    if !step.is_positive() {
        return None;
    }
    // of / step = top / bottom, with bottom above zero
    let top = of.numer() * step.denom();
    let bottom = of.denom() * step.numer();
    let count = match way {
        Way::Down => below(&top, &bottom),
        Way::Up => -below(&-top, &bottom),
        Way::Nearest => {
            let half_up = below(
                &(BigInt::from(2) * top.abs() + &bottom),
                &(BigInt::from(2) * &bottom),
            );
            if top.is_negative() { -half_up } else { half_up }
        }
    };
    Some(step * BigRational::from_integer(count))
}

/// The greatest whole number that is not above `top / bottom`.
fn below(top: &BigInt, bottom: &BigInt) -> BigInt {
    let towards_zero = top / bottom;
    if top.is_negative() && !(top % bottom).is_zero() {
        towards_zero - 1
    } else {
        towards_zero
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ratio(top: i64, bottom: i64) -> BigRational {
        BigRational::new(BigInt::from(top), BigInt::from(bottom))
    }

    #[test]
    fn down_goes_towards_minus_infinity_and_a_half_away_from_zero() {
        for (of, step, down, up, nearest) in [
            (ratio(7, 1), ratio(4, 1), 4, 8, 8),
            (ratio(-7, 1), ratio(4, 1), -8, -4, -8),
            (ratio(6, 1), ratio(4, 1), 4, 8, 8),
            (ratio(-6, 1), ratio(4, 1), -8, -4, -8),
            (ratio(5, 1), ratio(4, 1), 4, 8, 4),
            (ratio(8, 1), ratio(4, 1), 8, 8, 8),
            (ratio(0, 1), ratio(4, 1), 0, 0, 0),
        ] {
            assert_eq!(multiple(&of, &step, Way::Down), Some(whole(down)), "{of}");
            assert_eq!(multiple(&of, &step, Way::Up), Some(whole(up)), "{of}");
            assert_eq!(multiple(&of, &step, Way::Nearest), Some(whole(nearest)), "{of}");
        }
        assert_eq!(multiple(&whole(1), &whole(0), Way::Down), None);
        assert_eq!(multiple(&whole(1), &whole(-1), Way::Down), None);
    }
}
