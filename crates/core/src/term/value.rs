//! Works terms out that read no attribute: gates and the parts of charges, in one walk.
//!
//! Always holds: a term has the outcome that the judge would come to with the same measures, facts and waivers.
//! Cost: one visit a term, parts first; never recursive.

use astragal_model::{Cell, Id, Outcome, RowMatch, Site, UndefinedCause, Value, Want, operate};

use crate::term::{Arena, LookUpRow, Term, TermId};

/// What is known of the opening and its place, and the outcomes of terms worked out so far.
pub(crate) struct Known<'a> {
    pub(crate) site: &'a Site,
    /// Whether a waiver releases the unit from a rule.
    pub(crate) waived: &'a dyn Fn(&Id) -> bool,
}

static UNDEFINED: Outcome = Outcome::Undefined(UndefinedCause::IllTyped);

/// The outcomes of all terms of an arena.
#[derive(Debug)]
pub(crate) struct Outcomes(Vec<Outcome>);

impl Outcomes {
    pub(crate) fn of(&self, term: TermId) -> &Outcome {
        self.0.get(term.0 as usize).unwrap_or(&UNDEFINED)
    }
}

impl Arena {
    /// The outcomes of all terms, none of which reads an attribute.
    pub(crate) fn work_out(&self, known: &Known<'_>) -> Outcomes {
        let mut outcomes = Outcomes(Vec::with_capacity(self.terms.len()));
        for term in &self.terms {
            let outcome = self.outcome_of(term, known, &outcomes);
            outcomes.0.push(outcome);
        }
        outcomes
    }

    fn outcome_of(&self, term: &Term, known: &Known<'_>, outcomes: &Outcomes) -> Outcome {
        let of = |part: &TermId| outcomes.of(*part);
        match term {
            Term::Constant(Some(value)) => Outcome::Known(value.clone()),
            Term::Constant(None) | Term::Charge { .. } | Term::Departure { .. } => UNDEFINED.clone(),
            Term::Attribute(attribute)
            | Term::Property(attribute, _)
            | Term::IsAsked(attribute)
            | Term::Wanted(attribute) => Outcome::want(Want::Choice(*attribute)),
            Term::Measure(index) => match known.site.measures.get(*index).and_then(Option::as_ref) {
                Some(measured) => Outcome::Known(measured.value.clone()),
                None => Outcome::want(Want::Measure(*index)),
            },
            Term::DeductedBy(index) => match known.site.deducted_by(*index) {
                Some(by) => Outcome::Known(Value::Option(Id::new(by.word()))),
                None => Outcome::want(Want::DeductedBy(*index)),
            },
            Term::Fact(index) => match known.site.facts.get(*index).and_then(Option::as_ref) {
                Some(value) => Outcome::Known(value.clone()),
                None => Outcome::want(Want::Fact(*index)),
            },
            Term::Waived(rule) => Outcome::truth((known.waived)(rule)),
            Term::Not(part) => of(part).clone().not(),
            Term::And(parts) => Outcome::all(parts.iter().map(of)),
            Term::Or(parts) => Outcome::any(parts.iter().map(of)),
            Term::Compare(comparison, left, right) => operate::compare(*comparison, of(left), of(right)),
            Term::Add(parts) => match &**parts {
                [one, other] => operate::add(&[of(one), of(other)]),
                parts => operate::add(&parts.iter().map(of).collect::<Vec<_>>()),
            },
            Term::Negate(part) => operate::negate(of(part)),
            Term::Multiply(left, right) => operate::multiply(of(left), of(right)),
            Term::Divide(part, divisor) => operate::divide(of(part), divisor),
            Term::Conditional(condition, then, otherwise) => operate::conditional(
                of(condition).clone(),
                || of(then).clone(),
                || of(otherwise).clone(),
            ),
            Term::Call(function, parts) => match &**parts {
                [one] => operate::call(*function, &[of(one)]),
                [one, other] => operate::call(*function, &[of(one), of(other)]),
                parts => operate::call(*function, &parts.iter().map(of).collect::<Vec<_>>()),
            },
            Term::Admits { cell, key, not_asked } => admits(self.cell(*cell), of(key), *not_asked),
            Term::LookUp {
                rows,
                row_match,
                keys,
            } => self.looked_up(self.rows(*rows), *row_match, keys.iter().map(of)),
        }
    }

    fn looked_up<'a>(
        &self,
        rows: &[LookUpRow],
        row_match: RowMatch,
        keys: impl Iterator<Item = &'a Outcome>,
    ) -> Outcome {
        let mut values = Vec::new();
        let mut wants: Option<astragal_model::Wants> = None;
        for key in keys {
            match key {
                Outcome::Known(Value::NotAsked) => return UNDEFINED.clone(),
                Outcome::Known(value) => values.push(value),
                Outcome::Unknown(more) => wants.get_or_insert_default().extend(more.iter().cloned()),
                Outcome::Undefined(_) => return key.clone(),
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
        value.map_or_else(|| UNDEFINED.clone(), |value| Outcome::Known(value.clone()))
    }
}

fn admits(cell: &Cell, key: &Outcome, not_asked: bool) -> Outcome {
    match (cell, key) {
        (Cell::Any, _) => Outcome::truth(true),
        (_, Outcome::Known(Value::NotAsked)) => Outcome::truth(not_asked),
        (cell, Outcome::Known(value)) => Outcome::truth(cell.admits(value)),
        (_, other) => other.clone(),
    }
}
