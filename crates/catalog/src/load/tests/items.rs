//! Price items.

use super::*;

fn item(rest: &str) -> String {
    format!(
        "{COLOUR}[[measure]]\nid = \"w\"\nlabel = \"W\"\n[[figure]]\nid = \"width\"\nlabel = \"G\"\nformula = \"w\"\n[[figure]]\nid = \"wide\"\nlabel = \"G\"\nformula = 'w > \"1\"'\n[[price]]\nid = \"base\"\nlabel = \"B\"\n[[price]]\nid = \"i\"\nlabel = \"I\"\n{rest}\n"
    )
}

fn refused(rest: &str, expected: Expect) {
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &format!("{HEAD}{}", item(rest)))]);
    assert!(loaded.is_none(), "it loads");
    expected.assert_eq(&lines_of(&findings, &sources));
}

#[test]
fn an_item_finds_its_amount_in_one_way() {
    refused(
        "by = [\"exterior\"]\npercent_of = [\"base\"]",
        expect![[r#"
        c/catalog.toml:26:1 `[[price]]` KEYS_EXCLUDE price item `i` has both `by` and `percent_of`
          help: keep one of the two
    "#]],
    );
    refused(
        "axes = [\"width\"]\nbeyond = \"break\"",
        expect![[r#"
        c/catalog.toml:29:8 `["width"]` KEYS_EXCLUDE price item `i` has `axes`, which only an item by grid has
          help: leave `axes` out
        c/catalog.toml:30:10 `"break"` KEYS_EXCLUDE price item `i` has `beyond`, which only an item by grid has
          help: leave `beyond` out
    "#]],
    );
    refused(
        "grid = \"g\"",
        expect![[r#"
        c/catalog.toml:26:1 `[[price]]` MISSING_KEY price item `i` lacks `axes`
          help: add `axes`
    "#]],
    );
    refused(
        "grid = \"G 1\"\naxes = [\"width\"]\nbeyond = \"stop\"",
        expect![[r#"
            c/catalog.toml:29:8 `"G 1"` BAD_ID `G 1` is not an id
              help: write `g-1`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            c/catalog.toml:31:10 `"stop"` UNKNOWN_WORD `beyond` is `stop`; expected one of `break`, `sign_off`
              help: write one of these words
        "#]],
    );
}

#[test]
fn axes_are_one_or_two_figures_that_are_sizes() {
    refused(
        "grid = \"g\"\naxes = []",
        expect![[r#"
        c/catalog.toml:27:6 `"i"` WRONG_COUNT price item `i`: `axes` names 0 figures; a grid has one or two
          help: rows of the sheet come first
    "#]],
    );
    refused(
        "grid = \"g\"\naxes = [\"width\", \"width\"]",
        expect![[r#"
        c/catalog.toml:30:18 `"width"` DUPLICATE_ID `width` stands twice in `axes`
          help: name two figures, or one alone
    "#]],
    );
    refused(
        "grid = \"g\"\naxes = [\"width\", \"wide\", \"width\"]",
        expect![[r#"
        c/catalog.toml:27:6 `"i"` WRONG_COUNT price item `i`: `axes` names 3 figures; a grid has one or two
          help: rows of the sheet come first
    "#]],
    );
    refused(
        "grid = \"g\"\naxes = [\"w\", \"wide\"]",
        expect![[r#"
        c/catalog.toml:30:9 `"w"` NOT_A_FIGURE `w` is not a figure
          help: declare a figure for it: `formula = "..."`
        c/catalog.toml:30:14 `"wide"` WRONG_TYPE figure `wide` is a yes or no; an axis is a size
          help: name a figure that is a number, a length or an area
    "#]],
    );
    refused(
        "grid = \"g\"\naxes = [\"widht\"]",
        expect![[r#"
        c/catalog.toml:30:10 `widht` UNKNOWN_NAME `widht` is not a name of this catalog
          help: did you mean `width`?
    "#]],
    );
}

#[test]
fn an_amount_by_attributes_names_each_once() {
    refused(
        "by = []",
        expect![[r#"
        c/catalog.toml:27:6 `"i"` WRONG_COUNT price item `i`: `by` names no attribute
          help: name one or more, or leave `by` out
    "#]],
    );
    refused(
        "by = [\"exterior\", \"exterior\"]",
        expect![[r#"
        c/catalog.toml:29:19 `"exterior"` DUPLICATE_ID `exterior` stands twice in `by`
          help: name each attribute once
    "#]],
    );
    refused(
        "by = [\"width\", \"exterio\"]",
        expect![[r#"
        c/catalog.toml:29:7 `"width"` NOT_AN_ATTRIBUTE `width` is not an attribute
          help: `by` names attributes; `axes` names figures
        c/catalog.toml:29:17 `exterio` UNKNOWN_NAME `exterio` is not a name of this catalog
          help: did you mean `exterior`?
    "#]],
    );
}

#[test]
fn a_percentage_is_of_items_that_are_no_percentages_and_has_no_quantity() {
    refused(
        "percent_of = []",
        expect![[r#"
        c/catalog.toml:27:6 `"i"` WRONG_COUNT price item `i`: `percent_of` names no item
          help: name one or more price items
    "#]],
    );
    refused(
        "percent_of = [\"i\", \"bas\", \"base\", \"base\"]\nquantity = \"2\"",
        expect![[r#"
        c/catalog.toml:29:15 `"i"` PERCENT_OF_PERCENT `i` is a percentage itself
          help: name items that have amounts of their own
        c/catalog.toml:29:20 `"bas"` UNKNOWN_ITEM there is no price item `bas`
          help: did you mean `base`?
        c/catalog.toml:29:35 `"base"` DUPLICATE_ID `base` stands twice in `percent_of`
          help: name each item once
        c/catalog.toml:30:12 `"2"` KEYS_EXCLUDE price item `i` has `quantity`, which an item by percentage does not take
          help: leave `quantity` out
    "#]],
    );
}

#[test]
fn a_quantity_is_a_number() {
    refused(
        "quantity = \"w\"",
        expect![[r#"
        c/catalog.toml:29:13 `w` WRONG_TYPE this is a length; expected a number
          help: in_inches(...), in_feet(...) or in_mm(...) turns a length into a number
    "#]],
    );
    refused(
        "quantity = \"2\"\nclass = \"good\"",
        expect![[r#"
        c/catalog.toml:30:9 `"good"` UNKNOWN_WORD `class` is `good`; expected one of `goods`, `labour`, `fee`, `credit`
          help: did you mean `goods`?
    "#]],
    );
}
