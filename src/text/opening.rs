//! The block of one opening: where it is, what was measured, and then section by section what follows.

use astragal_model::{Outcome, Subject, Verdict};

use crate::quote::work::{Quote, QuotedUnit, SignOff};
use crate::text::page::{Page, Tone};
use crate::text::{chosen, completed, measured, notices, prices, rules, why};

pub(crate) fn write(
    page: &mut Page,
    quote: &Quote<'_>,
    unit: &QuotedUnit<'_>,
    shared: &notices::Shared,
    explained: bool,
) {
    page.blank();
    page.rule("-");
    title(page, quote, unit);
    measured::write(page, unit);
    figures(page, unit);
    chosen::write(page, unit);
    completed::write_because(page, unit);
    rules::write_broken(page, unit);
    completed::write_way_out(page, unit);
    rules::write_undecided(page, unit);
    if !unit.is_broken_whatever_is_chosen() {
        rules::write_to_choose(page, unit);
    }
    rules::write_others(page, unit);
    prices::write(page, unit);
    completed::write_cheapest(page, quote, unit);
    if explained {
        why::write(page, unit);
    }
    notices::write(page, unit, shared);
    if let Some(note) = &unit.opening.note {
        section(page, "Note to the plant");
        page.text(4, note);
    }
}

/// A heading inside a block.
pub(crate) fn section(page: &mut Page, title: &str) {
    page.blank();
    page.heading(2, Tone::Strong, title);
}

/// A verdict in words.
pub(crate) fn verdict_words(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "holds",
        Verdict::Undecided => "cannot be decided yet",
        Verdict::Broken => "does not hold",
    }
}

pub(crate) fn verdict_tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Holds => Tone::Good,
        Verdict::Undecided => Tone::Unsure,
        Verdict::Broken => Tone::Bad,
    }
}

fn title(page: &mut Page, quote: &Quote<'_>, unit: &QuotedUnit<'_>) {
    let opening = unit.opening;
    let mut title = opening.tag.clone();
    let place = place(quote, unit);
    if !place.is_empty() {
        title = format!("{title}: {place}");
    }
    let quantity = format!("quantity {}", opening.quantity);
    page.spread(0, Tone::Strong, &title, &quantity);
    let verdict = unit.verdict();
    let label = &unit.used.catalog.declarations().label;
    let words = match verdict {
        Verdict::Broken if unit.is_broken_whatever_is_chosen() => "does not hold, whatever is still chosen",
        Verdict::Holds if !unit.set_aside().is_empty() => "holds without the rules that were not applied",
        Verdict::Holds => match unit.sign_off() {
            SignOff::Needed => "holds, needs a sign-off",
            SignOff::MayBeNeeded => "holds, may need a sign-off",
            SignOff::NotNeeded => verdict_words(verdict),
        },
        _ => verdict_words(verdict),
    };
    page.spread(0, verdict_tone(verdict), label, words);
    let mut remarks = Vec::new();
    if !opening.included {
        remarks.push("not included in the order".to_owned());
    }
    if let Some(other) = &opening.alternate_of {
        remarks.push(format!("an alternate to {other}"));
    }
    if !remarks.is_empty() {
        page.text(0, &remarks.join("; "));
    }
}

/// Room, floor and face by their labels.
fn place(quote: &Quote<'_>, unit: &QuotedUnit<'_>) -> String {
    let order = quote.order;
    let room = unit.opening.room.as_ref();
    let room = room.and_then(|id| order.rooms.iter().find(|room| room.id == *id));
    let floor = room.and_then(|room| room.floor.as_ref());
    let floor = floor.and_then(|id| order.floors.iter().find(|floor| floor.id == *id));
    let face = unit.opening.face.as_ref();
    let face = face.and_then(|id| order.faces.iter().find(|face| face.id == *id));
    let labels = [
        room.map(|room| room.label.clone()),
        floor.map(|floor| floor.label.clone()),
        face.map(|face| format!("face: {}", face.label)),
    ];
    labels.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn figures(page: &mut Page, unit: &QuotedUnit<'_>) {
    let catalog = unit.used.catalog;
    let mut lines = Vec::new();
    for finding in &unit.judgement.figures {
        let declared = catalog.declarations().figures.at(finding.figure);
        if !declared.shown || finding.part_exists.is_truth(false) {
            continue;
        }
        let subject = Subject::Figure(finding.figure);
        let shown = match &finding.outcome {
            Outcome::Undefined(cause) => format!("no value: {}", catalog.show_cause(cause)),
            other => catalog.show_outcome(subject, other),
        };
        lines.push((catalog.label_of(subject), shown));
    }
    columns(page, "Worked out", &lines);
}

/// A section of labels and values, the values under each other.
pub(crate) fn columns(page: &mut Page, title: &str, lines: &[(String, String)]) {
    const LABEL_MAX: usize = 36;
    if lines.is_empty() {
        return;
    }
    section(page, title);
    let width = lines.iter().map(|(label, _)| label.chars().count());
    let width = width.filter(|width| *width <= LABEL_MAX).max().unwrap_or(0);
    for (label, value) in lines {
        page.entry(4, &format!("{label:<width$}  "), value);
    }
}
