use super::LengthTextErrorKind as Kind;
use super::*;
use proptest::prelude::*;

fn number(numerator: i64, denominator: i64) -> Number {
    Number::ratio(numerator, denominator).unwrap()
}

fn inches(text: &str) -> Result<Number, LengthTextError> {
    parse_length(text, Some(LengthUnit::Inch))
}

fn check_fault(text: &str, kind: Kind, message: &str) {
    let error = inches(text).expect_err(text);
    assert_eq!(error.kind(), &kind, "{text}");
    assert_eq!(error.to_string(), message);
    assert!(!error.help().is_empty() && !error.help().contains('\n'), "{text}");
}

#[test]
fn one_length_may_be_written_in_many_ways() {
    for text in [
        "35 5/8",
        "35  5/8",
        "35-5/8",
        "35 - 5/8",
        "35-5/8\"",
        "35 5/8 in",
        "35 5/8in",
        "35.625",
        "35.625 in",
        "35.625\"",
        " 35.625 inches ",
        "35.625 IN.",
        "35.6250 [in_i]",
        "285/8",
        "904.875 mm",
        "904.875mm",
        "90.4875 cm",
        "0.904875 m",
        ".904875 metres",
        "2'-11 5/8\"",
        "2' 11 5/8\"",
        "2'11 5/8",
        "2' - 11 5/8 in",
        "35\t5/8",
        "2 ft 11 5/8 in",
        "2ft-11 5/8in",
        "35⅝",
        "35 ⅝″",
        "2′ 11⅝″",
        "2’ 11 5/8”",
        "2'-11-5/8\"",
        "35–5/8",
        "35 5⁄8",
        "2' 11 5/8''",
        "35\u{a0}5/8",
    ] {
        assert_eq!(inches(text), Ok(number(285, 8)), "{text}");
    }
}

#[test]
fn other_lengths_are_read_as_well() {
    for (text, numerator, denominator) in [
        ("5/8", 5, 8),
        ("9/8", 9, 8),
        ("-1/4", -1, 4),
        ("-35 5/8", -285, 8),
        ("−35 5/8", -285, 8),
        ("- 1/4", -1, 4),
        ("-2' 6\"", -30, 1),
        ("0", 0, 1),
        (".5", 1, 2),
        ("3 ft", 36, 1),
        ("3'", 36, 1),
        ("2 1/2'", 30, 1),
        ("2.5 feet", 30, 1),
        ("2' 11\"", 35, 1),
        ("25.4 mm", 1, 1),
        ("1 m", 5000, 127),
        ("0 1/2", 1, 2),
    ] {
        assert_eq!(inches(text), Ok(number(numerator, denominator)), "{text}");
    }
}

#[test]
fn a_text_without_a_unit_has_the_default_one() {
    assert_eq!(
        parse_length("25.4", Some(LengthUnit::Millimetre)),
        Ok(Number::ONE)
    );
    assert_eq!(
        parse_length("1 in", Some(LengthUnit::Millimetre)),
        Ok(Number::ONE)
    );
    let error = parse_length("35 5/8", None).unwrap_err();
    assert_eq!(error.to_string(), "`35 5/8` has no unit");
    assert_eq!(error.help(), "units are `in`, `ft`, `mm`, `cm`, `m`");
}

#[test]
fn a_date_is_recognised_as_the_work_of_a_spreadsheet() {
    for text in [
        "5-Aug",
        "8-May",
        "Aug-5",
        "05-Aug",
        "5-Aug-24",
        "5-aug-2024",
        "May 8",
        "8 May 2024",
        "May 8, 2024",
        "Sept 5",
        "2024-05-08",
        "2024-05-08 00:00:00",
        "2024-05-08T00:00:00",
        "5/8/2024",
        "05/08/2024",
        "8/5/24",
        "05.08.2024",
        "5-8-2024",
        "May-24",
        "24-05-08",
    ] {
        check_fault(
            text,
            Kind::SpreadsheetDate,
            &format!("`{text}` is a date, not a length"),
        );
    }
    assert_eq!(
        inches("5-Aug").unwrap_err().help(),
        "a spreadsheet has turned a fraction into a date; format the column as text and write 5/8 again"
    );
}

#[test]
fn commas_are_told_apart() {
    for text in ["35,625", "35,6", "0,5 in", "-35,625", "904,875 mm", ",5"] {
        check_fault(text, Kind::DecimalComma, &format!("`{text}` has a decimal comma"));
    }
    assert_eq!(
        inches("904,875 mm").unwrap_err().help(),
        "write a decimal point: `904.875 mm`, or no comma if it separates thousands"
    );
    for text in [
        "1,234.5",
        "1,234,567",
        "1.234,5",
        "1 234",
        "1 234.5 mm",
        "12 345 678",
    ] {
        check_fault(
            text,
            Kind::ThousandsSeparator,
            &format!("`{text}` has separators between thousands"),
        );
    }
}

#[test]
fn each_fault_has_its_message() {
    check_fault("", Kind::Empty, "expected a length, found nothing");
    check_fault(" \t ", Kind::Empty, "expected a length, found nothing");
    check_fault("5/0", Kind::ZeroDenominator, "`5/0` has a denominator of zero");
    check_fault(
        "35 5/0 in",
        Kind::ZeroDenominator,
        "`35 5/0 in` has a denominator of zero",
    );
    check_fault(
        "35 9/8",
        Kind::FractionNotBelowOne,
        "the fraction of `35 9/8` is not below one",
    );
    check_fault(
        "35-8/8",
        Kind::FractionNotBelowOne,
        "the fraction of `35-8/8` is not below one",
    );
    check_fault(
        "2' 12\"",
        Kind::InchesNotBelowFoot,
        "the inches of `2' 12\"` are not below a foot",
    );
    check_fault(
        "35 cubits",
        Kind::UnknownUnit("cubits".into()),
        "unknown unit `cubits` in `35 cubits`",
    );
    check_fault(
        "3 ft2",
        Kind::UnknownUnit("ft2".into()),
        "unknown unit `ft2` in `3 ft2`",
    );
    check_fault(
        "1e3",
        Kind::UnknownUnit("e3".into()),
        "unknown unit `e3` in `1e3`",
    );
    for text in [
        "35 5",
        "35.5 5/8",
        "5//8",
        "5/8/9",
        "35 -",
        "-",
        "--5",
        "1..2",
        "5.",
        "5.5/8",
        "35 5/-8",
        "in",
        "2.5' 3\"",
        "2' 3 mm",
        "/8",
        "5/",
        "35 5/8 5/8",
    ] {
        check_fault(text, Kind::Unreadable, &format!("`{text}` is not a length"));
    }
}

#[test]
fn only_so_much_text_is_read_and_shown() {
    assert!(inches(&"1".repeat(200)).is_ok());
    let error = inches(&"1".repeat(201)).unwrap_err();
    assert_eq!(error.kind(), &Kind::TooLong);
    assert_eq!(
        error.to_string(),
        format!("`{}…` is too long for a length", "1".repeat(40))
    );
    assert_eq!(
        inches("3\n`x`").unwrap_err().to_string(),
        "`3\u{FFFD}\u{FFFD}x\u{FFFD}` is not a length"
    );
}

#[test]
fn areas_are_read_in_square_inches() {
    let limit = Number::from_decimal("820.8").unwrap();
    for text in [
        "5.7 ft2",
        "5.7 sq ft",
        "5.7 sq. ft.",
        "5.7 ft²",
        "5.7 ft^2",
        "5.7 square feet",
        "5.7sqft",
        "5.7 SQ FT",
        "5.7 [sft_i]",
        "5 7/10 sq ft",
        "820.8 in2",
        "820.8 sq in",
        "529547.328 mm2",
        "5295.47328 cm2",
        "0.529547328 m2",
        "0.529547328 m²",
    ] {
        assert_eq!(parse_area(text), Ok(limit.clone()), "{text}");
    }
    assert_eq!(parse_area("820 in2"), Ok(Number::from(820_i64)));
}

#[test]
fn an_area_without_a_unit_of_area_is_refused() {
    for (text, message) in [
        ("", "expected an area, found nothing"),
        ("5.7", "`5.7` has no unit"),
        ("5.7 ft", "unknown unit `ft` in `5.7 ft`"),
        ("5.7 sq", "unknown unit `sq` in `5.7 sq`"),
        ("5.7 2", "`5.7 2` is not an area"),
        ("5.7 sq '", "unknown unit `sq '` in `5.7 sq '`"),
        ("5,7 sq ft", "`5,7 sq ft` has a decimal comma"),
        ("5-Aug", "`5-Aug` is a date, not an area"),
        ("sq ft", "`sq ft` is not an area"),
    ] {
        assert_eq!(parse_area(text).unwrap_err().to_string(), message);
    }
    assert_eq!(
        parse_area("5.7").unwrap_err().help(),
        "units are `sq in`, `sq ft`, `mm2`, `cm2`, `m2`"
    );
}

#[test]
fn lengths_are_shown_exactly_or_visibly_cut() {
    for (numerator, denominator, unit, shown) in [
        (285, 8, LengthUnit::Inch, "35 5/8 in"),
        (36, 1, LengthUnit::Inch, "36 in"),
        (-1, 4, LengthUnit::Inch, "-1/4 in"),
        (357, 10, LengthUnit::Inch, "35.7 in"),
        (1, 64, LengthUnit::Inch, "1/64 in"),
        (1, 128, LengthUnit::Inch, "0.0078125 in"),
        (34, 3, LengthUnit::Inch, "11.333… in"),
        (5000, 127, LengthUnit::Inch, "39.370… in"),
        (-1, 30000, LengthUnit::Inch, "-0.000… in"),
        (285, 8, LengthUnit::Millimetre, "904.875 mm"),
        (1, 3, LengthUnit::Millimetre, "8.466… mm"),
        (36, 1, LengthUnit::Foot, "3 ft"),
        (35, 1, LengthUnit::Foot, "2.9166… ft"),
        (285, 8, LengthUnit::Metre, "0.904875 m"),
        (1, 3, LengthUnit::Metre, "0.008466… m"),
        (285, 8, LengthUnit::Centimetre, "90.4875 cm"),
    ] {
        assert_eq!(format_length(&number(numerator, denominator), unit), shown);
    }
}

/// 20 x 41 in and 34 x 24 in round to 5.7 and 5.7 sq ft, and are neither.
#[test]
fn an_area_below_its_limit_is_not_shown_as_the_limit() {
    for (square_inches, unit, shown) in [
        ("820", AreaUnit::SquareFoot, "5.6944… sq ft"),
        ("816", AreaUnit::SquareFoot, "5.6666… sq ft"),
        ("820.8", AreaUnit::SquareFoot, "5.7 sq ft"),
        ("821.25", AreaUnit::SquareFoot, "5.7031… sq ft"),
        ("720", AreaUnit::SquareFoot, "5 sq ft"),
        ("820.799999", AreaUnit::SquareFoot, "5.6999… sq ft"),
        ("820.8", AreaUnit::SquareMetre, "0.5295… m2"),
        ("820", AreaUnit::SquareInch, "820 sq in"),
    ] {
        assert_eq!(
            format_area(&Number::from_decimal(square_inches).unwrap(), unit),
            shown
        );
    }
}

#[test]
fn units_are_known_by_their_symbols() {
    for unit in LengthUnit::ALL {
        assert_eq!(LengthUnit::from_symbol(unit.symbol()), Some(unit));
        assert_eq!(
            parse_length(&format!("1 {}", unit.symbol()), None),
            Ok(unit.in_inches())
        );
        assert_eq!(
            parse_length(&format!("1 {}", unit.ucum()), None),
            Ok(unit.in_inches())
        );
    }
    for unit in AreaUnit::ALL {
        assert_eq!(
            parse_area(&format!("1 {}", unit.symbol())),
            Ok(unit.in_square_inches())
        );
        assert_eq!(
            parse_area(&format!("1 {}", unit.ucum())),
            Ok(unit.in_square_inches())
        );
    }
    assert_eq!(LengthUnit::from_symbol("IN"), None);
    assert_eq!(LengthUnit::Foot.in_inches(), Number::from(12_i64));
    assert_eq!(
        LengthUnit::Inch
            .in_inches()
            .checked_div(&LengthUnit::Millimetre.in_inches()),
        Number::ratio(254, 10)
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_shown_without_an_ellipsis_reads_back(numerator in -100_000_i64..100_000, denominator in 1_i64..2000) {
        let length = number(numerator, denominator);
        for unit in LengthUnit::ALL {
            let shown = format_length(&length, unit);
            if !shown.contains('…') {
                prop_assert_eq!(parse_length(&shown, None), Ok(length.clone()), "{}", shown);
            }
        }
        for unit in AreaUnit::ALL {
            let shown = format_area(&length, unit);
            if !shown.contains('…') {
                prop_assert_eq!(parse_area(&shown), Ok(length.clone()), "{}", shown);
            }
        }
    }

    #[test]
    fn no_text_panics(text in "\\PC{0,40}", near in "[-0-9./,'\" a-z²⅝]{0,16}") {
        for text in [text, near] {
            for result in [inches(&text), parse_area(&text)] {
                if let Err(error) = result {
                    prop_assert!(!error.to_string().contains('\n') && !error.help().contains('\n'));
                }
            }
        }
    }

    #[test]
    fn feet_and_inches_add_up(feet in 0_i64..100, whole in 0_i64..12, eighths in 1_i64..8) {
        let expected = number(feet * 12 + whole, 1) + number(eighths, 8);
        prop_assert_eq!(inches(&format!("{feet}'-{whole} {eighths}/8\"")), Ok(expected.clone()));
        prop_assert_eq!(inches(&format!("{feet} ft {whole}-{eighths}/8 in")), Ok(expected));
    }
}
