//! Between which numbers a measure or a fact lies.
//!
//! The year in which a house was built lies between 1600 and 2100; 19644 is a slip, and is said to be one where it is read.
//!
//! Always holds: both ends are taken. Nothing here decides whether a unit holds: what lies outside is refused before anything is asked.

use astragal_exact::Number;

/// Between which numbers a value lies, both included; inches for a length. No end means that any number is taken that way.
///
/// # Examples
///
/// A height above the floor, up to 50 ft:
/// ```
/// use astragal_model::{Bounds, Number};
///
/// let height = Bounds { least: Some(Number::from(0)), most: Some(Number::from(600)) };
/// assert!(height.admit(&Number::from(0)) && height.admit(&Number::from(600)));
/// assert!(!height.admit(&Number::from(-1)) && !height.admit(&Number::from(601)));
/// assert!(Bounds::default().admit(&Number::from(-1)));
/// ```
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Bounds {
    /// The least that is taken.
    pub least: Option<Number>,
    /// The most that is taken.
    pub most: Option<Number>,
}

impl Bounds {
    /// Whether a number lies between them.
    #[must_use]
    pub fn admit(&self, number: &Number) -> bool {
        self.least.as_ref().is_none_or(|least| number >= least)
            && self.most.as_ref().is_none_or(|most| number <= most)
    }

    /// What is taken, as a person reads it after "expected", with numbers as `show` writes them; nothing where anything is.
    #[must_use]
    pub fn words(&self, show: impl Fn(&Number) -> String) -> Option<String> {
        match (&self.least, &self.most) {
            (Some(least), Some(most)) => Some(format!("{} to {}", show(least), show(most))),
            (Some(least), None) => Some(format!("{} or more", show(least))),
            (None, Some(most)) => Some(format!("at most {}", show(most))),
            (None, None) => None,
        }
    }

    /// Why a number is not taken: it lies outside, or is no multiple of `step`; nothing where it is. Numbers are as `show` writes them.
    #[must_use]
    pub fn refuse(
        &self,
        number: &Number,
        step: Option<&Number>,
        show: impl Fn(&Number) -> String,
    ) -> Option<Refused> {
        if !self.admit(number) {
            let expected = self.words(show).unwrap_or_default();
            return Some(Refused::OutOfRange { expected });
        }
        let step = step.filter(|step| !number.is_multiple_of(step))?;
        let nearest = number.floor_to(step).zip(number.ceil_to(step));
        Some(Refused::OffStep {
            step: show(step),
            nearest: nearest
                .map(|(below, above)| format!("the nearest are {} and {}", show(&below), show(&above))),
        })
    }
}

/// Why a number is not taken.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Refused {
    /// It lies outside.
    OutOfRange {
        /// What is taken: "0 in to 600 in".
        expected: String,
    },
    /// It is no multiple of the step.
    OffStep {
        /// The step.
        step: String,
        /// What would do instead: "the nearest are 12 in and 13 in".
        nearest: Option<String>,
    },
}
