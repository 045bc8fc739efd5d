//! Yes, no, or cannot be decided for want of facts.
//!
//! `edge < 18 && area > 9`: with an edge of 20 in it is no, whatever the area; with an edge of 10 in and no area it
//! cannot be decided, and says that the area is missing.
//!
//! Always holds: learning a fact never changes a yes or a no; it only settles what could not be decided.
//! Source: S. C. Kleene, Introduction to Metamathematics, 1952, section 64 (strong three-valued logic).

use std::collections::BTreeSet;

use astragal_exact::Number;

use crate::fact::Fact;

/// What would have to be known, sorted.
pub type Missing = BTreeSet<Fact>;

/// Yes, no, or cannot be decided.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Truth {
    /// It is so.
    Yes,
    /// It is not so.
    No,
    /// It depends on what is missing.
    Unknown(Missing),
}

impl Truth {
    /// A known truth.
    #[must_use]
    pub fn known(is_so: bool) -> Self {
        if is_so { Self::Yes } else { Self::No }
    }

    /// A condition on one fact that may be missing.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::{Fact, Truth};
    /// let edge = Some(Number::from(18));
    /// let low = Truth::of(Fact::ExposedGlassEdge, edge.as_ref(), |edge| *edge < Number::from(18));
    /// assert_eq!(low, Truth::No);
    /// ```
    pub fn of<T: ?Sized>(fact: Fact, value: Option<&T>, holds: impl FnOnce(&T) -> bool) -> Self {
        match value {
            Some(value) => Self::known(holds(value)),
            None => Self::Unknown(Missing::from([fact])),
        }
    }

    /// Whether it is a fact that may be missing.
    #[must_use]
    pub fn fact(fact: Fact, value: Option<bool>) -> Self {
        Self::of(fact, value.as_ref(), |value| *value)
    }

    /// Whether a number is below a limit. Equal is not below.
    #[must_use]
    pub fn below(fact: Fact, value: Option<&Number>, limit: &Number) -> Self {
        Self::of(fact, value, |value| value < limit)
    }

    /// Whether a number is above a limit. Equal is not above.
    #[must_use]
    pub fn above(fact: Fact, value: Option<&Number>, limit: &Number) -> Self {
        Self::of(fact, value, |value| value > limit)
    }

    /// Whether a number is at most a limit.
    #[must_use]
    pub fn at_most(fact: Fact, value: Option<&Number>, limit: &Number) -> Self {
        Self::of(fact, value, |value| value <= limit)
    }

    /// Whether a number is at least a limit.
    #[must_use]
    pub fn at_least(fact: Fact, value: Option<&Number>, limit: &Number) -> Self {
        Self::of(fact, value, |value| value >= limit)
    }

    /// Whether all are so: one no decides.
    pub fn all(truths: impl IntoIterator<Item = Self>) -> Self {
        decide(truths, &Self::No)
    }

    /// Whether one at least is so: one yes decides.
    pub fn any(truths: impl IntoIterator<Item = Self>) -> Self {
        decide(truths, &Self::Yes)
    }

    /// The opposite; what cannot be decided stays so.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Yes => Self::No,
            Self::No => Self::Yes,
            unknown @ Self::Unknown(_) => unknown,
        }
    }

    /// What is missing; empty when it is decided.
    #[must_use]
    pub fn missing(&self) -> Missing {
        match self {
            Self::Unknown(missing) => missing.clone(),
            Self::Yes | Self::No => Missing::new(),
        }
    }
}

/// What is missing, as a person reads it: labels between commas, in the order of the facts.
pub(crate) fn listed(missing: &Missing) -> String {
    let labels: Vec<&str> = missing.iter().map(|fact| fact.label()).collect();
    labels.join(", ")
}

fn decide(truths: impl IntoIterator<Item = Truth>, decisive: &Truth) -> Truth {
    let mut missing = Missing::new();
    for truth in truths {
        match truth {
            Truth::Unknown(more) => missing.extend(more),
            truth if truth == *decisive => return truth,
            _ => {}
        }
    }
    if missing.is_empty() {
        decisive.clone().opposite()
    } else {
        Truth::Unknown(missing)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unknown(fact: Fact) -> Truth {
        Truth::Unknown(Missing::from([fact]))
    }

    #[test]
    fn one_no_decides_a_conjunction_and_one_yes_a_disjunction() {
        assert_eq!(Truth::all([unknown(Fact::YearBuilt), Truth::No]), Truth::No);
        assert_eq!(Truth::any([unknown(Fact::YearBuilt), Truth::Yes]), Truth::Yes);
    }

    #[test]
    fn what_is_missing_comes_together() {
        let both = Truth::all([
            unknown(Fact::YearBuilt),
            Truth::Yes,
            unknown(Fact::ExposedGlassEdge),
        ]);
        assert_eq!(
            both.missing(),
            Missing::from([Fact::YearBuilt, Fact::ExposedGlassEdge])
        );
    }

    #[test]
    fn limits_are_strict_where_they_say_so() {
        let limit = Number::from(24);
        let at = |value: i64| Some(Number::from(value));
        let rows = [
            (23, Truth::Yes, Truth::No, Truth::Yes, Truth::No),
            (24, Truth::No, Truth::No, Truth::Yes, Truth::Yes),
            (25, Truth::No, Truth::Yes, Truth::No, Truth::Yes),
        ];
        for (value, below, above, at_most, at_least) in rows {
            let value = at(value);
            assert_eq!(Truth::below(Fact::YearBuilt, value.as_ref(), &limit), below);
            assert_eq!(Truth::above(Fact::YearBuilt, value.as_ref(), &limit), above);
            assert_eq!(Truth::at_most(Fact::YearBuilt, value.as_ref(), &limit), at_most);
            assert_eq!(Truth::at_least(Fact::YearBuilt, value.as_ref(), &limit), at_least);
        }
    }
}
