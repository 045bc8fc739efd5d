//! Values of expressions, and the three ways in which an expression may end: known, unknown, undefined.
//!
//! *Unknown* is a missing measure or fact, or an attribute that is still open; it follows Kleene's logic and carries
//! what is wanted to know it. *Undefined* is a value of its own: a figure without a row. `unknown && false` is false;
//! `unknown && true` is unknown; `undefined && false` is false; `undefined && unknown` is unknown, since the
//! unknown side may still decide.
//!
//! Always holds: learning more never changes a known or an undefined answer; it only settles unknown ones.
//!
//! Source: S. C. Kleene, Introduction to Metamathematics, 1952, section 64 (strong three-valued logic).

use std::borrow::Borrow;
use std::collections::BTreeSet;

use jiff::civil::Date;

use crate::id::{AttributeIndex, FactIndex, FigureIndex, Id, ItemIndex, MeasureIndex};
use crate::trade_function::TradeFunction;
use astragal_exact::Number;

/// The type of a value.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum ValueType {
    /// True or false.
    Bool,
    /// A number without a dimension of length.
    Number,
    /// A length; held in inches.
    Length,
    /// An area; held in square inches.
    Area,
    /// A calendar date.
    Date,
    /// An option of an attribute or of an enumerated fact.
    Option,
}

impl ValueType {
    /// Whether `<` and its like compare values of this type.
    #[must_use]
    pub fn is_ordered(self) -> bool {
        matches!(self, Self::Number | Self::Length | Self::Area | Self::Date)
    }

    /// The word for the type, with its article, as findings use it.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Bool => "a yes or no",
            Self::Number => "a number",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Date => "a date",
            Self::Option => "an option",
        }
    }
}

/// A known value.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Value {
    /// True or false.
    Bool(bool),
    /// A number without a dimension of length.
    Number(Number),
    /// A length in inches.
    Length(Number),
    /// An area in square inches.
    Area(Number),
    /// A calendar date.
    Date(Date),
    /// An option, by its id.
    Option(Id),
    /// What an attribute is whose `applies_when` is false. It equals nothing, itself included.
    NotAsked,
}

impl Value {
    /// The type of the value; `NotAsked` belongs to attributes and counts as an option.
    #[must_use]
    pub fn value_type(&self) -> ValueType {
        match self {
            Self::Bool(_) => ValueType::Bool,
            Self::Number(_) => ValueType::Number,
            Self::Length(_) => ValueType::Length,
            Self::Area(_) => ValueType::Area,
            Self::Date(_) => ValueType::Date,
            Self::Option(_) | Self::NotAsked => ValueType::Option,
        }
    }

    /// The number inside a number, a length or an area.
    #[must_use]
    pub fn magnitude(&self) -> Option<&Number> {
        match self {
            Self::Number(number) | Self::Length(number) | Self::Area(number) => Some(number),
            _ => None,
        }
    }

    /// A value of the same type with another number inside.
    #[must_use]
    pub(crate) fn with_magnitude(&self, number: Number) -> Option<Self> {
        match self {
            Self::Number(_) => Some(Self::Number(number)),
            Self::Length(_) => Some(Self::Length(number)),
            Self::Area(_) => Some(Self::Area(number)),
            _ => None,
        }
    }
}

/// One thing that would have to be known.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Want {
    /// The measure was not taken.
    Measure(MeasureIndex),
    /// Nobody said who deducts from the measure.
    DeductedBy(MeasureIndex),
    /// The site fact was not recorded.
    Fact(FactIndex),
    /// The attribute is still to choose.
    Choice(AttributeIndex),
    /// The size lies beyond the price grid of this item; the plant must sign off and price it.
    SignOff(ItemIndex),
}

/// Everything that would have to be known, sorted.
pub type Wants = BTreeSet<Want>;

/// Why a value is undefined.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub enum UndefinedCause {
    /// The figure's table has no row for its keys.
    NoRow(FigureIndex),
    /// A key or a property belongs to an attribute that is not asked.
    NotAsked(AttributeIndex),
    /// The chosen option lacks the property.
    NoProperty(AttributeIndex, Id),
    /// The number needs more than [`crate::NUMBER_BITS_MAX`] bits.
    TooLarge,
    /// A function of the trade gives nothing for these values: a wind speed that it does not cover, a thickness whose weight is
    /// not published.
    NotCovered(TradeFunction),
    /// The tree applies an operator to types that it does not take. Catalog files cannot cause it.
    IllTyped,
}

/// How an expression ends.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Outcome {
    /// The value is known.
    Known(Value),
    /// The value depends on what is wanted.
    Unknown(Wants),
    /// There is no value.
    Undefined(UndefinedCause),
}

impl Outcome {
    /// A known truth value.
    #[must_use]
    pub fn truth(value: bool) -> Self {
        Self::Known(Value::Bool(value))
    }

    /// Unknown for want of one thing.
    #[must_use]
    pub fn want(want: Want) -> Self {
        Self::Unknown(Wants::from([want]))
    }

    /// Whether this is the known truth value `value`.
    #[must_use]
    pub fn is_truth(&self, value: bool) -> bool {
        matches!(self, Self::Known(Value::Bool(found)) if *found == value)
    }

    /// The known value, if it is known.
    #[must_use]
    pub fn known(&self) -> Option<&Value> {
        match self {
            Self::Known(value) => Some(value),
            _ => None,
        }
    }

    /// What is wanted, if it is unknown.
    #[must_use]
    pub fn wants(&self) -> Option<&Wants> {
        match self {
            Self::Unknown(wants) => Some(wants),
            _ => None,
        }
    }

    /// Kleene negation.
    #[must_use]
    #[expect(
        clippy::should_implement_trait,
        reason = "an outcome is not a truth value: `!` would hide the third and fourth"
    )]
    pub fn not(self) -> Self {
        match self {
            Self::Known(Value::Bool(value)) => Self::truth(!value),
            Self::Known(_) => Self::Undefined(UndefinedCause::IllTyped),
            other => other,
        }
    }

    /// Conjunction: false decides, then unknown, then undefined; otherwise true.
    pub fn all(outcomes: impl IntoIterator<Item: Borrow<Self>>) -> Self {
        Self::decide(outcomes, false)
    }

    /// Disjunction: true decides, then unknown, then undefined; otherwise false.
    pub fn any(outcomes: impl IntoIterator<Item: Borrow<Self>>) -> Self {
        Self::decide(outcomes, true)
    }

    fn decide(outcomes: impl IntoIterator<Item: Borrow<Self>>, decisive: bool) -> Self {
        let mut wants: Option<Wants> = None;
        let mut undefined = None;
        for outcome in outcomes {
            match outcome.borrow() {
                Self::Known(Value::Bool(value)) if *value == decisive => return Self::truth(decisive),
                Self::Known(Value::Bool(_)) => {}
                Self::Known(_) => undefined = undefined.or(Some(UndefinedCause::IllTyped)),
                Self::Unknown(more) => wants.get_or_insert_default().extend(more.iter().cloned()),
                Self::Undefined(cause) => undefined = undefined.or_else(|| Some(cause.clone())),
            }
        }
        match (wants, undefined) {
            (Some(wants), _) => Self::Unknown(wants),
            (None, Some(cause)) => Self::Undefined(cause),
            (None, None) => Self::truth(!decisive),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unknown(measure: usize) -> Outcome {
        Outcome::want(Want::Measure(MeasureIndex(measure)))
    }

    fn undefined() -> Outcome {
        Outcome::Undefined(UndefinedCause::TooLarge)
    }

    #[test]
    fn false_decides_a_conjunction_whatever_else_stands_there() {
        assert!(Outcome::all([unknown(0), undefined(), Outcome::truth(false)]).is_truth(false));
        assert!(Outcome::any([unknown(0), undefined(), Outcome::truth(true)]).is_truth(true));
    }

    #[test]
    fn unknown_beside_undefined_stays_unknown_since_it_may_still_decide() {
        assert_eq!(Outcome::all([undefined(), unknown(0)]), unknown(0));
        assert_eq!(Outcome::any([undefined(), unknown(0)]), unknown(0));
    }

    #[test]
    fn undefined_is_absorbed_only_where_the_other_side_decides() {
        assert_eq!(Outcome::all([undefined(), Outcome::truth(true)]), undefined());
        assert_eq!(Outcome::any([undefined(), Outcome::truth(false)]), undefined());
    }

    #[test]
    fn two_unknowns_want_both() {
        let both = Outcome::all([unknown(0), Outcome::truth(true), unknown(1)]);
        assert_eq!(both.wants().map(BTreeSet::len), Some(2));
    }
}
