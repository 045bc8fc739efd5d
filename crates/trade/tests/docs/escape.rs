//! Tables about clear openings and escape. Losses and sizes of units are invented.

use astragal_exact::Number;
use astragal_exact::measure_text::{AreaUnit, LengthUnit, format_area, format_length};
use astragal_trade::Basis;
use astragal_trade::building_code::Edition;
use astragal_trade::clear_opening::{EscapeRating, Losses, Operation, clear_opening};
use astragal_trade::control_device::Device;
use astragal_trade::escape::{
    self, Condition, Excuse, Existing, Opening, Requirement, Room, RoomUse, RoomVerdict, Scope, Values, Well,
};

use crate::{Row, boundary, inches, length, named, row, standing, yes_or_no};

/// An opening that meets everything, large and low, behind a roomy well.
pub(crate) fn good() -> Opening {
    let inches = |value: i64| Some(Number::from(value));
    Opening {
        clear_width: Some(Number::from(40).into()),
        clear_height: Some(Number::from(40).into()),
        bottom: inches(30),
        sill_above_grade: inches(130),
        device: Some(Device::Nothing),
        opens_without_keys: Some(true),
        well: Well {
            area: inches(2000),
            projection: inches(40),
            width: inches(50),
            depth: inches(40),
            ladder: Some(false),
        },
        ..Opening::default()
    }
}

fn lacks(edition: Edition, opening: &Opening, requirement: Requirement) -> bool {
    let answer = escape::opening(edition, opening).unwrap();
    answer
        .shortfalls
        .iter()
        .any(|lacking| lacking.requirement == requirement)
}

/// Clear width, height, and what area it comes to.
pub(crate) fn clear_openings() -> Vec<Row> {
    let half = || Number::ratio(1, 2).unwrap();
    let hung = || Operation::Hung { sash_share: half() };
    let slider = || Operation::Slider {
        vent_fraction: half(),
    };
    let casement = |inches: i64| Operation::Casement {
        hinge_intrusion: Number::from(inches),
    };
    let stated = EscapeRating {
        width: Number::from(30),
        height: Number::from(24),
    };
    let projecting = |escape_rating| Operation::Projecting { escape_rating };
    let rows = [
        ("hung, equal sashes", "36", "60", "4 1/2", hung()),
        ("hung, equal sashes", "36", "60 1/2", "4 1/2", hung()),
        ("slider of two lites", "60", "42", "4", slider()),
        ("slider of two lites", "48", "36", "4", slider()),
        ("casement, hinge takes 4 in", "28", "48", "4", casement(4)),
        ("casement, hinge takes 4 in", "27 3/4", "48", "4", casement(4)),
        ("casement, hinge takes 4 in", "28", "45", "4", casement(4)),
        ("casement, hinge takes nothing", "28", "45", "4", casement(0)),
        ("awning, nothing stated", "36", "36", "4", projecting(None)),
        (
            "awning, 30 x 24 in stated",
            "36",
            "36",
            "4",
            projecting(Some(stated)),
        ),
        ("fixed", "60", "60", "4", Operation::Fixed),
    ];
    rows.map(|(name, width, height, loss, operation)| {
        let losses = Losses {
            width: Number::from(4),
            height: inches(loss),
        };
        let found = clear_opening(&inches(width), &inches(height), &losses, &operation).unwrap();
        let size = format!("{} x {}", length(found.width.low()), length(found.height.low()));
        let said = found.nothing.map_or(size, |reason| format!("nothing: {reason}"));
        let area = format_area(found.area().low(), AreaUnit::SquareFoot);
        let unit = format!("{width} x {height} in");
        row([name, &unit, &said, &area])
    })
    .to_vec()
}

/// Both areas and both sides by IRC 2021, asked with the crate's own question.
pub(crate) fn areas() -> Vec<Row> {
    let rows = [
        ("20", "24"),
        ("20", "41"),
        ("20", "41.04"),
        ("20", "41 1/16"),
        ("34", "24"),
        ("34 1/4", "24"),
        ("20", "36"),
        ("19 3/4", "44"),
    ];
    rows.map(|(width, height)| {
        let ask = |grade: i64| {
            let opening = Opening {
                clear_width: Some(inches(width).into()),
                clear_height: Some(inches(height).into()),
                sill_above_grade: Some(Number::from(grade)),
                ..good()
            };
            let answer = escape::opening(Edition::Irc2021, &opening).unwrap();
            let lacks: Vec<&str> = answer
                .shortfalls
                .iter()
                .map(|it| it.requirement.words())
                .collect();
            if lacks.is_empty() {
                "has what is asked".to_owned()
            } else {
                format!("falls short: {}", lacks.join(", "))
            }
        };
        let area = inches(width) * inches(height);
        let area = format_area(&area, AreaUnit::SquareFoot);
        row([&format!("{width} x {height} in"), &area, &ask(130), &ask(20)])
    })
    .to_vec()
}

/// Where an edition asks something, if it does.
type Asked = fn(&Values) -> Option<Basis>;

/// One row a value, one column an edition.
pub(crate) fn values() -> Vec<Row> {
    let found: Vec<Values> = Edition::ALL
        .iter()
        .map(|edition| escape::values(*edition))
        .collect();
    let [area, floor, width, height, bottom, reach] = sizes(&found);
    let rows: [(String, Asked); 12] = [
        (format!("clear area at least {area}"), |it| Some(it.area.basis)),
        (format!("at least {floor} at a grade-floor opening"), |it| {
            it.area_grade_floor.as_ref().map(|limit| limit.basis)
        }),
        ("the same below the ground".to_owned(), |it| it.below_grade),
        (format!("clear width at least {width}"), |it| Some(it.width.basis)),
        (format!("clear height at least {height}"), |it| {
            Some(it.height.basis)
        }),
        (
            format!("bottom of the clear opening at most {bottom} above the floor"),
            |it| Some(it.bottom.basis),
        ),
        ("opens from inside without keys or tools".to_owned(), |it| {
            Some(it.without_keys)
        }),
        ("a releasable control device may serve".to_owned(), |it| {
            Some(it.devices)
        }),
        (
            format!("at most {reach} above the ground, or reached otherwise"),
            |it| it.reach.as_ref().map(|limit| limit.basis),
        ),
        ("a window well below the ground".to_owned(), |it| it.well),
        ("a replacement may be excused".to_owned(), |it| {
            it.replacement.map(|(basis, _)| basis)
        }),
        ("asked of rooms".to_owned(), |it| Some(it.rooms)),
    ];
    let line = |(what, of): (String, Asked)| {
        let mut cells = vec![what];
        cells.extend(
            Edition::ALL
                .iter()
                .zip(&found)
                .map(|(edition, values)| match of(values) {
                    None => "-".to_owned(),
                    Some(basis) if basis.document == edition.name() => standing(basis),
                    Some(basis) => named(basis),
                }),
        );
        cells
    };
    rows.map(line).to_vec()
}

/// Area, area at a grade floor, width, height, bottom, reach: one value each, in all editions that have it.
fn sizes(found: &[Values]) -> [String; 6] {
    let same = |of: fn(&Values) -> Option<Number>| {
        let mut values: Vec<Number> = found.iter().filter_map(of).collect();
        values.dedup();
        let [value] = &values[..] else {
            panic!("one value in all editions: {values:?}")
        };
        value.clone()
    };
    let square_feet = |area: &Number| format_area(area, AreaUnit::SquareFoot);
    let reach = same(|it| it.reach.as_ref().map(|limit| limit.value.clone()));
    [
        square_feet(&same(|it| Some(it.area.value.clone()))),
        square_feet(&same(|it| {
            it.area_grade_floor.as_ref().map(|limit| limit.value.clone())
        })),
        length(&same(|it| Some(it.width.value.clone()))),
        length(&same(|it| Some(it.height.value.clone()))),
        length(&same(|it| Some(it.bottom.value.clone()))),
        format_length(&reach, LengthUnit::Foot),
    ]
}

pub(crate) fn rooms() -> Vec<Row> {
    let uses = [
        RoomUse::Sleeping,
        RoomUse::Basement,
        RoomUse::HabitableAttic,
        RoomUse::BelowSleepingLoft,
        RoomUse::Other,
    ];
    uses.map(|room_use| {
        let mut cells = vec![room_use.words().to_owned()];
        cells.extend(Edition::ALL.iter().map(|edition| {
            let room = Room {
                room_use: Some(room_use),
                openings: Vec::new(),
            };
            let said = match escape::room(*edition, &room).unwrap().verdict {
                RoomVerdict::NotAsked => "no",
                RoomVerdict::NoOpeningsGiven => "yes",
                RoomVerdict::Undecided => "ask",
                other => panic!("{other:?}"),
            };
            said.to_owned()
        }));
        cells
    })
    .to_vec()
}

pub(crate) fn wells() -> Vec<Row> {
    let below = |well: Well| Opening {
        sill_above_grade: Some(Number::from(-10)),
        well,
        ..good()
    };
    let holds = |requirement: Requirement, well: Well| !lacks(Edition::Irc2021, &below(well), requirement);
    let least = |requirement: Requirement, limit: &str| row([requirement.words(), limit]);
    let area = boundary::square_feet(|area| {
        let area = Some(area.clone());
        holds(
            Requirement::WellArea,
            Well {
                area,
                projection: None,
                width: None,
                ..good().well
            },
        )
    });
    let projection = boundary::inches(|side| {
        let well = Well {
            area: None,
            projection: Some(side.clone()),
            ..good().well
        };
        holds(Requirement::WellProjection, well)
    });
    let width = boundary::inches(|side| {
        let well = Well {
            area: None,
            width: Some(side.clone()),
            ..good().well
        };
        holds(Requirement::WellWidth, well)
    });
    let depth = boundary::inches(|depth| {
        holds(
            Requirement::WellLadder,
            Well {
                depth: Some(depth.clone()),
                ..good().well
            },
        )
    });
    vec![
        least(Requirement::WellArea, &area),
        least(Requirement::WellProjection, &projection),
        least(Requirement::WellWidth, &width),
        row(["depth of a well without ladder or steps", &depth]),
    ]
}

/// What a replacement that is too small for IRC 2021 would be told.
pub(crate) fn excuses() -> Vec<Row> {
    let casement = |largest, same, area: &str, change| Existing {
        largest_standard_size_fits: largest,
        same_operation: same,
        clear_area: Some(inches(area)),
        change_of_occupancy: change,
    };
    let rows = [
        (
            "the largest standard size, opens as before",
            casement(Some(true), Some(true), "900", Some(false)),
        ),
        (
            "opens otherwise, no less opening than before",
            casement(Some(true), Some(false), "820", Some(false)),
        ),
        (
            "opens otherwise, less opening than before",
            casement(Some(true), Some(false), "821", Some(false)),
        ),
        (
            "part of a change of occupancy",
            casement(Some(true), Some(true), "900", Some(true)),
        ),
        (
            "nobody knows whether it is the largest standard size",
            casement(None, Some(true), "900", Some(false)),
        ),
    ];
    rows.map(|(name, existing)| {
        let opening = Opening {
            clear_width: Some(Number::from(20).into()),
            clear_height: Some(Number::from(41).into()),
            existing: Some(existing),
            ..good()
        };
        let answer = escape::opening(Edition::Irc2021, &opening).unwrap();
        let short = yes_or_no(!answer.shortfalls.is_empty());
        row([name, short, &answer.excuse.sentence().unwrap()])
    })
    .to_vec()
}

#[test]
fn what_the_page_says_of_replacements_by_edition_is_what_the_values_say() {
    let scopes: Vec<Option<Scope>> = Edition::ALL
        .iter()
        .map(|edition| escape::values(*edition).replacement.map(|(_, scope)| scope))
        .collect();
    let expected = [
        Some(Scope::SillAndListedSections),
        Some(Scope::WholeSection),
        Some(Scope::NotSeen),
        Some(Scope::WholeSection),
        Some(Scope::WholeSection),
        None,
    ];
    assert_eq!(scopes, expected);
}

#[test]
fn a_fixed_stop_is_never_excused_as_the_page_says() {
    let opening = Opening {
        device: Some(Device::FixedStop),
        existing: Some(Existing {
            largest_standard_size_fits: Some(true),
            same_operation: Some(true),
            clear_area: Some(Number::from(820)),
            change_of_occupancy: Some(false),
        }),
        ..good()
    };
    let answer = escape::opening(Edition::Irc2021, &opening).unwrap();
    assert_eq!(answer.excuse, Excuse::NotExcused(vec![Condition::OnlySizes]));
}

#[test]
fn a_grade_floor_opening_is_one_as_far_above_the_ground_as_the_page_says() {
    let enough = |sill: &Number| {
        let opening = Opening {
            clear_width: Some(Number::from(20).into()),
            clear_height: Some(Number::from(36).into()),
            sill_above_grade: Some(sill.clone()),
            ..good()
        };
        !lacks(Edition::Ibc2021, &opening, Requirement::Area)
    };
    assert_eq!(boundary::inches(enough), "at most 44 in");
    assert_eq!(boundary::inches(|sill| enough(&-sill.clone())), "at most 44 in");
}
