//! `astragal quote` on small orders: what a person reads about what was ordered, what holds, and what it costs.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use expect_test::expect_file;
use program::{block, check_quote, check_says, json, order, run};

#[test]
fn every_fixture_reads_as_its_golden_file_says() {
    for (name, code) in [("holds", 0), ("undecided", 3), ("broken", 4), ("retired", 0)] {
        let text = check_quote(name, &[], code);
        let golden = format!(
            "{}/tests/fixtures/orders/{name}.quote.txt",
            env!("CARGO_MANIFEST_DIR")
        );
        expect_file![golden].assert_eq(&text);
    }
}

#[test]
fn no_line_is_wider_than_a_page_and_none_ends_in_spaces() {
    for name in ["holds", "undecided", "broken"] {
        let order = order(name);
        for line in run(&["quote", &order, "--why", first_tag(name)]).out.lines() {
            assert!(line.chars().count() <= 100 && line == line.trim_end(), "`{line}`");
        }
    }
}

fn first_tag(name: &str) -> &'static str {
    match name {
        "holds" => "K1",
        "undecided" => "B1",
        _ => "L1",
    }
}

#[test]
fn an_order_that_holds_shows_what_was_ordered_and_what_it_costs() {
    let text = check_quote("holds", &[], 0);
    check_says(
        &text,
        &[
            "The house where all holds",
            "Order holds, judged as of 2026-11-25, prices in USD",
        ],
    );
    check_says(
        block(&text, "K1"),
        &[
            "K1: Kitchen, Ground floor, face: Front quantity 2",
            "Small windows holds",
            "Opening width 30 1/2 in, nobody has deducted",
            "Opening height 48 1/2 in, the dealer has deducted",
            "Unit width 30 in",
            "you chose Hinge side: Left standard Operation: Casement",
            "you chose Exterior colour: Grey",
            "Note to the plant The crank must clear the tap.",
        ],
    );
}

/// 200.00 by the grid, 25 % marked up: 250.00; 10.5 % of that is 26.25; a screen 40.00 and 25 %: 50.00; freight 12.00.
#[test]
fn prices_are_worked_out_line_by_line_and_multiplied_by_the_quantity() {
    let text = check_quote("holds", &["--why", "K1"], 0);
    check_says(
        block(&text, "K1"),
        &[
            "Unit standard 250.00",
            "Dark exterior upcharge 26.25",
            "Screen standard 50.00",
            "included at 0.00: Operation, Hinge side, Interior colour",
            "Freight share 12.00",
            "Total of one unit 338.25 USD",
            "Times 2 676.50 USD",
            "Why this price",
            "Unit width 30 in lies in the bracket over 24 in up to 30 in",
            "Unit height 48 in lies in the bracket over 0 in up to 48 in",
            "the price grid says 200.00",
            "plus a mark-up of 25 %",
            "10.5 % of Unit at 250.00 is 26.25",
        ],
    );
    check_says(&text, &["Total before tax and order charges: 676.50 USD"]);
    assert!(!check_quote("holds", &[], 0).contains("Why this price"));
}

#[test]
fn an_opening_that_is_not_included_is_shown_and_does_not_count() {
    let text = check_quote("holds", &[], 0);
    check_says(
        block(&text, "K2"),
        &["does not hold", "not included in the order; an alternate to K1"],
    );
    check_says(&text, &["1 of 1 openings holds: K1", "Not included: K2"]);
}

#[test]
fn what_the_plant_determines_is_not_shown_to_a_person_and_is_there_for_a_program() {
    let name = order("holds");
    assert!(!check_quote("holds", &[], 0).contains("Glass thickness"));
    let answer = json(&["quote", &name, "--format", "json"]);
    let choices = answer["openings"][0]["unit"]["choices"].as_array().unwrap();
    let plant = choices
        .iter()
        .find(|choice| choice["audience"] == "plant")
        .unwrap();
    assert_eq!(
        (&plant["attribute"]["id"], &plant["option"]["id"]),
        (&"glass_thickness".into(), &"single".into())
    );
}

#[test]
fn what_cannot_be_decided_says_what_to_ask_measure_or_choose() {
    let text = check_quote("undecided", &[], 3);
    check_says(
        block(&text, "B1"),
        &[
            "cannot be decided yet",
            "Waits for Serves as escape.",
            "Rule escape-area, authority: code; basis: IRC 2021 R310.2.1",
            "Find out Serves as escape: yes or no",
            "Also what every opening carries: at the end.",
        ],
    );
    check_says(
        &text,
        &["Every opening carries", "shown because Year built is not known"],
    );
    check_says(
        block(&text, "B2"),
        &[
            "Unit width not known",
            "the total waits for Opening width",
            "Measure Opening width",
            "Total of one unit not known",
        ],
    );
    check_says(
        block(&text, "B3"),
        &["Still to choose", "Hinge side: Left or Right"],
    );
    check_says(
        &text,
        &[
            "The total is incomplete: no total is known for B2.",
            "The other openings, before tax and order charges: 561.50 USD",
            "3 of 3 openings cannot be decided yet: B1, B2, B3",
        ],
    );
    assert!(
        !text.contains("Total before tax"),
        "an incomplete total is not called the total"
    );
}

#[test]
fn every_notice_stands_with_its_opening_or_once_with_those_that_every_opening_carries() {
    let house = "examples/corner-house/order.toml";
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let text = run(&["quote", house]).out;
    let (openings, gathered) = text.split_once("Every opening carries").unwrap();
    let gathered = flat(gathered);
    let (mut own, mut shared) = (0, 0);
    for opening in json(&["quote", house, "--format", "json"])["openings"]
        .as_array()
        .unwrap()
    {
        let tag = opening["tag"].as_str().unwrap();
        let block = flat(block(openings, tag));
        for notice in opening["unit"]["notices"].as_array().unwrap() {
            let notice = flat(notice["text"].as_str().unwrap());
            let (here, there) = (block.contains(&notice), gathered.contains(&notice));
            assert!(
                here != there,
                "{tag}: `{notice}` is here: {here}, gathered: {there}"
            );
            own += u32::from(here);
            shared += u32::from(there);
        }
    }
    assert!(own > 0 && shared > 0, "the house has notices of both kinds");
}

/// The quote of the house of mistakes with an opening L6 that is 400 in wide.
fn wide_l6() -> String {
    let folder = tempfile::tempdir().expect("a folder");
    program::copy_folder("tests/fixtures", folder.path());
    let path = folder.path().join("orders/broken.toml");
    let text = std::fs::read_to_string(&path).expect("the order");
    let (before, last) = text.rsplit_once("size = \"30 1/2\"").expect("the last opening");
    std::fs::write(&path, format!("{before}size = \"400\"{last}")).expect("the order");
    run(&["quote", path.to_str().expect("a path")]).out
}

#[test]
fn what_does_not_hold_says_which_rule_in_its_own_words_and_what_it_reads() {
    let text = check_quote("broken", &[], 4);
    // So wide that nothing holds, and nothing is filled in but standards.
    let wide = wide_l6();
    check_says(
        block(&wide, "L6"),
        &[
            "A unit that does not open has no screen.",
            "Rule no-screen-on-fixed, authority: plant",
            "The standard Full screen (Screen) does not go with your Fixed (Operation).",
            "It reads Operation: Fixed (you chose); Screen: Full screen",
        ],
    );
    check_says(
        block(&text, "L2"),
        &[
            "An escape opening has 5.7 sq ft clear; this one has 5 sq ft.",
            "authority: code; basis: IRC 2021 R310.2.1",
            "It reads Serves as escape: yes; Clear opening: 5 sq ft",
            "from Unit width: 24 in; Unit height: 40 in; Opening width: 24 1/2 in",
        ],
    );
    check_says(
        block(&text, "L5"),
        &["Clear pine inside is not made with Grey outside."],
    );
    assert!(
        !block(&text, "L5").contains("The standard"),
        "two picks are in each other's way, no standard is"
    );
}

/// A fixed unit has no screen, and the standard is a full one.
#[test]
fn a_standard_that_does_not_go_with_the_picks_gives_way_and_says_why() {
    let text = check_quote("broken", &[], 4);
    check_says(
        block(&text, "L1"),
        &[
            "Small windows holds",
            "filled in Screen: No screen (the standard is Full screen)",
            "With standards alone this would not hold: - A unit that does not open has no screen. (no-screen-on-fixed)",
        ],
    );
    let name = order("broken");
    let answer = json(&["quote", &name, "--format", "json"]);
    let unit = &answer["openings"][0]["unit"];
    let completion = &unit["completion"];
    assert_eq!(
        (&completion["aim"], &completion["because"][0]["rule"]),
        (&"standard".into(), &"no-screen-on-fixed".into())
    );
    assert_eq!(
        (
            &completion["departures"][0]["attribute"]["id"],
            &completion["departures"][0]["standard"]["id"]
        ),
        (&"screen".into(), &"full".into())
    );
    let choices = unit["choices"].as_array().unwrap();
    let screen = choices
        .iter()
        .find(|choice| choice["attribute"]["id"] == "screen")
        .unwrap();
    assert_eq!(
        (&screen["option"]["id"], &screen["origin"]),
        (&"none".into(), &"completed".into())
    );
}

/// What is said to be saved is what is saved, opening by opening, and no pick has changed.
#[test]
fn the_cheapest_quote_costs_less_by_what_the_standard_one_says_and_keeps_every_pick() {
    let house = "examples/corner-house/order.toml";
    let standard = json(&["quote", house, "--format", "json"]);
    let cheapest = json(&["quote", house, "--cheapest", "--format", "json"]);
    let openings = |answer: &serde_json::Value| answer["openings"].as_array().unwrap().clone();
    let cents = |amount: &serde_json::Value| -> i64 {
        let text = amount["amount"].as_str().unwrap();
        text.replace('.', "").parse().unwrap()
    };
    let text = run(&["quote", house, "--cheapest"]).out;
    check_says(
        &text,
        &["less than with standards; standards are filled in all the same for D1, B3 and C1."],
    );
    let mut compared = 0;
    for (one, other) in openings(&standard).iter().zip(&openings(&cheapest)) {
        let saves = &one["unit"]["completion"]["cheapest"]["saves"];
        let filled_with = &other["unit"]["completion"]["filled_with"];
        if saves.is_null() {
            assert_eq!(one["total"], other["total"]);
            let is_settled = other["unit"]["completion"]["cheapest"]["state"] == "quoted";
            assert_eq!(filled_with, if is_settled { "cheapest" } else { "standard" });
            continue;
        }
        assert_eq!(filled_with, "cheapest");
        let quantity = one["quantity"].as_i64().unwrap();
        assert_eq!(
            cents(&one["total"]) - cents(&other["total"]),
            quantity * cents(saves)
        );
        let picked = |unit: &serde_json::Value| {
            let choices = unit["choices"].as_array().unwrap().clone();
            choices
                .into_iter()
                .filter(|choice| choice["origin"] == "picked")
                .collect::<Vec<_>>()
        };
        assert_eq!(
            picked(&one["unit"]).len(),
            one["unit"]["picks"].as_array().unwrap().len()
        );
        let options = |unit: &serde_json::Value| {
            picked(unit)
                .iter()
                .map(|choice| choice["option"].clone())
                .collect::<Vec<_>>()
        };
        assert_eq!(options(&one["unit"]), options(&other["unit"]));
        assert!(other["verdict"] == "holds" && other["unit"]["completion"]["aim"] == "cheapest");
        compared += 1;
    }
    check_says(
        block(&text, "B3"),
        &["What is cheapest depends on what is not known; standards are filled in."],
    );
    assert!(compared >= 6, "{compared} openings have something cheaper");
    let saves = |answer: &serde_json::Value| cents(&answer["totals"]["cheapest_saves"]);
    let sum = |answer: &serde_json::Value| cents(&answer["totals"]["sum_of_known"]);
    assert_eq!(saves(&standard), saves(&cheapest));
    assert_eq!(sum(&standard) - sum(&cheapest), saves(&standard));
}

#[test]
fn picks_that_do_not_go_together_stay_and_the_least_that_must_change_is_said() {
    let text = check_quote("broken", &[], 4);
    check_says(
        block(&text, "L6"),
        &[
            "you chose Operation: Fixed",
            "Does not hold",
            "Rule colour-pairs",
            "Whatever is filled in, at least one of your choices must change.",
        ],
    );
}

#[test]
fn a_waived_rule_names_the_waiver() {
    let text = check_quote("broken", &[], 4);
    check_says(
        block(&text, "L3"),
        &[
            "holds",
            "Waived",
            "A casement is at most 36 in wide; this one is 39 1/2 in.",
            "Waived by W-118, from 2026-11-01, without end.",
        ],
    );
}

#[test]
fn rules_of_an_authority_that_was_left_out_are_said_not_to_be_applied() {
    let text = check_quote("undecided", &["--without", "code"], 3);
    check_says(
        block(&text, "B1"),
        &[
            "Small windows holds",
            "Not applied: cannot be decided",
            "Rule escape-area",
        ],
    );
    check_says(&text, &["The rules of `code` were not applied."]);
    assert!(!check_quote("undecided", &[], 3).contains("were not applied"));
    let name = order("undecided");
    let answer = json(&["quote", &name, "--without", "code", "--format", "json"]);
    assert_eq!(answer["authorities_not_applied"], serde_json::json!(["code"]));
}

#[test]
fn another_date_may_give_another_answer() {
    let text = check_quote("retired", &[], 0);
    assert!(!text.contains("by --date"));
    let text = check_quote("retired", &["--date", "2026-07-01"], 4);
    check_says(
        &text,
        &[
            "judged as of 2026-07-01 (by --date)",
            "Green (Exterior colour) was offered until 2026-06-30. Grey replaces it.",
            "Rule exterior.offered",
        ],
    );
    let text = check_quote("retired", &["--date", "2027-01-01"], 4);
    check_says(&text, &["was in force until 2026-12-31"]);
}

#[test]
fn every_quote_says_that_it_approves_nothing() {
    for (name, code) in [("holds", 0), ("undecided", 3), ("broken", 4)] {
        let text = check_quote(name, &[], code);
        check_says(
            &text,
            &[
                "it does not approve",
                "local code and a licensed person decide",
                "Confirm every measurement",
            ],
        );
    }
}
