//! Takes values out of a table by name and type, and records what is wrong on the way.
//!
//! A *reader* walks one table: each key is taken once under the type it should have, and what was
//! not taken when reading is finished is an unknown key. In `label = 5`, taking `label` as text
//! records "`label` is a whole number; expected text".
//!
//! What always holds: a value of the wrong type is a finding and then counts as absent; `finish` must
//! be called, or unknown keys go unnoticed.
//! Cost: O(keys) for each take. Never recursive.
//! Source: our own.

mod node_as;

use std::ops::Range;

use jiff::civil::Date;

use node_as::wrong_type;

use super::{Entry, Node, NodeValue, Spanned};
use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};
use crate::source::FileId;

/// Reads one table.
///
/// `what` names the table in a sentence: "attribute", "rule `R12`".
///
/// # Examples
///
/// A table that is fine, and one with a misspelt key:
///
/// ```
/// use astragal_catalog::finding::Findings;
/// use astragal_catalog::source::Sources;
/// use astragal_catalog::tree::{self, TableReader};
///
/// let mut sources = Sources::new();
/// let file = sources.add("a.toml", "id = \"grille\"\nlabbel = \"Grille\"");
/// let findings = Findings::new();
/// let root = tree::read(&sources, file, &findings).unwrap();
/// let mut reader = TableReader::new(&root, file, "attribute", &findings).unwrap();
/// assert_eq!(reader.required_text("id").unwrap().value, "grille");
/// assert!(reader.optional_text("label").is_none());
/// reader.finish();
///
/// let found = findings.into_sorted(&sources);
/// assert_eq!(found[0].message(), "unknown key `labbel` in attribute");
/// assert_eq!(found[0].help(), Some("did you mean `label`?"));
/// ```
#[derive(Debug)]
#[must_use = "call `finish`, or unknown keys go unnoticed"]
pub struct TableReader<'a> {
    file: FileId,
    what: String,
    span: Range<usize>,
    entries: &'a [Entry],
    taken: Vec<bool>,
    known: Vec<&'static str>,
    /// Keys that must be there and are not, each with the finding that says so.
    missing: Vec<(&'static str, Finding)>,
    findings: &'a Findings,
}

impl<'a> TableReader<'a> {
    /// A reader of a node; a node that is no table is a finding.
    pub fn new(
        node: &'a Node,
        file: FileId,
        what: impl Into<String>,
        findings: &'a Findings,
    ) -> Option<Self> {
        let what = what.into();
        let Some(entries) = node.as_table() else {
            findings.push(wrong_type(&what, node, "a table", file));
            return None;
        };
        let taken = vec![false; entries.len()];
        Some(TableReader {
            file,
            what,
            span: node.span.clone(),
            entries,
            taken,
            known: Vec::new(),
            missing: Vec::new(),
            findings,
        })
    }

    /// The file that the table stands in.
    #[must_use]
    pub fn file(&self) -> FileId {
        self.file
    }

    /// Where the findings go.
    #[must_use]
    pub fn findings(&self) -> &'a Findings {
        self.findings
    }

    /// The place of the table: its heading or all of it; the start of the file for the outermost.
    #[must_use]
    pub fn place(&self) -> Place {
        self.place_of(&self.span)
    }

    /// A place in the same file.
    #[must_use]
    pub fn place_of(&self, span: &Range<usize>) -> Place {
        Place::new(self.file, span.clone())
    }

    /// The name by which findings call the table.
    #[must_use]
    pub fn what(&self) -> &str {
        &self.what
    }

    /// Changes that name, when the table turns out to have one: "rule" becomes "rule `R12`".
    pub fn rename(&mut self, what: impl Into<String>) {
        self.what = what.into();
    }

    /// True when the key is there; it counts as known, not as taken.
    #[must_use]
    pub fn has(&mut self, key: &'static str) -> bool {
        self.note(key);
        self.entries.iter().any(|entry| entry.key.value == key)
    }

    /// True when the key is there; when it is not, a finding says so.
    pub fn requires(&mut self, key: &'static str) -> bool {
        if self.has(key) {
            return true;
        }
        let text = format!("{} lacks `{key}`", self.what);
        let help = format!("add `{key}`");
        let finding = Finding::error("MISSING_KEY", text)
            .at(self.place())
            .with_help(help);
        self.missing.push((key, finding));
        false
    }

    /// Whatever the key holds.
    pub fn node(&mut self, key: &'static str) -> Option<&'a Node> {
        self.note(key);
        let at = self.entries.iter().position(|entry| entry.key.value == key)?;
        if let Some(taken) = self.taken.get_mut(at) {
            *taken = true;
        }
        self.entries.get(at).map(|entry| &entry.node)
    }

    /// Text; a finding when the key is not there.
    pub fn required_text(&mut self, key: &'static str) -> Option<Spanned<String>> {
        if self.requires(key) {
            self.optional_text(key)
        } else {
            None
        }
    }

    /// Text.
    pub fn optional_text(&mut self, key: &'static str) -> Option<Spanned<String>> {
        let node = self.node(key)?;
        self.as_text(node, &format!("`{key}`"))
    }

    /// True or false.
    pub fn optional_bool(&mut self, key: &'static str) -> Option<Spanned<bool>> {
        let node = self.node(key)?;
        self.as_bool(node, &format!("`{key}`"))
    }

    /// A whole number that a machine holds.
    pub fn integer(&mut self, key: &'static str) -> Option<Spanned<i64>> {
        let node = self.node(key)?;
        self.as_integer(node, &format!("`{key}`"))
    }

    /// A number as it is written, whether as number or as text.
    ///
    /// Text is not looked into. A number with an exponent is a finding.
    pub fn decimal_text(&mut self, key: &'static str) -> Option<Spanned<String>> {
        let node = self.node(key)?;
        self.as_decimal_text(node, &format!("`{key}`"))
    }

    /// A date: one of TOML, or text like `2024-06-01`.
    pub fn date(&mut self, key: &'static str) -> Option<Spanned<Date>> {
        let node = self.node(key)?;
        self.as_date(node, &format!("`{key}`"))
    }

    /// An array of anything.
    pub fn array(&mut self, key: &'static str) -> Option<Spanned<&'a [Node]>> {
        let node = self.node(key)?;
        self.as_array(node, &format!("`{key}`"))
    }

    /// An array of texts; elements of other types are findings and left out.
    pub fn array_of_texts(&mut self, key: &'static str) -> Option<Vec<Spanned<String>>> {
        let array = self.array(key)?;
        let elements = array.value.iter().enumerate();
        Some(
            elements
                .filter_map(|(at, node)| self.as_text(node, &format!("element {} of `{key}`", at + 1)))
                .collect(),
        )
    }

    /// A reader of the table under a key.
    pub fn table(&mut self, key: &'static str, what: &str) -> Option<TableReader<'a>> {
        let node = self.node(key)?;
        match node.value {
            NodeValue::Table(_) => TableReader::new(node, self.file, what, self.findings),
            _ => self.wrong(&format!("`{key}`"), node, "a table"),
        }
    }

    /// Readers of the tables of an array; none when the key is not there.
    ///
    /// Elements that are no tables are findings and left out.
    pub fn array_of_tables(&mut self, key: &'static str, what: &str) -> Vec<TableReader<'a>> {
        let Some(array) = self.array(key) else {
            return Vec::new();
        };
        let mut readers = Vec::new();
        for (at, node) in array.value.iter().enumerate() {
            match node.value {
                NodeValue::Table(_) => readers.extend(TableReader::new(node, self.file, what, self.findings)),
                _ => {
                    let _: Option<()> =
                        self.wrong(&format!("element {} of `{key}`", at + 1), node, "a table");
                }
            }
        }
        readers
    }

    /// All keys not taken yet, for a table whose keys are free.
    pub fn rest(&mut self) -> Vec<&'a Entry> {
        let rest = self
            .entries
            .iter()
            .zip(&self.taken)
            .filter(|(_, taken)| !**taken)
            .map(|(entry, _)| entry);
        let rest = rest.collect();
        self.taken.fill(true);
        rest
    }

    /// Takes `format`; anything but 1 is a finding.
    pub fn format_is_known(&mut self) -> bool {
        let Some(node) = self.node("format") else {
            let text = format!("{} lacks `format`", self.what);
            let finding = Finding::error("UNKNOWN_FORMAT", text).at(self.place());
            self.findings
                .push(finding.with_help("add `format = 1` at the top"));
            return false;
        };
        let text = match &node.value {
            NodeValue::Integer(number) if number == "1" => return true,
            NodeValue::Integer(found) | NodeValue::Decimal(found) => {
                format!("`format = {found}` is not known")
            }
            NodeValue::Text(found) => format!("`format = \"{found}\"` is not known"),
            _ => format!("`format` is {}", node.kind()),
        };
        let text = format!("{text}; this program reads `format = 1`");
        self.findings.push(
            Finding::error("UNKNOWN_FORMAT", text)
                .at(self.place_of(&node.span))
                .with_help("write `format = 1`"),
        );
        false
    }

    /// Whether a key that is no known one looks like a slip of this one.
    pub fn has_slip_of(&self, key: &'static str) -> bool {
        self.strangers()
            .any(|entry| nearest(&entry.key.value, [key]).is_some())
    }

    /// Whether a key that must be there is not, which is said when reading is finished.
    #[must_use]
    pub fn lacks_something(&self) -> bool {
        !self.missing.is_empty()
    }

    /// Whether some key is no known one.
    #[must_use]
    pub fn has_strangers(&self) -> bool {
        self.strangers().next().is_some()
    }

    /// The keys that nobody took and nobody asked for.
    fn strangers(&self) -> impl Iterator<Item = &'a Entry> {
        let untaken = self.entries.iter().zip(&self.taken).filter(|(_, taken)| !**taken);
        untaken
            .map(|(entry, _)| entry)
            .filter(|entry| !self.known.contains(&entry.key.value.as_str()))
    }

    /// Reports every key that nobody took.
    pub fn finish(mut self) {
        // A slip in the key that is missing is one mistake, and the slip says it better.
        let missing = std::mem::take(&mut self.missing);
        for (key, finding) in missing {
            if !self.has_slip_of(key) {
                self.findings.push(finding);
            }
        }
        for (entry, _) in self.entries.iter().zip(&self.taken).filter(|(_, taken)| !**taken) {
            let key = &entry.key.value;
            let help = match nearest(key, self.known.iter().copied()) {
                Some(known) => format!("did you mean `{known}`?"),
                None if self.known.is_empty() => "leave it out".to_owned(),
                None => format!("known keys are {}", quoted_list(self.known.iter().copied())),
            };
            let text = format!("unknown key `{key}` in {}", self.what);
            let place = self.place_of(&entry.key.span);
            self.findings
                .push(Finding::error("UNKNOWN_KEY", text).at(place).with_help(help));
        }
    }

    fn note(&mut self, key: &'static str) {
        if !self.known.contains(&key) {
            self.known.push(key);
        }
    }
}

impl Drop for TableReader<'_> {
    /// What is missing is said even when nobody finished reading.
    fn drop(&mut self) {
        for (_, finding) in std::mem::take(&mut self.missing) {
            self.findings.push(finding);
        }
    }
}
