//! The schemas themselves: valid against the schema of schemas, and in the subset that every language server reads.

use std::collections::BTreeSet;

use astragal_catalog::schema::{DIALECT, SchemaKind, schema};
use serde_json::Value;

use crate::files::files_that_can_be_read;

/// Source: <https://json-schema.org/draft-07/schema>, <https://json-schema.org/draft-04/schema>, as the crate `jsonschema`
/// carries them.
#[test]
fn every_schema_is_a_schema() {
    for kind in SchemaKind::ALL {
        let schema = schema(kind);
        assert_eq!(schema["$schema"], DIALECT);
        jsonschema::draft7::meta::validate(&schema).unwrap_or_else(|error| panic!("{kind:?}: {error}"));
        jsonschema::draft4::meta::validate(&schema).unwrap_or_else(|error| panic!("{kind:?}: {error}"));
        let mut broken = schema.clone();
        broken["properties"]["format"]["type"] = Value::from("whole number");
        assert!(!jsonschema::draft7::meta::is_valid(&broken));
    }
}

#[test]
fn a_schema_uses_only_words_that_draft_04_has_as_well_but_for_notes() {
    const WORDS: [&str; 20] = [
        "$schema",
        "title",
        "description",
        "type",
        "properties",
        "required",
        "additionalProperties",
        "items",
        "enum",
        "pattern",
        "format",
        "default",
        "minimum",
        "maximum",
        "minLength",
        "minItems",
        "maxItems",
        "oneOf",
        "anyOf",
        "not",
    ];
    const NOTES: [&str; 2] = ["examples", "$comment"];
    let mut used = BTreeSet::new();
    for kind in SchemaKind::ALL {
        let mut stack = vec![schema(kind)];
        while let Some(shape) = stack.pop() {
            let Some(words) = shape.as_object() else { continue };
            for (word, value) in words {
                assert!(
                    WORDS.contains(&word.as_str()) || NOTES.contains(&word.as_str()),
                    "`{word}`"
                );
                used.insert(word.clone());
                match word.as_str() {
                    "properties" => stack.extend(value.as_object().unwrap().values().cloned()),
                    "items" | "additionalProperties" | "not" => stack.push(value.clone()),
                    "oneOf" | "anyOf" => stack.extend(value.as_array().unwrap().iter().cloned()),
                    _ => {}
                }
            }
        }
    }
    assert_eq!(used.len(), WORDS.len() + NOTES.len(), "all are used: {used:?}");
}

#[test]
fn read_as_draft_04_or_2020_12_a_schema_says_the_same() {
    for (name, kind, file) in files_that_can_be_read() {
        let schema = schema(kind);
        let broken = {
            let mut file = file.clone();
            file["zz"] = true.into();
            file
        };
        for draft in [
            jsonschema::draft4::new(&schema),
            jsonschema::draft202012::new(&schema),
        ] {
            let draft = draft.unwrap();
            assert!(draft.is_valid(&file), "{name}");
            assert!(!draft.is_valid(&broken), "{name}");
        }
    }
}
