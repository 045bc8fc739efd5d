//! The rooms of an order, and the rules over them.
//!
//! A bedroom holds when one of its openings is large enough to escape by; the others need not be.
//!
//! Always holds: only openings that count in the order are asked; an opening that stands in no room is asked by itself. Units are
//! judged as they are quoted: nothing is searched for.
//! Cost: each unit is settled once for its room.

use std::collections::BTreeSet;

use astragal_model::{
    Authorities, Id, Order, RoomFinding, RoomStanding, RoomState, RoomUnit, Verdict, judge_room,
};

use crate::quote::work::{QuotedUnit, SignOff};

/// A room with the rules that apply to it, or may.
pub(crate) struct QuotedRoom {
    /// The id of the room; `None` for an opening that stands in none.
    pub(crate) id: Option<String>,
    /// What a person reads.
    pub(crate) label: String,
    /// The tags of its openings, in the order of the file.
    pub(crate) tags: Vec<String>,
    /// The positions of its units in the quote, in the same order.
    pub(crate) units: Vec<usize>,
    /// The rules, in the order of the catalog.
    pub(crate) findings: Vec<RoomFinding>,
}

impl QuotedRoom {
    /// How the room stands by the rules that bind.
    pub(crate) fn verdict(&self) -> Verdict {
        let binding = self
            .findings
            .iter()
            .filter(|finding| finding.standing == RoomStanding::Binds);
        let states = binding.map(|finding| match finding.state {
            RoomState::Holds => Verdict::Holds,
            RoomState::Undecided => Verdict::Undecided,
            RoomState::Broken => Verdict::Broken,
        });
        states.max().unwrap_or(Verdict::Holds)
    }
}

impl QuotedRoom {
    /// Whether somebody must sign for the room before it is ordered; nothing where it does not hold anyway.
    pub(crate) fn sign_off(&self) -> SignOff {
        if self.verdict() == Verdict::Broken {
            return SignOff::NotNeeded;
        }
        let signing = self
            .findings
            .iter()
            .filter(|finding| finding.standing == RoomStanding::SignOff);
        let needs = signing.map(|finding| match finding.state {
            RoomState::Holds => SignOff::NotNeeded,
            RoomState::Undecided => SignOff::MayBeNeeded,
            RoomState::Broken => SignOff::Needed,
        });
        let needs = needs.max().unwrap_or(SignOff::NotNeeded);
        match self.verdict() {
            // Who must sign depends on what is not known.
            Verdict::Undecided => needs.min(SignOff::MayBeNeeded),
            _ => needs,
        }
    }

    /// The ids of the rules that were not applied and would not hold.
    pub(crate) fn set_aside(&self) -> BTreeSet<&Id> {
        let aside = self.findings.iter().filter(|finding| {
            finding.standing == RoomStanding::NotApplied && finding.state == RoomState::Broken
        });
        aside.map(|finding| &finding.id).collect()
    }
}

/// The rooms to which a rule applies, or may, in the order of their first opening.
pub(crate) fn of(order: &Order, units: &[QuotedUnit<'_>], authorities: &Authorities) -> Vec<QuotedRoom> {
    let mut rooms = grouped(order, units);
    for room in &mut rooms {
        room.findings = judged(room, units, authorities);
    }
    rooms.retain(|room| !room.findings.is_empty());
    rooms
}

fn grouped(order: &Order, units: &[QuotedUnit<'_>]) -> Vec<QuotedRoom> {
    let mut rooms: Vec<QuotedRoom> = Vec::new();
    for (position, unit) in units.iter().enumerate() {
        if !unit.opening.included {
            continue;
        }
        let id = unit.opening.room.as_ref().map(ToString::to_string);
        let tag = unit.opening.tag.clone();
        if let Some(known) = rooms.iter_mut().find(|room| id.is_some() && room.id == id) {
            known.tags.push(tag);
            known.units.push(position);
            continue;
        }
        let room = order
            .rooms
            .iter()
            .find(|room| unit.opening.room.as_ref() == Some(&room.id));
        rooms.push(QuotedRoom {
            id,
            label: room.map_or_else(|| format!("{tag}, in no room"), |room| room.label.clone()),
            tags: vec![tag],
            units: vec![position],
            findings: Vec::new(),
        });
    }
    rooms
}

/// Judges the rules over a room.
fn judged(room: &QuotedRoom, units: &[QuotedUnit<'_>], authorities: &Authorities) -> Vec<RoomFinding> {
    let units: Vec<&QuotedUnit<'_>> = room
        .units
        .iter()
        .filter_map(|position| units.get(*position))
        .collect();
    let settings: Vec<_> = units
        .iter()
        .map(|unit| {
            unit.used
                .setting(unit.opening, unit.request, authorities, unit.date)
        })
        .collect();
    let asked: Vec<RoomUnit<'_>> = units
        .iter()
        .zip(&settings)
        .map(|(unit, setting)| RoomUnit {
            setting,
            unit: &unit.filled,
        })
        .collect();
    judge_room(&asked)
}
