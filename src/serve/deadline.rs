//! Until when an answer is of use: what a client says in `grpc-timeout`, kept by a layer of ours and by the work itself.
//!
//! `grpc-timeout: 50m` gives a call 50 milliseconds. A call whose time is over is answered `DEADLINE_EXCEEDED` with our reason,
//! wherever it is: its message not yet there, waiting for a thread, or worked on. Work that has begun looks at the clock
//! before each of its steps.
//!
//! Always holds: a question that would begin after its deadline is not begun.
//! Cost: a look at one header; a look at the clock each time a call with a deadline wakes up.

use std::pin::Pin;
use std::task::{Context, Poll};
use std::time::{Duration, Instant};

use pin_project_lite::pin_project;
use tonic::Status;
use tonic::body::Body;
use tonic::codegen::http::{Extensions, HeaderMap, Request, Response};
use tower::Service;

use crate::serve::fault::{Reason, failed};

/// The end of the time that a call has, if it has one.
#[derive(Clone, Copy, Default, Debug)]
pub(super) struct Deadline(Option<Instant>);

impl Deadline {
    /// The deadline that [`Guard`] noted.
    pub(super) fn of(extensions: &Extensions) -> Self {
        extensions.get().copied().unwrap_or_default()
    }

    /// The error, once the time is over.
    pub(super) fn check(self) -> Result<(), Status> {
        match self.0 {
            Some(end) if end <= Instant::now() => Err(failed(
                Reason::DeadlineExceeded,
                "the time that the request gave is over",
            )),
            _ => Ok(()),
        }
    }
}

/// How long a call may take; `None` where nothing is said, or what is said is no time.
fn timeout(headers: &HeaderMap) -> Option<Duration> {
    let written = headers.get("grpc-timeout")?.to_str().ok()?;
    let (count, unit) = written.split_at_checked(written.len().checked_sub(1)?)?;
    let is_count = (1..=8).contains(&count.len()) && count.bytes().all(|byte| byte.is_ascii_digit());
    let count = count.parse().ok().filter(|_| is_count)?;
    match unit {
        "H" => Some(Duration::from_secs(count * 3_600)),
        "M" => Some(Duration::from_secs(count * 60)),
        "S" => Some(Duration::from_secs(count)),
        "m" => Some(Duration::from_millis(count)),
        "u" => Some(Duration::from_micros(count)),
        "n" => Some(Duration::from_nanos(count)),
        _ => None,
    }
}

/// A service whose calls end with their deadlines.
#[derive(Clone)]
pub(super) struct Guard<S>(pub(super) S);

impl<S> Service<Request<Body>> for Guard<S>
where
    S: Service<Request<Body>, Response = Response<Body>>,
{
    type Response = Response<Body>;
    type Error = S::Error;
    type Future = Guarded<S::Future>;

    fn poll_ready(&mut self, context: &mut Context<'_>) -> Poll<Result<(), S::Error>> {
        self.0.poll_ready(context)
    }

    fn call(&mut self, mut request: Request<Body>) -> Self::Future {
        let end = timeout(request.headers()).and_then(|timeout| Instant::now().checked_add(timeout));
        let deadline = Deadline(end);
        if end.is_some() {
            request.extensions_mut().insert(deadline);
        }
        Guarded {
            deadline,
            inner: self.0.call(request),
        }
    }
}

pin_project! {
    /// A call that ends with its deadline.
    ///
    /// It needs no timer: the transport around it has one for the same header, which began a moment later, wakes this up and asks
    /// it first. Where the time passes in the moment between, the transport gives the call up by itself, as `CANCELLED`.
    pub(super) struct Guarded<F> {
        deadline: Deadline,
        #[pin]
        inner: F,
    }
}

impl<F, E> Future for Guarded<F>
where
    F: Future<Output = Result<Response<Body>, E>>,
{
    type Output = Result<Response<Body>, E>;

    fn poll(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Self::Output> {
        let this = self.project();
        let over = |status: Status| Poll::Ready(Ok(status.into_http()));
        if let Err(status) = this.deadline.check() {
            return over(status);
        }
        match this.inner.poll(context) {
            // The time may have passed meanwhile; the transport looks next.
            Poll::Pending => this.deadline.check().map_or_else(over, |()| Poll::Pending),
            ready @ Poll::Ready(_) => ready,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tonic::Code;

    #[test]
    fn a_timeout_is_up_to_eight_digits_and_a_unit() {
        for (written, expected) in [
            ("1H", Some(Duration::from_secs(3_600))),
            ("2M", Some(Duration::from_secs(120))),
            ("99999999S", Some(Duration::from_secs(99_999_999))),
            ("50m", Some(Duration::from_millis(50))),
            ("7u", Some(Duration::from_micros(7))),
            ("0n", Some(Duration::ZERO)),
            ("", None),
            ("m", None),
            ("5", None),
            ("5x", None),
            ("-5m", None),
            ("+5m", None),
            ("123456789n", None),
        ] {
            let mut headers = HeaderMap::new();
            headers.insert("grpc-timeout", written.parse().expect("a header"));
            assert_eq!(timeout(&headers), expected, "{written}");
        }
        assert_eq!(timeout(&HeaderMap::new()), None);
    }

    #[test]
    fn only_a_time_that_is_over_is_an_error() {
        let now = Instant::now();
        assert!(Deadline(None).check().is_ok());
        assert!(Deadline(now.checked_add(Duration::from_hours(1))).check().is_ok());
        let over = Deadline(Some(now)).check().expect_err("over");
        assert_eq!(over.code(), Code::DeadlineExceeded);
    }
}
