//! The lists of this test as `docs/expressions.md` carries them, and the page's own examples.
//!
//! Always holds: the page has the rows that the lists make, in their order, and no others; an example gives what stands
//! beside it.

use std::fmt::Write as _;

use crate::answer::{Answer, answer};
use crate::data::Test;
use crate::departures::{DEPARTURES, Departure};
use crate::outside::OUTSIDE;

const PAGE: &str = include_str!("../../../../docs/expressions.md");

/// The lines of the page between the markers of a list.
fn listed(list: &str) -> &'static str {
    let start = format!("<!-- {list} -->\n");
    let (_, after) = PAGE.split_once(&start).unwrap();
    let (inside, _) = after.split_once("<!-- end -->").unwrap();
    inside
}

/// A cell of a table: a bar would end it.
fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

/// The rows of a list under its head, cell by cell.
fn rows(list: &str) -> Vec<Vec<String>> {
    let rows = listed(list).lines().skip(2);
    rows.map(|row| {
        let row = row.replace("\\|", "\u{1}");
        let cells = row.trim_matches('|').split('|');
        cells.map(|cell| cell.trim().replace('\u{1}', "|")).collect()
    })
    .collect()
}

fn departures() -> String {
    let mut table =
        "| departure | example | CEL says | astragal says | why | tests |\n|---|---|---|---|---|---|\n"
            .to_owned();
    for departure in &DEPARTURES {
        let Departure {
            name,
            example,
            cel,
            ours,
            why,
            tests,
        } = departure;
        let tests = if *tests == 0 {
            String::new()
        } else {
            tests.to_string()
        };
        writeln!(
            table,
            "| {name} | `{}` | {cel} | {ours} | {why} | {tests} |",
            cell(example)
        )
        .unwrap();
    }
    table
}

#[test]
fn the_page_lists_the_departures() {
    assert_eq!(listed("departures"), departures());
}

#[test]
fn the_page_lists_what_is_outside() {
    let mut table = "| construct | tests |\n|---|---|\n".to_owned();
    for group in &OUTSIDE {
        writeln!(table, "| {} | {} |", cell(group.name), group.tests).unwrap();
    }
    assert_eq!(listed("outside"), table);
}

#[test]
fn every_example_of_the_page_gives_what_stands_beside_it() {
    let mut evaluated = 0;
    for row in rows("operators").into_iter().chain(rows("functions")) {
        let [_, _, example, gives] = row.as_slice() else {
            unreachable!("{row:?}")
        };
        if !gives.is_empty() {
            assert_eq!(
                answer(&Test::bare(example.trim_matches('`'))).shown(),
                *gives,
                "{example}"
            );
            evaluated += 1;
        }
    }
    assert_eq!(evaluated, 32);
}

#[test]
fn the_page_lists_every_function() {
    let Answer::Refused(refusals) = answer(&Test::bare("no_such_function_anywhere(1)")) else {
        unreachable!("there is no such function")
    };
    let names: Vec<String> = rows("functions")
        .into_iter()
        .map(|row| row[0].replace('`', ""))
        .collect();
    assert_eq!(refusals[0].help, format!("functions are {}", names.join(", ")));
}
