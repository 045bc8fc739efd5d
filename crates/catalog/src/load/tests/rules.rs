//! Rules and notices.

use super::*;

fn rule(rest: &str) -> String {
    format!("{COLOUR}[[rule]]\nid = \"r\"\n{rest}\n")
}

#[test]
fn a_rule_names_what_is_there() {
    check(
        &rule("require = 'exterior != \"gray\" && exteriour == \"white\"'\nmessage = \"{exterio}\""),
        expect![[r#"
        c/catalog.toml:14:24 `"gray"` UNKNOWN_OPTION `gray` is not an option of `exterior`
          help: did you mean `grey`?
        c/catalog.toml:14:34 `exteriour` UNKNOWN_NAME `exteriour` is not a name of this catalog
          help: did you mean `exterior`?
        c/catalog.toml:15:13 `exterio` UNKNOWN_NAME `exterio` is not a name of this catalog
          help: did you mean `exterior`?
    "#]],
    );
    check(
        &rule("require = 'exterior in family(\"darc\")'\nmessage = \"m\""),
        expect![[r#"
        c/catalog.toml:14:31 `"darc"` UNKNOWN_FAMILY no option of `exterior` is in the family `darc`
          help: did you mean `dark`?
    "#]],
    );
    check(
        &rule("require = '(exterior == \"white\"'\nmessage = \"{exterior\""),
        expect![[r#"
        c/catalog.toml:14:12 `(` SYNTAX found `(` that is not closed
          help: close it with `)`
          c/catalog.toml:14:32 ``: the expression ends here
        c/catalog.toml:15:12 `{` SYNTAX found `{` that is not closed
          help: close it with `}`, or write `{{` to print a brace
    "#]],
    );
}

#[test]
fn a_rule_is_a_condition_or_a_table() {
    check(
        &rule("message = \"m\""),
        expect![[r#"
        c/catalog.toml:12:1 `[[rule]]` MISSING_KEY rule `r` lacks `require` or `table`
          help: add `require` or `table`
    "#]],
    );
    check(
        &rule("require = \"true\"\ntable = \"t.csv\"\nrows = \"allowed\"\nmessage = \"m\""),
        expect![[r#"
        c/catalog.toml:12:1 `[[rule]]` KEYS_EXCLUDE rule `r` has both `require` and `table`
          help: keep one of the two
    "#]],
    );
    check(
        &rule(
            "require = \"true\"\nrows = \"allowed\"\nlayout = \"list\"\ndown = \"exterior\"\nmessage = \"m\"",
        ),
        expect![[r#"
        c/catalog.toml:15:8 `"allowed"` KEYS_EXCLUDE rule `r` has `rows`, which only a rule by table has
          help: leave `rows` out
        c/catalog.toml:16:10 `"list"` KEYS_EXCLUDE rule `r` has `layout`, which only a rule by table has
          help: leave `layout` out
        c/catalog.toml:17:8 `"exterior"` KEYS_EXCLUDE rule `r` has `down`, which only a rule by table has
          help: leave `down` out
    "#]],
    );
    check(
        &rule("table = \"t.csv\"\nlayout = \"matrix\"\nmessage = \"m\""),
        expect![[r#"
        c/catalog.toml:12:1 `[[rule]]` MISSING_KEY rule `r` lacks `across`
          help: add `across`
        c/catalog.toml:12:1 `[[rule]]` MISSING_KEY rule `r` lacks `down`
          help: add `down`
        c/catalog.toml:12:1 `[[rule]]` MISSING_KEY rule `r` lacks `rows`
          help: add `rows`
    "#]],
    );
    check(
        &rule("table = \"t.csv\"\nrows = \"some\"\nlayout = \"grid\"\ndown = \"exterior\"\nmessage = \"m\""),
        expect![[r#"
        c/catalog.toml:15:8 `"some"` UNKNOWN_WORD `rows` is `some`; expected one of `allowed`, `forbidden`
          help: write one of these words
        c/catalog.toml:16:10 `"grid"` UNKNOWN_WORD `layout` is `grid`; expected one of `list`, `matrix`
          help: write one of these words
    "#]],
    );
}

#[test]
fn a_rule_stands_on_an_authority_that_is_known() {
    check(
        &rule("require = \"true\"\nmessage = \"m\"\nauthority = \"plants\""),
        expect![[r#"
        c/catalog.toml:16:13 `"plants"` UNKNOWN_AUTHORITY there is no authority `plants`
          help: did you mean `plant`?
    "#]],
    );
    check(
        &rule("require = \"true\"\nmessage = \"m\"\nauthority = \"council\""),
        expect![[r#"
        c/catalog.toml:16:13 `"council"` UNKNOWN_AUTHORITY there is no authority `council`
          help: authorities are `code`, `dealer`, `plant`, `programme`; declare others with `[[authority]]`
    "#]],
    );
}

#[test]
fn a_rule_reads_its_sheet_from_beside_the_file_that_says_it() {
    let rule = rule("table = \"tables/t.csv\"\nrows = \"forbidden\"\nmessage = \"m\"");
    let catalog = format!("{HEAD}{rule}");
    check_files(
        &[
            ("c/catalog.toml", &catalog),
            ("c/tables/t.csv", "exterior\ngrey\n"),
        ],
        expect![[r#"
        exterior: white grey; standard Option(`white`)
        r None by plant m
    "#]],
    );
    check_files(
        &[("c/catalog.toml", &catalog)],
        expect![[r#"
        c/catalog.toml:14:9 `"tables/t.csv"` FILE_NOT_THERE the library has no file `c/tables/t.csv`
          help: look at the spelling; the path starts from the folder of this file
    "#]],
    );
    check_files(
        &[
            ("c/catalog.toml", &catalog),
            ("c/tables/t.csv", "exteriour\ngrey\n"),
        ],
        expect![[r#"
        c/tables/t.csv:1:1 `exteriour` UNKNOWN_NAME `exteriour` is not a name of this catalog
          help: did you mean `exterior`?
    "#]],
    );
    check_files(
        &[
            ("c/catalog.toml", &catalog),
            ("c/tables/t.csv", "exterior\ngray\n"),
        ],
        expect![[r#"
        c/tables/t.csv:2:1 `gray` UNKNOWN_OPTION unknown option or family `gray` of `exterior`
          help: did you mean `grey`? there are `grey`, `white`, `dark`
    "#]],
    );
    check_files(
        &[
            ("c/catalog.toml", &catalog),
            ("c/tables/t.csv", "exterior\ngrey,white\n"),
        ],
        expect![[r#"
            c/tables/t.csv:1:1 `exterior` NO_ROWS the table has no rows
              help: write a row, or take the table away
            c/tables/t.csv:2:1 `grey,white` RAGGED_ROW row 2 has 2 cells; the header has 1
              help: a comma begins a new cell: write 1200.00 without one between thousands, several options as `white|grey`, and a text with commas in quotes
        "#]],
    );
}

#[test]
fn a_requirement_may_rely_on_its_condition() {
    let grille = "[[attribute]]\nid = \"grille\"\nlabel = \"G\"\noptions = [{ id = \"none\" }, { id = \"bar\", properties = { wide = 3 } }]\nstandard = \"none\"\napplies_when = 'exterior == \"white\"'\n";
    check(
        &format!(
            "{grille}{}",
            rule("when = \"is_asked(grille)\"\nrequire = \"grille.wide > 2\"\nmessage = \"{grille.wide}\"")
        ),
        expect![[r#"
        grille: none bar; standard Option(`none`) when Compare(Equal, Read(Attribute(AttributeIndex(1))), Literal(Option(`white`)))
        exterior: white grey; standard Option(`white`)
        r None by plant when IsAsked(AttributeIndex(0)) {grille.wide}
    "#]],
    );
    check(
        &format!(
            "{grille}{}",
            rule("require = \"grille.wide > 2\"\nmessage = \"m\"")
        ),
        expect![[r#"
        c/catalog.toml:20:12 `grille.wide` NOT_GUARDED `grille` may be not asked here, and then it has no `wide`
          help: write `is_asked(grille) && ...` or `!is_asked(grille) || ...`
    "#]],
    );
}

#[test]
fn a_notice_has_a_kind_and_a_text() {
    check(
        "[[notice]]\nid = \"n\"\nkind = \"danger\"\ntext = \"t\"\nwhen = \"1\"\n",
        expect![[r#"
        c/catalog.toml:8:8 `"danger"` UNKNOWN_WORD `kind` is `danger`; expected one of `caution`, `warranty`, `sign_off`
          help: write one of these words
        c/catalog.toml:10:9 `1` WRONG_TYPE this is a number; expected a yes or no
          help: compare it with something: `>=`, `==`
    "#]],
    );
}

#[test]
fn a_waivable_rule_of_the_code_or_a_programme_is_warned_of() {
    let rule = |authority: &str| {
        format!(
            "[[rule]]\nid = \"r-{authority}\"\nauthority = \"{authority}\"\nwaivable = true\nrequire = \"true\"\nmessage = \"m\"\n"
        )
    };
    let rules: String = ["plant", "dealer", "code", "programme"].map(rule).concat();
    let (loaded, findings, _) = load_files(&[("c/catalog.toml", &format!("{HEAD}{rules}"))]);
    assert!(loaded.is_some());
    let said = findings.iter().filter(|f| f.code() == "WAIVABLE_LAW");
    assert_eq!(said.count(), 2);
}
