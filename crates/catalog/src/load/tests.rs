//! One helper: the files of a library in, the catalog in short or the findings out.

use std::fmt::Write as _;

use expect_test::{Expect, expect};

use super::*;
use crate::finding::Place;

/// Writes the files into a library and loads the catalog of folder `c`.
pub(crate) fn load_files(files: &[(&str, &str)]) -> (Option<LoadedCatalog>, Vec<Finding>, Sources) {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), files);
    let findings = Findings::new();
    let mut sources = Sources::new();
    let library = Library::find(folder.path(), &findings).unwrap();
    let path = library.locate(&folder.path().join("c")).unwrap();
    let loaded = load_catalog(&library, &path, &mut sources, &findings);
    let findings = findings.into_sorted(&sources);
    (loaded, findings, sources)
}

/// Loads the catalog of folder `c`, which must load, and goes on with it.
pub(crate) fn load_files_with(
    files: &[(&str, &str)],
    go_on: impl FnOnce(&Library, &std::path::Path, &LoadedCatalog, &mut Sources, &Findings),
) -> (Vec<Finding>, Sources) {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), files);
    let findings = Findings::new();
    let mut sources = Sources::new();
    let library = Library::find(folder.path(), &findings).unwrap();
    let path = library.locate(&folder.path().join("c")).unwrap();
    let loaded = load_catalog(&library, &path, &mut sources, &findings).unwrap();
    go_on(&library, folder.path(), &loaded, &mut sources, &findings);
    let findings = findings.into_sorted(&sources);
    (findings, sources)
}

pub(crate) fn write(folder: &std::path::Path, files: &[(&str, &str)]) {
    let write = |path: &str, text: &str| {
        let path = folder.join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    };
    write(
        "library.toml",
        "format = 1\n[library]\nid = \"l\"\nlabel = \"L\"\n",
    );
    for (path, text) in files {
        write(path, text);
    }
}

/// `file:line:column "text" CODE message`, then help and related places, for each finding.
pub(crate) fn lines_of(findings: &[Finding], sources: &Sources) -> String {
    let shown = |place: &Place| {
        let position = sources.position(place);
        format!(
            "{}:{}:{} `{}`",
            sources.path(place.file),
            position.line,
            position.column,
            sources.text_at(place).lines().next().unwrap_or_default()
        )
    };
    let mut out = String::new();
    for finding in findings {
        let place = finding.place().map_or("-".to_owned(), shown);
        let weight = if finding.is_error() { "" } else { "(warning) " };
        writeln!(out, "{place} {weight}{} {}", finding.code(), finding.message()).unwrap();
        if let Some(help) = finding.help() {
            writeln!(out, "  help: {help}").unwrap();
        }
        for (place, what) in finding.related() {
            writeln!(out, "  {}: {what}", shown(place)).unwrap();
        }
    }
    out
}

/// The head of `catalog.toml` that most tests share.
const HEAD: &str =
    "format = 1\n[catalog]\nid = \"c\"\nlabel = \"C\"\nlength = { unit = \"in\", step = \"1/16\" }\n";

fn check_files(files: &[(&str, &str)], expected: Expect) {
    let (loaded, findings, sources) = load_files(files);
    let mut out = lines_of(&findings, &sources);
    assert_eq!(loaded.is_some(), !findings.iter().any(Finding::is_error));
    if let Some(loaded) = loaded {
        out += &short(&loaded.catalog);
    }
    expected.assert_eq(&out);
}

/// One catalog file after the shared head, which takes five lines.
fn check(text: &str, expected: Expect) {
    check_files(&[("c/catalog.toml", &format!("{HEAD}{text}"))], expected);
}

/// What was made of the declarations, one a line.
fn short(catalog: &Catalog) -> String {
    let of = catalog.declarations();
    let part = |part: Option<astragal_model::PartIndex>| part.map(|part| of.parts.at(part).id.clone());
    let mut lines: Vec<String> = Vec::new();
    lines.extend(of.attributes.iter().map(|(index, it)| {
        let options: Vec<&str> = it.options.iter().map(|o| o.id.as_str()).collect();
        let name = catalog.name_of(astragal_model::Subject::Attribute(index));
        let when = shown_when(&it.applies_when);
        format!("{name}: {}; standard {:?}{when}", options.join(" "), it.standard)
    }));
    let measures = of.measures.values();
    lines.extend(measures.map(|it| format!("{}: {:?} step {:?}", it.id, it.value_type, it.step)));
    let facts = of.facts.values();
    lines.extend(facts.map(|it| format!("{}: {:?} of {:?} {:?}", it.id, it.value_type, it.of, it.options)));
    lines.extend(of.figures.iter().map(|(index, it)| {
        let name = catalog.name_of(astragal_model::Subject::Figure(index));
        format!("{name}: {:?}", it.value_type)
    }));
    lines.extend(of.rules.iter().map(|it| {
        let (part, when, message) = (part(it.part), shown_when(&it.when), it.message.written(catalog));
        format!("{} {part:?} by {}{when} {message}", it.id, it.authority)
    }));
    lines.extend(of.items.values().map(|it| {
        let when = shown_when(&it.when);
        format!(
            "{} {:?} {:?}{when} quantity {:?}",
            it.id, it.class, it.amount, it.quantity
        )
    }));
    lines.extend(of.notices.iter().map(|it| {
        let (when, text) = (shown_when(&it.when), it.text.written(catalog));
        format!("{} {:?}{when} {text}", it.id, it.kind)
    }));
    let examples = of.examples.iter();
    lines.extend(examples.map(|it| {
        format!(
            "{}: {:?} breaks {:?} undecided {:?}",
            it.id, it.picks, it.breaks, it.undecided
        )
    }));
    if lines.is_empty() {
        "loads\n".to_owned()
    } else {
        lines.join("\n") + "\n"
    }
}

fn shown_when(when: &Option<astragal_model::Expression>) -> String {
    when.as_ref()
        .map_or(String::new(), |when| format!(" when {when:?}"))
}

/// An attribute `exterior` of white and grey, which is dark.
const COLOUR: &str = r#"
[[attribute]]
id = "exterior"
label = "Exterior"
options = [{ id = "white" }, { id = "grey", families = ["dark"] }]
standard = "white"
"#;

mod drawing;
mod examples;
mod files;
mod ids;
mod items;
mod known;
mod limits;
mod options;
mod parts;
mod plain;
mod room_rules;
mod rules;
mod taken_as;
mod trade_functions;
mod worked_out;
