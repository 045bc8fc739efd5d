//! Streams that do not end by themselves, ended when the program is told to stop.
//!
//! `Health.Watch` and reflection go on for as long as a client listens. A watcher that is told `NOT_SERVING` and then `UNAVAILABLE`
//! with the reason `STOPPING` looks elsewhere, and the program ends without cutting anything off.
//!
//! Always holds: what is ready to be sent is sent first; no call of ours is ended by this.
//! Cost: a look at the path of each call.

use std::pin::Pin;
use std::task::{Context, Poll, ready};

use http_body::Frame;
use pin_project_lite::pin_project;
use tokio::sync::watch;
use tonic::Status;
use tonic::body::Body;
use tonic::codegen::Bytes;
use tonic::codegen::http::{HeaderMap, Request, Response};
use tower::{Layer, Service};

use crate::serve::fault::{Reason, failed};

/// Puts [`Ending`] around a service.
#[derive(Clone)]
pub(super) struct EndStreams(pub(super) watch::Receiver<bool>);

impl<S> Layer<S> for EndStreams {
    type Service = Ending<S>;

    fn layer(&self, inner: S) -> Ending<S> {
        Ending {
            inner,
            told: self.0.clone(),
        }
    }
}

/// A service whose endless streams end when the program is told to stop.
#[derive(Clone)]
pub(super) struct Ending<S> {
    inner: S,
    told: watch::Receiver<bool>,
}

fn is_endless(path: &str) -> bool {
    path == "/grpc.health.v1.Health/Watch" || path.starts_with("/grpc.reflection.")
}

impl<S> Service<Request<Body>> for Ending<S>
where
    S: Service<Request<Body>, Response = Response<Body>>,
{
    type Response = Response<Body>;
    type Error = S::Error;
    type Future = Begun<S::Future>;

    fn poll_ready(&mut self, context: &mut Context<'_>) -> Poll<Result<(), S::Error>> {
        self.inner.poll_ready(context)
    }

    fn call(&mut self, request: Request<Body>) -> Self::Future {
        Begun {
            told: is_endless(request.uri().path()).then(|| self.told.clone()),
            inner: self.inner.call(request),
        }
    }
}

pin_project! {
    /// A call whose answer may be a stream without an end.
    pub(super) struct Begun<F> {
        told: Option<watch::Receiver<bool>>,
        #[pin]
        inner: F,
    }
}

impl<F, E> Future for Begun<F>
where
    F: Future<Output = Result<Response<Body>, E>>,
{
    type Output = Result<Response<Body>, E>;

    fn poll(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Self::Output> {
        let this = self.project();
        let answer = ready!(this.inner.poll(context));
        Poll::Ready(match this.told.take() {
            Some(told) => answer.map(|answer| answer.map(|body| Body::new(Stream::new(body, told)))),
            None => answer,
        })
    }
}

/// The frames of a stream until the program is told to stop, and then its end.
struct Stream {
    body: Body,
    told: Pin<Box<dyn Future<Output = ()> + Send>>,
    is_ended: bool,
}

impl Stream {
    fn new(body: Body, mut told: watch::Receiver<bool>) -> Self {
        Self {
            body,
            told: Box::pin(async move {
                let _ = told.wait_for(|told| *told).await;
            }),
            is_ended: false,
        }
    }
}

impl http_body::Body for Stream {
    type Data = Bytes;
    type Error = Status;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, Status>>> {
        if self.is_ended {
            return Poll::Ready(None);
        }
        if let Poll::Ready(frame) = Pin::new(&mut self.body).poll_frame(context) {
            return Poll::Ready(frame);
        }
        ready!(self.told.as_mut().poll(context));
        self.is_ended = true;
        let mut trailers = HeaderMap::new();
        let status = failed(Reason::Stopping, "the service was told to stop");
        let written = status.add_header(&mut trailers);
        Poll::Ready(Some(written.map(|()| Frame::trailers(trailers))))
    }

    fn is_end_stream(&self) -> bool {
        self.is_ended || self.body.is_end_stream()
    }
}
