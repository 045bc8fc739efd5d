//! What astragal answers to an expression, by the way that catalogs take: text, syntax, types, judge.
//!
//! There is no way to evaluate an expression alone, so each is written into an invented catalog: as the formula of a
//! figure, which may have any type; or, where CEL expects a text, as the standard of an attribute that has an option of
//! that name. What a test binds is a site fact: a number, a yes or no, an enumeration for a text. What a catalog
//! cannot declare, such as a map or a name with a dot, stays undeclared, and the expression is refused for it.

use std::collections::BTreeSet;
use std::path::Path;

use astragal_catalog::finding::Findings;
use astragal_catalog::library_files::Library;
use astragal_catalog::source::Sources;
use astragal_catalog::{LoadedCatalog, load_catalog};
use astragal_model::{Authorities, Choice, Date, Id, Number, Outcome, Setting, Site, Value, fill, judge};
use serde_json::Value as Json;

use crate::data::{Expected, Test};

/// What an expression comes to.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Answer {
    Value(Value),
    Undefined,
    Unknown,
    /// The errors that the reader of the catalog gives.
    Refused(Vec<Refusal>),
}

/// One error.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Refusal {
    pub(crate) code: &'static str,
    pub(crate) message: String,
    pub(crate) help: String,
}

impl Answer {
    /// As the page shows it.
    pub(crate) fn shown(&self) -> String {
        match self {
            Self::Value(Value::Bool(truth)) => truth.to_string(),
            Self::Value(Value::Number(number)) => number.to_string(),
            Self::Value(Value::Length(inches)) => format!("{inches} in"),
            Self::Value(Value::Area(square_inches)) => format!("{square_inches} in2"),
            Self::Value(Value::Option(id)) => id.to_string(),
            Self::Refused(refusals) => format!("refused: {}", refusals.first().unwrap().message),
            other => format!("{other:?}"),
        }
    }
}

/// Writes the test into a catalog, reads that, and judges a unit of it.
pub(crate) fn answer(test: &Test) -> Answer {
    let folder = tempfile::tempdir().unwrap();
    let put = |path: &str, text: &str| std::fs::write(folder.path().join(path), text).unwrap();
    std::fs::create_dir(folder.path().join("catalog")).unwrap();
    put(
        "library.toml",
        "format = 1\n[library]\nid = \"l\"\nlabel = \"L\"\n",
    );
    put("catalog/catalog.toml", &catalog_text(test));
    let findings = Findings::new();
    let mut sources = Sources::new();
    match load(folder.path(), &mut sources, &findings) {
        Some(loaded) => judged(&loaded, test),
        None => {
            let errors = findings.into_sorted(&sources);
            let errors = errors.iter().filter(|finding| finding.is_error());
            Answer::Refused(
                errors
                    .map(|finding| Refusal {
                        code: finding.code(),
                        message: finding.message().to_owned(),
                        help: finding.help().unwrap_or_default().to_owned(),
                    })
                    .collect(),
            )
        }
    }
}

fn load(folder: &Path, sources: &mut Sources, findings: &Findings) -> Option<LoadedCatalog> {
    let library = Library::find(folder, findings)?;
    let folder = library.members(findings).into_iter().next()?.folder;
    load_catalog(&library, &folder, sources, findings)
}

fn catalog_text(test: &Test) -> String {
    let mut text =
        "format = 1\n[catalog]\nid = \"c\"\nlabel = \"C\"\nlength = { unit = \"in\" }\n".to_owned();
    for (name, value) in &test.bindings {
        if let Some((keys, _)) = fact(name, value, &test.expression) {
            text += &format!("[[site_fact]]\nid = \"{name}\"\nlabel = \"F\"\nof = \"opening\"\n{keys}\n");
        }
    }
    let expression = toml_text(&test.expression);
    text += &match &test.expected {
        Expected::Text(expected) => {
            let options: String = texts_of(&test.expression, expected)
                .iter()
                .map(|text| format!("{{ id = \"{text}\" }},"))
                .collect();
            format!(
                "[[attribute]]\nid = \"answer\"\nlabel = \"A\"\noptions = [{options}]\nstandard = {expression}\n"
            )
        }
        _ => format!("[[figure]]\nid = \"answer\"\nlabel = \"A\"\nformula = {expression}\n"),
    };
    text
}

/// What may be the id of an option, of a text and of the expression's words in quotes; never empty.
fn texts_of<'a>(expression: &'a str, text: &'a str) -> Vec<&'a str> {
    let words = expression.split(['"', '\'']).skip(1).step_by(2);
    let texts: BTreeSet<&str> = words
        .chain([text, "another"])
        .filter(|text| is_option_id(text))
        .collect();
    texts.into_iter().collect()
}

/// The keys of the fact that stands for a bound value, and the value; `None` where a catalog has no such thing.
fn fact(name: &str, bound: &Json, expression: &str) -> Option<(String, Value)> {
    let is_name = name.starts_with(|c: char| c.is_ascii_lowercase())
        && name
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_')
        && !matches!(name, "true" | "false" | "null");
    if !is_name {
        return None;
    }
    let (kind, value) = bound.as_object()?.iter().next()?;
    let plain = |of: &str, value| Some((format!("type = \"{of}\""), value));
    match (kind.as_str(), value) {
        ("boolValue", Json::Bool(truth)) => plain("bool", Value::Bool(*truth)),
        ("int64Value" | "uint64Value", Json::String(digits)) => {
            plain("number", Value::Number(Number::from_decimal(digits)?))
        }
        ("doubleValue", Json::Number(number)) => plain(
            "number",
            Value::Number(Number::from_decimal(&number.to_string())?),
        ),
        ("stringValue", Json::String(text)) if is_option_id(text) => Some((
            format!(
                "type = \"enumeration\"\noptions = {:?}",
                texts_of(expression, text)
            ),
            Value::Option(Id::new(text)),
        )),
        _ => None,
    }
}

fn is_option_id(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase() || c.is_ascii_digit())
        && text
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || matches!(c, '_' | '-'))
}

/// A text of TOML on one line.
fn toml_text(text: &str) -> String {
    let escaped: String = text
        .chars()
        .map(|c| match c {
            '"' | '\\' => format!("\\{c}"),
            _ if c.is_control() => format!("\\u{:04X}", u32::from(c)),
            _ => c.to_string(),
        })
        .collect();
    format!("\"{escaped}\"")
}

fn judged(loaded: &LoadedCatalog, test: &Test) -> Answer {
    let catalog = &loaded.catalog;
    let declarations = catalog.declarations();
    let facts = declarations.facts.iter().map(|(_, declared)| {
        let bound = test
            .bindings
            .iter()
            .find(|(name, _)| name == declared.id.as_str());
        bound.and_then(|(name, value)| Some(fact(name, value, &test.expression)?.1))
    });
    let site = Site {
        facts: facts.collect(),
        ..Site::default()
    };
    let setting = Setting {
        catalog,
        book: None,
        policy: None,
        site: &site,
        waivers: &[],
        authorities: &Authorities::default(),
        date: Date::constant(2026, 11, 25),
    };
    let unit = fill(&setting, &[]);
    let judgement = judge(&setting, &unit);
    if let Some((_, choice)) = unit.choices.iter().next() {
        return match choice {
            Choice::Chosen { option, .. } => Answer::Value(Value::Option(option.clone())),
            Choice::Open => Answer::Unknown,
            Choice::NotAsked => Answer::Undefined,
        };
    }
    match &judgement.figures.first().unwrap().outcome {
        Outcome::Known(value) => Answer::Value(value.clone()),
        Outcome::Unknown(_) => Answer::Unknown,
        Outcome::Undefined(_) => Answer::Undefined,
    }
}
