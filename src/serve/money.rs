//! Amounts of the model as `google.type.Money`.
//!
//! 1.05 USD is one unit and 50,000,000 billionths.
//!
//! Always holds: nothing is rounded; an amount that billionths cannot say is left out.

use astragal_model::{Money, Number};

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

#[cfg(test)]
mod tests {
    use super::*;
    use astragal_model::Currency;

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
