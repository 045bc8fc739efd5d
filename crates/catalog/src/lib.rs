//! TODO

pub mod syntax;
pub mod finding;
pub mod library_files;
pub mod nearest;
pub mod render;
pub mod sheet;
pub mod source;
pub mod tree;
