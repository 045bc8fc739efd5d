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
        expect![[r#"
            one `One` by code SignOff when And([Read(Fact(FactIndex(0))), Compare(Greater, Read(Fact(FactIndex(1))), Literal(Number(1))), Not(Read(Fact(FactIndex(2))))]): And([Compare(Greater, Read(Measure(MeasureIndex(0))), Literal(Length(20))), Read(Fact(FactIndex(4)))]); None in {storey}. (Some("a code"))
        "#]],
    );
    check_rule(
        "at_least_one = 'low'\nmessage = \"None.\"",
        expect![[r#"
        one `One` by plant Block: Read(Fact(FactIndex(4))); None. (None)
    "#]],
    );
}

#[test]
fn what_is_missing_is_said() {
    check_rule(
        "when = 'sleeps'",
        expect![[r#"
        c/catalog.toml:40:1 `[[room_rule]]` MISSING_KEY room rule `one` lacks `at_least_one`
          help: add `at_least_one`
        c/catalog.toml:40:1 `[[room_rule]]` MISSING_KEY room rule `one` lacks `message`
          help: add `message`
    "#]],
    );
    check(
        "[[room_rule]]\nat_least_one = \"1 < 2\"\nmessage = \"m\"\n",
        expect![[r#"
            c/catalog.toml:6:1 `[[room_rule]]` MISSING_KEY room rule lacks `id`
              help: add `id`
            c/catalog.toml:6:1 `[[room_rule]]` MISSING_KEY room rule lacks `label`
              help: add `label`
        "#]],
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
        expect![[r#"
            c/catalog.toml:43:8 `'sleeps && low'` NOT_OF_A_ROOM room rule `one` reads something that may differ from opening to opening
              help: `when` and `message` of a room rule read facts of the house, a floor or a room; what one opening must meet stands in `at_least_one`
        "#]],
    );
    check_rule(
        "when = 'sleeps'\nat_least_one = 'low'\nmessage = \"{width} in {sleeps}\"",
        expect![[r#"
            c/catalog.toml:45:11 `"{width} in {sleeps}"` NOT_OF_A_ROOM room rule `one` reads something that may differ from opening to opening
              help: `when` and `message` of a room rule read facts of the house, a floor or a room; what one opening must meet stands in `at_least_one`
        "#]],
    );
}

#[test]
fn a_condition_is_a_yes_or_no() {
    check_rule(
        "when = 'storey'\nat_least_one = 'width'\nmessage = \"m\"",
        expect![[r#"
            c/catalog.toml:43:9 `storey` WRONG_TYPE this is a number; expected a yes or no
              help: compare it with something: `>=`, `==`
            c/catalog.toml:44:17 `width` WRONG_TYPE this is a length; expected a yes or no
              help: compare it with something: `>=`, `==`
        "#]],
    );
    check_rule(
        "when = 'slep'\nat_least_one = 'width >'\nmessage = \"{wdth}\"",
        expect![[r#"
            c/catalog.toml:43:9 `slep` UNKNOWN_NAME `slep` is not a name of this catalog
              help: names are attributes, measures, facts and figures; an option is written in quotes
            c/catalog.toml:44:24 `` SYNTAX found the end of the expression, expected a value
            c/catalog.toml:45:13 `wdth` UNKNOWN_NAME `wdth` is not a name of this catalog
              help: did you mean `width`?
        "#]],
    );
}

#[test]
fn authority_and_effect_are_known_words() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\nauthority = \"inspector\"\neffect = \"stop\"",
        expect![[r#"
            c/catalog.toml:45:13 `"inspector"` UNKNOWN_AUTHORITY there is no authority `inspector`
              help: authorities are `code`, `dealer`, `plant`, `programme`; declare others with `[[authority]]`
            c/catalog.toml:46:10 `"stop"` UNKNOWN_WORD `effect` is `stop`; expected one of `block`, `warn`, `sign_off`
              help: write one of these words
        "#]],
    );
}

#[test]
fn keys_that_other_rules_have_are_refused() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\nwaivable = true\nrequire = 'low'\nper = \"sash\"",
        expect![[r#"
            c/catalog.toml:45:1 `waivable` UNKNOWN_KEY unknown key `waivable` in room rule `one`
              help: known keys are `id`, `label`, `authority`, `effect`, `when`, `at_least_one`, `message`, `basis`
            c/catalog.toml:46:1 `require` UNKNOWN_KEY unknown key `require` in room rule `one`
              help: known keys are `id`, `label`, `authority`, `effect`, `when`, `at_least_one`, `message`, `basis`
            c/catalog.toml:47:1 `per` UNKNOWN_KEY unknown key `per` in room rule `one`
              help: known keys are `id`, `label`, `authority`, `effect`, `when`, `at_least_one`, `message`, `basis`
        "#]],
    );
}

#[test]
fn ids_of_all_rules_are_one_namespace() {
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\n[[rule]]\nid = \"one\"\nrequire = 'low'\nmessage = \"m\"",
        expect![[r#"
            c/catalog.toml:41:6 `"one"` DUPLICATE_ID `one` stands twice among the rules
              help: give one of the two another id
              c/catalog.toml:46:6 `"one"`: `one` stands here first
        "#]],
    );
    check_rule(
        "at_least_one = 'low'\nmessage = \"m\"\n[[room_rule]]\nid = \"one\"\nlabel = \"Again\"\nat_least_one = 'low'\nmessage = \"m\"",
        expect![[r#"
            c/catalog.toml:46:6 `"one"` DUPLICATE_ID `one` stands twice among the room rules
              help: give one of the two another id
              c/catalog.toml:41:6 `"one"`: `one` stands here first
        "#]],
    );
}

#[test]
fn an_example_names_rules_over_a_room_apart() {
    let example = |keys: &str| {
        format!("at_least_one = 'low'\nmessage = \"m\"\n[[example]]\nid = \"e\"\ndate = 2026-11-25\n{keys}")
    };
    check_rule(
        &example("breaks = []\nroom_breaks = [\"on\"]"),
        expect![[r#"
        c/catalog.toml:49:16 `"on"` UNKNOWN_RULE there is no room rule `on`
          help: did you mean `one`?
    "#]],
    );
    check_rule(
        &example("breaks = [\"one\"]"),
        expect![[r#"
        c/catalog.toml:48:11 `"one"` UNKNOWN_RULE there is no rule `one`
    "#]],
    );
    check_rule(
        &example("breaks = []\nroom_breaks = [\"one\"]\nroom_undecided = [\"one\"]"),
        expect![[r#"
            one `One` by plant Block: Read(Fact(FactIndex(4))); m (None)
        "#]],
    );
}
