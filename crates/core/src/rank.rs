//! Ranks: what completions are ordered by, four counts compared one after the other.
//!
//! The standard completion has the fewest changed picks, then the fewest departures from the standard, then the fewest moves
//! away from the unit on screen, then the fewest cents. The cheapest has the fewest changes, then the fewest cents, then the
//! fewest moves, then the fewest departures. `(1 change, 0 departures, 0 moves, 250 cents)` stands behind every rank without a change.
//!
//! Always holds: a sum of ranks is the rank of the sums, cents below zero included, since no count of one unit reaches 2^12
//! and no sum of cents 2^61.

use crate::weights::Cost;

/// Which completion is wanted.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum Aim {
    /// The one that keeps closest to what is filled in when nobody picks.
    #[default]
    Standard,
    /// The one that costs least.
    Cheapest,
}

/// Four counts, packed in the order of an aim; or infeasible.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub(crate) struct Rank(i128);

/// What is counted.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(crate) struct Counts {
    /// Picks that are not kept.
    pub(crate) changes: i64,
    /// Attributes that are not what their standard says, kept picks left out.
    pub(crate) departures: i64,
    /// Attributes that are not what the unit on screen has.
    pub(crate) moves: i64,
    pub(crate) cents: i64,
}

const COUNT: u32 = 12;
const CENTS: u32 = 62;

/// An amount below everything that known amounts come to: what is not known may be anything. At most 2^11 of them meet in one unit.
pub(crate) const UNKNOWN_CENTS: i64 = -(1 << 49);

/// What is counted in which place, from the last to the first.
fn places(aim: Aim, counts: Counts) -> [(i64, u32); 4] {
    let Counts {
        changes,
        departures,
        moves,
        cents,
    } = counts;
    match aim {
        Aim::Standard => [
            (cents, CENTS),
            (moves, COUNT),
            (departures, COUNT),
            (changes, COUNT),
        ],
        Aim::Cheapest => [
            (departures, COUNT),
            (moves, COUNT),
            (cents, CENTS),
            (changes, COUNT),
        ],
    }
}

impl Rank {
    pub(crate) fn new(aim: Aim, counts: Counts) -> Self {
        let places = places(aim, counts).into_iter().rev();
        Self(places.fold(0, |rank, (count, bits)| (rank << bits) + i128::from(count)))
    }

    /// What was counted; meaningless for what is infeasible.
    pub(crate) fn counts(self, aim: Aim) -> Counts {
        let mut rest = self.0;
        let counts = places(aim, Counts::default()).map(|(_, bits)| {
            let half = 1_i128 << (bits - 1);
            let count = ((rest + half) & ((1 << bits) - 1)) - half;
            rest = (rest - count) >> bits;
            i64::try_from(count).unwrap_or(i64::MAX)
        });
        let (cents, moves, departures, changes) = match (aim, counts) {
            (Aim::Standard, [cents, moves, departures, changes])
            | (Aim::Cheapest, [departures, moves, cents, changes]) => (cents, moves, departures, changes),
        };
        Counts {
            changes,
            departures,
            moves,
            cents,
        }
    }
}

impl Cost for Rank {
    const ZERO: Self = Self(0);
    const INFEASIBLE: Self = Self(i128::MAX);

    fn is_feasible(self) -> bool {
        self != Self::INFEASIBLE
    }

    fn least(self, other: Self) -> Self {
        self.min(other)
    }

    fn plus(self, other: Self) -> Self {
        if self.is_feasible() && other.is_feasible() {
            Self(self.0 + other.0)
        } else {
            Self::INFEASIBLE
        }
    }

    fn minus(self, part: Self) -> Self {
        if self.is_feasible() {
            Self(self.0 - part.0)
        } else {
            self
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counts(changes: i64, departures: i64, moves: i64, cents: i64) -> Counts {
        Counts {
            changes,
            departures,
            moves,
            cents,
        }
    }

    #[test]
    fn counts_come_back_out_of_a_sum_also_when_cents_are_below_zero() {
        for aim in [Aim::Standard, Aim::Cheapest] {
            for (one, other) in [
                (counts(0, 0, 0, 0), counts(0, 0, 0, -1)),
                (counts(512, 511, 512, 1 << 38), counts(0, 1, 0, -(1 << 39))),
                (counts(1, 0, 2, -250), counts(0, 3, 0, 100)),
                (counts(1, 0, 0, 2048 * UNKNOWN_CENTS), counts(0, 0, 0, 7)),
            ] {
                let sum = Rank::new(aim, one).plus(Rank::new(aim, other));
                let expected = counts(
                    one.changes + other.changes,
                    one.departures + other.departures,
                    one.moves + other.moves,
                    one.cents + other.cents,
                );
                assert_eq!(sum.counts(aim), expected, "{aim:?}");
            }
        }
    }

    #[test]
    fn each_aim_compares_in_its_own_order() {
        let (standard, cheapest) = (
            |counts| Rank::new(Aim::Standard, counts),
            |counts| Rank::new(Aim::Cheapest, counts),
        );
        assert!(standard(counts(0, 1, 0, -900)) > standard(counts(0, 0, 5, 900)));
        assert!(standard(counts(0, 0, 1, -900)) > standard(counts(0, 0, 0, 900)));
        assert!(cheapest(counts(0, 9, 9, -1)) < cheapest(counts(0, 0, 0, 0)));
        assert!(cheapest(counts(0, 9, 0, 0)) < cheapest(counts(0, 0, 1, 0)));
        assert!(cheapest(counts(1, 0, 0, -900)) > cheapest(counts(0, 0, 0, 900)));
        assert!(standard(counts(511, 511, 511, 1 << 38)) < Rank::INFEASIBLE);
    }
}
