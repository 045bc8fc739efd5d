//! Larger random problems, answered by the engine and by CP-SAT: every option's possibility, the cheapest, changes.
//!
//! Brute force reaches a few hundred configurations; these problems have 12 to 40 attributes. Needs an interpreter with `ortools` in
//! `ASTRAGAL_ORTOOLS_PYTHON`; without it each test says that it was skipped.
//!
//! Source: CP-SAT of PyPI `ortools`, a solver of another kind, through a model of its own (`tests/outside/cp_sat_model.py`).

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::collections::BTreeMap;
use std::io::Write;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

use crate::answered::answered;

mod answered;
#[path = "../json_network/mod.rs"]
mod json_network;
mod problem;

const SCRIPT: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../tests/outside/problems_by_cp_sat.py"
);

/// How many problems are compared.
const PROBLEMS: usize = 1_000;

/// The interpreter; without one a line says what was skipped.
fn python(what: &str) -> Option<String> {
    let python = std::env::var("ASTRAGAL_ORTOOLS_PYTHON").ok();
    if python.is_none() {
        let needs = "needs ASTRAGAL_ORTOOLS_PYTHON, an interpreter with the package ortools";
        let line = format!("skipped: against_cp_sat ({what}) {needs}\n");
        std::io::stderr().write_all(line.as_bytes()).unwrap();
    }
    python
}

/// The first problems whose diagrams stay within the limit, and how many were passed over.
fn problems(count: usize) -> (Vec<Value>, usize) {
    let mut lines = Vec::with_capacity(count);
    let mut passed_over = 0;
    for seed in 0.. {
        match answered(seed) {
            Ok(line) => lines.push(line),
            Err(_) => passed_over += 1,
        }
        if lines.len() == count {
            break;
        }
    }
    (lines, passed_over)
}

/// What the script prints: mismatches, then one line that counts.
fn compare(python: &str, file: &str, lines: &[Value]) -> (Vec<String>, Value) {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(file);
    let text: String = lines.iter().map(|line| format!("{line}\n")).collect();
    std::fs::write(&file, text).unwrap();
    let output = Command::new(python).arg(SCRIPT).arg(&file).output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    let mut said: Vec<String> = said.lines().map(str::to_owned).collect();
    let errors = String::from_utf8_lossy(&output.stderr);
    let counts = serde_json::from_str(&said.pop().unwrap_or_default());
    assert!(counts.is_ok(), "{python} ended with {}: {errors}", output.status);
    assert_eq!(output.status.success(), said.is_empty(), "{said:?}");
    (said, counts.unwrap())
}

#[test]
fn a_thousand_larger_problems_are_answered_as_cp_sat_answers_them() {
    let Some(python) = python("1,000 problems") else {
        return;
    };
    let (lines, passed_over) = problems(PROBLEMS);
    let (mismatches, counts) = compare(&python, "problems.jsonl", &lines);
    assert_eq!(mismatches, Vec::<String>::new());
    assert_eq!(counts["problems"], PROBLEMS);
    let largest = lines.iter().map(|line| line["nodes"].as_u64().unwrap()).max();
    eprintln!(
        "against_cp_sat: {counts}; {passed_over} more passed over as too large; largest diagram {} nodes",
        largest.unwrap()
    );
}

#[test]
fn every_kind_of_wrong_answer_is_found() {
    let Some(python) = python("planted mistakes") else {
        return;
    };
    let (lines, _) = problems(40);
    let holds = |line: &Value| line["answers"]["changes"] == 0;
    let line = lines.iter().find(|line| holds(line)).unwrap();
    let plant = |what: &str, change: &dyn Fn(&mut Value)| {
        let mut wrong = line.clone();
        wrong["problem"]["name"] = what.into();
        change(&mut wrong["answers"]);
        wrong
    };
    let add_one = |value: &mut Value| *value = (value.as_i64().unwrap() + 1).into();
    let drop_one = |lists: &mut Value| {
        let mut lists = lists.as_array_mut().unwrap().iter_mut();
        let long = lists.find(|list| list.as_array().unwrap().len() > 1).unwrap();
        long.as_array_mut().unwrap().pop();
    };
    let planted = [
        plant("possible", &|answers| drop_one(&mut answers["possible"])),
        plant("cheapest", &|answers| add_one(&mut answers["cheapest"])),
        plant("changes", &|answers| add_one(&mut answers["changes"])),
        plant("total", &|answers| add_one(&mut answers["total"])),
        plant("free", &|answers| drop_one(&mut answers["free"])),
        plant("asked", &|answers| {
            let asked = answers["asked"].as_array_mut().unwrap();
            let one = asked.iter_mut().find(|one| !one["total"].is_null());
            add_one(&mut one.unwrap()["total"]);
        }),
        plant("impossible", &|answers| answers["cheapest"] = Value::Null),
        plant("right", &|_| {}),
    ];
    let (said, counts) = compare(&python, "planted.jsonl", &planted);
    assert_eq!(counts["problems"], planted.len());
    let named: Vec<&str> = said.iter().map(|line| line.split(':').next().unwrap()).collect();
    let expected = [
        "possible",
        "cheapest",
        "changes",
        "total",
        "free",
        "asked",
        "impossible",
    ];
    assert_eq!(named, expected, "{said:?}");
}

#[test]
fn the_problems_reach_every_kind_of_answer() {
    let (lines, passed_over) = problems(PROBLEMS);
    let mut met: BTreeMap<&str, usize> = BTreeMap::new();
    for line in &lines {
        let answers = &line["answers"];
        let changes = answers["changes"].as_i64();
        let options = |key: &str| -> usize {
            let lists = answers[key].as_array().unwrap().iter();
            lists.map(|list| list.as_array().unwrap().len()).sum()
        };
        let attributes = line["problem"]["attributes"].as_array().unwrap();
        let all: u64 = attributes
            .iter()
            .map(|one| one["options"].as_u64().unwrap())
            .sum();
        let is_holding = answers["possible"].as_array().unwrap().iter();
        let dead = is_holding
            .flat_map(|list| list.as_array())
            .map(Vec::len)
            .sum::<usize>();
        for (kind, is_met) in [
            ("impossible", changes.is_none()),
            ("holds", changes == Some(0)),
            ("one change", changes == Some(1)),
            ("two changes or more", changes >= Some(2)),
            (
                "an option that can never be had",
                changes.is_some() && (dead as u64) < all,
            ),
            (
                "a negative total",
                answers["cheapest"].as_i64().is_some_and(|total| total < 0),
            ),
            (
                "free options are fewer than possible ones",
                options("free") < options("possible"),
            ),
            ("thirty attributes or more", attributes.len() >= 30),
            ("a thousand nodes or more", line["nodes"].as_u64() >= Some(1_000)),
        ] {
            *met.entry(kind).or_default() += usize::from(is_met);
        }
    }
    eprintln!("{met:?}; {passed_over} passed over");
    assert!(met.values().all(|count| *count >= 20), "{met:?}");
    assert!(passed_over < PROBLEMS / 20, "{passed_over} passed over");
}
