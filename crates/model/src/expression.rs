//! Typed expressions over one catalog: what conditions, formulas and quantities are made of.
//!
//! An expression reads attributes, measures, facts and figures by position. `any`, `all` and `sum` over parts and
//! the names of families are already written out as plain operators: `any(glazing == "tempered")` is
//! `upper exists && glazing.upper == "tempered" || ...`. The text it came from, with spans, stays with the files.
//!
//! Always holds: a tree is at most [`EXPRESSION_DEPTH_MAX`] deep when it comes from a catalog file.
//! Source: a subset of the Common Expression Language; departures are listed in `docs/meaning.md`.

use crate::id::{AttributeIndex, FactIndex, FigureIndex, Id, MeasureIndex};
use crate::trade_function::TradeFunction;
use crate::value::Value;
use astragal_exact::Number;

/// LIMIT: how deep an expression of a catalog file may nest, as its reader sees it.
pub const EXPRESSION_DEPTH_MAX: usize = 64;

/// LIMIT: how many bits the numerator or denominator of a computed number may have; past it a value is undefined.
pub const NUMBER_BITS_MAX: u64 = 4096;

/// Something that an expression, a table column or a message can read.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Subject {
    /// The option of an attribute.
    Attribute(AttributeIndex),
    /// A measure.
    Measure(MeasureIndex),
    /// Who has deducted from a measure: `nobody`, `dealer` or `customer`.
    DeductedBy(MeasureIndex),
    /// A site fact.
    Fact(FactIndex),
    /// A figure.
    Figure(FigureIndex),
}

/// A typed expression.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Expression {
    /// A value written down.
    Literal(Value),
    /// The value of a subject.
    Read(Subject),
    /// A property of the option that an attribute has; undefined when not asked or when the option lacks it.
    Property(AttributeIndex, Id),
    /// Whether an attribute is asked: the value of its `applies_when`, for an open attribute too.
    IsAsked(AttributeIndex),
    /// `!x`
    Not(Box<Expression>),
    /// `a && b && ...`; true when empty.
    And(Vec<Expression>),
    /// `a || b || ...`; false when empty.
    Or(Vec<Expression>),
    /// `a == b`, `a < b` and the like.
    Compare(Comparison, Box<Expression>, Box<Expression>),
    /// `x in [a, b]`: whether the value equals one of the members.
    In(Box<Expression>, Vec<Expression>),
    /// `a + b + ...`; terms of one type.
    Add(Vec<Expression>),
    /// `-x`
    Negate(Box<Expression>),
    /// `a * b`: numbers, a number and a length or area, or two lengths (an area).
    Multiply(Box<Expression>, Box<Expression>),
    /// `a / n` by a written number that is not zero.
    Divide(Box<Expression>, Number),
    /// `c ? a : b`
    Conditional(Box<Expression>, Box<Expression>, Box<Expression>),
    /// A function of the closed table.
    Call(Function, Vec<Expression>),
}

/// How two values are compared.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Comparison {
    /// `==`
    Equal,
    /// `!=`
    NotEqual,
    /// `<`
    Less,
    /// `<=`
    LessOrEqual,
    /// `>`
    Greater,
    /// `>=`
    GreaterOrEqual,
}

impl Comparison {
    /// What holds where this does not: `<` for `>=`.
    #[must_use]
    pub fn opposite(self) -> Self {
        match self {
            Self::Equal => Self::NotEqual,
            Self::NotEqual => Self::Equal,
            Self::Less => Self::GreaterOrEqual,
            Self::LessOrEqual => Self::Greater,
            Self::Greater => Self::LessOrEqual,
            Self::GreaterOrEqual => Self::Less,
        }
    }
}

/// The closed table of functions.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Function {
    /// `min(a, b, ...)`: the least of one ordered type.
    Min,
    /// `max(a, b, ...)`: the greatest of one ordered type.
    Max,
    /// `abs(x)`
    Absolute,
    /// `floor_to(x, step)`: the greatest multiple of a positive step not above `x` (towards minus infinity).
    FloorTo,
    /// `ceil_to(x, step)`: the least multiple of a positive step not below `x`.
    CeilTo,
    /// `round_to(x, step)`: the nearest multiple of a positive step; half goes away from zero.
    RoundTo,
    /// `in_inches(length)`, `in_feet(length)`, `in_mm(length)`, `in_in2(area)`, `in_ft2(area)`, `in_m2(area)`:
    /// the number of these units. The unit says how many inches or square inches it has.
    InUnit(Unit),
    /// One of the trade's functions; see [`TradeFunction`].
    Trade(TradeFunction),
}

/// A unit that turns a length or an area into a number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Unit {
    /// Inch.
    Inch,
    /// Foot.
    Foot,
    /// Millimetre; 25.4 in an inch.
    Millimetre,
    /// Metre.
    Metre,
    /// Square inch.
    SquareInch,
    /// Square foot.
    SquareFoot,
    /// Square metre.
    SquareMetre,
}

impl Expression {
    /// Reads an attribute.
    #[must_use]
    pub fn attribute(attribute: AttributeIndex) -> Self {
        Self::Read(Subject::Attribute(attribute))
    }

    /// The condition that an attribute has this option.
    #[must_use]
    pub fn is_option(attribute: AttributeIndex, option: &str) -> Self {
        Self::Compare(
            Comparison::Equal,
            Box::new(Self::attribute(attribute)),
            Box::new(Self::Literal(Value::Option(Id::new(option)))),
        )
    }

    /// Calls `visit` with every node of the tree, parents first, left to right. Never recursive.
    pub fn walk<'a>(&'a self, mut visit: impl FnMut(&'a Self)) {
        let mut stack = vec![self];
        while let Some(node) = stack.pop() {
            visit(node);
            node.push_children(&mut stack);
        }
    }

    fn push_children<'a>(&'a self, stack: &mut Vec<&'a Self>) {
        match self {
            Self::Literal(_) | Self::Read(_) | Self::Property(..) | Self::IsAsked(_) => {}
            Self::Not(inner) | Self::Negate(inner) | Self::Divide(inner, _) => stack.push(inner),
            Self::And(inner) | Self::Or(inner) | Self::Add(inner) | Self::Call(_, inner) => {
                stack.extend(inner.iter().rev());
            }
            Self::In(item, members) => {
                stack.extend(members.iter().rev());
                stack.push(item);
            }
            Self::Compare(_, left, right) | Self::Multiply(left, right) => stack.extend([&**right, &**left]),
            Self::Conditional(condition, then, otherwise) => {
                stack.extend([&**otherwise, &**then, &**condition]);
            }
        }
    }

    /// Everything that the expression reads, in the order of first reading, each once. Properties count as reading
    /// their attribute; `is_asked` does not count here: see [`Expression::asks`].
    #[must_use]
    pub fn reads(&self) -> Vec<Subject> {
        let mut reads = Vec::new();
        self.walk(|node| {
            let subject = match node {
                Self::Read(subject) => *subject,
                Self::Property(attribute, _) => Subject::Attribute(*attribute),
                _ => return,
            };
            if !reads.contains(&subject) {
                reads.push(subject);
            }
        });
        reads
    }

    /// The attributes of which the expression asks whether they are asked, in order, each once.
    #[must_use]
    pub fn asks(&self) -> Vec<AttributeIndex> {
        let mut asks = Vec::new();
        self.walk(|node| {
            if let Self::IsAsked(attribute) = node
                && !asks.contains(attribute)
            {
                asks.push(*attribute);
            }
        });
        asks
    }
}
