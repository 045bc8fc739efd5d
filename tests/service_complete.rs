//! Completions over the service: those of the quote, the cheapest, the next ones, and near what is on screen.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use program::json;
use serde_json::Value;
use served::asked::{HOUSE, amount, house, list, opening, text, unit};
use served::filled;
use served::process::Service;
use served::v1::choice::Stands;
use served::v1::shown_choice;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{
    ChoiceState, CompleteUnitRequest, CompleteUnitResponse, Completion, CompletionMode, CompletionState,
    ShownChoice, Unit, Verdict, WantKind,
};
use tokio::runtime::Runtime;
use tonic::transport::Channel;

struct Client(UnitServiceClient<Channel>);

impl Client {
    async fn complete(
        &mut self,
        unit: &Unit,
        mode: CompletionMode,
        count: i32,
        shown: &[ShownChoice],
    ) -> CompleteUnitResponse {
        let request = CompleteUnitRequest {
            unit: Some(unit.clone()),
            mode: mode.into(),
            count,
            shown: shown.to_vec(),
        };
        self.0
            .complete_unit(request)
            .await
            .expect("an answer")
            .into_inner()
    }
}

fn run<F: Future<Output = ()>>(test: impl FnOnce(Client, Value) -> F) {
    let quote = house(&[]);
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        test(Client(UnitServiceClient::new(service.connect().await)), quote).await;
    });
}

/// A unit as it is sent back when it is on screen: every choice as it came.
fn on_screen(completion: &Completion) -> Vec<ShownChoice> {
    let choices = completion.choices.iter();
    let shown = choices.map(|one| ShownChoice {
        attribute: one.attribute.clone(),
        stands: one.stands.clone().map(|stands| match stands {
            Stands::Option(option) => shown_choice::Stands::Option(option),
            Stands::NotAsked(is_so) => shown_choice::Stands::NotAsked(is_so),
        }),
    });
    shown.collect()
}

/// What stands at every attribute.
fn options(completion: &Completion) -> Vec<(&str, &str)> {
    let choices = completion.choices.iter();
    choices
        .map(|one| (one.attribute.as_str(), filled::option(one)))
        .collect()
}

fn cents(completion: &Completion) -> i64 {
    let money = completion.subtotal.as_ref().expect("a subtotal");
    money.units * 100 + i64::from(money.nanos) / 10_000_000
}

/// A quote that holds is the standard completion, and nothing in it is changed.
#[test]
fn the_standard_completion_is_the_unit_of_the_quote() {
    run(async |mut client, quote| {
        let mut compared = 0;
        for opening in list(&quote["openings"]) {
            let tag = text(&opening["tag"]);
            let unit = unit(&quote, opening);
            let found = client.complete(&unit, CompletionMode::Standard, 0, &[]).await;
            if opening["verdict"] != "holds" {
                continue;
            }
            compared += 1;
            assert_eq!(found.state(), CompletionState::Found, "{tag}");
            let first = &found.completions[0];
            assert_eq!(
                (first.verdict(), first.changed.len()),
                (Verdict::Holds, 0),
                "{tag}"
            );
            let choices = list(&opening["unit"]["choices"]);
            let quoted: Vec<(String, String)> = choices
                .map(|one| (text(&one["attribute"]["id"]), text(&one["option"]["id"])))
                .collect();
            let quoted: Vec<(&str, &str)> = quoted.iter().map(|(a, b)| (a.as_str(), b.as_str())).collect();
            assert_eq!(options(first), quoted, "{tag}");
            assert_eq!(
                amount(first.total.as_ref()),
                opening["unit"]["price"]["total"],
                "{tag}"
            );
            let filled = first
                .choices
                .iter()
                .filter(|one| one.state() == ChoiceState::Filled);
            assert_eq!(
                filled.count(),
                usize::try_from(first.departures).expect("a count"),
                "{tag}"
            );
        }
        assert!(compared >= 5, "{compared}");
    });
}

#[test]
fn the_cheapest_completion_costs_what_the_options_say_is_the_least() {
    run(async |mut client, quote| {
        let mut compared = 0;
        for opening in list(&quote["openings"]) {
            let tag = text(&opening["tag"]);
            let found = client
                .complete(&unit(&quote, opening), CompletionMode::Cheapest, 1, &[])
                .await;
            let said = json(&["options", HOUSE, "--opening", &tag, "--format", "json"]);
            let least = &said["units"][0]["least_subtotal"];
            if found.state() != CompletionState::Found || least.is_null() {
                continue;
            }
            compared += 1;
            assert_eq!(&amount(found.completions[0].subtotal.as_ref()), least, "{tag}");
        }
        assert!(compared >= 5, "{compared}");
    });
}

#[test]
fn the_next_completions_differ_and_never_cost_less() {
    run(async |mut client, quote| {
        let unit = unit(&quote, opening(&quote, "B1"));
        let found = client.complete(&unit, CompletionMode::Cheapest, 12, &[]).await;
        assert_eq!(found.completions.len(), 12);
        for pair in found.completions.windows(2) {
            assert!(cents(&pair[0]) <= cents(&pair[1]));
        }
        for (at, one) in found.completions.iter().enumerate() {
            for other in &found.completions[..at] {
                assert_ne!(options(one), options(other));
            }
        }
    });
}

#[test]
fn among_units_as_good_the_one_near_the_screen_is_taken() {
    run(async |mut client, quote| {
        let unit = unit(&quote, opening(&quote, "B1"));
        let found = client.complete(&unit, CompletionMode::Cheapest, 12, &[]).await;
        let first = &found.completions[0];
        let mut tried = 0;
        for other in found.completions.iter().skip(1) {
            let is_as_good = cents(other) == cents(first) && other.changed == first.changed;
            if !is_as_good {
                continue;
            }
            tried += 1;
            let near = client
                .complete(&unit, CompletionMode::Cheapest, 1, &on_screen(other))
                .await;
            assert_eq!(options(&near.completions[0]), options(other));
        }
        assert!(tried > 0, "no two are as good");
    });
}

#[test]
fn what_somebody_must_choose_stays_open() {
    run(async |mut client, quote| {
        let mut unit = unit(&quote, opening(&quote, "B1"));
        unit.picks.retain(|pick| pick.attribute != "hinge_side");
        let found = client.complete(&unit, CompletionMode::Standard, 1, &[]).await;
        let first = &found.completions[0];
        let open: Vec<&str> = first.open.iter().map(|one| one.attribute.as_str()).collect();
        assert_eq!(open, ["hinge_side"]);
        assert!(first.open[0].to_choose);
        assert_eq!(first.verdict(), Verdict::Undecided);
        let wants: Vec<(WantKind, &str)> = first
            .wants
            .iter()
            .map(|want| (want.kind(), want.id.as_str()))
            .collect();
        assert_eq!(wants, [(WantKind::Choice, "hinge_side")]);
        let shown = on_screen(first);
        let again = client.complete(&unit, CompletionMode::Standard, 1, &shown).await;
        assert_eq!(again, found, "what is open on screen stays open");
    });
}
