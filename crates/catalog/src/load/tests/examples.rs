//! Examples.

use super::*;

fn example(rest: &str) -> String {
    format!(
        "{COLOUR}[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\n[[attribute]]\nid = \"glazing\"\nlabel = \"G\"\noptions = [{{ id = \"clear\" }}]\nstandard = \"clear\"\nper = \"sash\"\n[[attribute]]\nid = \"code\"\nlabel = \"Code\"\noptions = [{{ id = \"a\" }}]\nstandard = \"a\"\naudience = \"plant\"\n[[measure]]\nid = \"width\"\nlabel = \"W\"\n[[site_fact]]\nid = \"wet\"\nlabel = \"Wet\"\nof = \"room\"\ntype = \"bool\"\n[[rule]]\nid = \"no-grey\"\nrequire = 'exterior != \"grey\"'\nmessage = \"m\"\n[[notice]]\nid = \"note\"\ntext = \"t\"\n[[example]]\nid = \"e\"\n{rest}\n"
    )
}

fn refused(rest: &str, expected: Expect) {
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &format!("{HEAD}{}", example(rest)))]);
    assert!(loaded.is_none(), "it loads");
    expected.assert_eq(&lines_of(&findings, &sources));
}

#[test]
fn picks_name_attributes_with_their_part_and_options_of_them() {
    refused(
        "date = 2026-11-25\npicks = [{ attribute = \"exterio\", option = \"white\" }, { attribute = \"exterior\", option = \"gray\" }, { attribute = \"glazing\", option = \"clear\" }, { attribute = \"glazing.uper\", option = \"clear\" }, { attribute = \"code\", option = \"a\" }, { attribute = \"width\", option = \"a\" }, { atribute = \"exterior\" }]",
        expect![[r#"
            c/catalog.toml:46:24 `"exterio"` UNKNOWN_ATTRIBUTE there is no attribute `exterio`
              help: did you mean `exterior`?
            c/catalog.toml:46:90 `"gray"` UNKNOWN_OPTION `gray` is not an option of `exterior`
              help: did you mean `grey`?
            c/catalog.toml:46:114 `"glazing"` PART_NOT_SAID `glazing` is there once a part, and nothing says which part
              help: write `glazing.upper`
            c/catalog.toml:46:159 `"glazing.uper"` UNKNOWN_ATTRIBUTE there is no attribute `glazing.uper`
              help: did you mean `glazing.upper`?
            c/catalog.toml:46:209 `"code"` PICK_ON_PLANT `code` is determined by the plant and cannot be picked
              help: leave the pick out; its standard says what it is
            c/catalog.toml:46:247 `"width"` UNKNOWN_ATTRIBUTE there is no attribute `width`
              help: attributes are `code`, `exterior`, `glazing.upper`
            c/catalog.toml:46:272 `{ atribute = "exterior" }` MISSING_KEY pick lacks `option`
              help: add `option`
            c/catalog.toml:46:274 `atribute` UNKNOWN_KEY unknown key `atribute` in pick
              help: did you mean `attribute`?
        "#]],
    );
    refused(
        "date = 2026-11-25\npicks = [{ attribute = \"exterior\", option = \"white\" }, { attribute = \"exterior\", option = \"grey\" }]",
        expect![[r#"
            c/catalog.toml:46:70 `"exterior"` DUPLICATE_PICK `exterior` is picked twice
              help: keep one of the two picks
              c/catalog.toml:46:24 `"exterior"`: `exterior` is picked here first
        "#]],
    );
}

#[test]
fn measures_and_facts_are_as_in_an_order() {
    refused(
        "date = 2026-11-25\nmeasures = { width = \"35.7\", widht = \"1\" }\nfacts = { wet = \"yes\", dry = true }",
        expect![[r#"
            c/catalog.toml:46:22 `"35.7"` OFF_STEP measure `width` is `35.7`, which is not a multiple of 1/16 in
              help: the nearest are 35 11/16 in and 35 3/4 in
            c/catalog.toml:46:30 `widht` UNKNOWN_MEASURE there is no measure `widht`
              help: did you mean `width`?
            c/catalog.toml:47:17 `"yes"` WRONG_TYPE fact `wet` is `yes`; expected true or false
              help: write `true`, `false` or `"unknown"`
            c/catalog.toml:47:24 `dry` UNKNOWN_FACT there is no site fact `dry`
              help: site facts are declared in the catalog
        "#]],
    );
}

#[test]
fn what_an_example_expects_is_there() {
    refused(
        "date = 2026-11-25\nbreaks = [\"no-gray\", \"exterior.ofered\"]\nundecided = [\"exterior.determined\"]\nnotices = [\"not\"]\ntotal = { book = \"b\", amount = \"1,5\" }",
        expect![[r#"
            c/catalog.toml:46:11 `"no-gray"` UNKNOWN_RULE there is no rule `no-gray`
              help: did you mean `no-grey`?
            c/catalog.toml:46:22 `"exterior.ofered"` UNKNOWN_RULE there is no rule `exterior.ofered`
              help: did you mean `exterior.offered`?
            c/catalog.toml:47:14 `"exterior.determined"` UNKNOWN_RULE there is no rule `exterior.determined`
            c/catalog.toml:48:12 `"not"` UNKNOWN_NOTICE there is no notice `not`
              help: did you mean `note`?
            c/catalog.toml:49:32 `"1,5"` WRONG_VALUE `1,5` is not a number
              help: write a decimal point, not a comma
        "#]],
    );
    refused(
        "date = \"soon\"\ntotal = { amount = 1e3 }",
        expect![[r#"
            c/catalog.toml:45:8 `"soon"` NOT_A_DATE `date` is `soon`; expected a date like 2024-06-01
              help: write year, month and day, all in digits: 2024-06-01
            c/catalog.toml:46:9 `{ amount = 1e3 }` MISSING_KEY `total` lacks `book`
              help: add `book`
            c/catalog.toml:46:20 `1e3` NUMBER_WITH_EXPONENT `amount` is `1e3`, a number with an exponent
              help: write the number out: 1500, not 1.5e3
        "#]],
    );
    refused(
        "",
        expect![[r#"
        c/catalog.toml:43:1 `[[example]]` MISSING_KEY example `e` lacks `date`
          help: add `date`
    "#]],
    );
}

#[test]
fn implicit_rules_may_be_expected() {
    let rest = "date = 2026-11-25\nbreaks = [\"exterior.offered\", \"glazing.upper.applies\", \"code.determined\", \"has-a-price\", \"book-in-force\"]\nfacts = { wet = \"unknown\" }\nnotices = [\"note\"]";
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &format!("{HEAD}{}", example(rest)))]);
    assert_eq!(lines_of(&findings, &sources), "");
    let loaded = loaded.unwrap();
    let example = &loaded.catalog.declarations().examples[0];
    assert_eq!(example.breaks.len(), 5);
    assert!(example.site.facts.values().all(Option::is_none));
}
