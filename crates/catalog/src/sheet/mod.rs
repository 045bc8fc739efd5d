//! A sheet of a spreadsheet saved as CSV: named columns, and rows of cells that know their place.
//!
//! The first row that is not blank names the columns; each later row has as many cells. In
//! `size,amount` followed by `15..36, 12.50`, the cell of row 2 in column `amount` is `12.50`.
//!
//! What always holds: every row that is kept has one cell for each column; white space (ASCII) around
//! a cell is gone; blank rows are left out but counted, so that a row has the number a spreadsheet
//! shows. A cell in quotes may hold line ends, which do not count as rows.
//! Cost: O(length); about twice the text in memory, and 8 bytes a row and 4 a cell. Stops at
//! [`ROWS_LIMIT`] rows. The bytes of a cell are looked up only when a finding asks for them.
//! Source: RFC 4180, read by the crate `csv`.

mod damage;
mod reading;
mod scan;

use std::sync::Arc;

pub use damage::spreadsheet_help;
use reading::{Reading, RowStart, header_is_fine, is_separated_otherwise, row_place, u32_of, usize_of};
use scan::RawRecord;

use crate::finding::{Finding, Findings, Place};
use crate::source::{FileId, Sources};

/// LIMIT: the most rows of one sheet, blank ones and the header left out.
pub const ROWS_LIMIT: usize = 1_000_000;

/// LIMIT: the most rows of one sheet that are reported one by one for the same mistake.
const REPORTS_LIMIT: usize = 20;

/// Named columns, and rows of cells.
///
/// # Examples
///
/// A sheet, one cell of it and its place:
///
/// ```
/// use astragal_catalog::finding::Findings;
/// use astragal_catalog::{sheet::Sheet, source::Sources};
///
/// let mut sources = Sources::new();
/// let file = sources.add("energy.csv", "glazing,u_factor\nlow_e,0.27\n");
/// let findings = Findings::new();
/// let sheet = Sheet::read(&sources, file, &findings).unwrap();
/// let u_factor = sheet.column("u_factor").unwrap();
/// let row = sheet.rows().next().unwrap();
/// assert_eq!(row.cell(u_factor), "0.27");
/// assert_eq!(row.place(u_factor).row, Some(2));
/// assert_eq!(sources.text_at(&row.place(u_factor)), "0.27");
/// ```
#[derive(Debug)]
pub struct Sheet {
    file: FileId,
    text: Arc<str>,
    columns: Vec<String>,
    header: RowStart,
    cells: String,
    cell_ends: Vec<u32>,
    rows: Vec<RowStart>,
}

/// Names one column of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ColumnId(usize);

/// One row of a sheet.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    sheet: &'a Sheet,
    index: usize,
    start: RowStart,
}

impl Sheet {
    /// Reads a file as a sheet; `None` when it has no columns to go by or too many rows.
    ///
    /// A row with too few or too many cells is a finding and left out.
    pub fn read(sources: &Sources, file: FileId, findings: &Findings) -> Option<Sheet> {
        Sheet::read_limited(sources, file, ROWS_LIMIT, findings)
    }

    /// The same with another limit of rows.
    pub fn read_limited(
        sources: &Sources,
        file: FileId,
        rows_limit: usize,
        findings: &Findings,
    ) -> Option<Sheet> {
        let text = sources.shared_text(file);
        let mut reading = Reading::new(file, &text, findings);
        let Some((header, names)) = reading.next() else {
            let finding = Finding::error("NO_HEADER", "the sheet is blank; expected a row of column names");
            findings.push(finding.at(Place::new(file, 0..0)));
            return None;
        };
        let mut columns: Vec<String> = names.iter().map(|name| name.trim_ascii().to_owned()).collect();
        if is_separated_otherwise(&reading, header, &columns) {
            return None;
        }
        let width = columns.len();
        let blank = reading.blank_columns(width, &columns);
        columns.truncate(width - blank);
        let is_fine = header_is_fine(&reading, header, &columns);
        let mut sheet = Sheet {
            file,
            text: Arc::clone(&text),
            columns,
            header,
            cells: String::new(),
            cell_ends: Vec::new(),
            rows: Vec::new(),
        };
        let fits = sheet.read_rows(&mut reading, rows_limit, width);
        (is_fine && fits).then_some(sheet)
    }

    /// Reads the rows, of which each has as many cells as the header as it is written.
    fn read_rows(&mut self, reading: &mut Reading<'_>, rows_limit: usize, width: usize) -> bool {
        let mut ragged = 0_usize;
        let mut last_ragged = None;
        while let Some((start, cells)) = reading.next() {
            if self.rows.len() + ragged >= rows_limit {
                reading
                    .findings
                    .push(too_many_rows(reading.place(start), rows_limit));
                return false;
            }
            if cells.len() != width {
                let (found, cells) = (cells.len(), cells.clone());
                if reading.is_unclosed(start) {
                    continue;
                }
                ragged += 1;
                last_ragged = Some(start);
                if ragged <= REPORTS_LIMIT {
                    let finding = ragged_row(start.number, &cells, found, width);
                    reading.findings.push(finding.at(reading.place(start)));
                }
                continue;
            }
            for cell in cells.iter().take(self.columns.len()) {
                self.cells.push_str(cell.trim_ascii());
                self.cell_ends.push(u32_of(self.cells.len()));
            }
            self.rows.push(start);
        }
        if let (Some(start), 1..) = (last_ragged, ragged.saturating_sub(REPORTS_LIMIT)) {
            let text = format!(
                "{} more rows have the wrong number of cells",
                ragged - REPORTS_LIMIT
            );
            reading
                .findings
                .push(Finding::error("RAGGED_ROW", text).at(reading.place(start)));
        }
        true
    }

    /// The file that was read.
    #[must_use]
    pub fn file(&self) -> FileId {
        self.file
    }

    /// The columns from left to right, with their names.
    pub fn columns(&self) -> impl Iterator<Item = (ColumnId, &str)> {
        self.columns
            .iter()
            .enumerate()
            .map(|(at, name)| (ColumnId(at), name.as_str()))
    }

    /// The column of that name.
    #[must_use]
    pub fn column(&self, name: &str) -> Option<ColumnId> {
        self.columns
            .iter()
            .position(|column| column == name)
            .map(ColumnId)
    }

    /// The name of a column.
    #[must_use]
    pub fn column_name(&self, column: ColumnId) -> &str {
        self.columns.get(column.0).map_or("", String::as_str)
    }

    /// The place of the name of a column.
    #[must_use]
    pub fn column_place(&self, column: ColumnId) -> Place {
        self.cell_place(self.header, column)
    }

    /// The place of the whole header.
    #[must_use]
    pub fn header_place(&self) -> Place {
        row_place(self.file, &self.text, self.header)
    }

    /// How many rows there are under the header, blank ones left out.
    #[must_use]
    pub fn row_count(&self) -> usize {
        self.rows.len()
    }

    /// The rows from top to bottom.
    pub fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().enumerate().map(|(index, start)| Row {
            sheet: self,
            index,
            start: *start,
        })
    }

    /// One row, counted from 0 without the header.
    #[must_use]
    pub fn row(&self, index: usize) -> Option<Row<'_>> {
        self.rows.get(index).map(|start| Row {
            sheet: self,
            index,
            start: *start,
        })
    }

    fn cell_place(&self, start: RowStart, column: ColumnId) -> Place {
        let record = RawRecord::scan(&self.text, usize_of(start.byte));
        let span = record
            .cells
            .get(column.0)
            .cloned()
            .unwrap_or(record.end..record.end);
        let mut place = Place::new(self.file, scan::trimmed(&self.text, span));
        place.row = Some(start.number);
        place.column = self.columns.get(column.0).cloned();
        place.column_number = Some(u32_of(column.0).saturating_add(1));
        place
    }

    fn cell(&self, row: usize, column: usize) -> &str {
        let at = row * self.columns.len() + column;
        let end_of = |at: usize| self.cell_ends.get(at).copied().map_or(0, usize_of);
        let start = at.checked_sub(1).map_or(0, end_of);
        self.cells.get(start..end_of(at)).unwrap_or("")
    }
}

impl<'a> Row<'a> {
    /// The number that a spreadsheet shows for this row; the header of most sheets is row 1.
    #[must_use]
    pub fn number(self) -> u32 {
        self.start.number
    }

    /// The text of a cell, without white space around it.
    #[must_use]
    pub fn cell(self, column: ColumnId) -> &'a str {
        self.sheet.cell(self.index, column.0)
    }

    /// The cells from left to right, one for each column.
    pub fn cells(self) -> impl Iterator<Item = (ColumnId, &'a str)> {
        (0..self.sheet.columns.len()).map(move |at| (ColumnId(at), self.sheet.cell(self.index, at)))
    }

    /// The place of a cell, its quotes included.
    #[must_use]
    pub fn place(self, column: ColumnId) -> Place {
        self.sheet.cell_place(self.start, column)
    }

    /// The place of the whole row.
    #[must_use]
    pub fn row_place(self) -> Place {
        row_place(self.sheet.file, &self.sheet.text, self.start)
    }
}

fn ragged_row(number: u32, cells: &csv::StringRecord, found: usize, expected: usize) -> Finding {
    let word = if found == 1 { "cell" } else { "cells" };
    let text = format!("row {number} has {found} {word}; the header has {expected}");
    let is_blank = |cell: &str| cell.trim_ascii().is_empty();
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    // `225` and `00` were 225,00; a guess is made only where one pair of cells looks like that.
    let pairs = cells.iter().zip(cells.iter().skip(1));
    let halves: Vec<(&str, &str)> = pairs
        .filter(|(whole, rest)| is_digits(whole) && is_digits(rest) && rest.len() == 2)
        .collect();
    let help = match halves.as_slice() {
        _ if found < expected => "a cell with nothing in it still needs its comma".to_owned(),
        _ if cells.iter().skip(expected).all(is_blank) => "take away the commas at the end of the row".to_owned(),
        [(whole, rest)] => format!("was this `{whole},{rest}`? write a decimal point: `{whole}.{rest}`"),
        _ => "a comma begins a new cell: write 1200.00 without one between thousands, several options as `white|grey`, and a text with commas in quotes"
            .to_owned(),
    };
    Finding::error("RAGGED_ROW", text).with_help(help)
}

/// What a spreadsheet calls a column: `A`, `B`, ..., `Z`, `AA`.
///
/// Columns are counted from 1.
pub(crate) fn column_letters(column: u32) -> String {
    let mut letters = Vec::new();
    let mut rest = column;
    while rest > 0 {
        let digit = u8::try_from((rest - 1) % 26).unwrap_or(0);
        letters.push(char::from(b'A' + digit));
        rest = (rest - 1) / 26;
    }
    letters.iter().rev().collect()
}

fn too_many_rows(place: Place, rows_limit: usize) -> Finding {
    let text = format!("the sheet has more than {rows_limit} rows, the most that are read");
    Finding::error("TOO_MANY_ROWS", text)
        .at(place)
        .with_help("use ranges or families, or split the sheet")
}

#[cfg(test)]
mod tests;
