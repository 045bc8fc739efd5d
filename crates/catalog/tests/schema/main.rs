//! JSON Schemas against the readers: what one refuses for its shape, the other refuses, and every file of the project that
//! can be read is accepted.
//!
//! Nothing is compared by a list kept by hand. A *specimen* is a file with every key that a schema knows, made from the
//! examples in the schema. It is changed in one place at a time, the reader reads it, and what it finds is compared with
//! what the schema says: the keys it knows, the words it knows, the keys it demands, the types it takes.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

mod agreement;
mod files;
mod meta;
mod reader;
mod specimen;
mod wrong;
