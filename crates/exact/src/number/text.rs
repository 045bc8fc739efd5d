//! Reads an exact number from plain decimal text, and writes it as a decimal or a fraction.
//!
//! `-12.50` is read as -25/2 and written as `-12.5`; 1/3 is written as `1/3`, because no decimal is exact.
//!
//! Invariant: what `Display` writes as a decimal reads back as the same number; text is rounded only by
//! `to_fixed`, and cut only by `to_decimal_truncated`, which says so.
//! LIMIT: at most 400 digits and an exponent of at most 400 either way are read; at most 1000 places are written
//! by the two functions that take a count of places.

use super::{Number, Parts};
use num_bigint::BigInt;
use num_integer::Integer;
use num_traits::{One, Pow, Signed, ToPrimitive, Zero};
use std::fmt;
use std::str::FromStr;

/// LIMIT: the digits that are read before and after the point together.
const DIGIT_COUNT_MAX: usize = 400;
/// LIMIT: the exponent that is read, either way.
const EXPONENT_MAX: i32 = 400;
/// LIMIT: the places that are written.
const PLACES_MAX: u32 = 1000;

/// Says that a text is not a plain decimal number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NumberTextError;

impl fmt::Display for NumberTextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not a plain decimal number, such as `12.5`, `-3` or `1.5e-2`")
    }
}

impl std::error::Error for NumberTextError {}

impl Number {
    /// Returns the number that a plain decimal text says; `None` for any other text.
    ///
    /// A point between digits or before them, a minus sign, and an exponent are read: `12`, `-12.50`, `.5`,
    /// `1.5E-2`. A plus sign in front, commas, spaces, underscores and `5.` are not.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// assert_eq!(Number::from_decimal("1.5E-2"), Number::ratio(3, 200));
    /// assert_eq!(Number::from_decimal("1,5"), None);
    /// ```
    pub fn from_decimal(text: &str) -> Option<Number> {
        let (negative, unsigned) = match text.strip_prefix('-') {
            Some(rest) => (true, rest),
            None => (false, text),
        };
        let (mantissa, exponent) = match unsigned.split_once(['e', 'E']) {
            Some((mantissa, exponent)) => (mantissa, exponent_of(exponent)?),
            None => (unsigned, 0),
        };
        let (whole, fraction) = match mantissa.split_once('.') {
            Some((_, "")) => return None,
            Some(split) => split,
            None => (mantissa, ""),
        };
        let digits = format!("{whole}{fraction}");
        if digits.is_empty() || digits.len() > DIGIT_COUNT_MAX || !digits.bytes().all(|b| b.is_ascii_digit())
        {
            return None;
        }
        let places = i32::try_from(fraction.len()).ok()?;
        let size = BigInt::parse_bytes(digits.as_bytes(), 10)?;
        let signed = if negative { -size } else { size };
        scaled_by_ten(signed, exponent.checked_sub(places)?)
    }

    /// Returns the number as a decimal cut after `places` places, and whether nothing was cut.
    ///
    /// Cut means towards zero; zeros at the end are left out. A negative number that is cut to nothing keeps its
    /// sign (`-0`), since the text stands for something below zero. More than 1000 places count as 1000.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// let square_feet = Number::ratio(820, 144).ok_or("zero denominator")?;
    /// assert_eq!(square_feet.to_decimal_truncated(4), ("5.6944".to_string(), false));
    /// assert_eq!(Number::from(12_i64).to_decimal_truncated(4), ("12".to_string(), true));
    /// # Ok::<(), &str>(())
    /// ```
    pub fn to_decimal_truncated(&self, places: u32) -> (String, bool) {
        let places = places.min(PLACES_MAX);
        let scaled = self.numerator().abs() * ten_to(places);
        let (quotient, remainder) = scaled.div_rem(&self.denominator());
        let digits = with_point(&quotient, places);
        let shown = if digits.contains('.') {
            digits.trim_end_matches('0').trim_end_matches('.')
        } else {
            digits.as_str()
        };
        let sign = if self.is_negative() { "-" } else { "" };
        (format!("{sign}{shown}"), remainder.is_zero())
    }

    /// Returns the number with exactly `places` places, the last one rounded half away from zero.
    ///
    /// What rounds to nothing has no sign. More than 1000 places count as 1000.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// let amount = Number::from_decimal("2.675").ok_or("not a decimal")?;
    /// assert_eq!(amount.to_fixed(2), "2.68");
    /// assert_eq!(Number::from(3_i64).to_fixed(2), "3.00");
    /// # Ok::<(), &str>(())
    /// ```
    pub fn to_fixed(&self, places: u32) -> String {
        let places = places.min(PLACES_MAX);
        let nearest = (self * Number::from(ten_to(places))).round().numerator();
        let sign = if nearest.is_negative() { "-" } else { "" };
        format!("{sign}{}", with_point(&nearest.abs(), places))
    }

    /// Returns the number as a whole and a fraction, as a tape measure shows it.
    ///
    /// `None` unless the denominator is a power of two that is not above `denominator_max`.
    ///
    /// # Examples
    /// ```
    /// use astragal_exact::number::Number;
    /// let width = Number::from_decimal("-35.625").ok_or("not a decimal")?;
    /// assert_eq!(width.to_mixed_fraction(16), Some("-35 5/8".to_string()));
    /// let third = Number::ratio(1, 3).ok_or("zero denominator")?;
    /// assert_eq!(third.to_mixed_fraction(16), None);
    /// # Ok::<(), &str>(())
    /// ```
    pub fn to_mixed_fraction(&self, denominator_max: u32) -> Option<String> {
        let denominator = self.denominator().to_u32()?;
        if !denominator.is_power_of_two() || denominator > denominator_max.max(1) {
            return None;
        }
        let (whole, part) = self.numerator().abs().div_rem(&BigInt::from(denominator));
        let sign = if self.is_negative() { "-" } else { "" };
        Some(match (whole.is_zero(), part.is_zero()) {
            (_, true) => format!("{sign}{whole}"),
            (true, false) => format!("{sign}{part}/{denominator}"),
            (false, false) => format!("{sign}{whole} {part}/{denominator}"),
        })
    }

    /// Returns how many places the exact decimal has; `None` when there is none (1/3).
    pub fn decimal_places(&self) -> Option<u64> {
        let denominator = self.denominator();
        let twos = denominator.trailing_zeros().unwrap_or(0);
        let mut rest = denominator >> twos;
        let five = BigInt::from(5);
        let mut fives = 0_u64;
        loop {
            let (quotient, remainder) = rest.div_rem(&five);
            if !remainder.is_zero() {
                break;
            }
            rest = quotient;
            fives += 1;
        }
        rest.is_one().then_some(twos.max(fives))
    }
}

impl FromStr for Number {
    type Err = NumberTextError;

    fn from_str(text: &str) -> Result<Number, NumberTextError> {
        Number::from_decimal(text).ok_or(NumberTextError)
    }
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Parts::Small(whole, 1) = &self.0 {
            return write!(f, "{whole}");
        }
        let (numerator, denominator) = (self.numerator(), self.denominator());
        match self
            .decimal_places()
            .and_then(|places| u32::try_from(places).ok())
        {
            Some(places) => {
                let sign = if numerator.is_negative() { "-" } else { "" };
                let digits = numerator.abs() * ten_to(places) / denominator;
                write!(f, "{sign}{}", with_point(&digits, places))
            }
            None => write!(f, "{numerator}/{denominator}"),
        }
    }
}

impl fmt::Debug for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

fn exponent_of(text: &str) -> Option<i32> {
    let (negative, digits) = match text.strip_prefix('-') {
        Some(digits) => (true, digits),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let size = digits.parse::<i32>().ok().filter(|size| *size <= EXPONENT_MAX)?;
    Some(if negative { -size } else { size })
}

fn scaled_by_ten(digits: BigInt, power: i32) -> Option<Number> {
    let factor = ten_to(power.unsigned_abs());
    if power >= 0 {
        Some(Number::from(digits * factor))
    } else {
        Number::from_bigs(digits, factor)
    }
}

fn ten_to(places: u32) -> BigInt {
    BigInt::from(10).pow(places)
}

/// Writes `digits / 10^places`; `digits` is not negative.
fn with_point(digits: &BigInt, places: u32) -> String {
    let (whole, fraction) = digits.div_rem(&ten_to(places));
    match usize::try_from(places) {
        Ok(width) if width > 0 => format!("{whole}.{:0>width$}", fraction.to_string()),
        _ => whole.to_string(),
    }
}
