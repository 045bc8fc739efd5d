//! What the service says of its catalogs: all that may be picked, as the program has it.

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
use served::asked::{HOUSE, house, list, opening, text};
use served::process::Service;
use served::v1;
use served::v1::catalog_service_client::CatalogServiceClient;
use served::v1::{GetCatalogRequest, ListCatalogsRequest, Revision};
use tokio::runtime::Runtime;

fn runtime() -> Runtime {
    Runtime::new().expect("a runtime")
}

#[test]
fn a_catalog_says_all_that_may_be_picked_and_nothing_that_the_plant_determines() {
    let quote = house(&[]);
    let said = json(&["options", HOUSE, "--opening", "B1", "--format", "json"]);
    let said = &said["units"][0];
    let service = Service::start(&[]);
    runtime().block_on(async {
        let mut client = CatalogServiceClient::new(service.connect().await);
        let request = GetCatalogRequest {
            name: "catalogs/hinged".to_owned(),
        };
        let found = client.get_catalog(request).await.expect("an answer").into_inner();
        let catalog = found.catalog.expect("a catalog");
        let said_catalog = &said["catalog"];
        check_revision(
            catalog.revision.as_ref(),
            &catalog.name,
            &said_catalog["revision"],
        );
        let (book, policy) = (&catalog.books[0], &catalog.policies[0]);
        check_revision(
            book.revision.as_ref(),
            &book.name,
            &said_catalog["book"]["revision"],
        );
        check_revision(
            policy.revision.as_ref(),
            &policy.name,
            &said_catalog["policy"]["revision"],
        );
        assert_eq!(catalog.length_unit, "[in_i]");
        let option = |one: &v1::AttributeOption| value!({ "id": one.id, "label": one.label });
        let described = catalog.attributes.iter().map(|one| {
            let options: Vec<Value> = one.options.iter().map(option).collect();
            value!([{ "id": one.id, "label": one.label }, options])
        });
        let asked = list(&said["attributes"])
            .filter(|one| one["audience"] == "customer")
            .map(|one| {
                let options = list(&one["options"]).map(|one| one["option"].clone());
                value!([
                    one["attribute"],
                    options.filter(|one| !one.is_null()).collect::<Vec<_>>()
                ])
            });
        assert_eq!(described.collect::<Vec<_>>(), asked.collect::<Vec<_>>());
        let quoted = opening(&quote, "B1");
        let ids = |from: &Value| list(from).map(|one| text(&one["id"])).collect::<Vec<_>>();
        let measures: Vec<String> = catalog.measures.iter().map(|one| one.id.clone()).collect();
        let facts: Vec<String> = catalog.site_facts.iter().map(|one| one.id.clone()).collect();
        assert_eq!(
            (measures, facts),
            (ids(&quoted["measures"]), ids(&quoted["facts"]))
        );
        check_described(&catalog);
        let sections = list(&quoted["unit"]["choices"]).filter(|one| one["audience"] == "customer");
        let sections: Vec<String> = sections.map(|one| text(&one["section"])).collect();
        let found: Vec<String> = catalog.attributes.iter().map(|one| one.section.clone()).collect();
        assert_eq!(found, sections);
    });
}

/// A resource names its revision as answers do.
fn check_revision(found: Option<&Revision>, name: &str, hash: &Value) {
    let found = found.expect("a revision");
    assert_eq!((found.name.as_str(), &value!(found.hash)), (name, hash));
}

/// What stands in the files of the demo, read by eye.
fn check_described(catalog: &v1::Catalog) {
    let width = &catalog.measures[0];
    assert_eq!(
        (width.id.as_str(), width.value_type()),
        ("opening_width", v1::ValueType::Length)
    );
    let attribute = |id: &str| catalog.attributes.iter().find(|one| one.id == id).expect(id);
    let standard = |id: &str| attribute(id).standard.as_ref().expect("a standard");
    assert_eq!(standard("hinge_side").kind(), v1::StandardKind::Ask);
    let fact = |id: &str| catalog.site_facts.iter().find(|one| one.id == id).expect(id);
    assert_eq!(fact("year_built").scope(), v1::FactScope::House);
    assert_eq!(fact("cladding").scope(), v1::FactScope::Face);
    assert!(fact("cladding").options.iter().any(|one| one.id == "brick"));
    let books: Vec<&str> = catalog.books.iter().map(|one| one.label.as_str()).collect();
    assert_eq!(books, ["Hinged windows, 2026", "Hinged windows, 2027"]);
    assert_eq!(catalog.books[0].currency_code, "USD");
    assert_eq!(catalog.books[1].name, "books/hinged-2027");
    assert_eq!(catalog.policies[0].name, "policies/sample-dealer");
    let ring = attribute("handle").options.iter().find(|one| one.id == "ring");
    let ring = ring.expect("the retired crank");
    let days = [ring.offered_until, ring.honoured_until].map(|day| day.expect("a day"));
    assert_eq!(
        days.map(|day| (day.year, day.month, day.day)),
        [(2026, 6, 30), (2026, 12, 31)]
    );
    assert_eq!(ring.replaced_by, "folding");
}

#[test]
fn catalogs_are_listed_page_by_page() {
    let service = Service::start(&[]);
    runtime().block_on(async {
        let mut client = CatalogServiceClient::new(service.connect().await);
        let mut token = String::new();
        let mut names = Vec::new();
        for page in 0..2 {
            let request = ListCatalogsRequest {
                page_size: 1,
                page_token: token,
            };
            let found = client.list_catalogs(request).await.expect("a page").into_inner();
            names.extend(found.catalogs.into_iter().map(|one| one.name));
            token = found.next_page_token;
            assert_eq!(token.is_empty(), page == 1);
        }
        assert_eq!(names, ["catalogs/hinged", "catalogs/sliding"]);
        let all = client.list_catalogs(ListCatalogsRequest::default()).await;
        assert_eq!(all.expect("all").into_inner().catalogs.len(), 2);
    });
}
