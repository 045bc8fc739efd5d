//! The picks and pins of a request, looked up in the catalog.
//!
//! Whether a pick goes with anything else is not asked here.
//!
//! Always holds: each attribute is picked at most once, its option exists, and it is not one of the plant's; pins name picks.

use std::collections::BTreeSet;
use std::fmt::Display;

use astragal_model::{AttributeIndex, Audience, Id, Pick};

use crate::serve::day;
use crate::serve::fault::{Faults, Reason, shown};
use crate::serve::product::Product;
use crate::serve::v1;

/// The picks in their order.
pub(super) fn picks(written: &[v1::Pick], product: &Product, faults: &mut Faults) -> Vec<Pick> {
    let mut seen = BTreeSet::new();
    let mut found = Vec::new();
    for (at, pick) in written.iter().enumerate() {
        // Written out only where something is wrong.
        let name = format_args!("unit.picks[{at}].attribute");
        let Some(index) = attribute(&pick.attribute, product, name, faults) else {
            continue;
        };
        if !seen.insert(index) {
            let message = format!("{} is picked twice", shown(&pick.attribute));
            faults.push(Reason::Duplicate, name, &message);
            continue;
        }
        let declared = product.catalog.declarations().attributes.at(index);
        if declared.audience == Audience::Plant {
            let message = format!("{} is determined by the plant", shown(&pick.attribute));
            faults.push(Reason::NotPickable, name, &message);
            continue;
        }
        let quoted = pick.quoted.as_ref();
        let quoted = quoted.and_then(|day| day::read(day, &format!("unit.picks[{at}].quoted"), faults));
        let field = format_args!("unit.picks[{at}].option");
        let option = option(&pick.option, index, product, field, faults);
        found.extend(option.map(|option| Pick {
            attribute: index,
            option,
            quoted,
        }));
    }
    found
}

/// The attribute with this name.
pub(super) fn attribute(
    name: &str,
    product: &Product,
    field: impl Display,
    faults: &mut Faults,
) -> Option<AttributeIndex> {
    if !faults.has_name(name, &field, "an attribute") {
        return None;
    }
    let found = product.names.attributes.get(name).copied();
    if found.is_none() {
        let message = format!("catalog `{}` has no attribute {}", product.id(), shown(name));
        let known = product.asked.iter().map(|(_, name)| name.as_str());
        faults.push_unknown(Reason::UnknownAttribute, field, &message, (name, known));
    }
    found
}

/// The option of an attribute with this id.
pub(super) fn option(
    id: &str,
    attribute: AttributeIndex,
    product: &Product,
    field: impl Display,
    faults: &mut Faults,
) -> Option<Id> {
    if !faults.has_name(id, &field, "an option") {
        return None;
    }
    let declared = product.catalog.declarations().attributes.at(attribute);
    let found = declared.options.iter().find(|option| option.id.as_str() == id);
    if found.is_none() {
        let message = format!("attribute `{}` has no option {}", declared.id, shown(id));
        let known = declared.options.iter().map(|option| option.id.as_str());
        faults.push_unknown(Reason::UnknownOption, field, &message, (id, known));
    }
    found.map(|option| option.id.clone())
}

/// The attributes whose picks must never change.
pub(super) fn pins(
    written: &[String],
    picks: &[v1::Pick],
    product: &Product,
    faults: &mut Faults,
) -> Vec<AttributeIndex> {
    let mut found = BTreeSet::new();
    for (at, pin) in written.iter().enumerate() {
        let field = format_args!("unit.pins[{at}]");
        let Some(index) = attribute(pin, product, field, faults) else {
            continue;
        };
        if !picks.iter().any(|pick| pick.attribute == *pin) {
            let message = format!("{} is pinned and not picked", shown(pin));
            faults.push(Reason::PinWithoutPick, field, &message);
        } else if !found.insert(index) {
            let message = format!("{} is pinned twice", shown(pin));
            faults.push(Reason::Duplicate, field, &message);
        }
    }
    found.into_iter().collect()
}
