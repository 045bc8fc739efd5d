//! Price books: a folder with `book.toml` and CSV files becomes the amounts of one catalog.
//!
//! A book for the catalog `hinged` with the amounts file
//!
//! ```text
//! item       , amount
//! screen     , 18.50
//! dark-share , 12 %
//! ```
//!
//! gives two items their amounts; items by option have sheets, items by size have grids.
//!
//! Always holds of a [`LoadedBook`]: every item of the catalog has an amount, a sheet or a grid of the right shape;
//! every entry belongs to an item; no two rows of a sheet hold for one unit; the unit of rounding is a whole number of
//! minor units. Where that is not so, findings say why and there is no book.
//! Cost: O(cells), and what comparing the rows of sheets takes.
//! Source: docs/reference.md; MEANING, "Tables and grids" and "Money".

pub(crate) mod amount_text;
mod amounts;
mod grid;
mod header;
mod options;
mod options_left_out;
mod raw;
mod tail;
mod together;

use std::collections::BTreeMap;

use astragal_model::{Book, Catalog, Id};

use amount_text::amount_limit;
pub(crate) use header::placed_round_to;
use raw::RawBook;
pub(crate) use tail::read_tail;

use crate::declare::Fields;
use crate::finding::Findings;
use crate::library_files::{Library, LibraryPath, MemberKind};
use crate::sheet::Sheet;
use crate::source::Sources;
use crate::tree;
use crate::typed::PlacedText;

/// A price book that was read whole.
#[derive(Clone, Debug)]
pub struct LoadedBook {
    /// The amounts.
    pub book: Book,
}

/// Which book it is, and for which catalog.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BookHeader {
    /// The id of the book.
    pub id: Id,
    /// The id of the catalog for which it gives amounts.
    pub catalog: Id,
}

/// Reads the price book of a folder against its catalog.
///
/// All findings are made in one go. `None` means that one of them is an error: there is no partial book.
pub fn load_book(
    library: &Library,
    folder: &LibraryPath,
    catalog: &Catalog,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<LoadedBook> {
    let own = Findings::new();
    let book = read_book(library, folder, catalog, sources, &own);
    let is_fine = !own.has_errors();
    findings.extend(own.into_sorted(sources));
    book.filter(|_| is_fine).map(|book| LoadedBook { book })
}

/// Reads only which book a folder holds, and for which catalog.
///
/// What is wrong with the rest of the file is found by [`load_book`] and not said here.
pub fn book_header(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<BookHeader> {
    let file = folder.join(MemberKind::Book.file_name());
    let source = library.read(sources, &file, None, findings)?;
    let root = tree::read(sources, source, findings)?;
    let unsaid = Findings::new();
    let fields = Fields::new(&root, source, "price book file", &file, sources, &unsaid);
    let header = fields.and_then(|mut fields| header::book_of(&mut fields));
    if header.is_none() {
        findings.extend(unsaid.into_sorted(sources));
    }
    let header = header?;
    Some(BookHeader {
        id: header.head.id,
        catalog: Id::new(&header.catalog.text),
    })
}

fn read_book(
    library: &Library,
    folder: &LibraryPath,
    catalog: &Catalog,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<Book> {
    let home = folder.join(MemberKind::Book.file_name());
    let file = library.read(sources, &home, None, findings)?;
    let root = tree::read(sources, file, findings)?;
    let raw = RawBook::read(
        Fields::new(&root, file, "price book file", &home, sources, findings)?,
        &home,
    );
    if !together::is_for(&raw, catalog, findings) {
        return None;
    }
    let mut read = Reading {
        library,
        home: &home,
        catalog,
        sources,
        findings,
    };
    let amounts = raw.amounts.as_ref().map(|path| amounts::read(&mut read, path));
    let sheets: BTreeMap<Id, _> = raw
        .sheets
        .iter()
        .filter_map(|sheet| Some((Id::new(&sheet.item.text), options::read(&mut read, sheet)?)))
        .collect();
    let grids: BTreeMap<Id, _> = raw
        .grids
        .iter()
        .filter_map(|grid| Some((grid.head.id.clone(), grid::read(&mut read, grid)?)))
        .collect();
    let amounts = amounts.unwrap_or_else(|| Some(BTreeMap::new()));
    together::nothing_is_left_out(&raw, catalog, amounts.as_ref(), findings);
    let header = raw.header?;
    let book = Book {
        id: header.head.id,
        label: header.label,
        catalog: Id::new(&header.catalog.text),
        currency: header.currency?,
        round_to: header.round_to?,
        from: header.from,
        until: header.until,
        amounts: amounts?
            .into_iter()
            .map(|(id, amount)| Some((id, amount?)))
            .collect::<Option<_>>()?,
        sheets,
        grids,
        tail: raw.tail?,
    };
    options_left_out::warn(&raw.sheets, &book, catalog, findings);
    Some(book)
}

/// What reading the sheets of a book needs.
struct Reading<'a> {
    library: &'a Library,
    /// The file that names the sheets.
    home: &'a LibraryPath,
    catalog: &'a Catalog,
    sources: &'a mut Sources,
    findings: &'a Findings,
}

impl<'a> Reading<'a> {
    /// The sheet that a text of the book names.
    fn sheet(&mut self, path: &PlacedText) -> Option<Sheet> {
        let file = self
            .library
            .resolve_include(self.home, &path.text, &path.place, self.findings)?;
        let file = self
            .library
            .read(self.sources, &file, Some(&path.place), self.findings)?;
        Sheet::read(self.sources, file, self.findings)
    }
}

#[cfg(test)]
mod tests;
