//! TOML as a tree, and its mistakes.

use super::*;
use expect_test::expect;

#[test]
fn toml_keeps_order_numbers_as_written_and_dates() {
    let text = "z = 1_000\na = 0.270\nh = 0xFF\nneg = -3\nbig = 99999999999999999999\n[t]\nd = 2024-02-29\nb = true\n[[list]]\nx = \"q\"\n[[list]]\nx.y = [1, 'two']\n";
    check(
        "a.toml",
        text,
        expect![[r#"
        {z: integer 1000, a: decimal 0.270, h: integer 255, neg: integer -3, big: integer 99999999999999999999, t: {d: date 2024-02-29, b: true}, list: [{x: "q"}, {x: {y: [integer 1, "two"]}}]}
    "#]],
    );
}

#[test]
fn every_mistake_in_toml_is_reported_and_there_is_no_tree() {
    check(
        "a.toml",
        "a = \nb = [1, 2\nc = 3\n",
        expect![[r#"
            no tree
            1:5 "" TOML_GRAMMAR a value is missing
              help: write it after the `=`; text stands in quotes
            3:6 "" TOML_GRAMMAR a bracket `[` is not closed before this
              help: close it with `]`
              2:5 "[": opened here
        "#]],
    );
    check(
        "a.toml",
        "a = [\n  { b = white },\n  [1, 2\n\n[t]\nx = 1\n",
        expect![[r#"
            no tree
            2:9 "white" TOML_GRAMMAR found `white`, expected a value
              help: put text and sizes in quotes: `"white"`
            5:1 "" TOML_GRAMMAR a bracket `[` is not closed before this
              help: close it with `]`
              3:3 "[": opened here
        "#]],
    );
    check(
        "a.toml",
        "a = white\n",
        expect![[r#"
            no tree
            1:5 "white" TOML_GRAMMAR found `white`, expected a value
              help: put text and sizes in quotes: `"white"`
        "#]],
    );
    check(
        "a.toml",
        "ok = 1\nx = \"unclosed\ny = 2\n[t\nz = 1..2\n",
        expect![[r#"
            no tree
            2:14 "" TOML_GRAMMAR a text that begins with `"` is not closed on its line
              help: close it with `"`; a text of several lines stands between `"""`
            4:3 "" TOML_GRAMMAR the brackets of the heading are not closed
              help: write `[name]` or `[[name]]`
        "#]],
    );
}

#[test]
fn a_key_that_stands_twice_is_placed_at_both() {
    check(
        "a.toml",
        "id = 1\nx = { id = 2 }\nid = 3\n",
        expect![[r#"
            {id: integer 1, x: {id: integer 2}}
            3:1 "id" DUPLICATE_KEY key `id` stands twice in the same table
              help: keep one of the two
              1:1 "id": `id` stands here first
        "#]],
    );
    check(
        "a.toml",
        "a.id = 1\nid = 2\nb = { id = 5 }\nid = 3\n",
        expect![[r#"
            {a: {id: integer 1}, id: integer 2, b: {id: integer 5}}
            4:1 "id" DUPLICATE_KEY key `id` stands twice in the same table
              help: keep one of the two
              2:1 "id": `id` stands here first
        "#]],
    );
    check(
        "a.toml",
        "x = { id = 1, y = { id = 4 }, id = 2 }\n",
        expect![[r#"
            {x: {id: integer 1, y: {id: integer 4}}}
            1:31 "id" DUPLICATE_KEY key `id` stands twice in the same table
              help: keep one of the two
              1:7 "id": `id` stands here first
        "#]],
    );
    check(
        "a.toml",
        "[[r]]\nid = 1\n[[r]]\nid = 2\n\"id\" = 3\n",
        expect![[r#"
            {r: [{id: integer 1}, {id: integer 2}]}
            5:1 "\"id\"" DUPLICATE_KEY key `id` stands twice in the same table
              help: keep one of the two
              4:1 "id": `id` stands here first
        "#]],
    );
}

#[test]
fn a_heading_that_stands_twice_is_placed_at_both() {
    check(
        "a.toml",
        "[ catalog ] # first\nid = 1\n[b]\n[catalog]\n",
        expect![[r#"
            no tree
            4:2 "catalog" DUPLICATE_KEY the heading `catalog` stands twice
              help: write `[[catalog]]`, with two brackets, each time, or keep one of the two
              1:1 "[ catalog ] # first": `catalog` stands here first
        "#]],
    );
    check(
        "a.toml",
        "[a.b]\n[x]\nb = 1\n[a.b]\n",
        expect![[r#"
            no tree
            4:4 "b" DUPLICATE_KEY the heading `b` stands twice
              help: write `[[b]]`, with two brackets, each time, or keep one of the two
              1:1 "[a.b]": `b` stands here first
        "#]],
    );
    check(
        "a.toml",
        "a = 1\n[a]\n",
        expect![[r#"
            no tree
            2:2 "a" DUPLICATE_KEY the heading `a` stands twice
              help: write `[[a]]`, with two brackets, each time, or keep one of the two
              1:1 "a = 1": `a` stands here first
        "#]],
    );
    check(
        "a.toml",
        "[a]\n[[a]]\n",
        expect![[r#"
            no tree
            2:3 "a" DUPLICATE_KEY the heading `a` stands twice
              help: write `[[a]]`, with two brackets, each time, or keep one of the two
              1:1 "[a]": `a` stands here first
        "#]],
    );
    check(
        "a.json",
        "{\"id\": 1, \"x\": {\"id\": 2},\n \"id\": 3}",
        expect![[r#"
            {id: integer 1, x: {id: integer 2}}
            2:2 "\"id\"" DUPLICATE_KEY key `id` stands twice in the same table
              help: keep one of the two
              1:2 "\"id\"": `id` stands here first
        "#]],
    );
}

#[test]
fn not_a_number_infinity_and_times_of_day_are_findings() {
    check(
        "a.toml",
        "a = nan\nb = -inf\nc = 2024-06-01T12:00:00Z\nd = 12:00:00\ne = 2024-06-01 08:00:00\n",
        expect![[r#"
            {a: decimal nan, b: decimal -inf, c: date 2024-06-01, d: date 0000-01-01, e: date 2024-06-01}
            1:5 "nan" NOT_A_NUMBER `nan` is no number that can be reckoned with
              help: write a number, or leave the key out
            2:5 "-inf" NOT_A_NUMBER `-inf` is no number that can be reckoned with
              help: write a number, or leave the key out
            3:5 "2024-06-01T12:00:00Z" NOT_A_DATE `2024-06-01T12:00:00Z` has a time of day; expected a date
              help: write the date alone, like 2024-06-01
            4:5 "12:00:00" NOT_A_DATE `12:00:00` has a time of day; expected a date
              help: write the date alone, like 2024-06-01
            5:5 "2024-06-01 08:00:00" NOT_A_DATE `2024-06-01T08:00:00` has a time of day; expected a date
              help: write the date alone, like 2024-06-01
        "#]],
    );
    check(
        "a.toml",
        "d = 2023-02-29\n",
        expect![[r#"
            no tree
            1:5 "2023-02-29" TOML_GRAMMAR `2023-02-29` is no day of the calendar
              help: write a date like 2026-11-25
        "#]],
    );
    check(
        "a.toml",
        "h = 0xFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF\n",
        expect![[r#"
            {h: integer 0}
            1:5 "0xFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF" NUMBER_TOO_LARGE `0xFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF` is too large a number
              help: write it in decimal digits
        "#]],
    );
}

#[test]
fn a_heading_with_one_bracket_too_few_hides_nothing_else_behind_it() {
    check(
        "a.toml",
        "[[rule]]\nid = 1\n[rule]\nid = 2\n",
        expect![[r#"
        no tree
        3:2 "rule" DUPLICATE_KEY the heading `rule` stands twice
          help: write `[[rule]]`, with two brackets, each time, or keep one of the two
          1:1 "[[rule]]": `rule` stands here first
    "#]],
    );
}

#[test]
fn what_follows_from_a_bracket_left_open_is_not_said() {
    check(
        "a.toml",
        "a = [1,\n  2\nb = 3\nc = 4\n[[rule]]\nid = 5\n",
        expect![[r#"
            no tree
            3:1 "" TOML_GRAMMAR a bracket `[` is not closed before this
              help: close it with `]`
              1:5 "[": opened here
        "#]],
    );
    check(
        "a.toml",
        "a = { b = 1, c = 2\nd = 3\n[e]\nf = 4\n",
        expect![[r#"
        no tree
        2:1 "" TOML_GRAMMAR found `d`, expected a comma or `}`
          help: write a comma between the entries
          1:5 "{": opened here
    "#]],
    );
}

#[test]
fn slips_of_people_are_said_in_plain_words() {
    for (row, text, message, help) in [
        (
            "yes",
            "a = Yes",
            "found `Yes`, expected true or false",
            "write `true`",
        ),
        (
            "no",
            "a = no",
            "found `no`, expected true or false",
            "write `false`",
        ),
        (
            "date",
            "a = 11/25/2026",
            "found `11/25/2026`, expected a date",
            "write the year first, like 2026-11-25",
        ),
        (
            "bare size",
            "a = 35-5/8",
            "found `35-5/8`, expected a value",
            "put text and sizes in quotes: `\"35-5/8\"`",
        ),
        (
            "curly quotes",
            "a = \u{201c}b\u{201d}",
            "found a curly quote `\u{201c}`",
            "use straight quotes, `\"` or `'`",
        ),
        (
            "hard space",
            "a\u{a0}= 1",
            "found a space that is no ordinary one (a non-breaking space)",
            "delete it and write an ordinary space",
        ),
        (
            "no value",
            "a\n",
            "`a` has no `=` and no value",
            "write `key = value`, or a heading like `[[rule]]`",
        ),
        (
            "no such day",
            "a = 2026-11-31",
            "`2026-11-31` is no day of the calendar",
            "write a date like 2026-11-25",
        ),
        (
            "inch mark",
            "a = { b = \"30\"\" }",
            "found one more quote after the end of a text",
            "leave an inch mark out: `\"35 5/8\"`; a text with quotes in it stands between `'''` and `'''`",
        ),
    ] {
        let mut sources = Sources::new();
        let file = sources.add("a.toml", text);
        let findings = Findings::new();
        assert!(read(&sources, file, &findings).is_none(), "{row}");
        let found = findings.into_sorted(&sources);
        assert_eq!(found.len(), 1, "{row}: {found:?}");
        assert_eq!(
            (found[0].message(), found[0].help()),
            (message, Some(help)),
            "{row}"
        );
    }
}

#[test]
fn a_file_that_is_all_mistakes_gives_a_bounded_number_of_findings() {
    let last_of = |text: String| {
        let mut sources = Sources::new();
        let file = sources.add("a.toml", text);
        let findings = Findings::new();
        let _ = read(&sources, file, &findings);
        assert_eq!(findings.len(), 21);
        lines_of(findings, &sources).lines().last().unwrap().to_owned()
    };
    expect![[r#"21:1 "" TOML_GRAMMAR 980 more lines that are not TOML, from here on"#]]
        .assert_eq(&last_of("= = =\n".repeat(1_000)));
    expect![[r#"22:1 "a" DUPLICATE_KEY 979 more keys that stand twice, from here on"#]]
        .assert_eq(&last_of("a = 1\n".repeat(1_000)));
}
