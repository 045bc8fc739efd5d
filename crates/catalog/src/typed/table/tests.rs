//! Tables: what cells, columns and rows mean, and what is said when they mean nothing.

mod cells;
mod figures;
mod lists;
mod matrices;

use std::collections::BTreeSet;
use std::fmt::Write;
use std::rc::Rc;

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    AttributeIndex, Cell, FactIndex, FigureIndex, Id, MeasureIndex, OptionEntry, PartIndex, RowMatch,
    Subject, Table, ValueType,
};
use expect_test::Expect;

use super::cells::shown_value;
use super::{figure_table, list_table, matrix_table};
use crate::finding::{Finding, Findings, Place};
use crate::sheet::Sheet;
use crate::source::{FileId, Sources};
use crate::typed::{AttributeShape, Names, PlacedText, Scope, Type};

/// Colours with families, `glazing` per sash, one fact of each type, sizes and figures.
pub(crate) fn names() -> Names {
    let option = |id: &str, families: &[&str]| {
        let mut option = OptionEntry::plain(id);
        option.families = families.iter().map(|family| Id::new(family)).collect();
        option
    };
    let shape = |id: &str, options: Vec<OptionEntry>| AttributeShape {
        id: Id::new(id),
        options: Rc::new(options),
        conditional: false,
    };
    let mut names = Names::new(LengthUnit::Inch);
    let upper = names.add_part(&Id::new("upper"), &Id::new("sash"));
    let lower = names.add_part(&Id::new("lower"), &Id::new("sash"));
    let colours = || {
        vec![
            option("white", &["light"]),
            option("cream", &["light", "warm"]),
            option("grey", &["dark"]),
            option("black", &["dark"]),
        ]
    };
    names.add_attribute(AttributeIndex(0), None, shape("exterior", colours()));
    names.add_attribute(AttributeIndex(1), None, shape("interior", colours()));
    let glass = || vec![option("annealed", &[]), option("tempered", &[])];
    names.add_attribute(AttributeIndex(2), Some(upper), shape("glazing", glass()));
    names.add_attribute(AttributeIndex(3), Some(lower), shape("glazing", glass()));
    // `metal` is an option and a family.
    let finishes = vec![option("metal", &[]), option("brass", &["metal"])];
    names.add_attribute(AttributeIndex(4), None, shape("finish", finishes));
    names.add_measure(MeasureIndex(0), &Id::new("width"), ValueType::Length);
    names.add_measure(MeasureIndex(1), &Id::new("height"), ValueType::Length);
    names.add_measure(MeasureIndex(2), &Id::new("lites"), ValueType::Number);
    let zones = [Id::new("north"), Id::new("south")].into_iter().collect();
    names.add_fact(FactIndex(0), &Id::new("zone"), ValueType::Option, zones);
    names.add_fact(FactIndex(1), &Id::new("sleeps"), ValueType::Bool, BTreeSet::new());
    names.add_fact(FactIndex(2), &Id::new("permit"), ValueType::Date, BTreeSet::new());
    names.add_figure(
        FigureIndex(0),
        &Id::new("area"),
        None,
        Some(Type::plain(ValueType::Area)),
    );
    names
}

/// A sheet in memory and everything that reading it needs.
pub(super) struct Bench {
    pub(super) sources: Sources,
    pub(super) findings: Findings,
    pub(super) names: Names,
    sheet: FileId,
    rule: FileId,
}

impl Bench {
    pub(super) fn new(csv: &str) -> Self {
        let mut sources = Sources::new();
        let rule = sources.add("catalog.toml", "down across value");
        let sheet = sources.add("table.csv", csv);
        Self {
            sources,
            findings: Findings::new(),
            names: names(),
            sheet,
            rule,
        }
    }

    pub(super) fn sheet(&self) -> Sheet {
        Sheet::read(&self.sources, self.sheet, &self.findings).expect("a sheet")
    }

    pub(super) fn text(&self, text: &str) -> PlacedText {
        PlacedText::new(text.to_owned(), Place::new(self.rule, 0..4), &self.sources)
    }

    /// Compares only codes and messages, where what is underlined is long.
    fn check_messages(self, expected: &[&str]) {
        let found = self.findings.into_sorted(&self.sources);
        let found: Vec<String> = found
            .iter()
            .map(|finding| format!("{} {}", finding.code(), finding.message()))
            .collect();
        assert_eq!(found, expected);
    }

    /// What came out: the rows of the first table, or the findings.
    fn shown(self, tables: Option<Vec<Table>>, expected: Expect) {
        let mut out = String::new();
        if let Some(table) = tables.as_ref().and_then(|tables| tables.first()) {
            for row in table.rows.iter() {
                let cells: Vec<String> = row.cells.iter().map(shown_cell).collect();
                let value = row
                    .value
                    .as_ref()
                    .map(|value| format!(" = {}", shown_value(value, LengthUnit::Inch)));
                writeln!(out, "{}{}", cells.join(" ; "), value.unwrap_or_default()).unwrap();
            }
        }
        let has_errors = self.findings.has_errors();
        let sorted = self.findings.into_sorted(&self.sources);
        assert_eq!(tables.is_none(), has_errors, "{sorted:?}");
        for finding in &sorted {
            out += &shown_finding(finding, &self.sources);
        }
        expected.assert_eq(&out);
    }
}

fn shown_cell(cell: &Cell) -> String {
    let shown = |value| shown_value(value, LengthUnit::Inch);
    match cell {
        Cell::Any => "*".to_owned(),
        Cell::OneOf(values) => values.iter().map(shown).collect::<Vec<_>>().join("|"),
        Cell::Within(intervals) => {
            let intervals = intervals.iter().map(|interval| {
                let lower = interval.lower.as_ref();
                let lower =
                    lower.map(|end| format!("{}{}", shown(&end.value), if end.open { "<" } else { "" }));
                let upper = interval.upper.as_ref().map(shown);
                format!("{}..{}", lower.unwrap_or_default(), upper.unwrap_or_default())
            });
            intervals.collect::<Vec<_>>().join(" | ")
        }
    }
}

/// A finding in few lines: place, what is underlined, code, message, help, other places.
pub(crate) fn shown_finding(finding: &Finding, sources: &Sources) -> String {
    let place = finding.place().expect("a place");
    let position = sources.position(place);
    let mut out = format!(
        "{}:{}:{} [{}] {} {}\n",
        sources.path(place.file),
        position.line,
        position.column,
        sources.text_at(place),
        finding.code(),
        finding.message()
    );
    if !finding.is_error() {
        out = format!("warning {out}");
    }
    if let Some(row) = place.row {
        let column = place.column.as_ref().map(|column| format!(", column {column}"));
        writeln!(out, "  row {row}{}", column.unwrap_or_default()).unwrap();
    }
    if let Some(help) = finding.help() {
        writeln!(out, "  help: {help}").unwrap();
    }
    for (place, what) in finding.related() {
        writeln!(out, "  [{}] {what}", sources.text_at(place)).unwrap();
    }
    out
}

fn check_list(csv: &str, expected: Expect) {
    let bench = Bench::new(csv);
    let tables = list_table(
        &bench.sheet(),
        &Scope::new(&bench.names, &bench.findings),
        &[None],
    );
    bench.shown(tables, expected);
}

fn check_matrix(csv: &str, expected: Expect) {
    let bench = Bench::new(csv);
    let scope = Scope::new(&bench.names, &bench.findings);
    let (down, across) = (bench.text("interior"), bench.text("exterior"));
    let tables = matrix_table(&bench.sheet(), &scope, &[None], &down, &across);
    bench.shown(tables, expected);
}

/// A figure's table of numbers in the column `value`, all other columns keys.
fn check_figure(row_match: RowMatch, csv: &str, expected: Expect) {
    check_figure_of(ValueType::Number, None, row_match, csv, expected);
}

fn check_figure_of(of: ValueType, keys: Option<&[&str]>, row_match: RowMatch, csv: &str, expected: Expect) {
    let bench = Bench::new(csv);
    let scope = Scope::new(&bench.names, &bench.findings);
    let keys: Option<Vec<PlacedText>> = keys.map(|keys| keys.iter().map(|key| bench.text(key)).collect());
    let value = bench.text("value");
    let tables = figure_table(
        &bench.sheet(),
        &scope,
        &[None],
        keys.as_deref(),
        &value,
        of,
        row_match,
    );
    bench.shown(tables, expected);
}

#[test]
fn a_per_part_table_shares_its_rows() {
    let bench = Bench::new("glazing,exterior\ntempered,*\n");
    let parts = [Some(PartIndex(0)), Some(PartIndex(1))];
    let tables = list_table(&bench.sheet(), &Scope::new(&bench.names, &bench.findings), &parts).unwrap();
    let columns: Vec<_> = tables.iter().map(|table| table.columns.clone()).collect();
    let attribute = |index| Subject::Attribute(AttributeIndex(index));
    assert_eq!(
        columns,
        [[attribute(2), attribute(0)], [attribute(3), attribute(0)]]
    );
    assert!(std::sync::Arc::ptr_eq(&tables[0].rows, &tables[1].rows));
}

#[test]
fn no_parts_make_no_tables() {
    let bench = Bench::new("glazing\nplastic\n");
    let scope = Scope::new(&bench.names, &bench.findings);
    assert_eq!(list_table(&bench.sheet(), &scope, &[]), Some(Vec::new()));
}
