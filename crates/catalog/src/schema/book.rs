//! The schema of `book.toml`.

use super::shape::Shape;
use super::table::Table;
use super::tail;
use super::value::{currency, date, id, label, length, list_of_some, money, path};

/// `book.toml`.
pub(super) fn file() -> Table {
    Table::file("`book.toml`: the amounts of one catalog. The folder that it stands in is a price book.")
        .required("book", header())
        .optional("sheet", sheet().into_list())
        .optional("grid", grid().into_list())
        .optional("tail", tail::step("after all items").into_list())
}

fn header() -> Shape {
    Table::new("Which price book this is, and for which catalog.")
        .required("id", id("The id of the price book.", "hinged-2026"))
        .required("label", label("Hinged, 2026"))
        .required("catalog", id("The id of the catalog whose items have their amounts here.", "hinged"))
        .required("currency", currency("The currency of all amounts: three letters of ISO 4217."))
        .required(
            "round_to",
            money(
                "What each line is rounded to: above zero, and a whole number of the currency's smallest units.",
                "0.01",
            ),
        )
        .optional("from", date("The first day in force. Left out: no beginning.", "2026-01-01"))
        .optional("until", date("The last day in force. Left out: no end.", "2026-12-31"))
        .optional(
            "amounts",
            path(
                "The CSV file with the columns `item` and `amount`, relative to this file; percentages are written `15 %`. Left out: no item needs one.",
                "amounts.csv",
            ),
        )
        .into_shape()
}

fn sheet() -> Table {
    Table::new("The amounts of an item that is priced `by` attributes.")
        .required("item", id("The id of the `[[price]]` item.", "finish"))
        .required(
            "table",
            path(
                "The CSV file with a column for each attribute of `by`, and `amount`; relative to this file.",
                "finish.csv",
            ),
        )
}

fn grid() -> Table {
    let lower = list_of_some(
        "The lower end of each axis, rows first; the end itself is outside. Without a unit in the unit of the catalog.",
        length("A lower end.", "0"),
        &["0", "0"],
    )
    .with("maxItems", 2);
    Table::new("Amounts by size. A size lies in the bracket with lower < size <= upper.")
        .required("id", id("What `grid` of a `[[price]]` item names.", "casement"))
        .required(
            "table",
            path(
                "The CSV file, relative to this file. Two axes: the first row and the first column are upper bounds. One axis: columns `upper` and `amount`.",
                "casement.csv",
            ),
        )
        .required("lower", lower)
}
