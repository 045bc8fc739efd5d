//! One helper: a text, a place and a finding in, the text for a person out.

use expect_test::{Expect, expect};

use super::*;
use crate::finding::Findings;
use crate::sheet::Sheet;

fn check(
    path: &str,
    text: &str,
    span: std::ops::Range<usize>,
    make: impl Fn(Finding, Place) -> Finding,
    expected: Expect,
) {
    let mut sources = Sources::new();
    let place = Place::new(sources.add(path, text), span);
    let finding = make(Finding::error("CODE", "something is wrong"), place.clone());
    expected.assert_eq(&render(&[finding], &sources, RenderStyle::default()));
}

fn at(finding: Finding, place: Place) -> Finding {
    finding.at(place)
}

#[test]
fn a_finding_shows_its_line_underlined_and_its_help() {
    let text = "[[rule]]\nid = \"R12\"\nwhen = 'colour == \"blu\"'\n";
    check(
        "catalog.toml",
        text,
        38..41,
        |finding, place| {
            finding
                .at(place)
                .with_help("options of `colour` are `black`, `blue`, `red`")
        },
        expect![[r#"
            error[CODE]: something is wrong
             --> catalog.toml:3:19
              |
            3 | when = 'colour == "blu"'
              |                   ^^^
              |
              = help: options of `colour` are `black`, `blue`, `red`

        "#]],
    );
}

#[test]
fn related_places_are_shown_too() {
    let related = |finding: Finding, place: Place| {
        let first = Place::new(place.file, 0..2);
        finding.at(place).with_related(first, "`id` stands here first")
    };
    check(
        "a.toml",
        "id = 1\nx = 2\nid = 3\n",
        13..15,
        related,
        expect![[r#"
            error[CODE]: something is wrong
             --> a.toml:3:1
              |
            3 | id = 3
              | ^^
              |
             ::: a.toml:1:1
              |
            1 | id = 1
              | ^^ `id` stands here first

        "#]],
    );
}

#[test]
fn a_finding_without_place_has_no_snippet() {
    check(
        "a.toml",
        "id = 1",
        0..0,
        |finding, _| finding.with_help("do this"),
        expect![[r#"
            error[CODE]: something is wrong
             |
             = help: do this

        "#]],
    );
}

#[test]
fn a_warning_is_called_one() {
    check(
        "a.toml",
        "id = 1",
        0..2,
        |_, place| Finding::warning("ODD", "odd").at(place),
        expect![[r#"
            warning[ODD]: odd
             --> a.toml:1:1
              |
            1 | id = 1
              | ^^

        "#]],
    );
}

#[test]
fn a_cell_is_named_by_row_and_column() {
    let mut sources = Sources::new();
    let file = sources.add(
        "energy.csv",
        "glazing,u_factor\n\"two\nlines\",0.3\nlow_e, 0;27 \n",
    );
    let findings = Findings::new();
    let sheet = Sheet::read(&sources, file, &findings).unwrap();
    let row = sheet.row(1).unwrap();
    findings.push(
        Finding::error("NOT_A_NUMBER", "`0;27` is no number")
            .at(row.place(sheet.column("u_factor").unwrap())),
    );
    findings.push(Finding::error("ROW", "this row is wrong").at(row.row_place()));
    let text = render(&findings.into_sorted(&sources), &sources, RenderStyle::default());
    expect![[r#"
        error[ROW]: this row is wrong
         --> energy.csv:4:1
          |
        4 | low_e, 0;27 
          | ^^^^^^^^^^^^ row 3

        error[NOT_A_NUMBER]: `0;27` is no number
         --> energy.csv:4:8
          |
        4 | low_e, 0;27 
          |        ^^^^ row 3, column B (`u_factor`)

    "#]]
    .assert_eq(&text);
}

#[test]
fn a_long_line_is_cut_around_the_place() {
    let text = format!(
        "when = '{} && blu && {}'\nx = 1",
        "a".repeat(5_000),
        "b".repeat(5_000)
    );
    check(
        "a.toml",
        &text,
        5_012..5_015,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:5013
          |
        1 | ...aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa && blu && bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb...
          |                                                         ^^^

    "#]],
    );
    check(
        "a.toml",
        &text,
        8..9_000,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:9
          |
        1 | when = 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa...
          |         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^

    "#]],
    );
    check(
        "a.toml",
        &text,
        0..4,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:1
          |
        1 | when = 'aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa...
          | ^^^^

    "#]],
    );
    check(
        "a.toml",
        &text,
        10_000..10_003,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:10001
          |
        1 | ...bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb'
          |                                                         ^^^

    "#]],
    );
    for width in expected_widths(&text) {
        assert!(width <= WIDTH + 20, "{width}");
    }
}

/// How wide the text is for places all over a line.
fn expected_widths(text: &str) -> Vec<usize> {
    let mut sources = Sources::new();
    let file = sources.add("a.toml", text);
    let finding = |start| Finding::error("A", "a").at(Place::new(file, start..start + 300));
    let findings: Vec<_> = (0..text.len()).step_by(97).map(finding).collect();
    let all = render(&findings, &sources, RenderStyle::default());
    all.lines().map(|line| line.chars().count()).collect()
}

#[test]
fn of_a_very_long_line_only_the_place_is_quoted() {
    let text = "a".repeat(LINE_BYTES_LIMIT) + "blu";
    let row = |finding: Finding, place: Place| {
        finding
            .at(Place {
                row: Some(7),
                ..place
            })
            .with_help("do this")
    };
    check(
        "a.csv",
        &text,
        LINE_BYTES_LIMIT..LINE_BYTES_LIMIT + 3,
        row,
        expect![[r#"
        error[CODE]: something is wrong
        --> a.csv:1:20001
         = note: row 7
         = note: the place reads `blu`
         = help: do this

    "#]],
    );
}

#[test]
fn letters_of_any_width_are_underlined_where_they_stand() {
    check(
        "a.toml",
        "é = \"größe\" 幅 = 1\t2\r\n",
        14..17,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:12
          |
        1 | é = "größe" 幅 = 1 2
          |            ^^^

    "#]],
    );
    check(
        "a.toml",
        "\u{1f600}x",
        1..3,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:1
          |
        1 | 😀x
          | ^^

    "#]],
    );
}

#[test]
fn a_place_over_several_lines_is_shown_by_its_first() {
    check(
        "a.toml",
        "a = [\n 1,\n 2,\n]\n",
        4..15,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:5
          |
        1 | a = [
          |     ^

    "#]],
    );
}

#[test]
fn a_place_at_or_past_the_end_is_shown_at_the_end() {
    check(
        "a.toml",
        "a = [\n",
        6..6,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:2:1
          |
        2 |
          | ^

    "#]],
    );
    check(
        "a.toml",
        "a = [",
        50..60,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:6
          |
        1 | a = [
          |      ^

    "#]],
    );
    check(
        "a.toml",
        "",
        0..0,
        at,
        expect![[r#"
        error[CODE]: something is wrong
         --> a.toml:1:1
          |
        1 |
          | ^

    "#]],
    );
}

#[test]
fn nothing_in_a_file_or_message_reaches_the_terminal_as_a_command() {
    let make = |_: Finding, place: Place| {
        Finding::error("BAD", "unknown key `\u{1b}[31m\u{202e}`\nsecond line")
            .at(place)
            .with_help("not \u{7}that")
    };
    check(
        "a\u{1b}.toml",
        "\u{1b}[31mkey\u{202e} = 1",
        0..8,
        make,
        expect![[r#"
            error[BAD]: unknown key `�[31m�`�second line
             --> a�.toml:1:1
              |
            1 | �[31mkey� = 1
              | ^^^^^^^^
              |
              = help: not �that

        "#]],
    );
}

#[test]
fn colour_is_used_only_when_asked_for() {
    let mut sources = Sources::new();
    let finding = Finding::error("A", "a").at(Place::new(sources.add("a", "x"), 0..1));
    let with = |colour| render(std::slice::from_ref(&finding), &sources, RenderStyle { colour });
    assert!(with(true).contains('\u{1b}'));
    assert!(!with(false).contains('\u{1b}'));
}

#[test]
fn no_findings_give_no_text() {
    assert_eq!(render(&[], &Sources::new(), RenderStyle::default()), "");
}
