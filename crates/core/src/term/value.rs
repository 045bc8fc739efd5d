//! Works terms out that read no attribute: gates and the parts of charges, in one walk.
//!
//! Always holds: a term has the outcome that the judge would come to with the same measures, facts and waivers.
//! Cost: one visit a term, parts first; never recursive.

use astragal_model::{Cell, DeductedBy, Id, Outcome, RowMatch, Site, UndefinedCause, Value, Want, operate};
use rustc_hash::FxHashSet;

use crate::term::{LookUpRow, Term, TermId, Terms};

/// What is known of the opening and its place, and the outcomes of terms worked out so far.
pub(crate) struct Known<'a> {
    pub(crate) site: &'a Site,
    /// Whether a waiver releases the unit from a rule.
    pub(crate) waived: &'a dyn Fn(&Id) -> bool,
}

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

    /// The outcomes of terms in the order of [`Terms::closure`], as a list with one place a term of the arena.
    pub(crate) fn work_out(&self, closure: &[TermId], known: &Known<'_>) -> Vec<Option<Outcome>> {
        let mut outcomes: Vec<Option<Outcome>> = vec![None; self.terms.len()];
        for term in closure {
            let outcome = self.outcome_of(*term, known, &outcomes);
            if let Some(slot) = outcomes.get_mut(term.0 as usize) {
                *slot = Some(outcome);
            }
        }
        outcomes
    }

    fn outcome_of(&self, term: TermId, known: &Known<'_>, outcomes: &[Option<Outcome>]) -> Outcome {
        let undefined = || Outcome::Undefined(UndefinedCause::IllTyped);
        let of = |part: &TermId| {
            let outcome = outcomes.get(part.0 as usize).and_then(Option::as_ref);
            outcome.cloned().unwrap_or_else(undefined)
        };
        match self.term(term) {
            Term::Constant(Some(value)) => Outcome::Known(value.clone()),
            Term::Constant(None) | Term::Charge { .. } | Term::Departure { .. } => undefined(),
            Term::Attribute(attribute)
            | Term::Property(attribute, _)
            | Term::IsAsked(attribute)
            | Term::Wanted(attribute) => Outcome::want(Want::Choice(*attribute)),
            Term::Measure(index) => match known.site.measures.get(*index).and_then(Option::as_ref) {
                Some(measured) => Outcome::Known(measured.value.clone()),
                None => Outcome::want(Want::Measure(*index)),
            },
            Term::DeductedBy(index) => {
                let measured = known.site.measures.get(*index).and_then(Option::as_ref);
                match measured
                    .and_then(|measured| measured.deducted_by)
                    .map(DeductedBy::word)
                {
                    Some(word) => Outcome::Known(Value::Option(Id::new(word))),
                    None => Outcome::want(Want::DeductedBy(*index)),
                }
            }
            Term::Fact(index) => match known.site.facts.get(*index).and_then(Option::as_ref) {
                Some(value) => Outcome::Known(value.clone()),
                None => Outcome::want(Want::Fact(*index)),
            },
            Term::Waived(rule) => Outcome::truth((known.waived)(rule)),
            Term::Not(part) => of(part).not(),
            Term::And(parts) => Outcome::all(parts.iter().map(of)),
            Term::Or(parts) => Outcome::any(parts.iter().map(of)),
            Term::Compare(comparison, left, right) => operate::compare(*comparison, &of(left), &of(right)),
            Term::Add(parts) => operate::add(parts.iter().map(of)),
            Term::Negate(part) => operate::negate(of(part)),
            Term::Multiply(left, right) => operate::multiply(of(left), of(right)),
            Term::Divide(part, divisor) => operate::divide(of(part), divisor),
            Term::Conditional(condition, then, otherwise) => {
                operate::conditional(of(condition), || of(then), || of(otherwise))
            }
            Term::Call(function, parts) => operate::call(*function, parts.iter().map(of)),
            Term::Admits { cell, key, not_asked } => admits(self.cell(*cell), of(key), *not_asked),
            Term::LookUp {
                rows,
                row_match,
                keys,
            } => self.looked_up(self.rows(*rows), *row_match, keys.iter().map(of).collect()),
        }
    }

    fn looked_up(&self, rows: &[LookUpRow], row_match: RowMatch, keys: Vec<Outcome>) -> Outcome {
        let mut values = Vec::with_capacity(keys.len());
        let mut wants: Option<astragal_model::Wants> = None;
        for key in keys {
            match key {
                Outcome::Known(Value::NotAsked) => return Outcome::Undefined(UndefinedCause::IllTyped),
                Outcome::Known(value) => values.push(value),
                Outcome::Unknown(more) => wants.get_or_insert_default().extend(more),
                Outcome::Undefined(cause) => return Outcome::Undefined(cause),
            }
        }
        if let Some(wants) = wants {
            return Outcome::Unknown(wants);
        }
        let matches = |(cells, _): &&LookUpRow| {
            cells
                .iter()
                .zip(&values)
                .all(|(cell, value)| self.cell(*cell).admits(value))
        };
        let mut values = rows.iter().filter(matches).map(|(_, value)| value);
        let value = match row_match {
            RowMatch::Only | RowMatch::First => values.next(),
            RowMatch::Least => values.min(),
            RowMatch::Greatest => values.max(),
        };
        value.map_or(Outcome::Undefined(UndefinedCause::IllTyped), |value| {
            Outcome::Known(value.clone())
        })
    }
}

fn admits(cell: &Cell, key: Outcome, not_asked: bool) -> Outcome {
    match (cell, key) {
        (Cell::Any, _) => Outcome::truth(true),
        (_, Outcome::Known(Value::NotAsked)) => Outcome::truth(not_asked),
        (cell, Outcome::Known(value)) => Outcome::truth(cell.admits(&value)),
        (_, other) => other,
    }
}
