//! Energy: what a voluntary programme asks of a window, what an energy code allows at most, and averages over openings.
//!
//! A unit of U 0.22 and SHGC 0.20 meets the programme in all four of its zones; one of U 0.25 and SHGC 0.41 meets it in
//! the Northern zone and not in the North-Central one. **More** solar heat helps in one zone and spoils it in another:
//! neither direction of SHGC is the better one.
//!
//! Always holds: the zone of the programme ([`ProgrammeZone`], by county) and the zone of the code ([`CodeZone`]) are two
//! facts and two types; a value that is not encoded is never read as "no requirement"; averages are compared before they are
//! rounded; what is printed on a label has two decimals and is not rounded here.
//!
//! A rating belongs to the whole glazing: glass package, gas, spacer, grille and reinforcement move it. Ratings are given for
//! a model size, not for the size ordered.
//!
//! Not looked at: air leakage, condensation, doors, skylights in the programme. Not covered here: impact and
//! windborne-debris glazing, high altitude (breather tubes, gas filling).

pub mod average;
pub mod code;
pub mod label_range;
pub mod programme;
pub mod rating;
pub mod whole_product;
mod zone;

pub use zone::{CodeZone, ProgrammeZone};
