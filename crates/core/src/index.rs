//! An index: finds by its hash what stands in an array that is kept elsewhere.
//!
//! It holds numbers alone. With the array `["white", "grey"]` it holds 0 and 1, each near the place that the hash of its word
//! names; whether the number found there is meant, the array says.
//!
//! Always holds: at most half of the slots are taken, so that every walk ends at a free one.
//! Cost: a slot or two a look-up, 16 bytes a number at most, twice that while it grows.
//! Source: open addressing with linear probing; D. E. Knuth, The Art of Computer Programming 3, section 6.4.

use std::hash::{Hash, Hasher};

use rustc_hash::FxHasher;

/// Numbers by hash.
#[derive(Clone, Debug, Default)]
pub(crate) struct Index {
    slots: Vec<Slot>,
    count: usize,
}

/// A number with its hash, or nothing.
#[derive(Clone, Copy, Debug)]
struct Slot {
    hash: u32,
    number: u32,
}

const FREE: Slot = Slot {
    hash: 0,
    number: u32::MAX,
};

/// Slots of an index that has just been given its first number.
const SLOTS: usize = 16;

/// The hash of anything, the same in every run.
pub(crate) fn hash_of(what: &(impl Hash + ?Sized)) -> u32 {
    let mut hasher = FxHasher::default();
    what.hash(&mut hasher);
    folded(hasher)
}

/// What a hasher has come to, in 32 bits.
pub(crate) fn folded(hasher: FxHasher) -> u32 {
    u32::try_from(hasher.finish() & u64::from(u32::MAX)).unwrap_or(0)
}

impl Index {
    /// The number with this hash that is the one.
    pub(crate) fn find(&self, hash: u32, is_it: impl Fn(u32) -> bool) -> Option<u32> {
        let mask = self.slots.len().checked_sub(1)?;
        let mut place = hash as usize & mask;
        loop {
            let slot = self.slots.get(place)?;
            if slot.number == FREE.number {
                return None;
            }
            if slot.hash == hash && is_it(slot.number) {
                return Some(slot.number);
            }
            place = (place + 1) & mask;
        }
    }

    /// Adds a number that is not there.
    pub(crate) fn insert(&mut self, hash: u32, number: u32) {
        if self.slots.len() < 2 * (self.count + 1) {
            self.grow();
        }
        self.count += 1;
        self.put(Slot { hash, number });
    }

    /// Forgets all numbers; keeps the memory.
    pub(crate) fn clear(&mut self) {
        self.slots.clear();
        self.count = 0;
    }

    fn grow(&mut self) {
        let taken = |slot: &&Slot| slot.number != FREE.number;
        let old: Vec<Slot> = self.slots.iter().filter(taken).copied().collect();
        let slots = SLOTS.max(2 * self.slots.len());
        self.slots.clear();
        self.slots.resize(slots, FREE);
        old.into_iter().for_each(|slot| self.put(slot));
    }

    fn put(&mut self, slot: Slot) {
        let Some(mask) = self.slots.len().checked_sub(1) else {
            return;
        };
        let mut place = slot.hash as usize & mask;
        while let Some(there) = self.slots.get_mut(place) {
            if there.number == FREE.number {
                *there = slot;
                return;
            }
            place = (place + 1) & mask;
        }
    }
}
