//! Replaces an attribute by each of its values throughout a term.
//!
//! The parts that read the attribute are listed once, parts first; then each value goes through the list. What a part
//! becomes stands in its *row*, one term a value.
//!
//! Always holds: terms are made value by value, each part before what has it.
//! Cost: one visit a part that reads the attribute and value, each remembered. Never recursive: figures built on figures may
//! be thousands deep.

use astragal_model::{AttributeIndex, Value};

use crate::term::{Term, TermId, Terms};

/// LIMIT: how many replaced terms are remembered before the memory is cleared.
const REMEMBERED: usize = 2_000_000;

/// An attribute and all values that it takes.
pub(crate) struct Replacement<'a> {
    pub(crate) attribute: AttributeIndex,
    /// Options, and *not asked*.
    pub(crate) values: &'a [Value],
    /// A property of the option at a position; `None` when it has none of this name, or is not asked.
    pub(crate) property: &'a dyn Fn(usize, &astragal_model::Id) -> Option<Value>,
}

/// Parts that are to be replaced, parts first.
#[derive(Debug, Default)]
pub(crate) struct Schedule {
    /// Each with its row, and where its parts end.
    steps: Vec<(TermId, usize, usize)>,
    /// The parts of all steps, each with its row when it reads the attribute.
    parts: Vec<(TermId, Option<usize>)>,
    /// What the parts of one step become.
    made: Vec<TermId>,
}

impl Terms {
    /// What a term becomes when an attribute takes each of its values, in their order.
    pub(crate) fn replace(
        &mut self,
        root: TermId,
        replacement: &Replacement<'_>,
    ) -> impl Iterator<Item = TermId> {
        if self.replaced.len() > REMEMBERED {
            self.rows_of.clear();
            self.replaced.clear();
        }
        let mut schedule = std::mem::take(&mut self.schedule);
        self.list(root, replacement, &mut schedule);
        for position in 0..replacement.values.len() {
            self.go_through(&mut schedule, position, replacement);
        }
        self.schedule = schedule;
        let row = self.row(root, replacement.attribute);
        (0..replacement.values.len()).map(move |position| self.in_row(root, row, position))
    }

    /// Lists the parts that are not yet replaced, parts first, and gives each a row.
    fn list(&mut self, root: TermId, replacement: &Replacement<'_>, schedule: &mut Schedule) {
        schedule.steps.clear();
        schedule.parts.clear();
        let attribute = replacement.attribute;
        let mut stack = vec![root];
        while let Some(term) = stack.last().copied() {
            if !self.waits(term, attribute) {
                stack.pop();
                continue;
            }
            let waiting = stack.len();
            self.term(term).parts(|part| {
                if self.waits(part, attribute) {
                    stack.push(part);
                }
            });
            if stack.len() > waiting {
                continue;
            }
            stack.pop();
            self.term(term)
                .parts(|part| schedule.parts.push((part, self.row(part, attribute))));
            let row = self.replaced.len();
            schedule.steps.push((term, row, schedule.parts.len()));
            self.replaced.extend(replacement.values.iter().map(|_| term));
            self.rows_of.insert((term, attribute), row);
        }
    }

    /// Replaces all listed parts for one value.
    fn go_through(&mut self, schedule: &mut Schedule, position: usize, replacement: &Replacement<'_>) {
        let mut begin = 0;
        for (term, row, end) in &schedule.steps {
            let parts = schedule.parts.get(begin..*end).unwrap_or_default();
            begin = *end;
            schedule.made.clear();
            let made = parts.iter().map(|(part, row)| self.in_row(*part, *row, position));
            schedule.made.extend(made);
            let made = self.rebuilt(*term, &schedule.made, position, replacement);
            if let Some(slot) = self.replaced.get_mut(row + position) {
                *slot = made;
            }
        }
    }

    /// Whether a term reads the attribute and has no row yet.
    fn waits(&self, term: TermId, attribute: AttributeIndex) -> bool {
        self.reads(term).contains(attribute) && !self.rows_of.contains_key(&(term, attribute))
    }

    /// The row of a term; none when it does not read the attribute.
    fn row(&self, term: TermId, attribute: AttributeIndex) -> Option<usize> {
        let reads = self.reads(term).contains(attribute);
        reads
            .then(|| self.rows_of.get(&(term, attribute)).copied())
            .flatten()
    }

    /// What a term with this row becomes.
    fn in_row(&self, term: TermId, row: Option<usize>, position: usize) -> TermId {
        let made = row.and_then(|row| self.replaced.get(row + position));
        made.copied().unwrap_or(term)
    }

    /// A term with other parts.
    fn rebuilt(
        &mut self,
        term: TermId,
        parts: &[TermId],
        position: usize,
        replacement: &Replacement<'_>,
    ) -> TermId {
        let value = replacement.values.get(position);
        match (self.term(term), parts) {
            (Term::Attribute(_), _) => self.constant(value.cloned()),
            (Term::Property(_, property), _) => {
                let value = (replacement.property)(position, property);
                self.constant(value)
            }
            (Term::IsAsked(_), _) => self.truth(value != Some(&Value::NotAsked)),
            (Term::Not(_), [part]) => self.not(*part),
            (Term::And(_), parts) => self.and(parts),
            (Term::Or(_), parts) => self.or(parts),
            (Term::Compare(comparison, ..), [left, right]) => self.compare(*comparison, *left, *right),
            (Term::Add(_), parts) => self.add(parts),
            (Term::Negate(_), [part]) => self.negate(*part),
            (Term::Multiply(..), [left, right]) => self.multiply(*left, *right),
            (Term::Divide(_, divisor), [part]) => {
                let divisor = divisor.clone();
                self.divide(*part, &divisor)
            }
            (Term::Conditional(..), [condition, then, otherwise]) => {
                self.conditional(*condition, *then, *otherwise)
            }
            (Term::Call(function, _), parts) => self.call(*function, parts),
            (Term::Admits { cell, not_asked, .. }, [key]) => self.admits_numbered(*cell, *key, *not_asked),
            (Term::LookUp { rows, row_match, .. }, keys) => self.look_up(*rows, *row_match, keys),
            (Term::Charge { item, .. }, parts) => self.charge(*item, parts),
            (Term::Departure { attribute, .. }, [own, standard @ ..]) => {
                self.departure(*attribute, *own, standard.first().copied())
            }
            _ => term,
        }
    }
}
