//! The rooms and the rules over them: which opening meets what, which falls short, what is not known.
//!
//! ```text
//! Rooms
//!
//!   Back bedroom                                                          holds
//!     - Escape opening, or one that may be excused: B1 meets it; B2 does not and need not. (escape-opening, ...)
//! ```
//!
//! Always holds: every rule over a room that applies, or may, is said once for it; what warns or asks for a signature, where it may
//! not hold.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    Outcome, Read, RoomFinding, RoomStanding, RoomState, RoomUnitFinding, Subject, Value, ValueType, Verdict,
};

use crate::quote::rooms::QuotedRoom;
use crate::quote::work::{Quote, QuotedUnit, SignOff};
use crate::text::opening::{verdict_tone, verdict_words};
use crate::text::page::{Page, Tone};

/// LIMIT: how many values are said of an opening that does not meet a rule; all of them stand in the JSON.
const SIZES_MAX: usize = 4;

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    let has_words = |room: &QuotedRoom| room.findings.iter().any(|finding| is_said(room, finding));
    if !quote.rooms.iter().any(has_words) {
        return;
    }
    page.blank();
    page.rule("-");
    page.heading(0, Tone::Strong, "Rooms");
    for room in quote.rooms.iter().filter(|room| has_words(room)) {
        page.blank();
        page.spread(2, verdict_tone(room.verdict()), &room.label, &words(room));
        for finding in room.findings.iter().filter(|finding| is_said(room, finding)) {
            rule(page, quote, room, finding);
        }
    }
}

fn words(room: &QuotedRoom) -> String {
    let verdict = match room.verdict() {
        Verdict::Holds if !room.set_aside().is_empty() => "holds without the rules that were not applied",
        verdict => verdict_words(verdict),
    };
    let sign_off = match room.sign_off() {
        SignOff::NotNeeded => "",
        SignOff::Needed => ", needs a sign-off",
        SignOff::MayBeNeeded => ", may need a sign-off",
    };
    format!("{verdict}{sign_off}")
}

/// What only warns is said where it may fail; what asks for a signature as well, unless the room does not hold anyway.
fn is_said(room: &QuotedRoom, finding: &RoomFinding) -> bool {
    match finding.standing {
        RoomStanding::Warns => finding.state != RoomState::Holds,
        RoomStanding::SignOff => finding.state != RoomState::Holds && room.verdict() != Verdict::Broken,
        _ => true,
    }
}

fn rule(page: &mut Page, quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) {
    let mut text = match finding.state {
        RoomState::Holds => format!("{}: {}.", finding.label, sentences(quote, room, finding)),
        RoomState::Undecided => {
            let said = sentences(quote, room, finding);
            format!("{}: cannot be decided yet; {said}.", finding.label)
        }
        RoomState::Broken => format!("{} {}.", finding.message, sentences(quote, room, finding)),
    };
    let wants = wants(quote, room, finding);
    if finding.state == RoomState::Undecided && !wants.is_empty() {
        text = format!("{text} Ask or measure: {}.", wants.join("; "));
    }
    let basis = finding.basis.as_ref().map(|basis| format!(", {basis}"));
    text = format!(
        "{text} ({}, authority: {}{})",
        finding.id,
        finding.authority,
        basis.unwrap_or_default()
    );
    let set_aside = match finding.standing {
        RoomStanding::NotApplied => "Not applied: ",
        RoomStanding::Warns if finding.state != RoomState::Holds => "A warning: ",
        RoomStanding::SignOff if finding.state == RoomState::Holds => "",
        RoomStanding::SignOff if room.sign_off() == SignOff::Needed && finding.state == RoomState::Broken => {
            "To be signed: "
        }
        RoomStanding::SignOff => "May have to be signed: ",
        _ => "",
    };
    page.entry(4, "- ", &format!("{set_aside}{text}"));
}

/// Which openings meet it, which do not and by which values, of which it is not known.
fn sentences(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> String {
    let mut said = Vec::new();
    let holds = finding.state == RoomState::Holds;
    for ((tag, position), unit) in room.tags.iter().zip(&room.units).zip(&finding.units) {
        let quoted = quote.units.get(*position);
        said.push(match (unit, quoted) {
            (Some(unit), Some(quoted)) => match &unit.meets {
                Outcome::Known(Value::Bool(true)) => format!("{tag} meets it"),
                Outcome::Unknown(_) if holds => format!("of {tag} it is not known, and need not be"),
                Outcome::Unknown(_) => format!("of {tag} it is not known"),
                _ if holds => format!("{tag} does not and need not"),
                Outcome::Undefined(cause) => {
                    format!("{tag} does not ({})", quoted.used.catalog.show_cause(cause))
                }
                Outcome::Known(_) => format!("{tag} does not{}", values(quoted, unit)),
            },
            _ => format!("{tag} is not checked, its catalog has no such rule"),
        });
    }
    said.join("; ")
}

/// The lengths and areas that the condition reads, as far as they are known; nothing where it reads none.
fn values(quoted: &QuotedUnit<'_>, unit: &RoomUnitFinding) -> String {
    let catalog = quoted.used.catalog;
    let is_size = |read: &&Read| {
        let known = read.outcome.known();
        let type_of = known.map(Value::value_type);
        matches!(type_of, Some(ValueType::Length | ValueType::Area))
    };
    let is_read_first = |read: &&Read| read.directly || !matches!(read.subject, Subject::Measure(_));
    let sizes = unit.reads.iter().filter(is_size).filter(is_read_first);
    let sizes = sizes.map(|read| {
        let label = catalog.label_of(read.subject);
        format!("{label} {}", catalog.show_outcome(read.subject, &read.outcome))
    });
    let sizes: Vec<String> = sizes.take(SIZES_MAX).collect();
    if sizes.is_empty() {
        String::new()
    } else {
        format!(" ({})", sizes.join(", "))
    }
}

/// What is wanted, each once, with the openings that want it where not all do.
fn wants(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> Vec<String> {
    let mut of_room: BTreeSet<String> = BTreeSet::new();
    let mut of_openings: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for ((tag, position), unit) in room.tags.iter().zip(&room.units).zip(&finding.units) {
        let Some(quoted) = quote.units.get(*position) else {
            continue;
        };
        let catalog = quoted.used.catalog;
        let Some(unit) = unit else { continue };
        // Where one opening says that it applies, what another waits for cannot matter.
        let of_rule = unit.applies.wants().filter(|_| finding.applies.is_none());
        let of_rule = of_rule.into_iter().flatten();
        of_room.extend(of_rule.map(|want| catalog.show_want(want)));
        let wants = unit.meets.wants();
        for want in wants.into_iter().flatten() {
            of_openings.entry(catalog.show_want(want)).or_default().push(tag);
        }
    }
    of_openings.retain(|label, _| !of_room.contains(label));
    let of_openings = of_openings.into_iter().map(|(label, tags)| {
        if room.tags.len() == 1 {
            label
        } else {
            format!("{label} ({})", tags.join(", "))
        }
    });
    of_room.into_iter().chain(of_openings).collect()
}
