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
            let per_square_foot = pounds(thickness)?;
            (!area.is_negative()).then(|| area / whole(144) * per_square_foot)
        }
        (TradeFunction::StructuralTestPressure, [Datum::Number(grade)]) => {
            within(grade, 500).then(|| grade * ratio(3, 2))
        }
        (TradeFunction::WaterTestPressure, [Datum::Number(grade)]) => {
            let is_grade = (grade / whole(5)).is_integer() && *grade >= whole(15) && *grade <= whole(200);
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

/// Pounds a square foot, by thirty-seconds of an inch: hundredths that are published, else 156 lb a cubic foot.
fn pounds(thickness: &BigRational) -> Option<BigRational> {
    let thirty_seconds = thickness * whole(32);
    let published = [(4, 164), (6, 245), (8, 327), (12, 491), (16, 654)];
    let computed = [3, 5, 10];
    let is = |size: i64| thirty_seconds == whole(size);
    if let Some((_, hundredths)) = published.iter().find(|(size, _)| is(*size)) {
        return Some(ratio(*hundredths, 100));
    }
    let size = computed.into_iter().find(|size| is(*size))?;
    Some(ratio(156 * size, 32 * 12))
}

fn ratio(top: i64, bottom: i64) -> BigRational {
    BigRational::new(BigInt::from(top), BigInt::from(bottom))
}

#[cfg(test)]
mod tests {
    use astragal_model::{ArgumentKind, Number, Value};

    use super::*;

    /// Sixteenths and halves of nothing, of what is published, of what lies beyond.
    fn values(kind: ArgumentKind) -> Vec<Value> {
        let sizes = [
            -3, 0, 1, 3, 4, 5, 6, 8, 10, 12, 16, 31, 1_142, 1_896, 19_199, 19_200, 19_201,
        ];
        let number = |size: i64| Number::ratio(size, 32).unwrap();
        let grades = [-5, 0, 10, 15, 17, 20, 35, 80, 200, 205, 500, 501];
        match kind {
            ArgumentKind::Length => sizes.map(|size| Value::Length(number(size))).to_vec(),
            ArgumentKind::Area => sizes.map(|size| Value::Area(number(144 * size))).to_vec(),
            _ => grades.map(|grade| Value::Number(Number::from(grade))).to_vec(),
        }
    }

    #[test]
    fn every_function_but_wind_is_worked_out_as_the_model_does() {
        let mut known = 0;
        for function in TradeFunction::ALL {
            if function == TradeFunction::WindGrade {
                continue;
            }
            let kinds = function.arguments();
            let seconds = kinds.get(1).map_or(vec![None], |second| {
                values(second.kind).into_iter().map(Some).collect()
            });
            for first in values(kinds[0].kind) {
                for second in &seconds {
                    let given: Vec<&Value> = std::iter::once(&first).chain(second).collect();
                    let data: Vec<Datum> = given.iter().map(|value| Datum::of(value)).collect();
                    let expected = match function.apply(&given) {
                        Some(value) => Answer::Is(Datum::of(&value)),
                        None => Answer::Nothing(format!("not covered by {}", function.name())),
                    };
                    known += usize::from(matches!(expected, Answer::Is(_)));
                    assert_eq!(trade_call(function, &data), expected, "{function:?} of {given:?}");
                }
            }
        }
        assert!(known > 300, "{known}");
    }
}
