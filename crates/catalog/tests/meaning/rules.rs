//! When a rule binds: its effect, its waivers and their dates.

use crate::{Case, NONE, attribute, fact, rule};

fn case() -> Case {
    Case::new(&fact("year_built", "house", "number"))
}

#[test]
fn a_broken_rule_binds_when_its_effect_is_block_and_that_is_what_it_is_when_left_out() {
    let judged = case()
        .and(&rule("plain", "require = 'false'"))
        .and(&rule("block", "effect = \"block\"\nrequire = 'false'"))
        .answer();
    assert_eq!(judged.broken(), ["plain", "block"]);
    assert_eq!(judged.verdict(), "broken");
}

#[test]
fn a_broken_rule_with_effect_warn_warns_and_the_unit_holds() {
    let judged = case()
        .and(&rule("a", "effect = \"warn\"\nrequire = 'false'"))
        .answer();
    assert_eq!(
        (judged.broken(), judged.not_binding()),
        (vec![], vec!["a warns".to_owned()])
    );
    assert_eq!(judged.verdict(), "holds");
}

#[test]
fn with_sign_off_the_unit_holds_and_carries_the_sign_off() {
    let judged = case()
        .and(&rule("a", "effect = \"sign_off\"\nrequire = 'false'"))
        .answer();
    assert_eq!(
        (judged.broken(), judged.not_binding()),
        (vec![], vec!["a wants a sign-off".to_owned()])
    );
    assert_eq!(judged.verdict(), "holds");
}

#[test]
fn an_undecided_rule_that_does_not_block_leaves_the_unit_holding() {
    let judged = case()
        .and(&rule("a", "effect = \"warn\"\nrequire = 'year_built > 1978'"))
        .and(&rule("b", "effect = \"sign_off\"\nrequire = 'year_built > 1978'"))
        .answer();
    assert_eq!(
        judged.not_binding(),
        ["a warns undecided", "b wants a sign-off undecided"]
    );
    assert_eq!((judged.undecided(), judged.verdict()), (vec![], "holds"));
}

#[test]
fn a_broken_rule_outweighs_one_that_cannot_be_decided() {
    let judged = case()
        .and(&rule("a", "require = 'year_built > 1978'"))
        .and(&rule("b", "require = 'false'"))
        .answer();
    assert_eq!((judged.undecided().len(), judged.broken().len()), (1, 1));
    assert_eq!(judged.verdict(), "broken");
}

const WAIVABLE: &str = "waivable = true\nrequire = 'false'";

#[test]
fn a_waived_rule_does_not_bind() {
    let judged = case()
        .and(&rule("a", WAIVABLE))
        .waiver("a", "from = 2026-01-01")
        .answer();
    assert_eq!(
        (judged.broken(), judged.not_binding()),
        (vec![], vec!["a is waived".to_owned()])
    );
    assert_eq!(judged.verdict(), "holds");
}

#[test]
fn a_waiver_releases_from_its_own_rule_alone() {
    let judged = case()
        .and(&rule("a", WAIVABLE))
        .and(&rule("b", WAIVABLE))
        .waiver("a", "from = 2026-01-01")
        .answer();
    assert_eq!(judged.broken(), ["b"]);
}

#[test]
fn a_waived_rule_that_cannot_be_decided_does_not_bind_either() {
    let judged = case()
        .and(&rule("a", "waivable = true\nrequire = 'year_built > 1978'"))
        .waiver("a", "from = 2026-01-01")
        .answer();
    assert_eq!(judged.not_binding(), ["a is waived undecided"]);
    assert_eq!((judged.undecided(), judged.verdict()), (vec![], "holds"));
}

#[test]
fn a_waiver_holds_from_its_date_on_and_not_the_day_before() {
    let case = case().and(&rule("a", WAIVABLE)).waiver("a", "from = 2026-11-25");
    assert_eq!(case.clone().on("2026-11-25").answer().broken(), NONE);
    assert_eq!(case.on("2026-11-24").answer().broken(), ["a"]);
}

#[test]
fn a_waiver_holds_to_its_last_day_and_not_the_day_after() {
    let case = case()
        .and(&rule("a", WAIVABLE))
        .waiver("a", "from = 2026-11-01, until = 2026-11-25");
    assert_eq!(case.clone().on("2026-11-25").answer().broken(), NONE);
    assert_eq!(case.on("2026-11-26").answer().broken(), ["a"]);
}

#[test]
fn a_waiver_without_a_last_day_does_not_end() {
    let case = case().and(&rule("a", WAIVABLE)).waiver("a", "from = 2026-11-01");
    assert_eq!(case.on("2099-12-31").answer().broken(), NONE);
}

#[test]
fn a_waiver_for_a_rule_that_does_not_exist_is_bad_input() {
    let case = case().and(&rule("a", WAIVABLE)).waiver("b", "from = 2026-11-01");
    assert_eq!(case.codes(), ["UNKNOWN_RULE"]);
}

#[test]
fn a_waiver_for_a_rule_that_is_not_waivable_is_bad_input() {
    let case = case()
        .and(&rule("a", "require = 'false'"))
        .waiver("a", "from = 2026-11-01");
    assert_eq!(case.codes(), ["NOT_WAIVABLE"]);
}

#[test]
fn a_waiver_for_an_implicit_rule_is_bad_input() {
    let case = case().and(&attribute("exterior", "white grey", "standard = \"white\""));
    assert_eq!(
        case.waiver("exterior.offered", "from = 2026-11-01").codes(),
        ["NOT_WAIVABLE"]
    );
}

#[test]
fn a_waiver_covers_all_parts_of_a_rule_per_part() {
    let parts = "\n[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\n\
                 [[part]]\nid = \"lower\"\nkind = \"sash\"\nlabel = \"L\"\n";
    let case = case()
        .and(parts)
        .and(&attribute(
            "glazing",
            "clear obscure",
            "per = \"sash\"\nstandard = \"clear\"",
        ))
        .and(&rule(
            "a",
            "per = \"sash\"\nwaivable = true\nrequire = 'glazing == \"obscure\"'",
        ));
    assert_eq!(case.answer().broken(), ["a@upper", "a@lower"]);
    let waived = case.waiver("a", "from = 2026-01-01").answer();
    assert_eq!(waived.not_binding(), ["a@upper is waived", "a@lower is waived"]);
}

#[test]
fn a_message_shows_what_the_rule_reads() {
    let judged = case()
        .fact("year_built", "1964")
        .and("\n[[rule]]\nid = \"a\"\nrequire = 'year_built > 1978'\nmessage = \"Built in {year_built}.\"\n")
        .answer();
    assert_eq!(judged.message("a"), "Built in 1964.");
}
