//! Reads the rows of a sheet under the types of its columns, and says which rows stand in each other's way.
//!
//! Always holds: a row that is kept has a cell for every key column; what is wrong with the others has been said.
//! Cost: O(cells) to read; see [`super::disjoint`] for the rest.

use astragal_model::measure_text::LengthUnit;
use astragal_model::{Cell, Row, RowMatch, Value};

use super::cells::{CellReader, CellText, shown_value};
use super::disjoint::{KeyColumn, MeetingPoint, WORK_LIMIT, meeting_point, meetings, repetitions};
use super::reports::Reports;
use crate::finding::{Finding, Findings};
use crate::sheet::{ColumnId, Sheet};
use crate::typed::{Names, Type};

/// A key column of a sheet.
pub(crate) struct Key<'a> {
    pub(crate) column: ColumnId,
    pub(crate) of: &'a Type,
}

/// The column that holds the value of each row, and how it is read.
pub(crate) struct ValueColumn<'a> {
    pub(crate) column: ColumnId,
    pub(crate) read: &'a dyn Fn(&CellText<'_>) -> Result<Value, Box<Finding>>,
    pub(crate) row_match: RowMatch,
    /// What to do about rows that meet.
    pub(crate) help: &'static str,
}

/// The rows of a sheet that could be read.
struct Read<'a> {
    sheet: &'a Sheet,
    keys: &'a [Key<'a>],
    columns: Vec<KeyColumn>,
    values: Vec<Value>,
    /// Which row of the sheet each row is.
    places: Vec<usize>,
    unit: LengthUnit,
}

/// Reads the rows of a table without values. Rows that say the same are warnings.
pub(crate) fn plain_rows(
    sheet: &Sheet,
    keys: &[Key<'_>],
    names: &Names,
    findings: &Findings,
) -> Option<Vec<Row>> {
    let mut reports = Reports::new(findings);
    let read = Read::rows(sheet, keys, None, names, &mut reports);
    for (row, earlier) in repetitions(&read.columns) {
        reports.push(read.duplicate(row, earlier));
    }
    reports.finish().then(|| read.into_rows())
}

/// Reads the rows of a table with values, and checks them against each other.
pub(crate) fn valued_rows(
    sheet: &Sheet,
    keys: &[Key<'_>],
    value: &ValueColumn<'_>,
    names: &Names,
    findings: &Findings,
) -> Option<Vec<Row>> {
    let mut reports = Reports::new(findings);
    let read = Read::rows(sheet, keys, Some(value), names, &mut reports);
    read.check(value, &mut reports);
    reports.finish().then(|| read.into_rows())
}

/// Says what is wrong with single cells, and nothing about rows together; true when nothing is.
pub(crate) fn checked_cells(
    sheet: &Sheet,
    keys: &[Key<'_>],
    value: &ValueColumn<'_>,
    names: &Names,
    findings: &Findings,
) -> bool {
    let mut reports = Reports::new(findings);
    let _ = Read::rows(sheet, keys, Some(value), names, &mut reports);
    reports.finish()
}

impl<'a> Read<'a> {
    fn rows(
        sheet: &'a Sheet,
        keys: &'a [Key<'a>],
        value: Option<&ValueColumn<'_>>,
        names: &Names,
        reports: &mut Reports<'_>,
    ) -> Self {
        let mut readers: Vec<CellReader<'_>> =
            keys.iter().map(|key| CellReader::new(key.of, names)).collect();
        let mut numbers: Vec<Vec<u32>> = vec![Vec::new(); keys.len()];
        let (mut values, mut places) = (Vec::new(), Vec::new());
        let mut of_row: Vec<Option<u32>> = Vec::new();
        if sheet.row_count() == 0 {
            reports.push(super::columns::no_rows(sheet.header_place()));
        }
        for (at, row) in sheet.rows().enumerate() {
            of_row.clear();
            for (key, reader) in keys.iter().zip(&mut readers) {
                let place = || row.place(key.column);
                let text = CellText {
                    text: row.cell(key.column),
                    place: &place,
                    is_said: reports.says_more(),
                };
                of_row.push(reader.read(&text, reports));
            }
            let value = value.map(|value| {
                let place = || row.place(value.column);
                let text = CellText {
                    text: row.cell(value.column),
                    place: &place,
                    is_said: reports.says_more(),
                };
                (value.read)(&text).map_err(|finding| reports.push(*finding)).ok()
            });
            if of_row.iter().any(Option::is_none) || value == Some(None) {
                continue;
            }
            for (numbers, number) in numbers.iter_mut().zip(&of_row) {
                numbers.extend(*number);
            }
            values.extend(value.flatten());
            places.push(at);
        }
        let cells = readers.into_iter().map(CellReader::into_cells);
        let columns = cells.zip(numbers).map(|(cells, rows)| KeyColumn { cells, rows });
        Self {
            sheet,
            keys,
            columns: columns.collect(),
            values,
            places,
            unit: names.length_unit,
        }
    }

    /// Checks that no key has two values, and under `only` that no two rows can match at once.
    fn check(&self, value: &ValueColumn<'_>, reports: &mut Reports<'_>) {
        let repeated = repetitions(&self.columns);
        for (row, earlier) in &repeated {
            if self.value(*row) != self.value(*earlier) {
                reports.push(self.contradiction(*row, *earlier, value.row_match));
            } else if value.row_match != RowMatch::Only {
                reports.push(self.duplicate(*row, *earlier));
            }
        }
        if value.row_match != RowMatch::Only {
            return;
        }
        let met = meetings(&self.columns, None, WORK_LIMIT);
        for (row, earlier) in &met.earlier {
            let contradicts = repeated
                .get(row)
                .is_some_and(|first| self.value(*row) != self.value(*first));
            if !contradicts {
                reports.push(self.meeting(*row, *earlier, value.help));
            }
        }
        if !met.complete {
            reports.push(too_entangled().at(self.sheet.header_place()));
        }
    }

    fn into_rows(self) -> Vec<Row> {
        let mut values = self.values.into_iter();
        let columns = self.columns;
        (0..self.places.len())
            .map(|row| {
                let row = u32::try_from(row).unwrap_or(u32::MAX);
                let cells = columns.iter().filter_map(|column| column.cell(row).cloned());
                Row {
                    cells: cells.collect(),
                    value: values.next(),
                }
            })
            .collect()
    }

    fn value(&self, row: u32) -> Option<&Value> {
        self.values.get(usize::try_from(row).ok()?)
    }

    fn shown(&self, row: u32) -> String {
        self.value(row)
            .map_or_else(String::new, |value| shown_value(value, self.unit))
    }

    fn sheet_row(&self, row: u32) -> Option<crate::sheet::Row<'_>> {
        let at = usize::try_from(row).ok().and_then(|row| self.places.get(row));
        at.and_then(|at| self.sheet.row(*at))
    }

    fn number(&self, row: u32) -> u32 {
        self.sheet_row(row).map_or(0, crate::sheet::Row::number)
    }

    /// The finding at a row, with the earlier row beside it.
    fn placed(&self, finding: Finding, row: u32, earlier: u32) -> Finding {
        let finding = finding.at_if_known(self.sheet_row(row).map(crate::sheet::Row::row_place));
        match self.sheet_row(earlier) {
            Some(earlier) => finding.with_related(earlier.row_place(), format!("row {}", earlier.number())),
            None => finding,
        }
    }

    fn duplicate(&self, row: u32, earlier: u32) -> Finding {
        let message = format!(
            "rows {} and {} say the same",
            self.number(earlier),
            self.number(row)
        );
        let finding = Finding::warning("DUPLICATE_ROW", message).with_help("delete one of them");
        self.placed(finding, row, earlier)
    }

    fn contradiction(&self, row: u32, earlier: u32, row_match: RowMatch) -> Finding {
        let (first, second) = (self.number(earlier), self.number(row));
        let (here, there) = (self.shown(row), self.shown(earlier));
        let message = format!(
            "rows {first} and {second} have the same key and two values, {there} and {here}: the table contradicts itself"
        );
        let help = if row_match == RowMatch::First {
            format!("under `match = \"first\"` row {second} can never match; delete one of them")
        } else {
            "delete one of them".to_owned()
        };
        let finding = Finding::error("TABLE_CONTRADICTS", message).with_help(help);
        self.placed(finding, row, earlier)
    }

    fn meeting(&self, row: u32, earlier: u32, help: &str) -> Finding {
        let key = self.keys.iter().zip(&self.columns).filter_map(|(key, column)| {
            let name = self.sheet.column_name(key.column);
            meeting_words(name, column.cell(row)?, column.cell(earlier)?, self.unit)
        });
        let key: Vec<String> = key.collect();
        let whenever = if key.is_empty() {
            "always".to_owned()
        } else {
            format!("when {}", key.join(", "))
        };
        let (first, second) = (self.number(earlier), self.number(row));
        let message = format!("rows {first} and {second} both match {whenever}; only one row may");
        self.placed(Finding::error("ROWS_MEET", message).with_help(help), row, earlier)
    }
}

/// Where two cells of a column meet; nothing where both are `*`.
pub(crate) fn meeting_words(name: &str, a: &Cell, b: &Cell, unit: LengthUnit) -> Option<String> {
    match meeting_point(a, b)? {
        MeetingPoint::Anywhere => None,
        MeetingPoint::At(value) => Some(format!("`{name}` is {}", shown_value(&value, unit))),
        MeetingPoint::Above(value) => Some(format!("`{name}` is above {}", shown_value(&value, unit))),
    }
}

/// Says that the search for rows that meet was given up.
pub(crate) fn too_entangled() -> Finding {
    let message = format!("the rows are too entangled to compare: {WORK_LIMIT} comparisons were not enough");
    Finding::error("LIMIT", message).with_help("use fewer `*` and wide ranges, or split the table")
}
