//! Refuses facts that no lite has.

use astragal_exact::{AreaUnit, LengthUnit, Number, format_area, format_length};

use super::{Lite, Site};
use crate::building_code::Edition;
use crate::fact::Fact;
use crate::facts_error::{Contradiction, FactsError};
use crate::input::{self, InputError};
use crate::refusal::refused;

/// LIMIT: the largest load of a rail that is taken for one, in pounds by the foot.
const RAIL_LOAD_MOST: i64 = 10_000;

pub(super) fn refuse(edition: Edition, lite: &Lite, site: &Site) -> Result<(), FactsError> {
    if edition == Edition::Nfpa101 {
        return Err(FactsError::NotInEdition {
            edition,
            asked: "safety glazing",
        });
    }
    if let Some(area) = &lite.area {
        lite_area(area)?;
    }
    let distances = [
        (Fact::ExposedGlassEdge, &lite.bottom_edge),
        (Fact::GlassTopEdge, &lite.top_edge),
        (Fact::DoorDistance, &site.door.distance),
        (Fact::WalkingSurfaceDistance, &site.walking_surface),
        (Fact::WaterEdgeDistance, &site.wet.distance),
        (Fact::StairDistance, &site.stair.distance),
        (Fact::BottomTreadDistance, &site.landing.tread_distance),
        (Fact::DoorOpeningWidth, &site.measured.door_opening),
        (Fact::ClosetDepth, &site.measured.closet_depth),
        (Fact::RailHeight, &site.measured.rail.height),
        (Fact::RailSection, &site.measured.rail.section),
        (Fact::OutboardPaneHeight, &site.measured.outboard_pane),
        (Fact::GuardDistance, &site.measured.guard),
    ];
    for (fact, distance) in distances {
        if let Some(distance) = distance {
            input::distance(fact, distance)?;
        }
    }
    let either_way = [
        (Fact::EdgeAboveWetSurface, &site.wet.edge),
        (Fact::EdgeAboveStair, &site.stair.edge),
        (Fact::EdgeAboveLanding, &site.landing.edge),
    ];
    for (fact, height) in either_way {
        if let Some(height) = height {
            input::height_either_way(fact, height)?;
        }
    }
    if let Some(load) = &site.measured.rail.load {
        rail_load(load)?;
    }
    top_above_bottom(lite)
}

fn rail_load(pounds_per_foot: &Number) -> Result<(), InputError> {
    if !pounds_per_foot.is_negative() && *pounds_per_foot <= Number::from(RAIL_LOAD_MOST) {
        return Ok(());
    }
    let expected = "a load of 0 or more, at most 10,000 lb a foot";
    Err(refused(Fact::RailLoad, pounds_per_foot, expected))
}

fn lite_area(area: &Number) -> Result<(), InputError> {
    if area.is_positive() && *area <= Number::from(input::SIZE_MOST * input::SIZE_MOST) {
        return Ok(());
    }
    Err(InputError {
        fact: Fact::LiteArea,
        found: format_area(area, AreaUnit::SquareFoot),
        expected: "an area above 0 and at most 2,500 sq ft".to_owned(),
    })
}

fn top_above_bottom(lite: &Lite) -> Result<(), FactsError> {
    let Some((bottom, top)) = lite.bottom_edge.as_ref().zip(lite.top_edge.as_ref()) else {
        return Ok(());
    };
    if top > bottom {
        return Ok(());
    }
    let shown = |length: &Number| format_length(length, LengthUnit::Inch);
    Err(FactsError::Contradiction(Contradiction {
        one: (Fact::GlassTopEdge, shown(top)),
        other: (Fact::ExposedGlassEdge, shown(bottom)),
        expected: "a top edge above the bottom edge",
    }))
}
