//! `[[room_rule]]`: what one opening of a room at least must meet.

use astragal_model::Effect;

use super::{Fields, Head, IdKind};
use crate::typed::{Parsed, PlacedText};

/// `[[room_rule]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawRoomRule {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) authority: Option<PlacedText>,
    pub(crate) effect: Effect,
    pub(crate) when: Option<Parsed>,
    pub(crate) at_least_one: Option<Parsed>,
    pub(crate) message: Option<PlacedText>,
    pub(crate) basis: Option<String>,
}

pub(super) fn room_rule(mut fields: Fields<'_>) -> Option<RawRoomRule> {
    let head = fields.head(IdKind::Rule);
    let label = fields.label();
    let authority = fields.text("authority");
    let effect = fields.word("effect", &super::rule::EFFECTS);
    let when = fields.expression("when");
    let at_least_one = if fields.reader.requires("at_least_one") {
        fields.expression("at_least_one")
    } else {
        None
    };
    let message = fields.required_text("message");
    let basis = fields.plain("basis");
    fields.reader.finish();
    Some(RawRoomRule {
        head: head?,
        label,
        authority,
        effect: effect.unwrap_or_default(),
        when,
        at_least_one,
        message,
        basis,
    })
}
