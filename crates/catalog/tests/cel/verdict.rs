//! What a test shows: passed, departing, outside, or a fault.
//!
//! - **Passed**: the same answer; or CEL evaluates to an error and the reader refuses the types or names for it.
//! - **Departing**: another answer, or a refusal of constructs that the subset has, by a named departure.
//! - **Outside**: refused because of a construct that the subset has not.
//!
//! Always holds: an expression that is read and typed is never outside; a refusal that no list knows is a fault. A test
//! with several errors is outside when one of them is.

use astragal_model::{Number, Value};

use crate::answer::{Answer, Refusal};
use crate::data::{Expected, Test};
use crate::{departures, outside};

/// What a test shows.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Verdict {
    Passed,
    /// CEL evaluates to an error; here the expression is refused when it is read.
    PassedRefusing,
    Departing(&'static str),
    Outside(&'static str),
    Fault(String),
}

/// Compares an answer with what CEL says.
pub(crate) fn verdict(test: &Test, answer: &Answer) -> Verdict {
    if let Answer::Refused(refusals) = answer {
        return of_refusals(test, refusals);
    }
    if is_same(&test.expected, answer) {
        return Verdict::Passed;
    }
    match departures::answers_otherwise(test, answer) {
        Some(departure) => Verdict::Departing(departure),
        None => Verdict::Fault(format!(
            "CEL says {}, we say {}",
            test.expected.shown(),
            answer.shown()
        )),
    }
}

fn of_refusals(test: &Test, refusals: &[Refusal]) -> Verdict {
    let mut first_departure = None;
    let mut first_outside = None;
    for refusal in refusals {
        match (outside::outside(test, refusal), departures::refuses(refusal)) {
            (Some(group), _) => first_outside = first_outside.or(Some(group)),
            (None, Some(departure)) => first_departure = first_departure.or(Some(departure)),
            (None, None) => {
                return Verdict::Fault(format!("refused as {} {}", refusal.code, refusal.message));
            }
        }
    }
    match (first_outside, first_departure) {
        (Some(group), _) => Verdict::Outside(group),
        (None, Some(_)) if matches!(test.expected, Expected::Error(_)) => Verdict::PassedRefusing,
        (None, Some(departure)) => Verdict::Departing(departure),
        (None, None) => Verdict::Fault("refused without an error".to_owned()),
    }
}

fn is_same(expected: &Expected, answer: &Answer) -> bool {
    match (expected, answer) {
        (Expected::Bool(expected), Answer::Value(Value::Bool(truth))) => expected == truth,
        (Expected::Number(expected), Answer::Value(Value::Number(number))) => {
            Number::from_decimal(expected).as_ref() == Some(number)
        }
        (Expected::Text(expected), Answer::Value(Value::Option(id))) => expected == id.as_str(),
        _ => false,
    }
}
