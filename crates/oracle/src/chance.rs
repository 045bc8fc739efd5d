//! A small source of repeatable chance.
//!
//! The same seed gives the same sequence on every machine. Not for secrets.
//!
//! Source: G. L. Steele, D. Lea and C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014
//! (splitmix64, constants from memory).

/// A repeatable sequence of choices.
#[derive(Clone, Debug)]
pub struct Chance {
    state: u64,
}

impl Chance {
    /// The sequence of this seed.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `count`; 0 when `count` is 0.
    pub fn below(&mut self, count: usize) -> usize {
        let count = u64::try_from(count).unwrap_or(u64::MAX);
        let drawn = self.bits().checked_rem(count).unwrap_or(0);
        usize::try_from(drawn).unwrap_or(0)
    }

    /// A number from `least` to `greatest`, both included.
    pub fn between(&mut self, least: usize, greatest: usize) -> usize {
        least + self.below((greatest + 1).saturating_sub(least))
    }

    /// True in so many of a hundred cases.
    pub fn percent(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    /// One of these; `None` when there are none.
    pub fn one_of<'a, T>(&mut self, things: &'a [T]) -> Option<&'a T> {
        things.get(self.below(things.len()))
    }

    /// One of these, or the default where there are none.
    pub fn copy_of<T: Clone + Default>(&mut self, things: &[T]) -> T {
        self.one_of(things).cloned().unwrap_or_default()
    }

    /// Some of these, each with so many of a hundred chances.
    pub fn some_of<T: Clone>(&mut self, percent: usize, things: &[T]) -> Vec<T> {
        things.iter().filter(|_| self.percent(percent)).cloned().collect()
    }

    /// The things in another order.
    pub fn shuffle<T>(&mut self, things: &mut [T]) {
        for last in (1..things.len()).rev() {
            let other = self.below(last + 1);
            things.swap(last, other);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_sequence() {
        let draw = |seed| {
            let mut chance = Chance::new(seed);
            [chance.bits(), chance.bits(), chance.bits()]
        };
        assert_eq!(draw(7), draw(7));
        assert_ne!(draw(7), draw(8));
    }

    #[test]
    fn every_number_below_the_count_is_drawn() {
        let mut chance = Chance::new(1);
        let mut seen = [0_u32; 5];
        for _ in 0..500 {
            seen[chance.below(5)] += 1;
        }
        assert!(seen.iter().all(|count| *count > 50), "{seen:?}");
        assert_eq!(chance.below(0), 0);
    }
}
