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
}
