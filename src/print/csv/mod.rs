//! Writes pages as CSV, one file a table, for a spreadsheet.
//!
//! ```text
//! catalogs/hinged/options.csv            books/hinged-2026/items.csv
//! catalogs/hinged/rules.csv              books/hinged-2026/item-base-casement.csv
//! catalogs/hinged/rule-colour-pairs.csv  books/hinged-2026/tail.csv
//! ```
//!
//! Amounts and numbers are plain (`1234.50`), dates are `2026-11-25`, conditions stand as written and in words.
//!
//! Always holds: no cell that is not a plain number begins with `=`, `+`, `-`, `@`, a tab or a carriage return, since a
//! spreadsheet would take it for a formula; such a cell has an apostrophe in front. Common practice, from memory: the
//! page "CSV Injection" of the Open Worldwide Application Security Project.

mod cells;
mod chart;
mod prices;

use super::pages::Pages;
pub(crate) use cells::File;

/// The files, with their paths below the folder that was asked for, in order.
pub(crate) fn files(pages: &Pages) -> Result<Vec<File>, ::csv::Error> {
    let mut files = Vec::new();
    for chart in &pages.charts {
        chart::write(&mut files, &pages.library, chart)?;
    }
    for prices in &pages.prices {
        prices::write(&mut files, &pages.library, prices)?;
    }
    Ok(files)
}
