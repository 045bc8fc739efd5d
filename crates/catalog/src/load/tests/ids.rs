//! Forms of ids, and ids that stand twice.

use super::*;

#[test]
fn names_share_one_namespace_and_the_second_is_placed() {
    check(
        &format!(
            "{COLOUR}{COLOUR}[[measure]]\nid = \"exterior\"\nlabel = \"M\"\n[[site_fact]]\nid = \"exterior\"\nlabel = \"F\"\nof = \"room\"\ntype = \"bool\"\n[[figure]]\nid = \"exterior\"\nlabel = \"G\"\nformula = \"1\"\n[[part]]\nid = \"exterior\"\nkind = \"sash\"\nlabel = \"P\"\n"
        ),
        expect![[r#"
            c/catalog.toml:14:6 `"exterior"` DUPLICATE_ID `exterior` stands twice among the attributes, measures, facts, figures and parts
              help: give one of the two another id
              c/catalog.toml:8:6 `"exterior"`: `exterior` stands here first
            c/catalog.toml:19:6 `"exterior"` DUPLICATE_ID `exterior` stands twice among the attributes, measures, facts, figures and parts
              help: give one of the two another id
              c/catalog.toml:8:6 `"exterior"`: `exterior` stands here first
            c/catalog.toml:22:6 `"exterior"` DUPLICATE_ID `exterior` stands twice among the attributes, measures, facts, figures and parts
              help: give one of the two another id
              c/catalog.toml:8:6 `"exterior"`: `exterior` stands here first
            c/catalog.toml:27:6 `"exterior"` DUPLICATE_ID `exterior` stands twice among the attributes, measures, facts, figures and parts
              help: give one of the two another id
              c/catalog.toml:8:6 `"exterior"`: `exterior` stands here first
            c/catalog.toml:31:6 `"exterior"` DUPLICATE_ID `exterior` stands twice among the attributes, measures, facts, figures and parts
              help: give one of the two another id
              c/catalog.toml:8:6 `"exterior"`: `exterior` stands here first
        "#]],
    );
}

#[test]
fn everything_else_has_its_id_once_of_its_kind() {
    let twice = |text: &str| format!("{text}{text}");
    let text = [
        twice("[[authority]]\nid = \"a\"\nlabel = \"A\"\n"),
        twice("[[option_list]]\nid = \"a\"\noptions = [{ id = \"o\" }]\n"),
        twice("[[rule]]\nid = \"a\"\nrequire = \"true\"\nmessage = \"m\"\n"),
        twice("[[price]]\nid = \"a\"\nlabel = \"A\"\n"),
        twice("[[notice]]\nid = \"a\"\ntext = \"t\"\n"),
        twice("[[example]]\nid = \"a\"\ndate = 2026-11-25\n"),
    ];
    check(
        &text.concat(),
        expect![[r#"
        c/catalog.toml:10:6 `"a"` DUPLICATE_ID `a` stands twice among the authorities
          help: give one of the two another id
          c/catalog.toml:7:6 `"a"`: `a` stands here first
        c/catalog.toml:16:6 `"a"` DUPLICATE_ID `a` stands twice among the option lists
          help: give one of the two another id
          c/catalog.toml:13:6 `"a"`: `a` stands here first
        c/catalog.toml:23:6 `"a"` DUPLICATE_ID `a` stands twice among the rules
          help: give one of the two another id
          c/catalog.toml:19:6 `"a"`: `a` stands here first
        c/catalog.toml:30:6 `"a"` DUPLICATE_ID `a` stands twice among the price items
          help: give one of the two another id
          c/catalog.toml:27:6 `"a"`: `a` stands here first
        c/catalog.toml:36:6 `"a"` DUPLICATE_ID `a` stands twice among the notices
          help: give one of the two another id
          c/catalog.toml:33:6 `"a"`: `a` stands here first
        c/catalog.toml:42:6 `"a"` DUPLICATE_ID `a` stands twice among the examples
          help: give one of the two another id
          c/catalog.toml:39:6 `"a"`: `a` stands here first
    "#]],
    );
}

#[test]
fn options_of_one_attribute_differ_from_each_other_and_from_its_families() {
    check(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{ id = \"x\" }, { id = \"x\" }, { id = \"y\", families = [\"x\"] }]\nstandard = \"x\"\n[[site_fact]]\nid = \"f\"\nlabel = \"F\"\nof = \"room\"\ntype = \"enumeration\"\noptions = [\"n\", \"n\"]\n",
        expect![[r#"
            c/catalog.toml:9:33 `"x"` DUPLICATE_ID `x` stands twice among the options of attribute `a`
              help: give one of the two another id
              c/catalog.toml:9:19 `"x"`: `x` stands here first
            c/catalog.toml:9:64 `"x"` DUPLICATE_ID `x` is a family and an option of attribute `a`
              help: a cell of a table would mean both; rename one
            c/catalog.toml:16:17 `"n"` DUPLICATE_ID `n` stands twice among the options of site fact `f`
              help: give one of the two another id
              c/catalog.toml:16:12 `"n"`: `n` stands here first
        "#]],
    );
}

#[test]
fn an_authority_that_is_there_anyway_is_not_declared() {
    check(
        "[[authority]]\nid = \"code\"\nlabel = \"Code\"\n",
        expect![[r#"
        c/catalog.toml:7:6 `"code"` DUPLICATE_ID authority `code` is there without being declared
          help: leave it out
    "#]],
    );
}

#[test]
fn ids_have_a_form() {
    check(
        "[[measure]]\nid = \"opening-width\"\nlabel = \"M\"\n[[measure]]\nid = \"in\"\nlabel = \"M\"\n[[measure]]\nid = \"package\"\nlabel = \"M\"\n[[measure]]\nid = \"floor_to\"\nlabel = \"M\"\n[[measure]]\nid = \"Ünit\"\nlabel = \"M\"\n[[measure]]\nid = \"\"\nlabel = \"M\"\n[[rule]]\nid = \"Rule 1\"\nrequire = \"true\"\nmessage = \"m\"\n[[rule]]\nid = \"has-a-price\"\nrequire = \"true\"\nmessage = \"m\"\n[[rule]]\nid = \"1-of_2\"\nrequire = \"true\"\nmessage = \"m\"\n",
        expect![[r#"
            c/catalog.toml:7:6 `"opening-width"` BAD_ID `opening-width` is not a name
              help: write `opening_width`; begin with a small letter; go on with small letters, digits and `_`
            c/catalog.toml:10:6 `"in"` BAD_ID `in` is a word that expressions keep for themselves
              help: choose another name
            c/catalog.toml:13:6 `"package"` BAD_ID `package` is a word that expressions keep for themselves
              help: choose another name
            c/catalog.toml:16:6 `"floor_to"` BAD_ID `floor_to` is a function of expressions
              help: choose another name
            c/catalog.toml:19:6 `"Ünit"` BAD_ID `Ünit` is not a name
              help: begin with a small letter; go on with small letters, digits and `_`
            c/catalog.toml:22:6 `""` BAD_ID `` is not a name
              help: begin with a small letter; go on with small letters, digits and `_`
            c/catalog.toml:25:6 `"Rule 1"` BAD_ID `Rule 1` is not an id
              help: write `rule-1`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            c/catalog.toml:29:6 `"has-a-price"` BAD_ID `has-a-price` is a rule that every catalog has
              help: choose another id
        "#]],
    );
    check(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{ id = \"ask\" }, { id = \"x|y\", families = [\"Dark\"], properties = { \"gloss-1\" = 1 } }]\nstandard = \"ask\"\n[[site_fact]]\nid = \"f\"\nlabel = \"F\"\nof = \"room\"\ntype = \"enumeration\"\noptions = [\"unknown\", { id = \"A\" }]\n",
        expect![[r#"
            c/catalog.toml:9:19 `"ask"` BAD_ID `ask` cannot be an option: as a standard it means that nothing is filled in
              help: choose another id
            c/catalog.toml:9:35 `"x|y"` BAD_ID `x|y` is not an id
              help: begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            c/catalog.toml:9:54 `"Dark"` BAD_ID `Dark` is not an id
              help: write `dark`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            c/catalog.toml:9:78 `"gloss-1"` BAD_ID `gloss-1` is not a name
              help: write `gloss_1`; begin with a small letter; go on with small letters, digits and `_`
            c/catalog.toml:16:12 `"unknown"` BAD_ID `unknown` cannot be a value: in an order it means that nobody knows
              help: leave it out
            c/catalog.toml:16:30 `"A"` BAD_ID `A` is not an id
              help: write `a`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
        "#]],
    );
}

#[test]
fn every_function_of_expressions_is_a_word_that_names_cannot_be() {
    // Both lists are written by hand; `f()` is an unknown function exactly when it is in neither.
    let names = crate::typed::Names::new(astragal_model::measure_text::LengthUnit::Inch);
    for function in crate::typed::FUNCTIONS {
        let findings = Findings::new();
        let mut sources = Sources::new();
        let text = format!("{function}()");
        let file = sources.add("x", text.as_str());
        let placed = crate::typed::PlacedText::new(text, Place::new(file, 0..0), &sources);
        let parsed = crate::typed::Parsed::parse(placed, &findings).unwrap();
        assert!(
            crate::typed::Scope::new(&names, &findings)
                .any_type(&parsed)
                .is_none()
        );
        let found = findings.into_sorted(&sources);
        assert!(found.iter().all(|f| f.code() != "UNKNOWN_FUNCTION"), "{function}");
    }
}
