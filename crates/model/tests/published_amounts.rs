//! Amounts worked out elsewhere: rounding, tax by the item and by the invoice, discounts one after another.
//!
//! Money is rounded half away from zero, once, where something asks for it. Other ways to round are beside it, worked here from
//! exact numbers, so that a row shows where they part.
#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_model::{currency::Currency, money::Money, number::Number};

const TAX: &str = "Streamlined Sales and Use Tax Agreement, section 324";
const COMPUTED: &str = "computed";

fn dollars(text: &str) -> Money {
    Money::new(number(text), Currency::from_code("USD").unwrap())
}

fn number(text: &str) -> Number {
    Number::from_decimal(text).unwrap()
}

fn to_cents(money: &Money) -> Money {
    money.rounded_to(&number("0.01")).unwrap()
}

/// Carried to the third decimal, the rest cut, and up when that decimal is above four.
fn by_the_third_decimal(amount: &Number) -> Number {
    let thousandths = (amount.abs() * number("1000")).floor();
    let cents = thousandths.floor_to(&number("10")).unwrap();
    let up = &thousandths - &cents > number("4");
    let rounded = if up { cents + number("10") } else { cents };
    rounded * number("0.001")
}

/// To the nearest cent, a half to the even one.
fn half_to_even(amount: &Number) -> Number {
    let cents = amount * &number("100");
    let below = cents.floor();
    let (half, two) = (number("0.5"), number("2"));
    let above = &below + &Number::ONE;
    let nearest = match (&cents - &below).cmp(&half) {
        std::cmp::Ordering::Less => below,
        std::cmp::Ordering::Greater => above,
        std::cmp::Ordering::Equal if below.is_multiple_of(&two) => below,
        std::cmp::Ordering::Equal => above,
    };
    nearest * number("0.01")
}

#[test]
fn a_half_goes_away_from_zero_where_others_go_to_the_even_cent() {
    // amount, ours, half to even
    let rows = [
        ("1.005", "1.01", "1.00"),
        ("1.015", "1.02", "1.02"),
        ("1.025", "1.03", "1.02"),
        ("0.125", "0.13", "0.12"),
        ("2.675", "2.68", "2.68"),
        ("-1.005", "-1.01", "-1.00"),
        ("1.00499", "1.00", "1.00"),
        ("1.00501", "1.01", "1.01"),
    ];
    for (amount, ours, even) in rows {
        assert_eq!(to_cents(&dollars(amount)), dollars(ours), "{amount} ({COMPUTED})");
        assert_eq!(
            half_to_even(&number(amount)),
            number(even),
            "{amount}, half to even ({COMPUTED})"
        );
    }
}

/// Cutting at the third decimal and then looking at it is the same as rounding half away from zero, for any tax.
#[test]
fn tax_goes_up_when_its_third_decimal_is_above_four() {
    let rows = [
        ("1.2449", "1.24"),
        ("1.244", "1.24"),
        ("1.245", "1.25"),
        ("1.24999", "1.25"),
        ("4.9875", "4.99"),
        ("1.246875", "1.25"),
        ("0.004", "0.00"),
        ("0.005", "0.01"),
    ];
    for (tax, expected) in rows {
        assert_eq!(to_cents(&dollars(tax)), dollars(expected), "{tax} ({TAX})");
    }
    for hundred_thousandths in 0_i64..20_000 {
        let tax = Number::ratio(hundred_thousandths, 100_000).unwrap();
        let ours = to_cents(&Money::new(tax.clone(), Currency::from_code("USD").unwrap()));
        assert_eq!(ours.amount(), &by_the_third_decimal(&tax), "{tax} ({TAX})");
    }
}

#[test]
fn tax_by_the_item_and_by_the_invoice_differ() {
    let (each, rate, four) = (dollars("19.95"), number("0.0625"), number("4"));
    let by_item = to_cents(&each.times(&rate));
    assert_eq!(by_item, dollars("1.25"), "{COMPUTED}");
    assert_eq!(by_item.times(&four), dollars("5.00"), "{COMPUTED}");
    let invoice = each.times(&four);
    assert_eq!(invoice, dollars("79.80"), "{COMPUTED}");
    let tax = invoice.times(&rate);
    assert_eq!(tax, dollars("4.9875"), "{COMPUTED}");
    assert_eq!(to_cents(&tax), dollars("4.99"), "{COMPUTED}");
}

#[test]
fn discounts_neither_add_up_nor_change_places() {
    let less =
        |amount: &Money, percent: &str| amount.times(&(Number::ONE - number(percent) * number("0.01")));
    let list = dollars("1000");
    assert_eq!(less(&less(&list, "10"), "5"), dollars("855.00"), "{COMPUTED}");
    assert_eq!(less(&list, "15"), dollars("850.00"), "{COMPUTED}");

    let (list, flat) = (dollars("487.35"), dollars("-50"));
    let flat_first = less(&list.plus(&flat).unwrap(), "10");
    assert_eq!(flat_first, dollars("393.615"), "{COMPUTED}");
    assert_eq!(to_cents(&flat_first), dollars("393.62"), "{COMPUTED}");
    let percent_first = less(&list, "10").plus(&flat).unwrap();
    assert_eq!(percent_first, dollars("388.615"), "{COMPUTED}");
    assert_eq!(to_cents(&percent_first), dollars("388.62"), "{COMPUTED}");
}
