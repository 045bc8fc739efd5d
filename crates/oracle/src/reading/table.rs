//! Answers tables: which rows match, and what a figure's table says.

use std::cmp::Ordering;

use astragal_model::{Cell, Interval, Row, RowMatch, Subject, Table};

use crate::reading::answer::{Answer, Datum, all_wants};
use crate::reading::expression::extreme;
use crate::reading::reader::{Reader, subject_name};

impl Reader<'_> {
    /// Some row matches; a column whose attribute is not asked is ignored.
    pub(crate) fn allowed(&self, table: &Table) -> Answer {
        self.some_row(table, true)
    }

    /// No row matches; a row that restricts a column whose attribute is not asked cannot match.
    pub(crate) fn forbidden(&self, table: &Table) -> Answer {
        self.some_row(table, false).not()
    }

    fn some_row(&self, table: &Table, ignored: bool) -> Answer {
        let mut rows = Vec::new();
        for row in table.rows.iter() {
            let mut cells = Vec::new();
            for (column, cell) in table.columns.iter().zip(&row.cells) {
                let key = self.subject(*column);
                cells.push(match key {
                    _ if *cell == Cell::Any => {
                        self.meet("rule cell *", crate::reading::expression::ending(&key));
                        Answer::truth(true)
                    }
                    Answer::Is(Datum::NotAsked) => {
                        self.meet(
                            "rule cell that restricts what is not asked",
                            if ignored { "allowed" } else { "forbidden" },
                        );
                        Answer::truth(ignored)
                    }
                    Answer::Is(datum) => Answer::truth(lets_through(cell, &datum)),
                    unsettled => unsettled,
                });
            }
            rows.push(Answer::and(&cells));
        }
        Answer::or(&rows)
    }

    /// The value that a figure's table gives.
    pub(crate) fn look_up(&self, figure: &str, table: &Table, row_match: RowMatch) -> Answer {
        let keys: Vec<Answer> = table
            .columns
            .iter()
            .map(|column| self.key(figure, *column))
            .collect();
        for key in &keys {
            if let Answer::Nothing(_) = key {
                return key.clone();
            }
        }
        let wants = all_wants(&keys);
        if keys.iter().any(|key| matches!(key, Answer::Wants(_))) {
            return Answer::Wants(wants);
        }
        let matches = |row: &&Row| {
            row.cells.iter().zip(&keys).all(|(cell, key)| match key {
                Answer::Is(datum) => lets_through(cell, datum),
                Answer::Wants(_) | Answer::Nothing(_) => false,
            })
        };
        let rows = table.rows.iter().filter(matches);
        let values: Vec<Datum> = rows.filter_map(|row| row.value.as_ref()).map(Datum::of).collect();
        let (word, value) = match row_match {
            RowMatch::Only => ("only", values.first().cloned()),
            RowMatch::First => ("first", values.first().cloned()),
            RowMatch::Least => ("least", extreme(&values, Ordering::Less)),
            RowMatch::Greatest => ("greatest", extreme(&values, Ordering::Greater)),
        };
        let how = match values.len() {
            0 => "no row",
            1 => "one row",
            _ => "several rows",
        };
        self.meet(word, how);
        match value {
            Some(value) => Answer::Is(value),
            None => Answer::Nothing(format!("no row {figure}")),
        }
    }

    /// A key of a figure's table: what is not asked has no value there, be it an attribute or a figure that came to
    /// what an attribute is.
    fn key(&self, figure: &str, column: Subject) -> Answer {
        match (self.subject(column), column) {
            (Answer::Is(Datum::NotAsked), Subject::Attribute(_)) => {
                Answer::Nothing(format!("not asked {}", subject_name(self.declared, column)))
            }
            (Answer::Is(Datum::NotAsked), _) => {
                self.meet("figure as a key", "not asked");
                Answer::Nothing(format!("no row {figure}"))
            }
            (other, _) => other,
        }
    }
}

fn lets_through(cell: &Cell, datum: &Datum) -> bool {
    match cell {
        Cell::Any => true,
        Cell::OneOf(values) => values.iter().any(|value| Datum::of(value) == *datum),
        Cell::Within(intervals) => intervals.iter().any(|interval| inside(interval, datum)),
    }
}

fn inside(interval: &Interval, datum: &Datum) -> bool {
    if let Some(lower) = &interval.lower {
        match datum.order(&Datum::of(&lower.value)) {
            Some(Ordering::Greater) => {}
            Some(Ordering::Equal) if !lower.open => {}
            _ => return false,
        }
    }
    match &interval.upper {
        None => true,
        Some(upper) => matches!(
            datum.order(&Datum::of(upper)),
            Some(Ordering::Less | Ordering::Equal)
        ),
    }
}
