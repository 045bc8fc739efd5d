//! An exact amount of one currency.
//!
//! A third of a dollar is held as 1/3, and becomes 0.33 only where something asks for it: each price item is
//! rounded once, half away from zero, by `rounded_to`.
//!
//! Invariant: amounts of different currencies are never added and have no order between them.
//! Cost: that of the numbers.

use crate::currency::Currency;
use astragal_exact::Number;
use std::fmt;

/// Holds an amount and its currency; nothing is rounded when it is made.
///
/// # Examples
/// A price is worked exactly and rounded once:
/// ```
/// use astragal_model::{currency::Currency, money::Money, number::Number};
/// let dollar = Currency::from_code("USD").ok_or("unknown currency")?;
/// let price = Money::new(Number::from_decimal("19.95").ok_or("no number")?, dollar);
/// let tax = price.times(&Number::from_decimal("0.0625").ok_or("no number")?);
/// assert_eq!(tax.to_string(), "1.246875 USD");
/// let rounded = tax.rounded_to(&dollar.minor_unit()).ok_or("no unit")?;
/// assert_eq!(rounded.to_string(), "1.25 USD");
/// # Ok::<(), &str>(())
/// ```
/// Dollars and euros do not add up:
/// ```
/// use astragal_model::{currency::Currency, money::Money};
/// let dollar = Currency::from_code("USD").ok_or("unknown currency")?;
/// let euro = Currency::from_code("EUR").ok_or("unknown currency")?;
/// assert_eq!(Money::zero(dollar).plus(&Money::zero(euro)), None);
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, PartialEq, Eq, Hash)]
pub struct Money {
    amount: Number,
    currency: Currency,
}

impl Money {
    /// Returns this amount of this currency, exactly.
    pub fn new(amount: Number, currency: Currency) -> Money {
        Money { amount, currency }
    }

    /// Returns no money at all.
    pub fn zero(currency: Currency) -> Money {
        Money::new(Number::ZERO, currency)
    }

    /// Returns the exact amount, in whole units of the currency (dollars, not cents).
    pub fn amount(&self) -> &Number {
        &self.amount
    }

    /// Returns the currency.
    pub fn currency(&self) -> Currency {
        self.currency
    }

    /// Returns the sum; `None` when the currencies differ.
    pub fn plus(&self, other: &Money) -> Option<Money> {
        (self.currency == other.currency).then(|| Money::new(&self.amount + &other.amount, self.currency))
    }

    /// Returns the amount multiplied by `factor`, not rounded.
    pub fn times(&self, factor: &Number) -> Money {
        Money::new(&self.amount * factor, self.currency)
    }

    /// Returns the nearest multiple of `unit`, a half away from zero; `None` unless the unit is above zero.
    ///
    /// # Source
    /// Half away from zero for tax: Streamlined Sales and Use Tax Agreement, section 324 (up when the third
    /// decimal is greater than four). For other amounts it is common practice, no source.
    pub fn rounded_to(&self, unit: &Number) -> Option<Money> {
        self.amount
            .round_to(unit)
            .map(|amount| Money::new(amount, self.currency))
    }

    /// Says whether the amount can be paid without a fraction of the smallest unit.
    pub fn is_whole_minor_units(&self) -> bool {
        self.amount.is_multiple_of(&self.currency.minor_unit())
    }

    /// Returns the amount in minor units (cents); `None` when it is not whole or does not fit.
    pub fn minor_units(&self) -> Option<i64> {
        self.amount.checked_div(&self.currency.minor_unit())?.to_i64()
    }

    /// Returns the amount without its code, with a comma between thousands: `1,234.50`.
    ///
    /// An amount that is not whole in minor units is shown exactly, as by `Display`; a fraction has no commas.
    pub fn grouped(&self) -> String {
        let plain = self.plain();
        let (sign, size) = match plain.strip_prefix('-') {
            Some(size) => ("-", size),
            None => ("", plain.as_str()),
        };
        if size.contains('/') {
            return plain;
        }
        let (whole, fraction) = match size.split_once('.') {
            Some((whole, fraction)) => (whole, format!(".{fraction}")),
            None => (size, String::new()),
        };
        let mut grouped = String::new();
        for (index, digit) in whole.chars().enumerate() {
            if index > 0 && (whole.len() - index).is_multiple_of(3) {
                grouped.push(',');
            }
            grouped.push(digit);
        }
        format!("{sign}{grouped}{fraction}")
    }

    fn plain(&self) -> String {
        if self.is_whole_minor_units() {
            self.amount.to_fixed(self.currency.minor_units())
        } else {
            self.amount.to_string()
        }
    }
}

/// Writes the amount with the minor digits of its currency, and the code: `1234.50 USD`. An amount that is not
/// whole in minor units is shown exactly: `1.005 USD`, `1/3 USD`.
impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.plain(), self.currency)
    }
}

impl fmt::Debug for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn money(amount: &str, code: &str) -> Money {
        Money::new(
            Number::from_decimal(amount).expect(amount),
            Currency::from_code(code).expect(code),
        )
    }

    #[test]
    fn an_amount_is_written_with_the_digits_of_its_currency() {
        for (amount, code, shown, grouped) in [
            ("1234.5", "USD", "1234.50 USD", "1,234.50"),
            ("-1234567.89", "USD", "-1234567.89 USD", "-1,234,567.89"),
            ("0", "USD", "0.00 USD", "0.00"),
            ("999", "USD", "999.00 USD", "999.00"),
            ("1000", "JPY", "1000 JPY", "1,000"),
            ("123456", "JPY", "123456 JPY", "123,456"),
            ("1.5", "BHD", "1.500 BHD", "1.500"),
            ("1234.005", "USD", "1234.005 USD", "1,234.005"),
            ("0.5", "JPY", "0.5 JPY", "0.5"),
            (
                "1e21",
                "USD",
                "1000000000000000000000.00 USD",
                "1,000,000,000,000,000,000,000.00",
            ),
        ] {
            assert_eq!(money(amount, code).to_string(), shown);
            assert_eq!(money(amount, code).grouped(), grouped);
        }
    }

    #[test]
    fn a_third_of_a_dollar_is_shown_as_it_is() {
        let third = money("1000", "USD").times(&Number::ratio(1, 3).unwrap());
        assert_eq!(third.to_string(), "1000/3 USD");
        assert_eq!(third.grouped(), "1000/3");
        assert!(!third.is_whole_minor_units());
        assert_eq!(third.minor_units(), None);
        assert_eq!(third.times(&Number::from(3_i64)), money("1000", "USD"));
    }

    #[test]
    fn minor_units_are_counted_only_when_whole_and_in_reach() {
        assert_eq!(money("-12.34", "USD").minor_units(), Some(-1234));
        assert_eq!(money("12", "JPY").minor_units(), Some(12));
        assert_eq!(money("12.345", "USD").minor_units(), None);
        assert_eq!(money("92233720368547758.07", "USD").minor_units(), Some(i64::MAX));
        assert_eq!(money("92233720368547758.08", "USD").minor_units(), None);
        assert!(money("92233720368547758.08", "USD").is_whole_minor_units());
    }

    #[test]
    fn different_currencies_do_not_add_up() {
        assert_eq!(
            money("1", "USD").plus(&money("2.5", "USD")),
            Some(money("3.5", "USD"))
        );
        assert_eq!(money("1", "USD").plus(&money("2.5", "CAD")), None);
        assert_ne!(money("1", "USD"), money("1", "CAD"));
    }

    /// Percentages do not add up, and a flat discount does not commute with one in percent.
    #[test]
    fn discounts_are_worked_exactly_and_rounded_once() {
        let cent = Number::ratio(1, 100).unwrap();
        let share = |text: &str| Number::from_decimal(text).unwrap();
        let after_both = money("1000", "USD").times(&share("0.9")).times(&share("0.95"));
        assert_eq!(after_both, money("855", "USD"));
        let flat = money("-50", "USD");
        let flat_first = money("487.35", "USD").plus(&flat).unwrap().times(&share("0.9"));
        assert_eq!(flat_first.rounded_to(&cent), Some(money("393.62", "USD")));
        let percent_first = money("487.35", "USD").times(&share("0.9")).plus(&flat).unwrap();
        assert_eq!(percent_first.rounded_to(&cent), Some(money("388.62", "USD")));
    }

    /// 4 at 19.95, taxed at 6.25 %: by the item 5.00, by the invoice 4.99.
    #[test]
    fn tax_by_the_item_and_by_the_invoice_differ() {
        let (cent, rate) = (Number::ratio(1, 100).unwrap(), Number::ratio(1, 16).unwrap());
        let (four, each) = (Number::from(4_i64), money("19.95", "USD"));
        let by_item = each.times(&rate).rounded_to(&cent).unwrap().times(&four);
        assert_eq!(by_item.to_string(), "5.00 USD");
        assert_eq!(
            each.times(&four)
                .times(&rate)
                .rounded_to(&cent)
                .unwrap()
                .to_string(),
            "4.99 USD"
        );
    }

    #[test]
    fn money_may_be_rounded_to_whatever_unit_a_book_names() {
        let amount = money("393.615", "USD");
        for (unit, rounded) in [
            ("0.01", "393.62"),
            ("0.05", "393.60"),
            ("1", "394"),
            ("5", "395"),
            ("0.25", "393.50"),
        ] {
            let unit = Number::from_decimal(unit).unwrap();
            assert_eq!(amount.rounded_to(&unit), Some(money(rounded, "USD")), "to {unit}");
        }
        assert_eq!(
            money("-2.5", "JPY").rounded_to(&Number::ONE),
            Some(money("-3", "JPY"))
        );
        assert_eq!(amount.rounded_to(&Number::ZERO), None);
    }
}
