//! Where picks do not go together the service shows the way out as the program does: what must change, and what pins are in the way.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;
mod served;

use program::{changed_house, copy_folder, house_with_width, json};
use serde_json::{Value, json as value};
use served::asked::{list, opening, text, unit};
use served::filled::{as_completed, changed, filled};
use served::process::Service;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{
    CheckUnitRequest, CheckUnitResponse, CompleteUnitRequest, CompleteUnitResponse, CompletionState,
    EvaluateOptionsRequest, EvaluateOptionsResponse, OptionState, OptionsView, SelectionState, Unit, Verdict,
    Want, WantKind,
};
use tokio::runtime::Runtime;
use tonic::transport::Channel;

struct Client(UnitServiceClient<Channel>);

impl Client {
    async fn check(&mut self, unit: &Unit) -> CheckUnitResponse {
        let unit = Some(unit.clone());
        let found = self.0.check_unit(CheckUnitRequest { unit }).await;
        found.expect("an answer").into_inner()
    }

    async fn options(&mut self, unit: &Unit) -> EvaluateOptionsResponse {
        let request = EvaluateOptionsRequest {
            unit: Some(unit.clone()),
            view: OptionsView::Full.into(),
        };
        let found = self.0.evaluate_options(request).await;
        found.expect("an answer").into_inner()
    }

    async fn complete(&mut self, unit: &Unit) -> CompleteUnitResponse {
        let request = CompleteUnitRequest {
            unit: Some(unit.clone()),
            ..CompleteUnitRequest::default()
        };
        let found = self.0.complete_unit(request).await;
        found.expect("an answer").into_inner()
    }
}

fn run<F: Future<Output = ()>>(service: &Service, test: impl FnOnce(Client) -> F) {
    Runtime::new().expect("a runtime").block_on(async {
        test(Client(UnitServiceClient::new(service.connect().await))).await;
    });
}

/// An opening of an order: what the quote says of it, and its unit as a request.
fn quoted(path: &str, tag: &str) -> (Value, Unit) {
    let quote = json(&["quote", path, "--format", "json"]);
    let opening = opening(&quote, tag);
    (opening.clone(), unit(&quote, opening))
}

fn is_completed_as(found: &CheckUnitResponse, opening: &Value) {
    let completion = as_completed(&opening["unit"]["completion"]);
    assert_eq!(filled(found.fill_in.as_ref()), completion);
}

/// A fixed unit with a full screen: both pinned, nothing holds; without the pins one change is enough.
#[test]
fn pins_that_stand_in_the_way_are_told_from_picks_that_conflict() {
    let pins = "pins = [\"operation\", \"screen\"]\npicks = [";
    let (_folder, path) = changed_house("D1", "picks = [", pins);
    let (opening, pinned) = quoted(&path, "D1");
    assert_eq!(pinned.pins.len(), 2);
    let service = Service::start(&[]);
    run(&service, async |mut client| {
        let found = client.check(&pinned).await;
        is_completed_as(&found, &opening);
        let fill_in = found.fill_in.expect("how it was filled in");
        assert_eq!(
            (fill_in.impossible, fill_in.changes_without_pins),
            (true, Some(1))
        );
        let found = client.options(&pinned).await;
        assert_eq!(found.selection_state(), SelectionState::Impossible);
        assert_eq!(
            (found.selection_changes, found.changes_without_pins),
            (None, Some(1))
        );
        let found = client.complete(&pinned).await;
        assert_eq!(found.state(), CompletionState::Impossible);
        assert_eq!(
            (found.completions.len(), found.changes_without_pins),
            (0, Some(1))
        );

        let loosened = Unit {
            pins: Vec::new(),
            ..pinned
        };
        let found = client.options(&loosened).await;
        assert_eq!(found.selection_state(), SelectionState::Conflicts);
        assert_eq!(
            (found.selection_changes, found.changes_without_pins),
            (Some(1), None)
        );
        let found = client.complete(&loosened).await;
        assert_eq!(
            (found.state(), found.changes_without_pins),
            (CompletionState::Found, None)
        );
        let screen = value!([["screen", "full", "none"]]);
        assert_eq!(changed(&found.completions[0].changed), screen);
    });
}

/// 599 inches are too wide for every unit, pinned or not.
#[test]
fn where_pins_are_not_what_stands_in_the_way_nothing_is_said_of_them() {
    let (_folder, path) = house_with_width("B1", "599", "45 9/16");
    let (opening, mut unit) = quoted(&path, "B1");
    let service = Service::start(&[]);
    run(&service, async |mut client| {
        is_completed_as(&client.check(&unit).await, &opening);
        unit.pins = vec!["operation".to_owned()];
        let found = client.options(&unit).await;
        assert_eq!(found.selection_state(), SelectionState::Impossible);
        assert_eq!(
            (found.selection_changes, found.changes_without_pins),
            (None, None)
        );
        let found = client.complete(&unit).await;
        assert_eq!(found.state(), CompletionState::Impossible);
        assert_eq!(found.changes_without_pins, None);
    });
}

/// Every pick that a completion changes is named, and as many as the options say must change.
#[test]
fn a_completion_names_each_pick_that_it_changes() {
    let retired = "\"handle\", option = \"ring\" },\n  { attribute = \"hardware_finish\", option = \"polished-brass\" }";
    let finish = "\"hardware_finish\", option = \"satin-nickel\" }";
    let (_folder, path) = changed_house("B1", finish, retired);
    let (opening, unit) = quoted(&path, "B1");
    let service = Service::start(&[]);
    run(&service, async |mut client| {
        is_completed_as(&client.check(&unit).await, &opening);
        let options = client.options(&unit).await;
        let found = client.complete(&unit).await;
        let picks = &found.completions[0].changed;
        assert_eq!(i32::try_from(picks.len()).ok(), options.selection_changes);
        let from: Vec<_> = picks
            .iter()
            .map(|one| (one.attribute.as_str(), one.from.as_str()))
            .collect();
        assert_eq!(from, [("handle", "ring"), ("hardware_finish", "polished-brass")]);
        for one in &options.attributes {
            let marked = one.options.iter().filter(|option| option.picked).count();
            let is_picked = unit.picks.iter().any(|pick| pick.attribute == one.attribute);
            assert_eq!(marked, usize::from(is_picked), "{}", one.attribute);
        }
        let states: Vec<OptionState> = options
            .attributes
            .iter()
            .flat_map(|one| &one.options)
            .filter(|option| option.picked)
            .map(served::v1::OptionAnswer::state)
            .collect();
        assert!(!states.contains(&OptionState::Kept), "{states:?}");
    });
}

/// Everything holds, and the price of a pocket unit of this size is still to be had from the plant.
#[test]
fn a_completion_that_depends_says_on_what() {
    let service = Service::start(&[]);
    let quote = served::asked::house(&[]);
    let mut unit = unit(&quote, opening(&quote, "L1"));
    for pick in &mut unit.picks {
        if pick.attribute == "install_type" {
            pick.option = "pocket".to_owned();
        }
    }
    run(&service, async |mut client| {
        let found = client.complete(&unit).await;
        assert_eq!(found.state(), CompletionState::Depends);
        let one = &found.completions[0];
        assert_eq!((one.verdict(), &one.total), (Verdict::Undecided, &None));
        assert!(one.open.is_empty(), "only the price waits");
        let kinds: Vec<WantKind> = one.wants.iter().map(Want::kind).collect();
        assert_eq!(kinds, [WantKind::SignOff]);
        let asked = client.check(&unit).await.price.expect("a price").wants;
        assert_eq!(one.wants, asked);
    });
}

/// No side of the hinge would do: nothing is broken yet, and nothing can hold.
#[test]
fn what_nothing_still_to_choose_would_mend_is_broken() {
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("tests/fixtures", folder.path());
    let catalog = folder.path().join("library/small/catalog.toml");
    let text_of_catalog = std::fs::read_to_string(&catalog).expect("the catalog");
    // Its examples, which stand last, say otherwise, and would not let it be served.
    let examples = text_of_catalog.find("\n[[example]]").expect("its examples");
    let mut rules = text_of_catalog[..examples].to_owned();
    rules.push_str(
        "\n[[rule]]\nid = \"no-side\"\nauthority = \"plant\"\nwhen = 'operation == \"casement\"'\n\
         require = 'hinge_side != \"left\" && hinge_side != \"right\"'\nmessage = \"No side.\"\n",
    );
    std::fs::write(&catalog, rules).expect("the catalog with one rule more");
    let path = folder.path().join("orders/broken.toml");
    let order = std::fs::read_to_string(&path).expect("the order");
    let fixed = "picks = [{ attribute = \"operation\", option = \"fixed\" }]";
    let order = order.replacen(fixed, &fixed.replace("fixed", "casement"), 1);
    std::fs::write(&path, order).expect("the order");
    let (opening, unit) = quoted(path.to_str().expect("a path"), "L1");
    assert_eq!(text(&opening["verdict"]), "broken");
    let library = folder.path().join("library");
    let library = library.to_str().expect("a path");
    let service = Service::of(&["serve", library, "--listen", "127.0.0.1:0"]);
    run(&service, async |mut client| {
        let found = client.check(&unit).await;
        assert_eq!(found.verdict(), Verdict::Broken);
        assert_eq!(found.rules.len(), list(&opening["unit"]["rules"]).len());
        is_completed_as(&found, &opening);
        let nearest = found.fill_in.and_then(|one| one.nearest).expect("a way out");
        assert_eq!(
            changed(&nearest.changed),
            value!([["operation", "casement", "fixed"]])
        );
    });
}
