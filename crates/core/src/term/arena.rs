//! Where terms lie: one after the other by number, parts before what has them, with the cells and rows that they name.
//!
//! Always holds: the parts of a term have smaller numbers than the term.
//! Memory: about 40 bytes a term and 4 a part.

use astragal_model::{Cell, Value};
use rustc_hash::FxHashMap;

use crate::index::number;
use crate::term::{CellNumber, LookUpRow, RowsNumber, Term, TermId};

/// Terms by number.
#[derive(Debug, Default)]
pub(crate) struct Arena {
    pub(super) terms: Vec<Term>,
    pub(super) cells: Vec<Cell>,
    pub(super) rows: Vec<Box<[LookUpRow]>>,
}

impl Arena {
    pub(crate) fn term(&self, term: TermId) -> &Term {
        static UNDEFINED: Term = Term::Constant(None);
        self.terms.get(term.0 as usize).unwrap_or(&UNDEFINED)
    }

    /// All terms by number.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (TermId, &Term)> {
        (0..).map(TermId).zip(&self.terms)
    }

    /// Whether a term is this truth value.
    pub(crate) fn is_truth(&self, term: TermId, truth: bool) -> bool {
        *self.term(term) == Term::Constant(Some(Value::Bool(truth)))
    }

    pub(super) fn cell(&self, cell: CellNumber) -> &Cell {
        self.cells.get(cell.0 as usize).unwrap_or(&Cell::Any)
    }

    pub(super) fn rows(&self, rows: RowsNumber) -> &[LookUpRow] {
        self.rows.get(rows.0 as usize).map_or(&[], |rows| rows)
    }

    /// Leaves out every term that these do not need, and gives each of these its new number.
    ///
    /// Cost: one visit a term; never recursive.
    pub(crate) fn keep<'a>(mut self, roots: impl Iterator<Item = &'a mut TermId>) -> Self {
        let roots: Vec<&mut TermId> = roots.collect();
        let needed = self.needed(roots.iter().map(|root| **root));
        let mut numbers: Vec<TermId> = Vec::with_capacity(self.terms.len());
        let mut kept = Self {
            cells: self.cells,
            ..Self::default()
        };
        let mut row_numbers: FxHashMap<RowsNumber, RowsNumber> = FxHashMap::default();
        for (mut term, needed) in self.terms.into_iter().zip(needed) {
            numbers.push(TermId(number(kept.terms.len())));
            if !needed {
                continue;
            }
            term.parts_mut(|part| *part = numbers.get(part.0 as usize).copied().unwrap_or(*part));
            if let Term::LookUp { rows, .. } = &mut term {
                *rows = *row_numbers.entry(*rows).or_insert_with_key(|old| {
                    let taken = self.rows.get_mut(old.0 as usize).map(std::mem::take);
                    kept.rows.push(taken.unwrap_or_default());
                    RowsNumber(number(kept.rows.len() - 1))
                });
            }
            kept.terms.push(term);
        }
        kept.terms.shrink_to_fit();
        for root in roots {
            *root = numbers.get(root.0 as usize).copied().unwrap_or(*root);
        }
        kept
    }

    /// For each term whether it is one of these or a part of one, however deep.
    fn needed(&self, roots: impl Iterator<Item = TermId>) -> Vec<bool> {
        let mut needed = vec![false; self.terms.len()];
        let need = |needed: &mut Vec<bool>, term: TermId| {
            if let Some(slot) = needed.get_mut(term.0 as usize) {
                *slot = true;
            }
        };
        roots.for_each(|root| need(&mut needed, root));
        for (place, term) in self.terms.iter().enumerate().rev() {
            if needed.get(place).copied().unwrap_or(false) {
                term.parts(|part| need(&mut needed, part));
            }
        }
        needed
    }
}
