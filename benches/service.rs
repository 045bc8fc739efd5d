//! The service against an empty call: `EvaluateOptions` on the demo, and the health check on the same server in the same run.
//!
//! `cargo bench --bench service` prints for 1 and 16 calls in flight how many calls a second there are of each, and the ratio.
//! The server is the built program in a process of its own; the client takes part of the same cores. Rounds of the two calls
//! alternate, and the median round of each counts.
//!
//! Nothing is gated on these numbers: they depend on the machine, the ratio less.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::print_stdout,
    clippy::float_arithmetic,
    reason = "a measurement, printed"
)]

#[path = "../tests/program/mod.rs"]
mod program;
#[path = "../tests/served/mod.rs"]
mod served;

use std::time::{Duration, Instant};

use served::asked::{house, opening, unit};
use served::process::Service;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{EvaluateOptionsRequest, Unit};
use tonic::transport::Channel;
use tonic_health::pb::HealthCheckRequest;
use tonic_health::pb::health_client::HealthClient;

/// How long one round lasts.
const ROUND: Duration = Duration::from_millis(500);
/// How many rounds there are of each call.
const ROUNDS: usize = 7;

#[derive(Clone)]
enum Call {
    Empty,
    Options(Box<Unit>),
}

impl Call {
    async fn once(&self, channel: &Channel) {
        match self {
            Self::Empty => {
                let request = HealthCheckRequest::default();
                HealthClient::new(channel.clone())
                    .check(request)
                    .await
                    .expect("health");
            }
            Self::Options(unit) => {
                let request = EvaluateOptionsRequest {
                    unit: Some(unit.as_ref().clone()),
                };
                let mut client = UnitServiceClient::new(channel.clone());
                client.evaluate_options(request).await.expect("options");
            }
        }
    }

    /// Calls a second, with so many in flight on one connection.
    async fn round(&self, channel: &Channel, in_flight: usize) -> f64 {
        let begun = Instant::now();
        let workers = (0..in_flight).map(|_| {
            let (call, channel) = (self.clone(), channel.clone());
            tokio::spawn(async move {
                let mut count = 0_u32;
                while begun.elapsed() < ROUND {
                    call.once(&channel).await;
                    count += 1;
                }
                count
            })
        });
        let workers: Vec<_> = workers.collect();
        let mut count = 0;
        for worker in workers {
            count += worker.await.expect("a worker");
        }
        f64::from(count) / begun.elapsed().as_secs_f64()
    }
}

fn main() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    println!("service: EvaluateOptions against an empty unary call, {cores} cores for client and server");
    let runtime = tokio::runtime::Runtime::new().expect("a runtime");
    runtime.block_on(async {
        let channel = service.connect().await;
        for tag in ["B1", "L2"] {
            let options = Call::Options(Box::new(unit(&quote, opening(&quote, tag))));
            for in_flight in [1, 16] {
                let mut found = [Vec::new(), Vec::new()];
                for _ in 0..=ROUNDS {
                    found[0].push(Call::Empty.round(&channel, in_flight).await);
                    found[1].push(options.round(&channel, in_flight).await);
                }
                let [empty, options] = found.map(median);
                println!(
                    "opening {tag}, {in_flight:>2} in flight: empty {empty:.0}/s, options {options:.0}/s, ratio {:.1} %",
                    100.0 * options / empty
                );
            }
        }
    });
}

/// The median, the first round left out.
fn median(mut rounds: Vec<f64>) -> f64 {
    rounds.remove(0);
    rounds.sort_by(f64::total_cmp);
    rounds[rounds.len() / 2]
}
