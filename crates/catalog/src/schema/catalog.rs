//! The schema of `catalog.toml` and of every file that it includes.
//!
//! One schema for both: an editor finds a schema by the name of a file, and an included file may have any name. So
//! `[catalog]` is optional here; that it stands in `catalog.toml`, and nowhere else, is seen when the library is checked.

use super::shape::Shape;
use super::table::Table;
use super::value::{id, label, length, list, name, path, when, word};
use super::{attribute, drawing, example, figure, known, price, rule};

/// `catalog.toml`, or a file that it includes.
pub(super) fn file() -> Table {
    let include = list(
        "Files that are read before this one, in this order, each once; relative to this file. Stands at the top.",
        path("A file of the same library.", "../common/colours.toml"),
        &["../common/colours.toml", "../codes/escape.toml"],
    );
    Table::file("`catalog.toml`, or a file that it includes.")
        .optional("include", include)
        .optional("catalog", header())
        .optional("authority", authority().into_list())
        .optional("option_list", attribute::option_list().into_list())
        .optional("part", part().into_list())
        .optional("attribute", attribute::attribute().into_list())
        .optional("measure", known::measure().into_list())
        .optional("site_fact", known::fact().into_list())
        .optional("site_check", known::site_check().into_list())
        .optional("figure", figure::figure().into_list())
        .optional("rule", rule::rule().into_list())
        .optional("room_rule", rule::room_rule().into_list())
        .optional("price", price::item().into_list())
        .optional("notice", rule::notice().into_list())
        .optional("drawing", drawing::drawing())
        .optional("example", example::example().into_list())
}

fn header() -> Shape {
    let units = [
        ("in", "inches"),
        ("ft", "feet"),
        ("mm", "millimetres"),
        ("cm", "centimetres"),
        ("m", "metres"),
    ];
    let length = Table::new("How lengths are written in this catalog.")
        .required(
            "unit",
            word("The unit of lengths that are written without one.", &units),
        )
        .optional(
            "step",
            length(
                "Measured lengths must be multiples of this; without a unit it is in `unit`. Left out: any length.",
                "1/16",
            ),
        );
    Table::new("Which catalog this is. Stands in `catalog.toml` alone, never in an included file.")
        .required(
            "id",
            id(
                "The id by which price books, policies and orders name the catalog.",
                "hinged",
            ),
        )
        .required("label", label("Hinged windows"))
        .required("length", length.into_shape())
        .into_shape()
}

fn authority() -> Table {
    Table::new(
        "Somebody who makes rules, beside `plant`, `code`, `programme` and `dealer`, which are always there.",
    )
    .required(
        "id",
        id("The id by which rules name the authority.", "association"),
    )
    .required("label", label("Home owners' association"))
}

fn part() -> Table {
    Table::new(
        "A part of a unit, such as a sash, that may have options, figures, rules and prices of its own.",
    )
    .required(
        "id",
        name(
            "What expressions write after the point: `glazing.upper`.",
            "upper",
        ),
    )
    .required(
        "kind",
        name("What `per` names; parts of one kind are treated alike.", "sash"),
    )
    .required("label", label("upper sash"))
    .optional("when", when("The part is there", "operation == \"hung\""))
}
