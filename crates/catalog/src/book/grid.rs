//! A grid of a book: amounts by one or two sizes, in brackets.
//!
//! With `lower = ["0", "0"]`, the sheet
//!
//! ```text
//! high \ wide , 24     , 36
//! 36          , 210.00 , 255.00
//! 48          , 240.00 ,
//! ```
//!
//! has two brackets each way. A size lies in the bracket with lower < size <= upper; the last cell has no amount.
//!
//! Always holds: the bounds of an axis rise strictly from its lower end. Headers are typed by the figures of the items
//! that use the grid, which agree in number and type.

use astragal_model::{AmountKind, Axis, Catalog, FigureIndex, Grid, Number, PriceItem, ValueType};

use super::Reading;
use super::amount_text::money;
use super::amounts::{amount_code, columns as named_columns};
use super::raw::RawGrid;
use super::together::without_item;
use crate::finding::{Finding, Place};
use crate::sheet::{ColumnId, Sheet};
use crate::typed::{CellText, Names, PlacedText, Reports, Type};

/// A grid; `None` means that findings say why.
pub(super) fn read(reading: &mut Reading<'_>, raw: &RawGrid) -> Option<Grid> {
    let types = axis_types(reading, raw)?;
    let names = Names::of_catalog(reading.catalog.declarations());
    let lower = lower_ends(reading, raw, &types, &names);
    let sheet = reading.sheet(&raw.table)?;
    let lower = lower?;
    let mut reports = Reports::new(reading.findings);
    let grid = match (lower.as_slice(), types.as_slice()) {
        _ if has_wrong_shape(&sheet, types.len(), raw.head.id.as_str(), &mut reports) => None,
        ([lower], [of]) => one_axis(&sheet, lower, of, &names, &mut reports),
        ([rows_lower, columns_lower], [rows, columns]) => two_axes(
            &sheet,
            [(rows_lower, rows), (columns_lower, columns)],
            &names,
            &mut reports,
        ),
        _ => None,
    };
    if let Some(grid) = &grid
        && reports.is_fine()
        && grid.cells.iter().all(Option::is_none)
    {
        let finding = Finding::error(
            "NO_ROWS",
            format!("grid `{}` has no amount in any cell", raw.head.id),
        );
        reports.push(
            finding
                .at(sheet.header_place())
                .with_help("write amounts, or take the grid away"),
        );
    }
    let is_fine = reports.finish();
    grid.filter(|_| is_fine)
}

/// The items that use a grid, with the figures of its axes.
fn users<'a>(catalog: &'a Catalog, id: &'a str) -> impl Iterator<Item = (&'a PriceItem, &'a [FigureIndex])> {
    catalog
        .declarations()
        .items
        .values()
        .filter_map(move |item| match &item.amount {
            AmountKind::Grid { grid, axes, .. } if grid.as_str() == id => Some((item, axes.as_slice())),
            _ => None,
        })
}

/// The types of the axes, as all items that use the grid have them.
fn axis_types(reading: &Reading<'_>, raw: &RawGrid) -> Option<Vec<Type>> {
    let figures = &reading.catalog.declarations().figures;
    let types_of = |axes: &[FigureIndex]| -> Option<Vec<ValueType>> {
        axes.iter()
            .map(|figure| figures.get(*figure).map(|figure| figure.value_type))
            .collect()
    };
    let place = || raw.head.place.clone();
    let mut users = users(reading.catalog, raw.head.id.as_str());
    let Some((first, axes)) = users.next() else {
        let finding = without_item("grid", raw.head.id.as_str(), place(), reading.catalog);
        reading.findings.push(finding);
        return None;
    };
    let types = types_of(axes)?;
    for (item, axes) in users {
        if types_of(axes).as_ref() != Some(&types) {
            let message = format!(
                "`{}` and `{}` use grid `{}` with axes of another number or type",
                first.id, item.id, raw.head.id
            );
            let finding = Finding::error("GRID_AXES_DIFFER", message).at(place());
            reading
                .findings
                .push(finding.with_help("give one of the items a grid of its own"));
            return None;
        }
    }
    let has_size = |of: &ValueType| matches!(of, ValueType::Number | ValueType::Length | ValueType::Area);
    if let Some(of) = types.iter().find(|of| !has_size(of)) {
        let message = format!(
            "an axis of grid `{}` is {}; expected a number, a length or an area",
            raw.head.id,
            of.words()
        );
        let finding = Finding::error("WRONG_TYPE", message).at(place());
        reading
            .findings
            .push(finding.with_help("name another figure in `axes` of the price item"));
        return None;
    }
    Some(types.into_iter().map(Type::plain).collect())
}

fn lower_ends(reading: &Reading<'_>, raw: &RawGrid, types: &[Type], names: &Names) -> Option<Vec<Number>> {
    if raw.lower.len() != types.len() {
        let (found, expected) = (raw.lower.len(), types.len());
        let message = format!(
            "`lower` has {found} ends; grid `{}` has {expected} axes",
            raw.head.id
        );
        let finding = Finding::error("WRONG_NUMBER_OF_AXES", message).at(raw.lower_place.clone());
        reading
            .findings
            .push(finding.with_help("write one lower end an axis, rows first"));
        return None;
    }
    let end = |(text, of): (&PlacedText, &Type)| {
        let place = || text.place.clone();
        let cell = CellText {
            text: &text.text,
            place: &place,
            is_said: true,
        };
        size(&cell, of, names)
            .map_err(|finding| reading.findings.push(*finding))
            .ok()
    };
    let ends: Vec<Option<Number>> = raw.lower.iter().zip(types).map(end).collect();
    ends.into_iter().collect()
}

/// Whether a sheet looks like one for another number of axes; then a finding says so.
fn has_wrong_shape(sheet: &Sheet, axes: usize, id: &str, reports: &mut Reports<'_>) -> bool {
    let has = |name: &str| sheet.column(name).is_some();
    let (message, help) = if axes == 1 && !has("upper") && !has("amount") {
        (
            format!("grid `{id}` has one axis; its sheet has the columns `upper` and `amount`"),
            "write one bracket a row, or give the price item two `axes`",
        )
    } else if axes == 2 && has("upper") && has("amount") {
        (
            format!("grid `{id}` has two axes; its sheet has bounds in the first row and the first column"),
            "write the sheet as a matrix, or give the price item one of the `axes`",
        )
    } else {
        return false;
    };
    reports.push(
        Finding::error("WRONG_NUMBER_OF_AXES", message)
            .at(sheet.header_place())
            .with_help(help),
    );
    true
}

/// Columns `upper` and `amount`.
fn one_axis(
    sheet: &Sheet,
    lower: &Number,
    of: &Type,
    names: &Names,
    reports: &mut Reports<'_>,
) -> Option<Grid> {
    let found = named_columns(sheet, &["upper", "amount"], reports);
    let (upper, amount) = (
        found.first().copied().flatten()?,
        found.get(1).copied().flatten()?,
    );
    let headers = sheet.rows().map(|row| (row.cell(upper), row.place(upper)));
    let axis = axis(headers, lower, of, names, reports);
    let cells = sheet
        .rows()
        .map(|row| cell(row.cell(amount), &|| row.place(amount), reports));
    let cells: Vec<Option<Number>> = cells.collect();
    no_bounds(&axis, sheet, reports);
    Some(Grid {
        axes: vec![axis],
        cells,
    })
}

/// The first column and the first row are bounds; the cell in the corner is free text.
fn two_axes(
    sheet: &Sheet,
    [(rows_lower, rows_type), (columns_lower, columns_type)]: [(&Number, &Type); 2],
    names: &Names,
    reports: &mut Reports<'_>,
) -> Option<Grid> {
    let corner = sheet.columns().next()?.0;
    let columns: Vec<ColumnId> = sheet
        .columns()
        .filter(|(column, name)| *column != corner && !name.starts_with('#'))
        .map(|(column, _)| column)
        .collect();
    let headers = columns
        .iter()
        .map(|column| (sheet.column_name(*column), sheet.column_place(*column)));
    let across = axis(headers, columns_lower, columns_type, names, reports);
    let headers = sheet.rows().map(|row| (row.cell(corner), row.place(corner)));
    let down = axis(headers, rows_lower, rows_type, names, reports);
    let mut cells = Vec::new();
    for row in sheet.rows() {
        for column in &columns {
            cells.push(cell(row.cell(*column), &|| row.place(*column), reports));
        }
    }
    no_bounds(&across, sheet, reports);
    no_bounds(&down, sheet, reports);
    Some(Grid {
        axes: vec![down, across],
        cells,
    })
}

/// An axis of its upper bounds, which rise strictly from the lower end.
fn axis<'a>(
    headers: impl Iterator<Item = (&'a str, Place)>,
    lower: &Number,
    of: &Type,
    names: &Names,
    reports: &mut Reports<'_>,
) -> Axis {
    let mut uppers: Vec<Number> = Vec::new();
    let mut before = "the lower end".to_owned();
    for (text, place) in headers {
        let cell = CellText {
            text,
            place: &|| place.clone(),
            is_said: true,
        };
        let upper = match size(&cell, of, names) {
            Ok(upper) => upper,
            Err(finding) => {
                reports.push(*finding);
                continue;
            }
        };
        if upper <= *uppers.last().unwrap_or(lower) {
            let message = format!("the bound `{text}` is not above {before}");
            let finding = Finding::error("BOUNDS_DO_NOT_RISE", message).at(place);
            reports.push(finding.with_help("bounds are upper ends and rise from one to the next"));
        }
        before = format!("the one before, `{text}`");
        uppers.push(upper);
    }
    Axis {
        lower: lower.clone(),
        uppers,
    }
}

fn no_bounds(axis: &Axis, sheet: &Sheet, reports: &mut Reports<'_>) {
    if axis.uppers.is_empty() && reports.is_fine() {
        let finding = Finding::error("NO_ROWS", "the grid has no bounds");
        reports.push(
            finding
                .at(sheet.header_place())
                .with_help("write upper ends in the first row and column"),
        );
    }
}

/// The number inside a size of the type of an axis: inches for a length.
fn size(text: &CellText<'_>, of: &Type, names: &Names) -> Result<Number, Box<Finding>> {
    if text.text.is_empty() {
        let message = format!("found nothing, expected {} as a bound", of.value_type.words());
        let finding = Finding::error("EMPTY_CELL", message).at((text.place)());
        return Err(Box::new(finding.with_help("write the upper end of the bracket")));
    }
    let value = text.value(text.text, &(0..text.text.len()), of, names)?;
    Ok(value.magnitude().cloned().unwrap_or_default())
}

/// The amount of a cell, if it has one.
fn cell(text: &str, place: &dyn Fn() -> Place, reports: &mut Reports<'_>) -> Option<Number> {
    if text.is_empty() {
        return None;
    }
    match money(text) {
        Ok(amount) => Some(amount),
        Err((message, help)) => {
            reports.push(
                Finding::error(amount_code(text), message)
                    .at(place())
                    .with_help(help),
            );
            None
        }
    }
}
