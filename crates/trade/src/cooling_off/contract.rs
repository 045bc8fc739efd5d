//! What the paper of a sale at the buyer's home must have by the federal rule, as a list to check a paper against.
//!
//! A contract that was talked over in Spanish is in Spanish.
//!
//! Always holds: the list says what to look for, in our own words. It is neither the text of the rule nor a form: the notices have
//! words of their own, which stand in the rule and are printed by who sells. State law may ask for more.
//! Source: 16 CFR 429.1, read.

use crate::basis::Basis;

/// The least size of the bold type in which the right to cancel is printed near the signature, in points.
pub const NOTICE_POINTS_LEAST: u32 = 10;

/// How often the form for cancelling is handed over.
pub const CANCELLATION_FORMS: u32 = 2;

/// Where the list comes from.
pub const CONTRACT_BASIS: Basis = Basis::verified("16 CFR", "429.1");

/// What the paper must have ([`CONTRACT_BASIS`]).
pub const CONTRACT_FORM: [&str; 5] = [
    "it is in the language in which the sale was talked over",
    "it has the date of the sale",
    "it has the name and the address of the seller",
    "near the place of the signature, in bold type of at least 10 points, it says that the buyer may cancel",
    "a form for cancelling comes with it, in duplicate",
];
