//! A catalog compiled into a diagram, and questions about one unit answered from it.
//!
//! Six steps, a module each. [`ground`] makes a relation over attributes of every binding rule and price item, figures seen
//! through; what is left is a gate on measures, facts and waivers, or a cell of money. [`order`] hangs the attributes in a tree.
//! [`automata`] makes a shared decision graph of every relation, read along it. [`compile()`] builds an AND/OR multi-valued decision diagram over
//! it. [`diagram`] holds that flat. [`prepare`] looks at an opening once: each gate, each cell,
//! what is left of the diagram. Then [`pass`] and [`mod@count`]
//! answer in one or two walks: [`mod@options`], [`mod@waits`], [`mod@complete`]; [`engine`] puts it together. Which seed
//! breaks the ties of the order is found by [`mod@race`] before a catalog is served.
//!
//! Always holds: no float, no clock, no file, no thread; the same catalog gives the same diagram and the same answers.
//! What it answers is compared with `astragal_model::judge` in `tests/against_judge.rs` and `tests/completions.rs`,
//! configuration by configuration.
//!
//! Not here yet: remedies, conflicts, alternatives.

pub mod automata;
mod compile;
pub mod complete;
pub mod count;
pub mod diagram;
pub mod engine;
pub mod ground;
mod index;
pub mod label;
pub mod limit;
mod lists;
pub mod network;
pub mod options;
pub mod order;
pub mod pass;
pub mod prepare;
pub mod race;
mod rank;
pub mod rows;
mod term;
pub mod waits;
pub mod weights;

pub use compile::compile;
