//! The library that is served: read and checked once, compiled, and shared by all requests.
//!
//! Always holds: it has no errors. Later a stage will point to one of several revisions; today there is one of each.
//! Cost: that of `astragal check`, examples proved, and a compile a catalog.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use astragal_catalog::check::{CheckReport, check_library};
use astragal_model::{Book, Id, Policy};

use crate::exit::Exit;
use crate::output::{self, write_findings};
use crate::serve::product::Product;

/// Every catalog that is served, by id.
pub(super) struct Library {
    products: BTreeMap<String, Arc<Product>>,
}

impl Library {
    /// Reads, checks and compiles. What is wrong is written as `astragal check` writes it.
    pub(super) fn load(folder: &Path) -> Result<Self, Exit> {
        let report = check_library(folder);
        if !report.findings.is_empty() {
            let closing = if report.has_errors() {
                "; nothing is served"
            } else {
                ""
            };
            write_findings(&report.findings, &report.sources, closing);
        }
        if report.has_errors() {
            return Err(Exit::Unreadable);
        }
        Self::of(report).map_err(|message| {
            output::write_message(&format!("error: {message}\n"));
            Exit::Unreadable
        })
    }

    fn of(report: CheckReport) -> Result<Self, String> {
        let mut products = BTreeMap::new();
        let count = report.catalogs.len();
        for (before, loaded) in report.catalogs.into_iter().enumerate() {
            let id = loaded.catalog.declarations().id.clone();
            // To compile takes a while, in which nothing else is to be seen.
            let number = before + 1;
            output::write_message(&format!("compiling catalog `{id}`, {number} of {count}\n"));
            let books = report.books.iter().map(|checked| &checked.book);
            let books: Vec<Book> = books.filter(|book| book.catalog == id).cloned().collect();
            let is_for = |(catalog, _): &&(Id, Policy)| *catalog == id;
            let policies = report.policies.iter().filter(is_for);
            let policies: Vec<Policy> = policies.map(|(_, policy)| policy.clone()).collect();
            let product = Product::new(loaded.catalog, books, policies)?;
            products.insert(id.to_string(), Arc::new(product));
        }
        Ok(Self { products })
    }

    /// The catalog with this id.
    pub(super) fn product(&self, id: &str) -> Option<&Arc<Product>> {
        self.products.get(id)
    }

    /// All catalogs, by id.
    pub(super) fn products(&self) -> impl Iterator<Item = &Product> {
        self.products.values().map(AsRef::as_ref)
    }
}
