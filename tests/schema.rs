//! `astragal schema`: one schema to standard output, several into a folder, and what wrong usage says.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use program::{help_examples, program, run};
use serde_json::Value;

const KINDS: [&str; 5] = ["library", "catalog", "book", "policy", "order"];

#[test]
fn one_schema_goes_to_standard_output_and_nothing_else_does() {
    for kind in KINDS {
        let ran = run(&["schema", kind]);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{kind}");
        let schema: Value = serde_json::from_str(&ran.out).unwrap();
        assert!(schema["properties"][kind].is_object(), "{kind}");
        assert!(ran.out.ends_with("}\n"));
    }
}

#[test]
fn a_folder_gets_all_schemas_and_each_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("new/schemas");
    let ran = run(&["schema", "--out", out.to_str().unwrap()]);
    assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""));
    let said: Vec<&str> = ran.out.lines().collect();
    let wrote = |kind| {
        let path = out.join(format!("{kind}.schema.json"));
        let written = std::fs::read_to_string(&path).unwrap();
        assert_eq!(written, run(&["schema", kind]).out, "{kind}");
        format!("wrote {}", path.display())
    };
    assert_eq!(said, KINDS.map(wrote));
}

#[test]
fn a_folder_gets_the_one_schema_that_is_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let ran = run(&["schema", "book", "--out", folder.path().to_str().unwrap()]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let names = std::fs::read_dir(folder.path()).unwrap();
    let names: Vec<_> = names.map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names, ["book.schema.json"]);
}

#[test]
fn wrong_usage_says_what_to_write() {
    for (arguments, says) in [
        (&["schema"][..], "astragal schema --out schemas"),
        (&["schema", "window"], "catalog"),
    ] {
        let ran = run(arguments);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{arguments:?}");
        assert!(ran.err.contains(says), "{}", ran.err);
    }
}

#[test]
fn a_folder_that_cannot_be_made_is_a_failure() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    std::fs::write(&file, "").unwrap();
    let ran = run(&["schema", "--out", file.join("schemas").to_str().unwrap()]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(1), ""));
    assert!(ran.err.contains("could not be made"), "{}", ran.err);
}

#[test]
fn the_examples_of_the_help_run() {
    let folder = tempfile::tempdir().unwrap();
    for example in help_examples("schema") {
        let output = program().current_dir(folder.path()).args(&example).output();
        let output = output.unwrap();
        assert_eq!(output.status.code(), Some(0), "{example:?}");
        assert!(!output.stdout.is_empty(), "{example:?}");
    }
    assert!(folder.path().join("schemas/catalog.schema.json").is_file());
}
