//! Replaces an attribute by a value throughout a term.
//!
//! Cost: one visit a part that reads the attribute, each remembered. Never recursive: figures built on figures may be
//! thousands deep.

use astragal_model::{AttributeIndex, Value};

use crate::term::{Term, TermId, Terms};

/// LIMIT: how many replaced terms are remembered before the memory is cleared.
const REMEMBERED: usize = 2_000_000;

/// An attribute and the value that it takes: its position among the attribute's values, and what it reads as.
pub(crate) struct Replacement<'a> {
    pub(crate) attribute: AttributeIndex,
    pub(crate) position: u16,
    /// An option or *not asked*.
    pub(crate) value: Value,
    /// A property of the option; `None` when it has none of this name, or is not asked.
    pub(crate) property: &'a dyn Fn(&astragal_model::Id) -> Option<Value>,
}

impl Terms {
    /// What a term becomes when an attribute takes a value.
    pub(crate) fn replace(&mut self, root: TermId, replacement: &Replacement<'_>) -> TermId {
        if self.replaced.len() > REMEMBERED {
            self.replaced.clear();
        }
        let mut stack = vec![root];
        let mut waiting = Vec::new();
        while let Some(term) = stack.last().copied() {
            if self.after(term, replacement).is_some() {
                stack.pop();
                continue;
            }
            waiting.clear();
            self.term(term).parts(|part| waiting.push(part));
            waiting.retain(|part| self.after(*part, replacement).is_none());
            if waiting.is_empty() {
                let made = self.rebuilt(term, replacement);
                self.replaced
                    .insert((term, replacement.attribute, replacement.position), made);
                stack.pop();
            } else {
                stack.extend_from_slice(&waiting);
            }
        }
        self.after(root, replacement).unwrap_or(root)
    }

    /// What a term becomes, where that is known.
    fn after(&self, term: TermId, replacement: &Replacement<'_>) -> Option<TermId> {
        if !self.reads(term).contains(replacement.attribute) {
            return Some(term);
        }
        self.replaced
            .get(&(term, replacement.attribute, replacement.position))
            .copied()
    }

    fn rebuilt(&mut self, term: TermId, replacement: &Replacement<'_>) -> TermId {
        let of = |terms: &Self, part: TermId| terms.after(part, replacement).unwrap_or(part);
        let all =
            |terms: &Self, parts: &[TermId]| parts.iter().map(|part| of(terms, *part)).collect::<Vec<_>>();
        match self.term(term).clone() {
            Term::Attribute(_) => self.constant(Some(replacement.value.clone())),
            Term::Property(_, property) => {
                let value = (replacement.property)(&property);
                self.constant(value)
            }
            Term::IsAsked(_) => self.truth(replacement.value != Value::NotAsked),
            Term::Not(part) => self.not(of(self, part)),
            Term::And(parts) => self.and(all(self, &parts)),
            Term::Or(parts) => self.or(all(self, &parts)),
            Term::Compare(comparison, left, right) => {
                self.compare(comparison, of(self, left), of(self, right))
            }
            Term::Add(parts) => self.add(all(self, &parts)),
            Term::Negate(part) => self.negate(of(self, part)),
            Term::Multiply(left, right) => self.multiply(of(self, left), of(self, right)),
            Term::Divide(part, divisor) => self.divide(of(self, part), &divisor),
            Term::Conditional(condition, then, otherwise) => {
                self.conditional(of(self, condition), of(self, then), of(self, otherwise))
            }
            Term::Call(function, parts) => self.call(function, all(self, &parts)),
            Term::Admits { cell, key, not_asked } => self.admits_numbered(cell, of(self, key), not_asked),
            Term::LookUp {
                rows,
                row_match,
                keys,
            } => self.look_up(rows, row_match, all(self, &keys)),
            Term::Charge { item, parts } => self.charge(item, all(self, &parts)),
            Term::Departure {
                attribute,
                own,
                standard,
            } => self.departure(
                attribute,
                of(self, own),
                standard.map(|standard| of(self, standard)),
            ),
            Term::Constant(_)
            | Term::Measure(_)
            | Term::DeductedBy(_)
            | Term::Fact(_)
            | Term::Wanted(_)
            | Term::Waived(_) => term,
        }
    }
}
