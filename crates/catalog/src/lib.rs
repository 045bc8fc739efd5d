//! Reads libraries, catalogs, price books, policies and orders into the model, with every finding placed.
//!
//! Bytes become spanned trees and sheets ([`source`], [`tree`], [`sheet`]), texts become untyped expressions
//! ([`syntax`]), names and types are settled against one catalog, and out come `astragal_model` values. Everything that
//! is wrong is a [`finding::Finding`] with its place and a way out; all of them come at once, and nothing partial comes
//! with them. Start at [`order::read_order`] and [`check_library`].
//!
//! This crate never judges by itself: to prove the examples of a catalog it asks the model.

pub mod check;
pub mod codes;
pub mod drawn;
pub mod finding;
pub mod library_files;
pub mod nearest;
pub mod order;
pub mod render;
pub mod schema;
pub mod sheet;
pub mod source;
pub mod syntax;
pub mod tree;

mod book;
mod declare;
mod load;
mod policy;
mod site_values;
pub(crate) mod typed;

pub use book::{BookHeader, LoadedBook, book_header, load_book};
pub use check::{CheckReport, check_library};
pub use load::{Declaration, DeclarationKind, LoadedCatalog, Places, load_catalog};
pub use policy::{LoadedPolicy, PolicyHeader, load_policy, policy_header};
