//! Expressions that differ as trees: no two have one revision, whichever node tells them apart.

use jiff::civil::date;

use super::fixture::{
    GLAZING_LOWER, GLAZING_UPPER, Layout, OPERATION, SCREEN, compare, declarations, inches, literal, number,
};
use super::{check_all_differ, revision_of};
use crate::expression::{Comparison, Expression, Function, Subject, Unit};
use crate::id::{Id, MeasureIndex};
use crate::revision::Revision;
use crate::rule::Requirement;
use crate::value::Value;
use astragal_exact::Number;

fn revision_with(expression: Expression) -> Revision {
    let mut declarations = declarations(Layout::default());
    declarations.rules[0].requirement = Requirement::Expression(expression);
    revision_of(declarations)
}

/// Three leaves that differ.
fn leaf(which: i64) -> Expression {
    literal(Value::Number(Number::from(which)))
}

fn boxed(which: i64) -> Box<Expression> {
    Box::new(leaf(which))
}

#[test]
fn expressions_that_differ_as_trees_have_different_revisions() {
    let mut rows = leaves();
    rows.extend(nodes());
    rows.extend(shapes());
    rows.extend(words());
    let names: Vec<String> = (0..rows.len())
        .map(|row| format!("row {row}: {:?}", rows[row]))
        .collect();
    let revisions: Vec<_> = rows.into_iter().map(revision_with).collect();
    let named: Vec<_> = names.iter().map(String::as_str).zip(revisions).collect();
    check_all_differ(&named);
}

fn leaves() -> Vec<Expression> {
    let layout = Layout::default();
    vec![
        leaf(1),
        leaf(10),
        leaf(-1),
        literal(Value::Number(number("0.1"))),
        literal(inches("1")),
        literal(Value::Area(Number::from(1))),
        literal(Value::Area(Number::from(2))),
        literal(Value::Date(date(2026, 3, 1))),
        literal(Value::Date(date(2026, 1, 3))),
        literal(Value::Option(Id::new("2026-03-01"))),
        literal(Value::Bool(true)),
        literal(Value::Bool(false)),
        literal(Value::Option(Id::new("true"))),
        literal(Value::Option(Id::new("1"))),
        literal(Value::NotAsked),
        Expression::attribute(SCREEN),
        Expression::attribute(GLAZING_UPPER),
        Expression::attribute(GLAZING_LOWER),
        Expression::IsAsked(SCREEN),
        Expression::IsAsked(OPERATION),
        Expression::Property(OPERATION, Id::new("sashes")),
        Expression::Property(OPERATION, Id::new("deep")),
        Expression::Property(SCREEN, Id::new("deep")),
        Expression::Read(Subject::Measure(layout.width())),
        Expression::Read(Subject::DeductedBy(layout.width())),
        Expression::Read(Subject::DeductedBy(layout.height())),
        Expression::Read(Subject::Fact(layout.sleeping())),
        Expression::Read(Subject::Fact(layout.zone())),
        Expression::Read(Subject::Figure(layout.united())),
        Expression::Read(Subject::Figure(layout.thickness())),
    ]
}

fn nodes() -> Vec<Expression> {
    let pair = || vec![leaf(1), leaf(2)];
    vec![
        Expression::Not(boxed(1)),
        Expression::Negate(boxed(1)),
        Expression::And(pair()),
        Expression::Or(pair()),
        Expression::Add(pair()),
        Expression::And(vec![leaf(2), leaf(1)]),
        Expression::Or(vec![leaf(2), leaf(1)]),
        Expression::Add(vec![leaf(2), leaf(1)]),
        Expression::And(Vec::new()),
        Expression::Or(Vec::new()),
        Expression::Multiply(boxed(1), boxed(2)),
        Expression::Multiply(boxed(2), boxed(1)),
        Expression::Divide(boxed(1), Number::from(2)),
        Expression::Divide(boxed(1), Number::from(3)),
        Expression::Divide(boxed(2), Number::from(1)),
        Expression::In(boxed(1), vec![leaf(2), leaf(3)]),
        Expression::In(boxed(1), vec![leaf(3), leaf(2)]),
        Expression::In(boxed(1), vec![leaf(2)]),
        Expression::In(boxed(1), Vec::new()),
        Expression::Conditional(boxed(1), boxed(2), boxed(3)),
        Expression::Conditional(boxed(1), boxed(3), boxed(2)),
        Expression::Conditional(boxed(2), boxed(1), boxed(3)),
    ]
}

/// The same leaves in the same order under other shapes: only the numbers of children tell them apart.
fn shapes() -> Vec<Expression> {
    let and = Expression::And;
    vec![
        and(vec![and(vec![leaf(1), leaf(2)]), leaf(3)]),
        and(vec![and(vec![leaf(1)]), leaf(2), leaf(3)]),
        and(vec![and(vec![leaf(1), leaf(2), leaf(3)])]),
        and(vec![leaf(1), and(vec![leaf(2), leaf(3)])]),
        and(vec![leaf(1), and(vec![leaf(2)]), leaf(3)]),
        and(vec![and(Vec::new()), leaf(1), leaf(2), leaf(3)]),
        Expression::Not(Box::new(Expression::Not(boxed(1)))),
    ]
}

fn words() -> Vec<Expression> {
    let comparisons = [
        Comparison::Equal,
        Comparison::NotEqual,
        Comparison::Less,
        Comparison::LessOrEqual,
        Comparison::Greater,
        Comparison::GreaterOrEqual,
    ];
    let functions = [
        Function::Min,
        Function::Max,
        Function::Absolute,
        Function::FloorTo,
        Function::CeilTo,
        Function::RoundTo,
    ];
    let units = [
        Unit::Inch,
        Unit::Foot,
        Unit::Millimetre,
        Unit::Metre,
        Unit::SquareInch,
        Unit::SquareFoot,
        Unit::SquareMetre,
    ];
    let compared = comparisons.map(|comparison| compare(comparison, leaf(1), leaf(2)));
    let exchanged = compare(Comparison::Less, leaf(2), leaf(1));
    let units = units.map(Function::InUnit);
    let called = functions.into_iter().chain(units);
    let called = called.map(|function| Expression::Call(function, vec![leaf(1), leaf(2)]));
    let fewer = Expression::Call(Function::Min, vec![leaf(1)]);
    compared
        .into_iter()
        .chain(called)
        .chain([exchanged, fewer])
        .collect()
}

/// Nothing in the encoder recurses. The chain is taken apart by hand, since dropping it whole would.
#[test]
fn a_chain_of_100_000_nodes_has_a_revision() {
    let width = Expression::Read(Subject::Measure(MeasureIndex(0)));
    let mut deep = width;
    for _ in 0..100_000 {
        deep = Expression::Not(Box::new(deep));
    }
    let declarations = declarations(Layout::default());
    let encoder = crate::revision::Encoder::naming(&declarations);
    let deeper = Expression::Not(Box::new(deep));
    let digest = encoder.digest_of(&deeper);
    let Expression::Not(mut rest) = deeper else {
        panic!("it was made so")
    };
    assert_ne!(encoder.digest_of(&*rest), digest);
    while let Expression::Not(inner) = *rest {
        rest = inner;
    }
}
