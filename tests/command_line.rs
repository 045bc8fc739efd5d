//! How the program ends and what stands on which stream: exit codes, findings, colours, closed pipes, wrong usage.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use std::path::Path;

use program::{check_quote, check_says, help_examples, order, program, run};
use serde_json::Value;

/// One opening holds, one cannot be decided, three do not hold.
#[test]
fn the_worst_opening_decides_how_the_program_ends() {
    let text = check_quote("broken", &[], 4);
    check_says(
        &text,
        &[
            "3 of 6 openings do not hold: L2, L5, L6",
            "1 of 6 openings cannot be decided yet: L4",
            "2 of 6 openings hold: L1, L3",
        ],
    );
}

#[test]
fn an_order_that_cannot_be_read_is_not_quoted() {
    let name = order("unreadable");
    let ran = run(&["quote", &name]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(5), ""));
    check_says(&ran.err, &["30,5"]);
    check_says(&ran.err, &["`gray`"]);
    let last = ran.err.lines().last().unwrap();
    assert_eq!(last, "2 errors; nothing was quoted", "{}", ran.err);
}

#[test]
fn findings_are_there_for_a_program_too() {
    let name = order("unreadable");
    let ran = run(&["quote", &name, "--format", "json"]);
    assert_eq!(ran.code, Some(5));
    let answer: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(answer["format"], 1);
    let findings = answer["findings"].as_array().unwrap();
    assert_eq!(findings.len(), 2);
    let source = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(&name)).unwrap();
    for finding in findings {
        let number = |key: &str| usize::try_from(finding[key].as_u64().unwrap()).unwrap();
        let line: Vec<char> = source.lines().nth(number("line") - 1).unwrap().chars().collect();
        let marked: String = line[number("column") - 1..number("end_column") - 1]
            .iter()
            .collect();
        assert!(
            marked.contains("30,5") || marked.contains("gray"),
            "`{marked}` in {finding}"
        );
        assert_eq!(finding["severity"], "error");
    }
}

#[test]
fn a_file_that_is_not_there_is_an_answer_and_no_panic() {
    for missing in ["no/such/order.toml", "tests/fixtures", ""] {
        let ran = run(&["quote", missing]);
        assert_eq!(ran.out, "");
        assert!(!ran.err.contains("panicked"), "{}", ran.err);
        assert!(matches!(ran.code, Some(5 | 2)), "`{missing}` {:?}", ran.code);
    }
    assert_eq!(run(&["quote", "no/such/order.toml"]).code, Some(5));
}

#[test]
fn an_argument_that_names_nothing_is_wrong_usage_and_says_what_there_is() {
    let name = order("holds");
    for (arguments, says) in [
        (["--why", "Z9"], "openings are `K1`, `K2`"),
        (["--without", "nobody"], "`code`, `dealer`, `plant`, `programme`"),
        (["--date", "25.11.2026"], "2026-11-25"),
        (["--format", "xml"], "json"),
    ] {
        let ran = run(&["quote", &name, arguments[0], arguments[1]]);
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{arguments:?}");
        assert!(ran.err.contains(says), "{}", ran.err);
    }
    assert_eq!(run(&["quote"]).code, Some(2));
}

#[test]
fn the_same_question_gets_the_same_bytes() {
    let name = order("broken");
    for format in ["text", "json"] {
        let answers: Vec<String> = (0..3)
            .map(|_| run(&["quote", &name, "--format", format]).out)
            .collect();
        assert!(answers.windows(2).all(|pair| pair[0] == pair[1]));
    }
}

#[test]
fn colours_are_for_terminals_and_never_where_no_color_is_set() {
    let name = order("broken");
    let with = |names: &[&str]| {
        let mut command = program();
        names.iter().for_each(|name| {
            command.env(name, "1");
        });
        let output = command.args(["quote", &name]).output().unwrap();
        String::from_utf8(output.stdout).unwrap()
    };
    assert!(!with(&[]).contains('\u{1b}'), "nobody sees colours in a pipe");
    assert!(with(&["CLICOLOR_FORCE"]).contains('\u{1b}'));
    assert!(!with(&["CLICOLOR_FORCE", "NO_COLOR"]).contains('\u{1b}'));
}

#[test]
fn a_reader_that_stops_listening_is_no_failure() {
    let name = order("broken");
    for format in ["text", "json"] {
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let output = program()
            .args(["quote", &name, "--format", format])
            .stdout(writer)
            .output()
            .unwrap();
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(4), "{said}");
        assert_eq!(said, "");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn an_answer_that_cannot_be_written_is_a_failure() {
    let full = std::fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let output = program()
        .args(["quote", &order("holds")])
        .stdout(full)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(
        String::from_utf8(output.stderr)
            .unwrap()
            .contains("could not be written")
    );
}

#[test]
fn the_examples_of_the_help_run() {
    for example in help_examples("quote") {
        let arguments: Vec<&str> = example.iter().map(String::as_str).collect();
        let ran = run(&arguments);
        assert!(
            matches!(ran.code, Some(0 | 3 | 4)),
            "{arguments:?}: {:?}\n{}",
            ran.code,
            ran.err
        );
    }
}

#[test]
fn the_help_says_what_the_exit_codes_mean() {
    for arguments in [
        &["--help"][..],
        &["quote", "--help"],
        &["check", "--help"],
        &["print", "--help"],
    ] {
        let ran = run(arguments);
        assert_eq!(ran.code, Some(0));
        for code in ["0", "1", "2", "3", "4", "5"] {
            let says = ran
                .out
                .lines()
                .any(|line| line.starts_with(&format!("  {code}  ")));
            assert!(says, "{arguments:?} says what {code} means");
        }
    }
}
