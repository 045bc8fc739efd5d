//! Every option of one opening, for a program.

use astragal_catalog::finding::Finding;
use astragal_catalog::source::Sources;
use astragal_model::{AttributeIndex, Subject, Wants};
use serde::Serialize;

use crate::exit::Exit;
use crate::json::chosen::audience_word;
use crate::json::completion::NearestAnswer;
use crate::json::judgement::RuleAnswer;
use crate::json::quote::{CatalogAnswer, catalog};
use crate::json::values::{Amount, Named, Wanted, amount, named, option, wants};
use crate::json::{FORMAT, JsonFinding, to_text};
use crate::options::answer::{UnitOptions, worst};
use crate::options::engine::{OneOption, State, Withheld};
use crate::options::selection::SelectionState;
use crate::quote::completion::broken;
use crate::quote::words::CAUTION;
use crate::quote::work::Quote;

#[derive(Serialize)]
struct Answer {
    format: u32,
    selection_state: &'static str,
    exit_code: u8,
    order: OrderHead,
    units: Vec<UnitAnswer>,
    caution: &'static str,
    findings: Vec<JsonFinding>,
}

#[derive(Serialize)]
struct OrderHead {
    id: String,
    label: String,
    /// The day as of which it is asked.
    date: String,
    date_given: bool,
}

#[derive(Serialize)]
struct UnitAnswer {
    opening: String,
    catalog: CatalogAnswer,
    /// Whether the picks go together: `goes_together`, `depends` on what is not known, `conflicts`, or `impossible`: nothing holds
    /// that keeps the pins.
    selection_state: &'static str,
    /// The fewest picks that must change, what is unknown counted as holding; null when nothing holds that keeps the pins.
    selection_changes: Option<i64>,
    /// The fewest picks that must change once the pins are loosened, where nothing holds with them and something does without.
    changes_without_pins: Option<i64>,
    /// What changes the fewest picks, where some must change; with pins loosened where nothing holds with them.
    nearest: Option<NearestAnswer>,
    /// Where the picks do not go together, the rules that are broken as a quote fills the unit in.
    broken: Vec<RuleAnswer>,
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
    /// Whether it is what the pick names.
    picked: bool,
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
pub(crate) fn options(
    quote: &Quote<'_>,
    units: &[UnitOptions<'_>],
    findings: &[Finding],
    sources: &Sources,
) -> Result<String, String> {
    let state = worst(units);
    let order = quote.order;
    let answer = Answer {
        format: FORMAT,
        selection_state: state_word(state),
        exit_code: Exit::from(state).code(),
        order: OrderHead {
            id: order.id.clone(),
            label: order.label.clone(),
            date: order.date.to_string(),
            date_given: quote.date_given,
        },
        units: units.iter().map(unit).collect(),
        caution: CAUTION,
        findings: JsonFinding::all(findings, sources),
    };
    to_text(&answer, &[])
}

fn state_word(state: SelectionState) -> &'static str {
    match state {
        SelectionState::GoesTogether => "goes_together",
        SelectionState::Depends => "depends",
        SelectionState::Conflicts => "conflicts",
        SelectionState::Impossible => "impossible",
    }
}

fn unit(unit: &UnitOptions<'_>) -> UnitAnswer {
    let options = &unit.options;
    let amount_of = |minor_units| amount(&options.money(minor_units));
    let quoted = &unit.unit;
    let nearest = quoted.completion.nearest.as_ref();
    UnitAnswer {
        opening: quoted.opening.tag.clone(),
        catalog: catalog(&quoted.used),
        selection_state: state_word(unit.state()),
        selection_changes: options.selection().possible,
        changes_without_pins: quoted.completion.changes_without_pins,
        nearest: nearest.map(|nearest| super::completion::nearest(quoted.used.catalog, nearest)),
        broken: broken(&quoted.judgement)
            .map(|finding| RuleAnswer::new(quoted, finding))
            .collect(),
        least_subtotal: options.least().map(amount_of),
        attributes: options
            .attributes()
            .map(|(at, options)| attribute(unit, at, options))
            .collect(),
        waits: waits(unit, options.waits()),
        wants: wants(quoted, &options.wants),
    }
}

/// What is waited for; nothing where nothing is.
fn waits(unit: &UnitOptions<'_>, waits: Option<&Wants>) -> Vec<Wanted> {
    waits.map(|waits| wants(&unit.unit, waits)).unwrap_or_default()
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
        let state = match one.state {
            State::Kept => "kept",
            State::Free => "free",
            State::Changes(_) => "changes",
            State::Impossible => "impossible",
            State::Depends(_) => "depends",
        };
        let entry = declared.options.get(one.value);
        OptionAnswer {
            option: entry.map(|entry| option(catalog, subject, &entry.id)),
            state,
            picked: one.picked,
            changes: one.state.changes(),
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
    WithheldAnswer {
        why: match withheld {
            Withheld::Hidden => "hidden",
            Withheld::From(_) => "not_yet_offered",
            Withheld::Until(_) => "no_longer_offered",
        },
        date: withheld.date().map(|date| date.to_string()),
    }
}
