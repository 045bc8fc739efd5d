//! What the standards of attributes come to, and when an attribute departs from its standard.
//!
//! A standard that reads no other attribute is worked out when a question is prepared. One that does is a relation whose cells
//! are *departures*: with "the screen is as the inside", a white screen in a black unit carries the cell "the screen is white
//! and should not be". Cells are one an option, so that a pick that is kept can be left out of the count.
//!
//! Always holds: an attribute that is not asked does not depart, nor one whose standard is `ask`, *not asked*, unknown or undefined.

use astragal_model::{AttributeIndex, Audience, Catalog, Comparison, PolicyTerms, Standard, Subject, Value};

use crate::ground::relation::{Kind, Root};
use crate::term::{Term, TermId, Translator};

/// What the standard of an attribute comes to; never known for `ask`.
pub(crate) fn standard(
    catalog: &Catalog,
    policy: Option<&PolicyTerms>,
    translator: &mut Translator<'_>,
    index: AttributeIndex,
) -> TermId {
    let declared = &catalog.declarations().attributes.at(index).standard;
    let standard = policy
        .and_then(|policy| policy.standards.get(&index))
        .unwrap_or(declared);
    let own = match standard {
        Standard::Ask => translator.terms.leaf(Term::Wanted(index)),
        Standard::Option(option) => translator.terms.constant(Some(Value::Option(option.clone()))),
        Standard::Formula(formula) => translator.expression(formula),
    };
    let before = catalog.earlier_parts(index);
    before.into_iter().rev().fold(own, |rest, (part, attribute)| {
        let exists = match &catalog.declarations().parts.at(part).when {
            Some(condition) => translator.expression(condition),
            None => translator.terms.truth(true),
        };
        let there = translator.terms.leaf(Term::Attribute(attribute));
        translator.terms.conditional(exists, there, rest)
    })
}

/// An attribute of the plant is what its standard says.
pub(crate) fn determined(
    catalog: &Catalog,
    policy: Option<&PolicyTerms>,
    translator: &mut Translator<'_>,
    index: AttributeIndex,
) -> TermId {
    let standard = standard(catalog, policy, translator, index);
    let value = translator.terms.leaf(Term::Attribute(index));
    let equal = translator.terms.compare(Comparison::Equal, value, standard);
    let yes = translator.terms.truth(true);
    let is_conditional = catalog.declarations().attributes.at(index).applies_when.is_some();
    let asked = if is_conditional {
        translator.terms.leaf(Term::IsAsked(index))
    } else {
        yes
    };
    translator.terms.conditional(asked, equal, yes)
}

/// Standards that read no attribute, by attribute, and a relation for each of the others.
///
/// Attributes of the plant cannot depart.
pub(crate) fn departures(
    catalog: &Catalog,
    policy: Option<&PolicyTerms>,
    translator: &mut Translator<'_>,
) -> (Vec<Option<TermId>>, Vec<Root>) {
    let (mut alone, mut relations) = (Vec::new(), Vec::new());
    for (index, attribute) in catalog.declarations().attributes.iter() {
        if attribute.audience == Audience::Plant {
            alone.push(None);
            continue;
        }
        let standard = standard(catalog, policy, translator, index);
        if translator.terms.reads(standard).is_empty() {
            alone.push(Some(standard));
            continue;
        }
        alone.push(None);
        let own = translator.terms.leaf(Term::Attribute(index));
        let root = translator.terms.departure(index, own, Some(standard));
        let name = catalog.name_of(Subject::Attribute(index));
        relations.push((format!("{name}.standard"), Kind::Charge, root));
    }
    (alone, relations)
}

/// Whether a policy needs a diagram of its own: its rules, and standards that read attributes or must be kept, are compiled in.
///
/// Everything else of a policy comes in when a question is prepared, on the diagram of the catalog alone.
#[must_use]
pub fn needs_own_diagram(catalog: &Catalog, policy: &PolicyTerms) -> bool {
    let is_compiled = |(index, standard): (&AttributeIndex, &Standard)| {
        let is_of_plant = catalog
            .declarations()
            .attributes
            .get(*index)
            .is_some_and(|attribute| attribute.audience == Audience::Plant);
        is_of_plant || !matches!(standard, Standard::Option(_)) || !catalog.earlier_parts(*index).is_empty()
    };
    !policy.rules.is_empty() || policy.standards.iter().any(is_compiled)
}
