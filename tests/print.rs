//! `astragal print`: everything that a catalog and its book say stands on the pages, in HTML and in CSV.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod printed;
mod program;

use std::path::Path;

use expect_test::expect_file;
use printed::{Page, check_all_is_there, csv_files, library, rows, text_of};
use program::{copy_folder, help_examples, run};
use roxmltree::Document;

const SMALL: &str = "tests/fixtures/library";
const DEMO: &str = "examples/library";

fn html(arguments: &[&str]) -> String {
    let all: Vec<&str> = std::iter::once("print")
        .chain(arguments.iter().copied())
        .collect();
    let ran = run(&all);
    assert_eq!(ran.code, Some(0), "{arguments:?}\n{}", ran.err);
    assert!(
        ran.err.is_empty() || ran.err.contains("RULE_WITHOUT_EXAMPLE"),
        "{}",
        ran.err
    );
    ran.out
}

#[test]
fn the_pages_of_the_small_library_read_as_their_golden_file_says() {
    let golden = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/printed/small.html");
    expect_file![golden].assert_eq(&html(&[SMALL]));
}

#[test]
fn every_attribute_option_rule_item_and_amount_of_the_small_library_is_printed() {
    let checked = check_all_is_there(SMALL, &html(&[SMALL]));
    assert!(checked >= 40, "{checked} things were looked for");
}

#[test]
fn every_attribute_option_rule_item_and_amount_of_the_demo_is_printed() {
    let checked = check_all_is_there(DEMO, &html(&[DEMO]));
    assert!(checked > 500, "{checked} things were looked for");
}

#[test]
fn a_rule_stands_in_full_once_and_every_link_leads_to_something() {
    for folder in [SMALL, DEMO] {
        let page = Page::read(&html(&[folder]));
        page.with(|document| {
            let ids: Vec<&str> = document
                .descendants()
                .filter_map(|node| node.attribute("id"))
                .collect();
            let mut distinct = ids.clone();
            distinct.sort_unstable();
            distinct.dedup();
            assert_eq!(ids.len(), distinct.len(), "ids are unique in {folder}");
            let mut links = 0;
            for link in document.descendants().filter_map(|node| node.attribute("href")) {
                let target = link
                    .strip_prefix('#')
                    .unwrap_or_else(|| panic!("{link} leads elsewhere"));
                assert!(ids.contains(&target), "{link} leads to nothing");
                links += 1;
            }
            assert!(links > 3);
        });
    }
}

#[test]
fn pages_hold_no_script_and_nothing_from_elsewhere_and_are_set_for_paper() {
    let text = html(&[DEMO]);
    let page = Page::read(&text);
    page.with(|document| {
        assert_eq!(document.root_element().attribute("lang"), Some("en"));
        for node in document.descendants().filter(roxmltree::Node::is_element) {
            let name = node.tag_name().name();
            let is_foreign = ["script", "link", "img", "iframe", "object"].contains(&name);
            assert!(!is_foreign, "{name}");
            let is_handler = |attribute: roxmltree::Attribute<'_, '_>| attribute.name().starts_with("on");
            assert!(!node.attributes().any(is_handler));
            if name == "table" {
                let heads = node.children().filter(|child| child.has_tag_name("thead"));
                assert_eq!(heads.count(), 1, "the heading repeats on the next page");
            }
            if name == "th" {
                assert!(node.has_attribute("scope"), "{:?}", text_of(node));
            }
        }
    });
    for says in ["@page ", "break-inside: avoid", "break-before: page"] {
        assert!(text.contains(says), "{says}");
    }
    for never in ["url(", "@import", "http:", "https:"] {
        assert!(!text.contains(never), "{never}");
    }
}

#[test]
fn marks_equal_the_rows_of_the_table_they_are_drawn_from() {
    let text = html(&[SMALL]);
    let page = Page::read(&text);
    let drawn = page.table_of("chart1-rule-colour-pairs");
    let source = std::fs::read_to_string(format!("{SMALL}/small/pairs.csv")).unwrap();
    let source = rows(&source);
    assert_eq!(drawn.len(), source.len());
    for (drawn, source) in drawn.iter().zip(&source).skip(1) {
        for (mark, cell) in drawn.iter().zip(source).skip(1) {
            assert_eq!(mark == "●", cell == "x", "{drawn:?} {source:?}");
        }
    }
    let files = csv_files(&[SMALL]);
    let written = rows(&files["catalogs/small/rule-colour-pairs.csv"]);
    for (drawn, written) in drawn.iter().zip(&written).skip(1) {
        assert_eq!(drawn.first(), written.first());
        for (mark, cell) in drawn.iter().zip(written).skip(1) {
            assert_eq!(mark == "●", cell == "yes");
        }
    }
}

#[test]
fn a_forbidden_table_of_pairs_is_drawn_as_what_is_left() {
    let folder = library(
        r#"
[[attribute]]
id = "one"
label = "one"
options = [{ id = "a" }, { id = "b" }, { id = "c", families = ["late"] }]
standard = "a"
[[attribute]]
id = "other"
label = "other"
options = [{ id = "x" }, { id = "y", families = ["late"] }]
standard = "x"
[[rule]]
id = "never"
table = "never.csv"
rows = "forbidden"
message = "No {one} with {other}."
"#,
        &[("hinged/never.csv", "one,other\na|c,y\nb,*\n")],
    );
    let page = Page::read(&html(&[folder.path().to_str().unwrap()]));
    let drawn = page.table_of("chart1-rule-never");
    let expected = [
        ["one \\ other", "x", "y"],
        ["a", "●", "–"],
        ["b", "–", "–"],
        ["c", "●", "–"],
    ];
    assert_eq!(drawn, expected);
}

/// Labels that would be markup, a formula or the end of the style sheet.
#[test]
fn what_a_label_says_is_text_wherever_it_stands() {
    let shown = "<script>&\"'</style>";
    let folder = printed::nasty_library();
    let path = folder.path().to_str().unwrap();
    let text = html(&[path]);
    assert!(!text.contains("<script"), "{text}");
    assert_eq!(text.matches("</style>").count(), 1);
    let page = Page::read(&text);
    page.with(|document| {
        let count = document
            .descendants()
            .filter(|node| node.is_text() && node.text().unwrap_or_default().contains(shown))
            .count();
        assert!(count >= 7, "{count}");
    });
    let files = csv_files(&[path]);
    let options = rows(&files["catalogs/hinged/options.csv"]);
    assert!(options.iter().any(|row| row.iter().any(|cell| cell == shown)));
    assert!(options.iter().any(|row| row.iter().any(|cell| cell == "'=1+1")));
    let rules = rows(&files["catalogs/hinged/rules.csv"]);
    assert!(rules.iter().any(|row| row.iter().any(|cell| cell == "'@sum(A1)")));
}

#[test]
fn no_cell_of_any_file_is_a_formula() {
    for folder in [SMALL, DEMO] {
        for (name, text) in csv_files(&[folder]) {
            for cell in rows(&text).iter().flatten() {
                let is_number = cell.parse::<f64>().is_ok();
                let begins = cell.starts_with(['=', '+', '-', '@', '\t', '\r']);
                assert!(!begins || is_number, "{cell:?} in {name}");
            }
        }
    }
}

#[test]
fn a_wide_grid_goes_on_below_and_loses_nothing() {
    let (folder, amounts) = printed::wide_library(23);
    let text = html(&[folder.path().to_str().unwrap()]);
    let page = Page::read(&text);
    let tables = page.tables_with_class("grid");
    assert!(tables.len() > 1, "23 columns do not fit side by side");
    let mut seen = Vec::new();
    for table in &tables {
        assert!(table.iter().all(|row| row.len() <= 11), "at most ten columns");
        assert_eq!(table.len(), 3, "a heading and both rows in each block");
        seen.extend(table.iter().skip(1).flat_map(|row| row[1..].to_vec()));
    }
    seen.sort();
    assert_eq!(seen, amounts);
    assert!(text.contains("of 23"));
}

#[test]
fn brackets_are_said_as_people_read_them_with_the_upper_end_inside() {
    let page = Page::read(&html(&[SMALL]));
    let tables = page.tables_with_class("grid");
    let [table] = tables.as_slice() else {
        panic!("one grid")
    };
    assert_eq!(
        table[0],
        ["Unit width (in) \\ Unit height (in)", "to 48", "over 48to 72"]
    );
    assert_eq!(table[3], ["over 30 to 48", "999.99", "1,200.00"]);
    let files = csv_files(&[SMALL]);
    let written = rows(&files["books/small-2026/item-base.csv"]);
    assert_eq!(written[0][1..], ["48", "72"]);
    assert_eq!(written[3], ["48", "999.99", "1200.00"]);
}

#[test]
fn an_option_that_ends_says_when_and_what_to_take_instead() {
    let flat = Page::read(&html(&[SMALL])).text();
    assert!(flat.contains("ends 2026-06-30; then take Grey"), "{flat}");
    let files = csv_files(&[SMALL]);
    let options = rows(&files["catalogs/small/options.csv"]);
    let green = options.iter().find(|row| row[3] == "green").unwrap();
    assert_eq!((&green[10][..], &green[12][..]), ("2026-06-30", "grey"));
}

#[test]
fn conditions_stand_in_words_and_as_written() {
    let flat = Page::read(&html(&[SMALL])).text();
    for says in [
        "Asked when: Operation is Casement operation == \"casement\"",
        "Double strength if Unit width is over 30 in; otherwise Single strength",
        "Determined by the plant",
        "(Unit width − 4 in) × (Unit height − 4 in)",
        "Of each line of: Unit base",
        "Serves as escape is yes",
        "the local code and licensed practice govern",
        "printed from the rules; the rules govern",
    ] {
        assert!(flat.contains(says), "`{says}` in\n{flat}");
    }
}

#[test]
fn pages_name_the_revisions_that_check_names() {
    let checked = program::json(&["check", SMALL, "--format", "json"]);
    let text = html(&[SMALL]);
    let files = csv_files(&[SMALL]);
    for (revision, file) in [
        (&checked["catalogs"][0]["revision"], "catalogs/small/catalog.csv"),
        (&checked["books"][0]["revision"], "books/small-2026/book.csv"),
    ] {
        let revision = revision.as_str().unwrap();
        assert!(text.contains(revision) && text.contains(&revision[..12]));
        assert!(files[file].contains(revision));
    }
}

#[test]
fn the_same_library_gives_the_same_bytes() {
    assert_eq!(html(&[DEMO]), html(&[DEMO]));
    assert_eq!(csv_files(&[DEMO]), csv_files(&[DEMO]));
}

#[test]
fn a_file_holds_what_standard_output_would() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("pages.html");
    let path = path.to_str().unwrap();
    assert_eq!(html(&[SMALL, "--out", path]), "");
    assert_eq!(std::fs::read_to_string(path).unwrap(), html(&[SMALL]));
}

#[test]
fn one_book_or_one_catalog_may_be_asked_for() {
    let titles = |arguments: &[&str]| Page::read(&html(arguments)).titles();
    let hinged = titles(&[DEMO, "--catalog", "hinged"]);
    assert_eq!(hinged.first().map(String::as_str), Some("Hinged windows"));
    assert!(
        !hinged.iter().any(|title| title.contains("Sliding")),
        "{hinged:?}"
    );
    let book = titles(&[DEMO, "--book", "hinged-2026"]);
    assert_eq!(book, ["Hinged windows", "Hinged windows, 2026"]);
    assert_eq!(titles(&[&format!("{SMALL}/small")]), ["Small windows"]);
    let book = titles(&[&format!("{SMALL}/books/small-2026")]);
    assert_eq!(book, ["Small windows, 2026"]);
}

#[test]
fn what_cannot_be_printed_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    std::fs::write(&file, "").unwrap();
    let below = file.join("pages.html");
    let (file, below) = (file.to_str().unwrap(), below.to_str().unwrap());
    for (name, arguments, code, says) in [
        ("no library", vec!["src"], 5, "is in no library"),
        ("no folder", vec!["no/such"], 5, "`no/such`"),
        (
            "faults",
            vec!["tests/fixtures/faulty-library"],
            5,
            "nothing was printed",
        ),
        (
            "a book mistyped",
            vec![DEMO, "--book", "hinged-2062"],
            2,
            "did you mean `hinged-2026`?",
        ),
        (
            "a book unknown",
            vec![SMALL, "--book", "zzz"],
            2,
            "there is `small-2026`",
        ),
        (
            "a catalog mistyped",
            vec![DEMO, "--catalog", "hingd"],
            2,
            "did you mean `hinged`?",
        ),
        (
            "CSV without a folder",
            vec![SMALL, "--format", "csv"],
            2,
            "add `--out FOLDER`",
        ),
        (
            "CSV into a file",
            vec![SMALL, "--format", "csv", "--out", file],
            1,
            "could not be written",
        ),
        (
            "HTML below a file",
            vec![SMALL, "--out", below],
            1,
            "could not be written",
        ),
        (
            "a policy alone",
            vec!["tests/fixtures/library/policies"],
            2,
            "no catalog and no price book",
        ),
    ] {
        let all: Vec<&str> = std::iter::once("print").chain(arguments).collect();
        let ran = run(&all);
        assert_eq!(
            (ran.code, ran.out.as_str()),
            (Some(code), ""),
            "{name}: {}",
            ran.err
        );
        let flat = ran.err.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(says), "{name}: {}", ran.err);
    }
}

#[test]
fn the_examples_of_the_help_run() {
    let folder = tempfile::tempdir().unwrap();
    copy_folder(DEMO, &folder.path().join(DEMO));
    for example in help_examples("print") {
        let output = program::program()
            .current_dir(folder.path())
            .args(&example)
            .output()
            .unwrap();
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(0), "{example:?}\n{said}");
    }
    assert!(folder.path().join("pages.html").is_file() && folder.path().join("sheets").is_dir());
}

/// The parser that the other tests rely on does refuse what is not well-formed.
#[test]
fn the_parser_of_these_tests_refuses_open_elements() {
    assert!(Document::parse("<p><b></p>").is_err());
}
