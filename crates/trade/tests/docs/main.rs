//! The tables of `docs/trade.md`, row by row against the functions and values of the crate.
//!
//! A table of the page stands between `<!-- table NAME -->` and `<!-- end -->`. Its rows are made here: a limit is not copied but
//! found, by asking the crate on both sides of it. `UPDATE_EXPECT=1` writes the rows of the page anew; read them as prose then.
//!
//! Sizes of worked examples are invented; where a value stands is what the crate says of it ([`astragal_trade::Basis`]).

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod boundary;
mod energy;
mod escape;
mod falls;
mod glass;
mod glazing;
mod house;
mod measuring;
mod page;
mod structure;

use astragal_exact::Number;
use astragal_exact::measure_text::{LengthUnit, format_length};
use astragal_trade::{Basis, Status};
use page::Page;

/// The cells of a row.
type Row = Vec<String>;

/// What makes the rows of a table.
type Rows = fn() -> Vec<Row>;

/// Every table of the page, in its order, with what makes its rows.
const TABLES: [(&str, Rows); 45] = [
    ("tolerances", measuring::tolerances),
    ("measured", measuring::measured),
    ("findings", measuring::findings),
    ("level", measuring::level),
    ("deducted", measuring::deducted),
    ("united-inches", measuring::united_inches),
    ("clear-openings", escape::clear_openings),
    ("areas", escape::areas),
    ("escape", escape::values),
    ("rooms", escape::rooms),
    ("own-sections", house::own_sections),
    ("wells", escape::wells),
    ("excuses", escape::excuses),
    ("devices", falls::devices),
    ("glazing", glazing::limits),
    ("glazing-sections", glazing::sections),
    ("glazing-exceptions", glazing::exceptions),
    ("glazing-categories", glazing::categories),
    ("glazing-notes", glazing::notes),
    ("falls", falls::limits),
    ("heights", falls::heights),
    ("raised", falls::raised),
    ("programme", energy::programme),
    ("programme-units", energy::programme_units),
    ("code-2021", energy::iecc_2021),
    ("code-2024", energy::iecc_2024),
    ("code-city", energy::adopted_city),
    ("averages", energy::averages),
    ("classes", structure::classes),
    ("grades", structure::grades),
    ("air", structure::air),
    ("wind", structure::wind),
    ("wind-grades", structure::wind_grades),
    ("tested-size", structure::tested_size),
    ("nominal", glass::nominal),
    ("millimetres", glass::millimetres),
    ("weights", glass::weights),
    ("sashes", glass::sashes),
    ("lifting", glass::lifting),
    ("screens", glass::screens),
    ("lead", house::lead),
    ("cooling-off", house::cooling_off),
    ("cooling-off-left-out", house::left_out),
    ("operations", house::operations),
    ("not-covered", house::not_covered),
];

#[test]
fn every_table_of_the_page_has_the_rows_that_the_crate_gives() {
    let mut page = Page::read();
    for (name, rows) in TABLES {
        page.put(name, &rows());
    }
    page.compare_or_write();
}

#[test]
fn every_table_of_the_page_is_compared() {
    let expected: Vec<&str> = TABLES.iter().map(|(name, _)| *name).collect();
    assert_eq!(Page::read().names(), expected);
}

#[test]
fn the_page_says_check_and_never_that_something_is_approved() {
    let text = Page::read().text().to_lowercase();
    for word in ["complies", "compliant", "is legal", "code-approved", "guaranteed"] {
        assert!(!text.contains(word), "{word}");
    }
    for (at, _) in text.match_indices("approv") {
        let before = &text[..at];
        let sentence = before.rsplit(['.', ':', '|']).next().unwrap();
        let denied = ["no ", "not ", "never ", "none ", "nothing "]
            .iter()
            .any(|word| sentence.contains(word));
        assert!(denied, "approved, and not denied: {sentence}");
    }
}

fn row<const CELLS: usize>(cells: [&str; CELLS]) -> Row {
    cells.map(str::to_owned).to_vec()
}

fn number(text: &str) -> Number {
    text.parse().unwrap_or_else(|_| panic!("`{text}`"))
}

/// `35 5/8` inches.
fn inches(text: &str) -> Number {
    astragal_exact::measure_text::parse_length(text, Some(LengthUnit::Inch)).unwrap()
}

fn length(inches: &Number) -> String {
    format_length(inches, LengthUnit::Inch)
}

/// `R310.2.1 (quoted)`.
fn standing(basis: Basis) -> String {
    match basis.section {
        "" => format!("({})", seen(basis.status)),
        section => format!("{section} ({})", seen(basis.status)),
    }
}

/// The document, its section, and how it was seen.
fn named(basis: Basis) -> String {
    format!("{} {}", basis.document, standing(basis))
}

/// The page's words for how a value was seen; its second chapter explains them.
fn seen(status: Status) -> &'static str {
    match status {
        Status::Verified => "read",
        Status::SecondHand => "quoted",
        Status::Computed => "computed",
        Status::FromMemory => "memory",
    }
}

fn yes_or_no(is_so: bool) -> &'static str {
    if is_so { "yes" } else { "no" }
}
