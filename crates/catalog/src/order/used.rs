//! The catalogs that an order uses, each with its price book and policy.
//!
//! Folders are named relative to the order. The catalog's folder lies in a library, the nearest folder upwards with
//! `library.toml`; book and policy lie in the same library, because they speak of what its catalogs say.
//!
//! Always holds: a catalog has the id by which the order names it; its book and policy are for it; the book is in the
//! currency of the order.
//! Cost: that of reading the folders. Findings about a folder stand where the order names it; findings in its files
//! stand there.
//! Source: MEANING, "Files".

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use astragal_model::{Catalog, Currency};

use super::UsedCatalog;
use super::raw::{RawCatalog, Report};
use crate::book::{LoadedBook, book_header, load_book};
use crate::finding::Severity;
use crate::library_files::{Library, LibraryPath, MemberKind};
use crate::load::{LoadedCatalog, load_catalog};
use crate::policy::{LoadedPolicy, load_policy, policy_header};
use crate::source::Sources;
use crate::tree::Spanned;

/// A catalog of the order, as far as it could be read.
#[derive(Debug, Default)]
pub(super) struct Loaded {
    pub(super) catalog: Option<LoadedCatalog>,
    pub(super) book: Option<LoadedBook>,
    pub(super) policy: Option<LoadedPolicy>,
    /// Whether the order names a policy.
    pub(super) has_policy: bool,
}

/// What loading needs to know of the order.
#[derive(Clone, Copy, Debug)]
pub(super) struct Around<'a> {
    /// The folder that the order is in.
    pub(super) folder: &'a Path,
    pub(super) currency: Option<Currency>,
    pub(super) report: Report<'a>,
}

impl Loaded {
    /// The catalog with its book and policy; `None` when one of them could not be read.
    pub(super) fn into_used(self) -> Option<UsedCatalog> {
        Some(UsedCatalog {
            catalog: self.catalog?,
            book: self.book?,
            policy: self.policy,
        })
    }
}

/// Reads the catalogs of an order, by the id that the order gives them.
pub(super) fn load<'a>(
    raw: &'a [RawCatalog],
    around: Around<'_>,
    sources: &mut Sources,
) -> BTreeMap<&'a str, Loaded> {
    let mut first: BTreeMap<&str, &RawCatalog> = BTreeMap::new();
    let mut all = BTreeMap::new();
    for catalog in raw {
        let id = &catalog.id;
        if let Some(earlier) = first.get(id.value.as_str()) {
            around.report.error_after(
                "DUPLICATE_ID",
                &id.span,
                format!("two catalogs of the order have the id `{}`", id.value),
                "keep one of the two",
                (&earlier.id.span, format!("`{}` stands here first", id.value)),
            );
            continue;
        }
        first.insert(&id.value, catalog);
        all.insert(id.value.as_str(), load_one(catalog, around, sources));
    }
    all
}

fn load_one(raw: &RawCatalog, around: Around<'_>, sources: &mut Sources) -> Loaded {
    let mut loaded = Loaded {
        has_policy: raw.policy.is_some(),
        ..Loaded::default()
    };
    let Some(folder) = &raw.folder else { return loaded };
    let Some((library, path)) = locate(folder, around) else {
        return loaded;
    };
    if !holds(&library, &path, MemberKind::Catalog, folder, around) {
        return loaded;
    }
    loaded.catalog = load_catalog(&library, &path, sources, around.report.findings);
    let Some(found) = &loaded.catalog else {
        return loaded;
    };
    let catalog = &found.catalog;
    let holds_id = &catalog.declarations().id;
    if holds_id.as_str() != raw.id.value {
        let message = format!(
            "folder `{}` holds catalog `{holds_id}`, not `{}`",
            folder.value, raw.id.value
        );
        let help = format!(
            "write `id = \"{holds_id}\"`, or name the folder of `{}`",
            raw.id.value
        );
        around
            .report
            .error("CATALOG_ID_DIFFERS", &raw.id.span, message, help);
    }
    if let Some(book) = &raw.book {
        loaded.book = load_the_book(book, &library, catalog, around, sources);
    }
    if let Some(policy) = &raw.policy {
        loaded.policy = load_the_policy(policy, &library, catalog, around, sources);
    }
    if let (Some(book), Some(policy)) = (&loaded.book, &loaded.policy) {
        let misfit = policy.rounding_misfit(&book.book, Severity::Error);
        around.report.findings.extend(misfit);
    }
    loaded
}

fn load_the_book(
    text: &Spanned<String>,
    library: &Library,
    catalog: &Catalog,
    around: Around<'_>,
    sources: &mut Sources,
) -> Option<LoadedBook> {
    let (report, id) = (around.report, &catalog.declarations().id);
    let path = locate_beside(text, MemberKind::Book, library, around)?;
    let header = book_header(library, &path, sources, report.findings)?;
    if header.catalog != *id {
        let message = format!(
            "price book `{}` is for catalog `{}`, not `{id}`",
            header.id, header.catalog
        );
        let help = format!("name the folder of a price book for `{id}`");
        report.error("BOOK_FOR_OTHER_CATALOG", &text.span, message, help);
        return None;
    }
    let loaded = load_book(library, &path, catalog, sources, report.findings)?;
    let currency = loaded.book.currency;
    if let Some(wanted) = around.currency.filter(|wanted| *wanted != currency) {
        let message = format!(
            "price book `{}` is in {currency}; the order is in {wanted}",
            header.id
        );
        let help = format!("name a price book in {wanted}; amounts are never converted");
        report.error("CURRENCY_DIFFERS", &text.span, message, help);
    }
    Some(loaded)
}

fn load_the_policy(
    text: &Spanned<String>,
    library: &Library,
    catalog: &Catalog,
    around: Around<'_>,
    sources: &mut Sources,
) -> Option<LoadedPolicy> {
    let (report, id) = (around.report, &catalog.declarations().id);
    let path = locate_beside(text, MemberKind::Policy, library, around)?;
    let header = policy_header(library, &path, sources, report.findings)?;
    if !header.catalogs.contains(id) {
        let message = format!("policy `{}` is not for catalog `{id}`", header.id);
        let help = format!("add `{id}` to `catalogs` of the policy, or leave `policy` out");
        report.error("POLICY_FOR_OTHER_CATALOG", &text.span, message, help);
        return None;
    }
    load_policy(library, &path, catalog, sources, report.findings)
}

/// The folder of a book or policy, which must be in the catalog's library.
fn locate_beside(
    text: &Spanned<String>,
    kind: MemberKind,
    library: &Library,
    around: Around<'_>,
) -> Option<LibraryPath> {
    let (found, path) = locate(text, around)?;
    if found.root() != library.root() {
        let message = format!(
            "{} `{}` lies in another library than its catalog",
            word(kind),
            text.value
        );
        let help = "move it into the library of the catalog; both are read together";
        around.report.error("OTHER_LIBRARY", &text.span, message, help);
        return None;
    }
    holds(library, &path, kind, text, around).then_some(path)
}

/// The library that a folder named by the order is in, and the folder in it.
fn locate(text: &Spanned<String>, around: Around<'_>) -> Option<(Library, LibraryPath)> {
    let written = &text.value;
    let wrong = |code, message: String, help: &str| {
        around.report.error(code, &text.span, message, help);
        None
    };
    let disk = match disk_path(written, around.folder) {
        Ok(disk) => disk,
        Err((code, message, help)) => return wrong(code, message, help),
    };
    let Ok(about) = std::fs::metadata(&disk) else {
        let help = "look at the spelling; the path starts from the folder of the order";
        return wrong(
            "FOLDER_NOT_THERE",
            format!("there is no folder `{written}`"),
            help,
        );
    };
    if !about.is_dir() {
        let message = format!("`{written}` is a file; expected a folder");
        return wrong("FILE_NOT_FOLDER", message, "name the folder it is in");
    }
    let Some(library) = Library::find(&disk, &crate::finding::Findings::new()) else {
        let message = format!("`{written}` is in no library: no folder above it holds `library.toml`");
        let help = "put a `library.toml` with `format = 1` into the folder of the library";
        return wrong("NO_LIBRARY", message, help);
    };
    let Some(path) = library.locate(&disk) else {
        let message = format!("`{written}` has a folder whose name is not UTF-8 above it");
        return wrong("NAME_NOT_UTF8", message, "rename it");
    };
    Some((library, path))
}

fn disk_path(written: &str, folder: &Path) -> Result<PathBuf, (&'static str, String, &'static str)> {
    let example = "name the folder from the order, like `../library/hinged`";
    let has_drive = matches!(written.as_bytes(), [letter, b':', ..] if letter.is_ascii_alphabetic());
    if written.trim().is_empty() {
        Err(("PATH_IS_EMPTY", "no folder is named".to_owned(), example))
    } else if written.contains('\\') {
        let help = "write `/` between folders, on every system";
        Err((
            "PATH_WITH_BACKSLASH",
            format!("`{written}` has a backslash"),
            help,
        ))
    } else if written.starts_with('/') || has_drive {
        let message = format!("`{written}` is an absolute path; expected one relative to the order");
        Err(("PATH_IS_ABSOLUTE", message, example))
    } else {
        Ok(folder.join(written))
    }
}

fn holds(
    library: &Library,
    path: &LibraryPath,
    kind: MemberKind,
    text: &Spanned<String>,
    around: Around<'_>,
) -> bool {
    let has = |kind: MemberKind| library.has_file(&path.join(kind.file_name()));
    if has(kind) {
        return true;
    }
    let message = format!("folder `{}` holds no `{}`", text.value, kind.file_name());
    let help = match MemberKind::ALL.into_iter().find(|other| has(*other)) {
        Some(other) => format!(
            "it holds a {}; name the folder of the {}",
            word(other),
            word(kind)
        ),
        None => format!("name the folder of the {}", word(kind)),
    };
    around.report.error("FILE_NOT_THERE", &text.span, message, help);
    false
}

fn word(kind: MemberKind) -> &'static str {
    match kind {
        MemberKind::Catalog => "catalog",
        MemberKind::Book => "price book",
        MemberKind::Policy => "policy",
    }
}
