//! What somebody made of the library `acorn` who had never seen the format and had `docs/catalog.md` alone.
//!
//! They were told in words: a new dark exterior colour, Forest green (the plant's 12), with white and oak inside, not with
//! pine or black, 45.00 on top of what dark colours cost; black outside is sold until the end of January 2027, honoured for quotes until
//! the end of April, grey instead; a double hung window is not made with pine inside; hardware is priced by option (0.00,
//! 12.00, 38.00); wider than 60 in needs the sales office's signature. `tests/fixtures/learned` is what they wrote, as they
//! left it. The page was mended where they stumbled.

#![expect(clippy::panic, clippy::expect_used, reason = "these are tests")]

mod program;

use std::fs;

use program::{block, check_says, copy_folder, run};

const LEARNED: &str = "tests/fixtures/learned";
const ORDER: &str = "tests/fixtures/learned/maple/order.toml";

/// Quotes the order after a change of its text, as of a day.
fn quoted(change: [&str; 2], date: &str) -> (Option<i32>, String) {
    let text = fs::read_to_string(ORDER).expect("the order");
    assert!(text.contains(change[0]), "the order has no `{}`", change[0]);
    let text = text.replacen(change[0], change[1], 1);
    let folder = tempfile::tempdir().expect("an empty folder");
    copy_folder(LEARNED, folder.path());
    let order = folder.path().join("maple/order.toml");
    fs::write(&order, text).expect("the order");
    let ran = run(&["quote", order.to_str().expect("a path"), "--date", date]);
    (ran.code, ran.out + &ran.err)
}

#[test]
fn the_library_is_without_errors_and_its_examples_prove_it() {
    let ran = run(&["check", &format!("{LEARNED}/acorn")]);
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.err);
}

#[test]
fn forest_green_with_oak_is_right_and_costs_its_surcharge_on_top_of_that_of_dark_colours() {
    let text = run(&["quote", ORDER]).out;
    check_says(
        block(&text, "K2"),
        &[
            "Acorn windows holds",
            "Exterior colour: Forest green",
            "Dark exterior upcharge 78.00",
        ],
    );
    // 45.00 and the dealer's 25 % are 56.25; the dealer rounds to whole dollars.
    check_says(block(&text, "K2"), &["Forest green upcharge 56.00"]);
    for inside in ["pine", "black"] {
        let change = ["option = \"oak\"", &format!("option = \"{inside}\"")];
        let (code, text) = quoted(change, "2027-03-01");
        assert_eq!(code, Some(4));
        check_says(
            block(&text, "K2"),
            &["Acorn windows does not hold", "Rule colour-pairs"],
        );
    }
}

#[test]
fn a_double_hung_window_with_pine_inside_is_not_made_and_a_customer_reads_why() {
    let text = run(&["quote", ORDER]).out;
    check_says(
        block(&text, "K3"),
        &[
            "does not hold",
            "A double hung window is not made with clear pine inside.",
            "Rule no-pine-in-hung",
        ],
    );
}

#[test]
fn black_ends_with_january_and_quotes_made_by_then_are_honoured_until_the_end_of_april() {
    let black = ["option = \"grey\"", "option = \"black\""];
    let in_time = ["option = \"grey\"", "option = \"black\", quoted = 2027-01-31"];
    for (change, date, says) in [
        (black, "2027-01-31", "Acorn windows holds"),
        (black, "2027-02-01", "Grey replaces it."),
        (
            in_time,
            "2027-04-30",
            "it was quoted in time and is honoured until 2027-04-30",
        ),
        (in_time, "2027-05-01", "Grey replaces it."),
    ] {
        let (_, text) = quoted(change, date);
        check_says(block(&text, "K1"), &[says]);
    }
}

#[test]
fn a_window_wider_than_60_inches_needs_a_signature_and_is_not_refused() {
    let wide = |width: &str| {
        let change = [
            "size = \"30\", deducted_by = \"nobody\" }, opening_height = { size = \"48\"",
            &format!("size = \"{width}\", deducted_by = \"nobody\" }}, opening_height = {{ size = \"36\""),
        ];
        let (_, text) = quoted(change, "2027-03-01");
        text
    };
    let text = wide("61");
    check_says(
        block(&text, "K2"),
        &["holds, needs a sign-off", "authority: Sales office"],
    );
    let text = wide("60");
    assert!(!block(&text, "K2").contains("sign-off"), "{text}");
}
