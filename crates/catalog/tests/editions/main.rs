//! The code files of the examples against `astragal-trade`: two writings of the same published values.
//!
//! Each file of `examples/library/codes` is put into a small library of its own, whose catalog declares what the file asks for.
//! The rules are judged for facts at both sides of every limit and for random facts, missing ones among them, and each
//! answer is compared with that of the crate for the same facts and edition: yes, no, or cannot be decided.
//!
//! Where the two are not meant to say the same, a row of a table of differences says so with its reason, and fails as soon
//! as they do say the same.
//!
//! Source: the values are those of the two; each says where they stand. Codes are models; the adopted local code governs.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a fault ends the test"
)]

mod case;
mod code_file;
mod random;
mod said;

mod energy_code;
mod energy_programme;
mod escape;
mod escape_differences;
mod escape_rooms;
mod falls;
mod glazing;
mod lead;
mod sections;
mod wind;
mod words;
