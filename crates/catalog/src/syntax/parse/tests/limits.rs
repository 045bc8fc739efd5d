//! How deep and how long an expression may be.

use super::super::super::{DEPTH_MAX, EXPRESSION_BYTES_MAX, parse_expression};
use super::super::parse_unmeasured;

/// A text of exactly so many levels.
type Nested = fn(usize) -> String;

/// Opening pieces that nest.
const NESTED: [(&str, Nested); 9] = [
    ("(", |n| format!("{}a{}", "(".repeat(n), ")".repeat(n))),
    ("[", |n| format!("{}a{}", "[".repeat(n), "]".repeat(n))),
    ("f(", |n| format!("{}a{}", "f(".repeat(n), ")".repeat(n))),
    ("!", |n| format!("{}a", "!".repeat(n))),
    ("- ", |n| format!("{}a", "- ".repeat(n))),
    ("a?b:", |n| format!("{}a", "a?b:".repeat(n))),
    ("a.", |n| format!("{}a", "a.".repeat(n))),
    ("a<", |n| format!("{}a", "a<".repeat(n))),
    ("!(-(", |n| {
        format!("{}a{}", "!(-(".repeat(n / 2), "))".repeat(n / 2))
    }),
];

#[test]
fn nesting_up_to_the_limit_is_read_and_one_more_level_is_not() {
    for (opening, nested) in NESTED {
        let is_paired = opening == "!(-(";
        assert!(parse_expression(&nested(DEPTH_MAX)).is_ok(), "{opening}");
        let error = parse_expression(&nested(DEPTH_MAX + if is_paired { 2 } else { 1 })).unwrap_err();
        assert_eq!(
            error.message, "the expression is nested deeper than 64 levels",
            "{opening}"
        );
    }
}

#[test]
fn nesting_without_end_is_an_error_with_a_place_and_never_a_stack_overflow() {
    for (opening, nested) in NESTED {
        for levels in [10_000, 100_000] {
            for text in [nested(levels), opening.repeat(levels)] {
                let error = parse_unmeasured(&text).unwrap_err();
                assert_eq!(
                    error.message, "the expression is nested deeper than 64 levels",
                    "{opening}"
                );
                assert!(
                    error.span.start < 400 && !error.span.is_empty(),
                    "{opening} {:?}",
                    error.span
                );
                let measured = parse_expression(&text).unwrap_err();
                let is_long = text.len() > EXPRESSION_BYTES_MAX;
                assert_eq!(
                    measured.message.contains("expected at most 65536"),
                    is_long,
                    "{opening}"
                );
            }
        }
    }
}

#[test]
fn the_deepest_expressions_are_read_printed_and_dropped_on_a_small_stack() {
    let small = std::thread::Builder::new().stack_size(1024 * 1024);
    let work = || {
        for (opening, nested) in NESTED {
            let tree = parse_expression(&nested(DEPTH_MAX)).unwrap();
            assert!(!tree.clone().to_string().is_empty(), "{opening}");
            assert!(parse_unmeasured(&nested(100_000)).is_err(), "{opening}");
        }
    };
    small.spawn(work).unwrap().join().unwrap();
}

#[test]
fn long_chains_are_not_deep() {
    for operator in ["&&", "||", "+", "-"] {
        let text = format!("a{}", format!(" {operator} a").repeat(10_000));
        assert!(parse_expression(&text).is_ok(), "{operator}");
    }
}

#[test]
fn a_product_counts_a_level_a_factor() {
    for operator in ["*", "/"] {
        let text = |others: usize| format!("a{}", format!(" {operator} a").repeat(others));
        assert!(parse_expression(&text(DEPTH_MAX)).is_ok(), "{operator}");
        let error = parse_expression(&text(10_000)).unwrap_err();
        assert_eq!(
            error.message,
            "the product has more than 64 factors after the first"
        );
        assert_eq!(error.span, 258..259, "{operator}");
        let inside = parse_expression(&format!("({} * a) * a", text(DEPTH_MAX - 1))).unwrap_err();
        assert_eq!(inside.message, "the expression is nested deeper than 64 levels");
    }
}

#[test]
fn a_text_over_the_limit_is_refused_with_its_length() {
    let longest = format!("\"{}\"", "x".repeat(EXPRESSION_BYTES_MAX - 2));
    assert!(parse_expression(&longest).is_ok());
    let error = parse_expression(&format!("{longest}é")).unwrap_err();
    assert_eq!(
        error.message,
        "found an expression of 65538 bytes, expected at most 65536"
    );
    assert_eq!(error.span, 65536..65538);
}
