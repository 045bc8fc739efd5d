//! Whether a policy's `round_to` fits the currency of a price book.
//!
//! A policy names no currency: half a dollar is a step of prices in dollars, and of none in yen, which have no minor unit.
//!
//! Always holds: what is not a whole number of the book's minor units has a finding at the policy's `round_to`.

use astragal_model::Book;

use super::LoadedPolicy;
use crate::finding::{Finding, Severity};

impl LoadedPolicy {
    /// A finding when prices of this book cannot be rounded to the policy's `round_to`.
    pub(crate) fn rounding_misfit(&self, book: &Book, severity: Severity) -> Option<Finding> {
        let terms = &self.policy.terms;
        let unit = terms.round_to.as_ref()?;
        let minor = book.currency.minor_unit();
        if unit.is_multiple_of(&minor) {
            return None;
        }
        let message = format!(
            "policy `{}` rounds to {unit}, not a whole number of {minor}, the smallest unit of {} in price book `{}`",
            terms.id, book.currency, book.id
        );
        let finding = match severity {
            Severity::Error => Finding::error("BAD_ROUNDING", message),
            Severity::Warning => Finding::warning("BAD_ROUNDING", message),
        };
        let help = format!("round to a multiple of {minor}, or use another policy for this book");
        Some(finding.at_if_known(self.rounding_place.clone()).with_help(help))
    }
}
