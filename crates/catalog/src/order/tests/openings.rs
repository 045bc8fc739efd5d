//! Openings, places and the header of an order.

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
fn the_header_says_what_it_lacks() {
    check_whole(
        "format = 1\n[order]\n",
        expect![[r#"
        1 "" MISSING_KEY the order lacks `catalog`
          help: add `catalog`
        2 "[order]" MISSING_KEY order lacks `currency`
          help: add `currency`
        2 "[order]" MISSING_KEY order lacks `id`
          help: add `id`
        2 "[order]" MISSING_KEY the order lacks `date`, the day as of which it is judged
          help: add `date`, like 2026-11-25; the day of reading is never taken instead
    "#]],
    );
    check_whole(
        "format = 1\n",
        expect![[r#"
            1 "" MISSING_KEY the order lacks `catalog`
              help: add `catalog`
            1 "" MISSING_KEY the order lacks `order`
              help: add `order`
        "#]],
    );
    check_whole(
        "format = 2\n",
        expect![[r#"
            1 "2" UNKNOWN_FORMAT `format = 2` is not known; this program reads `format = 1`
              help: write `format = 1`
        "#]],
    );
    check_whole(
        "[order]\n",
        expect![[r#"
        1 "[order]" MISSING_KEY order lacks `currency`
          help: add `currency`
        1 "[order]" MISSING_KEY order lacks `id`
          help: add `id`
        1 "" MISSING_KEY the order lacks `catalog`
          help: add `catalog`
        1 "[order]" MISSING_KEY the order lacks `date`, the day as of which it is judged
          help: add `date`, like 2026-11-25; the day of reading is never taken instead
        1 "" UNKNOWN_FORMAT the order lacks `format`
          help: add `format = 1` at the top
    "#]],
    );
}

#[test]
fn a_currency_is_one_of_iso_4217() {
    check_whole(
        &format!("{HEAD}{OPENING}").replace("USD", "usd"),
        expect![[r#"
            5 "\"usd\"" CURRENCY_UNKNOWN `usd` is not a currency of ISO 4217 with minor units
              help: did you mean `USD`?
        "#]],
    );
}

#[test]
fn a_caller_may_give_the_day() {
    let text = format!("{HEAD}{OPENING}");
    let day = Date::new(2030, 1, 2).unwrap();
    let options = ReadOptions { date: Some(day) };
    for text in [text.clone(), text.replace("date = 2026-11-25\n", "")] {
        let read = read_file("order.toml", text.as_bytes(), &options);
        assert_eq!(read.order.unwrap().order.date, day);
    }
    assert_eq!(order_of(OPENING).order.date, Date::new(2026, 11, 25).unwrap());
}

#[test]
fn a_day_that_is_wrong_stays_wrong_beside_that_of_the_caller() {
    let text = format!("{HEAD}{OPENING}").replace("2026-11-25", "\"tomorrow\"");
    let options = ReadOptions {
        date: Some(Date::new(2030, 1, 2).unwrap()),
    };
    let read = read_file("order.toml", text.as_bytes(), &options);
    expect![[r#"
        4 "\"tomorrow\"" NOT_A_DATE `date` is `tomorrow`; expected a date like 2024-06-01
          help: write year, month and day, all in digits: 2024-06-01
    "#]]
    .assert_eq(&lines_of(&read));
}

#[test]
fn an_unknown_key_is_found_at_every_level() {
    let text = "[house]\nfact = {}\n[[floor]]\nid = \"ground\"\nlable = \"x\"\n[[room]]\nid = \"hall\"\nflor = \"ground\"\n\
        [[face]]\nid = \"front\"\nfloor = \"ground\"\n[[opening]]\ntag = \"K1\"\nqantity = 2\n[[opening.unit]]\n\
        catalog = \"hinged\"\npin = []\npicks = [ { attribute = \"operation\", option = \"fixed\", quote = 1 } ]\n\
        waivers = [ { rule = \"casement-width\", reference = \"W\", from = 2026-01-01, to = 2026-01-01 } ]\n[orders]\n";
    check(
        text,
        expect![[r#"
        12 "fact" UNKNOWN_KEY unknown key `fact` in house
          help: did you mean `facts`?
        15 "lable" UNKNOWN_KEY unknown key `lable` in floor `ground`
          help: did you mean `label`?
        18 "flor" UNKNOWN_KEY unknown key `flor` in room `hall`
          help: did you mean `floor`?
        21 "floor" UNKNOWN_KEY unknown key `floor` in face `front`
          help: known keys are `id`, `label`, `facts`
        24 "qantity" UNKNOWN_KEY unknown key `qantity` in opening `K1`
          help: did you mean `quantity`?
        27 "pin" UNKNOWN_KEY unknown key `pin` in the unit of opening `K1`
          help: did you mean `pins`?
        28 "quote" UNKNOWN_KEY unknown key `quote` in the pick of `operation`
          help: did you mean `quoted`?
        29 "to" UNKNOWN_KEY unknown key `to` in the waiver of `casement-width`
          help: known keys are `rule`, `reference`, `from`, `until`
        30 "orders" UNKNOWN_KEY unknown key `orders` in the order
          help: did you mean `order`?
    "#]],
    );
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
fn an_unknown_room_face_or_floor_is_named_with_the_nearest() {
    let text = "[[floor]]\nid = \"ground\"\n[[room]]\nid = \"kitchen\"\nfloor = \"grond\"\n[[face]]\nid = \"front\"\n\
        [[opening]]\ntag = \"K1\"\nroom = \"kichen\"\nface = \"rear\"\n";
    check(
        &format!("{text}{UNIT}"),
        expect![[r#"
        15 "\"grond\"" UNKNOWN_FLOOR room `kitchen` names floor `grond`, which the order does not have
          help: did you mean `ground`?
        20 "\"kichen\"" UNKNOWN_ROOM opening `K1` names room `kichen`, which the order does not have
          help: did you mean `kitchen`?
        21 "\"rear\"" UNKNOWN_FACE opening `K1` names face `rear`, which the order does not have
          help: the order has `front`
    "#]],
    );
    check(
        &format!("[[opening]]\ntag = \"K1\"\nroom = \"kitchen\"\n{UNIT}"),
        expect![[r#"
        13 "\"kitchen\"" UNKNOWN_ROOM opening `K1` names room `kitchen`, which the order does not have
          help: add a `[[room]]` with this id, or leave the name out
    "#]],
    );
}

#[test]
fn places_of_one_kind_have_different_ids() {
    let text = "[[floor]]\nid = \"a\"\n[[floor]]\nid = \"a\"\n[[room]]\nid = \"a\"\n[[room]]\nid = \"a\"\n\
        [[face]]\nid = \"a\"\n[[face]]\nid = \"a\"\n";
    check(
        &format!("{text}{OPENING}"),
        expect![[r#"
        14 "\"a\"" DUPLICATE_ID two floors have the id `a`
          12 "\"a\"": `a` stands here first
          help: give one of them another id
        18 "\"a\"" DUPLICATE_ID two rooms have the id `a`
          16 "\"a\"": `a` stands here first
          help: give one of them another id
        22 "\"a\"" DUPLICATE_ID two faces have the id `a`
          20 "\"a\"": `a` stands here first
          help: give one of them another id
    "#]],
    );
}

#[test]
fn an_id_of_a_place_has_no_spaces() {
    check(
        &format!("[[room]]\nid = \"The kitchen\"\n{OPENING}"),
        expect![[r#"
            12 "\"The kitchen\"" BAD_ID `The kitchen` is no id of a room
              help: begin with a small letter or a digit; go on with small letters, digits, `-` and `_`; what people read goes into `label`
        "#]],
    );
}

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

#[test]
fn places_say_where_openings_and_picks_stand() {
    let text = format!("{HEAD}{OPENING}picks = [ {{ attribute = \"operation\", option = \"fixed\" }} ]\n");
    let read = read_text(&text);
    let places = &read.order.unwrap().places.openings["K1"];
    assert_eq!(read.sources.text_at(&places.tag), "\"K1\"");
    let picks: Vec<_> = places
        .picks
        .values()
        .map(|place| read.sources.text_at(place))
        .collect();
    assert_eq!(picks, ["\"operation\""]);
}
