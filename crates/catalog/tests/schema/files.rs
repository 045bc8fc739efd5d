//! Every file of the project that can be read is accepted by its schema.

use std::path::{Path, PathBuf};

use astragal_catalog::check_library;
use astragal_catalog::finding::Finding;
use astragal_catalog::order::{ReadOptions, read_order};
use astragal_catalog::schema::{SchemaKind, schema};
use serde_json::Value;

fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The files below a folder that are TOML, or orders in JSON.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut stack = vec![folder.to_owned()];
    while let Some(folder) = stack.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            let is_order = name.ends_with(".json") && !name.contains("quote");
            if path.is_dir() {
                stack.push(path);
            } else if name.ends_with(".toml") || is_order {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// A TOML file as JSON: dates become texts.
pub(crate) fn as_json(value: toml::Value) -> Value {
    match value {
        toml::Value::String(text) => text.into(),
        toml::Value::Integer(number) => number.into(),
        toml::Value::Float(number) => number.into(),
        toml::Value::Boolean(value) => value.into(),
        toml::Value::Datetime(date) => date.to_string().into(),
        toml::Value::Array(items) => items.into_iter().map(as_json).collect(),
        toml::Value::Table(entries) => entries
            .into_iter()
            .map(|(key, value)| (key, as_json(value)))
            .collect(),
    }
}

fn read(path: &Path) -> Option<Value> {
    let text = std::fs::read_to_string(path).unwrap();
    if path.extension().is_some_and(|ending| ending == "json") {
        return serde_json::from_str(&text).ok();
    }
    text.parse::<toml::Table>()
        .ok()
        .map(|table| as_json(toml::Value::Table(table)))
}

fn kind_of(file: &Value) -> SchemaKind {
    let has = |key: &str| file.get(key).is_some_and(Value::is_object);
    match file {
        _ if has("library") => SchemaKind::Library,
        _ if has("book") => SchemaKind::Book,
        _ if has("policy") => SchemaKind::Policy,
        _ if has("order") => SchemaKind::Order,
        _ => SchemaKind::Catalog,
    }
}

fn has_no_error(findings: &[Finding]) -> bool {
    !findings.iter().any(Finding::is_error)
}

/// Whether the reader reads a file, and whatever belongs to it, without an error.
fn can_be_read(path: &Path, kind: SchemaKind) -> bool {
    if kind == SchemaKind::Order {
        return has_no_error(&read_order(path, &ReadOptions::default()).findings);
    }
    let library = path
        .ancestors()
        .find(|folder| folder.join("library.toml").is_file());
    library.is_some_and(|library| has_no_error(&check_library(library).findings))
}

/// The files under `examples` and `tests/fixtures` that the reader reads without an error.
pub(crate) fn files_that_can_be_read() -> Vec<(String, SchemaKind, Value)> {
    let folders = ["examples", "tests/fixtures"].map(|folder| project().join(folder));
    let mut found = Vec::new();
    for path in folders.iter().flat_map(|folder| files(folder)) {
        let Some(file) = read(&path) else { continue };
        let kind = kind_of(&file);
        if can_be_read(&path, kind) {
            found.push((path.display().to_string(), kind, file));
        }
    }
    found
}

#[test]
fn every_file_of_the_project_that_can_be_read_is_accepted() {
    let files = files_that_can_be_read();
    for (name, kind, file) in &files {
        let schema = jsonschema::validator_for(&schema(*kind)).unwrap();
        let refused: Vec<String> = schema
            .iter_errors(file)
            .map(|error| format!("{}: {error}", error.instance_path()))
            .collect();
        assert!(refused.is_empty(), "{name}: {refused:#?}");
    }
    for kind in SchemaKind::ALL {
        assert!(
            files.iter().any(|(_, found, _)| *found == kind),
            "a file is a {kind:?}"
        );
    }
    assert!(files.len() >= 20, "{} files", files.len());
}

#[test]
fn a_file_is_refused_by_the_schema_of_another_kind() {
    for (name, kind, file) in files_that_can_be_read() {
        for other in SchemaKind::ALL.into_iter().filter(|other| *other != kind) {
            let schema = jsonschema::validator_for(&schema(other)).unwrap();
            assert!(!schema.is_valid(&file), "{name} is no {other:?}");
        }
    }
}
