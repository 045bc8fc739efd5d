//! Files with every key that a schema knows, made from the examples in the schema.
//!
//! A table that may be filled in one of several ways stands once for each where it is an element of a list; everywhere else
//! each way has a specimen of its own.

use serde_json::{Map, Value};

/// Every way to fill what a schema describes, with all keys that go together.
pub(crate) fn all_ways(schema: &Value) -> Vec<Value> {
    if let Some(branches) = schema["anyOf"].as_array() {
        return branches.iter().flat_map(all_ways).collect();
    }
    if schema["properties"].is_object() {
        return tables(schema);
    }
    let is_list_of_tables = schema["items"]["properties"].is_object() || schema["items"]["anyOf"].is_array();
    if is_list_of_tables {
        let all = all_ways(&schema["items"]);
        return match schema["maxItems"].as_u64() {
            Some(1) => all.into_iter().map(|one| Value::Array(vec![one])).collect(),
            _ => vec![Value::Array(all)],
        };
    }
    if schema["additionalProperties"]["anyOf"].is_array() {
        let values = all_ways(&schema["additionalProperties"]).into_iter().enumerate();
        return vec![values.map(|(at, value)| (format!("name_{at}"), value)).collect()];
    }
    vec![schema["examples"][0].clone()]
}

/// A table by each of its choices.
fn tables(schema: &Value) -> Vec<Value> {
    let no_choice = vec![Value::Object(Map::new())];
    let choices = schema["oneOf"].as_array().unwrap_or(&no_choice);
    choices.iter().flat_map(|choice| table(schema, choice)).collect()
}

fn table(schema: &Value, choice: &Value) -> Vec<Value> {
    let excluded: Vec<&str> = choice["not"]["anyOf"]
        .as_array()
        .into_iter()
        .flatten()
        .map(|excluded| excluded["required"][0].as_str().unwrap())
        .collect();
    let mut ways = vec![Map::new()];
    for (key, inner) in schema["properties"].as_object().unwrap() {
        if excluded.contains(&key.as_str()) {
            continue;
        }
        let fixed = choice["properties"][key]["enum"][0].clone();
        let values = if fixed.is_null() {
            all_ways(inner)
        } else {
            vec![fixed]
        };
        // A key that may be filled in several ways is a way of its own each, beside the first of every other key.
        let first = ways.clone();
        for (at, value) in values.into_iter().enumerate() {
            let mut more = if at == 0 {
                std::mem::take(&mut ways)
            } else {
                first.iter().take(1).cloned().collect()
            };
            for way in &mut more {
                way.insert(key.clone(), value.clone());
            }
            ways.extend(more);
        }
    }
    ways.into_iter().map(Value::Object).collect()
}

/// A place in a specimen: where it is, and the schema of what stands there.
#[derive(Clone, Debug)]
pub(crate) struct Spot {
    /// As a JSON pointer.
    pub(crate) pointer: String,
    /// The schema, which may have several branches.
    pub(crate) schema: Value,
    /// The branch that what stands there takes; the schema itself where it has none.
    pub(crate) branch: Value,
}

impl Spot {
    /// The place in any specimen: the pointer without positions in lists.
    pub(crate) fn path(&self) -> String {
        let keys = self
            .pointer
            .split('/')
            .filter(|key| key.parse::<usize>().is_err());
        keys.collect::<Vec<_>>().join("/")
    }
}

/// Every place of a specimen, with its schema, the whole of it first.
pub(crate) fn spots(schema: &Value, specimen: &Value) -> Vec<Spot> {
    let mut found = Vec::new();
    let mut stack = vec![(String::new(), schema.clone(), specimen)];
    while let Some((pointer, schema, value)) = stack.pop() {
        let branches = schema["anyOf"].as_array();
        let branch = branches.map_or(&schema, |branches| {
            branches.iter().find(|branch| is_of_type(branch, value)).unwrap()
        });
        let branch = branch.clone();
        match value {
            Value::Object(entries) => {
                for (key, inner) in entries {
                    let known = &branch["properties"][key];
                    let schema = if known.is_object() {
                        known
                    } else {
                        &branch["additionalProperties"]
                    };
                    stack.push((format!("{pointer}/{key}"), schema.clone(), inner));
                }
            }
            Value::Array(items) => {
                for (at, item) in items.iter().enumerate() {
                    stack.push((format!("{pointer}/{at}"), branch["items"].clone(), item));
                }
            }
            _ => {}
        }
        found.push(Spot {
            pointer,
            schema,
            branch,
        });
    }
    found.retain(|spot| spot.schema.is_object());
    found.sort_by(|a, b| a.pointer.cmp(&b.pointer));
    found
}

/// Whether a schema takes values of this type.
pub(crate) fn is_of_type(schema: &Value, value: &Value) -> bool {
    if let Some(branches) = schema["anyOf"].as_array() {
        return branches.iter().any(|branch| is_of_type(branch, value));
    }
    let types = match &schema["type"] {
        Value::String(one) => vec![one.as_str()],
        Value::Array(types) => types.iter().filter_map(Value::as_str).collect(),
        _ => return true,
    };
    match value {
        Value::Bool(_) => types.contains(&"boolean"),
        Value::Number(number) if number.is_i64() => types.contains(&"integer") || types.contains(&"number"),
        Value::Number(_) => types.contains(&"number"),
        Value::String(_) => types.contains(&"string"),
        Value::Array(_) => types.contains(&"array"),
        Value::Object(_) => types.contains(&"object"),
        Value::Null => false,
    }
}
