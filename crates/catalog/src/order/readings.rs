//! Raw readings of an opening, and the measures and facts that are worked out from them.
//!
//! `readings = { widths = ["36", "36 1/8", "36"], heights = [...], diagonals = ["70", "70"], deducted_by = "nobody" }` gives the
//! measures that the catalog declares `taken_as` width and height the largest upright rectangle, down to their step, and its facts
//! `taken_as` the difference of the diagonals and the like what the readings say.
//!
//! Always holds: what is worked out is exact, and is what `astragal_trade::measuring` says; a measure or fact that is written as
//! well is a finding, never overruled.
//! Cost: constant an opening.
//! Source: docs/reference.md, "Readings"; docs/trade.md, "Measuring".

use astragal_model::measure_text::LengthUnit;
use astragal_model::{DeductedBy, Measured, Number, OpeningReadings, Site, TakenFact, TakenSide, Value};
use astragal_trade::measuring::{self, Governing, Readings};

use super::raw::{RawOpening, Report};
use super::vocabulary::Vocabulary;
use crate::finding::{Finding, Place};
use crate::site_values::{deducted_by, length};
use crate::tree::{Spanned, TableReader};

/// How many readings of a side there may be: at the top, in the middle and at the bottom, or left, centre and right.
const READINGS_OF_A_SIDE: usize = 3;

/// `readings` of an opening, as written.
#[derive(Debug)]
pub(super) struct RawReadings {
    place: Place,
    widths: Vec<Spanned<String>>,
    heights: Vec<Spanned<String>>,
    diagonals: Vec<Spanned<String>>,
    out_of_plumb: Option<Spanned<String>>,
    out_of_level: Option<Spanned<String>>,
    deducted_by: Option<DeductedBy>,
}

pub(super) fn read(reader: &mut TableReader<'_>) -> Option<RawReadings> {
    if !reader.has("readings") {
        return None;
    }
    let mut table = reader.table("readings", "`readings`")?;
    let raw = RawReadings {
        place: table.place(),
        widths: several(&mut table, "widths", READINGS_OF_A_SIDE),
        heights: several(&mut table, "heights", READINGS_OF_A_SIDE),
        diagonals: several(&mut table, "diagonals", 2),
        out_of_plumb: table.decimal_text("out_of_plumb"),
        out_of_level: table.decimal_text("out_of_level"),
        deducted_by: deducted_by(&mut table),
    };
    table.finish();
    Some(raw)
}

/// At most so many lengths, as text.
fn several(table: &mut TableReader<'_>, key: &'static str, most: usize) -> Vec<Spanned<String>> {
    let Some(array) = table.array(key) else {
        return Vec::new();
    };
    if array.value.len() > most {
        let text = format!(
            "`{key}` has {} readings; expected at most {most}",
            array.value.len()
        );
        let finding = Finding::error("TOO_MANY_READINGS", text).at(table.place_of(&array.span));
        let help = if most == 2 {
            "write the two diagonals"
        } else {
            "write those at the top, in the middle and at the bottom, or left, centre and right"
        };
        table.findings().push(finding.with_help(help));
        return Vec::new();
    }
    let nodes = array.value.iter();
    let read = nodes.filter_map(|node| table.as_decimal_text(node, &format!("`{key}`")));
    read.collect()
}

/// Fills the site of an opening in from its readings, and returns them as numbers.
pub(super) fn fill_in(
    raw: &RawOpening,
    words: &Vocabulary<'_>,
    site: &mut Site,
    report: Report<'_>,
) -> Option<OpeningReadings> {
    let written = raw.readings.as_ref()?;
    let unit = words.catalog.declarations().length_unit;
    let readings = typed(written, unit, report)?;
    let measured = match measuring::measure(&readings) {
        Ok(measured) => measured,
        Err(error) => {
            let text = format!("readings of opening `{}`: {}", raw.tag.value, error.text(unit));
            let finding = Finding::error("READINGS_IMPOSSIBLE", text).at(written.place.clone());
            report.findings.push(finding.with_help(error.help()));
            return None;
        }
    };
    warn(raw, written, (&measured, unit), report);
    let taken = Taken {
        raw,
        written,
        words,
        report,
    };
    let smallest = |side: &Option<Governing>| side.as_ref().map(|side| side.smallest.clone());
    let upright = measured.upright.as_ref();
    for side in TakenSide::ALL {
        let size = match side {
            TakenSide::Width => {
                upright.map_or_else(|| smallest(&measured.width), |size| Some(size.width.clone()))
            }
            TakenSide::Height => {
                upright.map_or_else(|| smallest(&measured.height), |size| Some(size.height.clone()))
            }
        };
        taken.measure(side, size, site);
    }
    for fact in TakenFact::ALL {
        if let Some(value) = said(fact, &readings, &measured) {
            taken.fact(fact, &value, site);
        }
    }
    Some(OpeningReadings {
        readings,
        deducted_by: written.deducted_by,
    })
}

/// What readings say of a fact; `None` where they do not.
fn said(fact: TakenFact, readings: &Readings, measured: &measuring::Measured) -> Option<Number> {
    let spread = |governing: &Option<Governing>| {
        let several = governing.as_ref().filter(|governing| governing.read > 1);
        several.map(Governing::spread)
    };
    match fact {
        TakenFact::DiagonalDifference => match &readings.diagonals {
            [Some(one), Some(other)] => Some((one - other).abs()),
            _ => None,
        },
        TakenFact::WidthSpread => spread(&measured.width),
        TakenFact::HeightSpread => spread(&measured.height),
    }
}

/// What lies outside what is common is said while the order is read, too: it may be a slip.
fn warn(
    raw: &RawOpening,
    written: &RawReadings,
    (measured, unit): (&measuring::Measured, LengthUnit),
    report: Report<'_>,
) {
    for found in measured.findings.iter().filter(|found| found.is_warning()) {
        let text = format!("readings of opening `{}`: {}", raw.tag.value, found.text(unit));
        let finding = Finding::warning("READINGS_DIFFER", text).at(written.place.clone());
        report
            .findings
            .push(finding.with_help("is it a slip? what was read is worked with"));
    }
}

/// What it takes to put what was worked out where the catalog wants it.
struct Taken<'a> {
    raw: &'a RawOpening,
    written: &'a RawReadings,
    words: &'a Vocabulary<'a>,
    report: Report<'a>,
}

impl Taken<'_> {
    fn measure(&self, side: TakenSide, size: Option<Number>, site: &mut Site) {
        let measures = &self.words.catalog.declarations().measures;
        let mut taken = measures
            .iter()
            .filter(|(_, measure)| measure.taken_as == Some(side));
        let Some((index, measure)) = taken.next() else {
            return self.no_measure(side);
        };
        let Some(size) = size else {
            // No reading of this side was taken; who deducts was said all the same.
            site.deducted
                .extend(self.written.deducted_by.map(|by| (index, by)));
            return;
        };
        let id = measure.id.as_str();
        if let Some(twice) = self.raw.measures.iter().find(|written| written.name == id) {
            return self.given_twice(id, twice.name_place.clone());
        }
        // Down to the step of the measure, so that it never comes out larger than what stands upright in the opening.
        let stepped = measure.step.as_ref().and_then(|step| size.floor_to(step));
        // A step that is longer than the side leaves nothing to come down to.
        let stepped = stepped.filter(Number::is_positive);
        let measured = Measured {
            value: Value::Length(stepped.unwrap_or(size)),
            deducted_by: self.written.deducted_by,
        };
        site.measures.put(index, Some(measured));
    }

    fn fact(&self, taken: TakenFact, value: &Number, site: &mut Site) {
        let facts = &self.words.catalog.declarations().facts;
        for (index, fact) in facts.iter().filter(|(_, fact)| fact.taken_as == Some(taken)) {
            let id = fact.id.as_str();
            match self.raw.facts.iter().find(|written| written.name == id) {
                Some(twice) => self.given_twice(id, twice.name_place.clone()),
                None => site.facts.put(index, Some(Value::Length(value.clone()))),
            }
        }
    }

    fn no_measure(&self, side: TakenSide) {
        let text = format!(
            "opening `{}` has readings, and catalog `{}` has no measure that is `taken_as` {}",
            self.raw.tag.value,
            self.words.id(),
            side.word()
        );
        let finding = Finding::error("NO_READINGS_HERE", text).at(self.written.place.clone());
        let help = "write the measures of the catalog instead";
        self.report.findings.push(finding.with_help(help));
    }

    fn given_twice(&self, name: &str, place: Place) {
        let text = format!("`{name}` is written, and worked out from the readings as well");
        let finding = Finding::error("GIVEN_TWICE", text).at(place);
        let finding = finding.with_help("leave one of the two out");
        let here = (self.written.place.clone(), "the readings stand here");
        self.report.findings.push(finding.with_related(here.0, here.1));
    }
}

/// The readings as numbers; `None` means that findings say why.
fn typed(written: &RawReadings, unit: LengthUnit, report: Report<'_>) -> Option<Readings> {
    let mut is_whole = true;
    let mut number = |text: &Spanned<String>| -> Option<Number> {
        let found = length(&text.value, &report.place(&text.span), unit, report.findings);
        is_whole &= found.is_some();
        found
    };
    let mut side = |texts: &[Spanned<String>]| {
        let mut three = [None, None, None];
        for (place, text) in three.iter_mut().zip(texts) {
            *place = number(text);
        }
        three
    };
    let (widths, heights) = (side(&written.widths), side(&written.heights));
    let [first, second, _] = side(&written.diagonals);
    let readings = Readings {
        widths,
        heights,
        diagonals: [first, second],
        out_of_plumb: written.out_of_plumb.as_ref().and_then(&mut number),
        out_of_level: written.out_of_level.as_ref().and_then(&mut number),
        ..Readings::default()
    };
    is_whole.then_some(readings)
}
