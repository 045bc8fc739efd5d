//! Data of the caller, carried untouched.
//!
//! `extra = { price_list = 7.50 }` is kept as a table with the number `7.50`, trailing zero included.
//!
//! Always holds: keys keep their order and numbers their digits; a date is kept as its text, so that TOML and JSON
//! carry the same.
//! Cost: O(length). Recursion is bounded by the depth of the tree (`tree::DEPTH_LIMIT`).
//! Source: our own.

use astragal_model::Extra;

use crate::tree::{Node, NodeValue, TableReader};

/// Takes `extra` out of a table; anything but a table is a finding.
pub(super) fn read(reader: &mut TableReader<'_>) -> Extra {
    let Some(node) = reader.node("extra") else {
        return Extra::None;
    };
    let what = format!("`extra` of {}", reader.what());
    match TableReader::new(node, reader.file(), what, reader.findings()) {
        Some(mut table) => {
            table.rest();
            extra_of(node)
        }
        None => Extra::None,
    }
}

fn extra_of(node: &Node) -> Extra {
    match &node.value {
        NodeValue::Null => Extra::None,
        NodeValue::Bool(value) => Extra::Bool(*value),
        NodeValue::Integer(text) | NodeValue::Decimal(text) => Extra::Number(text.clone()),
        NodeValue::Text(text) => Extra::Text(text.clone()),
        NodeValue::Date(date) => Extra::Text(date.to_string()),
        NodeValue::Array(nodes) => Extra::List(nodes.iter().map(extra_of).collect()),
        NodeValue::Table(entries) => {
            let entry = |entry: &crate::tree::Entry| (entry.key.value.clone(), extra_of(&entry.node));
            Extra::Table(entries.iter().map(entry).collect())
        }
    }
}
