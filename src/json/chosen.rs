//! Picks and choices for a program: every attribute, those of the plant and those that are not asked included.

use astragal_model::{AttributeIndex, Audience, Catalog, Choice, Origin, Pick, Subject};
use serde::Serialize;

use crate::json::values::{Named, named, option};
use crate::quote::work::QuotedUnit;

#[derive(Serialize)]
pub(crate) struct PickAnswer {
    attribute: Named,
    option: Named,
    quoted: Option<String>,
}

/// What stands at one attribute.
#[derive(Serialize)]
pub(crate) struct ChoiceAnswer {
    attribute: Named,
    section: Option<String>,
    audience: &'static str,
    /// `chosen`, `not_asked` or `open`.
    state: &'static str,
    option: Option<Named>,
    plant_code: Option<String>,
    /// `picked`, `standard`, or `completed`: filled in with something other than its standard.
    origin: Option<&'static str>,
    quoted: Option<String>,
    /// What standards alone would put there.
    standard: Option<String>,
}

impl PickAnswer {
    pub(crate) fn new(catalog: &Catalog, pick: &Pick) -> Self {
        let subject = Subject::Attribute(pick.attribute);
        Self {
            attribute: named(catalog, subject),
            option: option(catalog, subject, &pick.option),
            quoted: pick.quoted.map(|date| date.to_string()),
        }
    }
}

impl ChoiceAnswer {
    pub(crate) fn all(unit: &QuotedUnit<'_>) -> Vec<Self> {
        unit.filled
            .choices
            .iter()
            .map(|(index, choice)| Self::new(unit, index, choice))
            .collect()
    }

    fn new(unit: &QuotedUnit<'_>, index: AttributeIndex, choice: &Choice) -> Self {
        let catalog = unit.used.catalog;
        let declared = catalog.declarations().attributes.at(index);
        let subject = Subject::Attribute(index);
        let (state, origin) = match choice {
            Choice::Open => ("open", None),
            Choice::NotAsked => ("not_asked", None),
            Choice::Chosen { origin, .. } => ("chosen", Some(origin)),
        };
        let (origin, quoted) = match origin {
            None => (None, None),
            Some(Origin::Standard) => (Some("standard"), None),
            Some(Origin::Completed) => (Some("completed"), None),
            Some(Origin::Picked { quoted }) => (Some("picked"), quoted.map(|date| date.to_string())),
        };
        let entry = choice.option().and_then(|id| declared.option(id));
        let alone = unit.alone.choices.get(index).and_then(Choice::option);
        Self {
            attribute: named(catalog, subject),
            section: declared.section.clone(),
            audience: audience_word(declared.audience),
            state,
            option: choice.option().map(|id| option(catalog, subject, id)),
            plant_code: entry.and_then(|entry| entry.plant_code.clone()),
            origin,
            quoted,
            standard: alone.map(ToString::to_string),
        }
    }
}

/// The word for who decides an attribute.
pub(super) fn audience_word(audience: Audience) -> &'static str {
    match audience {
        Audience::Customer => "customer",
        Audience::Plant => "plant",
    }
}
