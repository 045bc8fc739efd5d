//! Answers expressions, from the words of the meaning.
//!
//! Every operator but `&&`, `||` and `?:` has no value when an operand has none; otherwise it wants what its operands
//! want; otherwise it is worked out.

use std::cmp::Ordering;

use astragal_model::{Comparison, Expression, Function, MeasuringUnit, NUMBER_BITS_MAX, TradeFunction};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, Zero};

use crate::reading::Stand;
use crate::reading::answer::{Answer, Datum, all_wants};
use crate::reading::fraction::{Way, fraction, multiple, whole};
use crate::reading::reader::{Reader, attribute_name};
use crate::reading::trade::trade_call;
use crate::reading::truth::Truth;

impl Reader<'_> {
    /// How an expression ends.
    pub(crate) fn answer(&self, expression: &Expression) -> Answer {
        let answer = self.work_out(expression);
        self.meet(kind(expression), ending(&answer));
        answer
    }

    fn work_out(&self, expression: &Expression) -> Answer {
        match expression {
            Expression::Literal(value) => Answer::Is(Datum::of(value)),
            Expression::Read(subject) => self.subject(*subject),
            Expression::Property(attribute, property) => {
                let name = attribute_name(self.declared, self.declared.attributes.at(*attribute));
                match self.stand(*attribute) {
                    Stand::Open(wants) => Answer::Wants(wants),
                    Stand::NotAsked => Answer::Nothing(format!("not asked {name}")),
                    Stand::Filled(option) | Stand::Picked(option, _) => {
                        let options = &self.declared.attributes.at(*attribute).options;
                        let entry = options.iter().find(|entry| entry.id.as_str() == option);
                        match entry.and_then(|entry| entry.properties.get(property)) {
                            Some(value) => Answer::Is(Datum::of(value)),
                            None => Answer::Nothing(format!("no property {name}.{property}")),
                        }
                    }
                }
            }
            Expression::IsAsked(attribute) => match self.stand(*attribute) {
                Stand::Open(_) => self.asked(*attribute),
                Stand::NotAsked => Answer::truth(false),
                Stand::Filled(_) | Stand::Picked(..) => Answer::truth(true),
            },
            Expression::Not(inner) => self.answer(inner).not(),
            Expression::And(parts) => Answer::and(&self.answers(parts)),
            Expression::Or(parts) => Answer::or(&self.answers(parts)),
            Expression::Compare(comparison, left, right) => {
                self.compare(*comparison, &self.answer(left), &self.answer(right))
            }
            Expression::In(item, members) => {
                let item = self.answer(item);
                let equal = members.iter().map(|member| {
                    let member = self.answer(member);
                    self.compare(Comparison::Equal, &item, &member)
                });
                Answer::or(&equal.collect::<Vec<_>>())
            }
            Expression::Conditional(condition, then, otherwise) => {
                let condition = self.answer(condition);
                self.conditional(&condition, self.answer(then), self.answer(otherwise))
            }
            Expression::Add(terms) => strictly(&self.answers(terms), sum),
            Expression::Negate(inner) => strictly(&[self.answer(inner)], |data| {
                let only = data.first()?;
                only.resized(-only.size()?.clone())
            }),
            Expression::Multiply(left, right) => strictly(&[self.answer(left), self.answer(right)], product),
            Expression::Divide(inner, divisor) => strictly(&[self.answer(inner)], |data| {
                let (only, divisor) = (data.first()?, fraction(divisor));
                if divisor.is_zero() {
                    return None;
                }
                only.resized(only.size()? / divisor)
            }),
            Expression::Call(Function::Trade(function), arguments) => {
                trade_answer(*function, &self.answers(arguments))
            }
            Expression::Call(function, arguments) => {
                strictly(&self.answers(arguments), |data| call(*function, data))
            }
        }
    }

    fn answers(&self, expressions: &[Expression]) -> Vec<Answer> {
        expressions.iter().map(|one| self.answer(one)).collect()
    }

    /// `==` and its like. What is not asked equals nothing, itself included.
    fn compare(&self, comparison: Comparison, left: &Answer, right: &Answer) -> Answer {
        for side in [left, right] {
            if let Answer::Nothing(reason) = side {
                return Answer::Nothing(reason.clone());
            }
        }
        let not_asked = Answer::Is(Datum::NotAsked);
        let wants = [left, right].iter().any(|side| matches!(side, Answer::Wants(_)));
        if !wants && (*left == not_asked || *right == not_asked) {
            self.meet("comparison with what is not asked", comparison_word(comparison));
            return match comparison {
                Comparison::Equal => Answer::truth(false),
                Comparison::NotEqual => Answer::truth(true),
                _ => Answer::ill_typed(),
            };
        }
        strictly(&[left.clone(), right.clone()], |data| {
            let [left, right] = data else { return None };
            let holds = match comparison {
                Comparison::Equal => left.same(right)?,
                Comparison::NotEqual => !left.same(right)?,
                Comparison::Less => left.order(right)? == Ordering::Less,
                Comparison::LessOrEqual => left.order(right)? != Ordering::Greater,
                Comparison::Greater => left.order(right)? == Ordering::Greater,
                Comparison::GreaterOrEqual => left.order(right)? != Ordering::Less,
            };
            Some(Datum::Truth(holds))
        })
    }

    /// `c ? a : b`. While the condition is unknown so is the answer, unless neither side has a value.
    fn conditional(&self, condition: &Answer, then: Answer, otherwise: Answer) -> Answer {
        match (condition.as_truth(), condition) {
            (Truth::True, _) => then,
            (Truth::False, _) => otherwise,
            (Truth::Undefined, Answer::Nothing(reason)) => Answer::Nothing(reason.clone()),
            (Truth::Undefined, _) => Answer::ill_typed(),
            (Truth::Unknown, _) => match (&then, &otherwise) {
                (Answer::Nothing(_), Answer::Nothing(_)) => {
                    self.meet("conditional on what is unknown", "neither side has a value");
                    then
                }
                _ => {
                    self.meet("conditional on what is unknown", "a side has a value");
                    Answer::Wants(all_wants(&[condition.clone(), then, otherwise]))
                }
            },
        }
    }
}

/// No value when an operand has none, else what the operands want, else what is worked out, if it is not too large.
fn strictly(operands: &[Answer], work_out: impl FnOnce(&[Datum]) -> Option<Datum>) -> Answer {
    let mut data = Vec::new();
    let mut reason = None;
    for operand in operands.iter().rev() {
        match operand {
            Answer::Is(datum) => data.insert(0, datum.clone()),
            Answer::Nothing(first) => reason = Some(first.clone()),
            Answer::Wants(_) => {}
        }
    }
    if let Some(reason) = reason {
        return Answer::Nothing(reason);
    }
    if data.len() < operands.len() {
        return Answer::Wants(all_wants(operands));
    }
    let Some(result) = work_out(&data) else {
        return Answer::ill_typed();
    };
    let bits = result
        .size()
        .map(|size| size.numer().bits().max(size.denom().bits()));
    if bits.is_some_and(|bits| bits > NUMBER_BITS_MAX) {
        return Answer::Nothing("too large".to_owned());
    }
    Answer::Is(result)
}

fn sum(data: &[Datum]) -> Option<Datum> {
    let first = data.first()?;
    let mut total = whole(0);
    for datum in data {
        let alike = std::mem::discriminant(datum) == std::mem::discriminant(first);
        total += alike.then(|| datum.size()).flatten()?;
        if total.numer().bits().max(total.denom().bits()) > NUMBER_BITS_MAX {
            break;
        }
    }
    first.resized(total)
}

fn product(data: &[Datum]) -> Option<Datum> {
    match data {
        [Datum::Number(left), Datum::Number(right)] => Some(Datum::Number(left * right)),
        [Datum::Number(left), Datum::Length(right)] | [Datum::Length(left), Datum::Number(right)] => {
            Some(Datum::Length(left * right))
        }
        [Datum::Number(left), Datum::Area(right)] | [Datum::Area(left), Datum::Number(right)] => {
            Some(Datum::Area(left * right))
        }
        [Datum::Length(left), Datum::Length(right)] => Some(Datum::Area(left * right)),
        _ => None,
    }
}

/// A call of the trade: undefined where an argument is, otherwise unknown where one is.
fn trade_answer(function: TradeFunction, answers: &[Answer]) -> Answer {
    let mut uncovered = None;
    let answer = strictly(answers, |data| match trade_call(function, data) {
        Answer::Is(datum) => Some(datum),
        other => {
            uncovered = Some(other);
            None
        }
    });
    uncovered.unwrap_or(answer)
}

fn call(function: Function, data: &[Datum]) -> Option<Datum> {
    match (function, data) {
        (Function::Min, _) => extreme(data, Ordering::Less),
        (Function::Max, _) => extreme(data, Ordering::Greater),
        (Function::Absolute, [only]) => only.resized(only.size()?.abs()),
        (Function::FloorTo, [value, step]) => to_step(value, step, Way::Down),
        (Function::CeilTo, [value, step]) => to_step(value, step, Way::Up),
        (Function::RoundTo, [value, step]) => to_step(value, step, Way::Nearest),
        (Function::InUnit(unit), [only]) => in_unit(unit, only),
        _ => None,
    }
}

/// The one among them that is on the wanted side of every other.
pub(crate) fn extreme(data: &[Datum], side: Ordering) -> Option<Datum> {
    let mut best = data.first()?;
    best.order(best)?;
    for datum in data {
        if datum.order(best)? == side {
            best = datum;
        }
    }
    Some(best.clone())
}

fn to_step(value: &Datum, step: &Datum, way: Way) -> Option<Datum> {
    value.order(step)?;
    value.resized(multiple(value.size()?, step.size()?, way)?)
}

/// An inch is 25.4 mm; a foot is 12 in.
fn in_unit(unit: MeasuringUnit, datum: &Datum) -> Option<Datum> {
    let ratio = |top: i64, bottom: i64| BigRational::new(BigInt::from(top), BigInt::from(bottom));
    let (inches, area) = match unit {
        MeasuringUnit::Inch => (whole(1), false),
        MeasuringUnit::Foot => (whole(12), false),
        MeasuringUnit::Millimetre => (ratio(10, 254), false),
        MeasuringUnit::Metre => (ratio(10_000, 254), false),
        MeasuringUnit::SquareInch => (whole(1), true),
        MeasuringUnit::SquareFoot => (whole(12), true),
        MeasuringUnit::SquareMetre => (ratio(10_000, 254), true),
    };
    match datum {
        Datum::Length(size) if !area => Some(Datum::Number(size / inches)),
        Datum::Area(size) if area => Some(Datum::Number(size / &inches / &inches)),
        _ => None,
    }
}

/// The kind of an expression's outermost node, in the words of the census.
pub(crate) fn kind(expression: &Expression) -> &'static str {
    match expression {
        Expression::Literal(_) => "literal",
        Expression::Read(_) => "read",
        Expression::Property(..) => "property",
        Expression::IsAsked(_) => "is_asked",
        Expression::Not(_) => "not",
        Expression::And(_) => "and",
        Expression::Or(_) => "or",
        Expression::Compare(comparison, ..) => comparison_word(*comparison),
        Expression::In(..) => "in",
        Expression::Add(_) => "add",
        Expression::Negate(_) => "negate",
        Expression::Multiply(..) => "multiply",
        Expression::Divide(..) => "divide",
        Expression::Conditional(..) => "conditional",
        Expression::Call(function, _) => match function {
            Function::Trade(function) => function.name(),
            Function::Min => "min",
            Function::Max => "max",
            Function::Absolute => "abs",
            Function::FloorTo => "floor_to",
            Function::CeilTo => "ceil_to",
            Function::RoundTo => "round_to",
            Function::InUnit(MeasuringUnit::Inch) => "in_inches",
            Function::InUnit(MeasuringUnit::Foot) => "in_feet",
            Function::InUnit(MeasuringUnit::Millimetre) => "in_mm",
            Function::InUnit(MeasuringUnit::Metre) => "in_metres",
            Function::InUnit(MeasuringUnit::SquareInch) => "in_in2",
            Function::InUnit(MeasuringUnit::SquareFoot) => "in_ft2",
            Function::InUnit(MeasuringUnit::SquareMetre) => "in_m2",
        },
    }
}

fn comparison_word(comparison: Comparison) -> &'static str {
    match comparison {
        Comparison::Equal => "==",
        Comparison::NotEqual => "!=",
        Comparison::Less => "<",
        Comparison::LessOrEqual => "<=",
        Comparison::Greater => ">",
        Comparison::GreaterOrEqual => ">=",
    }
}

/// How an answer ends, in the words of the census.
pub(crate) fn ending(answer: &Answer) -> &'static str {
    match answer {
        Answer::Is(_) => "known",
        Answer::Wants(_) => "unknown",
        Answer::Nothing(_) => "undefined",
    }
}
