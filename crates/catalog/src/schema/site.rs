//! The schemas of measures, facts and properties: tables whose keys are names of the catalog.

use serde_json::{Map, Value};

use super::shape::Shape;
use super::table::Table;
use super::value::{length, list, word};

/// `measures`, by name.
pub(super) fn measures() -> Shape {
    let size = "The size as measured. Without a unit a length is in the unit of the catalog.";
    let with_deduction = Table::new("A size, and who has deducted the gap around the unit.")
        .required("size", length(size, "35 5/8"))
        .optional("deducted_by", deducted_by());
    let measure = Shape::any_of(
        "A size, or a size with who has deducted.",
        [
            length(size, "48").titled("a size"),
            with_deduction.into_shape().titled("a size and who has deducted"),
        ],
    );
    let example = table(&[
        ("opening_width", "36".into()),
        ("opening_height", "48 1/2".into()),
    ]);
    Shape::free_table(
        "Sizes by the name of the `[[measure]]`. Left out: none was taken.",
        measure,
    )
    .example(example)
}

fn deducted_by() -> Shape {
    word(
        "Who has taken the gap around the unit off the size. Left out: nobody said, and what depends on it is undecided.",
        &[
            ("nobody", "the size is that of the opening"),
            ("dealer", "the dealer has"),
            ("customer", "the customer has: the size is that of the unit"),
        ],
    )
}

/// `readings` of an opening.
pub(super) fn readings() -> Shape {
    let several = |description: &str, most: usize, example: &[&str]| {
        let item = length(
            "A reading. Without a unit it is in the unit of the catalog.",
            "35 5/8",
        );
        list(description, item, example).with("maxItems", most)
    };
    Table::new(
        "What the tape and the level said, instead of the measures that are `taken_as` width and height. Left out: nothing.",
    )
    .optional(
        "widths",
        several(
            "The widths at the top, in the middle and at the bottom; the smallest governs.",
            3,
            &["36", "36 1/16", "36"],
        ),
    )
    .optional(
        "heights",
        several(
            "The heights at the left, in the centre and at the right; the smallest governs.",
            3,
            &["60", "60", "60 1/8"],
        ),
    )
    .optional(
        "diagonals",
        several("The two diagonals, from corner to corner.", 2, &["70", "69 15/16"]),
    )
    .optional(
        "out_of_plumb",
        length("By how much a jamb leans over the whole height. Left out: not read.", "1/8"),
    )
    .optional(
        "out_of_level",
        length("By how much the sill slopes over the whole width. Left out: not read.", "1/8"),
    )
    .optional("deducted_by", deducted_by())
    .into_shape()
}

/// `facts`, by name.
pub(super) fn facts() -> Shape {
    let value = value(
        "True or false, a number, a length, a date or the id of a value; `\"unknown\"` hides what stands further away.",
    );
    let example = table(&[("sleeping_room", true.into()), ("year_built", 1964.into())]);
    Shape::free_table("Facts by the name of the `[[site_fact]]`. Left out: none.", value).example(example)
}

/// `properties` of an option, by name.
pub(super) fn properties() -> Shape {
    let value = value("True or false, a number, a length, a date or a text.");
    let example = table(&[("gloss", 30.into()), ("sheen", "1/8".into())]);
    Shape::free_table(
        "Values by name that expressions read as `exterior.gloss`; all options of an attribute have the same. Left out: none.",
        value,
    )
    .example(example)
}

/// `extra`, which is carried untouched.
pub(super) fn extra() -> Shape {
    let example = table(&[("purchase_order", "A-17".into())]);
    Shape::new(
        "Anything of your own; carried untouched into the answer. Left out: nothing.",
        "object",
    )
    .with("additionalProperties", true)
    .example(example)
}

fn value(description: &str) -> Shape {
    let types = ["boolean", "number", "string"].map(Value::from).to_vec();
    Shape::described(description).with("type", types)
}

fn table(entries: &[(&str, Value)]) -> Map<String, Value> {
    entries
        .iter()
        .map(|(key, value)| ((*key).to_owned(), value.clone()))
        .collect()
}
