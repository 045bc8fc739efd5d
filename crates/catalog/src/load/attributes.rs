//! Attributes: what is asked, when, and what it is filled with.

use astragal_model::{Attribute, AttributeIndex, Audience, Id, Indexed, Position, Standard, Subject};

use super::names::AttributeSlot;
use super::resolver::Resolver;
use crate::declare::{Declared, RawAttribute, is_id};
use crate::finding::Finding;
use crate::nearest::{nearest, quoted_list};
use crate::typed::{Parsed, PlacedText, Scope, Type};

/// The attributes of the model; `None` means that findings say why.
pub(crate) fn attributes(
    declared: &Declared,
    slots: &[AttributeSlot],
    resolver: &Resolver<'_>,
) -> Option<Indexed<AttributeIndex, Attribute>> {
    // All are read, so that each one's findings are made.
    let read: Vec<Option<Attribute>> = slots
        .iter()
        .enumerate()
        .map(|(position, slot)| {
            let raw = declared.attributes.get(slot.raw)?;
            attribute(raw, AttributeIndex::from_usize(position), slot, resolver)
        })
        .collect();
    read.into_iter().collect()
}

fn attribute(
    raw: &RawAttribute,
    index: AttributeIndex,
    slot: &AttributeSlot,
    resolver: &Resolver<'_>,
) -> Option<Attribute> {
    let applies_when = resolver.when(slot.part, raw.applies_when.as_ref());
    let scope = resolver.scope_when(slot.part, raw.applies_when.as_ref());
    let wanted = resolver.names.type_of(Subject::Attribute(index));
    let standard = raw
        .standard
        .as_ref()
        .zip(wanted.as_ref())
        .and_then(|(text, wanted)| standard(text, &raw.head.id, &scope, wanted, resolver));
    if raw.audience == Audience::Plant
        && standard == Some(Standard::Ask)
        && let Some(text) = &raw.standard
    {
        let message = format!("attribute `{}` is for the plant and asks", raw.head.id);
        resolver.findings.push(
            Finding::error("PLANT_ASKS", message)
                .at(text.place.clone())
                .with_help("nobody is asked; give it a standard, or the audience `customer`"),
        );
        return None;
    }
    Some(Attribute {
        id: raw.head.id.clone(),
        part: slot.part,
        label: raw.label.clone(),
        section: raw.section.clone(),
        options: slot.options.to_vec(),
        applies_when: applies_when?,
        standard: standard?,
        audience: raw.audience,
    })
}

/// A standard: `ask`, an option of the attribute, or an expression that gives one.
pub(crate) fn standard(
    text: &PlacedText,
    whose: &Id,
    scope: &Scope<'_>,
    wanted: &Type,
    resolver: &Resolver<'_>,
) -> Option<Standard> {
    if text.text == "ask" {
        return Some(Standard::Ask);
    }
    let id = Id::new(&text.text);
    let ids = wanted.options.as_ref().map(|domain| &domain.ids)?;
    if ids.contains(&id) {
        return Some(Standard::Option(id));
    }
    let is_one_word = is_id(&text.text);
    if is_one_word && resolver.names.find(&text.text).is_none() && !resolver.unreadable.is_name(&text.text) {
        let help = match nearest(&text.text, ids.iter().map(Id::as_str)) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!(
                "write `ask`, an expression, or one of {}",
                quoted_list(ids.iter().map(Id::as_str))
            ),
        };
        let message = format!("`{}` is not an option of `{whose}`", text.text);
        resolver.findings.push(
            Finding::error("UNKNOWN_OPTION", message)
                .at(text.place.clone())
                .with_help(help),
        );
        return None;
    }
    let parsed = Parsed::parse(text.clone(), resolver.findings)?;
    if resolver.unreadable.is_in(&parsed) {
        return None;
    }
    scope.option_of(&parsed, wanted).map(Standard::Formula)
}
