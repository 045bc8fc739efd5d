//! What is `per` part.

use super::*;

const SASHES: &str = r#"
[[part]]
id = "upper"
kind = "sash"
label = "Upper"
when = 'exterior == "white"'
[[part]]
id = "lower"
kind = "sash"
label = "Lower"
[[attribute]]
id = "glazing"
label = "Glazing"
options = [{ id = "clear" }, { id = "obscure" }]
standard = "clear"
applies_when = 'exterior != "grey"'
per = "sash"
"#;

#[test]
fn a_declaration_that_is_per_part_is_written_out_with_its_part_in_front() {
    check(
        &format!(
            "{COLOUR}{SASHES}[[figure]]\nid = \"share\"\nlabel = \"G\"\nformula = 'glazing == \"clear\" ? 1 : 2'\nper = \"sash\"\n[[figure]]\nid = \"all\"\nlabel = \"G\"\nformula = \"sum(share)\"\n[[rule]]\nid = \"r\"\nwhen = \"share > 1\"\nrequire = 'glazing == \"clear\"'\nmessage = \"{{glazing}}\"\nper = \"sash\"\n[[price]]\nid = \"i\"\nlabel = \"I\"\nby = [\"glazing\"]\nper = \"sash\"\n[[notice]]\nid = \"n\"\ntext = \"{{glazing}}\"\nper = \"sash\"\n"
        )
        .replace("id = \"all\"", "id = \"shares\""),
        expect![[r#"
            exterior: white grey; standard Option(`white`)
            glazing.upper: clear obscure; standard Option(`clear`) when And([Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))), Compare(NotEqual, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))])
            glazing.lower: clear obscure; standard Option(`clear`) when Compare(NotEqual, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))
            share.upper: Number
            share.lower: Number
            shares: Number
            r Some(`upper`) by plant when And([Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))), Compare(Greater, Read(Figure(FigureIndex(0))), Literal(Number(1)))]) {glazing.upper}
            r Some(`lower`) by plant when Compare(Greater, Read(Figure(FigureIndex(1))), Literal(Number(1))) {glazing.lower}
            i Goods By([AttributeIndex(1)]) when Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))) quantity None
            i Goods By([AttributeIndex(2)]) quantity None
            n Caution when Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))) {glazing.upper}
            n Caution {glazing.lower}
        "#]],
    );
}

#[test]
fn a_bare_name_needs_a_part() {
    check(
        &format!("{COLOUR}{SASHES}[[rule]]\nid = \"r\"\nrequire = 'glazing == \"clear\"'\nmessage = \"m\"\n"),
        expect![[r#"
            c/catalog.toml:31:12 `glazing` PART_NOT_SAID `glazing` is one a sash, and here nothing says which sash
              help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts
        "#]],
    );
}

#[test]
fn per_names_a_kind_of_part() {
    check(
        &format!(
            "{COLOUR}{SASHES}[[rule]]\nid = \"r\"\nrequire = \"true\"\nmessage = \"m\"\nper = \"sas\"\n[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{{ id = \"x\" }}]\nstandard = \"x\"\nper = \"lite\"\n"
        ),
        expect![[r#"
            c/catalog.toml:33:7 `"sas"` UNKNOWN_PART_KIND no part is a `sas`
              help: did you mean `sash`?
            c/catalog.toml:39:7 `"lite"` UNKNOWN_PART_KIND no part is a `lite`
              help: kinds of parts are `sash`
        "#]],
    );
    check(
        "[[notice]]\nid = \"n\"\ntext = \"t\"\nper = \"sash\"\n",
        expect![[r#"
        c/catalog.toml:9:7 `"sash"` UNKNOWN_PART_KIND no part is a `sash`
          help: declare the parts with `[[part]]`
    "#]],
    );
}

#[test]
fn a_part_is_no_property_of_what_is_per_part() {
    check(
        &format!(
            "{COLOUR}{}",
            SASHES.replace(
                "{ id = \"clear\" }",
                "{ id = \"clear\", properties = { upper = 1 } }"
            )
        ),
        expect![[r#"
            c/catalog.toml:23:6 `"glazing"` DUPLICATE_ID `upper` is a property of `glazing` and a part
              help: `glazing.upper` would mean both; rename one
              c/catalog.toml:14:6 `"upper"`: part `upper`
        "#]],
    );
}

#[test]
fn a_part_that_depends_on_what_it_has_goes_in_a_circle() {
    check(
        &format!(
            "{COLOUR}{}",
            SASHES.replace(
                "when = 'exterior == \"white\"'",
                "when = 'glazing.lower == \"clear\"'"
            )
        ),
        expect![[r#"
            c/catalog.toml:23:6 `"glazing"` CYCLE `glazing.lower` depends on itself: `glazing.lower` needs `glazing.upper` needs `glazing.lower`
              help: take one of these out of what another is worked out from
              c/catalog.toml:23:6 `"glazing"`: `glazing.upper`
        "#]],
    );
    check(
        &format!(
            "{COLOUR}{}",
            SASHES.replace(
                "when = 'exterior == \"white\"'",
                "when = 'glazing.upper == \"clear\"'"
            )
        ),
        expect![[r#"
            c/catalog.toml:23:6 `"glazing"` CYCLE `glazing.upper` depends on itself: `glazing.upper` needs `glazing.upper`
              help: take one of these out of what another is worked out from
        "#]],
    );
}

#[test]
fn a_figure_of_one_part_may_read_that_of_another_when_it_says_its_type() {
    let figure = "[[figure]]\nid = \"share\"\nlabel = \"G\"\nformula = 'glazing == \"clear\" ? 1 : 2'\nper = \"sash\"\n[[figure]]\nid = \"both\"\nlabel = \"G\"\nformula = \"share + share.upper\"\nper = \"sash\"\n";
    check(
        &format!("{COLOUR}{SASHES}{figure}"),
        expect![[r#"
        exterior: white grey; standard Option(`white`)
        glazing.upper: clear obscure; standard Option(`clear`) when And([Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`white`))), Compare(NotEqual, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))])
        glazing.lower: clear obscure; standard Option(`clear`) when Compare(NotEqual, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))
        share.upper: Number
        share.lower: Number
        both.upper: Number
        both.lower: Number
    "#]],
    );
    let own = "[[figure]]\nid = \"share\"\nlabel = \"G\"\nformula = \"share.upper\"\nper = \"sash\"\n";
    check(
        &format!("{COLOUR}{SASHES}{own}"),
        expect![[r#"
        c/catalog.toml:30:6 `"share"` CYCLE `share` depends on itself: `share` needs `share`
          help: take one of these out, or, where one part reads another, say the `type` of the figure
    "#]],
    );
}

#[test]
fn going_over_parts_may_stand_once_inside_another() {
    let figure = "[[figure]]\nid = \"share\"\nlabel = \"G\"\nformula = \"1\"\nper = \"sash\"\n";
    let rule = |require: &str| {
        format!("{COLOUR}{SASHES}{figure}[[rule]]\nid = \"r\"\nrequire = \"{require}\"\nmessage = \"m\"\n")
    };
    let loads = |require: &str| {
        load_files(&[("c/catalog.toml", &format!("{HEAD}{}", rule(require)))])
            .0
            .is_some()
    };
    assert!(loads("any(share > sum(share) / 2)"));
    check(
        &rule("any(share > sum(share + sum(share)))"),
        expect![[r#"
            c/catalog.toml:36:36 `sum(share)` LIMIT `sum` stands inside 2 others that go over parts, the most there may be
              help: work the inner part out as a figure of its own, and name that
        "#]],
    );
    // Written out, this would have 2^60 terms.
    let deep = (0..60).fold("share > 1".to_owned(), |inner, _| format!("any({inner})"));
    assert!(!loads(&deep));
}
