//! Safety glazing: each hazardous location with rows on both sides of every limit, exceptions, whole answers.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod exceptions;
mod locations;
mod measured;
#[path = "../text_rows/mod.rs"]
mod text_rows;
mod whole;

use astragal_trade::Truth;
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::{
    Answer, Door, DoorWall, Landing, Lite, Location, Measured, Site, Stair, Wet, WetPlace, lite,
};
use text_rows::{maybe, said};

/// A lite and a site of which all is known and nothing calls for safety glazing.
fn harmless() -> (Lite, Site) {
    let at = |text: &str| maybe(text);
    let pane = Lite {
        name: "lite".to_owned(),
        area: at("1000"),
        bottom_edge: at("30"),
        top_edge: at("70"),
    };
    let site = Site {
        in_door: Some(false),
        door: Door {
            wall: Some(DoorWall::NoDoor),
            distance: None,
            hinge_side_of_inswinging: None,
        },
        walking_surface: at("0"),
        in_guard: Some(false),
        wet: Wet {
            place: Some(WetPlace::NoneHere),
            edge: None,
            distance: None,
        },
        stair: Stair {
            beside: Some(false),
            edge: None,
            distance: None,
        },
        landing: Landing {
            at_bottom: Some(false),
            edge: None,
            tread_distance: None,
        },
        exceptions: Vec::new(),
        measured: Measured::default(),
    };
    (pane, site)
}

/// The harmless lite with facts such as `area 1297; wall in plane; door 24` set; `?` is what is not known.
fn with(facts: &str) -> (Lite, Site) {
    let (mut pane, mut site) = harmless();
    for fact in facts.split("; ").filter(|fact| !fact.is_empty()) {
        let (name, value) = fact.split_once(' ').unwrap();
        match name {
            "area" => pane.area = maybe(value),
            "bottom" => pane.bottom_edge = maybe(value),
            "top" => pane.top_edge = maybe(value),
            "in_door" => site.in_door = said(value),
            "wall" => site.door.wall = wall(value),
            "door" => site.door.distance = maybe(value),
            "hinge" => site.door.hinge_side_of_inswinging = said(value),
            "walk" => site.walking_surface = maybe(value),
            "guard" => site.in_guard = said(value),
            "wet" => site.wet.place = wet(value),
            "wet_edge" => site.wet.edge = maybe(value),
            "water" => site.wet.distance = maybe(value),
            "stair" => site.stair.beside = said(value),
            "stair_edge" => site.stair.edge = maybe(value),
            "stair_far" => site.stair.distance = maybe(value),
            "landing" => site.landing.at_bottom = said(value),
            "landing_edge" => site.landing.edge = maybe(value),
            "tread" => site.landing.tread_distance = maybe(value),
            other => panic!("`{other}` is no fact"),
        }
    }
    (pane, site)
}

fn wall(text: &str) -> Option<DoorWall> {
    match text {
        "?" => None,
        "in plane" => Some(DoorWall::InPlane),
        "perpendicular" => Some(DoorWall::Perpendicular),
        "angled" => Some(DoorWall::Angled),
        "beyond" => Some(DoorWall::Beyond),
        "no door" => Some(DoorWall::NoDoor),
        other => panic!("`{other}` is no wall"),
    }
}

fn wet(text: &str) -> Option<WetPlace> {
    match text {
        "?" => None,
        "none" => Some(WetPlace::NoneHere),
        "tub" => Some(WetPlace::Tub),
        "shower" => Some(WetPlace::Shower),
        "spa" => Some(WetPlace::Spa),
        "sauna" => Some(WetPlace::Sauna),
        "pool" => Some(WetPlace::Pool),
        other => panic!("`{other}` is no wet place"),
    }
}

fn ask(edition: Edition, facts: &str) -> Answer {
    let (pane, site) = with(facts);
    lite(edition, &pane, &site).unwrap_or_else(|error| panic!("{facts}: {error}"))
}

/// `yes`, `no`, or `open: fact, fact`.
fn at(answer: &Answer, location: Location) -> String {
    let found = answer
        .locations
        .iter()
        .find(|it| it.location == location)
        .unwrap();
    match &found.calls_for_it {
        Truth::Yes => "yes".to_owned(),
        Truth::No => "no".to_owned(),
        Truth::Unknown(missing) => {
            let ids: Vec<&str> = missing.iter().map(|fact| fact.id()).collect();
            format!("open: {}", ids.join(", "))
        }
    }
}
