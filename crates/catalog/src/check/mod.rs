//! Checks a library: reads all that is in it, proves every example, and says in short what is there.
//!
//! A whole library, or one catalog, book or policy of it with what it needs: a book needs its catalog, a policy its
//! catalogs, an example with a total its book.
//!
//! Always holds: findings are all returned at once, sorted, each once; nothing is left unchecked without a finding that
//! says so.
//! Cost: that of reading; one judgement and one drawing an example.

mod checked_book;
mod drawings;
mod examples;
mod explain;
mod peek;
mod run;
mod summary;

use std::path::Path;

use astragal_model::{Id, Policy};

pub use checked_book::CheckedBook;
pub use explain::{ExampleLines, ROWS_SHOWN, RuleExplanation, SourceLines};
pub use summary::{BookSummary, CatalogSummary, Counts, PolicySummary, Summary};

use crate::declare::library_header;
use crate::finding::{Finding, Findings};
use crate::library_files::Library;
use crate::load::LoadedCatalog;
use crate::source::Sources;
use run::Checked;

/// What a check found.
#[derive(Debug)]
pub struct CheckReport {
    /// Everything that is wrong, or probably wrong, sorted.
    pub findings: Vec<Finding>,
    /// The files that were read; places of findings lie in them.
    pub sources: Sources,
    /// What is there. What has errors is not in it.
    pub summary: Summary,
    /// The catalogs that were checked and have no errors.
    pub catalogs: Vec<LoadedCatalog>,
    /// The price books that were checked and have no errors, in order of their folders.
    pub books: Vec<CheckedBook>,
    /// The policies that were checked and have no errors, each with the id of the catalog against which it was read.
    pub policies: Vec<(Id, Policy)>,
}

impl CheckReport {
    /// Whether something is wrong, warnings apart.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.findings.iter().any(Finding::is_error)
    }
}

/// Checks the library, or the catalog, book or policy of one, at a path.
///
/// The path is a folder, or a file in one. A folder that holds no catalog, book or policy itself stands for all
/// that are below it.
///
/// # Examples
/// A library of one catalog whose only example does not come out:
/// ```
/// use astragal_catalog::check_library;
///
/// let folder = tempfile::tempdir()?;
/// std::fs::write(folder.path().join("library.toml"), "format = 1\n[library]\nid = \"small\"\nlabel = \"Small\"\n")?;
/// std::fs::create_dir(folder.path().join("hinged"))?;
/// std::fs::write(folder.path().join("hinged/catalog.toml"), r#"
/// format = 1
/// [catalog]
/// id = "hinged"
/// label = "Hinged windows"
/// length = { unit = "in" }
/// [[attribute]]
/// id = "exterior"
/// label = "Exterior colour"
/// options = [{ id = "white" }, { id = "grey" }]
/// standard = "white"
/// [[rule]]
/// id = "no-grey"
/// require = 'exterior != "grey"'
/// message = "Grey is not made."
/// [[example]]
/// id = "grey"
/// picks = [{ attribute = "exterior", option = "white" }]
/// date = 2026-11-25
/// breaks = ["no-grey"]
/// "#)?;
/// let report = check_library(folder.path());
/// assert!(report.has_errors());
/// assert_eq!(report.findings[0].message(), "example `grey` should break `no-grey`, and breaks nothing");
/// assert_eq!(report.summary.catalogs[0].counts.options, 2);
/// # Ok::<(), std::io::Error>(())
/// ```
/// A folder that is not there:
/// ```
/// let report = astragal_catalog::check_library(std::path::Path::new("no/such/library"));
/// assert_eq!(report.findings[0].code(), "NOT_THERE");
/// ```
#[must_use]
pub fn check_library(path: &Path) -> CheckReport {
    let findings = Findings::new();
    let mut sources = Sources::new();
    let mut summary = Summary::default();
    let checked = match Library::find(path, &findings) {
        Some(library) => {
            summary.library = library_header(&library, &mut sources, &findings);
            run::check_members(&library, path, sources, &findings, &mut summary)
        }
        None => Checked::default(),
    };
    CheckReport {
        findings: findings.into_sorted(&checked.sources),
        sources: checked.sources,
        summary,
        catalogs: checked.catalogs,
        books: checked.books,
        policies: checked.policies,
    }
}

#[cfg(test)]
mod tests;
