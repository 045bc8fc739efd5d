//! Random values: few of each type, so that equal ones meet and ends are hit.

use astragal_model::{Date, Id, Number, Value, ValueType};
use num_bigint::BigInt;

use crate::chance::Chance;
use crate::generate::shape::WORDS;

/// One of seven days: the last four of a month and the first three of the next.
pub(crate) fn day(chance: &mut Chance) -> Date {
    let days = [(9, 27), (9, 28), (9, 29), (9, 30), (10, 1), (10, 2), (10, 3)];
    let (month, day) = chance.one_of(&days).copied().unwrap_or((9, 27));
    Date::constant(2026, month, day)
}

/// A day, or none.
pub(crate) fn maybe_day(chance: &mut Chance, percent: usize) -> Option<Date> {
    chance.percent(percent).then(|| day(chance))
}

fn ratio(top: i64, bottom: i64) -> Number {
    Number::ratio(top, bottom).unwrap_or_default()
}

/// A small number, a fraction, or one below zero.
pub(crate) fn number(chance: &mut Chance) -> Number {
    let (top, bottom) = chance
        .one_of(&[
            (-2, 1),
            (-1, 3),
            (0, 1),
            (1, 2),
            (1, 1),
            (2, 1),
            (3, 1),
            (5, 2),
            (10, 1),
            (144, 1),
        ])
        .copied()
        .unwrap_or((0, 1));
    ratio(top, bottom)
}

/// A number of about half the bits that a number may have: two of them may fit, or be too large by one bit.
pub(crate) fn giant(chance: &mut Chance) -> Number {
    let power = Number::from(BigInt::from(1) << chance.between(2046, 2048));
    if chance.percent(50) {
        power
    } else {
        Number::ONE.checked_div(&power).unwrap_or_default()
    }
}

/// Inches.
pub(crate) fn inches(chance: &mut Chance) -> Number {
    let (top, bottom) = chance
        .one_of(&[
            (-1, 1),
            (0, 1),
            (1, 8),
            (1, 2),
            (12, 1),
            (15, 1),
            (24, 1),
            (285, 8),
            (36, 1),
            (127, 5),
        ])
        .copied()
        .unwrap_or((0, 1));
    ratio(top, bottom)
}

/// Square inches.
pub(crate) fn square_inches(chance: &mut Chance) -> Number {
    let area = chance
        .one_of(&[-1, 0, 12, 144, 180, 820, 864, 1296])
        .copied()
        .unwrap_or(0);
    Number::from(area)
}

/// A value of this type, from a few.
pub fn value(chance: &mut Chance, of: ValueType) -> Value {
    match of {
        ValueType::Bool => Value::Bool(chance.percent(50)),
        ValueType::Number => Value::Number(number(chance)),
        ValueType::Length => Value::Length(inches(chance)),
        ValueType::Area => Value::Area(square_inches(chance)),
        ValueType::Date => Value::Date(day(chance)),
        ValueType::Option => Value::Option(word(chance)),
    }
}

/// The name of an option.
pub(crate) fn word(chance: &mut Chance) -> Id {
    chance
        .one_of(&WORDS)
        .map_or_else(|| Id::new("none"), |word| Id::new(word))
}
