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
    let declarations = catalog.declarations();
    let mut out = String::new();
    let option = |expression: &Option<astragal_model::Expression>| match expression {
        Some(expression) => format!(" when {expression:?}"),
        None => String::new(),
    };
    for (index, it) in declarations.attributes.iter() {
        let options: Vec<&str> = it.options.iter().map(|o| o.id.as_str()).collect();
        let name = catalog.name_of(astragal_model::Subject::Attribute(index));
        writeln!(
            out,
            "{name}: {}; standard {:?}{}",
            options.join(" "),
            it.standard,
            option(&it.applies_when)
        )
        .unwrap();
    }
    for it in declarations.measures.values() {
        writeln!(out, "{}: {:?} step {:?}", it.id, it.value_type, it.step).unwrap();
    }
    for it in declarations.facts.values() {
        writeln!(
            out,
            "{}: {:?} of {:?} {:?}",
            it.id, it.value_type, it.of, it.options
        )
        .unwrap();
    }
    for (index, it) in declarations.figures.iter() {
        let name = catalog.name_of(astragal_model::Subject::Figure(index));
        writeln!(out, "{name}: {:?}", it.value_type).unwrap();
    }
    for it in &declarations.rules {
        let part = it.part.map(|part| declarations.parts.at(part).id.clone());
        writeln!(
            out,
            "{} {part:?} by {}{} {}",
            it.id,
            it.authority,
            option(&it.when),
            it.message.written(catalog)
        )
        .unwrap();
    }
    for it in declarations.items.values() {
        writeln!(
            out,
            "{} {:?} {:?}{} quantity {:?}",
            it.id,
            it.class,
            it.amount,
            option(&it.when),
            it.quantity
        )
        .unwrap();
    }
    for it in &declarations.notices {
        writeln!(
            out,
            "{} {:?}{} {}",
            it.id,
            it.kind,
            option(&it.when),
            it.text.written(catalog)
        )
        .unwrap();
    }
    for it in &declarations.examples {
        writeln!(
            out,
            "{}: {:?} breaks {:?} undecided {:?}",
            it.id, it.picks, it.breaks, it.undecided
        )
        .unwrap();
    }
    if out.is_empty() { "loads\n".to_owned() } else { out }
}

/// An attribute `exterior` of white and grey, which is dark.
const COLOUR: &str = r#"
[[attribute]]
id = "exterior"
label = "Exterior"
options = [{ id = "white" }, { id = "grey", families = ["dark"] }]
standard = "white"
"#;

mod examples;
mod files;
mod ids;
mod items;
mod limits;
mod options;
mod parts;
mod plain;
mod rules;
mod worked_out;
