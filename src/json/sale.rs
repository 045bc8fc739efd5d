//! Until when the buyer may cancel, for a program.

use astragal_trade::Truth;
use astragal_trade::cooling_off::{APPLIES_ALSO, CoolingOff, DAYS_BASIS, NOT_COVERED};
use serde::Serialize;

use crate::quote::sale::{cooling, has_passed};
use crate::quote::work::Quote;

/// What the federal rule says of a sale away from the seller's shop; a check, and state law may give longer.
#[derive(Serialize)]
pub(super) struct CoolingAnswer {
    /// Null where it is not known.
    applies: Option<bool>,
    /// The last day on which the buyer may cancel, until midnight; named and observed holidays left out.
    last_day: Option<String>,
    /// Whether that day lies before the one as of which the order is judged; null where no last day is known.
    has_passed: Option<bool>,
    /// The same if days on which a holiday is only observed count as business days.
    by_named_days: Option<String>,
    /// What has to be known.
    missing: Vec<&'static str>,
    basis: String,
    /// When the rule applies as well, though it is often thought not to.
    also_when: [&'static str; 1],
    /// Sales that the rule leaves out, which is not decided here.
    not_for: Vec<&'static str>,
}

pub(super) fn cooling_answer(quote: &Quote<'_>) -> Option<CoolingAnswer> {
    cooling(quote).map(|answer| answer_of(&answer, has_passed(quote, &answer)))
}

fn answer_of(answer: &CoolingOff, has_passed: Option<bool>) -> CoolingAnswer {
    CoolingAnswer {
        applies: match answer.applies {
            Truth::Yes => Some(true),
            Truth::No => Some(false),
            Truth::Unknown(_) => None,
        },
        last_day: answer.last_day.map(|last| last.day.to_string()),
        has_passed,
        by_named_days: answer.last_day.map(|last| last.by_named_days.to_string()),
        missing: answer.missing.iter().map(|fact| fact.id()).collect(),
        basis: DAYS_BASIS.to_string(),
        also_when: [APPLIES_ALSO],
        not_for: NOT_COVERED.iter().map(|(case, _)| *case).collect(),
    }
}
