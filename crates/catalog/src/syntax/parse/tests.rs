//! What the parser makes of texts, right and wrong.

mod limits;
mod slips;
mod unfinished;

use expect_test::{Expect, expect};

use super::super::error::shown;
use super::super::{Expr, ExprKind, Literal, parse_expression};

/// The tree with every node in brackets, or the error.
fn check(text: &str, expected: Expect) {
    expected.assert_eq(&match parse_expression(text) {
        Ok(tree) => bracketed(&tree),
        Err(error) => shown(text, &error),
    });
}

/// Several wrong texts and their errors.
fn check_errors(texts: &[&str], expected: Expect) {
    let errors = texts.iter().map(|text| match parse_expression(text) {
        Ok(tree) => format!("{text}\nno error: {}\n", bracketed(&tree)),
        Err(error) => shown(text, &error),
    });
    expected.assert_eq(&errors.collect::<Vec<_>>().join("\n"));
}

fn bracketed(expr: &Expr) -> String {
    let node = |operator: &str, parts: &[&Expr]| {
        let parts: String = parts.iter().map(|part| format!(" {}", bracketed(part))).collect();
        format!("({operator}{parts})")
    };
    match &expr.kind {
        ExprKind::Literal(Literal::Number(text)) | ExprKind::Name(text) => text.clone(),
        ExprKind::Literal(Literal::Text(text)) => format!("{text:?}"),
        ExprKind::Literal(Literal::Bool(value)) => value.to_string(),
        ExprKind::Member { base, name } => node(&format!(".{}", name.text), &[base]),
        ExprKind::Call { function, arguments } => node(&function.text, &arguments.iter().collect::<Vec<_>>()),
        ExprKind::List(items) => node("list", &items.iter().collect::<Vec<_>>()),
        ExprKind::Not(inner) => node("!", &[inner]),
        ExprKind::Negate(inner) => node("-", &[inner]),
        ExprKind::Product { first, rest } => chain(first, rest),
        ExprKind::Sum { first, rest } => chain(first, rest),
        ExprKind::Compare {
            operator,
            left,
            right,
        } => node(&operator.to_string(), &[left, right]),
        ExprKind::In { item, set } => node("in", &[item, set]),
        ExprKind::And(parts) => node("&&", &parts.iter().collect::<Vec<_>>()),
        ExprKind::Or(parts) => node("||", &parts.iter().collect::<Vec<_>>()),
        ExprKind::Conditional {
            condition,
            then,
            otherwise,
        } => node("?", &[condition, then, otherwise]),
    }
}

fn chain(first: &Expr, rest: &[(impl ToString, Expr)]) -> String {
    let rest: String = rest
        .iter()
        .map(|(o, e)| format!(" {} {}", o.to_string(), bracketed(e)))
        .collect();
    format!("({}{rest})", bracketed(first))
}

#[test]
fn operators_bind_as_in_cel() {
    check(
        "a || b && c == d + e * -f.g ? h : i",
        expect!["(? (|| a (&& b (== c (d + (e * (- (.g f))))))) h i)"],
    );
}

#[test]
fn rules_of_the_sketch_are_read() {
    check(
        r#"unit_width >= "15" && unit_width <= "36""#,
        expect![[r#"(&& (>= unit_width "15") (<= unit_width "36"))"#]],
    );
    check(
        r#"floor_to(opening_width - deduction, "1/8")"#,
        expect![[r#"(floor_to (opening_width - deduction) "1/8")"#]],
    );
    check("max(in_ft2(lite_area), 5)", expect!["(max (in_ft2 lite_area) 5)"]);
    check(
        r#"exterior in family("dark") || exterior in ["grey", 'black',]"#,
        expect![[r#"(|| (in exterior (family "dark")) (in exterior (list "grey" "black")))"#]],
    );
    check(
        "!is_asked(grille) // a comment\n && all(glazing.tempered)",
        expect!["(&& (! (is_asked grille)) (all (.tempered glazing)))"],
    );
}

#[test]
fn chains_are_one_node_and_parentheses_inside_keep_theirs() {
    check("a && b && c", expect!["(&& a b c)"]);
    check("(a && b) && c", expect!["(&& (&& a b) c)"]);
    check("a && (b && c)", expect!["(&& a (&& b c))"]);
    check("a || b || (c || d)", expect!["(|| a b (|| c d))"]);
    check("a + b - c + (d - e)", expect!["(a + b - c + (d - e))"]);
    check("a * b / 2 * (c * d)", expect!["(a * b / 2 * (c * d))"]);
}

#[test]
fn relations_chain_to_the_left() {
    check("a < b < c", expect!["(< (< a b) c)"]);
    check("a == b in c", expect!["(in (== a b) c)"]);
}

#[test]
fn conditionals_chain_to_the_right() {
    check("a ? b : c ? d : e", expect!["(? a b (? c d e))"]);
    check("a ? (b ? c : d) : e", expect!["(? a (? b c d) e)"]);
}

#[test]
fn prefixes_repeat() {
    check("!!a && --1 == 1", expect!["(&& (! (! a)) (== (- (- 1)) 1))"]);
    check("!(-a)", expect!["(! (- a))"]);
}

#[test]
fn numbers_are_kept_as_written() {
    check(
        "[12, 0.50, 1e3, 1.5E-2, 007, 123456789012345678901234567890]",
        expect!["(list 12 0.50 1e3 1.5E-2 007 123456789012345678901234567890)"],
    );
}

#[test]
fn escapes_are_resolved() {
    check(
        r#"'5\" wide \'a\' \\ \n\t\u00e9' == "it's""#,
        expect![[r#"(== "5\" wide 'a' \\ \n\té" "it's")"#]],
    );
}

#[test]
fn a_span_leaves_out_the_parentheses_around_its_node() {
    let text = "( (alpha) + b ) * f( c.d )";
    let ExprKind::Product { first, rest } = parse_expression(text).unwrap().kind else {
        panic!("a product")
    };
    let ExprKind::Sum { first: alpha, .. } = &first.kind else {
        panic!("a sum")
    };
    let ExprKind::Call { function, arguments } = &rest[0].1.kind else {
        panic!("a call")
    };
    let ExprKind::Member { name, .. } = &arguments[0].kind else {
        panic!("a member")
    };
    assert_eq!(&text[first.span.clone()], "(alpha) + b");
    assert_eq!(&text[alpha.span.clone()], "alpha");
    assert_eq!(&text[function.span.clone()], "f");
    assert_eq!(&text[arguments[0].span.clone()], "c.d");
    assert_eq!(&text[name.span.clone()], "d");
}
