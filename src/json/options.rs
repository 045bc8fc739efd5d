//! Every option of one opening, for a program.

use astragal_model::{Audience, Subject, Verdict};
use serde::Serialize;

use crate::json::{FORMAT, to_text};
use crate::options::answer::{AttributeOptions, OneOption, State, UnitOptions};

#[derive(Serialize)]
struct Answer {
    format: u32,
    units: Vec<UnitAnswer>,
}

#[derive(Serialize)]
struct UnitAnswer {
    opening: String,
    catalog: String,
    revision: String,
    book: BookAnswer,
    verdict: &'static str,
    /// The fewest picks that must change, not ruled out; null when nothing holds.
    selection_changes: Option<i64>,
    /// The least subtotal with the picks as they are, where it is certain.
    least: Option<String>,
    currency: &'static str,
    attributes: Vec<AttributeAnswer>,
    not_known: Vec<String>,
}

#[derive(Serialize)]
struct BookAnswer {
    id: String,
    revision: String,
}

#[derive(Serialize)]
struct AttributeAnswer {
    attribute: String,
    label: String,
    /// `customer`, or `plant` where nobody may pick.
    audience: &'static str,
    options: Vec<OptionAnswer>,
}

#[derive(Serialize)]
struct OptionAnswer {
    /// Null for *not asked*.
    option: Option<String>,
    label: Option<String>,
    state: &'static str,
    changes: Option<i64>,
    difference: Option<String>,
}

/// The options of the units of one opening, as JSON.
pub(crate) fn options(units: &[UnitOptions<'_>]) -> Result<String, String> {
    let units = units.iter().map(unit).collect();
    to_text(
        &Answer {
            format: FORMAT,
            units,
        },
        &[],
    )
}

fn unit(unit: &UnitOptions<'_>) -> UnitAnswer {
    let used = unit.unit.used;
    UnitAnswer {
        opening: unit.unit.opening.tag.clone(),
        catalog: used.id.to_string(),
        revision: used.catalog.revision().to_string(),
        book: BookAnswer {
            id: used.book.id.to_string(),
            revision: used.book.revision().to_string(),
        },
        verdict: match unit.verdict() {
            Verdict::Holds => "holds",
            Verdict::Undecided => "undecided",
            Verdict::Broken => "broken",
        },
        selection_changes: unit.selection.possible.map(|least| least.changes),
        least: unit.least().map(|money| money.amount().to_string()),
        currency: used.book.currency.code(),
        attributes: unit.attributes.iter().map(|one| attribute(unit, one)).collect(),
        not_known: unit
            .wants
            .iter()
            .map(|want| used.catalog.show_want(want))
            .collect(),
    }
}

fn attribute(unit: &UnitOptions<'_>, attribute: &AttributeOptions) -> AttributeAnswer {
    let catalog = unit.unit.used.catalog;
    let subject = Subject::Attribute(attribute.attribute);
    let declared = catalog.declarations().attributes.at(attribute.attribute);
    let one = |option: &OneOption| {
        let entry = declared.options.get(option.value);
        let (state, changes) = match option.state {
            State::Kept => ("kept", Some(0)),
            State::Free => ("free", Some(0)),
            State::Changes(changes) => ("changes", Some(changes)),
            State::Impossible => ("impossible", None),
            State::Depends => ("depends", None),
        };
        OptionAnswer {
            option: entry.map(|entry| entry.id.to_string()),
            label: entry.map(|entry| entry.label.clone()),
            state,
            changes,
            difference: option.difference.as_ref().map(|money| money.amount().to_string()),
        }
    };
    AttributeAnswer {
        attribute: catalog.name_of(subject),
        label: catalog.label_of(subject),
        audience: match declared.audience {
            Audience::Customer => "customer",
            Audience::Plant => "plant",
        },
        options: attribute.options.iter().map(one).collect(),
    }
}
