//! Which measures and numbers are taken at all.
//!
//! A width of -3 in, of nothing, or of 900 ft is a slip, and is refused with its name and what was expected; it is never
//! worked with.
//!
//! Always holds: lengths are in inches, areas in square inches.

use std::fmt;

use astragal_exact::{LengthUnit, Number, format_length};

use crate::fact::Fact;

/// LIMIT: the largest size of an opening or a unit that is taken for one, in inches: 50 ft.
pub const SIZE_MOST: i64 = 600;

/// LIMIT: the largest distance or height that is taken for one, in inches: 3,000 ft.
pub const DISTANCE_MOST: i64 = 36_000;

/// A number that cannot be what it is said to be.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct InputError {
    /// What it was given as.
    pub fact: Fact,
    /// What was found, as a person reads it.
    pub found: String,
    /// What is expected instead.
    pub expected: String,
}

impl fmt::Display for InputError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            formatter,
            "{} is `{}`; expected {}",
            self.fact, self.found, self.expected
        )
    }
}

impl std::error::Error for InputError {}

/// Takes the size of something that is there: above nothing, at most [`SIZE_MOST`] inches.
///
/// # Errors
/// [`InputError`] with the fact and what was found.
pub fn size(fact: Fact, inches: &Number) -> Result<(), InputError> {
    if inches.is_positive() && *inches <= Number::from(SIZE_MOST) {
        return Ok(());
    }
    Err(refused(fact, inches, "a length above 0 and at most 50 ft"))
}

/// Takes a distance or a height above something, 0 included, at most [`DISTANCE_MOST`] inches.
///
/// # Errors
/// [`InputError`] with the fact and what was found.
pub fn distance(fact: Fact, inches: &Number) -> Result<(), InputError> {
    if !inches.is_negative() && *inches <= Number::from(DISTANCE_MOST) {
        return Ok(());
    }
    Err(refused(fact, inches, "a length of 0 or more, at most 3,000 ft"))
}

/// Takes a height that may lie under what it is measured from, at most [`DISTANCE_MOST`] inches either way.
///
/// # Errors
/// [`InputError`] with the fact and what was found.
pub fn height_either_way(fact: Fact, inches: &Number) -> Result<(), InputError> {
    if inches.abs() <= Number::from(DISTANCE_MOST) {
        return Ok(());
    }
    Err(refused(fact, inches, "a length of at most 3,000 ft either way"))
}

fn refused(fact: Fact, inches: &Number, expected: &str) -> InputError {
    InputError {
        fact,
        found: format_length(inches, LengthUnit::Inch),
        expected: expected.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_size_is_above_nothing_and_at_most_fifty_feet() {
        let rows = [(-3, false), (0, false), (1, true), (600, true), (601, false)];
        for (inches, taken) in rows {
            assert_eq!(
                size(Fact::OpeningWidth, &Number::from(inches)).is_ok(),
                taken,
                "{inches}"
            );
        }
    }

    #[test]
    fn a_refusal_names_the_fact_and_what_was_expected() {
        let error = distance(Fact::ExposedGlassEdge, &Number::from(-2))
            .err()
            .map(|error| error.to_string());
        let expected =
            "exposed glass edge above the floor is `-2 in`; expected a length of 0 or more, at most 3,000 ft";
        assert_eq!(error.as_deref(), Some(expected));
    }
}
