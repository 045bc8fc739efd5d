//! The schema of price items: a flat amount, by options, by size, or a percentage of others.

use super::shape::Shape;
use super::table::{Choice, Table};
use super::value::{class, expression, id, label, list_of_some, name_of_part, per, tax_class, when, word};

/// `[[price]]`.
pub(super) fn item() -> Table {
    let table = Table::new("Something that a unit costs. The amounts stand in price books.")
        .required(
            "id",
            id("The id by which price books name the item.", "base-casement"),
        )
        .required("label", label("Casement, base"))
        .optional("when", when("The item is charged", "operation == \"casement\""));
    amounts(table)
        .optional("per", per("amount"))
        .optional(
            "quantity",
            expression(
                "A number: the amount is taken so many times. Not with `percent_of`. Left out: once.",
                "max(in_ft2(lite_area), 5)",
            ),
        )
        .optional("class", class())
        .optional("tax_class", tax_class())
        .choices([
            Choice::new("a flat amount", &[]).without(&["grid", "by", "percent_of", "axes", "beyond"]),
            Choice::new("by size, in a grid", &["grid", "axes"]).without(&["by", "percent_of"]),
            Choice::new("by options", &["by"]).without(&["grid", "percent_of", "axes", "beyond"]),
            Choice::new("a percentage of other items", &["percent_of"])
                .without(&["grid", "by", "axes", "beyond", "quantity"]),
        ])
}

fn amounts(table: Table) -> Table {
    table
        .optional(
            "grid",
            id(
                "The `[[grid]]` of the price book, for an amount by size.",
                "casement",
            ),
        )
        .optional("axes", axes())
        .optional(
            "beyond",
            word(
                "What a size past the end of the grid means. Only with `grid`. Left out: `break`.",
                &[
                    ("break", "the unit does not hold"),
                    (
                        "sign_off",
                        "the price is unknown until somebody has signed it off",
                    ),
                ],
            )
            .default("break"),
        )
        .optional(
            "by",
            list_of_some(
                "The attributes whose options say the amount; nothing while one of them is not asked.",
                name_of_part("An attribute.", "hardware_finish"),
                &["hardware_finish"],
            ),
        )
        .optional(
            "percent_of",
            list_of_some(
                "The items of whose lines this is a percentage.",
                id("A price item.", "base-casement"),
                &["base-casement"],
            ),
        )
}

fn axes() -> Shape {
    list_of_some(
        "One or two figures that find the cell of the grid; rows of the sheet first. Only with `grid`.",
        name_of_part("A figure.", "unit_width"),
        &["unit_width", "unit_height"],
    )
    .with("maxItems", 2)
}
