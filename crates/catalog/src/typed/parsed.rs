//! An expression as it was written: its text, its place, and its untyped tree.

use std::collections::BTreeSet;

use crate::finding::Findings;
use crate::syntax::{Expr, ExprKind, parse_expression};
use crate::typed::PlacedText;

/// An expression as it was written.
#[derive(Debug, Clone)]
pub(crate) struct Parsed {
    pub(crate) text: PlacedText,
    pub(crate) tree: Expr,
}

impl Parsed {
    /// Reads the text; `None` means that a finding says what is wrong.
    pub(crate) fn parse(text: PlacedText, findings: &Findings) -> Option<Self> {
        match parse_expression(&text.text) {
            Ok(tree) => Some(Self { text, tree }),
            Err(error) => {
                text.report(error, findings);
                None
            }
        }
    }

    /// The first words of all names: `glazing` of `glazing.upper`. Functions do not count.
    pub(crate) fn names(&self) -> BTreeSet<&str> {
        let mut names = BTreeSet::new();
        let mut stack = vec![&self.tree];
        while let Some(expr) = stack.pop() {
            if let ExprKind::Name(name) = &expr.kind {
                names.insert(name.as_str());
            }
            push_children(expr, &mut stack);
        }
        names
    }
}

/// Puts the children of a node on a stack.
pub(crate) fn push_children<'a>(expr: &'a Expr, stack: &mut Vec<&'a Expr>) {
    match &expr.kind {
        ExprKind::Literal(_) | ExprKind::Name(_) => {}
        ExprKind::Member { base, .. } => stack.push(base),
        ExprKind::Call { arguments, .. } => stack.extend(arguments),
        ExprKind::List(inner) | ExprKind::And(inner) | ExprKind::Or(inner) => stack.extend(inner),
        ExprKind::Not(inner) | ExprKind::Negate(inner) => stack.push(inner),
        ExprKind::Product { first, rest } => {
            stack.push(first);
            stack.extend(rest.iter().map(|(_, factor)| factor));
        }
        ExprKind::Sum { first, rest } => {
            stack.push(first);
            stack.extend(rest.iter().map(|(_, term)| term));
        }
        ExprKind::Compare { left, right, .. } => stack.extend([&**left, &**right]),
        ExprKind::In { item, set } => stack.extend([&**item, &**set]),
        ExprKind::Conditional {
            condition,
            then,
            otherwise,
        } => {
            stack.extend([&**condition, &**then, &**otherwise]);
        }
    }
}
