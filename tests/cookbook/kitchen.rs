//! Cooks the recipes of `docs/cookbook.md`: takes the page apart and writes libraries out of what its blocks say.
//!
//! A library is what the recipes share (`docs/cookbook/`) with one recipe, all of them, or one attempt put in. The verbs: `recipe`
//! goes into `recipe.toml`, `file` beside it; `book` and `amounts` into the price book, `book-file` beside it; `policy` and `order`
//! are whole files. `accepted` and `refused CODE` go where a recipe goes; `refused-policy CODE` and `refused-order CODE` are
//! whole files that must fail with that code.

use std::fs;
use std::path::{Path, PathBuf};

use tempfile::TempDir;

use crate::samples::{Sample, samples};

const DOCS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/docs");

/// What stands under one third-level heading of the page.
pub(crate) struct Section {
    /// The second-level heading above it.
    pub(crate) group: String,
    /// Its own heading.
    pub(crate) title: String,
    /// Its blocks.
    pub(crate) samples: Vec<Sample>,
}

/// A library in a folder of its own, gone with it.
pub(crate) struct Library {
    folder: TempDir,
}

/// Returns the sections of the page in order.
pub(crate) fn sections() -> Vec<Section> {
    let page = fs::read_to_string(format!("{DOCS}/cookbook.md")).expect("the page");
    let blocks = samples(&page);
    let mut sections: Vec<(usize, Section)> = Vec::new();
    let mut group = String::new();
    for (line, text) in (1..).zip(page.lines()) {
        if let Some(heading) = text.strip_prefix("## ") {
            group = heading.to_owned();
        } else if let Some(heading) = text.strip_prefix("### ") {
            let section = Section {
                group: group.clone(),
                title: heading.to_owned(),
                samples: Vec::new(),
            };
            sections.push((line, section));
        }
    }
    for block in blocks {
        let above = sections.iter_mut().rev().find(|(line, _)| *line < block.line);
        let (_, section) = above.expect("a block stands under a heading");
        section.samples.push(block);
    }
    sections.into_iter().map(|(_, section)| section).collect()
}

impl Library {
    /// A library of what recipes share, and of these blocks.
    pub(crate) fn of<'a>(blocks: impl IntoIterator<Item = &'a Sample>) -> Self {
        let library = Self {
            folder: tempfile::tempdir().expect("a folder"),
        };
        library.copy("library.toml", "library.toml");
        library.copy("book.toml", "book/book.toml");
        library.write("book/amounts.csv", "item,amount\n");
        library.write("cookbook/recipe.toml", "format = 1\n");
        for file in ["catalog.toml", "shared.toml", "energy.csv"] {
            library.copy(file, &format!("cookbook/{file}"));
        }
        for block in blocks {
            library.add(block);
        }
        library
    }

    /// Its folder.
    pub(crate) fn path(&self) -> &Path {
        self.folder.path()
    }

    /// The order of this name.
    pub(crate) fn order(&self, name: &str) -> PathBuf {
        self.path().join(format!("{name}.toml"))
    }

    fn add(&self, block: &Sample) {
        let (subject, text) = (block.subject.as_str(), block.text.as_str());
        match block.verb.as_str() {
            "recipe" | "refused" | "accepted" => self.append("cookbook/recipe.toml", &format!("\n{text}")),
            "file" => self.write(&format!("cookbook/{subject}"), text),
            "book" => self.append("book/book.toml", &format!("\n{text}")),
            "book-file" => self.write(&format!("book/{subject}"), text),
            "amounts" => {
                let rows = text.strip_prefix("item,amount\n").expect("a header of amounts");
                self.append("book/amounts.csv", rows);
            }
            "policy" => self.write(&format!("policies/{subject}/policy.toml"), text),
            "order" => self.write(&format!("{subject}.toml"), text),
            "refused-policy" => self.write("policies/attempt/policy.toml", text),
            "refused-order" => self.write("attempt.toml", text),
            verb => panic!("line {}: no sample is `{verb}` here", block.line),
        }
    }

    fn copy(&self, from: &str, to: &str) {
        let text = fs::read_to_string(format!("{DOCS}/cookbook/{from}")).expect("what recipes share");
        self.write(to, &text);
    }

    /// Writes a file that is not there yet: two recipes that write one file are a slip of the page.
    fn write(&self, path: &str, text: &str) {
        let path = self.path().join(path);
        assert!(!path.exists(), "{} is written twice", path.display());
        fs::create_dir_all(path.parent().expect("a folder above it")).expect("its folder");
        fs::write(&path, text).expect("the file");
    }

    fn append(&self, path: &str, text: &str) {
        let path = self.path().join(path);
        let before = fs::read_to_string(&path).expect("the file before it");
        fs::write(&path, before + text).expect("the file");
    }
}
