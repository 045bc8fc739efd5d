//! Numbers that are known only to lie between two ends, both exact and both included.
//!
//! The diagonal of 36 x 60 in is the root of 4896, which no fraction is: it lies between 69.971422 and 69.971423. Whether it
//! is at most 70 is decided; whether it is at most 69.9714225 is not, and [`Interval::at_most`] says so.
//!
//! Always holds: the lower end is at most the upper one; every operation gives an interval that has in it each result of
//! numbers from the intervals it was given. Nothing is ever rounded inwards.
//! Cost: a few operations on exact numbers each; `square_root` one integer root.
//! LIMIT: a root is worked to [`SQUARE_ROOT_PLACES`] decimal places.
//!
//! Source: interval arithmetic as in R. E. Moore, Interval Analysis, 1966 (from memory); ends are exact fractions, so that only
//! roots are rounded.

use std::fmt;

use astragal_exact::Number;
use num_bigint::BigInt;
use num_traits::Pow;

/// LIMIT: the decimal places to which a root that is no fraction is bracketed.
pub const SQUARE_ROOT_PLACES: u32 = 20;

/// Holds two exact ends between which a number lies, both included.
///
/// # Examples
/// ## A comparison that both ends agree on is decided
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::square_root;
/// let diagonal = square_root(&Number::from(36 * 36 + 60 * 60)).ok_or("no root")?;
/// assert_eq!(diagonal.at_most(&Number::from(70)), Some(true));
/// assert_eq!(diagonal.at_most(&Number::from(69)), Some(false));
/// # Ok::<(), &str>(())
/// ```
/// ## One that lies between the ends is not
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::Interval;
/// let reading = Interval::around(&Number::from(36), &Number::ONE);
/// assert_eq!(reading.at_most(&Number::from(36)), None);
/// ```
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Interval {
    /// INVARIANT: at most `high`.
    low: Number,
    high: Number,
}

/// Returns an interval that has the root of `number` in it; `None` for a number below 0.
///
/// The root of a squared fraction is that fraction, both ends alike. Any other is bracketed by two decimals of
/// [`SQUARE_ROOT_PLACES`] places that are one step apart.
///
/// # Cost
/// One integer root of about the digits of `number` and twice those of the places.
///
/// # Examples
/// ## A root that is a fraction is exact
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::{Interval, square_root};
/// let diagonal = square_root(&Number::from(30 * 30 + 40 * 40));
/// assert_eq!(diagonal, Some(Interval::exact(Number::from(50))));
/// ```
/// ## Below nothing there is none
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::interval::square_root;
/// assert_eq!(square_root(&Number::from(-1)), None);
/// ```
#[must_use]
pub fn square_root(number: &Number) -> Option<Interval> {
    if number.is_negative() {
        return None;
    }
    let (numerator, denominator) = (number.numerator(), number.denominator());
    let (top, bottom) = (numerator.sqrt(), denominator.sqrt());
    if &top * &top == numerator && &bottom * &bottom == denominator {
        return Number::from_bigs(top, bottom).map(Interval::exact);
    }
    let scale = BigInt::from(10).pow(SQUARE_ROOT_PLACES);
    let scaled = numerator * &scale * &scale / denominator;
    let below = scaled.sqrt();
    let above = &below + 1;
    Some(Interval {
        low: Number::from_bigs(below, scale.clone())?,
        high: Number::from_bigs(above, scale)?,
    })
}

impl Interval {
    /// Returns the interval of one number.
    #[must_use]
    pub fn exact(number: Number) -> Self {
        Self {
            low: number.clone(),
            high: number,
        }
    }

    /// Returns the interval between two numbers, given in either order.
    #[must_use]
    pub fn between(one: Number, other: Number) -> Self {
        if one <= other {
            Self {
                low: one,
                high: other,
            }
        } else {
            Self {
                low: other,
                high: one,
            }
        }
    }

    /// Returns the interval of all numbers at most `margin` away; the sign of the margin does not matter.
    #[must_use]
    pub fn around(middle: &Number, margin: &Number) -> Self {
        let margin = margin.abs();
        Self {
            low: middle - &margin,
            high: middle + &margin,
        }
    }

    /// Returns the lower end.
    #[must_use]
    pub fn low(&self) -> &Number {
        &self.low
    }

    /// Returns the upper end.
    #[must_use]
    pub fn high(&self) -> &Number {
        &self.high
    }

    /// Says whether `number` lies between the ends; the ends do.
    #[must_use]
    pub fn contains(&self, number: &Number) -> bool {
        self.low <= *number && *number <= self.high
    }

    /// Says whether the two have a number in common.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.low <= other.high && other.low <= self.high
    }

    /// Returns where the sum of a number of each lies.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self {
            low: &self.low + &other.low,
            high: &self.high + &other.high,
        }
    }

    /// Returns where the difference of a number of each lies.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        Self {
            low: &self.low - &other.high,
            high: &self.high - &other.low,
        }
    }

    /// Returns where the product of a number of each lies.
    ///
    /// # Examples
    /// ## The signs of the ends decide which products are the ends
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::interval::Interval;
    /// let between = |low, high| Interval::between(Number::from(low), Number::from(high));
    /// assert_eq!(between(-2, 3).times(&between(-5, 1)), between(-15, 10));
    /// ```
    #[must_use]
    pub fn times(&self, other: &Self) -> Self {
        let first = &self.low * &other.low;
        let rest = [
            &self.low * &other.high,
            &self.high * &other.low,
            &self.high * &other.high,
        ];
        let start = Self::exact(first);
        rest.into_iter().fold(start, |found, product| Self {
            low: found.low.min(product.clone()),
            high: found.high.max(product),
        })
    }

    /// Returns where a number of it times `factor` lies; the factor may be negative.
    #[must_use]
    pub fn scaled(&self, factor: &Number) -> Self {
        Self::between(&self.low * factor, &self.high * factor)
    }

    /// Returns where a number of it without its sign lies.
    #[must_use]
    pub fn abs(&self) -> Self {
        let ends = Self::between(self.low.abs(), self.high.abs());
        if self.contains(&Number::ZERO) {
            Self {
                low: Number::ZERO,
                ..ends
            }
        } else {
            ends
        }
    }

    /// Returns the least interval that has all of both in it.
    #[must_use]
    pub fn hull(&self, other: &Self) -> Self {
        Self {
            low: self.low.clone().min(other.low.clone()),
            high: self.high.clone().max(other.high.clone()),
        }
    }

    /// Returns the least interval around it whose ends are multiples of `step`; `None` unless the step is above 0.
    ///
    /// # Examples
    /// ## The ends go apart, never together
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::interval::Interval;
    /// let third = Number::ratio(1, 3).ok_or("no number")?;
    /// let tenth = Number::ratio(1, 10).ok_or("no number")?;
    /// let shown = Interval::exact(third).outward_to(&tenth).ok_or("no step")?;
    /// assert_eq!(shown.to_string(), "0.3 to 0.4");
    /// assert_eq!(shown.outward_to(&Number::ZERO), None);
    /// # Ok::<(), &str>(())
    /// ```
    #[must_use]
    pub fn outward_to(&self, step: &Number) -> Option<Self> {
        Some(Self {
            low: self.low.floor_to(step)?,
            high: self.high.ceil_to(step)?,
        })
    }

    /// Says whether the number is at most `limit`; `None` where the ends disagree.
    #[must_use]
    pub fn at_most(&self, limit: &Number) -> Option<bool> {
        agreed(self.low <= *limit, self.high <= *limit)
    }

    /// Says whether the number is at least `limit`; `None` where the ends disagree.
    #[must_use]
    pub fn at_least(&self, limit: &Number) -> Option<bool> {
        agreed(self.low >= *limit, self.high >= *limit)
    }
}

fn agreed(one: bool, other: bool) -> Option<bool> {
    (one == other).then_some(one)
}

impl From<Number> for Interval {
    fn from(number: Number) -> Self {
        Self::exact(number)
    }
}

impl fmt::Display for Interval {
    /// `69.9 to 70`, or the number alone when both ends are it.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.low == self.high {
            return write!(formatter, "{}", self.low);
        }
        write!(formatter, "{} to {}", self.low, self.high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn fraction() -> impl Strategy<Value = Number> {
        (-5000_i64..5000, 1_i64..64)
            .prop_map(|(numerator, denominator)| Number::ratio(numerator, denominator).expect("above zero"))
    }

    fn inside() -> impl Strategy<Value = (Interval, Number)> {
        (fraction(), fraction(), 0_i64..=8).prop_map(|(one, other, eighths)| {
            let interval = Interval::between(one, other);
            let share = Number::ratio(eighths, 8).expect("above zero");
            let number = interval.low() + &(&(interval.high() - interval.low()) * &share);
            (interval, number)
        })
    }

    proptest! {
        #[test]
        fn the_root_lies_between_its_ends(number in fraction()) {
            let number = number.abs();
            let root = square_root(&number).expect("not below zero");
            prop_assert!(root.low() * root.low() <= number && number <= root.high() * root.high());
            prop_assert!(!root.low().is_negative());
            let width = root.high() - root.low();
            prop_assert!(width.is_zero() || width == Number::from_decimal("1e-20").expect("a number"));
            let squared = square_root(&(&number * &number));
            prop_assert_eq!(squared, Some(Interval::exact(number)));
        }

        #[test]
        fn each_result_lies_in_the_interval_of_results((first, a) in inside(), (second, b) in inside()) {
            prop_assert!(first.contains(&a) && second.contains(&b));
            prop_assert!(first.plus(&second).contains(&(&a + &b)));
            prop_assert!(first.minus(&second).contains(&(&a - &b)));
            prop_assert!(first.times(&second).contains(&(&a * &b)));
            prop_assert!(first.scaled(&b).contains(&(&a * &b)));
            prop_assert!(first.abs().contains(&a.abs()));
            prop_assert!(first.hull(&second).contains(&a) && first.hull(&second).contains(&b));
            prop_assert!(first.outward_to(&Number::ONE).is_some_and(|wide| wide.contains(&a)));
        }

        #[test]
        fn what_is_decided_is_so((interval, number) in inside(), limit in fraction()) {
            prop_assert!(interval.at_most(&limit).is_none_or(|is_so| is_so == (number <= limit)));
            prop_assert!(interval.at_least(&limit).is_none_or(|is_so| is_so == (number >= limit)));
        }
    }

    #[test]
    fn results_are_no_wider_than_they_must_be() {
        let between = |low: i64, high: i64| Interval::between(Number::from(low), Number::from(high));
        let rows = [
            ("sum", between(1, 2).plus(&between(3, 5)), between(4, 7)),
            ("difference", between(1, 2).minus(&between(3, 5)), between(-4, -1)),
            (
                "product of mixed signs",
                between(-2, 3).times(&between(-5, 1)),
                between(-15, 10),
            ),
            (
                "product below zero",
                between(-3, -2).times(&between(4, 5)),
                between(-15, -8),
            ),
            (
                "scaled by less than nothing",
                between(1, 2).scaled(&Number::from(-3)),
                between(-6, -3),
            ),
            ("size across zero", between(-4, 3).abs(), between(0, 4)),
            ("size below zero", between(-4, -3).abs(), between(3, 4)),
            ("hull", between(1, 2).hull(&between(5, 6)), between(1, 6)),
            ("between the wrong way round", between(2, 1), between(1, 2)),
        ];
        for (name, found, expected) in rows {
            assert_eq!(found, expected, "{name}");
        }
    }

    #[test]
    fn ends_are_included() {
        let interval = Interval::between(Number::from(2), Number::from(4));
        let rows = [
            (1, Some(false), Some(true), false),
            (2, None, Some(true), true),
            (3, None, None, true),
            (4, Some(true), None, true),
            (5, Some(true), Some(false), false),
        ];
        for (limit, at_most, at_least, contains) in rows {
            let limit = Number::from(limit);
            assert_eq!(interval.at_most(&limit), at_most, "at most {limit}");
            assert_eq!(interval.at_least(&limit), at_least, "at least {limit}");
            assert_eq!(interval.contains(&limit), contains, "contains {limit}");
            let shared = interval.overlaps(&Interval::exact(limit.clone()));
            assert_eq!(shared, contains, "overlaps {limit}");
        }
    }

    /// 36 x 60: 69.971; 30 x 40: 50 exactly. Source: the theorem of Pythagoras, computed.
    #[test]
    fn diagonals_of_known_rectangles() {
        let diagonal = square_root(&Number::from(4896)).expect("above zero");
        assert!(diagonal.low().to_string().starts_with("69.97142"), "{diagonal}");
        assert_eq!(
            square_root(&Number::from(2500)).expect("above zero").to_string(),
            "50"
        );
        assert_eq!(square_root(&Number::ZERO), Some(Interval::exact(Number::ZERO)));
        assert_eq!(square_root(&Number::from(-1)), None);
    }
}
