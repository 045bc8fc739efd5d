//! The schema of the steps that follow all items, of a price book and of a policy.

use super::table::{Choice, Table};
use super::value::{class, id, label, money, percent, tax_class};

/// `[[tail]]`; `after` says what it follows.
pub(super) fn step(after: &str) -> Table {
    Table::new(&format!("A step of the total, {after}, in order of the file."))
        .required("id", id("The id of the step.", "freight"))
        .required("label", label("Freight share"))
        .optional("class", class())
        .optional("tax_class", tax_class())
        .optional(
            "flat",
            money("An amount of money, in the currency of the price book. Instead of `percent`.", "12.00"),
        )
        .optional(
            "percent",
            percent(
                "A percentage of the total so far, at least -100; 3.5 is three and a half in a hundred. Instead of `flat`.",
                3.5,
            )
            .with("minimum", -100),
        )
        .choices([
            Choice::new("an amount", &["flat"]).without(&["percent"]),
            Choice::new("a percentage", &["percent"]).without(&["flat"]),
        ])
}
