//! The service asked by another language: Python with `grpcio`, which knows only what reflection says.
//!
//! What it finds for every opening of the demo house must be what the program says. Needs an interpreter with `grpcio`,
//! `grpcio-reflection` and `grpcio-status` in `ASTRAGAL_PYTHON`; without it the test says that it was skipped.
//!
//! Source: PyPI packages `grpcio` and `protobuf`, with their own reading of the wire and of descriptors.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::print_stdout,
    reason = "these are tests"
)]

mod program;
mod served;

use std::io::Write as _;
use std::process::{Command, Stdio};

use program::json;
use serde_json::{Value, json as value};
use served::asked::{HOUSE, house, list, text};
use served::process::Service;

const SCRIPT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/outside/service_by_grpcio.py");

#[test]
fn another_language_finds_by_reflection_alone_what_the_program_says() {
    let Ok(python) = std::env::var("ASTRAGAL_PYTHON") else {
        println!("skipped: the service by grpcio, since ASTRAGAL_PYTHON names no interpreter with `grpcio`");
        return;
    };
    let quote = house(&[]);
    let service = Service::start(&[]);
    let found = ask(&python, &service, &quote);
    let services: Vec<&str> = list(&found["services"]).filter_map(Value::as_str).collect();
    for name in [
        "astragal.v1.CatalogService",
        "astragal.v1.UnitService",
        "grpc.health.v1.Health",
    ] {
        assert!(services.contains(&name), "{name} in {services:?}");
    }
    assert_eq!(found["health"], value!({ "status": "SERVING" }));
    let names: Vec<&Value> = list(&found["catalogs"]["catalogs"])
        .map(|one| &one["name"])
        .collect();
    assert_eq!(names, ["catalogs/hinged", "catalogs/sliding"]);
    let catalog = &found["catalog"]["catalog"];
    assert_eq!(catalog["name"], "catalogs/hinged");
    assert_eq!(catalog["revision"]["name"], "catalogs/hinged");
    assert_eq!(
        found["refused"],
        value!({
            "code": "INVALID_ARGUMENT",
            "infos": [["UNKNOWN_ATTRIBUTE", "astragal"]],
            "violations": ["unit.picks[0].attribute"],
        })
    );
    for opening in list(&quote["openings"]) {
        check_opening(opening, &found["answers"][text(&opening["tag"])]);
    }
}

fn check_opening(opening: &Value, found: &Value) {
    let tag = text(&opening["tag"]);
    let verdict = |word: &Value| value!(format!("VERDICT_{}", text(word).to_uppercase()));
    let check = &found["check"];
    assert_eq!(check["verdict"], verdict(&opening["verdict"]), "{tag}");
    let price = &opening["unit"]["price"];
    assert_eq!(amount(&check["price"]["total"]), price["total"], "{tag}");
    let said = json(&["options", HOUSE, "--opening", &tag, "--format", "json"]);
    let said = &said["units"][0];
    let options = &found["options"];
    let state = text(&said["selection_state"]).to_uppercase();
    assert_eq!(
        options["selection_state"],
        format!("SELECTION_STATE_{state}"),
        "{tag}"
    );
    check_fill_in(&opening["unit"]["completion"], &check["fill_in"], &tag);
    assert_eq!(
        amount(&options["least_subtotal"]),
        said["least_subtotal"],
        "{tag}"
    );
    let asked = list(&said["attributes"]).filter(|one| one["audience"] == "customer");
    let asked: Vec<&Value> = asked.collect();
    assert_eq!(list(&options["attributes"]).len(), asked.len(), "{tag}");
    check_options(options, &asked, &found["compact"]["compact"], &tag);
    let complete = &found["complete"];
    let is_found = complete["state"] == "COMPLETION_STATE_FOUND";
    if is_found && !said["least_subtotal"].is_null() {
        let cheapest = &complete["completions"][0]["subtotal"];
        assert_eq!(amount(cheapest), said["least_subtotal"], "{tag}");
    }
}

/// Every option in both forms.
fn check_options(options: &Value, asked: &[&Value], compact: &Value, tag: &str) {
    let mut compared = 0;
    for (found, said) in list(&options["attributes"]).zip(asked) {
        assert_eq!(found["attribute"], said["attribute"]["id"], "{tag}");
        assert_eq!(
            list(&found["options"]).len(),
            list(&said["options"]).len(),
            "{tag}"
        );
        for (found, said) in list(&found["options"]).zip(list(&said["options"])) {
            let (state, differences) = (&compact["states"][compared], &compact["differences"]);
            assert_eq!(state, &found["state"], "{tag}: {said}");
            if let Some(difference) = found.get("difference") {
                assert_eq!(
                    text(&differences[compared]),
                    cents(difference).to_string(),
                    "{tag}: {said}"
                );
            }
            compared += 1;
            assert_eq!(text(&found["option"]), text(&said["option"]["id"]), "{tag}");
            assert_eq!(found["not_asked"] == true, said["option"].is_null(), "{tag}");
            assert_eq!(found["picked"] == true, said["picked"] == true, "{tag}: {said}");
            let state = format!("OPTION_STATE_{}", text(&said["state"]).to_uppercase());
            assert_eq!(found["state"], state.as_str(), "{tag}: {said}");
            assert_eq!(
                found.get("changes").unwrap_or(&Value::Null),
                &said["changes"],
                "{tag}: {said}"
            );
            assert_eq!(amount(&found["difference"]), said["difference"], "{tag}: {said}");
        }
    }
    assert!(compared > 100, "{tag}: {compared}");
    assert_eq!(list(&compact["states"]).len(), compared, "{tag}");
}

/// How the unit was filled in, and how many picks must change.
fn check_fill_in(completion: &Value, fill_in: &Value, tag: &str) {
    assert_eq!(
        fill_in.get("least_changes").unwrap_or(&Value::Null),
        &completion["least_changes"],
        "{tag}"
    );
    let rules = |from: &Value| {
        from.as_array()
            .map(|from| from.iter().map(|one| one["rule"].clone()).collect())
    };
    let because: Option<Vec<Value>> = rules(&completion["because"]);
    assert_eq!(
        rules(&fill_in["because"]).unwrap_or_default(),
        because.expect("rules"),
        "{tag}"
    );
}

/// `google.type.Money` in the JSON form of protobuf, as the program writes an amount.
fn amount(money: &Value) -> Value {
    if money.is_null() {
        return Value::Null;
    }
    let cents = cents(money);
    let sign = if cents < 0 { "-" } else { "" };
    let size = cents.abs();
    let amount = format!("{sign}{}.{:02}", size / 100, size % 100);
    value!({ "amount": amount, "currency": money["currency_code"] })
}

fn cents(money: &Value) -> i64 {
    let units: i64 = money["units"]
        .as_str()
        .unwrap_or("0")
        .parse()
        .expect("whole units");
    units * 100 + money["nanos"].as_i64().unwrap_or(0) / 10_000_000
}

fn ask(python: &str, service: &Service, quote: &Value) -> Value {
    let units =
        list(&quote["openings"]).map(|one| value!({ "tag": one["tag"], "unit": request(quote, one) }));
    let input = value!({ "units": units.collect::<Vec<_>>() }).to_string();
    let mut child = Command::new(python)
        .args([SCRIPT, service.address()])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("the interpreter starts");
    let mut stdin = child.stdin.take().expect("standard input");
    stdin.write_all(input.as_bytes()).expect("it reads");
    drop(stdin);
    let output = child.wait_with_output().expect("it ends");
    assert!(output.status.success(), "the script fails");
    let out = String::from_utf8(output.stdout).expect("text");
    let (version, found) = out.split_once('\n').expect("two lines");
    println!("compared with {version}");
    serde_json::from_str(found).unwrap_or_else(|error| panic!("{error}: {found}"))
}

/// The unit of an opening in the JSON form of protobuf, made from the quote once more.
fn request(quote: &Value, opening: &Value) -> Value {
    let unit = &opening["unit"];
    let mut catalogs = list(&quote["catalogs"]);
    let used = catalogs
        .find(|one| one["id"] == unit["catalog"])
        .expect("its catalog");
    let name = |collection: &str, id: &Value| format!("{collection}/{}", text(id));
    let measures = list(&opening["measures"]).filter(|one| !one["value"].is_null()).map(|one| {
        let by = one["deducted_by"].as_str().unwrap_or("unspecified").to_uppercase();
        value!({ "measure": one["id"], "size": quantity(&one["value"]), "deducted_by": format!("DEDUCTED_BY_{by}") })
    });
    let facts = list(&opening["facts"]).filter(|one| !one["value"].is_null());
    let facts = facts.map(|one| value!({ "fact": one["id"], "value": known(&one["value"]) }));
    let picks = list(&unit["picks"]).map(|one| {
        value!({ "attribute": one["attribute"]["id"], "option": one["option"]["id"], "quoted": date(&one["quoted"]) })
    });
    let waivers = list(&unit["waivers"]).map(|one| {
        value!({ "rule": one["rule"], "reference": one["reference"],
            "valid_from": date(&one["from"]), "valid_until": date(&one["until"]) })
    });
    value!({
        "catalog": name("catalogs", &used["id"]),
        "book": name("books", &used["book"]["id"]),
        "policy": name("policies", &used["policy"]["id"]),
        "date": date(&quote["order"]["date"]),
        "measures": measures.collect::<Vec<_>>(),
        "facts": facts.collect::<Vec<_>>(),
        "picks": picks.collect::<Vec<_>>(),
        "waivers": waivers.collect::<Vec<_>>(),
    })
}

fn quantity(value: &Value) -> Value {
    let (number, unit) = match value["type"].as_str() {
        Some("length") => (text(&value["inches"]), "[in_i]"),
        _ => (text(&value["number"]), "1"),
    };
    if number.contains('/') {
        value!({ "fraction": number, "unit": unit })
    } else {
        value!({ "decimal": { "value": number }, "unit": unit })
    }
}

fn known(value: &Value) -> Value {
    match value["type"].as_str() {
        Some("bool") => value!({ "truth": value["value"] }),
        Some("date") => value!({ "date": date(&value["date"]) }),
        Some("option") => value!({ "option": value["id"] }),
        _ => value!({ "quantity": quantity(value) }),
    }
}

fn date(value: &Value) -> Value {
    let Some(text) = value.as_str() else {
        return Value::Null;
    };
    let parts: Vec<i64> = text
        .split('-')
        .map(|part| part.parse().expect("a date"))
        .collect();
    value!({ "year": parts[0], "month": parts[1], "day": parts[2] })
}
