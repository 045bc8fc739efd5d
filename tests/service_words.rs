//! Names that are misspelt, and facts of another type: the message says what was meant, or what was found.

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
use served::spoilt::{fact, pick};
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::value::Kind;
use served::v1::{EvaluateOptionsRequest, Unit};
use tokio::runtime::Runtime;
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
