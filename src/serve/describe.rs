//! A catalog as a front end needs it: attributes in file order, measures, site facts, price books and policies.
//!
//! Always holds: what the plant determines is left out.

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    Attribute, AttributeIndex, Audience, Declarations, FactIndex, MeasureIndex, Number, Scope, Standard,
    Subject, ValueType,
};

use crate::serve::product::{Dealer, Priced, Product};
use crate::serve::revisions::{BOOKS, CATALOGS, POLICIES, name, revision};
use crate::serve::v1;
use crate::serve::{day, number};

/// A catalog with all that a front end shows.
pub(super) fn catalog(product: &Product) -> v1::Catalog {
    let declared = product.catalog.declarations();
    let attributes = declared.attributes.iter();
    let asked = attributes.filter(|(_, attribute)| attribute.audience == Audience::Customer);
    v1::Catalog {
        attributes: asked.map(|(at, one)| attribute(product, at, one)).collect(),
        measures: declared
            .measures
            .positions()
            .map(|at| measure(product, at))
            .collect(),
        site_facts: declared
            .facts
            .positions()
            .map(|at| site_fact(product, at))
            .collect(),
        ..head(product)
    }
}

/// A catalog without its attributes, measures and site facts.
pub(super) fn head(product: &Product) -> v1::Catalog {
    let declared = product.catalog.declarations();
    let unit: LengthUnit = declared.length_unit;
    let parts = declared.parts.values().map(|part| v1::Part {
        id: part.id.to_string(),
        label: part.label.clone(),
    });
    v1::Catalog {
        name: name(CATALOGS, product.id()),
        revision: Some(revision(CATALOGS, product.id(), &product.revision)),
        label: declared.label.clone(),
        length_unit: unit.ucum().to_owned(),
        parts: parts.collect(),
        attributes: Vec::new(),
        measures: Vec::new(),
        site_facts: Vec::new(),
        books: product.books.iter().map(book).collect(),
        policies: product.dealers.iter().map(policy).collect(),
    }
}

fn attribute(product: &Product, at: AttributeIndex, attribute: &Attribute) -> v1::Attribute {
    let subject = Subject::Attribute(at);
    let parts = &product.catalog.declarations().parts;
    let part = attribute.part.map(|part| parts.at(part).id.to_string());
    let follows = !product.catalog.earlier_parts(at).is_empty();
    let options = attribute.options.iter().map(|option| v1::AttributeOption {
        id: option.id.to_string(),
        label: option.label.clone(),
        offered_from: option.validity.offered_from.map(day::write),
        offered_until: option.validity.offered_until.map(day::write),
        honoured_until: option.validity.honoured_until.map(day::write),
        replaced_by: option
            .validity
            .replaced_by
            .as_ref()
            .map(ToString::to_string)
            .unwrap_or_default(),
    });
    v1::Attribute {
        id: product.name(subject),
        label: product.catalog.label_of(subject),
        section: attribute.section.clone().unwrap_or_default(),
        part: part.unwrap_or_default(),
        options: options.collect(),
        conditional: attribute.applies_when.is_some(),
        standard: Some(standard(&attribute.standard, follows)),
    }
}

/// The standard; on a later part it is what stands at the first.
fn standard(standard: &Standard, follows: bool) -> v1::Standard {
    let (kind, option) = match standard {
        _ if follows => (v1::StandardKind::WorkedOut, None),
        Standard::Ask => (v1::StandardKind::Ask, None),
        Standard::Option(option) => (v1::StandardKind::Option, Some(option.to_string())),
        Standard::Formula(_) => (v1::StandardKind::WorkedOut, None),
    };
    v1::Standard {
        kind: kind.into(),
        option: option.unwrap_or_default(),
    }
}

fn measure(product: &Product, at: MeasureIndex) -> v1::Measure {
    let declarations = product.catalog.declarations();
    let declared = declarations.measures.at(at);
    let quantity = |number: &Option<Number>| quantity(declared.value_type, number.as_ref(), declarations);
    v1::Measure {
        id: declared.id.to_string(),
        label: declared.label.clone(),
        value_type: value_type(declared.value_type).into(),
        step: quantity(&declared.step),
        least: quantity(&declared.bounds.least),
        most: quantity(&declared.bounds.most),
    }
}

fn quantity(
    value_type: ValueType,
    number: Option<&Number>,
    declarations: &Declarations,
) -> Option<v1::Quantity> {
    number.map(|number| number::quantity(value_type, number, declarations.length_unit))
}

fn site_fact(product: &Product, at: FactIndex) -> v1::SiteFact {
    let declarations = product.catalog.declarations();
    let declared = declarations.facts.at(at);
    let quantity = |number: &Option<Number>| quantity(declared.value_type, number.as_ref(), declarations);
    let options = declared.options.iter().map(|(id, label)| v1::FactOption {
        id: id.to_string(),
        label: label.clone(),
    });
    let scope = match declared.of {
        Scope::House => v1::FactScope::House,
        Scope::Floor => v1::FactScope::Floor,
        Scope::Room => v1::FactScope::Room,
        Scope::Face => v1::FactScope::Face,
        Scope::Opening => v1::FactScope::Opening,
    };
    v1::SiteFact {
        id: declared.id.to_string(),
        label: declared.label.clone(),
        value_type: value_type(declared.value_type).into(),
        options: options.collect(),
        scope: scope.into(),
        step: quantity(&declared.step),
        least: quantity(&declared.bounds.least),
        most: quantity(&declared.bounds.most),
    }
}

fn value_type(value_type: ValueType) -> v1::ValueType {
    match value_type {
        ValueType::Bool => v1::ValueType::Truth,
        ValueType::Number => v1::ValueType::Number,
        ValueType::Length => v1::ValueType::Length,
        ValueType::Area => v1::ValueType::Area,
        ValueType::Date => v1::ValueType::Date,
        ValueType::Option => v1::ValueType::Option,
    }
}

fn book(priced: &Priced) -> v1::Book {
    let book = &priced.book;
    v1::Book {
        name: name(BOOKS, book.id.as_str()),
        revision: Some(revision(BOOKS, book.id.as_str(), &priced.revision)),
        label: book.label.clone(),
        currency_code: book.currency.code().to_owned(),
        in_force_from: book.from.map(day::write),
        in_force_until: book.until.map(day::write),
    }
}

fn policy(dealer: &Dealer) -> v1::Policy {
    let terms = &dealer.policy.terms;
    v1::Policy {
        name: name(POLICIES, terms.id.as_str()),
        revision: Some(revision(POLICIES, terms.id.as_str(), &dealer.revision)),
        label: terms.label.clone(),
    }
}
