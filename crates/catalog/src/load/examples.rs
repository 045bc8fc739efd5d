//! Examples: picks, measures and facts by name, and the rules that should be broken or undecided.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    AttributeIndex, Audience, Example, ExpectedTotal, FactIndex, Id, Indexed, Measure, MeasureIndex, Pick,
    Position, Site, SiteFact,
};

use super::names::AttributeSlot;
use crate::declare::{Declared, IMPLICIT_RULES, RawExample, RawPick};
use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};
use crate::site_values::{fact_value, measured, number};
use crate::typed::{Names, PlacedText};

/// What examples may name.
pub(crate) struct Known<'a> {
    attributes: BTreeMap<String, (AttributeIndex, &'a AttributeSlot)>,
    declared: &'a Declared,
    rules: BTreeSet<String>,
    room_rules: BTreeSet<&'a str>,
    notices: BTreeSet<&'a str>,
}

impl<'a> Known<'a> {
    /// The names of a catalog. Rules that could not be read count as known.
    pub(crate) fn new(declared: &'a Declared, slots: &'a [AttributeSlot], names: &Names) -> Self {
        let mut attributes = BTreeMap::new();
        let mut rules: BTreeSet<String> = declared
            .rules
            .iter()
            .map(|rule| rule.head.id.to_string())
            .collect();
        rules.extend(IMPLICIT_RULES.map(str::to_owned));
        for (position, slot) in slots.iter().enumerate() {
            let Some(raw) = declared.attributes.get(slot.raw) else {
                continue;
            };
            let name = match slot.part.and_then(|part| names.part_id(part)) {
                Some(part) => format!("{}.{part}", raw.head.id),
                None => raw.head.id.to_string(),
            };
            for rule in ["applies", "offered"] {
                rules.insert(format!("{name}.{rule}"));
            }
            if raw.audience == Audience::Plant {
                rules.insert(format!("{name}.determined"));
            }
            attributes.insert(name, (AttributeIndex::from_usize(position), slot));
        }
        Self {
            attributes,
            declared,
            rules,
            room_rules: declared
                .room_rules
                .iter()
                .map(|rule| rule.head.id.as_str())
                .collect(),
            notices: declared
                .notices
                .iter()
                .map(|notice| notice.head.id.as_str())
                .collect(),
        }
    }
}

/// The examples of the model; `None` means that findings say why.
pub(crate) fn examples(
    declared: &Declared,
    known: &Known<'_>,
    measures: &Indexed<MeasureIndex, Measure>,
    facts: &Indexed<FactIndex, SiteFact>,
    unit: LengthUnit,
    findings: &Findings,
) -> Option<Vec<Example>> {
    let read: Vec<Option<Example>> = declared
        .examples
        .iter()
        .map(|raw| {
            let site = site(raw, measures, facts, unit, findings);
            example(raw, site, known, findings)
        })
        .collect();
    read.into_iter().collect()
}

fn example(raw: &RawExample, site: Option<Site>, known: &Known<'_>, findings: &Findings) -> Option<Example> {
    let picks = picks(raw, known, findings);
    let rule_ids = |texts: &[PlacedText]| {
        let is_known = |text: &str| known.rules.contains(text);
        ids(texts, "UNKNOWN_RULE", "rule", is_known, &known.rules, findings)
    };
    let breaks = rule_ids(&raw.breaks);
    let undecided = optional(raw.undecided.as_deref().map(rule_ids));
    let room_rule_ids = |texts: &[PlacedText]| {
        let is_known = |text: &str| known.room_rules.contains(text);
        let room_rules = &known.room_rules;
        ids(texts, "UNKNOWN_RULE", "room rule", is_known, room_rules, findings)
    };
    let room_breaks = room_rule_ids(&raw.room_breaks);
    let room_undecided = optional(raw.room_undecided.as_deref().map(room_rule_ids));
    let notices = optional(raw.notices.as_deref().map(|texts| {
        let is_known = |text: &str| known.notices.contains(text);
        ids(
            texts,
            "UNKNOWN_NOTICE",
            "notice",
            is_known,
            &known.notices,
            findings,
        )
    }));
    let total = optional(raw.total.as_ref().map(|total| {
        let amount = number(&total.amount, &total.amount_place, findings)?;
        Some(ExpectedTotal {
            book: Id::new(&total.book.text),
            amount,
        })
    }));
    Some(Example {
        id: raw.head.id.clone(),
        picks: picks?,
        site: site?,
        date: raw.date?,
        breaks: breaks?,
        undecided: undecided?,
        room_breaks: room_breaks?,
        room_undecided: room_undecided?,
        notices: notices?,
        total: total?,
    })
}

/// Turns "there is one, and it could not be read" into "it could not be read".
#[expect(clippy::option_option, reason = "left out and unreadable are different")]
fn optional<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        None => Some(None),
        Some(read) => read.map(Some),
    }
}

fn picks(raw: &RawExample, known: &Known<'_>, findings: &Findings) -> Option<Vec<Pick>> {
    let mut first: BTreeMap<AttributeIndex, Place> = BTreeMap::new();
    let read: Vec<Option<Pick>> = raw
        .picks
        .iter()
        .map(|raw| {
            let pick = pick(raw, known, findings)?;
            if let Some(before) = first.get(&pick.attribute) {
                findings.push(
                    Finding::error(
                        "DUPLICATE_PICK",
                        format!("`{}` is picked twice", raw.attribute.text),
                    )
                    .at(raw.attribute.place.clone())
                    .with_help("keep one of the two picks")
                    .with_related(
                        before.clone(),
                        format!("`{}` is picked here first", raw.attribute.text),
                    ),
                );
                return None;
            }
            first.insert(pick.attribute, raw.attribute.place.clone());
            Some(pick)
        })
        .collect();
    read.into_iter().collect()
}

fn pick(raw: &RawPick, known: &Known<'_>, findings: &Findings) -> Option<Pick> {
    let name = raw.attribute.text.as_str();
    let Some((attribute, slot)) = known.attributes.get(name) else {
        findings.extend(unknown_attribute(&raw.attribute, known));
        return None;
    };
    let declared = known.declared.attributes.get(slot.raw)?;
    if declared.audience == Audience::Plant {
        let message = format!("`{name}` is determined by the plant and cannot be picked");
        findings.push(
            Finding::error("PICK_ON_PLANT", message)
                .at(raw.attribute.place.clone())
                .with_help("leave the pick out; its standard says what it is"),
        );
        return None;
    }
    let option = Id::new(&raw.option.text);
    if !slot.options.iter().any(|entry| entry.id == option) {
        let ids = || slot.options.iter().map(|entry| entry.id.as_str());
        let help = match nearest(&raw.option.text, ids()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("options of `{name}` are {}", quoted_list(ids())),
        };
        let message = format!("`{}` is not an option of `{name}`", raw.option.text);
        findings.push(
            Finding::error("UNKNOWN_OPTION", message)
                .at(raw.option.place.clone())
                .with_help(help),
        );
        return None;
    }
    Some(Pick {
        attribute: *attribute,
        option,
        quoted: raw.quoted,
    })
}

/// No finding when the attribute is declared and could not be read: that is said already.
fn unknown_attribute(text: &PlacedText, known: &Known<'_>) -> Option<Finding> {
    let name = text.text.as_str();
    let first = name.split('.').next().unwrap_or_default();
    let parts: Vec<&str> = known
        .attributes
        .keys()
        .filter(|other| other.strip_prefix(name).is_some_and(|rest| rest.starts_with('.')))
        .map(String::as_str)
        .collect();
    if !parts.is_empty() {
        let message = format!("`{name}` is there once a part, and nothing says which part");
        let help = format!("write {}", quoted_list(parts.iter().copied()));
        return Some(
            Finding::error("PART_NOT_SAID", message)
                .at(text.place.clone())
                .with_help(help),
        );
    }
    let of = |other: &str| other.split('.').next() == Some(first);
    let is_declared = known
        .declared
        .attributes
        .iter()
        .any(|raw| raw.head.id.as_str() == first);
    if is_declared && !known.attributes.keys().any(|other| of(other)) {
        return None;
    }
    let help = match nearest(name, known.attributes.keys().map(String::as_str)) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!(
            "attributes are {}",
            quoted_list(known.attributes.keys().map(String::as_str))
        ),
    };
    Some(
        Finding::error("UNKNOWN_ATTRIBUTE", format!("there is no attribute `{name}`"))
            .at(text.place.clone())
            .with_help(help),
    )
}

fn ids<S: AsRef<str>>(
    texts: &[PlacedText],
    code: &'static str,
    what: &str,
    is_known: impl Fn(&str) -> bool,
    known: &BTreeSet<S>,
    findings: &Findings,
) -> Option<BTreeSet<Id>> {
    let mut ids = BTreeSet::new();
    let mut is_whole = true;
    for text in texts {
        if is_known(&text.text) {
            ids.insert(Id::new(&text.text));
            continue;
        }
        is_whole = false;
        let message = format!("there is no {what} `{}`", text.text);
        let mut finding = Finding::error(code, message).at(text.place.clone());
        if let Some(near) = nearest(&text.text, known.iter().map(AsRef::as_ref)) {
            finding = finding.with_help(format!("did you mean `{near}`?"));
        }
        findings.push(finding);
    }
    is_whole.then_some(ids)
}

fn site(
    raw: &RawExample,
    measures: &Indexed<MeasureIndex, Measure>,
    facts: &Indexed<FactIndex, SiteFact>,
    unit: LengthUnit,
    findings: &Findings,
) -> Option<Site> {
    let mut site = Site {
        measures: measures.values().map(|_| None).collect(),
        facts: facts.values().map(|_| None).collect(),
        ..Site::default()
    };
    let mut is_whole = true;
    for written in &raw.measures {
        let found = measures
            .iter()
            .find(|(_, measure)| measure.id.as_str() == written.name);
        let value = match found {
            Some((index, measure)) => measured(written, measure, unit, findings).map(|value| (index, value)),
            None => {
                let known = measures.values().map(|measure| measure.id.as_str());
                findings.push(unknown_name(
                    "UNKNOWN_MEASURE",
                    "measure",
                    &written.name,
                    &written.name_place,
                    known,
                ));
                None
            }
        };
        match value {
            Some((index, value)) => site.measures.put(index, Some(value)),
            None => is_whole = false,
        }
    }
    for written in &raw.facts {
        let found = facts.iter().find(|(_, fact)| fact.id.as_str() == written.name);
        let value = match found {
            Some((index, fact)) => fact_value(written, fact, unit, findings).map(|value| (index, value)),
            None => {
                let known = facts.values().map(|fact| fact.id.as_str());
                findings.push(unknown_name(
                    "UNKNOWN_FACT",
                    "site fact",
                    &written.name,
                    &written.name_place,
                    known,
                ));
                None
            }
        };
        match value {
            Some((index, value)) => site.facts.put(index, value),
            None => is_whole = false,
        }
    }
    is_whole.then_some(site)
}

fn unknown_name<'a>(
    code: &'static str,
    what: &str,
    name: &str,
    place: &Place,
    known: impl Iterator<Item = &'a str>,
) -> Finding {
    let finding = Finding::error(code, format!("there is no {what} `{name}`")).at(place.clone());
    match nearest(name, known) {
        Some(near) => finding.with_help(format!("did you mean `{near}`?")),
        None => finding.with_help(format!("{what}s are declared in the catalog")),
    }
}
