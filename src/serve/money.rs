//! Amounts of the model as `google.type.Money`.
//!
//! 1.05 USD is one unit and 50,000,000 billionths.
//!
//! Always holds: nothing is rounded; an amount that billionths cannot say is left out.

use astragal_model::{Currency, Money, Number};

use crate::serve::google_type;

/// Billionths of one.
const NANOS: i64 = 1_000_000_000;

/// An amount; `None` where it does not fit.
pub(super) fn money(money: &Money) -> Option<google_type::Money> {
    let amount = money.amount();
    let whole = if amount.is_negative() {
        amount.ceil()
    } else {
        amount.floor()
    };
    let rest = (amount - &whole) * Number::from(NANOS);
    Some(google_type::Money {
        currency_code: money.currency().code().to_owned(),
        units: whole.to_i64()?,
        nanos: i32::try_from(rest.to_i64()?).ok()?,
    })
}

/// An amount in minor units of a currency, cents of a dollar; `None` for a currency of which billionths cannot say them.
pub(super) fn minor(minor_units: i64, currency: Currency) -> Option<google_type::Money> {
    let one = 10_i64.checked_pow(currency.minor_units())?;
    let nanos = NANOS.checked_div(one).filter(|nanos| nanos * one == NANOS)?;
    Some(google_type::Money {
        currency_code: currency.code().to_owned(),
        units: minor_units / one,
        nanos: i32::try_from(minor_units % one * nanos).ok()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minor_units_are_the_same_amounts() {
        for code in ["USD", "JPY", "BHD", "CLF"] {
            let currency = Currency::from_code(code).expect("a currency");
            for minor_units in [0, 1, -1, 99, 100, -105, 123_456_789, i64::MAX, i64::MIN] {
                let amount = Money::new(&Number::from(minor_units) * &currency.minor_unit(), currency);
                assert_eq!(
                    minor(minor_units, currency),
                    money(&amount),
                    "{minor_units} {code}"
                );
            }
        }
    }

    #[test]
    fn units_and_billionths_have_one_sign_and_nothing_is_rounded() {
        let dollar = Currency::from_code("USD").expect("a currency");
        for (written, parts) in [
            ("0", Some((0, 0))),
            ("1.05", Some((1, 50_000_000))),
            ("-1.05", Some((-1, -50_000_000))),
            ("-0.5", Some((0, -500_000_000))),
            ("0.000000001", Some((0, 1))),
            ("0.0000000001", None),
            ("99999999999999999999", None),
        ] {
            let amount = Number::from_decimal(written).expect(written);
            let found = money(&Money::new(amount, dollar));
            assert_eq!(found.map(|found| (found.units, found.nanos)), parts, "{written}");
        }
    }
}
