//! Reads printed pages and tables back, and makes libraries to print.

#![allow(dead_code, reason = "shared by the tests of one program")]

use std::collections::BTreeMap;
use std::path::Path;

use astragal_catalog::{CheckReport, check_library};
use astragal_model::{Amount, Number};
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

/// Looks for everything that the library says, in its page and in its files; returns how many things that were.
pub(crate) fn check_all_is_there(folder: &str, html: &str) -> usize {
    let report = check_library(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder));
    assert!(!report.has_errors());
    let page = Page::read(html);
    let files = csv_files(&[folder]);
    let mut sought = 0;
    page.with(|document| {
        sought += catalogs_are_there(&report, document, &files);
        sought += books_are_there(&report, document, &files);
    });
    sought
}

/// The column of a file as a set of cells.
fn column(files: &BTreeMap<String, String>, file: &str, name: &str) -> Vec<String> {
    let text = files.get(file).unwrap_or_else(|| panic!("no {file}"));
    let rows = rows(text);
    let at = rows[0].iter().position(|cell| cell == name).expect(name);
    rows[1..].iter().map(|row| row[at].clone()).collect()
}

fn catalogs_are_there(
    report: &CheckReport,
    document: &Document<'_>,
    files: &BTreeMap<String, String>,
) -> usize {
    let mut sought = 0;
    for (number, loaded) in report.catalogs.iter().enumerate() {
        let declared = loaded.catalog.declarations();
        let chart = format!("chart{}", number + 1);
        let find = |id: &str| {
            document
                .descendants()
                .find(|node| node.attribute("id") == Some(id))
        };
        let at = |name: &str| format!("catalogs/{}/{name}.csv", declared.id);
        let options = rows(&files[&at("options")]);
        for attribute in declared.attributes.values() {
            let block = find(&format!("{chart}-attribute-{}", attribute.id)).expect("an attribute");
            let said = text_of(block);
            assert!(said.starts_with(&attribute.label), "{said}");
            for option in &attribute.options {
                let shown = format!("{} {}", option.label, option.id);
                let in_rows = block.descendants().filter(|node| node.has_tag_name("th"));
                let count = in_rows.filter(|node| text_of(*node).starts_with(&shown)).count();
                assert!(count >= 1, "{shown}\n{said}");
                let is_row = |row: &Vec<String>| {
                    row[1] == attribute.id.as_str() && row[3] == option.id.as_str() && row[4] == option.label
                };
                assert_eq!(options.iter().filter(|row| is_row(row)).count(), 1, "{shown}");
                sought += 1;
            }
            assert!(column(files, &at("attributes"), "attribute").contains(&attribute.id.to_string()));
            sought += 1;
        }
        for rule in &declared.rules {
            assert!(
                find(&format!("{chart}-rule-{}", rule.id)).is_some(),
                "{}",
                rule.id
            );
            let those = column(files, &at("rules"), "rule");
            assert_eq!(
                those.iter().filter(|id| *id == rule.id.as_str()).count(),
                1,
                "{}",
                rule.id
            );
            assert!(
                column(files, &at("rules"), "message").contains(&rule.message.written(&loaded.catalog))
                    || rule.part.is_some()
            );
            sought += 1;
        }
        let article = text_of(find(&chart).expect("a chart"));
        for figure in declared.figures.values() {
            assert!(
                article.contains(&format!("{} {}", figure.label, figure.id)),
                "{}",
                figure.id
            );
            assert!(column(files, &at("figures"), "figure").contains(&figure.id.to_string()));
            sought += 1;
        }
        for notice in &declared.notices {
            assert!(article.contains(notice.id.as_str()), "{}", notice.id);
            assert!(column(files, &at("notices"), "notice").contains(&notice.id.to_string()));
            sought += 1;
        }
    }
    sought
}

/// What must be on the pages of a book, by the book itself and not by the program's reading of it.
fn amounts_of(report: &CheckReport, book: usize) -> Vec<(String, String)> {
    let checked = &report.books[book];
    let digits = checked.book.currency.minor_units();
    let money = |number: &Number| number.to_fixed(digits);
    let mut all = Vec::new();
    for (item, amount) in &checked.book.amounts {
        all.push((
            item.to_string(),
            match amount {
                Amount::Money(number) => money(number),
                Amount::Percent(number) => number.to_string(),
            },
        ));
    }
    let items = checked.catalog.catalog.declarations().items.values();
    for (item, rows) in &checked.book.sheets {
        all.extend(rows.iter().map(|row| (item.to_string(), money(&row.amount))));
    }
    for item in items {
        if let astragal_model::AmountKind::Grid { grid, .. } = &item.amount {
            let cells = checked.book.grids[grid].cells.iter().flatten();
            all.extend(cells.map(|cell| (item.id.to_string(), money(cell))));
        }
    }
    all
}

fn books_are_there(report: &CheckReport, document: &Document<'_>, files: &BTreeMap<String, String>) -> usize {
    let mut sought = 0;
    for (number, checked) in report.books.iter().enumerate() {
        let id = format!("prices{}", number + 1);
        let article = document
            .descendants()
            .find(|node| node.attribute("id") == Some(&id))
            .expect("price pages");
        let at = |name: &str| format!("books/{}/{name}.csv", checked.book.id);
        let items = rows(&files[&at("items")]);
        for (item, amount) in amounts_of(report, number) {
            let block = article
                .descendants()
                .filter(|node| {
                    node.has_tag_name("tr")
                        || node.attribute("class").unwrap_or_default().starts_with("block")
                })
                .find(|node| {
                    let mut ids = node
                        .descendants()
                        .filter(|one| one.attribute("class") == Some("id"));
                    ids.next().is_some_and(|one| text_of(one) == item)
                })
                .unwrap_or_else(|| panic!("no {item}"));
            let mut shown = block
                .descendants()
                .filter(|node| node.has_tag_name("td"))
                .map(text_of);
            let is_it = |cell: String| {
                let plain = cell.replace(',', "");
                plain == amount || plain == format!("{amount} %")
            };
            assert!(shown.any(is_it), "{item} {amount}\n{}", text_of(block));
            let own = files.get(&at(&format!("item-{item}"))).map(|text| rows(text));
            let mut written = items
                .iter()
                .filter(|row| row[0] == item)
                .flatten()
                .chain(own.iter().flatten().flatten());
            assert!(written.any(|cell| *cell == amount), "{item} {amount}");
            sought += 1;
        }
        let said = text_of(article);
        for step in &checked.book.tail {
            assert!(said.contains(&step.label));
            assert!(column(files, &at("tail"), "step").contains(&step.id.to_string()));
            sought += 1;
        }
        for item in checked.catalog.catalog.declarations().items.values() {
            assert!(
                said.contains(&format!("{} {}", item.label, item.id)),
                "{}",
                item.id
            );
            assert!(items.iter().any(|row| row[0] == item.id.as_str()));
            sought += 1;
        }
    }
    sought
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

/// A library whose only grid has two rows and this many columns; its amounts as printed, sorted.
pub(crate) fn wide_library(columns: usize) -> (tempfile::TempDir, Vec<String>) {
    let mut sheet = vec!["w \\ h".to_owned(), "30".to_owned(), "60".to_owned()];
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

/// Copies a folder of the project with all that is in it.
pub(crate) fn copy_library(from: &str, to: &Path) {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join(from);
    let mut waiting = vec![(from, to.to_owned())];
    while let Some((from, to)) = waiting.pop() {
        std::fs::create_dir_all(&to).unwrap();
        for entry in std::fs::read_dir(from).unwrap().map(|entry| entry.unwrap()) {
            let target = to.join(entry.file_name());
            if entry.path().is_dir() {
                waiting.push((entry.path(), target));
            } else {
                std::fs::copy(entry.path(), target).unwrap();
            }
        }
    }
}
