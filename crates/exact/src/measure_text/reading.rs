//! Reads lengths and areas as people write them.
//!
//! A length is a magnitude and a unit, or feet and then inches. A magnitude is a decimal (`35.625`), a fraction
//! (`5/8`) or a whole number and a fraction (`35 5/8`, `35-5/8`).
//!
//! Invariant: the result is exact; text that can be read in two ways is refused.
//! LIMIT: 200 characters.

use super::error::{LengthTextError, LengthTextErrorKind as Kind};
use super::fault::fault_of;
use super::{AreaUnit, LengthUnit};
use crate::number::Number;

/// LIMIT: the characters of a text that is read.
const CHARACTERS_MAX: usize = 200;

/// Returns the length in inches; a text without a unit has the unit `default`.
///
/// Reads `35 5/8`, `35-5/8"`, `5/8`, `.5`, `35.625 in`, `904.875 mm`, `3 ft`, `2'-11 5/8"`, `2 ft 11 in`,
/// `-1/4`, the signs ″ ′ and fractions such as ⅝. Units are read in either case, in full or in short.
///
/// # Errors
/// See [`LengthTextErrorKind`](super::LengthTextErrorKind); the text is never guessed at.
///
/// # Examples
/// ```
/// use astragal_exact::measure_text::{LengthUnit, parse_length};
/// use astragal_exact::number::Number;
/// for text in ["35 5/8", "35-5/8\"", "35.625 in", "2'-11 5/8\"", "904.875 mm"] {
///     assert_eq!(parse_length(text, Some(LengthUnit::Inch)).ok(), Number::ratio(285, 8), "{text}");
/// }
/// ```
/// A spreadsheet's work is recognised:
/// ```
/// use astragal_exact::measure_text::{LengthUnit, parse_length};
/// let error = parse_length("8-May", Some(LengthUnit::Inch)).err().ok_or("a length")?;
/// assert_eq!(error.to_string(), "`8-May` is a date, not a length");
/// # Ok::<(), &str>(())
/// ```
pub fn parse_length(text: &str, default: Option<LengthUnit>) -> Result<Number, LengthTextError> {
    let read = prepared(text).and_then(|plain| {
        let (negative, size) = without_sign(&plain);
        let inches = length_size(size, default)?;
        Ok(if negative { -inches } else { inches })
    });
    read.map_err(|kind| LengthTextError::new(kind, text.trim(), false))
}

/// Returns the area in square inches; the unit must be there.
///
/// Reads `5.7 ft2`, `5.7 sq ft`, `820 in2`, `0.53 m2`, `5.7 ft²`, and magnitudes as lengths have them.
///
/// # Errors
/// See [`LengthTextErrorKind`](super::LengthTextErrorKind); the text is never guessed at.
///
/// # Examples
/// ```
/// use astragal_exact::measure_text::parse_area;
/// use astragal_exact::number::Number;
/// assert_eq!(parse_area("5.7 sq ft").ok(), Number::from_decimal("820.8"));
/// let error = parse_area("5.7").err().ok_or("an area")?;
/// assert_eq!(error.to_string(), "`5.7` has no unit");
/// # Ok::<(), &str>(())
/// ```
pub fn parse_area(text: &str) -> Result<Number, LengthTextError> {
    let read = prepared(text).and_then(|plain| {
        let (negative, size) = without_sign(&plain);
        let (magnitude, unit_text) = split_at_unit(size);
        let count = magnitude_of(magnitude)?;
        let unit = area_unit(unit_text)?;
        let square_inches = count * unit.in_square_inches();
        Ok(if negative { -square_inches } else { square_inches })
    });
    read.map_err(|kind| LengthTextError::new(kind, text.trim(), true))
}

/// Checks the size, writes typographic signs and spaces plainly, and looks for what spreadsheets do.
fn prepared(text: &str) -> Result<String, Kind> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Kind::Empty);
    }
    if text.chars().nth(CHARACTERS_MAX).is_some() {
        return Err(Kind::TooLong);
    }
    if text
        .chars()
        .any(|character| character.is_control() && character != '\t')
    {
        return Err(Kind::Unreadable);
    }
    let plain = plain_signs(text);
    match fault_of(&plain) {
        Some(fault) => Err(fault),
        None => Ok(plain),
    }
}

fn plain_signs(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '″' | '”' | '“' => plain.push('"'),
            '′' | '’' | '‘' => plain.push('\''),
            '–' | '−' | '‑' => plain.push('-'),
            '⁄' => plain.push('/'),
            '²' => plain.push('2'),
            '½' => plain.push_str(" 1/2"),
            '¼' => plain.push_str(" 1/4"),
            '¾' => plain.push_str(" 3/4"),
            '⅛' => plain.push_str(" 1/8"),
            '⅜' => plain.push_str(" 3/8"),
            '⅝' => plain.push_str(" 5/8"),
            '⅞' => plain.push_str(" 7/8"),
            space if space.is_whitespace() => plain.push(' '),
            other => plain.push(other),
        }
    }
    plain.trim().replace("''", "\"")
}

fn without_sign(text: &str) -> (bool, &str) {
    match text.strip_prefix('-') {
        Some(size) => (true, size.trim_start()),
        None => (false, text),
    }
}

fn length_size(text: &str, default: Option<LengthUnit>) -> Result<Number, Kind> {
    let (magnitude, rest) = split_at_unit(text);
    if rest.is_empty() {
        let unit = default.ok_or(Kind::MissingUnit);
        return Ok(magnitude_of(magnitude)? * unit?.in_inches());
    }
    if let Some((feet, inches)) = feet_and_inches(magnitude, rest) {
        return feet_and_inches_size(feet, inches);
    }
    let count = magnitude_of(magnitude)?;
    Ok(count * length_unit(rest)?.in_inches())
}

/// `2'-11 5/8"`, `2' 11`, `2 ft 11 in`: after the word, the inches must be named, so that `3 ft2` is no length.
fn feet_and_inches<'a>(feet: &'a str, rest: &'a str) -> Option<(&'a str, &'a str)> {
    let inches = match rest.strip_prefix('\'') {
        Some(after) => after.trim_start(),
        None => {
            let (word, after) = rest.split_at_checked(rest.find(|c: char| c.is_ascii_digit())?)?;
            let word = word.trim_end().trim_end_matches('-').trim_end();
            (length_unit(word) == Ok(LengthUnit::Foot)).then_some(())?;
            let (_, unit_text) = split_at_unit(after);
            (length_unit(unit_text) == Ok(LengthUnit::Inch)).then_some(())?;
            after
        }
    };
    (!inches.is_empty()).then_some((feet, inches))
}

fn feet_and_inches_size(feet: &str, inches: &str) -> Result<Number, Kind> {
    if !is_digits(feet) {
        return Err(Kind::Unreadable);
    }
    let feet = magnitude_of(feet)?;
    let inches = inches.strip_prefix('-').unwrap_or(inches).trim_start();
    let (magnitude, unit_text) = split_at_unit(inches);
    if !unit_text.is_empty() && length_unit(unit_text)? != LengthUnit::Inch {
        return Err(Kind::Unreadable);
    }
    let inches = magnitude_of(magnitude)?;
    let foot = LengthUnit::Foot.in_inches();
    if inches >= foot {
        return Err(Kind::InchesNotBelowFoot);
    }
    Ok(feet * foot + inches)
}

/// Splits before the first character that no magnitude has.
fn split_at_unit(text: &str) -> (&str, &str) {
    let of_magnitude = |c: char| c.is_ascii_digit() || " ./-".contains(c);
    let (magnitude, unit) = text
        .find(|c| !of_magnitude(c))
        .and_then(|at| text.split_at_checked(at))
        .unwrap_or((text, ""));
    (magnitude.trim(), unit.trim())
}

/// A decimal, a fraction, or a whole number and a fraction below one.
fn magnitude_of(text: &str) -> Result<Number, Kind> {
    let Some((before, denominator)) = text.split_once('/') else {
        return digits_and_point(text);
    };
    let before = before.trim_end();
    let whole = before.trim_end_matches(|c: char| c.is_ascii_digit());
    let numerator = before.strip_prefix(whole).unwrap_or_default();
    let fraction = whole_number(numerator)?
        .checked_div(&whole_number(denominator.trim_start())?)
        .ok_or(Kind::ZeroDenominator)?;
    if whole.is_empty() {
        return Ok(fraction);
    }
    let whole = whole.trim_end();
    let whole = whole_number(whole.strip_suffix('-').unwrap_or(whole).trim_end())?;
    if fraction >= Number::ONE {
        return Err(Kind::FractionNotBelowOne);
    }
    Ok(whole + fraction)
}

fn digits_and_point(text: &str) -> Result<Number, Kind> {
    let plain = text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.');
    plain
        .then(|| Number::from_decimal(text))
        .flatten()
        .ok_or(Kind::Unreadable)
}

fn whole_number(text: &str) -> Result<Number, Kind> {
    if is_digits(text) {
        digits_and_point(text)
    } else {
        Err(Kind::Unreadable)
    }
}

fn length_unit(text: &str) -> Result<LengthUnit, Kind> {
    length_unit_of(&text.to_lowercase()).ok_or_else(|| Kind::UnknownUnit(text.to_string()))
}

fn length_unit_of(lower_case: &str) -> Option<LengthUnit> {
    Some(match lower_case {
        "in" | "in." | "inch" | "inches" | "\"" | "[in_i]" => LengthUnit::Inch,
        "ft" | "ft." | "foot" | "feet" | "'" | "[ft_i]" => LengthUnit::Foot,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => LengthUnit::Millimetre,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => LengthUnit::Centimetre,
        "m" | "metre" | "metres" | "meter" | "meters" => LengthUnit::Metre,
        _ => return None,
    })
}

/// `ft2`, `ft^2`, `sq ft`, `sq. ft.`, `square feet`, `sqft`, and the codes `[sft_i]`, `[sin_i]`.
fn area_unit(text: &str) -> Result<AreaUnit, Kind> {
    if text.is_empty() {
        return Err(Kind::MissingUnit);
    }
    area_unit_of(&text.to_lowercase()).ok_or_else(|| Kind::UnknownUnit(text.to_string()))
}

fn area_unit_of(lower_case: &str) -> Option<AreaUnit> {
    match lower_case {
        "[sft_i]" => return Some(AreaUnit::SquareFoot),
        "[sin_i]" => return Some(AreaUnit::SquareInch),
        _ => {}
    }
    let side = match lower_case.strip_suffix('2') {
        Some(side) => side.trim_end_matches('^').trim_end(),
        None => ["square", "sq.", "sq"]
            .iter()
            .find_map(|word| lower_case.strip_prefix(word))?
            .trim_start(),
    };
    let side = length_unit_of(side).filter(|_| side.starts_with(char::is_alphabetic))?;
    AreaUnit::ALL.into_iter().find(|unit| unit.side() == side)
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}
