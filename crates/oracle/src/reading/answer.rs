//! Answers of the oracle: plain data, everything by name.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use astragal_model::Value;
use num_rational::BigRational;

use crate::reading::fraction::fraction;
use crate::reading::truth::Truth;

/// A known value.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Datum {
    /// True or false.
    Truth(bool),
    /// A number.
    Number(BigRational),
    /// A length in inches.
    Length(BigRational),
    /// An area in square inches.
    Area(BigRational),
    /// A date as text, year first, so that its order is that of the text.
    Day(String),
    /// An option.
    Word(String),
    /// The attribute is not asked.
    NotAsked,
}

/// How an expression ends.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Answer {
    /// This value.
    Is(Datum),
    /// It depends on these.
    Wants(BTreeSet<String>),
    /// It has no value, for this reason.
    Nothing(String),
}

impl Answer {
    /// A truth value.
    pub(crate) fn truth(truth: bool) -> Self {
        Self::Is(Datum::Truth(truth))
    }

    /// It depends on one thing.
    pub(crate) fn want(name: String) -> Self {
        Self::Wants(BTreeSet::from([name]))
    }

    /// The types do not fit.
    pub(crate) fn ill_typed() -> Self {
        Self::Nothing("ill typed".to_owned())
    }

    /// How the answer stands as a condition.
    pub(crate) fn as_truth(&self) -> Truth {
        match self {
            Self::Is(Datum::Truth(true)) => Truth::True,
            Self::Is(Datum::Truth(false)) => Truth::False,
            Self::Is(_) | Self::Nothing(_) => Truth::Undefined,
            Self::Wants(_) => Truth::Unknown,
        }
    }

    /// The answer of a condition that stands like this, from the answers that went into it: unknown for want of all
    /// that is wanted there, undefined for the first reason there.
    pub(crate) fn of_truth(truth: Truth, parts: &[Self]) -> Self {
        match truth {
            Truth::True => Self::truth(true),
            Truth::False => Self::truth(false),
            Truth::Unknown => Self::Wants(all_wants(parts)),
            Truth::Undefined => {
                let mut reasons = parts.iter().filter(|part| part.as_truth() == Truth::Undefined);
                match reasons.next() {
                    Some(Self::Nothing(reason)) => Self::Nothing(reason.clone()),
                    _ => Self::ill_typed(),
                }
            }
        }
    }

    /// `!x`
    pub(crate) fn not(&self) -> Self {
        Self::of_truth(self.as_truth().not(), std::slice::from_ref(self))
    }

    /// `a && b && ...`
    pub(crate) fn and(parts: &[Self]) -> Self {
        let truth = parts.iter().map(Self::as_truth).fold(Truth::True, Truth::and);
        Self::of_truth(truth, parts)
    }

    /// `a || b || ...`
    pub(crate) fn or(parts: &[Self]) -> Self {
        let truth = parts.iter().map(Self::as_truth).fold(Truth::False, Truth::or);
        Self::of_truth(truth, parts)
    }
}

/// Everything that is wanted in some of these answers.
pub(crate) fn all_wants(answers: &[Answer]) -> BTreeSet<String> {
    let mut all = BTreeSet::new();
    for answer in answers {
        if let Answer::Wants(wants) = answer {
            all.extend(wants.iter().cloned());
        }
    }
    all
}

impl Datum {
    /// The same value in the oracle's words.
    pub(crate) fn of(value: &Value) -> Self {
        match value {
            Value::Bool(truth) => Self::Truth(*truth),
            Value::Number(number) => Self::Number(fraction(number)),
            Value::Length(number) => Self::Length(fraction(number)),
            Value::Area(number) => Self::Area(fraction(number)),
            Value::Date(date) => Self::Day(date.to_string()),
            Value::Option(id) => Self::Word(id.as_str().to_owned()),
            Value::NotAsked => Self::NotAsked,
        }
    }

    /// The number inside.
    pub(crate) fn size(&self) -> Option<&BigRational> {
        match self {
            Self::Number(size) | Self::Length(size) | Self::Area(size) => Some(size),
            Self::Truth(_) | Self::Day(_) | Self::Word(_) | Self::NotAsked => None,
        }
    }

    /// Another number with the same dimension.
    pub(crate) fn resized(&self, size: BigRational) -> Option<Self> {
        match self {
            Self::Number(_) => Some(Self::Number(size)),
            Self::Length(_) => Some(Self::Length(size)),
            Self::Area(_) => Some(Self::Area(size)),
            Self::Truth(_) | Self::Day(_) | Self::Word(_) | Self::NotAsked => None,
        }
    }

    /// The order of two values of one ordered type; `None` otherwise.
    pub(crate) fn order(&self, other: &Self) -> Option<Ordering> {
        match (self, other) {
            (Self::Number(left), Self::Number(right))
            | (Self::Length(left), Self::Length(right))
            | (Self::Area(left), Self::Area(right)) => {
                Some((left.numer() * right.denom()).cmp(&(right.numer() * left.denom())))
            }
            (Self::Day(left), Self::Day(right)) => Some(left.as_bytes().cmp(right.as_bytes())),
            _ => None,
        }
    }

    /// Whether two values of one type are the same; `None` when their types differ.
    pub(crate) fn same(&self, other: &Self) -> Option<bool> {
        match (self, other) {
            (Self::Truth(left), Self::Truth(right)) => Some(left == right),
            (Self::Word(left), Self::Word(right)) => Some(left == right),
            _ => self.order(other).map(|order| order == Ordering::Equal),
        }
    }
}
