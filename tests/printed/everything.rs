//! Looks for everything that a library says, as its reader has it, on its pages and in its tables.

use std::collections::BTreeMap;
use std::path::Path;

use astragal_catalog::{CheckReport, check_library};
use astragal_model::{Amount, AmountKind, Number};
use roxmltree::Document;

use super::{Page, csv_files, rows, text_of};

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
        if let AmountKind::Grid { grid, .. } = &item.amount {
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
