//! The sheet of an order: its openings floor by floor and room by room, each with its drawing and what has to be looked at.

use std::collections::BTreeSet;

use astragal_drawing::{Cell, Floor, Picture, Room, Sheet, Standing, Status};
use astragal_model::measure_text::LengthUnit;
use astragal_model::{RuleState, Standing as Follows, Subject, Verdict, Want};

use super::elevation::elevation;
use crate::quote::words::CAUTION;
use crate::quote::work::{Quote, QuotedUnit, SignOff};

pub(super) fn sheet(quote: &Quote<'_>) -> Sheet {
    let order = quote.order;
    let mut lines = vec![format!("Order {}, as of {}", order.id, order.date)];
    for used in quote.used {
        let label = &used.catalog.declarations().label;
        lines.push(format!(
            "{label}, revision {}",
            short(&used.catalog.revision().to_string())
        ));
    }
    Sheet {
        title: order.label.clone(),
        lines,
        unit: quote
            .used
            .first()
            .map_or(LengthUnit::Inch, |used| used.catalog.declarations().length_unit),
        floors: floors(quote),
        notes: notes(quote),
    }
}

/// As much of a revision as other answers print.
fn short(revision: &str) -> &str {
    revision.get(..12).unwrap_or(revision)
}

/// Floors in the order of the file, then what stands on none.
fn floors(quote: &Quote<'_>) -> Vec<Floor> {
    let order = quote.order;
    let mut floors: Vec<Floor> = Vec::new();
    for floor in order.floors.iter().map(Some).chain([None]) {
        let of_floor = |room: &&astragal_model::Room| room.floor.as_ref() == floor.map(|floor| &floor.id);
        let mut rooms: Vec<Room> = order
            .rooms
            .iter()
            .filter(of_floor)
            .map(|room| Room {
                name: room.label.clone(),
                cells: cells(quote, Some(&room.id)),
            })
            .collect();
        if floor.is_none() {
            rooms.push(Room {
                name: "In no room".to_owned(),
                cells: cells(quote, None),
            });
        }
        rooms.retain(|room| !room.cells.is_empty());
        if !rooms.is_empty() {
            let name = floor.map_or_else(|| "On no floor".to_owned(), |floor| floor.label.clone());
            floors.push(Floor { name, rooms });
        }
    }
    floors
}

fn cells(quote: &Quote<'_>, room: Option<&astragal_model::Id>) -> Vec<Cell> {
    let units = quote.units.iter();
    let of_room = units.filter(|unit| unit.opening.room.as_ref() == room);
    of_room.map(cell).collect()
}

fn cell(unit: &QuotedUnit<'_>) -> Cell {
    let opening = unit.opening;
    Cell {
        tag: opening.tag.clone(),
        quantity: opening.quantity,
        picture: match elevation(unit) {
            Ok(elevation) => Picture::Drawn(Box::new(elevation)),
            Err(why) => Picture::NotDrawn(why),
        },
        status: Some(status(unit)),
        lines: chosen(unit),
        cautions: cautions(unit),
        notes: opening.note.iter().cloned().collect(),
    }
}

fn status(unit: &QuotedUnit<'_>) -> Status {
    let (words, standing) = match unit.verdict() {
        Verdict::Broken => ("does not hold", Standing::DoesNotHold),
        Verdict::Undecided => ("cannot be decided yet", Standing::Undecided),
        Verdict::Holds if unit.sign_off() == SignOff::Needed => ("holds, needs a sign-off", Standing::Holds),
        Verdict::Holds if unit.sign_off() == SignOff::MayBeNeeded => {
            ("holds, may need a sign-off", Standing::Holds)
        }
        Verdict::Holds => ("holds", Standing::Holds),
    };
    let mut words = words.to_owned();
    if let Some(other) = &unit.opening.alternate_of {
        words = format!("{words}, an alternate to {other}");
    }
    if !unit.opening.included {
        words = format!("{words}, not included");
    }
    Status { words, standing }
}

/// What was picked, in one line: `Casement; Hinged on the left; Satin nickel`.
fn chosen(unit: &QuotedUnit<'_>) -> Vec<String> {
    let catalog = unit.used.catalog;
    let picked = unit
        .filled
        .choices
        .iter()
        .filter(|(_, choice)| choice.is_picked());
    let labels = picked.filter_map(|(attribute, choice)| {
        let option = choice.option()?;
        let declared = catalog.declarations().attributes.at(attribute);
        let label = declared.option(option).map(|entry| entry.label.clone());
        let name = catalog.label_of(Subject::Attribute(attribute));
        Some(format!("{name}: {}", label.unwrap_or_else(|| option.to_string())))
    });
    let labels: Vec<String> = labels.collect();
    if labels.is_empty() {
        Vec::new()
    } else {
        vec![labels.join("; ")]
    }
}

/// What does not hold, what is wanted, what must be signed, and what only a waiver holds.
fn cautions(unit: &QuotedUnit<'_>) -> Vec<String> {
    let mut cautions: Vec<String> = Vec::new();
    let mut wants: BTreeSet<&Want> = BTreeSet::new();
    for finding in &unit.judgement.rules {
        match (&finding.state, finding.standing) {
            (RuleState::Undecided(more), Follows::Binds) => wants.extend(more),
            (RuleState::Broken | RuleState::NoRow(_), Follows::Binds | Follows::SignOff) => {
                cautions.push(finding.message.clone());
            }
            _ => {}
        }
    }
    if !wants.is_empty() {
        let wants = wants.into_iter().map(|want| unit.used.catalog.show_want(want));
        cautions.push(format!(
            "Ask or measure: {}.",
            wants.collect::<Vec<_>>().join("; ")
        ));
    }
    for finding in unit.waived() {
        cautions.push(format!("Held by a waiver: {}", finding.message));
    }
    cautions.dedup();
    cautions
}

fn notes(quote: &Quote<'_>) -> Vec<String> {
    let mut notes = Vec::new();
    for (verdict, words) in [
        (Verdict::Broken, "does not hold as a room"),
        (Verdict::Undecided, "cannot be decided as a room yet"),
    ] {
        let rooms = quote.rooms_that(verdict);
        notes.extend(
            rooms
                .into_iter()
                .map(|room| format!("{room}: {words}; see the quote.")),
        );
    }
    for room in quote
        .rooms
        .iter()
        .filter(|room| room.sign_off() != SignOff::NotNeeded)
    {
        notes.push(format!(
            "{}: needs or may need a sign-off as a room; see the quote.",
            room.label
        ));
    }
    if !quote.left_out.is_empty() {
        let left_out: Vec<&str> = quote.left_out.iter().map(astragal_model::Id::as_str).collect();
        notes.push(format!("The rules of {} were not applied.", left_out.join(", ")));
    }
    notes.push(CAUTION.to_owned());
    notes
}
