//! Names that are misspelt, facts of another type, and sizes that are absurd: what is said of them.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use program::{copy_folder, let_sizes_be_absurd};
use served::asked::{house, opening, unit};
use served::process::Service;
use served::spoilt::{decimal, fact, pick};
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::value::Kind;
use served::v1::{CheckUnitRequest, CompleteUnitRequest, EvaluateOptionsRequest, Unit, Verdict};
use tokio::runtime::Runtime;
use tonic::Code;
use tonic_types::StatusExt as _;

/// A way to spoil a good unit, and how the message ends.
type Told = (fn(&mut Unit), &'static str);

#[test]
fn a_name_that_is_misspelt_is_answered_with_the_one_that_was_meant() {
    const CASES: [Told; 10] = [
        (
            |unit| unit.catalog = "catalogs/hingd".into(),
            "there is no catalog `catalogs/hingd`; did you mean `hinged`?",
        ),
        (
            |unit| unit.book = "books/hinged-2025".into(),
            "no price book `books/hinged-2025`; did you mean `hinged-2026`?",
        ),
        (
            |unit| unit.policy = "policies/sampledealer".into(),
            "no policy `policies/sampledealer`; did you mean `sample-dealer`?",
        ),
        (
            |unit| unit.measures[0].measure = "opening_widht".into(),
            "no measure `opening_widht`; did you mean `opening_width`?",
        ),
        (
            |unit| unit.facts[0] = fact("year_build", Some(Kind::Truth(true))),
            "no site fact `year_build`; did you mean `year_built`?",
        ),
        (
            |unit| unit.facts[0] = fact("cladding", Some(Kind::Option("brik".into()))),
            "has no value `brik`; did you mean `brick`?",
        ),
        (
            |unit| unit.picks[0] = pick("operatoin", "casement"),
            "no attribute `operatoin`; did you mean `operation`?",
        ),
        (
            |unit| unit.picks[0] = pick("operation", "casment"),
            "no option `casment`; did you mean `casement`?",
        ),
        (
            |unit| unit.picks[0] = pick("operation", "revolving"),
            "attribute `operation` has no option `revolving`",
        ),
        (
            |unit| unit.facts[0] = fact("year_built", Some(Kind::Truth(true))),
            "fact `year_built` is a yes or no; expected a number",
        ),
    ];
    let quote = house(&[]);
    let good = unit(&quote, opening(&quote, "B1"));
    let service = Service::start(&[]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        for (spoil, ending) in CASES {
            let mut unit = good.clone();
            spoil(&mut unit);
            let request = EvaluateOptionsRequest {
                unit: Some(unit),
                view: 0,
            };
            let status = client.evaluate_options(request).await.expect_err(ending);
            let details = status.get_error_details();
            let first = &details.bad_request().expect(ending).field_violations[0].description;
            assert!(first.ends_with(ending), "{first}");
        }
    });
}

#[test]
fn a_unit_of_absurd_size_is_checked_as_in_a_quote_and_its_options_are_refused() {
    let quote = house(&[]);
    let mut unit = unit(&quote, opening(&quote, "B1"));
    let width = unit
        .measures
        .iter_mut()
        .find(|one| one.measure == "opening_width");
    width.expect("a width").size = decimal(&"9".repeat(60), "[in_i]");
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/library", folder.path());
    let_sizes_be_absurd(folder.path());
    let library = folder.path().to_str().expect("a path");
    let service = Service::of(&["serve", library, "--listen", "127.0.0.1:0"]);
    Runtime::new().expect("a runtime").block_on(async {
        let mut client = UnitServiceClient::new(service.connect().await);
        let some = Some(unit);
        // The second time the opening is known.
        for _ in 0..2 {
            let request = CheckUnitRequest { unit: some.clone() };
            let found = client.check_unit(request).await.expect("an answer").into_inner();
            assert_eq!(found.verdict(), Verdict::Broken);
            assert!(!found.rules.is_empty() && !found.choices.is_empty());
            let request = EvaluateOptionsRequest {
                unit: some.clone(),
                view: 0,
            };
            let options = client.evaluate_options(request).await.map(drop);
            let request = CompleteUnitRequest {
                unit: some.clone(),
                ..CompleteUnitRequest::default()
            };
            let complete = client.complete_unit(request).await.map(drop);
            for status in [options, complete].map(|answer| answer.expect_err("too much money")) {
                assert_eq!(status.code(), Code::FailedPrecondition, "{status:?}");
                let details = status.get_error_details();
                assert_eq!(details.error_info().expect("a reason").reason, "TOO_MUCH_MONEY");
                assert!(
                    status.message().contains("`opening_width`"),
                    "{}",
                    status.message()
                );
            }
        }
    });
}
