//! A term as a relation: it reads the values of its attributes and folds.
//!
//! A state is a term. Always holds: two ways to the same term are one state.

use std::cell::RefCell;
use std::rc::Rc;

use astragal_model::{AttributeIndex, Value};

use crate::ground::Shared;
use crate::label::Label;
use crate::limit::{Limit, Limits};
use crate::network::{Decision, Relation, RelationState, Variable};
use crate::term::{Replacement, Term, TermId};

/// What a term stands for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Kind {
    /// A rule: what does not come to true does not hold.
    Rule,
    /// A charge: false costs nothing.
    Charge,
}

impl Kind {
    /// The truth value that makes a relation say nothing.
    pub(crate) fn nothing(self) -> bool {
        self == Self::Rule
    }
}

/// A term that becomes a relation, with the name of where it comes from.
pub(crate) type Root = (String, Kind, TermId);

/// A term as a relation.
pub(crate) struct TermRelation {
    name: String,
    kind: Kind,
    root: TermId,
    scope: Vec<Variable>,
    order: Vec<AttributeIndex>,
    limits: Limits,
    shared: Rc<RefCell<Shared>>,
}

impl TermRelation {
    pub(crate) fn new(name: String, kind: Kind, root: TermId, shared: &Rc<RefCell<Shared>>) -> Self {
        let reads = shared.borrow().terms.reads(root).positions();
        let scope = reads
            .into_iter()
            .map(|at| Variable(u32::try_from(at).unwrap_or(u32::MAX)))
            .collect();
        Self {
            name,
            kind,
            root,
            scope,
            order: Vec::new(),
            limits: Limits::default(),
            shared: Rc::clone(shared),
        }
    }
}

impl Relation for TermRelation {
    fn name(&self) -> &str {
        &self.name
    }

    fn scope(&self) -> &[Variable] {
        &self.scope
    }

    fn start(&mut self, order: &[Variable], limits: &Limits) -> Result<RelationState, Limit> {
        self.limits = *limits;
        self.order = order
            .iter()
            .map(|variable| AttributeIndex(variable.index()))
            .collect();
        Ok(self.root.0)
    }

    fn decision(&self, state: RelationState, _position: usize) -> Decision {
        let mut shared = self.shared.borrow_mut();
        let term = TermId(state);
        match (shared.terms.term(term), self.kind) {
            (Term::Constant(Some(Value::Bool(truth))), kind) if *truth == kind.nothing() => {
                Decision::Allowed(Label::empty())
            }
            (Term::Constant(_), Kind::Rule) => Decision::Forbidden,
            _ if !shared.terms.reads(term).is_empty() => Decision::Open,
            (_, Kind::Rule) => Decision::Allowed(Label::new(vec![shared.gate(term, &self.name)], Vec::new())),
            (_, Kind::Charge) => {
                Decision::Allowed(Label::new(Vec::new(), vec![shared.cell(term, &self.name)]))
            }
        }
    }

    fn after(
        &mut self,
        state: RelationState,
        position: usize,
        states: &mut Vec<RelationState>,
    ) -> Result<(), Limit> {
        let Some(attribute) = self.order.get(position).copied() else {
            return Ok(());
        };
        let mut shared = self.shared.borrow_mut();
        let Shared {
            terms,
            values,
            properties,
            ..
        } = &mut *shared;
        let values = values.get(attribute.0).map_or(&[][..], |values| values);
        let properties = properties.get(attribute.0);
        let property = |at: usize, name: &astragal_model::Id| {
            let of_option = properties.and_then(|properties| properties.get(at));
            of_option.and_then(|all| all.get(name)).cloned()
        };
        let replacement = Replacement {
            attribute,
            values,
            property: &property,
        };
        let after = terms.replace(TermId(state), &replacement);
        states.extend(after.map(|term| term.0));
        if terms.bytes() > self.limits.bytes {
            return Err(Limit::RelationBytes {
                relation: self.name.clone(),
                limit: self.limits.bytes,
            });
        }
        if shared.gates.len() > self.limits.gates || shared.cells.len() > self.limits.cells {
            return shared.within(&self.limits);
        }
        Ok(())
    }
}
