//! Compiles an instance with a known answer, and answers selections from the diagram.
//!
//! ```sh
//! cargo run --release --example instance -- FILE.json [--selections FILE.jsonl] [--seed N] [--cheapest]
//! ```
//!
//! Prints one JSON object: `name, attributes, compile_ms, nodes, edges, count, cheapest, options_us`. With selections, each
//! line an object from attribute to option index, one object a line: `holds, cheapest, free_options, microseconds`.
//! With `--cheapest` one more object comes second: `cheapest, cheapest_us`, the median of the least total alone.
//! The format of an instance is told in `crates/core/tests/instances/README.md`.
//!
//! `compile_ms` is relations, order and one diagram with one seed; `options_us` is the median of all options of all attributes
//! with nothing picked. Prices are in the file's own unit. An option is free when no pick but its attribute's own must change.
//! Exit code 0, 2 for a wrong command line, 5 for a file that cannot be used.

mod answer;
mod instance;
mod problem;

use std::process::ExitCode;

use clap::Parser;

/// Compiles an instance with a known answer, and answers selections from the diagram.
#[derive(Parser)]
#[command(name = "instance")]
struct Arguments {
    /// The instance, a JSON file.
    file: std::path::PathBuf,
    /// Selections to answer, one JSON object a line.
    #[arg(long)]
    selections: Option<std::path::PathBuf>,
    /// The seed that breaks ties of the order of attributes.
    #[arg(long, default_value_t = 0)]
    seed: u64,
    /// Ask for the least total alone, and say how long it takes.
    #[arg(long)]
    cheapest: bool,
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    match run(&arguments, &mut std::io::stdout().lock()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            anstream::eprintln!("error: {problem}");
            ExitCode::from(5)
        }
    }
}

fn run(arguments: &Arguments, out: &mut impl std::io::Write) -> Result<(), problem::Problem> {
    let instance = instance::Instance::read(&arguments.file)?;
    let mut asked = answer::Asked::compile(&instance, arguments.seed)?;
    writeln!(out, "{}", asked.summary()?)?;
    if arguments.cheapest {
        writeln!(out, "{}", asked.cheapest())?;
    }
    let Some(selections) = &arguments.selections else {
        return Ok(());
    };
    let text = problem::read(selections)?;
    for (line, text) in text.lines().enumerate() {
        if text.trim().is_empty() {
            continue;
        }
        let place = format!("{}:{}", selections.display(), line + 1);
        let picks = instance.selection(text, &place)?;
        writeln!(out, "{}", asked.selection(&picks))?;
    }
    Ok(())
}
