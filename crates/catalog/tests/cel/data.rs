//! The extracted conformance data: `conformance.json`, one test a line.
//!
//! Always holds: every test has an expression; what it expects is one of [`Expected`].
//! Source: npm `@bufbuild/cel-spec`, see `NOTICE.txt` and `extract.mjs` beside this file.

use serde_json::Value as Json;

const TEXT: &str = include_str!("conformance.json");

/// All tests, and where they are from.
pub(crate) struct Data {
    pub(crate) version: String,
    pub(crate) tests: Vec<Test>,
    /// How many tests of the package were not extracted.
    pub(crate) left_out: u64,
}

/// One conformance test.
pub(crate) struct Test {
    /// `file/section/name`, as the CEL project calls it.
    pub(crate) name: String,
    pub(crate) expression: String,
    pub(crate) expected: Expected,
    /// Names with the values they stand for, `{"int64Value":"123"}`.
    pub(crate) bindings: Vec<(String, Json)>,
    /// Whether it declares names, with a value or without.
    pub(crate) declares: bool,
    /// The namespace in which names are looked up first.
    pub(crate) container: Option<String>,
}

impl Test {
    /// An expression that the data does not have, with nothing declared.
    pub(crate) fn bare(expression: &str) -> Self {
        Self {
            name: "bare".to_owned(),
            expression: expression.to_owned(),
            expected: Expected::Bool(true),
            bindings: Vec::new(),
            declares: false,
            container: None,
        }
    }
}

/// What CEL says an expression comes to.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Expected {
    Bool(bool),
    /// A whole number or a double, in decimal; `NaN`, `Infinity` and `-Infinity` are possible.
    Number(String),
    Text(String),
    /// What a catalog cannot hold: null, bytes, a list, a map, a message, a type; or only the type is said.
    Strange(String),
    /// The error's message.
    Error(String),
}

impl Expected {
    /// As the page shows it.
    pub(crate) fn shown(&self) -> String {
        match self {
            Self::Bool(truth) => truth.to_string(),
            Self::Number(digits) => digits.clone(),
            Self::Text(text) => format!("{text:?}"),
            Self::Strange(json) => json.clone(),
            Self::Error(_) => "an error".to_owned(),
        }
    }
}

/// Reads the file.
pub(crate) fn read() -> Data {
    let json: Json = serde_json::from_str(TEXT).unwrap();
    Data {
        version: json["source"]["version"].as_str().unwrap().to_owned(),
        tests: json["tests"].as_array().unwrap().iter().map(test).collect(),
        left_out: json["left_out"]
            .as_array()
            .unwrap()
            .iter()
            .map(|file| file["tests"].as_u64().unwrap())
            .sum(),
    }
}

fn test(json: &Json) -> Test {
    let text = |key: &str| json[key].as_str().unwrap().to_owned();
    let bindings = json["bindings"].as_object().into_iter().flatten();
    Test {
        name: format!("{}/{}/{}", text("file"), text("section"), text("name")),
        expression: text("expression"),
        expected: expected(json),
        bindings: bindings
            .map(|(name, binding)| (name.clone(), binding["value"].clone()))
            .collect(),
        declares: json.get("bindings").is_some() || json.get("typeEnv").is_some(),
        container: json["container"].as_str().map(str::to_owned),
    }
}

fn expected(json: &Json) -> Expected {
    if let Some(error) = json.get("evalError") {
        return Expected::Error(error["errors"][0]["message"].as_str().unwrap().to_owned());
    }
    if let Some(typed) = json.get("typedResult") {
        return match typed.get("result") {
            Some(value) => of_value(value),
            None => Expected::Strange(format!("a value of the type {}", typed["deducedType"])),
        };
    }
    match json.get("value") {
        Some(value) => of_value(value),
        // The format of the tests says: without an expectation, `true` is expected.
        None => Expected::Bool(true),
    }
}

fn of_value(json: &Json) -> Expected {
    let (kind, value) = json.as_object().unwrap().iter().next().unwrap();
    match (kind.as_str(), value) {
        ("boolValue", Json::Bool(truth)) => Expected::Bool(*truth),
        ("int64Value" | "uint64Value" | "doubleValue", Json::String(digits)) => {
            Expected::Number(digits.clone())
        }
        ("doubleValue", Json::Number(number)) => Expected::Number(number.to_string()),
        ("stringValue", Json::String(text)) => Expected::Text(text.clone()),
        _ => Expected::Strange(json.to_string()),
    }
}
