//! `[[example]]`: a unit that is worked through at every check, and what should come out.

use astragal_model::Date;

use super::{Fields, Head, IdKind};
use crate::finding::Place;
use crate::site_values::{RawFact, RawMeasure, raw_facts, raw_measures};
use crate::typed::PlacedText;

/// `[[example]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawExample {
    pub(crate) head: Head,
    pub(crate) picks: Vec<RawPick>,
    pub(crate) measures: Vec<RawMeasure>,
    pub(crate) facts: Vec<RawFact>,
    pub(crate) date: Option<Date>,
    pub(crate) breaks: Vec<PlacedText>,
    pub(crate) undecided: Option<Vec<PlacedText>>,
    pub(crate) room_breaks: Vec<PlacedText>,
    pub(crate) room_undecided: Option<Vec<PlacedText>>,
    pub(crate) notices: Option<Vec<PlacedText>>,
    pub(crate) total: Option<RawTotal>,
}

/// One pick.
#[derive(Clone, Debug)]
pub(crate) struct RawPick {
    pub(crate) attribute: PlacedText,
    pub(crate) option: PlacedText,
    pub(crate) quoted: Option<Date>,
}

/// The total by a book.
#[derive(Clone, Debug)]
pub(crate) struct RawTotal {
    pub(crate) book: PlacedText,
    pub(crate) amount: String,
    pub(crate) amount_place: Place,
}

pub(super) fn example(mut fields: Fields<'_>) -> Option<RawExample> {
    let head = fields.head(IdKind::Other);
    let picks = fields
        .inner_list("picks", "pick")
        .into_iter()
        .filter_map(pick)
        .collect();
    let measures = raw_measures(&mut fields.reader, "measures");
    let facts = raw_facts(&mut fields.reader, "facts");
    let date = if fields.reader.requires("date") {
        fields.reader.date("date")
    } else {
        None
    };
    let breaks = fields.texts("breaks").unwrap_or_default();
    let undecided = fields.texts("undecided");
    let room_breaks = fields.texts("room_breaks").unwrap_or_default();
    let room_undecided = fields.texts("room_undecided");
    let notices = fields.texts("notices");
    let total = total(&mut fields);
    fields.reader.finish();
    Some(RawExample {
        head: head?,
        picks,
        measures,
        facts,
        date: date.map(|date| date.value),
        breaks,
        undecided,
        room_breaks,
        room_undecided,
        notices,
        total,
    })
}

fn pick(mut fields: Fields<'_>) -> Option<RawPick> {
    let attribute = fields.required_text("attribute");
    let option = fields.required_text("option");
    let quoted = fields.reader.date("quoted");
    fields.reader.finish();
    Some(RawPick {
        attribute: attribute?,
        option: option?,
        quoted: quoted.map(|date| date.value),
    })
}

fn total(fields: &mut Fields<'_>) -> Option<RawTotal> {
    let node = fields.reader.node("total")?;
    let mut table = fields.inner(node, "`total`")?;
    let book = table.required_text("book");
    let amount = if table.reader.requires("amount") {
        table.reader.decimal_text("amount")
    } else {
        None
    };
    let place = amount.as_ref().map(|amount| table.place_of(&amount.span));
    table.reader.finish();
    Some(RawTotal {
        book: book?,
        amount: amount?.value,
        amount_place: place?,
    })
}
