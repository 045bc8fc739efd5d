//! The example `instance`: exact keys, known answers, answers that no order of declaration changes, and bad files.
//!
//! Source of the instances and of their answers: `crates/core/tests/instances/README.md`.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

use serde_json::{Value, json};

/// The built example: built here where a run of this test alone has not built it.
fn example() -> &'static Path {
    static BUILT: OnceLock<PathBuf> = OnceLock::new();
    BUILT.get_or_init(|| {
        let program = Path::new(env!("CARGO_BIN_EXE_astragal"));
        let name = format!("instance{}", std::env::consts::EXE_SUFFIX);
        let mut build = Command::new(env!("CARGO"));
        build.args(["build", "--quiet", "--workspace", "--example", "instance"]);
        if !cfg!(debug_assertions) {
            build.arg("--release");
        }
        let status = build.current_dir(env!("CARGO_MANIFEST_DIR")).status().unwrap();
        assert!(status.success(), "the example builds");
        program.parent().unwrap().join("examples").join(name)
    })
}

fn run(arguments: &[&str]) -> Output {
    Command::new(example()).args(arguments).output().unwrap()
}

/// The lines that it prints, as JSON.
fn answers(arguments: &[&str]) -> Vec<Value> {
    let output = run(arguments);
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let text = String::from_utf8(output.stdout).unwrap();
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

fn published(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("crates/core/tests/instances/{name}.json"))
}

/// Three attributes: red needs double, blue does not go with large; large double costs 7 more.
fn small() -> Value {
    json!({
        "name": "small",
        "attributes": [
            {"name": "colour", "options": 2}, {"name": "glass", "options": 2}, {"name": "size", "options": 2}
        ],
        "tables": [{"scope": ["colour", "size"], "allowed": [[0, 0], [0, 1], [1, 0]]}],
        "clauses": [[
            {"attribute": "colour", "options": [1]}, {"attribute": "glass", "options": [1]}
        ]],
        "option_prices": [[10, 0], [0, 5], [0, 20]],
        "pair_prices": [{"scope": ["glass", "size"], "price": [[0, 0], [0, 7]]}]
    })
}

fn written(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn it_prints_exactly_the_keys_that_it_promises() {
    let answer = answers(&[published("vehicle-medium").to_str().unwrap()]).remove(0);
    let keys: Vec<&str> = answer.as_object().unwrap().keys().map(String::as_str).collect();
    let promised = [
        "name",
        "attributes",
        "compile_ms",
        "nodes",
        "edges",
        "count",
        "cheapest",
        "options_us",
    ];
    assert_eq!(keys, promised);
}

#[test]
fn known_counts_and_optima_come_out_whatever_the_order_of_declaration() {
    let folder = tempfile::tempdir().unwrap();
    for (name, count, cheapest) in [
        ("vehicle-medium", "278744", 683_550),
        ("unit", "16641964390586580", 5_416),
        ("wide", "2664410890857484133726267797103412177107578225", 154_700),
    ] {
        let file = published(name);
        let json: Value = serde_json::from_str(&std::fs::read_to_string(&file).unwrap()).unwrap();
        let shuffled = written(folder.path(), name, &shuffled(&json).to_string());
        let (plain, shuffled) = (answers(&[file.to_str().unwrap()]), answers(&[&shuffled]));
        for answer in [&plain[0], &shuffled[0]] {
            assert_eq!(answer["count"], count, "{name}");
            assert_eq!(answer["cheapest"], cheapest, "{name}");
        }
        for size in ["nodes", "edges"] {
            assert_eq!(plain[0][size], shuffled[0][size], "{name}: {size}");
        }
    }
}

/// The same instance with attributes, rules and options in another order.
fn shuffled(json: &Value) -> Value {
    let mut json = json.clone();
    let attributes = json["attributes"].as_array().unwrap().clone();
    let size = |name: &Value| {
        let attribute = attributes.iter().find(|one| one["name"] == *name);
        attribute.unwrap()["options"].as_u64().unwrap()
    };
    let moved = |name: &Value, option: &Value| json!((option.as_u64().unwrap() + 1) % size(name));
    for table in json["tables"].as_array_mut().unwrap() {
        let scope = table["scope"].as_array().unwrap().clone();
        for row in table["allowed"].as_array_mut().unwrap() {
            for (name, option) in scope.iter().zip(row.as_array_mut().unwrap()) {
                *option = moved(name, option);
            }
        }
        table["allowed"].as_array_mut().unwrap().reverse();
    }
    for member in json["clauses"]
        .as_array_mut()
        .unwrap()
        .iter_mut()
        .flat_map(|clause| {
            clause.as_array_mut().unwrap().reverse();
            clause.as_array_mut().unwrap()
        })
    {
        let name = member["attribute"].clone();
        for option in member["options"].as_array_mut().unwrap() {
            *option = moved(&name, option);
        }
    }
    for pair in json["pair_prices"].as_array_mut().unwrap() {
        let matrix = pair["price"].as_array_mut().unwrap();
        matrix.rotate_right(1);
        matrix
            .iter_mut()
            .for_each(|row| row.as_array_mut().unwrap().rotate_right(1));
    }
    for prices in json["option_prices"].as_array_mut().unwrap() {
        prices.as_array_mut().unwrap().rotate_right(1);
    }
    for list in ["attributes", "option_prices", "tables", "clauses", "pair_prices"] {
        json[list].as_array_mut().unwrap().reverse();
    }
    json
}

#[test]
fn selections_get_what_holds_costs_and_remains() {
    let folder = tempfile::tempdir().unwrap();
    let instance = written(folder.path(), "small.json", &small().to_string());
    let lines = "{}\n{\"colour\": 0}\n\n{\"colour\": 1, \"size\": 1}\n{\"glass\": 0, \"size\": 1}\n";
    let selections = written(folder.path(), "selections.jsonl", lines);
    let answers = answers(&[&instance, "--selections", &selections]);
    // Worked by hand: what holds is (0,1,0) 15, (0,1,1) 42, (1,0,0) 0 and (1,1,0) 5.
    let expected = [
        json!({"holds": true, "cheapest": 0, "free_options": {"colour": [0, 1], "glass": [0, 1], "size": [0, 1]}}),
        json!({"holds": true, "cheapest": 15, "free_options": {"colour": [0, 1], "glass": [1], "size": [0, 1]}}),
        json!({"holds": false, "cheapest": null, "free_options": {"colour": [0], "glass": [], "size": [0]}}),
        json!({"holds": false, "cheapest": null, "free_options": {"colour": [], "glass": [1], "size": [0]}}),
    ];
    assert_eq!(answers[0]["count"], "4");
    assert_eq!(answers.len(), expected.len() + 1);
    for (answer, expected) in answers[1..].iter().zip(expected) {
        let mut answer = answer.clone();
        assert!(answer["microseconds"].is_number());
        answer.as_object_mut().unwrap().remove("microseconds");
        assert_eq!(answer, expected);
    }
}

#[test]
fn a_file_that_cannot_be_used_says_where_and_why() {
    let folder = tempfile::tempdir().unwrap();
    let changed = |path: &str, value: Value| {
        let mut json = small();
        *json.pointer_mut(path).unwrap() = value;
        json.to_string()
    };
    let cases = [
        ("not JSON", "{".to_owned(), "EOF while parsing"),
        (
            "an unknown attribute",
            changed("/tables/0/scope/0", json!("shape")),
            "table 0: there is no attribute `shape`",
        ),
        (
            "an option too far",
            changed("/tables/0/allowed/0/1", json!(2)),
            "table 0: attribute `size` has the options 0 to 1, found 2",
        ),
        (
            "a short row",
            changed("/tables/0/allowed/0", json!([0])),
            "table 0: a row has 1 options, expected 2",
        ),
        (
            "an attribute twice",
            changed("/attributes/1/name", json!("colour")),
            "attribute `colour` stands twice",
        ),
        (
            "an attribute without options",
            changed("/attributes/1/options", json!(0)),
            "attribute `glass` has 0 options, expected 1 to 4096",
        ),
        (
            "prices missing",
            changed("/option_prices/1", json!([0])),
            "option_prices: attribute `glass` has 2 options, found 1 prices",
        ),
        (
            "too much money",
            changed("/option_prices/1/0", json!(600_000_000_000_i64)),
            "the prices of one unit could reach 600000000037",
        ),
        (
            "a crooked matrix",
            changed("/pair_prices/0/price/1", json!([0])),
            "pair prices 0: expected a matrix of [2, 2] prices",
        ),
    ];
    for (name, text, expected) in cases {
        let file = written(folder.path(), "wrong.json", &text);
        let output = run(&[&file]);
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(5), "{name}: {said}");
        assert!(said.contains(expected), "{name}: {said}");
        assert!(output.stdout.is_empty(), "{name}");
    }
}

#[test]
fn a_selection_that_cannot_be_read_names_its_line() {
    let folder = tempfile::tempdir().unwrap();
    let instance = written(folder.path(), "small.json", &small().to_string());
    for (line, expected) in [
        ("{\"colour\": 2}", "has the options 0 to 1, found 2"),
        ("{\"shape\": 0}", "there is no attribute `shape`"),
        (
            "{\"colour\": 0, \"colour\": 1}",
            "attribute `colour` stands twice",
        ),
        ("[]", "invalid type"),
    ] {
        let selections = written(folder.path(), "selections.jsonl", &format!("{{}}\n{line}\n"));
        let output = run(&[&instance, "--selections", &selections]);
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(5), "{line}: {said}");
        assert!(
            said.contains("selections.jsonl:2: ") && said.contains(expected),
            "{line}: {said}"
        );
    }
}
