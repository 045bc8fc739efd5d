//! The window well before an escape opening below the ground.
//!
//! A well of 36 x 36 in has 9 sq ft and is just large enough; one deeper than 44 in needs a ladder or steps.
//!
//! Always holds: the area is asked for by itself, since many wells are round; it is never taken for projection times width.
//! Source: IRC 2018 R310.2.3, IRC 2021 R310.4, values read in code checklists; the number in IRC 2024 from memory.

use astragal_exact::Number;

use super::requirement::{Finding, fewest, lacking};
use super::{Opening, Requirement};
use crate::basis::Basis;
use crate::fact::Fact;
use crate::interval::Interval;
use crate::truth::Truth;

/// The least horizontal area, in square inches: 9 sq ft.
const AREA_LEAST: i64 = 1296;
/// The least projection from the wall and the least width, in inches.
const SIDE_LEAST: i64 = 36;
/// A well deeper than this needs a ladder or steps, in inches.
const DEPTH_MOST_WITHOUT_LADDER: i64 = 44;

/// What is known of a window well; lengths in inches, the area in square inches, 0 where there is no well.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Well {
    /// The horizontal area.
    pub area: Option<Number>,
    /// How far it reaches out from the wall.
    pub projection: Option<Number>,
    /// How wide it is along the wall.
    pub width: Option<Number>,
    /// How deep it is.
    pub depth: Option<Number>,
    /// Whether it has a ladder or steps.
    pub ladder: Option<bool>,
}

/// What the well of an opening below the ground has and lacks.
pub(super) fn findings(opening: &Opening, basis: Basis) -> Vec<Finding> {
    let well = &opening.well;
    let exact = |number: &Option<Number>| number.clone().map(Interval::exact);
    let side = Number::from(SIDE_LEAST);
    let shallow = Truth::at_most(
        Fact::WellDepth,
        well.depth.as_ref(),
        &Number::from(DEPTH_MOST_WITHOUT_LADDER),
    );
    let climbable = Truth::any([shallow, Truth::fact(Fact::WellLadder, well.ladder)]);
    vec![
        fewest(
            Requirement::WellArea,
            Fact::WellArea,
            exact(&well.area),
            &Number::from(AREA_LEAST),
            basis,
        ),
        fewest(
            Requirement::WellProjection,
            Fact::WellProjection,
            exact(&well.projection),
            &side,
            basis,
        ),
        fewest(
            Requirement::WellWidth,
            Fact::WellWidth,
            exact(&well.width),
            &side,
            basis,
        ),
        lacking(Requirement::WellLadder, climbable, basis),
    ]
}
