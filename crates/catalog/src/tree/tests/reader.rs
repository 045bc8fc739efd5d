//! Values taken from a table by name and type.

use super::*;
use expect_test::expect;

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
