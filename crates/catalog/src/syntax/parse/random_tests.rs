//! What holds of every tree and of every text.

use proptest::prelude::*;
use proptest::strategy::ValueTree;

use super::super::ast::{CompareOperator, ProductOperator, SumOperator};
use super::super::{Expr, ExprKind, Literal, Placed, is_reserved, parse_expression};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_printed_tree_is_read_as_the_same_tree(tree in trees()) {
        let text = tree.to_string();
        let read = parse_expression(&text).map(without_spans);
        prop_assert_eq!(read, Ok(tree), "{}", text);
    }

    #[test]
    fn the_text_under_every_node_is_read_as_that_node(tree in trees()) {
        let text = tree.to_string();
        let mut nodes = vec![parse_expression(&text).unwrap()];
        while let Some(node) = nodes.pop() {
            let under = parse_expression(&text[node.span.clone()]).map(without_spans);
            prop_assert_eq!(under, Ok(without_spans(node.clone())), "{:?} of {}", &node.span, &text);
            nodes.extend(children(node));
        }
    }

    #[test]
    fn no_text_makes_the_parser_panic_and_errors_stand_inside_it(text in texts()) {
        if let Err(error) = parse_expression(&text) {
            prop_assert!(text.get(error.span.clone()).is_some(), "{:?}", error.span);
            prop_assert!(error.related.is_none_or(|(span, _)| text.get(span).is_some()));
            prop_assert!(!error.message.contains('\n'));
        }
    }

    #[test]
    fn reading_what_was_printed_prints_the_same(text in texts()) {
        if let Ok(tree) = parse_expression(&text) {
            let printed = tree.to_string();
            let read = parse_expression(&printed).unwrap();
            prop_assert_eq!(read.to_string(), printed);
            prop_assert_eq!(without_spans(read), without_spans(tree));
        }
    }
}

/// The generator of random texts must reach texts that are right, or the test above tests nothing.
#[test]
fn random_texts_are_often_right_and_often_wrong() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let is_right = |runner: &mut _| parse_expression(&texts().new_tree(runner).unwrap().current()).is_ok();
    let right = (0..2_000).filter(|_| is_right(&mut runner)).count();
    assert!((100..1_900).contains(&right), "{right} of 2000");
}

/// Values and operators in turn, as they should be, or pieces as they come.
fn texts() -> impl Strategy<Value = String> {
    let value = || {
        prop::sample::select(vec![
            "a", "b.c", "1", "0.5", "'x'", "true", "(a)", "[a, 1,]", "f(b)", "!a", "- 1",
        ])
    };
    let operator = prop::sample::select(vec![
        "&&", "||", "==", "<", "in", "+", "-", "*", "/", "? a :", "// x\n +",
    ]);
    let sentence = (value(), prop::collection::vec((operator, value()), 0..6)).prop_map(|(first, rest)| {
        rest.iter()
            .fold(first.to_owned(), |text, (o, v)| format!("{text} {o} {v}"))
    });
    let piece = prop::sample::select(vec![
        "a", "1", "'x'", "(", ")", "[", "]", ",", "f(", "&&", "==", "in", "-", "!", "?", ":", "\"", "'",
        "\\u00e9", "é", "%", "=", "null", ".", "not", "\u{a0}", "0x", "b\"", "\"\"\"", "\\",
    ]);
    let soup = prop::collection::vec(piece, 0..8);
    prop_oneof![
        sentence,
        soup.clone().prop_map(|pieces| pieces.join(" ")),
        soup.prop_map(|pieces| pieces.concat())
    ]
}

fn trees() -> impl Strategy<Value = Expr> {
    let leaf = prop_oneof![
        names().prop_map(ExprKind::Name),
        "[0-9]{1,20}(\\.[0-9]{1,4})?([eE][+-]?[0-9]{1,3})?"
            .prop_map(|text| ExprKind::Literal(Literal::Number(text))),
        any::<String>().prop_map(|text| ExprKind::Literal(Literal::Text(text))),
        any::<bool>().prop_map(|value| ExprKind::Literal(Literal::Bool(value))),
    ];
    leaf.prop_map(placeless).prop_recursive(8, 64, 4, |part| {
        let many = prop::collection::vec(part.clone(), 0..4);
        let several = prop::collection::vec(part.clone(), 2..4);
        let boxed = part.clone().prop_map(Box::new);
        let terms = prop::collection::vec(
            (
                prop_oneof![Just(SumOperator::Plus), Just(SumOperator::Minus)],
                part.clone(),
            ),
            1..4,
        );
        let factors = prop::collection::vec(
            (
                prop_oneof![Just(ProductOperator::Times), Just(ProductOperator::Over)],
                part,
            ),
            1..4,
        );
        prop_oneof![
            (boxed.clone(), names()).prop_map(|(base, name)| ExprKind::Member {
                base,
                name: placed(name)
            }),
            (functions(), many.clone()).prop_map(|(function, arguments)| ExprKind::Call {
                function: placed(function),
                arguments
            }),
            many.prop_map(ExprKind::List),
            boxed.clone().prop_map(ExprKind::Not),
            boxed.clone().prop_map(ExprKind::Negate),
            (boxed.clone(), factors).prop_map(|(first, rest)| ExprKind::Product { first, rest }),
            (boxed.clone(), terms).prop_map(|(first, rest)| ExprKind::Sum { first, rest }),
            (comparisons(), boxed.clone(), boxed.clone()).prop_map(|(operator, left, right)| {
                ExprKind::Compare {
                    operator,
                    left,
                    right,
                }
            }),
            (boxed.clone(), boxed.clone()).prop_map(|(item, set)| ExprKind::In { item, set }),
            several.clone().prop_map(ExprKind::And),
            several.prop_map(ExprKind::Or),
            (boxed.clone(), boxed.clone(), boxed).prop_map(|(condition, then, otherwise)| {
                ExprKind::Conditional {
                    condition,
                    then,
                    otherwise,
                }
            }),
        ]
        .prop_map(placeless)
    })
}

fn names() -> impl Strategy<Value = String> {
    "[A-Za-z_][A-Za-z0-9_]{0,6}".prop_filter("no reserved word", |name| !is_reserved(name))
}

fn functions() -> impl Strategy<Value = String> {
    names().prop_filter("`not(` is refused", |name| name != "not")
}

fn comparisons() -> impl Strategy<Value = CompareOperator> {
    use CompareOperator::{Equal, Greater, GreaterOrEqual, Less, LessOrEqual, NotEqual};
    prop::sample::select(vec![Equal, NotEqual, Less, LessOrEqual, Greater, GreaterOrEqual])
}

fn placeless(kind: ExprKind) -> Expr {
    Expr { kind, span: 0..0 }
}

fn placed(text: String) -> Placed {
    Placed { text, span: 0..0 }
}

fn without_spans(mut expr: Expr) -> Expr {
    expr.span = 0..0;
    if let ExprKind::Member { name: word, .. } | ExprKind::Call { function: word, .. } = &mut expr.kind {
        word.span = 0..0;
    }
    for_children(&mut expr, &mut |child| *child = without_spans(child.clone()));
    expr
}

fn children(mut expr: Expr) -> Vec<Expr> {
    let mut children = Vec::new();
    for_children(&mut expr, &mut |child| children.push(child.clone()));
    children
}

fn for_children(expr: &mut Expr, act: &mut dyn FnMut(&mut Expr)) {
    match &mut expr.kind {
        ExprKind::Literal(_) | ExprKind::Name(_) => {}
        ExprKind::Member { base: inner, .. } | ExprKind::Not(inner) | ExprKind::Negate(inner) => act(inner),
        ExprKind::Call { arguments: parts, .. }
        | ExprKind::List(parts)
        | ExprKind::And(parts)
        | ExprKind::Or(parts) => {
            parts.iter_mut().for_each(act);
        }
        ExprKind::Product { first, rest } => {
            act(first);
            rest.iter_mut().for_each(|(_, part)| act(part));
        }
        ExprKind::Sum { first, rest } => {
            act(first);
            rest.iter_mut().for_each(|(_, part)| act(part));
        }
        ExprKind::Compare { left, right, .. }
        | ExprKind::In {
            item: left,
            set: right,
        } => {
            act(left);
            act(right);
        }
        ExprKind::Conditional {
            condition,
            then,
            otherwise,
        } => {
            act(condition);
            act(then);
            act(otherwise);
        }
    }
}
