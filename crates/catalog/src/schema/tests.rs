//! Every example in a schema goes through the reader of its kind; every key says what it is.

use std::collections::BTreeMap;

use astragal_model::measure_text::{LengthUnit, parse_length};
use astragal_model::{Currency, Date, Number};
use serde_json::Value;

use super::{SchemaKind, schema};
use crate::book::amount_text::{money, plain_number};
use crate::declare::{is_id, is_name};
use crate::syntax;

/// Every schema inside a schema, with where it stands.
fn shapes(kind: SchemaKind) -> Vec<(String, Value)> {
    let mut found = Vec::new();
    let mut stack = vec![(kind.word().to_owned(), schema(kind))];
    while let Some((at, shape)) = stack.pop() {
        for (key, inner) in shape["properties"].as_object().into_iter().flatten() {
            stack.push((format!("{at}.{key}"), inner.clone()));
        }
        for key in ["items", "additionalProperties"] {
            if shape[key].is_object() {
                stack.push((format!("{at}.{key}"), shape[key].clone()));
            }
        }
        for branch in shape["anyOf"].as_array().into_iter().flatten() {
            stack.push((format!("{at}.{}", branch["title"]), branch.clone()));
        }
        found.push((at, shape));
    }
    found
}

#[test]
fn every_key_of_every_schema_has_a_description() {
    let mut count = 0;
    for kind in SchemaKind::ALL {
        for (at, shape) in shapes(kind) {
            let description = shape["description"].as_str().unwrap_or_default();
            assert!(description.len() > 5, "{at} says what it is");
            assert!(
                description.ends_with(['.', '!', '?']) || shape["enum"].is_array(),
                "{at} is a sentence: {description}"
            );
            assert!(!description.contains("  "), "{at}: {description}");
            count += 1;
        }
    }
    assert!(count > 200, "{count} shapes were looked at");
}

/// A scalar without an example leaves the reader to guess how it is written.
#[test]
fn every_key_that_is_no_table_has_an_example() {
    for kind in SchemaKind::ALL {
        for (at, shape) in shapes(kind) {
            let has_own_keys = shape["properties"].is_object() || shape["anyOf"].is_array();
            let is_list_of_tables =
                shape["items"]["properties"].is_object() || shape["items"]["anyOf"].is_array();
            let is_free_value = at.ends_with(".additionalProperties");
            if !(has_own_keys || is_list_of_tables || is_free_value) {
                let examples = shape["examples"].as_array().map_or(0, Vec::len);
                assert!(examples > 0, "{at} has an example");
            }
        }
    }
}

/// Whether the reader of this kind takes a text; `None` for a kind that is not known.
fn is_read(comment: &str, text: &str) -> Option<bool> {
    let read = match comment {
        "name" => is_name(text),
        "id" => is_id(text),
        "length" => parse_length(text, Some(LengthUnit::Inch)).is_ok(),
        "step" => text == "none" || parse_length(text, Some(LengthUnit::Inch)).is_ok(),
        "number" => Number::from_decimal(text).is_some(),
        "percent" => plain_number(text, "a percentage", "3.5").is_ok(),
        "money" => money(text).is_ok(),
        "currency" => Currency::from_code(text).is_some(),
        "date" => text.parse::<Date>().is_ok_and(|date| date.to_string() == text),
        "expression" => syntax::parse_expression(text).is_ok(),
        "standard" => is_id(text) || syntax::parse_expression(text).is_ok(),
        "template" => syntax::parse_template(text).is_ok(),
        _ => return None,
    };
    Some(read)
}

#[test]
fn the_examples_are_what_their_readers_take() {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    for kind in SchemaKind::ALL {
        for (at, shape) in shapes(kind) {
            let Some(comment) = shape["$comment"].as_str() else {
                continue;
            };
            for example in shape["examples"].as_array().unwrap() {
                let text = example
                    .as_str()
                    .map_or_else(|| example.to_string(), str::to_owned);
                let read = is_read(comment, &text).unwrap_or_else(|| panic!("{at}: what is `{comment}`?"));
                assert!(read, "{at}: `{text}` is no {comment}");
                *counts.entry(comment.to_owned()).or_default() += 1;
            }
        }
    }
    assert_eq!(counts.len(), 12, "{counts:?}");
}

#[test]
fn a_wrong_text_is_taken_by_no_reader() {
    for (comment, wrong) in [
        ("name", "Exterior-Colour"),
        ("id", "Old Green"),
        ("length", "30,5"),
        ("step", "any"),
        ("number", "1,000"),
        ("percent", "a fifth"),
        ("money", "$12"),
        ("currency", "usd"),
        ("date", "2026-11-31"),
        ("expression", "a =="),
        ("standard", "a =="),
        ("template", "{unclosed"),
    ] {
        assert_eq!(is_read(comment, wrong), Some(false), "{comment} {wrong}");
    }
}

#[test]
fn a_schema_is_the_same_every_time() {
    for kind in SchemaKind::ALL {
        let text = || serde_json::to_string_pretty(&schema(kind)).unwrap();
        assert_eq!(text(), text());
    }
}
