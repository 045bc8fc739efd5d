//! Whether one requirement of an edition holds: it does, it is lacking, or it stays open for want of facts.

use astragal_exact::Number;

use super::{Amount, Requirement, Shortfall};
use crate::basis::Basis;
use crate::fact::Fact;
use crate::interval::Interval;
use crate::truth::{Missing, Truth};

/// Whether one requirement holds.
pub(super) enum Finding {
    Holds(Basis),
    Lacks(Shortfall),
    Open(Missing, Basis),
}

/// A size of at least `least`.
pub(super) fn fewest(
    requirement: Requirement,
    fact: Fact,
    found: Option<Interval>,
    least: &Number,
    basis: Basis,
) -> Finding {
    let truth = at_least(&[(fact, found.as_ref())], found.as_ref(), least);
    let amount = found.map(|found| Amount {
        by: Interval::exact(least.clone()).minus(&found),
        limit: least.clone(),
        found,
    });
    finding(requirement, truth, amount, basis)
}

/// Something that is there or not.
pub(super) fn lacking(requirement: Requirement, truth: Truth, basis: Basis) -> Finding {
    finding(requirement, truth, None, basis)
}

/// What is found of a requirement; `amount` is by how much, where it can be measured.
pub(super) fn finding(
    requirement: Requirement,
    truth: Truth,
    amount: Option<Amount>,
    basis: Basis,
) -> Finding {
    match truth {
        Truth::Yes => Finding::Holds(basis),
        Truth::Unknown(missing) => Finding::Open(missing, basis),
        Truth::No => Finding::Lacks(Shortfall {
            requirement,
            amount,
            basis,
        }),
    }
}

/// Whether a size worked out of `parts` reaches a limit; open when a part is missing, or not known exactly enough.
pub(super) fn at_least(
    parts: &[(Fact, Option<&Interval>)],
    size: Option<&Interval>,
    least: &Number,
) -> Truth {
    match size.and_then(|size| size.at_least(least)) {
        Some(reached) => Truth::known(reached),
        None => Truth::Unknown(
            parts
                .iter()
                .filter(|(_, part)| part.is_none_or(|part| part.low() != part.high()))
                .map(|(fact, _)| *fact)
                .collect(),
        ),
    }
}
