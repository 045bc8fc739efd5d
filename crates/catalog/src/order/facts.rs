//! Facts of one catalog at every place of a house, and which of them an opening inherits.
//!
//! The nearest place wins: the opening, then its room or face, then the floor of its room, then the house. With
//! `year_built = 1964` at the house and `year_built = "unknown"` at the room, an opening in that room does not know
//! the year. A room and a face that say different things about one opening are an error, unless the opening itself
//! says what holds.
//!
//! Always holds: a fact is set only where its declaration allows; what is written as `unknown` hides what lies
//! higher.
//! Cost: O(facts that are set) to type them, O(facts declared) an opening.
//! Source: MEANING, "Facts".

use std::collections::BTreeMap;

use astragal_model::{FactIndex, Indexed, Scope, Value};

use super::house::House;
use super::raw::{RawOrder, RawPlace, Report};
use super::vocabulary::Vocabulary;
use crate::finding::{Finding, Place};
use crate::nearest::{nearest, quoted_list};
use crate::site_values::{RawFact, RawFactValue, fact_value};

/// The facts of one catalog at the places of a house.
#[derive(Debug)]
pub(super) struct HouseFacts<'a> {
    house: Layer,
    floors: BTreeMap<&'a str, Layer>,
    rooms: BTreeMap<&'a str, Layer>,
    faces: BTreeMap<&'a str, Layer>,
}

/// The facts that are set at one place.
pub(super) type Layer = BTreeMap<FactIndex, Told>;

/// What one place says of a fact.
#[derive(Debug)]
pub(super) struct Told {
    /// `None` where it says `unknown`.
    pub(super) value: Option<Value>,
    /// As it was written, for findings.
    pub(super) written: String,
    pub(super) place: Place,
}

/// Where an opening is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Whereabouts<'a> {
    pub(super) tag: &'a str,
    pub(super) tag_place: &'a Place,
    pub(super) room: Option<&'a RawPlace>,
    pub(super) face: Option<&'a RawPlace>,
}

impl<'a> HouseFacts<'a> {
    /// Types the facts of all places by what a catalog declares; those that it does not declare are left to others.
    pub(super) fn new(
        order: &'a RawOrder,
        house: &House<'a>,
        words: &Vocabulary<'_>,
        report: Report<'_>,
    ) -> Self {
        let all = |places: &BTreeMap<&'a str, &'a RawPlace>, scope| {
            let layers = places
                .iter()
                .map(|(id, place)| (*id, layer(&place.facts, scope, words, report)));
            layers.collect()
        };
        Self {
            house: layer(&order.house, Scope::House, words, report),
            floors: all(&house.floors, Scope::Floor),
            rooms: all(&house.rooms, Scope::Room),
            faces: all(&house.faces, Scope::Face),
        }
    }

    /// The facts of an opening, inherited; `own` are those that it sets itself.
    pub(super) fn of_opening(
        &self,
        own: &Layer,
        at: Whereabouts<'_>,
        words: &Vocabulary<'_>,
        report: Report<'_>,
    ) -> Indexed<FactIndex, Option<Value>> {
        let room = at.room.and_then(|room| self.rooms.get(room.id.value.as_str()));
        let face = at.face.and_then(|face| self.faces.get(face.id.value.as_str()));
        let floor = at.room.and_then(|room| room.floor.as_ref());
        let floor = floor.and_then(|floor| self.floors.get(floor.value.as_str()));
        let facts = &words.catalog.declarations().facts;
        let values = facts.positions().map(|fact| {
            let of_room = room.and_then(|layer| layer.get(&fact));
            let of_face = face.and_then(|layer| layer.get(&fact));
            let own = own.get(&fact);
            if let (None, Some(of_room), Some(of_face)) = (own, of_room, of_face)
                && of_room.value != of_face.value
            {
                let name = facts.at(fact).id.as_str();
                report.findings.push(disagreement(name, at, of_room, of_face));
            }
            let nearest = own.or(of_room).or(of_face);
            let told = nearest
                .or_else(|| floor.and_then(|layer| layer.get(&fact)))
                .or_else(|| self.house.get(&fact));
            told.and_then(|told| told.value.clone())
        });
        values.collect::<Vec<_>>().into()
    }

    /// What a room says of a fact.
    pub(super) fn by_room(&self, room: &RawPlace, fact: FactIndex) -> Option<&Told> {
        self.rooms.get(room.id.value.as_str())?.get(&fact)
    }

    /// What a face says of a fact.
    pub(super) fn by_face(&self, face: &str, fact: FactIndex) -> Option<&Told> {
        self.faces.get(face)?.get(&fact)
    }

    /// What the floor of a room says of a fact, or the house, and which of them.
    pub(super) fn around_room(&self, room: &RawPlace, fact: FactIndex) -> Option<(&Told, String)> {
        let floor = room.floor.as_ref().map(|floor| floor.value.as_str());
        let by_floor = floor.and_then(|id| Some((self.floors.get(id)?.get(&fact)?, format!("floor `{id}`"))));
        by_floor.or_else(|| Some((self.house.get(&fact)?, "the house".to_owned())))
    }
}

/// The facts that an opening sets itself; each must be declared by its catalog.
pub(super) fn own_facts(tag: &str, facts: &[RawFact], words: &Vocabulary<'_>, report: Report<'_>) -> Layer {
    for fact in facts
        .iter()
        .filter(|fact| !words.facts.contains_key(fact.name.as_str()))
    {
        let message = format!(
            "opening `{tag}` sets fact `{}`, which catalog `{}` does not have",
            fact.name,
            words.id()
        );
        let help = name_help(&fact.name, words.facts.keys().copied(), "facts");
        report.findings.push(
            Finding::error("UNKNOWN_FACT", message)
                .at(fact.name_place.clone())
                .with_help(help),
        );
    }
    layer(facts, Scope::Opening, words, report)
}

/// Reports the facts of the house and its places that no catalog of the order declares.
pub(super) fn report_unknown(order: &RawOrder, words: &[&Vocabulary<'_>], report: Report<'_>) {
    let places = [&order.floors, &order.rooms, &order.faces].into_iter().flatten();
    let facts = order.house.iter().chain(places.flat_map(|place| &place.facts));
    for fact in facts {
        if words
            .iter()
            .any(|words| words.facts.contains_key(fact.name.as_str()))
        {
            continue;
        }
        let message = format!("no catalog of the order has a fact `{}`", fact.name);
        let known: std::collections::BTreeSet<&str> = words
            .iter()
            .flat_map(|words| words.facts.keys().copied())
            .collect();
        let help = name_help(&fact.name, known, "facts");
        report.findings.push(
            Finding::error("UNKNOWN_FACT", message)
                .at(fact.name_place.clone())
                .with_help(help),
        );
    }
}

/// "did you mean `x`?", or what there is.
pub(super) fn name_help<'a>(name: &str, known: impl IntoIterator<Item = &'a str>, what: &str) -> String {
    let known: Vec<&str> = known.into_iter().collect();
    match nearest(name, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => format!("it has no {what}"),
        None => format!("{what} are {}", quoted_list(known)),
    }
}

fn layer(facts: &[RawFact], scope: Scope, words: &Vocabulary<'_>, report: Report<'_>) -> Layer {
    let declared = words.catalog.declarations();
    let mut layer = Layer::new();
    for raw in facts {
        let Some(index) = words.facts.get(raw.name.as_str()).copied() else {
            continue;
        };
        let fact = declared.facts.at(index);
        if !fact.of.may_be_set_at(scope) {
            report.findings.push(wrong_scope(raw, fact.of, scope));
        }
        if let Some(value) = fact_value(raw, fact, declared.length_unit, report.findings) {
            let told = Told {
                value,
                written: written(&raw.value),
                place: raw.place.clone(),
            };
            layer.insert(index, told);
        }
    }
    layer
}

fn wrong_scope(raw: &RawFact, of: Scope, scope: Scope) -> Finding {
    let message = format!(
        "fact `{}` is set at {}; the highest place for it is {}",
        raw.name,
        with_article(scope),
        with_article(of)
    );
    let help = match of {
        Scope::Opening => "set it at each opening".to_owned(),
        Scope::Room | Scope::Face => format!("set it at {} or an opening", with_article(of)),
        Scope::Floor => "set it at a floor, a room, a face or an opening".to_owned(),
        Scope::House => "set it at the house or anything in it".to_owned(),
    };
    Finding::error("FACT_SCOPE", message)
        .at(raw.name_place.clone())
        .with_help(help)
}

fn with_article(scope: Scope) -> String {
    match scope {
        Scope::House => "the house".to_owned(),
        Scope::Opening => "an opening".to_owned(),
        Scope::Floor | Scope::Room | Scope::Face => format!("a {}", scope.word()),
    }
}

fn disagreement(fact: &str, at: Whereabouts<'_>, room: &Told, face: &Told) -> Finding {
    let name = |place: Option<&RawPlace>| place.map_or("", |place| place.id.value.as_str()).to_owned();
    let (room_id, face_id) = (name(at.room), name(at.face));
    let message = format!(
        "fact `{fact}` of opening `{}` is {} by room `{room_id}` and {} by face `{face_id}`",
        at.tag, room.written, face.written
    );
    Finding::error("FACTS_DISAGREE", message)
        .at(at.tag_place.clone())
        .with_related(
            room.place.clone(),
            format!("room `{room_id}` says {}", room.written),
        )
        .with_related(
            face.place.clone(),
            format!("face `{face_id}` says {}", face.written),
        )
        .with_help(format!(
            "correct one of the two, or set `{fact}` at the opening itself"
        ))
}

fn written(value: &RawFactValue) -> String {
    match value {
        RawFactValue::Bool(value) => format!("`{value}`"),
        RawFactValue::Number(text) | RawFactValue::Text(text) => format!("`{text}`"),
        RawFactValue::Date(date) => format!("`{date}`"),
    }
}
