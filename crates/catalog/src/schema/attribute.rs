//! The schemas of attributes, shared lists of options, and options.

use super::shape::Shape;
use super::site;
use super::table::Table;
use super::value::{date, expression, id, label, list, name, per, text, when, word};

/// `[[attribute]]`.
pub(super) fn attribute() -> Table {
    Table::new("Something that is chosen for a unit, one option of several: operation, exterior colour, glass.")
        .required("id", name("The name by which expressions and orders call it.", "exterior"))
        .required("label", label("Exterior colour"))
        .optional(
            "section",
            text("The heading under which it is shown; display only. Left out: none.", "Colour"),
        )
        .required("options", options_or_list())
        .required(
            "standard",
            expression(
                "What stands when nothing is picked: an option, `ask` when somebody must choose, or an expression that gives an option.",
                "white",
            )
            .example("ask")
            .example("interior == \"white\" ? \"white\" : \"bronze\"")
            .with("$comment", "standard"),
        )
        .optional("applies_when", when("The attribute is asked", "operation != \"fixed\""))
        .optional(
            "audience",
            word(
                "Who chooses. Left out: `customer`.",
                &[
                    ("customer", "an order may pick an option"),
                    ("plant", "determined by `standard`, never picked"),
                ],
            )
            .default("customer"),
        )
        .optional("per", per("attribute"))
}

/// `[[option_list]]`.
pub(super) fn option_list() -> Table {
    Table::new("A list of options that several attributes share.")
        .required(
            "id",
            id("What an attribute writes: `options = \"colours\"`.", "colours"),
        )
        .required(
            "options",
            options("The options, in the order in which they are shown."),
        )
}

fn options_or_list() -> Shape {
    let shared = id("The id of an `[[option_list]]`.", "colours").titled("a shared list");
    let own =
        options("Options of its own, in the order in which they are shown.").titled("options of its own");
    Shape::any_of(
        "What can be chosen: a list of options, or the id of a shared list.",
        [own, shared],
    )
}

fn options(description: &str) -> Shape {
    Shape::list(description, option().into_shape()).with("minItems", 1)
}

fn option() -> Table {
    Table::new("One option.")
        .required("id", id("The id by which orders, expressions and tables name the option.", "old-green"))
        .optional("label", text("What a person reads. Left out: the id.", "Green"))
        .optional(
            "families",
            list(
                "Families that it belongs to, for `in family(\"dark\")` and cells of tables. Left out: none.",
                id("A family.", "dark"),
                &["dark"],
            ),
        )
        .optional("properties", site::properties())
        .optional("swatch", super::drawing::swatch())
        .optional("plant_code", text("What the plant calls it; carried untouched. Left out: none.", "01"))
        .optional(
            "offered_from",
            date("The first day on which it is offered. Left out: it always was.", "2020-01-01"),
        )
        .optional(
            "offered_until",
            date("The last day on which it is offered. Left out: no end is known.", "2026-06-30"),
        )
        .optional(
            "honoured_until",
            date(
                "The last day on which a quote from the time when it was offered is still honoured. Left out: none.",
                "2026-12-31",
            ),
        )
        .optional(
            "replaced_by",
            id("The option that findings propose instead. Left out: none.", "grey"),
        )
}
