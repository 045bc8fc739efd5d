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
use crate::expression::{Comparison, Expression, Subject};
use crate::id::{AttributeIndex, FigureIndex, Id, Indexed, MeasureIndex};
use crate::operate::{self, compare};
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

impl<'a> Environment<'a> {
    /// What is known of a place before there is a unit: attributes and figures are unknown.
    pub(crate) fn of_site(catalog: &'a Catalog, site: &'a Site) -> Self {
        let declarations = catalog.declarations();
        let (attributes, figures) = (&declarations.attributes, &declarations.figures);
        let unknown = || Outcome::Unknown(Wants::new());
        Self {
            catalog,
            declarations,
            site,
            unit: WindowUnit {
                choices: attributes.values().map(|_| Choice::Open).collect(),
            },
            asked: attributes.values().map(|_| unknown()).collect(),
            open_wants: attributes.values().map(|_| Wants::new()).collect(),
            figures: figures.values().map(|_| unknown()).collect(),
        }
    }
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
            Expression::Add(terms) => operate::add(&self.evaluated(terms)),
            Expression::Negate(inner) => operate::negate(&self.evaluate(inner)),
            Expression::Multiply(left, right) => {
                operate::multiply(&self.evaluate(left), &self.evaluate(right))
            }
            Expression::Divide(inner, divisor) => operate::divide(&self.evaluate(inner), divisor),
            Expression::Conditional(condition, then, otherwise) => operate::conditional(
                self.evaluate(condition),
                || self.evaluate(then),
                || self.evaluate(otherwise),
            ),
            Expression::Call(function, arguments) => operate::call(*function, &self.evaluated(arguments)),
        }
    }

    fn evaluated(&self, expressions: &[Expression]) -> Vec<Outcome> {
        expressions.iter().map(|one| self.evaluate(one)).collect()
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
            Subject::DeductedBy(index) => match self.site.deducted_by(index) {
                Some(by) => Outcome::Known(Value::Option(Id::new(by.word()))),
                None => Outcome::want(Want::DeductedBy(index)),
            },
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

fn row_matches(row: &Row, keys: &[Outcome], not_asked: bool) -> Outcome {
    Outcome::all(row.cells.iter().zip(keys).map(|(cell, key)| match (cell, key) {
        (Cell::Any, _) => Outcome::truth(true),
        (_, Outcome::Known(Value::NotAsked)) => Outcome::truth(not_asked),
        (cell, Outcome::Known(value)) => Outcome::truth(cell.admits(value)),
        (_, other) => other.clone(),
    }))
}
