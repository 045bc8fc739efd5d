//! How far `any`, `all` and `sum` over parts may stand inside each other.
//!
//! `any(share > sum(share) / 2)` asks whether one part has more than half of all. Each level is written out over all
//! parts, so that with 10 parts and 20 levels there would be 10^20 terms.

use crate::finding::{Finding, Findings};
use crate::syntax::ExprKind;
use crate::typed::{Parsed, push_children};

/// LIMIT: how many levels of `any`, `all` and `sum` an expression may have.
pub(crate) const LEVELS_LIMIT: usize = 2;

/// Whether an expression keeps to the limit; a finding at the first call that is too deep when it does not.
pub(crate) fn is_shallow(parsed: &Parsed, findings: &Findings) -> bool {
    let mut open = vec![(&parsed.tree, 0_usize)];
    let mut children = Vec::new();
    while let Some((node, level)) = open.pop() {
        let mut level = level;
        if let ExprKind::Call { function, .. } = &node.kind
            && matches!(function.text.as_str(), "any" | "all" | "sum")
        {
            level += 1;
            if level > LEVELS_LIMIT {
                let message = format!(
                    "`{}` stands inside {LEVELS_LIMIT} others that go over parts, the most there may be",
                    function.text
                );
                findings.push(
                    Finding::error("LIMIT", message)
                        .at(parsed.text.at(&function.span))
                        .with_help("work the inner part out as a figure of its own, and name that"),
                );
                return false;
            }
        }
        push_children(node, &mut children);
        open.extend(children.drain(..).map(|child| (child, level)));
    }
    true
}
