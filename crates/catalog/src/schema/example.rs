//! The schema of examples, which every check proves.

use super::shape::Shape;
use super::site;
use super::table::Table;
use super::value::{date, filled, id, list, money, name_of_part, text};

/// `[[example]]`.
pub(super) fn example() -> Table {
    Table::new("A unit, and what must come out for it. Proved at every check.")
        .required("id", id("The id by which findings name the example.", "too-wide"))
        .optional("picks", picks())
        .optional("measures", site::measures())
        .optional("facts", site::facts())
        .required("date", date("The day as of which it is judged.", "2026-11-25"))
        .optional(
            "breaks",
            list(
                "The rules that do not hold, exactly these. Left out: none.",
                text("A rule.", "casement-width"),
                &["casement-width"],
            ),
        )
        .optional(
            "undecided",
            list(
                "The rules that cannot be decided, exactly these. Left out: not looked at.",
                text("A rule.", "casement-width"),
                &["casement-width"],
            ),
        )
        .optional(
            "room_breaks",
            list(
                "The room rules that do not hold where the unit is the only one of its room, exactly these. Left out: none.",
                text("A room rule.", "escape-opening"),
                &["escape-opening"],
            ),
        )
        .optional(
            "room_undecided",
            list(
                "The room rules that cannot be decided then, exactly these. Left out: not looked at.",
                text("A room rule.", "escape-opening"),
                &["escape-opening"],
            ),
        )
        .optional(
            "notices",
            list(
                "The notices that are shown for certain, exactly these. Left out: not looked at.",
                text("A notice.", "lead-safe"),
                &["lead-safe"],
            ),
        )
        .optional("total", total())
}

fn picks() -> Shape {
    pick("The option, by its id.").into_list().with(
        "description",
        "What is picked; everything else is filled with standards. Left out: nothing.",
    )
}

/// A pick of an example or an order.
pub(super) fn pick(option: &str) -> Table {
    Table::new("One attribute, and the option that is picked for it.")
        .required(
            "attribute",
            name_of_part("The attribute; with a part after a point where it is per part.", "operation"),
        )
        .required("option", filled(option, "casement"))
        .optional(
            "quoted",
            date(
                "The day on which the option was quoted, for one that is still honoured. Left out: not quoted before.",
                "2026-05-02",
            ),
        )
}

fn total() -> Shape {
    Table::new("What the unit costs by one price book. Left out: not looked at.")
        .required("book", text("The id of the price book.", "hinged-2026"))
        .required(
            "amount",
            money("The total, in the currency of the book.", "455.00"),
        )
        .into_shape()
}
