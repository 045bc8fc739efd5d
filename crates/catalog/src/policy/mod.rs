//! Dealer policies: a folder with `policy.toml` becomes what one dealer changes about one catalog.
//!
//! `hide = [{ attribute = "exterior", option = "old-green" }]` takes an option away, `standards` fill in another one,
//! `[[rule]]` and `[[tail]]` are read as in a catalog and in a book. One policy may be for several catalogs; it is resolved
//! against one of them at a time, and an entry may name the one that it is for.
//!
//! Always holds of a [`LoadedPolicy`]: it only narrows; no attribute is filled in with an option that it hides.
//! Cost: linear in the file, the sheets of its rules and the options of the catalog.
//! Source: docs/reference.md; MEANING, "Filling".

mod raw;
mod rounding;
mod standards;

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    AttributeIndex, Audience, Catalog, CatalogError, Declarations, Id, Policy, PolicyTerms, Rule, Subject,
};

use crate::declare::{RawRule, is_id};
use crate::finding::{Finding, Findings, Place};
use crate::library_files::{Library, LibraryPath, MemberKind};
use crate::load::{Resolver, Sheets, Unreadable, policy_circle, rules, wanted_by_rules};
use crate::nearest::{nearest, quoted_list};
use crate::source::Sources;
use crate::tree;
use crate::typed::{Names, PlacedText};
use raw::{RawEntry, RawPolicy};

/// A dealer policy, resolved against one catalog.
#[derive(Clone, Debug)]
pub struct LoadedPolicy {
    /// The policy.
    pub policy: Policy,
    /// Where `round_to` is written.
    rounding_place: Option<Place>,
}

/// Which policy it is, and for which catalogs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PolicyHeader {
    /// The id of the policy.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The ids of the catalogs.
    pub catalogs: Vec<Id>,
}

/// Reads the policy of a folder against one of its catalogs.
///
/// All findings are made in one go. `None` means that one of them is an error: there is no partial policy.
pub fn load_policy(
    library: &Library,
    folder: &LibraryPath,
    catalog: &Catalog,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<LoadedPolicy> {
    let own = Findings::new();
    let policy = load(library, folder, catalog, sources, &own);
    let found = own.into_sorted(sources);
    let has_errors = found.iter().any(Finding::is_error);
    findings.extend(found);
    policy.filter(|_| !has_errors)
}

/// Reads only which policy a folder holds, and for which catalogs.
///
/// What is wrong with the rest of the file is found by [`load_policy`] and not said here.
pub fn policy_header(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<PolicyHeader> {
    let unsaid = Findings::new();
    let raw = read(library, folder, sources, findings, &unsaid)?;
    let Some(header) = raw.header else {
        findings.extend(unsaid.into_sorted(sources));
        return None;
    };
    Some(PolicyHeader {
        id: header.head.id,
        label: header.label,
        catalogs: header.catalogs.iter().map(|text| Id::new(&text.text)).collect(),
    })
}

/// Findings about the file as such go to the first collection, about what it says to the second.
fn read(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    of_file: &Findings,
    of_keys: &Findings,
) -> Option<RawPolicy> {
    let home = folder.join(MemberKind::Policy.file_name());
    let file = library.read(sources, &home, None, of_file)?;
    let root = tree::read(sources, file, of_file)?;
    RawPolicy::read(&root, file, &home, sources, of_keys)
}

fn load(
    library: &Library,
    folder: &LibraryPath,
    catalog: &Catalog,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<LoadedPolicy> {
    let raw = read(library, folder, sources, findings, findings)?;
    let header = raw.header.as_ref()?;
    let declarations = catalog.declarations();
    let id = &declarations.id;
    if !header.catalogs.iter().any(|text| text.text == id.as_str()) {
        let message = format!("policy `{}` is not for catalog `{id}`", header.head.id);
        findings.push(
            Finding::error("POLICY_FOR_OTHER_CATALOG", message)
                .at(header.head.place.clone())
                .with_help(format!("use another policy, or add \"{id}\" to `catalogs`")),
        );
        return None;
    }
    entries_are_for_its_catalogs(&raw, findings);
    let mut rule_list: Vec<RawRule> = raw
        .rules
        .iter()
        .filter(|rule| is_for(rule.catalog.as_ref(), id))
        .cloned()
        .collect();
    rules_are_its_own(&mut rule_list, declarations, findings);
    let sheets = Sheets::read(library, sources, findings, wanted_by_rules(&rule_list));
    let names = Names::of_catalog(declarations);
    let dealer = BTreeSet::from([Id::new("dealer")]);
    let unreadable = Unreadable::default();
    let resolver = Resolver {
        names: &names,
        sheets: &sheets,
        findings,
        authorities: &dealer,
        unreadable: &unreadable,
    };
    let hidden = hidden(&raw, catalog, findings);
    let standards = standards::standards(&raw, catalog, &resolver);
    standards::none_is_hidden(&raw, catalog, &hidden, &standards, findings);
    let rules: Option<Vec<Rule>> = rules(&rule_list, &resolver, &Id::new("dealer"));
    if findings.has_errors() {
        return None;
    }
    let place = header.head.place.clone();
    let terms = PolicyTerms {
        id: header.head.id.clone(),
        label: header.label.clone(),
        hidden,
        standards: standards
            .into_iter()
            .map(|(at, (standard, _))| (at, standard))
            .collect(),
        rules: rules?,
        mark_ups: raw.mark_ups.clone(),
        round_to: header.round_to.as_ref().map(|(unit, _)| unit.clone()),
        tail: raw.tail.clone()?,
    };
    match catalog.policy(terms) {
        Ok(policy) => Some(LoadedPolicy {
            policy,
            rounding_place: header.round_to.as_ref().map(|(_, place)| place.clone()),
        }),
        Err(CatalogError::Cycle(chain)) => {
            findings.push(policy_circle(declarations, &chain, Some(place)));
            None
        }
        Err(CatalogError::OutOfRange(what)) => {
            findings.push(not_whole(&what, place));
            None
        }
    }
}

/// A policy that reads a position which its catalog does not have.
fn not_whole(what: &str, place: Place) -> Finding {
    let message = format!("the policy cannot be put together: {what} names nothing");
    Finding::error("POLICY_NOT_WHOLE", message)
        .at(place)
        .with_help("this is a fault of the program")
}

/// Whether an entry is for this catalog: it names it, or none.
fn is_for(named: Option<&PlacedText>, catalog: &Id) -> bool {
    named.is_none_or(|text| text.text == catalog.as_str())
}

fn entries_are_for_its_catalogs(raw: &RawPolicy, findings: &Findings) {
    let Some(header) = &raw.header else { return };
    let known = || header.catalogs.iter().map(|text| text.text.as_str());
    let named = raw
        .hide
        .iter()
        .chain(&raw.standards)
        .filter_map(|entry| entry.catalog.as_ref())
        .chain(raw.rules.iter().filter_map(|rule| rule.catalog.as_ref()));
    for text in named.filter(|text| !known().any(|known| known == text.text)) {
        let help = match nearest(&text.text, known()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("its catalogs are {}", quoted_list(known())),
        };
        findings.push(
            Finding::error(
                "UNKNOWN_CATALOG",
                format!("the policy is not for catalog `{}`", text.text),
            )
            .at(text.place.clone())
            .with_help(help),
        );
    }
}

/// Rules of a policy are the dealer's, and have ids that no rule of the catalog has.
fn rules_are_its_own(rules: &mut Vec<RawRule>, declarations: &Declarations, findings: &Findings) {
    let taken: BTreeSet<&Id> = declarations.rules.iter().map(|rule| &rule.id).collect();
    rules.retain(|rule| {
        if let Some(authority) = rule.authority.as_ref().filter(|text| text.text != "dealer") {
            let message = format!(
                "rule `{}` has authority `{}`; the rules of a policy are the dealer's",
                rule.head.id, authority.text
            );
            findings.push(
                Finding::error("NOT_DEALER", message)
                    .at(authority.place.clone())
                    .with_help("leave `authority` out, or put the rule into the catalog"),
            );
            return false;
        }
        if taken.contains(&rule.head.id) {
            let message = format!(
                "`{}` is a rule of catalog `{}` already",
                rule.head.id, declarations.id
            );
            findings.push(
                Finding::error("DUPLICATE_ID", message)
                    .at(rule.head.place.clone())
                    .with_help("give it another id"),
            );
            return false;
        }
        true
    });
}

/// The options that are hidden. An attribute that is `per` part may be named with its part, or bare for all parts.
fn hidden(raw: &RawPolicy, catalog: &Catalog, findings: &Findings) -> BTreeMap<AttributeIndex, BTreeSet<Id>> {
    let declarations = catalog.declarations();
    let mut hidden: BTreeMap<AttributeIndex, BTreeSet<Id>> = BTreeMap::new();
    for entry in raw
        .hide
        .iter()
        .filter(|entry| is_for(entry.catalog.as_ref(), &declarations.id))
    {
        let option = Id::new(&entry.value.text);
        for index in attributes_of(entry, catalog, findings) {
            let attribute = declarations.attributes.at(index);
            if attribute.option(&option).is_some() {
                hidden.entry(index).or_default().insert(option.clone());
            } else {
                let ids = || attribute.options.iter().map(|entry| entry.id.as_str());
                let help = match nearest(option.as_str(), ids()) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => format!("options are {}", quoted_list(ids())),
                };
                let message = format!("`{option}` is not an option of `{}`", attribute.id);
                findings.push(
                    Finding::error("UNKNOWN_OPTION", message)
                        .at(entry.value.place.clone())
                        .with_help(help),
                );
            }
        }
    }
    for (index, options) in &hidden {
        let attribute = declarations.attributes.at(*index);
        let all_hidden = attribute
            .options
            .iter()
            .all(|option| options.contains(&option.id));
        let entry = raw
            .hide
            .iter()
            .rev()
            .find(|entry| names_attribute(entry, *index, catalog));
        if let Some(entry) = entry.filter(|_| all_hidden) {
            let message = format!(
                "every option of `{}` is hidden",
                catalog.name_of(Subject::Attribute(*index))
            );
            findings.push(
                Finding::error("NO_OPTIONS", message)
                    .at(entry.value.place.clone())
                    .with_help("leave at least one"),
            );
        }
    }
    hidden
}

fn names_attribute(entry: &RawEntry, index: AttributeIndex, catalog: &Catalog) -> bool {
    let attribute = catalog.declarations().attributes.at(index);
    entry.attribute.text == attribute.id.as_str()
        || entry.attribute.text == catalog.name_of(Subject::Attribute(index))
}

/// The attributes that an entry names; none when a finding says why.
fn attributes_of(entry: &RawEntry, catalog: &Catalog, findings: &Findings) -> Vec<AttributeIndex> {
    let attributes = &catalog.declarations().attributes;
    let found: Vec<AttributeIndex> = attributes
        .positions()
        .filter(|index| names_attribute(entry, *index, catalog))
        .collect();
    let text = &entry.attribute;
    if found.is_empty() {
        let names: Vec<String> = attributes
            .positions()
            .map(|index| catalog.name_of(Subject::Attribute(index)))
            .collect();
        let known = || names.iter().map(String::as_str);
        let help = match nearest(&text.text, known()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("attributes are {}", quoted_list(known())),
        };
        let message = format!(
            "catalog `{}` has no attribute `{}`",
            catalog.declarations().id,
            text.text
        );
        findings.push(
            Finding::error("UNKNOWN_ATTRIBUTE", message)
                .at(text.place.clone())
                .with_help(if is_id(&text.text) || text.text.contains('.') {
                    help
                } else {
                    "write the id of an attribute".to_owned()
                }),
        );
    }
    let is_plant = |index: &AttributeIndex| attributes.at(*index).audience == Audience::Plant;
    if found.iter().any(is_plant) {
        let message = format!(
            "`{}` is determined by the plant; a policy cannot change it",
            text.text
        );
        findings.push(
            Finding::error("PLANT_IN_POLICY", message)
                .at(text.place.clone())
                .with_help("leave the entry out"),
        );
        return Vec::new();
    }
    found
}

#[cfg(test)]
mod tests;
