//! Evaluates expressions, tables and figures of one unit the obvious way.
//!
//! The environment holds what the attributes, measures, facts and figures of one unit are. Expressions are walked
//! from the leaves up. For `opening_width - "1/2"` with a measured 36 in, the outcome is the length 35.5 in; when
//! nobody measured, it is unknown for want of `opening_width`.
//!
//! Always holds: an operator other than `&&`, `||` and `?:` is undefined when an operand is, otherwise unknown when
//! an operand is. Recursion is as deep as the tree, at most [`crate::EXPRESSION_DEPTH_MAX`] for catalog files.
//! Cost: linear in the tree; a table look-up tries its rows one by one.

use crate::catalog::{Catalog, Declarations};
use crate::expression::{Comparison, Expression, Function, NUMBER_BITS_MAX, Subject, Unit};
use crate::id::{AttributeIndex, FigureIndex, Id, Indexed, MeasureIndex};
use crate::number::Number;
use crate::site::Site;
use crate::table::{Cell, Row, RowMatch, Table};
use crate::unit::{Choice, Unit as WindowUnit};
use crate::value::{Outcome, UndefinedCause, Value, Want, Wants};

/// What the attributes, measures, facts and figures of one unit are.
pub(crate) struct Environment<'a> {
    pub(crate) catalog: &'a Catalog,
    pub(crate) declarations: &'a Declarations,
    pub(crate) site: &'a Site,
    /// The unit; filled while a plan is carried out.
    pub(crate) unit: WindowUnit,
    /// Whether each attribute is asked.
    pub(crate) asked: Indexed<AttributeIndex, Outcome>,
    /// What each open attribute waits for.
    pub(crate) open_wants: Indexed<AttributeIndex, Wants>,
    /// The figures worked out so far.
    pub(crate) figures: Indexed<FigureIndex, Outcome>,
}

impl Environment<'_> {
    /// The outcome of an expression.
    pub(crate) fn evaluate(&self, expression: &Expression) -> Outcome {
        match expression {
            Expression::Literal(value) => Outcome::Known(value.clone()),
            Expression::Read(subject) => self.read(*subject),
            Expression::Property(attribute, property) => self.property(*attribute, property),
            Expression::IsAsked(attribute) => self.is_asked(*attribute),
            Expression::Not(inner) => self.evaluate(inner).not(),
            Expression::And(inner) => Outcome::all(inner.iter().map(|one| self.evaluate(one))),
            Expression::Or(inner) => Outcome::any(inner.iter().map(|one| self.evaluate(one))),
            Expression::Compare(comparison, left, right) => {
                compare(*comparison, &self.evaluate(left), &self.evaluate(right))
            }
            Expression::In(item, members) => {
                let item = self.evaluate(item);
                Outcome::any(
                    members
                        .iter()
                        .map(|member| compare(Comparison::Equal, &item, &self.evaluate(member))),
                )
            }
            Expression::Add(terms) => strictly(terms.iter().map(|term| self.evaluate(term)), |values| {
                fold(values, |a, b| a + b)
            }),
            Expression::Negate(inner) => strictly([self.evaluate(inner)], |values| {
                values
                    .first()
                    .and_then(|value| value.with_magnitude(-(value.magnitude()?.clone())))
            }),
            Expression::Multiply(left, right) => {
                strictly([self.evaluate(left), self.evaluate(right)], |values| {
                    multiply(&values)
                })
            }
            Expression::Divide(inner, divisor) => strictly([self.evaluate(inner)], |values| {
                let value = values.first()?;
                value.with_magnitude(value.magnitude()?.checked_div(divisor)?)
            }),
            Expression::Conditional(condition, then, otherwise) => {
                self.conditional(condition, then, otherwise)
            }
            Expression::Call(function, arguments) => {
                strictly(arguments.iter().map(|one| self.evaluate(one)), |values| {
                    call(*function, &values)
                })
            }
        }
    }

    /// What a subject is.
    pub(crate) fn read(&self, subject: Subject) -> Outcome {
        match subject {
            Subject::Attribute(index) => match self.unit.choices.at(index) {
                Choice::Open => Outcome::Unknown(self.open_wants.at(index).clone()),
                Choice::NotAsked => Outcome::Known(Value::NotAsked),
                Choice::Chosen { option, .. } => Outcome::Known(Value::Option(option.clone())),
            },
            Subject::Measure(index) => match self.measured(index) {
                Some(measured) => Outcome::Known(measured.value.clone()),
                None => Outcome::want(Want::Measure(index)),
            },
            Subject::DeductedBy(index) => {
                match self.measured(index).and_then(|measured| measured.deducted_by) {
                    Some(by) => Outcome::Known(Value::Option(Id::new(by.word()))),
                    None => Outcome::want(Want::DeductedBy(index)),
                }
            }
            Subject::Fact(index) => match self.site.facts.get(index).and_then(Option::as_ref) {
                Some(value) => Outcome::Known(value.clone()),
                None => Outcome::want(Want::Fact(index)),
            },
            Subject::Figure(index) => self.figures.at(index).clone(),
        }
    }

    fn measured(&self, index: MeasureIndex) -> Option<&crate::site::Measured> {
        self.site.measures.get(index).and_then(Option::as_ref)
    }

    fn property(&self, attribute: AttributeIndex, property: &Id) -> Outcome {
        let option = match self.unit.choices.at(attribute) {
            Choice::Open => return Outcome::Unknown(self.open_wants.at(attribute).clone()),
            Choice::NotAsked => return Outcome::Undefined(UndefinedCause::NotAsked(attribute)),
            Choice::Chosen { option, .. } => option,
        };
        let value = self
            .declarations
            .attributes
            .at(attribute)
            .option(option)
            .and_then(|entry| entry.properties.get(property));
        match value {
            Some(value) => Outcome::Known(value.clone()),
            None => Outcome::Undefined(UndefinedCause::NoProperty(attribute, property.clone())),
        }
    }

    /// What stands there decides; an open attribute is asked when its condition says so.
    fn is_asked(&self, attribute: AttributeIndex) -> Outcome {
        match self.unit.choices.at(attribute) {
            Choice::Open => self.asked.at(attribute).clone(),
            Choice::NotAsked => Outcome::truth(false),
            Choice::Chosen { .. } => Outcome::truth(true),
        }
    }

    fn conditional(&self, condition: &Expression, then: &Expression, otherwise: &Expression) -> Outcome {
        match self.evaluate(condition) {
            Outcome::Known(Value::Bool(true)) => self.evaluate(then),
            Outcome::Known(Value::Bool(false)) => self.evaluate(otherwise),
            Outcome::Known(_) => Outcome::Undefined(UndefinedCause::IllTyped),
            Outcome::Undefined(cause) => Outcome::Undefined(cause),
            Outcome::Unknown(wants) => either(wants, self.evaluate(then), self.evaluate(otherwise)),
        }
    }

    /// Kleene's outcome of "some row matches"; `not_asked` says how a restricting cell takes a column not asked.
    pub(crate) fn some_row_matches(&self, table: &Table, not_asked: bool) -> Outcome {
        let keys: Vec<Outcome> = table.columns.iter().map(|column| self.read(*column)).collect();
        Outcome::any(table.rows.iter().map(|row| row_matches(row, &keys, not_asked)))
    }

    /// The value of a figure's table: undefined when a key is undefined or not asked, otherwise unknown when a key
    /// is unknown, otherwise the value of the row that the match names.
    pub(crate) fn look_up(&self, figure: FigureIndex, table: &Table, row_match: RowMatch) -> Outcome {
        let mut keys = Vec::with_capacity(table.columns.len());
        let mut wants: Option<Wants> = None;
        let mut undefined = None;
        for column in &table.columns {
            match (self.read(*column), column) {
                (Outcome::Known(Value::NotAsked), Subject::Attribute(attribute)) => {
                    undefined = undefined.or(Some(UndefinedCause::NotAsked(*attribute)));
                }
                (Outcome::Known(Value::NotAsked), _) => {
                    undefined = undefined.or(Some(UndefinedCause::NoRow(figure)));
                }
                (Outcome::Known(value), _) => keys.push(value),
                (Outcome::Unknown(more), _) => wants.get_or_insert_default().extend(more),
                (Outcome::Undefined(cause), _) => undefined = undefined.or(Some(cause)),
            }
        }
        if let Some(cause) = undefined {
            return Outcome::Undefined(cause);
        }
        if let Some(wants) = wants {
            return Outcome::Unknown(wants);
        }
        let matching = table
            .rows
            .iter()
            .filter(|row| row.cells.iter().zip(&keys).all(|(cell, key)| cell.admits(key)));
        let mut values = matching.filter_map(|row| row.value.as_ref());
        let value = match row_match {
            RowMatch::Only | RowMatch::First => values.next(),
            RowMatch::Least => values.min(),
            RowMatch::Greatest => values.max(),
        };
        value.map_or(Outcome::Undefined(UndefinedCause::NoRow(figure)), |value| {
            Outcome::Known(value.clone())
        })
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

fn row_matches(row: &Row, keys: &[Outcome], not_asked: bool) -> Outcome {
    Outcome::all(row.cells.iter().zip(keys).map(|(cell, key)| match (cell, key) {
        (Cell::Any, _) => Outcome::truth(true),
        (_, Outcome::Known(Value::NotAsked)) => Outcome::truth(not_asked),
        (cell, Outcome::Known(value)) => Outcome::truth(cell.admits(value)),
        (_, other) => other.clone(),
    }))
}

/// Applies an operator to known values: undefined when an operand is, otherwise unknown when an operand is.
fn strictly(
    operands: impl IntoIterator<Item = Outcome>,
    apply: impl FnOnce(Vec<Value>) -> Option<Value>,
) -> Outcome {
    let mut values = Vec::new();
    let mut wants: Option<Wants> = None;
    let mut undefined = None;
    for operand in operands {
        match operand {
            Outcome::Known(value) => values.push(value),
            Outcome::Unknown(more) => wants.get_or_insert_default().extend(more),
            Outcome::Undefined(cause) => undefined = undefined.or(Some(cause)),
        }
    }
    if let Some(cause) = undefined {
        return Outcome::Undefined(cause);
    }
    if let Some(wants) = wants {
        return Outcome::Unknown(wants);
    }
    match apply(values) {
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

/// Compares; *not asked* equals nothing, itself included. An unknown side is waited for: it may come to be undefined.
fn compare(comparison: Comparison, left: &Outcome, right: &Outcome) -> Outcome {
    if let (Outcome::Undefined(cause), _) | (_, Outcome::Undefined(cause)) = (left, right) {
        return Outcome::Undefined(cause.clone());
    }
    if [left, right]
        .iter()
        .any(|side| **side == Outcome::Known(Value::NotAsked))
        && left.wants().is_none()
        && right.wants().is_none()
    {
        return match comparison {
            Comparison::Equal => Outcome::truth(false),
            Comparison::NotEqual => Outcome::truth(true),
            _ => Outcome::Undefined(UndefinedCause::IllTyped),
        };
    }
    strictly([left.clone(), right.clone()], |values| {
        let [left, right] = <[Value; 2]>::try_from(values).ok()?;
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

/// Combines values of one type that has a magnitude. Ends as soon as what came together so far is too large, so that
/// the caller finds it so, however many values are left.
fn fold(values: Vec<Value>, combine: impl Fn(&Number, &Number) -> Number) -> Option<Value> {
    let mut values = values.into_iter();
    let first = values.next()?;
    let mut sum = first.magnitude()?.clone();
    for value in values {
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

fn multiply(values: &[Value]) -> Option<Value> {
    let [left, right] = values else { return None };
    let product = left.magnitude()? * right.magnitude()?;
    match (left, right) {
        (Value::Length(_), Value::Length(_)) => Some(Value::Area(product)),
        (Value::Number(_), other) | (other, Value::Number(_)) => other.with_magnitude(product),
        _ => None,
    }
}

fn call(function: Function, values: &[Value]) -> Option<Value> {
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
                values.iter().min().cloned()
            } else {
                values.iter().max().cloned()
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

    /// How many inches, or square inches, the unit has. 1 in is 25.4 mm.
    fn size(self) -> Option<Number> {
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
