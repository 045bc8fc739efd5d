//! The service against an empty call: `EvaluateOptions` on the demo in both forms, and the health check on the same server in the
//! same run.
//!
//! `cargo bench --bench service` prints for 1 and 16 calls in flight how many calls a second there are of each, the ratio to
//! the empty call, and the processor time that the server took for one. The server is the built program in a process of its
//! own; the client takes part of the same cores. Rounds of the calls alternate, and the median round of each counts.
//!
//! Every call of an opening has other picks: each pick in turn is left out, so that only the setting is asked about twice.
//!
//! Nothing is gated on these numbers: they depend on the machine, the ratio less. On a machine that does other work the
//! processor time says more than the calls a second.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::print_stdout,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "a measurement, printed"
)]

#[path = "../tests/program/mod.rs"]
mod program;
#[path = "../tests/served/mod.rs"]
mod served;

use std::sync::Arc;
use std::time::{Duration, Instant};

use served::asked::{house, list, opening, text, unit};
use served::process::Service;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{EvaluateOptionsRequest, OptionsView, Unit};
use tonic::transport::Channel;
use tonic_health::pb::HealthCheckRequest;
use tonic_health::pb::health_client::HealthClient;

/// How long one round lasts.
const ROUND: Duration = Duration::from_millis(500);
/// How many rounds there are of each call.
const ROUNDS: usize = 7;
/// Ticks of processor time a second, as Linux counts them for every program.
const TICKS: f64 = 100.0;

#[derive(Clone)]
enum Call {
    Empty,
    Options(Arc<[EvaluateOptionsRequest]>),
}

/// What a round came to.
#[derive(Clone, Copy)]
struct Rate {
    a_second: f64,
    /// Microseconds of the server a call; nothing where the system does not say.
    server: f64,
}

impl Call {
    fn options(units: &[Unit], view: OptionsView) -> Self {
        let requests = units.iter().map(|unit| EvaluateOptionsRequest {
            unit: Some(unit.clone()),
            view: view.into(),
        });
        Self::Options(requests.collect())
    }

    async fn once(&self, channel: &Channel, number: usize) {
        match self {
            Self::Empty => {
                let request = HealthCheckRequest::default();
                let mut client = HealthClient::new(channel.clone());
                client.check(request).await.expect("health");
            }
            Self::Options(requests) => {
                let request = requests[number % requests.len()].clone();
                let mut client = UnitServiceClient::new(channel.clone());
                client.evaluate_options(request).await.expect("options");
            }
        }
    }

    /// Asks for a while, with so many in flight on one connection.
    async fn round(&self, service: &Service, channel: &Channel, in_flight: usize) -> Rate {
        let (begun, before) = (Instant::now(), ticks(service));
        let workers = (0..in_flight).map(|worker| {
            let (call, channel) = (self.clone(), channel.clone());
            tokio::spawn(async move {
                let mut count = 0;
                while begun.elapsed() < ROUND {
                    call.once(&channel, worker + count).await;
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
        let seconds = begun.elapsed().as_secs_f64();
        Rate {
            a_second: count as f64 / seconds,
            server: (ticks(service) - before) / TICKS * 1e6 / count as f64,
        }
    }
}

/// The processor time that the server has taken, in ticks.
fn ticks(service: &Service) -> f64 {
    let stat = std::fs::read_to_string(format!("/proc/{}/stat", service.id()));
    let stat = stat.unwrap_or_default();
    // Past the name of the program, which may have spaces: user time is the 12th, system time the 13th.
    let numbers = stat.rsplit(')').next().unwrap_or_default().split_whitespace();
    numbers
        .skip(11)
        .take(2)
        .filter_map(|number| number.parse::<f64>().ok())
        .sum()
}

fn main() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    println!("service: EvaluateOptions against an empty unary call, {cores} cores for client and server");
    let of = |tag: &str| varied(&unit(&quote, opening(&quote, tag)));
    let mut all = Vec::new();
    for one in list(&quote["openings"]) {
        all.extend(of(&text(&one["tag"])));
    }
    let asked = [
        ("hinged, opening B1", of("B1")),
        ("sliding, opening L2", of("L2")),
        ("all openings in turn", all),
    ];
    let runtime = tokio::runtime::Runtime::new().expect("a runtime");
    runtime.block_on(async {
        let channel = service.connect().await;
        for (name, units) in asked {
            for in_flight in [1, 16] {
                println!("{name}, {in_flight} in flight");
                compare(&service, &channel, &units, in_flight).await;
            }
        }
    });
}

async fn compare(service: &Service, channel: &Channel, units: &[Unit], in_flight: usize) {
    let calls = [
        ("empty", Call::Empty),
        ("compact", Call::options(units, OptionsView::Compact)),
        ("full", Call::options(units, OptionsView::Full)),
    ];
    let mut found = [Vec::new(), Vec::new(), Vec::new()];
    for _ in 0..=ROUNDS {
        for ((_, call), found) in calls.iter().zip(&mut found) {
            found.push(call.round(service, channel, in_flight).await);
        }
    }
    let empty = median(&found[0]).a_second;
    for ((name, _), found) in calls.iter().zip(&found) {
        let Rate { a_second, server } = median(found);
        let ratio = 100.0 * a_second / empty;
        println!("  {name:<8}{a_second:>8.0}/s {ratio:>6.1} %   server {server:>5.0} us a call");
    }
}

/// A unit, and the unit without each of its picks.
fn varied(unit: &Unit) -> Vec<Unit> {
    let mut all = vec![unit.clone()];
    for at in 0..unit.picks.len() {
        let mut other = unit.clone();
        let pick = other.picks.remove(at);
        other.pins.retain(|pin| *pin != pick.attribute);
        all.push(other);
    }
    all
}

/// The medians, the first round left out.
fn median(rounds: &[Rate]) -> Rate {
    let of = |number: fn(&Rate) -> f64| {
        let mut numbers: Vec<f64> = rounds.iter().skip(1).map(number).collect();
        numbers.sort_by(f64::total_cmp);
        numbers[numbers.len() / 2]
    };
    Rate {
        a_second: of(|rate| rate.a_second),
        server: of(|rate| rate.server),
    }
}
