//! Names and types: from untyped syntax to the model's expressions, tables and templates.
//!
//! Knows what the names of a catalog mean and which types go together; knows nothing of TOML keys.

mod expression;
mod guard;
mod literal;
mod names;
mod parsed;
mod table;
mod template;
mod text;

pub(crate) use expression::{FUNCTIONS, Scope};
pub(crate) use names::{AttributeShape, Named, Names, OptionDomain, PartWise, Type};
pub(crate) use parsed::{Parsed, push_children};
pub(crate) use table::{
    CellText, Key, Reports, ValueColumn, figure_table, list_table, matrix_table, valued_rows,
};
pub(crate) use template::template;
pub(crate) use text::PlacedText;

#[cfg(test)]
mod tests;
