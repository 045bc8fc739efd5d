//! The shapes of single values: ids, lengths, money, dates, expressions, words of a closed list.
//!
//! A pattern refuses only what the reader refuses; what needs more than a pattern is left to the reader. A `$comment` says
//! which reader it is, so that the tests can put the examples before it.
//!
//! Always holds: each has one example at least; a text that the reader takes matches.
//! Source: docs/reference.md, the first section.

use serde_json::Value;

use super::shape::Shape;

/// What expressions can name.
pub(super) const NAME: &str = "^[a-z][a-z0-9_]*$";
/// What expressions do not name may have hyphens, and begin with a digit.
pub(super) const ID: &str = "^[a-z0-9][a-z0-9_-]*$";
/// An attribute, a figure or a measure, or that of one part.
pub(super) const NAME_OF_PART: &str = r"^[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)?$";
/// A length has a digit or a fraction, and no comma.
pub(super) const LENGTH: &str = "^[^,]*[0-9½¼¾⅛⅜⅝⅞][^,]*$";
/// The step of a measure may be none.
pub(super) const STEP: &str = "^([^,]*[0-9½¼¾⅛⅜⅝⅞][^,]*|none)$";
/// A plain decimal.
pub(super) const MONEY: &str = r"^\s*-?([0-9]+(\.[0-9]+)?|\.[0-9]+)\s*$";
/// A plain decimal, with a sign for the percentage or without.
pub(super) const PERCENT: &str = r"^\s*-?([0-9]+(\.[0-9]+)?|\.[0-9]+)\s*%?\s*$";
/// A decimal, with an exponent or without.
pub(super) const NUMBER: &str = r"^\s*-?([0-9]+(\.[0-9]+)?|\.[0-9]+)([eE][+-]?[0-9]+)?\s*$";
/// Three capital letters.
pub(super) const CURRENCY: &str = "^[A-Z]{3}$";
/// Something other than white space.
pub(super) const FILLED: &str = r"\S";

/// Any text.
pub(super) fn text(description: &str, example: &str) -> Shape {
    Shape::new(description, "string").example(example)
}

/// Text that is not blank.
pub(super) fn filled(description: &str, example: &str) -> Shape {
    text(description, example).pattern(FILLED)
}

/// What a person reads of something that must have it.
pub(super) fn label(example: &str) -> Shape {
    text("What a person reads.", example)
}

/// The id of something that expressions name.
pub(super) fn name(description: &str, example: &str) -> Shape {
    text(description, example).pattern(NAME).with("$comment", "name")
}

/// The id of something else.
pub(super) fn id(description: &str, example: &str) -> Shape {
    text(description, example).pattern(ID).with("$comment", "id")
}

/// A reference to an attribute, a figure or a measure.
pub(super) fn name_of_part(description: &str, example: &str) -> Shape {
    text(description, example).pattern(NAME_OF_PART)
}

/// The kind of part for each of which there is one.
pub(super) fn per(what: &str) -> Shape {
    let description = format!(
        "The `kind` of part that there is one {what} for. In it a bare name means that of the same part. Left out: one {what} for the whole unit."
    );
    name(&description, "sash")
}

/// An expression.
pub(super) fn expression(description: &str, example: &str) -> Shape {
    text(description, example).with("$comment", "expression")
}

/// When something counts.
pub(super) fn when(what: &str, example: &str) -> Shape {
    expression(
        &format!("{what} only where this condition holds. Left out: always."),
        example,
    )
}

/// Text with `{names}` in it.
pub(super) fn template(description: &str, example: &str) -> Shape {
    text(description, example).with("$comment", "template")
}

/// A length: bare numbers are in the unit of the catalog.
pub(super) fn length(description: &str, example: &str) -> Shape {
    Shape::either_type(description, ["string", "number"])
        .pattern(LENGTH)
        .example(example)
        .with("$comment", "length")
}

/// A number, bare or in quotes.
pub(super) fn number(description: &str, example: impl Into<Value>) -> Shape {
    Shape::either_type(description, ["number", "string"])
        .pattern(NUMBER)
        .example(example)
        .with("$comment", "number")
}

/// A percentage, bare or in quotes.
pub(super) fn percent(description: &str, example: impl Into<Value>) -> Shape {
    Shape::either_type(description, ["number", "string"])
        .pattern(PERCENT)
        .example(example)
        .with("$comment", "percent")
}

/// An amount of money.
pub(super) fn money(description: &str, example: &str) -> Shape {
    Shape::either_type(description, ["string", "number"])
        .pattern(MONEY)
        .example(example)
        .with("$comment", "money")
}

/// A currency.
pub(super) fn currency(description: &str) -> Shape {
    text(description, "USD")
        .pattern(CURRENCY)
        .with("$comment", "currency")
}

/// A day.
pub(super) fn date(description: &str, example: &str) -> Shape {
    let description = format!("{description} A TOML date: `{example}`, without quotes; in JSON with quotes.");
    Shape::new(&description, "string")
        .with("format", "date")
        .example(example)
        .with("$comment", "date")
}

/// A list of texts of one shape, at least one.
pub(super) fn list_of_some(description: &str, item: Shape, example: &[&str]) -> Shape {
    list(description, item, example).with("minItems", 1)
}

/// True or false, false when left out.
pub(super) fn flag(description: &str) -> Shape {
    Shape::new(description, "boolean").default(false).example(true)
}

/// A file, relative to the one that names it.
pub(super) fn path(description: &str, example: &str) -> Shape {
    text(description, example).with("minLength", 1)
}

/// A list of texts of one shape.
pub(super) fn list(description: &str, item: Shape, example: &[&str]) -> Shape {
    let example: Vec<Value> = example.iter().map(|text| Value::from(*text)).collect();
    Shape::list(description, item).example(example)
}

/// One word of a closed list, each with what it means; the example is the second, since the first is often the default.
pub(super) fn word(description: &str, words: &[(&str, &str)]) -> Shape {
    let meanings: Vec<String> = words
        .iter()
        .map(|(word, meaning)| format!("- `{word}`: {meaning}"))
        .collect();
    let description = format!("{description}\n\n{}", meanings.join("\n"));
    let known: Vec<Value> = words.iter().map(|(word, _)| Value::from(*word)).collect();
    let example = words.get(1).or(words.first()).map_or("", |(word, _)| word);
    Shape::new(&description, "string")
        .with("enum", known)
        .example(example)
}

/// What an amount stands for; `goods` when left out.
pub(super) fn class() -> Shape {
    class_of("What the amount stands for; a dealer's mark-up may name it. Left out: `goods`.")
        .default("goods")
}

/// One of the words for what an amount stands for.
pub(super) fn class_of(description: &str) -> Shape {
    word(
        description,
        &[
            ("goods", "the window itself and what is in it"),
            ("labour", "work"),
            ("fee", "a charge beside goods and work"),
            ("credit", "something taken off"),
        ],
    )
}

/// A class of tax.
pub(super) fn tax_class() -> Shape {
    text(
        "A word of your own for whoever works out taxes; carried untouched, no tax is worked out. Left out: none.",
        "materials",
    )
}
