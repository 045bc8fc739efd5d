//! Finds a limit by asking on both sides of it.

use astragal_exact::Number;

use crate::length;

/// Says where a question turns, in words: `below 60 in` when 60 is out and 59 15/16 is in.
///
/// It is asked at every sixteenth from 0 to 300. `holds` must turn there once, or twice to hold between two limits; never or always is
/// said as well.
pub(crate) fn inches(holds: impl Fn(&Number) -> bool) -> String {
    let number = |sixteenths: i64| Number::ratio(sixteenths, 16).unwrap();
    in_steps(&number, 300 * 16, holds, |value| {
        let is_named = (value * &Number::from(2)).is_integer();
        is_named.then(|| length(value))
    })
}

/// The same of a load, by tenths of a pound up to 100 lb a foot.
pub(crate) fn pounds_by_the_foot(holds: impl Fn(&Number) -> bool) -> String {
    let number = |tenths: i64| Number::ratio(tenths, 10).unwrap();
    in_steps(&number, 100 * 10, holds, |value| {
        value.is_integer().then(|| format!("{value} lb a foot"))
    })
}

/// The same of an area, by single square inches up to 20 sq ft.
pub(crate) fn square_feet(holds: impl Fn(&Number) -> bool) -> String {
    in_steps(&Number::from, 20 * 144, holds, |value| {
        let feet = value.checked_div(&Number::from(144)).unwrap();
        feet.is_integer().then(|| format!("{feet} sq ft"))
    })
}

fn in_steps(
    number: &impl Fn(i64) -> Number,
    most: i64,
    holds: impl Fn(&Number) -> bool,
    named: impl Fn(&Number) -> Option<String>,
) -> String {
    let answers: Vec<bool> = (0..=most).map(|step| holds(&number(step))).collect();
    let turns: Vec<i64> = (1..=most)
        .filter(|step| {
            let at = usize::try_from(*step).unwrap();
            answers[at] != answers[at - 1]
        })
        .collect();
    let first = answers[0];
    match turns[..] {
        [] if first => "any".to_owned(),
        [] => "never".to_owned(),
        [turn] => {
            let (before, after) = (named(&number(turn - 1)), named(&number(turn)));
            match (first, before, after) {
                (true, Some(last), None) => format!("at most {last}"),
                (true, None, Some(limit)) => format!("below {limit}"),
                (false, Some(limit), None) => format!("above {limit}"),
                (false, None, Some(least)) => format!("at least {least}"),
                (_, before, after) => panic!("a limit between {before:?} and {after:?}"),
            }
        }
        [from, past] if !first => {
            let (least, most) = (named(&number(from)), named(&number(past - 1)));
            let (Some(least), Some(most)) = (least, most) else {
                panic!("it holds from step {from} to before step {past}");
            };
            format!("from {least} to {most}")
        }
        _ => panic!("it turns {} times", turns.len()),
    }
}
