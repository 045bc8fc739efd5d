//! One helper: a file's text in, the tree or the values taken and the findings out.

use expect_test::{Expect, expect};

use super::*;
use crate::finding::{Finding, Place};

/// `line:column-column code message`, then help and related places, for each finding.
fn lines_of(findings: Findings, sources: &Sources) -> String {
    let mut out = String::new();
    for finding in findings.into_sorted(sources) {
        out += &format!(
            "{} {} {}\n",
            shown(finding.place(), sources),
            finding.code(),
            finding.message()
        );
        out += &finding
            .help()
            .map_or(String::new(), |help| format!("  help: {help}\n"));
        for (place, what) in finding.related() {
            out += &format!("  {}: {what}\n", shown(Some(place), sources));
        }
    }
    out
}

fn shown(place: Option<&Place>, sources: &Sources) -> String {
    place.map_or("-".to_owned(), |place| {
        let position = sources.position(place);
        format!(
            "{}:{} {:?}",
            position.line,
            position.column,
            sources.text_at(place)
        )
    })
}

/// The tree in one line: keys and values, without spans.
fn tree_of(node: &Node) -> String {
    let join = |parts: Vec<String>| parts.join(", ");
    match &node.value {
        NodeValue::Table(entries) => {
            let entry = |entry: &Entry| format!("{}: {}", entry.key.value, tree_of(&entry.node));
            format!("{{{}}}", join(entries.iter().map(entry).collect()))
        }
        NodeValue::Array(nodes) => format!("[{}]", join(nodes.iter().map(tree_of).collect())),
        NodeValue::Text(text) => format!("{text:?}"),
        NodeValue::Integer(text) => format!("integer {text}"),
        NodeValue::Decimal(text) => format!("decimal {text}"),
        NodeValue::Bool(value) => value.to_string(),
        NodeValue::Date(date) => format!("date {date}"),
        NodeValue::Null => "null".to_owned(),
    }
}

fn check(path: &str, text: &str, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add(path, text);
    let findings = Findings::new();
    let tree = read(&sources, file, &findings).map_or("no tree".to_owned(), |node| tree_of(&node));
    expected.assert_eq(&format!("{tree}\n{}", lines_of(findings, &sources)));
}

fn check_reader(path: &str, text: &str, take: impl FnOnce(&mut TableReader<'_>) -> String, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add(path, text);
    let findings = Findings::new();
    let root = read(&sources, file, &findings).unwrap();
    let mut reader = TableReader::new(&root, file, "attribute", &findings).unwrap();
    let taken = take(&mut reader);
    reader.finish();
    expected.assert_eq(&format!("{taken}\n{}", lines_of(findings, &sources)));
}

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
fn json_keeps_order_and_numbers_as_written() {
    check(
        "a.json",
        r#"{"z": 1.50, "a": [1, -0, 1e5, null, true], "t": {"d": "2024-02-29 \u00e9"}, "big": 123456789012345678901234567890}"#,
        expect![[r#"
            {z: decimal 1.50, a: [integer 1, integer -0, decimal 1e5, null, true], t: {d: "2024-02-29 é"}, big: integer 123456789012345678901234567890}
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
fn what_json_does_not_have_is_a_mistake() {
    for (text, expected) in [
        (
            "{\"a\": 1, // remark\n}",
            expect![[r#"
            no tree
            1:10 "// remark" JSON_GRAMMAR this is not JSON: comments are not allowed
        "#]],
        ),
        (
            "{\"a\": 1,}",
            expect![[r#"
            no tree
            1:8 "," JSON_GRAMMAR this is not JSON: trailing commas are not allowed
        "#]],
        ),
        (
            "{a: 1}",
            expect![[r#"
            no tree
            1:2 "a" JSON_GRAMMAR this is not JSON: expected string for object property
        "#]],
        ),
        (
            "{'a': 1}",
            expect![[r#"
            no tree
            1:2 "'" JSON_GRAMMAR this is not JSON: single-quoted strings are not allowed
        "#]],
        ),
        (
            "{\"a\": 0x1}",
            expect![[r#"
            no tree
            1:7 "0" JSON_GRAMMAR this is not JSON: hexadecimal numbers are not allowed
        "#]],
        ),
        (
            "{\"a\": +1}",
            expect![[r#"
            no tree
            1:7 "+" JSON_GRAMMAR this is not JSON: unary plus on numbers is not allowed
        "#]],
        ),
        (
            "{\"a\": .5}",
            expect![[r#"
            no tree
            1:7 "." JSON_GRAMMAR this is not JSON: leading or trailing decimal points on numbers are not allowed
        "#]],
        ),
        (
            "{\"a\": 01}",
            expect![[r#"
            no tree
            1:8 "" JSON_GRAMMAR this is not JSON: expected comma
        "#]],
        ),
    ] {
        check("a.json", text, expected);
    }
}

#[test]
fn what_json_does_not_have_in_numbers_and_texts_is_a_mistake() {
    for (text, expected) in [
        (
            "{\"a\": NaN}",
            expect![[r#"
            no tree
            1:7 "NaN" JSON_GRAMMAR this is not JSON: unexpected token
        "#]],
        ),
        (
            "{\"a\": -Infinity}",
            expect![[r#"
            no tree
            1:7 "-Infinity" JSON_GRAMMAR this is not JSON: infinity and NaN are not allowed
        "#]],
        ),
        (
            "{\"a\": \"\\x41\"}",
            expect![[r#"
            no tree
            1:8 "\\x" JSON_GRAMMAR this is not JSON: invalid escape
        "#]],
        ),
        (
            "{\"a\": \"tab\there\"}",
            expect![[r#"
            no tree
            1:11 "\t" JSON_GRAMMAR this is not JSON: a line end, tab or other control character stands in a text
        "#]],
        ),
        (
            "{\"a\":\u{a0}1}",
            expect![[r#"
            no tree
            1:6 "\u{a0}" JSON_GRAMMAR this is not JSON: white space other than space, tab and line end
        "#]],
        ),
    ] {
        check("a.json", text, expected);
    }
}

#[test]
fn json_that_is_not_finished_or_goes_on_is_a_mistake() {
    for (text, expected) in [
        (
            "{\"a\": 1 \"b\": 2}",
            expect![[r#"
            no tree
            1:8 "" JSON_GRAMMAR this is not JSON: expected comma
        "#]],
        ),
        (
            "{\"a\": \"open",
            expect![[r#"
            no tree
            1:7 "\"open" JSON_GRAMMAR this is not JSON: unterminated string literal
        "#]],
        ),
        (
            "{\"a\": [1, 2",
            expect![[r#"
            no tree
            1:7 "[1, 2" JSON_GRAMMAR this is not JSON: unterminated array
        "#]],
        ),
        (
            "{} {}",
            expect![[r#"
            no tree
            1:4 "{" JSON_GRAMMAR this is not JSON: text cannot contain more than one JSON value
        "#]],
        ),
        (
            "\"\\ud800\"",
            expect![[r#"
                no tree
                1:2 "\\ud800\"" JSON_GRAMMAR this is not JSON: `\ud800 (unpaired high surrogate)` is no character
            "#]],
        ),
        (
            " ",
            expect![[r#"
            no tree
            1:1 "" JSON_GRAMMAR this is not JSON: there is no value
        "#]],
        ),
    ] {
        check("a.json", text, expected);
    }
}

#[test]
fn nesting_ten_thousand_deep_is_a_finding() {
    for (path, text) in [
        ("a.toml", format!("a = {}", "[".repeat(10_000))),
        (
            "a.toml",
            format!("a = {}1{}", "[".repeat(10_000), "]".repeat(10_000)),
        ),
        ("a.toml", format!("a = {}", "{ a = ".repeat(10_000))),
        ("a.toml", format!("{}a = 1", "a.".repeat(10_000))),
        ("a.toml", format!("[{}a]", "a.".repeat(10_000))),
        (
            "a.toml",
            format!("[{}a]\n{}a = 1", "a.".repeat(50), "b.".repeat(50)),
        ),
        ("a.json", "[".repeat(10_000)),
        ("a.json", "{\"a\":".repeat(10_000)),
        ("a.json", format!("{}{}", "[".repeat(10_000), "]".repeat(10_000))),
    ] {
        let mut sources = Sources::new();
        let file = sources.add(path, text.as_str());
        let findings = Findings::new();
        let name = &text[..text.len().min(20)];
        assert!(read(&sources, file, &findings).is_none(), "{name}");
        let codes: Vec<_> = findings.into_sorted(&sources).iter().map(Finding::code).collect();
        assert!(codes.contains(&"TOO_DEEP"), "{name}: {codes:?}");
    }
}

#[test]
fn nesting_at_the_limit_is_read() {
    let deep = |levels: usize| format!("{}1{}", "[".repeat(levels), "]".repeat(levels));
    for (path, text, is_fine) in [
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT - 1)), true),
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT)), true),
        ("a.toml", format!("a = {}", deep(DEPTH_LIMIT + 1)), false),
        ("a.json", deep(DEPTH_LIMIT), true),
        ("a.json", deep(DEPTH_LIMIT + 1), false),
    ] {
        let mut sources = Sources::new();
        let file = sources.add(path, text.as_str());
        let findings = Findings::new();
        assert_eq!(
            read(&sources, file, &findings).is_some(),
            is_fine,
            "{path} {text}"
        );
    }
}

#[test]
fn values_are_taken_by_name_and_type_with_their_bytes() {
    let text = "format = 1\nid = \"grille\"\nask = true\nrank = 7\ngloss = 30.50\nfrom = 2024-06-01\nuntil = \"2024-06-30\"\noptions = [\"a\", \"b\"]\nproperties = { gloss = 3 }\n[[rule]]\nid = \"r\"\n";
    check_reader(
        "a.toml",
        text,
        |reader| {
            let mut out = vec![format!("{}", reader.format_is_known())];
            out.push(format!("{:?}", reader.required_text("id").unwrap()));
            out.push(format!("{:?}", reader.optional_bool("ask").unwrap()));
            out.push(format!("{:?}", reader.integer("rank").unwrap()));
            out.push(format!("{:?}", reader.decimal_text("gloss").unwrap()));
            out.push(format!("{:?}", reader.date("from").unwrap()));
            out.push(format!("{:?}", reader.date("until").unwrap()));
            out.push(format!("{:?}", reader.array_of_texts("options").unwrap()));
            let mut properties = reader.table("properties", "properties").unwrap();
            out.push(format!("{:?}", properties.rest().first().unwrap().key));
            properties.finish();
            for mut rule in reader.array_of_tables("rule", "rule") {
                out.push(format!("{:?}", rule.required_text("id").unwrap()));
                rule.finish();
            }
            out.join("\n")
        },
        expect![[r#"
            true
            Spanned { value: "grille", span: 16..24 }
            Spanned { value: true, span: 31..35 }
            Spanned { value: 7, span: 43..44 }
            Spanned { value: "30.50", span: 53..58 }
            Spanned { value: 2024-06-01, span: 66..76 }
            Spanned { value: 2024-06-30, span: 85..97 }
            [Spanned { value: "a", span: 109..112 }, Spanned { value: "b", span: 114..117 }]
            Spanned { value: "gloss", span: 134..139 }
            Spanned { value: "r", span: 160..163 }
        "#]],
    );
}

#[test]
fn a_wrong_type_says_what_was_found_and_expected() {
    check_reader(
        "a.json",
        r#"{"a": "x", "b": 1, "c": null, "d": 1.5, "e": "2024-6-1", "f": {}, "g": [1, "x"], "h": 5, "i": 99999999999999999999, "j": 1.5e3, "k": true}"#,
        |reader| {
            let taken = [
                reader.array("a").is_some(),
                reader.optional_text("b").is_some(),
                reader.optional_text("c").is_some(),
                reader.integer("d").is_some(),
                reader.date("e").is_some(),
                !reader.array_of_tables("f", "rule").is_empty(),
                !reader.array_of_tables("g", "rule").is_empty(),
                reader.table("h", "rule").is_some(),
                reader.integer("i").is_some(),
                reader.decimal_text("j").is_some(),
                reader.decimal_text("k").is_some(),
            ];
            format!("{taken:?}")
        },
        expect![[r#"
            [false, false, false, false, false, false, false, false, false, false, false]
            1:7 "\"x\"" WRONG_TYPE `a` is text; expected a list
              help: write `["x"]`
            1:17 "1" WRONG_TYPE `b` is a whole number; expected text
              help: put it in quotes
            1:25 "null" WRONG_TYPE `c` is null; expected text
              help: leave the key out
            1:36 "1.5" WRONG_TYPE `d` is a decimal number; expected a whole number
              help: write it like `2`
            1:46 "\"2024-6-1\"" NOT_A_DATE `e` is `2024-6-1`; expected a date like 2024-06-01
              help: write year, month and day, all in digits: 2024-06-01
            1:63 "{}" WRONG_TYPE `f` is a table; expected a list
              help: write the heading with two brackets: `[[f]]`
            1:73 "1" WRONG_TYPE element 1 of `g` is a whole number; expected a table
            1:76 "\"x\"" WRONG_TYPE element 2 of `g` is text; expected a table
              help: write `{ key = "value" }`
            1:87 "5" WRONG_TYPE `h` is a whole number; expected a table
            1:95 "99999999999999999999" NUMBER_TOO_LARGE `i` is 99999999999999999999, which is too large a number
            1:122 "1.5e3" NUMBER_WITH_EXPONENT `j` is `1.5e3`, a number with an exponent
              help: write the number out: 1500, not 1.5e3
            1:134 "true" WRONG_TYPE `k` is true; expected a number
        "#]],
    );
}

#[test]
fn unknown_and_missing_keys_are_findings_with_help() {
    check_reader(
        "a.toml",
        "labbel = 1\nzzz = 2\n[t]\nx = 1\n",
        |reader| {
            let _ = (reader.required_text("id"), reader.optional_text("label"));
            let mut table = reader.table("t", "rule").unwrap();
            table.rename("rule `R12`");
            let _ = table.required_text("when");
            table.finish();
            String::new()
        },
        expect![[r#"

            1:1 "" MISSING_KEY attribute lacks `id`
              help: add `id`
            1:1 "labbel" UNKNOWN_KEY unknown key `labbel` in attribute
              help: did you mean `label`?
            2:1 "zzz" UNKNOWN_KEY unknown key `zzz` in attribute
              help: known keys are `id`, `label`, `t`
            3:1 "[t]" MISSING_KEY rule `R12` lacks `when`
              help: add `when`
            4:1 "x" UNKNOWN_KEY unknown key `x` in rule `R12`
              help: known keys are `when`
        "#]],
    );
}

#[test]
fn only_format_one_is_known() {
    for (text, expected) in [
        (
            "format = 1",
            expect![[r#"
            true
        "#]],
        ),
        (
            "format = 2",
            expect![[r#"
                false
                1:10 "2" UNKNOWN_FORMAT `format = 2` is not known; this program reads `format = 1`
                  help: write `format = 1`
            "#]],
        ),
        (
            "format = \"1\"",
            expect![[r#"
                false
                1:10 "\"1\"" UNKNOWN_FORMAT `format = "1"` is not known; this program reads `format = 1`
                  help: write `format = 1`
            "#]],
        ),
        (
            "format = 1.0",
            expect![[r#"
                false
                1:10 "1.0" UNKNOWN_FORMAT `format = 1.0` is not known; this program reads `format = 1`
                  help: write `format = 1`
            "#]],
        ),
        (
            "format = [1]",
            expect![[r#"
                false
                1:10 "[1]" UNKNOWN_FORMAT `format` is an array; this program reads `format = 1`
                  help: write `format = 1`
            "#]],
        ),
        (
            "x = 1",
            expect![[r#"
            false
            1:1 "" UNKNOWN_FORMAT attribute lacks `format`
              help: add `format = 1` at the top
        "#]],
        ),
    ] {
        let take = |reader: &mut TableReader<'_>| {
            let _ = reader.node("x");
            reader.format_is_known().to_string()
        };
        check_reader("a.toml", text, take, expected);
    }
}

#[test]
fn a_date_in_text_is_written_in_one_way_only() {
    for (text, is_date) in [
        ("2024-06-01", true),
        ("2024-02-29", true),
        ("2023-02-29", false),
        ("2024-6-1", false),
        ("20240601", false),
        ("2024-06-01T00:00", false),
        ("01.06.2024", false),
        ("-2024-06-01", false),
        ("2024-06-01-", false),
        ("", false),
    ] {
        let mut sources = Sources::new();
        let file = sources.add("a.json", format!("{{\"d\": \"{text}\"}}"));
        let findings = Findings::new();
        let root = read(&sources, file, &findings).unwrap();
        let mut reader = TableReader::new(&root, file, "order", &findings).unwrap();
        assert_eq!(reader.date("d").is_some(), is_date, "{text}");
        assert_eq!(findings.is_empty(), is_date, "{text}");
    }
}

#[test]
fn a_root_that_is_no_table_is_a_finding() {
    let mut sources = Sources::new();
    let file = sources.add("a.json", "[1]");
    let findings = Findings::new();
    let root = read(&sources, file, &findings).unwrap();
    assert!(TableReader::new(&root, file, "order", &findings).is_none());
    expect![[r#"
        1:1 "[1]" WRONG_TYPE order is an array; expected a table
    "#]]
    .assert_eq(&lines_of(findings, &sources));
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(3_000))]
    #[test]
    fn no_text_makes_reading_panic_and_every_place_is_in_the_text(text in "[a\\[\\]{}.,=:\"'#\\\\0-3é \n-]{0,40}") {
        for path in ["a.toml", "a.json"] {
            let mut sources = Sources::new();
            let file = sources.add(path, text.as_str());
            let findings = Findings::new();
            let tree = read(&sources, file, &findings);
            proptest::prop_assert!(tree.is_some() || findings.has_errors());
            for finding in findings.into_sorted(&sources) {
                let place = finding.place().unwrap();
                proptest::prop_assert!(text.get(place.span.clone()).is_some(), "{finding:?}");
                let _ = crate::render::render(&[finding], &sources, crate::render::RenderStyle { colour: true });
            }
        }
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

#[test]
fn a_slip_in_a_key_that_must_be_there_is_one_finding() {
    check_reader(
        "a.toml",
        "standart = \"white\"",
        |reader| format!("{:?}", reader.required_text("standard").map(|text| text.value)),
        expect![[r#"
            None
            1:1 "standart" UNKNOWN_KEY unknown key `standart` in attribute
              help: did you mean `standard`?
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
