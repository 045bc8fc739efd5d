//! Takes the keys of one declaration: texts with their places, expressions, ids, words of a closed list.
//!
//! A thin layer over [`TableReader`], which knows only types; here a key may be an expression or an id.
//!
//! Always holds: what is wrong is a finding and then counts as absent. Cost: that of the reader.

use std::ops::Range;

use astragal_model::Id;

use super::ids::{self, IdKind};
use crate::finding::{Finding, Findings, Place};
use crate::library_files::LibraryPath;
use crate::nearest::{nearest, quoted_list};
use crate::source::{FileId, Sources};
use crate::tree::{Node, NodeValue, Spanned, TableReader};
use crate::typed::{Parsed, PlacedText};

/// Which declaration it is, and where it stands.
#[derive(Clone, Debug)]
pub(crate) struct Head {
    /// The id.
    pub(crate) id: Id,
    /// Where the id stands.
    pub(crate) place: Place,
    /// All lines of the declaration, from its heading to its last value.
    pub(crate) block: Place,
    /// The file that says it; paths in it start from there.
    pub(crate) home: LibraryPath,
}

/// The keys of one declaration.
#[derive(Debug)]
#[must_use = "call `finish` on the reader, or unknown keys go unnoticed"]
pub(crate) struct Fields<'a> {
    pub(crate) reader: TableReader<'a>,
    pub(crate) sources: &'a Sources,
    block: Place,
    home: LibraryPath,
}

impl<'a> Fields<'a> {
    /// The keys of a node; a node that is no table is a finding.
    pub(crate) fn new(
        node: &'a Node,
        file: FileId,
        what: &str,
        home: &LibraryPath,
        sources: &'a Sources,
        findings: &'a Findings,
    ) -> Option<Self> {
        Some(Self {
            reader: TableReader::new(node, file, what, findings)?,
            sources,
            block: Place::new(file, node.span.start..end_of(node)),
            home: home.clone(),
        })
    }

    /// The declarations under a key.
    pub(crate) fn list(
        &mut self,
        key: &'static str,
        what: &'static str,
        home: &LibraryPath,
    ) -> impl Iterator<Item = Fields<'a>> + use<'a> {
        let nodes = self.reader.array(key).map_or([].as_slice(), |array| array.value);
        let (file, findings, sources) = (self.reader.file(), self.reader.findings(), self.sources);
        let home = home.clone();
        nodes
            .iter()
            .filter_map(move |node| Fields::new(node, file, what, &home, sources, findings))
    }

    /// The keys of a table inside this one.
    pub(crate) fn inner(&self, node: &'a Node, what: &str) -> Option<Fields<'a>> {
        Fields::new(
            node,
            self.reader.file(),
            what,
            &self.home,
            self.sources,
            self.findings(),
        )
    }

    /// The tables of a list inside this one.
    pub(crate) fn inner_list(&mut self, key: &'static str, what: &'static str) -> Vec<Fields<'a>> {
        let home = self.home.clone();
        self.list(key, what, &home).collect()
    }

    /// Where the findings go.
    pub(crate) fn findings(&self) -> &'a Findings {
        self.reader.findings()
    }

    /// A place in the same file.
    pub(crate) fn place_of(&self, span: &Range<usize>) -> Place {
        self.reader.place_of(span)
    }

    /// The id, after which findings call the declaration.
    ///
    /// An id of the wrong form is a finding and kept, so that what names it is not reported as well.
    pub(crate) fn head(&mut self, kind: IdKind) -> Option<Head> {
        let written = self.reader.required_text("id")?;
        let place = self.place_of(&written.span);
        ids::check(kind, &written.value, &place, self.findings());
        self.reader
            .rename(format!("{} `{}`", self.reader.what(), written.value));
        Some(Head {
            id: Id::new(&written.value),
            place,
            block: self.block.clone(),
            home: self.home.clone(),
        })
    }

    /// What a person reads.
    pub(crate) fn label(&mut self) -> String {
        self.reader
            .required_text("label")
            .map_or_else(String::new, |text| text.value)
    }

    /// Text without its place.
    pub(crate) fn plain(&mut self, key: &'static str) -> Option<String> {
        self.reader.optional_text(key).map(|text| text.value)
    }

    /// Text with the place of each byte.
    pub(crate) fn text(&mut self, key: &'static str) -> Option<PlacedText> {
        let text = self.reader.optional_text(key)?;
        Some(self.placed(text))
    }

    /// Text that must be there.
    pub(crate) fn required_text(&mut self, key: &'static str) -> Option<PlacedText> {
        let text = self.reader.required_text(key)?;
        Some(self.placed(text))
    }

    /// A list of texts.
    pub(crate) fn texts(&mut self, key: &'static str) -> Option<Vec<PlacedText>> {
        let texts = self.reader.array_of_texts(key)?;
        Some(texts.into_iter().map(|text| self.placed(text)).collect())
    }

    /// An expression.
    pub(crate) fn expression(&mut self, key: &'static str) -> Option<Parsed> {
        Parsed::parse(self.text(key)?, self.findings())
    }

    /// True or false; false when the key is not there.
    pub(crate) fn flag(&mut self, key: &'static str) -> bool {
        self.reader.optional_bool(key).is_some_and(|flag| flag.value)
    }

    /// One word of a closed list; the first of the list when the key is not there.
    pub(crate) fn word<T: Copy>(&mut self, key: &'static str, words: &[(&'static str, T)]) -> Option<T> {
        match self.text(key) {
            None => words.first().map(|(_, value)| *value),
            Some(text) => self.one_of(key, &text, words),
        }
    }

    /// One word of a closed list, which must be there.
    pub(crate) fn required_word<T: Copy>(
        &mut self,
        key: &'static str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        let text = self.required_text(key)?;
        self.one_of(key, &text, words)
    }

    /// The meaning of a word of a closed list.
    pub(crate) fn one_of<T: Copy>(
        &self,
        key: &str,
        text: &PlacedText,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        let found = words.iter().find(|(word, _)| *word == text.text);
        if found.is_none() {
            let known = || words.iter().map(|(word, _)| *word);
            let message = format!(
                "`{key}` is `{}`; expected one of {}",
                text.text,
                quoted_list(known())
            );
            let help = match nearest(&text.text, known()) {
                Some(near) => format!("did you mean `{near}`?"),
                None => "write one of these words".to_owned(),
            };
            self.findings().push(
                Finding::error("UNKNOWN_WORD", message)
                    .at(text.place.clone())
                    .with_help(help),
            );
        }
        found.map(|(_, value)| *value)
    }

    /// The node under a key as text with places, if it is text.
    pub(crate) fn placed(&self, text: Spanned<String>) -> PlacedText {
        PlacedText::new(text.value, self.place_of(&text.span), self.sources)
    }

    /// Whether exactly one of these keys is there; a finding when not.
    pub(crate) fn exactly_one(&mut self, keys: &[&'static str]) -> Option<&'static str> {
        let present: Vec<&'static str> = keys.iter().copied().filter(|key| self.reader.has(key)).collect();
        match present.as_slice() {
            [one] => return Some(one),
            [] => {
                let message = format!("{} lacks {}", self.reader.what(), either(keys));
                self.report("MISSING_KEY", message, format!("add {}", either(keys)));
            }
            [first, second, ..] => {
                let message = format!("{} has both `{first}` and `{second}`", self.reader.what());
                self.report("KEYS_EXCLUDE", message, "keep one of the two".to_owned());
            }
        }
        for key in keys {
            let _ = self.reader.node(key);
        }
        None
    }

    /// Reports keys that say nothing here, and takes them.
    pub(crate) fn without(&mut self, keys: &[&'static str], because: &str) {
        for key in keys {
            if let Some(node) = self.reader.node(key) {
                let message = format!("{} has `{key}`, {because}", self.reader.what());
                let place = self.place_of(&node.span);
                self.findings().push(
                    Finding::error("KEYS_EXCLUDE", message)
                        .at(place)
                        .with_help(format!("leave `{key}` out")),
                );
            }
        }
    }

    fn report(&self, code: &'static str, message: String, help: String) {
        self.findings().push(
            Finding::error(code, message)
                .at(self.reader.place())
                .with_help(help),
        );
    }
}

fn either(keys: &[&'static str]) -> String {
    let quoted: Vec<String> = keys.iter().map(|key| format!("`{key}`")).collect();
    quoted.join(" or ")
}

/// The end of the last thing in a node, of which a heading may be the start.
fn end_of(node: &Node) -> usize {
    let mut end = node.span.end;
    let mut stack = vec![node];
    while let Some(node) = stack.pop() {
        end = end.max(node.span.end);
        match &node.value {
            NodeValue::Table(entries) => stack.extend(entries.iter().map(|entry| &entry.node)),
            NodeValue::Array(nodes) => stack.extend(nodes),
            _ => {}
        }
    }
    end
}
