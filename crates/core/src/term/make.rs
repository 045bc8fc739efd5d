//! Makes terms, folding what is known already.
//!
//! `true && x` is `x`; `false && x` is `false`; `undefined && x` stays, since `x` may still be false. The parts of `&&`
//! and `||` are flattened, sorted and stand once; `a > b` is stored as `b < a`.

use astragal_model::{
    AttributeIndex, Cell, Comparison, Function, ItemIndex, Number, Outcome, RowMatch, UndefinedCause, Value,
    operate,
};

use crate::term::{CellNumber, LookUpRow, RowsNumber, Term, TermId, Terms};

impl Terms {
    pub(crate) fn constant(&mut self, value: Option<Value>) -> TermId {
        self.store(Term::Constant(value))
    }

    pub(crate) fn truth(&mut self, truth: bool) -> TermId {
        self.constant(Some(Value::Bool(truth)))
    }

    /// A term without parts.
    pub(crate) fn leaf(&mut self, term: Term) -> TermId {
        self.store(term)
    }

    pub(crate) fn not(&mut self, part: TermId) -> TermId {
        if let Some(outcome) = self.outcome(part) {
            return self.folded(outcome.not());
        }
        match *self.term(part) {
            Term::Not(inner) => inner,
            Term::Compare(comparison, left, right) => self.compare(comparison.opposite(), left, right),
            _ => self.store(Term::Not(part)),
        }
    }

    pub(crate) fn and(&mut self, parts: impl AsRef<[TermId]>) -> TermId {
        self.connect(parts.as_ref(), false)
    }

    pub(crate) fn or(&mut self, parts: impl AsRef<[TermId]>) -> TermId {
        self.connect(parts.as_ref(), true)
    }

    /// `||` when true is decisive, `&&` when false is.
    fn connect(&mut self, parts: &[TermId], decisive: bool) -> TermId {
        let mut kept = Vec::with_capacity(parts.len());
        for part in parts {
            match self.term(*part) {
                Term::Constant(Some(Value::Bool(truth))) if *truth == decisive => return *part,
                Term::Constant(Some(Value::Bool(_))) => {}
                Term::Or(inner) if decisive => kept.extend_from_slice(inner),
                Term::And(inner) if !decisive => kept.extend_from_slice(inner),
                _ => kept.push(*part),
            }
        }
        kept.sort_unstable();
        kept.dedup();
        match kept.as_slice() {
            [] => self.truth(!decisive),
            // One part that is no truth value, as an option is, makes the whole undefined; nothing of a catalog is so.
            [only] => *only,
            _ if decisive => self.store(Term::Or(kept.into())),
            _ => self.store(Term::And(kept.into())),
        }
    }

    pub(crate) fn compare(&mut self, comparison: Comparison, left: TermId, right: TermId) -> TermId {
        if let Some(outcomes) = self.outcomes(&[left, right])
            && let [one, other] = outcomes.as_slice()
        {
            return self.folded(operate::compare(comparison, one, other));
        }
        let (comparison, left, right) = match comparison {
            Comparison::Greater => (Comparison::Less, right, left),
            Comparison::GreaterOrEqual => (Comparison::LessOrEqual, right, left),
            Comparison::Equal | Comparison::NotEqual => (comparison, left.min(right), left.max(right)),
            other => (other, left, right),
        };
        match self.compared_within(comparison, left, right) {
            Some(term) => term,
            None => self.in_normal_form(comparison, left, right),
        }
    }

    /// A constant against `condition ? constant : rest` becomes a truth value a side: whether a conditional has this option is
    /// a condition.
    fn compared_within(&mut self, comparison: Comparison, left: TermId, right: TermId) -> Option<TermId> {
        let is_constant = |term: TermId| matches!(self.term(term), Term::Constant(_));
        let constant_first = match (is_constant(left), is_constant(right)) {
            (true, false) => true,
            (false, true) => false,
            _ => return None,
        };
        let (constant, mut rest) = if constant_first {
            (left, right)
        } else {
            (right, left)
        };
        let mut chain = Vec::new();
        while let Term::Conditional(condition, then, otherwise) = *self.term(rest) {
            if !is_constant(then) {
                break;
            }
            chain.push((condition, then));
            rest = otherwise;
        }
        if chain.is_empty() {
            return None;
        }
        let of = |terms: &mut Self, side: TermId| {
            let (left, right) = if constant_first {
                (constant, side)
            } else {
                (side, constant)
            };
            terms.compare(comparison, left, right)
        };
        let mut made = of(self, rest);
        for (condition, then) in chain.into_iter().rev() {
            let then = of(self, then);
            made = self.conditional(condition, then, made);
        }
        Some(made)
    }

    pub(crate) fn add(&mut self, parts: impl AsRef<[TermId]>) -> TermId {
        let parts = parts.as_ref();
        match self.outcomes(parts) {
            Some(outcomes) => self.folded(operate::add(&outcomes)),
            None => self.store(Term::Add(parts.into())),
        }
    }

    pub(crate) fn negate(&mut self, part: TermId) -> TermId {
        match self.outcome(part) {
            Some(outcome) => self.folded(operate::negate(&outcome)),
            None => self.store(Term::Negate(part)),
        }
    }

    pub(crate) fn multiply(&mut self, left: TermId, right: TermId) -> TermId {
        match self.outcomes(&[left, right]).as_deref() {
            Some([left, right]) => self.folded(operate::multiply(left, right)),
            _ => self.store(Term::Multiply(left, right)),
        }
    }

    pub(crate) fn divide(&mut self, part: TermId, divisor: &Number) -> TermId {
        match self.outcome(part) {
            Some(outcome) => self.folded(operate::divide(&outcome, divisor)),
            None => self.store(Term::Divide(part, divisor.clone())),
        }
    }

    pub(crate) fn conditional(&mut self, condition: TermId, then: TermId, otherwise: TermId) -> TermId {
        match self.term(condition) {
            Term::Constant(Some(Value::Bool(true))) => then,
            Term::Constant(Some(Value::Bool(false))) => otherwise,
            Term::Constant(_) => self.constant(None),
            _ if self.is_truth(then, true) && self.is_truth(otherwise, false) => condition,
            _ if self.is_truth(then, false) && self.is_truth(otherwise, true) => self.not(condition),
            _ => self.store(Term::Conditional(condition, then, otherwise)),
        }
    }

    pub(crate) fn call(&mut self, function: Function, parts: impl AsRef<[TermId]>) -> TermId {
        let parts = parts.as_ref();
        match self.outcomes(parts) {
            Some(outcomes) => self.folded(operate::call(function, &outcomes)),
            None => self.store(Term::Call(function, parts.into())),
        }
    }

    pub(crate) fn admits(&mut self, cell: &Cell, key: TermId, not_asked: bool) -> TermId {
        let cell = self.cell_number(cell);
        self.admits_numbered(cell, key, not_asked)
    }

    pub(crate) fn admits_numbered(&mut self, cell: CellNumber, key: TermId, not_asked: bool) -> TermId {
        let folded = match (self.arena.cell(cell), self.term(key)) {
            (Cell::Any, _) => Some(Some(true)),
            (_, Term::Constant(Some(Value::NotAsked))) => Some(Some(not_asked)),
            (cell, Term::Constant(Some(value))) => Some(Some(cell.admits(value))),
            (_, Term::Constant(None)) => Some(None),
            _ => None,
        };
        match folded {
            Some(truth) => self.constant(truth.map(Value::Bool)),
            None => self.store(Term::Admits { cell, key, not_asked }),
        }
    }

    /// A look-up. Keys that are known choose among the rows and are left out; one that is undefined or not asked makes
    /// the whole undefined.
    pub(crate) fn look_up(
        &mut self,
        rows: RowsNumber,
        row_match: RowMatch,
        keys: impl AsRef<[TermId]>,
    ) -> TermId {
        let keys = keys.as_ref();
        let known: Vec<Option<Option<Value>>> = keys
            .iter()
            .map(|key| match self.term(*key) {
                Term::Constant(value) => Some(value.clone().filter(|value| *value != Value::NotAsked)),
                _ => None,
            })
            .collect();
        if known.contains(&Some(None)) {
            return self.constant(None);
        }
        let admits = |(cells, _): &&LookUpRow| {
            cells.iter().zip(&known).all(|(cell, key)| match key {
                Some(Some(value)) => self.arena.cell(*cell).admits(value),
                _ => true,
            })
        };
        let left = |(cells, value): &LookUpRow| -> LookUpRow {
            let left = cells.iter().zip(&known).filter(|(_, key)| key.is_none());
            (left.map(|(cell, _)| *cell).collect(), value.clone())
        };
        let matching: Vec<LookUpRow> = self.arena.rows(rows).iter().filter(admits).map(left).collect();
        let keys: Vec<TermId> = keys
            .iter()
            .zip(&known)
            .filter(|(_, key)| key.is_none())
            .map(|(key, _)| *key)
            .collect();
        if keys.is_empty() {
            let mut values = matching.into_iter().map(|(_, value)| value);
            let value = match row_match {
                RowMatch::Only | RowMatch::First => values.next(),
                RowMatch::Least => values.min(),
                RowMatch::Greatest => values.max(),
            };
            return self.constant(value);
        }
        let rows = self.rows_number(matching.into());
        self.store(Term::LookUp {
            rows,
            row_match,
            keys: keys.into(),
        })
    }

    /// A charge; `false` when it is not incurred.
    pub(crate) fn charge(&mut self, item: ItemIndex, parts: impl AsRef<[TermId]>) -> TermId {
        let parts = parts.as_ref();
        match parts.first() {
            Some(when) if self.is_truth(*when, false) => *when,
            _ => self.store(Term::Charge {
                item,
                parts: parts.into(),
            }),
        }
    }

    /// That an attribute has another option than its standard; `false` once it is known that it does not.
    pub(crate) fn departure(
        &mut self,
        attribute: AttributeIndex,
        own: TermId,
        standard: Option<TermId>,
    ) -> TermId {
        let of_standard = standard.map(|standard| self.term(standard));
        let standard = match (self.term(own), of_standard) {
            (Term::Constant(Some(Value::Option(_))), Some(Term::Constant(Some(Value::Option(_)))))
                if Some(own) != standard =>
            {
                None
            }
            (Term::Constant(Some(Value::NotAsked)), _)
            | (_, Some(Term::Constant(None | Some(Value::NotAsked)))) => {
                return self.truth(false);
            }
            _ if Some(own) == standard => return self.truth(false),
            _ => standard,
        };
        self.store(Term::Departure {
            attribute,
            own,
            standard,
        })
    }

    /// The outcome of a constant.
    fn outcome(&self, term: TermId) -> Option<Outcome> {
        match self.term(term) {
            Term::Constant(Some(value)) => Some(Outcome::Known(value.clone())),
            Term::Constant(None) => Some(Outcome::Undefined(UndefinedCause::IllTyped)),
            _ => None,
        }
    }

    /// The outcomes of parts that are all constant; undefined throughout as soon as one part is, which decides.
    fn outcomes(&self, parts: &[TermId]) -> Option<Vec<Outcome>> {
        let is_open = |part: &TermId| !matches!(self.term(*part), Term::Constant(_));
        let is_undefined = |part: &TermId| matches!(self.term(*part), Term::Constant(None));
        if parts.iter().any(is_open) && !parts.iter().any(is_undefined) {
            return None;
        }
        let outcomes: Vec<Option<Outcome>> = parts.iter().map(|part| self.outcome(*part)).collect();
        let undefined = outcomes
            .iter()
            .flatten()
            .find(|outcome| matches!(outcome, Outcome::Undefined(_)));
        match undefined {
            Some(undefined) => Some(vec![undefined.clone(); parts.len()]),
            None => outcomes.into_iter().collect(),
        }
    }

    fn folded(&mut self, outcome: Outcome) -> TermId {
        match outcome {
            Outcome::Known(value) => self.constant(Some(value)),
            Outcome::Undefined(_) | Outcome::Unknown(_) => self.constant(None),
        }
    }
}
