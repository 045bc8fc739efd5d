//! The schema of one value: a description, a type, and what else is known of it.
//!
//! `Shape::new("How many.", "integer").example(2)` is `{"description": "How many.", "type": "integer", "examples": [2]}`.
//!
//! Always holds: keys stand in the order in which they were added, so that the same shape is written as the same bytes.

use serde_json::{Map, Value};

/// The schema of one value.
#[derive(Clone, Debug)]
pub(super) struct Shape(Map<String, Value>);

impl Shape {
    /// A value of one type of JSON.
    pub(super) fn new(description: &str, value_type: &str) -> Shape {
        Shape::described(description).with("type", value_type)
    }

    /// A value of one of two types.
    pub(super) fn either_type(description: &str, types: [&str; 2]) -> Shape {
        Shape::described(description).with("type", types.map(Value::from).to_vec())
    }

    /// A value of one of several shapes.
    pub(super) fn any_of(description: &str, shapes: impl IntoIterator<Item = Shape>) -> Shape {
        let shapes: Vec<Value> = shapes.into_iter().map(Shape::into_value).collect();
        Shape::described(description).with("anyOf", shapes)
    }

    /// A list.
    pub(super) fn list(description: &str, item: Shape) -> Shape {
        Shape::new(description, "array").with("items", item.into_value())
    }

    /// A table whose keys are free and whose values have one shape.
    pub(super) fn free_table(description: &str, value: Shape) -> Shape {
        Shape::new(description, "object").with("additionalProperties", value.into_value())
    }

    /// Nothing known but what it is for.
    pub(super) fn described(description: &str) -> Shape {
        let mut map = Map::new();
        map.insert("description".to_owned(), Value::from(description));
        Shape(map)
    }

    /// What stands when the key is left out.
    pub(super) fn default(self, value: impl Into<Value>) -> Shape {
        self.with("default", value)
    }

    /// A text matches this.
    pub(super) fn pattern(self, pattern: &str) -> Shape {
        self.with("pattern", pattern)
    }

    /// A short name of the branch, where a value has several shapes.
    pub(super) fn titled(self, title: &str) -> Shape {
        self.with("title", title)
    }

    /// One thing that may be written.
    pub(super) fn example(mut self, value: impl Into<Value>) -> Shape {
        let examples = self
            .0
            .entry("examples")
            .or_insert_with(|| Value::Array(Vec::new()));
        if let Value::Array(examples) = examples {
            examples.push(value.into());
        }
        self
    }

    /// Any keyword.
    pub(super) fn with(mut self, keyword: &str, value: impl Into<Value>) -> Shape {
        self.0.insert(keyword.to_owned(), value.into());
        self
    }

    /// As the keywords of an object.
    pub(super) fn into_map(self) -> Map<String, Value> {
        self.0
    }

    /// As a schema.
    pub(super) fn into_value(self) -> Value {
        Value::Object(self.0)
    }
}
