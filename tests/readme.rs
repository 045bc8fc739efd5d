//! The answers on the README are what the program says. `UPDATE_EXPECT=1` writes them anew.
//!
//! A comment above a block says which answer it is: the block of an opening, cut where an ellipsis stands; what does not hold
//! of another; the end of the quote; the options of an opening, cut likewise; a check of the demo library; a check of a copy of
//! it with two mistakes.

#![expect(
    clippy::panic,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;
mod samples;

use std::fs;
use std::path::Path;

use program::{block, copy_folder, run, without_times};
use samples::samples;

const HOUSE: &str = "examples/corner-house/order.toml";
const LIBRARY: &str = "examples/library";

/// The two mistakes: the file, what stands there, what stands there then.
const MISTAKES: [[&str; 3]; 2] = [
    [
        "hinged/grille.toml",
        "interior == \"black\"",
        "interior == \"blak\"",
    ],
    ["hinged/tables/deductions.csv", "pocket,3/8,", "pocket,8-Mar,"],
];

/// From one heading of an opening up to another.
fn cut<'a>(text: &'a str, from: &str, to: &str) -> &'a str {
    let from = text.find(from).unwrap_or_else(|| panic!("no `{from}`"));
    let to = text[from..].find(to).unwrap_or_else(|| panic!("no `{to}`"));
    text[from..from + to].trim_end()
}

fn answer(which: &str) -> String {
    let quote = || run(&["quote", HOUSE]).out;
    match which {
        "opening" => {
            let quote = quote();
            let opening = block(&quote, "B1");
            let end = opening
                .find("\n  Cautions")
                .or_else(|| opening.find("\n  Warranty"));
            let hinge = opening
                .lines()
                .find(|line| line.contains("filled in"))
                .expect("a departure");
            let because = cut(opening, "    With standards alone", "\n\n  Price of one unit");
            let price = cut(&opening[..end.expect("notices")], "  Price of one unit", " USD");
            let cheapest = cut(opening, "    The cheapest unit", "\n\n");
            format!(
                "{}\n\n  ...\n{hinge}\n  ...\n{because}\n\n{price} USD\n{cheapest}\n",
                cut(opening, "B1: ", "\n  Chosen")
            )
        }
        "conflict" => {
            let quote = quote();
            let opening = block(&quote, "D1");
            format!("{}\n", cut(opening, "  Does not hold", "\n\n"))
        }
        "end" => {
            let quote = quote();
            let (_, end) = quote.rsplit_once("====\n").expect("the line above the totals");
            end.to_owned()
        }
        "options" => {
            let options = run(&["options", HOUSE, "--opening", "B1"]).out;
            let handle = cut(&options, "  Handle\n", "\n  Locks");
            format!(
                "{}\n\n  ...\n{handle}\n",
                cut(&options, "Options of", "\n  Installation")
            )
        }
        "check" => run(&["check", LIBRARY]).out,
        "mistakes" => with_mistakes(),
        other => panic!("no answer is called `{other}`"),
    }
}

fn with_mistakes() -> String {
    let folder = tempfile::tempdir().expect("an empty folder");
    copy_folder(LIBRARY, folder.path());
    for [file, before, after] in MISTAKES {
        let path = folder.path().join(file);
        let text = fs::read_to_string(&path).expect("the file");
        assert!(text.contains(before), "{file} has no `{before}`");
        fs::write(path, text.replacen(before, after, 1)).expect("the file with a mistake");
    }
    let ran = run(&["check", folder.path().to_str().expect("a path")]);
    assert_eq!(ran.code, Some(5));
    ran.err
}

#[test]
fn every_answer_on_the_readme_is_what_the_program_says() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    let page = fs::read_to_string(&path).expect("the README");
    let mut written = page.clone();
    let found = samples(&page);
    assert_eq!(found.len(), 6, "answers on the page");
    for sample in found {
        let said = answer(&sample.verb);
        written = written.replace(
            &format!("```text\n{}```", sample.text),
            &format!("```text\n{said}```"),
        );
    }
    let differs = without_times(&written) != without_times(&page);
    if differs && std::env::var_os("UPDATE_EXPECT").is_some() {
        fs::write(path, written).expect("the README, written anew");
    } else {
        assert!(
            !differs,
            "UPDATE_EXPECT=1 writes the page anew; it should be\n{written}"
        );
    }
}
