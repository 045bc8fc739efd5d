//! The standards of a policy, and that no attribute is filled in with an option that the policy hides.
//!
//! What a standard may give is found by following it: both branches of a conditional, the options that another attribute
//! has left, the rows of a table. It is not asked whether a branch can be reached, so that a finding may be about a case
//! that never comes up; the help says how to rule it out.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    AttributeIndex, Catalog, Declarations, Definition, Expression, FigureIndex, Id, Standard, Subject, Value,
};

use super::raw::RawPolicy;
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
        let own = standards.get(index);
        let may_be = match own.map_or(&attribute.standard, |(standard, _)| standard) {
            Standard::Ask => BTreeSet::new(),
            Standard::Option(option) => BTreeSet::from([option.clone()]),
            Standard::Formula(formula) => results(formula, declarations, hidden),
        };
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
