//! Exact numbers and lengths between requests, the model and answers.
//!
//! `{ decimal: "904.875", unit: "mm" }` and `{ fraction: "35 5/8", unit: "[in_i]" }` are the same length. An answer has a
//! decimal where one is exact, and a fraction otherwise; its lengths are in the unit in which the catalog writes them, and its
//! areas in the square of that.
//!
//! Always holds: nothing is rounded. Units are written by the Unified Code for Units of Measure.
//! LIMIT: [`CHARACTERS_MAX`] characters of a number, as it is written and as a plain number, as in a file.

use astragal_model::measure_text::{AreaUnit, LengthUnit, parse_length};
use astragal_model::{Number, ValueType};

use crate::serve::fault::{Faults, Reason, shown};
use crate::serve::google_type::Decimal;
use crate::serve::v1::{Quantity, quantity};

/// How many characters a number may have.
const CHARACTERS_MAX: usize = 200;

/// The number that is written, whatever its unit.
fn magnitude(written: &Quantity, field: &str, faults: &mut Faults) -> Option<Number> {
    let (text, number, field) = match &written.number {
        None => {
            faults.push(
                Reason::Required,
                field,
                "a number is asked for, as a decimal or a fraction",
            );
            return None;
        }
        Some(quantity::Number::Decimal(decimal)) => {
            let text = &decimal.value;
            let plain = text.strip_prefix('+').unwrap_or(text);
            (
                text,
                Number::from_decimal(plain),
                format!("{field}.decimal.value"),
            )
        }
        Some(quantity::Number::Fraction(text)) => (text, fraction(text), format!("{field}.fraction")),
    };
    // What is written out last is short when the text is, exponents apart.
    let is_short =
        |number: &Number| text.len() <= CHARACTERS_MAX && number.to_string().len() <= CHARACTERS_MAX;
    let message = match &number {
        Some(found) if is_short(found) => return number,
        Some(_) => format!(
            "{} is too long; at most {CHARACTERS_MAX} characters are read, written out",
            shown(text)
        ),
        None => format!(
            "{} is no number; expected a decimal such as `35.625`, or a fraction such as `285/8`",
            shown(text)
        ),
    };
    faults.push(Reason::BadNumber, field, &message);
    None
}

/// What `285/8`, `-1/3` or `35 5/8` says; a unit beside it is none.
fn fraction(text: &str) -> Option<Number> {
    let is_plain = |letter: char| letter.is_ascii_digit() || matches!(letter, ' ' | '/' | '-' | '.');
    if !text.chars().all(is_plain) {
        return None;
    }
    parse_length(text, Some(LengthUnit::Inch)).ok()
}

/// A length in inches.
pub(super) fn length(written: &Quantity, field: &str, faults: &mut Faults) -> Option<Number> {
    let number = magnitude(written, field, faults);
    let units = LengthUnit::ALL.into_iter();
    let Some(unit) = units.clone().find(|unit| unit.ucum() == written.unit) else {
        let known: Vec<String> = units.map(|unit| format!("`{}`", unit.ucum())).collect();
        let message = format!(
            "{} is no unit of length; units are {}",
            shown(&written.unit),
            known.join(", ")
        );
        faults.push(Reason::BadUnit, format!("{field}.unit"), &message);
        return None;
    };
    number.map(|number| number * unit.in_inches())
}

/// A number without a unit.
pub(super) fn number(written: &Quantity, field: &str, faults: &mut Faults) -> Option<Number> {
    if !matches!(written.unit.as_str(), "" | "1") {
        let message = format!(
            "{} is a unit; expected a number without one",
            shown(&written.unit)
        );
        faults.push(Reason::BadUnit, format!("{field}.unit"), &message);
        return None;
    }
    magnitude(written, field, faults)
}

/// A number of the model, written in the unit of length of its catalog.
pub(super) fn quantity(value_type: ValueType, number: &Number, length_unit: LengthUnit) -> Quantity {
    let square = || AreaUnit::ALL.into_iter().find(|area| area.side() == length_unit);
    let (unit, size) = match value_type {
        ValueType::Length => (length_unit.ucum(), length_unit.in_inches()),
        ValueType::Area => {
            let area = square().unwrap_or(AreaUnit::SquareInch);
            (area.ucum(), area.in_square_inches())
        }
        _ => ("1", Number::from(1_i64)),
    };
    // No unit has the size nothing.
    let text = number.checked_div(&size).unwrap_or_default().to_string();
    Quantity {
        number: Some(if text.contains('/') {
            quantity::Number::Fraction(text)
        } else {
            quantity::Number::Decimal(Decimal { value: text })
        }),
        unit: unit.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decimal(value: &str, unit: &str) -> Quantity {
        Quantity {
            number: Some(quantity::Number::Decimal(Decimal {
                value: value.to_owned(),
            })),
            unit: unit.to_owned(),
        }
    }

    fn fraction_of(text: &str, unit: &str) -> Quantity {
        Quantity {
            number: Some(quantity::Number::Fraction(text.to_owned())),
            unit: unit.to_owned(),
        }
    }

    #[test]
    fn one_length_written_in_four_ways_is_one_length() {
        let inches = Number::ratio(285, 8);
        for written in [
            decimal("35.625", "[in_i]"),
            decimal("+904.875", "mm"),
            fraction_of("35 5/8", "[in_i]"),
            fraction_of("285/8", "[in_i]"),
        ] {
            let mut faults = Faults::default();
            assert_eq!(length(&written, "size", &mut faults), inches, "{written:?}");
            assert!(faults.is_empty());
        }
    }

    #[test]
    fn what_is_no_number_or_unit_is_refused_at_its_field() {
        for (name, written, reason, field) in [
            (
                "a comma",
                decimal("35,5", "[in_i]"),
                "BAD_NUMBER",
                "size.decimal.value",
            ),
            (
                "not a number",
                decimal("NaN", "mm"),
                "BAD_NUMBER",
                "size.decimal.value",
            ),
            (
                "over nothing",
                fraction_of("1/0", "mm"),
                "BAD_NUMBER",
                "size.fraction",
            ),
            (
                "a unit in the number",
                fraction_of("35 mm", "mm"),
                "BAD_NUMBER",
                "size.fraction",
            ),
            (
                "too long",
                decimal(&"9".repeat(201), "mm"),
                "BAD_NUMBER",
                "size.decimal.value",
            ),
            (
                "too long, written out",
                decimal("1e200", "mm"),
                "BAD_NUMBER",
                "size.decimal.value",
            ),
            (
                "too small, written out",
                decimal("1e-200", "mm"),
                "BAD_NUMBER",
                "size.decimal.value",
            ),
            ("a symbol", decimal("35", "in"), "BAD_UNIT", "size.unit"),
            ("no unit", decimal("35", ""), "BAD_UNIT", "size.unit"),
            (
                "no number",
                Quantity {
                    number: None,
                    unit: "mm".to_owned(),
                },
                "REQUIRED",
                "size",
            ),
        ] {
            let mut faults = Faults::default();
            assert_eq!(length(&written, "size", &mut faults), None, "{name}");
            let status = faults.into_result().expect_err(name);
            let details = tonic_types::StatusExt::get_error_details(&status);
            let violation = &details.bad_request().expect(name).field_violations[0];
            assert_eq!(
                (violation.reason.as_str(), violation.field.as_str()),
                (reason, field),
                "{name}"
            );
        }
    }

    #[test]
    fn a_third_is_answered_as_a_fraction_and_a_half_as_a_decimal() {
        let ratio = |over, under| Number::ratio(over, under).expect("a number");
        let inch = LengthUnit::Inch;
        let third = quantity(ValueType::Number, &ratio(1, 3), inch);
        assert_eq!(third, fraction_of("1/3", "1"));
        let half = quantity(ValueType::Length, &ratio(1, 2), inch);
        assert_eq!(half, decimal("0.5", "[in_i]"));
    }

    #[test]
    fn a_length_is_answered_in_the_unit_of_its_catalog_and_an_area_in_its_square() {
        // 127 mm are 5 in.
        let (length, area) = (Number::from(5_i64), Number::from(25_i64));
        for (unit, expected_length, expected_area) in [
            (LengthUnit::Inch, decimal("5", "[in_i]"), decimal("25", "[sin_i]")),
            (
                LengthUnit::Foot,
                fraction_of("5/12", "[ft_i]"),
                fraction_of("25/144", "[sft_i]"),
            ),
            (
                LengthUnit::Millimetre,
                decimal("127", "mm"),
                decimal("16129", "mm2"),
            ),
            (
                LengthUnit::Centimetre,
                decimal("12.7", "cm"),
                decimal("161.29", "cm2"),
            ),
            (
                LengthUnit::Metre,
                decimal("0.127", "m"),
                decimal("0.016129", "m2"),
            ),
        ] {
            let found = quantity(ValueType::Length, &length, unit);
            assert_eq!(found, expected_length);
            let mut faults = Faults::default();
            assert_eq!(super::length(&found, "size", &mut faults).as_ref(), Some(&length));
            assert_eq!(quantity(ValueType::Area, &area, unit), expected_area);
            assert_eq!(
                quantity(ValueType::Number, &length, unit),
                decimal("5", "1"),
                "{unit:?}"
            );
        }
    }
}
