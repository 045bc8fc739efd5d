//! Reads a demand as bounds on sizes and other figures, where it is nothing else.
//!
//! `unit_width >= "15 3/8" && unit_width <= "36"` bounds the unit width from below and above. What joins bounds by `or`,
//! compares two figures or bounds one twice from the same side is no such demand, and stays a condition.

use astragal_model::{Comparison, Expression, Subject, Value};

use super::pages::Limit;
use super::words::Words;

/// The bounds that an expression asks for, one a figure; `None` when it asks for anything else.
pub(crate) fn limits(words: Words<'_>, expression: &Expression) -> Option<Vec<Limit>> {
    let parts = match expression {
        Expression::And(parts) => parts.as_slice(),
        other => std::slice::from_ref(other),
    };
    let mut found: Vec<(Subject, Limit)> = Vec::new();
    for part in parts {
        let (subject, comparison, value) = bound(part)?;
        let shown = words.value(value, Some(subject));
        let position = match found.iter().position(|(known, _)| *known == subject) {
            Some(position) => position,
            None => {
                let limit = Limit {
                    of: words.label(subject),
                    low: None,
                    high: None,
                };
                found.push((subject, limit));
                found.len() - 1
            }
        };
        let (_, limit) = found.get_mut(position)?;
        let (side, text) = match comparison {
            Comparison::GreaterOrEqual => (&mut limit.low, shown),
            Comparison::Greater => (&mut limit.low, format!("over {shown}")),
            Comparison::LessOrEqual => (&mut limit.high, shown),
            Comparison::Less => (&mut limit.high, format!("under {shown}")),
            Comparison::Equal | Comparison::NotEqual => return None,
        };
        if side.replace(text).is_some() {
            return None;
        }
    }
    let limits: Vec<Limit> = found.into_iter().map(|(_, limit)| limit).collect();
    (!limits.is_empty()).then_some(limits)
}

/// A figure or measure beside a written value.
fn bound(expression: &Expression) -> Option<(Subject, Comparison, &Value)> {
    let Expression::Compare(comparison, left, right) = expression else {
        return None;
    };
    let (subject, comparison, value) = match (&**left, &**right) {
        (Expression::Read(subject), Expression::Literal(value)) => (*subject, *comparison, value),
        (Expression::Literal(value), Expression::Read(subject)) => (*subject, turned(*comparison), value),
        _ => return None,
    };
    matches!(subject, Subject::Figure(_) | Subject::Measure(_)).then_some((subject, comparison, value))
}

/// The comparison seen from the other side.
fn turned(comparison: Comparison) -> Comparison {
    match comparison {
        Comparison::Less => Comparison::Greater,
        Comparison::LessOrEqual => Comparison::GreaterOrEqual,
        Comparison::Greater => Comparison::Less,
        Comparison::GreaterOrEqual => Comparison::LessOrEqual,
        same => same,
    }
}
