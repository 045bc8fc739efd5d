//! Conditions in normal form: two comparisons that are one by algebra become one term.
//!
//! Everything is brought to one side and multiplied out to a sum of products of *atoms*, which are the terms that are no
//! sum, product or quotient: `2 * w <= 72` and `w - 0.5 <= 35.5` are both `w - 36 <= 0`. The first that is met stands for
//! all; a sum that loses an atom, as `w - w` does, is left as it is, since an unknown `w` leaves it unknown.
//!
//! Always holds: the sums of two comparisons that are one read the same atoms, so that they are known, unknown and undefined
//! together. Only which of them first passes the bits that a number may have can differ.
//! Cost: one product a pair of summands, at most [`SUMMANDS`]; the sum of a term is remembered. Never recursive.

use std::sync::Arc;

use astragal_model::{Comparison, Function, Number};
use rustc_hash::FxHashMap;

use crate::index::number;
use crate::term::{Term, TermId, Terms};

/// LIMIT: summands of one side; a longer sum is an atom.
const SUMMANDS: usize = 4;

/// LIMIT: how many sums are remembered before the memory is cleared.
const REMEMBERED: usize = 200_000;

/// A product of atoms by its number; [`ONE`] is the product of none.
type Product = u32;

const ONE: Product = 0;

/// Products with their coefficients, rising.
type Sum = Arc<[(Product, Number)]>;

/// The sums of terms, and the comparisons that stand for their equals.
#[derive(Debug)]
pub(crate) struct NormalForms {
    /// The atoms of each product, rising.
    products: Vec<Box<[TermId]>>,
    product_numbers: FxHashMap<Box<[TermId]>, Product>,
    multiplied: FxHashMap<(Product, Product), Product>,
    sums: FxHashMap<TermId, Sum>,
    comparisons: FxHashMap<(Comparison, Sum), TermId>,
}

impl Terms {
    /// Stores a comparison that reads no attribute, or finds the one that stands for it.
    pub(super) fn in_normal_form(&mut self, comparison: Comparison, left: TermId, right: TermId) -> TermId {
        let stored = Term::Compare(comparison, left, right);
        let reads_none = self.reads(left).is_empty() && self.reads(right).is_empty();
        let Some(sum) = reads_none
            .then(|| self.difference(comparison, left, right))
            .flatten()
        else {
            return self.store(stored);
        };
        if let Some(first) = self.normal_forms.comparisons.get(&(comparison, Arc::clone(&sum))) {
            return *first;
        }
        let term = self.store(stored);
        self.normal_forms.comparisons.insert((comparison, sum), term);
        term
    }

    /// `left - right`, divided so that the first coefficient of atoms is 1 or -1, or 1 where the sides may change places.
    fn difference(&mut self, comparison: Comparison, left: TermId, right: TermId) -> Option<Sum> {
        let (left, right) = (self.sum(left), self.sum(right));
        let right = scaled(&right, &Number::from(-1));
        let sum = collected([left, right].iter().flat_map(|sum| sum.iter().cloned()).collect())?;
        let (_, first) = sum.iter().find(|(product, _)| *product != ONE)?;
        let either_way = matches!(comparison, Comparison::Equal | Comparison::NotEqual);
        let divisor = if either_way { first.clone() } else { first.abs() };
        if divisor == Number::ONE {
            return Some(sum);
        }
        Some(scaled(&sum, &Number::ONE.checked_div(&divisor)?))
    }

    /// A term as a sum; itself where it is an atom.
    fn sum(&mut self, root: TermId) -> Sum {
        if self.normal_forms.sums.len() > REMEMBERED {
            self.normal_forms.sums.clear();
        }
        let mut stack = vec![root];
        while let Some(term) = stack.last().copied() {
            let sums = &self.normal_forms.sums;
            if sums.contains_key(&term) {
                stack.pop();
                continue;
            }
            let waiting = stack.len();
            let stored = self.arena.term(term);
            if is_arithmetic(stored) {
                stored.parts(|part| {
                    if !sums.contains_key(&part) {
                        stack.push(part);
                    }
                });
            }
            if stack.len() == waiting {
                stack.pop();
                let sum = self.normal_forms.of(term, stored);
                self.normal_forms.sums.insert(term, sum);
            }
        }
        let sum = self.normal_forms.sums.get(&root);
        sum.map_or_else(|| Arc::new([]), Arc::clone)
    }
}

impl NormalForms {
    /// The sum of a term whose parts have theirs.
    fn of(&mut self, number: TermId, term: &Term) -> Sum {
        let sum = self.of_parts(term);
        sum.unwrap_or_else(|| Arc::new([(self.product(Box::new([number])), Number::ONE)]))
    }

    /// The sum of a term whose parts have theirs; `None` where the term is an atom.
    fn of_parts(&mut self, term: &Term) -> Option<Sum> {
        let of = |part: &TermId| self.sums.get(part);
        match term {
            Term::Constant(Some(value)) => collected(vec![(ONE, value.magnitude()?.clone())]),
            Term::Add(parts) => {
                let parts: Option<Vec<&Sum>> = parts.iter().map(of).collect();
                collected(parts?.into_iter().flat_map(|sum| sum.iter().cloned()).collect())
            }
            Term::Negate(part) => Some(scaled(of(part)?, &Number::from(-1))),
            Term::Divide(part, divisor) => Some(scaled(of(part)?, &Number::ONE.checked_div(divisor)?)),
            Term::Call(Function::InUnit(unit), parts) => {
                let [part] = &**parts else { return None };
                Some(scaled(of(part)?, &Number::ONE.checked_div(&unit.size()?)?))
            }
            Term::Multiply(left, right) => {
                let (left, right) = (Arc::clone(of(left)?), Arc::clone(of(right)?));
                self.multiply(&left, &right)
            }
            _ => None,
        }
    }

    /// Multiplied out; `None` where nothing would be left or there are too many summands.
    fn multiply(&mut self, left: &Sum, right: &Sum) -> Option<Sum> {
        match (&**left, &**right) {
            ([(ONE, factor)], _) => return Some(scaled(right, factor)),
            (_, [(ONE, factor)]) => return Some(scaled(left, factor)),
            ([], _) | (_, []) => return None,
            _ if left.len() * right.len() > SUMMANDS => return None,
            _ => {}
        }
        let mut summands = Vec::with_capacity(left.len() * right.len());
        for (one, coefficient) in left.iter() {
            for (other, factor) in right.iter() {
                summands.push((self.both(*one, *other), coefficient * factor));
            }
        }
        collected(summands)
    }

    /// The product of two products.
    fn both(&mut self, one: Product, other: Product) -> Product {
        if let Some(product) = self.multiplied.get(&(one, other)) {
            return *product;
        }
        let atoms = |product: Product| self.products.get(product as usize).map_or(&[][..], |atoms| atoms);
        let mut both = [atoms(one), atoms(other)].concat();
        both.sort_unstable();
        let product = self.product(both.into());
        self.multiplied.insert((one, other), product);
        product
    }

    fn product(&mut self, atoms: Box<[TermId]>) -> Product {
        let next = number(self.products.len());
        let product = *self.product_numbers.entry(atoms.clone()).or_insert(next);
        if product == next {
            self.products.push(atoms);
        }
        product
    }
}

impl Default for NormalForms {
    fn default() -> Self {
        let mut forms = Self {
            products: Vec::new(),
            product_numbers: FxHashMap::default(),
            multiplied: FxHashMap::default(),
            sums: FxHashMap::default(),
            comparisons: FxHashMap::default(),
        };
        forms.product(Box::new([])); // `ONE`
        forms
    }
}

fn is_arithmetic(term: &Term) -> bool {
    matches!(
        term,
        Term::Add(_)
            | Term::Negate(_)
            | Term::Multiply(..)
            | Term::Divide(..)
            | Term::Call(Function::InUnit(_), _)
    )
}

/// Every coefficient times a factor that is not nought.
fn scaled(sum: &Sum, factor: &Number) -> Sum {
    sum.iter()
        .map(|(product, coefficient)| (*product, coefficient * factor))
        .collect()
}

/// Adds up summands of the same product; `None` where atoms would be lost or there are too many.
fn collected(mut summands: Vec<(Product, Number)>) -> Option<Sum> {
    summands.sort_by_key(|(product, _)| *product);
    summands.dedup_by(|(product, coefficient), (before, so_far)| {
        let same = product == before;
        if same {
            *so_far = &*so_far + &*coefficient;
        }
        same
    });
    let nought = |(_, coefficient): &(Product, Number)| *coefficient == Number::ZERO;
    if summands
        .first()
        .is_some_and(|first| first.0 == ONE && nought(first))
    {
        summands.remove(0);
    }
    (!summands.iter().any(nought) && summands.len() <= SUMMANDS).then(|| summands.into())
}
