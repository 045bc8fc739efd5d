//! An index: finds by its hash what stands in an array that is kept elsewhere.
//!
//! It holds numbers alone. With the array `["white", "grey"]` it holds 0 and 1, each under the hash of its word; whether a
//! number that is found is meant, the array says.
//!
//! Always holds: the hash of anything is the same in every run.
//! Cost: that of a hash table, 16 bytes a number beside its control byte. Clearing keeps the memory.

use std::hash::{Hash, Hasher};

use hashbrown::HashTable;
use rustc_hash::FxHasher;

/// Numbers by hash.
#[derive(Clone, Debug, Default)]
pub(crate) struct Index {
    /// Each number behind its hash.
    numbers: HashTable<(u64, u32)>,
}

/// A count as the number of what comes next. Limits on bytes keep counts far below where it would stop.
pub(crate) fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// The hash of anything.
pub(crate) fn hash_of(what: &(impl Hash + ?Sized)) -> u64 {
    let mut hasher = FxHasher::default();
    what.hash(&mut hasher);
    hasher.finish()
}

impl Index {
    /// The number with this hash that is the one.
    pub(crate) fn find(&self, hash: u64, is_it: impl Fn(u32) -> bool) -> Option<u32> {
        let found = self.numbers.find(hash, |(_, number)| is_it(*number));
        found.map(|(_, number)| *number)
    }

    /// Adds a number that is not there.
    pub(crate) fn insert(&mut self, hash: u64, number: u32) {
        self.numbers
            .insert_unique(hash, (hash, number), |(hash, _)| *hash);
    }

    /// Forgets all numbers; keeps the memory.
    pub(crate) fn clear(&mut self) {
        self.numbers.clear();
    }
}
