//! `astragal check` on small libraries and on the demo: findings or a summary, and rules explained.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use program::{help_examples, json, run};

const LIBRARY: &str = "tests/fixtures/library";
const FAULTY: &str = "tests/fixtures/faulty-library";

/// Runs `check` and expects this exit code, nothing on the other stream, and these pieces in order.
fn check_says(arguments: &[&str], code: i32, pieces: &[&str]) {
    let arguments: Vec<&str> = std::iter::once("check")
        .chain(arguments.iter().copied())
        .collect();
    let ran = run(&arguments);
    assert_eq!(ran.code, Some(code), "{arguments:?}\n{}\n{}", ran.out, ran.err);
    let (said, silent) = if code == 0 {
        (&ran.out, &ran.err)
    } else {
        (&ran.err, &ran.out)
    };
    assert_eq!(silent, "", "{arguments:?}");
    let flat = said.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut rest = flat.as_str();
    for piece in pieces {
        let at = rest
            .find(piece)
            .unwrap_or_else(|| panic!("no `{piece}` after what came before in\n{said}"));
        rest = &rest[at + piece.len()..];
    }
}

#[test]
fn a_library_without_faults_is_summed_up() {
    check_says(
        &[LIBRARY],
        0,
        &[
            "Library: Small library (small-library)",
            "Catalog: Small windows (small)",
            "6 attributes with 13 options",
            "2 measures; 2 site facts; 3 figures; 5 rules (1 of code, 4 of plant); 1 table with 4 rows",
            "3 price items; 1 notice; 6 examples proved",
            "Price book: Small windows, 2026 (small-2026)",
            "for small, in USD, in force from 2026-01-01 until 2026-12-31",
            "Dealer policy: Corner shop (corner-shop)",
            "No errors.",
        ],
    );
}

#[test]
fn a_check_says_how_large_the_diagram_is() {
    let catalog = &json(&["check", LIBRARY, "--format", "json"])["catalogs"][0];
    let diagram = &catalog["diagram"];
    for size in ["nodes", "edges", "gates", "cells", "bytes"] {
        assert!(diagram[size].as_u64() > Some(0), "{size}: {diagram}");
    }
    assert!(diagram["milliseconds"].is_u64(), "{diagram}");
    assert_eq!(catalog["no_diagram"], serde_json::Value::Null);
    check_says(
        &[LIBRARY],
        0,
        &[
            "diagram: ",
            " nodes, ",
            "configurations before anything is known",
            "compiled in ",
        ],
    );
}

#[test]
fn a_race_names_every_seed_and_the_winner_with_which_the_diagram_is_compiled() {
    let checked = json(&["check", LIBRARY, "--race", "--format", "json"]);
    let catalog = &checked["catalogs"][0];
    let race = &catalog["race"];
    let seeds = race["seeds"].as_array().expect("seeds");
    let numbers: Vec<u64> = seeds.iter().filter_map(|one| one["seed"].as_u64()).collect();
    assert_eq!(numbers, [0, 1, 2, 3, 4, 5, 6, 7]);
    let place = |one: &serde_json::Value| ["edges", "nodes", "seed"].map(|of| one[of].as_u64());
    let least = seeds.iter().map(place).min().expect("a seed");
    assert_eq!(least[2], race["seed"].as_u64(), "{race}");
    let diagram = ["edges", "nodes"].map(|of| catalog["diagram"][of].as_u64());
    assert_eq!(least[..2], diagram, "{catalog}");
    let plain = json(&["check", LIBRARY, "--format", "json"]);
    assert_eq!(plain["catalogs"][0]["race"], serde_json::Value::Null);
    let configurations = |of: &serde_json::Value| of["catalogs"][0]["diagram"]["configurations"].clone();
    assert_eq!(configurations(&plain), configurations(&checked));
    check_says(
        &[LIBRARY, "--race"],
        0,
        &[
            "compiled in ",
            &format!("race of the seeds: seed {} wins in round 1", race["seed"]),
            "seed 0: ",
            " edges, ",
            "seed 7: ",
            "No errors.",
        ],
    );
}

/// Of the eight seeds of the sliding catalog some need more states than the winner, and say what stopped them.
#[test]
fn a_seed_that_is_stopped_says_by_what() {
    let checked = json(&["check", "examples/library", "--race", "--format", "json"]);
    let race = &checked["catalogs"][1]["race"];
    let most = race["states_at_most"].as_u64().expect("a cap");
    let seeds = race["seeds"].as_array().expect("seeds");
    let (done, stopped): (Vec<_>, Vec<_>) = seeds.iter().partition(|one| one["stopped"].is_null());
    assert!(!done.is_empty() && !stopped.is_empty(), "{race}");
    for one in done {
        assert!(
            one["states"].as_u64().is_some_and(|states| states <= most),
            "{one}"
        );
    }
    for one in stopped {
        let said = one["stopped"].as_str().expect("a reason");
        assert!(said.contains(&format!("more than {most} states")), "{one}");
        assert!(one["edges"].is_null() && one["nodes"].is_null(), "{one}");
    }
}

#[test]
fn a_race_and_an_explanation_are_not_asked_for_together() {
    let ran = run(&["check", LIBRARY, "--race", "--explain", "colour-pairs"]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
}

/// In the demo laminated glass goes into two-pane units only, and only three-pane units have a middle lite.
#[test]
fn options_that_no_opening_can_have_are_named() {
    let demo = "examples/library";
    check_says(
        &[demo],
        0,
        &[
            "Catalog: Hinged",
            "can never be chosen: safety.middle: laminated",
            "Catalog: Sliding",
        ],
    );
    let checked = json(&["check", demo, "--format", "json"]);
    let never = |catalog: usize| &checked["catalogs"][catalog]["diagram"]["never_chosen"];
    let laminated = serde_json::json!([{ "attribute": "safety.middle", "option": "laminated" }]);
    assert_eq!(*never(0), laminated);
    assert_eq!(*never(1), serde_json::json!([]));
}

#[test]
fn a_quote_and_a_check_name_the_same_revisions() {
    let checked = json(&["check", LIBRARY, "--format", "json"]);
    let quoted = json(&["quote", "tests/fixtures/orders/holds.toml", "--format", "json"]);
    let quoted = &quoted["catalogs"][0];
    assert_eq!(checked["catalogs"][0]["revision"], quoted["revision"]);
    assert_eq!(checked["books"][0]["revision"], quoted["book"]["revision"]);
    assert_eq!(
        checked["policies"][0]["revisions"][0]["revision"],
        quoted["policy"]["revision"]
    );
    assert_eq!(quoted["revision"].as_str().map(str::len), Some(64));
}

#[test]
fn faults_are_findings_with_their_places_and_no_summary() {
    check_says(
        &[FAULTY],
        5,
        &[
            "`gray`",
            "small/catalog.toml:17:24",
            "did you mean `grey`?",
            "1 error;",
        ],
    );
}

#[test]
fn findings_are_there_for_a_program_too() {
    let ran = run(&["check", FAULTY, "--format", "json"]);
    assert_eq!(ran.code, Some(5));
    let answer: serde_json::Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!((&answer["format"], &answer["exit_code"]), (&1.into(), &5.into()));
    let finding = &answer["findings"][0];
    assert_eq!((&finding["line"], &finding["column"]), (&17.into(), &24.into()));
    assert_eq!(finding["severity"], "error");
    assert_eq!(
        answer["catalogs"],
        serde_json::json!([]),
        "what has errors is not summed up"
    );
}

#[test]
fn a_rule_is_explained_with_its_lines_its_table_and_its_examples() {
    check_says(
        &[LIBRARY, "--explain", "colour-pairs"],
        0,
        &[
            "Rule colour-pairs of catalog small",
            "says {interior} inside is not made with {exterior} outside.",
            "authority plant",
            "waivable no",
            "It stands at small/catalog.toml:",
            "| id = \"colour-pairs\"",
            "Its table is small/pairs.csv:1",
            "| pine,x,no,no",
            "Example grey-with-pine breaks it alone",
            "| breaks = [\"colour-pairs\"]",
        ],
    );
    check_says(
        &[LIBRARY, "--explain", "escape-area"],
        0,
        &["authority code", "basis IRC 2021 R310.2.1", "small-escape"],
    );
}

#[test]
fn the_lines_of_a_rule_are_those_of_the_file() {
    let answer = json(&[
        "check",
        LIBRARY,
        "--explain",
        "casement-width",
        "--format",
        "json",
    ]);
    let rule = &answer["rules"][0];
    let source = &rule["source"];
    let text = std::fs::read_to_string(format!("{LIBRARY}/{}", source["file"].as_str().unwrap())).unwrap();
    let first = usize::try_from(source["line"].as_u64().unwrap()).unwrap();
    let lines = source["lines"].as_array().unwrap();
    assert_eq!(lines[0], "[[rule]]");
    for (offset, line) in lines.iter().enumerate() {
        assert_eq!(line.as_str(), text.lines().nth(first - 1 + offset));
    }
    assert_eq!(rule["waivable"], true);
    assert_eq!(rule["examples"][0]["id"], "too-wide");
}

#[test]
fn a_rule_that_every_catalog_has_by_itself_is_explained_too() {
    check_says(
        &[LIBRARY, "--explain", "exterior.offered"],
        0,
        &["by itself", "Exterior colour", "small/catalog.toml:"],
    );
    check_says(
        &[LIBRARY, "--explain", "has-a-price"],
        0,
        &["has an amount in the price book"],
    );
    check_says(
        &[LIBRARY, "--explain", "exterior.determined"],
        2,
        &["no catalog that was checked has a rule"],
    );
}

#[test]
fn an_unknown_rule_is_wrong_usage_and_says_what_there_is() {
    check_says(
        &[LIBRARY, "--explain", "casement-widht"],
        2,
        &["`casement-widht`", "did you mean `casement-width`?"],
    );
    check_says(
        &[LIBRARY, "--explain", "z"],
        2,
        &["rules are `casement-width`, `no-screen-on-fixed`"],
    );
}

#[test]
fn an_unknown_rule_in_a_library_with_errors_may_be_among_them() {
    check_says(&[FAULTY, "--explain", "no-gray"], 5, &["UNKNOWN_OPTION"]);
}

#[test]
fn a_folder_that_is_not_there_is_an_answer_and_no_panic() {
    check_says(&["no/such/folder"], 5, &["`no/such/folder`", "1 error;"]);
    check_says(&["src"], 5, &["is in no library", "1 error;"]);
    assert_eq!(run(&["check"]).code, Some(2));
}

#[test]
fn the_examples_of_the_help_run() {
    for example in help_examples("check") {
        let arguments: Vec<&str> = example.iter().map(String::as_str).collect();
        let ran = run(&arguments);
        assert_eq!(ran.code, Some(0), "{arguments:?}\n{}", ran.err);
        assert!(!ran.out.is_empty());
    }
}

#[test]
fn a_person_gets_a_hundred_findings_and_a_program_all_of_them() {
    let folder = tempfile::tempdir().expect("a folder");
    let catalog = folder.path().join("small");
    std::fs::create_dir(&catalog).expect("a folder");
    for file in ["library.toml", "small/catalog.toml"] {
        let from = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
            .join(FAULTY)
            .join(file);
        std::fs::copy(from, folder.path().join(file)).expect("a file");
    }
    let mut text = std::fs::read_to_string(catalog.join("catalog.toml")).expect("the catalog");
    for number in 0..150 {
        text += &format!("[[rule]]\nid = \"r{number}\"\nrequire = 'exterio == \"grey\"'\nmessage = \"m\"\n");
    }
    std::fs::write(catalog.join("catalog.toml"), text).expect("the catalog");
    let path = folder.path().to_str().expect("a path");
    let ran = run(&["check", path]);
    assert_eq!(ran.err.matches("error[").count(), 100);
    let end = "... and 51 more; put these right first\n\n151 errors; what has errors cannot be used\n";
    assert!(ran.err.ends_with(end), "{}", ran.err);
    let ran = run(&["check", path, "--format", "json"]);
    let answer: serde_json::Value = serde_json::from_str(&ran.out).expect("an answer");
    assert_eq!(answer["findings"].as_array().map(Vec::len), Some(151));
}
