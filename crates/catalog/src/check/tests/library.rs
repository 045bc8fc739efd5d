//! What a library holds, and what of it stays unchecked.

use super::*;

#[test]
fn a_library_that_is_fine_says_what_is_there() {
    check_with(
        GREY,
        expect![[r#"
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
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
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
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
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            catalog c in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
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
            catalog c in c: Counts { attributes: 2, options: 3, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            catalog d in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
        "#]],
    );
    check(
        &files,
        "d",
        expect![[r#"
            catalog d in d: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
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
