//! The likely mistakes of a product manager, each as the program prints it: writes and compares `docs/diagnostics.md`.
//!
//! Every case is one mistake in a small library that has none, `tests/diagnostics/base`: a file, what is found there and
//! what stands there instead. The program is run as its users run it; what it prints is the page. Always holds: one mistake
//! gives one finding, and that of the code intended. `UPDATE_EXPECT=1` writes the page anew.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

#[path = "../program/mod.rs"]
mod program;

mod cases;
mod page;

use std::fs;

use cases::{Case, Edit, GROUPS};

/// The library of the cases in a folder of its own, with the mistake of one case.
struct Copy {
    folder: tempfile::TempDir,
}

impl Copy {
    fn new(case: Option<&Case>) -> Copy {
        let folder = tempfile::tempdir().expect("a folder");
        program::copy_folder("tests/diagnostics/base", folder.path());
        if let Some(case) = case {
            let path = folder.path().join(case.file);
            let before = fs::read_to_string(&path).expect("the file of the case");
            fs::write(&path, case.edit.apply(&before, case.title)).expect("the file is written");
        }
        Copy { folder }
    }

    /// Runs the program in the library: an order is quoted, everything else checked.
    fn run(&self, file: &str, format: &str) -> (Option<i32>, String, String) {
        let arguments = if file == "order.toml" {
            ["quote", "order.toml"]
        } else {
            ["check", "."]
        };
        let output = program::program()
            .current_dir(self.folder.path())
            .args(arguments)
            .args(["--format", format])
            .output()
            .expect("the program starts");
        let text = |bytes| String::from_utf8(bytes).expect("answers are UTF-8");
        (output.status.code(), text(output.stdout), text(output.stderr))
    }
}

impl Edit {
    /// The file with the mistake in it.
    fn apply(&self, before: &str, title: &str) -> Vec<u8> {
        match self {
            Edit::Replace(find, with) => {
                assert!(before.contains(find), "{title}: the file has no {find}");
                before.replacen(find, with, 1).into_bytes()
            }
            Edit::All(find, with) => before.replace(find, with).into_bytes(),
            Edit::Mark => [b"\xef\xbb\xbf", before.as_bytes()].concat(),
            Edit::Utf16 => {
                let units = std::iter::once('\u{feff}')
                    .chain(before.chars())
                    .flat_map(|letter| letter.encode_utf16(&mut [0; 2]).to_vec());
                units.flat_map(u16::to_le_bytes).collect()
            }
        }
    }
}

/// The codes of all findings but those that something was left unchecked.
fn codes(answer: &str) -> Vec<String> {
    let answer: serde_json::Value =
        serde_json::from_str(answer).unwrap_or_else(|error| panic!("{error}: {answer}"));
    let findings = answer
        .get("findings")
        .and_then(|all| all.as_array())
        .cloned()
        .unwrap_or_default();
    let codes = findings
        .iter()
        .filter_map(|finding| finding.get("code")?.as_str());
    codes
        .filter(|code| *code != "NOT_CHECKED")
        .map(str::to_owned)
        .collect()
}

#[test]
fn the_library_of_the_cases_has_no_mistake() {
    let copy = Copy::new(None);
    for file in ["library.toml", "order.toml"] {
        let (code, out, err) = copy.run(file, "text");
        assert_eq!((code, err.as_str()), (Some(0), ""), "{out}");
    }
}

#[test]
fn one_mistake_gives_one_finding() {
    let mut wrong = String::new();
    for case in GROUPS.iter().flat_map(|group| group.cases) {
        let (_, out, err) = Copy::new(Some(case)).run(case.file, "json");
        if codes(&out) != [case.code] {
            wrong += &format!("{}, not {}\n{err}\n", case.title, case.code);
        }
    }
    assert_eq!(wrong, "");
}

#[test]
fn every_case_has_a_title_of_its_own_and_there_are_thirty_at_least() {
    let titles: Vec<&str> = GROUPS
        .iter()
        .flat_map(|group| group.cases)
        .map(|case| case.title)
        .collect();
    let distinct: std::collections::BTreeSet<&&str> = titles.iter().collect();
    assert_eq!(distinct.len(), titles.len());
    assert!(titles.len() >= 30, "there are {}", titles.len());
}

#[test]
fn the_page_shows_what_is_printed() {
    let page = page::page();
    expect_test::expect_file![concat!(env!("CARGO_MANIFEST_DIR"), "/docs/diagnostics.md")].assert_eq(&page);
}
