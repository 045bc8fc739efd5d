//! The schema of figures: by a formula, or by the row of a table.

use super::shape::Shape;
use super::table::{Choice, Table};
use super::value::{expression, flag, label, list, name, path, per, text, word};

/// `[[figure]]`.
pub(super) fn figure() -> Table {
    let table = Table::new("Something that is worked out for a unit, by a formula or by a row of a table.")
        .required(
            "id",
            name("The name by which expressions call it.", "sash_weight"),
        )
        .required("label", label("Sash weight"))
        .optional(
            "formula",
            expression(
                "How it is worked out. Instead of `table`.",
                "in_feet(opening_width) * 3.5",
            ),
        )
        .optional(
            "table",
            path(
                "The CSV file in whose rows it is found, relative to this file. Instead of `formula`.",
                "energy.csv",
            ),
        );
    of_table(table)
        .optional("type", value_type())
        .optional(
            "unit",
            text(
                "What a plain number counts, shown beside it. Left out: nothing.",
                "lb",
            ),
        )
        .optional("show", flag("Whether a quote prints it. Left out: it does not."))
        .optional("per", per("figure"))
        .choices([
            Choice::new("by a formula", &["formula"]).without(&["table", "keys", "value", "match"]),
            Choice::new("by a row of a table", &["table"])
                .without(&["formula"])
                .word("type", &["number", "length", "area", "date"]),
        ])
}

fn of_table(table: Table) -> Table {
    table
        .optional(
            "keys",
            list(
                "The columns by which the row is found. Only with `table`. Left out: all columns but the value's.",
                text("A column: an attribute, a figure, a measure or a fact.", "glass"),
                &["glass", "gas"],
            ),
        )
        .optional(
            "value",
            text(
                "The column that holds the value. Only with `table`. Left out: the one named like the figure.",
                "u_factor",
            ),
        )
        .optional(
            "match",
            word(
                "Which row counts when several match. Only with `table`. Left out: `only`.",
                &[
                    ("only", "no two rows may match; that is checked"),
                    ("first", "the first of the file"),
                    ("least", "the one with the least value"),
                    ("greatest", "the one with the greatest value"),
                ],
            )
            .default("only"),
        )
}

fn value_type() -> Shape {
    word(
        "What it is. Left out: what the formula gives; with `table` a number.",
        &[
            ("length", "a length"),
            ("number", "a number"),
            ("area", "an area"),
            ("date", "a day"),
            ("bool", "true or false; only with `formula`"),
        ],
    )
}
