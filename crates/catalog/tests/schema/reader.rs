//! Puts one file before the reader: a small library around it, and what is found in that file.

use std::collections::BTreeSet;
use std::path::Path;

use astragal_catalog::check_library;
use astragal_catalog::finding::Finding;
use astragal_catalog::order::{ReadOptions, read_order};
use astragal_catalog::schema::SchemaKind;
use serde_json::Value;

const LIBRARY: &str = "format = 1\n[library]\nid = \"small\"\nlabel = \"Small\"\n";
const CATALOG: &str =
    "format = 1\n[catalog]\nid = \"hinged\"\nlabel = \"Hinged\"\nlength = { unit = \"in\" }\n";

/// What the reader finds in a file of this kind.
pub(crate) fn findings(kind: SchemaKind, file: &Value) -> Vec<Finding> {
    let text = toml::to_string(&with_ids_of_their_own(file)).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let write = |path: &str, text: &str| {
        let path = folder.path().join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    };
    write("library.toml", LIBRARY);
    write("hinged/catalog.toml", CATALOG);
    // The other catalog that the examples of the schemas name.
    write("sliding/catalog.toml", &CATALOG.replace("hinged", "sliding"));
    let own = match kind {
        SchemaKind::Library => "library.toml",
        SchemaKind::Catalog => "hinged/catalog.toml",
        SchemaKind::Book => "book/book.toml",
        SchemaKind::Policy => "policy/policy.toml",
        SchemaKind::Order => "order.toml",
    };
    write(own, &text);
    let (sources, found) = if kind == SchemaKind::Order {
        let read = read_order(&folder.path().join(own), &ReadOptions::default());
        (read.sources, read.findings)
    } else {
        let report = check_library(folder.path());
        (report.sources, report.findings)
    };
    let is_own = |finding: &Finding| {
        let path = finding.place().map(|place| sources.path(place.file));
        path.is_some_and(|path| Path::new(path).ends_with(own))
    };
    found.into_iter().filter(is_own).collect()
}

/// The file with other ids where two things in one list have the same: of two rules with one id the reader looks at the
/// first alone.
fn with_ids_of_their_own(file: &Value) -> Value {
    let mut file = file.clone();
    let tables = file
        .as_object_mut()
        .into_iter()
        .flat_map(|tables| tables.values_mut());
    for list in tables.filter_map(Value::as_array_mut) {
        let mut seen = BTreeSet::new();
        for (at, thing) in list.iter_mut().enumerate() {
            let Some(Value::String(id)) = thing.get_mut("id") else {
                continue;
            };
            if !seen.insert(id.clone()) {
                *id = format!("{id}{at}");
            }
        }
    }
    file
}

/// The codes of what is wrong with the shape of a file, whatever its names mean.
const OF_SHAPE: [&str; 19] = [
    "WRONG_TYPE",
    "MISSING_KEY",
    "UNKNOWN_KEY",
    "KEYS_EXCLUDE",
    "BAD_ID",
    "UNKNOWN_WORD",
    "UNKNOWN_FORMAT",
    "NOT_A_DATE",
    "EMPTY_TEXT",
    "NO_OPTIONS",
    "NO_UNIT",
    "MULLED_NOT_YET",
    "CURRENCY_UNKNOWN",
    "QUANTITY_OUT_OF_RANGE",
    "NOT_DEALER",
    "BAD_ROUNDING",
    "NUMBER_TOO_LARGE",
    "NUMBER_WITH_EXPONENT",
    "PERCENT_BELOW_MINUS_100",
];

/// Those of the findings that are errors about the shape of the file.
pub(crate) fn of_shape(findings: Vec<Finding>) -> Vec<Finding> {
    findings
        .into_iter()
        .filter(|finding| OF_SHAPE.contains(&finding.code()))
        .collect()
}

/// The findings in a line each.
pub(crate) fn said(findings: &[Finding]) -> String {
    let line = |finding: &Finding| format!("{} {} ({:?})", finding.code(), finding.message(), finding.help());
    findings.iter().map(line).collect::<Vec<_>>().join("\n")
}

/// The words in backticks in a text.
pub(crate) fn quoted(text: &str) -> Vec<String> {
    text.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}
