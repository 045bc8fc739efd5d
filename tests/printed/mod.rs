//! Reads printed pages and tables back, and makes libraries to print.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

mod everything;

use std::collections::BTreeMap;

pub(crate) use everything::check_all_is_there;
use roxmltree::{Document, Node, ParsingOptions};

use crate::program::run;

/// A page that is well-formed.
pub(crate) struct Page(String);

impl Page {
    /// Takes a page; elements that HTML leaves open (`meta`, `br`) are closed first.
    pub(crate) fn read(html: &str) -> Self {
        let mut text = html.replace("<br>", "<br/>");
        let mut from = 0;
        while let Some(at) = text[from..].find("<meta ").map(|at| at + from) {
            let end = at + text[at..].find('>').expect("a tag ends");
            text.insert(end, '/');
            from = end;
        }
        let page = Self(text);
        page.with(|document| assert!(document.root_element().has_tag_name("html")));
        page
    }

    /// Does something with the elements.
    pub(crate) fn with<T>(&self, work: impl FnOnce(&Document<'_>) -> T) -> T {
        let options = ParsingOptions {
            allow_dtd: true,
            ..ParsingOptions::default()
        };
        let document = Document::parse_with_options(&self.0, options)
            .unwrap_or_else(|error| panic!("not well-formed: {error}\n{}", self.0));
        work(&document)
    }

    /// All text outside of the style sheet, white space evened out.
    pub(crate) fn text(&self) -> String {
        self.with(|document| {
            let body = document.descendants().find(|node| node.has_tag_name("body"));
            let pieces = body.unwrap().descendants().filter_map(|node| node.text());
            let text = pieces.collect::<Vec<_>>().join(" ");
            let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
            flat.replace(" ;", ";")
        })
    }

    /// The headings of charts and price pages.
    pub(crate) fn titles(&self) -> Vec<String> {
        self.with(|document| {
            let titles = document.descendants().filter(|node| node.has_tag_name("h1"));
            titles.map(text_of).collect()
        })
    }

    /// The first table inside the element with this id, its heading first.
    pub(crate) fn table_of(&self, id: &str) -> Vec<Vec<String>> {
        self.with(|document| {
            let mut all = document.descendants();
            let element = all
                .find(|node| node.attribute("id") == Some(id))
                .unwrap_or_else(|| panic!("no `{id}`"));
            let table = element.descendants().find(|node| node.has_tag_name("table"));
            cells(table.unwrap())
        })
    }

    /// All tables of a class.
    pub(crate) fn tables_with_class(&self, class: &str) -> Vec<Vec<Vec<String>>> {
        self.with(|document| {
            let has = |node: &Node<'_, '_>| {
                let classes = node.attribute("class").unwrap_or_default();
                node.has_tag_name("table") && classes.split(' ').any(|one| one == class)
            };
            document.descendants().filter(has).map(cells).collect()
        })
    }
}

/// The text of an element and all inside it.
pub(crate) fn text_of(node: Node<'_, '_>) -> String {
    let texts = node.descendants().filter(Node::is_text);
    texts
        .filter_map(|text| text.text())
        .collect::<String>()
        .trim()
        .to_owned()
}

fn cells(table: Node<'_, '_>) -> Vec<Vec<String>> {
    let rows = table.descendants().filter(|node| node.has_tag_name("tr"));
    let row = |row: Node<'_, '_>| row.children().filter(Node::is_element).map(text_of).collect();
    rows.map(row).collect()
}

/// The rows of a CSV file, of whatever lengths.
pub(crate) fn rows(text: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(text.as_bytes());
    let records = reader.records().map(|record| record.expect("CSV"));
    records
        .map(|record| record.iter().map(str::to_owned).collect())
        .collect()
}

/// Prints as CSV; the files by their paths.
pub(crate) fn csv_files(arguments: &[&str]) -> BTreeMap<String, String> {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().to_str().unwrap();
    let mut all = vec!["print"];
    all.extend(arguments);
    all.extend(["--format", "csv", "--out", out]);
    let ran = run(&all);
    assert_eq!(
        (ran.code, ran.out.as_str()),
        (Some(0), ""),
        "{arguments:?}\n{}",
        ran.err
    );
    let mut files = BTreeMap::new();
    for kind in ["catalogs", "books"] {
        let Ok(folders) = std::fs::read_dir(folder.path().join(kind)) else {
            continue;
        };
        for one in folders.map(|entry| entry.unwrap()) {
            for file in std::fs::read_dir(one.path()).unwrap().map(|entry| entry.unwrap()) {
                let names = [one.file_name(), file.file_name()].map(|name| name.into_string().unwrap());
                let text = std::fs::read_to_string(file.path()).unwrap();
                files.insert(format!("{kind}/{}", names.join("/")), text);
            }
        }
    }
    files
}

/// A library with one catalog of these declarations, and other files beside.
pub(crate) fn library(declarations: &str, files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let write = |path: &str, text: &str| {
        let path = folder.path().join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    };
    write(
        "library.toml",
        "format = 1\n[library]\nid = \"l\"\nlabel = \"L\"\n",
    );
    let head = "format = 1\n[catalog]\nid = \"hinged\"\nlabel = \"Hinged\"\nlength = { unit = \"in\" }\n";
    write("hinged/catalog.toml", &format!("{head}{declarations}"));
    for (path, text) in files {
        write(path, text);
    }
    folder
}

/// A library with labels that would be markup, the end of the style sheet, or a formula.
pub(crate) fn nasty_library() -> tempfile::TempDir {
    let nasty = r#"<script>&\"'</style>"#;
    let folder = library(
        &format!(
            r#"
[[attribute]]
id = "one"
label = "{nasty}"
section = "{nasty}"
options = [{{ id = "a", label = "{nasty}", plant_code = "{nasty}" }}, {{ id = "b", label = "=1+1" }}]
standard = "a"
[[rule]]
id = "r"
require = 'one == "a"'
message = "{nasty} {{one}}"
basis = "@sum(A1)"
"#
        ),
        &[],
    );
    std::fs::write(
        folder.path().join("library.toml"),
        format!("format = 1\n[library]\nid = \"l\"\nlabel = \"{nasty}\"\n"),
    )
    .unwrap();
    folder
}

/// A library whose only grid has two rows and this many columns; its amounts as printed, sorted.
pub(crate) fn wide_library(columns: usize) -> (tempfile::TempDir, Vec<String>) {
    let mut sheet = ["w \\ h".to_owned(), "30".to_owned(), "60".to_owned()];
    let mut amounts = Vec::new();
    for column in 0..columns {
        sheet[0].push_str(&format!(",{}", 10 * (column + 1)));
        for (row, base) in [(1, 100), (2, 500)] {
            let amount = format!("{}.00", base + column);
            sheet[row].push_str(&format!(",{amount}"));
            amounts.push(amount);
        }
    }
    amounts.sort();
    let declarations = r#"
[[attribute]]
id = "one"
label = "one"
options = [{ id = "a" }]
standard = "a"
[[measure]]
id = "width"
label = "width"
[[measure]]
id = "height"
label = "height"
[[figure]]
id = "w"
label = "w"
formula = 'width'
[[figure]]
id = "h"
label = "h"
formula = 'height'
[[price]]
id = "base"
label = "base"
grid = "base"
axes = ["w", "h"]
"#;
    let book = "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"hinged\"\ncurrency = \"USD\"\nround_to = \"0.01\"\namounts = \"amounts.csv\"\n[[grid]]\nid = \"base\"\ntable = \"base.csv\"\nlower = [\"0\", \"0\"]\n";
    let sheet = sheet.join("\n");
    let folder = library(
        declarations,
        &[
            ("books/b/book.toml", book),
            ("books/b/amounts.csv", "item,amount\n"),
            ("books/b/base.csv", &sheet),
        ],
    );
    (folder, amounts)
}
