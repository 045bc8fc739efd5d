//! Files as they are kept, and what is said of those that cannot be read.

use super::*;
use expect_test::{Expect, expect};

/// Writes the bytes to a file, reads it, and compares the text kept and the findings.
fn check_read(bytes: &[u8], expected: Expect) {
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("a.toml");
    std::fs::write(&disk, bytes).unwrap();
    check_path(&disk, expected);
}

fn check_path(disk: &Path, expected: Expect) {
    let mut sources = Sources::new();
    let findings = Findings::new();
    let file = sources.read_limited(disk, "a.toml", None, 40, &findings);
    let mut out = format!("{:?}\n", file.map(|file| sources.text(file)));
    for finding in findings.into_sorted(&sources) {
        out += &format!("{} {}\n", finding.code(), finding.message());
        out += &finding
            .help()
            .map_or(String::new(), |help| format!("  help: {help}\n"));
    }
    expected.assert_eq(&out);
}

#[test]
fn a_file_is_kept_as_it_is() {
    check_read(
        "é = 1\r\n".as_bytes(),
        expect![[r#"
        Some("é = 1\r\n")
    "#]],
    );
}

#[test]
fn bytes_that_are_not_utf_8_are_named_with_offset_and_line() {
    check_read(
        b"a = 1\nb = \"caf\xe9\"\n",
        expect![[r#"
            None
            NOT_UTF8 `a.toml` is not saved as UTF-8: line 2 has a letter that cannot be read (byte 14, 0xe9)
              help: save it as UTF-8 without a byte-order mark; accents and other special letters are lost otherwise
        "#]],
    );
}

#[test]
fn sixteen_bit_text_is_recognised() {
    check_read(
        b"\xff\xfea\0=\0",
        expect![[r#"
            None
            NOT_UTF8 `a.toml` is saved as UTF-16; expected UTF-8
              help: save it as UTF-8 without a byte-order mark; a spreadsheet calls UTF-16 `Unicode text`
        "#]],
    );
}

#[test]
fn a_byte_order_mark_is_an_error_and_reading_goes_on_after_it() {
    check_read(
        b"\xef\xbb\xbfa = 1\n",
        expect![[r#"
            Some("a = 1\n")
            BYTE_ORDER_MARK `a.toml` begins with a byte-order mark, a sign that cannot be seen
              help: save it as UTF-8 without a byte-order mark: in editors `UTF-8`, not `UTF-8 with BOM`
        "#]],
    );
}

#[test]
fn a_byte_order_mark_before_a_sheet_is_passed_over() {
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("pairs.CSV");
    std::fs::write(&disk, b"\xef\xbb\xbfa,b\n").unwrap();
    let (mut sources, findings) = (Sources::new(), Findings::new());
    let file = sources.read(&disk, "pairs.CSV", None, &findings).unwrap();
    assert_eq!(sources.text(file), "a,b\n");
    assert!(findings.into_sorted(&sources).is_empty());
}

#[test]
fn an_empty_or_blank_file_is_an_error() {
    check_read(
        b"",
        expect![[r#"
        None
        EMPTY_FILE `a.toml` is empty
          help: was it saved?
    "#]],
    );
    check_read(
        b" \n\t\n",
        expect![[r#"
        None
        EMPTY_FILE `a.toml` is empty
          help: was it saved?
    "#]],
    );
    check_read(
        b"\xef\xbb\xbf",
        expect![[r#"
            None
            BYTE_ORDER_MARK `a.toml` begins with a byte-order mark, a sign that cannot be seen
              help: save it as UTF-8 without a byte-order mark: in editors `UTF-8`, not `UTF-8 with BOM`
            EMPTY_FILE `a.toml` is empty
              help: was it saved?
        "#]],
    );
}

#[test]
fn the_longest_file_is_read_and_one_byte_more_is_not() {
    check_read(
        "12345678".repeat(5).as_bytes(),
        expect![[r#"
        Some("1234567812345678123456781234567812345678")
    "#]],
    );
    check_read(
        ("12345678".repeat(5) + "9").as_bytes(),
        expect![[r#"
        None
        FILE_TOO_LARGE `a.toml` is longer than 40 bytes, the most that is read of one file
          help: split it
    "#]],
    );
}

#[test]
fn a_file_or_folder_that_is_not_there_is_an_error() {
    let folder = tempfile::tempdir().unwrap();
    check_path(
        &folder.path().join("no-folder/a.toml"),
        expect![[r#"
        None
        FILE_NOT_THERE there is no file `a.toml`
          help: look at the spelling, and at the folder the name starts from
    "#]],
    );
}

#[test]
fn a_folder_is_not_a_file() {
    let folder = tempfile::tempdir().unwrap();
    check_path(
        folder.path(),
        expect![[r#"
        None
        FOLDER_NOT_FILE `a.toml` is a folder; expected a file
          help: name a file in it
    "#]],
    );
}

#[test]
fn a_file_that_is_read_twice_is_kept_once() {
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("a.toml");
    std::fs::write(&disk, "a = 1").unwrap();
    let (mut sources, findings) = (Sources::new(), Findings::new());
    let first = sources.read(&disk, "a.toml", None, &findings);
    assert!(first.is_some());
    assert_eq!(sources.read(&disk, "a.toml", None, &findings), first);
    assert_eq!(sources.files().count(), 1);
}

#[test]
fn an_empty_file_that_is_read_twice_is_never_a_file() {
    let folder = tempfile::tempdir().unwrap();
    let disk = folder.path().join("a.toml");
    std::fs::write(&disk, "").unwrap();
    let (mut sources, findings) = (Sources::new(), Findings::new());
    assert_eq!(sources.read(&disk, "a.toml", None, &findings), None);
    assert_eq!(sources.read(&disk, "a.toml", None, &findings), None);
    assert!(findings.has_errors());
}

#[test]
fn columns_count_characters_and_every_offset_has_a_position() {
    let mut sources = Sources::new();
    let file = sources.add("a", "é\nüx");
    let at = |offset| {
        let position = sources.position(&Place::new(file, offset..offset));
        (position.line, position.column)
    };
    let all: Vec<_> = (0..8).map(at).collect();
    assert_eq!(
        all,
        [(1, 1), (1, 1), (1, 2), (2, 1), (2, 1), (2, 2), (2, 3), (2, 3)]
    );
}
