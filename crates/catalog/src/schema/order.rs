//! The schema of `order.toml` and `order.json`.

use super::shape::Shape;
use super::table::Table;
use super::value::{currency, date, filled, id, list, path, text, word};
use super::{example, site};
use crate::order::QUANTITY_LIMIT;

/// `order.toml`.
pub(super) fn file() -> Table {
    Table::file("An order: the house, its openings, and what stands in them.")
        .required("order", header())
        .required("catalog", catalog().into_list())
        .optional("house", house())
        .optional(
            "floor",
            place("A floor of the house.", "ground", "Ground floor").into_list(),
        )
        .optional(
            "room",
            place("A room.", "kitchen", "Kitchen")
                .optional(
                    "floor",
                    text(
                        "The id of the `[[floor]]` that it is on. Left out: not said.",
                        "ground",
                    ),
                )
                .into_list(),
        )
        .optional(
            "face",
            place("A side of the house.", "front", "Front").into_list(),
        )
        .optional("opening", opening().into_list())
}

fn header() -> Shape {
    Table::new("Which order this is.")
        .required("id", filled("The id of the order; any text.", "1042"))
        .optional(
            "label",
            text("What a person reads. Left out: the id.", "The Maple Street house"),
        )
        .required(
            "date",
            date(
                "The day as of which everything is judged and priced; never today by itself.",
                "2026-11-25",
            ),
        )
        .required(
            "currency",
            currency("The currency of all price books that are used: three letters of ISO 4217."),
        )
        .optional(
            "sold_at",
            word(
                "Where it is agreed to, on which the right to cancel depends. Left out: not known.",
                &[
                    ("buyers-home", "at the buyer's home"),
                    ("elsewhere", "elsewhere, away from the seller's place of business"),
                    ("sellers-premises", "at the seller's place of business"),
                ],
            ),
        )
        .optional(
            "signed",
            date(
                "The day on which the buyer signs. Left out: not known.",
                "2026-11-25",
            ),
        )
        .optional("extra", site::extra())
        .into_shape()
}

fn catalog() -> Table {
    Table::new("A catalog that the order uses, with its price book and policy.")
        .required(
            "id",
            filled("The id of the catalog, by which units name it.", "hinged"),
        )
        .required(
            "folder",
            path("Its folder, relative to the order.", "../library/hinged"),
        )
        .required(
            "book",
            path(
                "The folder of its price book, relative to the order.",
                "../library/books/hinged-2026",
            ),
        )
        .optional(
            "policy",
            path(
                "The folder of the dealer's policy, relative to the order. Left out: none.",
                "../library/policies/north-street",
            ),
        )
}

fn house() -> Shape {
    Table::new("What is known of the whole house.")
        .optional("facts", site::facts())
        .into_shape()
}

fn place(description: &str, example: &str, label: &str) -> Table {
    Table::new(description)
        .required("id", id("The id by which the order names it.", example))
        .optional("label", text("What a person reads. Left out: the id.", label))
        .optional("facts", site::facts())
}

fn opening() -> Table {
    let quantity = Shape::new("How many of them there are. Left out: 1.", "integer")
        .with("minimum", 1)
        .with("maximum", QUANTITY_LIMIT)
        .default(1)
        .example(2);
    Table::new("An opening of the house, with the unit that goes into it.")
        .required(
            "tag",
            filled(
                "What the opening is called on the plan; no two are called alike.",
                "K1",
            ),
        )
        .optional("quantity", quantity)
        .optional(
            "room",
            text(
                "The id of the `[[room]]` that it is in. Left out: not said.",
                "kitchen",
            ),
        )
        .optional(
            "face",
            text(
                "The id of the `[[face]]` that it is on. Left out: not said.",
                "front",
            ),
        )
        .optional("readings", site::readings())
        .optional("measures", site::measures())
        .optional("facts", site::facts())
        .optional(
            "note",
            text(
                "To the plant; printed, never read. Left out: none.",
                "Sash out to the left.",
            ),
        )
        .optional(
            "included",
            Shape::new(
                "Whether it counts in the order. Left out: true, but false beside `alternate_of`.",
                "boolean",
            )
            .example(true),
        )
        .optional(
            "alternate_of",
            text(
                "The tag of the opening that this is another proposal for. Left out: of none.",
                "K0",
            ),
        )
        .optional("extra", site::extra())
        .required("unit", units())
}

fn units() -> Shape {
    unit().into_list().with("minItems", 1).with("maxItems", 1)
}

fn unit() -> Table {
    let picks = example::pick("The option, by its id.").into_list();
    let pins = list(
        "Picks that must never change. Kept; no effect until something is searched for. Left out: none.",
        text("An attribute.", "operation"),
        &["operation"],
    );
    Table::new("The unit in the opening; one for now.")
        .required(
            "catalog",
            filled("The id of the `[[catalog]]` that it is from.", "hinged"),
        )
        .optional(
            "picks",
            picks.with(
                "description",
                "What is picked; everything else is filled with standards. Left out: nothing.",
            ),
        )
        .optional("pins", pins)
        .optional("waivers", waiver().into_list())
}

fn waiver() -> Table {
    Table::new("A rule that somebody has waived for this unit.")
        .required("rule", filled("The id of the rule.", "casement-width"))
        .required("reference", filled("The paper that says so.", "W-118"))
        .required("from", date("The first day on which it is waived.", "2026-11-01"))
        .optional(
            "until",
            date(
                "The last day on which it is waived. Left out: no end.",
                "2026-12-31",
            ),
        )
}
