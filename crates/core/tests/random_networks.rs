//! A hundred thousand random networks, three questions each, against looking at every tuple; and what they reach.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::cast_possible_truncation,
    reason = "these are tests"
)]

use std::collections::BTreeMap;

use astragal_core::compile;
use astragal_core::limit::Limits;
use astragal_core::pass::Scratch;
use astragal_oracle::chance::Chance;

use crate::nets::random::{Shape, net, question};
use crate::nets::{Answer, Net, Question, by_diagram};

mod nets;

const NETWORKS: u64 = 100_000;
const QUESTIONS: u64 = 3;

/// How often each thing was met.
type Met = BTreeMap<&'static str, u64>;

#[test]
fn a_hundred_thousand_networks_are_answered_as_tuple_by_tuple() {
    // Two halves at once: nothing is shared but the counts.
    let halves = [0..NETWORKS / 2, NETWORKS / 2..NETWORKS];
    let met = std::thread::scope(|scope| {
        let halves = halves.map(|seeds| scope.spawn(|| compared(seeds)));
        let mut met = Met::new();
        for half in halves {
            for (what, count) in half.join().unwrap() {
                *met.entry(what).or_default() += count;
            }
        }
        met
    });
    println!("{met:?}");
    for (what, least) in [
        ("networks", NETWORKS),
        ("questions", NETWORKS * QUESTIONS),
        ("unsatisfiable", 10_000),
        ("unique", 3_000),
        ("both senses of a condition", 10_000),
        ("a total below zero", 10_000),
        ("two changes or more for the whole", 4_000),
        ("two changes or more for an option", 15_000),
        ("equally good", 10_000),
        ("asked by a gate", 5_000),
        ("six side by side, some closed", 5_000),
        ("five closed at once", 300),
        ("pinned", 5_000),
        ("hidden", 5_000),
    ] {
        assert!(met.get(what) >= Some(&least), "{what}: {met:?}");
    }
}

fn compared(seeds: std::ops::Range<u64>) -> Met {
    let mut met = Met::new();
    let mut scratch = Scratch::default();
    for seed in seeds {
        let mut chance = Chance::new(seed);
        let (shape, net) = net(&mut chance);
        let diagram = compile(&mut net.network(), seed, &Limits::default()).unwrap();
        *met.entry("networks").or_default() += 1;
        for number in 0..QUESTIONS {
            let question = question(&mut chance, &net);
            let expected = net.by_tuples(&question);
            let answered = by_diagram(&diagram, &question, &mut scratch);
            assert_eq!(
                answered, expected,
                "seed {seed}, question {number}: {question:?} about {net:?}"
            );
            census(shape, &net, &question, &expected, &mut met);
        }
    }
    met
}

/// Counts what a question reaches.
fn census(shape: Shape, net: &Net, question: &Question, answer: &Answer, met: &mut Met) {
    let mut meet = |what, is_met: bool| *met.entry(what).or_default() += u64::from(is_met);
    meet("questions", true);
    meet("unsatisfiable", answer.count == 0);
    meet("unique", answer.count == 1);
    meet("pinned", question.picks.iter().any(|(_, _, pinned)| *pinned));
    meet("hidden", !question.hidden.is_empty());
    meet(
        "a total below zero",
        answer.least.is_some_and(|(_, cents)| cents < 0),
    );
    meet(
        "two changes or more for the whole",
        answer.least.is_some_and(|(changes, _)| changes >= 2),
    );
    let options = || answer.options.iter().flatten().flatten();
    meet(
        "two changes or more for an option",
        options().any(|(changes, _)| *changes >= 2),
    );
    let weighed = net.weighed(question);
    let best = weighed.iter().filter(|(_, weight)| Some(*weight) == answer.least);
    meet("equally good", best.count() > 1);
    let gates = || {
        let tags = net
            .tables
            .iter()
            .flat_map(|table| table.rows.iter().filter_map(|(_, tag)| tag.as_ref()));
        tags.flat_map(|tag| &tag.gates)
    };
    meet(
        "both senses of a condition",
        gates().any(|gate| gate % 2 == 0 && gates().any(|other| *other == gate + 1)),
    );
    meet("asked by a gate", shape == Shape::Asked && answer.count > 0);
    if matches!(shape, Shape::Star | Shape::Row) {
        let closed = most_closed(shape, net, question);
        meet("six side by side, some closed", closed >= Some(1));
        meet("five closed at once", closed >= Some(5));
    }
}

/// How many of at least six that hang side by side are closed by gates alone, at most, for a value of the hub.
///
/// All of them can be had as far as the rules go, so that a diagram has to keep them; and not all are closed.
fn most_closed(shape: Shape, net: &Net, question: &Question) -> Option<usize> {
    let leaves: Vec<usize> = (usize::from(shape == Shape::Star)..net.sizes.len()).collect();
    if leaves.len() < 6 {
        return None;
    }
    let hub = if shape == Shape::Star { net.sizes[0] } else { 1 };
    let closed = |value: usize| {
        let mut closed = 0;
        for leaf in &leaves {
            let table = net.tables.iter().find(|table| table.scope.contains(leaf))?;
            let mut tuple = vec![0; net.sizes.len()];
            tuple[0] = value;
            let tags = (0..net.sizes[*leaf]).filter_map(|option| {
                tuple[*leaf] = option;
                table.says(&tuple)
            });
            let costs: Vec<Option<i64>> = tags.map(|tag| question.cost(tag)).collect();
            if costs.is_empty() {
                return None;
            }
            closed += usize::from(costs.iter().all(Option::is_none));
        }
        (closed < leaves.len()).then_some(closed)
    };
    (0..hub).filter_map(closed).max()
}
