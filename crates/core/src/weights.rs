//! Weights: what every option and label counts while one question is answered.
//!
//! A weight packs two counts that are compared one after the other, `changes * 2^40 + cents`. An option that may not be
//! chosen, and a label with a gate that is closed, are *infeasible*: so far above everything else that no sum comes near it.
//!
//! Always holds: a sum of all largest absolute cents of a question stays below 2^39, or the question is refused, so that
//! cents never run into changes. What is infeasible is never subtracted.

/// What is added up along a configuration and compared: the less the better.
///
/// A sum with something infeasible is infeasible, whatever is added to it: walks over a diagram rely on it.
pub trait Cost: Copy + PartialEq + Default {
    /// Nothing.
    const ZERO: Self;
    /// Not to be had; more than anything else.
    const INFEASIBLE: Self;

    /// Whether it can be had.
    fn is_feasible(self) -> bool;

    /// The less of two.
    #[must_use]
    fn least(self, other: Self) -> Self;

    /// Both together.
    #[must_use]
    fn plus(self, other: Self) -> Self;

    /// What is left of a feasible cost without a feasible part of it; infeasible when the whole is.
    #[must_use]
    fn minus(self, part: Self) -> Self;
}

/// How many changes and cents, packed; or infeasible.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Weight(i64);

const SHIFT: u32 = 40;
const HALF: i64 = 1 << (SHIFT - 1);

/// LIMIT: cents stay below this in absolute value.
pub const CENTS_LIMIT: i64 = HALF;

impl Weight {
    /// So many changes and cents.
    #[must_use]
    pub fn new(changes: u32, cents: i64) -> Self {
        Self((i64::from(changes) << SHIFT) + cents)
    }

    /// The changes; meaningless for what is infeasible.
    #[must_use]
    pub fn changes(self) -> i64 {
        (self.0 + HALF) >> SHIFT
    }

    /// The cents; meaningless for what is infeasible.
    #[must_use]
    pub fn cents(self) -> i64 {
        self.0 - (self.changes() << SHIFT)
    }
}

impl Cost for Weight {
    const ZERO: Self = Self(0);
    /// Far above every sum that can be had and far below what overflows, so that sums need no branch.
    const INFEASIBLE: Self = Self(1 << 60);

    #[inline]
    fn is_feasible(self) -> bool {
        self.0 < Self::INFEASIBLE.0 / 2
    }

    #[inline]
    fn least(self, other: Self) -> Self {
        self.min(other)
    }

    #[inline]
    fn plus(self, other: Self) -> Self {
        Self((self.0 + other.0).min(Self::INFEASIBLE.0))
    }

    #[inline]
    fn minus(self, part: Self) -> Self {
        if self.is_feasible() {
            Self(self.0 - part.0)
        } else {
            self
        }
    }
}

/// The weights of one question.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Weights<C = Weight> {
    /// For each option of all variables.
    pub options: Vec<C>,
    /// For each label.
    pub labels: Vec<C>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changes_and_cents_come_back_out_also_when_cents_are_negative() {
        for (changes, cents) in [
            (0, 0),
            (0, -1),
            (3, -250),
            (512, CENTS_LIMIT - 1),
            (1, 1 - CENTS_LIMIT),
        ] {
            let weight = Weight::new(changes, cents);
            assert_eq!((weight.changes(), weight.cents()), (i64::from(changes), cents));
        }
    }

    /// 4,096 amounts of the largest kind below zero are more than one unit can have.
    #[test]
    fn no_amount_below_zero_brings_back_what_is_infeasible() {
        let lowest = Weight::new(0, 1 - CENTS_LIMIT);
        let sum = (0..4_096).fold(Weight::INFEASIBLE, |sum, _| sum.plus(lowest));
        assert!(!sum.is_feasible() && sum > Weight::new(512, CENTS_LIMIT - 1));
        let many = (0..4_096).fold(Weight::INFEASIBLE, |sum, _| sum.plus(Weight::INFEASIBLE));
        assert_eq!(many, Weight::INFEASIBLE);
    }

    #[test]
    fn what_is_infeasible_stays_so() {
        assert_eq!(Weight::ZERO.plus(Weight::INFEASIBLE), Weight::INFEASIBLE);
        assert!(Weight::new(512, 0) < Weight::INFEASIBLE);
    }
}
