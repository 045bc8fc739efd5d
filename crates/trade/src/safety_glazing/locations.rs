//! The conditions of each location, strict or inclusive as its section is.
//!
//! `edge < 60 and distance <= 24`: an edge of 60 in is out, a distance of 24 in is in.

use astragal_exact::Number;

use super::{Door, DoorWall, Landing, Lite, Location, Site, Stair, Wet, WetPlace};
use crate::building_code::Edition;
use crate::fact::Fact;
use crate::truth::{Missing, Truth};

/// A pane above this area is large, in square inches: 9 sq ft.
const LARGE_ABOVE: i64 = 1296;
/// A large pane counts with its bottom edge below this and its top edge above that, in inches.
const LARGE_BOTTOM_BELOW: i64 = 18;
const LARGE_TOP_ABOVE: i64 = 36;
/// A walking surface counts up to this distance, in inches.
const WALKING_MOST: i64 = 36;
/// Glass beside a door or by water counts with its bottom edge below this, in inches.
const DOOR_EDGE_BELOW: i64 = 60;
const WET_EDGE_BELOW: i64 = 60;
/// A door counts up to this distance, water up to that one, in inches.
const DOOR_MOST: i64 = 24;
const WATER_MOST: i64 = 60;
/// Glass beside a stair counts with its bottom edge below this, in inches: IRC, IBC.
const STAIR_EDGE_BELOW_IRC: i64 = 36;
const STAIR_EDGE_BELOW_IBC: i64 = 60;
/// A stair counts below this distance, in inches.
const STAIR_BELOW: i64 = 36;
/// Glass at a bottom landing counts with its bottom edge below this, and the tread up to that distance, in inches.
const LANDING_EDGE_BELOW: i64 = 36;
const TREAD_MOST: i64 = 60;

pub(super) fn calls_for_it(edition: Edition, location: Location, lite: &Lite, site: &Site) -> Truth {
    match location {
        Location::InDoor => Truth::fact(Fact::InDoor, site.in_door),
        Location::BesideDoor => beside_door(edition, lite, &site.door),
        Location::LargePane => large_pane(lite, site.walking_surface.as_ref()),
        Location::Guard => Truth::fact(Fact::InGuard, site.in_guard),
        Location::WetPlace => wet_place(&site.wet),
        Location::Stair => stair(edition, &site.stair),
        Location::BottomLanding => bottom_landing(&site.landing),
    }
}

fn beside_door(edition: Edition, lite: &Lite, door: &Door) -> Truth {
    let in_plane = Truth::of(Fact::DoorWall, door.wall.as_ref(), |wall| {
        *wall == DoorWall::InPlane
    });
    let hinge_side = Truth::fact(Fact::HingeSideOfInswingingDoor, door.hinge_side_of_inswinging);
    let at_an_angle = Truth::all([at_an_angle(edition, door.wall), hinge_side]);
    Truth::all([
        below(Fact::ExposedGlassEdge, lite.bottom_edge.as_ref(), DOOR_EDGE_BELOW),
        at_most(Fact::DoorDistance, door.distance.as_ref(), DOOR_MOST),
        Truth::any([in_plane, at_an_angle]),
    ])
}

/// Whether the wall stands at an angle that counts: perpendicular in each edition; at any other below 180 degrees by IRC 2024.
/// The others were not seen in their own words: the text of 2015 says perpendicular, that of 2024 less than 180 degrees.
fn at_an_angle(edition: Edition, wall: Option<DoorWall>) -> Truth {
    match wall {
        None => Truth::Unknown(Missing::from([Fact::DoorWall])),
        Some(DoorWall::Perpendicular) => Truth::Yes,
        Some(DoorWall::Angled) if edition == Edition::Irc2024 => Truth::Yes,
        Some(DoorWall::Angled) => Truth::Unknown(Missing::from([Fact::WordingInForce])),
        Some(DoorWall::InPlane | DoorWall::Beyond | DoorWall::NoDoor) => Truth::No,
    }
}

fn large_pane(lite: &Lite, walking_surface: Option<&Number>) -> Truth {
    Truth::all([
        above(Fact::LiteArea, lite.area.as_ref(), LARGE_ABOVE),
        below(
            Fact::ExposedGlassEdge,
            lite.bottom_edge.as_ref(),
            LARGE_BOTTOM_BELOW,
        ),
        above(Fact::GlassTopEdge, lite.top_edge.as_ref(), LARGE_TOP_ABOVE),
        at_most(Fact::WalkingSurfaceDistance, walking_surface, WALKING_MOST),
    ])
}

fn wet_place(wet: &Wet) -> Truth {
    Truth::all([
        Truth::of(Fact::WetPlace, wet.place.as_ref(), |place| {
            *place != WetPlace::NoneHere
        }),
        below(Fact::EdgeAboveWetSurface, wet.edge.as_ref(), WET_EDGE_BELOW),
        at_most(Fact::WaterEdgeDistance, wet.distance.as_ref(), WATER_MOST),
    ])
}

fn stair(edition: Edition, stair: &Stair) -> Truth {
    let limit = if edition.is_residential() {
        STAIR_EDGE_BELOW_IRC
    } else {
        STAIR_EDGE_BELOW_IBC
    };
    Truth::all([
        Truth::fact(Fact::BesideStair, stair.beside),
        below(Fact::EdgeAboveStair, stair.edge.as_ref(), limit),
        below(Fact::StairDistance, stair.distance.as_ref(), STAIR_BELOW),
    ])
}

fn bottom_landing(landing: &Landing) -> Truth {
    Truth::all([
        Truth::fact(Fact::BottomStairLanding, landing.at_bottom),
        below(Fact::EdgeAboveLanding, landing.edge.as_ref(), LANDING_EDGE_BELOW),
        at_most(
            Fact::BottomTreadDistance,
            landing.tread_distance.as_ref(),
            TREAD_MOST,
        ),
    ])
}

fn below(fact: Fact, value: Option<&Number>, limit: i64) -> Truth {
    Truth::below(fact, value, &Number::from(limit))
}

fn above(fact: Fact, value: Option<&Number>, limit: i64) -> Truth {
    Truth::above(fact, value, &Number::from(limit))
}

fn at_most(fact: Fact, value: Option<&Number>, limit: i64) -> Truth {
    Truth::at_most(fact, value, &Number::from(limit))
}
