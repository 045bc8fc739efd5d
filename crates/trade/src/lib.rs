//! What a consultant must know at the opening: published codes, standards and measuring practice of the window trade.
//!
//! Pure, exact functions, usable alone. Each value names its edition, its section and how far it was seen there
//! ([`Basis`]). A question that lacks a fact says which ([`Truth::Unknown`]); a measure that cannot be one is refused
//! ([`input`]).
//!
//! | question | module |
//! |---|---|
//! | what readings of tape and level come to, and the size to order | [`measuring`] |
//! | the free width and height that a unit leaves when it opens | [`clear_opening`] |
//! | whether it may be climbed out of, and whether a room has such an opening | [`escape`] |
//! | whether a lite is to be safety glazing | [`safety_glazing`] |
//! | whether children are kept from falling out, and escape beside it | [`fall_protection`] |
//! | what limits how far a window opens | [`control_device`] |
//! | U-factor and solar heat gain by a programme and by a code | [`energy`] |
//! | class, grade, test pressures, wind | [`structure`] |
//! | weight of glass and sash, hardware, lifting | [`glass`] |
//! | how open an insect screen is | [`screen`] |
//! | lead-safe work | [`lead`] |
//! | until when a sale may be cancelled | [`cooling_off`] |
//! | how a unit opens, in the terms of IFC | [`operation_terms`] |
//! | what is not answered here | [`not_covered`] |
//! | the editions of building codes | [`building_code`] |
//! | numbers between two ends, pressures and U-factors in SI units, which input is taken | [`interval`], [`metric`], [`input`] |
//!
//! **Twice written.** A catalog does not call the questions of codes here: it includes the rule files of
//! `examples/library/codes`, in which the same published values stand as data that a dealer can read and change. A test of the
//! crate for catalogs (`crates/catalog/tests/editions`) judges those files and asks this crate for the same facts, at both sides of each limit,
//! so that the two do not come apart.
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
