//! The floors, rooms and faces of a house.
//!
//! Always holds: ids of floors, of rooms and of faces are each unique; the floor of a room is one of the floors.
//! Cost: O(places x log places).
//! Source: MEANING, "Facts".

use std::collections::BTreeMap;

use astragal_model::{Id, Place, Room};

use super::raw::{RawOrder, RawPlace, Report};
use crate::nearest::{nearest, quoted_list};
use crate::tree::Spanned;

/// The places of a house, as they were written, by id.
#[derive(Debug)]
pub(super) struct House<'a> {
    pub(super) floors: BTreeMap<&'a str, &'a RawPlace>,
    pub(super) rooms: BTreeMap<&'a str, &'a RawPlace>,
    pub(super) faces: BTreeMap<&'a str, &'a RawPlace>,
}

impl<'a> House<'a> {
    /// Looks at the places of an order.
    pub(super) fn new(order: &'a RawOrder, report: Report<'_>) -> Self {
        let house = Self {
            floors: by_id(&order.floors, "floor", report),
            rooms: by_id(&order.rooms, "room", report),
            faces: by_id(&order.faces, "face", report),
        };
        for room in &order.rooms {
            let of = format!("room `{}`", room.id.value);
            find(room.floor.as_ref(), &house.floors, "floor", &of, report);
        }
        house
    }
}

/// The place that a text names, if it names one; a name that leads nowhere is a finding.
pub(super) fn find<'a>(
    name: Option<&Spanned<String>>,
    known: &BTreeMap<&str, &'a RawPlace>,
    kind: &str,
    of: &str,
    report: Report<'_>,
) -> Option<&'a RawPlace> {
    let name = name?;
    if let Some(place) = known.get(name.value.as_str()) {
        return Some(place);
    }
    let code = match kind {
        "floor" => "UNKNOWN_FLOOR",
        "room" => "UNKNOWN_ROOM",
        _ => "UNKNOWN_FACE",
    };
    let message = format!(
        "{of} names {kind} `{}`, which the order does not have",
        name.value
    );
    let help = match nearest(&name.value, known.keys().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => format!("add a `[[{kind}]]` with this id, or leave the name out"),
        None => format!("the order has {}", quoted_list(known.keys().copied())),
    };
    report.error(code, &name.span, message, help);
    None
}

/// Floors or faces as the model has them.
pub(super) fn places(raw: &[RawPlace]) -> Vec<Place> {
    let place = |place: &RawPlace| Place {
        id: Id::new(&place.id.value),
        label: place.label.clone(),
    };
    raw.iter().map(place).collect()
}

/// Rooms as the model has them.
pub(super) fn rooms(raw: &[RawPlace]) -> Vec<Room> {
    let room = |room: &RawPlace| Room {
        id: Id::new(&room.id.value),
        label: room.label.clone(),
        floor: room.floor.as_ref().map(|floor| Id::new(&floor.value)),
    };
    raw.iter().map(room).collect()
}

fn by_id<'a>(places: &'a [RawPlace], kind: &str, report: Report<'_>) -> BTreeMap<&'a str, &'a RawPlace> {
    let mut known: BTreeMap<&str, &RawPlace> = BTreeMap::new();
    for place in places {
        if let Some(first) = known.get(place.id.value.as_str()) {
            let id = &place.id.value;
            report.error_after(
                "DUPLICATE_ID",
                &place.id.span,
                format!("two {kind}s have the id `{id}`"),
                "give one of them another id",
                (&first.id.span, format!("`{id}` stands here first")),
            );
            continue;
        }
        known.insert(&place.id.value, place);
    }
    known
}
