//! JSON Schemas of the files, for editors: what an editor completes, explains on hover, and underlines.
//!
//! A schema says which keys a table has and what each may look like: `[[rule]]` has `require` or `table`, and `effect` is
//! `block`, `warn` or `sign_off`. It sees shapes. What names mean, whether an expression has the right type, whether an
//! example breaks its rule: that only `check` sees.
//!
//! The readers are written by hand over spanned trees, for the sake of their messages, so the schemas are written by hand
//! beside them; the tests put every key, word and type of a schema before the reader and compare, both ways.
//!
//! Dialect: draft-07, and of it only what draft-04 has as well, but for notes (`examples`, `$comment`). Language servers
//! for TOML differ in how much they follow: one documents draft-04, another reads everything up to 2020-12, and both read
//! this subset. There is no `$ref`: in draft-07 what stands beside one, such as a description, is ignored. A date is
//! `type = string, format = date`, which both servers take for a TOML date.
//!
//! Always holds: the same program writes the same bytes; whatever the reader accepts, the schema accepts, but for an
//! order without a date, which only a caller who gives the date can read; every key has a description. Cost: a few hundred small objects a schema.
//! Source: <https://json-schema.org/draft-07/schema>, docs/reference.md.

mod attribute;
mod book;
mod catalog;
mod drawing;
mod example;
mod figure;
mod known;
mod library;
mod order;
mod policy;
mod price;
mod rule;
mod shape;
mod site;
mod table;
mod tail;
mod value;

use serde_json::{Map, Value};

/// The dialect in which the schemas are written.
pub const DIALECT: &str = "http://json-schema.org/draft-07/schema#";

/// A kind of file that has a schema.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum SchemaKind {
    /// `library.toml`.
    Library,
    /// `catalog.toml`, and every file that a catalog includes.
    Catalog,
    /// `book.toml`.
    Book,
    /// `policy.toml`.
    Policy,
    /// `order.toml` and `order.json`.
    Order,
}

impl SchemaKind {
    /// All kinds, in the order in which a library is read.
    pub const ALL: [SchemaKind; 5] = [
        SchemaKind::Library,
        SchemaKind::Catalog,
        SchemaKind::Book,
        SchemaKind::Policy,
        SchemaKind::Order,
    ];

    /// The word for the kind: `catalog`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            SchemaKind::Library => "library",
            SchemaKind::Catalog => "catalog",
            SchemaKind::Book => "book",
            SchemaKind::Policy => "policy",
            SchemaKind::Order => "order",
        }
    }

    /// The name of the file that holds the schema: `catalog.schema.json`.
    #[must_use]
    pub fn file_name(self) -> String {
        format!("{}.schema.json", self.word())
    }
}

/// The JSON Schema of a kind of file.
///
/// # Examples
///
/// Which words an `effect` has:
///
/// ```
/// use astragal_catalog::schema::{SchemaKind, schema};
///
/// let schema = schema(SchemaKind::Catalog);
/// let effect = schema.pointer("/properties/rule/items/properties/effect/enum").unwrap();
/// assert_eq!(effect.to_string(), r#"["block","warn","sign_off"]"#);
/// ```
///
/// A file that a catalog includes needs no `[catalog]`, so no schema demands one; `check` does, of `catalog.toml`:
///
/// ```
/// use astragal_catalog::schema::{SchemaKind, schema};
///
/// let schema = schema(SchemaKind::Catalog);
/// assert_eq!(schema["required"].to_string(), r#"["format"]"#);
/// ```
#[must_use]
pub fn schema(kind: SchemaKind) -> Value {
    let (title, table) = match kind {
        SchemaKind::Library => ("A library of window catalogs", library::file()),
        SchemaKind::Catalog => ("A window catalog, or a file that one includes", catalog::file()),
        SchemaKind::Book => ("A price book", book::file()),
        SchemaKind::Policy => ("A dealer policy", policy::file()),
        SchemaKind::Order => ("An order", order::file()),
    };
    let mut whole = Map::new();
    whole.insert("$schema".to_owned(), Value::from(DIALECT));
    whole.insert("title".to_owned(), Value::from(title));
    whole.extend(table.into_shape().into_map());
    Value::Object(whole)
}

#[cfg(test)]
mod tests;
