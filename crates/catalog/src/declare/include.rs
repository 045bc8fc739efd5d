//! The files of a catalog in order: each after what it includes.
//!
//! Of `include = ["colours.toml", "escape.toml"]` in `catalog.toml`, where `escape.toml` includes `colours.toml` as well,
//! the order is `colours.toml`, `escape.toml`, `catalog.toml`.
//!
//! Always holds: a file is read once however often it is included; a circle is a finding that names its files.
//! Cost: linear in the files; an explicit stack. Stops at [`FILES_LIMIT`] files.
//! Source: MEANING, "Files".

use std::collections::BTreeSet;

use super::{Declared, Fields};
use crate::finding::{Finding, Findings, Place};
use crate::library_files::{Library, LibraryPath};
use crate::source::{FileId, Sources};
use crate::tree::{self, Node, TableReader};

/// LIMIT: how many files a catalog may consist of, tables left out.
pub(crate) const FILES_LIMIT: usize = 1_000;

/// A file whose includes are being read.
struct OpenFile {
    path: LibraryPath,
    file: FileId,
    root: Node,
    includes: Vec<(LibraryPath, Place)>,
    next: usize,
}

/// Reads `catalog.toml` of a folder and all that it includes; `None` when there is nothing to go by.
pub(crate) fn declared(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<Declared> {
    let start = folder.join("catalog.toml");
    let mut declared = Declared::default();
    let mut seen = BTreeSet::from([start.clone()]);
    let mut stack = vec![open(library, &start, None, sources, findings, &mut declared)?];
    while let Some(top) = stack.last_mut() {
        let Some((path, place)) = top.includes.get(top.next).cloned() else {
            if let Some(done) = stack.pop() {
                add(&mut declared, &done, stack.is_empty(), sources, findings);
            }
            continue;
        };
        top.next += 1;
        if let Some(first) = stack.iter().position(|open| open.path == path) {
            findings.push(circle(stack.get(first..).unwrap_or_default(), &path, place));
        } else if seen.len() >= FILES_LIMIT {
            findings.push(too_many(place));
            declared.has_gaps = true;
            return Some(declared);
        } else if seen.insert(path.clone()) {
            stack.extend(open(
                library,
                &path,
                Some(&place),
                sources,
                findings,
                &mut declared,
            ));
        }
    }
    Some(declared)
}

fn open(
    library: &Library,
    path: &LibraryPath,
    asked_at: Option<&Place>,
    sources: &mut Sources,
    findings: &Findings,
    declared: &mut Declared,
) -> Option<OpenFile> {
    let file = library.read(sources, path, asked_at, findings);
    let read = file.and_then(|file| Some((file, tree::read(sources, file, findings)?)));
    let Some((file, root)) = read else {
        declared.has_gaps = true;
        return None;
    };
    let mut includes = Vec::new();
    let mut reader = TableReader::new(&root, file, "file", findings)?;
    for text in reader.array_of_texts("include").unwrap_or_default() {
        let place = reader.place_of(&text.span);
        match library.resolve_include(path, &text.value, &place, findings) {
            Some(include) => includes.push((include, place)),
            None => declared.has_gaps = true,
        }
    }
    drop(reader);
    Some(OpenFile {
        path: path.clone(),
        file,
        root,
        includes,
        next: 0,
    })
}

fn add(declared: &mut Declared, open: &OpenFile, is_catalog: bool, sources: &Sources, findings: &Findings) {
    let what = if is_catalog {
        "catalog file"
    } else {
        "included file"
    };
    if let Some(fields) = Fields::new(&open.root, open.file, what, &open.path, sources, findings) {
        declared.add_file(fields, &open.path, is_catalog);
    }
}

fn circle(open: &[OpenFile], path: &LibraryPath, place: Place) -> Finding {
    let mut chain: Vec<String> = open.iter().map(|file| format!("`{}`", file.path)).collect();
    chain.push(format!("`{path}`"));
    let message = format!("`{path}` includes itself: {}", chain.join(" includes "));
    let mut finding = Finding::error("INCLUDE_CYCLE", message)
        .at(place)
        .with_help("take one of these includes out");
    for file in open.iter().rev().skip(1).rev() {
        if let Some((next, place)) = file.next.checked_sub(1).and_then(|at| file.includes.get(at)) {
            finding = finding.with_related(place.clone(), format!("`{}` includes `{next}`", file.path));
        }
    }
    finding
}

fn too_many(place: Place) -> Finding {
    let message = format!("the catalog includes more than {FILES_LIMIT} files, the most that are read");
    Finding::error("LIMIT", message)
        .at(place)
        .with_help("put several files together")
}
