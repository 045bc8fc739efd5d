//! The trade's functions, worked out by the oracle's own arithmetic from the published numbers.
//!
//! Wind is not read here: no random catalog asks for it, and its table of published pressures stands in the tests of
//! `astragal-trade`.

use astragal_model::TradeFunction;
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, Zero};

use crate::reading::answer::{Answer, Datum};
use crate::reading::fraction::whole;

/// What a call comes to for known data.
pub(crate) fn trade_call(function: TradeFunction, data: &[Datum]) -> Answer {
    match number(function, data) {
        Some(number) => Answer::Is(Datum::Number(number)),
        None => Answer::Nothing(format!("not covered by {}", function.name())),
    }
}

fn number(function: TradeFunction, data: &[Datum]) -> Option<BigRational> {
    match (function, data) {
        (TradeFunction::UnitedInchesExact, [Datum::Length(width), Datum::Length(height)]) => {
            Some(side(width)? + side(height)?)
        }
        (TradeFunction::UnitedInchesEachUp, [Datum::Length(width), Datum::Length(height)]) => {
            Some(side(width)?.ceil() + side(height)?.ceil())
        }
        (TradeFunction::UnitedInchesSumUp, [Datum::Length(width), Datum::Length(height)]) => {
            Some((side(width)? + side(height)?).ceil())
        }
        (TradeFunction::PoundsOfGlass, [Datum::Length(thickness), Datum::Area(area)]) => {
            let hundredths = published_hundredths(thickness)?;
            let per_square_foot = ratio(hundredths, 100);
            (!area.is_negative()).then(|| area / whole(144) * per_square_foot)
        }
        (TradeFunction::StructuralTestPressure, [Datum::Number(grade)]) => {
            within(grade, 500).then(|| grade * ratio(3, 2))
        }
        (TradeFunction::WaterTestPressure, [Datum::Number(grade)]) => {
            let is_grade = (grade / whole(5)).is_integer() && *grade >= whole(15) && *grade <= whole(100);
            is_grade.then(|| (grade * ratio(15, 100)).max(ratio(29, 10)).min(whole(12)))
        }
        _ => None,
    }
}

/// A side above nothing and up to 50 ft.
fn side(size: &BigRational) -> Option<BigRational> {
    within(size, 600).then(|| size.clone())
}

fn within(number: &BigRational, most: i64) -> bool {
    *number > BigRational::zero() && *number <= whole(most)
}

/// Hundredths of a pound a square foot, by thirty-seconds of an inch.
fn published_hundredths(thickness: &BigRational) -> Option<i64> {
    let thirty_seconds = thickness * whole(32);
    [
        (3, 122),
        (4, 164),
        (5, 203),
        (6, 245),
        (8, 327),
        (10, 406),
        (12, 491),
        (16, 654),
    ]
    .into_iter()
    .find(|(size, _)| thirty_seconds == whole(*size))
    .map(|(_, hundredths)| hundredths)
}

fn ratio(top: i64, bottom: i64) -> BigRational {
    BigRational::new(BigInt::from(top), BigInt::from(bottom))
}
