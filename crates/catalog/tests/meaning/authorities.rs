//! Whose rules bind: authorities that are left out are listed, and their rules do not bind.

use crate::{Case, NONE, attribute, fact, rule};

fn of(authority: &str) -> String {
    rule(
        &format!("of-{authority}"),
        &format!("authority = \"{authority}\"\nrequire = 'false'"),
    )
}

#[test]
fn every_authority_applies_unless_it_is_left_out() {
    let judged = Case::new(&of("plant"))
        .and(&of("code"))
        .and(&of("programme"))
        .answer();
    assert_eq!(judged.broken(), ["of-plant", "of-code", "of-programme"]);
    assert_eq!(judged.not_applied(), NONE);
}

#[test]
fn a_rule_of_an_authority_that_is_left_out_does_not_bind_and_the_authority_is_listed() {
    let judged = Case::new(&of("code")).without("code").answer();
    assert_eq!(
        (judged.broken(), judged.not_binding()),
        (vec![], vec!["of-code is not applied".to_owned()])
    );
    assert_eq!(
        (judged.not_applied(), judged.verdict()),
        (vec!["code".to_owned()], "holds")
    );
}

#[test]
fn leaving_one_authority_out_leaves_the_others_binding() {
    let judged = Case::new(&of("plant")).and(&of("code")).without("code").answer();
    assert_eq!(judged.broken(), ["of-plant"]);
}

#[test]
fn a_rule_that_names_no_authority_is_the_plants() {
    let judged = Case::new(&rule("a", "require = 'false'"))
        .without("plant")
        .answer();
    assert_eq!(
        (judged.broken(), judged.not_applied()),
        (vec![], vec!["plant".to_owned()])
    );
}

#[test]
fn an_undecided_rule_of_an_authority_that_is_left_out_leaves_the_unit_holding() {
    let judged = Case::new(&fact("year_built", "house", "number"))
        .and(&rule("a", "authority = \"code\"\nrequire = 'year_built > 1978'"))
        .without("code")
        .answer();
    assert_eq!((judged.undecided(), judged.verdict()), (vec![], "holds"));
}

#[test]
fn a_rule_of_a_policy_is_the_dealers() {
    let policy = rule("house-rule", "require = 'false'");
    let case = Case::new("").policy(&policy);
    assert_eq!(case.answer().broken(), ["house-rule"]);
    let without = case.without("dealer").answer();
    assert_eq!(
        (without.broken(), without.not_applied()),
        (vec![], vec!["dealer".to_owned()])
    );
}

#[test]
fn implicit_rules_bind_whatever_authority_is_left_out() {
    let case = Case::new(&attribute("operation", "casement fixed", "standard = \"fixed\""))
        .and(&attribute(
            "mesh",
            "fine",
            "standard = \"fine\"\napplies_when = 'operation == \"casement\"'",
        ))
        .pick("mesh", "fine")
        .without("plant");
    assert_eq!(case.answer().broken(), ["mesh.applies"]);
}

#[test]
fn a_declared_authority_may_be_named_and_another_may_not() {
    let case = Case::new(&of("association"));
    assert_eq!(case.codes(), ["UNKNOWN_AUTHORITY"]);
    let declared = case
        .and("\n[[authority]]\nid = \"association\"\nlabel = \"A\"\n")
        .without("association")
        .answer();
    assert_eq!(declared.broken(), NONE);
}
