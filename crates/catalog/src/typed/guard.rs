//! Which attributes a condition guards: names that must be asked where it is true, or where it is false.
//!
//! `exterior.gloss` may only be read where `exterior` is asked. In `is_asked(exterior) && exterior.gloss > 30` the left
//! side guards the right; in `!is_asked(exterior) || exterior.gloss > 30` it does as well; so does `exterior == "grey"`,
//! which is true only where `exterior` is asked.
//!
//! Cost: linear in the tree, as deep as the tree (capped by the parser).

use std::collections::BTreeSet;

use crate::syntax::{CompareOperator, Expr, ExprKind};

/// The names that are asked wherever the condition comes to `truth`.
pub(crate) fn guards(expr: &Expr, truth: bool) -> BTreeSet<String> {
    match (&expr.kind, truth) {
        (ExprKind::Not(inner), _) => guards(inner, !truth),
        (ExprKind::And(inner), true) | (ExprKind::Or(inner), false) => {
            inner.iter().flat_map(|one| guards(one, truth)).collect()
        }
        // Every way to be true (or false) must guard the name.
        (ExprKind::Or(inner), true) | (ExprKind::And(inner), false) => {
            let mut all = inner.iter().map(|one| guards(one, truth));
            let first = all.next().unwrap_or_default();
            all.fold(first, |kept, more| kept.intersection(&more).cloned().collect())
        }
        (ExprKind::Call { function, arguments }, true) if function.text == "is_asked" => {
            arguments.first().and_then(path).into_iter().collect()
        }
        (ExprKind::In { item, .. }, true) => path(item).into_iter().collect(),
        (
            ExprKind::Compare {
                operator: CompareOperator::Equal,
                left,
                right,
            },
            true,
        )
        | (
            ExprKind::Compare {
                operator: CompareOperator::NotEqual,
                left,
                right,
            },
            false,
        ) => path(left).into_iter().chain(path(right)).collect(),
        _ => BTreeSet::new(),
    }
}

/// The dotted name that an expression is, if it is one.
pub(crate) fn path(expr: &Expr) -> Option<String> {
    let mut words = Vec::new();
    let mut expr = expr;
    loop {
        match &expr.kind {
            ExprKind::Name(name) => {
                words.push(name.as_str());
                words.reverse();
                return Some(words.join("."));
            }
            ExprKind::Member { base, name } => {
                words.push(name.text.as_str());
                expr = base;
            }
            _ => return None,
        }
    }
}
