//! How a unit was completed: why it departs from standards, the way out where it does not hold, and what the cheapest would save.

use astragal_core::complete::Aim;
use astragal_model::{AttributeIndex, Choice, Subject, Value};

use crate::quote::completion::{Cheapest, Less};
use crate::quote::work::{Quote, QuotedUnit};
use crate::text::chosen::is_shown;
use crate::text::page::Page;

/// Why something else than the standard was filled in.
pub(crate) fn write_because(page: &mut Page, unit: &QuotedUnit<'_>) {
    let because = &unit.completion.because;
    if because.is_empty() {
        return;
    }
    page.text(4, "With standards alone this would not hold:");
    for (rule, message) in because {
        page.entry(6, "- ", &format!("{message} ({rule})"));
    }
}

/// What must change at least where nothing that is filled in helps.
pub(crate) fn write_way_out(page: &mut Page, unit: &QuotedUnit<'_>) {
    let tag = &unit.opening.tag;
    if unit.completion.is_impossible {
        page.text(4, "Nothing that could be chosen holds for this opening as it is.");
    }
    if let Some(least) = unit.completion.least_changes {
        let picks = match least {
            1 => "one of your choices".to_owned(),
            more => format!("{more} of your choices"),
        };
        let text = format!(
            "Whatever is filled in, at least {picks} must change. `astragal options` with `--opening {tag}` shows how."
        );
        page.text(4, &text);
    }
    if let Some(reason) = &unit.completion.not_asked {
        page.text(4, &format!("Filled with standards alone: {reason}."));
    }
}

/// What the cheapest unit with the same picks would save.
pub(crate) fn write_cheapest(page: &mut Page, quote: &Quote<'_>, unit: &QuotedUnit<'_>) {
    let takes = quote.aim == Some(Aim::Cheapest);
    match &unit.completion.cheapest {
        Cheapest::None => {}
        Cheapest::Depends => page.text(4, "What is cheapest depends on what is not known."),
        Cheapest::Quoted => page.text(4, "No unit with your choices costs less."),
        Cheapest::Less(less) => page.text(4, &compared(unit, less, takes)),
    }
}

fn compared(unit: &QuotedUnit<'_>, less: &Less, takes: bool) -> String {
    let currency = unit.used.book.currency;
    let saves = format!("{} {currency}", less.saves.grouped());
    let instead = instead(unit, &less.instead);
    if takes {
        format!("This is the cheapest unit with your choices, {saves} less than with standards: {instead}.")
    } else {
        format!("The cheapest unit with your choices costs {saves} less: {instead}.")
    }
}

/// `Glass package: Double clear, Screen: none`.
fn instead(unit: &QuotedUnit<'_>, choices: &[(AttributeIndex, Choice)]) -> String {
    let catalog = unit.used.catalog;
    let shown = choices.iter().filter(|(attribute, _)| is_shown(unit, *attribute));
    // What is no longer asked follows from the rest.
    let shown = shown.filter_map(|(attribute, choice)| {
        let subject = Subject::Attribute(*attribute);
        let value = Value::Option(choice.option()?.clone());
        let label = catalog.label_of(subject);
        Some(format!("{label}: {}", catalog.show(subject, &value)))
    });
    shown.collect::<Vec<_>>().join(", ")
}
