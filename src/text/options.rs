//! Every option of one opening, for a person.
//!
//! Always holds: that an attribute is not asked is said where it is so, and is no line among the options, which somebody might pick.

use astragal_model::{AttributeIndex, Choice, Money, Number, Subject};

use crate::options::answer::UnitOptions;
use crate::options::engine::{OneOption, State, Withheld};
use crate::options::selection::SelectionState;
use crate::quote::completion::broken;
use crate::quote::words::CAUTION;
use crate::quote::work::Quote;
use crate::text::chosen::is_shown;
use crate::text::completed::{count_word, impossible, nearest_shown};
use crate::text::header;
use crate::text::page::{Page, Tone};

/// The options of the units of one opening.
pub(crate) fn options(quote: &Quote<'_>, units: &[UnitOptions<'_>]) -> String {
    let mut page = Page::default();
    for (number, unit) in units.iter().enumerate() {
        if number > 0 {
            page.blank();
        }
        write(&mut page, quote, unit);
    }
    page.into_text()
}

fn write(page: &mut Page, quote: &Quote<'_>, unit: &UnitOptions<'_>) {
    let title = format!("Options of opening {}", unit.unit.opening.tag);
    page.heading(0, Tone::Strong, &title);
    header::day(page, quote);
    header::catalog(page, &unit.unit.used);
    page.blank();
    selection(page, unit);
    for (attribute, options) in unit.options.attributes() {
        if is_shown(&unit.unit, attribute) {
            self::attribute(page, unit, attribute, options);
        }
    }
    page.blank();
    page.text(
        2,
        "A difference compares the cheapest unit with the option and the cheapest with your picks, before what is added \
         at the end; where it depends, it holds if all turns out as it needs.",
    );
    page.blank();
    page.text(0, CAUTION);
}

fn selection(page: &mut Page, unit: &UnitOptions<'_>) {
    match unit.state() {
        SelectionState::GoesTogether => {
            let least = unit.options.least();
            let least = least.map(|least| {
                let money = unit.options.money(least);
                format!("{} {}", money.grouped(), money.currency())
            });
            let text = "Your picks go together. The cheapest unit with them, items alone";
            page.spread(2, Tone::Good, text, &least.unwrap_or_default());
        }
        SelectionState::Depends => {
            let text = "Whether your picks go together depends on what is not known.";
            page.heading(2, Tone::Unsure, text);
        }
        SelectionState::Conflicts => {
            let fewest = count_word(unit.options.selection().possible.unwrap_or(1));
            let text = format!("Your picks do not go together: at least {fewest} of them must change.");
            page.heading(2, Tone::Bad, &text);
            conflict(page, unit);
        }
        SelectionState::Impossible => {
            page.heading(2, Tone::Bad, &impossible(&unit.unit));
            conflict(page, unit);
        }
    }
    if !unit.options.wants.is_empty() {
        page.text(2, "Not known, and may matter:");
        for want in &unit.options.wants {
            page.entry(4, "- ", &unit.unit.ask(want));
        }
    }
}

/// The picks that the nearest unit changes, and what is broken as it is.
fn conflict(page: &mut Page, unit: &UnitOptions<'_>) {
    if let Some(nearest) = &unit.unit.completion.nearest {
        page.text(2, &nearest_shown(&unit.unit, nearest));
    }
    let mut findings = broken(&unit.unit.judgement).peekable();
    if findings.peek().is_some() {
        page.text(2, "What does not hold:");
    }
    for finding in findings {
        page.entry(4, "- ", &format!("{} ({})", finding.message, finding.id));
    }
}

fn attribute<'a>(
    page: &mut Page,
    unit: &UnitOptions<'_>,
    attribute: AttributeIndex,
    options: impl Iterator<Item = OneOption<'a>>,
) {
    let catalog = unit.unit.used.catalog;
    let subject = Subject::Attribute(attribute);
    page.blank();
    page.heading(2, Tone::Strong, &catalog.label_of(subject));
    if unit.unit.filled.choices.get(attribute) == Some(&Choice::NotAsked) {
        page.text(4, "Not asked with these picks.");
    }
    let declared = catalog.declarations().attributes.at(attribute);
    for option in options {
        let Some(entry) = declared.options.get(option.value) else {
            continue;
        };
        let (tone, state) = state(&option);
        let picked = if option.picked { "your pick, " } else { "" };
        let difference = option.difference.map_or("-".to_owned(), |difference| {
            signed(&unit.options.money(difference))
        });
        let end = format!("{picked}{state}{difference:>12}");
        page.spread(4, tone, &entry.label, &end);
        // What every option waits for as the picks do stands at the top.
        let waits = option
            .waits
            .filter(|waits| !waits.is_empty() && Some(*waits) != unit.options.waits());
        if let Some(waits) = waits {
            let names: Vec<String> = waits.iter().map(|want| catalog.show_want(want)).collect();
            page.entry(6, "on ", &names.join("; "));
        }
    }
}

fn state(option: &OneOption) -> (Tone, String) {
    match option.state {
        State::Kept => (Tone::Good, "kept".to_owned()),
        State::Free => (Tone::Plain, "free".to_owned()),
        State::Changes(1) => (Tone::Unsure, "changes 1 pick".to_owned()),
        State::Changes(count) => (Tone::Unsure, format!("changes {count} picks")),
        State::Impossible => (
            Tone::Bad,
            match &option.withheld {
                None => "not possible".to_owned(),
                Some(Withheld::Hidden) => "not sold by this dealer".to_owned(),
                Some(Withheld::From(from)) => format!("offered from {from}"),
                Some(Withheld::Until(until)) => format!("was offered until {until}"),
            },
        ),
        State::Depends(0) => (Tone::Unsure, "depends".to_owned()),
        State::Depends(1) => (Tone::Unsure, "depends, changes 1 pick".to_owned()),
        State::Depends(count) => (Tone::Unsure, format!("depends, changes {count} picks")),
    }
}

/// `+12.50`, `-3.00`, `0.00`.
fn signed(money: &Money) -> String {
    let sign = if money.amount() > &Number::from(0) {
        "+"
    } else {
        ""
    };
    format!("{sign}{}", money.grouped())
}
