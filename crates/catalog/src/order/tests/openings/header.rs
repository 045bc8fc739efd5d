//! What an order says of itself.

use super::*;

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
