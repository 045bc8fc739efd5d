//! Runs the built program from the folder of the project, as its users do.

use std::process::{Command, Output, Stdio};

/// What came of one run.
pub(crate) struct Ran {
    /// The exit code.
    pub(crate) code: Option<i32>,
    /// What stands on standard output.
    pub(crate) out: String,
    /// What stands on standard error.
    pub(crate) err: String,
}

/// The built program in the folder of the project, with nothing set that changes colours.
pub(crate) fn program() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_astragal"));
    command
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdin(Stdio::null());
    for name in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE", "TERM", "COLUMNS"] {
        command.env_remove(name);
    }
    command
}

/// Runs the program with these arguments.
pub(crate) fn run(arguments: &[&str]) -> Ran {
    let Output {
        status,
        stdout,
        stderr,
    } = program().args(arguments).output().expect("the program starts");
    let text = |bytes| String::from_utf8(bytes).expect("answers are UTF-8");
    Ran {
        code: status.code(),
        out: text(stdout),
        err: text(stderr),
    }
}

/// The answer as JSON.
pub(crate) fn json(arguments: &[&str]) -> serde_json::Value {
    let ran = run(arguments);
    serde_json::from_str(&ran.out).unwrap_or_else(|error| panic!("{error}: {}\n{}", ran.out, ran.err))
}

/// The examples in the help of a command: the arguments of every line that runs the program.
pub(crate) fn help_examples(command: &str) -> Vec<Vec<String>> {
    let help = run(&[command, "--help"]).out;
    let lines = help.lines().filter_map(|line| line.strip_prefix("  astragal "));
    let examples: Vec<Vec<String>> = lines
        .map(|line| line.split_whitespace().map(str::to_owned).collect())
        .collect();
    assert!(!examples.is_empty(), "the help has examples: {help}");
    examples
}
