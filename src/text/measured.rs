//! What was measured: the readings of tape and level and what they come to, or the sizes that were given.
//!
//! ```text
//!   Measured
//!     Widths, top, middle, bottom  28 1/2 in, 28 9/16 in, 28 1/2 in
//!     Diagonals                    53 7/8 in, 53 3/4 in
//!     Opening width                28 3/8 in, of the largest upright rectangle, rounded down, nobody has deducted
//! ```
//!
//! Always holds: every reading is shown as it was read; what is worked out says so; what was not read is said.

use astragal_model::{
    DeductedBy, MeasureIndex, Measured, Number, RuleState, Subject, TakenSide, Value, Want,
};
use astragal_trade::measuring::{self, Finding, Readings};

use crate::quote::work::QuotedUnit;
use crate::text::opening::{columns, section};
use crate::text::page::Page;

pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>) {
    let mut lines = Vec::new();
    let readings = unit.opening.readings.as_ref().map(|taken| &taken.readings);
    if let Some(readings) = readings {
        lines.extend(read(unit, readings));
    }
    for (index, measured) in unit.opening.site.measures.iter() {
        let Some(measured) = measured else { continue };
        lines.push(size(unit, index, measured));
    }
    columns(page, "Measured", &lines);
    let notes = notes(unit);
    if lines.is_empty() && !notes.is_empty() {
        section(page, "Measured");
    }
    for note in notes {
        page.entry(4, "- ", &note);
    }
}

/// The readings as they were taken.
fn read(unit: &QuotedUnit<'_>, readings: &Readings) -> Vec<(String, String)> {
    let show = |number: &Number| shown(unit, number);
    let several = |readings: &[Option<Number>]| {
        let read: Vec<String> = readings.iter().flatten().map(show).collect();
        (!read.is_empty()).then(|| read.join(", "))
    };
    let rows = [
        ("Widths, top, middle, bottom", several(&readings.widths)),
        ("Heights, left, centre, right", several(&readings.heights)),
        ("Diagonals", several(&readings.diagonals)),
        ("Out of plumb", readings.out_of_plumb.as_ref().map(show)),
        ("Out of level", readings.out_of_level.as_ref().map(show)),
    ];
    let lines = rows
        .into_iter()
        .filter_map(|(label, value)| Some((label.to_owned(), value?)));
    lines.collect()
}

fn size(unit: &QuotedUnit<'_>, index: MeasureIndex, measured: &Measured) -> (String, String) {
    let catalog = unit.used.catalog;
    let subject = Subject::Measure(index);
    let how = worked_out(unit, index);
    let deducted = match measured.deducted_by {
        None if is_wanted(unit, &Want::DeductedBy(index)) => ", nobody said who has deducted",
        None => "",
        Some(DeductedBy::Nobody) => ", nobody has deducted",
        Some(DeductedBy::Dealer) => ", the dealer has deducted",
        Some(DeductedBy::Customer) => ", the customer has deducted",
    };
    let shown = catalog.show(subject, &measured.value);
    (catalog.label_of(subject), format!("{shown}{how}{deducted}"))
}

/// How a measure was worked out from readings; empty where it was written.
fn worked_out(unit: &QuotedUnit<'_>, index: MeasureIndex) -> &'static str {
    let measure = unit.used.catalog.declarations().measures.at(index);
    let readings = unit.opening.readings.as_ref().map(|taken| &taken.readings);
    let (Some(side), Some(readings)) = (measure.taken_as, readings) else {
        return "";
    };
    let read = match side {
        TakenSide::Width => &readings.widths,
        TakenSide::Height => &readings.heights,
    };
    // Of one side alone there is no rectangle.
    let is_sized = [&readings.widths, &readings.heights]
        .iter()
        .all(|three| three.iter().any(Option::is_some));
    let knows_askew = readings.diagonals.iter().all(Option::is_some)
        || readings.out_of_plumb.is_some()
        || readings.out_of_level.is_some();
    match (
        read.iter().any(Option::is_some),
        is_sized && knows_askew,
        measure.step.is_some(),
    ) {
        (false, ..) => "",
        (true, true, true) => ", of the largest upright rectangle, rounded down",
        (true, true, false) => ", of the largest upright rectangle",
        (true, false, _) => ", the smallest reading",
    }
}

/// What somebody should look at, and what was not read. The two levels that were not held are one note.
pub(crate) fn notes(unit: &QuotedUnit<'_>) -> Vec<String> {
    let Some(taken) = &unit.opening.readings else {
        return not_read(unit).into_iter().collect();
    };
    let Ok(measured) = measuring::measure(&taken.readings) else {
        return Vec::new();
    };
    let level = |finding: &&Finding| matches!(finding, Finding::NotLevelled(_));
    let levels = measured.findings.iter().filter(level).count();
    let findings = measured.findings.iter().filter(|finding| !level(finding));
    let mut notes: Vec<String> = findings
        .map(|finding| sentence(&finding.text(unit.used.catalog.declarations().length_unit)))
        .collect();
    if levels == 2 {
        notes.push("No level was held to it: not known whether it is plumb and level.".to_owned());
    } else {
        let one = measured.findings.iter().filter(level);
        notes
            .extend(one.map(|finding| sentence(&finding.text(unit.used.catalog.declarations().length_unit))));
    }
    notes
}

/// Said where a size was given of an opening from which nobody has deducted.
fn not_read(unit: &QuotedUnit<'_>) -> Option<String> {
    let measures = &unit.used.catalog.declarations().measures;
    let mut sizes = unit.opening.site.measures.iter();
    let is_open = sizes.any(|(index, measured)| {
        let of_opening = |measured: &Measured| measured.deducted_by == Some(DeductedBy::Nobody);
        measures.at(index).taken_as.is_some() && measured.as_ref().is_some_and(of_opening)
    });
    is_open.then(|| {
        "One width and one height were given: not known whether they are the smallest of three, and whether the opening \
         is square."
            .to_owned()
    })
}

fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    let mut sentence: String = first.into_iter().chain(letters).collect();
    sentence.retain(|letter| letter != '`');
    sentence.push('.');
    sentence
}

fn shown(unit: &QuotedUnit<'_>, number: &Number) -> String {
    let length = Value::Length(number.clone());
    let measures = &unit.used.catalog.declarations().measures;
    match measures.iter().next() {
        Some((index, _)) => unit.used.catalog.show(Subject::Measure(index), &length),
        None => number.to_string(),
    }
}

/// Whether a figure or a rule waits for something.
fn is_wanted(unit: &QuotedUnit<'_>, want: &Want) -> bool {
    let figures = unit
        .judgement
        .figures
        .iter()
        .filter_map(|finding| finding.outcome.wants());
    let rules = unit
        .judgement
        .rules
        .iter()
        .filter_map(|finding| match &finding.state {
            RuleState::Undecided(wants) => Some(wants),
            _ => None,
        });
    figures.chain(rules).any(|wants| wants.contains(want))
}
