//! Rules over a room, and the examples that prove them.

use super::*;

const FACTS: &str = r#"
[[measure]]
id = "width"
label = "W"

[[site_fact]]
id = "sleeps"
label = "S"
of = "room"
type = "bool"

[[site_fact]]
id = "storey"
label = "T"
of = "floor"
type = "number"

[[site_fact]]
id = "coastal"
label = "K"
of = "house"
type = "bool"

[[site_fact]]
id = "cladding"
label = "C"
of = "face"
type = "bool"

[[site_fact]]
id = "low"
label = "L"
of = "opening"
type = "bool"
"#;

/// A rule over a room with these keys, after the facts.
fn rule(keys: &str) -> String {
    format!("{FACTS}[[room_rule]]\nid = \"one\"\nlabel = \"One\"\n{keys}\n")
}

/// The rule as it was read, or the findings.
fn check_rule(keys: &str, expected: Expect) {
    let text = format!("{HEAD}{}", rule(keys));
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &text)]);
    let mut out = lines_of(&findings, &sources);
    for rule in loaded
        .iter()
        .flat_map(|loaded| &loaded.catalog.declarations().room_rules)
    {
        let catalog = &loaded.as_ref().unwrap().catalog;
        writeln!(
            out,
            "{} `{}` by {} {:?}{}: {:?}; {} ({:?})",
            rule.id,
            rule.label,
            rule.authority,
            rule.effect,
            shown_when(&rule.when),
            rule.at_least_one,
            rule.message.written(catalog),
            rule.basis
        )
        .unwrap();
    }
    expected.assert_eq(&out);
}

#[test]
fn a_room_rule_has_a_condition_that_one_opening_meets() {
    check_rule(
        "when = 'sleeps && storey > 1 && !coastal'\nat_least_one = 'width > \"20\" && low'\nmessage = \"None in {storey}.\"\n\
         authority = \"code\"\neffect = \"sign_off\"\nbasis = \"a code\"",
        expect![""],
    );
    check_rule("at_least_one = 'low'\nmessage = \"None.\"", expect![""]);
}

#[test]
fn what_is_missing_is_said() {
    check_rule("when = 'sleeps'", expect![""]);
    check(
        "[[room_rule]]\nat_least_one = \"1 < 2\"\nmessage = \"m\"\n",
        expect![""],
    );
}

#[test]
fn when_and_message_read_only_what_is_the_same_for_the_whole_room() {
    for read in [
        "low",
        "cladding",
        "width > \"20\"",
        "exterior == \"white\"",
        "is_large",
    ] {
        let keys = format!(
            "when = '{read}'\nat_least_one = 'low'\nmessage = \"m\"\n{COLOUR}\
             [[figure]]\nid = \"is_large\"\nlabel = \"G\"\nformula = 'width > \"30\"'\n"
        );
        let (loaded, findings, sources) =
            load_files(&[("c/catalog.toml", &format!("{HEAD}{}", rule(&keys)))]);
        assert!(loaded.is_none(), "{read}");
        let lines = lines_of(&findings, &sources);
        assert!(lines.contains("NOT_OF_A_ROOM"), "{read}: {lines}");
        assert_eq!(findings.len(), 1, "{read}: {lines}");
    }
    check_rule(
        "when = 'sleeps && low'\nat_least_one = 'low'\nmessage = \"m\"",
        expect![""],
    );
    check_rule(
        "when = 'sleeps'\nat_least_one = 'low'\nmessage = \"{width} in {sleeps}\"",
        expect![""],
    );
}

#[test]
fn a_condition_is_a_yes_or_no() {
    check_rule(
        "when = 'storey'\nat_least_one = 'width'\nmessage = \"m\"",
        expect![""],
    );
    check_rule(
        "when = 'slep'\nat_least_one = 'width >'\nmessage = \"{wdth}\"",
        expect![""],
    );
}

#[test]
fn authority_and_effect_are_known_words() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\nauthority = \"inspector\"\neffect = \"stop\"",
        expect![""],
    );
}

#[test]
fn keys_that_other_rules_have_are_refused() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\nwaivable = true\nrequire = 'low'\nper = \"sash\"",
        expect![""],
    );
}

#[test]
fn ids_of_rules_are_one_namespace() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\n[[rule]]\nid = \"one\"\nrequire = 'low'\nmessage = \"m\"",
        expect![""],
    );
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\n[[room_rule]]\nid = \"one\"\nlabel = \"Again\"\nat_least_one = 'low'\nmessage = \"m\"",
        expect![""],
    );
}

#[test]
fn an_example_names_rules_over_a_room_apart() {
    let example = |keys: &str| {
        format!("at_least_one = 'low'\nmessage = \"m\"\n[[example]]\nid = \"e\"\ndate = 2026-11-25\n{keys}")
    };
    check_rule(&example("breaks = []\nroom_breaks = [\"on\"]"), expect![""]);
    check_rule(&example("breaks = [\"one\"]"), expect![""]);
    check_rule(
        &example("breaks = []\nroom_breaks = [\"one\"]\nroom_undecided = [\"one\"]"),
        expect![""],
    );
}
