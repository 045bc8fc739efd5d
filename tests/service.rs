//! The service as a client sees it: every opening of the demo house, answered as the program answers it.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;
mod served;

use program::json;
use serde_json::{Value, json as value};
use served::asked::{HOUSE, amount, house, list, opening, text, unit, word};
use served::filled::{as_completed, filled, option};
use served::process::Service;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{
    CheckUnitRequest, CheckUnitResponse, Choice, ChoiceState, EvaluateOptionsRequest,
    EvaluateOptionsResponse, Revisions, Want,
};
use served::{v1, v1::Unit};
use tokio::runtime::Runtime;

fn runtime() -> Runtime {
    Runtime::new().expect("a runtime")
}

/// The tags of the house.
fn tags(quote: &Value) -> Vec<String> {
    let tags: Vec<String> = list(&quote["openings"]).map(|one| text(&one["tag"])).collect();
    assert_eq!(tags.len(), 10);
    tags
}

fn check_revisions(found: Option<&Revisions>, catalog: &Value, tag: &str) {
    let found = found.expect("revisions");
    let pairs = [
        (&found.catalog, "catalogs", catalog),
        (&found.book, "books", &catalog["book"]),
        (&found.policy, "policies", &catalog["policy"]),
    ];
    for (found, collection, expected) in pairs {
        let found = found.as_ref().expect(collection);
        let name = format!("{collection}/{}", text(&expected["id"]));
        assert_eq!(
            (&found.name, &found.hash),
            (&name, &text(&expected["revision"])),
            "{tag}"
        );
    }
}

fn catalog_of<'a>(quote: &'a Value, unit: &Unit) -> &'a Value {
    let mut catalogs = list(&quote["catalogs"]);
    let id = unit.catalog.strip_prefix("catalogs/").expect("a name");
    catalogs.find(|one| one["id"] == id).expect("the catalog")
}

fn wants(wants: &[Want]) -> Value {
    wants.iter().map(|want| value!([want.label, want.ask])).collect()
}

fn wanted(wants: &Value) -> Value {
    list(wants)
        .map(|want| value!([want["label"], want["ask"]]))
        .collect()
}

#[test]
fn every_opening_is_checked_as_the_quote_says() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    runtime().block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for tag in tags(&quote) {
            let opening = opening(&quote, &tag);
            let unit = unit(&quote, opening);
            let request = CheckUnitRequest {
                unit: Some(unit.clone()),
            };
            let found = client.check_unit(request).await.expect(&tag).into_inner();
            check_revisions(found.revisions.as_ref(), catalog_of(&quote, &unit), &tag);
            assert_eq!(checked(&found), as_quoted(opening), "{tag}");
            assert_eq!(value!(found.caution), quote["caution"]);
        }
    });
}

/// The price book of 2027 adds freight by value, 2.75 percent of the price so far.
#[test]
fn a_step_of_a_price_says_its_percentage() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    runtime().block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let mut unit = unit(&quote, opening(&quote, "B1"));
        unit.book = "books/hinged-2027".to_owned();
        unit.date.as_mut().expect("a day").year = 2027;
        let request = CheckUnitRequest { unit: Some(unit) };
        let found = client.check_unit(request).await.expect("an answer").into_inner();
        let tail = found.price.expect("a price").tail;
        let percents: Vec<&str> = tail
            .iter()
            .filter_map(|one| Some(one.percent.as_ref()?.value.as_str()))
            .collect();
        assert_eq!(percents, ["2.75"], "{tail:?}");
    });
}

/// What a check says, in the shape of [`as_quoted`].
fn checked(found: &CheckUnitResponse) -> Value {
    let price = found.price.as_ref().expect("a price");
    let rule = |one: &v1::RuleFinding| {
        value!([
            one.rule,
            word(one.state().as_str_name(), "RULE_STATE_"),
            word(one.standing().as_str_name(), "STANDING_"),
            one.waiver,
            one.authority,
            one.basis,
            one.message,
            wants(&one.wants),
            one.reads.len(),
            one.standards_against_picks,
        ])
    };
    let item = |one: &v1::PriceItem| value!([one.label, amount(one.amount.as_ref()), one.standard]);
    value!({
        "verdict": word(found.verdict().as_str_name(), "VERDICT_"),
        "rules": found.rules.iter().map(rule).collect::<Vec<_>>(),
        "choices": found.choices.iter().map(chosen).collect::<Vec<_>>(),
        "completion": filled(found.fill_in.as_ref()),
        "open": found.open.iter().map(|one| value!([one.attribute, one.to_choose, wants(&one.wants)])).collect::<Vec<_>>(),
        "figures": found.figures.iter().map(figure).collect::<Vec<_>>(),
        "items": price.items.iter().map(item).collect::<Vec<_>>(),
        "subtotal": amount(price.subtotal.as_ref()),
        "tail": price.tail.iter().map(|one| value!([
            one.id, one.percent.as_ref().map(|percent| &percent.value), amount(one.amount.as_ref())
        ])).collect::<Vec<_>>(),
        "total": amount(price.total.as_ref()),
        "price_wants": wants(&price.wants),
        "notices": found.notices.iter().map(|one| value!([
            one.id, word(one.kind().as_str_name(), "NOTICE_KIND_"), one.text, one.basis, one.certain
        ])).collect::<Vec<_>>(),
    })
}

fn chosen(choice: &Choice) -> Value {
    let state = word(choice.state().as_str_name(), "CHOICE_STATE_");
    let is_not_asked = matches!(choice.stands, Some(v1::choice::Stands::NotAsked(true)));
    assert_eq!(
        is_not_asked,
        choice.state() == ChoiceState::NotAsked,
        "{choice:?}"
    );
    value!([
        choice.attribute,
        state,
        option(choice),
        choice.plant_code,
        choice.of_plant
    ])
}

fn figure(figure: &v1::Figure) -> Value {
    let text = figure.value.as_ref().map(|value| value.text.clone());
    value!([figure.id, text.unwrap_or_default(), wants(&figure.wants)])
}

/// What the quote says of an opening, cut to what a check says.
fn as_quoted(opening: &Value) -> Value {
    let unit = &opening["unit"];
    let each = |list_of: &Value, one: &dyn Fn(&Value) -> Value| list(list_of).map(one).collect::<Vec<_>>();
    let ids = |named: &Value| list(named).map(|one| text(&one["id"])).collect::<Vec<_>>();
    let rule = |one: &Value| {
        value!([
            one["id"],
            one["state"],
            one["standing"],
            text(&one["waiver"]),
            one["authority"],
            text(&one["basis"]),
            one["message"],
            wanted(&one["wants"]),
            list(&one["reads"]).len(),
            ids(&one["standards_against_picks"]),
        ])
    };
    let price = &unit["price"];
    let shown: Vec<Value> = list(&unit["figures"])
        .filter(|one| one["shown"] == true)
        .map(quoted_figure)
        .collect();
    value!({
        "verdict": opening["verdict"],
        "rules": each(&unit["rules"], &rule),
        "choices": each(&unit["choices"], &quoted_choice),
        "completion": as_completed(&unit["completion"]),
        "open": each(&unit["open"], &|one| value!([one["attribute"]["id"], one["to_choose"], wanted(&one["wants"])])),
        "figures": shown,
        "items": each(&price["items"], &|one| value!([one["label"], one["amount"], one["standard"]])),
        "subtotal": price["subtotal"],
        "tail": each(&price["tail"], &|one| value!([one["id"], one["percent"], one["amount"]])),
        "total": price["total"],
        "price_wants": wanted(&price["wants"]),
        "notices": each(&unit["notices"], &|one| value!([
            one["id"], one["kind"], one["text"], text(&one["basis"]), one["certain"]
        ])),
    })
}

fn quoted_choice(choice: &Value) -> Value {
    let state = match (choice["state"].as_str(), choice["origin"].as_str()) {
        (Some("chosen"), Some("completed")) => "filled",
        (Some("chosen"), Some(origin)) => origin,
        (Some(state), _) => state,
        _ => panic!("no state: {choice}"),
    };
    let (option, code) = (text(&choice["option"]["id"]), text(&choice["plant_code"]));
    value!([
        choice["attribute"]["id"],
        state,
        option,
        code,
        choice["audience"] == "plant"
    ])
}

fn quoted_figure(figure: &Value) -> Value {
    let outcome = &figure["outcome"];
    let known = &outcome["value"];
    let shown = match known["type"].as_str() {
        Some("option") => text(&known["label"]),
        Some("date") => text(&known["date"]),
        _ => text(&known["text"]),
    };
    let exists = figure["part_exists"] == true;
    let more = outcome.get("wants").map_or_else(|| value!([]), wanted);
    value!([figure["id"], if exists { shown } else { String::new() }, more])
}

#[test]
fn every_option_of_every_opening_is_as_the_program_says() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    let mut options = 0;
    runtime().block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for tag in tags(&quote) {
            let unit = unit(&quote, opening(&quote, &tag));
            let said = json(&["options", HOUSE, "--opening", &tag, "--format", "json"]);
            let said = &said["units"][0];
            let request = EvaluateOptionsRequest {
                unit: Some(unit.clone()),
                view: 0,
            };
            let found = client
                .evaluate_options(request.clone())
                .await
                .expect(&tag)
                .into_inner();
            check_revisions(found.revisions.as_ref(), catalog_of(&quote, &unit), &tag);
            assert_eq!(evaluated(&found), as_said(said), "{tag}");
            options += found
                .attributes
                .iter()
                .map(|one| one.options.len())
                .sum::<usize>();
            let again = client.evaluate_options(request).await.expect(&tag).into_inner();
            assert_eq!(found, again, "{tag}: the same question, the same answer");
        }
    });
    assert!(options > 1_000, "{options}");
}

/// What the service says of all options, in the shape of [`as_said`].
fn evaluated(found: &EvaluateOptionsResponse) -> Value {
    let waits = |positions: &[i32]| -> Value {
        let at = |at: &i32| found.wants[usize::try_from(*at).expect("a position")].clone();
        wants(&positions.iter().map(at).collect::<Vec<_>>())
    };
    let withheld = |one: &v1::Withheld| {
        let date = one
            .date
            .map(|date| format!("{:04}-{:02}-{:02}", date.year, date.month, date.day));
        value!({ "why": word(one.reason().as_str_name(), "WITHHELD_REASON_"), "date": date })
    };
    let option = |one: &v1::OptionAnswer| {
        let state = word(one.state().as_str_name(), "OPTION_STATE_");
        let id = match one.stands.as_ref() {
            Some(v1::option_answer::Stands::Option(id)) => Some(id),
            Some(v1::option_answer::Stands::NotAsked(true)) => None,
            other => panic!("an answer is for something: {other:?}"),
        };
        value!([
            id,
            state,
            one.picked,
            one.changes,
            amount(one.difference.as_ref()),
            waits(&one.waits),
            one.withheld.as_ref().map(withheld)
        ])
    };
    let attribute = |one: &v1::AttributeAnswer| {
        value!([one.attribute, one.options.iter().map(option).collect::<Vec<_>>()])
    };
    value!({
        "selection_state": word(found.selection_state().as_str_name(), "SELECTION_STATE_"),
        "selection_changes": found.selection_changes,
        "changes_without_pins": found.changes_without_pins,
        "least_subtotal": amount(found.least_subtotal.as_ref()),
        "attributes": found.attributes.iter().map(attribute).collect::<Vec<_>>(),
        "wants": wants(&found.wants),
        "waits": waits(&found.waits),
    })
}

fn as_said(said: &Value) -> Value {
    let option = |one: &Value| {
        value!([
            one["option"]["id"],
            one["state"],
            one["picked"],
            one["changes"],
            one["difference"],
            wanted(&one["waits"]),
            one["withheld"]
        ])
    };
    let attribute = |one: &Value| {
        value!([
            one["attribute"]["id"],
            list(&one["options"]).map(option).collect::<Vec<_>>()
        ])
    };
    let asked = list(&said["attributes"]).filter(|one| one["audience"] == "customer");
    value!({
        "selection_state": said["selection_state"],
        "selection_changes": said["selection_changes"],
        "changes_without_pins": said["changes_without_pins"],
        "least_subtotal": said["least_subtotal"],
        "attributes": asked.map(attribute).collect::<Vec<_>>(),
        "wants": wanted(&said["wants"]),
        "waits": wanted(&said["waits"]),
    })
}
