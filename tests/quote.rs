//! `astragal quote` on small orders and on the demo house: what is said, where, and how the program ends.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::expect_used,
    reason = "these are tests"
)]

mod program;

use std::path::Path;

use expect_test::expect_file;
use program::{help_examples, json, program, run};
use serde_json::Value;

fn order(name: &str) -> String {
    format!("tests/fixtures/orders/{name}.toml")
}

/// Runs `quote` on a fixture and expects this exit code; returns the answer.
fn check_quote(name: &str, more: &[&str], code: i32) -> String {
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
fn check_says(text: &str, pieces: &[&str]) {
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
fn block<'a>(text: &'a str, tag: &str) -> &'a str {
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

#[test]
fn every_fixture_reads_as_its_golden_file_says() {
    for (name, code) in [("holds", 0), ("undecided", 3), ("broken", 4), ("retired", 0)] {
        let text = check_quote(name, &[], code);
        let golden = format!(
            "{}/tests/fixtures/orders/{name}.quote.txt",
            env!("CARGO_MANIFEST_DIR")
        );
        expect_file![golden].assert_eq(&text);
    }
}

#[test]
fn no_line_is_wider_than_a_page_and_none_ends_in_spaces() {
    for name in ["holds", "undecided", "broken"] {
        let order = order(name);
        for line in run(&["quote", &order, "--why", first_tag(name)]).out.lines() {
            assert!(line.chars().count() <= 100 && line == line.trim_end(), "`{line}`");
        }
    }
}

fn first_tag(name: &str) -> &'static str {
    match name {
        "holds" => "K1",
        "undecided" => "B1",
        _ => "L1",
    }
}

#[test]
fn an_order_that_holds_shows_what_was_ordered_and_what_it_costs() {
    let text = check_quote("holds", &[], 0);
    check_says(
        &text,
        &[
            "The house where all holds",
            "Order holds, judged as of 2026-11-25, prices in USD",
        ],
    );
    check_says(
        block(&text, "K1"),
        &[
            "K1: Kitchen, Ground floor, face: Front quantity 2",
            "Small windows holds",
            "Opening width 30 1/2 in, nobody has deducted",
            "Opening height 48 1/2 in, the dealer has deducted",
            "Unit width 30 in",
            "you chose Hinge side: Left standard Operation: Casement",
            "you chose Exterior colour: Grey",
            "Note to the plant The crank must clear the tap.",
        ],
    );
}

/// 200.00 by the grid, 25 % marked up: 250.00; 10.5 % of that is 26.25; a screen 40.00 and 25 %: 50.00; freight 12.00.
#[test]
fn prices_are_worked_out_line_by_line_and_multiplied_by_the_quantity() {
    let text = check_quote("holds", &["--why", "K1"], 0);
    check_says(
        block(&text, "K1"),
        &[
            "Unit standard 250.00",
            "Dark exterior upcharge 26.25",
            "Screen standard 50.00",
            "included at 0.00: Operation: Casement; Hinge side: Left; Interior colour: White",
            "Freight share 12.00",
            "Total of one unit 338.25 USD",
            "Times 2 676.50 USD",
            "Why this price",
            "Unit width 30 in lies in the bracket over 24 in up to 30 in",
            "Unit height 48 in lies in the bracket over 0 in up to 48 in",
            "the price grid says 200.00",
            "plus a mark-up of 25 %",
            "10.5 % of Unit at 250.00 is 26.25",
        ],
    );
    check_says(&text, &["Total before tax and order charges: 676.50 USD"]);
    assert!(!check_quote("holds", &[], 0).contains("Why this price"));
}

#[test]
fn an_opening_that_is_not_included_is_shown_and_does_not_count() {
    let text = check_quote("holds", &[], 0);
    check_says(
        block(&text, "K2"),
        &["does not hold", "not included in the order; an alternate to K1"],
    );
    check_says(&text, &["1 of 1 openings holds: K1", "Not included: K2"]);
}

#[test]
fn what_the_plant_determines_is_not_shown_to_a_person_and_is_there_for_a_program() {
    let name = order("holds");
    assert!(!check_quote("holds", &[], 0).contains("Glass thickness"));
    let answer = json(&["quote", &name, "--format", "json"]);
    let choices = answer["openings"][0]["unit"]["choices"].as_array().unwrap();
    let plant = choices
        .iter()
        .find(|choice| choice["audience"] == "plant")
        .unwrap();
    assert_eq!(
        (&plant["attribute"]["id"], &plant["option"]["id"]),
        (&"glass_thickness".into(), &"single".into())
    );
}

#[test]
fn what_cannot_be_decided_says_what_to_ask_measure_or_choose() {
    let text = check_quote("undecided", &[], 3);
    check_says(
        block(&text, "B1"),
        &[
            "cannot be decided yet",
            "Waits for Serves as escape.",
            "Rule escape-area, authority: code; basis: IRC 2021 R310.2.1",
            "Find out Serves as escape: yes or no",
            "shown because Year built is not known",
        ],
    );
    check_says(
        block(&text, "B2"),
        &[
            "Unit width not known",
            "the total waits for Opening width",
            "Measure Opening width",
            "Total of one unit not known",
        ],
    );
    check_says(
        block(&text, "B3"),
        &["Still to choose", "Hinge side: Left or Right"],
    );
    check_says(
        &text,
        &[
            "The total is incomplete: no total is known for B2.",
            "The other openings, before tax and order charges: 561.50 USD",
            "3 of 3 openings cannot be decided yet: B1, B2, B3",
        ],
    );
    assert!(
        !text.contains("Total before tax"),
        "an incomplete total is not called the total"
    );
}

#[test]
fn what_does_not_hold_says_which_rule_in_its_own_words_and_what_it_reads() {
    let text = check_quote("broken", &[], 4);
    check_says(
        block(&text, "L1"),
        &[
            "A unit that does not open has no screen.",
            "Rule no-screen-on-fixed, authority: plant",
            "The standard Full screen (Screen) does not go with your Fixed (Operation).",
            "It reads Operation: Fixed (you chose); Screen: Full screen",
        ],
    );
    check_says(
        block(&text, "L2"),
        &[
            "An escape opening has 5.7 sq ft clear; this one has 5 sq ft.",
            "authority: code; basis: IRC 2021 R310.2.1",
            "It reads Serves as escape: yes; Clear opening: 5 sq ft",
            "from Unit width: 24 in; Unit height: 40 in; Opening width: 24 1/2 in",
        ],
    );
    check_says(
        block(&text, "L5"),
        &["Clear pine inside is not made with Grey outside."],
    );
    assert!(
        !block(&text, "L5").contains("The standard"),
        "two picks are in each other's way, no standard is"
    );
}

#[test]
fn a_waived_rule_names_the_waiver() {
    let text = check_quote("broken", &[], 4);
    check_says(
        block(&text, "L3"),
        &[
            "holds",
            "Waived",
            "A casement is at most 36 in wide; this one is 39 1/2 in.",
            "Waived by W-118, from 2026-11-01, without end.",
        ],
    );
}

/// One opening holds, one cannot be decided, three do not hold.
#[test]
fn the_worst_opening_decides_how_the_program_ends() {
    let text = check_quote("broken", &[], 4);
    check_says(
        &text,
        &[
            "3 of 5 openings do not hold: L1, L2, L5",
            "1 of 5 openings cannot be decided yet: L4",
            "1 of 5 openings holds: L3",
        ],
    );
}

#[test]
fn rules_of_an_authority_that_was_left_out_are_said_not_to_be_applied() {
    let text = check_quote("undecided", &["--without", "code"], 3);
    check_says(
        block(&text, "B1"),
        &[
            "Small windows holds",
            "Not applied: would not hold",
            "Rule escape-area",
        ],
    );
    check_says(&text, &["The rules of `code` were not applied."]);
    assert!(!check_quote("undecided", &[], 3).contains("were not applied"));
    let name = order("undecided");
    let answer = json(&["quote", &name, "--without", "code", "--format", "json"]);
    assert_eq!(answer["authorities_not_applied"], serde_json::json!(["code"]));
}

#[test]
fn another_date_may_give_another_answer() {
    let text = check_quote("retired", &[], 0);
    assert!(!text.contains("by --date"));
    let text = check_quote("retired", &["--date", "2026-07-01"], 4);
    check_says(
        &text,
        &[
            "judged as of 2026-07-01 (by --date)",
            "Green (Exterior colour) was offered until 2026-06-30. Grey replaces it.",
            "Rule exterior.offered",
        ],
    );
    let text = check_quote("retired", &["--date", "2027-01-01"], 4);
    check_says(&text, &["was in force until 2026-12-31"]);
}

#[test]
fn every_quote_says_that_it_approves_nothing() {
    for (name, code) in [("holds", 0), ("undecided", 3), ("broken", 4)] {
        let text = check_quote(name, &[], code);
        check_says(
            &text,
            &[
                "it does not approve",
                "local code and a licensed person decide",
                "Confirm every measurement",
            ],
        );
    }
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
fn a_program_reads_the_same_totals_as_a_person() {
    for (name, code) in [("holds", 0), ("undecided", 3), ("broken", 4)] {
        let text = check_quote(name, &[], code);
        let path = order(name);
        check_same_totals(&text, &json(&["quote", &path, "--format", "json"]), code);
    }
}

/// Every total of the JSON stands in the block of its opening, and the sum at the end.
fn check_same_totals(text: &str, answer: &Value, code: i32) {
    assert_eq!(answer["exit_code"], code);
    for opening in answer["openings"].as_array().unwrap() {
        let block = block(text, opening["tag"].as_str().unwrap());
        match opening["total"]["amount"].as_str() {
            Some(amount) => assert!(
                block.contains(&format!("{} USD", grouped(amount))),
                "{amount} in\n{block}"
            ),
            None => assert!(
                block.contains("not known") || block.contains("no price"),
                "{block}"
            ),
        }
    }
    let totals = &answer["totals"];
    let sum = grouped(totals["sum_of_known"]["amount"].as_str().unwrap());
    let label = if totals["complete"] == true {
        "Total before tax"
    } else {
        "The other openings"
    };
    let line = text.lines().find(|line| line.starts_with(label)).unwrap();
    assert!(line.ends_with(&format!(" {sum} USD")), "{line}");
}

/// `1234.50` as `1,234.50`.
fn grouped(amount: &str) -> String {
    let (whole, fraction) = amount.split_once('.').unwrap();
    let digits = whole.trim_start_matches('-');
    let mut out = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    format!(
        "{}{out}.{fraction}",
        if whole.starts_with('-') { "-" } else { "" }
    )
}

#[test]
fn data_of_the_caller_is_carried_untouched() {
    let name = order("holds");
    let ran = run(&["quote", &name, "--format", "json"]);
    assert!(
        ran.out.contains("\"rate\": 1.50\n"),
        "the number keeps its digits"
    );
    assert!(ran.out.contains("\"job\": 17,"));
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
fn no_number_is_a_float() {
    let name = order("holds");
    let answer = json(&["quote", &name, "--format", "json"]);
    let mut queue = vec![&answer];
    while let Some(value) = queue.pop() {
        match value {
            Value::Array(values) => queue.extend(values),
            Value::Object(entries) => queue.extend(
                entries
                    .iter()
                    .filter(|(key, _)| *key != "extra")
                    .map(|(_, value)| value),
            ),
            Value::Number(number) => assert!(number.is_u64(), "{number}"),
            _ => {}
        }
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
    for arguments in [&["--help"][..], &["quote", "--help"], &["check", "--help"]] {
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

/// The demo house as a person and as a program read it; the files stand beside the order.
#[test]
fn the_demo_house_reads_as_its_golden_files_say() {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples");
    let mut found = 0;
    for entry in std::fs::read_dir(&examples).unwrap() {
        let folder = entry.unwrap().path();
        let order = folder.join("order.toml");
        if !order.is_file() {
            continue;
        }
        found += 1;
        let shown = order
            .strip_prefix(env!("CARGO_MANIFEST_DIR"))
            .unwrap()
            .to_str()
            .unwrap()
            .to_owned();
        let text = run(&["quote", &shown]);
        assert_eq!(text.err, "");
        expect_file![folder.join("quote.txt")].assert_eq(&text.out);
        let answer = run(&["quote", &shown, "--format", "json"]);
        expect_file![folder.join("quote.json")].assert_eq(&answer.out);
        let answer: Value = serde_json::from_str(&answer.out).unwrap();
        check_same_totals(&text.out, &answer, text.code.unwrap());
    }
    assert!(found > 0, "there is a demo house");
}

/// The table "what should come out" of `examples/README.md`, and the trap in it: 5.694 square feet are not 5.7.
#[test]
fn the_demo_house_comes_out_as_its_readme_says() {
    let order = "examples/corner-house/order.toml";
    let answer = json(&["quote", order, "--format", "json"]);
    let summary = &answer["summary"];
    assert_eq!(summary["broken"], serde_json::json!(["D1", "B1"]));
    assert_eq!(summary["undecided"], serde_json::json!(["B3", "C1"]));
    assert_eq!(
        summary["holds"],
        serde_json::json!(["K1", "L1", "L2", "S1", "B2", "T1"])
    );
    let text = run(&["quote", order]).out;
    check_says(block(&text, "D1"), &["Does not hold", "Rule screen-by-operation"]);
    check_says(
        block(&text, "B1"),
        &[
            "Does not hold",
            "5.6944… sq ft",
            "Rule escape-area, authority: code",
        ],
    );
    check_says(
        block(&text, "B3"),
        &[
            "Cannot be decided yet",
            "Rule escape-area",
            "To decide it:",
            "Find out",
        ],
    );
    check_says(
        block(&text, "C1"),
        &[
            "Waits for Serves as the escape opening",
            "Find out Serves as the escape",
        ],
    );
    check_says(
        block(&text, "L1"),
        &[
            "Needs a sign-off",
            "Rule heavy-unit",
            "Waived",
            "Waived by W-0117",
        ],
    );
}
