use super::*;
use num_rational::BigRational;
use proptest::prelude::*;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};

fn number(text: &str) -> Number {
    match text.split_once('/') {
        Some((numerator, denominator)) => number(numerator)
            .checked_div(&number(denominator))
            .unwrap_or_else(|| panic!("{text}")),
        None => Number::from_decimal(text).unwrap_or_else(|| panic!("{text}")),
    }
}

fn hash_of(number: &Number) -> u64 {
    let mut hasher = DefaultHasher::new();
    number.hash(&mut hasher);
    hasher.finish()
}

#[test]
fn one_value_has_one_representation() {
    let half = Number::ratio(1, 2).unwrap();
    for same in [
        Number::ratio(2, 4),
        Number::ratio(-1, -2),
        Number::ratio(i64::MIN, i64::MIN).map(|one| one * Number::ratio(1, 2).unwrap()),
        Number::from_bigs(BigInt::from(3), BigInt::from(6)),
        Number::from_bigs(BigInt::from(-3), BigInt::from(-6)),
        Number::from_decimal("0.50"),
        Number::from_decimal("5e-1"),
    ] {
        let same = same.unwrap();
        assert_eq!(same, half);
        assert_eq!(hash_of(&same), hash_of(&half));
        assert_eq!(same.cmp(&half), Ordering::Equal);
    }
}

#[test]
fn a_large_number_that_becomes_small_equals_one_that_always_was() {
    let large = number("1e30");
    assert!(matches!(large.0, Parts::Big(_)));
    let back = (&large + Number::ONE) - &large;
    assert!(matches!(back.0, Parts::Small(1, 1)));
    assert_eq!(hash_of(&back), hash_of(&Number::ONE));
}

#[test]
fn the_smallest_machine_integer_is_an_ordinary_number() {
    let smallest = Number::from(i64::MIN);
    assert_eq!(smallest.to_string(), "-9223372036854775808");
    assert_eq!((-&smallest).to_string(), "9223372036854775808");
    assert_eq!(smallest.abs().to_string(), "9223372036854775808");
    assert_eq!(-(-&smallest), smallest);
    assert_eq!(Number::ratio(i64::MIN, -1).unwrap(), -&smallest);
    assert_eq!(
        Number::ratio(1, i64::MIN).unwrap().to_mixed_fraction(u32::MAX),
        None
    );
    assert_eq!(Number::ratio(i64::MIN, i64::MIN), Some(Number::ONE));
    assert_eq!(Number::ratio(i64::MIN, 0), None);
    assert_eq!(Number::ratio(0, i64::MIN), Some(Number::ZERO));
    assert_eq!(
        (&smallest * &smallest).to_string(),
        "85070591730234615865843651857942052864"
    );
    assert_eq!((&smallest + &smallest).to_string(), "-18446744073709551616");
    assert_eq!(smallest.bits(), 64);
    assert_eq!(Number::ZERO.bits(), 1);
}

#[test]
fn plain_decimals_are_read_exactly() {
    for (text, numerator, denominator) in [
        ("0", 0, 1),
        ("-0", 0, 1),
        ("007", 7, 1),
        ("-12.50", -25, 2),
        (".5", 1, 2),
        ("-.5", -1, 2),
        ("1e3", 1000, 1),
        ("1e+3", 1000, 1),
        ("1.5E-2", 3, 200),
        ("0e400", 0, 1),
    ] {
        assert_eq!(
            Number::from_decimal(text),
            Number::ratio(numerator, denominator),
            "{text}"
        );
    }
}

#[test]
fn anything_but_a_plain_decimal_is_refused() {
    for text in [
        "",
        "-",
        ".",
        "-.",
        "5.",
        "5.e1",
        "e3",
        "1e",
        "1e+",
        "1e-",
        "1e1.5",
        "+1",
        "+-1",
        "--1",
        "1,5",
        "1_000",
        " 1",
        "1 ",
        "1/2",
        "0x10",
        "NaN",
        "inf",
        "1.2.3",
        "1e401",
        "1e-401",
        "1e99999999999",
        "١",
        "½",
        "1e3e3",
        "1-",
    ] {
        assert_eq!(Number::from_decimal(text), None, "{text:?}");
        assert!(text.parse::<Number>().is_err(), "{text:?}");
    }
}

#[test]
fn the_limits_of_reading_are_where_they_are_said_to_be() {
    assert!(Number::from_decimal(&"9".repeat(400)).is_some());
    assert_eq!(Number::from_decimal(&"9".repeat(401)), None);
    assert_eq!(Number::from_decimal(&format!("0.{}", "9".repeat(400))), None);
    assert!(Number::from_decimal("1e400").is_some());
    assert!(Number::from_decimal("1e-400").is_some());
}

#[test]
fn a_number_is_written_as_an_exact_decimal_or_a_fraction() {
    for (given, shown) in [
        ("285/8", "35.625"),
        ("-1/2", "-0.5"),
        ("12", "12"),
        ("1/3", "1/3"),
        ("-2/6", "-1/3"),
        ("1/1000", "0.001"),
        ("205/36", "205/36"),
        ("1e-30", "0.000000000000000000000000000001"),
        ("1e20/3", "100000000000000000000/3"),
    ] {
        assert_eq!(number(given).to_string(), shown);
    }
}

#[test]
fn a_cut_decimal_says_that_it_was_cut() {
    for (given, places, shown, exact) in [
        ("820/144", 4, "5.6944", false),
        ("5.7", 4, "5.7", true),
        ("5.7", 0, "5", false),
        ("100", 2, "100", true),
        ("100", 0, "100", true),
        ("-1/3", 2, "-0.33", false),
        ("-0.001", 2, "-0", false),
        ("1.999", 2, "1.99", false),
        ("2.0001", 3, "2", false),
    ] {
        assert_eq!(
            number(given).to_decimal_truncated(places),
            (shown.to_string(), exact),
            "{given}"
        );
    }
    assert_eq!(number("1/3").to_decimal_truncated(u32::MAX).0.len(), 1002);
}

/// Worked by hand from the rule of the Streamlined Sales and Use Tax Agreement, section 324; binary fractions give
/// 2.67 for 2.675 and 1.01 for 1.015.
#[test]
fn a_half_goes_away_from_zero() {
    let cent = number("0.01");
    for (given, rounded) in [
        ("1.005", "1.01"),
        ("1.015", "1.02"),
        ("1.025", "1.03"),
        ("0.125", "0.13"),
        ("2.675", "2.68"),
        ("-1.005", "-1.01"),
        ("1.0049999", "1.00"),
        ("-1.0049999", "-1.00"),
        ("393.615", "393.62"),
        ("388.615", "388.62"),
        ("4.9875", "4.99"),
        ("-0.004", "0.00"),
    ] {
        assert_eq!(number(given).round_to(&cent), Some(number(rounded)), "{given}");
        assert_eq!(number(given).to_fixed(2), rounded, "{given}");
    }
    assert_eq!(number("0.5").to_fixed(0), "1");
    assert_eq!(number("-0.5").to_fixed(0), "-1");
    assert_eq!(number("1/3").to_fixed(u32::MAX).len(), 1002);
}

/// Measuring, worked by hand: the opening less the clearance, down to the step. Common practice, no source.
#[test]
fn a_measure_goes_down_to_its_step() {
    for (opening, clearance, step, unit) in [
        ("575/16", "1/4", "1/8", "285/8"),
        ("575/16", "1/4", "1/4", "71/2"),
        ("575/16", "1/2", "1/8", "283/8"),
        ("957/16", "1/4", "1/4", "119/2"),
        ("1/16", "1/4", "1/8", "-1/4"),
        ("36", "0", "1/8", "36"),
    ] {
        let found = (number(opening) - number(clearance)).floor_to(&number(step));
        assert_eq!(
            found,
            Some(number(unit)),
            "{opening} - {clearance} down to {step}"
        );
    }
}

/// United inches: 35.625 x 59.75 and 35.25 x 59.25, rounded up before or after adding.
#[test]
fn united_inches_depend_on_when_they_go_up() {
    let up = |text: &str| number(text).ceil_to(&Number::ONE).unwrap();
    assert_eq!(up("35.625") + up("59.75"), number("96"));
    assert_eq!(up("95.375"), number("96"));
    assert_eq!(up("35.25") + up("59.25"), number("96"));
    assert_eq!(up("94.5"), number("95"));
    assert_eq!(up("-0.5"), Number::ZERO);
}

#[test]
fn a_step_must_be_above_zero() {
    for step in [Number::ZERO, -Number::ONE] {
        assert_eq!(Number::ONE.floor_to(&step), None);
        assert_eq!(Number::ONE.ceil_to(&step), None);
        assert_eq!(Number::ONE.round_to(&step), None);
        assert!(!Number::ONE.is_multiple_of(&step));
    }
    assert!(number("35.625").is_multiple_of(&number("1/8")));
    assert!(!number("35.625").is_multiple_of(&number("1/4")));
}

/// 20 x 41 in is 5.6944 sq ft: compared exactly, it does not make 5.7; 20 x 41.04 does, by a hair.
#[test]
fn areas_are_compared_before_anything_is_rounded() {
    let limit = number("5.7") * number("144");
    assert!(number("20") * number("41") < limit);
    assert_eq!(number("20") * number("41.04"), limit);
    assert!(number("34") * number("24") < limit);
    assert!(number("34.25") * number("24") > limit);
}

#[test]
fn mixed_fractions_are_those_of_a_tape_measure() {
    for (given, denominator_max, shown) in [
        ("285/8", 8, Some("35 5/8")),
        ("285/8", 4, None),
        ("36", 1, Some("36")),
        ("36", 0, Some("36")),
        ("0", 64, Some("0")),
        ("-285/8", 64, Some("-35 5/8")),
        ("5/8", 64, Some("5/8")),
        ("-5/8", 64, Some("-5/8")),
        ("1/128", 64, None),
        ("1/3", 64, None),
        ("0.1", 64, None),
    ] {
        let found = number(given).to_mixed_fraction(denominator_max);
        assert_eq!(found.as_deref(), shown, "{given}");
    }
}

#[test]
fn whole_numbers_are_told_from_others() {
    assert_eq!(number("7").to_i64(), Some(7));
    assert_eq!(number("7.5").to_i64(), None);
    assert_eq!(number("1e19").to_i64(), None);
    assert_eq!(number("-7.5").floor(), number("-8"));
    assert_eq!(number("-7.5").ceil(), number("-7"));
    assert_eq!(number("-7.5").round(), number("-8"));
    assert_eq!(number("1e30/7").floor(), number("142857142857142857142857142857"));
    assert_eq!(
        [number("-3"), number("0"), number("1e30")].map(|given| given.signum()),
        [-1, 0, 1]
    );
}

#[test]
fn sums_and_products_run_over_iterators() {
    let numbers = [number("0.1"), number("0.2"), number("1/3")];
    assert_eq!(numbers.iter().sum::<Number>(), number("19/30"));
    assert_eq!(numbers.iter().cloned().sum::<Number>(), number("19/30"));
    assert_eq!(numbers.into_iter().product::<Number>(), number("1/150"));
}

/// Machine words near every edge, small ones, and any at all.
fn word() -> impl Strategy<Value = i64> {
    prop_oneof![
        Just(i64::MIN),
        Just(i64::MIN + 1),
        Just(i64::MAX),
        Just(i64::MAX - 1),
        Just(i64::MIN / 2),
        Just(1 << 32),
        -40_i64..40,
        any::<i64>(),
    ]
}

fn pair() -> impl Strategy<Value = (i64, i64)> {
    (
        word(),
        word().prop_filter("a denominator of zero is no number", |denominator| {
            *denominator != 0
        }),
    )
}

fn both(parts: (i64, i64)) -> (Number, BigRational) {
    let ours = Number::ratio(parts.0, parts.1).unwrap();
    (
        ours,
        BigRational::new(BigInt::from(parts.0), BigInt::from(parts.1)),
    )
}

fn check_same(ours: &Number, theirs: &BigRational) {
    assert_eq!(
        (&ours.numerator(), &ours.denominator()),
        (theirs.numer(), theirs.denom())
    );
    let fits = theirs.numer().to_i64().is_some() && theirs.denom().to_i64().is_some();
    assert_eq!(
        matches!(ours.0, Parts::Small(..)),
        fits,
        "{ours} is held in the wrong form"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn arithmetic_agrees_with_big_rationals(first in pair(), second in pair(), third in pair()) {
        let ((a, a_big), (b, b_big), (c, c_big)) = (both(first), both(second), both(third));
        check_same(&(&a + &b), &(&a_big + &b_big));
        check_same(&(&a - &b), &(&a_big - &b_big));
        check_same(&(&a * &b), &(&a_big * &b_big));
        check_same(&-&a, &-&a_big);
        check_same(&a.abs(), &a_big.abs());
        check_same(&(&a * &b + &c), &(&a_big * &b_big + &c_big));
        check_same(&((&a * &b) - (&a * &c)), &((&a_big * &b_big) - (&a_big * &c_big)));
        match a.checked_div(&b) {
            Some(quotient) => check_same(&quotient, &(&a_big / &b_big)),
            None => prop_assert!(b_big.is_zero()),
        }
        prop_assert_eq!(a.cmp(&b), a_big.cmp(&b_big));
        prop_assert_eq!((&a * &b).cmp(&(&b * &c)), (&a_big * &b_big).cmp(&(&b_big * &c_big)));
        prop_assert_eq!(a == b, a_big == b_big);
    }

    #[test]
    fn whole_parts_agree_with_big_rationals(first in pair(), second in pair()) {
        let ((a, a_big), (b, b_big)) = (both(first), both(second));
        check_same(&a.floor(), &a_big.floor());
        check_same(&a.ceil(), &a_big.ceil());
        check_same(&a.round(), &a_big.round());
        if b.is_positive() {
            check_same(&a.floor_to(&b).unwrap(), &((&a_big / &b_big).floor() * &b_big));
            check_same(&a.ceil_to(&b).unwrap(), &((&a_big / &b_big).ceil() * &b_big));
            check_same(&a.round_to(&b).unwrap(), &((&a_big / &b_big).round() * &b_big));
            prop_assert_eq!(a.is_multiple_of(&b), (&a_big / &b_big).is_integer());
        }
    }

    #[test]
    fn a_decimal_reads_back_as_itself(parts in pair(), places in 0_u32..30) {
        let (a, _) = both(parts);
        let shown = a.to_string();
        match a.decimal_places() {
            Some(_) if shown.len() < 390 => prop_assert_eq!(Number::from_decimal(&shown), Some(a.clone())),
            Some(_) => {}
            None => prop_assert!(shown.contains('/')),
        }
        let (cut, exact) = a.to_decimal_truncated(places);
        let cut = Number::from_decimal(&cut).unwrap();
        let lost = a.abs() - cut.abs();
        let step = number(&format!("1e-{places}"));
        prop_assert!(!lost.is_negative() && lost < step);
        prop_assert_eq!(exact, lost.is_zero());
        prop_assert_eq!(Number::from_decimal(&a.to_fixed(places)), a.round_to(&step));
    }

    #[test]
    fn no_text_panics(text in "\\PC*", plain in "[-+0-9.eE]{0,12}") {
        let _ = Number::from_decimal(&text);
        if let Some(read) = Number::from_decimal(&plain) {
            prop_assert!(plain.bytes().any(|byte| byte.is_ascii_digit()));
            prop_assert_eq!(Number::from_decimal(&read.to_string()), Some(read));
        }
    }
}
