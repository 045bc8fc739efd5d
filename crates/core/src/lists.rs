//! Lists, each stored once: equal lists under equal tags have the same number.
//!
//! All items stand in one array, end to end. Under the tag 7 the lists `[3, 3]` and `[4]` are the numbers 0 and 1 over the
//! items `3 3 4`; `[4]` under the tag 8 is the number 2.
//!
//! Always holds: numbers are given from 0 on, in the order in which lists are first asked for.
//! Cost: a hash of the list; no memory of its own for a list that is there.

use std::hash::Hash;

use crate::index::{Index, hash_of};

/// Lists by number, and numbers by list.
#[derive(Clone, Debug)]
pub(crate) struct Lists<T> {
    index: Index,
    /// For each list its tag, and where it ends among the items.
    heads: Vec<(u32, usize)>,
    items: Vec<T>,
}

impl<T> Default for Lists<T> {
    fn default() -> Self {
        Self {
            index: Index::default(),
            heads: Vec::new(),
            items: Vec::new(),
        }
    }
}

impl<T: Copy + Eq + Hash> Lists<T> {
    /// The number of a list.
    pub(crate) fn number(&mut self, tag: u32, list: &[T]) -> u32 {
        let hash = hash_of(&(tag, list));
        let is_it = |number| self.tag(number) == Some(tag) && self.list(number) == list;
        if let Some(number) = self.index.find(hash, is_it) {
            return number;
        }
        let number = u32::try_from(self.heads.len()).unwrap_or(u32::MAX - 1);
        self.items.extend_from_slice(list);
        self.heads.push((tag, self.items.len()));
        self.index.insert(hash, number);
        number
    }

    /// How many lists there are.
    pub(crate) fn len(&self) -> usize {
        self.heads.len()
    }

    /// How many items all lists have together.
    pub(crate) fn item_count(&self) -> usize {
        self.items.len()
    }

    /// How many bytes the items and where they end take.
    pub(crate) fn bytes(&self) -> usize {
        size_of_val(self.items.as_slice()) + size_of_val(self.heads.as_slice())
    }

    /// The tag of a list.
    pub(crate) fn tag(&self, number: u32) -> Option<u32> {
        self.heads.get(number as usize).map(|(tag, _)| *tag)
    }

    /// A list by its number; the empty one for a number that was never given.
    pub(crate) fn list(&self, number: u32) -> &[T] {
        let number = number as usize;
        let end_of = |number: usize| self.heads.get(number).map(|(_, end)| *end);
        let begin = number.checked_sub(1).and_then(end_of).unwrap_or(0);
        let end = end_of(number).unwrap_or(begin);
        self.items.get(begin..end).unwrap_or_default()
    }

    /// All tags and lists by number.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (u32, &[T])> {
        let mut begin = 0;
        self.heads.iter().map(move |(tag, end)| {
            let list = self.items.get(begin..*end).unwrap_or_default();
            begin = *end;
            (*tag, list)
        })
    }

    /// Forgets all lists; keeps the memory.
    pub(crate) fn clear(&mut self) {
        self.index.clear();
        self.heads.clear();
        self.items.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_lists_under_equal_tags_are_one() {
        let mut lists = Lists::default();
        let asked: Vec<(u32, Vec<u32>)> = (0..5000_u32)
            .map(|at| (at % 3, vec![at / 2; at as usize % 4]))
            .collect();
        let numbers: Vec<u32> = asked.iter().map(|(tag, list)| lists.number(*tag, list)).collect();
        let mut seen: Vec<&(u32, Vec<u32>)> = Vec::new();
        for (at, (one, number)) in asked.iter().zip(&numbers).enumerate() {
            let place = seen.iter().position(|other| *other == one).unwrap_or(seen.len());
            if place == seen.len() {
                seen.push(one);
            }
            assert_eq!(*number as usize, place, "{at}: {one:?}");
            assert_eq!(
                (lists.tag(*number), lists.list(*number)),
                (Some(one.0), one.1.as_slice())
            );
        }
        assert_eq!(lists.len(), seen.len());
        assert!(lists.iter().eq(seen.iter().map(|one| (one.0, one.1.as_slice()))));
    }

    #[test]
    fn numbers_begin_again_after_clearing() {
        let mut lists = Lists::default();
        (0..100_u32).for_each(|at| assert_eq!(lists.number(0, &[at]), at));
        lists.clear();
        assert_eq!((lists.len(), lists.number(0, &[99])), (0, 0));
        assert!(lists.list(1).is_empty());
    }
}
