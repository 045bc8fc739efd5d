//! How much is drawn at all.
//!
//! A unit of 900 ft or a grille of a thousand lites is a slip, and is refused with what was found.

/// LIMIT: the smallest width or height of a unit, in inches.
pub const SIZE_LEAST: i64 = 1;
/// LIMIT: the largest width or height of a unit, in inches: 50 ft.
pub const SIZE_MOST: i64 = 600;
/// LIMIT: panels of one unit.
pub const PANELS_MOST: usize = 12;
/// LIMIT: lites of one grille each way.
pub const LITES_MOST: u32 = 24;
/// LIMIT: dimensions of one unit besides the overall ones.
pub const DIMENSIONS_MOST: usize = 24;
/// LIMIT: letters of a tag, or of the label of a dimension.
pub const LABEL_MOST: usize = 40;
/// LIMIT: letters of any other text.
pub const TEXT_MOST: usize = 1_000;
/// LIMIT: lines of one list of texts.
pub const LINES_MOST: usize = 100;
/// LIMIT: openings of one sheet.
pub const CELLS_MOST: usize = 1_000;
/// LIMIT: bits of a length; a finer fraction of an inch is no measure.
pub const LENGTH_BITS_MOST: u64 = 256;
