//! The sheets that rules and figures name, each read once.

use std::collections::BTreeMap;

use crate::declare::{Declared, RawDefinition, RawRequirement, RawRule};
use crate::finding::Findings;
use crate::library_files::{Library, LibraryPath};
use crate::sheet::Sheet;
use crate::source::Sources;
use crate::typed::PlacedText;

/// Sheets by the file that they stand in.
#[derive(Debug, Default)]
pub(crate) struct Sheets {
    /// By the file that names it and the text by which it does.
    by_name: BTreeMap<(LibraryPath, String), LibraryPath>,
    sheets: BTreeMap<LibraryPath, Option<Sheet>>,
}

/// The sheets that the declarations name, with the files that name them.
pub(crate) fn wanted(declared: &Declared) -> Vec<(LibraryPath, PlacedText)> {
    let of_figures = declared
        .figures
        .iter()
        .filter_map(|figure| match &figure.definition {
            Some(RawDefinition::Table { file, .. }) => Some((figure.head.home.clone(), file.clone())),
            _ => None,
        });
    of_figures.chain(wanted_by_rules(&declared.rules)).collect()
}

/// The sheets that rules name.
pub(crate) fn wanted_by_rules(rules: &[RawRule]) -> impl Iterator<Item = (LibraryPath, PlacedText)> {
    rules.iter().filter_map(|rule| match &rule.requirement {
        Some(RawRequirement::Table { file, .. }) => Some((rule.head.home.clone(), file.clone())),
        _ => None,
    })
}

impl Sheets {
    /// Reads what is wanted; a sheet that cannot be read has findings.
    pub(crate) fn read(
        library: &Library,
        sources: &mut Sources,
        findings: &Findings,
        wanted: impl IntoIterator<Item = (LibraryPath, PlacedText)>,
    ) -> Self {
        let mut read = Self::default();
        for (home, text) in wanted {
            let Some(path) = library.resolve_include(&home, &text.text, &text.place, findings) else {
                continue;
            };
            if !read.sheets.contains_key(&path) {
                let file = library.read(sources, &path, Some(&text.place), findings);
                let sheet = file.and_then(|file| Sheet::read(sources, file, findings));
                read.sheets.insert(path.clone(), sheet);
            }
            read.by_name.insert((home, text.text), path);
        }
        read
    }

    /// The sheet that a file names; `None` means that a finding says why.
    pub(crate) fn find(&self, home: &LibraryPath, text: &PlacedText) -> Option<&Sheet> {
        let path = self.by_name.get(&(home.clone(), text.text.clone()))?;
        self.sheets.get(path)?.as_ref()
    }
}
