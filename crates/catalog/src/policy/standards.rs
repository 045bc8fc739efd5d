//! The standards of a policy, and that no attribute is filled in with an option that the policy hides.
//!
//! What a standard may give is found by following it: both branches of a conditional, the options that another attribute
//! has left, the rows of a table. It is not asked whether a branch can be reached, so that a finding may be about a case
//! that never comes up; the help says how to rule it out.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    AttributeIndex, Catalog, Declarations, Definition, Expression, FigureIndex, Id, Standard, Subject, Value,
};

use super::raw::{RawEntry, RawPolicy};
use super::{attributes_of, is_for, names_attribute};
use crate::finding::{Finding, Findings, Place};
use crate::load::{Resolver, standard};

/// The standards that the policy sets, with their places.
pub(super) fn standards(
    raw: &RawPolicy,
    catalog: &Catalog,
    resolver: &Resolver<'_>,
) -> BTreeMap<AttributeIndex, (Standard, Place)> {
    let declarations = catalog.declarations();
    let mut standards: BTreeMap<AttributeIndex, (Standard, Place)> = BTreeMap::new();
    for entry in raw
        .standards
        .iter()
        .filter(|entry| is_for(entry.catalog.as_ref(), &declarations.id))
    {
        for index in attributes_of(entry, catalog, resolver.findings) {
            let attribute = declarations.attributes.at(index);
            let Some(wanted) = resolver.names.type_of(Subject::Attribute(index)) else {
                continue;
            };
            let scope = resolver.scope(attribute.part);
            let Some(read) = standard(&entry.value, &attribute.id, &scope, &wanted, resolver) else {
                continue;
            };
            let place = entry.value.place.clone();
            if let Some(first) = always_before(index, declarations)
                && entry.attribute.text != attribute.id.as_str()
            {
                resolver.findings.push(never_used(catalog, index, first, entry));
                continue;
            }
            if let Some((_, before)) = standards.get(&index) {
                let name = catalog.name_of(Subject::Attribute(index));
                resolver.findings.push(
                    Finding::error("DUPLICATE_ID", format!("`{name}` has two standards"))
                        .at(place)
                        .with_help("keep one of the two")
                        .with_related(before.clone(), "the first"),
                );
                continue;
            }
            standards.insert(index, (read, place));
        }
    }
    standards
}

/// The attributes of the earlier parts, in order, up to the first part that always exists.
fn sources_before(index: AttributeIndex, declarations: &Declarations) -> Vec<AttributeIndex> {
    let own = declarations.attributes.at(index);
    let before = declarations.attributes.iter().filter(|(_, other)| {
        other.id == own.id && other.part.zip(own.part).is_some_and(|(part, own)| part < own)
    });
    let mut before: Vec<_> = before.map(|(other, _)| other).collect();
    before.sort_by_key(|other| declarations.attributes.at(*other).part);
    let last = before
        .iter()
        .position(|other| always_exists(*other, declarations));
    before.truncate(last.map_or(before.len(), |last| last.saturating_add(1)));
    before
}

fn always_exists(index: AttributeIndex, declarations: &Declarations) -> bool {
    let part = declarations.attributes.at(index).part;
    part.is_none_or(|part| declarations.parts.at(part).when.is_none())
}

/// The attribute of the earlier part whose choice is always the standard of this one.
fn always_before(index: AttributeIndex, declarations: &Declarations) -> Option<AttributeIndex> {
    let last = sources_before(index, declarations).pop()?;
    always_exists(last, declarations).then_some(last)
}

fn never_used(catalog: &Catalog, index: AttributeIndex, first: AttributeIndex, entry: &RawEntry) -> Finding {
    let name = catalog.name_of(Subject::Attribute(index));
    let first = catalog.name_of(Subject::Attribute(first));
    let message = format!("the standard of `{name}` is what stands at `{first}`; this one is never used");
    Finding::error("STANDARD_NOT_USED", message)
        .at(entry.attribute.place.clone())
        .with_help(format!(
            "set the standard of `{first}`: the standard of a later part is what stands at the first"
        ))
}

/// Reports every attribute whose standard may be an option that is hidden.
pub(super) fn none_is_hidden(
    raw: &RawPolicy,
    catalog: &Catalog,
    hidden: &BTreeMap<AttributeIndex, BTreeSet<Id>>,
    standards: &BTreeMap<AttributeIndex, (Standard, Place)>,
    findings: &Findings,
) {
    let declarations = catalog.declarations();
    for (index, options) in hidden {
        let attribute = declarations.attributes.at(*index);
        for source in sources_before(*index, declarations) {
            findings.extend(follows_hidden(*index, source, (raw, catalog), hidden, standards));
        }
        if always_before(*index, declarations).is_some() {
            continue;
        }
        let own = standards.get(index);
        let standard = own.map_or(&attribute.standard, |(standard, _)| standard);
        let may_be = may_be(standard, declarations, hidden);
        let Some(option) = may_be.intersection(options).next() else {
            continue;
        };
        let hiding = raw
            .hide
            .iter()
            .find(|entry| entry.value.text == option.as_str() && names_attribute(entry, *index, catalog));
        let name = catalog.name_of(Subject::Attribute(*index));
        let (whose, place) = match own {
            Some((_, place)) => ("its standard here", Some(place.clone())),
            None => (
                "the plant's standard",
                hiding.map(|entry| entry.value.place.clone()),
            ),
        };
        let message = format!("`{option}` of `{name}` is hidden, and {whose} may be that");
        findings.push(
            Finding::error("HIDDEN_STANDARD", message)
                .at_if_known(place)
                .with_help(format!("set another standard for `{name}` in `standards`")),
        );
    }
}

/// A later part takes what stands at an earlier one: that its standard may be an option that only the later one hides.
fn follows_hidden(
    index: AttributeIndex,
    source: AttributeIndex,
    (raw, catalog): (&RawPolicy, &Catalog),
    hidden: &BTreeMap<AttributeIndex, BTreeSet<Id>>,
    standards: &BTreeMap<AttributeIndex, (Standard, Place)>,
) -> Option<Finding> {
    let declarations = catalog.declarations();
    let standard = standards
        .get(&source)
        .map_or(&declarations.attributes.at(source).standard, |(standard, _)| {
            standard
        });
    let may_be = may_be(standard, declarations, hidden);
    let hidden_there = hidden.get(&source);
    let option = may_be
        .intersection(hidden.get(&index)?)
        .find(|option| hidden_there.is_none_or(|there| !there.contains(*option)))?;
    let (name, first) = (
        catalog.name_of(Subject::Attribute(index)),
        catalog.name_of(Subject::Attribute(source)),
    );
    let hiding = raw
        .hide
        .iter()
        .find(|entry| entry.value.text == option.as_str() && names_attribute(entry, index, catalog));
    let message = format!(
        "`{option}` of `{name}` is hidden, and it takes what stands at `{first}`, whose standard may be that"
    );
    let finding =
        Finding::error("HIDDEN_STANDARD", message).at_if_known(hiding.map(|entry| entry.value.place.clone()));
    Some(finding.with_help(format!("set another standard for `{first}` in `standards`")))
}

/// Every option that a standard may be.
fn may_be(
    standard: &Standard,
    declarations: &Declarations,
    hidden: &BTreeMap<AttributeIndex, BTreeSet<Id>>,
) -> BTreeSet<Id> {
    match standard {
        Standard::Ask => BTreeSet::new(),
        Standard::Option(option) => BTreeSet::from([option.clone()]),
        Standard::Formula(formula) => results(formula, declarations, hidden),
    }
}

/// Every option that an expression may give.
fn results(
    expression: &Expression,
    declarations: &Declarations,
    hidden: &BTreeMap<AttributeIndex, BTreeSet<Id>>,
) -> BTreeSet<Id> {
    let mut found = BTreeSet::new();
    let mut figures: BTreeSet<FigureIndex> = BTreeSet::new();
    let mut stack = vec![expression];
    while let Some(node) = stack.pop() {
        match node {
            Expression::Literal(Value::Option(option)) => {
                found.insert(option.clone());
            }
            Expression::Conditional(_, then, otherwise) => stack.extend([&**then, &**otherwise]),
            Expression::Read(Subject::Attribute(index)) => {
                let left = hidden.get(index);
                let options = declarations
                    .attributes
                    .at(*index)
                    .options
                    .iter()
                    .map(|option| &option.id);
                found.extend(
                    options
                        .filter(|option| left.is_none_or(|hidden| !hidden.contains(*option)))
                        .cloned(),
                );
            }
            Expression::Read(Subject::Fact(index)) => {
                found.extend(
                    declarations
                        .facts
                        .at(*index)
                        .options
                        .iter()
                        .map(|(id, _)| id.clone()),
                );
            }
            Expression::Read(Subject::Figure(index)) if figures.insert(*index) => {
                match &declarations.figures.at(*index).definition {
                    Definition::Formula(formula) => stack.push(formula),
                    Definition::Table(table, _) => found.extend(table.rows.iter().filter_map(|row| {
                        if let Some(Value::Option(option)) = &row.value {
                            Some(option.clone())
                        } else {
                            None
                        }
                    })),
                }
            }
            _ => {}
        }
    }
    found
}
