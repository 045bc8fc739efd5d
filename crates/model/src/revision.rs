//! Names what a catalog, a price book or a dealer policy says by its hash.
//!
//! A [`Revision`] is the SHA-256 of a canonical encoding of the resolved model, not of the files it was read from.
//! White space, comments, the order of keys and how the files are cut up do not count. What counts:
//!
//! - Every field of the data: labels, messages and examples too.
//! - Order, of these alone: parts (the standard of a later part is that of the first existing one), attributes,
//!   options and the values of an enumerated fact, the attributes of a `By` item and the axes of a grid item (a book
//!   gives its amounts in that order), tail steps, rows under `first`, and the layouts, grilles and screens of a drawing.
//!   The order of measures, facts, site checks, figures,
//!   rules, room rules, items, notices, authorities, examples, columns, intervals of a cell, rows under anything but `first`,
//!   rows of a sheet, and picks of different attributes does not count.
//! - Numbers by value: `36`, `36.0` and `72/2` are one. Lengths are inches however they were written.
//! - Expressions by tree: `a && b` is not `b && a`.
//!
//! Things are named as their author names them, by id and part, never by position. So the catalogs "measures
//! `width`, `height`; rule `width > 36`" and "measures `height`, `width`; rule `width > 36`" have one revision.
//!
//! INVARIANT: two models that differ in something that counts are encoded to different bytes. Every field follows
//! the one before it at a place that the bytes before it determine: a choice begins with a word that ends in a zero
//! byte, a text and a list begin with their length, a tree gives the number of children before them. What has no order is
//! encoded element by element; the SHA-256 of each element stands for it, and those are sorted. This holds for models
//! whose names are unique, and whose tables under `only` and sheets have no two rows that meet: what reads files
//! refuses others.
//!
//! Cost: linear in the model but for the sorting; 32 bytes of memory for each element of the longest list without
//! order. Expressions are walked without recursion.
//!
//! Source: FIPS 180-4, Secure Hash Standard. The encoding is ours; its versions are the first words of what is hashed.

mod choices;
mod drawing;
mod encoder;
mod examples;
mod expressions;
mod prices;
mod rules;
#[cfg(test)]
mod tests;

use std::fmt;

use crate::catalog::Catalog;
use crate::policy::PolicyTerms;
use crate::price::Book;
use encoder::{Encode, Encoder};

/// How many hexadecimal digits [`Revision::short`] shows.
const SHORT_DIGITS: usize = 12;

/// The meaning of a catalog, a price book or a dealer policy, named by its hash.
///
/// It prints as 64 lower-case hexadecimal digits.
///
/// # Examples
/// The label of a catalog counts:
/// ```
/// use astragal_model::{Catalog, Declarations, Revision};
/// let plain = Catalog::new(Declarations::empty("hinged"))?.revision();
/// let mut declarations = Declarations::empty("hinged");
/// declarations.label = "Hinged windows".to_owned();
/// assert_ne!(Catalog::new(declarations)?.revision(), plain);
/// # Ok::<(), astragal_model::CatalogError>(())
/// ```
/// What is printed can be read again, and nothing else can:
/// ```
/// use astragal_model::{Catalog, Declarations, Revision};
/// let revision = Catalog::new(Declarations::empty("hinged"))?.revision();
/// assert_eq!(Revision::from_hex(&revision.to_string()), Some(revision));
/// assert_eq!(Revision::from_hex(&revision.short()), None);
/// # Ok::<(), astragal_model::CatalogError>(())
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Revision([u8; 32]);

impl Revision {
    /// The revision of a dealer policy that was resolved against this catalog.
    ///
    /// The catalog's names count where the policy uses them, and its id; its revision does not. A position that the
    /// catalog does not have is not named, and counts as the number it is.
    #[must_use]
    pub fn of_policy(policy: &PolicyTerms, catalog: &Catalog) -> Self {
        let declarations = catalog.declarations();
        Self::of(
            "astragal-policy-1",
            Encoder::naming(declarations),
            &(&declarations.id, policy),
        )
    }

    /// Reads 64 lower-case hexadecimal digits; `None` for anything else.
    ///
    /// # Examples
    /// ```
    /// use astragal_model::Revision;
    /// let digits = "0f".repeat(32);
    /// assert_eq!(Revision::from_hex(&digits).map(|revision| revision.to_string()), Some(digits.clone()));
    /// assert_eq!(Revision::from_hex(&digits.to_uppercase()), None);
    /// ```
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.as_bytes();
        let mut bytes = [0; 32];
        if digits.len() != 2 * bytes.len() {
            return None;
        }
        for (byte, pair) in bytes.iter_mut().zip(digits.chunks_exact(2)) {
            let [high, low] = pair else { return None };
            *byte = 16 * digit_value(*high)? + digit_value(*low)?;
        }
        Some(Self(bytes))
    }

    /// The first 12 digits, for a person to read.
    #[must_use]
    pub fn short(&self) -> String {
        self.to_string().chars().take(SHORT_DIGITS).collect()
    }

    /// The hash itself.
    #[must_use]
    pub fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }

    fn of(version: &'static str, mut encoder: Encoder<'_>, thing: &impl Encode) -> Self {
        encoder.word(version);
        thing.encode(&mut encoder);
        Self(encoder.digest())
    }
}

fn digit_value(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

impl fmt::Display for Revision {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(formatter, "{byte:02x}"))
    }
}

impl fmt::Debug for Revision {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "Revision({self})")
    }
}

impl Catalog {
    /// The revision of the catalog: the hash of all that it says.
    #[must_use]
    pub fn revision(&self) -> Revision {
        let declarations = self.declarations();
        Revision::of("astragal-catalog-3", Encoder::naming(declarations), declarations)
    }
}

impl Book {
    /// The revision of the price book: the hash of all that it says.
    ///
    /// It names items, grids and options by id, and gives the cells of sheets and grids in the order in which the
    /// catalog lists attributes and axes; that order counts in the catalog's revision.
    #[must_use]
    pub fn revision(&self) -> Revision {
        Revision::of("astragal-book-1", Encoder::nameless(), self)
    }
}
