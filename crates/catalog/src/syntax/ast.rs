//! The tree of an expression, untyped, with the place of every node.
//!
//! `unit_width >= "15" && sash != "fixed"` is [`ExprKind::And`] of two [`ExprKind::Compare`]. What the names mean, and
//! whether the types go together, is for the typed layer.
//!
//! What always holds of a tree from [`parse_expression`](super::parse_expression):
//! - the text under a node's span parses to that node (parentheses around a node are outside its span);
//! - chains of `&&`, of `||`, of `+ -` and of `* /` are one node each, so depth is nesting as a reader sees it;
//!   parentheses inside a chain keep their own node: `(a && b) && c` has two;
//! - depth, where a chain of `* /` counts a level a factor, is at most [`DEPTH_MAX`](super::DEPTH_MAX), so walking a tree by recursion is safe.
//!
//! Source: the grammar of the Common Expression Language, <https://github.com/google/cel-spec/blob/master/doc/langdef.md>.

use super::error::Span;

/// A node of an expression and where it stands.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Expr {
    /// What the node is.
    pub kind: ExprKind,
    /// Bytes of the expression's text, without parentheses around the node.
    pub span: Span,
}

/// What a node of an expression is.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum ExprKind {
    /// A number, a text, `true` or `false`.
    Literal(Literal),
    /// A name on its own: `unit_width`.
    Name(String),
    /// A member of something: `glazing.upper`.
    Member {
        /// What stands before the dot.
        base: Box<Expr>,
        /// The word after the dot.
        name: Placed,
    },
    /// A function call: `floor_to(opening_width, "1/8")`.
    Call {
        /// The word before the parenthesis.
        function: Placed,
        /// What stands between the parentheses, in order; may be empty.
        arguments: Vec<Expr>,
    },
    /// A list: `["white", "grey"]`; may be empty.
    List(Vec<Expr>),
    /// `!a`.
    Not(Box<Expr>),
    /// `-a`; a negative number is `Negate` of a literal.
    Negate(Box<Expr>),
    /// `a * b / c`, left to right.
    Product {
        /// The first factor.
        first: Box<Expr>,
        /// The others, each with what stands before it; never empty.
        rest: Vec<(ProductOperator, Expr)>,
    },
    /// `a + b - c`, left to right.
    Sum {
        /// The first term.
        first: Box<Expr>,
        /// The others, each with what stands before it; never empty.
        rest: Vec<(SumOperator, Expr)>,
    },
    /// `a == b`, `a < b` and so on; `a < b < c` is `(a < b) < c`, as in CEL.
    Compare {
        /// Which comparison.
        operator: CompareOperator,
        /// The left side.
        left: Box<Expr>,
        /// The right side.
        right: Box<Expr>,
    },
    /// `item in set`.
    In {
        /// What is looked for.
        item: Box<Expr>,
        /// Where: a list, or a call such as `family("dark")`.
        set: Box<Expr>,
    },
    /// `a && b && c`: true when all are; two or more.
    And(Vec<Expr>),
    /// `a || b || c`: true when any is; two or more.
    Or(Vec<Expr>),
    /// `condition ? then : otherwise`.
    Conditional {
        /// What decides.
        condition: Box<Expr>,
        /// The value when the condition is true.
        then: Box<Expr>,
        /// The value when it is false.
        otherwise: Box<Expr>,
    },
}

/// A value written out.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum Literal {
    /// An unsigned decimal number, exactly as written: `12`, `0.50`, `1e3`.
    ///
    /// The exponent may be of any size: whoever turns the text into a number sets a limit.
    Number(String),
    /// A text, its escapes resolved. May be the id of an option, a length such as `35 5/8`, or a date.
    Text(String),
    /// `true` or `false`.
    Bool(bool),
}

/// A word or another piece of text, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Placed {
    /// The text, without white space around it.
    pub text: String,
    /// Bytes of the text that was parsed.
    pub span: Span,
}

/// What stands before a factor that is not the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ProductOperator {
    /// `*`.
    Times,
    /// `/`.
    Over,
}

/// What stands before a term that is not the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SumOperator {
    /// `+`.
    Plus,
    /// `-`.
    Minus,
}

/// A comparison of two values.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CompareOperator {
    /// `==`.
    Equal,
    /// `!=`.
    NotEqual,
    /// `<`.
    Less,
    /// `<=`.
    LessOrEqual,
    /// `>`.
    Greater,
    /// `>=`.
    GreaterOrEqual,
}
