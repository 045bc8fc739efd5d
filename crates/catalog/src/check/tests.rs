//! One helper: a library in, findings and what is there out.

use std::fmt::Write as _;

use expect_test::{Expect, expect};

use super::*;
use crate::load::tests::{lines_of, write};

fn catalog(id: &str, rest: &str) -> String {
    format!(
        "format = 1\n[catalog]\nid = \"{id}\"\nlabel = \"C\"\nlength = {{ unit = \"in\" }}\n[[attribute]]\nid = \"exterior\"\nlabel = \"Exterior\"\noptions = [{{ id = \"white\" }}, {{ id = \"grey\" }}]\nstandard = \"white\"\n[[site_fact]]\nid = \"wet\"\nlabel = \"Wet place\"\nof = \"room\"\ntype = \"bool\"\n[[rule]]\nid = \"no-grey\"\nrequire = 'exterior != \"grey\"'\nmessage = \"{{exterior}} is not made.\"\n[[price]]\nid = \"base\"\nlabel = \"Base\"\n{rest}"
    )
}

const GREY: &str = "[[example]]\nid = \"grey\"\npicks = [{ attribute = \"exterior\", option = \"grey\" }]\ndate = 2026-11-25\nbreaks = [\"no-grey\"]\n";

fn book(catalog: &str) -> String {
    format!(
        "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"{catalog}\"\ncurrency = \"USD\"\nround_to = \"0.01\"\namounts = \"amounts.csv\"\n"
    )
}

const AMOUNTS: &str = "item,amount\nbase,450.00\n";

const POLICY: &str = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"c\"]\n";

fn report(files: &[(&str, &str)], at: &str) -> CheckReport {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), files);
    check_library(&folder.path().join(at))
}

fn check(files: &[(&str, &str)], at: &str, expected: Expect) {
    let report = report(files, at);
    let mut out = lines_of(&report.findings, &report.sources);
    for it in &report.summary.catalogs {
        writeln!(out, "catalog {} in {}: {:?}", it.id, it.folder, it.counts).unwrap();
    }
    for it in &report.summary.books {
        writeln!(
            out,
            "book {} in {} for {} in {}",
            it.id, it.folder, it.catalog, it.currency
        )
        .unwrap();
    }
    for it in &report.summary.policies {
        let catalogs: Vec<&str> = it.revisions.iter().map(|(id, _)| id.as_str()).collect();
        writeln!(
            out,
            "policy {} in {} for {}",
            it.id,
            it.folder,
            catalogs.join(" ")
        )
        .unwrap();
    }
    expected.assert_eq(&out);
}

fn library(rest: &str) -> Vec<(String, String)> {
    let own = |path: &str, text: String| (path.to_owned(), text);
    vec![
        own("c/catalog.toml", catalog("c", rest)),
        own("books/b/book.toml", book("c")),
        own("books/b/amounts.csv", AMOUNTS.to_owned()),
        own("p/policy.toml", POLICY.to_owned()),
    ]
}

fn check_with(rest: &str, expected: Expect) {
    let files = library(rest);
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    check(&files, "", expected);
}

#[test]
fn a_library_that_is_fine_says_what_is_there() {
    check_with(
        GREY,
        expect![[r#"
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
}

#[test]
fn revisions_are_those_of_the_model_and_follow_the_meaning() {
    let revision = |rest: &str| {
        let files = library(rest);
        let files: Vec<(&str, &str)> = files
            .iter()
            .map(|(path, text)| (path.as_str(), text.as_str()))
            .collect();
        let report = report(&files, "");
        let loaded = report.catalogs[0].catalog.revision();
        assert_eq!(report.summary.catalogs[0].revision, loaded);
        loaded
    };
    let plain = revision(GREY);
    assert_eq!(
        revision(&format!(
            "# a remark\n\n{}",
            GREY.replace(" = ", "=").replace("{ ", "{")
        )),
        plain
    );
    assert_ne!(
        revision(&GREY.replace("\"grey\"\npicks", "\"gray\"\npicks")),
        plain
    );
}

/// A rule over a room, and an example in which it is broken when it is dry.
const ROOM: &str = "[[site_fact]]\nid = \"dry\"\nlabel = \"D\"\nof = \"opening\"\ntype = \"bool\"\n\
     [[room_rule]]\nid = \"wet-one\"\nlabel = \"A wet one\"\nat_least_one = \"!dry\"\nmessage = \"None is wet.\"\n\
     [[example]]\nid = \"dry\"\nfacts = { dry = true }\ndate = 2026-11-25\nbreaks = []\nroom_breaks = [\"wet-one\"]\n";

#[test]
fn an_example_is_judged_as_the_only_one_of_its_room() {
    let check = |old: &str, new: &str, expected: Expect| {
        check_with(&format!("{ROOM}{GREY}").replace(old, new), expected)
    };
    check(
        "",
        "",
        expect![[r#"
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check(
        "room_breaks = [\"wet-one\"]",
        "",
        expect![[r#"
        c/catalog.toml:29:6 `"wet-one"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks room rule `wet-one`
          help: add an `[[example]]` with room_breaks = ["wet-one"]
        c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break nothing of its room, and breaks `wet-one`
          help: its unit is judged as the only one of its room; see `room_breaks`
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check(
        "dry = true",
        "dry = false",
        expect![[r#"
        c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break `wet-one` of its room, and breaks nothing
          help: its unit is judged as the only one of its room; see `room_breaks`
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check(
        "dry = true",
        "dry = \"unknown\"",
        expect![[r#"
        c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break `wet-one` of its room, and breaks nothing
          help: its unit is judged as the only one of its room; see `room_breaks`
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check(
        "dry = true }\ndate = 2026-11-25\nbreaks = []\nroom_breaks = [\"wet-one\"]",
        "dry = \"unknown\" }\ndate = 2026-11-25\nbreaks = []\nroom_undecided = []",
        expect![[r#"
            c/catalog.toml:29:6 `"wet-one"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks room rule `wet-one`
              help: add an `[[example]]` with room_breaks = ["wet-one"]
            c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should leave nothing of its room undecided, and leaves `wet-one`
              help: its unit is judged as the only one of its room; see `room_undecided`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}

#[test]
fn an_example_that_does_not_come_out_says_what_does() {
    check_with(
        &GREY.replace("breaks = [\"no-grey\"]", ""),
        expect![[r#"
            c/catalog.toml:24:6 `"grey"` EXAMPLE_DIFFERS example `grey` should break nothing, and breaks `no-grey`
              help: `no-grey`: grey is not made.
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check_with(
        &GREY.replace("option = \"grey\"", "option = \"white\""),
        expect![[r#"
        c/catalog.toml:24:6 `"grey"` EXAMPLE_DIFFERS example `grey` should break `no-grey`, and breaks nothing
          help: what it should break holds; change the example or the rule
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    let undecided = "[[rule]]\nid = \"dry\"\nrequire = \"!wet\"\nmessage = \"Not in a wet place.\"\n[[notice]]\nid = \"damp\"\nwhen = \"wet\"\ntext = \"t\"\n[[notice]]\nid = \"always\"\ntext = \"t\"\n";
    check_with(
        &format!(
            "{undecided}{GREY}undecided = []\nnotices = [\"damp\"]\n[[example]]\nid = \"wet\"\nfacts = {{ wet = true }}\ndate = 2026-11-25\nbreaks = [\"dry\"]\nundecided = []\nnotices = [\"always\", \"damp\"]\n"
        ),
        expect![[r#"
            c/catalog.toml:35:6 `"grey"` EXAMPLE_DIFFERS example `grey` should carry `damp`, and carries `always`
              help: only what is carried for certain counts
            c/catalog.toml:35:6 `"grey"` EXAMPLE_DIFFERS example `grey` should leave nothing undecided, and leaves `dry`
              help: not known: Wet place
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 2}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 2, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}

#[test]
fn the_total_of_an_example_is_proved_by_its_book() {
    let total = |book: &str, amount: &str| {
        format!(
            "{GREY}[[example]]\nid = \"plain\"\ndate = 2026-11-25\ntotal = {{ book = \"{book}\", amount = \"{amount}\" }}\n"
        )
    };
    check_with(
        &total("b", "450"),
        expect![[r#"
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check_with(
        &total("b", "455.00"),
        expect![[r#"
        c/catalog.toml:29:6 `"plain"` EXAMPLE_DIFFERS example `plain` should come to 455, and comes to 450.00 USD
          help: quote it to see the items and the steps that lead there
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
    check_with(
        &total("bb", "450"),
        expect![[r#"
        c/catalog.toml:31:18 `"bb"` UNKNOWN_BOOK the library has no price book `bb`
          help: name a price book whose catalog is `c`
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
}

#[test]
fn a_rule_without_an_example_that_breaks_it_alone_is_a_warning() {
    check_with(
        "",
        expect![[r#"
        c/catalog.toml:17:6 `"no-grey"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks rule `no-grey` and nothing else
          help: add an `[[example]]` with breaks = ["no-grey"]
        catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 0 }
        book b in books/b for c in USD
        policy p in p for c
    "#]],
    );
}

#[test]
fn a_part_of_a_library_is_checked_with_what_it_needs() {
    let broken = catalog("d", "[[rule]]\n");
    let mut files = library(GREY);
    files.push(("d/catalog.toml".to_owned(), broken));
    files.push((
        "books/e/book.toml".to_owned(),
        book("d").replace("\"b\"", "\"e\""),
    ));
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    for at in ["c", "c/catalog.toml", "p", "books/b"] {
        let report = report(&files, at);
        assert_eq!(lines_of(&report.findings, &report.sources), "", "{at}");
        let summary = &report.summary;
        let counts = (
            summary.catalogs.len(),
            summary.books.len(),
            summary.policies.len(),
        );
        let expected = match at {
            "p" => (0, 0, 1),
            "books/b" => (0, 1, 0),
            _ => (1, 0, 0),
        };
        assert_eq!(counts, expected, "{at}");
    }
    check(
        &files,
        "books",
        expect![[r#"
        books/e/book.toml:5:11 `"d"` (warning) NOT_CHECKED price book `e` is not checked against catalog `d`, which has errors
          help: put the catalog right and check again
        d/catalog.toml:23:1 `[[rule]]` MISSING_KEY rule lacks `id`
          help: add `id`
        d/catalog.toml:23:1 `[[rule]]` MISSING_KEY rule lacks `message`
          help: add `message`
        d/catalog.toml:23:1 `[[rule]]` MISSING_KEY rule lacks `require` or `table`
          help: add `require` or `table`
        book b in books/b for c in USD
    "#]],
    );
}

#[test]
fn what_is_not_there_or_empty_is_a_finding() {
    for (files, at) in [(&[][..], ""), (&[("empty/x.txt", "")], "empty")] {
        let report = report(files, at);
        let [finding] = report.findings.as_slice() else {
            panic!("{:?}", report.findings)
        };
        assert_eq!(finding.code(), "NOTHING_TO_CHECK");
        assert!(
            finding
                .message()
                .starts_with("there is no catalog, price book or policy in `")
        );
        assert!(report.has_errors());
    }
    let nowhere = check_library(Path::new("/no-such-folder-of-a-library"));
    expect![[r#"
        - NOT_THERE there is no file or folder `/no-such-folder-of-a-library`
          help: look at the spelling
    "#]]
    .assert_eq(&lines_of(&nowhere.findings, &nowhere.sources));
}

#[test]
fn books_and_policies_are_for_catalogs_of_the_library() {
    check(
        &[
            ("c/catalog.toml", &catalog("c", GREY)),
            ("b/book.toml", &book("cc")),
            ("p/policy.toml", &POLICY.replace("[\"c\"]", "[\"d\"]")),
            (
                "q/policy.toml",
                &POLICY.replace("[\"c\"]", "[]").replace("\"p\"", "\"q\""),
            ),
            ("r/policy.toml", "format = 1\n[policy]\nid = \"r\"\n"),
            ("e/book.toml", "format = 1\n"),
            ("f/book.toml", ""),
        ],
        "",
        expect![[r#"
            b/book.toml:5:11 `"cc"` UNKNOWN_CATALOG the library has no catalog `cc`
              help: did you mean `c`?
            e/book.toml:1:1 `` MISSING_KEY price book file lacks `book`
              help: add `book`
            f/book.toml:1:1 `` EMPTY_FILE `f/book.toml` is empty
              help: was it saved?
            p/policy.toml:5:13 `"d"` UNKNOWN_CATALOG the library has no catalog `d`
              help: catalogs are `c`
            q/policy.toml:3:6 `"q"` NO_CATALOGS policy `q` is for no catalog
              help: name at least one in `catalogs`
            r/policy.toml:2:1 `[policy]` MISSING_KEY policy `r` lacks `catalogs`
              help: add `catalogs`
            r/policy.toml:2:1 `[policy]` MISSING_KEY policy `r` lacks `label`
              help: add `label`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        "#]],
    );
}

#[test]
fn catalogs_have_different_ids() {
    check(
        &[
            ("c/catalog.toml", &catalog("c", GREY)),
            ("d/catalog.toml", &catalog("c", GREY)),
        ],
        "",
        expect![[r#"
            d/catalog.toml:3:6 `"c"` DUPLICATE_ID the catalog in `d` has the id `c` of the catalog in `c`
              help: give one of the two another id
              c/catalog.toml:3:6 `"c"`: `c` stands here first
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            catalog c in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        "#]],
    );
}

#[test]
fn an_option_list_that_nobody_uses_is_a_warning_once() {
    let lists = "format = 1\n[[option_list]]\nid = \"used\"\noptions = [{ id = \"x\" }]\n[[option_list]]\nid = \"unused\"\noptions = [{ id = \"x\" }]\n";
    let with = |id: &str, rest: &str| format!("include = [\"../lists.toml\"]\n{}", catalog(id, rest));
    let uses =
        format!("{GREY}[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = \"used\"\nstandard = \"x\"\n");
    let (one, other) = (with("c", &uses), with("d", GREY));
    let files = [
        ("lists.toml", lists),
        ("c/catalog.toml", one.as_str()),
        ("d/catalog.toml", other.as_str()),
    ];
    check(
        &files,
        "",
        expect![[r#"
        lists.toml:6:6 `"unused"` (warning) UNUSED_OPTION_LIST no attribute uses option list `unused`
          help: write `options = "unused"` in an attribute, or take the list out
        catalog c in c: Counts { attributes: 2, options: 3, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        catalog d in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
    "#]],
    );
    check(
        &files,
        "d",
        expect![[r#"
        catalog d in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
    "#]],
    );
}

#[test]
fn a_library_file_says_what_the_library_is() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), &[("c/catalog.toml", &catalog("c", GREY))]);
    std::fs::write(folder.path().join("library.toml"), "format = 1\nlibary = 1\n").unwrap();
    let report = check_library(folder.path());
    expect![[r#"
        library.toml:2:1 `libary` UNKNOWN_KEY unknown key `libary` in library file
          help: did you mean `library`?
    "#]]
    .assert_eq(&lines_of(&report.findings, &report.sources));
}

#[test]
fn a_rule_is_explained_by_its_own_lines_its_table_and_its_examples() {
    let table = "\n[[rule]]\nid = \"pairs\"   # a remark\ntable = \"pairs.csv\"\nrows = \"allowed\"\nmessage = \"{exterior} alone.\"\nbasis = \"somewhere\"\nwaivable = true\neffect = \"warn\"\nauthority = \"code\"\n\n[[example]]\nid = \"both\"\npicks = [\n  { attribute = \"exterior\", option = \"grey\" },\n]\ndate = 2026-11-25\nbreaks = [\"no-grey\", \"pairs\"]\n[[rule]]\nid = \"long\"\ntable = \"long.csv\"\nrows = \"forbidden\"\nmessage = \"m\"\n";
    // More rows than are shown.
    let rows: Vec<String> = (0..=ROWS_SHOWN)
        .map(|year| format!("grey,{}..{}\n", year * 2, year * 2 + 1))
        .collect();
    let long = format!("exterior,year\n{}", rows.concat());
    let year = "[[site_fact]]\nid = \"year\"\nlabel = \"Year\"\nof = \"house\"\ntype = \"number\"\n";
    let files = [
        ("c/catalog.toml", catalog("c", &format!("{table}{year}"))),
        ("c/pairs.csv", "exterior\nwhite\n".to_owned()),
        ("c/long.csv", long),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    let report = report(&files, "");
    assert!(!report.has_errors());
    let [explained] = &report.explain("pairs")[..] else {
        panic!("one catalog has the rule")
    };
    expect![[r#"
        pairs of c by code Warn waivable true rows Some(1)
        {exterior} alone.
        Some("somewhere")
        c/catalog.toml:24
          [[rule]]
          id = "pairs"   # a remark
          table = "pairs.csv"
          rows = "allowed"
          message = "{exterior} alone."
          basis = "somewhere"
          waivable = true
          effect = "warn"
          authority = "code"
        c/pairs.csv:1
          exterior
          white
        c/catalog.toml:34
          [[example]]
          id = "both"
          picks = [
            { attribute = "exterior", option = "grey" },
          ]
          date = 2026-11-25
          breaks = ["no-grey", "pairs"]
        both false"#]]
    .assert_eq(&explained_lines(explained));
    assert_eq!(report.explain("no-such-rule"), []);
    let long = &report.explain("long")[0];
    assert_eq!(
        (long.row_count, long.table.is_none()),
        (Some(ROWS_SHOWN + 1), true)
    );
    assert_eq!(report.rule_ids().count(), 3);
}

fn explained_lines(it: &RuleExplanation) -> String {
    let mut out = format!(
        "{} of {} by {} {:?} waivable {} rows {:?}\n{}\n{:?}\n",
        it.rule, it.catalog, it.authority, it.effect, it.waivable, it.row_count, it.message, it.basis
    );
    let mut push = |lines: &SourceLines| {
        writeln!(
            out,
            "{}:{}\n  {}",
            lines.path,
            lines.first_line,
            lines.lines.join("\n  ")
        )
        .unwrap();
    };
    push(&it.lines);
    push(it.table.as_ref().unwrap());
    for example in &it.examples {
        push(&example.lines);
    }
    let alone: Vec<String> = it
        .examples
        .iter()
        .map(|it| format!("{} {}", it.id, it.is_alone))
        .collect();
    out + &alone.join(", ")
}

#[test]
fn what_needs_a_catalog_that_cannot_be_read_is_left_unchecked_without_an_error_of_its_own() {
    let files = [
        (
            "library.toml",
            "format = 1\n[library]\nid = \"l\"\nlabel = \"L\"\n",
        ),
        ("c/catalog.toml", "format = 1\n[catalog\n"),
        ("books/b/book.toml", &book("c")),
        ("books/b/amounts.csv", AMOUNTS),
        ("p/policy.toml", POLICY),
    ];
    check(
        &files,
        "",
        expect![[r#"
        books/b/book.toml:5:11 `"c"` (warning) NOT_CHECKED price book `b` is not checked: `c` may be a catalog that cannot be read
          help: put the catalog right and check again
        c/catalog.toml:2:9 `` TOML_GRAMMAR the brackets of the heading are not closed
          help: write `[name]` or `[[name]]`
        p/policy.toml:5:13 `"c"` (warning) NOT_CHECKED policy `p` is not checked: `c` may be a catalog that cannot be read
          help: put the catalog right and check again
    "#]],
    );
}

#[test]
fn the_longest_and_deepest_expressions_are_judged_on_a_small_stack() {
    let chain = |first: &str, more: &str, count: usize| format!("{first}{}", more.repeat(count));
    let of_wet = r#"exterior == "white""#;
    let negations = format!("{}1 > -9", "-".repeat(62));
    let conditions: Vec<(&str, String)> = vec![
        ("product", format!("{} > 0", chain("1", "*3", 63))),
        ("quotient", format!("{} > 0", chain("1", "/3", 63))),
        ("sum", format!("{} > 0", chain("1", "+3", 20_000))),
        ("difference", format!("{} < 2", chain("1", "-3", 20_000))),
        (
            "nested differences",
            format!("{}1{} > -9", "1-(".repeat(60), ")".repeat(60)),
        ),
        ("and", chain("true", "&&true", 9_000)),
        ("or", chain("true", "||true", 9_000)),
        ("not", format!("{}(true)", "!".repeat(64))),
        ("negations", negations),
        ("conditionals", format!("{}true", "true?true:".repeat(64))),
        (
            "comparisons",
            format!("{}true{}", "true==(".repeat(60), ")".repeat(60)),
        ),
        (
            "in",
            format!("exterior in [{}]", chain("\"white\"", ",\"white\"", 6_000)),
        ),
        (
            "calls",
            format!("{}1{} >= 0", "max(0,".repeat(60), ")".repeat(60)),
        ),
        (
            "any in all",
            format!(
                "all(any({}{of_wet} && trim == \"a\"{}))",
                "!!(".repeat(18),
                ")".repeat(18)
            ),
        ),
    ];
    let parts = "[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\nwhen = 'exterior == \"white\"'\n[[attribute]]\nid = \"trim\"\nlabel = \"T\"\nper = \"sash\"\noptions = [{ id = \"a\" }]\nstandard = \"a\"\n";
    for (row, condition) in conditions {
        let rest = format!(
            "{parts}[[rule]]\nid = \"long\"\nrequire = '{condition}'\nmessage = \"m\"\n[[example]]\nid = \"e\"\ndate = 2026-11-25\n"
        );
        let text = catalog("c", &rest);
        let work = move || {
            let report = report(&[("c/catalog.toml", &text)], "c");
            let judged = report.findings.into_iter();
            let wrong: Vec<Finding> = judged.filter(|f| f.code() != "RULE_WITHOUT_EXAMPLE").collect();
            lines_of(&wrong, &report.sources)
        };
        let small = std::thread::Builder::new().stack_size(512 * 1024);
        assert_eq!(small.spawn(work).unwrap().join().unwrap(), "", "{row}");
    }
}

#[test]
fn a_policy_that_rounds_to_no_step_of_a_books_currency_is_warned_of() {
    let mut files = library(GREY);
    for (path, text) in &mut files {
        if path == "books/b/book.toml" {
            *text = text.replace("USD", "JPY").replace("0.01", "1");
        }
        if path == "books/b/amounts.csv" {
            *text = text.replace("450.00", "450");
        }
        if path == "p/policy.toml" {
            text.push_str("round_to = \"0.50\"\n");
        }
    }
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    let report = report(&files, "");
    let said = |f: &&Finding| f.code() == "BAD_ROUNDING" && !f.is_error() && f.message().contains("JPY");
    assert_eq!(report.findings.iter().filter(said).count(), 1);
}
