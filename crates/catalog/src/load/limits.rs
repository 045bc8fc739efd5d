//! How much of each thing a catalog may have, and the finding when it has more.
//!
//! What is `per` part counts once a part. Source: DESIGN, "Limits"; the limits of parts, measures, facts, notices and
//! examples are our own.

use crate::finding::{Finding, Findings, Place};

/// LIMIT: parts of a catalog.
pub(crate) const PARTS_LIMIT: usize = 64;
/// LIMIT: attributes of a catalog.
pub(crate) const ATTRIBUTES_LIMIT: usize = 512;
/// LIMIT: options of one attribute.
pub(crate) const OPTIONS_LIMIT: usize = 4_096;
/// LIMIT: figures of a catalog.
pub(crate) const FIGURES_LIMIT: usize = 4_096;
/// LIMIT: measures, and facts, of a catalog.
pub(crate) const MEASURES_LIMIT: usize = 4_096;
/// LIMIT: rules, site checks, price items, notices and examples of a catalog, each.
pub(crate) const RULES_LIMIT: usize = 10_000;

/// Whether there are no more than the limit; a finding at `place` when there are.
pub(crate) fn within(
    count: usize,
    limit: usize,
    what: &str,
    place: Option<&Place>,
    findings: &Findings,
) -> bool {
    if count <= limit {
        return true;
    }
    let message = format!("there are {count} {what}; the most there may be is {limit}");
    let finding = Finding::error("LIMIT", message).at_if_known(place.cloned());
    findings.push(finding.with_help("split the catalog"));
    false
}
