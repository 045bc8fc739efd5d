//! A catalog folder as a catalog of the model: names looked up, expressions typed, tables read, `per` written out.
//!
//! `load_catalog` reads the declarations of all files, gives every name its position, finds the types of figures, and
//! resolves the rest one declaration after the other. An attribute that is `per = "sash"` becomes one attribute a
//! sash, and the condition under which the sash exists stands in front of its own.
//!
//! Always holds: reading goes on after a finding; a catalog is returned only when nothing was wrong with it.
//! Cost: linear in files, expressions and tables, times the parts for what is `per` part. Limits: see [`limits`].

mod attributes;
mod cycle;
mod drawing;
mod examples;
mod figures;
mod items;
mod known;
mod limits;
mod names;
mod options;
mod places;
mod resolver;
mod room_rules;
mod rules;
mod sheets;
mod site_checks;
mod taken;
mod types;

pub(crate) use places::ListUse;
pub use places::{Declaration, DeclarationKind, Places};

pub(crate) use attributes::standard;
pub(crate) use cycle::{circle, policy_circle};
pub(crate) use resolver::{Resolver, Unreadable};
pub(crate) use rules::{AUTHORITIES, rules};
pub(crate) use sheets::{Sheets, wanted_by_rules};

use std::collections::BTreeSet;

use astragal_model::{Catalog, CatalogError, Declarations, Id};

use crate::declare::{Declared, RawHeader, declared};
use crate::finding::{Finding, Findings};
use crate::library_files::{Library, LibraryPath};
use crate::source::Sources;
use names::{Skeleton, skeleton};

/// A catalog, and where its declarations stand.
#[derive(Clone, Debug)]
pub struct LoadedCatalog {
    /// The catalog.
    pub catalog: Catalog,
    /// Where each attribute, rule, figure, item, notice, example and part stands.
    pub places: Places,
}

/// Reads the catalog in a folder of a library; `None` means that findings say why.
///
/// Warnings leave the catalog usable; any error among the findings that this call adds does not.
pub fn load_catalog(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<LoadedCatalog> {
    let own = Findings::new();
    let loaded = load(library, folder, sources, &own);
    let found = own.into_sorted(sources);
    let has_errors = found.iter().any(Finding::is_error);
    let is_silent = loaded.is_none() && !has_errors;
    findings.extend(found);
    if is_silent {
        let message = format!("the catalog in `{folder}` cannot be put together");
        findings
            .push(Finding::error("CATALOG_NOT_WHOLE", message).with_help("this is a fault of the program"));
    }
    loaded.filter(|_| !has_errors)
}

fn load(
    library: &Library,
    folder: &LibraryPath,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<LoadedCatalog> {
    let mut declared = declared(library, folder, sources, findings)?;
    declared.make_unique(findings);
    let sheets = Sheets::read(library, sources, findings, sheets::wanted(&declared));
    // What a missing file declares would be missed by everything that names it.
    if declared.has_gaps {
        return None;
    }
    let header = declared.header.clone()?;
    let skeleton = skeleton(&declared, &header, findings)?;
    let places = Places::of(&declared, &skeleton, &sheets);
    let declarations = resolve(&declared, &header, skeleton, &sheets, findings)?;
    if findings.has_errors() {
        return None;
    }
    let steps = cycle::StepNames::of(&declarations, &places);
    match Catalog::new(declarations) {
        Ok(catalog) => Some(LoadedCatalog { catalog, places }),
        Err(CatalogError::Cycle(chain)) => {
            findings.push(circle(&steps.name(&chain)));
            None
        }
        Err(CatalogError::OutOfRange(_)) => None,
    }
}

fn resolve(
    declared: &Declared,
    header: &RawHeader,
    skeleton: Skeleton,
    sheets: &Sheets,
    findings: &Findings,
) -> Option<Declarations> {
    let Skeleton {
        mut names,
        attributes: attribute_slots,
        figures: figure_slots,
        mut unreadable,
        parts: part_labels,
        ..
    } = skeleton;
    let conditions = types::find_types(declared, &mut names, &mut unreadable, findings);
    let authorities = known_authorities(declared, findings);
    let resolver = Resolver {
        names: &names,
        sheets,
        findings,
        authorities: &authorities,
        unreadable: &unreadable,
    };
    let attributes = attributes::attributes(declared, &attribute_slots, &resolver);
    let figures = figures::figures(declared, &figure_slots, &resolver);
    let rules = rules(&declared.rules, &resolver, &Id::new("plant"));
    let room_rules = room_rules::room_rules(declared, &resolver);
    let items = items::items(declared, &resolver);
    let notices = rules::notices(declared, &resolver);
    let drawing = drawing::drawing(declared.drawing.as_ref(), &resolver);
    let sides_are_whole = taken::sides_are_whole(declared, findings);
    let measures = known::measures(declared, header, findings);
    let facts = known::facts(declared, header, findings);
    let site_checks = site_checks::site_checks(declared, &resolver);
    let known = examples::Known::new(declared, &attribute_slots, &names);
    let examples = measures
        .as_ref()
        .zip(facts.as_ref())
        .and_then(|(measures, facts)| {
            examples::examples(declared, &known, measures, facts, header.length_unit, findings)
        });
    let part = |(position, mut part): (usize, astragal_model::Part)| {
        part.when = conditions.get(&astragal_model::PartIndex(position)).cloned();
        part
    };
    Some(Declarations {
        id: header.head.id.clone(),
        label: header.label.clone(),
        length_unit: header.length_unit,
        authorities: declared
            .authorities
            .iter()
            .map(|authority| (authority.head.id.clone(), authority.label.clone()))
            .collect(),
        parts: part_labels.into_iter().enumerate().map(part).collect(),
        attributes: attributes?,
        measures: measures?,
        facts: facts?,
        site_checks: site_checks?,
        figures: figures?,
        rules: rules?,
        room_rules: room_rules?,
        items: items?,
        notices: notices?,
        drawing: sides_are_whole.then_some(drawing?)?,
        examples: examples?,
    })
}

/// The authorities that a rule may name.
fn known_authorities(declared: &Declared, findings: &Findings) -> BTreeSet<Id> {
    let mut known: BTreeSet<Id> = AUTHORITIES.iter().map(|word| Id::new(word)).collect();
    for authority in &declared.authorities {
        if !known.insert(authority.head.id.clone()) {
            let message = format!(
                "authority `{}` is there without being declared",
                authority.head.id
            );
            findings.push(
                Finding::error("DUPLICATE_ID", message)
                    .at(authority.head.place.clone())
                    .with_help("leave it out"),
            );
        }
    }
    known
}

#[cfg(test)]
pub(crate) mod tests;
