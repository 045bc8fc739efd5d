//! Goes through the records of a CSV text, with their numbers, and looks at quotes and names.
//!
//! In `a,b`, a blank line, `1,2`, the second record begins at byte 5 and has number 3.
//!
//! What always holds: a record that is handed out has a cell that is not blank; its number is that of
//! a spreadsheet, in which a cell with line ends is one row.
//! Cost: O(length). Source: RFC 4180, read by the crate `csv`.

use super::REPORTS_LIMIT;
use super::scan::{self, RawRecord};
use crate::finding::{Finding, Findings, Place};
use crate::source::FileId;

/// The first byte of a row, and the number a spreadsheet shows for it.
#[derive(Clone, Copy, Debug)]
pub(super) struct RowStart {
    pub(super) byte: u32,
    pub(super) number: u32,
}

/// Goes through the records that are not blank, and reports what is wrong with their quotes.
pub(super) struct Reading<'a> {
    file: FileId,
    text: &'a str,
    pub(super) findings: &'a Findings,
    reader: csv::Reader<&'a [u8]>,
    record: csv::StringRecord,
    /// Where the record before ended, and its number.
    before: RowStart,
    reports: usize,
}

impl<'a> Reading<'a> {
    pub(super) fn new(file: FileId, text: &'a str, findings: &'a Findings) -> Reading<'a> {
        let mut builder = csv::ReaderBuilder::new();
        let reader = builder
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let record = csv::StringRecord::new();
        Reading {
            file,
            text,
            findings,
            reader,
            record,
            before: RowStart { byte: 0, number: 1 },
            reports: 0,
        }
    }

    /// The next record that is not blank, and where it begins.
    pub(super) fn next(&mut self) -> Option<(RowStart, &csv::StringRecord)> {
        loop {
            // The text is UTF-8, in memory, and of any shape, so that reading cannot fail.
            if !self.reader.read_record(&mut self.record).unwrap_or(false) {
                return None;
            }
            let (start, line_ends) = scan::skip_line_ends(self.text, usize_of(self.before.byte));
            let start = RowStart {
                byte: u32_of(start),
                number: self.before.number.saturating_add(line_ends),
            };
            let end = self.end_of(start);
            self.before = RowStart {
                byte: u32_of(end),
                number: start.number,
            };
            if self.record.iter().any(|cell| !cell.trim_ascii().is_empty()) {
                break Some((start, &self.record));
            }
        }
    }

    /// The end of a record; on the way, what is wrong with its quotes.
    fn end_of(&mut self, start: RowStart) -> usize {
        let from = usize_of(start.byte);
        let line_end = scan::line_end(self.text, from);
        if !self.text.get(from..line_end).unwrap_or("").contains('"') {
            return line_end;
        }
        let record = RawRecord::scan(self.text, from);
        let place = |span| Place {
            row: Some(start.number),
            ..Place::new(self.file, span)
        };
        if let Some(at) = record.unclosed {
            let text = format!(
                "row {} has a cell with an opening quote and no closing one",
                start.number
            );
            let finding = Finding::error("UNCLOSED_QUOTE", text).at(place(at..at + 1));
            self.findings
                .push(finding.with_help("close it; a quote inside a quoted cell is written twice"));
        }
        if let (Some(span), 0..REPORTS_LIMIT) = (record.stray, self.reports) {
            self.reports += 1;
            let text = format!("row {} has text after the closing quote of a cell", start.number);
            let finding = Finding::error("TEXT_AFTER_QUOTE", text).at(place(span));
            self.findings
                .push(finding.with_help("a quote inside a quoted cell is written twice"));
        }
        record.end
    }

    /// How many columns at the end have no name and no cell with anything in it, as spreadsheets leave behind.
    pub(super) fn blank_columns(&self, width: usize, columns: &[String]) -> usize {
        let named = columns
            .iter()
            .rposition(|name| !name.is_empty())
            .map_or(1, |at| at + 1);
        if named >= width {
            return 0;
        }
        let mut rest = Reading::new(self.file, self.text, self.findings);
        let mut used = named;
        while rest.reader.read_record(&mut rest.record).unwrap_or(false) {
            let cells = rest.record.iter().enumerate();
            let filled = cells.filter(|(_, cell)| !cell.trim_ascii().is_empty());
            used = used.max(filled.last().map_or(0, |(at, _)| at + 1)).min(width);
        }
        width - used
    }

    /// Whether a quote is opened in a record and never closed, which is reported already.
    pub(super) fn is_unclosed(&self, start: RowStart) -> bool {
        RawRecord::scan(self.text, usize_of(start.byte))
            .unclosed
            .is_some()
    }

    /// The place of a record.
    pub(super) fn place(&self, start: RowStart) -> Place {
        row_place(self.file, self.text, start)
    }
}

/// The place of the record that begins there.
pub(super) fn row_place(file: FileId, text: &str, start: RowStart) -> Place {
    let from = usize_of(start.byte);
    Place {
        row: Some(start.number),
        ..Place::new(file, from..RawRecord::scan(text, from).end)
    }
}

/// Whether the cells are separated by something else than commas; a finding says so.
pub(super) fn is_separated_otherwise(reading: &Reading<'_>, header: RowStart, columns: &[String]) -> bool {
    let mark = |letter: char| columns.first().is_some_and(|only| only.contains(letter));
    let name = match columns.len() {
        1 if mark(';') => "semicolons",
        1 if mark('\t') => "tabs",
        _ => return false,
    };
    let text = format!("the cells of the header are separated by {name}; expected commas");
    let help = "save as CSV with commas between the cells and a point in decimals";
    reading.findings.push(
        Finding::error("NOT_COMMAS", text)
            .at(reading.place(header))
            .with_help(help),
    );
    true
}

/// Whether the cells of the header name columns; findings say why they do not.
pub(super) fn header_is_fine(reading: &Reading<'_>, header: RowStart, columns: &[String]) -> bool {
    let place = reading.place(header);
    let spans = RawRecord::scan(reading.text, usize_of(header.byte)).cells;
    let mut is_fine = true;
    for (at, name) in columns.iter().enumerate() {
        let cell_place = |at: usize| {
            let span = spans.get(at).cloned().unwrap_or(place.span.clone());
            Place {
                row: Some(header.number),
                column_number: Some(u32_of(at).saturating_add(1)),
                ..Place::new(reading.file, scan::trimmed(reading.text, span))
            }
        };
        // The corner of a matrix or a grid may be left blank; where a name is needed there, its reader says so.
        if name.is_empty() && at == 0 && columns.len() > 1 {
            continue;
        }
        if name.is_empty() {
            is_fine = false;
            let finding = Finding::error(
                "EMPTY_COLUMN_NAME",
                format!(
                    "column {} has no name",
                    super::column_letters(u32_of(at).saturating_add(1))
                ),
            );
            reading.findings.push(
                finding
                    .at(cell_place(at))
                    .with_help("name it, or delete the column"),
            );
        } else if let Some(first) = columns.iter().position(|column| column == name)
            && first < at
        {
            is_fine = false;
            let finding = Finding::error("DUPLICATE_COLUMN", format!("two columns are named `{name}`"));
            let finding = finding.at(cell_place(at)).with_help("rename or delete one");
            reading
                .findings
                .push(finding.with_related(cell_place(first), format!("`{name}` stands here first")));
        }
    }
    is_fine
}

pub(super) fn u32_of(value: usize) -> u32 {
    // A file is at most `FILE_BYTES_LIMIT` long, far below this.
    u32::try_from(value).unwrap_or(u32::MAX)
}

pub(super) fn usize_of(value: u32) -> usize {
    usize::try_from(value).unwrap_or(usize::MAX)
}
