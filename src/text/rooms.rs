//! The rooms and the rules over them: which opening meets what, which falls short, what is not known.
//!
//! ```text
//! Rooms
//!
//!   Back bedroom                                                          holds
//!     An escape opening: B1. B2 falls short and need not be one.
//! ```
//!
//! Always holds: every rule over a room that applies, or may, is said once for it.

use std::collections::BTreeSet;

use astragal_model::{
    Outcome, Read, RoomFinding, RoomState, RoomUnitFinding, Standing, Subject, Value, ValueType, Verdict,
};

use crate::quote::rooms::QuotedRoom;
use crate::quote::work::{Quote, QuotedUnit};
use crate::text::opening::{verdict_tone, verdict_words};
use crate::text::page::{Page, Tone};

/// LIMIT: how many sizes are said of an opening that falls short; all of them stand in the JSON.
const SIZES_MAX: usize = 4;

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    if quote.rooms.is_empty() {
        return;
    }
    page.blank();
    page.rule("-");
    page.heading(0, Tone::Strong, "Rooms");
    for room in &quote.rooms {
        page.blank();
        page.spread(2, verdict_tone(room.verdict()), &room.label, words(room));
        for finding in room.findings.iter().filter(|finding| is_said(room, finding)) {
            rule(page, quote, room, finding);
        }
    }
}

fn words(room: &QuotedRoom) -> &'static str {
    let failing = |standing: Standing| {
        let mut findings = room.findings.iter();
        findings.any(|finding| finding.standing == standing && finding.state == RoomState::Broken)
    };
    match room.verdict() {
        Verdict::Holds if failing(Standing::SignOff) => "holds, needs a sign-off",
        verdict => verdict_words(verdict),
    }
}

/// What only warns or asks for a signature is said where it fails, and where nothing that binds does.
fn is_said(room: &QuotedRoom, finding: &RoomFinding) -> bool {
    match finding.standing {
        Standing::Warns | Standing::SignOff => {
            finding.state != RoomState::Holds && room.verdict() == Verdict::Holds
        }
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
        Standing::NotApplied => "Not applied: ",
        Standing::Warns if finding.state != RoomState::Holds => "A warning: ",
        Standing::SignOff if finding.state != RoomState::Holds => "To be signed: ",
        _ => "",
    };
    page.entry(4, "- ", &format!("{set_aside}{text}"));
}

/// Which openings meet it, which fall short and by which sizes, which cannot be told.
fn sentences(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> String {
    let mut said = Vec::new();
    let holds = finding.state == RoomState::Holds;
    for ((tag, position), unit) in room.tags.iter().zip(&room.units).zip(&finding.units) {
        let quoted = quote.units.get(*position);
        said.push(match (unit, quoted) {
            (Some(unit), Some(quoted)) => match &unit.meets {
                Outcome::Known(Value::Bool(true)) => format!("{tag} is one"),
                Outcome::Unknown(_) if holds => format!("of {tag} it is not known, and need not be"),
                Outcome::Unknown(_) => format!("of {tag} it is not known"),
                _ if holds => format!("{tag} is none and need not be"),
                _ => format!("{tag} is none ({})", sizes(quoted, unit)),
            },
            _ => format!("{tag} is not checked, its catalog has no such rule"),
        });
    }
    said.join("; ")
}

/// The sizes that the condition reads, as far as they are known.
fn sizes(quoted: &QuotedUnit<'_>, unit: &RoomUnitFinding) -> String {
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
        "it does not open for it".to_owned()
    } else {
        sizes.join(", ")
    }
}

/// What is wanted, each once, with the openings that want it.
fn wants(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> Vec<String> {
    let mut labels: BTreeSet<String> = BTreeSet::new();
    for (position, unit) in room.units.iter().zip(&finding.units) {
        let Some(quoted) = quote.units.get(*position) else {
            continue;
        };
        let of_unit = unit.as_ref().and_then(|unit| unit.meets.wants());
        let of_room = finding.applies.wants();
        for want in of_unit.into_iter().chain(of_room).flatten() {
            labels.insert(quoted.used.catalog.show_want(want));
        }
    }
    labels.into_iter().collect()
}
