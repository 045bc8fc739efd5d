//! One helper: a library with a catalog and a policy in, the policy in short or the findings out.

use std::fmt::Write as _;

use expect_test::{Expect, expect};

use super::*;
use crate::load::tests::{lines_of, load_files_with};

const CATALOG: &str = r#"format = 1
[catalog]
id = "c"
label = "C"
length = { unit = "in" }
[[attribute]]
id = "exterior"
label = "Exterior"
options = [{ id = "white" }, { id = "grey" }, { id = "green" }]
standard = "white"
[[attribute]]
id = "interior"
label = "Interior"
options = [{ id = "white" }, { id = "grey" }]
standard = 'exterior == "green" ? "white" : exterior == "grey" ? "grey" : "white"'
[[attribute]]
id = "trim"
label = "Trim"
options = [{ id = "white" }, { id = "grey" }]
standard = "interior"
[[attribute]]
id = "code"
label = "Code"
options = [{ id = "a" }, { id = "b" }]
standard = "a"
audience = "plant"
[[part]]
id = "upper"
kind = "sash"
label = "U"
[[part]]
id = "lower"
kind = "sash"
label = "L"
[[attribute]]
id = "glazing"
label = "Glazing"
options = [{ id = "clear" }, { id = "obscure" }]
standard = "ask"
per = "sash"
[[rule]]
id = "taken"
require = "true"
message = "m"
"#;

const HEAD: &str = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"c\", \"d\"]\n";

fn check(text: &str, expected: Expect) {
    check_files(&[("p/policy.toml", &format!("{HEAD}{text}"))], expected);
}

fn check_files(files: &[(&str, &str)], expected: Expect) {
    let mut all = vec![("c/catalog.toml", CATALOG)];
    all.extend(files);
    let mut out = String::new();
    let (findings, sources) = load_files_with(&all, |library, root, loaded, sources, findings| {
        let folder = library.locate(&root.join("p")).unwrap();
        let policy = load_policy(library, &folder, &loaded.catalog, sources, findings);
        assert_eq!(policy.is_some(), !findings.has_errors());
        if let Some(policy) = policy {
            out = short(&policy.policy.terms, &loaded.catalog);
        }
    });
    expected.assert_eq(&(lines_of(&findings, &sources) + &out));
}

fn short(terms: &PolicyTerms, catalog: &Catalog) -> String {
    let name = |index: &AttributeIndex| catalog.name_of(Subject::Attribute(*index));
    let mut out = String::new();
    for (index, options) in &terms.hidden {
        writeln!(out, "{} without {options:?}", name(index)).unwrap();
    }
    for (index, standard) in &terms.standards {
        writeln!(out, "{} standard {standard:?}", name(index)).unwrap();
    }
    for rule in &terms.rules {
        writeln!(
            out,
            "{} by {}: {}",
            rule.id,
            rule.authority,
            rule.message.written(catalog)
        )
        .unwrap();
    }
    writeln!(out, "{:?} round to {:?}", terms.mark_ups, terms.round_to).unwrap();
    for step in &terms.tail {
        writeln!(out, "{} {:?}", step.id, step.amount).unwrap();
    }
    out
}

#[test]
fn a_policy_hides_sets_standards_adds_rules_marks_up_and_rounds() {
    let text = r#"round_to = "1.00"
hide = [{ attribute = "exterior", option = "green" }, { attribute = "glazing", option = "obscure" }, { attribute = "nowhere", option = "x", catalog = "d" }]
standards = [{ attribute = "trim", standard = "white" }, { attribute = "glazing.upper", standard = "clear" }, { attribute = "exterior", standard = "ask", catalog = "c" }]
mark_ups = [{ class = "goods", percent = 25 }, { class = "labour", percent = "12.5" }]
[[rule]]
id = "no-grey"
require = 'exterior != "grey"'
message = "Not {exterior}."
[[rule]]
id = "of-d"
catalog = "d"
require = 'nowhere == "x"'
message = "m"
[[rule]]
id = "pairs"
table = "../c/t.csv"
rows = "allowed"
message = "m"
authority = "dealer"
[[tail]]
id = "freight"
label = "Freight"
flat = "12.00"
"#;
    check_files(
        &[
            ("p/policy.toml", &format!("{HEAD}{text}")),
            ("c/t.csv", "exterior,interior\nwhite,white\n"),
        ],
        expect![[r#"
            exterior without {`green`}
            glazing.upper without {`obscure`}
            glazing.lower without {`obscure`}
            exterior standard Ask
            trim standard Option(`white`)
            glazing.upper standard Option(`clear`)
            no-grey by dealer: Not {exterior}.
            pairs by dealer: m
            {Goods: 25, Labour: 12.5} round to Some(1)
            freight Money(12)
        "#]],
    );
}

#[test]
fn a_rule_by_table_reads_its_sheet_from_beside_the_policy() {
    let rule = "[[rule]]\nid = \"pairs\"\ntable = \"t.csv\"\nrows = \"allowed\"\nmessage = \"m\"\n";
    check_files(
        &[
            ("p/policy.toml", &format!("{HEAD}{rule}")),
            ("p/t.csv", "exterior,interior\nwhite,white\n"),
        ],
        expect![[r#"
            pairs by dealer: m
            {} round to None
        "#]],
    );
}

#[test]
fn a_policy_says_what_it_is_and_nothing_unknown() {
    check_files(
        &[("p/policy.toml", "format = 1\nhide = []\n")],
        expect![[r#"
        p/policy.toml:1:1 `` MISSING_KEY policy file lacks `policy`
          help: add `policy`
        p/policy.toml:2:1 `hide` UNKNOWN_KEY unknown key `hide` in policy file
          help: known keys are `format`, `policy`, `rule`, `tail`
    "#]],
    );
    check_files(
        &[(
            "p/policy.toml",
            "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalog = \"c\"\nhide = [{ atribute = \"exterior\" }]\nmark_ups = [{ class = \"good\" }]\n[[rulez]]\n",
        )],
        expect![[r#"
            p/policy.toml:5:1 `catalog` UNKNOWN_KEY unknown key `catalog` in policy `p`
              help: did you mean `catalogs`?
            p/policy.toml:6:9 `{ atribute = "exterior" }` MISSING_KEY hidden option lacks `option`
              help: add `option`
            p/policy.toml:6:11 `atribute` UNKNOWN_KEY unknown key `atribute` in hidden option
              help: did you mean `attribute`?
            p/policy.toml:7:13 `{ class = "good" }` MISSING_KEY mark-up lacks `percent`
              help: add `percent`
            p/policy.toml:7:23 `"good"` UNKNOWN_WORD `class` is `good`; expected one of `goods`, `labour`, `fee`, `credit`
              help: did you mean `goods`?
            p/policy.toml:8:3 `rulez` UNKNOWN_KEY unknown key `rulez` in policy file
              help: did you mean `rule`?
        "#]],
    );
}

#[test]
fn a_policy_is_for_the_catalogs_that_it_names() {
    check_files(
        &[("p/policy.toml", &HEAD.replace("\"c\", \"d\"", "\"d\""))],
        expect![[r#"
            p/policy.toml:3:6 `"p"` POLICY_FOR_OTHER_CATALOG policy `p` is not for catalog `c`
              help: use another policy, or add "c" to `catalogs`
        "#]],
    );
    check(
        "hide = [{ attribute = \"exterior\", option = \"green\", catalog = \"e\" }]\n[[rule]]\nid = \"r\"\nrequire = \"true\"\nmessage = \"m\"\ncatalog = \"cc\"\n",
        expect![[r#"
        p/policy.toml:6:63 `"e"` UNKNOWN_CATALOG the policy is not for catalog `e`
          help: its catalogs are `c`, `d`
        p/policy.toml:11:11 `"cc"` UNKNOWN_CATALOG the policy is not for catalog `cc`
          help: did you mean `c`?
    "#]],
    );
}

#[test]
fn what_it_hides_and_sets_is_there_and_not_the_plants() {
    check(
        "hide = [{ attribute = \"exterio\", option = \"white\" }, { attribute = \"exterior\", option = \"whit\" }, { attribute = \"code\", option = \"b\" }]\nstandards = [{ attribute = \"exterior\", standard = \"grye\" }, { attribute = \"code\", standard = \"b\" }, { attribute = \"glazing.uper\", standard = \"clear\" }]\n",
        expect![[r#"
            p/policy.toml:6:23 `"exterio"` UNKNOWN_ATTRIBUTE catalog `c` has no attribute `exterio`
              help: did you mean `exterior`?
            p/policy.toml:6:89 `"whit"` UNKNOWN_OPTION `whit` is not an option of `exterior`
              help: did you mean `white`?
            p/policy.toml:6:113 `"code"` PLANT_IN_POLICY `code` is determined by the plant; a policy cannot change it
              help: leave the entry out
            p/policy.toml:7:51 `"grye"` UNKNOWN_OPTION `grye` is not an option of `exterior`
              help: did you mean `grey`?
            p/policy.toml:7:75 `"code"` PLANT_IN_POLICY `code` is determined by the plant; a policy cannot change it
              help: leave the entry out
            p/policy.toml:7:115 `"glazing.uper"` UNKNOWN_ATTRIBUTE catalog `c` has no attribute `glazing.uper`
              help: did you mean `glazing.upper`?
        "#]],
    );
    check(
        "standards = [{ attribute = \"trim\", standard = \"white\" }, { attribute = \"trim\", standard = \"grey\" }]\n",
        expect![[r#"
        p/policy.toml:6:91 `"grey"` DUPLICATE_ID `trim` has two standards
          help: keep one of the two
          p/policy.toml:6:47 `"white"`: the first
    "#]],
    );
    check(
        "hide = [{ attribute = \"glazing.upper\", option = \"clear\" }, { attribute = \"glazing.upper\", option = \"obscure\" }]\n",
        expect![[r#"
        p/policy.toml:6:100 `"obscure"` NO_OPTIONS every option of `glazing.upper` is hidden
          help: leave at least one
    "#]],
    );
}

#[test]
fn hiding_a_standard_without_another_one_is_a_finding() {
    let hide = "hide = [{ attribute = \"exterior\", option = \"white\" }]\n";
    check(
        hide,
        expect![[r#"
        p/policy.toml:6:44 `"white"` HIDDEN_STANDARD `white` of `exterior` is hidden, and the plant's standard may be that
          help: set another standard for `exterior` in `standards`
    "#]],
    );
    check(
        &format!("{hide}standards = [{{ attribute = \"exterior\", standard = \"grey\" }}]\n"),
        expect![[r#"
        exterior without {`white`}
        exterior standard Option(`grey`)
        {} round to None
    "#]],
    );
    check(
        &format!("{hide}standards = [{{ attribute = \"exterior\", standard = \"white\" }}]\n"),
        expect![[r#"
        p/policy.toml:7:51 `"white"` HIDDEN_STANDARD `white` of `exterior` is hidden, and its standard here may be that
          help: set another standard for `exterior` in `standards`
    "#]],
    );
}

#[test]
fn a_standard_that_may_come_to_a_hidden_option_counts_and_what_is_only_compared_does_not() {
    // `interior` may be white; `green` is only compared with.
    check(
        "hide = [{ attribute = \"interior\", option = \"white\" }]\n",
        expect![[r#"
        p/policy.toml:6:44 `"white"` HIDDEN_STANDARD `white` of `interior` is hidden, and the plant's standard may be that
          help: set another standard for `interior` in `standards`
    "#]],
    );
    check(
        "hide = [{ attribute = \"exterior\", option = \"green\" }]\n",
        expect![[r#"
        exterior without {`green`}
        {} round to None
    "#]],
    );
    // `trim` is what `interior` is.
    check(
        "hide = [{ attribute = \"trim\", option = \"grey\" }]\n",
        expect![[r#"
        p/policy.toml:6:40 `"grey"` HIDDEN_STANDARD `grey` of `trim` is hidden, and the plant's standard may be that
          help: set another standard for `trim` in `standards`
    "#]],
    );
    check(
        "hide = [{ attribute = \"trim\", option = \"grey\" }, { attribute = \"interior\", option = \"grey\" }]\nstandards = [{ attribute = \"interior\", standard = \"white\" }]\n",
        expect![[r#"
        interior without {`grey`}
        trim without {`grey`}
        interior standard Option(`white`)
        {} round to None
    "#]],
    );
}

#[test]
fn rules_of_a_policy_are_the_dealers_and_its_own() {
    check(
        "[[rule]]\nid = \"r\"\nauthority = \"code\"\nrequire = \"true\"\nmessage = \"m\"\n[[rule]]\nid = \"taken\"\nrequire = \"true\"\nmessage = \"m\"\n[[rule]]\nid = \"s\"\nrequire = \"exterio\"\nmessage = \"m\"\n[[rule]]\nid = \"s\"\nrequire = \"true\"\nmessage = \"m\"\n",
        expect![[r#"
            p/policy.toml:8:13 `"code"` NOT_DEALER rule `r` has authority `code`; the rules of a policy are the dealer's
              help: leave `authority` out, or put the rule into the catalog
            p/policy.toml:12:6 `"taken"` DUPLICATE_ID `taken` is a rule of catalog `c` already
              help: give it another id
            p/policy.toml:17:12 `exterio` UNKNOWN_NAME `exterio` is not a name of this catalog
              help: did you mean `exterior`?
            p/policy.toml:20:6 `"s"` DUPLICATE_ID `s` stands twice among the rules
              help: give one of the two another id
              p/policy.toml:16:6 `"s"`: `s` stands here first
        "#]],
    );
}

#[test]
fn marking_up_and_rounding_have_bounds() {
    check(
        "round_to = 0\nmark_ups = [{ class = \"goods\", percent = -101 }, { class = \"fee\", percent = 1 }, { class = \"fee\", percent = 2 }, { class = \"labour\", percent = \"a\" }]\n",
        expect![[r#"
        p/policy.toml:6:12 `0` BAD_ROUNDING `round_to` is 0; expected more than 0
          help: write the smallest step of a price, such as "0.01"
        p/policy.toml:7:42 `-101` WRONG_VALUE `percent` is -101; expected -100 to 1000000
          help: write 25 for a mark-up of a quarter
        p/policy.toml:7:82 `{ class = "fee", percent = 2 }` DUPLICATE_ID this class is marked up twice
          help: keep one of the two
        p/policy.toml:7:144 `"a"` WRONG_VALUE `a` is not a number
          help: write a number such as `12.5`
    "#]],
    );
}

#[test]
fn standards_of_a_policy_may_close_a_circle() {
    check(
        "standards = [{ attribute = \"exterior\", standard = 'trim == \"white\" ? \"white\" : \"grey\"' }]\n",
        expect![[r#"
        p/policy.toml:3:6 `"p"` CYCLE `exterior` depends on itself: `exterior` needs `trim` needs `interior` needs `exterior`
          help: take one of these out of what another is worked out from
    "#]],
    );
}

#[test]
fn the_header_is_read_alone() {
    let mut all = vec![("c/catalog.toml", CATALOG)];
    let policy = format!("{HEAD}hidden = 1\n[[rule]]\n");
    all.push(("p/policy.toml", &policy));
    let (findings, sources) = load_files_with(&all, |library, root, _, sources, findings| {
        let folder = library.locate(&root.join("p")).unwrap();
        let header = policy_header(library, &folder, sources, findings).unwrap();
        assert_eq!(
            (header.id.as_str(), header.label.as_str(), header.catalogs.len()),
            ("p", "P", 2)
        );
    });
    assert_eq!(lines_of(&findings, &sources), "");
}

#[test]
fn the_standard_of_a_later_part_is_what_stands_at_the_first() {
    let hide = "hide = [{ attribute = \"glazing.lower\", option = \"clear\" }]\n";
    let standard = |of: &str| format!("standards = [{{ attribute = \"{of}\", standard = \"clear\" }}]\n");
    let both = hide.replace(".lower", "");
    let codes = |text: String| -> Vec<String> {
        let policy = format!("{HEAD}{text}");
        let files = [("c/catalog.toml", CATALOG), ("p/policy.toml", policy.as_str())];
        let (findings, _) = load_files_with(&files, |library, root, loaded, sources, findings| {
            let folder = library.locate(&root.join("p")).unwrap();
            let _ = load_policy(library, &folder, &loaded.catalog, sources, findings);
        });
        findings.iter().map(|f| f.code().to_owned()).collect()
    };
    assert_eq!(codes(standard("glazing.lower")), ["STANDARD_NOT_USED"]);
    assert_eq!(
        codes(format!("{hide}{}", standard("glazing.upper"))),
        ["HIDDEN_STANDARD"]
    );
    assert_eq!(
        codes(format!("{hide}{}", standard("glazing"))),
        ["HIDDEN_STANDARD"]
    );
    assert_eq!(
        codes(format!("{both}{}", standard("glazing"))),
        ["HIDDEN_STANDARD"]
    );
}
