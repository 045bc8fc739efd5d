//! Includes, and files that are not as they should be.

use super::*;

/// One attribute in a file of its own.
fn attribute(id: &str) -> String {
    format!("[[attribute]]\nid = \"{id}\"\nlabel = \"A\"\noptions = [{{ id = \"x\" }}]\nstandard = \"x\"\n")
}

fn file(include: &str, id: &str) -> String {
    format!("format = 1\ninclude = [{include}]\n{}", attribute(id))
}

fn catalog(include: &str, rest: &str) -> String {
    format!(
        "format = 1\ninclude = [{include}]\n{}{rest}",
        HEAD.trim_start_matches("format = 1\n")
    )
}

#[test]
fn included_files_come_first_in_order_each_once_relative_to_who_includes_them() {
    check_files(
        &[
            (
                "c/catalog.toml",
                &catalog("\"../common/b.toml\", \"a.toml\"", &attribute("last")),
            ),
            ("c/a.toml", &file("\"../common/deep/d.toml\"", "from_a")),
            (
                "common/b.toml",
                &file("\"deep/d.toml\", \"deep/../deep/e.toml\"", "from_b"),
            ),
            ("common/deep/d.toml", &file("", "from_d")),
            ("common/deep/e.toml", &file("\"d.toml\"", "from_e")),
        ],
        expect![[r#"
            from_d: x; standard Option(`x`)
            from_e: x; standard Option(`x`)
            from_b: x; standard Option(`x`)
            from_a: x; standard Option(`x`)
            last: x; standard Option(`x`)
        "#]],
    );
}

#[test]
fn includes_that_go_round_are_a_finding_that_names_the_chain() {
    check_files(
        &[
            ("c/catalog.toml", &catalog("\"a.toml\"", "")),
            ("c/a.toml", &file("\"b.toml\"", "from_a")),
            ("c/b.toml", &file("\"a.toml\"", "from_b")),
        ],
        expect![[r#"
            c/b.toml:2:12 `"a.toml"` INCLUDE_CYCLE `c/a.toml` includes itself: `c/a.toml` includes `c/b.toml` includes `c/a.toml`
              help: take one of these includes out
              c/a.toml:2:12 `"b.toml"`: `c/a.toml` includes `c/b.toml`
        "#]],
    );
    check_files(
        &[("c/catalog.toml", &catalog("\"catalog.toml\"", ""))],
        expect![[r#"
        c/catalog.toml:2:12 `"catalog.toml"` INCLUDE_CYCLE `c/catalog.toml` includes itself: `c/catalog.toml` includes `c/catalog.toml`
          help: take one of these includes out
    "#]],
    );
}

#[test]
fn an_include_stays_in_the_library() {
    check_files(
        &[(
            "c/catalog.toml",
            &catalog(
                "\"../../outside.toml\", \"/etc/passwd\", \"no.toml\", \"\", \"a\\\\b\"",
                "",
            ),
        )],
        expect![[r#"
            c/catalog.toml:2:12 `"../../outside.toml"` INCLUDE_LEAVES_LIBRARY `../../outside.toml` leaves the library
              help: move the file into the library; one `..` goes up one folder
            c/catalog.toml:2:34 `"/etc/passwd"` PATH_IS_ABSOLUTE `/etc/passwd` is an absolute path; expected a path relative to this file
              help: name the file from here, like `../common/colours.toml`
            c/catalog.toml:2:49 `"no.toml"` FILE_NOT_THERE the library has no file `c/no.toml`
              help: look at the spelling; the path starts from the folder of this file
            c/catalog.toml:2:60 `""` PATH_IS_EMPTY `` names no file; expected a path relative to this file
              help: name one, like `../common/colours.toml`
            c/catalog.toml:2:64 `"a\\b"` PATH_WITH_BACKSLASH `a\b` has a backslash; expected a path relative to this file
              help: write `/` between folders, on every system
        "#]],
    );
}

#[cfg(unix)]
#[test]
fn an_include_does_not_pass_through_a_link() {
    let folder = tempfile::tempdir().unwrap();
    write(
        folder.path(),
        &[
            ("c/catalog.toml", &catalog("\"link.toml\"", "")),
            ("c/a.toml", &file("", "from_a")),
        ],
    );
    std::os::unix::fs::symlink("a.toml", folder.path().join("c/link.toml")).unwrap();
    let (findings, mut sources) = (Findings::new(), Sources::new());
    let library = Library::find(folder.path(), &findings).unwrap();
    let path = library.locate(&folder.path().join("c")).unwrap();
    assert!(load_catalog(&library, &path, &mut sources, &findings).is_none());
    expect![[r#"
        c/catalog.toml:2:12 `"link.toml"` INCLUDE_THROUGH_LINK `link.toml` passes through the link `link.toml`
          help: name the file itself; a library follows no links
    "#]]
    .assert_eq(&lines_of(&findings.into_sorted(&sources), &sources));
}

#[test]
fn only_the_catalog_file_says_what_the_catalog_is() {
    check_files(
        &[("c/catalog.toml", &catalog("\"a.toml\"", "")), ("c/a.toml", HEAD)],
        expect![[r#"
            c/a.toml:2:1 `[catalog]` CATALOG_IN_INCLUDE `[catalog]` stands in an included file; it stands in `catalog.toml` alone
              help: take it out, or do not include this file
        "#]],
    );
}

#[test]
fn what_a_file_that_cannot_be_read_declares_is_not_missed_as_well() {
    check_files(
        &[
            (
                "c/catalog.toml",
                &catalog(
                    "\"a.toml\"",
                    "[[rule]]\nid = \"r\"\nrequire = 'from_a == \"x\"'\nmessage = \"m\"\n",
                ),
            ),
            ("c/a.toml", "format = 1\n[[attribute]\n"),
        ],
        expect![[r#"
            c/a.toml:2:13 `` TOML_GRAMMAR the brackets of the heading are not closed
              help: write `[name]` or `[[name]]`
        "#]],
    );
}

#[test]
fn files_that_are_empty_or_from_another_time_are_findings() {
    check_files(
        &[("c/catalog.toml", "")],
        expect![[r#"
        c/catalog.toml:1:1 `` EMPTY_FILE `c/catalog.toml` is empty
          help: was it saved?
    "#]],
    );
    check_files(
        &[("c/catalog.toml", "\u{feff}format = 1\n")],
        expect![[r#"
            c/catalog.toml:1:1 `` BYTE_ORDER_MARK `c/catalog.toml` begins with a byte-order mark, a sign that cannot be seen
              help: save it as UTF-8 without a byte-order mark: in editors `UTF-8`, not `UTF-8 with BOM`
            c/catalog.toml:1:1 `` MISSING_KEY catalog file lacks `catalog`
              help: add `catalog`
        "#]],
    );
    check_files(
        &[
            ("c/catalog.toml", &catalog("\"a.toml\"", "")),
            ("c/a.toml", "format = 2\n"),
        ],
        expect![[r#"
            c/a.toml:1:10 `2` UNKNOWN_FORMAT `format = 2` is not known; this program reads `format = 1`
              help: write `format = 1`
        "#]],
    );
    check_files(
        &[("c/other.toml", "")],
        expect![[r#"
        - FILE_NOT_THERE there is no file `c/catalog.toml`
          help: look at the spelling, and at the folder the name starts from
    "#]],
    );
    check(
        COLOUR.replace("white\" },", "white\" ").as_str(),
        expect![[r#"
            c/catalog.toml:10:28 `` TOML_GRAMMAR a bracket `{` is not closed before this
              help: close it with `}`
              c/catalog.toml:10:12 `{`: opened here
        "#]],
    );
}

#[test]
fn bytes_that_are_not_utf_8_are_named() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), &[("c/other.toml", "")]);
    std::fs::write(folder.path().join("c/catalog.toml"), b"format = 1 # \xff\n").unwrap();
    let (findings, mut sources) = (Findings::new(), Sources::new());
    let library = Library::find(folder.path(), &findings).unwrap();
    let path = library.locate(&folder.path().join("c")).unwrap();
    assert!(load_catalog(&library, &path, &mut sources, &findings).is_none());
    expect![[r#"
        - NOT_UTF8 `c/catalog.toml` is not saved as UTF-8: line 1 has a letter that cannot be read (byte 13, 0xff)
          help: save it as UTF-8 without a byte-order mark; accents and other special letters are lost otherwise
    "#]]
    .assert_eq(&lines_of(&findings.into_sorted(&sources), &sources));
}
