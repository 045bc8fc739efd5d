//! Reads the figures of a catalog: formulas in words, tables as rows, tables with the same keys as one.

use astragal_catalog::DeclarationKind;
use astragal_model::{Definition, Figure, RowMatch};

use super::pages::{FigureSheet, FigureTable, Working};
use super::reading::{Reading, first_of_each};
use super::tables as drawn;

/// All figures in file order.
pub(crate) fn figures(reading: Reading<'_>) -> Vec<FigureSheet> {
    first_of_each(reading.declarations().figures.values(), |figure| &figure.id)
        .map(|figure| self::figure(reading, figure))
        .collect()
}

/// The tables of figures. Those with the same keys in the same rows, as two value columns of one file have, become one
/// table with a column for each.
pub(crate) fn tables(figures: &[FigureSheet]) -> Vec<FigureTable> {
    let mut found: Vec<(Vec<Vec<String>>, FigureTable)> = Vec::new();
    for figure in figures {
        let Working::Table { which, columns, rows } = &figure.working else {
            continue;
        };
        let keys = without_last(std::iter::once(columns).chain(rows));
        let same = found
            .iter_mut()
            .find(|(known, table)| *known == keys && table.which == *which);
        if let Some((_, table)) = same {
            table.figures.push(figure.label.clone());
            table.columns.extend(columns.last().cloned());
            for (row, more) in table.rows.iter_mut().zip(rows) {
                row.extend(more.last().cloned());
            }
        } else {
            let table = FigureTable {
                figures: vec![figure.label.clone()],
                which,
                columns: columns.clone(),
                rows: rows.clone(),
            };
            found.push((keys, table));
        }
    }
    found.into_iter().map(|(_, table)| table).collect()
}

fn without_last<'a>(rows: impl Iterator<Item = &'a Vec<String>>) -> Vec<Vec<String>> {
    let key = |row: &Vec<String>| row.split_last().map(|(_, keys)| keys.to_vec());
    rows.map(|row| key(row).unwrap_or_default()).collect()
}

fn figure(reading: Reading<'_>, figure: &Figure) -> FigureSheet {
    let key = (DeclarationKind::Figure, &figure.id, "formula");
    let working = match &figure.definition {
        Definition::Formula(formula) => Working::Formula(reading.formula(key, figure.part, formula)),
        Definition::Table(table, which) => {
            let (mut columns, rows) = drawn::list(reading.words(figure.part), table);
            columns.push(figure.label.clone());
            Working::Table {
                which: which_row(*which),
                columns,
                rows,
            }
        }
    };
    FigureSheet {
        id: figure.id.clone(),
        label: figure.label.clone(),
        parts: reading.parts(figure.part),
        unit: figure.unit.clone(),
        shown: figure.shown,
        working,
    }
}

fn which_row(which: RowMatch) -> &'static str {
    match which {
        RowMatch::Only => "the row that matches",
        RowMatch::First => "the first row that matches",
        RowMatch::Least => "of the rows that match, the one with the least value",
        RowMatch::Greatest => "of the rows that match, the one with the greatest value",
    }
}
