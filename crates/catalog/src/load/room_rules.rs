//! Rules over a room.
//!
//! Always holds: when such a rule applies, and what it says, is read from what may be set at the house, a floor or a room. It is the
//! same for the whole room: the reader of orders refuses an opening that says something else of itself, apart from `unknown`.

use astragal_model::{Expression, FactIndex, Id, Piece, RoomRule, Scope, Subject, Template};

use super::resolver::Resolver;
use super::rules::{authority, message};
use crate::declare::{Declared, RawRoomRule};
use crate::finding::{Finding, Place};

/// The rules over a room; `None` means that findings say why.
pub(super) fn room_rules(declared: &Declared, resolver: &Resolver<'_>) -> Option<Vec<RoomRule>> {
    let read = declared
        .room_rules
        .iter()
        .map(|raw| room_rule(raw, declared, resolver));
    let read: Vec<Option<RoomRule>> = read.collect();
    read.into_iter().collect()
}

fn room_rule(raw: &RawRoomRule, declared: &Declared, resolver: &Resolver<'_>) -> Option<RoomRule> {
    let authority = authority(raw.authority.as_ref(), resolver, &Id::new("plant"));
    let when = resolver.when(None, raw.when.as_ref());
    let scope = resolver.scope(None);
    let at_least_one = raw
        .at_least_one
        .as_ref()
        .and_then(|parsed| resolver.condition(&scope, parsed));
    let text = raw
        .message
        .as_ref()
        .and_then(|text| message(text, None, None, resolver));
    let (when, text) = (when?, text?);
    let when_place = raw.when.as_ref().map(|parsed| &parsed.text.place);
    let message_place = raw.message.as_ref().map(|text| &text.place);
    let reads = when.as_ref().map(Expression::reads).unwrap_or_default();
    let asks = when.as_ref().map(Expression::asks).unwrap_or_default();
    let attributes = asks.into_iter().map(Subject::Attribute);
    let is_of_room = of_room(
        reads.into_iter().chain(attributes),
        when_place,
        raw,
        declared,
        resolver,
    ) & of_room(named_in(&text), message_place, raw, declared, resolver);
    is_of_room.then_some(())?;
    Some(RoomRule {
        id: raw.head.id.clone(),
        label: raw.label.clone(),
        authority: authority?,
        effect: raw.effect,
        when,
        at_least_one: at_least_one?,
        message: text,
        basis: raw.basis.clone(),
    })
}

fn named_in(template: &Template) -> impl Iterator<Item = Subject> {
    template.pieces.iter().filter_map(|piece| match piece {
        Piece::Text(_) => None,
        Piece::Value(subject) => Some(*subject),
        Piece::Property(attribute, _) => Some(Subject::Attribute(*attribute)),
    })
}

/// Whether all that is read may be set at the house, a floor or a room.
fn of_room(
    reads: impl IntoIterator<Item = Subject>,
    place: Option<&Place>,
    raw: &RawRoomRule,
    declared: &Declared,
    resolver: &Resolver<'_>,
) -> bool {
    let strange = reads.into_iter().find(|subject| match subject {
        Subject::Fact(fact) => !is_of_room(*fact, declared),
        _ => true,
    });
    if strange.is_none() {
        return true;
    }
    let text = format!(
        "room rule `{}` reads something that may differ from opening to opening",
        raw.head.id
    );
    let help = "`when` and `message` of a room rule read facts of the house, a floor or a room; \
                what one opening must meet stands in `at_least_one`";
    let finding = Finding::error("NOT_OF_A_ROOM", text).at_if_known(place.cloned());
    resolver.findings.push(finding.with_help(help));
    false
}

fn is_of_room(fact: FactIndex, declared: &Declared) -> bool {
    let raw = declared.facts.get(fact.0);
    raw.is_some_and(|raw| matches!(raw.of, Scope::House | Scope::Floor | Scope::Room))
}
