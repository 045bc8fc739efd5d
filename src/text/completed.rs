//! How a unit was completed: why it departs from standards, the way out where it does not hold, and what the cheapest would save.

use astragal_core::complete::Aim;
use astragal_model::{AttributeIndex, Choice, Id, Subject, Value, Verdict};

use crate::quote::cheapest::{Cheapest, Less};
use crate::quote::nearest::Nearest;
use crate::quote::work::{Quote, QuotedUnit};
use crate::text::chosen::is_shown;
use crate::text::page::{Page, Tone};

/// Why something else than the standard was filled in, or why nothing else could be.
pub(crate) fn write_because(page: &mut Page, unit: &QuotedUnit<'_>) {
    let because = &unit.completion.because;
    if !because.is_empty() {
        let either = if unit.verdict() == Verdict::Broken {
            " either"
        } else {
            ""
        };
        page.text(4, &format!("With standards alone this would not hold{either}:"));
    }
    for (rule, message) in because {
        page.entry(6, "- ", &format!("{message} ({rule})"));
    }
    if let Some(reason) = &unit.completion.not_asked {
        page.text(4, &format!("Filled with standards alone: {reason}."));
    }
}

/// What must change at least where nothing that is filled in helps; below the rules that are broken, if any are.
pub(crate) fn write_way_out(page: &mut Page, unit: &QuotedUnit<'_>) {
    let completion = &unit.completion;
    if unit.is_broken_whatever_is_chosen() {
        page.blank();
        page.heading(2, Tone::Bad, "Does not hold, whatever is still chosen");
    }
    if completion.is_impossible {
        page.text(4, &impossible(unit));
    }
    if let Some(least) = completion.least_changes {
        let text = format!(
            "Whatever is filled in, at least {} of your choices must change.",
            count_word(least)
        );
        page.text(4, &text);
    }
    let Some(nearest) = &completion.nearest else {
        return;
    };
    page.text(4, &nearest_shown(unit, nearest));
    let tag = &unit.opening.tag;
    let shows = match nearest.changed.len() {
        1 => "shows which other single choices would do",
        _ => "shows how many choices each option would change",
    };
    // As long as the pins are there, no option is possible.
    let when = if completion.is_impossible {
        "Once they are loosened, "
    } else {
        ""
    };
    page.text(
        4,
        &format!("{when}`astragal options` with `--opening {tag}` {shows}."),
    );
}

/// Why nothing holds: what is pinned, where loosening it helps.
pub(super) fn impossible(unit: &QuotedUnit<'_>) -> String {
    let Some(least) = unit.completion.changes_without_pins else {
        return "Nothing holds for this opening, whatever is chosen.".to_owned();
    };
    let catalog = unit.used.catalog;
    let pinned = unit.pinned().map(|pin| catalog.label_of(Subject::Attribute(pin)));
    let pinned: Vec<String> = pinned.collect();
    format!(
        "Nothing holds with what is pinned: {}. Without the pins at least {} of your choices must change.",
        pinned.join(", "),
        count_word(least)
    )
}

/// `one`, `2`.
pub(super) fn count_word(count: i64) -> String {
    match count {
        1 => "one".to_owned(),
        more => more.to_string(),
    }
}

/// The picks that the nearest unit changes.
pub(super) fn nearest_shown(unit: &QuotedUnit<'_>, nearest: &Nearest) -> String {
    let catalog = unit.used.catalog;
    let changed = nearest.changed.iter().map(|pick| {
        let subject = Subject::Attribute(pick.attribute);
        let show = |id: &Id| catalog.show(subject, &Value::Option(id.clone()));
        let to = pick.to.as_ref().map_or("not asked".to_owned(), show);
        format!(
            "{}: {to} instead of {}",
            catalog.label_of(subject),
            show(&pick.from)
        )
    });
    let changed: Vec<String> = changed.collect();
    let unit = if nearest.depends {
        "As far as is known, the nearest unit that may hold"
    } else {
        "The nearest unit that holds"
    };
    format!("{unit} has {}.", changed.join("; "))
}

/// What the cheapest unit with the same picks would save.
pub(crate) fn write_cheapest(page: &mut Page, quote: &Quote<'_>, unit: &QuotedUnit<'_>) {
    let takes = quote.aim == Some(Aim::Cheapest);
    let standards = if takes { "; standards are filled in" } else { "" };
    match &unit.completion.cheapest {
        Cheapest::None if takes && unit.verdict() != Verdict::Broken => {
            page.text(4, "What is cheapest cannot be said; standards are filled in.");
        }
        Cheapest::None => {}
        Cheapest::Depends => page.text(
            4,
            &format!("What is cheapest depends on what is not known{standards}."),
        ),
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
