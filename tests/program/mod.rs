//! Runs the built program from the folder of the project, as its users do.

#![allow(dead_code, reason = "each test program uses a part of this")]

use std::fs;
use std::path::Path;
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

/// A text without the milliseconds that compiles took, which differ from run to run.
pub(crate) fn without_times(text: &str) -> String {
    let mut pieces = text.split("compiled in ");
    let mut steady = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        steady.push_str("compiled in ");
        steady.push_str(piece.trim_start_matches(|letter: char| letter.is_ascii_digit()));
    }
    steady
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

pub(crate) fn order(name: &str) -> String {
    format!("tests/fixtures/orders/{name}.toml")
}

/// Runs `quote` on a fixture and expects this exit code; returns the answer.
pub(crate) fn check_quote(name: &str, more: &[&str], code: i32) -> String {
    let order = order(name);
    let arguments: Vec<&str> = ["quote", &order]
        .into_iter()
        .chain(more.iter().copied())
        .collect();
    let ran = run(&arguments);
    assert_eq!(ran.code, Some(code), "{name} {more:?}\n{}\n{}", ran.out, ran.err);
    ran.out
}

/// Says that `text` has these pieces, in this order, however its lines are wrapped.
pub(crate) fn check_says(text: &str, pieces: &[&str]) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut rest = flat.as_str();
    for piece in pieces {
        let at = rest
            .find(piece)
            .unwrap_or_else(|| panic!("no `{piece}` after what came before in\n{text}"));
        rest = &rest[at + piece.len()..];
    }
}

/// The block of one opening.
pub(crate) fn block<'a>(text: &'a str, tag: &str) -> &'a str {
    let head = format!("\n{tag}: ");
    let start = text
        .find(&head)
        .unwrap_or_else(|| panic!("no opening {tag} in\n{text}"));
    let block = &text[start + 1..];
    block
        .find("\n----")
        .or_else(|| block.find("\n===="))
        .map_or(block, |end| &block[..end])
}

/// Copies a folder of the project with all that is in it; the target is made if it is not there.
pub(crate) fn copy_folder(from: &str, to: &Path) {
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join(from);
    let mut waiting = vec![(from, to.to_owned())];
    while let Some((from, to)) = waiting.pop() {
        fs::create_dir_all(&to).expect("a folder to copy into");
        for entry in fs::read_dir(from).expect("a folder to copy") {
            let entry = entry.expect("an entry");
            let target = to.join(entry.file_name());
            if entry.path().is_dir() {
                waiting.push((entry.path(), target));
            } else {
                fs::copy(entry.path(), target).expect("a copied file");
            }
        }
    }
}

/// The demo house with one opening whose readings are a width instead, from which nobody has deducted, and its height.
pub(crate) fn house_with_width(tag: &str, width: &str, height: &str) -> (tempfile::TempDir, String) {
    let order = fs::read_to_string("examples/corner-house/order.toml").expect("the order");
    let at = order.find(&format!("tag = \"{tag}\"")).expect("the opening");
    let line = order[at..].lines().find(|line| line.starts_with("readings = "));
    let size = |size: &str| format!("{{ size = \"{size}\", deducted_by = \"nobody\" }}");
    let measures = format!(
        "measures = {{ opening_width = {}, opening_height = {} }}",
        size(width),
        size(height)
    );
    changed_house(tag, line.expect("readings"), &measures)
}

/// Takes out of a copy of the demo library that sizes end somewhere, so that absurd ones are read.
pub(crate) fn let_sizes_be_absurd(library: &Path) {
    let sizes = library.join("hinged/sizes.toml");
    let text = fs::read_to_string(&sizes).expect("sizes");
    let without = text.replace("most = \"50 ft\"\n", "");
    assert_ne!(text, without);
    fs::write(&sizes, without).expect("sizes without an end");
}

/// The demo house with a change after the tag of one opening.
pub(crate) fn changed_house(tag: &str, before: &str, after: &str) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("examples/corner-house", &folder.path().join("order"));
    copy_folder("examples/library", &folder.path().join("library"));
    let path = folder.path().join("order/order.toml");
    let text = fs::read_to_string(&path).expect("the order");
    let at = text.find(&format!("tag = \"{tag}\"")).expect("the opening");
    assert!(text[at..].contains(before), "{tag} has no `{before}`");
    let changed = text[at..].replacen(before, after, 1);
    fs::write(&path, format!("{}{changed}", &text[..at])).expect("the changed order");
    let path = path.to_str().expect("a path").to_owned();
    (folder, path)
}
