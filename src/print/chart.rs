//! Reads a catalog into its option chart: sections with attributes and options, and the rules beside them.
//!
//! A rule stands in full in one place and by its id everywhere else: see [`super::rules`] for where.

use astragal_catalog::{DeclarationKind, LoadedCatalog};
use astragal_model::{Attribute, AttributeIndex, Audience, Notice, OptionEntry, Standard, Subject};

use super::figures;
use super::pages::{AttributeSheet, Chart, NoticeLine, OptionLine, Section, StandardLine};
use super::reading::{Reading, first_of_each};
use super::rules::{self, Placed};
use super::written::Files;

/// What a section is called when its attributes name none.
const NO_SECTION: &str = "Other";

/// The option chart of a catalog.
pub(crate) fn chart(loaded: &LoadedCatalog, files: &Files) -> Chart {
    let reading = Reading::new(loaded, files);
    let declarations = reading.declarations();
    let mut placed = rules::place(reading);
    let titles = section_titles(reading);
    let sections = titles.iter().map(|title| Section {
        title: title.clone(),
        attributes: attributes(reading, title, &placed),
        rules: placed.take(|home| home.section.as_ref() == Some(title)),
    });
    let sections = sections.collect();
    let figures = figures::figures(reading);
    let authorities = placed.authorities(declarations);
    Chart {
        id: declarations.id.clone(),
        label: declarations.label.clone(),
        revision: reading.catalog.revision().into(),
        sections,
        sizes: placed.take(|home| home.is_size),
        others: placed.take(|_| true),
        authorities,
        figure_tables: figures::tables(&figures),
        figures,
        notices: first_of_each(&declarations.notices, |notice| &notice.id)
            .map(|notice| self::notice(reading, notice))
            .collect(),
    }
}

/// The section of an attribute, as its heading.
pub(crate) fn section_of(attribute: &Attribute) -> &str {
    attribute.section.as_deref().unwrap_or(NO_SECTION)
}

/// The sections in the order in which they first come.
fn section_titles(reading: Reading<'_>) -> Vec<String> {
    let mut titles: Vec<String> = Vec::new();
    for attribute in reading.declarations().attributes.values() {
        let title = section_of(attribute);
        if !titles.iter().any(|known| known == title) {
            titles.push(title.to_owned());
        }
    }
    titles
}

fn attributes(reading: Reading<'_>, title: &str, placed: &Placed) -> Vec<AttributeSheet> {
    let all = reading.declarations().attributes.iter();
    let own: Vec<(AttributeIndex, &Attribute)> = all
        .filter(|(_, attribute)| section_of(attribute) == title)
        .collect();
    first_of_each(own, |(_, attribute)| &attribute.id)
        .map(|(index, attribute)| self::attribute(reading, index, attribute, placed))
        .collect()
}

fn attribute(
    reading: Reading<'_>,
    index: AttributeIndex,
    attribute: &Attribute,
    placed: &Placed,
) -> AttributeSheet {
    let key = |key| (DeclarationKind::Attribute, &attribute.id, key);
    let standard = match &attribute.standard {
        Standard::Ask => StandardLine::Ask,
        Standard::Option(id) => {
            let label = attribute.option(id).map(|option| option.label.clone());
            StandardLine::Option(label.unwrap_or_else(|| id.to_string()))
        }
        Standard::Formula(formula) => {
            let mut condition = reading.formula(key("standard"), attribute.part, formula);
            condition.words = reading.words(attribute.part).say_option(formula, index);
            StandardLine::Formula(condition)
        }
    };
    AttributeSheet {
        id: attribute.id.clone(),
        label: attribute.label.clone(),
        parts: reading.parts(attribute.part),
        is_determined: attribute.audience == Audience::Plant,
        asked_when: reading.when(
            key("applies_when"),
            attribute.part,
            attribute.applies_when.as_ref(),
        ),
        standard,
        options: attribute
            .options
            .iter()
            .map(|option| self::option(reading, index, attribute, option))
            .collect(),
        rules: placed.mentioning(&attribute.id),
    }
}

fn option(
    reading: Reading<'_>,
    index: AttributeIndex,
    attribute: &Attribute,
    option: &OptionEntry,
) -> OptionLine {
    let subject = Subject::Attribute(index);
    let properties = option
        .properties
        .iter()
        .map(|(property, value)| (property.clone(), reading.catalog.show(subject, value)));
    let validity = &option.validity;
    let replaced_by = validity.replaced_by.as_ref().map(|id| {
        let label = attribute.option(id).map(|option| option.label.clone());
        (id.clone(), label.unwrap_or_else(|| id.to_string()))
    });
    OptionLine {
        id: option.id.clone(),
        label: option.label.clone(),
        plant_code: option.plant_code.clone(),
        is_standard: attribute.standard == Standard::Option(option.id.clone()),
        families: option.families.iter().cloned().collect(),
        properties: properties.collect(),
        offered_from: validity.offered_from,
        offered_until: validity.offered_until,
        honoured_until: validity.honoured_until,
        replaced_by,
    }
}

fn notice(reading: Reading<'_>, notice: &Notice) -> NoticeLine {
    let key = (DeclarationKind::Notice, &notice.id, "when");
    NoticeLine {
        id: notice.id.clone(),
        kind: notice.kind,
        parts: reading.parts(notice.part),
        when: reading.when(key, notice.part, notice.when.as_ref()),
        text: reading.message(&notice.text, notice.part),
        basis: notice.basis.clone(),
    }
}
