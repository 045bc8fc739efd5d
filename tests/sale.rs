//! Until when the buyer may cancel, in the answer of `astragal quote`: by the order's own dates and no clock.

#![expect(clippy::expect_used, clippy::panic, reason = "these are tests")]

mod program;

use std::fs;

use program::{check_says, copy_folder, json, run};
use serde_json::Value;

/// Quotes an order of 2026-11-25 that was agreed to at the buyer's home and signed on this day, for a person and for a program.
fn quoted(signed: &str) -> (String, Value) {
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("tests/fixtures", folder.path());
    let path = folder.path().join("orders/holds.toml");
    let order = fs::read_to_string(&path).expect("the order");
    let date = "date = 2026-11-25\n";
    assert!(order.contains(date));
    let sold = format!("{date}sold_at = \"buyers-home\"\nsigned = {signed}\n");
    fs::write(&path, order.replacen(date, &sold, 1)).expect("the order");
    let path = path.to_str().expect("a path");
    let answer = json(&["quote", path, "--format", "json"]);
    (run(&["quote", path]).out, answer)
}

/// Signed on Wednesday 18 November 2026, the third business day is Saturday the 21st; signed on the 21st, it is the 25th, the day of
/// the order itself. Source: 16 CFR 429.1(a), the days counted by hand.
#[test]
fn a_last_day_before_the_order_has_passed_and_that_day_itself_has_not() {
    for (signed, last, passed) in [
        ("2020-11-25", "Monday 2020-11-30", true),
        ("2026-11-18", "Saturday 2026-11-21", true),
        ("2026-11-20", "Tuesday 2026-11-24", true),
        ("2026-11-21", "Wednesday 2026-11-25", false),
        ("2026-11-25", "Monday 2026-11-30", false),
    ] {
        let (text, answer) = quoted(signed);
        let may = if passed { "could" } else { "may" };
        let says =
            format!("Check: the buyer {may} cancel until midnight of {last}; state law may give longer");
        check_says(&text, &[&says]);
        let has_passed = "That day has passed: the order is judged as of 2026-11-25.";
        assert_eq!(text.contains(has_passed), passed, "{signed}\n{text}");
        assert_eq!(
            answer["cooling_off"]["has_passed"],
            Value::Bool(passed),
            "{signed}"
        );
    }
}
