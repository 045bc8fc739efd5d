//! TOML and JSON as one tree, in which every key and value knows its bytes.
//!
//! A *tree* is a table of keys and nodes; a node is a table, an array, or one value. `a = [1, "x"]`
//! and `{"a": [1, "x"]}` are the same tree with other spans.
//!
//! What always holds: tables keep the order of the file; numbers are text, never floating point; no
//! tree is deeper than [`DEPTH_LIMIT`]; each key stands once in its table.
//! Cost: O(length) time and memory.
//! Source: TOML 1.0 (toml.io) and RFC 8259 (JSON), read by the crates `toml` and `jsonc-parser`.

mod depth;
mod grammar;
mod json;
mod node;
mod reader;
mod toml;
mod twice;

pub use node::{Entry, Node, NodeValue, Spanned};
pub use reader::TableReader;

use crate::finding::Findings;
use crate::source::{FileId, Sources};

/// LIMIT: how deep tables and arrays may be nested.
pub const DEPTH_LIMIT: usize = 64;

/// Reads a file by its ending: `.json` as JSON, everything else as TOML.
///
/// `None` means that the file is broken as such and that findings say where. A tree that is returned
/// may still have findings: a key that stands twice, a date with a time.
///
/// # Examples
///
/// A file that can be read, and one that cannot:
///
/// ```
/// use astragal_catalog::finding::Findings;
/// use astragal_catalog::{source::Sources, tree};
///
/// let mut sources = Sources::new();
/// let findings = Findings::new();
/// let good = sources.add("order.json", r#"{ "format": 1 }"#);
/// let bad = sources.add("catalog.toml", "format = ");
/// assert!(tree::read(&sources, good, &findings).is_some());
/// assert!(tree::read(&sources, bad, &findings).is_none());
/// assert!(findings.has_errors());
/// ```
pub fn read(sources: &Sources, file: FileId, findings: &Findings) -> Option<Node> {
    let path = sources.path(file);
    if path.to_ascii_lowercase().ends_with(".json") {
        read_json(sources, file, findings)
    } else {
        read_toml(sources, file, findings)
    }
}

/// Reads a file as TOML; see [`read`].
pub fn read_toml(sources: &Sources, file: FileId, findings: &Findings) -> Option<Node> {
    toml::read(sources.text(file), file, findings)
}

/// Reads a file as strict JSON; see [`read`].
pub fn read_json(sources: &Sources, file: FileId, findings: &Findings) -> Option<Node> {
    json::read(sources.text(file), file, findings)
}

#[cfg(test)]
mod tests;
