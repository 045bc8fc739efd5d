//! The schema of `library.toml`.

use super::table::Table;
use super::value::{id, label};

/// `library.toml`.
pub(super) fn file() -> Table {
    let library = Table::new("Which library this is. A library is the folder that holds this file.")
        .required("id", id("The id of the library.", "acorn-demo"))
        .required("label", label("Demo library"));
    Table::file(
        "`library.toml`: the folder that it stands in is a library. Files in it may include only what is in it.",
    )
    .required("library", library.into_shape())
}
