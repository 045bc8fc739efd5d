//! Random facts, the same in every run: mostly at a limit or a sixteenth beside it, sometimes missing.

use astragal_model::Number;

use crate::case::around;

/// A source of choices that starts from a number.
pub(crate) struct Random(u64);

impl Random {
    pub(crate) fn new(seed: u64) -> Random {
        Random(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// A number from 0 to below `end`.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        // xorshift64*, G. Marsaglia, Xorshift RNGs, 2003, with the multiplier of S. Vigna, 2016.
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let spread = self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 33;
        usize::try_from(spread).unwrap() % end
    }

    pub(crate) fn one_of<T: Clone>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())].clone()
    }

    /// One of these, or nothing: one time in five.
    pub(crate) fn known<T: Clone>(&mut self, all: &[T]) -> Option<T> {
        (self.below(5) > 0).then(|| self.one_of(all))
    }

    pub(crate) fn truth(&mut self) -> Option<bool> {
        self.known(&[true, false])
    }

    /// A length at a limit or a sixteenth beside it, or somewhere else in sixteenths up to `most` inches.
    pub(crate) fn length(&mut self, limits: &[&str], most: usize) -> Option<Number> {
        if self.below(3) > 0 {
            return self.known(&around(limits));
        }
        let sixteenths = i64::try_from(1 + self.below(most * 16)).unwrap();
        self.known(&[Number::ratio(sixteenths, 16).unwrap()])
    }
}
