//! Compares what the trade crate knows with general Python packages: units, terms of IFC, the calendar.
//!
//! Needs an interpreter with `pint`, `ifcopenshell` and `holidays` in `ASTRAGAL_PYTHON`; without it each test says that it was
//! skipped.
#![expect(clippy::unwrap_used, clippy::print_stderr, reason = "these are tests")]

mod calendar;
mod ifc;
mod units;

use std::io::Write;
use std::process::{Command, Stdio};

/// The version line of a script, and its other lines; `None`, and a line that says so, without an interpreter.
fn ask(script: &str, package: &str, arguments: &[&str], input: String) -> Option<(String, Vec<String>)> {
    let Ok(python) = std::env::var("ASTRAGAL_PYTHON") else {
        eprintln!("skipped: {script} needs ASTRAGAL_PYTHON, an interpreter with the package {package}");
        return None;
    };
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/outside");
    let mut child = Command::new(&python)
        .arg(format!("{folder}/{script}"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    // From a second thread, so that neither side waits for the other's full pipe.
    let mut pipe = child.stdin.take().unwrap();
    let writer = std::thread::spawn(move || pipe.write_all(input.as_bytes()));
    let output = child.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    assert!(
        output.status.success(),
        "{python} {script} ended with {}",
        output.status
    );
    let text = String::from_utf8(output.stdout).unwrap();
    let mut lines = text.lines().map(str::to_owned);
    let version = lines.next().unwrap();
    Some((version, lines.collect()))
}
