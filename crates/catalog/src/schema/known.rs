//! The schemas of what must be known of a unit and a site: measures and facts.

use super::shape::Shape;
use super::table::{Choice, Table};
use super::value::{STEP, expression, id, label, length, name, text, word};

/// `[[measure]]`.
pub(super) fn measure() -> Table {
    Table::new("Something that is measured at an opening.")
        .required("id", name("The name by which expressions and orders call it.", "opening_width"))
        .required("label", label("Opening width"))
        .optional(
            "type",
            word(
                "What is measured. Left out: `length`.",
                &[("length", "a length"), ("number", "a plain number")],
            )
            .default("length"),
        )
        .optional(
            "step",
            length(
                "What is measured must be a multiple of this; without a unit it is in the unit of the catalog. `none` for no step. Left out: the step of the catalog.",
                "1/16",
            )
            .pattern(STEP)
            .example("none")
            .with("$comment", "step"),
        )
        .optional("least", least("24"))
        .optional("most", most("96"))
        .optional(
            "taken_as",
            word(
                "Which side of the opening it is, where an opening has `readings`. Only a length. Left out: neither.",
                &[
                    ("width", "the width of the largest upright rectangle in the opening"),
                    ("height", "its height"),
                ],
            ),
        )
        .choices([
            Choice::new("a length", &[]).word("type", &["length"]),
            Choice::new("a number, without `taken_as`", &["type"])
                .without(&["taken_as"])
                .word("type", &["number"]),
        ])
}

/// `[[site_fact]]`.
pub(super) fn fact() -> Table {
    Table::new("Something that is known of a house or a place in it.")
        .required(
            "id",
            name(
                "The name by which expressions and orders call it.",
                "sleeping_room",
            ),
        )
        .required("label", label("Sleeping room"))
        .required(
            "of",
            word(
                "The highest place where it may be set; what stands nearer to the opening wins.",
                &[
                    ("house", "the whole house"),
                    ("floor", "one floor"),
                    ("room", "one room"),
                    ("face", "one side of the house"),
                    ("opening", "one opening"),
                ],
            ),
        )
        .required(
            "type",
            word(
                "What its value is.",
                &[
                    ("bool", "true or false"),
                    ("number", "a number"),
                    ("length", "a length"),
                    ("date", "a day"),
                    ("enumeration", "one of `options`"),
                ],
            ),
        )
        .optional("options", options())
        .optional("least", least("0"))
        .optional("most", most("50 ft"))
        .optional(
            "step",
            length(
                "A number or a length must be a multiple of this. Left out: any is taken.",
                "1/16",
            )
            .pattern(STEP)
            .example("none")
            .with("$comment", "step"),
        )
        .optional(
            "taken_as",
            word(
                "What it says of the `readings` of an opening. Only a length. Left out: nothing.",
                &[
                    ("diagonal-difference", "by how much the diagonals differ"),
                    ("width-spread", "by how much the widths differ"),
                    ("height-spread", "by how much the heights differ"),
                ],
            ),
        )
        .choices(choices_of_fact())
}

fn choices_of_fact() -> [Choice; 4] {
    const OTHERS: [&str; 2] = ["bool", "date"];
    [
        Choice::new("an enumeration, with its values", &["options"])
            .without(&["taken_as", "least", "most", "step"])
            .word("type", &["enumeration"]),
        Choice::new("a length, which may be `taken_as`", &[])
            .without(&["options"])
            .word("type", &["length"]),
        Choice::new("a number, without `options` and `taken_as`", &[])
            .without(&["options", "taken_as"])
            .word("type", &["number"]),
        Choice::new("any other type, of which nothing more is said", &[])
            .without(&["options", "taken_as", "least", "most", "step"])
            .word("type", &OTHERS),
    ]
}

fn least(example: &str) -> Shape {
    length(
        "The least that is taken, itself included. Of a number or a length; a length without a unit is in the unit of the catalog. Left out: no end.",
        example,
    )
}

fn most(example: &str) -> Shape {
    length(
        "The most that is taken, itself included. Of a number or a length; a length without a unit is in the unit of the catalog. Left out: no end.",
        example,
    )
}

/// `[[site_check]]`.
pub(super) fn site_check() -> Table {
    Table::new("Something that measures and facts of one opening must agree on. What is not known contradicts nothing.")
        .required(
            "id",
            id("The id by which findings name the check.", "opening-above-sill"),
        )
        .required(
            "require",
            expression(
                "What must be true. It reads measures and facts, and nothing that is chosen.",
                "height_above_grade >= sill_above_grade",
            ),
        )
        .required(
            "message",
            text(
                "What is said when it is not.",
                "An opening does not begin below its own sill.",
            ),
        )
}

fn options() -> Shape {
    let short = id("A value whose label is its id.", "north").titled("an id");
    let long = Table::new("A value with a label.")
        .required(
            "id",
            id("The id by which orders and expressions name the value.", "south"),
        )
        .optional("label", text("What a person reads. Left out: the id.", "South"));
    let item = Shape::any_of(
        "A value: an id, or an id with a label.",
        [short, long.into_shape().titled("an id and a label")],
    );
    Shape::list(
        "The values of an enumeration, at least one. Only an enumeration has them.",
        item,
    )
    .with("minItems", 1)
}
