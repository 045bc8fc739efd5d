//! TODO

pub mod finding;
pub mod library_files;
pub mod nearest;
pub mod order;
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
mod policy;
pub use policy::{LoadedPolicy, PolicyHeader, load_policy, policy_header};
mod book;
pub use book::{BookHeader, LoadedBook, book_header, load_book};
pub mod check;
pub use check::{CheckReport, check_library};
