//! `[[attribute]]`, `[[option_list]]` and the options in them.

use astragal_model::{Audience, Date, Id};

use super::ids::{self, IdKind};
use super::{Fields, Head, unique};
use crate::finding::{Finding, Place};
use crate::site_values::{RawFact, raw_values};
use crate::tree::{Node, NodeValue};
use crate::typed::{Parsed, PlacedText};

/// `[[attribute]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawAttribute {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) section: Option<String>,
    /// `None`: they could not be read.
    pub(crate) options: Option<RawOptions>,
    pub(crate) standard: Option<PlacedText>,
    pub(crate) applies_when: Option<Parsed>,
    pub(crate) audience: Audience,
    pub(crate) per: Option<PlacedText>,
}

/// The options of an attribute.
#[derive(Clone, Debug)]
pub(crate) enum RawOptions {
    /// Those of this list.
    List(PlacedText),
    /// These.
    Own(Vec<RawOption>),
}

/// `[[option_list]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawOptionList {
    pub(crate) head: Head,
    pub(crate) options: Option<Vec<RawOption>>,
}

/// One option.
#[derive(Clone, Debug)]
pub(crate) struct RawOption {
    pub(crate) id: Id,
    pub(crate) place: Place,
    pub(crate) label: String,
    pub(crate) families: Vec<PlacedText>,
    pub(crate) properties: Vec<RawFact>,
    pub(crate) swatch: Option<PlacedText>,
    pub(crate) plant_code: Option<String>,
    pub(crate) offered_from: Option<(Date, Place)>,
    pub(crate) offered_until: Option<(Date, Place)>,
    pub(crate) honoured_until: Option<(Date, Place)>,
    pub(crate) replaced_by: Option<PlacedText>,
}

pub(super) fn attribute(mut fields: Fields<'_>) -> Option<RawAttribute> {
    let head = fields.head(IdKind::Name);
    let label = fields.label();
    let section = fields.plain("section");
    let options = attribute_options(&mut fields);
    let standard = fields.required_text("standard");
    let applies_when = fields.expression("applies_when");
    let audience = fields.word(
        "audience",
        &[("customer", Audience::Customer), ("plant", Audience::Plant)],
    );
    let per = fields.text("per");
    fields.reader.finish();
    Some(RawAttribute {
        head: head?,
        label,
        section,
        options,
        standard,
        applies_when,
        audience: audience.unwrap_or_default(),
        per,
    })
}

pub(super) fn option_list(mut fields: Fields<'_>) -> Option<RawOptionList> {
    let head = fields.head(IdKind::Other);
    let options = if fields.reader.requires("options") {
        own_options(&mut fields)
    } else {
        None
    };
    fields.reader.finish();
    Some(RawOptionList { head: head?, options })
}

fn attribute_options(fields: &mut Fields<'_>) -> Option<RawOptions> {
    if !fields.reader.requires("options") {
        return None;
    }
    let node = fields.reader.node("options")?;
    if matches!(node.value, NodeValue::Text(_)) {
        return fields.text("options").map(RawOptions::List);
    }
    own_options(fields).map(RawOptions::Own)
}

fn own_options(fields: &mut Fields<'_>) -> Option<Vec<RawOption>> {
    let nodes = fields.reader.array("options")?;
    if nodes.value.is_empty() {
        let message = format!("{} has no options", fields.reader.what());
        fields.findings().push(
            Finding::error("NO_OPTIONS", message)
                .at(fields.place_of(&nodes.span))
                .with_help("give it at least one; `none` is an option too"),
        );
        return None;
    }
    let read: Vec<Option<RawOption>> = nodes.value.iter().map(|node| option(fields, node)).collect();
    let is_whole = read.iter().all(Option::is_some);
    let mut options: Vec<RawOption> = read.into_iter().flatten().collect();
    let what = format!("options of {}", fields.reader.what());
    unique::keep_first(
        &mut options,
        &what,
        |option| (option.id.as_str(), &option.place),
        fields.findings(),
    );
    is_whole.then_some(options)
}

fn option(fields: &Fields<'_>, node: &Node) -> Option<RawOption> {
    let mut fields = fields.inner(node, "option")?;
    let head = fields.head(IdKind::Option);
    let label = fields.plain("label");
    let families = fields.texts("families").unwrap_or_default();
    for family in &families {
        ids::check(IdKind::Other, &family.text, &family.place, fields.findings());
    }
    let properties = raw_values(&mut fields.reader, "properties", "property");
    for property in &properties {
        ids::check(
            IdKind::Name,
            &property.name,
            &property.name_place,
            fields.findings(),
        );
    }
    let swatch = fields.text("swatch");
    let plant_code = fields.plain("plant_code");
    let mut date = |key| {
        let date = fields.reader.date(key)?;
        Some((date.value, fields.reader.place_of(&date.span)))
    };
    let (offered_from, offered_until) = (date("offered_from"), date("offered_until"));
    let honoured_until = date("honoured_until");
    let replaced_by = fields.text("replaced_by");
    fields.reader.finish();
    let head = head?;
    Some(RawOption {
        label: label.unwrap_or_else(|| head.id.to_string()),
        id: head.id,
        place: head.place,
        families,
        properties,
        swatch,
        plant_code,
        offered_from,
        offered_until,
        honoured_until,
        replaced_by,
    })
}
