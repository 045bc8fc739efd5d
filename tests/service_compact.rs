//! The compact form of all options: read beside the catalog it says what the full form says, in fewer bytes.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use std::collections::BTreeSet;

use prost::Message as _;
use served::asked::{house, list, text, unit};
use served::google_type::Money;
use served::process::Service;
use served::v1::catalog_service_client::CatalogServiceClient;
use served::v1::option_answer::Stands;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{
    AttributeAnswer, Catalog, CompactOptions, EvaluateOptionsRequest, EvaluateOptionsResponse,
    GetCatalogRequest, OptionAnswer, OptionState, OptionsView, Unit, Want,
};
use tokio::runtime::Runtime;
use tonic::Code;
use tonic::transport::Channel;
use tonic_types::StatusExt as _;

async fn options(client: &mut UnitServiceClient<Channel>, unit: &Unit, view: i32) -> EvaluateOptionsResponse {
    let request = EvaluateOptionsRequest {
        unit: Some(unit.clone()),
        view,
    };
    let found = client.evaluate_options(request).await;
    found.expect("an answer").into_inner()
}

async fn catalog(service: &Service, name: &str) -> Catalog {
    let mut client = CatalogServiceClient::new(service.connect().await);
    let request = GetCatalogRequest {
        name: name.to_owned(),
    };
    let found = client.get_catalog(request).await.expect("an answer");
    found.into_inner().catalog.expect("a catalog")
}

fn place(position: i32) -> usize {
    usize::try_from(position).expect("a position")
}

/// The full form, read from the compact one, the catalog, and the picks that were sent, as the contract says.
fn unpacked(catalog: &Catalog, compact: &CompactOptions, unit: &Unit) -> Vec<AttributeAnswer> {
    let mut positions = 0..compact.states.len();
    let mut waits = compact.waits.iter();
    let mut one = |stands: Stands, picked: bool| {
        let at = positions.next().expect("a position");
        let state = OptionState::try_from(compact.states[at]).expect("a state");
        let position = i32::try_from(at).expect("a position");
        let is_priced = match state {
            OptionState::Kept | OptionState::Free => true,
            OptionState::Depends => compact.changes[at] == 0,
            _ => false,
        };
        let difference = compact.differences[at];
        let money = Money {
            currency_code: compact.currency_code.clone(),
            units: difference / 100,
            nanos: i32::try_from(difference % 100 * 10_000_000).expect("billionths"),
        };
        let wait = (state == OptionState::Depends).then(|| waits.next().expect("what it waits for"));
        let mut withheld = compact.withheld.iter().filter(|one| one.position == position);
        OptionAnswer {
            stands: Some(stands),
            state: state.into(),
            picked,
            changes: (state != OptionState::Impossible).then_some(compact.changes[at]),
            difference: (is_priced && !compact.without_difference.contains(&position)).then_some(money),
            waits: wait
                .map(|set| compact.wait_sets[place(*set)].waits.clone())
                .unwrap_or_default(),
            withheld: withheld.next().and_then(|one| one.withheld),
        }
    };
    let attributes = catalog.attributes.iter().map(|attribute| {
        let pick = unit.picks.iter().find(|pick| pick.attribute == attribute.id);
        let picked = |option: &str| pick.is_some_and(|pick| pick.option == option);
        let ids = attribute.options.iter().map(|option| &option.id);
        let options = ids.map(|id| one(Stands::Option(id.clone()), picked(id)));
        let mut options: Vec<_> = options.collect();
        if attribute.conditional {
            options.push(one(Stands::NotAsked(true), false));
        }
        AttributeAnswer {
            attribute: attribute.id.clone(),
            options,
        }
    });
    let attributes = attributes.collect();
    assert_eq!(
        (positions.next(), waits.next()),
        (None, None),
        "nothing is left over"
    );
    attributes
}

/// The units of the house, as they are and with nothing measured, with nothing known, and without each pick.
fn asked(unit: &Unit) -> Vec<Unit> {
    let mut all = vec![unit.clone(), unit.clone(), unit.clone()];
    all[1].measures.clear();
    all[2].facts.clear();
    for at in 0..unit.picks.len() {
        let mut other = unit.clone();
        let pick = other.picks.remove(at);
        other.pins.retain(|pin| *pin != pick.attribute);
        all.push(other);
    }
    all
}

#[test]
fn the_compact_form_read_beside_the_catalog_is_the_full_form() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    let mut states = BTreeSet::new();
    let (mut withheld, mut without) = (0, 0);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for opening in list(&quote["openings"]) {
            let tag = text(&opening["tag"]);
            for unit in asked(&unit(&quote, opening)) {
                let catalog = catalog(&service, &unit.catalog).await;
                let full = options(&mut client, &unit, OptionsView::Full.into()).await;
                let mut found = options(&mut client, &unit, OptionsView::Compact.into()).await;
                assert!(full.compact.is_none() && found.attributes.is_empty(), "{tag}");
                let sizes = (found.encoded_len(), full.encoded_len());
                assert!(sizes.0 * 2 < sizes.1, "{tag}: at most half the bytes, {sizes:?}");
                let compact = found.compact.take().expect("the compact form");
                assert_eq!(unpacked(&catalog, &compact, &unit), full.attributes, "{tag}");
                states.extend(compact.states);
                withheld += compact.withheld.len();
                without += compact.without_difference.len();
                let short = |want: &Want| Want {
                    label: String::new(),
                    ask: String::new(),
                    ..want.clone()
                };
                let expected = EvaluateOptionsResponse {
                    attributes: Vec::new(),
                    wants: full.wants.iter().map(short).collect(),
                    ..full
                };
                assert_eq!(found, expected, "{tag}: the selection, and what is wanted");
            }
        }
    });
    assert_eq!(states.len(), 5, "every state: {states:?}");
    assert!(withheld > 0 && without > 0, "{withheld} {without}");
}

#[test]
fn without_a_word_about_the_form_it_is_the_full_one_and_another_form_is_refused() {
    let quote = house(&[]);
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let unit = unit(&quote, &quote["openings"][0]);
        let full = options(&mut client, &unit, OptionsView::Full.into()).await;
        assert_eq!(options(&mut client, &unit, 0).await, full);
        let request = EvaluateOptionsRequest {
            unit: Some(unit),
            view: 7,
        };
        let status = client.evaluate_options(request).await.expect_err("no form");
        assert_eq!(status.code(), Code::InvalidArgument);
        let details = status.get_error_details();
        assert_eq!(details.error_info().expect("a reason").reason, "BAD_ENUM");
        let violations = &details.bad_request().expect("a field").field_violations;
        assert_eq!(violations[0].field, "view");
    });
}
