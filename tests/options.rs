//! `astragal options`: states and differences on the demo house, and arguments that name nothing.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;

use program::{check_says, copy_folder, help_examples, json, run};
use serde_json::Value;

const HOUSE: &str = "examples/corner-house/order.toml";

fn asked(opening: &str) -> Value {
    json(&["options", HOUSE, "--opening", opening, "--format", "json"])["units"][0].clone()
}

fn option<'a>(unit: &'a Value, attribute: &str, option: &str) -> &'a Value {
    let attributes = unit["attributes"].as_array();
    let attributes = attributes.unwrap_or_else(|| panic!("no attributes for {attribute}: {option}"));
    let attribute = attributes.iter().find(|one| one["attribute"]["id"] == attribute);
    let options = attribute.map(|one| one["options"].as_array().expect("options"));
    let found = options.and_then(|options| options.iter().find(|one| one["option"]["id"] == option));
    found.unwrap_or_else(|| panic!("no such option: {option}"))
}

/// The bedroom of the demo: with the standard hinge it is too small to escape through, and with another it holds.
#[test]
fn the_bedroom_that_fails_with_the_standard_hinge_is_free_with_another() {
    let quote = json(&["quote", HOUSE, "--format", "json"]);
    let openings = quote["openings"].as_array().expect("openings");
    let bedroom = openings
        .iter()
        .find(|one| one["tag"] == "B1")
        .expect("the bedroom");
    let completion = &bedroom["unit"]["completion"];
    assert_eq!(
        (
            &completion["because"][0]["rule"],
            &completion["departures"][0]["standard"]["id"]
        ),
        (&Value::from("escape-area"), &Value::from("ordinary")),
        "the standard hinge does not do"
    );
    let unit = asked("B1");
    assert_eq!(unit["selection_state"], "goes_together");
    assert_eq!(unit["selection_changes"], 0);
    assert_eq!(option(&unit, "hinge_type", "ordinary")["state"], "impossible");
    let clear = option(&unit, "hinge_type", "clears-opening");
    assert_eq!(
        (&clear["state"], &clear["difference"]),
        (&Value::from("free"), &dollars("0.00"))
    );
}

/// Every free option of an opening, put into the order in place of or beside its picks, stays free and costs what was said.
#[test]
fn a_free_option_once_picked_is_kept_at_the_difference_that_was_said() {
    let text = std::fs::read_to_string(HOUSE).expect("the order");
    let unit = asked("B1");
    let least = number(&unit["least_subtotal"]);
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/corner-house", &folder.path().join("order"));
    copy_folder("examples/library", &folder.path().join("library"));
    let mut tried = 0;
    for attribute in unit["attributes"].as_array().expect("attributes") {
        let name = attribute["attribute"]["id"].as_str().expect("a name");
        for free in attribute["options"].as_array().expect("options") {
            let is_free = free["state"] == "free" && attribute["audience"] == "customer";
            let Some(id) = free["option"]["id"].as_str().filter(|_| is_free) else {
                continue;
            };
            let Some(changed) = with_pick(&text, name, id) else {
                continue;
            };
            let path = folder.path().join("order/order.toml");
            std::fs::write(&path, changed).expect("the changed order");
            let path = path.to_str().expect("a path");
            let answer = json(&["options", path, "--opening", "B1", "--format", "json"]);
            assert!(answer["units"].is_array(), "{name}: {id}: {answer}");
            let then = &answer["units"][0];
            assert_eq!(option(then, name, id)["state"], "kept", "{name}: {id}");
            let difference = number(&free["difference"]);
            assert_eq!(
                number(&then["least_subtotal"]),
                least + difference,
                "{name}: {id}"
            );
            tried += 1;
        }
    }
    assert!(tried > 60, "{tried} options were tried");
}

/// An amount of dollars in cents.
fn number(value: &Value) -> i64 {
    let text = value["amount"].as_str();
    let text = text.unwrap_or_else(|| panic!("no amount: {value}"));
    text.replace('.', "").parse().expect("dollars and cents")
}

fn dollars(amount: &str) -> Value {
    serde_json::json!({ "amount": amount, "currency": "USD" })
}

/// The order with one more pick for B1; nothing where B1 picks the attribute already.
fn with_pick(text: &str, attribute: &str, option: &str) -> Option<String> {
    let opening = text.find("tag = \"B1\"")?;
    let picks = opening + text[opening..].find("picks = [")? + "picks = [".len();
    let end = picks + text[picks..].find(']')?;
    if text[picks..end].contains(&format!("attribute = \"{attribute}\"")) {
        return None;
    }
    let pick = format!("{{ attribute = \"{attribute}\", option = \"{option}\" }},");
    Some(format!("{}{pick}{}", &text[..picks], &text[picks..]))
}

/// Nobody asked whether someone sleeps in the basement. What depends on that, depends on nothing else; with "no", everything that
/// needed no other change is free at the difference that was said.
#[test]
fn what_depends_on_one_fact_is_free_at_what_was_said_once_the_fact_is_known() {
    let text = std::fs::read_to_string(HOUSE).expect("the order");
    let unit = asked("C1");
    assert_eq!(unit["selection_state"], "depends");
    assert_eq!(unit["waits"][0]["id"], "serves_as_escape");
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/corner-house", &folder.path().join("order"));
    copy_folder("examples/library", &folder.path().join("library"));
    let opening = text.find("tag = \"C1\"").expect("the basement");
    let facts = opening + text[opening..].find("facts = { ").expect("facts") + "facts = { ".len();
    let path = folder.path().join("order/order.toml");
    let known = format!("{}serves_as_escape = false, {}", &text[..facts], &text[facts..]);
    std::fs::write(&path, known).expect("the changed order");
    let path = path.to_str().expect("a path");
    let answer = json(&["options", path, "--opening", "C1", "--format", "json"]);
    let known = &answer["units"][0];
    let mut compared = 0;
    let attributes = unit["attributes"].as_array().expect("attributes").iter();
    for (before, after) in attributes.zip(known["attributes"].as_array().expect("attributes")) {
        let options = before["options"].as_array().expect("options").iter();
        for (before, after) in options.zip(after["options"].as_array().expect("options")) {
            assert_ne!(after["state"], "depends", "{after}");
            if before["state"] != "depends" {
                continue;
            }
            assert_eq!(before["waits"][0]["id"], "serves_as_escape", "{before}");
            assert_eq!(before["changes"], after["changes"], "{before} {after}");
            assert_eq!(before["difference"], after["difference"], "{before} {after}");
            compared += usize::from(!before["difference"].is_null());
        }
    }
    assert!(compared > 40, "{compared} options had a difference");
}

/// The ring crank is no longer offered; one kitchen window was quoted in time.
#[test]
fn an_option_that_is_no_longer_offered_says_so_and_is_kept_where_it_is_honoured() {
    assert_eq!(option(&asked("K1"), "handle", "ring")["state"], "kept");
    let bedroom = asked("B1");
    let ring = option(&bedroom, "handle", "ring");
    assert_eq!(
        (&ring["state"], &ring["withheld"]["why"]),
        (&Value::from("impossible"), &Value::from("no_longer_offered"))
    );
    assert!(ring["withheld"]["date"].is_string());
    let shown = run(&["options", HOUSE, "--opening", "B1"]).out;
    let line = shown
        .lines()
        .find(|line| line.contains("Ring crank"))
        .expect("the crank");
    assert!(line.contains("was offered until 20"), "{line}");
    let hidden = shown
        .lines()
        .filter(|line| line.contains("not sold by this dealer"))
        .count();
    assert!(hidden > 0, "the dealer's policy hides options");
}

/// Finishes change with the inside; a pin holds the operation, so that no other one is an answer.
#[test]
fn a_pinned_pick_is_never_among_the_changes() {
    let text = std::fs::read_to_string(HOUSE).expect("the order");
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/corner-house", &folder.path().join("order"));
    copy_folder("examples/library", &folder.path().join("library"));
    let path = folder.path().join("order/order.toml");
    let ask = |text: &str| {
        std::fs::write(&path, text).expect("the order");
        let answer = json(&[
            "options",
            path.to_str().expect("a path"),
            "--opening",
            "B1",
            "--format",
            "json",
        ]);
        answer["units"][0].clone()
    };
    let opening = text.find("tag = \"B1\"").expect("the bedroom");
    let picks = opening + text[opening..].find("picks = [").expect("picks");
    let pinned = format!(
        "{}pins = [\"hardware_finish\"]\n{}",
        &text[..picks],
        &text[picks..]
    );
    let (free, pinned) = (ask(&text), ask(&pinned));
    assert_eq!(option(&free, "hardware_finish", "white")["state"], "free");
    assert_eq!(option(&pinned, "hardware_finish", "white")["state"], "impossible");
    assert_eq!(
        option(&pinned, "hardware_finish", "satin-nickel")["state"],
        "kept"
    );
    assert_eq!(option(&free, "handle", "straight")["state"], "changes");
    assert_eq!(option(&pinned, "handle", "straight")["state"], "impossible");
}

#[test]
fn an_opening_that_is_not_there_says_which_there_are() {
    let ran = run(&["options", HOUSE, "--opening", "Z9"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.out.is_empty());
    assert!(
        ran.err.contains("there is no opening `Z9`") && ran.err.contains("openings are `"),
        "{}",
        ran.err
    );
}

#[test]
fn an_order_that_cannot_be_read_ends_with_its_findings() {
    let ran = run(&["options", "tests/fixtures/orders/none.toml", "--opening", "B1"]);
    assert_eq!(ran.code, Some(5));
    let last = ran.err.lines().last().expect("a last line");
    assert!(last.ends_with("; no options are shown"), "{last}");
}

/// What the quote says holds is a unit with these picks, so that the picks go together; what it cannot decide rules nothing out,
/// though what is open may be all that is missing; what it says is broken goes together in no way.
#[test]
fn every_opening_of_the_house_is_answered_in_accord_with_its_quote() {
    let quote = json(&["quote", HOUSE, "--format", "json"]);
    let openings = quote["openings"].as_array().expect("openings");
    assert_eq!(openings.len(), 10);
    for opening in openings {
        let tag = opening["tag"].as_str().expect("a tag");
        let unit = asked(tag);
        let state = unit["selection_state"].as_str().expect("a state");
        let expected: &[&str] = match opening["verdict"].as_str() {
            Some("holds") => &["goes_together"],
            Some("undecided") => &["goes_together", "depends"],
            _ => &["conflicts", "impossible"],
        };
        assert!(expected.contains(&state), "{tag}: {state}");
        let catalogs = quote["catalogs"].as_array().expect("catalogs");
        assert!(
            catalogs.contains(&unit["catalog"]),
            "{tag}: the revisions of the quote"
        );
        let ran = run(&["options", HOUSE, "--opening", tag]);
        assert!(matches!(ran.code, Some(0 | 3 | 4)), "{tag}: {}", ran.err);
        assert!(ran.out.lines().all(|line| line.trim_end() == line), "{tag}");
        check_says(
            &ran.out,
            &[
                &format!("Options of opening {tag}"),
                "Order corner-house, judged as of 2026-11-25, prices in USD",
                "revision ",
                "A difference compares",
                "astragal checks, it does not approve",
            ],
        );
    }
}

#[test]
fn with_a_price_book_that_is_not_in_force_nothing_is_possible_and_it_says_why() {
    let ran = run(&["options", HOUSE, "--opening", "B1", "--date", "2027-01-01"]);
    assert_eq!(ran.code, Some(4));
    let why = ["Nothing holds for this opening", "2026-12-31", "not possible"];
    check_says(&ran.out, &why);
    assert!(!ran.out.contains("free"), "{}", ran.out);
}

#[test]
fn the_examples_in_the_help_run() {
    for example in help_examples("options") {
        let example: Vec<&str> = example.iter().map(String::as_str).collect();
        assert_eq!(run(&example).code, Some(0), "{example:?}");
    }
}
