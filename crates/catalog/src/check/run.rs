//! A check that is under way: the members of a library in an order in which each finds what it needs.

mod across;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use astragal_model::{Book, Catalog, Id, Policy};

use super::peek::{Peek, peek};
use super::{BookSummary, CatalogSummary, CheckedBook, PolicySummary, Summary, drawings, examples};
use crate::book::{book_header, load_book};
use crate::finding::{Finding, Findings, Place, Severity};
use crate::library_files::{Library, LibraryPath, Member, MemberKind};
use crate::load::{LoadedCatalog, load_catalog};
use crate::policy::{LoadedPolicy, load_policy, policy_header};
use crate::source::Sources;

/// What checking the members of a library leaves.
#[derive(Default)]
pub(super) struct Checked {
    pub(super) sources: Sources,
    pub(super) catalogs: Vec<LoadedCatalog>,
    pub(super) books: Vec<CheckedBook>,
    /// Each with the id of the catalog against which it was read.
    pub(super) policies: Vec<(Id, Policy)>,
}

/// Checks the members of `library` that lie at `path`, with what they need; what is there goes into `summary`.
pub(super) fn check_members(
    library: &Library,
    path: &Path,
    sources: Sources,
    findings: &Findings,
    summary: &mut Summary,
) -> Checked {
    let mut check = Check::new(library, sources, findings);
    check.run(path, summary);
    let policies = check.policies.drain(..);
    Checked {
        policies: policies.map(|(id, loaded)| (id, loaded.policy)).collect(),
        books: std::mem::take(&mut check.checked_books),
        catalogs: check.checked(),
        sources: check.sources,
    }
}

/// A check that is under way.
struct Check<'a> {
    library: &'a Library,
    findings: &'a Findings,
    sources: Sources,
    members: Vec<(Member, Peek)>,
    catalogs: BTreeMap<LibraryPath, Option<LoadedCatalog>>,
    books: BTreeMap<LibraryPath, Option<Book>>,
    selected: BTreeSet<LibraryPath>,
    checked_books: Vec<CheckedBook>,
    /// Each with the id of the catalog against which it was read.
    policies: Vec<(Id, LoadedPolicy)>,
}

impl<'a> Check<'a> {
    fn new(library: &'a Library, mut sources: Sources, findings: &'a Findings) -> Self {
        let members: Vec<(Member, Peek)> = library
            .members(findings)
            .into_iter()
            .map(|member| {
                let peek = peek(library, &member, &mut sources);
                (member, peek)
            })
            .collect();
        Self {
            library,
            findings,
            sources,
            members,
            catalogs: BTreeMap::new(),
            books: BTreeMap::new(),
            selected: BTreeSet::new(),
            checked_books: Vec::new(),
            policies: Vec::new(),
        }
    }

    fn run(&mut self, path: &Path, summary: &mut Summary) {
        self.ids_are_unique();
        let selected = self.select(path);
        let is_whole = selected.len() == self.members.len();
        self.selected = selected
            .iter()
            .filter(|(member, _)| member.kind == MemberKind::Catalog)
            .map(|(member, _)| member.folder.clone())
            .collect();
        for (member, peek) in &selected {
            match member.kind {
                MemberKind::Catalog => self.catalog(&member.folder, summary),
                MemberKind::Book => self.book(&member.folder, peek, summary),
                MemberKind::Policy => self.policy(&member.folder, peek, summary),
            }
        }
        self.roundings_fit();
        self.lists_are_used(is_whole);
    }

    /// A policy is not bound to a currency, so that beside a book which no order may ever join to it this is a warning.
    fn roundings_fit(&self) {
        for (catalog, policy) in &self.policies {
            let books = self.checked_books.iter().map(|checked| &checked.book);
            for book in books.filter(|book| book.catalog == *catalog) {
                self.findings
                    .extend(policy.rounding_misfit(book, Severity::Warning));
            }
        }
    }

    /// The members that the path stands for.
    fn select(&self, path: &Path) -> Vec<(Member, Peek)> {
        let folder = if path.is_file() {
            path.parent().unwrap_or(path)
        } else {
            path
        };
        // A file that is named alone, `catalog.toml`, is in the folder where the program runs.
        let folder = if folder.as_os_str().is_empty() {
            Path::new(".")
        } else {
            folder
        };
        let wanted = self.library.locate(folder);
        let is_at = |member: &&(Member, Peek)| wanted.as_ref() == Some(&member.0.folder);
        let is_below = |member: &&(Member, Peek)| {
            wanted.as_ref().is_some_and(|wanted| {
                let below = member.0.folder.as_str().strip_prefix(wanted.as_str());
                wanted.as_str().is_empty()
                    || below.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
            })
        };
        let own: Vec<_> = self.members.iter().filter(is_at).cloned().collect();
        let is_root = wanted.as_ref().is_some_and(|wanted| wanted.as_str().is_empty());
        if !own.is_empty() && !is_root {
            return own;
        }
        let below: Vec<_> = self.members.iter().filter(is_below).cloned().collect();
        if below.is_empty() {
            let shown = path.display();
            let message = format!("there is no catalog, price book or policy in `{shown}`");
            let help = "a catalog is a folder with `catalog.toml`, a book one with `book.toml`, a policy one with `policy.toml`";
            self.findings
                .push(Finding::error("NOTHING_TO_CHECK", message).with_help(help));
        }
        below
    }

    /// The folder of the catalog or book with this id.
    fn folder_of(&self, kind: MemberKind, id: &Id) -> Option<(LibraryPath, Peek)> {
        self.members
            .iter()
            .find(|(member, peek)| {
                member.kind == kind && peek.id.as_ref().is_some_and(|(found, _)| found == id)
            })
            .map(|(member, peek)| (member.folder.clone(), peek.clone()))
    }

    /// Whether some catalog or book does not even say its id.
    fn has_unreadable(&self, kind: MemberKind) -> bool {
        self.members
            .iter()
            .any(|(member, peek)| member.kind == kind && peek.id.is_none())
    }

    /// Makes sure that the catalog of a folder is loaded, if it can be.
    fn need_catalog(&mut self, folder: &LibraryPath) {
        if !self.catalogs.contains_key(folder) {
            let loaded = load_catalog(self.library, folder, &mut self.sources, self.findings);
            self.catalogs.insert(folder.clone(), loaded);
        }
    }

    fn loaded(&self, folder: &LibraryPath) -> Option<&LoadedCatalog> {
        self.catalogs.get(folder)?.as_ref()
    }

    /// The folder of a catalog that a book or policy names; a finding when there is none, or it has errors.
    fn catalog_for(&mut self, id: &Id, place: &Place, who: &str) -> Option<LibraryPath> {
        let Some((folder, _)) = self.folder_of(MemberKind::Catalog, id) else {
            if self.has_unreadable(MemberKind::Catalog) {
                let message = format!("{who} is not checked: `{id}` may be a catalog that cannot be read");
                self.findings.push(
                    Finding::warning("NOT_CHECKED", message)
                        .at(place.clone())
                        .with_help("put the catalog right and check again"),
                );
                return None;
            }
            let known: Vec<&str> = self
                .members
                .iter()
                .filter(|(member, _)| member.kind == MemberKind::Catalog)
                .filter_map(|(_, peek)| peek.id.as_ref().map(|(id, _)| id.as_str()))
                .collect();
            let help = match crate::nearest::nearest(id.as_str(), known.iter().copied()) {
                Some(near) => format!("did you mean `{near}`?"),
                None if known.is_empty() => "a catalog is a folder with `catalog.toml`".to_owned(),
                None => format!(
                    "catalogs are {}",
                    crate::nearest::quoted_list(known.iter().copied())
                ),
            };
            let message = format!("the library has no catalog `{id}`");
            self.findings.push(
                Finding::error("UNKNOWN_CATALOG", message)
                    .at(place.clone())
                    .with_help(help),
            );
            return None;
        };
        self.need_catalog(&folder);
        if self.loaded(&folder).is_some() {
            return Some(folder);
        }
        let message = format!("{who} is not checked against catalog `{id}`, which has errors");
        self.findings.push(
            Finding::warning("NOT_CHECKED", message)
                .at(place.clone())
                .with_help("put the catalog right and check again"),
        );
        None
    }

    fn catalog(&mut self, folder: &LibraryPath, summary: &mut Summary) {
        self.need_catalog(folder);
        let Some(loaded) = self.loaded(folder) else { return };
        let catalog = loaded.catalog.clone();
        let places = loaded.places.clone();
        summary.catalogs.push(CatalogSummary::of(&catalog, folder));
        let id = catalog.declarations().id.clone();
        let mut books: BTreeMap<Id, Book> = BTreeMap::new();
        for example in &catalog.declarations().examples {
            let Some(total) = &example.total else { continue };
            let place = places.book_of_example(&example.id);
            if let Some(book) = self.book_of(&total.book, &id, &catalog, place) {
                books.insert(total.book.clone(), book);
            }
        }
        examples::prove(&catalog, &places, &books, self.findings);
        drawings::prove(&catalog, &places, self.findings);
    }

    /// The book of an example; a finding when there is none or it is for another catalog.
    fn book_of(
        &mut self,
        book: &Id,
        catalog_id: &Id,
        catalog: &Catalog,
        place: Option<&Place>,
    ) -> Option<Book> {
        let found = self.folder_of(MemberKind::Book, book);
        let not_proved = |why: String| {
            let message = format!("the total is not proved: {why}");
            self.findings.push(
                Finding::warning("NOT_CHECKED", message)
                    .at_if_known(place.cloned())
                    .with_help("put the book right and check again"),
            );
        };
        let wrong = match &found {
            None if self.has_unreadable(MemberKind::Book) => {
                not_proved(format!("`{book}` may be a price book that cannot be read"));
                None
            }
            None => Some(format!("the library has no price book `{book}`")),
            Some((_, peek)) => match peek.catalogs.first() {
                // The book has a finding for that already.
                Some((other, _)) if self.folder_of(MemberKind::Catalog, other).is_none() => {
                    not_proved(format!("price book `{book}` is for a catalog that is not there"));
                    return None;
                }
                Some((other, _)) if other != catalog_id => Some(format!(
                    "price book `{book}` is for catalog `{other}`, not for `{catalog_id}`"
                )),
                _ => None,
            },
        };
        if let Some(message) = wrong {
            let help = format!("name a price book whose catalog is `{catalog_id}`");
            self.findings.push(
                Finding::error("UNKNOWN_BOOK", message)
                    .at_if_known(place.cloned())
                    .with_help(help),
            );
            return None;
        }
        let (folder, _) = found?;
        let loaded = self.need_book(&folder, catalog);
        if loaded.is_none() {
            let message = format!("the total is not proved: price book `{book}` has errors");
            self.findings.push(
                Finding::warning("NOT_CHECKED", message)
                    .at_if_known(place.cloned())
                    .with_help("put the book right and check again"),
            );
        }
        loaded
    }

    fn need_book(&mut self, folder: &LibraryPath, catalog: &Catalog) -> Option<Book> {
        if !self.books.contains_key(folder) {
            let loaded = load_book(self.library, folder, catalog, &mut self.sources, self.findings);
            self.books
                .insert(folder.clone(), loaded.map(|loaded| loaded.book));
        }
        self.books.get(folder)?.clone()
    }

    fn book(&mut self, folder: &LibraryPath, peek: &Peek, summary: &mut Summary) {
        let (Some((id, _)), Some((catalog_id, place))) = (&peek.id, peek.catalogs.first()) else {
            let _ = book_header(self.library, folder, &mut self.sources, self.findings);
            return;
        };
        let Some(at) = self.catalog_for(catalog_id, place, &format!("price book `{id}`")) else {
            return;
        };
        let Some(catalog) = self.loaded(&at).cloned() else {
            return;
        };
        if let Some(book) = self.need_book(folder, &catalog.catalog) {
            summary.books.push(BookSummary::of(&book, folder));
            self.checked_books.push(CheckedBook { book, catalog });
        }
    }

    fn policy(&mut self, folder: &LibraryPath, peek: &Peek, summary: &mut Summary) {
        let Some((id, _)) = peek.id.as_ref().filter(|_| !peek.catalogs.is_empty()) else {
            let header = policy_header(self.library, folder, &mut self.sources, self.findings);
            if let Some(header) = header {
                let message = format!("policy `{}` is for no catalog", header.id);
                self.findings.push(
                    Finding::error("NO_CATALOGS", message)
                        .at_if_known(peek.id.as_ref().map(|(_, place)| place.clone()))
                        .with_help("name at least one in `catalogs`"),
                );
            }
            return;
        };
        let mut entry = PolicySummary::new(id, folder);
        for (catalog_id, place) in &peek.catalogs {
            let Some(at) = self.catalog_for(catalog_id, place, &format!("policy `{id}`")) else {
                continue;
            };
            let Some(catalog) = self.loaded(&at).map(|loaded| loaded.catalog.clone()) else {
                continue;
            };
            let loaded = load_policy(self.library, folder, &catalog, &mut self.sources, self.findings);
            if let Some(loaded) = loaded {
                entry.add(&loaded.policy, &catalog);
                self.policies.push((catalog.declarations().id.clone(), loaded));
            }
        }
        if !entry.revisions.is_empty() {
            summary.policies.push(entry);
        }
    }

    /// The catalogs that were asked for, in order of their folders.
    fn checked(&mut self) -> Vec<LoadedCatalog> {
        let selected = std::mem::take(&mut self.selected);
        selected
            .iter()
            .filter_map(|folder| self.catalogs.remove(folder).flatten())
            .collect()
    }
}
