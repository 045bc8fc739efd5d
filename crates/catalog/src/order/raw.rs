//! The shape of an order file: which keys it has and of what type, before anything is looked up.
//!
//! `[[room]] id = "kitchen" floor = "ground"` becomes a [`RawPlace`] that still names its floor by text. Nothing here
//! knows a catalog; what a name means is asked later.
//!
//! Always holds: what could not be read is absent, and a finding says why.
//! Cost: O(length of the file). Stops at [`OPENINGS_LIMIT`] openings.
//! Source: docs/reference.md, "order.toml or order.json".

use std::ops::Range;

use astragal_model::{Agreement, Currency, Date, Extra};

use super::extra;
use super::raw_unit::{self, RawUnit};
use super::readings::{self, RawReadings};
use super::sale;
use crate::declare::is_id;
use crate::finding::{Finding, Findings, Place};
use crate::site_values::{RawFact, RawMeasure, raw_facts, raw_measures};
use crate::source::FileId;
use crate::tree::{Node, Spanned, TableReader};

/// LIMIT: how many openings an order may have.
pub const OPENINGS_LIMIT: usize = 1_000;

/// LIMIT: how many of one opening there may be.
pub const QUANTITY_LIMIT: u32 = 10_000;

/// An order as it was written.
#[derive(Debug)]
pub(super) struct RawOrder {
    pub(super) id: Option<Spanned<String>>,
    pub(super) label: Option<String>,
    pub(super) date: Option<Date>,
    pub(super) currency: Option<Currency>,
    pub(super) sale: Agreement,
    pub(super) extra: Extra,
    pub(super) catalogs: Vec<RawCatalog>,
    pub(super) house: Vec<RawFact>,
    pub(super) floors: Vec<RawPlace>,
    pub(super) rooms: Vec<RawPlace>,
    pub(super) faces: Vec<RawPlace>,
    pub(super) openings: Vec<RawOpening>,
}

/// A catalog that the order uses.
#[derive(Debug)]
pub(super) struct RawCatalog {
    pub(super) id: Spanned<String>,
    pub(super) folder: Option<Spanned<String>>,
    pub(super) book: Option<Spanned<String>>,
    pub(super) policy: Option<Spanned<String>>,
}

/// A floor, a room or a face.
#[derive(Debug)]
pub(super) struct RawPlace {
    pub(super) id: Spanned<String>,
    pub(super) label: String,
    /// Only rooms have one.
    pub(super) floor: Option<Spanned<String>>,
    pub(super) facts: Vec<RawFact>,
}

/// An opening.
#[derive(Debug)]
pub(super) struct RawOpening {
    pub(super) tag: Spanned<String>,
    pub(super) quantity: u32,
    pub(super) room: Option<Spanned<String>>,
    pub(super) face: Option<Spanned<String>>,
    pub(super) measures: Vec<RawMeasure>,
    pub(super) facts: Vec<RawFact>,
    pub(super) readings: Option<RawReadings>,
    pub(super) note: Option<String>,
    pub(super) included: Option<bool>,
    pub(super) alternate_of: Option<Spanned<String>>,
    pub(super) extra: Extra,
    pub(super) units: Vec<RawUnit>,
}

/// Where findings about the order go.
#[derive(Clone, Copy, Debug)]
pub(super) struct Report<'a> {
    pub(super) file: FileId,
    pub(super) findings: &'a Findings,
}

impl Report<'_> {
    /// A place in the order.
    pub(super) fn place(&self, span: &Range<usize>) -> Place {
        Place::new(self.file, span.clone())
    }

    /// Records an error at some bytes of the order.
    pub(super) fn error(
        &self,
        code: &'static str,
        span: &Range<usize>,
        message: String,
        help: impl Into<String>,
    ) {
        let finding = Finding::error(code, message).at(self.place(span));
        self.findings.push(finding.with_help(help));
    }

    /// Records an error that an earlier place of the order explains.
    pub(super) fn error_after(
        &self,
        code: &'static str,
        span: &Range<usize>,
        message: String,
        help: impl Into<String>,
        earlier: (&Range<usize>, String),
    ) {
        let finding = Finding::error(code, message).at(self.place(span)).with_help(help);
        self.findings
            .push(finding.with_related(self.place(earlier.0), earlier.1));
    }
}

/// Reads the shape of an order. `needs_date` says whether the file itself must have a date.
pub(super) fn read(root: &Node, needs_date: bool, report: Report<'_>) -> Option<RawOrder> {
    let mut reader = TableReader::new(root, report.file, "the order", report.findings)?;
    let has_format = reader.has("format");
    if !reader.format_is_known() && has_format {
        return None;
    }
    let others = root.as_table().unwrap_or_default().iter();
    let other = others
        .map(|entry| &entry.key)
        .find(|key| ["library", "attribute", "book", "policy"].contains(&key.value.as_str()));
    if let Some(key) = other.filter(|_| !reader.has("order")) {
        let message = format!("this file is no order: it has `{}`", key.value);
        let help = "name the file with `[order]` in it; a library is looked at by `astragal check`";
        report.error("NOT_AN_ORDER", &key.span, message, help);
        return None;
    }
    let mut order = RawOrder {
        id: None,
        label: None,
        date: None,
        currency: None,
        sale: Agreement::default(),
        extra: Extra::None,
        catalogs: Vec::new(),
        house: Vec::new(),
        floors: Vec::new(),
        rooms: Vec::new(),
        faces: Vec::new(),
        openings: Vec::new(),
    };
    if reader.requires("order")
        && let Some(header) = reader.table("order", "order")
    {
        read_header(header, needs_date, &mut order);
    }
    if reader.requires("catalog") {
        let catalogs = reader.array_of_tables("catalog", "catalog");
        order.catalogs = catalogs.into_iter().filter_map(read_catalog).collect();
    }
    if let Some(mut house) = reader.table("house", "house") {
        order.house = raw_facts(&mut house, "facts");
        house.finish();
    }
    for (key, places) in [
        ("floor", &mut order.floors),
        ("room", &mut order.rooms),
        ("face", &mut order.faces),
    ] {
        let tables = reader.array_of_tables(key, key);
        *places = tables
            .into_iter()
            .filter_map(|table| read_place(table, key))
            .collect();
    }
    order.openings = read_openings(&mut reader, report);
    reader.finish();
    Some(order)
}

fn read_header(mut reader: TableReader<'_>, needs_date: bool, order: &mut RawOrder) {
    order.id = filled_text(&mut reader, "id");
    order.label = reader.optional_text("label").map(|text| text.value);
    if needs_date && !reader.has("date") {
        let text = "the order lacks `date`, the day as of which it is judged".to_owned();
        let help = "add `date`, like 2026-11-25; the day of reading is never taken instead";
        reader.findings().push(
            Finding::error("MISSING_KEY", text)
                .at(reader.place())
                .with_help(help),
        );
    }
    order.date = reader.date("date").map(|date| date.value);
    order.currency = read_currency(&mut reader);
    order.sale = sale::read(&mut reader);
    order.extra = extra::read(&mut reader);
    reader.finish();
}

fn read_currency(reader: &mut TableReader<'_>) -> Option<Currency> {
    let code = reader.required_text("currency")?;
    let currency = Currency::from_code(&code.value);
    if currency.is_none() {
        let upper = code.value.trim().to_ascii_uppercase();
        let help = match Currency::from_code(&upper) {
            Some(_) => format!("did you mean `{upper}`?"),
            None => "write the three letters of ISO 4217, such as `USD`, `CAD` or `EUR`".to_owned(),
        };
        let text = format!("`{}` is not a currency of ISO 4217 with minor units", code.value);
        let finding = Finding::error("CURRENCY_UNKNOWN", text).at(reader.place_of(&code.span));
        reader.findings().push(finding.with_help(help));
    }
    currency
}

fn read_catalog(mut reader: TableReader<'_>) -> Option<RawCatalog> {
    let id = filled_text(&mut reader, "id");
    if let Some(id) = &id {
        reader.rename(format!("catalog `{}`", id.value));
    }
    let folder = reader.required_text("folder");
    let book = reader.required_text("book");
    let policy = reader.optional_text("policy");
    reader.finish();
    Some(RawCatalog {
        id: id?,
        folder,
        book,
        policy,
    })
}

fn read_place(mut reader: TableReader<'_>, kind: &str) -> Option<RawPlace> {
    let id = filled_text(&mut reader, "id");
    if let Some(id) = &id {
        reader.rename(format!("{kind} `{}`", id.value));
        check_id(id, kind, &reader);
    }
    let label = reader.optional_text("label");
    let floor = if kind == "room" {
        reader.optional_text("floor")
    } else {
        None
    };
    let facts = raw_facts(&mut reader, "facts");
    reader.finish();
    let id = id?;
    let label = label.map_or_else(|| id.value.clone(), |label| label.value);
    Some(RawPlace {
        id,
        label,
        floor,
        facts,
    })
}

fn check_id(id: &Spanned<String>, kind: &str, reader: &TableReader<'_>) {
    if is_id(&id.value) {
        return;
    }
    let text = format!("`{}` is no id of a {kind}", id.value);
    let help = "begin with a small letter or a digit; go on with small letters, digits, `-` and `_`; \
                what people read goes into `label`";
    let finding = Finding::error("BAD_ID", text).at(reader.place_of(&id.span));
    reader.findings().push(finding.with_help(help));
}

fn read_openings(reader: &mut TableReader<'_>, report: Report<'_>) -> Vec<RawOpening> {
    let tables = reader.array_of_tables("opening", "opening");
    if tables.is_empty() && !report.findings.has_errors() && !reader.lacks_something() {
        let finding = Finding::warning("NO_OPENINGS", "the order has no opening").at(reader.place());
        report
            .findings
            .push(finding.with_help("add an `[[opening]]` for each window"));
    }
    let mut openings = Vec::new();
    for (position, table) in tables.into_iter().enumerate() {
        if position == OPENINGS_LIMIT {
            let text = format!("the order has more than {OPENINGS_LIMIT} openings, the most that are read");
            let finding = Finding::error("LIMIT", text).at(table.place());
            report
                .findings
                .push(finding.with_help("split the order, or write equal openings once with a `quantity`"));
            break;
        }
        openings.extend(read_opening(table));
    }
    openings
}

fn read_opening(mut reader: TableReader<'_>) -> Option<RawOpening> {
    let tag = filled_text(&mut reader, "tag");
    if let Some(tag) = &tag {
        reader.rename(format!("opening `{}`", tag.value));
    }
    let quantity = read_quantity(&mut reader);
    let room = reader.optional_text("room");
    let face = reader.optional_text("face");
    let measures = raw_measures(&mut reader, "measures");
    let facts = raw_facts(&mut reader, "facts");
    let readings = readings::read(&mut reader);
    let note = reader.optional_text("note").map(|note| note.value);
    let included = reader.optional_bool("included").map(|included| included.value);
    let alternate_of = reader.optional_text("alternate_of");
    let extra = extra::read(&mut reader);
    let units = raw_unit::read_units(&mut reader);
    reader.finish();
    let tag = tag?;
    Some(RawOpening {
        tag,
        quantity,
        room,
        face,
        measures,
        facts,
        readings,
        note,
        included,
        alternate_of,
        extra,
        units,
    })
}

fn read_quantity(reader: &mut TableReader<'_>) -> u32 {
    let Some(quantity) = reader.integer("quantity") else {
        return 1;
    };
    match u32::try_from(quantity.value) {
        Ok(count @ 1..=QUANTITY_LIMIT) => count,
        _ => {
            let text = format!(
                "`quantity` of {} is {}; expected 1 to {QUANTITY_LIMIT}",
                reader.what(),
                quantity.value
            );
            let help = match quantity.value {
                ..1 => "leave out an opening that is not wanted, or write `included = false`",
                _ => "is it a slip?",
            };
            let finding = Finding::error("QUANTITY_OUT_OF_RANGE", text).at(reader.place_of(&quantity.span));
            reader.findings().push(finding.with_help(help));
            1
        }
    }
}

/// Text that must be there and must not be blank.
pub(super) fn filled_text(reader: &mut TableReader<'_>, key: &'static str) -> Option<Spanned<String>> {
    let text = reader.required_text(key)?;
    if !text.value.trim().is_empty() {
        return Some(text);
    }
    let message = format!("`{key}` of {} is empty", reader.what());
    let finding = Finding::error("EMPTY_TEXT", message).at(reader.place_of(&text.span));
    reader
        .findings()
        .push(finding.with_help(format!("write something into `{key}`")));
    None
}
