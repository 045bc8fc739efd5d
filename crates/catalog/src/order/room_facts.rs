//! What a rule over a room reads is one for the whole room.
//!
//! The room says `room_use = "sleeping"`, its only opening says `room_use = "other"` of itself: the opening would silence the rule
//! that asks for an escape opening. So it is an error, which names both places.
//!
//! Always holds: an opening contradicts its room where it says itself, or by its face, another value than the room, the floor or the
//! house does, or where none of them knows, than an opening of the room before it. `unknown` contradicts nothing; an opening in no
//! room is a room by itself. Only what the `when` or the `message` of a room rule of the unit's catalog reads is looked at.
//! Cost: O(openings x facts that such rules read).
//! Source: docs/meaning.md, "Rules over a room".

use std::collections::BTreeMap;

use astragal_model::{Declarations, Expression, FactIndex, Id, Piece, RoomRule, Subject, Value};

use super::facts::{Told, own_facts};
use super::house::House;
use super::opening::{KnownCatalog, KnownCatalogs};
use super::raw::{RawOpening, RawOrder, RawPlace, Report};
use crate::finding::{Finding, Findings, Place};

/// What somebody says of a fact, and who.
struct Said {
    value: Option<Value>,
    written: String,
    place: Place,
    who: String,
}

impl Said {
    fn new(told: &Told, who: String) -> Self {
        Self {
            value: told.value.clone(),
            written: told.written.clone(),
            place: told.place.clone(),
            who,
        }
    }
}

/// Reports openings that say something else than their room of what a rule over the room reads.
pub(super) fn check(order: &RawOrder, house: &House<'_>, catalogs: &KnownCatalogs<'_>, report: Report<'_>) {
    // What the openings of a room have said of themselves, by the room and the name of the fact.
    let mut earlier: BTreeMap<(&str, &str), Said> = BTreeMap::new();
    for opening in &order.openings {
        let room = opening.room.as_ref().map(|room| room.value.as_str());
        let catalog = opening.units.iter().find_map(|unit| unit.catalog.as_ref());
        let known = catalog.and_then(|name| catalogs.get(name.value.as_str())?.as_ref());
        let room = room.and_then(|room| house.rooms.get(room));
        if let (Some(room), Some(known)) = (room, known) {
            check_opening(opening, room, known, &mut earlier, report);
        }
    }
}

fn check_opening<'a>(
    opening: &'a RawOpening,
    room: &'a RawPlace,
    known: &KnownCatalog<'a>,
    earlier: &mut BTreeMap<(&'a str, &'a str), Said>,
    report: Report<'_>,
) {
    // What cannot be read in them has been reported where the opening was read.
    let ignored = Findings::new();
    let quiet = Report {
        findings: &ignored,
        ..report
    };
    let own = own_facts(&opening.tag.value, &opening.facts, &known.words, quiet);
    let face = opening.face.as_ref().map(|face| face.value.as_str());
    let declared = known.words.catalog.declarations();
    let tag = &opening.tag.value;
    for (fact, rule) in read_by_rules(declared) {
        let by_room = known.facts.by_room(room, fact);
        // A room and a face that disagree have been reported.
        let by_face = || {
            let face = face.filter(|_| by_room.is_none())?;
            let told = known.facts.by_face(face, fact)?;
            Some(Said::new(told, format!("face `{face}` of opening `{tag}`")))
        };
        let by_itself = own
            .get(&fact)
            .map(|told| Said::new(told, format!("opening `{tag}`")));
        let Some(says) = by_itself.or_else(by_face).filter(|says| says.value.is_some()) else {
            continue;
        };
        let name = declared.facts.at(fact).id.as_str();
        let around = by_room.map(|told| Said::new(told, format!("room `{}`", room.id.value)));
        let around = around.or_else(|| {
            let (told, who) = known.facts.around_room(room, fact)?;
            Some(Said::new(told, who))
        });
        let key = (room.id.value.as_str(), name);
        let around = around.filter(|around| around.value.is_some());
        let Some(other) = around.as_ref().or_else(|| earlier.get(&key)) else {
            earlier.insert(key, says);
            continue;
        };
        if other.value != says.value {
            report.findings.push(differs(name, rule, &says, other));
        }
    }
}

/// The facts that `when` and `message` of the rules over a room read, each with the first such rule.
fn read_by_rules(declared: &Declarations) -> BTreeMap<FactIndex, &Id> {
    let mut read = BTreeMap::new();
    for rule in &declared.room_rules {
        for fact in facts_of(rule) {
            read.entry(fact).or_insert(&rule.id);
        }
    }
    read
}

fn facts_of(rule: &RoomRule) -> Vec<FactIndex> {
    let of_when = rule.when.as_ref().map(Expression::reads).unwrap_or_default();
    let of_message = rule.message.pieces.iter().filter_map(|piece| match piece {
        Piece::Value(subject) => Some(*subject),
        Piece::Text(_) | Piece::Property(..) => None,
    });
    let subjects = of_when.into_iter().chain(of_message);
    subjects
        .filter_map(|subject| match subject {
            Subject::Fact(fact) => Some(fact),
            _ => None,
        })
        .collect()
}

fn differs(fact: &str, rule: &Id, says: &Said, other: &Said) -> Finding {
    let message = format!(
        "fact `{fact}` is {} by {} and {} by {}; room rule `{rule}` reads it for the whole room",
        says.written, says.who, other.written, other.who
    );
    Finding::error("ROOM_FACT_DIFFERS", message)
        .at(says.place.clone())
        .with_related(other.place.clone(), format!("{} says {}", other.who, other.written))
        .with_help(format!(
            "correct one of the two, leave `{fact}` out here, or write `unknown` while nobody knows; an opening of another room \
             names that room"
        ))
}
