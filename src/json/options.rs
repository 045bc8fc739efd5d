//! Every option of one opening, for a program.

use astragal_model::{AttributeIndex, Subject, Verdict, Wants};
use serde::Serialize;

use crate::exit::Exit;
use crate::json::chosen::audience_word;
use crate::json::quote::{CatalogAnswer, catalog, verdict_word};
use crate::json::values::{Amount, Named, Wanted, amount, named, option, wants};
use crate::json::{FORMAT, to_text};
use crate::options::answer::{UnitOptions, worst};
use crate::options::engine::{OneOption, State, Withheld};
use crate::text::CAUTION;

#[derive(Serialize)]
struct Answer {
    format: u32,
    verdict: &'static str,
    exit_code: u8,
    units: Vec<UnitAnswer>,
    caution: &'static str,
}

#[derive(Serialize)]
struct UnitAnswer {
    opening: String,
    catalog: CatalogAnswer,
    /// Whether the picks go together.
    verdict: &'static str,
    /// The fewest picks that must change, what is unknown counted as holding; null when nothing holds.
    selection_changes: Option<i64>,
    /// The least subtotal with the picks as they are, where it is certain.
    least_subtotal: Option<Amount>,
    attributes: Vec<AttributeAnswer>,
    /// What must be known before it is certain that the picks go together.
    waits: Vec<Wanted>,
    /// What must be known before all options are certain that are not ruled out.
    wants: Vec<Wanted>,
}

#[derive(Serialize)]
struct AttributeAnswer {
    attribute: Named,
    /// `customer`, or `plant` where nobody may pick.
    audience: &'static str,
    options: Vec<OptionAnswer>,
}

#[derive(Serialize)]
struct OptionAnswer {
    /// Null for *not asked*.
    option: Option<Named>,
    state: &'static str,
    /// How many other picks must change; at least so many where it depends.
    changes: Option<i64>,
    difference: Option<Amount>,
    /// What must be known before it is certain, where it depends.
    waits: Vec<Wanted>,
    /// Why it may not be chosen on the day, whatever else is: `hidden`, `not_yet_offered` or `no_longer_offered`.
    withheld: Option<WithheldAnswer>,
}

#[derive(Serialize)]
struct WithheldAnswer {
    why: &'static str,
    /// The first or the last day on which it is offered.
    date: Option<String>,
}

/// The options of the units of one opening, as JSON.
pub(crate) fn options(units: &[UnitOptions<'_>]) -> Result<String, String> {
    let verdict: Verdict = worst(units);
    let answer = Answer {
        format: FORMAT,
        verdict: verdict_word(verdict),
        exit_code: Exit::from(verdict).code(),
        units: units.iter().map(unit).collect(),
        caution: CAUTION,
    };
    to_text(&answer, &[])
}

fn unit(unit: &UnitOptions<'_>) -> UnitAnswer {
    let options = &unit.options;
    let amount_of = |minor_units| amount(&options.money(minor_units));
    UnitAnswer {
        opening: unit.unit.opening.tag.clone(),
        catalog: catalog(&unit.unit.used),
        verdict: verdict_word(options.verdict()),
        selection_changes: options.selection().possible,
        least_subtotal: options.least().map(amount_of),
        attributes: options
            .attributes()
            .map(|(at, options)| attribute(unit, at, options))
            .collect(),
        waits: waits(unit, options.waits()),
        wants: wants(unit.unit, &options.wants),
    }
}

/// What is waited for; nothing where nothing is.
fn waits(unit: &UnitOptions<'_>, waits: Option<&Wants>) -> Vec<Wanted> {
    waits.map(|waits| wants(unit.unit, waits)).unwrap_or_default()
}

fn attribute<'a>(
    unit: &UnitOptions<'_>,
    attribute: AttributeIndex,
    options: impl Iterator<Item = OneOption<'a>>,
) -> AttributeAnswer {
    let catalog = unit.unit.used.catalog;
    let subject = Subject::Attribute(attribute);
    let declared = catalog.declarations().attributes.at(attribute);
    let one = |one: OneOption<'_>| {
        let (state, changes) = match one.state {
            State::Kept => ("kept", Some(0)),
            State::Free => ("free", Some(0)),
            State::Changes(changes) => ("changes", Some(changes)),
            State::Impossible => ("impossible", None),
            State::Depends(changes) => ("depends", Some(changes)),
        };
        let entry = declared.options.get(one.value);
        OptionAnswer {
            option: entry.map(|entry| option(catalog, subject, &entry.id)),
            state,
            changes,
            difference: one
                .difference
                .map(|difference| amount(&unit.options.money(difference))),
            waits: waits(unit, one.waits),
            withheld: one.withheld.as_ref().map(withheld),
        }
    };
    AttributeAnswer {
        attribute: named(catalog, subject),
        audience: audience_word(declared.audience),
        options: options.map(one).collect(),
    }
}

fn withheld(withheld: &Withheld) -> WithheldAnswer {
    let (why, date) = match withheld {
        Withheld::Hidden => ("hidden", None),
        Withheld::From(from) => ("not_yet_offered", Some(from)),
        Withheld::Until(until) => ("no_longer_offered", Some(until)),
    };
    WithheldAnswer {
        why,
        date: date.map(ToString::to_string),
    }
}
