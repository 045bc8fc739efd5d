//! What a gate or a charge reads of the opening and its place: its parts in order, and what it wants to know.

use rustc_hash::FxHashSet;

use crate::term::{TermId, Terms};

impl Terms {
    /// All parts of these terms, themselves included, each once, parts before the terms that have them.
    pub(crate) fn closure(&self, roots: impl IntoIterator<Item = TermId>) -> Vec<TermId> {
        let mut seen = FxHashSet::default();
        let mut stack: Vec<TermId> = roots.into_iter().collect();
        while let Some(term) = stack.pop() {
            if seen.insert(term) {
                self.term(term).parts(|part| stack.push(part));
            }
        }
        let mut all: Vec<TermId> = seen.into_iter().collect();
        all.sort_unstable();
        all
    }
}
