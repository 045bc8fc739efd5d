//! From the readings of a tape in one opening to the size that a plant makes.
//!
//! Three widths of 36, 35 15/16 and 36 in, three heights of 60 in and diagonals of 70 and 69 3/4 in: the smallest width
//! governs, the diagonals say that the sides lean by about a quarter of an inch, and the largest upright rectangle is
//! that much narrower. Less a deduction, down to the plant's step, it is the size of the unit.
//!
//! The rooms, in the order in which a number goes through them:
//! [`Readings`] (what was read), [`measure`] (which governs, what was found, the largest upright rectangle),
//! [`deduct`] (who takes off how much, and the plant's step), [`RoughOpening`], [`NetFrame`] and [`DaylightOpening`]
//! (one unit by three conventions), [`billed_area`] and [`billed_perimeter`], [`UnitedInches`].
//!
//! Always holds: nothing that was read is corrected silently; what lies outside a tolerance is a [`Finding`]; readings
//! that no opening has are an error. Both are printed in inches, or in the unit that is asked for. The answer is a check of readings, never a promise that a unit fits.
//! Cost: constant a question.
//!
//! Source: measuring guides of installers; tolerances are common practice and no code. Each value names its own.

mod askew;
mod billing;
mod deduction;
mod diagonals;
mod error;
mod finding;
mod length_error;
mod opening;
mod readings;
mod size;
mod united_inches;
mod upright;

pub use billing::{billed_area, billed_perimeter};
pub use deduction::{DeductedBy, Deduction, Ordered, StatedDeduction, deduct};
pub use diagonals::{TAPE_TOLERANCE_EIGHTHS, expected_diagonal};
pub use error::{MeasuringError, Side};
pub use finding::{Finding, Tolerances, tolerances};
pub use length_error::{ExpectedLength, LengthError};
pub use opening::{Clearance, DaylightOpening, NetFrame, RoughOpening};
pub use readings::{Governing, Readings};
pub use size::Size;
pub use united_inches::UnitedInches;
pub use upright::{Measured, measure};
