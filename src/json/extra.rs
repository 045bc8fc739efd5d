//! Data of the caller, carried untouched: numbers keep their digits.

use astragal_model::Extra;
use serde::ser::{Serialize, SerializeMap, SerializeSeq, Serializer};

use crate::json::writing;

/// The numbers of all `extra` tables of an answer, each once.
#[derive(Default)]
pub(crate) struct Numbers {
    texts: Vec<String>,
}

/// Data of the caller, as it is written.
pub(crate) enum Untouched {
    Null,
    Bool(bool),
    /// A position in [`Numbers`].
    Number(u128),
    Text(String),
    List(Vec<Untouched>),
    Table(Vec<(String, Untouched)>),
}

impl Numbers {
    /// Takes the numbers out. Recursion is bounded: files are read to a limited depth.
    pub(crate) fn untouched(&mut self, extra: &Extra) -> Untouched {
        match extra {
            Extra::None => Untouched::Null,
            Extra::Bool(value) => Untouched::Bool(*value),
            Extra::Number(text) if is_json_number(text) => Untouched::Number(self.position(text)),
            Extra::Number(text) | Extra::Text(text) => Untouched::Text(text.clone()),
            Extra::List(things) => {
                Untouched::List(things.iter().map(|thing| self.untouched(thing)).collect())
            }
            Extra::Table(entries) => {
                let entries = entries.iter();
                Untouched::Table(
                    entries
                        .map(|(key, value)| (key.clone(), self.untouched(value)))
                        .collect(),
                )
            }
        }
    }

    /// The answer as text, with these numbers in it.
    pub(crate) fn to_text(&self, answer: &impl Serialize) -> Result<String, String> {
        writing::to_text(answer, &self.texts)
    }

    fn position(&mut self, text: &str) -> u128 {
        let position = self.texts.len() as u128;
        self.texts.push(text.to_owned());
        position
    }
}

impl Serialize for Untouched {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => serializer.serialize_unit(),
            Self::Bool(value) => serializer.serialize_bool(*value),
            Self::Number(position) => serializer.serialize_u128(*position),
            Self::Text(text) => serializer.serialize_str(text),
            Self::List(things) => {
                let mut list = serializer.serialize_seq(Some(things.len()))?;
                things
                    .iter()
                    .try_for_each(|thing| list.serialize_element(thing))?;
                list.end()
            }
            Self::Table(entries) => {
                let mut table = serializer.serialize_map(Some(entries.len()))?;
                entries
                    .iter()
                    .try_for_each(|(key, value)| table.serialize_entry(key, value))?;
                table.end()
            }
        }
    }
}

/// Whether JSON writes a number like this; TOML has more forms (`inf`), which are carried as texts.
fn is_json_number(text: &str) -> bool {
    let unsigned = text.strip_prefix('-').unwrap_or(text);
    let (mantissa, exponent) = match unsigned.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, exponent.strip_prefix(['+', '-']).unwrap_or(exponent)),
        None => (unsigned, "0"),
    };
    let (whole, fraction) = mantissa.split_once('.').unwrap_or((mantissa, "0"));
    let is_digits = |digits: &str| !digits.is_empty() && digits.bytes().all(|digit| digit.is_ascii_digit());
    let leads_with_zero = whole.len() > 1 && whole.starts_with('0');
    is_digits(whole) && is_digits(fraction) && is_digits(exponent) && !leads_with_zero
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_the_caller_keep_their_digits() {
        let number = |text: &str| Extra::Number(text.to_owned());
        let list = Extra::List(vec![
            number("1.50"),
            number("1e400"),
            number("007"),
            number("inf"),
            Extra::None,
        ]);
        let extra = Extra::Table(vec![("z".to_owned(), list), ("a".to_owned(), Extra::Bool(true))]);
        let mut numbers = Numbers::default();
        let untouched = numbers.untouched(&extra);
        let text = numbers.to_text(&untouched).unwrap();
        let text: String = text.split_whitespace().collect();
        assert_eq!(text, r#"{"z":[1.50,1e400,"007","inf",null],"a":true}"#);
    }

    #[test]
    fn what_is_written_as_a_number_is_one_in_json() {
        for text in ["0", "-0", "-12.50", "1E+5", "1.5e-2", "100"] {
            assert!(is_json_number(text), "{text}");
            assert!(serde_json::from_str::<serde_json::Value>(text).is_ok(), "{text}");
        }
        for text in [
            "", "-", "01", "1.", ".5", "+1", "1e", "inf", "nan", "1_0", "0x1", "1.2.3",
        ] {
            assert!(!is_json_number(text), "{text}");
        }
    }
}
