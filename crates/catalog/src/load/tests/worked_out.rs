//! Measures, facts and figures; what goes in circles.

use super::*;

const WIDTH: &str = "[[measure]]\nid = \"width\"\nlabel = \"W\"\n";

fn figure(id: &str, rest: &str) -> String {
    format!("[[figure]]\nid = \"{id}\"\nlabel = \"G\"\n{rest}\n")
}

#[test]
fn types_of_figures_are_found_whatever_the_order() {
    check(
        &[
            WIDTH.to_owned(),
            figure("area", "formula = \"twice * width\""),
            figure("is_large", "formula = 'area > \"5 ft2\"'"),
            figure("twice", "formula = \"width * 2\""),
            figure("day", "formula = '\"2026-01-01\"'\ntype = \"date\""),
            COLOUR.to_owned(),
            figure("shade", "formula = 'is_large ? exterior : \"grey\"'"),
        ]
        .concat(),
        expect![[r#"
            exterior: white grey; standard Option(`white`)
            width: Length step Some(0.0625)
            area: Area
            is_large: Bool
            twice: Length
            day: Date
            shade: Option
        "#]],
    );
}

#[test]
fn a_declared_type_is_held_to() {
    check(
        &[
            WIDTH.to_owned(),
            figure("g", "formula = \"width\"\ntype = \"number\""),
        ]
        .concat(),
        expect![[r#"
        c/catalog.toml:12:12 `width` WRONG_TYPE this is a length; expected a number
          help: in_inches(...), in_feet(...) or in_mm(...) turns a length into a number
    "#]],
    );
    check(
        &figure("g", "formula = \"1\"\ntype = \"money\""),
        expect![[r#"
        c/catalog.toml:10:8 `"money"` UNKNOWN_WORD `type` is `money`; expected one of `number`, `length`, `area`, `date`, `bool`
          help: write one of these words
    "#]],
    );
    check(
        &[
            WIDTH.to_owned(),
            figure("g", "formula = \"width\"\nunit = \"lb\""),
        ]
        .concat(),
        expect![[r#"
        c/catalog.toml:13:8 `"lb"` KEYS_EXCLUDE figure `g` is a length and has a `unit`
          help: `unit` says what numbers count; leave it out
    "#]],
    );
}

#[test]
fn a_figure_is_a_formula_or_a_table() {
    check(
        &[
            figure("f", "formula = \"1\"\ntable = \"t.csv\""),
            figure("g", ""),
            figure("h", "formula = \"1\"\nkeys = [\"f\"]\nmatch = \"first\""),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:6:1 `[[figure]]` KEYS_EXCLUDE figure `f` has both `formula` and `table`
              help: keep one of the two
            c/catalog.toml:11:1 `[[figure]]` MISSING_KEY figure `g` lacks `formula` or `table`
              help: add `formula` or `table`
            c/catalog.toml:19:8 `["f"]` KEYS_EXCLUDE figure `h` has `keys`, which only a figure by table has
              help: leave `keys` out
            c/catalog.toml:20:9 `"first"` KEYS_EXCLUDE figure `h` has `match`, which only a figure by table has
              help: leave `match` out
        "#]],
    );
}

#[test]
fn a_formula_that_is_wrong_is_said_once_and_not_by_what_reads_the_figure() {
    check(
        &[
            figure("wrong", "formula = \"widht + 1\""),
            figure("on_it", "formula = \"wrong + 1\""),
            "[[rule]]\nid = \"r\"\nrequire = \"on_it > 2 && wrong > 1\"\nmessage = \"{on_it}\"\n".to_owned(),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:9:12 `widht` UNKNOWN_NAME `widht` is not a name of this catalog
              help: names are attributes, measures, facts and figures; an option is written in quotes
        "#]],
    );
}

#[test]
fn figures_that_go_in_a_circle_are_named_as_a_chain() {
    check(
        &[
            figure("c", "formula = \"a + 1\""),
            figure("a", "formula = \"b + 1\""),
            figure("b", "formula = \"c + 1\""),
            figure("on_it", "formula = \"b * 2\""),
            figure("own", "formula = \"own + 1\""),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:11:6 `"a"` CYCLE `a` depends on itself: `a` needs `b` needs `c` needs `a`
              help: take one of these out of what another is worked out from
              c/catalog.toml:15:6 `"b"`: `b`
              c/catalog.toml:7:6 `"c"`: `c`
            c/catalog.toml:23:6 `"own"` CYCLE `own` depends on itself: `own` needs `own`
              help: take one of these out of what another is worked out from
        "#]],
    );
    check(
        &[
            figure("a", "formula = \"b\"\ntype = \"number\""),
            figure("b", "formula = \"a\"\ntype = \"number\""),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:7:6 `"a"` CYCLE `a` depends on itself: `a` needs `b` needs `a`
              help: take one of these out of what another is worked out from
              c/catalog.toml:12:6 `"b"`: `b`
        "#]],
    );
}

#[test]
fn standards_and_conditions_that_go_in_a_circle_are_named_as_a_chain() {
    let attribute = |id: &str, rest: &str| {
        format!(
            "[[attribute]]\nid = \"{id}\"\nlabel = \"A\"\noptions = [{{ id = \"x\" }}, {{ id = \"y\" }}]\n{rest}\n"
        )
    };
    check(
        &[attribute("b", "standard = 'a'"), attribute("a", "standard = 'b'")].concat(),
        expect![[r#"
        c/catalog.toml:12:6 `"a"` CYCLE `a` depends on itself: `a` needs `b` needs `a`
          help: take one of these out of what another is worked out from
          c/catalog.toml:7:6 `"b"`: `b`
    "#]],
    );
    check(
        &[
            attribute("a", "standard = 'x'\napplies_when = 'n > 1'"),
            attribute("b", "standard = 'a'"),
            figure("n", "formula = 'b == \"x\" ? 1 : 2'"),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:7:6 `"a"` CYCLE `a` depends on itself: `a` needs `n` needs `b` needs `a`
              help: take one of these out of what another is worked out from
              c/catalog.toml:18:6 `"n"`: `n`
              c/catalog.toml:13:6 `"b"`: `b`
        "#]],
    );
    check(
        &attribute("a", "standard = 'x'\napplies_when = 'is_asked(a)'"),
        expect![[r#"
        c/catalog.toml:7:6 `"a"` CYCLE `a` depends on itself: `a` needs `a`
          help: take one of these out of what another is worked out from
    "#]],
    );
}

#[test]
fn when_a_part_exists_is_not_worked_out_from_all_parts() {
    check(
        &[
            "[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"U\"\nwhen = \"count > 1\"\n".to_owned(),
            figure("one", "formula = \"1\"\nper = \"sash\""),
            figure("count", "formula = \"sum(one)\""),
        ]
        .concat(),
        expect![[r#"
            c/catalog.toml:17:6 `"count"` CYCLE `count` depends on itself: `count` needs part `upper` needs `count`
              help: take one of these out of what another is worked out from
              c/catalog.toml:7:6 `"upper"`: part `upper`
        "#]],
    );
}

#[test]
fn steps_are_above_zero_and_of_the_type_of_the_measure() {
    check(
        "[[measure]]\nid = \"a\"\nlabel = \"M\"\nstep = \"-1/8\"\n[[measure]]\nid = \"b\"\nlabel = \"M\"\nstep = \"1/8\"\ntype = \"number\"\n[[measure]]\nid = \"d\"\nlabel = \"M\"\nstep = \"1,5\"\n[[measure]]\nid = \"e\"\nlabel = \"M\"\nstep = 0.5\n",
        expect![[r#"
            c/catalog.toml:9:8 `"-1/8"` WRONG_VALUE the step `-1/8` is not above zero
              help: write "none" for no step
            c/catalog.toml:13:8 `"1/8"` WRONG_VALUE `1/8` is not a number
              help: write a number such as `12.5`
            c/catalog.toml:18:8 `"1,5"` WRONG_VALUE `1,5` has a decimal comma
              help: write a decimal point: `1.5`, or no comma if it separates thousands
        "#]],
    );
}

#[test]
fn a_division_by_zero_and_an_expression_nested_ten_thousand_deep_are_findings() {
    check(
        &figure("g", "formula = \"1 / 0\""),
        expect![[r#"
        c/catalog.toml:9:16 `0` DIVISION this divides by zero
          help: write the number, such as `/ 2`; multiply by what is not written as a number
    "#]],
    );
    let deep = format!("{}1{}", "(".repeat(10_000), ")".repeat(10_000));
    let (loaded, findings, _) = load_files(&[(
        "c/catalog.toml",
        &format!("{HEAD}{}", figure("g", &format!("formula = \"{deep}\""))),
    )]);
    assert!(loaded.is_none());
    let said: Vec<String> = findings
        .iter()
        .map(|f| format!("{} {}\n", f.code(), f.message()))
        .collect();
    expect![[r#"
        SYNTAX the expression is nested deeper than 64 levels
    "#]]
    .assert_eq(&said.concat());
}
