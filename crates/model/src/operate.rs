//! The operators of expressions on outcomes: one place that says what each makes of unknown and undefined operands.
//!
//! `35.5 in + unknown` is unknown, `undefined + unknown` is undefined, `not asked == white` is false.
//!
//! Always holds: an operator other than `&&`, `||` and `?:` is undefined when an operand is, otherwise unknown when an
//! operand is; a number past [`NUMBER_BITS_MAX`] is undefined. `&&`, `||` and `!` are methods of [`Outcome`].

use std::borrow::Borrow;

use crate::expression::{Comparison, Function, NUMBER_BITS_MAX, Unit};
use crate::value::{Outcome, UndefinedCause, Value, Wants};
use astragal_exact::Number;

/// Compares; *not asked* equals nothing, itself included. An unknown side is waited for: it may come to be undefined.
#[must_use]
pub fn compare(comparison: Comparison, left: &Outcome, right: &Outcome) -> Outcome {
    strictly([left, right], |[left, right]| {
        if *left == Value::NotAsked || *right == Value::NotAsked {
            return match comparison {
                Comparison::Equal => Some(Value::Bool(false)),
                Comparison::NotEqual => Some(Value::Bool(true)),
                _ => None,
            };
        }
        if left.value_type() != right.value_type() {
            return None;
        }
        let equality = matches!(comparison, Comparison::Equal | Comparison::NotEqual);
        if !equality && !left.value_type().is_ordered() {
            return None;
        }
        Some(Value::Bool(match comparison {
            Comparison::Equal => left == right,
            Comparison::NotEqual => left != right,
            Comparison::Less => left < right,
            Comparison::LessOrEqual => left <= right,
            Comparison::Greater => left > right,
            Comparison::GreaterOrEqual => left >= right,
        }))
    })
}

/// `a + b + ...`: terms of one type that has a magnitude.
#[must_use]
pub fn add<O: Borrow<Outcome>>(terms: &[O]) -> Outcome {
    match terms {
        [one, other] => strictly([one.borrow(), other.borrow()], |values| {
            fold(&values, |a, b| a + b)
        }),
        terms => strictly_all(terms, |values| fold(values, |a, b| a + b)),
    }
}

/// `-x`
#[must_use]
pub fn negate(operand: &Outcome) -> Outcome {
    strictly([operand], |[value]| {
        value.with_magnitude(-(value.magnitude()?.clone()))
    })
}

/// `a * b`: two numbers, a number and a length or area, or two lengths, which make an area.
#[must_use]
pub fn multiply(left: &Outcome, right: &Outcome) -> Outcome {
    strictly([left, right], |[left, right]| product(left, right))
}

/// `a / n`; undefined when `n` is zero.
#[must_use]
pub fn divide(operand: &Outcome, divisor: &Number) -> Outcome {
    strictly([operand], |[value]| {
        value.with_magnitude(value.magnitude()?.checked_div(divisor)?)
    })
}

/// A function of the closed table.
#[must_use]
pub fn call<O: Borrow<Outcome>>(function: Function, arguments: &[O]) -> Outcome {
    if let Function::Trade(function) = function {
        return lacking(arguments.iter().map(O::borrow)).unwrap_or_else(|| {
            let values = arguments.iter().filter_map(|argument| argument.borrow().known());
            let values: Vec<&Value> = values.collect();
            match function.apply(&values) {
                Some(value) => within_bits(Some(value)),
                None => Outcome::Undefined(UndefinedCause::NotCovered(function)),
            }
        });
    }
    match arguments {
        [one] => strictly([one.borrow()], |values| result(function, &values)),
        [one, other] => strictly([one.borrow(), other.borrow()], |values| result(function, &values)),
        arguments => strictly_all(arguments, |values| result(function, values)),
    }
}

/// `condition ? then : otherwise`. A side is worked out only when it is needed; under an unknown condition both are.
#[must_use]
pub fn conditional(
    condition: Outcome,
    then: impl FnOnce() -> Outcome,
    otherwise: impl FnOnce() -> Outcome,
) -> Outcome {
    match condition {
        Outcome::Known(Value::Bool(true)) => then(),
        Outcome::Known(Value::Bool(false)) => otherwise(),
        Outcome::Known(_) => Outcome::Undefined(UndefinedCause::IllTyped),
        Outcome::Undefined(cause) => Outcome::Undefined(cause),
        Outcome::Unknown(wants) => either(wants, then(), otherwise()),
    }
}

/// A conditional whose condition is unknown, and may yet be undefined: unknown, unless neither side has a value.
fn either(mut wants: Wants, then: Outcome, otherwise: Outcome) -> Outcome {
    if let (Outcome::Undefined(_), Outcome::Undefined(_)) = (&then, &otherwise) {
        return then;
    }
    for outcome in [then, otherwise] {
        if let Outcome::Unknown(more) = outcome {
            wants.extend(more);
        }
    }
    Outcome::Unknown(wants)
}

/// Applies an operator to so many known values: undefined when an operand is, otherwise unknown when an operand is.
fn strictly<const N: usize>(
    operands: [&Outcome; N],
    apply: impl FnOnce([&Value; N]) -> Option<Value>,
) -> Outcome {
    static NONE: Value = Value::NotAsked;
    lacking(operands).unwrap_or_else(|| {
        let values = operands.map(|operand| match operand {
            Outcome::Known(value) => value,
            Outcome::Unknown(_) | Outcome::Undefined(_) => &NONE,
        });
        within_bits(apply(values))
    })
}

/// Applies an operator to any number of values, in the same way.
fn strictly_all<O: Borrow<Outcome>>(
    operands: &[O],
    apply: impl FnOnce(&[&Value]) -> Option<Value>,
) -> Outcome {
    lacking(operands.iter().map(O::borrow)).unwrap_or_else(|| {
        let values = operands.iter().filter_map(|operand| match operand.borrow() {
            Outcome::Known(value) => Some(value),
            Outcome::Unknown(_) | Outcome::Undefined(_) => None,
        });
        let values: Vec<&Value> = values.collect();
        within_bits(apply(&values))
    })
}

/// What an operator comes to when not all operands are known.
fn lacking<'a>(operands: impl IntoIterator<Item = &'a Outcome>) -> Option<Outcome> {
    let mut wants: Option<Wants> = None;
    let mut undefined = None;
    for operand in operands {
        match operand {
            Outcome::Known(_) => {}
            Outcome::Unknown(more) => wants.get_or_insert_default().extend(more.iter().cloned()),
            Outcome::Undefined(cause) => undefined = undefined.or(Some(cause)),
        }
    }
    match (undefined, wants) {
        (Some(cause), _) => Some(Outcome::Undefined(cause.clone())),
        (None, Some(wants)) => Some(Outcome::Unknown(wants)),
        (None, None) => None,
    }
}

fn within_bits(value: Option<Value>) -> Outcome {
    match value {
        Some(value)
            if value
                .magnitude()
                .is_some_and(|number| number.bits() > NUMBER_BITS_MAX) =>
        {
            Outcome::Undefined(UndefinedCause::TooLarge)
        }
        Some(value) => Outcome::Known(value),
        None => Outcome::Undefined(UndefinedCause::IllTyped),
    }
}

/// Combines values of one type that has a magnitude. Ends as soon as what came together so far is too large, so that
/// the caller finds it so, however many values are left.
fn fold(values: &[&Value], combine: impl Fn(&Number, &Number) -> Number) -> Option<Value> {
    let (first, rest) = values.split_first()?;
    let mut sum = first.magnitude()?.clone();
    for value in rest {
        if value.value_type() != first.value_type() {
            return None;
        }
        sum = combine(&sum, value.magnitude()?);
        if sum.bits() > NUMBER_BITS_MAX {
            break;
        }
    }
    first.with_magnitude(sum)
}

fn product(left: &Value, right: &Value) -> Option<Value> {
    let product = left.magnitude()? * right.magnitude()?;
    match (left, right) {
        (Value::Length(_), Value::Length(_)) => Some(Value::Area(product)),
        (Value::Number(_), other) | (other, Value::Number(_)) => other.with_magnitude(product),
        _ => None,
    }
}

fn result(function: Function, values: &[&Value]) -> Option<Value> {
    match function {
        Function::Min | Function::Max => {
            let first = values.first()?;
            let alike = values
                .iter()
                .all(|value| value.value_type() == first.value_type());
            if !alike || !first.value_type().is_ordered() {
                return None;
            }
            if function == Function::Min {
                values.iter().min().map(|value| (*value).clone())
            } else {
                values.iter().max().map(|value| (*value).clone())
            }
        }
        Function::Absolute => {
            let [value] = values else { return None };
            value.with_magnitude(value.magnitude()?.abs())
        }
        Function::FloorTo | Function::CeilTo | Function::RoundTo => {
            let [value, step] = values else { return None };
            if value.value_type() != step.value_type() {
                return None;
            }
            let (number, step) = (value.magnitude()?, step.magnitude()?);
            value.with_magnitude(match function {
                Function::FloorTo => number.floor_to(step)?,
                Function::CeilTo => number.ceil_to(step)?,
                _ => number.round_to(step)?,
            })
        }
        Function::Trade(function) => function.apply(values),
        Function::InUnit(unit) => {
            let [value] = values else { return None };
            let fits = if unit.is_area() {
                matches!(value, Value::Area(_))
            } else {
                matches!(value, Value::Length(_))
            };
            if !fits {
                return None;
            }
            Some(Value::Number(value.magnitude()?.checked_div(&unit.size()?)?))
        }
    }
}

impl Unit {
    /// Whether the unit measures areas.
    #[must_use]
    pub fn is_area(self) -> bool {
        matches!(self, Self::SquareInch | Self::SquareFoot | Self::SquareMetre)
    }

    /// How many inches, or square inches, the unit has. 1 in is 25.4 mm. Always there.
    #[must_use]
    pub fn size(self) -> Option<Number> {
        match self {
            Self::Inch | Self::SquareInch => Some(Number::from(1)),
            Self::Foot => Some(Number::from(12)),
            Self::SquareFoot => Some(Number::from(144)),
            Self::Millimetre => Number::ratio(5, 127),
            Self::Metre => Number::ratio(5000, 127),
            Self::SquareMetre => Number::ratio(25_000_000, 16_129),
        }
    }
}
