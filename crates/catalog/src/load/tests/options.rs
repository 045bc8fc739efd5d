//! Option lists, options, and standards.

use super::*;

#[test]
fn attributes_share_an_option_list() {
    check(
        "[[option_list]]\nid = \"colours\"\noptions = [{ id = \"white\" }, { id = \"grey\" }]\n[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = \"colours\"\nstandard = \"white\"\n[[attribute]]\nid = \"b\"\nlabel = \"B\"\noptions = \"colours\"\nstandard = \"a\"\n",
        expect![[r#"
            a: white grey; standard Option(`white`)
            b: white grey; standard Formula(Read(Attribute(AttributeIndex(0))))
        "#]],
    );
}

#[test]
fn an_unknown_option_list_is_said_once_and_not_by_what_names_the_attribute() {
    check(
        "[[option_list]]\nid = \"colours\"\noptions = [{ id = \"white\" }]\n[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = \"colour\"\nstandard = \"white\"\n[[rule]]\nid = \"r\"\nrequire = 'a == \"white\"'\nmessage = \"{a}\"\n[[figure]]\nid = \"g\"\nlabel = \"G\"\nformula = 'a == \"white\" ? 1 : 2'\n[[price]]\nid = \"i\"\nlabel = \"I\"\nby = [\"a\"]\nquantity = \"g\"\n[[example]]\nid = \"e\"\ndate = 2026-11-25\npicks = [{ attribute = \"a\", option = \"white\" }]\n",
        expect![[r#"
            c/catalog.toml:12:11 `"colour"` UNKNOWN_OPTION_LIST there is no option list `colour`
              help: did you mean `colours`?
        "#]],
    );
}

#[test]
fn an_attribute_has_options() {
    check(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = []\nstandard = \"white\"\n[[option_list]]\nid = \"l\"\noptions = []\n[[site_fact]]\nid = \"f\"\nlabel = \"F\"\nof = \"room\"\ntype = \"enumeration\"\noptions = []\n[[site_fact]]\nid = \"g\"\nlabel = \"G\"\nof = \"room\"\ntype = \"bool\"\noptions = [\"a\"]\n",
        expect![[r#"
            c/catalog.toml:9:11 `[]` NO_OPTIONS attribute `a` has no options
              help: give it at least one; `none` is an option too
            c/catalog.toml:13:11 `[]` NO_OPTIONS option list `l` has no options
              help: give it at least one; `none` is an option too
            c/catalog.toml:19:11 `[]` NO_OPTIONS site fact `f` has no options
              help: an enumeration has at least one value
            c/catalog.toml:25:11 `["a"]` KEYS_EXCLUDE site fact `g` has `options`, which only an enumeration has
              help: leave `options` out
        "#]],
    );
}

#[test]
fn what_replaces_an_option_is_another_option_and_dates_are_in_order() {
    check(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{ id = \"x\", replaced_by = \"z\" }, { id = \"y\", replaced_by = \"y\" }, { id = \"u\", offered_from = 2026-02-01, offered_until = 2026-01-01, honoured_until = 2025-12-31 }, { id = \"v\", honoured_until = 2026-01-01 }, { id = \"w\", offered_from = 2026-01-01, offered_until = 2026-01-01, honoured_until = 2026-01-01 }]\nstandard = \"x\"\n",
        expect![[r#"
            c/catalog.toml:9:38 `"z"` UNKNOWN_OPTION `z` is not an option of attribute `a`
              help: options are `u`, `v`, `w`, `x`, `y`
            c/catalog.toml:9:71 `"y"` UNKNOWN_OPTION option `y` replaces itself
              help: name another option
            c/catalog.toml:9:133 `2026-01-01` DATES_OUT_OF_ORDER `offered_until` is 2026-01-01, before `offered_from`, 2026-02-01
              help: the order is offered_from, offered_until, honoured_until
              c/catalog.toml:9:105 `2026-02-01`: `offered_from`
            c/catalog.toml:9:162 `2025-12-31` DATES_OUT_OF_ORDER `honoured_until` is 2025-12-31, before `offered_until`, 2026-01-01
              help: the order is offered_from, offered_until, honoured_until
              c/catalog.toml:9:133 `2026-01-01`: `offered_until`
            c/catalog.toml:9:205 `2026-01-01` MISSING_KEY option `v` has `honoured_until` and no `offered_until`
              help: say until when it is offered
        "#]],
    );
}

#[test]
fn a_property_has_one_type_over_all_options() {
    check(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{ id = \"x\", properties = { gloss = 30, sheen = \"1/8\", thick = \"wide\", list = [1] } }, { id = \"y\", properties = { gloss = \"30\", sheen = \"2 ft2\" } }]\nstandard = \"x\"\n",
        expect![[r#"
            c/catalog.toml:9:74 `"wide"` WRONG_VALUE `wide` is not a length
              help: a property in quotes is a length or an area; write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            c/catalog.toml:9:89 `[1]` WRONG_TYPE property `list` is an array; expected a single value
            c/catalog.toml:9:133 `"30"` WRONG_TYPE property `gloss` is a length here and a number at another option
              help: a property has one type; a length stands in quotes, a number does not
              c/catalog.toml:9:47 `30`: a number
            c/catalog.toml:9:147 `"2 ft2"` WRONG_TYPE property `sheen` is an area here and a length at another option
              help: a property has one type; a length stands in quotes, a number does not
              c/catalog.toml:9:59 `"1/8"`: a length
        "#]],
    );
}

#[test]
fn a_standard_is_ask_an_option_or_an_expression_that_gives_one() {
    let with = |standard: &str| COLOUR.replace("standard = \"white\"", &format!("standard = '{standard}'"));
    check(
        &with("ask"),
        expect![[r#"
        exterior: white grey; standard Ask
    "#]],
    );
    check(
        &with("whit"),
        expect![[r#"
        c/catalog.toml:11:12 `'whit'` UNKNOWN_OPTION `whit` is not an option of `exterior`
          help: did you mean `white`?
    "#]],
    );
    check(
        &with("blue"),
        expect![[r#"
        c/catalog.toml:11:12 `'blue'` UNKNOWN_OPTION `blue` is not an option of `exterior`
          help: write `ask`, an expression, or one of `grey`, `white`
    "#]],
    );
    check(
        &with("true ? \"grey\" : \"blue\""),
        expect![[r#"
        c/catalog.toml:11:29 `"blue"` UNKNOWN_OPTION `blue` is not an option of `exterior`
          help: options of `exterior` are `grey`, `white`
    "#]],
    );
    check(
        &with("1 + 1"),
        expect![[r#"
        c/catalog.toml:11:13 `1 + 1` WRONG_TYPE this is a number; expected an option
          help: make both sides one type
    "#]],
    );
    check(
        &with("true ? \"grey"),
        expect![[r#"
        c/catalog.toml:11:20 `"` SYNTAX found a quote `"` that is not closed on its line
          help: close the text with `"`; inside it write `\"`
          c/catalog.toml:11:25 ``: the line ends here
    "#]],
    );
}

#[test]
fn an_attribute_of_the_plant_does_not_ask() {
    check(
        &COLOUR.replace("standard = \"white\"", "standard = \"ask\"\naudience = \"plant\""),
        expect![[r#"
        c/catalog.toml:11:12 `"ask"` PLANT_ASKS attribute `exterior` is for the plant and asks
          help: nobody is asked; give it a standard, or the audience `customer`
    "#]],
    );
}

#[test]
fn a_standard_may_read_a_property_that_its_own_applies_when_guards() {
    let other = r#"
[[attribute]]
id = "grille"
label = "Grille"
options = [{ id = "none" }, { id = "bar", properties = { wide = 3 } }]
standard = "none"
applies_when = 'exterior == "white"'
[[attribute]]
id = "bar_colour"
label = "Bar colour"
options = [{ id = "white" }, { id = "grey" }]
"#;
    let guarded = "applies_when = 'is_asked(grille)'\nstandard = 'grille.wide > 2 ? \"white\" : \"grey\"'\n";
    check(
        &format!("{COLOUR}{other}{guarded}"),
        expect![[r#"
        exterior: white grey; standard Option(`white`)
        grille: none bar; standard Option(`none`) when Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`)))
        bar_colour: white grey; standard Formula(Conditional(Compare(Greater, Property(AttributeIndex(1), `wide`), Literal(Number(2))), Literal(Option(`white`)), Literal(Option(`grey`)))) when IsAsked(AttributeIndex(1))
    "#]],
    );
    let bare = "standard = 'grille.wide > 2 ? \"white\" : \"grey\"'\n";
    check(
        &format!("{COLOUR}{other}{bare}"),
        expect![[r#"
        c/catalog.toml:23:13 `grille.wide` NOT_GUARDED `grille` may be not asked here, and then it has no `wide`
          help: write `is_asked(grille) && ...` or `!is_asked(grille) || ...`
    "#]],
    );
}
