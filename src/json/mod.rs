//! Answers for a program: everything that a judgement says, by id and label, with exact numbers as texts.
//!
//! `format` is 1. A length is `{"type":"length","inches":"35.625","text":"35 5/8 in"}`, money
//! `{"amount":"455.00","currency":"USD"}`; a number without an exact decimal is a fraction, `"34/3"`.
//!
//! Always holds: the same answer gives the same bytes; keys stand in a fixed order; what does not apply is `null`.

mod check;
mod chosen;
mod completion;
mod extra;
mod findings;
mod judgement;
mod options;
mod order;
mod prices;
mod quote;
mod readings;
mod rooms;
mod sale;
mod values;
mod writing;

pub(crate) use check::{checked, explained};
pub(crate) use findings::{JsonFinding, NoAnswer};
pub(crate) use options::options;
pub(crate) use quote::quote;
pub(crate) use writing::to_text;

/// The version of the format of all answers.
pub(crate) const FORMAT: u32 = 1;
