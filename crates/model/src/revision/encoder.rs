//! Feeds things to SHA-256 so that different things give different bytes.
//!
//! A *word* is written as its letters and a zero byte, a *text* as its length in eight bytes, the largest first, and its
//! UTF-8: the word `none` is `none\0`, the text `none` is `\0\0\0\0\0\0\0\x04none`. A list is its count and its
//! elements; a list without order is its count and the sorted SHA-256 of its elements.
//!
//! INVARIANT: words come from this crate, hold no zero byte, and differ wherever one of several may stand.
//! Cost: no memory but for the lists without order: 32 bytes an element.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::Date;
use num_bigint::BigInt;
use num_traits::ToPrimitive;
use sha2::{Digest, Sha256};

use crate::catalog::Declarations;
use crate::id::Id;
use crate::value::Value;
use astragal_exact::Number;

/// Something that has a canonical encoding.
pub(super) trait Encode {
    /// Feeds the thing to the encoder, every field of it.
    fn encode(&self, encoder: &mut Encoder<'_>);
}

/// A hash in the making, with the names of the catalog that is read.
#[derive(Clone)]
pub(super) struct Encoder<'a> {
    hash: Sha256,
    names: Option<&'a Declarations>,
}

impl<'a> Encoder<'a> {
    /// Begins, and will name positions as this catalog does.
    pub(super) fn naming(names: &'a Declarations) -> Self {
        Self {
            hash: Sha256::new(),
            names: Some(names),
        }
    }

    /// Begins; no positions are to come.
    pub(super) fn nameless() -> Self {
        Self {
            hash: Sha256::new(),
            names: None,
        }
    }

    /// The catalog by which positions are named.
    pub(super) fn names(&self) -> Option<&'a Declarations> {
        self.names
    }

    /// Ends: the hash of all that was fed.
    pub(super) fn digest(self) -> [u8; 32] {
        self.hash.finalize().into()
    }

    /// Feeds a word of this crate.
    pub(super) fn word(&mut self, word: &'static str) {
        self.hash.update(word.as_bytes());
        self.hash.update([0]);
    }

    /// Feeds the number of things to come, or a position that has no name.
    pub(super) fn count(&mut self, count: usize) {
        // A `usize` has at most 64 bits on every platform that Rust knows.
        let count = u64::try_from(count).unwrap_or(u64::MAX);
        self.hash.update(count.to_be_bytes());
    }

    /// Feeds one field after the other.
    pub(super) fn put(&mut self, thing: &(impl Encode + ?Sized)) -> &mut Self {
        thing.encode(self);
        self
    }

    /// Feeds things whose order counts.
    pub(super) fn ordered<T: Encode>(&mut self, things: impl ExactSizeIterator<Item = T>) -> &mut Self {
        self.count(things.len());
        for thing in things {
            thing.encode(self);
        }
        self
    }

    /// Feeds things whose order does not count; how often each is there does.
    pub(super) fn unordered<T: Encode>(&mut self, things: impl IntoIterator<Item = T>) -> &mut Self {
        let digests = things.into_iter().map(|thing| self.digest_of(&thing));
        let mut digests: Vec<[u8; 32]> = digests.collect();
        digests.sort_unstable();
        self.count(digests.len());
        for digest in &digests {
            self.put(digest);
        }
        self
    }

    /// The hash of one thing alone.
    pub(super) fn digest_of(&self, thing: &impl Encode) -> [u8; 32] {
        let mut alone = Self {
            hash: Sha256::new(),
            names: self.names,
        };
        thing.encode(&mut alone);
        alone.digest()
    }
}

/// Encodes a choice among plain names by one word each.
macro_rules! words {
    ($name:ident { $($choice:ident => $word:literal,)+ }) => {
        impl Encode for $name {
            fn encode(&self, encoder: &mut Encoder<'_>) {
                encoder.word(match self {
                    $(Self::$choice => $word,)+
                });
            }
        }
    };
}
pub(super) use words;

impl Encode for str {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.count(self.len());
        encoder.hash.update(self.as_bytes());
    }
}

impl Encode for String {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        self.as_str().encode(encoder);
    }
}

impl Encode for Id {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        self.as_str().encode(encoder);
    }
}

impl Encode for bool {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.word(if *self { "true" } else { "false" });
    }
}

/// By value: numerator and denominator in lowest terms, as decimal text.
impl Encode for Number {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.put(&decimal(&self.numerator()));
        encoder.put(&decimal(&self.denominator()));
    }
}

/// The digits of a whole number. Those of a machine word are found without the divisions of a big one.
fn decimal(whole: &BigInt) -> String {
    whole
        .to_i64()
        .map_or_else(|| whole.to_string(), |word| word.to_string())
}

/// As ISO 8601 writes it: `2026-03-01`.
impl Encode for Date {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        self.to_string().encode(encoder);
    }
}

impl<T: Encode> Encode for Option<T> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            None => encoder.word("none"),
            Some(thing) => {
                encoder.word("some");
                thing.encode(encoder);
            }
        }
    }
}

/// A list whose order counts. For one whose order does not, call [`Encoder::unordered`].
impl<T: Encode> Encode for Vec<T> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.ordered(self.iter());
    }
}

// Sets and maps are encoded in their own order only where that order comes from what the keys say. Those whose keys
// are positions in a catalog must not be: they go through `Encoder::unordered`.

impl Encode for BTreeSet<Id> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.ordered(self.iter());
    }
}

impl Encode for BTreeSet<Value> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.ordered(self.iter());
    }
}

impl<T: Encode> Encode for BTreeMap<Id, T> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.ordered(self.iter());
    }
}

impl<T: Encode + ?Sized> Encode for &T {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        (*self).encode(encoder);
    }
}

/// A hash that stands for what it is the hash of; always 32 bytes.
impl Encode for [u8; 32] {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.hash.update(self);
    }
}

impl<A: Encode, B: Encode> Encode for (A, B) {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.put(&self.0).put(&self.1);
    }
}
