//! The listener: binds, says where, serves until told to stop, and lets what runs come to its end.
//!
//! When the program is told to stop, health answers *not serving*, no connection is accepted any more, and calls that have
//! begun are answered. Streams that would never end are ended. What has not ended when the drain time is over, or when the
//! program is told a second time, is cut off.
//!
//! LIMIT: a message of [`MESSAGE_MAX`] bytes; [`STREAMS_MAX`] calls at once on one connection.
//! TLS, gRPC-Web and the page get their place here.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use tokio::sync::{Semaphore, watch};
use tonic::service::Routes;
use tonic::transport::Server;
use tonic::transport::server::{Router, TcpIncoming};
use tower::layer::util::{Identity, Stack};
use tower::layer::{LayerFn, layer_fn};
use tower::util::MapResponseLayer;

use crate::exit::Exit;
use crate::output;
use crate::serve::DESCRIPTORS;
use crate::serve::asked::Served;
use crate::serve::cache::Cache;
use crate::serve::catalog_service::Catalogs;
use crate::serve::deadline::Guard;
use crate::serve::drain::Stop;
use crate::serve::ending::{EndStreams, Ending};
use crate::serve::library::Library;
use crate::serve::reason;
use crate::serve::unit_service::{PLACES, Units};
use crate::serve::v1::catalog_service_server::CatalogServiceServer;
use crate::serve::v1::unit_service_server::UnitServiceServer;

/// The bytes of the largest message that is taken.
const MESSAGE_MAX: usize = 1 << 20;
/// The calls that run at once on one connection.
const STREAMS_MAX: u32 = 256;

/// Serves until told to stop. The error says why it could not begin, or what was cut off.
pub(super) async fn serve(library: Library, address: SocketAddr, drain: Duration) -> Result<(), String> {
    let bind = |error| format!("cannot listen on {address}: {error}");
    let incoming = TcpIncoming::bind(address).map_err(bind)?.with_nodelay(Some(true));
    let address = incoming.local_addr().map_err(bind)?;
    let mut stop = Stop::listen().map_err(|error| format!("cannot listen to signals: {error}"))?;
    let served = Arc::new(Served {
        library,
        settings: Cache::default(),
        places: Arc::new(Semaphore::new(PLACES)),
    });
    let (health, health_server) = tonic_health::server::health_reporter();
    health.set_serving::<CatalogServiceServer<Catalogs>>().await;
    health.set_serving::<UnitServiceServer<Units>>().await;
    let (tell, told) = watch::channel(false);
    let router = router(&served, &told)?.add_service(health_server);
    if !address.ip().is_loopback() {
        output::write_message(
            "warning: anyone who reaches this address may ask: there are no keys and no TLS yet\n",
        );
    }
    let said = output::write_document(&format!("listening on {address}\n"), Exit::Holds);
    if said != Exit::Holds {
        return Err("the address could not be written".to_owned());
    }
    let (mut stopping, mut overdue) = (told.clone(), told);
    let serving = router.serve_with_incoming_shutdown(incoming, async move {
        let _ = stopping.wait_for(|told| *told).await;
    });
    let watching = async move {
        stop.told().await;
        health
            .set_service_status("", tonic_health::ServingStatus::NotServing)
            .await;
        health.set_not_serving::<CatalogServiceServer<Catalogs>>().await;
        health.set_not_serving::<UnitServiceServer<Units>>().await;
        let _ = tell.send(true);
        stop.told().await;
    };
    let deadline = async move {
        let _ = overdue.wait_for(|told| *told).await;
        tokio::time::sleep(drain).await;
    };
    tokio::select! {
        ended = serving => ended.map_err(|error| format!("serving ended: {error}")),
        () = watching => Err("told to stop a second time: calls that had not ended were cut off".to_owned()),
        () = deadline => Err(format!("calls that had not ended after {} s were cut off", drain.as_secs())),
    }
}

type Layers = Stack<
    EndStreams,
    Stack<
        LayerFn<fn(Ending<Routes>) -> Guard<Ending<Routes>>>,
        Stack<MapResponseLayer<fn(Answer) -> Answer>, Identity>,
    >,
>;
type Answer = tonic::codegen::http::Response<tonic::body::Body>;

fn router(served: &Arc<Served>, told: &watch::Receiver<bool>) -> Result<Router<Layers>, String> {
    let catalogs = CatalogServiceServer::new(Catalogs {
        served: Arc::clone(served),
    });
    let units = UnitServiceServer::new(Units {
        served: Arc::clone(served),
    });
    let reflection = || {
        tonic_reflection::server::Builder::configure()
            .register_encoded_file_descriptor_set(DESCRIPTORS)
            .register_encoded_file_descriptor_set(tonic_health::pb::FILE_DESCRIPTOR_SET)
            .register_encoded_file_descriptor_set(tonic_types::pb::FILE_DESCRIPTOR_SET)
    };
    let unreadable = |error| format!("the descriptors cannot be read: {error}");
    let v1 = reflection().build_v1().map_err(unreadable)?;
    let v1alpha = reflection().build_v1alpha().map_err(unreadable)?;
    let named: fn(Answer) -> Answer = reason::named;
    let guard: fn(Ending<Routes>) -> Guard<Ending<Routes>> = Guard;
    Ok(Server::builder()
        .max_concurrent_streams(STREAMS_MAX)
        .layer(MapResponseLayer::new(named))
        .layer(layer_fn(guard))
        .layer(EndStreams(told.clone()))
        .add_service(catalogs.max_decoding_message_size(MESSAGE_MAX))
        .add_service(units.max_decoding_message_size(MESSAGE_MAX))
        .add_service(v1)
        .add_service(v1alpha))
}
