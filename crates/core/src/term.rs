//! Terms: what rules and prices come to, step by step, as the values of attributes become known.
//!
//! A term is an expression with figures seen through, stored once in an arena: equal terms have the same number, and the
//! parts of a term have smaller numbers than the term. Replacing an attribute by a value folds what can be folded, so that
//! `operation == "casement" && unit_width > "36"` becomes `false` for an awning and `opening_width - 0.5 > 36` for a
//! casement in a pocket. What reads no attribute any more is a gate.
//!
//! Always holds: folding agrees with `astragal_model::operate`, unknown and undefined included; nothing is folded whose
//! answer could differ from the judge's.

mod arena;
mod make;
mod normal;
mod substitute;
mod translate;
mod value;

use astragal_model::{
    AttributeIndex, Cell, Comparison, FactIndex, Function, Id, ItemIndex, MeasureIndex, Number, RowMatch,
    Value,
};
use rustc_hash::FxHashMap;

use crate::index::{Index, hash_of, number};

pub(crate) use arena::Arena;
use normal::NormalForms;
pub(crate) use substitute::Replacement;
use substitute::Schedule;
pub(crate) use translate::Translator;
pub(crate) use value::{Known, Outcomes};

/// A term by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) struct TermId(pub(crate) u32);

/// One term.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub(crate) enum Term {
    /// A value, or undefined.
    Constant(Option<Value>),
    /// The option of an attribute, or *not asked*.
    Attribute(AttributeIndex),
    /// A property of the option that an attribute has.
    Property(AttributeIndex, Id),
    /// Whether an attribute is asked.
    IsAsked(AttributeIndex),
    Measure(MeasureIndex),
    DeductedBy(MeasureIndex),
    Fact(FactIndex),
    /// What somebody must choose and nobody can: the standard of an attribute of the plant that says `ask`. Never known.
    Wanted(AttributeIndex),
    /// Whether a waiver releases the unit from this rule.
    Waived(Id),
    Not(TermId),
    And(Box<[TermId]>),
    Or(Box<[TermId]>),
    Compare(Comparison, TermId, TermId),
    Add(Box<[TermId]>),
    Negate(TermId),
    Multiply(TermId, TermId),
    Divide(TermId, Number),
    Conditional(TermId, TermId, TermId),
    Call(Function, Box<[TermId]>),
    /// Whether a cell lets a key through; what it says of a key that is not asked.
    Admits {
        cell: CellNumber,
        key: TermId,
        not_asked: bool,
    },
    /// The value of the row that matches the keys; undefined without one.
    LookUp {
        rows: RowsNumber,
        row_match: RowMatch,
        keys: Box<[TermId]>,
    },
    /// What a price item comes to: nothing when the first part, its condition, is false. Then come its quantity, if it has
    /// one, and its keys: sizes of a grid, options of a sheet, or the items that a percentage is of.
    Charge {
        item: ItemIndex,
        parts: Box<[TermId]>,
    },
    /// That an attribute has an option which is not its standard; without a standard, for certain. `false` when it does not.
    Departure {
        attribute: AttributeIndex,
        own: TermId,
        standard: Option<TermId>,
    },
}

/// A cell of a table by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) struct CellNumber(u32);

/// Rows of a table by their number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) struct RowsNumber(u32);

/// A row of a look-up: a cell a key that is left, and the value.
type LookUpRow = (Box<[CellNumber]>, Value);

/// Which attributes a term reads.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(crate) struct Reads([u64; 8]);

impl Reads {
    fn one(attribute: AttributeIndex) -> Self {
        let mut reads = Self::default();
        let position = position(attribute);
        if let Some(word) = reads.0.get_mut(position / 64) {
            *word |= 1 << (position % 64);
        }
        reads
    }

    fn add(&mut self, other: Self) {
        for (word, more) in self.0.iter_mut().zip(other.0) {
            *word |= more;
        }
    }

    pub(crate) fn contains(&self, attribute: AttributeIndex) -> bool {
        let position = position(attribute);
        let word = self.0.get(position / 64);
        word.is_some_and(|word| word >> (position % 64) & 1 == 1)
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0 == [0; 8]
    }

    /// The positions of the attributes, rising.
    pub(crate) fn positions(&self) -> Vec<usize> {
        (0..512)
            .filter(|at| self.0.get(at / 64).is_some_and(|word| word >> (at % 64) & 1 == 1))
            .collect()
    }
}

fn position(attribute: AttributeIndex) -> usize {
    attribute.0
}

/// The terms of one catalog while it is compiled: each stands once.
#[derive(Debug, Default)]
pub(crate) struct Terms {
    arena: Arena,
    reads: Vec<Reads>,
    numbers: Index,
    cell_numbers: FxHashMap<Cell, CellNumber>,
    row_numbers: FxHashMap<Box<[LookUpRow]>, RowsNumber>,
    normal_forms: NormalForms,
    /// How many parts all terms have together.
    part_count: usize,
    /// Where the row of a term and an attribute begins: what the term becomes, a value after the other.
    rows_of: FxHashMap<(TermId, AttributeIndex), usize>,
    replaced: Vec<TermId>,
    /// Memory that is used again.
    schedule: Schedule,
}

impl Terms {
    /// The terms without what is only needed to make more.
    pub(crate) fn into_arena(self) -> Arena {
        self.arena
    }

    pub(crate) fn term(&self, term: TermId) -> &Term {
        self.arena.term(term)
    }

    /// How many bytes the terms, their parts and what they were replaced by take, about.
    pub(crate) fn bytes(&self) -> usize {
        let replaced = size_of_val(self.replaced.as_slice());
        let terms = self.arena.terms.len() * (size_of::<Term>() + size_of::<Reads>());
        terms + self.part_count * size_of::<TermId>() + replaced
    }

    /// Which attributes a term reads, figures seen through.
    pub(crate) fn reads(&self, term: TermId) -> Reads {
        self.reads.get(term.0 as usize).copied().unwrap_or_default()
    }

    /// Whether a term is this truth value.
    pub(crate) fn is_truth(&self, term: TermId, truth: bool) -> bool {
        self.arena.is_truth(term, truth)
    }

    fn cell_number(&mut self, cell: &Cell) -> CellNumber {
        if let Some(number) = self.cell_numbers.get(cell) {
            return *number;
        }
        let number = CellNumber(number(self.arena.cells.len()));
        self.arena.cells.push(cell.clone());
        self.cell_numbers.insert(cell.clone(), number);
        number
    }

    fn rows_number(&mut self, rows: Box<[LookUpRow]>) -> RowsNumber {
        if let Some(number) = self.row_numbers.get(&rows) {
            return *number;
        }
        let number = RowsNumber(number(self.arena.rows.len()));
        self.arena.rows.push(rows.clone());
        self.row_numbers.insert(rows, number);
        number
    }

    /// Stores a term as it is.
    fn store(&mut self, term: Term) -> TermId {
        let hash = hash_of(&term);
        let is_it = |number: u32| self.arena.terms.get(number as usize) == Some(&term);
        if let Some(number) = self.numbers.find(hash, is_it) {
            return TermId(number);
        }
        let number = number(self.arena.terms.len());
        let mut reads = Reads::default();
        let mut parts = 0;
        match &term {
            Term::Attribute(attribute) | Term::Property(attribute, _) | Term::IsAsked(attribute) => {
                reads = Reads::one(*attribute);
            }
            other => other.parts(|part| {
                reads.add(self.reads(part));
                parts += 1;
            }),
        }
        self.part_count += parts;
        self.arena.terms.push(term);
        self.reads.push(reads);
        self.numbers.insert(hash, number);
        TermId(number)
    }
}

impl Term {
    /// Calls `visit` with the parts of a term, in order.
    pub(crate) fn parts(&self, mut visit: impl FnMut(TermId)) {
        match self {
            Self::Constant(_)
            | Self::Attribute(_)
            | Self::Property(..)
            | Self::IsAsked(_)
            | Self::Measure(_)
            | Self::DeductedBy(_)
            | Self::Fact(_)
            | Self::Wanted(_)
            | Self::Waived(_) => {}
            Self::Not(part) | Self::Negate(part) | Self::Divide(part, _) | Self::Admits { key: part, .. } => {
                visit(*part);
            }
            Self::And(parts)
            | Self::Or(parts)
            | Self::Add(parts)
            | Self::Call(_, parts)
            | Self::LookUp { keys: parts, .. }
            | Self::Charge { parts, .. } => parts.iter().copied().for_each(visit),
            Self::Compare(_, left, right) | Self::Multiply(left, right) => {
                visit(*left);
                visit(*right);
            }
            Self::Departure { own, standard, .. } => {
                visit(*own);
                standard.iter().copied().for_each(visit);
            }
            Self::Conditional(condition, then, otherwise) => {
                visit(*condition);
                visit(*then);
                visit(*otherwise);
            }
        }
    }

    /// Calls `visit` with the parts of a term, in order, to be replaced.
    fn parts_mut(&mut self, mut visit: impl FnMut(&mut TermId)) {
        match self {
            Self::Constant(_)
            | Self::Attribute(_)
            | Self::Property(..)
            | Self::IsAsked(_)
            | Self::Measure(_)
            | Self::DeductedBy(_)
            | Self::Fact(_)
            | Self::Wanted(_)
            | Self::Waived(_) => {}
            Self::Not(part) | Self::Negate(part) | Self::Divide(part, _) | Self::Admits { key: part, .. } => {
                visit(part);
            }
            Self::And(parts)
            | Self::Or(parts)
            | Self::Add(parts)
            | Self::Call(_, parts)
            | Self::LookUp { keys: parts, .. }
            | Self::Charge { parts, .. } => parts.iter_mut().for_each(visit),
            Self::Compare(_, left, right) | Self::Multiply(left, right) => {
                visit(left);
                visit(right);
            }
            Self::Departure { own, standard, .. } => {
                visit(own);
                standard.iter_mut().for_each(visit);
            }
            Self::Conditional(condition, then, otherwise) => {
                visit(condition);
                visit(then);
                visit(otherwise);
            }
        }
    }
}
