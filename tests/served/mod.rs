//! The built program as a service, and the contract as a client sees it.

#![allow(dead_code, reason = "each test program uses a part of this")]

pub(crate) mod asked;
pub(crate) mod filled;
pub(crate) mod process;
pub(crate) mod spoilt;

#[allow(
    dead_code,
    missing_docs,
    unreachable_pub,
    clippy::all,
    clippy::pedantic,
    clippy::allow_attributes_without_reason,
    reason = "generated"
)]
mod generated {
    include!(concat!(env!("OUT_DIR"), "/proto.rs"));
}

pub(crate) use generated::astragal::v1;
pub(crate) use generated::google::r#type as google_type;
