//! A price book that was checked, with the catalog that gives its amounts their meaning.

use astragal_model::Book;

use crate::load::LoadedCatalog;

/// A price book and the catalog for which it gives amounts.
#[derive(Clone, Debug)]
pub struct CheckedBook {
    /// The book.
    pub book: Book,
    /// Its catalog, whether or not it was asked for.
    pub catalog: LoadedCatalog,
}
