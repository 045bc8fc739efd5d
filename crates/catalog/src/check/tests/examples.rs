//! Examples proved by a check, and rules that no example breaks.

use super::*;

/// A rule over a room, and an example in which it is broken when it is dry.
const ROOM: &str = "[[site_fact]]\nid = \"dry\"\nlabel = \"D\"\nof = \"opening\"\ntype = \"bool\"\n\
     [[room_rule]]\nid = \"wet-one\"\nlabel = \"A wet one\"\nat_least_one = \"!dry\"\nmessage = \"None is wet.\"\n\
     [[example]]\nid = \"dry\"\nfacts = { dry = true }\ndate = 2026-11-25\nbreaks = []\nroom_breaks = [\"wet-one\"]\n";

#[test]
fn an_example_is_judged_as_the_only_one_of_its_room() {
    let check = |old: &str, new: &str, expected: Expect| {
        check_with(&format!("{ROOM}{GREY}").replace(old, new), expected)
    };
    check(
        "",
        "",
        expect![[r#"
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check(
        "room_breaks = [\"wet-one\"]",
        "",
        expect![[r#"
            c/catalog.toml:29:6 `"wet-one"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks room rule `wet-one`
              help: add an `[[example]]` with room_breaks = ["wet-one"]
            c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break nothing of its room, and breaks `wet-one`
              help: its unit is judged as the only one of its room; see `room_breaks`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check(
        "dry = true",
        "dry = false",
        expect![[r#"
            c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break `wet-one` of its room, and breaks nothing
              help: its unit is judged as the only one of its room; see `room_breaks`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check(
        "dry = true",
        "dry = \"unknown\"",
        expect![[r#"
            c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should break `wet-one` of its room, and breaks nothing
              help: its unit is judged as the only one of its room; see `room_breaks`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check(
        "dry = true }\ndate = 2026-11-25\nbreaks = []\nroom_breaks = [\"wet-one\"]",
        "dry = \"unknown\" }\ndate = 2026-11-25\nbreaks = []\nroom_undecided = []",
        expect![[r#"
            c/catalog.toml:29:6 `"wet-one"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks room rule `wet-one`
              help: add an `[[example]]` with room_breaks = ["wet-one"]
            c/catalog.toml:34:6 `"dry"` EXAMPLE_DIFFERS example `dry` should leave nothing of its room undecided, and leaves `wet-one`
              help: its unit is judged as the only one of its room; see `room_undecided`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 2, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 1, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}

#[test]
fn an_example_that_does_not_come_out_says_what_does() {
    check_with(
        &GREY.replace("breaks = [\"no-grey\"]", ""),
        expect![[r#"
            c/catalog.toml:24:6 `"grey"` EXAMPLE_DIFFERS example `grey` should break nothing, and breaks `no-grey`
              help: `no-grey`: grey is not made.
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check_with(
        &GREY.replace("option = \"grey\"", "option = \"white\""),
        expect![[r#"
            c/catalog.toml:24:6 `"grey"` EXAMPLE_DIFFERS example `grey` should break `no-grey`, and breaks nothing
              help: what it should break holds; change the example or the rule
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 1 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    let undecided = "[[rule]]\nid = \"dry\"\nrequire = \"!wet\"\nmessage = \"Not in a wet place.\"\n[[notice]]\nid = \"damp\"\nwhen = \"wet\"\ntext = \"t\"\n[[notice]]\nid = \"always\"\ntext = \"t\"\n";
    check_with(
        &format!(
            "{undecided}{GREY}undecided = []\nnotices = [\"damp\"]\n[[example]]\nid = \"wet\"\nfacts = {{ wet = true }}\ndate = 2026-11-25\nbreaks = [\"dry\"]\nundecided = []\nnotices = [\"always\", \"damp\"]\n"
        ),
        expect![[r#"
            c/catalog.toml:35:6 `"grey"` EXAMPLE_DIFFERS example `grey` should carry `damp`, and carries `always`
              help: only what is carried for certain counts
            c/catalog.toml:35:6 `"grey"` EXAMPLE_DIFFERS example `grey` should leave nothing undecided, and leaves `dry`
              help: not known: Wet place
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 2}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 2, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}

#[test]
fn the_total_of_an_example_is_proved_by_its_book() {
    let total = |book: &str, amount: &str| {
        format!(
            "{GREY}[[example]]\nid = \"plain\"\ndate = 2026-11-25\ntotal = {{ book = \"{book}\", amount = \"{amount}\" }}\n"
        )
    };
    check_with(
        &total("b", "450"),
        expect![[r#"
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check_with(
        &total("b", "455.00"),
        expect![[r#"
            c/catalog.toml:29:6 `"plain"` EXAMPLE_DIFFERS example `plain` should come to 455, and comes to 450.00 USD
              help: quote it to see the items and the steps that lead there
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
    check_with(
        &total("bb", "450"),
        expect![[r#"
            c/catalog.toml:31:18 `"bb"` UNKNOWN_BOOK the library has no price book `bb`
              help: name a price book whose catalog is `c`
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 2 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}

#[test]
fn a_rule_without_an_example_that_breaks_it_alone_is_a_warning() {
    check_with(
        "",
        expect![[r#"
            c/catalog.toml:17:6 `"no-grey"` (warning) RULE_WITHOUT_EXAMPLE no example of catalog `c` breaks rule `no-grey` and nothing else
              help: add an `[[example]]` with breaks = ["no-grey"]
            catalog c in c: Counts { attributes: 1, options: 2, parts: 0, measures: 0, facts: 1, site_checks: 0, figures: 0, rules: {`plant`: 1}, room_rules: 0, tables: 0, rows: 0, items: 1, notices: 0, examples: 0 }
            book b in books/b for c in USD
            policy p in p for c
        "#]],
    );
}
