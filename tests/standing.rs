//! What a quote says in its heading and at its foot when a unit holds with a reserve: a sign-off that is or may be needed,
//! a rule of code that was not applied, a rule that a waiver sets aside.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use std::fs;
use std::path::Path;

use program::{check_says, run};

const CATALOG: &str = r#"
format = 1
[catalog]
id = "small"
label = "Small windows"
length = { unit = "in" }
[[attribute]]
id = "operation"
label = "Operation"
options = [{ id = "fixed", label = "Fixed" }]
standard = "fixed"
[[site_fact]]
id = "sleeping"
label = "Sleeping room"
of = "room"
type = "bool"
[[rule]]
id = "look-at-it"
authority = "code"
effect = "sign_off"
require = '!sleeping'
message = "Someone sleeps here: the official looks at it."
[[rule]]
id = "escape"
authority = "code"
require = '!sleeping'
message = "Check the escape opening."
waivable = true
[[price]]
id = "base"
label = "Window"
"#;

const BOOK: &str = r#"
format = 1
[book]
id = "small-2026"
label = "Small, 2026"
catalog = "small"
currency = "USD"
round_to = "0.01"
amounts = "amounts.csv"
"#;

/// Quotes one opening with these facts and lines of its unit; returns the exit code and what was printed.
fn quoted(facts: &str, unit: &str, arguments: &[&str]) -> (Option<i32>, String) {
    let folder = tempfile::tempdir().expect("an empty folder");
    let write = |path: &str, text: &str| {
        let path = folder.path().join(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("the folder");
        fs::write(path, text.trim_start()).expect("the file");
    };
    write(
        "library/library.toml",
        "format = 1\n[library]\nid = \"l\"\nlabel = \"L\"\n",
    );
    write("library/small/catalog.toml", CATALOG);
    write("library/book/book.toml", BOOK);
    write("library/book/amounts.csv", "item,amount\nbase,100.00\n");
    let order = format!(
        "format = 1\n[order]\nid = \"1\"\ndate = 2026-11-25\ncurrency = \"USD\"\n\
         [[catalog]]\nid = \"small\"\nfolder = \"library/small\"\nbook = \"library/book\"\n\
         [[opening]]\ntag = \"A\"\nfacts = {{ {facts} }}\n[[opening.unit]]\ncatalog = \"small\"\n{unit}\n"
    );
    write("order.toml", &order);
    let order = folder.path().join("order.toml");
    let order = Path::new(&order).to_str().expect("a path").to_owned();
    let arguments: Vec<&str> = ["quote", &order]
        .into_iter()
        .chain(arguments.iter().copied())
        .collect();
    let ran = run(&arguments);
    (ran.code, ran.out)
}

const WAIVER: &str = "waivers = [{ rule = \"escape\", reference = \"W-1\", from = 2026-01-01 }]";

#[test]
fn a_sign_off_that_waits_for_a_fact_is_said_to_be_possible() {
    let (code, text) = quoted("", WAIVER, &[]);
    assert_eq!(code, Some(0), "{text}");
    check_says(
        &text,
        &[
            "holds, may need a sign-off",
            "May need a sign-off, which waits for what is not known: A",
        ],
    );
}

#[test]
fn a_sign_off_that_is_needed_is_said_to_be_needed() {
    let (_, text) = quoted("sleeping = true", WAIVER, &[]);
    check_says(
        &text,
        &[
            "holds, needs a sign-off",
            "Needs a sign-off before it is ordered: A",
            "A published rule was set aside by a waiver, which only the official can excuse: A (escape)",
        ],
    );
}

#[test]
fn no_sign_off_is_spoken_of_where_none_is_needed() {
    let (code, text) = quoted("sleeping = false", "", &[]);
    assert_eq!(code, Some(0), "{text}");
    assert!(!text.contains("sign-off") && !text.contains("waiver"), "{text}");
}

#[test]
fn a_unit_that_holds_only_because_rules_were_not_applied_says_so_at_the_top_and_at_the_foot() {
    let (code, text) = quoted("sleeping = true", "", &["--without", "code"]);
    assert_eq!(code, Some(0), "{text}");
    check_says(
        &text,
        &[
            "holds without the rules that were not applied",
            "Not applied: would not hold",
            "Would not hold under the rules that were not applied: A (escape, look-at-it)",
            "The rules of `code` were not applied.",
        ],
    );
    let (_, text) = quoted("", "", &["--without", "code"]);
    check_says(&text, &["Not applied: cannot be decided"]);
    assert!(!text.contains("Would not hold"), "{text}");
}
