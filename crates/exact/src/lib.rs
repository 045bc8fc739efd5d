//! Exact numbers, and lengths and areas as people write them.
//!
//! Everything that astragal decides or prices goes through a [`Number`], a fraction that is never rounded on its own.
//! This crate knows no window, no catalog and no code: it is what `astragal-trade` and `astragal-model` both stand on.

pub mod measure_text;
pub mod number;

pub use measure_text::{AreaUnit, LengthUnit, format_area, format_length, parse_area, parse_length};
pub use number::Number;
