//! Every option of one opening, for a person.

use astragal_model::{AttributeIndex, Money, Number, RuleName, Subject, Verdict};

use crate::options::answer::UnitOptions;
use crate::options::engine::{OneOption, State, Withheld};
use crate::text::chosen::is_shown;
use crate::text::page::{Page, Tone};
use crate::text::{CAUTION, header};

/// The options of the units of one opening.
pub(crate) fn options(units: &[UnitOptions<'_>]) -> String {
    let mut page = Page::default();
    for (number, unit) in units.iter().enumerate() {
        if number > 0 {
            page.blank();
        }
        write(&mut page, unit);
    }
    page.into_text()
}

fn write(page: &mut Page, unit: &UnitOptions<'_>) {
    page.heading(
        0,
        Tone::Strong,
        &format!("Options of opening {}", unit.unit.opening.tag),
    );
    header::catalog(page, &unit.unit.used);
    page.blank();
    selection(page, unit);
    for (attribute, options) in unit.options.attributes() {
        if is_shown(unit.unit, attribute) {
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
    match unit.options.verdict() {
        Verdict::Holds => {
            let least = unit
                .options
                .least()
                .map(|least| unit.options.money(least).to_string())
                .unwrap_or_default();
            page.spread(
                2,
                Tone::Good,
                "Your picks go together. The cheapest unit with them, items alone",
                &least,
            );
        }
        Verdict::Undecided => {
            page.heading(
                2,
                Tone::Unsure,
                "Whether your picks go together depends on what is not known.",
            );
        }
        Verdict::Broken => {
            let fewest = unit.options.selection().possible;
            let text = match fewest {
                Some(fewest) => {
                    format!("Your picks do not go together: at least {fewest} of them must change.")
                }
                None => "Nothing holds for this opening, whatever is picked.".to_owned(),
            };
            page.heading(2, Tone::Bad, &text);
            for finding in &unit.unit.judgement.rules {
                if finding.rule == RuleName::BookInForce {
                    page.text(4, &finding.message);
                }
            }
        }
    }
    if !unit.options.wants.is_empty() {
        page.text(2, "Not known, and may matter:");
        for want in &unit.options.wants {
            page.entry(4, "- ", &unit.unit.ask(want));
        }
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
    let declared = catalog.declarations().attributes.at(attribute);
    for option in options {
        let label = match declared.options.get(option.value) {
            Some(entry) => entry.label.as_str(),
            None if option.state == State::Impossible => continue,
            None => "(not asked)",
        };
        let (tone, state) = state(&option);
        let difference = option.difference.map_or("-".to_owned(), |difference| {
            signed(&unit.options.money(difference))
        });
        page.spread(4, tone, label, &format!("{state}{difference:>12}"));
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
