//! The sheet of an order: its openings floor by floor and room by room, each with its drawing and what has to be looked at.

use std::collections::BTreeSet;

use astragal_drawing::{Cell, Floor, Picture, Room, Sheet, Standing, Status};
use astragal_model::measure_text::LengthUnit;
use astragal_model::{Choice, Origin, RuleState, Standing as Follows, Verdict, Want, Wants};

use super::elevation::{because, elevation};
use crate::quote::words::CAUTION;
use crate::quote::work::{Quote, QuotedUnit, SignOff};
use crate::text::chosen::{chosen_line, filled_line, is_shown};

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
            Err(why) => Picture::NotDrawn(because(unit.used.catalog, &why)),
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

/// What was picked, in one line, and what was filled in beside the standard: `Chosen: Operation: Casement; Handle: Lever`, then
/// `Filled in: Hinge: Egress hinge (the standard is Ordinary hinge)`.
fn chosen(unit: &QuotedUnit<'_>) -> Vec<String> {
    let (mut picked, mut filled_in) = (Vec::new(), Vec::new());
    for (attribute, choice) in unit.filled.choices.iter() {
        match choice {
            Choice::Chosen {
                origin: Origin::Picked { .. },
                ..
            } => picked.extend(chosen_line(unit, attribute)),
            Choice::Chosen {
                origin: Origin::Completed,
                ..
            } if is_shown(unit, attribute) => filled_in.extend(filled_line(unit, attribute)),
            _ => {}
        }
    }
    let lines = [("Chosen", picked), ("Filled in", filled_in)].into_iter();
    let lines = lines.filter(|(_, choices)| !choices.is_empty());
    lines
        .map(|(heading, choices)| format!("{heading}: {}", choices.join("; ")))
        .collect()
}

/// What does not hold, what is wanted, what must be signed, what only a waiver holds, and what is warned of.
fn cautions(unit: &QuotedUnit<'_>) -> Vec<String> {
    let mut cautions: Vec<String> = Vec::new();
    let mut wants: BTreeSet<&Want> = BTreeSet::new();
    let (mut signed, mut warned) = (Vec::new(), Vec::new());
    for finding in &unit.judgement.rules {
        let message = &finding.message;
        match (&finding.state, finding.standing) {
            (RuleState::Undecided(more), Follows::Binds) => wants.extend(more),
            (_, Follows::Binds) => cautions.push(message.clone()),
            (RuleState::Undecided(more), Follows::SignOff) => {
                signed.push(("May need a sign-off", Some(more), message));
            }
            (_, Follows::SignOff) => signed.push(("Needs a sign-off", None, message)),
            (RuleState::Undecided(more), Follows::Warns) => {
                warned.push(("May be a warning", Some(more), message));
            }
            (_, Follows::Warns) => warned.push(("Warning", None, message)),
            _ => {}
        }
    }
    if unit.completion.is_impossible {
        cautions.push("Nothing holds with what is pinned; see the quote.".to_owned());
    } else if let Some(least) = unit.completion.least_changes {
        cautions.push(format!(
            "Choices that must change: {least} at least; see the quote."
        ));
    }
    if !wants.is_empty() {
        let wants = wants.iter().map(|want| unit.used.catalog.show_want(want));
        cautions.push(format!(
            "Ask or measure: {}.",
            wants.collect::<Vec<_>>().join("; ")
        ));
    }
    let told = |(heading, more, message): (&str, Option<&Wants>, &String)| {
        let waits = more.map(|more| not_known(unit, more, &wants));
        format!("{heading}{}: {message}", waits.unwrap_or_default())
    };
    cautions.extend(signed.into_iter().map(told));
    for finding in unit.waived() {
        cautions.push(format!("Held by a waiver: {}", finding.message));
    }
    cautions.extend(warned.into_iter().map(told));
    cautions.dedup();
    cautions
}

/// ` (not known: Zone)`, without what is `asked` for anyhow.
fn not_known(unit: &QuotedUnit<'_>, wants: &Wants, asked: &BTreeSet<&Want>) -> String {
    let more = wants.iter().filter(|want| !asked.contains(want));
    let more: Vec<String> = more.map(|want| unit.used.catalog.show_want(want)).collect();
    if more.is_empty() {
        return String::new();
    }
    format!(" (not known: {})", more.join(", "))
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
