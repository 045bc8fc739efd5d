//! The order and its openings for a program.

use astragal_model::{Id, Place, Room, Subject, Waiver};
use serde::Serialize;

use crate::json::chosen::{ChoiceAnswer, PickAnswer};
use crate::json::completion::CompletionAnswer;
use crate::json::extra::{Numbers, Untouched};
use crate::json::judgement::{FigureAnswer, NoticeAnswer, OpenAnswer, RuleAnswer};
use crate::json::prices::PriceAnswer;
use crate::json::quote::verdict_word;
use crate::json::readings::{ReadingsAnswer, readings};
use crate::json::values::{Amount, Named, TypedValue, amount, named, value};
use crate::quote::work::{Quote, QuotedUnit};

#[derive(Serialize)]
pub(crate) struct OrderAnswer {
    id: String,
    label: String,
    date: String,
    date_given: bool,
    currency: &'static str,
    floors: Vec<Named>,
    rooms: Vec<RoomAnswer>,
    faces: Vec<Named>,
    extra: Untouched,
}

#[derive(Serialize)]
struct RoomAnswer {
    id: String,
    label: String,
    floor: Option<String>,
}

#[derive(Serialize)]
pub(crate) struct OpeningAnswer {
    tag: String,
    quantity: u32,
    included: bool,
    alternate_of: Option<String>,
    room: Option<String>,
    face: Option<String>,
    verdict: &'static str,
    /// The total of one unit times the quantity.
    total: Option<Amount>,
    measures: Vec<MeasureAnswer>,
    /// Null where sizes were given instead.
    readings: Option<ReadingsAnswer>,
    facts: Vec<FactAnswer>,
    unit: UnitAnswer,
    note: Option<String>,
    extra: Untouched,
}

#[derive(Serialize)]
struct MeasureAnswer {
    id: String,
    label: String,
    value: Option<TypedValue>,
    deducted_by: Option<&'static str>,
}

#[derive(Serialize)]
struct FactAnswer {
    id: String,
    label: String,
    value: Option<TypedValue>,
}

#[derive(Serialize)]
struct UnitAnswer {
    catalog: String,
    picks: Vec<PickAnswer>,
    pins: Vec<String>,
    waivers: Vec<WaiverAnswer>,
    choices: Vec<ChoiceAnswer>,
    completion: CompletionAnswer,
    figures: Vec<FigureAnswer>,
    rules: Vec<RuleAnswer>,
    open: Vec<OpenAnswer>,
    price: PriceAnswer,
    notices: Vec<NoticeAnswer>,
    authorities_not_applied: Vec<String>,
}

#[derive(Serialize)]
struct WaiverAnswer {
    rule: String,
    reference: String,
    from: String,
    until: Option<String>,
    used: bool,
}

impl OrderAnswer {
    pub(crate) fn new(quote: &Quote<'_>, numbers: &mut Numbers) -> Self {
        let order = quote.order;
        let place = |place: &Place| Named {
            id: place.id.to_string(),
            label: place.label.clone(),
        };
        let room = |room: &Room| RoomAnswer {
            id: room.id.to_string(),
            label: room.label.clone(),
            floor: room.floor.as_ref().map(Id::to_string),
        };
        Self {
            id: order.id.clone(),
            label: order.label.clone(),
            date: order.date.to_string(),
            date_given: quote.date_given,
            currency: order.currency.code(),
            floors: order.floors.iter().map(place).collect(),
            rooms: order.rooms.iter().map(room).collect(),
            faces: order.faces.iter().map(place).collect(),
            extra: numbers.untouched(&order.extra),
        }
    }
}

impl OpeningAnswer {
    pub(crate) fn new(quote: &Quote<'_>, unit: &QuotedUnit<'_>, numbers: &mut Numbers) -> Self {
        let opening = unit.opening;
        Self {
            tag: opening.tag.clone(),
            quantity: opening.quantity,
            included: opening.included,
            alternate_of: opening.alternate_of.clone(),
            room: opening.room.as_ref().map(Id::to_string),
            face: opening.face.as_ref().map(Id::to_string),
            verdict: verdict_word(unit.verdict()),
            total: unit.opening_total().as_ref().map(amount),
            measures: measures(unit),
            readings: opening.readings.as_ref().map(readings),
            facts: facts(unit),
            unit: UnitAnswer::new(quote, unit),
            note: opening.note.clone(),
            extra: numbers.untouched(&opening.extra),
        }
    }
}

impl UnitAnswer {
    fn new(quote: &Quote<'_>, unit: &QuotedUnit<'_>) -> Self {
        let judgement = &unit.judgement;
        let catalog = unit.used.catalog;
        let pins = unit.request.pins.iter();
        let waivers = unit.request.waivers.iter().enumerate();
        let not_applied = judgement.authorities_not_applied.iter();
        Self {
            catalog: unit.request.catalog.to_string(),
            picks: unit
                .request
                .picks
                .iter()
                .map(|pick| PickAnswer::new(catalog, pick))
                .collect(),
            pins: pins
                .map(|pin| catalog.name_of(Subject::Attribute(*pin)))
                .collect(),
            waivers: waivers
                .map(|(position, waiver)| WaiverAnswer::new(unit, position, waiver))
                .collect(),
            choices: ChoiceAnswer::all(unit),
            completion: CompletionAnswer::new(quote, unit),
            figures: judgement
                .figures
                .iter()
                .map(|figure| FigureAnswer::new(unit, figure))
                .collect(),
            rules: judgement
                .rules
                .iter()
                .map(|finding| RuleAnswer::new(unit, finding))
                .collect(),
            open: judgement
                .open
                .iter()
                .map(|open| OpenAnswer::new(unit, open))
                .collect(),
            price: PriceAnswer::new(unit),
            notices: judgement
                .notices
                .iter()
                .map(|notice| NoticeAnswer::new(unit, notice))
                .collect(),
            authorities_not_applied: not_applied.map(Id::to_string).collect(),
        }
    }
}

impl WaiverAnswer {
    fn new(unit: &QuotedUnit<'_>, position: usize, waiver: &Waiver) -> Self {
        Self {
            rule: waiver.rule.to_string(),
            reference: waiver.reference.clone(),
            from: waiver.from.to_string(),
            until: waiver.until.map(|date| date.to_string()),
            used: unit.judgement.waivers_used.contains(&position),
        }
    }
}

/// Every measure of the catalog; one that was not taken has no value.
fn measures(unit: &QuotedUnit<'_>) -> Vec<MeasureAnswer> {
    let catalog = unit.used.catalog;
    let positions = catalog.declarations().measures.positions();
    let answer = |index| {
        let subject = Subject::Measure(index);
        let Named { id, label } = named(catalog, subject);
        let measured = unit.opening.site.measures.get(index).and_then(Option::as_ref);
        MeasureAnswer {
            id,
            label,
            value: measured.map(|measured| value(catalog, subject, &measured.value)),
            deducted_by: measured
                .and_then(|measured| measured.deducted_by)
                .map(|by| by.word()),
        }
    };
    positions.map(answer).collect()
}

/// Every site fact of the catalog; one that is not known has no value.
fn facts(unit: &QuotedUnit<'_>) -> Vec<FactAnswer> {
    let catalog = unit.used.catalog;
    let positions = catalog.declarations().facts.positions();
    let answer = |index| {
        let subject = Subject::Fact(index);
        let Named { id, label } = named(catalog, subject);
        let known = unit.opening.site.facts.get(index).and_then(Option::as_ref);
        FactAnswer {
            id,
            label,
            value: known.map(|known| value(catalog, subject, known)),
        }
    };
    positions.map(answer).collect()
}
