//! Bad requests: each has one reason, and says which field is wrong.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use served::asked::{house, opening, unit};
use served::process::Service;
use served::spoilt::{CASES, decimal, fact, pick};
use served::v1::catalog_service_client::CatalogServiceClient;
use served::v1::shown_choice::Stands;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::{
    CompleteUnitRequest, EvaluateOptionsRequest, EvaluateOptionsResponse, GetCatalogRequest,
    GetCatalogResponse, ListCatalogsRequest, ShownChoice, Unit,
};
use tokio::runtime::Runtime;
use tonic::{Code, Request, Status};
use tonic_types::StatusExt as _;

/// The one reason of an error, and its first field.
fn said(status: &Status) -> (String, String) {
    let infos = status.get_error_details_vec();
    let infos = infos
        .iter()
        .filter(|one| matches!(one, tonic_types::ErrorDetail::ErrorInfo(_)));
    assert_eq!(infos.count(), 1, "one reason: {status:?}");
    let details = status.get_error_details();
    let info = details.error_info().expect("a reason");
    assert_eq!(info.domain, "astragal");
    let violations = details.bad_request().map(|bad| bad.field_violations.clone());
    let first = violations.and_then(|all| all.into_iter().next());
    if let Some(first) = &first {
        assert_eq!(first.reason, info.reason, "the reason is that of the first fault");
    }
    (
        info.reason.clone(),
        first.map(|first| first.field).unwrap_or_default(),
    )
}

fn good() -> Unit {
    let quote = house(&[]);
    let unit = unit(&quote, opening(&quote, "B1"));
    assert!(unit.picks.iter().any(|pick| pick.attribute == "operation"));
    unit
}

/// The name of an attribute that the plant determines.
fn of_plant() -> String {
    let quote = house(&[]);
    let mut choices = served::asked::list(&opening(&quote, "B1")["unit"]["choices"]);
    let found = choices
        .find(|one| one["audience"] == "plant")
        .expect("an attribute of the plant");
    served::asked::text(&found["attribute"]["id"])
}

#[test]
fn every_bad_unit_is_refused_with_its_reason_and_field() {
    let good = good();
    let plant = of_plant();
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for (name, spoil, reason, field) in CASES {
            let mut unit = good.clone();
            spoil(&mut unit);
            for pick in unit.picks.iter_mut().filter(|pick| pick.attribute == "PLANT") {
                pick.attribute.clone_from(&plant);
            }
            let request = EvaluateOptionsRequest {
                unit: Some(unit),
                view: 0,
            };
            let status = client.evaluate_options(request).await.expect_err(name);
            assert_eq!(
                said(&status),
                (reason.to_owned(), field.to_owned()),
                "{name}: {status:?}"
            );
            let expected = match reason {
                "UNKNOWN_CATALOG" | "UNKNOWN_BOOK" | "UNKNOWN_POLICY" => Code::NotFound,
                _ => Code::InvalidArgument,
            };
            assert_eq!(status.code(), expected, "{name}");
        }
        let request = EvaluateOptionsRequest {
            unit: Some(good),
            view: 0,
        };
        client
            .evaluate_options(request)
            .await
            .expect("the good unit is answered");
    });
}

#[test]
fn everything_that_is_wrong_is_said_at_once() {
    let mut unit = good();
    unit.measures[0].size = decimal("x", "[in_i]");
    unit.facts[0] = fact("moon_phase", None);
    unit.picks[0] = pick("operation", "revolving");
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let request = CompleteUnitRequest {
            unit: Some(unit),
            mode: 7,
            count: 101,
            shown: vec![
                ShownChoice {
                    attribute: "operation".to_owned(),
                    stands: Some(Stands::Option("casement".to_owned())),
                };
                2
            ],
        };
        let status = client.complete_unit(request).await.expect_err("faults");
        let details = status.get_error_details();
        let violations = details.bad_request().expect("violations").field_violations.iter();
        let found: Vec<(&str, &str)> = violations
            .map(|one| (one.reason.as_str(), one.field.as_str()))
            .collect();
        assert_eq!(
            found,
            [
                ("BAD_NUMBER", "unit.measures[0].size.decimal.value"),
                ("UNKNOWN_FACT", "unit.facts[0].fact"),
                ("UNKNOWN_OPTION", "unit.picks[0].option"),
                ("BAD_ENUM", "mode"),
                ("OUT_OF_RANGE", "count"),
                ("DUPLICATE", "shown[1].attribute"),
            ]
        );
    });
}

/// A catalog has no such option, and no *not asked* of an attribute that is always asked.
#[test]
fn what_cannot_be_on_screen_is_refused() {
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for (attribute, stands, refused) in [
            (
                "operation",
                Some(Stands::NotAsked(true)),
                Some(("UNKNOWN_OPTION", "shown[0].not_asked")),
            ),
            (
                "operation",
                Some(Stands::Option("revolving".to_owned())),
                Some(("UNKNOWN_OPTION", "shown[0].option")),
            ),
            (
                "operation",
                Some(Stands::Option(String::new())),
                Some(("REQUIRED", "shown[0].option")),
            ),
            ("screen_mesh", Some(Stands::NotAsked(true)), None),
            ("operation", Some(Stands::NotAsked(false)), None),
            ("operation", None, None),
        ] {
            let request = CompleteUnitRequest {
                unit: Some(good()),
                shown: vec![ShownChoice {
                    attribute: attribute.to_owned(),
                    stands: stands.clone(),
                }],
                ..CompleteUnitRequest::default()
            };
            let answer = client.complete_unit(request).await;
            let found = answer.err().map(|status| said(&status));
            let found = found
                .as_ref()
                .map(|(reason, field)| (reason.as_str(), field.as_str()));
            assert_eq!(found, refused, "{attribute}: {stands:?}");
        }
    });
}

/// The reasons and fields of an error.
fn violations(status: &Status) -> Vec<(String, String)> {
    let details = status.get_error_details();
    let bad = details.bad_request().expect("violations").clone();
    let violations = bad.field_violations.into_iter();
    violations.map(|one| (one.reason, one.field)).collect()
}

#[test]
fn names_and_days_are_checked_where_there_is_no_catalog_and_a_long_list_hides_nothing_else() {
    let mut long = good();
    long.date = None;
    long.measures[0].size = decimal("x", "[in_i]");
    long.picks = vec![pick("operation", "casement"); 1_001];
    long.pins = vec!["operation".to_owned()];
    let facts = long.facts.clone();
    long.facts = facts.into_iter().cycle().take(1_001).collect();
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let named = Unit {
            catalog: "catalogs/hinge".to_owned(),
            policy: "policy".to_owned(),
            ..Unit::default()
        };
        for (name, unit, expected) in [
            (
                "nothing is said",
                Unit::default(),
                &[
                    ("REQUIRED", "unit.date"),
                    ("REQUIRED", "unit.catalog"),
                    ("REQUIRED", "unit.book"),
                ][..],
            ),
            (
                "an unknown catalog",
                named,
                &[
                    ("REQUIRED", "unit.date"),
                    ("UNKNOWN_CATALOG", "unit.catalog"),
                    ("REQUIRED", "unit.book"),
                    ("BAD_NAME", "unit.policy"),
                ],
            ),
            (
                "two long lists",
                long,
                &[
                    ("TOO_MANY", "unit.picks"),
                    ("TOO_MANY", "unit.facts"),
                    ("REQUIRED", "unit.date"),
                    ("BAD_NUMBER", "unit.measures[0].size.decimal.value"),
                ],
            ),
        ] {
            let request = EvaluateOptionsRequest {
                unit: Some(unit),
                view: 0,
            };
            let status = client.evaluate_options(request).await.expect_err(name);
            let found = violations(&status);
            let found: Vec<_> = found
                .iter()
                .map(|(reason, field)| (reason.as_str(), field.as_str()))
                .collect();
            assert_eq!(found, expected, "{name}");
        }
    });
}

#[test]
fn a_list_that_is_too_long_is_refused_where_the_opening_is_known_too() {
    let good = good();
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let ask = |unit: &Unit| EvaluateOptionsRequest {
            unit: Some(unit.clone()),
            view: 0,
        };
        client.evaluate_options(ask(&good)).await.expect("an answer");
        let mut long = good;
        long.pins = vec!["operation".to_owned(); 1_001];
        let status = client.evaluate_options(ask(&long)).await.expect_err("too long");
        assert_eq!(said(&status), ("TOO_MANY".to_owned(), "unit.pins".to_owned()));
    });
}

#[test]
fn requests_about_catalogs_are_refused_alike() {
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = CatalogServiceClient::new(service.connect().await);
        for (name, code, reason) in [
            ("", Code::InvalidArgument, "REQUIRED"),
            ("hinged", Code::InvalidArgument, "BAD_NAME"),
            ("catalogs/", Code::InvalidArgument, "BAD_NAME"),
            ("catalogs/none", Code::NotFound, "UNKNOWN_CATALOG"),
        ] {
            let request = GetCatalogRequest {
                name: name.to_owned(),
            };
            let status = client.get_catalog(request).await.expect_err(name);
            assert_eq!(
                (status.code(), said(&status)),
                (code, (reason.to_owned(), "name".to_owned()))
            );
        }
        for (page_size, page_token, reason, field) in [
            (-1, "", "OUT_OF_RANGE", "page_size"),
            (0, "nobody's", "BAD_PAGE_TOKEN", "page_token"),
        ] {
            let request = ListCatalogsRequest {
                page_size,
                page_token: page_token.to_owned(),
            };
            let status = client.list_catalogs(request).await.expect_err(field);
            assert_eq!(said(&status), (reason.to_owned(), field.to_owned()));
        }
    });
}

/// Errors that are made before a method of ours is reached.
#[test]
fn what_is_no_request_at_all_has_a_reason_too() {
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let channel = service.connect().await;
        let mut client = tonic::client::Grpc::new(channel.clone());
        client.ready().await.expect("ready");
        let path = "/astragal.v1.UnitService/FlyUnit".parse().expect("a path");
        let codec = tonic_prost::ProstCodec::<EvaluateOptionsRequest, EvaluateOptionsResponse>::default();
        let request = Request::new(EvaluateOptionsRequest::default());
        let status = client
            .unary(request, path, codec)
            .await
            .expect_err("no such method");
        assert_eq!(
            (status.code(), said(&status).0.as_str()),
            (Code::Unimplemented, "UNKNOWN_METHOD")
        );

        // Field 1 is a number here, and a text there.
        client.ready().await.expect("ready");
        let path = "/astragal.v1.CatalogService/GetCatalog".parse().expect("a path");
        let codec = tonic_prost::ProstCodec::<ListCatalogsRequest, GetCatalogResponse>::default();
        let request = Request::new(ListCatalogsRequest {
            page_size: 5,
            page_token: String::new(),
        });
        let status = client
            .unary(request, path, codec)
            .await
            .expect_err("no such message");
        assert_eq!(
            (status.code(), said(&status).0.as_str()),
            (Code::InvalidArgument, "UNREADABLE_MESSAGE")
        );

        let mut client = CatalogServiceClient::new(channel);
        let request = GetCatalogRequest {
            name: "n".repeat(1 << 20),
        };
        let status = client.get_catalog(request).await.expect_err("too large");
        assert_eq!(
            (status.code(), said(&status).0.as_str()),
            (Code::ResourceExhausted, "MESSAGE_TOO_LARGE")
        );
        assert!(
            status.message().contains("1048576"),
            "the limit is named: {}",
            status.message()
        );

        let mut request = Request::new(ListCatalogsRequest::default());
        let gzip = "gzip".parse().expect("a header");
        request.metadata_mut().insert("grpc-encoding", gzip);
        let status = client.list_catalogs(request).await.expect_err("compressed");
        assert_eq!(
            (status.code(), said(&status).0.as_str()),
            (Code::Unimplemented, "UNSUPPORTED_COMPRESSION")
        );
        assert!(
            status.metadata().contains_key("grpc-accept-encoding"),
            "what is taken"
        );
    });
}
