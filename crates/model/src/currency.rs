//! A currency that prices are given in, named by its ISO 4217 code.
//!
//! `USD` has two minor digits (a cent is 1/100), `JPY` none, `BHD` three. Codes without minor units in the
//! standard (gold, testing, "no currency") name nothing that a price book could be in, and are not accepted.
//!
//! Invariant: a `Currency` has a count of minor digits; currencies are ordered by code.
//! Cost: constant.
//!
//! Source: ISO 4217 as the package `iso_currency` carries it. Codes that have been replaced (`HRK`) are read as
//! well, because old orders hold them.

use astragal_exact::Number;
use std::cmp::Ordering;
use std::fmt;

/// Holds a currency with minor digits.
///
/// # Examples
/// ```
/// use astragal_model::currency::Currency;
/// use astragal_model::number::Number;
/// let dollar = Currency::from_code("USD").ok_or("unknown currency")?;
/// assert_eq!(dollar.minor_units(), 2);
/// assert_eq!(Some(dollar.minor_unit()), Number::ratio(1, 100));
/// # Ok::<(), &str>(())
/// ```
/// Gold is in the standard, but has no minor units; lower case is no code:
/// ```
/// use astragal_model::currency::Currency;
/// assert_eq!(Currency::from_code("XAU"), None);
/// assert_eq!(Currency::from_code("usd"), None);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency {
    entry: iso_currency::Currency,
    minor_units: u32,
}

impl Currency {
    /// Returns the currency with this code; `None` unless it is three upper-case letters of ISO 4217 that have
    /// minor units there.
    pub fn from_code(code: &str) -> Option<Currency> {
        let entry = iso_currency::Currency::from_code(code)?;
        let minor_units = u32::from(entry.exponent()?);
        Some(Currency { entry, minor_units })
    }

    /// Returns the three letters.
    pub fn code(&self) -> &'static str {
        self.entry.code()
    }

    /// Returns how many digits stand behind the point: 2 for `USD`, 0 for `JPY`.
    pub fn minor_units(&self) -> u32 {
        self.minor_units
    }

    /// Returns the smallest amount that is paid without a fraction: 1/100 for `USD`, 1 for `JPY`.
    pub fn minor_unit(&self) -> Number {
        let tenth = Number::ratio(1, 10).unwrap_or_default();
        (0..self.minor_units).map(|_| tenth.clone()).product()
    }
}

impl Ord for Currency {
    fn cmp(&self, other: &Currency) -> Ordering {
        self.code().cmp(other.code())
    }
}

impl PartialOrd for Currency {
    fn partial_cmp(&self, other: &Currency) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn minor_units(code: &str) -> Option<u32> {
        Currency::from_code(code).map(|currency| currency.minor_units())
    }

    #[test]
    fn a_code_knows_how_many_digits_it_has() {
        for (code, digits) in [
            ("USD", 2),
            ("CAD", 2),
            ("EUR", 2),
            ("JPY", 0),
            ("BHD", 3),
            ("CLF", 4),
        ] {
            assert_eq!(minor_units(code), Some(digits), "{code}");
        }
    }

    #[test]
    fn what_is_not_a_code_of_money_is_refused() {
        for code in [
            "",
            "US",
            "usd",
            "Usd",
            "USDX",
            "US ",
            " USD",
            "XAU",
            "XXX",
            "XTS",
            "XDR",
            "ZZZ",
            "€€€",
            "\u{1F600}",
        ] {
            assert_eq!(Currency::from_code(code), None, "{code:?}");
        }
    }

    #[test]
    fn every_accepted_code_reads_back_as_itself() {
        let letters: Vec<char> = ('A'..='Z').collect();
        let mut accepted = 0;
        for a in &letters {
            for b in &letters {
                for c in &letters {
                    let code = format!("{a}{b}{c}");
                    if let Some(currency) = Currency::from_code(&code) {
                        accepted += 1;
                        assert_eq!(currency.to_string(), code);
                        assert!(
                            currency.minor_unit() > Number::ZERO && currency.minor_unit() <= Number::ONE,
                            "{code}"
                        );
                    }
                }
            }
        }
        assert!(accepted > 150, "{accepted} currencies");
    }

    #[test]
    fn currencies_are_ordered_by_code() {
        let mut codes = ["XCG", "USD", "AED", "BHD", "AOA"].map(|code| Currency::from_code(code).unwrap());
        codes.sort();
        assert_eq!(
            codes.map(|currency| currency.code()),
            ["AED", "AOA", "BHD", "USD", "XCG"]
        );
    }
}
