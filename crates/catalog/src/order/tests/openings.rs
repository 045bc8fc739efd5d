//! Openings of an order, and what may be said of one.

mod alternates;
mod header;
mod places;

use super::*;

use astragal_model::{DeductedBy, Extra, Value};

#[test]
fn an_order_without_faults_has_no_findings() {
    check(
        OPENING,
        expect![[r#"
        no findings
    "#]],
    );
}

#[test]
fn what_is_left_out_has_its_meaning() {
    let file = order_of(OPENING);
    let opening = &file.order.openings[0];
    assert_eq!((opening.quantity, opening.included), (1, true));
    assert_eq!(
        (&opening.room, &opening.face, &opening.note),
        (&None, &None, &None)
    );
    assert_eq!(file.order.label, "1042");
    assert_eq!(opening.extra, Extra::None);
    assert!(opening.site.measures.values().all(Option::is_none));
}

#[test]
fn an_order_without_openings_is_suspicious() {
    check(
        "",
        expect![[r#"
        1 "" warning NO_OPENINGS the order has no opening
          help: add an `[[opening]]` for each window
        7 "\"hinged\"" warning CATALOG_NOT_USED no opening uses catalog `hinged`
          help: leave it out
    "#]],
    );
    check_whole(
        &HEAD.replace("[order]", "opening = 1\n[order]"),
        expect![[r#"
            2 "1" WRONG_TYPE `opening` is a whole number; expected a list
        "#]],
    );
}

#[test]
fn a_tag_stands_once_and_is_not_empty() {
    check(
        &format!("{OPENING}{OPENING}"),
        expect![[r#"
        16 "\"K1\"" DUPLICATE_TAG two openings have the tag `K1`
          12 "\"K1\"": `K1` stands here first
          help: give one of them another tag, or write equal openings once with a `quantity`
    "#]],
    );
    check(
        &OPENING.replace("K1", " "),
        expect![[r#"
        12 "\" \"" EMPTY_TEXT `tag` of opening is empty
          help: write something into `tag`
    "#]],
    );
}

#[test]
fn a_quantity_is_a_whole_number_within_limits() {
    for (quantity, is_fine) in [
        ("1", true),
        ("10000", true),
        ("0", false),
        ("10001", false),
        ("-1", false),
    ] {
        let text = format!("{HEAD}[[opening]]\ntag = \"K1\"\nquantity = {quantity}\n{UNIT}");
        assert_eq!(read_text(&text).order.is_some(), is_fine, "{quantity}");
    }
    let text = |quantity: &str| format!("[[opening]]\ntag = \"K1\"\nquantity = {quantity}\n{UNIT}");
    check(
        &text("0"),
        expect![[r#"
        13 "0" QUANTITY_OUT_OF_RANGE `quantity` of opening `K1` is 0; expected 1 to 10000
          help: leave out an opening that is not wanted, or write `included = false`
    "#]],
    );
    check(
        &text("10001"),
        expect![[r#"
        13 "10001" QUANTITY_OUT_OF_RANGE `quantity` of opening `K1` is 10001; expected 1 to 10000
          help: is it a slip?
    "#]],
    );
    check(
        &text("99999999999999999999"),
        expect![[r#"
        13 "99999999999999999999" NUMBER_TOO_LARGE `quantity` is 99999999999999999999, which is too large a number
    "#]],
    );
    check(
        &text("1.5"),
        expect![[r#"
            13 "1.5" WRONG_TYPE `quantity` is a decimal number; expected a whole number
              help: write it like `2`
        "#]],
    );
}

#[test]
fn a_thousand_openings_are_read_and_one_more_is_not() {
    let openings = |count: usize| -> String {
        (0..count)
            .map(|n| format!("[[opening]]\ntag = \"K{n}\"\n{UNIT}"))
            .collect()
    };
    assert_eq!(order_of(&openings(1000)).order.openings.len(), 1000);
    check(
        &openings(1001),
        expect![[r#"
        4011 "[[opening]]" LIMIT the order has more than 1000 openings, the most that are read
          help: split the order, or write equal openings once with a `quantity`
    "#]],
    );
}

#[test]
fn measures_have_values_and_who_deducts() {
    let measures =
        "measures = { opening_width = { size = \"35 5/8\", deducted_by = \"dealer\" }, panes_wide = 3 }\n";
    let file = order_of(&format!("[[opening]]\ntag = \"K1\"\n{measures}{UNIT}"));
    let found: Vec<_> = file.order.openings[0].site.measures.values().flatten().collect();
    assert_eq!(found[0].deducted_by, Some(DeductedBy::Dealer));
    assert_eq!(format!("{:?}", found[0].value), "Length(35.625)");
    assert_eq!(
        (found[1].deducted_by, &found[1].value),
        (None, &Value::Number(3.into()))
    );
}

#[test]
fn a_measure_that_is_unknown_no_length_or_off_the_step_is_an_error() {
    let check_measures = |measures: &str, expected| {
        check(
            &format!("[[opening]]\ntag = \"K1\"\nmeasures = {{ {measures} }}\n{UNIT}"),
            expected,
        );
    };
    check_measures(
        "opening_widht = 36",
        expect![[r#"
        13 "opening_widht" UNKNOWN_MEASURE opening `K1` has measure `opening_widht`, which catalog `hinged` does not have
          help: did you mean `opening_width`?
    "#]],
    );
    check_measures(
        "depth = 36",
        expect![[r#"
        13 "depth" UNKNOWN_MEASURE opening `K1` has measure `depth`, which catalog `hinged` does not have
          help: measures are `opening_width`, `panes_wide`
    "#]],
    );
    check_measures(
        "opening_width = \"wide\"",
        expect![[r#"
            13 "\"wide\"" WRONG_VALUE `wide` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
        "#]],
    );
    check_measures(
        "opening_width = \"35,5\"",
        expect![[r#"
            13 "\"35,5\"" WRONG_VALUE `35,5` has a decimal comma
              help: write a decimal point: `35.5`, or no comma if it separates thousands
        "#]],
    );
    check_measures(
        "opening_width = 2026-05-08",
        expect![[r#"
        13 "2026-05-08" WRONG_TYPE measure `opening_width` is a date; expected a number
    "#]],
    );
    check_measures(
        "opening_width = \"35 5/32\", panes_wide = 2.5",
        expect![[r#"
        13 "\"35 5/32\"" OFF_STEP measure `opening_width` is `35 5/32`, which is not a multiple of 1/16 in
          help: the nearest are 35 1/8 in and 35 3/16 in
        13 "2.5" OFF_STEP measure `panes_wide` is `2.5`, which is not a multiple of 1
          help: the nearest are 2 and 3
    "#]],
    );
    check_measures(
        "opening_width = { size = 36, deducted_by = \"plant\" }",
        expect![[r#"
        13 "\"plant\"" UNKNOWN_WORD `deducted_by` is `plant`; expected one of `nobody`, `dealer`, `customer`
          help: leave it out when nobody said who deducts
    "#]],
    );
    check_measures(
        "opening_width = { deducted_by = \"dealer\" }",
        expect![[r#"
        13 "{ deducted_by = \"dealer\" }" MISSING_KEY measure `opening_width` lacks `size`
          help: add `size`
    "#]],
    );
}

#[test]
fn a_broken_file_gives_no_order() {
    let check_bytes = |bytes: &[u8], expected: Expect| {
        expected.assert_eq(&lines_of(&read_file(
            "order.toml",
            bytes,
            &ReadOptions::default(),
        )));
    };
    check_bytes(
        b"",
        expect![[r#"
        1 "" EMPTY_FILE `order.toml` is empty
          help: was it saved?
    "#]],
    );
    check_bytes(
        b"format = 1\n[order",
        expect![[r#"
            2 "" TOML_GRAMMAR the brackets of the heading are not closed
              help: write `[name]` or `[[name]]`
        "#]],
    );
    check_bytes(
        b"\xef\xbb\xbfformat = 1\n",
        expect![[r#"
            1 "" BYTE_ORDER_MARK `order.toml` begins with a byte-order mark, a sign that cannot be seen
              help: save it as UTF-8 without a byte-order mark: in editors `UTF-8`, not `UTF-8 with BOM`
            1 "" MISSING_KEY the order lacks `catalog`
              help: add `catalog`
            1 "" MISSING_KEY the order lacks `order`
              help: add `order`
        "#]],
    );
    check_bytes(
        b"format = 1\nlabel = \"caf\xe9\"\n",
        expect![[r#"
            - NOT_UTF8 `order.toml` is not saved as UTF-8: line 2 has a letter that cannot be read (byte 23, 0xe9)
              help: save it as UTF-8 without a byte-order mark; accents and other special letters are lost otherwise
        "#]],
    );
}

#[test]
fn extra_is_carried_as_it_was_written() {
    let text = HEAD.replace(
        "[[catalog]]",
        "extra = { z = 7.50, a = [true, 1_000], when = 2026-01-02 }\n[[catalog]]",
    );
    let text =
        format!("{text}[[opening]]\ntag = \"K1\"\n{UNIT}[opening.extra]\nb = {{ y = \"1\", x = {{}} }}\n");
    let order = read_text(&text).order.unwrap().order;
    expect![[r#"
        Table([("z", Number("7.50")), ("a", List([Bool(true), Number("1000")])), ("when", Text("2026-01-02"))])
        Table([("b", Table([("y", Text("1")), ("x", Table([]))]))])
    "#]].assert_eq(&format!("{:?}\n{:?}\n", order.extra, order.openings[0].extra));
    check(
        &format!("[[opening]]\ntag = \"K1\"\nextra = 1\n{UNIT}"),
        expect![[r#"
        13 "1" WRONG_TYPE `extra` of opening `K1` is a whole number; expected a table
    "#]],
    );
}
