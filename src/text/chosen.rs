//! What the customer chose and what standard filled in, section by section.

use astragal_model::{AttributeIndex, Audience, Choice, Origin, Subject, Value};

use crate::quote::work::QuotedUnit;
use crate::text::opening::section;
use crate::text::page::Page;

/// The heading of attributes that name no section, where others do.
const NO_SECTION: &str = "Other";

pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>) {
    let groups = groups(unit);
    if groups.is_empty() {
        return;
    }
    section(page, "Chosen");
    let only_one = groups.len() == 1;
    for group in groups {
        if !only_one || group.title.is_some() {
            page.text(4, group.title.unwrap_or(NO_SECTION));
        }
        if !group.picked.is_empty() {
            page.entry(6, "you chose  ", &group.picked.join("; "));
        }
        if !group.standard.is_empty() {
            page.entry(6, "standard   ", &group.standard.join("; "));
        }
        if !group.completed.is_empty() {
            page.entry(6, "filled in  ", &group.completed.join("; "));
        }
    }
}

/// `Grey (Exterior colour)`: an option with its attribute, as sentences name it.
pub(crate) fn named(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> Option<String> {
    let label = unit.used.catalog.label_of(Subject::Attribute(attribute));
    option_shown(unit, attribute).map(|shown| format!("{shown} ({label})"))
}

/// `Exterior colour: Grey`: an option with its attribute, as lists name it.
pub(crate) fn chosen_line(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> Option<String> {
    let label = unit.used.catalog.label_of(Subject::Attribute(attribute));
    option_shown(unit, attribute).map(|shown| format!("{label}: {shown}"))
}

/// `Hinge: Egress hinge (the standard is Ordinary hinge)`: an option, and the standard that it stands for where it is another.
pub(crate) fn filled_line(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> Option<String> {
    let line = chosen_line(unit, attribute)?;
    Some(match standard_left(unit, attribute) {
        Some(standard) => format!("{line} (the standard is {standard})"),
        None => line,
    })
}

fn option_shown(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> Option<String> {
    let option = unit.filled.choices.get(attribute)?.option()?;
    let value = Value::Option(option.clone());
    Some(unit.used.catalog.show(Subject::Attribute(attribute), &value))
}

/// Whether a customer is asked the attribute, and so may see it.
pub(crate) fn is_shown(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> bool {
    unit.used.catalog.declarations().attributes.at(attribute).audience == Audience::Customer
}

/// The label of the standard that an attribute departs from.
fn standard_left(unit: &QuotedUnit<'_>, attribute: AttributeIndex) -> Option<String> {
    let mut departures = unit.completion.departures.iter();
    let (_, standard) = departures.find(|(one, _)| *one == attribute)?;
    let value = Value::Option(standard.clone());
    Some(unit.used.catalog.show(Subject::Attribute(attribute), &value))
}

/// The choices of one section.
struct Group<'a> {
    title: Option<&'a str>,
    picked: Vec<String>,
    standard: Vec<String>,
    completed: Vec<String>,
}

/// The sections that have a choice, in the order of their first attribute.
fn groups<'a>(unit: &QuotedUnit<'a>) -> Vec<Group<'a>> {
    let catalog = unit.used.catalog;
    let mut groups: Vec<Group<'a>> = Vec::new();
    for (index, attribute) in catalog.declarations().attributes.iter() {
        let Some(Choice::Chosen { origin, .. }) = unit.filled.choices.get(index) else {
            continue;
        };
        if !is_shown(unit, index) {
            continue;
        }
        let Some(mut line) = filled_line(unit, index) else {
            continue;
        };
        if let Origin::Picked { quoted: Some(date) } = origin {
            line = format!("{line} (quoted {date})");
        }
        let title = attribute.section.as_deref();
        let known = groups.iter().any(|group| group.title == title);
        if !known {
            groups.push(Group {
                title,
                picked: Vec::new(),
                standard: Vec::new(),
                completed: Vec::new(),
            });
        }
        let Some(group) = groups.iter_mut().find(|group| group.title == title) else {
            continue;
        };
        match origin {
            Origin::Picked { .. } => group.picked.push(line),
            Origin::Standard => group.standard.push(line),
            Origin::Completed => group.completed.push(line),
        }
    }
    groups
}
