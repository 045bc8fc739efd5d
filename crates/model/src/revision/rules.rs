//! Encodes figures, rules, notices and tables.
//!
//! The columns of a table have no order: they are put into the order of their hashes, and the cells of every row with
//! them. Its rows have one only where the first match counts. The intervals of a cell have none either.
//!
//! Always holds: every structure is taken apart field by field, so that a new field does not compile until it is
//! encoded. Cost: 32 bytes of memory a row of a table without order.

use super::encoder::{Encode, Encoder, words};
use crate::rule::{Definition, Effect, Figure, Notice, NoticeKind, Requirement, RoomRule, Rule};
use crate::table::{Cell, Interval, LowerEnd, Row, RowMatch, Table};

impl Encode for Figure {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            part,
            label,
            value_type,
            unit,
            shown,
            definition,
        } = self;
        encoder.put(id).put(part).put(label).put(value_type);
        encoder.put(unit).put(shown).put(definition);
    }
}

impl Encode for Definition {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Formula(formula) => {
                encoder.word("formula");
                encoder.put(formula);
            }
            Self::Table(table, row_match) => {
                encoder.word("table");
                encoder.put(row_match);
                encode_table(table, RowOrder::of(*row_match), encoder);
            }
        }
    }
}

words!(RowMatch {
    Only => "only",
    First => "first",
    Least => "least",
    Greatest => "greatest",
});

impl Encode for Rule {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            part,
            authority,
            effect,
            when,
            requirement,
            message,
            basis,
            waivable,
        } = self;
        encoder.put(id).put(part).put(authority).put(effect);
        encoder.put(when).put(requirement).put(message);
        encoder.put(basis).put(waivable);
    }
}

impl Encode for RoomRule {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            authority,
            effect,
            when,
            at_least_one,
            message,
            basis,
        } = self;
        encoder.put(id).put(label).put(authority).put(effect).put(when);
        encoder.put(at_least_one).put(message).put(basis);
    }
}

words!(Effect {
    Block => "block",
    Warn => "warn",
    SignOff => "sign-off",
});

impl Encode for Requirement {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Expression(expression) => {
                encoder.word("expression");
                encoder.put(expression);
            }
            Self::Allowed(table) => {
                encoder.word("allowed");
                encode_table(table, RowOrder::Free, encoder);
            }
            Self::Forbidden(table) => {
                encoder.word("forbidden");
                encode_table(table, RowOrder::Free, encoder);
            }
        }
    }
}

impl Encode for Notice {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            part,
            kind,
            when,
            text,
            basis,
        } = self;
        encoder.put(id).put(part).put(kind).put(when);
        encoder.put(text).put(basis);
    }
}

words!(NoticeKind {
    Caution => "caution",
    Warranty => "warranty",
    SignOff => "sign-off",
});

/// Whether the order of the rows of a table counts.
#[derive(Clone, Copy)]
enum RowOrder {
    Counts,
    Free,
}

impl RowOrder {
    fn of(row_match: RowMatch) -> Self {
        match row_match {
            RowMatch::First => Self::Counts,
            RowMatch::Only | RowMatch::Least | RowMatch::Greatest => Self::Free,
        }
    }
}

fn encode_table(table: &Table, order: RowOrder, encoder: &mut Encoder<'_>) {
    let Table { columns, rows } = table;
    let named = columns.iter().enumerate();
    let mut named: Vec<_> = named
        .map(|(position, column)| (encoder.digest_of(column), position))
        .collect();
    named.sort_unstable();
    encoder.count(named.len());
    for (name, _) in &named {
        encoder.put(name);
    }
    let positions: Vec<usize> = named.into_iter().map(|(_, position)| position).collect();
    let positions = positions.as_slice();
    let rows = rows.iter().map(|row| RowOf { row, positions });
    match order {
        RowOrder::Counts => encoder.ordered(rows),
        RowOrder::Free => encoder.unordered(rows),
    };
}

/// A row, and the order in which its cells are encoded.
struct RowOf<'a> {
    row: &'a Row,
    /// Where the cell of each column stands.
    positions: &'a [usize],
}

impl Encode for RowOf<'_> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Row { cells, value } = self.row;
        for position in self.positions {
            match cells.get(*position) {
                Some(cell) => cell.encode(encoder),
                None => encoder.word("missing"),
            }
        }
        // A row has a cell a column; should somebody make another, what is too much counts as well.
        encoder.ordered(cells.get(self.positions.len()..).unwrap_or_default().iter());
        encoder.put(value);
    }
}

impl Encode for Cell {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Any => encoder.word("any"),
            Self::OneOf(values) => {
                encoder.word("one-of");
                encoder.put(&**values);
            }
            Self::Within(intervals) => {
                let mut intervals: Vec<&Interval> = intervals.iter().collect();
                intervals.sort_unstable();
                encoder.word("within");
                encoder.put(&intervals);
            }
        }
    }
}

impl Encode for Interval {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { lower, upper } = self;
        encoder.put(lower).put(upper);
    }
}

impl Encode for LowerEnd {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { value, open } = self;
        encoder.put(value).put(open);
    }
}
