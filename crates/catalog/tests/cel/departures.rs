//! Where astragal departs from CEL on purpose, each by a name that stands in `docs/expressions.md` as well.
//!
//! `"9223372036854775807 + 1"` is an error in CEL and 9223372036854775808 here: *numbers are exact and have no bounds*.
//! A departure either answers otherwise ([`answers_otherwise`]) or refuses what CEL evaluates, although every construct in
//! it is in the subset ([`REFUSING`]).
//!
//! Always holds: each example is evaluated; where the data reaches a departure, the example is one of its tests.

use astragal_model::{Number, Value};

use crate::answer::{Answer, Refusal};
use crate::data::{Expected, Test};

/// A departure as the page lists it.
pub(crate) struct Departure {
    pub(crate) name: &'static str,
    /// An expression; a test of the data, where the data has one.
    pub(crate) example: &'static str,
    /// What CEL says to it.
    pub(crate) cel: &'static str,
    /// What astragal says to it.
    pub(crate) ours: &'static str,
    pub(crate) why: &'static str,
    /// How many tests of the data depart so; 0 where no test reaches it, and `cel` is from the language definition.
    pub(crate) tests: usize,
}

const NO_BOUNDS: &str = "numbers are exact and have no bounds";
const DIVISION: &str = "division is by a written number that is not zero";
const CHECKED_FIRST: &str = "names and types are settled before anything is evaluated";
const TEXTS: &str = "a text takes its type from the other side";
const NO_ORDER: &str = "a yes or no and an option have no order";
const LISTS: &str = "a list stands behind `in`, and is not empty";
const NO_CONTAINER: &str = "names have no container";

/// All departures, those that the data reaches first.
pub(crate) const DEPARTURES: [Departure; 11] = [
    Departure {
        name: NO_BOUNDS,
        example: "9223372036854775807 + 1",
        cel: "an error",
        ours: "9223372036854775808",
        why: "a price or a size is never cut to fit a machine word; past 4,096 bits a value is undefined",
        tests: 12,
    },
    Departure {
        name: DIVISION,
        example: "15.75 / 0.0",
        cel: "Infinity",
        ours: "refused: this divides by zero",
        why: "there is no infinity to quote, and a divisor that is written down cannot become zero on some order",
        tests: 8,
    },
    Departure {
        name: CHECKED_FIRST,
        example: "true || 32",
        cel: "true",
        ours: "refused: this is a number; expected a yes or no",
        why: "a slip in the half of a rule that this order does not reach is still a slip",
        tests: 7,
    },
    Departure {
        name: TEXTS,
        example: "'a' == 'b'",
        cel: "false",
        ours: "refused: nothing says what `a` is",
        why: "in `operation == \"casement\"` the text is an option, in `width < \"35 5/8\"` a length; between two texts nothing says which",
        tests: 68,
    },
    Departure {
        name: NO_ORDER,
        example: "false < true",
        cel: "true",
        ours: "refused: a yes or no has no order",
        why: "`colour < \"white\"` would go by the alphabet of ids",
        tests: 14,
    },
    Departure {
        name: LISTS,
        example: "7 in []",
        cel: "false",
        ours: "refused: nothing is in an empty list",
        why: "a list is written to say what something may be; as a value of its own it has no use in a rule",
        tests: 30,
    },
    Departure {
        name: NO_CONTAINER,
        example: "y",
        cel: "true",
        ours: "false",
        why: "a catalog has one namespace, so `y` is never short for `x.y`",
        tests: 2,
    },
    Departure {
        name: "division is exact",
        example: "7 / 2",
        cel: "3",
        ours: "3.5",
        why: "half of 7 inches is 3 1/2 inches; `floor_to(x, 1)` cuts",
        tests: 0,
    },
    Departure {
        name: "there is one type of number",
        example: "1 + 1.5",
        cel: "an error",
        ours: "2.5",
        why: "a product manager does not tell `1` from `1.0`, and neither does a tape measure",
        tests: 0,
    },
    Departure {
        name: "comparisons do not chain",
        example: "1 == 1 == true",
        cel: "true",
        ours: "refused: two comparisons stand in a chain",
        why: "`15 < width < 36` is always a slip; in parentheses it is taken: `(a < b) == (c < d)`",
        tests: 0,
    },
    Departure {
        name: "decimals are decimals",
        example: "0.1 + 0.2 == 0.3",
        cel: "false",
        ours: "true",
        why: "no float takes part in a decision or a price",
        tests: 0,
    },
];

/// What is refused although its constructs are in the subset: the departure, the code of the error, what the message holds.
const REFUSING: [(&str, &str, &str); 16] = [
    (DIVISION, "DIVISION", "this divides by zero"),
    (
        DIVISION,
        "DIVISION",
        "only division by a written number is allowed",
    ),
    (
        CHECKED_FIRST,
        "WRONG_TYPE",
        "this is a number; expected a yes or no",
    ),
    (
        CHECKED_FIRST,
        "WRONG_TYPE",
        "this is a number; expected an option",
    ),
    (
        CHECKED_FIRST,
        "WRONG_TYPE",
        "a yes or no is nothing to calculate with",
    ),
    (CHECKED_FIRST, "WRONG_VALUE", "is a text; expected a yes or no"),
    (CHECKED_FIRST, "WRONG_VALUE", "`foo` is not a decimal number"),
    (CHECKED_FIRST, "UNKNOWN_MEMBER", "`a` has no member `pancakes`"),
    (CHECKED_FIRST, "UNKNOWN_NAME", "`x` is not a name of this catalog"),
    (CHECKED_FIRST, "UNKNOWN_FUNCTION", "`f_unknown` is not a function"),
    (TEXTS, "UNCLEAR_TEXT", "nothing says what"),
    (TEXTS, "UNKNOWN_OPTION", "is not an option of `answer`"),
    (TEXTS, "WRONG_TYPE", "an option is nothing to calculate with"),
    (NO_ORDER, "WRONG_TYPE", "has no order"),
    (LISTS, "WRONG_TYPE", "a list stands alone"),
    (LISTS, "EMPTY_LIST", "nothing is in an empty list"),
];

/// The departure by which an expression is refused; `None` when that is no departure.
pub(crate) fn refuses(refusal: &Refusal) -> Option<&'static str> {
    let found = REFUSING
        .iter()
        .find(|(_, code, says)| refusal.code == *code && refusal.message.contains(says));
    found.map(|(departure, _, _)| *departure)
}

/// The departure by which an answer is another than CEL's; `None` when that is no departure.
pub(crate) fn answers_otherwise(test: &Test, answer: &Answer) -> Option<&'static str> {
    match (&test.expected, answer) {
        (Expected::Error(message), Answer::Value(Value::Number(number)))
            if message.contains("overflow") && !fits_in_64_bits(number) =>
        {
            Some(NO_BOUNDS)
        }
        (Expected::Number(expected), Answer::Value(Value::Number(number))) => {
            // What a double cannot hold: too large for one, or too near to zero.
            let double: f64 = number.to_string().parse().unwrap();
            let is_lost = double.is_infinite() || double.to_bits() << 1 == 0;
            (is_lost && double.to_bits() == expected.parse::<f64>().unwrap().to_bits()).then_some(NO_BOUNDS)
        }
        (_, Answer::Value(_)) if test.container.is_some() => Some(NO_CONTAINER),
        _ => None,
    }
}

fn fits_in_64_bits(number: &Number) -> bool {
    number.to_i64().is_some()
}
