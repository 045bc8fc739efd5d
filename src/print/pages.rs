//! What the pages say, as plain data: an option chart for each catalog, price pages for each book.
//!
//! The catalog is read once into these; the writers of HTML and CSV see nothing else, so that both say the same.
//! A condition stands here twice: in words, made from what the catalog means, and as its author wrote it, so that
//! a reader can compare what was written with what was understood.
//!
//! Always holds: every attribute, option, rule, figure, notice, price item and amount stands here once; what is `per` part
//! stands once for all its parts.

mod chart;
mod prices;

use astragal_model::Id;

pub(crate) use chart::*;
pub(crate) use prices::*;

/// Everything that is printed.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Pages {
    /// What a person calls the library.
    pub(crate) library: String,
    /// One chart a catalog.
    pub(crate) charts: Vec<Chart>,
    /// The price pages, one set a book.
    pub(crate) prices: Vec<PricePages>,
}

/// A revision, in full and as a person reads it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Revised {
    /// All 64 digits.
    pub(crate) full: String,
    /// The first digits.
    pub(crate) short: String,
}

/// The parts of what is `per` part.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Parts {
    /// What sort of part (`sash`).
    pub(crate) kind: Id,
    /// Each with the condition under which a unit has it, in words.
    pub(crate) parts: Vec<(String, Option<String>)>,
}

/// A condition or formula, twice.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Condition {
    /// In words, from what was understood.
    pub(crate) words: String,
    /// As it stands in the file.
    pub(crate) written: Option<String>,
}

/// A message with places for values.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Message {
    /// Its pieces.
    pub(crate) pieces: Vec<MessagePiece>,
    /// As its author wrote it.
    pub(crate) written: String,
}

/// One piece of a message.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum MessagePiece {
    /// Text as it stands.
    Text(String),
    /// Where a value comes, by what it is a value of.
    Place(String),
}
