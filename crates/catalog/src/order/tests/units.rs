//! Picks, pins and waivers.

use super::*;

fn check_unit(text: &str, expected: Expect) {
    check(&format!("{OPENING}{text}\n"), expected);
}

fn check_picks(picks: &[(&str, &str)], expected: Expect) {
    check_unit(&picks_of(picks), expected);
}

fn picks_of(picks: &[(&str, &str)]) -> String {
    let pick = |(attribute, option): &(&str, &str)| {
        format!("{{ attribute = \"{attribute}\", option = \"{option}\" }}")
    };
    format!(
        "picks = [ {} ]",
        picks.iter().map(pick).collect::<Vec<_>>().join(", ")
    )
}

#[test]
fn picks_keep_their_order_and_their_quote_dates() {
    let text = "picks = [ { attribute = \"glazing.lower\", option = \"obscure\", quoted = 2026-05-02 }, \
        { attribute = \"operation\", option = \"fixed\" } ]\npins = [\"operation\"]";
    let file = order_of(&format!("{OPENING}{text}\n"));
    let unit = &file.order.openings[0].units[0];
    let catalog = &file.catalogs[&unit.catalog].catalog.catalog;
    let name = |index| catalog.name_of(astragal_model::Subject::Attribute(index));
    let picks: Vec<_> = unit
        .picks
        .iter()
        .map(|pick| format!("{} {} {:?}", name(pick.attribute), pick.option, pick.quoted))
        .collect();
    assert_eq!(
        picks,
        ["glazing.lower obscure Some(2026-05-02)", "operation fixed None"]
    );
    assert_eq!(
        unit.pins.iter().map(|pin| name(*pin)).collect::<Vec<_>>(),
        ["operation"]
    );
}

#[test]
fn a_unit_names_a_catalog_of_the_order() {
    check(
        "[[opening]]\ntag = \"K1\"\n[[opening.unit]]\n",
        expect![[r#"
        13 "[[opening.unit]]" MISSING_KEY the unit of opening `K1` lacks `catalog`
          help: add `catalog`
    "#]],
    );
    check(
        &OPENING.replace("hinged", "hingd"),
        expect![[r#"
        14 "\"hingd\"" UNKNOWN_CATALOG opening `K1` names catalog `hingd`, which the order does not use
          help: did you mean `hinged`?
    "#]],
    );
}

#[test]
fn an_unknown_attribute_is_named_with_the_nearest() {
    check_picks(
        &[("operatoin", "fixed"), ("colour", "white")],
        expect![[r#"
        15 "\"operatoin\"" UNKNOWN_ATTRIBUTE catalog `hinged` has no attribute `operatoin`
          help: did you mean `operation`?
        15 "\"colour\"" UNKNOWN_ATTRIBUTE catalog `hinged` has no attribute `colour`
          help: attributes are `glazing.lower`, `glazing.upper`, `operation`
    "#]],
    );
}

#[test]
fn an_attribute_that_is_per_part_is_picked_for_one_part() {
    check_picks(
        &[("glazing", "clear")],
        expect![[r#"
        15 "\"glazing\"" PART_NOT_SAID `glazing` is one attribute for each part; say which
          help: write `glazing.upper` or `glazing.lower`
    "#]],
    );
    check_picks(
        &[("glazing.upper", "clear")],
        expect![[r#"
        no findings
    "#]],
    );
    check_picks(
        &[("glazing.uper", "clear")],
        expect![[r#"
        15 "\"glazing.uper\"" UNKNOWN_ATTRIBUTE catalog `hinged` has no attribute `glazing.uper`
          help: did you mean `glazing.upper`?
    "#]],
    );
}

#[test]
fn an_unknown_option_is_named_with_the_nearest_and_all() {
    check_picks(
        &[("operation", "casment")],
        expect![[r#"
        15 "\"casment\"" UNKNOWN_OPTION `operation` has no option `casment`
          help: did you mean `casement`? its options are `casement`, `awning`, `fixed`
    "#]],
    );
    check_picks(
        &[("operation", "hung")],
        expect![[r#"
        15 "\"hung\"" UNKNOWN_OPTION `operation` has no option `hung`
          help: its options are `casement`, `awning`, `fixed`
    "#]],
    );
}

#[test]
fn an_attribute_is_picked_once() {
    check_picks(
        &[
            ("operation", "fixed"),
            ("glazing.upper", "clear"),
            ("operation", "fixed"),
        ],
        expect![[r#"
        15 "\"operation\"" DUPLICATE_PICK `operation` is picked twice
          15 "\"operation\"": `operation` is picked here first
          help: keep one of the two picks
    "#]],
    );
}

#[test]
fn the_plants_own_attributes_are_not_picked() {
    check_picks(
        &[("glue", "one")],
        expect![[r#"
        15 "\"glue\"" PICK_ON_PLANT `glue` is determined by the plant and cannot be picked
          help: leave the pick out
    "#]],
    );
}

#[test]
fn a_pick_has_an_attribute_and_an_option() {
    check_unit(
        "picks = [ { attribute = \"operation\" }, { option = \"fixed\" }, \"fixed\" ]",
        expect![[r#"
            15 "{ attribute = \"operation\" }" MISSING_KEY the pick of `operation` lacks `option`
              help: add `option`
            15 "{ option = \"fixed\" }" MISSING_KEY pick lacks `attribute`
              help: add `attribute`
            15 "\"fixed\"" WRONG_TYPE element 3 of `picks` is text; expected a table
              help: write `{ key = "value" }`
        "#]],
    );
    check_unit(
        "picks = { operation = \"fixed\" }",
        expect![[r#"
            15 "{ operation = \"fixed\" }" WRONG_TYPE `picks` is a table; expected a list
              help: write a list of tables: `[{ attribute = "exterior", option = "white" }]`
        "#]],
    );
}

#[test]
fn a_pin_names_a_pick() {
    let picks = picks_of(&[("operation", "fixed")]);
    check_unit(
        &format!("{picks}\npins = [\"operation\", \"glazing.upper\"]"),
        expect![[r#"
        16 "\"glazing.upper\"" PIN_WITHOUT_PICK `glazing.upper` is pinned but not picked
          help: a pin keeps a pick from changing: pick an option of it, or leave the pin out
    "#]],
    );
    check_unit(
        &format!("{picks}\npins = [\"operation\", \"operation\", \"opration\"]"),
        expect![[r#"
        16 "\"operation\"" DUPLICATE_PIN `operation` is pinned twice
          16 "\"operation\"": `operation` is pinned here first
          help: keep one of the two
        16 "\"opration\"" UNKNOWN_ATTRIBUTE catalog `hinged` has no attribute `opration`
          help: did you mean `operation`?
    "#]],
    );
}

#[test]
fn a_pick_with_a_fault_is_still_a_pick_to_its_pin() {
    check_unit(
        &format!("{}\npins = [\"operation\"]", picks_of(&[("operation", "hung")])),
        expect![[r#"
        15 "\"hung\"" UNKNOWN_OPTION `operation` has no option `hung`
          help: its options are `casement`, `awning`, `fixed`
    "#]],
    );
}

fn waiver(rule: &str) -> String {
    format!(
        "waivers = [ {{ rule = \"{rule}\", reference = \"W-118\", from = 2026-11-01, until = 2026-12-31 }} ]"
    )
}

#[test]
fn a_waiver_may_release_from_a_rule_of_the_catalog_or_the_policy() {
    check_unit(
        &waiver("casement-width"),
        expect![[r#"
        no findings
    "#]],
    );
    check_unit(
        &waiver("no-wide-ones"),
        expect![[r#"
        no findings
    "#]],
    );
    let file = order_of(&format!(
        "{OPENING}{}\n",
        waiver("casement-width").replace(", until = 2026-12-31", "")
    ));
    let waiver = &file.order.openings[0].units[0].waivers[0];
    assert_eq!((waiver.reference.as_str(), waiver.until), ("W-118", None));
}

#[test]
fn a_waiver_for_a_rule_that_is_not_there_or_not_waivable_is_an_error() {
    check_unit(
        &waiver("casement-widht"),
        expect![[r#"
        15 "\"casement-widht\"" UNKNOWN_RULE catalog `hinged` and its policy have no rule `casement-widht`
          help: did you mean `casement-width`?
    "#]],
    );
    check_unit(
        &waiver("colour"),
        expect![[r#"
        15 "\"colour\"" UNKNOWN_RULE catalog `hinged` and its policy have no rule `colour`
          help: waivable are `casement-width`, `no-wide-ones`
    "#]],
    );
    check_unit(
        &waiver("narrow-width"),
        expect![[r#"
        15 "\"narrow-width\"" NOT_WAIVABLE rule `narrow-width` is not waivable
          help: waivable are `casement-width`, `no-wide-ones`
    "#]],
    );
    check_unit(
        &waiver("has-a-price"),
        expect![[r#"
        15 "\"has-a-price\"" NOT_WAIVABLE rule `has-a-price` is one that every catalog has, and not waivable
          help: waivable are `casement-width`, `no-wide-ones`
    "#]],
    );
    check_unit(
        &waiver("operation.offered"),
        expect![[r#"
        15 "\"operation.offered\"" NOT_WAIVABLE rule `operation.offered` is one that every catalog has, and not waivable
          help: waivable are `casement-width`, `no-wide-ones`
    "#]],
    );
}

#[test]
fn a_waiver_says_where_it_is_written_and_when_it_holds() {
    check_unit(
        &waiver("casement-width").replace("W-118", " "),
        expect![[r#"
        15 "\" \"" EMPTY_TEXT `reference` of the waiver of `casement-width` is empty
          help: write something into `reference`
    "#]],
    );
    check_unit(
        &waiver("casement-width").replace("2026-12-31", "2026-10-31"),
        expect![[r#"
        15 "2026-10-31" DATES_OUT_OF_ORDER the waiver of `casement-width` ends on 2026-10-31, before it begins on 2026-11-01
          15 "2026-11-01": it begins here
          help: `from` is its first day and `until` its last
    "#]],
    );
    check_unit(
        &waiver("casement-width").replace("2026-12-31", "2026-11-01"),
        expect![[r#"
        no findings
    "#]],
    );
    check_unit(
        "waivers = [ { rule = \"casement-width\" } ]",
        expect![[r#"
        15 "{ rule = \"casement-width\" }" MISSING_KEY the waiver of `casement-width` lacks `from`
          help: add `from`
        15 "{ rule = \"casement-width\" }" MISSING_KEY the waiver of `casement-width` lacks `reference`
          help: add `reference`
    "#]],
    );
}
