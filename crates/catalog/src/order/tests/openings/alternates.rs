//! Alternates, and the one unit of an opening.

use super::*;

#[test]
fn an_alternate_is_left_out_unless_it_is_included() {
    let alternate = "[[opening]]\ntag = \"K2\"\nalternate_of = \"K1\"\n";
    for (included, expected) in [
        ("", false),
        ("included = true\n", true),
        ("included = false\n", false),
    ] {
        let file = order_of(&format!("{OPENING}{alternate}{included}{UNIT}"));
        assert_eq!(file.order.openings[1].included, expected);
        assert_eq!(file.order.openings[1].alternate_of.as_deref(), Some("K1"));
    }
}

#[test]
fn an_alternate_is_one_to_another_opening_that_is_none_itself() {
    let text = |tag: &str, of: &str| format!("[[opening]]\ntag = \"{tag}\"\nalternate_of = \"{of}\"\n{UNIT}");
    check(
        &format!("{OPENING}{}", text("K2", "K2")),
        expect![[r#"
        17 "\"K2\"" UNKNOWN_OPENING opening `K2` is an alternate to itself
          help: name the opening that it may replace, or leave `alternate_of` out
    "#]],
    );
    check(
        &format!("{OPENING}{}", text("K2", "K11")),
        expect![[r#"
        17 "\"K11\"" UNKNOWN_OPENING opening `K2` is an alternate to `K11`, which is no tag
          help: did you mean `K1`?
    "#]],
    );
    check(
        &format!("{OPENING}{}{}", text("K2", "K1"), text("K3", "K2")),
        expect![[r#"
        22 "\"K2\"" ALTERNATE_OF_ALTERNATE opening `K3` is an alternate to `K2`, which is an alternate itself
          17 "\"K1\"": `K2` is an alternate to `K1`
          help: name the opening that all of them may replace
    "#]],
    );
}

#[test]
fn an_opening_has_exactly_one_unit_for_now() {
    check(
        "[[opening]]\ntag = \"K1\"\n",
        expect![[r#"
        11 "[[opening]]" NO_UNIT opening `K1` has no unit
          help: add an `[[opening.unit]]` after it, with `catalog` and `picks`
    "#]],
    );
    check(
        "[[opening]]\ntag = \"K1\"\nunit = []\n",
        expect![[r#"
        11 "[[opening]]" NO_UNIT opening `K1` has no unit
          help: add an `[[opening.unit]]` after it, with `catalog` and `picks`
    "#]],
    );
    check(
        &format!("{OPENING}{UNIT}"),
        expect![[r#"
        15 "[[opening.unit]]" MULLED_NOT_YET opening `K1` has 2 units: several units in one opening (mulled units) are not read yet
          13 "[[opening.unit]]": the first unit
          help: write one opening for each unit for now, each with its own tag and measures
    "#]],
    );
}
