//! The schema of `policy.toml`.

use super::shape::Shape;
use super::table::Table;
use super::value::{class_of, expression, id, label, list, money, name_of_part, number};
use super::{rule, tail};

/// `policy.toml`.
pub(super) fn file() -> Table {
    Table::file(
        "`policy.toml`: what one dealer changes about catalogs. The folder that it stands in is a dealer policy.",
    )
    .required("policy", header())
    .optional("rule", rule::policy_rule().into_list())
    .optional("tail", tail::step("after the steps of the price book").into_list())
}

fn header() -> Shape {
    Table::new("Which policy this is, and for which catalogs.")
        .required("id", id("The id of the policy.", "north-street"))
        .required("label", label("North Street dealer"))
        .required(
            "catalogs",
            list(
                "The ids of the catalogs that it is for.",
                id("A catalog.", "hinged"),
                &["hinged", "sliding"],
            ),
        )
        .optional(
            "round_to",
            money(
                "What each line is rounded to, above zero. Left out: as the price book says.",
                "1.00",
            ),
        )
        .optional("hide", hide().into_list())
        .optional("standards", standards().into_list())
        .optional("mark_ups", mark_ups().into_list())
        .into_shape()
}

fn hide() -> Table {
    entry("An option that the dealer does not offer. An attribute must keep one.")
        .required("option", id("The option that is hidden.", "old-green"))
        .optional("catalog", catalog())
}

fn standards() -> Table {
    let standard = expression(
        "What stands when nothing is picked: an option, `ask`, or an expression that gives an option.",
        "fine",
    );
    entry("Another standard than the catalog's.")
        .required("standard", standard.with("$comment", "standard"))
        .optional("catalog", catalog())
}

fn entry(description: &str) -> Table {
    Table::new(description).required(
        "attribute",
        name_of_part(
            "The attribute; with a part after a point for that part alone.",
            "exterior",
        ),
    )
}

fn catalog() -> Shape {
    id(
        "The one catalog that the entry is for. Left out: every catalog of the policy.",
        "hinged",
    )
}

fn mark_ups() -> Table {
    Table::new("What is added to all items of one class.")
        .required("class", class_of("The class of items that is marked up."))
        .required(
            "percent",
            number("The mark-up in percent, -100 to 1000000; 25 adds a quarter.", 25)
                .with("minimum", -100)
                .with("maximum", 1_000_000),
        )
}
