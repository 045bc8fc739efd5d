//! Runs the conformance data of the Common Expression Language through astragal's expressions.
//!
//! Each test is written into an invented catalog, read, typed and judged the way catalogs are, and is then passed,
//! departing by a named departure, or outside the subset for a reason that the reader gives. A test that is none of these
//! fails, and so does a count that is another than the lists say. `docs/expressions.md` carries the same lists.
//!
//! Source: npm `@bufbuild/cel-spec`; see `NOTICE.txt`.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a fault ends the test"
)]

mod answer;
mod data;
mod departures;
mod outside;
mod page;
mod verdict;

use std::collections::BTreeMap;

use astragal_catalog::syntax::{ExprKind, Literal, parse_expression};

use answer::{Answer, answer};
use data::{Data, Expected, Test};
use departures::DEPARTURES;
use outside::OUTSIDE;
use verdict::{Verdict, verdict};

/// The tests that pass, and how many of them because an error of CEL is a refusal here.
const PASSED: usize = 126;
const PASSED_REFUSING: usize = 23;
/// The texts among all tests that are one text literal which our syntax reads.
const TEXTS_READ: usize = 19;

/// A test, what astragal answers to it, and what that shows.
struct Row<'d> {
    test: &'d Test,
    answer: Answer,
    verdict: Verdict,
}

fn rows(data: &Data) -> Vec<Row<'_>> {
    let row = |test| {
        let answer = answer(test);
        let verdict = verdict(test, &answer);
        Row {
            test,
            answer,
            verdict,
        }
    };
    data.tests.iter().map(row).collect()
}

fn counts(rows: &[Row<'_>]) -> BTreeMap<&'static str, usize> {
    let mut counts = BTreeMap::new();
    for row in rows {
        let name = match &row.verdict {
            Verdict::Passed => "passed",
            Verdict::PassedRefusing => "passed by refusing",
            Verdict::Departing(name) | Verdict::Outside(name) => name,
            // The test has ended before.
            Verdict::Fault(_) => "fault",
        };
        *counts.entry(name).or_insert(0) += 1;
    }
    counts
}

#[test]
fn every_test_is_passed_departing_by_name_or_outside_for_a_listed_reason() {
    let data = data::read();
    let rows = rows(&data);
    let faults: Vec<String> = rows
        .iter()
        .filter_map(|row| match &row.verdict {
            Verdict::Fault(fault) => Some(format!("{} `{}`: {fault}", row.test.name, row.test.expression)),
            _ => None,
        })
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");

    let mut listed = BTreeMap::from([("passed", PASSED), ("passed by refusing", PASSED_REFUSING)]);
    listed.extend(
        DEPARTURES
            .iter()
            .map(|departure| (departure.name, departure.tests)),
    );
    listed.extend(OUTSIDE.iter().map(|group| (group.name, group.tests)));
    listed.retain(|_, tests| *tests > 0);
    assert_eq!(counts(&rows), listed);

    let departing: usize = DEPARTURES.iter().map(|departure| departure.tests).sum();
    let outside: usize = OUTSIDE.iter().map(|group| group.tests).sum();
    let passed = PASSED + PASSED_REFUSING;
    assert_eq!(passed + departing + outside, data.tests.len());
    let named = DEPARTURES.iter().filter(|departure| departure.tests > 0).count();
    println!(
        "CEL conformance data {}: {passed} passed ({PASSED_REFUSING} of them errors there, refused here), \
         {departing} departing ({named} named departures), {outside} outside; {} not extracted",
        data.version, data.left_out
    );
}

#[test]
fn every_departure_is_shown_by_an_example() {
    let data = data::read();
    let rows = rows(&data);
    for departure in &DEPARTURES {
        let departs = |row: &&Row<'_>| {
            row.test.expression == departure.example && row.verdict == Verdict::Departing(departure.name)
        };
        let said = match rows.iter().find(departs) {
            Some(row) => {
                assert_eq!(row.test.expected.shown(), departure.cel, "{}", departure.name);
                row.answer.shown()
            }
            None => {
                assert_eq!(
                    departure.tests, 0,
                    "`{}` is no test of the data",
                    departure.example
                );
                answer(&Test::bare(departure.example)).shown()
            }
        };
        assert_eq!(said, departure.ours, "{}", departure.name);
    }
}

#[test]
fn every_text_that_is_read_holds_what_cel_says() {
    let data = data::read();
    let mut read = 0;
    for test in &data.tests {
        let (Ok(tree), Expected::Text(expected)) = (parse_expression(&test.expression), &test.expected)
        else {
            continue;
        };
        if let ExprKind::Literal(Literal::Text(text)) = &tree.kind {
            assert_eq!(text, expected, "{}", test.name);
            read += 1;
        }
    }
    assert_eq!(read, TEXTS_READ);
}
