//! How long the engine takes: compile, race, prepare, all options, the cheapest; counts of nodes and edges beside.
//!
//! ```sh
//! cargo bench --bench engine            # all
//! cargo bench --bench engine -- options # one kind
//! ```
//!
//! First a table of counts, which are the same on every machine. Then divan's table: *fastest* and *median* are what to read on a
//! machine that does other work as well; allocations stand below each time. Instances are those of
//! `crates/core/tests/instances`; `K1` and `L2` are openings of the demo house, with the demo catalogs and their price books.
//! No time is tested here or elsewhere.

#![expect(clippy::unwrap_used, reason = "a bench stops where its input cannot be read")]

#[path = "../examples/instance/answer.rs"]
#[expect(dead_code, reason = "a bench asks fewer questions than the example")]
mod answer;
mod demo;
#[path = "../examples/instance/instance.rs"]
#[expect(dead_code, reason = "a bench asks fewer questions than the example")]
mod instance;
#[path = "../examples/instance/problem.rs"]
mod problem;

use std::io::Write;
use std::path::Path;

use astragal_core::engine::Certainty;
use astragal_core::limit::Limits;
use astragal_core::race::{Race, SEEDS, race};
use divan::{AllocProfiler, Bencher, black_box};

use crate::answer::Asked;
use crate::demo::Demo;
use crate::instance::Instance;

#[global_allocator]
static ALLOCATIONS: AllocProfiler = AllocProfiler::system();

const INSTANCES: [&str; 3] = ["vehicle-medium", "unit", "wide"];
const OPENINGS: [&str; 2] = ["K1", "L2"];

fn main() {
    let mut out = std::io::stdout().lock();
    counts(&mut out).unwrap();
    races(&mut out).unwrap();
    drop(out);
    divan::main();
}

/// What every answer below walks over; `left` are the edges that an opening leaves.
fn counts(out: &mut impl Write) -> std::io::Result<()> {
    writeln!(
        out,
        "{:<16}{:>10}{:>10}{:>10}{:>10}{:>10}{:>10}",
        "", "nodes", "edges", "bytes", "gates", "cells", "left"
    )?;
    for name in INSTANCES {
        let instance = read(name);
        let asked = Asked::compile(&instance, 0).unwrap();
        let diagram = asked.diagram();
        let (nodes, edges, bytes) = (diagram.node_count(), diagram.edge_count(), diagram.bytes());
        writeln!(out, "{name:<16}{nodes:>10}{edges:>10}{bytes:>10}")?;
    }
    for tag in OPENINGS {
        let demo = Demo::read(tag);
        let engine = demo.engine();
        let left = engine.prepare(&demo.setting()).unwrap().edge_count();
        let diagram = engine.diagram();
        let (nodes, edges, bytes) = (diagram.node_count(), diagram.edge_count(), diagram.bytes());
        let (gates, cells) = (engine.gate_count(), engine.cell_count());
        writeln!(
            out,
            "demo {tag:<11}{nodes:>10}{edges:>10}{bytes:>10}{gates:>10}{cells:>10}{left:>10}"
        )?;
    }
    writeln!(out)
}

/// What every seed took in the race.
fn races(out: &mut impl Write) -> std::io::Result<()> {
    let raced = INSTANCES.map(|name| (name.to_owned(), raced(&read(name))));
    let demo = OPENINGS.map(|tag| (format!("demo {tag}"), Demo::read(tag).race()));
    for (name, race) in raced.iter().chain(&demo) {
        let done = race.runs.iter().filter(|run| run.outcome.is_ok()).count();
        writeln!(
            out,
            "race of {name}: seed {} wins in round {}, under {} states; {done} of {} seeds are done",
            race.seed,
            race.rounds,
            race.caps.states,
            race.runs.len()
        )?;
    }
    writeln!(out)
}

fn raced(instance: &Instance) -> Race {
    let seeds: Vec<u64> = SEEDS.collect();
    race(&mut instance.network(), &seeds, &Limits::default())
        .unwrap()
        .0
}

fn read(name: &str) -> Instance {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("crates/core/tests/instances");
    Instance::read(&folder.join(format!("{name}.json"))).unwrap()
}

/// Relations, order and one diagram with one seed.
#[divan::bench(args = INSTANCES, max_time = 10)]
fn compile(bencher: Bencher, name: &str) {
    let instance = read(name);
    bencher.bench_local(|| black_box(Asked::compile(&instance, 0).unwrap()));
}

/// The race of eight seeds, relations included.
#[divan::bench(name = "race", args = INSTANCES, max_time = 20)]
fn race_instance(bencher: Bencher, name: &str) {
    let instance = read(name);
    bencher.bench_local(|| black_box(raced(&instance)));
}

/// All options of all attributes, nothing picked.
#[divan::bench(args = INSTANCES, max_time = 5)]
fn options(bencher: Bencher, name: &str) {
    let instance = read(name);
    let mut asked = Asked::compile(&instance, 0).unwrap();
    bencher.bench_local(|| black_box(asked.ask(&[])));
}

/// The least total alone, nothing picked.
#[divan::bench(args = INSTANCES, max_time = 5)]
fn cheapest(bencher: Bencher, name: &str) {
    let instance = read(name);
    let mut asked = Asked::compile(&instance, 0).unwrap();
    bencher.bench_local(|| black_box(asked.least()));
}

/// Rules of the catalog and the policy ground, order, one diagram.
#[divan::bench(args = OPENINGS, max_time = 5)]
fn compile_demo(bencher: Bencher, tag: &str) {
    let demo = Demo::read(tag);
    bencher.bench_local(|| black_box(demo.engine()));
}

/// The race of eight seeds, rules of the catalog and the policy ground.
#[divan::bench(args = OPENINGS, max_time = 20)]
fn race_demo(bencher: Bencher, tag: &str) {
    let demo = Demo::read(tag);
    bencher.bench_local(|| black_box(demo.race()));
}

/// All gates and cells for the measures, facts, book, policy and day, from cold.
#[divan::bench(args = OPENINGS, max_time = 5)]
fn prepare_demo(bencher: Bencher, tag: &str) {
    let demo = Demo::read(tag);
    let engine = demo.engine();
    let setting = demo.setting();
    bencher.bench_local(|| black_box(engine.prepare(&setting).unwrap()));
}

/// All options, what is not ruled out and what is certain, nothing picked: two questions.
#[divan::bench(args = OPENINGS, max_time = 5)]
fn options_demo(bencher: Bencher, tag: &str) {
    let demo = Demo::read(tag);
    let engine = demo.engine();
    let prepared = engine.prepare(&demo.setting()).unwrap();
    bencher.bench_local(|| black_box(engine.options(&prepared, &[])));
}

/// The least total that is certain.
#[divan::bench(args = OPENINGS, max_time = 5)]
fn cheapest_demo(bencher: Bencher, tag: &str) {
    let demo = Demo::read(tag);
    let engine = demo.engine();
    let prepared = engine.prepare(&demo.setting()).unwrap();
    bencher.bench_local(|| black_box(engine.cheapest(&prepared, Certainty::Certain)));
}
