//! Encodes what reads a catalog: subjects by name, values, expressions by tree, messages.
//!
//! `width > 36` is the words `compare`, `greater`, then `read`, `measure` with the name `width`, then `literal`,
//! `length` with the number 36. A tree is written parents first, left to right; every node says how many children
//! follow, or its word does.
//!
//! Cost: linear; never recursive.

use super::encoder::{Encode, Encoder, words};
use crate::expression::{Comparison, Expression, Function, Subject, Unit};
use crate::id::{AttributeIndex, FactIndex, FigureIndex, Id, MeasureIndex, PartIndex, Position};
use crate::template::{Piece, Template};
use crate::value::{Value, ValueType};

/// Names a thing, or gives the bare position of a thing that is not there.
fn name(encoder: &mut Encoder<'_>, position: impl Position, found: Option<(&Id, Option<PartIndex>)>) {
    if let Some((id, part)) = found {
        encoder.word("named");
        encoder.put(id).put(&part);
    } else {
        encoder.word("nameless");
        encoder.count(position.to_usize());
    }
}

impl Encode for PartIndex {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let found = encoder.names().and_then(|names| names.parts.get(*self));
        name(encoder, *self, found.map(|part| (&part.id, None)));
    }
}

impl Encode for AttributeIndex {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let found = encoder.names().and_then(|names| names.attributes.get(*self));
        name(
            encoder,
            *self,
            found.map(|attribute| (&attribute.id, attribute.part)),
        );
    }
}

impl Encode for MeasureIndex {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let found = encoder.names().and_then(|names| names.measures.get(*self));
        name(encoder, *self, found.map(|measure| (&measure.id, None)));
    }
}

impl Encode for FactIndex {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let found = encoder.names().and_then(|names| names.facts.get(*self));
        name(encoder, *self, found.map(|fact| (&fact.id, None)));
    }
}

impl Encode for FigureIndex {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let found = encoder.names().and_then(|names| names.figures.get(*self));
        name(encoder, *self, found.map(|figure| (&figure.id, figure.part)));
    }
}

impl Encode for Subject {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Attribute(index) => {
                encoder.word("attribute");
                encoder.put(index);
            }
            Self::Measure(index) => {
                encoder.word("measure");
                encoder.put(index);
            }
            Self::DeductedBy(index) => {
                encoder.word("deducted-by");
                encoder.put(index);
            }
            Self::Fact(index) => {
                encoder.word("fact");
                encoder.put(index);
            }
            Self::Figure(index) => {
                encoder.word("figure");
                encoder.put(index);
            }
        }
    }
}

words!(ValueType {
    Bool => "bool",
    Number => "number",
    Length => "length",
    Area => "area",
    Date => "date",
    Option => "option",
});

impl Encode for Value {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Bool(truth) => {
                encoder.word("bool");
                encoder.put(truth);
            }
            Self::Number(number) => {
                encoder.word("number");
                encoder.put(number);
            }
            Self::Length(inches) => {
                encoder.word("length");
                encoder.put(inches);
            }
            Self::Area(square_inches) => {
                encoder.word("area");
                encoder.put(square_inches);
            }
            Self::Date(date) => {
                encoder.word("date");
                encoder.put(date);
            }
            Self::Option(option) => {
                encoder.word("option");
                encoder.put(option);
            }
            Self::NotAsked => encoder.word("not-asked"),
        }
    }
}

words!(Comparison {
    Equal => "equal",
    NotEqual => "not-equal",
    Less => "less",
    LessOrEqual => "less-or-equal",
    Greater => "greater",
    GreaterOrEqual => "greater-or-equal",
});

impl Encode for Function {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Min => encoder.word("min"),
            Self::Max => encoder.word("max"),
            Self::Absolute => encoder.word("absolute"),
            Self::FloorTo => encoder.word("floor-to"),
            Self::CeilTo => encoder.word("ceil-to"),
            Self::RoundTo => encoder.word("round-to"),
            Self::InUnit(unit) => {
                encoder.word("in-unit");
                encoder.put(unit);
            }
            Self::Trade(function) => {
                encoder.word("trade");
                encoder.word(function.name());
                encoder.word(function.values());
            }
        }
    }
}

words!(Unit {
    Inch => "inch",
    Foot => "foot",
    Millimetre => "millimetre",
    Metre => "metre",
    SquareInch => "square-inch",
    SquareFoot => "square-foot",
    SquareMetre => "square-metre",
});

impl Encode for Expression {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        self.walk(|node| encode_node(node, encoder));
    }
}

/// Encodes a node without its children, which `walk` brings next.
fn encode_node(node: &Expression, encoder: &mut Encoder<'_>) {
    let mut many = |word, children: &[Expression]| {
        encoder.word(word);
        encoder.count(children.len());
    };
    match node {
        Expression::And(children) => many("and", children),
        Expression::Or(children) => many("or", children),
        Expression::Add(children) => many("add", children),
        Expression::In(_, members) => many("in", members),
        Expression::Call(function, arguments) => {
            many("call", arguments);
            encoder.put(function);
        }
        Expression::Literal(value) => {
            encoder.word("literal");
            encoder.put(value);
        }
        Expression::Read(subject) => {
            encoder.word("read");
            encoder.put(subject);
        }
        Expression::Property(attribute, property) => {
            encoder.word("property");
            encoder.put(attribute).put(property);
        }
        Expression::IsAsked(attribute) => {
            encoder.word("is-asked");
            encoder.put(attribute);
        }
        Expression::Compare(comparison, _, _) => {
            encoder.word("compare");
            encoder.put(comparison);
        }
        Expression::Divide(_, divisor) => {
            encoder.word("divide");
            encoder.put(divisor);
        }
        Expression::Not(_) => encoder.word("not"),
        Expression::Negate(_) => encoder.word("negate"),
        Expression::Multiply(_, _) => encoder.word("multiply"),
        Expression::Conditional(_, _, _) => encoder.word("conditional"),
    }
}

impl Encode for Template {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { pieces } = self;
        encoder.put(pieces);
    }
}

impl Encode for Piece {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Text(text) => {
                encoder.word("text");
                encoder.put(text);
            }
            Self::Value(subject) => {
                encoder.word("value");
                encoder.put(subject);
            }
            Self::Property(attribute, property) => {
                encoder.word("property");
                encoder.put(attribute).put(property);
            }
        }
    }
}
