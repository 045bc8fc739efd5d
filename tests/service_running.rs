//! The service while it runs: health, reflection, and how it ends.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use program::{help_examples, run};
use prost::Message as _;
use served::asked::{house, opening, unit};
use served::process::Service;
use served::v1::{EvaluateOptionsRequest, EvaluateOptionsResponse, SelectionState};
use tokio::runtime::Runtime;
use tokio::sync::oneshot;
use tokio_stream::StreamExt as _;
use tonic::transport::Channel;
use tonic::{Code, Request, Response, Status};
use tonic_health::pb::HealthCheckRequest;
use tonic_health::pb::health_check_response::ServingStatus;
use tonic_health::pb::health_client::HealthClient;
use tonic_types::StatusExt as _;

async fn health(channel: Channel, service: &str) -> Result<ServingStatus, Status> {
    let request = HealthCheckRequest {
        service: service.to_owned(),
    };
    let found = HealthClient::new(channel).check(request).await?;
    Ok(found.into_inner().status())
}

#[test]
fn health_knows_the_whole_and_each_service() {
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let channel = service.connect().await;
        for name in ["", "astragal.v1.CatalogService", "astragal.v1.UnitService"] {
            let found = health(channel.clone(), name).await;
            assert_eq!(found.expect(name), ServingStatus::Serving);
        }
        let status = health(channel, "astragal.v1.Nobody").await.expect_err("unknown");
        assert_eq!(status.code(), Code::NotFound);
        let details = status.get_error_details();
        assert_eq!(details.error_info().expect("a reason").reason, "UNKNOWN_SERVICE");
    });
}

/// What a reflection client needs, in either version: the services, and every message that may come, details of errors included.
macro_rules! check_reflection {
    ($version:ident, $channel:expr) => {{
        use pb::server_reflection_client::ServerReflectionClient;
        use pb::server_reflection_request::MessageRequest;
        use pb::server_reflection_response::MessageResponse;
        use tonic_reflection::pb::$version as pb;
        let mut client = ServerReflectionClient::new($channel);
        let mut ask = async |question: MessageRequest| {
            let request = pb::ServerReflectionRequest {
                host: String::new(),
                message_request: Some(question),
            };
            let answers = client.server_reflection_info(tokio_stream::once(request)).await;
            let mut answers = answers.expect("an answer").into_inner();
            let answer = answers.next().await.expect("an answer").expect("an answer");
            answer.message_response.expect("an answer")
        };
        let MessageResponse::ListServicesResponse(services) =
            ask(MessageRequest::ListServices(String::new())).await
        else {
            panic!("no list of services");
        };
        let names: Vec<&str> = services.service.iter().map(|one| one.name.as_str()).collect();
        for name in [
            "astragal.v1.CatalogService",
            "astragal.v1.UnitService",
            "grpc.health.v1.Health",
        ] {
            assert!(names.contains(&name), "{name} in {names:?}");
        }
        for symbol in [
            "astragal.v1.UnitService",
            "astragal.v1.CompleteUnitResponse",
            "google.type.Money",
            "google.rpc.ErrorInfo",
            "google.rpc.BadRequest",
            "grpc.health.v1.HealthCheckRequest",
        ] {
            let MessageResponse::FileDescriptorResponse(files) =
                ask(MessageRequest::FileContainingSymbol(symbol.to_owned())).await
            else {
                panic!("no file for {symbol}");
            };
            let file = files.file_descriptor_proto.first().expect("a file");
            let file = prost_types::FileDescriptorProto::decode(file.as_slice()).expect("a descriptor");
            assert!(
                symbol.starts_with(file.package()),
                "{symbol} in {}",
                file.package()
            );
        }
    }};
}

#[test]
fn reflection_tells_a_client_all_that_it_must_know() {
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        check_reflection!(v1, service.connect().await);
        check_reflection!(v1alpha, service.connect().await);
    });
}

/// A call whose head has reached the service, and whose message has not.
struct Begun {
    send: oneshot::Sender<EvaluateOptionsRequest>,
    answer: tokio::task::JoinHandle<Result<Response<EvaluateOptionsResponse>, Status>>,
}

impl Begun {
    async fn new(channel: Channel) -> Self {
        let (send, message) = oneshot::channel();
        let (polled, is_polled) = oneshot::channel();
        let message = async move {
            let _ = polled.send(());
            message.await.expect("a message")
        };
        let (message_sender, stream) = tokio::sync::mpsc::channel(1);
        tokio::spawn(async move {
            let _ = message_sender.send(message.await).await;
        });
        let mut client = tonic::client::Grpc::new(channel.clone());
        client.ready().await.expect("ready");
        let path = "/astragal.v1.UnitService/EvaluateOptions"
            .parse()
            .expect("a path");
        let answer = tokio::spawn(async move {
            let stream = tokio_stream::wrappers::ReceiverStream::new(stream);
            let codec = tonic_prost::ProstCodec::default();
            client.client_streaming(Request::new(stream), path, codec).await
        });
        is_polled.await.expect("the call has begun");
        // On one connection frames stay in order: once this is answered, the head of the call before it was read.
        for _ in 0..3 {
            health(channel.clone(), "").await.expect("health");
        }
        Self { send, answer }
    }
}

#[test]
fn a_call_that_has_begun_is_answered_after_the_service_was_told_to_stop() {
    for signal in ["TERM", "INT"] {
        let quote = house(&[]);
        let unit = unit(&quote, opening(&quote, "B1"));
        let service = Service::start(&[]);
        let runtime = Runtime::new().expect("a runtime");
        runtime.block_on(async {
            let channel = service.connect().await;
            let begun = Begun::new(channel).await;
            service.signal(signal);
            // The listener is closed when a new connection is refused.
            let address = service.address().to_owned();
            while tokio::net::TcpStream::connect(&address).await.is_ok() {
                tokio::task::yield_now().await;
            }
            assert!(!begun.answer.is_finished(), "the call runs");
            let request = EvaluateOptionsRequest {
                unit: Some(unit),
                view: 0,
            };
            begun.send.send(request).expect("the call waits");
            let answer = begun.answer.await.expect("it runs").expect("an answer");
            let state = answer.into_inner().selection_state();
            assert_eq!(state, SelectionState::GoesTogether);
        });
        // Connections of the client close with it.
        drop(runtime);
        let ended = service.ended();
        assert_eq!((ended.code, ended.err.as_str()), (Some(0), ""), "{signal}");
    }
}

#[test]
fn a_call_that_does_not_end_is_cut_off_when_the_drain_time_is_over() {
    let service = Service::start(&["--drain-seconds", "0"]);
    let runtime = Runtime::new().expect("a runtime");
    let begun = runtime.block_on(async {
        let begun = Begun::new(service.connect().await).await;
        service.signal("TERM");
        begun
    });
    let ended = service.ended();
    assert_eq!(ended.code, Some(1));
    assert!(ended.err.contains("were cut off"), "{}", ended.err);
    runtime.block_on(async {
        let answer = begun.answer.await.expect("it runs");
        assert!(answer.is_err(), "a call that was cut off is an error");
    });
}

#[test]
fn a_service_without_calls_stops_at_once() {
    let service = Service::start(&["--drain-seconds", "600"]);
    service.signal("TERM");
    let ended = service.ended();
    assert_eq!((ended.code, ended.err.as_str()), (Some(0), ""));
    let loading = "compiling catalog `hinged`, 1 of 2\ncompiling catalog `sliding`, 2 of 2\n";
    assert_eq!(ended.loading, loading, "one line a catalog");
}

#[test]
fn an_open_watch_hears_that_the_service_ends_and_does_not_keep_it_from_ending() {
    let service = Service::start(&["--drain-seconds", "60"]);
    let runtime = Runtime::new().expect("a runtime");
    runtime.block_on(async {
        let channel = service.connect().await;
        let request = HealthCheckRequest {
            service: "astragal.v1.UnitService".to_owned(),
        };
        let watch = HealthClient::new(channel.clone()).watch(request).await;
        let mut watch = watch.expect("a watch").into_inner();
        let first = watch.message().await.expect("a state").expect("a state");
        assert_eq!(first.status(), ServingStatus::Serving);
        let (_unsaid, questions) = tokio::sync::mpsc::channel(1);
        let questions = tokio_stream::wrappers::ReceiverStream::new(questions);
        let reflection =
            tonic_reflection::pb::v1::server_reflection_client::ServerReflectionClient::new(channel)
                .server_reflection_info(questions)
                .await;
        let mut reflection = reflection.expect("a stream").into_inner();
        service.signal("TERM");
        let next = watch.message().await.expect("a state").expect("a state");
        assert_eq!(next.status(), ServingStatus::NotServing);
        let ends = [
            watch.message().await.map(drop).expect_err("the watch ends"),
            reflection.message().await.map(drop).expect_err("reflection ends"),
        ];
        for status in ends {
            assert_eq!(status.code(), Code::Unavailable, "{status:?}");
            let details = status.get_error_details();
            assert_eq!(details.error_info().expect("a reason").reason, "STOPPING");
        }
    });
    // The connection is still there.
    let ended = service.ended();
    assert_eq!((ended.code, ended.err.as_str()), (Some(0), ""));
    drop(runtime);
}

#[test]
fn a_second_signal_ends_the_service_at_once() {
    let service = Service::start(&["--drain-seconds", "600"]);
    let runtime = Runtime::new().expect("a runtime");
    let begun = runtime.block_on(async {
        let begun = Begun::new(service.connect().await).await;
        service.signal("TERM");
        while tokio::net::TcpStream::connect(service.address()).await.is_ok() {
            tokio::task::yield_now().await;
        }
        assert!(!begun.answer.is_finished(), "the call runs");
        service.signal("INT");
        begun
    });
    let ended = service.ended();
    assert_eq!(ended.code, Some(1));
    assert!(ended.err.contains("a second time"), "{}", ended.err);
    let answer = runtime.block_on(begun.answer).expect("it runs");
    assert!(answer.is_err(), "a call that was cut off is an error");
}

#[test]
fn the_examples_of_the_help_serve() {
    for example in help_examples("serve") {
        let mut arguments: Vec<&str> = example.iter().map(String::as_str).collect();
        if !arguments.contains(&"--listen") {
            arguments.extend(["--listen", "127.0.0.1:0"]);
        }
        let service = Service::of(&arguments);
        service.signal("TERM");
        assert_eq!(service.ended().code, Some(0), "{example:?}");
    }
}

#[test]
fn nothing_is_served_from_a_library_with_errors_or_on_an_address_that_is_taken() {
    let broken = run(&["serve", "tests/fixtures/faulty-library"]);
    assert_eq!(broken.code, Some(5), "{}", broken.err);
    assert!(broken.out.is_empty() && !broken.err.is_empty());
    let service = Service::start(&[]);
    let taken = run(&["serve", "examples/library", "--listen", service.address()]);
    assert_eq!(taken.code, Some(1));
    assert!(taken.err.contains(service.address()), "{}", taken.err);
    let wrong = run(&["serve", "examples/library", "--listen", "here"]);
    assert_eq!(wrong.code, Some(2), "{}", wrong.err);
}
