//! A network: variables with finite domains, and relations over them that forbid, guard and price.
//!
//! This is what a catalog becomes once its rules are ground. A *variable* has values `0..n`. A *relation* says for every
//! tuple of values of its scope whether it is forbidden, and if not which *gates* must be open and which *cells* it costs;
//! what gates and cells stand for is not known here. With `colour` and `glass` of two values each, the relation "grey
//! does not go with triple glass" forbids `(1, 1)`; "grey triple costs cell 7" labels it instead.
//!
//! Always holds: a variable has at least one value; a scope names each variable once.

use crate::label::Label;
use crate::limit::{Limit, Limits};

/// A variable by its position.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Variable(pub u32);

impl Variable {
    /// The variable at a position.
    #[must_use]
    pub fn at(position: usize) -> Self {
        Self(u32::try_from(position).unwrap_or(u32::MAX))
    }

    /// The position as an index.
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// A variable's name and number of values.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Domain {
    /// The name: errors say it, and ties of the order are broken by its hash.
    pub name: String,
    /// How many values it has.
    pub size: usize,
}

/// What is known about a tuple of which only a part is known.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Decision {
    /// Every tuple that goes on from here is forbidden.
    Forbidden,
    /// Every tuple that goes on from here carries this label.
    Allowed(Label),
    /// It depends on the values to come.
    Open,
}

/// A state of a relation, by the number that it gave it.
pub type RelationState = u32;

/// A relation as a deterministic automaton: it reads the values of its scope in an order that it is told, and at the
/// end, or as soon as it can, decides.
pub trait Relation {
    /// Where it comes from, for errors.
    fn name(&self) -> &str;

    /// The variables that it reads, each once.
    fn scope(&self) -> &[Variable];

    /// Begins to read its scope in this order within these limits; returns the state before the first value.
    ///
    /// # Errors
    /// When a limit is passed.
    fn start(&mut self, order: &[Variable], limits: &Limits) -> Result<RelationState, Limit>;

    /// What a state decides before the value at this position of the order is read.
    fn decision(&self, state: RelationState, position: usize) -> Decision;

    /// Appends the state after each value of the variable at this position, in the order of the values.
    ///
    /// # Errors
    /// When a limit is passed.
    fn after(
        &mut self,
        state: RelationState,
        position: usize,
        states: &mut Vec<RelationState>,
    ) -> Result<(), Limit>;
}

/// Variables and relations.
#[derive(Default)]
pub struct Network {
    /// The variables by position.
    pub domains: Vec<Domain>,
    /// The relations, in any order.
    pub relations: Vec<Box<dyn Relation>>,
}

impl Network {
    /// Adds a variable.
    pub fn variable(&mut self, name: &str, size: usize) -> Variable {
        let variable = Variable(u32::try_from(self.domains.len()).unwrap_or(u32::MAX));
        self.domains.push(Domain {
            name: name.to_owned(),
            size,
        });
        variable
    }
}
