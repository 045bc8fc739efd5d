//! TODO

pub mod finding;
pub mod library_files;
pub mod nearest;
pub mod render;
pub mod sheet;
pub mod source;
pub mod syntax;
pub mod tree;
pub(crate) mod typed;

mod site_values;
mod declare;
mod load;

pub use load::{Declaration, DeclarationKind, LoadedCatalog, Places, load_catalog};
