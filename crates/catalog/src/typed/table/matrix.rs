//! Reads a matrix: pairs of cells, of which the marked ones are the rows of the table.
//!
//! With `down = "interior"` and `across = "exterior"`,
//!
//! ```text
//! inside    , white , dark
//! white     , x     , x
//! oak|maple ,       , x
//! ```
//!
//! is a table of three rows. The cell in the corner is free text.
//!
//! Always holds: a pair of values has one mark: headers that meet under different marks are a finding.
//! LIMIT: [`PAIRS_LIMIT`] pairs.

use astragal_model::{Cell, Row};

use super::cells::{CellReader, CellText};
use super::columns::{no_rows, spoken};
use super::disjoint::{KeyColumn, WORK_LIMIT, meetings, repetitions};
use super::reports::Reports;
use super::rows::{meeting_words, too_entangled};
use crate::finding::{Finding, Findings};
use crate::sheet::{ColumnId, Sheet, spreadsheet_help};
use crate::typed::{Names, Type};

/// LIMIT: how many pairs of a matrix are read.
pub(crate) const PAIRS_LIMIT: usize = 1_000_000;

/// What one side of a matrix is called, and its type.
pub(crate) struct Side<'a> {
    pub(crate) name: &'a str,
    pub(crate) of: &'a Type,
}

/// One pair of a matrix: its row and column in the sheet.
#[derive(Clone, Copy)]
struct Pair {
    row: usize,
    column: ColumnId,
}

/// All pairs, with the cells of their headers and their marks (1 for a row of the table).
struct Pairs {
    pairs: Vec<Pair>,
    sides: [KeyColumn; 2],
    marks: Vec<u32>,
}

/// The rows of a matrix: the cells of `down` and `across` of each marked pair.
pub(crate) fn matrix_rows(
    sheet: &Sheet,
    down: &Side<'_>,
    across: &Side<'_>,
    names: &Names,
    findings: &Findings,
) -> Option<Vec<Row>> {
    let mut columns = spoken(sheet);
    let corner = sheet.columns().next()?.0;
    let columns: Vec<ColumnId> = columns
        .by_ref()
        .map(|(column, _)| column)
        .filter(|column| *column != corner)
        .collect();
    let pair_count = columns.len().saturating_mul(sheet.row_count());
    if pair_count > PAIRS_LIMIT {
        let message = format!("the matrix has {pair_count} pairs; at most {PAIRS_LIMIT} are read");
        let finding = Finding::error("LIMIT", message).at(sheet.header_place());
        findings.push(finding.with_help("use families, or split the matrix"));
        return None;
    }
    let mut reports = Reports::new(findings);
    if pair_count == 0 {
        reports.push(no_rows(sheet.header_place()));
    }
    let pairs = read_pairs(sheet, corner, &columns, [down, across], names, &mut reports);
    pairs.check(sheet, [down, across], names, &mut reports);
    let rows = pairs.rows();
    if rows.is_empty() && pair_count > 0 && reports.is_fine() {
        let finding = Finding::error("NO_ROWS", "no pair of the matrix is marked");
        reports.push(finding.at(sheet.header_place()).with_help("mark pairs with `x`"));
    }
    reports.finish().then_some(rows)
}

fn read_pairs(
    sheet: &Sheet,
    corner: ColumnId,
    columns: &[ColumnId],
    [down, across]: [&Side<'_>; 2],
    names: &Names,
    reports: &mut Reports<'_>,
) -> Pairs {
    let mut down_reader = CellReader::new(down.of, names);
    let mut across_reader = CellReader::new(across.of, names);
    let headers: Vec<Option<u32>> = columns
        .iter()
        .map(|column| {
            let text = CellText {
                text: sheet.column_name(*column),
                place: &|| sheet.column_place(*column),
                is_said: reports.says_more(),
            };
            across_reader.read(&text, reports)
        })
        .collect();
    let (mut pairs, mut marks) = (Vec::new(), Vec::new());
    let (mut down_cells, mut across_cells) = (Vec::new(), Vec::new());
    for (at, row) in sheet.rows().enumerate() {
        let text = CellText {
            text: row.cell(corner),
            place: &|| row.place(corner),
            is_said: reports.says_more(),
        };
        let side = down_reader.read(&text, reports);
        for (column, header) in columns.iter().zip(&headers) {
            let text = CellText {
                text: row.cell(*column),
                place: &|| row.place(*column),
                is_said: reports.says_more(),
            };
            let mark = mark(&text).map_err(|finding| reports.push(*finding)).ok();
            if let (Some(side), Some(header), Some(mark)) = (side, *header, mark) {
                pairs.push(Pair {
                    row: at,
                    column: *column,
                });
                marks.push(u32::from(mark));
                down_cells.push(side);
                across_cells.push(header);
            }
        }
    }
    let side = |reader: CellReader<'_>, rows| KeyColumn {
        cells: reader.into_cells(),
        rows,
    };
    Pairs {
        pairs,
        marks,
        sides: [side(down_reader, down_cells), side(across_reader, across_cells)],
    }
}

/// Whether a pair is a row of the table.
fn mark(text: &CellText<'_>) -> Result<bool, Box<Finding>> {
    match text.text {
        "x" | "X" | "yes" => Ok(true),
        "" | "-" | "no" => Ok(false),
        other => {
            let message = format!("found `{other}`, expected a mark");
            let help = spreadsheet_help(other)
                .unwrap_or("mark a pair with `x` or `yes`, or else with `no`, `-` or nothing");
            let finding = Finding::error("BAD_MARK", message).at((text.place)());
            Err(Box::new(finding.with_help(help)))
        }
    }
}

impl Pairs {
    /// Two pairs that meet need the same mark.
    fn check(&self, sheet: &Sheet, sides: [&Side<'_>; 2], names: &Names, reports: &mut Reports<'_>) {
        let met = meetings(&self.sides, Some(&self.marks), WORK_LIMIT);
        for (pair, earlier) in &met.earlier {
            reports.push(self.contradiction(*pair, *earlier, sheet, sides, names));
        }
        if !met.complete {
            reports.push(too_entangled().at(sheet.header_place()));
        }
        for (pair, earlier) in repetitions(&self.sides) {
            if self.is_marked(pair) && self.is_marked(earlier) {
                let message = "this pair is marked twice";
                let finding = Finding::warning("DUPLICATE_ROW", message).with_help("delete one of them");
                reports.push(self.placed(finding, pair, earlier, sheet));
            }
        }
    }

    fn rows(&self) -> Vec<Row> {
        let [down, across] = &self.sides;
        let marked = (0..self.pairs.len())
            .filter_map(|at| u32::try_from(at).ok())
            .filter(|at| self.is_marked(*at));
        let cells = marked.filter_map(|at| Some((down.cell(at)?, across.cell(at)?)));
        cells
            .map(|(down, across): (&Cell, &Cell)| Row {
                cells: vec![down.clone(), across.clone()],
                value: None,
            })
            .collect()
    }

    fn is_marked(&self, pair: u32) -> bool {
        let mark = usize::try_from(pair).ok().and_then(|at| self.marks.get(at));
        mark.is_some_and(|mark| *mark == 1)
    }

    fn contradiction(
        &self,
        pair: u32,
        earlier: u32,
        sheet: &Sheet,
        sides: [&Side<'_>; 2],
        names: &Names,
    ) -> Finding {
        let met = sides.iter().zip(&self.sides).filter_map(|(side, column)| {
            meeting_words(
                side.name,
                column.cell(pair)?,
                column.cell(earlier)?,
                names.length_unit,
            )
        });
        let met: Vec<String> = met.collect();
        let whenever = if met.is_empty() {
            String::new()
        } else {
            format!(" when {}", met.join(", "))
        };
        let (here, there) = if self.is_marked(pair) {
            ("marked", "not")
        } else {
            ("not marked", "is")
        };
        let message = format!(
            "this pair is {here} and an earlier one {there}, though both hold{whenever}: the matrix contradicts itself"
        );
        let finding = Finding::error("TABLE_CONTRADICTS", message);
        let finding = finding.with_help("mark both or neither, or let the headers not overlap");
        self.placed(finding, pair, earlier, sheet)
    }

    fn placed(&self, finding: Finding, pair: u32, earlier: u32, sheet: &Sheet) -> Finding {
        let place = |pair: u32| {
            let pair = self.pairs.get(usize::try_from(pair).ok()?)?;
            Some(sheet.row(pair.row)?.place(pair.column))
        };
        let finding = finding.at_if_known(place(pair));
        match place(earlier) {
            Some(other) => finding.with_related(other, "the earlier one"),
            None => finding,
        }
    }
}
