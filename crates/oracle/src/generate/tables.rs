//! Random tables of rules and figures.

use std::collections::BTreeSet;
use std::sync::Arc;

use astragal_model::{Cell, Interval, LowerEnd, Row, RowMatch, Subject, Table, Value, ValueType};

use crate::generate::expressions::Maker;
use crate::generate::values::{value, word};

impl Maker<'_> {
    /// A table of a rule: no values; sometimes no rows.
    pub(crate) fn rule_table(&mut self, rank: usize) -> Table {
        let columns = self.columns(rank);
        let rows = (0..self.chance.between(0, 4)).map(|_| Row {
            cells: self.cells(&columns),
            value: None,
        });
        let rows = rows.collect();
        Table {
            columns: columns.into_iter().map(|(subject, _)| subject).collect(),
            rows: Arc::new(rows),
        }
    }

    /// A table of a figure: a value a row; under `only` no two rows can match at once.
    pub(crate) fn figure_table(&mut self, of: ValueType, rank: usize) -> (Table, RowMatch) {
        let columns = self.columns(rank);
        let mut matches = vec![RowMatch::Only, RowMatch::First];
        if of.is_ordered() {
            matches.extend([RowMatch::Least, RowMatch::Greatest]);
        }
        let row_match = self.chance.one_of(&matches).copied().unwrap_or(RowMatch::First);
        let mut rows: Vec<Row> = Vec::new();
        for _ in 0..self.chance.between(0, 6) {
            let row = Row {
                cells: self.cells(&columns),
                value: Some(value(self.chance, of)),
            };
            let alone = rows.iter().all(|other| apart(other, &row));
            if row_match != RowMatch::Only || alone {
                rows.push(row);
            }
        }
        let columns = columns.into_iter().map(|(subject, _)| subject).collect();
        (
            Table {
                columns,
                rows: Arc::new(rows),
            },
            row_match,
        )
    }

    fn columns(&mut self, rank: usize) -> Vec<(Subject, ValueType)> {
        let subjects = self.shape.subjects(rank);
        let attributes: Vec<_> = subjects
            .iter()
            .copied()
            .filter(|(subject, _)| matches!(subject, Subject::Attribute(_)))
            .collect();
        let mut figures = subjects.clone();
        figures.retain(|(subject, of)| *of == ValueType::Option && matches!(subject, Subject::Figure(_)));
        let mut columns = Vec::new();
        for _ in 0..self.chance.between(1, 3) {
            let from = match self.chance.below(10) {
                0..=4 if !attributes.is_empty() => &attributes,
                5 if !figures.is_empty() => &figures,
                _ => &subjects,
            };
            if let Some(column) = self
                .chance
                .one_of(from)
                .filter(|column| !columns.contains(*column))
            {
                columns.push(*column);
            }
        }
        columns
    }

    fn cells(&mut self, columns: &[(Subject, ValueType)]) -> Vec<Cell> {
        columns
            .iter()
            .map(|(subject, of)| self.cell(*subject, *of))
            .collect()
    }

    fn cell(&mut self, subject: Subject, of: ValueType) -> Cell {
        if self.chance.percent(20) {
            return Cell::Any;
        }
        if of.is_ordered() && self.chance.percent(70) {
            let intervals = (0..self.chance.between(1, 2)).map(|_| self.interval(of));
            return Cell::Within(intervals.collect());
        }
        let options = match subject {
            Subject::Attribute(index) => self
                .shape
                .attributes
                .get(index.0)
                .map(|shape| shape.options.clone()),
            _ => None,
        };
        let count = self.chance.between(1, 3);
        let values = (0..count).map(|_| match &options {
            Some(options) => {
                let option = self.chance.one_of(options).cloned();
                Value::Option(option.unwrap_or_else(|| word(self.chance)))
            }
            None => value(self.chance, of),
        });
        Cell::OneOf(values.collect::<BTreeSet<Value>>().into())
    }

    fn interval(&mut self, of: ValueType) -> Interval {
        let (one, other) = (value(self.chance, of), value(self.chance, of));
        let (lower, upper) = if one <= other { (one, other) } else { (other, one) };
        let open = self.chance.percent(50);
        Interval {
            lower: self.chance.percent(75).then_some(LowerEnd { value: lower, open }),
            upper: self.chance.percent(75).then_some(upper),
        }
    }
}

/// Whether two rows surely cannot match at once: some column has sets without a common value.
fn apart(one: &Row, other: &Row) -> bool {
    one.cells.iter().zip(&other.cells).any(|cells| match cells {
        (Cell::OneOf(left), Cell::OneOf(right)) => left.is_disjoint(right),
        (Cell::OneOf(values), Cell::Within(intervals)) | (Cell::Within(intervals), Cell::OneOf(values)) => {
            !values
                .iter()
                .any(|value| intervals.iter().any(|interval| interval.contains(value)))
        }
        _ => false,
    })
}
