//! Tables about safety glazing.

use astragal_exact::Number;
use astragal_trade::Truth;
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::{
    self, CATEGORY_BASIS, Category, Door, DoorWall, Exception, Landing, Lite, Location, Measured, Rail, Site,
    Stair, Wet, WetPlace, basis, category, lite,
};

use crate::{Row, boundary, named, row, standing};

/// Where a lite is called hazardous by everything but what is asked for.
#[derive(Clone)]
struct Place {
    edge: Number,
    distance: Number,
    area: Number,
    top: Number,
}

fn near() -> Place {
    Place {
        edge: Number::from(1),
        distance: Number::from(1),
        area: Number::from(2000),
        top: Number::from(100),
    }
}

fn called_for(edition: Edition, location: Location, place: &Place) -> bool {
    let some = |number: &Number| Some(number.clone());
    let pane = Lite {
        area: some(&place.area),
        bottom_edge: some(&place.edge),
        top_edge: some(&place.top),
        ..Lite::default()
    };
    let mut site = Site::default();
    match location {
        Location::InDoor => site.in_door = Some(true),
        Location::BesideDoor => {
            site.door = Door {
                wall: Some(DoorWall::InPlane),
                distance: some(&place.distance),
                hinge_side_of_inswinging: Some(false),
            };
        }
        Location::LargePane => site.walking_surface = some(&place.distance),
        Location::Guard => site.in_guard = Some(true),
        Location::WetPlace => {
            site.wet = Wet {
                place: Some(WetPlace::Tub),
                edge: some(&place.edge),
                distance: some(&place.distance),
            };
        }
        Location::Stair => {
            site.stair = Stair {
                beside: Some(true),
                edge: some(&place.edge),
                distance: some(&place.distance),
            };
        }
        Location::BottomLanding => {
            site.landing = Landing {
                at_bottom: Some(true),
                edge: some(&place.edge),
                tread_distance: some(&place.distance),
            };
        }
    }
    let answer = lite(edition, &pane, &site).unwrap();
    answer
        .calling_for_it()
        .any(|found| found.location == location && found.calls_for_it == Truth::Yes)
}

/// One row where both codes agree, two where they differ.
pub(crate) fn limits() -> Vec<Row> {
    let mut found = Vec::new();
    for location in Location::ALL {
        let irc = limits_of(Edition::Irc2021, location);
        let ibc = limits_of(Edition::Ibc2021, location);
        assert_eq!(irc, limits_of(Edition::Irc2018, location), "{location:?}");
        assert_eq!(irc, limits_of(Edition::Irc2024, location), "{location:?}");
        assert_eq!(ibc, limits_of(Edition::Ibc2018, location), "{location:?}");
        let codes: Vec<(&str, [String; 4])> = if irc == ibc {
            vec![("IRC, IBC", irc)]
        } else {
            vec![("IRC", irc), ("IBC", ibc)]
        };
        for (code, [edge, distance, area, top]) in codes {
            found.push(row([location.words(), code, &edge, &distance, &area, &top]));
        }
    }
    found
}

/// Edge, distance, area, top.
fn limits_of(edition: Edition, location: Location) -> [String; 4] {
    let ask = |place: Place| called_for(edition, location, &place);
    [
        boundary::inches(|edge| {
            // A top edge is above its bottom edge.
            let top = Number::from(400);
            ask(Place {
                edge: edge.clone(),
                top,
                ..near()
            })
        }),
        boundary::inches(|distance| {
            ask(Place {
                distance: distance.clone(),
                ..near()
            })
        }),
        boundary::square_feet(|area| {
            // Nothing has no area: it stands for the smallest there is.
            let area = area.clone().max(Number::ONE);
            ask(Place { area, ..near() })
        }),
        boundary::inches(|top| {
            let edge = Number::ZERO;
            let top = top.clone().max(Number::ratio(1, 16).unwrap());
            ask(Place { edge, top, ..near() })
        }),
    ]
}

pub(crate) fn sections() -> Vec<Row> {
    let editions = [
        Edition::Irc2018,
        Edition::Irc2021,
        Edition::Irc2024,
        Edition::Ibc2018,
        Edition::Ibc2021,
    ];
    Location::ALL
        .map(|location| {
            let mut cells = vec![location.words().to_owned()];
            cells.extend(editions.map(|edition| standing(basis(edition, location))));
            cells
        })
        .to_vec()
}

pub(crate) fn exceptions() -> Vec<Row> {
    Exception::ALL
        .map(|exception| {
            let places: Vec<&str> = Location::ALL
                .iter()
                .filter(|location| exception.may_excuse(**location))
                .map(|location| location.words())
                .collect();
            row([
                exception.words(),
                &measured(exception),
                exception.to_be_looked_at(),
                &places.join("; "),
                &named(exception.basis()),
            ])
        })
        .to_vec()
}

/// The limits of the numbers of an exception, each found with the others within.
fn measured(exception: Exception) -> String {
    let rail = || Rail {
        height: Some(Number::from(36)),
        section: Some(Number::from(2)),
        load: Some(Number::from(60)),
    };
    let holds = |measured: Measured| exception.by_measures(&measured) == Truth::Yes;
    let some = |number: &Number| Some(number.clone());
    let of_rail = |rail: Rail| Measured {
        rail,
        ..Measured::default()
    };
    match exception {
        Exception::Decorative | Exception::BarrierToDoor | Exception::BesideFixedPatioPanel => {
            assert!(holds(Measured::default()));
            "-".to_owned()
        }
        Exception::SmallDoorOpening => boundary::inches(|width| {
            let door_opening = some(width);
            holds(Measured {
                door_opening,
                ..Measured::default()
            })
        }),
        Exception::ShallowCloset => boundary::inches(|depth| {
            let closet_depth = some(depth);
            holds(Measured {
                closet_depth,
                ..Measured::default()
            })
        }),
        Exception::ProtectiveRail => {
            let height = boundary::inches(|height| {
                holds(of_rail(Rail {
                    height: some(height),
                    ..rail()
                }))
            });
            let section = boundary::inches(|section| {
                holds(of_rail(Rail {
                    section: some(section),
                    ..rail()
                }))
            });
            let load = boundary::pounds_by_the_foot(|load| {
                holds(of_rail(Rail {
                    load: some(load),
                    ..rail()
                }))
            });
            format!("{height}; section {section}; {load}")
        }
        Exception::OutboardPaneHighUp => boundary::inches(|height| {
            let outboard_pane = some(height);
            holds(Measured {
                outboard_pane,
                ..Measured::default()
            })
        }),
        Exception::GuardAwayFromGlass => boundary::inches(|distance| {
            let guard = some(distance);
            holds(Measured {
                guard,
                ..Measured::default()
            })
        }),
    }
}

pub(crate) fn categories() -> Vec<Row> {
    let of =
        |location: Location, sliding: bool, area: i64| match category(location, &Number::from(area), sliding)
        {
            Some(Category::One) => "I",
            Some(Category::Two) => "II",
            None => "none recalled",
        };
    let line = |name: &str, location: Location, sliding: bool| {
        row([name, of(location, sliding, 1296), of(location, sliding, 1297)])
    };
    let mut found = vec![
        line("in a hinged door", Location::InDoor, false),
        line("in a sliding door", Location::InDoor, true),
    ];
    let others = Location::ALL
        .iter()
        .filter(|location| **location != Location::InDoor);
    found.extend(others.map(|location| line(location.words(), *location, false)));
    let seen = named(CATEGORY_BASIS);
    found.push(row(["where it was seen", &seen, &seen]));
    found
}

pub(crate) fn notes() -> Vec<Row> {
    safety_glazing::notes()
        .map(|note| row([note.words, &named(note.basis)]))
        .to_vec()
}

/// Which walls beside a door count, in the words of the page.
#[test]
fn a_wall_at_an_angle_to_a_door_counts_as_the_page_says() {
    let at = |edition: Edition, wall: DoorWall| {
        let pane = Lite {
            bottom_edge: Some(Number::from(20)),
            ..Lite::default()
        };
        let site = Site {
            door: Door {
                wall: Some(wall),
                distance: Some(Number::from(24)),
                hinge_side_of_inswinging: Some(true),
            },
            ..Site::default()
        };
        let answer = lite(edition, &pane, &site).unwrap();
        let found = answer
            .locations
            .into_iter()
            .find(|found| found.location == Location::BesideDoor);
        found.unwrap().calls_for_it
    };
    for edition in [Edition::Irc2018, Edition::Irc2021, Edition::Ibc2021] {
        assert_eq!(at(edition, DoorWall::Perpendicular), Truth::Yes);
        assert!(
            matches!(at(edition, DoorWall::Angled), Truth::Unknown(_)),
            "{edition}"
        );
    }
    assert_eq!(at(Edition::Irc2024, DoorWall::Angled), Truth::Yes);
    assert_eq!(at(Edition::Irc2024, DoorWall::Beyond), Truth::No);
}
