//! The schemas of measures, facts and properties: tables whose keys are names of the catalog.

use serde_json::{Map, Value};

use super::shape::Shape;
use super::table::Table;
use super::value::{length, word};

/// `measures`, by name.
pub(super) fn measures() -> Shape {
    let size = "The size as measured. Without a unit a length is in the unit of the catalog.";
    let with_deduction = Table::new("A size, and who has deducted the gap around the unit.")
        .required("size", length(size, "35 5/8"))
        .optional(
            "deducted_by",
            word(
                "Who has taken the gap around the unit off the size. Left out: nobody said, and what depends on it is undecided.",
                &[
                    ("nobody", "the size is that of the opening"),
                    ("dealer", "the dealer has"),
                    ("customer", "the customer has: the size is that of the unit"),
                ],
            ),
        );
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
