//! The contract as Rust: what `build.rs` makes of `proto/`, and the descriptors that reflection hands out.

#[allow(
    dead_code,
    missing_docs,
    unreachable_pub,
    clippy::all,
    clippy::pedantic,
    clippy::allow_attributes_without_reason,
    reason = "generated; the program uses the servers and the tests the clients"
)]
mod generated {
    include!(concat!(env!("OUT_DIR"), "/proto.rs"));
}

pub(super) use generated::astragal::v1;
pub(super) use generated::google::r#type as google_type;

/// The encoded descriptors of `proto/`.
pub(super) const DESCRIPTORS: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/descriptors.bin"));
