//! Finds conditions and formulas as their author wrote them, in the files that were read.
//!
//! A catalog that is ready to be asked keeps trees, not texts. The texts stand in the sources of the check, which are read
//! once more for them; white space is evened out. A text that is not found is left out: the words always stand.
//!
//! Cost: reads each TOML file of the library once.

use std::collections::BTreeMap;

use astragal_catalog::check::CheckReport;
use astragal_catalog::finding::Findings;
use astragal_catalog::source::FileId;
use astragal_catalog::tree::{self, Entry, Node};
use astragal_catalog::{DeclarationKind, Places};
use astragal_model::Id;

/// The declarations of all files, by file, heading and id.
pub(crate) struct Files(BTreeMap<(FileId, &'static str, String), Vec<Entry>>);

/// The texts of one catalog.
#[derive(Clone, Copy)]
pub(crate) struct Written<'a> {
    files: &'a Files,
    places: &'a Places,
}

impl Files {
    /// Reads the files of a check.
    pub(crate) fn of(report: &CheckReport) -> Self {
        let mut found = BTreeMap::new();
        for file in report.sources.files() {
            if !report.sources.path(file).ends_with(".toml") {
                continue;
            }
            let unsaid = Findings::new();
            let Some(root) = tree::read(&report.sources, file, &unsaid) else {
                continue;
            };
            for heading in ["attribute", "figure", "rule", "price", "notice"] {
                let nodes = value(root.as_table(), heading).and_then(Node::as_array);
                for entries in nodes.into_iter().flatten().filter_map(Node::as_table) {
                    if let Some(id) = value(Some(entries), "id").and_then(Node::as_text) {
                        found.insert((file, heading, id.to_owned()), entries.to_vec());
                    }
                }
            }
        }
        Self(found)
    }
}

impl<'a> Written<'a> {
    /// The texts of the catalog whose declarations stand at these places.
    pub(crate) fn new(files: &'a Files, places: &'a Places) -> Self {
        Self { files, places }
    }

    /// What a key of a declaration says.
    pub(crate) fn text(self, kind: DeclarationKind, id: &Id, key: &str) -> Option<String> {
        let heading = match kind {
            DeclarationKind::Attribute => "attribute",
            DeclarationKind::Figure => "figure",
            DeclarationKind::Rule => "rule",
            DeclarationKind::Item => "price",
            DeclarationKind::Notice => "notice",
            _ => return None,
        };
        let file = self.places.of_kind(kind, id)?.place.file;
        let entries = self.files.0.get(&(file, heading, id.to_string()))?;
        let text = value(Some(entries), key)?.as_text()?;
        Some(text.split_whitespace().collect::<Vec<_>>().join(" "))
    }
}

fn value<'n>(entries: Option<&'n [Entry]>, key: &str) -> Option<&'n Node> {
    let entry = entries?.iter().find(|entry| entry.key.value == key)?;
    Some(&entry.node)
}
