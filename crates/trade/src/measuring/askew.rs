//! How far an opening leans and slopes, as far as its diagonals and a level tell: the D, e and s of the header of `upright`.
//!
//! 36 x 60 in, diagonals of 70 and 69 1/2, jambs that lean by 1/4: D is 17.4375, the jambs explain 9 of it, and the rest is a
//! slope of 8.4375 / 60.
//!
//! Always holds: exact; what a level read is never made smaller. Where two slopes go with what was read, or none does, a finding
//! says so.

use astragal_exact::Number;

use super::error::{MeasuringError, Side};
use super::finding::{Finding, tolerances};
use super::readings::Readings;
use super::size::Size;
use crate::constant::over;
use crate::fact::Fact;

/// How far an opening stands askew.
#[derive(Default)]
pub(super) struct Askew {
    pub(super) lean: Number,
    pub(super) slope: Number,
    /// What is to be said of level and diagonals together.
    pub(super) finding: Option<Finding>,
}

impl Askew {
    pub(super) fn of(readings: &Readings, sides: &Size) -> Self {
        let (plumb, level) = (readings.out_of_plumb.as_ref(), readings.out_of_level.as_ref());
        match Skew::of(&readings.diagonals) {
            Some(skew) => Self::by_diagonals(&skew, sides, plumb, level),
            None => Self {
                lean: plumb.cloned().unwrap_or_default(),
                slope: level.cloned().unwrap_or_default(),
                finding: None,
            },
        }
    }

    fn by_diagonals(skew: &Skew, sides: &Size, plumb: Option<&Number>, level: Option<&Number>) -> Self {
        let Size { width, height } = sides;
        match (plumb, level) {
            (None, None) => Self {
                lean: share(&skew.size, width),
                slope: share(&skew.size, height),
                finding: None,
            },
            (Some(plumb), None) => {
                let (rest, finding) = skew.rest(&(width * plumb), Fact::OutOfLevel);
                Self {
                    lean: plumb.clone(),
                    slope: share(&rest, height),
                    finding,
                }
            }
            (None, Some(level)) => {
                let (rest, finding) = skew.rest(&(height * level), Fact::OutOfPlumb);
                Self {
                    lean: share(&rest, width),
                    slope: level.clone(),
                    finding,
                }
            }
            (Some(plumb), Some(level)) => Self::by_both(skew, sides, plumb, level),
        }
    }

    fn by_both(skew: &Skew, Size { width, height }: &Size, plumb: &Number, level: &Number) -> Self {
        if skew.agrees(&(width * plumb), &(height * level)) {
            return Self {
                lean: plumb.clone(),
                slope: level.clone(),
                finding: None,
            };
        }
        Self {
            lean: plumb.clone().max(share(&skew.size, width)),
            slope: level.clone().max(share(&skew.size, height)),
            finding: Some(Finding::LevelAgainstDiagonals),
        }
    }

    pub(super) fn off(&self, sides: &Size) -> Result<Size, MeasuringError> {
        let most = (&sides.width).min(&sides.height) * &over::<2>(1);
        for (side, lost) in [(Side::Width, &self.lean), (Side::Height, &self.slope)] {
            if *lost > most {
                let lost = lost.clone();
                return Err(MeasuringError::LeansTooFar { side, lost, most });
            }
        }
        Ok(Size::new(&sides.width - &self.lean, &sides.height - &self.slope))
    }
}

/// What two diagonals say: the D of the header of `upright`, and how far it may be off.
struct Skew {
    size: Number,
    tolerance: Number,
}

impl Skew {
    fn of(diagonals: &[Option<Number>; 2]) -> Option<Self> {
        let [Some(first), Some(second)] = diagonals else {
            return None;
        };
        let (sum, difference) = (first + second, first - second);
        let quarter = over::<4>(1);
        Some(Self {
            size: (&sum * &difference).abs() * &quarter,
            tolerance: sum * tolerances().diagonals * quarter,
        })
    }

    /// What is left for the other pair of sides, `not_read`, when this much is explained, and what is to be said of it.
    fn rest(&self, explained: &Number, not_read: Fact) -> (Number, Option<Finding>) {
        if explained - &self.size > self.tolerance {
            return (&self.size + explained, Some(Finding::LevelAgainstDiagonals));
        }
        let two_ways = explained.is_positive() && self.size.is_positive();
        let finding = two_ways.then_some(Finding::OneLevel(not_read));
        ((&self.size - explained).abs(), finding)
    }

    fn agrees(&self, by_lean: &Number, by_slope: &Number) -> bool {
        let near = |expected: Number| (&self.size - expected).abs() <= self.tolerance;
        near(by_lean + by_slope) || near((by_lean - by_slope).abs())
    }
}

/// A side that was read is above 0: the default is never taken.
fn share(skew: &Number, side: &Number) -> Number {
    skew.checked_div(side).unwrap_or_default()
}
