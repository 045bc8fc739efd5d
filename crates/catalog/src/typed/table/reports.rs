//! The findings of one sheet, of which a limited number is said.
//!
//! A column of a million wrong cells is one mistake: after [`REPORTS_LIMIT`] findings the others are counted, and the
//! last finding says how many more there are.

use crate::finding::{Finding, Findings, Place};

/// LIMIT: how many findings of one sheet are said one by one.
pub(crate) const REPORTS_LIMIT: usize = 50;

/// The findings of one sheet.
#[must_use = "call `finish`, or nobody says how many more there are"]
pub(crate) struct Reports<'a> {
    findings: &'a Findings,
    said: usize,
    first_unsaid: Option<Option<Place>>,
    unsaid: usize,
    errors: usize,
}

impl<'a> Reports<'a> {
    /// No findings yet.
    pub(crate) fn new(findings: &'a Findings) -> Self {
        Self {
            findings,
            said: 0,
            first_unsaid: None,
            unsaid: 0,
            errors: 0,
        }
    }

    /// Says one more, or counts it.
    pub(crate) fn push(&mut self, finding: Finding) {
        self.errors += usize::from(finding.is_error());
        if self.said < REPORTS_LIMIT {
            self.said += 1;
            self.findings.push(finding);
        } else {
            self.unsaid += 1;
            let place = finding.place().cloned();
            self.first_unsaid.get_or_insert(place);
        }
    }

    /// Whether one more finding would be said; otherwise it need not help.
    pub(crate) fn says_more(&self) -> bool {
        self.said < REPORTS_LIMIT
    }

    /// Whether nothing so far makes the sheet unusable.
    pub(crate) fn is_fine(&self) -> bool {
        self.errors == 0
    }

    /// Says how many were not said; true when nothing makes the sheet unusable.
    pub(crate) fn finish(self) -> bool {
        if let Some(place) = self.first_unsaid {
            let message = format!("and {} more like these", self.unsaid);
            let finding = if self.errors > 0 {
                Finding::error("MORE_FINDINGS", message)
            } else {
                Finding::warning("MORE_FINDINGS", message)
            };
            self.findings.push(finding.at_if_known(place));
        }
        self.errors == 0
    }
}
