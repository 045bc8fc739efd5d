//! Draws the worked example of `docs/engine.md`, and refuses to where the engine says otherwise.
//!
//! ```sh
//! cargo run --example drawing > docs/engine-diagram.svg
//! ```
//!
//! The drawn graph is written down in [`drawn`], by hand. Before anything is drawn the engine compiles the same network, and must
//! have as many nodes and edges, the same tree, as many configurations, and for every option the same changes and total
//! as two naive walks over the drawn graph, with the gate open and with it closed, with picks and without. Exit code 0, 1 where
//! something differs.

mod compare;
mod drawn;
mod svg;
mod walk;

use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    if let Err(difference) = compare::compare() {
        anstream::eprintln!("error: the engine says otherwise: {difference}");
        return ExitCode::FAILURE;
    }
    match std::io::stdout().write_all(svg::svg().as_bytes()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}
