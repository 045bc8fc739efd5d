//! When an option may be ordered: hidden, retired, absent, honoured; and when a price book is in force.

use crate::{Case, NONE, attribute};

/// `green` may be ordered through 2026; who quoted it in time is honoured to the end of March.
fn case() -> Case {
    Case::new(
        "\n[[attribute]]\nid = \"exterior\"\nlabel = \"Exterior\"\nstandard = \"white\"\noptions = [\n\
         { id = \"white\", label = \"White\" },\n{ id = \"grey\", label = \"Stone grey\" },\n\
         { id = \"green\", label = \"Green\", offered_from = 2026-01-01, offered_until = 2026-12-31, \
         honoured_until = 2027-03-31, replaced_by = \"grey\" },\n]\n",
    )
}

fn green(day: &str) -> Vec<String> {
    case().pick("exterior", "green").on(day).answer().broken()
}

#[test]
fn an_option_may_be_ordered_on_its_first_day_and_not_before() {
    assert_eq!(green("2026-01-01"), NONE);
    assert_eq!(green("2025-12-31"), ["exterior.offered"]);
}

#[test]
fn an_option_may_be_ordered_on_its_last_day_and_not_after() {
    assert_eq!(green("2026-12-31"), NONE);
    assert_eq!(green("2027-01-01"), ["exterior.offered"]);
}

#[test]
fn an_option_that_is_retired_names_what_replaces_it() {
    let judged = case().pick("exterior", "green").on("2027-01-01").answer();
    assert!(
        judged.message("exterior.offered").contains("Stone grey"),
        "{}",
        judged.message("exterior.offered")
    );
    assert_eq!(
        judged.value("exterior"),
        "green (picked)",
        "it is named and not taken"
    );
}

#[test]
fn an_option_that_is_not_there_breaks_the_implicit_rule() {
    let judged = case().answer().given(&[("exterior", "purple")]);
    assert_eq!(
        (judged.broken(), judged.verdict()),
        (vec!["exterior.offered".to_owned()], "broken")
    );
}

#[test]
fn a_standard_that_is_retired_is_not_skipped_silently() {
    let judged = Case::new(
        "\n[[attribute]]\nid = \"exterior\"\nlabel = \"Exterior\"\nstandard = \"green\"\noptions = [\n\
         { id = \"green\", offered_until = 2026-01-31, replaced_by = \"grey\" },\n{ id = \"grey\" },\n]\n",
    )
    .answer();
    assert_eq!(
        (judged.value("exterior"), judged.broken()),
        ("green (standard)".to_owned(), vec!["exterior.offered".to_owned()])
    );
}

#[test]
fn an_option_that_is_hidden_or_retired_names_what_replaces_it() {
    let hidden = case()
        .policy("hide = [{ attribute = \"exterior\", option = \"green\" }]\n")
        .pick("exterior", "green")
        .on("2026-05-02")
        .answer();
    assert_eq!(
        hidden.message("exterior.offered"),
        "Green (Exterior) is not sold by this dealer. Stone grey replaces it."
    );
    let retired = case().pick("exterior", "green").on("2027-01-01").answer();
    assert_eq!(
        retired.message("exterior.offered"),
        "Green (Exterior) was offered until 2026-12-31. Stone grey replaces it."
    );
}

fn quoted(quote: &str, day: &str) -> (Vec<String>, Vec<String>, &'static str) {
    let judged = case().quoted("exterior", "green", quote).on(day).answer();
    (judged.broken(), judged.not_binding(), judged.verdict())
}

#[test]
fn a_pick_quoted_while_it_was_offered_is_honoured_with_a_warning() {
    let honoured = (vec![], vec!["exterior.offered warns".to_owned()], "holds");
    assert_eq!(quoted("2026-05-02", "2027-01-01"), honoured);
    assert_eq!(
        quoted("2026-12-31", "2027-03-31"),
        honoured,
        "both days are inclusive"
    );
}

#[test]
fn a_pick_quoted_after_the_last_day_is_not_honoured() {
    assert_eq!(
        quoted("2027-01-01", "2027-01-02"),
        (vec!["exterior.offered".to_owned()], vec![], "broken")
    );
}

#[test]
fn a_pick_quoted_before_the_first_day_is_not_honoured() {
    let honoured = (vec![], vec!["exterior.offered warns".to_owned()], "holds");
    assert_eq!(quoted("2026-01-01", "2027-01-02"), honoured);
    assert_eq!(
        quoted("2025-12-31", "2027-01-02"),
        (vec!["exterior.offered".to_owned()], vec![], "broken")
    );
}

#[test]
fn a_pick_is_not_honoured_past_the_day_to_which_quotes_are() {
    assert_eq!(
        quoted("2026-05-02", "2027-04-01"),
        (vec!["exterior.offered".to_owned()], vec![], "broken")
    );
}

#[test]
fn a_pick_without_the_date_of_a_quote_is_not_honoured() {
    assert_eq!(green("2027-02-01"), ["exterior.offered"]);
}

#[test]
fn a_pick_quoted_in_time_needs_no_warning_while_the_option_is_offered() {
    assert_eq!(quoted("2026-05-02", "2026-12-31"), (vec![], vec![], "holds"));
}

#[test]
fn a_quote_does_not_make_an_option_earlier_than_its_first_day() {
    assert_eq!(quoted("2025-12-01", "2025-12-02").0, ["exterior.offered"]);
}

#[test]
fn a_price_book_is_in_force_on_its_first_and_last_day_and_not_outside() {
    let case = Case::new(&attribute("exterior", "white", "standard = \"white\""))
        .book_says("from = 2026-01-01\nuntil = 2026-12-31");
    for (day, expected) in [
        ("2026-01-01", 0),
        ("2026-12-31", 0),
        ("2025-12-31", 1),
        ("2027-01-01", 1),
    ] {
        let broken = case.clone().on(day).answer().broken();
        assert_eq!(broken, vec!["book-in-force"; expected], "{day}");
    }
}
