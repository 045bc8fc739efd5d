//! The rooms and the rules over them, for a program.

use astragal_model::{Outcome, RoomFinding, RoomStanding, RoomState, Value};
use serde::Serialize;

use crate::json::judgement::{ReadAnswer, read_answer};
use crate::json::quote::verdict_word;
use crate::json::values::{Wanted, wants};
use crate::quote::rooms::QuotedRoom;
use crate::quote::work::Quote;

/// A room to which a rule applies, or may.
#[derive(Serialize)]
pub(super) struct RoomAnswer {
    /// Null for an opening that stands in no room.
    id: Option<String>,
    label: String,
    openings: Vec<String>,
    verdict: &'static str,
    rules: Vec<RoomRuleAnswer>,
}

#[derive(Serialize)]
struct RoomRuleAnswer {
    id: String,
    label: String,
    authority: String,
    basis: Option<String>,
    /// `holds`, `undecided` or `broken`.
    state: &'static str,
    standing: &'static str,
    /// What is said where it does not hold, or may not; null where it holds.
    message: Option<String>,
    /// Null where it is not known whether the rule applies.
    applies: Option<bool>,
    openings: Vec<RoomOpeningAnswer>,
}

#[derive(Serialize)]
struct RoomOpeningAnswer {
    tag: String,
    /// `yes`, `no`, `not_known`, or `not_checked` where the opening's catalog does not have the rule.
    meets: &'static str,
    wants: Vec<Wanted>,
    reads: Vec<ReadAnswer>,
}

pub(super) fn rooms(quote: &Quote<'_>) -> Vec<RoomAnswer> {
    let answer = |room: &QuotedRoom| RoomAnswer {
        id: room.id.clone(),
        label: room.label.clone(),
        openings: room.tags.clone(),
        verdict: verdict_word(room.verdict()),
        rules: room
            .findings
            .iter()
            .map(|finding| rule(quote, room, finding))
            .collect(),
    };
    quote.rooms.iter().map(answer).collect()
}

fn rule(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> RoomRuleAnswer {
    RoomRuleAnswer {
        id: finding.id.to_string(),
        label: finding.label.clone(),
        authority: finding.authority.to_string(),
        basis: finding.basis.clone(),
        state: match finding.state {
            RoomState::Holds => "holds",
            RoomState::Undecided => "undecided",
            RoomState::Broken => "broken",
        },
        standing: match finding.standing {
            RoomStanding::Binds => "binds",
            RoomStanding::Warns => "warns",
            RoomStanding::SignOff => "sign_off",
            RoomStanding::NotApplied => "not_applied",
        },
        message: (finding.state != RoomState::Holds).then(|| finding.message.clone()),
        applies: finding.applies,
        openings: openings(quote, room, finding),
    }
}

fn openings(quote: &Quote<'_>, room: &QuotedRoom, finding: &RoomFinding) -> Vec<RoomOpeningAnswer> {
    let mut answers = Vec::new();
    for ((tag, position), unit) in room.tags.iter().zip(&room.units).zip(&finding.units) {
        let Some(quoted) = quote.units.get(*position) else {
            continue;
        };
        let meets = unit.as_ref().map(|unit| &unit.meets);
        // Where one opening says that the rule applies, what another waits for cannot matter.
        let applies = unit.as_ref().filter(|_| finding.applies.is_none());
        let applies = applies.and_then(|unit| unit.applies.wants());
        let wanted = meets.and_then(Outcome::wants).into_iter().chain(applies);
        answers.push(RoomOpeningAnswer {
            tag: tag.clone(),
            meets: match meets {
                None => "not_checked",
                Some(Outcome::Known(Value::Bool(true))) => "yes",
                Some(Outcome::Unknown(_)) => "not_known",
                Some(_) => "no",
            },
            wants: wants(quoted, &wanted.flatten().cloned().collect()),
            reads: unit
                .iter()
                .flat_map(|unit| &unit.reads)
                .map(|read| read_answer(quoted, read))
                .collect(),
        });
    }
    answers
}
