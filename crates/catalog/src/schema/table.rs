//! The schema of one table: its keys in order, which of them must be there, and which exclude each other.
//!
//! Keys that exclude each other are choices: a figure is `formula`, or `table` with `keys`, `value` and `match`. All keys are
//! listed once at the table, so that an editor completes them all; a choice says only what must and must not be there.
//!
//! Always holds: a key that is not listed is refused.

use serde_json::{Map, Value};

use super::shape::Shape;

/// The schema of one table.
#[derive(Debug)]
pub(super) struct Table {
    description: String,
    keys: Map<String, Value>,
    required: Vec<&'static str>,
    choices: Vec<Choice>,
}

/// One of the ways in which a table may be filled.
#[derive(Debug)]
pub(super) struct Choice {
    title: &'static str,
    required: &'static [&'static str],
    without: &'static [&'static str],
    /// A key, and the words that it has here.
    word: Option<(&'static str, Vec<&'static str>)>,
}

impl Table {
    /// A table without keys.
    pub(super) fn new(description: &str) -> Table {
        Table {
            description: description.to_owned(),
            keys: Map::new(),
            required: Vec::new(),
            choices: Vec::new(),
        }
    }

    /// The outermost table of a file, which begins with `format`.
    pub(super) fn file(description: &str) -> Table {
        let format = Shape::new(
            "The version of the file format. Every file begins with `format = 1`.",
            "integer",
        );
        let format = format.with("enum", vec![Value::from(1)]).example(1);
        Table::new(description).required("format", format)
    }

    /// A key that must be there.
    pub(super) fn required(mut self, key: &'static str, shape: Shape) -> Table {
        self.required.push(key);
        self.optional(key, shape)
    }

    /// A key that may be there.
    pub(super) fn optional(mut self, key: &'static str, shape: Shape) -> Table {
        self.keys.insert(key.to_owned(), shape.into_value());
        self
    }

    /// The table is filled in exactly one of these ways.
    pub(super) fn choices(mut self, choices: impl IntoIterator<Item = Choice>) -> Table {
        self.choices.extend(choices);
        self
    }

    /// As the shape of a value.
    pub(super) fn into_shape(self) -> Shape {
        let mut shape = Shape::new(&self.description, "object").with("properties", self.keys);
        if !self.required.is_empty() {
            shape = shape.with("required", words(&self.required));
        }
        shape = shape.with("additionalProperties", false);
        if self.choices.is_empty() {
            return shape;
        }
        let choices: Vec<Value> = self.choices.into_iter().map(Choice::into_value).collect();
        shape.with("oneOf", choices)
    }

    /// As the shape of a list of such tables, `[[name]]` in TOML.
    pub(super) fn into_list(self) -> Shape {
        let description = self.description.clone();
        Shape::list(&description, self.into_shape())
    }
}

impl Choice {
    /// These keys must be there.
    pub(super) fn new(title: &'static str, required: &'static [&'static str]) -> Choice {
        Choice {
            title,
            required,
            without: &[],
            word: None,
        }
    }

    /// These keys must not be there.
    pub(super) fn without(self, without: &'static [&'static str]) -> Choice {
        Choice { without, ..self }
    }

    /// Where this key is there, it is one of these words.
    pub(super) fn word(self, key: &'static str, words: &[&'static str]) -> Choice {
        Choice {
            word: Some((key, words.to_vec())),
            ..self
        }
    }

    fn into_value(self) -> Value {
        let mut map = Map::new();
        map.insert("title".to_owned(), Value::from(self.title));
        if let Some((key, known)) = &self.word {
            let word = Map::from_iter([("enum".to_owned(), words(known))]);
            let keys = Map::from_iter([((*key).to_owned(), Value::Object(word))]);
            map.insert("properties".to_owned(), Value::Object(keys));
        }
        if !self.required.is_empty() {
            map.insert("required".to_owned(), words(self.required));
        }
        if !self.without.is_empty() {
            let has = |key: &&'static str| {
                let required = Map::from_iter([("required".to_owned(), words(&[key]))]);
                Value::Object(required)
            };
            let any: Vec<Value> = self.without.iter().map(has).collect();
            let any = Map::from_iter([("anyOf".to_owned(), Value::Array(any))]);
            map.insert("not".to_owned(), Value::Object(any));
        }
        Value::Object(map)
    }
}

fn words(words: &[&'static str]) -> Value {
    Value::Array(words.iter().map(|word| Value::from(*word)).collect())
}
