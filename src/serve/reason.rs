//! A reason for the errors that are made outside of our methods: an unknown method, a message that is too large or is none.
//!
//! The code is put right too: a message over the limit is `RESOURCE_EXHAUSTED`, and bytes that are none are the client's fault,
//! `INVALID_ARGUMENT`, where the transport says `OUT_OF_RANGE` and `INTERNAL`.
//!
//! Always holds: an error leaves with exactly one `google.rpc.ErrorInfo`. Keys and roles will stand beside this, as a layer.
//! Cost: a look at the head of each answer.

use tonic::body::Body;
use tonic::codegen::http::{HeaderMap, Response};
use tonic::{Code, Status};
use tonic_types::{ErrorDetails, StatusExt};

use crate::serve::fault::DOMAIN;

/// Gives an answer that is an error without a reason its reason.
pub(super) fn named(response: Response<Body>) -> Response<Body> {
    match nameless(response.headers()) {
        Some((word, code, status)) => {
            let details = ErrorDetails::with_error_info(word, DOMAIN, []);
            let metadata = status.metadata().clone();
            Status::with_error_details_and_metadata(code, status.message(), details, metadata).into_http()
        }
        None => response,
    }
}

fn nameless(headers: &HeaderMap) -> Option<(&'static str, Code, Status)> {
    let status = Status::from_header_map(headers)?;
    let is_named = !status.details().is_empty();
    if is_named {
        return None;
    }
    let (word, code) = match status.code() {
        Code::Ok => return None,
        // Only the refusal of a coding says which would be taken.
        Code::Unimplemented if headers.contains_key("grpc-accept-encoding") => {
            ("UNSUPPORTED_COMPRESSION", Code::Unimplemented)
        }
        Code::Unimplemented => ("UNKNOWN_METHOD", Code::Unimplemented),
        Code::OutOfRange => ("MESSAGE_TOO_LARGE", Code::ResourceExhausted),
        Code::Internal => ("UNREADABLE_MESSAGE", Code::InvalidArgument),
        Code::NotFound => ("UNKNOWN_SERVICE", Code::NotFound),
        code => ("FAILED", code),
    };
    Some((word, code, status))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::serve::fault::{Reason, failed};

    #[test]
    fn only_an_error_without_a_reason_gets_one() {
        let answer = |status: Status| named(status.into_http::<Body>());
        let reason = |response: &Response<Body>| {
            let status = Status::from_header_map(response.headers()).expect("a status");
            let info = status.get_error_details().error_info().cloned();
            (info.map(|info| info.reason).unwrap_or_default(), status.code())
        };
        let mut compressed = Status::unimplemented("");
        let identity = tonic::metadata::MetadataValue::from_static("identity");
        compressed.metadata_mut().insert("grpc-accept-encoding", identity);
        for (status, expected, code) in [
            (Status::unimplemented(""), "UNKNOWN_METHOD", Code::Unimplemented),
            (compressed, "UNSUPPORTED_COMPRESSION", Code::Unimplemented),
            (
                Status::out_of_range("1 MiB"),
                "MESSAGE_TOO_LARGE",
                Code::ResourceExhausted,
            ),
            (
                Status::internal("bad varint"),
                "UNREADABLE_MESSAGE",
                Code::InvalidArgument,
            ),
            (Status::unavailable("gone"), "FAILED", Code::Unavailable),
            (Status::new(Code::Ok, ""), "", Code::Ok),
            (
                failed(Reason::BadName, "named"),
                "BAD_NAME",
                Code::InvalidArgument,
            ),
            (failed(Reason::Internal, "named"), "INTERNAL", Code::Internal),
        ] {
            assert_eq!(reason(&answer(status)), (expected.to_owned(), code));
        }
    }
}
