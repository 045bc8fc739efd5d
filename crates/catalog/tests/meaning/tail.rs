//! The tail: steps after all items, in order, each rounded; and that it never turns a dearer unit into a cheaper one.

use crate::{Case, item};

fn case(subtotal: &str) -> Case {
    Case::new(&item("base", "")).amount("base", subtotal)
}

#[test]
fn the_tail_runs_in_the_order_of_the_file() {
    let first_flat = case("100.00")
        .tail("less", "flat = \"-50.00\"")
        .tail("percent", "percent = -10");
    assert_eq!(
        first_flat.answer().tail(),
        ["less -50.00 makes 50.00", "percent -5.00 makes 45.00"]
    );
    let first_percent = case("100.00")
        .tail("percent", "percent = -10")
        .tail("less", "flat = \"-50.00\"");
    assert_eq!(
        first_percent.answer().tail(),
        ["percent -10.00 makes 90.00", "less -50.00 makes 40.00"]
    );
}

#[test]
fn a_percentage_of_the_tail_is_of_what_the_steps_before_it_made() {
    let judged = case("100.00")
        .tail("one", "percent = 10")
        .tail("two", "percent = 10")
        .answer();
    assert_eq!(judged.total(), "121.00");
}

#[test]
fn the_books_steps_run_before_the_policys() {
    let judged = case("100.00")
        .tail("book", "flat = \"10.00\"")
        .policy("[[tail]]\nid = \"dealer\"\nlabel = \"d\"\npercent = 10\n")
        .answer();
    assert_eq!(
        judged.tail(),
        ["book 10.00 makes 110.00", "dealer 11.00 makes 121.00"]
    );
}

#[test]
fn each_step_of_the_tail_is_rounded() {
    let judged = case("0.10")
        .tail("one", "percent = 5")
        .tail("two", "percent = 5")
        .answer();
    assert_eq!(judged.total(), "0.12", "0.11 if only the end were rounded");
}

#[test]
fn what_is_rounded_is_the_running_total_and_a_step_is_the_difference() {
    let judged = case("437.35").tail("less", "percent = -10").answer();
    assert_eq!(
        judged.tail(),
        ["less -43.73 makes 393.62"],
        "393.615 is a half, and goes up"
    );
}

#[test]
fn steps_of_the_tail_are_rounded_to_the_policys_unit_where_it_has_one() {
    let judged = case("100.00")
        .tail("one", "percent = 0.6")
        .policy("round_to = \"1.00\"\n")
        .answer();
    assert_eq!(judged.tail(), ["one 1.00 makes 101.00"]);
}

#[test]
fn a_percentage_of_the_tail_is_at_least_minus_one_hundred() {
    assert_eq!(
        case("100.00").tail("all", "percent = -100").answer().total(),
        "0.00"
    );
    let below = case("100.00").tail("all", "percent = -100.01").codes();
    assert_eq!(below, ["PERCENT_BELOW_MINUS_100"]);
}

#[test]
fn a_unit_without_items_still_runs_the_tail() {
    assert_eq!(
        Case::new("").tail("freight", "flat = \"12.00\"").answer().total(),
        "12.00"
    );
}

#[test]
fn a_unit_whose_total_is_not_known_has_no_tail() {
    let judged = Case::new(&crate::measures(&["width"]))
        .and(&item("base", "quantity = 'in_feet(width)'"))
        .amount("base", "1.00")
        .tail("freight", "flat = \"12.00\"")
        .answer();
    assert_eq!(
        (judged.tail(), judged.total()),
        (vec![], "unknown: WIDTH".to_owned())
    );
}

/// Goal: the total after the tail never falls as the subtotal rises. Every subtotal from 0.00 to 2.00 is tried under
/// tails whose percentages lie just above and at the least that is allowed, where rounding could bite.
#[test]
fn the_total_after_the_tail_never_falls_as_the_subtotal_rises() {
    for percents in [
        ["-99.5", "-0.5"],
        ["-100", "3.33"],
        ["-50", "-50"],
        ["-33.3", "66.7"],
    ] {
        let mut last = -1_i64;
        for cents in 0..=200_i64 {
            let subtotal = format!("{}.{:02}", cents / 100, cents % 100);
            let judged = Case::new(&crate::fact("n", "opening", "number"))
                .and(&item("base", "quantity = 'n'"))
                .amount("base", "1.00")
                .fact("n", &format!("\"{subtotal}\""))
                .tail("one", &format!("percent = {}", percents[0]))
                .tail("two", &format!("percent = {}", percents[1]))
                .answer();
            let total = judged.total().replace('.', "").parse::<i64>().unwrap();
            assert!(
                total >= last,
                "{percents:?}: {subtotal} makes {total} cents after {last}"
            );
            last = total;
        }
    }
}
