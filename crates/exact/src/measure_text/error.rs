//! What is wrong with the text of a length or an area, and what to do about it.
//!
//! `35,625` is not a typing mistake but a decimal comma, `8-May` is a fraction that a spreadsheet turned into a
//! date: the message names the cause, the help says how to write it.

use super::{AreaUnit, LengthUnit};
use std::fmt;

/// Says why a text is no length or area.
///
/// `Display` is what was found; `help` is what to do.
///
/// # Examples
/// ```
/// use astragal_exact::measure_text::{LengthUnit, parse_length};
/// let error = parse_length("35,625", Some(LengthUnit::Inch)).err().ok_or("a length")?;
/// assert_eq!(error.to_string(), "`35,625` has a decimal comma");
/// assert_eq!(error.help(), "write a decimal point: `35.625`, or no comma if it separates thousands");
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LengthTextError {
    kind: LengthTextErrorKind,
    text: String,
    area: bool,
}

/// What is wrong with the text of a length or an area.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LengthTextErrorKind {
    /// There is no text.
    Empty,
    /// The text is longer than 200 characters.
    TooLong,
    /// A comma stands where a decimal point should.
    DecimalComma,
    /// Commas, points or spaces stand between thousands.
    ThousandsSeparator,
    /// A spreadsheet has turned a fraction into a date.
    SpreadsheetDate,
    /// A fraction has a denominator of zero.
    ZeroDenominator,
    /// The fraction of a mixed number is not below one: `35 9/8`.
    FractionNotBelowOne,
    /// The inches after feet are 12 or more: `2' 14"`.
    InchesNotBelowFoot,
    /// The unit is not a known one.
    UnknownUnit(String),
    /// There is no unit, and none is implied here.
    MissingUnit,
    /// The text is not a number with a unit in any form that is read.
    Unreadable,
}

impl LengthTextError {
    pub(super) fn new(kind: LengthTextErrorKind, text: &str, area: bool) -> LengthTextError {
        LengthTextError {
            kind,
            text: shown(text),
            area,
        }
    }

    /// Returns what is wrong.
    pub fn kind(&self) -> &LengthTextErrorKind {
        &self.kind
    }

    /// Returns what to do about it, in one line.
    pub fn help(&self) -> String {
        use LengthTextErrorKind as Kind;
        match &self.kind {
            Kind::Empty | Kind::Unreadable if self.area => "write an area such as `5.7 sq ft` or `0.53 m2`".to_string(),
            Kind::Empty | Kind::Unreadable => {
                "write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8\"` or `904.875 mm`".to_string()
            }
            Kind::TooLong => "at most 200 characters are read".to_string(),
            Kind::DecimalComma => format!(
                "write a decimal point: `{}`, or no comma if it separates thousands",
                self.text.replace(',', ".")
            ),
            Kind::ThousandsSeparator => "write the number without separators, with a decimal point: `1234.5`".to_string(),
            Kind::SpreadsheetDate => {
                "a spreadsheet has turned a fraction into a date; format the column as text and write 5/8 again".to_string()
            }
            Kind::ZeroDenominator => "write a fraction with a denominator above zero, such as `5/8`".to_string(),
            Kind::FractionNotBelowOne => "write a fraction below one after a whole number: `36 1/8`, not `35 9/8`".to_string(),
            Kind::InchesNotBelowFoot => "write less than 12 inches after feet, or all of it in inches".to_string(),
            Kind::UnknownUnit(_) | Kind::MissingUnit => format!("units are {}", self.units()),
        }
    }

    fn units(&self) -> String {
        let symbols: Vec<String> = if self.area {
            AreaUnit::ALL
                .iter()
                .map(|unit| format!("`{}`", unit.symbol()))
                .collect()
        } else {
            LengthUnit::ALL
                .iter()
                .map(|unit| format!("`{}`", unit.symbol()))
                .collect()
        };
        symbols.join(", ")
    }
}

impl fmt::Display for LengthTextError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use LengthTextErrorKind as Kind;
        let (text, thing) = (&self.text, if self.area { "an area" } else { "a length" });
        match &self.kind {
            Kind::Empty => write!(f, "expected {thing}, found nothing"),
            Kind::TooLong => write!(f, "`{text}` is too long for {thing}"),
            Kind::DecimalComma => write!(f, "`{text}` has a decimal comma"),
            Kind::ThousandsSeparator => write!(f, "`{text}` has separators between thousands"),
            Kind::SpreadsheetDate => write!(f, "`{text}` is a date, not {thing}"),
            Kind::ZeroDenominator => write!(f, "`{text}` has a denominator of zero"),
            Kind::FractionNotBelowOne => write!(f, "the fraction of `{text}` is not below one"),
            Kind::InchesNotBelowFoot => write!(f, "the inches of `{text}` are not below a foot"),
            Kind::UnknownUnit(unit) => write!(f, "unknown unit `{}` in `{text}`", shown(unit)),
            Kind::MissingUnit => write!(f, "`{text}` has no unit"),
            Kind::Unreadable => write!(f, "`{text}` is not {thing}"),
        }
    }
}

impl std::error::Error for LengthTextError {}

/// One line, short, without control characters: a message quotes text that others wrote.
fn shown(text: &str) -> String {
    const SHOWN_MAX: usize = 40;
    let mut shown: String = text
        .chars()
        .take(SHOWN_MAX)
        .map(|c| if c.is_control() || c == '`' { '\u{FFFD}' } else { c })
        .collect();
    if text.chars().nth(SHOWN_MAX).is_some() {
        shown.push('…');
    }
    shown
}
