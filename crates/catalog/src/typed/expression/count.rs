//! Counts the nodes of expressions while they are written out over parts.
//!
//! `sum(sum(a + b))` of 60 parts is one line in the file and ten thousand nodes for the judge.
//!
//! Always holds: no expression has more than [`EXPRESSION_NODES_LIMIT`] nodes, and the expressions of one catalog or
//! policy together no more than [`CATALOG_NODES_LIMIT`]; a
//! formula whose type has to be found first is typed, and counted, twice. Cost: one addition a node.

use astragal_model::Expression;

use super::Scope;
use crate::syntax::Span;
use crate::typed::PlacedText;

/// LIMIT: how many nodes one expression has when `any`, `all` and `sum` are written out over the parts.
pub(crate) const EXPRESSION_NODES_LIMIT: usize = 100_000;

/// LIMIT: how many nodes all expressions of a catalog have together.
pub(crate) const CATALOG_NODES_LIMIT: usize = 5_000_000;

impl Scope<'_> {
    /// Counts more nodes; `None` when they are too many, with a finding unless it was said before.
    pub(super) fn count(&self, text: &PlacedText, span: &Span, nodes: usize) -> Option<()> {
        let (own_before, all_before) = (self.nodes.get(), self.names.nodes());
        let (own, all) = (own_before.saturating_add(nodes), all_before.saturating_add(nodes));
        if own <= EXPRESSION_NODES_LIMIT && all <= CATALOG_NODES_LIMIT {
            self.nodes.set(own);
            self.names.set_nodes(all);
            return Some(());
        }
        // Nothing more of this expression is typed, and the reason is said once.
        let is_said = own_before > EXPRESSION_NODES_LIMIT
            || (all_before > CATALOG_NODES_LIMIT && self.findings.has_errors());
        self.nodes.set(EXPRESSION_NODES_LIMIT.saturating_add(1));
        if is_said {
            return None;
        }
        if own <= EXPRESSION_NODES_LIMIT {
            self.names.set_nodes(all);
        }
        let (message, help) = if own > EXPRESSION_NODES_LIMIT {
            (
                format!(
                    "written out over the parts this has at least {own} terms and operators; the most there may be is {EXPRESSION_NODES_LIMIT}"
                ),
                "work a part of it out as a figure `per` part, and go over that",
            )
        } else {
            (
                format!(
                    "the expressions of the catalog, written out over the parts, have at least {all} terms and operators; the most there may be is {CATALOG_NODES_LIMIT}"
                ),
                "work what is repeated out as a figure, and name that",
            )
        };
        self.error(text, span, "LIMIT", message, help)
    }
}

/// How many nodes an expression has.
pub(super) fn node_count(expression: &Expression) -> usize {
    let mut count = 0_usize;
    expression.walk(|_| count = count.saturating_add(1));
    count
}
