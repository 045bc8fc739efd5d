//! Standards that are not the customer's: a policy's, and those of attributes of the plant.

use crate::{Case, NONE, attribute, item};

fn case() -> Case {
    Case::new(&attribute("exterior", "white grey", "standard = \"white\"")).and(&attribute(
        "interior",
        "white grey",
        "standard = 'exterior'",
    ))
}

const GREY: &str = "standards = [{ attribute = \"exterior\", standard = \"grey\" }]\n";

#[test]
fn a_policys_standard_replaces_the_plants_before_filling() {
    let judged = case().policy(GREY).answer();
    assert_eq!(judged.value("exterior"), "grey (standard)");
    assert_eq!(
        judged.value("interior"),
        "grey (standard)",
        "what depends on it sees the policy's"
    );
}

#[test]
fn what_a_policys_standard_incurs_is_standard_and_the_plants_an_upcharge() {
    let case = case()
        .and(&item("finish", "by = [\"exterior\"]"))
        .sheet("finish", "exterior,amount\nwhite,0.00\ngrey,30.00\n")
        .policy(GREY);
    assert_eq!(case.answer().item("finish"), ["30.00 standard"]);
    assert_eq!(
        case.pick("exterior", "white").answer().item("finish"),
        ["0.00 upcharge"]
    );
}

#[test]
fn hiding_a_standard_without_a_replacement_is_a_finding() {
    let hide = "hide = [{ attribute = \"exterior\", option = \"white\" }]\n";
    assert_eq!(case().policy(hide).codes(), ["HIDDEN_STANDARD"]);
    let replaced = case().policy(&format!("{hide}{GREY}")).answer();
    assert_eq!(
        (replaced.value("exterior"), replaced.broken()),
        ("grey (standard)".to_owned(), vec![])
    );
}

#[test]
fn hiding_what_a_standard_may_come_to_is_a_finding_as_well() {
    let hide = "hide = [{ attribute = \"interior\", option = \"grey\" }]\n";
    assert_eq!(
        case().policy(hide).codes(),
        ["HIDDEN_STANDARD"],
        "it may follow the exterior"
    );
}

#[test]
fn an_option_that_is_hidden_breaks_the_implicit_rule() {
    let case = case().policy("hide = [{ attribute = \"interior\", option = \"grey\" }]\nstandards = [{ attribute = \"interior\", standard = \"white\" }]\n");
    let judged = case.clone().pick("interior", "grey").answer();
    assert_eq!(
        (judged.broken(), judged.verdict()),
        (vec!["interior.offered".to_owned()], "broken")
    );
    assert_eq!(
        case.pick("exterior", "grey").answer().broken(),
        NONE,
        "it is hidden for one attribute alone"
    );
}

#[test]
fn an_entry_of_a_policy_for_another_catalog_changes_nothing_here() {
    let policy = "hide = [{ attribute = \"exterior\", option = \"grey\", catalog = \"other\" }]\n";
    let head = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"c\", \"other\"]\n";
    let judged = case()
        .policy("")
        .file("policy/policy.toml", &format!("{head}{policy}"))
        .pick("exterior", "grey")
        .answer();
    assert_eq!(judged.broken(), NONE);
}

fn plant() -> Case {
    case().and(&attribute(
        "glue",
        "clear dark",
        "audience = \"plant\"\nstandard = 'exterior == \"grey\" ? \"dark\" : \"clear\"'",
    ))
}

#[test]
fn an_attribute_of_the_plant_is_what_its_standard_says() {
    assert_eq!(plant().answer().value("glue"), "clear (standard)");
    assert_eq!(
        plant().pick("exterior", "grey").answer().value("glue"),
        "dark (standard)"
    );
}

#[test]
fn a_pick_on_an_attribute_of_the_plant_is_bad_input() {
    assert_eq!(plant().pick("glue", "clear").codes(), ["PICK_ON_PLANT"]);
}

#[test]
fn an_attribute_of_the_plant_that_is_not_what_its_standard_says_breaks_the_implicit_rule() {
    let judged = plant().answer();
    assert_eq!(judged.given(&[("glue", "dark")]).broken(), ["glue.determined"]);
    let message = judged.given(&[("glue", "dark")]).message("glue.determined");
    assert!(message.contains("the plant sets clear"), "{message}");
    assert_eq!(judged.given(&[("glue", "clear")]).broken(), NONE);
    assert_eq!(
        judged.given(&[("interior", "grey")]).broken(),
        NONE,
        "a customer may differ from a standard"
    );
}

#[test]
fn an_option_of_the_plant_whose_source_is_not_asked_is_nobodys() {
    let judged = Case::new(&attribute("operation", "hung fixed", "standard = \"fixed\""))
        .and(&attribute(
            "screen",
            "white grey",
            "standard = \"white\"\napplies_when = 'operation == \"hung\"'",
        ))
        .and(&attribute(
            "glue",
            "white grey",
            "audience = \"plant\"\nstandard = 'screen'",
        ))
        .answer();
    assert_eq!(
        (judged.value("glue"), judged.broken()),
        ("open".to_owned(), vec![])
    );
    assert_eq!(judged.given(&[("glue", "white")]).broken(), ["glue.determined"]);
}

#[test]
fn an_attribute_of_the_plant_that_is_open_is_not_to_choose() {
    let judged = Case::new(&attribute("exterior", "white grey", "standard = \"ask\""))
        .and(&attribute(
            "glue",
            "white grey",
            "audience = \"plant\"\nstandard = 'exterior'",
        ))
        .answer();
    assert_eq!(
        (judged.value("glue"), judged.to_choose()),
        ("open".to_owned(), vec!["exterior".to_owned()])
    );
}
