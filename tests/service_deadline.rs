//! Deadlines that clients set: what is over is answered `DEADLINE_EXCEEDED` with its reason, and is not worked on.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

#[path = "served/bare.rs"]
mod bare;

use std::time::{Duration, Instant};

use served::asked::{house, opening, unit};
use served::process::Service;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{CheckUnitRequest, CompleteUnitRequest, CompletionMode, EvaluateOptionsRequest, Unit};
use tokio::runtime::Runtime;
use tonic::{Code, Request, Status};
use tonic_types::StatusExt as _;

type Client = UnitServiceClient<bare::Bare>;

/// A request with a deadline, as it travels.
fn within<T>(timeout: &str, message: T) -> Request<T> {
    let mut request = Request::new(message);
    let timeout = timeout.parse().expect("a header");
    request.metadata_mut().insert("grpc-timeout", timeout);
    request
}

async fn check(client: &mut Client, timeout: &str, unit: Unit) -> Result<(), Status> {
    let request = within(timeout, CheckUnitRequest { unit: Some(unit) });
    client.check_unit(request).await.map(drop)
}

async fn options(client: &mut Client, timeout: &str, unit: Unit) -> Result<(), Status> {
    let message = EvaluateOptionsRequest {
        unit: Some(unit),
        view: 0,
    };
    client.evaluate_options(within(timeout, message)).await.map(drop)
}

/// A hundred units.
async fn complete(client: &mut Client, timeout: &str, unit: Unit) -> Result<(), Status> {
    let message = CompleteUnitRequest {
        unit: Some(unit),
        mode: CompletionMode::Cheapest.into(),
        count: 100,
        shown: Vec::new(),
    };
    client.complete_unit(within(timeout, message)).await.map(drop)
}

fn is_over(answer: Result<(), Status>, name: &str) {
    let status = answer.expect_err(name);
    assert_eq!(status.code(), Code::DeadlineExceeded, "{name}: {status:?}");
    let details = status.get_error_details();
    let info = details.error_info().expect(name);
    assert_eq!(
        (info.reason.as_str(), info.domain.as_str()),
        ("DEADLINE_EXCEEDED", "astragal"),
        "{name}"
    );
}

#[test]
fn a_call_whose_time_is_over_is_not_answered_and_one_with_time_is() {
    let quote = house(&[]);
    let unit = unit(&quote, opening(&quote, "B1"));
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let client = &mut UnitServiceClient::new(bare::connect(&service).await);
        // The first time the setting is prepared, after that it is kept.
        for _ in 0..2 {
            is_over(options(client, "1n", unit.clone()).await, "options");
            is_over(check(client, "1n", unit.clone()).await, "check");
            is_over(complete(client, "1n", unit.clone()).await, "complete");
            options(client, "1M", unit.clone()).await.expect("options");
            check(client, "1M", unit.clone()).await.expect("check");
            complete(client, "1M", unit.clone()).await.expect("complete");
        }
    });
}

#[test]
fn a_long_call_ends_with_its_deadline_and_leaves_the_service_free() {
    let quote = house(&[]);
    let unit = unit(&quote, opening(&quote, "L2"));
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let client = UnitServiceClient::new(bare::connect(&service).await);
        let whole = Instant::now();
        complete(&mut client.clone(), "1H", unit.clone())
            .await
            .expect("a hundred units");
        let whole = whole.elapsed();
        // Far more work than there is time for: what has not begun when its time is over is not begun.
        let count = 200_u32;
        let begun = Instant::now();
        let calls: Vec<_> = (0..count)
            .map(|_| {
                let (mut client, unit) = (client.clone(), unit.clone());
                tokio::spawn(async move { complete(&mut client, "1m", unit).await })
            })
            .collect();
        let mut over = 0;
        for call in calls {
            let Err(status) = call.await.expect("a call") else {
                continue;
            };
            // The transport may look a moment before the service does.
            if status.code() != Code::Cancelled {
                is_over(Err(status), "complete");
                over += 1;
            }
        }
        complete(&mut client.clone(), "1H", unit)
            .await
            .expect("it is free");
        let spent = begun.elapsed();
        assert!(over > count / 2, "{over} of {count}; one takes {whole:?}");
        let all = whole * count / 4;
        assert!(
            spent < all.max(Duration::from_millis(500)),
            "{spent:?} for {count} calls of {whole:?} that were given up"
        );
    });
}

/// A hundred units, whatever time they take.
fn wanted(client: &Client, unit: &Unit) -> tokio::task::JoinHandle<Result<(), Status>> {
    let (mut client, unit) = (client.clone(), unit.clone());
    tokio::spawn(async move { complete(&mut client, "1H", unit).await })
}

#[test]
fn what_an_impatient_client_no_longer_waits_for_is_not_begun() {
    let quote = house(&[]);
    let unit = unit(&quote, opening(&quote, "L2"));
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let client = UnitServiceClient::new(bare::connect(&service).await);
        let begun = Instant::now();
        wanted(&client, &unit)
            .await
            .expect("a call")
            .expect("a hundred units");
        let whole = begun.elapsed();
        let count = 200_u32;
        let calls: Vec<_> = (0..count).map(|_| wanted(&client, &unit)).collect();
        // Time for them to arrive, and for a few to begin.
        tokio::time::sleep(whole).await;
        for call in &calls {
            call.abort();
        }
        let begun = Instant::now();
        wanted(&client, &unit)
            .await
            .expect("a call")
            .expect("a hundred units");
        let spent = begun.elapsed();
        let all = whole * count / 4;
        assert!(
            spent < all.max(Duration::from_millis(500)),
            "{spent:?} behind {count} calls of {whole:?} that nobody waits for"
        );
    });
}

#[test]
fn more_questions_than_may_wait_are_refused_and_the_rest_are_answered() {
    let quote = house(&[]);
    let unit = unit(&quote, opening(&quote, "L2"));
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        // No connection may ask for as much as waits; two may.
        let first = UnitServiceClient::new(bare::connect(&service).await);
        let second = UnitServiceClient::new(bare::connect(&service).await);
        let mut calls = tokio::task::JoinSet::new();
        for client in [&first, &second] {
            for _ in 0..200 {
                let (mut client, unit) = (client.clone(), unit.clone());
                calls.spawn(async move { complete(&mut client, "1H", unit).await });
            }
        }
        let status = loop {
            let ended = calls.join_next().await.expect("a call is refused");
            if let Err(status) = ended.expect("a call") {
                break status;
            }
        };
        assert_eq!(status.code(), Code::Unavailable, "{status:?}");
        let details = status.get_error_details();
        assert_eq!(details.error_info().expect("a reason").reason, "BUSY");
        calls.abort_all();
        while calls.join_next().await.is_some() {}
        // Places are given back.
        let mut patient = second;
        loop {
            match complete(&mut patient, "1H", unit.clone()).await {
                Ok(()) => break,
                Err(status) => assert_eq!(status.code(), Code::Unavailable, "{status:?}"),
            }
        }
    });
}
