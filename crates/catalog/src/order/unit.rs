//! Picks, pins and waivers, looked up in the catalog of the unit.
//!
//! `{ attribute = "operation", option = "casement" }` becomes the position of `operation` in the catalog and the id of
//! its option. Whether a pick goes with anything else is not asked here.
//!
//! Always holds: each attribute is picked at most once, its option exists, and it is not one of the plant's; pins name
//! picks; a waiver names a rule that is waivable.
//! Cost: O(picks x log names).
//! Source: MEANING, "Filling".

use std::collections::BTreeMap;

use astragal_model::{Attribute, AttributeIndex, Audience, Id, Pick, UnitRequest, Waiver};

use super::facts::name_help;
use super::raw::Report;
use super::raw_unit::{RawPick, RawUnit, RawWaiver};
use super::vocabulary::{RuleKind, Vocabulary};
use crate::finding::Place;
use crate::nearest::{nearest, quoted_list};
use crate::tree::Spanned;

/// A unit, and where each of its picks stands.
#[derive(Debug)]
pub(super) struct FoundUnit {
    pub(super) request: UnitRequest,
    pub(super) picks: BTreeMap<AttributeIndex, Place>,
}

/// Looks the unit up in its catalog; findings say what does not exist there.
pub(super) fn find(raw: &RawUnit, words: &Vocabulary<'_>, report: Report<'_>) -> FoundUnit {
    let mut first: BTreeMap<AttributeIndex, &RawPick> = BTreeMap::new();
    let mut picks = Vec::new();
    for pick in &raw.picks {
        let Some(attribute) = attribute(&pick.attribute, words, report) else {
            continue;
        };
        if let Some(earlier) = first.get(&attribute) {
            let name = &pick.attribute.value;
            report.error_after(
                "DUPLICATE_PICK",
                &pick.attribute.span,
                format!("`{name}` is picked twice"),
                "keep one of the two picks",
                (&earlier.attribute.span, format!("`{name}` is picked here first")),
            );
            continue;
        }
        first.insert(attribute, pick);
        picks.extend(found_pick(pick, attribute, words, report));
    }
    let request = UnitRequest {
        catalog: words.id().clone(),
        picks,
        pins: pins(&raw.pins, &first, words, report),
        waivers: raw
            .waivers
            .iter()
            .map(|waiver| found_waiver(waiver, words, report))
            .collect(),
    };
    let places = first
        .iter()
        .map(|(attribute, pick)| (*attribute, report.place(&pick.attribute.span)));
    FoundUnit {
        request,
        picks: places.collect(),
    }
}

fn attribute(name: &Spanned<String>, words: &Vocabulary<'_>, report: Report<'_>) -> Option<AttributeIndex> {
    if let Some(index) = words.attributes.get(&name.value) {
        return Some(*index);
    }
    if let Some(single) = words.per_part.get(name.value.as_str()) {
        let message = format!("`{}` is one attribute for each part; say which", name.value);
        let help = format!("write {}", alternatives(single));
        report.error("PART_NOT_SAID", &name.span, message, help);
        return None;
    }
    let message = format!("catalog `{}` has no attribute `{}`", words.id(), name.value);
    let help = name_help(&name.value, words.pickable(), "attributes");
    report.error("UNKNOWN_ATTRIBUTE", &name.span, message, help);
    None
}

fn alternatives(names: &[String]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    match quoted.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} or {last}", rest.join(", ")),
        _ => quoted.concat(),
    }
}

fn found_pick(
    raw: &RawPick,
    index: AttributeIndex,
    words: &Vocabulary<'_>,
    report: Report<'_>,
) -> Option<Pick> {
    let attribute = words.catalog.declarations().attributes.get(index)?;
    let name = &raw.attribute;
    if attribute.audience == Audience::Plant {
        let message = format!("`{}` is determined by the plant and cannot be picked", name.value);
        report.error("PICK_ON_PLANT", &name.span, message, "leave the pick out");
        return None;
    }
    let option = raw.option.as_ref()?;
    let id = Id::new(&option.value);
    if attribute.option(&id).is_none() {
        let message = format!("`{}` has no option `{}`", name.value, option.value);
        report.error(
            "UNKNOWN_OPTION",
            &option.span,
            message,
            option_help(&option.value, attribute),
        );
        return None;
    }
    Some(Pick {
        attribute: index,
        option: id,
        quoted: raw.quoted,
    })
}

fn option_help(option: &str, attribute: &Attribute) -> String {
    let ids = || attribute.options.iter().map(|option| option.id.as_str());
    let list = format!("its options are {}", quoted_list(ids()));
    match nearest(option, ids()) {
        Some(near) => format!("did you mean `{near}`? {list}"),
        None => list,
    }
}

fn pins(
    raw: &[Spanned<String>],
    picked: &BTreeMap<AttributeIndex, &RawPick>,
    words: &Vocabulary<'_>,
    report: Report<'_>,
) -> Vec<AttributeIndex> {
    let mut first: BTreeMap<AttributeIndex, &Spanned<String>> = BTreeMap::new();
    let mut pins = Vec::new();
    for pin in raw {
        let Some(attribute) = attribute(pin, words, report) else {
            continue;
        };
        let name = &pin.value;
        if let Some(earlier) = first.get(&attribute) {
            report.error_after(
                "DUPLICATE_PIN",
                &pin.span,
                format!("`{name}` is pinned twice"),
                "keep one of the two",
                (&earlier.span, format!("`{name}` is pinned here first")),
            );
            continue;
        }
        first.insert(attribute, pin);
        if picked.contains_key(&attribute) {
            pins.push(attribute);
        } else {
            let message = format!("`{name}` is pinned but not picked");
            let help = "a pin keeps a pick from changing: pick an option of it, or leave the pin out";
            report.error("PIN_WITHOUT_PICK", &pin.span, message, help);
        }
    }
    pins
}

fn found_waiver(raw: &RawWaiver, words: &Vocabulary<'_>, report: Report<'_>) -> Waiver {
    let name = &raw.rule.value;
    let waivable = || match quoted_list(words.rules(true)) {
        list if list.is_empty() => "no rule of this catalog is waivable; leave the waiver out".to_owned(),
        list => format!("waivable are {list}"),
    };
    match words.rule(name) {
        RuleKind::Waivable | RuleKind::CannotSay => {}
        RuleKind::NotWaivable => {
            let message = format!("rule `{name}` is not waivable");
            report.error("NOT_WAIVABLE", &raw.rule.span, message, waivable());
        }
        RuleKind::Implicit => {
            let message = format!("rule `{name}` is one that every catalog has, and not waivable");
            report.error("NOT_WAIVABLE", &raw.rule.span, message, waivable());
        }
        RuleKind::Unknown => {
            let and_policy = if words.has_policy {
                " and its policy have"
            } else {
                " has"
            };
            let message = format!("catalog `{}`{and_policy} no rule `{name}`", words.id());
            let help = match nearest(name, words.rules(false)) {
                Some(near) => format!("did you mean `{near}`?"),
                None => waivable(),
            };
            report.error("UNKNOWN_RULE", &raw.rule.span, message, help);
        }
    }
    Waiver {
        rule: Id::new(name),
        reference: raw.reference.clone(),
        from: raw.from,
        until: raw.until,
    }
}
