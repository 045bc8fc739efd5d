//! Bounds of measures and facts, and what they must agree on.

use astragal_model::Number;

use super::*;

const HEIGHTS: &str = "[[site_fact]]\nid = \"sill\"\nlabel = \"S\"\nof = \"opening\"\ntype = \"length\"\nleast = \"-10 ft\"\nmost = 120\nstep = \"1/16\"\n\
     [[site_fact]]\nid = \"begins\"\nlabel = \"B\"\nof = \"opening\"\ntype = \"length\"\n";

#[test]
fn both_ends_are_read_in_the_unit_of_the_catalog() {
    let text = format!("{HEAD}{COLOUR}{HEIGHTS}");
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &text)]);
    let loaded = loaded.unwrap_or_else(|| panic!("{}", lines_of(&findings, &sources)));
    let sill = loaded.catalog.declarations().facts.values().next().unwrap();
    let inches = |number: i64| Some(Number::from(number));
    assert_eq!(sill.bounds.least, inches(-120));
    assert_eq!(sill.bounds.most, inches(120));
    assert_eq!(sill.step, Number::ratio(1, 16));
}

#[test]
fn bounds_that_cannot_be_met_or_read_are_errors() {
    check(
        "[[measure]]\nid = \"width\"\nlabel = \"W\"\nleast = 40\nmost = \"3 ft\"\n\
         [[measure]]\nid = \"height\"\nlabel = \"H\"\nleast = \"low\"\n\
         [[site_fact]]\nid = \"wet\"\nlabel = \"W\"\nof = \"room\"\ntype = \"bool\"\nleast = 0\n\
         [[site_fact]]\nid = \"year\"\nlabel = \"Y\"\nof = \"house\"\ntype = \"number\"\nstep = 0\n",
        expect![[r#"
            c/catalog.toml:10:8 `"3 ft"` WRONG_VALUE the least that is taken, `40`, is above the most, `3 ft`
              help: write the smaller number as `least`, or leave one of the two out
              c/catalog.toml:9:9 `40`: the least
            c/catalog.toml:14:9 `"low"` WRONG_VALUE `low` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            c/catalog.toml:20:9 `0` KEYS_EXCLUDE site fact `wet` has `least`, which only a number and a length have
              help: leave `least` out
            c/catalog.toml:26:8 `0` WRONG_VALUE the step `0` is not above zero
              help: write "none" for no step
        "#]],
    );
}

#[test]
fn a_site_check_reads_what_is_known_and_nothing_that_is_chosen() {
    let check_of = |require: &str| {
        format!("{COLOUR}{HEIGHTS}[[site_check]]\nid = \"c\"\nrequire = '{require}'\nmessage = \"M\"\n")
    };
    check(
        &check_of("begins >= sill"),
        expect![[r#"
            exterior: white grey; standard Option(`white`)
            sill: Length of Opening []
            begins: Length of Opening []
        "#]],
    );
    check(
        &check_of("begins >= sill && exterior == \"white\""),
        expect![[r#"
            c/catalog.toml:27:11 `'begins >= sill && exterior == "white"'` NOT_OF_A_SITE site check `c` reads something that is chosen
              help: a site check reads measures and facts; what depends on choices stands in a `[[rule]]`
        "#]],
    );
    check(
        &check_of("is_asked(exterior) || begins >= sill"),
        expect![[r#"
            c/catalog.toml:27:11 `'is_asked(exterior) || begins >= sill'` NOT_OF_A_SITE site check `c` reads something that is chosen
              help: a site check reads measures and facts; what depends on choices stands in a `[[rule]]`
        "#]],
    );
    check(
        &check_of("begins"),
        expect![[r#"
            c/catalog.toml:27:12 `begins` WRONG_TYPE this is a length; expected a yes or no
              help: compare it with something: `>=`, `==`
        "#]],
    );
    check(
        &format!("{HEIGHTS}[[site_check]]\nid = \"c\"\n"),
        expect![[r#"
        c/catalog.toml:19:1 `[[site_check]]` MISSING_KEY site check `c` lacks `message`
          help: add `message`
        c/catalog.toml:19:1 `[[site_check]]` MISSING_KEY site check `c` lacks `require`
          help: add `require`
    "#]],
    );
    let twice = format!(
        "{0}{1}",
        check_of("begins >= sill"),
        "[[site_check]]\nid = \"c\"\nrequire = 'true'\nmessage = \"M\"\n"
    );
    check(
        &twice,
        expect![[r#"
            c/catalog.toml:30:6 `"c"` DUPLICATE_ID `c` stands twice among the site checks
              help: give one of the two another id
              c/catalog.toml:26:6 `"c"`: `c` stands here first
        "#]],
    );
}
