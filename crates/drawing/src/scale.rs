//! How much smaller than the unit its drawing is.
//!
//! At 1:24, half an inch on paper is a foot of the wall: a unit 48 in wide is drawn 2 in (50.8 mm) wide.
//!
//! Always holds: a length becomes whole hundredths of a millimetre by one rounding of its exact value, so that an edge is
//! drawn within 0.005 mm of its place.
//! Source: the scales in use on drawings in feet and inches and in metric: common practice, no source.

use std::fmt;

use astragal_exact::{LengthUnit, Number};

/// The smallest scale that there is: 1 to this.
const PER_MOST: u32 = 1_000;

/// Hundredths of a millimetre in an inch.
const HUNDREDTHS_PER_INCH: i64 = 2_540;

/// Scales in feet and inches, the largest first.
const OF_FEET: [(u32, &str); 9] = [
    (8, "1 1/2 in = 1 ft"),
    (12, "1 in = 1 ft"),
    (16, "3/4 in = 1 ft"),
    (24, "1/2 in = 1 ft"),
    (32, "3/8 in = 1 ft"),
    (48, "1/4 in = 1 ft"),
    (64, "3/16 in = 1 ft"),
    (96, "1/8 in = 1 ft"),
    (192, "1/16 in = 1 ft"),
];

/// Scales in metric, the largest first.
const METRIC: [u32; 8] = [5, 10, 15, 20, 25, 50, 100, 200];

/// A scale: one to a whole number.
///
/// # Examples
/// It is written as people who work in that unit write it:
/// ```
/// use astragal_drawing::Scale;
/// use astragal_exact::LengthUnit;
/// let scale = Scale::one_to(24).ok_or("no such scale")?;
/// assert_eq!(scale.words(LengthUnit::Inch), "1/2 in = 1 ft (1:24)");
/// assert_eq!(scale.words(LengthUnit::Millimetre), "1:24");
/// # Ok::<(), &str>(())
/// ```
/// There is no scale of one to nothing:
/// ```
/// use astragal_drawing::Scale;
/// assert_eq!(Scale::one_to(0), None);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct Scale(u32);

impl Scale {
    /// The scale 1:`per`; `None` unless `per` is 1 to 1,000.
    #[must_use]
    pub fn one_to(per: u32) -> Option<Scale> {
        (1..=PER_MOST).contains(&per).then_some(Scale(per))
    }

    /// The number behind `1:`.
    #[must_use]
    pub fn per(self) -> u32 {
        self.0
    }

    /// The scale in words, for lengths that are written in `unit`.
    #[must_use]
    pub fn words(self, unit: LengthUnit) -> String {
        let of_feet = OF_FEET
            .iter()
            .find(|(per, _)| *per == self.0 && is_imperial(unit));
        match of_feet {
            Some((_, words)) => format!("{words} ({self})"),
            None => self.to_string(),
        }
    }

    /// The usual scales for lengths that are written in `unit`, the largest first.
    fn usual(unit: LengthUnit) -> Vec<Scale> {
        if is_imperial(unit) {
            OF_FEET.iter().map(|(per, _)| Scale(*per)).collect()
        } else {
            METRIC.iter().map(|per| Scale(*per)).collect()
        }
    }

    /// The largest usual scale at which every one of `sizes` (inches) fits into `most` (hundredths of a millimetre);
    /// the smallest there is when none does.
    pub(crate) fn fitting<'a>(
        unit: LengthUnit,
        sizes: impl Iterator<Item = (&'a Number, &'a Number)> + Clone,
        most: (i64, i64),
    ) -> Scale {
        let scales = Scale::usual(unit);
        let fits = |scale: &&Scale| {
            sizes.clone().all(|(width, height)| {
                scale.hundredths(width) <= most.0 && scale.hundredths(height) <= most.1
            })
        };
        let smallest = scales.last().copied().unwrap_or(Scale(PER_MOST));
        scales.iter().find(fits).copied().unwrap_or(smallest)
    }

    /// A length of the unit as hundredths of a millimetre on paper, rounded once.
    ///
    /// Lengths are checked before they come here and fit by far: the default is never taken.
    pub(crate) fn hundredths(self, inches: &Number) -> i64 {
        let exact = (inches * Number::from(HUNDREDTHS_PER_INCH)).checked_div(&Number::from(self.0));
        exact.and_then(|exact| exact.round().to_i64()).unwrap_or_default()
    }
}

impl fmt::Display for Scale {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "1:{}", self.0)
    }
}

fn is_imperial(unit: LengthUnit) -> bool {
    matches!(unit, LengthUnit::Inch | LengthUnit::Foot)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_an_inch_is_a_foot_at_one_to_twenty_four() {
        assert_eq!(Scale(24).hundredths(&Number::from(12)), 1_270);
        assert_eq!(Scale(24).hundredths(&Number::from(48)), 5_080);
    }

    #[test]
    fn what_a_scale_in_feet_says_is_what_it_is() {
        for (per, words) in OF_FEET {
            let (inches, rest) = words.split_once(" in = ").unwrap();
            assert_eq!(rest, "1 ft");
            let inches = astragal_exact::parse_length(inches, Some(LengthUnit::Inch)).unwrap();
            assert_eq!(inches * Number::from(per), Number::from(12), "{words}");
        }
    }

    #[test]
    fn the_largest_usual_scale_that_fits_is_taken() {
        let (width, height) = (Number::from(48), Number::from(60));
        let of = |most| Scale::fitting(LengthUnit::Inch, [(&width, &height)].into_iter(), most).per();
        assert_eq!(of((5_080, 6_350)), 24);
        assert_eq!(of((5_079, 6_350)), 32);
        assert_eq!(of((5_080, 6_349)), 32);
        assert_eq!(of((1, 1)), 192);
    }
}
