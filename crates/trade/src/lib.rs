//! What a consultant must know at the opening: published codes, standards and measuring practice of the window trade.
//!
//! Pure, exact functions, usable alone. Each value names its edition, its section and how far it was seen there
//! ([`Basis`]). A question that lacks a fact says which ([`Truth::Unknown`]); a measure that cannot be one is refused
//! ([`input`]).
//!
//! A model code is not the law of a place: every answer is a check and none an approval. The local code governs, and a
//! licensed person decides.
//!
//! Always holds: lengths are inches and areas square inches, exact; nothing is rounded before it is compared; no clock is
//! read; no catalog is known.

mod basis;
pub mod building_code;
pub mod clear_opening;
mod constant;
pub mod control_device;
pub mod cooling_off;
pub mod energy;
pub mod escape;
mod fact;
mod facts_error;
pub mod fall_protection;
pub mod glass;
pub mod input;
pub mod interval;
pub mod lead;
pub mod measuring;
pub mod metric;
pub mod not_covered;
pub mod operation_terms;
mod refusal;
pub mod safety_glazing;
pub mod screen;
pub mod structure;
mod truth;

pub use basis::{Basis, Status};
pub use fact::Fact;
pub use facts_error::{Contradiction, FactsError};
pub use input::InputError;
pub use jiff::civil::Date;
pub use truth::{Missing, Truth};
