//! `astragal options` read alone: the day, the money, what is picked, what is not asked, and a limit that is passed.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;

use program::{check_says, house_with_width, json, let_sizes_be_absurd, run};
use serde_json::Value;

const HOUSE: &str = "examples/corner-house/order.toml";

fn asked(opening: &str) -> Value {
    json(&["options", HOUSE, "--opening", opening, "--format", "json"])["units"][0].clone()
}

fn option<'a>(unit: &'a Value, attribute: &str, option: &str) -> &'a Value {
    let mut attributes = unit["attributes"].as_array().expect("attributes").iter();
    let attribute = attributes.find(|one| one["attribute"]["id"] == attribute);
    let options = attribute.map(|one| one["options"].as_array().expect("options"));
    let found = options.and_then(|options| options.iter().find(|one| one["option"]["id"] == option));
    found.unwrap_or_else(|| panic!("no such option: {option}"))
}

/// Picks that go together, that wait for something, and that do not: each is marked, and nothing else is.
#[test]
fn every_pick_is_marked_whatever_its_state_is() {
    let quote = json(&["quote", HOUSE, "--format", "json"]);
    for tag in ["B1", "C1", "B3", "D1"] {
        let openings = quote["openings"].as_array().expect("openings").iter();
        let mut of_tag = openings.filter(|one| one["tag"] == tag);
        let picks = &of_tag.next().expect("the opening")["unit"]["picks"];
        let picks = picks.as_array().expect("picks");
        let unit = asked(tag);
        for pick in picks {
            let id = |key: &str| pick[key]["id"].as_str().expect("an id");
            assert_eq!(
                option(&unit, id("attribute"), id("option"))["picked"],
                true,
                "{pick}"
            );
        }
        let attributes = unit["attributes"].as_array().expect("attributes").iter();
        let options = attributes.flat_map(|one| one["options"].as_array().expect("options"));
        let marked = options.filter(|option| option["picked"] == true).count();
        assert_eq!(marked, picks.len(), "{tag}");
        let shown = run(&["options", HOUSE, "--opening", tag]).out;
        assert_eq!(shown.matches("your pick, ").count(), picks.len(), "{shown}");
    }
}

/// An opening that is cheap enough to have no thousands says nothing about how they are written.
#[test]
fn the_day_and_the_money_read_as_in_a_quote() {
    let shown = run(&["options", HOUSE, "--opening", "L1", "--date", "2026-12-01"]).out;
    check_says(
        &shown,
        &[
            "Options of opening L1",
            "Order corner-house, judged as of 2026-12-01 (by --date), prices in USD",
        ],
    );
    let answer = json(&["options", HOUSE, "--opening", "L1", "--format", "json"]);
    let least = answer["units"][0]["least_subtotal"]["amount"].as_str();
    let (thousands, rest) = least.expect("an amount").split_at(1);
    assert!(shown.contains(&format!(" {thousands},{rest} USD\n")), "{shown}");
    assert_eq!(
        answer["order"],
        serde_json::json!({
            "id": "corner-house",
            "label": "The corner house",
            "date": "2026-11-25",
            "date_given": false
        })
    );
    assert_eq!(answer["findings"], serde_json::json!([]));
}

/// The amounts of a unit that is far too wide are more than is counted with: a limit, and no fault of the file.
#[test]
fn a_limit_that_is_passed_is_an_answer_for_a_program_too_and_names_the_measures() {
    let (folder, path) = house_with_width("B1", &"9".repeat(60), "45 9/16");
    let path = path.as_str();
    let_sizes_be_absurd(&folder.path().join("library"));
    let shown = run(&["options", path, "--opening", "B1"]);
    assert_eq!((shown.code, shown.out.as_str()), (Some(5), ""));
    check_says(
        &shown.err,
        &[
            "error: opening `B1` with Opening width 99",
            "more than is counted with",
        ],
    );
    let ran = run(&["options", path, "--opening", "B1", "--format", "json"]);
    assert_eq!(ran.code, Some(5));
    let answer: Value = serde_json::from_str(&ran.out).expect("an answer");
    assert_eq!(
        (&answer["format"], &answer["exit_code"], &answer["findings"]),
        (&Value::from(1), &Value::from(5), &serde_json::json!([]))
    );
    let error = answer["error"].as_str().expect("a reason");
    assert!(shown.err.contains(error), "{error}");
}

/// Nobody picks "not asked": it is said where it is so, and is no line among the options. A program has it everywhere.
#[test]
fn that_an_attribute_is_not_asked_is_said_only_where_it_is_so() {
    for tag in ["D1", "B1"] {
        let quote = json(&["quote", HOUSE, "--format", "json"]);
        let openings = quote["openings"].as_array().expect("openings").iter();
        let mut of_tag = openings.filter(|one| one["tag"] == tag);
        let choices = &of_tag.next().expect("the opening")["unit"]["choices"];
        let choices = choices.as_array().expect("choices").iter();
        let not_asked = choices.filter(|one| one["state"] == "not_asked" && one["audience"] == "customer");
        let not_asked = not_asked.count();
        assert!(not_asked > 0, "{tag}");
        let shown = run(&["options", HOUSE, "--opening", tag]).out;
        assert_eq!(shown.matches("Not asked with these picks.").count(), not_asked);
        assert!(!shown.contains("(not asked)"), "{shown}");
    }
    let unit = asked("D1");
    let attributes = unit["attributes"].as_array().expect("attributes").iter();
    let mut options = attributes.flat_map(|one| one["options"].as_array().expect("options"));
    assert!(options.any(|option| option["option"].is_null() && option["state"] != "impossible"));
}

#[test]
fn the_help_says_what_the_exit_codes_mean_for_picks() {
    let help = run(&["options", "--help"]).out;
    check_says(
        &help,
        &["0 the picks go together", "3 whether they go together depends"],
    );
    check_says(
        &help,
        &[
            "4 some picks must change",
            "5 input cannot be read, or a limit is passed",
        ],
    );
}
