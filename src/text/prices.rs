//! What one unit costs, line by line, and what the opening costs.
//!
//! An attribute whose standard option stands there, and about which no item is, is included at 0.00, named without its
//! option, which stands above; standard items that come to nothing are gathered there too. A pick that is not the standard and about which no item is has no line
//! of its own; it may still change a size, and with it a price.

use astragal_model::{AttributeIndex, ItemFinding, ItemState, Money, Subject, Total};

use crate::quote::work::QuotedUnit;
use crate::text::chosen::{chosen_line, is_shown};
use crate::text::opening::section;
use crate::text::page::{Page, Tone};

pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>) {
    if unit.judgement.total == Total::NotPriced {
        return;
    }
    section(page, "Price of one unit");
    for finding in unit
        .judgement
        .items
        .iter()
        .filter(|finding| !is_gathered(finding))
    {
        let kind = if finding.standard { "standard" } else { "upcharge" };
        let amount = match &finding.state {
            ItemState::Amount(amount) => amount.grouped(),
            ItemState::Unknown(_) => "not known".to_owned(),
            ItemState::NoPrice => "no price".to_owned(),
        };
        page.spread(
            4,
            Tone::Plain,
            &item_label(unit, finding.item),
            &line_end(kind, &amount),
        );
    }
    let free = without_item(unit);
    let zero = Money::zero(unit.used.book.currency).grouped();
    if !free.standard.is_empty() {
        page.entry(4, &format!("included at {zero}: "), &free.standard.join(", "));
    }
    if !free.picked.is_empty() {
        page.entry(4, "no line of its own: ", &free.picked.join("; "));
    }
    for step in &unit.judgement.tail {
        let label = match &step.percent {
            Some(percent) => format!("{}, {percent} %", step.label),
            None => step.label.clone(),
        };
        page.spread(4, Tone::Plain, &label, &line_end("", &step.amount.grouped()));
    }
    totals(page, unit);
}

/// The label of an item, with its part in brackets.
pub(crate) fn item_label(unit: &QuotedUnit<'_>, item: astragal_model::ItemIndex) -> String {
    let declarations = unit.used.catalog.declarations();
    let declared = declarations.items.at(item);
    match declared.part {
        Some(part) => format!("{} ({})", declared.label, declarations.parts.at(part).label),
        None => declared.label.clone(),
    }
}

/// What stands at the right of a line: its kind, and the amount in a column of its own.
fn line_end(kind: &str, amount: &str) -> String {
    format!("{kind:<8}{amount:>16}    ")
}

fn totals(page: &mut Page, unit: &QuotedUnit<'_>) {
    let currency = unit.used.book.currency;
    let quantity = unit.opening.quantity;
    let (Some(one), Some(all)) = (unit.unit_total(), unit.opening_total()) else {
        let why = match unit.judgement.total {
            Total::NoPrice => "no price",
            _ => "not known",
        };
        page.spread(4, Tone::Strong, "Total of one unit", &line_end("", why));
        return;
    };
    let end = |amount: &Money| format!("{} {currency}", amount.grouped());
    page.spread(4, Tone::Strong, "Total of one unit", &end(one));
    if quantity != 1 {
        page.spread(4, Tone::Strong, &format!("Times {quantity}"), &end(&all));
    }
}

/// Whether an item is standard and comes to nothing.
fn is_gathered(finding: &ItemFinding) -> bool {
    let is_nothing = matches!(&finding.state, ItemState::Amount(amount) if amount.amount().is_zero());
    finding.standard && is_nothing
}

/// What comes to nothing.
#[derive(Default)]
struct WithoutItem {
    standard: Vec<String>,
    picked: Vec<String>,
}

/// An item that comes to nothing, by the attributes that it goes by.
fn gathered_label(unit: &QuotedUnit<'_>, item: &ItemFinding) -> String {
    let chosen = item.about.iter().copied();
    let chosen = chosen.filter(|attribute| chosen_line(unit, *attribute).is_some());
    let labels: Vec<String> = chosen.map(|attribute| attribute_label(unit, attribute)).collect();
    if labels.is_empty() {
        item_label(unit, item.item)
    } else {
        labels.join(", ")
    }
}

fn attribute_label(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> String {
    unit.used.catalog.label_of(Subject::Attribute(attribute))
}

fn without_item(unit: &QuotedUnit<'_>) -> WithoutItem {
    let (gathered, shown): (Vec<_>, Vec<_>) = unit
        .judgement
        .items
        .iter()
        .partition(|finding| is_gathered(finding));
    let is_priced = |attribute: AttributeIndex| shown.iter().any(|item| item.about.contains(&attribute));
    let mut free = WithoutItem::default();
    let mut named: Vec<AttributeIndex> = Vec::new();
    for (attribute, choice) in unit.filled.choices.iter() {
        let Some(line) = chosen_line(unit, attribute) else {
            continue;
        };
        if !is_shown(unit, attribute) || is_priced(attribute) {
            continue;
        }
        named.push(attribute);
        let alone = unit
            .alone
            .choices
            .get(attribute)
            .and_then(|choice| choice.option());
        if choice.is_picked() && alone != choice.option() {
            free.picked.push(line);
        } else {
            free.standard.push(attribute_label(unit, attribute));
        }
    }
    let unnamed = gathered
        .iter()
        .filter(|item| !item.about.iter().any(|attribute| named.contains(attribute)));
    free.standard
        .extend(unnamed.map(|item| gathered_label(unit, item)));
    free
}
