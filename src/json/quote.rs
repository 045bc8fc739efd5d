//! The whole quote for a program.

use astragal_catalog::finding::Finding;
use astragal_catalog::source::Sources;
use astragal_model::{Revision, Verdict};
use serde::Serialize;

use crate::exit::Exit;
use crate::json::extra::Numbers;
use crate::json::order::{OpeningAnswer, OrderAnswer};
use crate::json::rooms::{RoomAnswer, rooms};
use crate::json::sale::{CoolingAnswer, cooling_answer};
use crate::json::values::{Amount, amount};
use crate::json::{FORMAT, JsonFinding};
use crate::quote::rooms::QuotedRoom;
use crate::quote::words::CAUTION;
use crate::quote::work::{Quote, SignOff, Used};

#[derive(Serialize)]
struct QuoteAnswer {
    format: u32,
    verdict: &'static str,
    exit_code: u8,
    order: OrderAnswer,
    catalogs: Vec<CatalogAnswer>,
    authorities_not_applied: Vec<String>,
    openings: Vec<OpeningAnswer>,
    /// The rooms to which a rule over a room applies, or may.
    rooms: Vec<RoomAnswer>,
    totals: TotalsAnswer,
    summary: Summary,
    /// Until when the buyer may cancel; null for an order in another currency than US dollars.
    cooling_off: Option<CoolingAnswer>,
    caution: &'static str,
    findings: Vec<JsonFinding>,
}

/// A catalog with its price book and policy, by revision.
#[derive(Serialize)]
pub(super) struct CatalogAnswer {
    id: String,
    label: String,
    revision: String,
    length_unit: &'static str,
    book: BookAnswer,
    policy: Option<Revised>,
}

#[derive(Serialize)]
struct BookAnswer {
    id: String,
    label: String,
    revision: String,
    currency: &'static str,
    round_to: String,
    from: Option<String>,
    until: Option<String>,
}

#[derive(Serialize)]
struct Revised {
    id: String,
    label: String,
    revision: String,
}

/// What the openings that count come to. `total` is null unless it is complete.
#[derive(Serialize)]
struct TotalsAnswer {
    before_tax_and_order_charges: Option<Amount>,
    complete: bool,
    sum_of_known: Option<Amount>,
    openings_without_total: Vec<String>,
    counted_though_broken: Vec<String>,
    counted_though_undecided: Vec<String>,
    /// How much less the same picks come to with everything else filled in at its cheapest; null where nothing is saved.
    cheapest_saves: Option<Amount>,
}

/// The tags of the openings by verdict.
#[derive(Serialize)]
struct Summary {
    holds: Vec<String>,
    undecided: Vec<String>,
    broken: Vec<String>,
    not_included: Vec<String>,
    /// The labels of the rooms that do not hold by a rule over the room.
    rooms_broken: Vec<String>,
    /// The labels of the rooms of which a rule over the room cannot be decided.
    rooms_undecided: Vec<String>,
    /// The labels of the rooms for which somebody must sign by a rule over the room.
    rooms_to_sign: Vec<String>,
    /// The labels of the rooms for which somebody may have to sign, which waits for what is not known.
    rooms_that_may_sign: Vec<String>,
    /// The labels of the rooms that would not hold under rules that were not applied.
    rooms_set_aside: Vec<String>,
}

/// The quote as JSON.
pub(crate) fn quote(quote: &Quote<'_>, findings: &[Finding], sources: &Sources) -> Result<String, String> {
    let mut numbers = Numbers::default();
    let verdict = quote.verdict();
    let answer = QuoteAnswer {
        format: FORMAT,
        verdict: verdict_word(verdict),
        exit_code: Exit::from(verdict).code(),
        order: OrderAnswer::new(quote, &mut numbers),
        catalogs: quote.used.iter().map(catalog).collect(),
        authorities_not_applied: quote.left_out.iter().map(ToString::to_string).collect(),
        openings: quote
            .units
            .iter()
            .map(|unit| OpeningAnswer::new(quote, unit, &mut numbers))
            .collect(),
        rooms: rooms(quote),
        totals: totals(quote),
        summary: summary(quote),
        cooling_off: cooling_answer(quote),
        caution: CAUTION,
        findings: JsonFinding::all(findings, sources),
    };
    numbers.to_text(&answer)
}

/// The word for a verdict.
pub(crate) fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "holds",
        Verdict::Undecided => "undecided",
        Verdict::Broken => "broken",
    }
}

pub(super) fn catalog(used: &Used<'_>) -> CatalogAnswer {
    let declarations = used.catalog.declarations();
    let book = used.book;
    CatalogAnswer {
        id: used.id.to_string(),
        label: declarations.label.clone(),
        revision: used.catalog.revision().to_string(),
        length_unit: declarations.length_unit.symbol(),
        book: BookAnswer {
            id: book.id.to_string(),
            label: book.label.clone(),
            revision: book.revision().to_string(),
            currency: book.currency.code(),
            round_to: book.round_to.to_string(),
            from: book.from.map(|date| date.to_string()),
            until: book.until.map(|date| date.to_string()),
        },
        policy: used.policy.map(|policy| Revised {
            id: policy.terms.id.to_string(),
            label: policy.terms.label.clone(),
            revision: Revision::of_policy(&policy.terms, used.catalog).to_string(),
        }),
    }
}

fn rooms_where(quote: &Quote<'_>, is_meant: impl Fn(&QuotedRoom) -> bool) -> Vec<String> {
    let rooms = quote.rooms.iter().filter(|room| is_meant(room));
    rooms.map(|room| room.label.clone()).collect()
}

fn totals(quote: &Quote<'_>) -> TotalsAnswer {
    let totals = quote.totals();
    let owned = |tags: &[&str]| tags.iter().map(|tag| (*tag).to_owned()).collect();
    let complete = totals.without_total.is_empty() && totals.known.is_some();
    TotalsAnswer {
        before_tax_and_order_charges: totals.known.as_ref().filter(|_| complete).map(amount),
        complete,
        sum_of_known: totals.known.as_ref().map(amount),
        openings_without_total: owned(&totals.without_total),
        counted_though_broken: owned(&totals.broken),
        counted_though_undecided: owned(&totals.undecided),
        cheapest_saves: quote.saves().as_ref().map(amount),
    }
}

fn summary(quote: &Quote<'_>) -> Summary {
    let tags = |verdict: Verdict| {
        let with = quote.included().filter(|unit| unit.verdict() == verdict);
        with.map(|unit| unit.opening.tag.clone()).collect()
    };
    let left_out = quote.units.iter().filter(|unit| !unit.opening.included);
    Summary {
        holds: tags(Verdict::Holds),
        undecided: tags(Verdict::Undecided),
        broken: tags(Verdict::Broken),
        not_included: left_out.map(|unit| unit.opening.tag.clone()).collect(),
        rooms_broken: quote.rooms_that(Verdict::Broken),
        rooms_undecided: quote.rooms_that(Verdict::Undecided),
        rooms_to_sign: rooms_where(quote, |room| room.sign_off() == SignOff::Needed),
        rooms_that_may_sign: rooms_where(quote, |room| room.sign_off() == SignOff::MayBeNeeded),
        rooms_set_aside: rooms_where(quote, |room| !room.set_aside().is_empty()),
    }
}
