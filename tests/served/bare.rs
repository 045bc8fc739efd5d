//! A connection without a clock of its own: the transport of `tonic` gives a call up by itself when its time is over, so that
//! what the service says of it is never seen.

use hyper::client::conn::http2::{SendRequest, handshake};
use hyper_util::rt::{TokioExecutor, TokioIo};
use tonic::body::Body;
use tonic::codegen::http::uri::{PathAndQuery, Scheme};
use tonic::codegen::http::{Request, Response, Uri};
use tower::util::BoxCloneService;

use crate::served::process::Service;

/// What a generated client sends with.
pub(crate) type Bare = BoxCloneService<Request<Body>, Response<hyper::body::Incoming>, hyper::Error>;

/// A new connection.
pub(crate) async fn connect(service: &Service) -> Bare {
    let stream = tokio::net::TcpStream::connect(service.address()).await;
    let stream = TokioIo::new(stream.expect("a connection"));
    let (sender, connection) = handshake(TokioExecutor::new(), stream).await.expect("http/2");
    tokio::spawn(connection);
    let authority = service.address().to_owned();
    BoxCloneService::new(tower::service_fn(move |mut request: Request<Body>| {
        let mut sender: SendRequest<Body> = sender.clone();
        let path = request.uri().path_and_query().cloned();
        *request.uri_mut() = Uri::builder()
            .scheme(Scheme::HTTP)
            .authority(authority.as_str())
            .path_and_query(path.unwrap_or_else(|| PathAndQuery::from_static("/")))
            .build()
            .expect("an address");
        async move { sender.send_request(request).await }
    }))
}
