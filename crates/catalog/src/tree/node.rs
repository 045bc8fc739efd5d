//! What a tree consists of.
//!
//! A *node* is a value and the bytes it stands at: in `a = 1` the key `a` has the span 0..1 and its
//! node, the number 1, the span 4..5. The span of a table that has a heading, `[a]`, is its heading;
//! that of the whole TOML file is empty.
//!
//! What always holds: a table has each key once, in the order of the file; numbers are kept as text.
//! Cost: one allocation for each text. Limit: `DEPTH_LIMIT` levels, kept by who builds the tree.
//! Source: our own.

use std::ops::Range;

use jiff::civil::Date;

/// A value and the bytes it stands at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Node {
    /// The value.
    pub value: NodeValue,
    /// The bytes.
    pub span: Range<usize>,
}

/// Any value and the bytes it stands at.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Spanned<T> {
    /// The value.
    pub value: T,
    /// The bytes.
    pub span: Range<usize>,
}

/// One key of a table and what it holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The key.
    pub key: Spanned<String>,
    /// What it holds.
    pub node: Node,
}

/// What a node may hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NodeValue {
    /// Keys with their nodes, in the order of the file.
    Table(Vec<Entry>),
    /// Nodes in order.
    Array(Vec<Node>),
    /// Text.
    Text(String),
    /// A whole number in decimal digits, with `-` where it is negative.
    Integer(String),
    /// A number with a decimal point or an exponent, as it is written, without underscores.
    Decimal(String),
    /// True or false.
    Bool(bool),
    /// A date; only TOML has them. In JSON a date is text.
    Date(Date),
    /// Nothing; only JSON has it.
    Null,
}

impl Node {
    /// A value at some bytes.
    #[must_use]
    pub fn new(value: NodeValue, span: Range<usize>) -> Node {
        Node { value, span }
    }

    /// What kind of value this is, for a sentence: "text", "a list".
    #[must_use]
    pub fn kind(&self) -> &'static str {
        match self.value {
            NodeValue::Table(_) => "a table",
            NodeValue::Array(_) => "an array",
            NodeValue::Text(_) => "text",
            NodeValue::Integer(_) => "a whole number",
            NodeValue::Decimal(_) => "a decimal number",
            NodeValue::Bool(true) => "true",
            NodeValue::Bool(false) => "false",
            NodeValue::Date(_) => "a date",
            NodeValue::Null => "null",
        }
    }

    /// The keys, when this is a table.
    #[must_use]
    pub fn as_table(&self) -> Option<&[Entry]> {
        match &self.value {
            NodeValue::Table(entries) => Some(entries),
            _ => None,
        }
    }

    /// The nodes, when this is an array.
    #[must_use]
    pub fn as_array(&self) -> Option<&[Node]> {
        match &self.value {
            NodeValue::Array(nodes) => Some(nodes),
            _ => None,
        }
    }

    /// The text, when this is one.
    #[must_use]
    pub fn as_text(&self) -> Option<&str> {
        match &self.value {
            NodeValue::Text(text) => Some(text),
            _ => None,
        }
    }
}

impl<T> Spanned<T> {
    /// A value at some bytes.
    #[must_use]
    pub fn new(value: T, span: Range<usize>) -> Spanned<T> {
        Spanned { value, span }
    }

    /// Another value at the same bytes.
    #[must_use]
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Spanned<U> {
        Spanned {
            value: change(self.value),
            span: self.span,
        }
    }
}
