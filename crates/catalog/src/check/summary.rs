//! What a library holds, in short.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use astragal_model::{Book, Catalog, Date, Definition, Id, Policy, Requirement, Revision, Row, Table};

use crate::library_files::LibraryPath;

/// What a library holds.
#[derive(Clone, Debug, Default)]
pub struct Summary {
    /// The id and label of the library.
    pub library: Option<(Id, String)>,
    /// The catalogs that were checked and have no errors.
    pub catalogs: Vec<CatalogSummary>,
    /// The price books.
    pub books: Vec<BookSummary>,
    /// The dealer policies.
    pub policies: Vec<PolicySummary>,
}

/// A catalog in short.
#[derive(Clone, Debug)]
pub struct CatalogSummary {
    /// Its id.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Its folder in the library.
    pub folder: LibraryPath,
    /// Its meaning, named by its hash.
    pub revision: Revision,
    /// How much of each thing there is.
    pub counts: Counts,
}

/// How much of each thing a catalog has. What is `per` part counts once.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Counts {
    /// Attributes.
    pub attributes: usize,
    /// Options of all attributes.
    pub options: usize,
    /// Parts.
    pub parts: usize,
    /// Measures.
    pub measures: usize,
    /// Site facts.
    pub facts: usize,
    /// Checks of what measures and facts must agree on.
    pub site_checks: usize,
    /// Figures.
    pub figures: usize,
    /// Rules, by authority.
    pub rules: BTreeMap<Id, usize>,
    /// Rules over a room.
    pub room_rules: usize,
    /// Tables of rules and figures.
    pub tables: usize,
    /// Rows of these tables.
    pub rows: usize,
    /// Price items.
    pub items: usize,
    /// Notices.
    pub notices: usize,
    /// Examples.
    pub examples: usize,
}

/// A price book in short.
#[derive(Clone, Debug)]
pub struct BookSummary {
    /// Its id.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Its folder in the library.
    pub folder: LibraryPath,
    /// The catalog that it is for.
    pub catalog: Id,
    /// The code of its currency.
    pub currency: &'static str,
    /// The first day on which it is in force.
    pub from: Option<Date>,
    /// The last day on which it is in force.
    pub until: Option<Date>,
    /// Its meaning, named by its hash.
    pub revision: Revision,
}

/// A dealer policy in short.
#[derive(Clone, Debug)]
pub struct PolicySummary {
    /// Its id.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Its folder in the library.
    pub folder: LibraryPath,
    /// Its meaning for each of its catalogs, named by its hash.
    pub revisions: Vec<(Id, Revision)>,
}

impl CatalogSummary {
    pub(super) fn of(catalog: &Catalog, folder: &LibraryPath) -> Self {
        let declarations = catalog.declarations();
        Self {
            id: declarations.id.clone(),
            label: declarations.label.clone(),
            folder: folder.clone(),
            revision: catalog.revision(),
            counts: Counts::of(catalog),
        }
    }
}

impl Counts {
    /// Counts what a catalog has.
    #[must_use]
    pub fn of(catalog: &Catalog) -> Self {
        let declarations = catalog.declarations();
        let distinct = |ids: &mut dyn Iterator<Item = &Id>| ids.collect::<BTreeSet<&Id>>().len();
        let mut options: BTreeMap<&Id, usize> = BTreeMap::new();
        for attribute in declarations.attributes.values() {
            options.insert(&attribute.id, attribute.options.len());
        }
        let mut rules: BTreeMap<Id, usize> = BTreeMap::new();
        let authority_of: BTreeMap<&Id, &Id> = declarations
            .rules
            .iter()
            .map(|rule| (&rule.id, &rule.authority))
            .collect();
        for authority in authority_of.into_values() {
            *rules.entry(authority.clone()).or_default() += 1;
        }
        let tables = tables(catalog);
        Self {
            attributes: options.len(),
            options: options.values().sum(),
            parts: declarations.parts.len(),
            measures: declarations.measures.len(),
            facts: declarations.facts.len(),
            site_checks: declarations.site_checks.len(),
            figures: distinct(&mut declarations.figures.values().map(|it| &it.id)),
            rules,
            room_rules: declarations.room_rules.len(),
            tables: tables.len(),
            rows: tables.values().map(|rows| rows.len()).sum(),
            items: distinct(&mut declarations.items.values().map(|it| &it.id)),
            notices: distinct(&mut declarations.notices.iter().map(|it| &it.id)),
            examples: declarations.examples.len(),
        }
    }
}

/// The rows of each rule and figure by table.
fn tables(catalog: &Catalog) -> BTreeMap<(bool, &Id), &Arc<Vec<Row>>> {
    let declarations = catalog.declarations();
    let of_rules = declarations
        .rules
        .iter()
        .filter_map(|rule| match &rule.requirement {
            Requirement::Allowed(table) | Requirement::Forbidden(table) => {
                Some(((true, &rule.id), rows(table)))
            }
            Requirement::Expression(_) => None,
        });
    let of_figures = declarations
        .figures
        .values()
        .filter_map(|figure| match &figure.definition {
            Definition::Table(table, _) => Some(((false, &figure.id), rows(table))),
            Definition::Formula(_) => None,
        });
    of_rules.chain(of_figures).collect()
}

fn rows(table: &Table) -> &Arc<Vec<Row>> {
    &table.rows
}

impl BookSummary {
    pub(super) fn of(book: &Book, folder: &LibraryPath) -> Self {
        Self {
            id: book.id.clone(),
            label: book.label.clone(),
            folder: folder.clone(),
            catalog: book.catalog.clone(),
            currency: book.currency.code(),
            from: book.from,
            until: book.until,
            revision: book.revision(),
        }
    }
}

impl PolicySummary {
    pub(super) fn new(id: &Id, folder: &LibraryPath) -> Self {
        Self {
            id: id.clone(),
            label: String::new(),
            folder: folder.clone(),
            revisions: Vec::new(),
        }
    }

    pub(super) fn add(&mut self, policy: &Policy, catalog: &Catalog) {
        self.label.clone_from(&policy.terms.label);
        let revision = Revision::of_policy(&policy.terms, catalog);
        self.revisions.push((catalog.declarations().id.clone(), revision));
    }
}
