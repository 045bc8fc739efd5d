//! Text to trees: expressions, table cells and message templates, untyped and with the place of every part.
//!
//! - [`parse_expression`]: `unit_width >= "15" && sash != "fixed"`, a subset of the Common Expression Language;
//! - [`parse_cell`]: what a key cell of a table may hold, `white|dark` or `15<..36`;
//! - [`parse_template`]: `A casement is 15 to 36 in wide; this one is {unit_width}.`
//!
//! What always holds: this module knows no catalog, no file and no type; it never panics and never recurses deeper than
//! [`DEPTH_MAX`], whatever the text; every span is a byte range of the text it was given.
//!
//! Cost: one pass over the text. Limits: [`DEPTH_MAX`] levels, [`EXPRESSION_BYTES_MAX`] bytes an expression.
//!
//! # The subset of CEL
//!
//! In: `== != < <= > >= in && || ! ?:`, `+ - * /`, parentheses, lists, decimal numbers, texts in single or double quotes
//! with the escapes `\\ \' \" \n \t \uXXXX`, `true`, `false`, names, members `a.b`, function calls `f(x)`, comments `//`.
//! Precedence is CEL's, and as in CEL a conditional between `?` and `:` needs parentheses and so does `-` after `!`.
//!
//! Out, each refused by name: `%`, `null`, bytes, raw and triple-quoted literals, unsigned and hexadecimal numbers,
//! numbers that begin with a point, maps and messages `{}`, indexing `a[0]`, method calls and macros `a.f(x)`, names in backquotes,
//! names with a leading dot, other escapes. Words that CEL reserves ([`is_reserved`]) are no names.
//!
//! Source: <https://github.com/google/cel-spec/blob/master/doc/langdef.md>.

mod ast;
mod cell;
mod error;
mod parse;
mod print;
mod refused;
mod template;
mod text;
mod token;

pub use ast::{CompareOperator, Expr, ExprKind, Literal, Placed, ProductOperator, SumOperator};
pub use cell::{Cell, Lower, Member, MemberKind, parse_cell, range_help};
pub use error::{Span, SyntaxError};
pub use parse::parse_expression;
pub use template::{Part, PartKind, parse_template};
pub use token::is_reserved;

/// How many levels an expression may be nested: brackets, prefix operators, conditionals in conditionals, members of members.
///
/// A chain of `* /` counts a level a factor after the first, since it is worked out two by two.
///
/// Deep enough for any rule that a person can read, shallow enough that walking a tree by recursion is safe.
pub const DEPTH_MAX: usize = 64;

/// How many bytes the text of one expression may have: 64 KiB.
pub const EXPRESSION_BYTES_MAX: usize = 64 * 1024;
