//! How nodes, bytes and peak memory grow with attributes and rules: the table and the plot of `docs/engine.md`.
//!
//! ```sh
//! cargo run --release --example growth                  # the table
//! cargo run --release --example growth -- --svg FILE    # the plot as well
//! ```
//!
//! Two families of random networks, told in [`family`]: one of bounded width, one whose width grows. Everything printed is a count,
//! so that every run prints the same. *peak* is what the compile had allocated at most, in bytes asked of the allocator, the
//! network not counted. A diagram of more than 200,000 nodes is given up; the engine's own limit is 2,000,000.

mod family;
mod plot;

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use astragal_core::compile;
use astragal_core::limit::Limits;
use clap::Parser;
use peak_alloc::PeakAlloc;

use crate::family::{Family, network};

#[global_allocator]
static ALLOCATED: PeakAlloc = PeakAlloc;

/// LIMIT: a diagram of more nodes is given up.
const NODES_MAX: usize = 200_000;

/// Prints how diagrams grow.
#[derive(Parser)]
#[command(name = "growth")]
struct Arguments {
    /// Where to write the plot.
    #[arg(long)]
    svg: Option<PathBuf>,
}

/// One network, compiled.
pub(crate) struct Point {
    pub(crate) family: Family,
    attributes: usize,
    rules: usize,
    /// Nodes, edges, bytes, peak; `None` where it was given up.
    grown: Option<[usize; 4]>,
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    let points: Vec<Point> = Family::points()
        .into_iter()
        .map(|(family, attributes, rules)| point(family, attributes, rules))
        .collect();
    let written = table(&points, &mut std::io::stdout().lock()).and_then(|()| match &arguments.svg {
        Some(file) => std::fs::write(file, plot::svg(&points)),
        None => Ok(()),
    });
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            anstream::eprintln!("error: {error}");
            ExitCode::from(5)
        }
    }
}

fn point(family: Family, attributes: usize, rules: usize) -> Point {
    let mut network = network(family, attributes, rules);
    let limits = Limits {
        nodes: NODES_MAX,
        ..Limits::default()
    };
    let before = ALLOCATED.current_usage();
    ALLOCATED.reset_peak_usage();
    let diagram = compile(&mut network, 0, &limits);
    let peak = ALLOCATED.peak_usage().saturating_sub(before);
    Point {
        family,
        attributes,
        rules,
        grown: diagram
            .ok()
            .map(|diagram| [diagram.node_count(), diagram.edge_count(), diagram.bytes(), peak]),
    }
}

fn table(points: &[Point], out: &mut impl Write) -> std::io::Result<()> {
    writeln!(
        out,
        "| family | attributes | rules | nodes | edges | bytes | peak |"
    )?;
    writeln!(out, "|---|---:|---:|---:|---:|---:|---:|")?;
    for point in points {
        let cells = match point.grown {
            Some(grown) => grown.map(spaced).join(" | "),
            None => format!("over {} | - | - | -", spaced(NODES_MAX)),
        };
        let name = point.family.name();
        writeln!(
            out,
            "| {name} | {} | {} | {cells} |",
            point.attributes, point.rules
        )?;
    }
    Ok(())
}

/// A number with a comma between thousands.
fn spaced(number: usize) -> String {
    let digits = number.to_string();
    let mut spaced = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            spaced.push(',');
        }
        spaced.push(digit);
    }
    spaced
}
