//! Money: amount x quantity x mark-up and one rounding, percentages, standard and upcharge.

use crate::{Case, NONE, attribute, fact, item, measures, rule, table_figure};

#[test]
fn an_item_is_amount_times_quantity_times_mark_up_and_rounded_once() {
    let judged = Case::new(&item("glass", "quantity = '0.5'"))
        .amount("glass", "1.11")
        .policy("mark_ups = [{ class = \"goods\", percent = 50 }]\n")
        .answer();
    assert_eq!(
        judged.item("glass"),
        ["0.83 standard"],
        "0.84 if the quantity were rounded first"
    );
}

#[test]
fn rounding_is_to_the_policys_unit_where_it_has_one_and_else_to_the_books() {
    let case = Case::new(&item("glass", "quantity = '1.5'"))
        .round_to("0.05")
        .amount("glass", "0.95");
    assert_eq!(case.answer().item("glass"), ["1.45 standard"]);
    assert_eq!(
        case.policy("round_to = \"1.00\"\n").answer().item("glass"),
        ["1.00 standard"]
    );
}

#[test]
fn an_item_is_not_rounded_to_the_books_unit_before_the_policys() {
    let case = Case::new(&item("glass", "quantity = '0.4995'")).amount("glass", "1.00");
    assert_eq!(case.answer().total(), "0.50");
    assert_eq!(
        case.policy("round_to = \"1.00\"\n").answer().total(),
        "0.00",
        "1.00 by way of 0.50"
    );
}

#[test]
fn a_mark_up_is_of_one_class_alone() {
    let judged = Case::new(&item("glass", ""))
        .and(&item("trip", "class = \"labour\""))
        .amount("glass", "100.00")
        .amount("trip", "100.00")
        .policy("mark_ups = [{ class = \"goods\", percent = 25 }]\n")
        .answer();
    assert_eq!(
        (judged.item("glass"), judged.item("trip")),
        (
            vec!["125.00 standard".to_owned()],
            vec!["100.00 standard".to_owned()]
        )
    );
}

/// Two lines and ten percent of both.
fn percent(first: &str, second: &str) -> Case {
    Case::new(&attribute("finish", "plain bright", "standard = \"plain\""))
        .and(&item("one", ""))
        .and(&item("two", "when = 'finish == \"bright\"'"))
        .and(&item("share", "percent_of = [\"one\", \"two\"]"))
        .amount("one", first)
        .amount("two", second)
        .amount("share", "10 %")
}

#[test]
fn a_percentage_of_several_items_is_taken_of_each_and_each_is_rounded() {
    let judged = percent("0.05", "0.05").pick("finish", "bright").answer();
    assert_eq!(judged.item("share"), ["0.02 standard"], "0.01 of the sum");
}

#[test]
fn an_item_that_is_absent_counts_nothing_in_a_percentage() {
    assert_eq!(
        percent("100.00", "50.00").answer().item("share"),
        ["10.00 standard"]
    );
    assert_eq!(
        percent("100.00", "50.00")
            .pick("finish", "bright")
            .answer()
            .item("share"),
        ["15.00 standard"]
    );
}

#[test]
fn a_percentage_of_items_that_are_all_absent_is_nothing() {
    let judged = Case::new(&item("one", "when = 'false'"))
        .and(&item("share", "percent_of = [\"one\"]"))
        .amount("one", "10.00")
        .amount("share", "10 %")
        .answer();
    assert_eq!(
        (judged.item("share"), judged.total()),
        (vec!["0.00 standard".to_owned()], "0.00".to_owned())
    );
}

#[test]
fn a_percentage_of_a_percentage_is_a_finding() {
    let case = percent("1.00", "1.00")
        .and(&item("more", "percent_of = [\"share\"]"))
        .amount("more", "1 %");
    assert!(case.codes().contains(&"PERCENT_OF_PERCENT".to_owned()));
}

#[test]
fn a_percentage_is_of_lines_that_carry_the_mark_up_and_is_not_marked_up_again() {
    let judged = percent("100.00", "0.00")
        .policy("mark_ups = [{ class = \"goods\", percent = 25 }]\n")
        .answer();
    assert_eq!(judged.item("share"), ["12.50 standard"]);
}

#[test]
fn a_percentage_may_stand_before_the_items_that_it_names() {
    let judged = Case::new(&item("share", "percent_of = [\"one\"]"))
        .and(&item("one", ""))
        .amount("share", "10 %")
        .amount("one", "100.00")
        .answer();
    assert_eq!(judged.total(), "110.00");
}

#[test]
fn a_percentage_of_what_is_not_known_is_not_known() {
    let judged = Case::new(&measures(&["width"]))
        .and(&item("one", "quantity = 'in_feet(width)'"))
        .and(&item("share", "percent_of = [\"one\"]"))
        .amount("one", "10.00")
        .amount("share", "10 %")
        .answer();
    assert_eq!(
        (judged.item("share"), judged.total()),
        (vec!["unknown: WIDTH".to_owned()], "unknown: WIDTH".to_owned())
    );
}

/// `weight` is undefined.
fn undefined() -> Case {
    Case::new(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&table_figure("weight", "keys = [\"glass\"]"))
        .file("catalog/weight.csv", "glass,weight\ndouble,3\n")
        .amount("lift", "10.00")
}

#[test]
fn an_undefined_condition_breaks_has_a_price() {
    let judged = undefined().and(&item("lift", "when = 'weight > 5'")).answer();
    assert_eq!(
        (judged.broken(), judged.total()),
        (
            vec!["has-a-price lift (no row)".to_owned()],
            "no price".to_owned()
        )
    );
}

#[test]
fn an_undefined_quantity_breaks_has_a_price() {
    let judged = undefined().and(&item("lift", "quantity = 'weight'")).answer();
    assert_eq!(
        (judged.broken(), judged.total()),
        (
            vec!["has-a-price lift (no row)".to_owned()],
            "no price".to_owned()
        )
    );
}

#[test]
fn an_unknown_condition_leaves_the_item_and_the_total_unknown_and_breaks_nothing() {
    let judged = Case::new(&fact("year_built", "house", "number"))
        .and(&item("lead", "when = 'year_built < 1978'"))
        .amount("lead", "90.00")
        .answer();
    assert_eq!(
        (judged.item("lead"), judged.broken()),
        (vec!["unknown: YEAR_BUILT".to_owned()], vec![])
    );
    assert_eq!(
        (judged.total().as_str(), judged.verdict()),
        ("unknown: YEAR_BUILT", "undecided")
    );
}

#[test]
fn an_item_whose_condition_is_false_costs_nothing_whatever_its_quantity() {
    let judged = undefined()
        .and(&item("lift", "when = 'false'\nquantity = 'weight'"))
        .answer();
    assert_eq!(
        (judged.item("lift"), judged.broken(), judged.total()),
        (vec![], vec![], "0.00".to_owned())
    );
}

fn finishes() -> Case {
    Case::new(&attribute("operation", "casement fixed", "standard = \"ask\""))
        .and(&attribute(
            "finish",
            "plain bright",
            "standard = \"plain\"\napplies_when = 'operation == \"casement\"'",
        ))
        .and(&item("base", "when = 'operation == \"casement\"'"))
        .and(&item(
            "bright",
            "when = 'is_asked(finish) && finish == \"bright\"'",
        ))
        .and(&item("handle", "by = [\"finish\"]"))
        .amount("base", "400.00")
        .amount("bright", "20.00")
        .sheet("handle", "finish,amount\nplain,0.00\nbright,7.00\n")
        .pick("operation", "casement")
}

#[test]
fn an_item_is_standard_where_its_condition_would_hold_with_standards_alone_and_else_an_upcharge() {
    let judged = finishes().pick("finish", "bright").answer();
    assert_eq!(judged.item("bright"), ["20.00 upcharge"]);
    let policy = "standards = [{ attribute = \"finish\", standard = \"bright\" }]\n";
    assert_eq!(
        finishes().policy(policy).answer().item("bright"),
        ["20.00 standard"]
    );
}

#[test]
fn picking_what_is_standard_anyway_is_no_upcharge() {
    assert_eq!(
        finishes().pick("finish", "plain").answer().item("handle"),
        ["0.00 standard"]
    );
    assert_eq!(
        finishes().pick("finish", "bright").answer().item("handle"),
        ["7.00 upcharge"]
    );
}

#[test]
fn what_was_chosen_because_it_asks_is_no_upcharge() {
    assert_eq!(finishes().answer().item("base"), ["400.00 standard"]);
}

#[test]
fn an_item_by_an_attribute_that_is_not_asked_costs_nothing() {
    let judged = finishes()
        .answer()
        .given(&[("operation", "fixed"), ("finish", "not asked")]);
    assert_eq!(
        (judged.item("handle"), judged.broken(), judged.total()),
        (vec![], vec![], "0.00".to_owned())
    );
}

#[test]
fn an_item_by_an_attribute_that_is_not_asked_costs_nothing_whatever_its_condition_says() {
    let case = Case::new(&attribute("operation", "casement fixed", "standard = \"fixed\""))
        .and(&attribute(
            "finish",
            "plain bright",
            "standard = \"plain\"\napplies_when = 'operation == \"casement\"'",
        ))
        .and(&fact("year_built", "house", "number"))
        .and(&item("handle", "when = 'year_built < 1978'\nby = [\"finish\"]"))
        .sheet("handle", "finish,amount\nplain,1.00\nbright,7.00\n");
    assert_eq!(case.answer().total(), "0.00");
    assert_eq!(
        case.pick("operation", "casement").answer().total(),
        "unknown: YEAR_BUILT"
    );
}

#[test]
fn a_line_of_nothing_is_shown() {
    assert_eq!(finishes().answer().item("handle"), ["0.00 standard"]);
}

#[test]
fn the_total_is_of_one_unit_and_the_quantity_of_the_opening_is_kept_beside_it() {
    let judged = Case::new(&item("glass", "quantity = '0.335'"))
        .amount("glass", "1.00")
        .tail("freight", "flat = \"0.10\"")
        .opening("quantity = 3")
        .answer();
    assert_eq!((judged.total().as_str(), judged.opening().quantity), ("0.44", 3));
}

#[test]
fn an_amount_is_known_or_said_to_be_missing_and_never_guessed() {
    let judged = Case::new(&attribute("finish", "plain bright", "standard = \"plain\""))
        .and(&item("handle", "by = [\"finish\"]"))
        .sheet("handle", "finish,amount\nbright,7.00\n")
        .answer();
    assert_eq!(
        (judged.broken(), judged.total()),
        (vec!["has-a-price handle".to_owned()], "no price".to_owned())
    );
}

#[test]
fn a_broken_rule_leaves_the_price_as_it_is() {
    let judged = Case::new(&item("glass", ""))
        .amount("glass", "10.00")
        .and(&rule("a", "require = 'false'"))
        .answer();
    assert_eq!(
        (judged.broken(), judged.total()),
        (vec!["a".to_owned()], "10.00".to_owned())
    );
    assert_eq!(judged.not_binding(), NONE);
}

#[test]
fn a_book_in_another_currency_than_the_order_is_an_error() {
    let case = Case::new(&item("glass", ""))
        .amount("glass", "10.00")
        .book_currency("CAD");
    assert_eq!(case.codes(), ["CURRENCY_DIFFERS"]);
}

#[test]
fn a_quantity_below_zero_has_no_price() {
    let judged = |quantity: &str| {
        Case::new(&item("one", &format!("quantity = '{quantity}'")))
            .amount("one", "100.00")
            .answer()
    };
    assert_eq!(judged("0").total(), "0.00");
    assert_eq!(judged("-1").broken(), ["has-a-price one"]);
    assert_eq!(
        judged("-1").message("has-a-price"),
        "one has no price: its quantity is below zero: -1."
    );
}
