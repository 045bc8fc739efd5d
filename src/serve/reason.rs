//! A reason for the errors that are made outside of our methods: an unknown method, a message that is too large or is none.
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
        Some((word, status)) => {
            let details = ErrorDetails::with_error_info(word, DOMAIN, []);
            Status::with_error_details(status.code(), status.message(), details).into_http()
        }
        None => response,
    }
}

fn nameless(headers: &HeaderMap) -> Option<(&'static str, Status)> {
    let status = Status::from_header_map(headers)?;
    let is_named = !status.details().is_empty();
    if is_named {
        return None;
    }
    let word = match status.code() {
        Code::Ok => return None,
        Code::Unimplemented => "UNKNOWN_METHOD",
        Code::OutOfRange => "MESSAGE_TOO_LARGE",
        Code::Internal => "UNREADABLE_MESSAGE",
        Code::NotFound => "UNKNOWN_SERVICE",
        _ => "FAILED",
    };
    Some((word, status))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_an_error_without_a_reason_gets_one() {
        let answer = |status: Status| named(status.into_http::<Body>());
        let reason = |response: &Response<Body>| {
            let status = Status::from_header_map(response.headers()).expect("a status");
            let info = status.get_error_details().error_info().cloned();
            info.map(|info| info.reason).unwrap_or_default()
        };
        for (status, expected) in [
            (Status::unimplemented(""), "UNKNOWN_METHOD"),
            (Status::out_of_range("1 MiB"), "MESSAGE_TOO_LARGE"),
            (Status::internal("bad varint"), "UNREADABLE_MESSAGE"),
            (Status::new(Code::Ok, ""), ""),
            (
                crate::serve::fault::failed(crate::serve::fault::Reason::BadName, "named"),
                "BAD_NAME",
            ),
        ] {
            assert_eq!(reason(&answer(status)), expected);
        }
    }
}
