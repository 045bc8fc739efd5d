//! Tables: rows of cells over subjects, as rules allow or forbid them and figures look values up in them.
//!
//! A row matches when every cell matches the subject of its column: `*` matches whatever stands there, known or
//! not; a set matches its members; a range matches the values inside it. In the table
//!
//! ```text
//! exterior , unit_width , thickness
//! white    , ..36       , 3/32
//! *        , 36<..72    , 1/8
//! ```
//!
//! a grey unit of 40 in matches the second row alone.
//!
//! Always holds: every row has a cell for every column. Families are expanded into their options when a table is read.
//! Cost: a look-up tries the rows one after the other.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::expression::Subject;
use crate::value::Value;

/// What one cell lets through.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Cell {
    /// `*`: whatever stands there, known or not.
    Any,
    /// One of these values: options, truth values, or single numbers, lengths and dates.
    /// Shared, since the same few sets stand in many rows.
    OneOf(Arc<BTreeSet<Value>>),
    /// A value of an ordered type inside one of these intervals.
    Within(Vec<Interval>),
}

/// An interval of an ordered type; a missing end is unbounded.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Interval {
    /// The lower end.
    pub lower: Option<LowerEnd>,
    /// The upper end, which belongs to the interval.
    pub upper: Option<Value>,
}

/// The lower end of an interval.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct LowerEnd {
    /// Where the interval begins.
    pub value: Value,
    /// Whether the end itself is left out (`15<..36`).
    pub open: bool,
}

impl Interval {
    /// Whether a value of the interval's type lies inside.
    #[must_use]
    pub fn contains(&self, value: &Value) -> bool {
        let above = match &self.lower {
            None => true,
            Some(end) if end.open => *value > end.value,
            Some(end) => *value >= end.value,
        };
        above && self.upper.as_ref().is_none_or(|upper| value <= upper)
    }
}

impl Cell {
    /// Whether a known value passes. `NotAsked` passes only `*`.
    #[must_use]
    pub fn admits(&self, value: &Value) -> bool {
        match self {
            Self::Any => true,
            Self::OneOf(values) => values.contains(value),
            Self::Within(intervals) => intervals.iter().any(|interval| interval.contains(value)),
        }
    }
}

/// One row: its cells in the order of the columns and, in a figure's table, its value.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub struct Row {
    /// A cell a column.
    pub cells: Vec<Cell>,
    /// The value of the row; rule tables have none.
    pub value: Option<Value>,
}

/// Rows over the subjects of the columns. Rows are shared between the parts of one declaration.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Table {
    /// What each column reads.
    pub columns: Vec<Subject>,
    /// The rows in file order.
    pub rows: Arc<Vec<Row>>,
}

/// Which of the matching rows of a figure's table gives the value.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RowMatch {
    /// No two rows can match at once.
    Only,
    /// The first in file order.
    First,
    /// The one with the least value.
    Least,
    /// The one with the greatest value.
    Greatest,
}
