//! Until when a sale may be cancelled, row by row; every day of seven years is compared with another calendar in `outside`.
#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_exact::Number;
use astragal_trade::cooling_off::{
    APPLIES_ALSO, APPLIES_ALSO_BASIS, CANCELLATION_FORMS, CONTRACT_BASIS, CONTRACT_FORM, FederalHoliday,
    NOT_COVERED, NOTICE_POINTS_LEAST, PlaceOfSale, Sale, cooling_off, is_business_day, last_day,
};
use astragal_trade::{Date, Fact, Missing, Status, Truth};
use proptest::prelude::*;

fn day(text: &str) -> Date {
    text.parse().unwrap()
}

fn columns<const COUNT: usize>(row: &str) -> [&str; COUNT] {
    let columns: Vec<&str> = row.split('|').map(str::trim).collect();
    columns.try_into().unwrap()
}

/// Source: 16 CFR 429.1(a), the third business day; all computed by hand from it: signed, the last day, and what it would be by the named days of holidays alone.
#[test]
fn the_last_day_is_the_third_business_day() {
    let rows = [
        "Thanksgiving is skipped                    | 2026-11-23 | 2026-11-27 | 2026-11-27",
        "Saturday counts, Sunday does not           | 2026-11-27 | 2026-12-01 | 2026-12-01",
        "Christmas and a Sunday                     | 2026-12-23 | 2026-12-28 | 2026-12-28",
        "over a weekend                             | 2027-01-08 | 2027-01-12 | 2027-01-12",
        "a holiday on Saturday, observed on Friday  | 2026-07-01 | 2026-07-07 | 2026-07-06",
        "a holiday on Sunday, observed on Monday    | 2027-07-02 | 2027-07-07 | 2027-07-06",
        "another, the Sunday two days on            | 2022-06-17 | 2022-06-22 | 2022-06-21",
        "New Year's Day observed in the year before | 2021-12-29 | 2022-01-04 | 2022-01-03",
        "a plain week                               | 2026-03-02 | 2026-03-05 | 2026-03-05",
        "signed on a Saturday                       | 2026-03-07 | 2026-03-11 | 2026-03-11",
        "signed on a Sunday                         | 2026-03-08 | 2026-03-11 | 2026-03-11",
        "signed on a holiday                        | 2026-12-25 | 2026-12-29 | 2026-12-29",
        "before Juneteenth was one                  | 2020-06-18 | 2020-06-22 | 2020-06-22",
        "the first day of the calendar              | 1971-01-01 | 1971-01-05 | 1971-01-05",
        "the last day of the calendar               | 2200-12-31 | 2201-01-05 | 2201-01-05",
    ];
    for row in rows {
        let [name, signed, last, named] = columns(row);
        let found = last_day(day(signed)).unwrap();
        assert_eq!(
            (found.day, found.by_named_days),
            (day(last), day(named)),
            "{name} (computed)"
        );
    }
}

/// Source: 16 CFR 429.0(a), read: 25 dollars at home, 130 elsewhere away from the seller's premises. Equal to the least price counts; a
/// cent less does not.
#[test]
fn the_rule_applies_by_place_and_price() {
    use PlaceOfSale::{BuyersHome, Elsewhere, SellersPremises};
    let unknown = |fact| Truth::Unknown(Missing::from([fact]));
    let rows = [
        ("at home for 25", Some(BuyersHome), Some("25"), Truth::Yes),
        (
            "at home for a cent less",
            Some(BuyersHome),
            Some("24.99"),
            Truth::No,
        ),
        ("elsewhere for 130", Some(Elsewhere), Some("130"), Truth::Yes),
        (
            "elsewhere for a cent less",
            Some(Elsewhere),
            Some("129.99"),
            Truth::No,
        ),
        ("at home for 129.99", Some(BuyersHome), Some("129.99"), Truth::Yes),
        (
            "in the shop for any price",
            Some(SellersPremises),
            Some("100000"),
            Truth::No,
        ),
        ("in the shop, no price", Some(SellersPremises), None, Truth::No),
        ("at home, no price", Some(BuyersHome), None, unknown(Fact::Price)),
        ("elsewhere, no price", Some(Elsewhere), None, unknown(Fact::Price)),
        (
            "nobody says where, 4,000",
            None,
            Some("4000"),
            unknown(Fact::PlaceOfSale),
        ),
        (
            "nobody says where, 100",
            None,
            Some("100"),
            unknown(Fact::PlaceOfSale),
        ),
        ("nobody says where, 24.99", None, Some("24.99"), Truth::No),
        ("for nothing", Some(BuyersHome), Some("0"), Truth::No),
        (
            "nothing is known",
            None,
            None,
            Truth::Unknown(Missing::from([Fact::PlaceOfSale, Fact::Price])),
        ),
    ];
    for (name, place, price, applies) in rows {
        let price = price.map(|text| Number::from_decimal(text).unwrap());
        let sale = Sale {
            place,
            price,
            signed: Some(day("2026-11-23")),
        };
        let answer = cooling_off(&sale).unwrap();
        assert_eq!(answer.applies, applies, "{name} (16 CFR 429.0(a))");
        assert_eq!(answer.missing, applies.missing(), "{name}");
        assert_eq!(answer.last_day.is_some(), applies != Truth::No, "{name}");
        let undated = cooling_off(&Sale { signed: None, ..sale }).unwrap();
        assert_eq!(
            undated.missing.contains(&Fact::DaySigned),
            applies != Truth::No,
            "{name}, no day"
        );
        assert_eq!(undated.last_day, None, "{name}, no day");
    }
}

/// Source: 16 CFR 429.0(a), read: also when the buyer invited the seller. So it is a fact of no sale, and leaves none out.
#[test]
fn an_invitation_takes_no_sale_out_of_the_rule() {
    assert_eq!(APPLIES_ALSO, "the buyer invited the seller to come");
    assert_eq!(APPLIES_ALSO_BASIS.to_string(), "16 CFR 429.0(a)");
    assert_eq!(APPLIES_ALSO_BASIS.status, Status::Verified);
    for (case, _) in NOT_COVERED {
        assert!(!case.contains("invit"), "{case}");
    }
    // Place, day and price are all that is asked: every one of them known, nothing is missing.
    let sale = Sale {
        place: Some(PlaceOfSale::BuyersHome),
        signed: Some(day("2026-11-23")),
        price: Some(Number::from(25)),
    };
    let answer = cooling_off(&sale).unwrap();
    assert_eq!((answer.applies, answer.missing), (Truth::Yes, Missing::new()));
}

/// Rules and observance by 5 U.S.C. 6103; from which year on, and the Veterans Days of October, in texts about the days.
#[test]
fn each_holiday_has_its_rule_and_its_years() {
    let rows = [
        "New Year's Day                      | 2026 | 2026-01-01 | 2026-01-01",
        "New Year's Day                      | 2022 | 2022-01-01 | 2021-12-31",
        "Birthday of Martin Luther King, Jr. | 2026 | 2026-01-19 | 2026-01-19",
        "Birthday of Martin Luther King, Jr. | 1986 | 1986-01-20 | 1986-01-20",
        "Birthday of Martin Luther King, Jr. | 1985 | -          | -",
        "Washington's Birthday               | 2026 | 2026-02-16 | 2026-02-16",
        "Memorial Day                        | 2026 | 2026-05-25 | 2026-05-25",
        "Memorial Day                        | 2027 | 2027-05-31 | 2027-05-31",
        "Juneteenth National Independence Day | 2021 | 2021-06-19 | 2021-06-18",
        "Juneteenth National Independence Day | 2020 | -         | -",
        "Independence Day                    | 2026 | 2026-07-04 | 2026-07-03",
        "Independence Day                    | 2027 | 2027-07-04 | 2027-07-05",
        "Labor Day                           | 2026 | 2026-09-07 | 2026-09-07",
        "Columbus Day                        | 2026 | 2026-10-12 | 2026-10-12",
        "Veterans Day                        | 2026 | 2026-11-11 | 2026-11-11",
        "Veterans Day                        | 1978 | 1978-11-11 | 1978-11-10",
        "Veterans Day                        | 1977 | 1977-10-24 | 1977-10-24",
        "Thanksgiving Day                    | 2026 | 2026-11-26 | 2026-11-26",
        "Thanksgiving Day                    | 2028 | 2028-11-23 | 2028-11-23",
        "Christmas Day                       | 2027 | 2027-12-25 | 2027-12-24",
        "Christmas Day                       | 1971 | 1971-12-25 | 1971-12-24",
        "Christmas Day                       | 1970 | -          | -",
        "Christmas Day                       | 2200 | 2200-12-25 | 2200-12-25",
        "Christmas Day                       | 2201 | -          | -",
        "Labor Day                           | 32767 | -         | -",
        "Labor Day                           | -32768 | -        | -",
    ];
    for row in rows {
        let [name, year, named, observed] = columns(row);
        let mut all = FederalHoliday::ALL.into_iter();
        let holiday = all.find(|holiday| holiday.name() == name).unwrap();
        let (year, written) = (year.parse().unwrap(), |text: &str| {
            (text != "-").then(|| day(text))
        });
        assert_eq!(holiday.named_day(year), written(named), "{name} {year}");
        assert_eq!(holiday.observed_day(year), written(observed), "{name} {year}");
    }
}

/// Source: 5 U.S.C. 6103 for the named and the observed day; a Saturday counts as a business day in a guide.
#[test]
fn a_day_knows_its_holiday() {
    use FederalHoliday as Holiday;
    assert_eq!(
        Holiday::named_on(day("2026-07-04")),
        Some(Holiday::IndependenceDay)
    );
    assert_eq!(
        Holiday::observed_on(day("2026-07-03")),
        Some(Holiday::IndependenceDay)
    );
    assert_eq!(Holiday::observed_on(day("2026-07-04")), None);
    assert_eq!(
        Holiday::observed_on(day("2021-12-31")),
        Some(Holiday::NewYearsDay)
    );
    assert!(is_business_day(day("2026-07-02")) && is_business_day(day("2026-07-11")));
    for closed in ["2026-07-03", "2026-07-04", "2026-07-05"] {
        assert!(!is_business_day(day(closed)), "{closed}");
    }
}

/// No source: the days that are taken are our limits.
#[test]
fn slips_are_refused_and_no_day_panics() {
    let rows = [
        (
            Some("1970-12-31"),
            None,
            "day on which it is signed is `1970-12-31`; expected a day from 1971 to 2200",
        ),
        (
            Some("2201-01-01"),
            None,
            "day on which it is signed is `2201-01-01`; expected a day from 1971 to 2200",
        ),
        (
            Some("2026-01-01"),
            Some("-0.01"),
            "price of the sale is `-0.01`; expected an amount of 0 or more, in dollars",
        ),
    ];
    for (signed, price, text) in rows {
        let sale = Sale {
            place: None,
            signed: signed.map(day),
            price: price.map(|text| Number::from_decimal(text).unwrap()),
        };
        assert_eq!(cooling_off(&sale).unwrap_err().to_string(), text);
    }
    for far in [Date::MIN, Date::MAX, Date::ZERO] {
        assert!(last_day(far).is_err());
        assert_eq!(
            (FederalHoliday::named_on(far), is_business_day(far)),
            (None, far.weekday() != jiff::civil::Weekday::Sunday)
        );
    }
}

/// Source: 16 CFR 429.1(a) for the day; how far each was seen: a visit to the shop read, the other sales from memory.
#[test]
fn the_day_is_said_in_one_line() {
    let rows = [
        (
            "2026-11-23",
            "until midnight of Friday 2026-11-27; state law may give longer",
        ),
        (
            "2026-07-01",
            "until midnight of Tuesday 2026-07-07 (2026-07-06 if days on which a holiday is only observed count as \
             business days); state law may give longer",
        ),
    ];
    for (signed, text) in rows {
        assert_eq!(last_day(day(signed)).unwrap().to_string(), text);
    }
    assert!(
        FederalHoliday::ALL
            .iter()
            .all(|holiday| holiday.basis().status == Status::SecondHand)
    );
    let shop = NOT_COVERED.first().map(|(_, basis)| basis.status);
    assert_eq!(shop, Some(Status::Verified));
    assert!(
        NOT_COVERED
            .iter()
            .skip(1)
            .all(|(_, basis)| basis.status == Status::FromMemory)
    );
}

/// Source: 16 CFR 429.1: language of the talks, date, seller's name and address, statement in bold type of at least 10 points near the
/// signature, form for cancelling in duplicate.
#[test]
fn the_paper_of_a_sale_has_a_form() {
    let rows = [
        (
            "language",
            vec!["in the language in which the sale was talked over"],
        ),
        ("date", vec!["date of the sale"]),
        ("seller", vec!["name", "address of the seller"]),
        (
            "statement",
            vec!["signature", "bold", "at least 10 points", "may cancel"],
        ),
        ("form", vec!["form for cancelling", "in duplicate"]),
    ];
    assert_eq!(rows.len(), CONTRACT_FORM.len());
    for ((name, parts), asked) in rows.iter().zip(CONTRACT_FORM) {
        assert!(parts.iter().all(|part| asked.contains(part)), "{name}: {asked}");
    }
    let points = format!("at least {NOTICE_POINTS_LEAST} points");
    assert!(CONTRACT_FORM.iter().any(|asked| asked.contains(&points)));
    assert_eq!((NOTICE_POINTS_LEAST, CANCELLATION_FORMS), (10, 2));
    assert_eq!(CONTRACT_BASIS.to_string(), "16 CFR 429.1");
    assert_eq!(CONTRACT_BASIS.status, Status::Verified);
}

proptest! {
    /// Whatever the day, the last one is a business day after it, at least three days on, and never the earlier reading.
    #[test]
    fn the_last_day_is_a_business_day_and_the_later_reading(year in 1971_i16..=2200, month in 1_i8..=12, of_month in 1_i8..=28) {
        let signed = Date::constant(year, month, of_month);
        let last = last_day(signed).unwrap();
        prop_assert!(is_business_day(last.day));
        prop_assert!(last.by_named_days <= last.day);
        let between = signed.until(last.day).unwrap().get_days();
        prop_assert!((3..=8).contains(&between), "{between} days");
    }
}
