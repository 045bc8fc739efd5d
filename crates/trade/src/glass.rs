//! Glass: what it weighs, how thick it really is, whether hardware and people carry it.
//!
//! A double lite of 48 x 72 in in 3/16 in glass weighs 2 x 24 sq ft x 2.45 lb = 117.6 lb before its frame.
//!
//! Always holds: a thickness by fractions of an inch ([`Nominal`]) and one by millimetres ([`millimetre`]) are two conventions
//! with two sets of weights, and no function takes both: 1/8 in weighs 1.64 lb/ft2, 3 mm 1.536. What is not known leaves
//! the weight open and the caution in place.
//!
//! Source: each table names its own.

mod lifting;
pub mod millimetre;
mod nominal;
mod sash;
mod weight;

pub use lifting::{LIFTING_BASIS, LIFTING_POUNDS_MOST, Lifting, lifting};
pub use nominal::{Nominal, PoundsPerSquareFoot, THICKNESS_BASIS};
pub use sash::{
    FRAME_BASIS, assumed_frame_pounds_per_foot, frame_weight, sash_weight, within_hardware_limit,
};
pub use weight::{Weight, glass_weight};
