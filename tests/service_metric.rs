//! A catalog that writes lengths in millimetres is answered in millimetres. The catalog is invented.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "these are tests"
)]

mod program;
mod served;

use std::fs;

use served::google_type::Date;
use served::process::Service;
use served::spoilt::{decimal, fact};
use served::v1::catalog_service_client::CatalogServiceClient;
use served::v1::unit_service_client::UnitServiceClient;
use served::v1::value::Kind;
use served::v1::{CheckUnitRequest, GetCatalogRequest, Measured, Quantity, Unit, quantity};
use tokio::runtime::Runtime;

const FILES: [(&str, &str); 4] = [
    (
        "library.toml",
        r#"format = 1
[library]
id = "metric-library"
label = "Metric library"
"#,
    ),
    (
        "metric/catalog.toml",
        r#"format = 1

[catalog]
id = "metric"
label = "Metric windows"
length = { unit = "mm", step = "1" }

[[attribute]]
id = "screen"
label = "Screen"
section = "Screen"
options = [{ id = "full", label = "Full screen" }, { id = "none", label = "No screen" }]
standard = "full"

[[measure]]
id = "opening_width"
label = "Opening width"

[[measure]]
id = "opening_height"
label = "Opening height"

[[site_fact]]
id = "sill_height"
label = "Height of the sill"
of = "opening"
type = "length"
least = "0"
most = "2 m"
step = "5"

[[figure]]
id = "unit_width"
label = "Unit width"
formula = 'opening_width - "12"'
show = true

[[figure]]
id = "glass_area"
label = "Glass area"
formula = 'unit_width * opening_height'
show = true

[[figure]]
id = "bar_spacing"
label = "Spacing of bars"
formula = 'unit_width / 7'
show = true

[[rule]]
id = "low-sill"
require = 'sill_height >= "450"'
message = "The sill is {sill_height} above the floor."

[[price]]
id = "unit"
label = "Unit"
"#,
    ),
    (
        "books/metric-2026/book.toml",
        r#"format = 1

[book]
id = "metric-2026"
label = "Metric windows, 2026"
catalog = "metric"
currency = "EUR"
round_to = "0.01"
from = 2026-01-01
until = 2026-12-31
amounts = "amounts.csv"
"#,
    ),
    ("books/metric-2026/amounts.csv", "item,amount\nunit,250.00\n"),
];

fn measured(measure: &str, size: Option<Quantity>) -> Measured {
    Measured {
        measure: measure.to_owned(),
        size,
        deducted_by: 0,
    }
}

/// An opening of 900 mm by 1,200 mm, of which the height is written in metres.
fn opening() -> Unit {
    Unit {
        catalog: "catalogs/metric".to_owned(),
        book: "books/metric-2026".to_owned(),
        date: Some(Date {
            year: 2026,
            month: 11,
            day: 25,
        }),
        measures: vec![
            measured("opening_width", decimal("900", "mm")),
            measured("opening_height", decimal("1.2", "m")),
        ],
        facts: vec![fact("sill_height", decimal("40", "cm").map(Kind::Quantity))],
        ..Unit::default()
    }
}

fn quantity_of(value: Option<&served::v1::Value>) -> Option<Quantity> {
    match value?.kind.as_ref()? {
        Kind::Quantity(quantity) => Some(quantity.clone()),
        _ => None,
    }
}

#[test]
fn lengths_and_areas_are_answered_in_the_unit_of_the_catalog() {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, text) in FILES {
        let path = folder.path().join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, text).expect("a file");
    }
    let library = folder.path().to_str().expect("a path");
    let service = Service::of(&["serve", library, "--listen", "127.0.0.1:0"]);
    Runtime::new().expect("a runtime").block_on(async {
        let channel = service.connect().await;
        let request = GetCatalogRequest {
            name: "catalogs/metric".to_owned(),
        };
        let found = CatalogServiceClient::new(channel.clone())
            .get_catalog(request)
            .await;
        let catalog = found.expect("an answer").into_inner().catalog.expect("a catalog");
        assert_eq!(catalog.length_unit, "mm");
        for measure in &catalog.measures {
            assert_eq!(measure.step, decimal("1", "mm"), "{}", measure.id);
            assert_eq!((&measure.least, &measure.most), (&None, &None), "{}", measure.id);
        }
        let sill = catalog.site_facts.first().expect("a site fact");
        assert_eq!(sill.step, decimal("5", "mm"));
        assert_eq!(sill.least, decimal("0", "mm"));
        assert_eq!(sill.most, decimal("2000", "mm"));
        let request = CheckUnitRequest {
            unit: Some(opening()),
        };
        let found = UnitServiceClient::new(channel).check_unit(request).await;
        let found = found.expect("an answer").into_inner();
        let figures: Vec<_> = found
            .figures
            .iter()
            .map(|figure| (figure.id.as_str(), quantity_of(figure.value.as_ref())))
            .collect();
        let seventh = Quantity {
            number: Some(quantity::Number::Fraction("888/7".to_owned())),
            unit: "mm".to_owned(),
        };
        assert_eq!(
            figures,
            [
                ("unit_width", decimal("888", "mm")),
                ("glass_area", decimal("1065600", "mm2")),
                ("bar_spacing", Some(seventh)),
            ]
        );
        let low = found.rules.iter().find(|rule| rule.rule == "low-sill");
        let read = low.expect("the rule is broken").reads.first().expect("it reads");
        assert_eq!(read.text, "400 mm");
    });
}
