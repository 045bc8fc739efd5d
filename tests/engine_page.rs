//! The pictures and the table of `docs/engine.md` are what the examples `drawing` and `growth` make.

#![expect(clippy::unwrap_used, reason = "these are tests")]

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// Builds an example and runs it; optimised, since growth compiles hundreds of diagrams.
fn run(name: &str, arguments: &[&str]) -> Output {
    let program = Path::new(env!("CARGO_BIN_EXE_astragal"));
    let mut build = Command::new(env!("CARGO"));
    build.args(["build", "--quiet", "--release", "--workspace", "--example", name]);
    let status = build.current_dir(env!("CARGO_MANIFEST_DIR")).status().unwrap();
    assert!(status.success(), "the example builds");
    let file = format!("{name}{}", std::env::consts::EXE_SUFFIX);
    let target = program.parent().and_then(Path::parent).unwrap();
    let example = target.join("release").join("examples").join(file);
    let output = Command::new(example).args(arguments).output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{said}");
    output
}

fn page(name: &str) -> String {
    let file: PathBuf = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs").join(name);
    std::fs::read_to_string(file).unwrap()
}

#[test]
fn the_worked_example_is_drawn_as_the_engine_answers_it() {
    let drawn = run("drawing", &[]);
    assert_eq!(
        String::from_utf8(drawn.stdout).unwrap(),
        page("engine-diagram.svg")
    );
}

#[test]
fn the_table_and_the_plot_of_growth_are_those_that_the_command_prints() {
    let plot = Path::new(env!("CARGO_TARGET_TMPDIR")).join("engine-growth.svg");
    let table = run("growth", &["--svg", plot.to_str().unwrap()]);
    let table = String::from_utf8(table.stdout).unwrap();
    // What a compile allocates at most depends on the compiler; everything else does not.
    let without_peak = |text: &str| -> Vec<String> {
        let rows = text
            .lines()
            .filter(|line| line.starts_with("| line |") || line.starts_with("| grid |"));
        rows.map(|row| row.rsplitn(3, '|').last().unwrap().to_owned())
            .collect()
    };
    assert!(without_peak(&table).len() > 20, "{table}");
    assert_eq!(without_peak(&table), without_peak(&page("engine.md")));
    assert_eq!(std::fs::read_to_string(plot).unwrap(), page("engine-growth.svg"));
}
