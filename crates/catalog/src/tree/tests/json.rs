//! JSON as a tree, and its mistakes.

use super::*;
use expect_test::expect;

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
