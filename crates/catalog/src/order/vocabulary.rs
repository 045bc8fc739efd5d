//! What an order may name in one catalog: attributes, measures, facts and rules, by name.
//!
//! Where `glazing` is one attribute a sash, `glazing.upper` and `glazing.lower` are attributes and bare `glazing` is
//! remembered as what a person may write instead.
//!
//! Always holds: a name leads to at most one attribute.
//! Cost: O(catalog) to build, O(log names) to ask.
//! Source: MEANING, "Parts" and "Filling".

use std::collections::BTreeMap;

use astragal_model::{AttributeIndex, Audience, Catalog, FactIndex, Id, MeasureIndex, Policy, Subject};

use crate::declare::IMPLICIT_RULES;

/// What an order may name in one catalog.
#[derive(Debug)]
pub(super) struct Vocabulary<'a> {
    pub(super) catalog: &'a Catalog,
    pub(super) attributes: BTreeMap<String, AttributeIndex>,
    /// The bare names of attributes that are per part, with the names of the single ones.
    pub(super) per_part: BTreeMap<&'a str, Vec<String>>,
    pub(super) measures: BTreeMap<&'a str, MeasureIndex>,
    pub(super) facts: BTreeMap<&'a str, FactIndex>,
    /// Whether rules of a policy are among the rules.
    pub(super) has_policy: bool,
    /// The rules that are declared, and whether each is waivable.
    rules: BTreeMap<&'a str, bool>,
    /// Whether these are all of them: a policy that cannot be read may have more.
    has_all_rules: bool,
}

/// What a waiver may find at the name of a rule.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum RuleKind {
    /// Declared, and waivable.
    Waivable,
    /// Declared, and not waivable.
    NotWaivable,
    /// One that every catalog has: it is declared nowhere.
    Implicit,
    /// There is none.
    Unknown,
    /// It may be one of a policy that cannot be read.
    CannotSay,
}

impl<'a> Vocabulary<'a> {
    /// The names of a catalog, and of the rules of a policy for it; `has_all_rules` is false when a policy is missing.
    pub(super) fn new(catalog: &'a Catalog, policy: Option<&'a Policy>, has_all_rules: bool) -> Self {
        let declared = catalog.declarations();
        let mut attributes = BTreeMap::new();
        let mut per_part: BTreeMap<&str, Vec<String>> = BTreeMap::new();
        for (index, attribute) in declared.attributes.iter() {
            let name = catalog.name_of(Subject::Attribute(index));
            if attribute.part.is_some() {
                per_part
                    .entry(attribute.id.as_str())
                    .or_default()
                    .push(name.clone());
            }
            attributes.insert(name, index);
        }
        let mut rules = BTreeMap::new();
        let of_policy = policy.iter().flat_map(|policy| &policy.terms.rules);
        for rule in declared.rules.iter().chain(of_policy) {
            let is_waivable = rules.entry(rule.id.as_str()).or_insert(true);
            *is_waivable &= rule.waivable;
        }
        let measures = declared.measures.iter();
        let facts = declared.facts.iter();
        Self {
            catalog,
            attributes,
            per_part,
            measures: measures
                .map(|(index, measure)| (measure.id.as_str(), index))
                .collect(),
            facts: facts.map(|(index, fact)| (fact.id.as_str(), index)).collect(),
            has_policy: policy.is_some(),
            rules,
            has_all_rules,
        }
    }

    /// The id of the catalog.
    pub(super) fn id(&self) -> &'a Id {
        &self.catalog.declarations().id
    }

    /// The names of the attributes that a customer picks.
    pub(super) fn pickable(&self) -> impl Iterator<Item = &str> {
        let attributes = &self.catalog.declarations().attributes;
        self.attributes
            .iter()
            .filter(|(_, index)| {
                attributes
                    .get(**index)
                    .is_some_and(|found| found.audience == Audience::Customer)
            })
            .map(|(name, _)| name.as_str())
    }

    /// What stands at the name of a rule.
    pub(super) fn rule(&self, name: &str) -> RuleKind {
        match self.rules.get(name) {
            Some(true) => RuleKind::Waivable,
            Some(false) => RuleKind::NotWaivable,
            None if self.is_implicit(name) => RuleKind::Implicit,
            None if !self.has_all_rules => RuleKind::CannotSay,
            None => RuleKind::Unknown,
        }
    }

    /// The declared rules that are waivable, or all that are declared.
    pub(super) fn rules(&self, only_waivable: bool) -> impl Iterator<Item = &'a str> {
        self.rules
            .iter()
            .filter(move |(_, is_waivable)| !only_waivable || **is_waivable)
            .map(|(id, _)| *id)
    }

    fn is_implicit(&self, name: &str) -> bool {
        if IMPLICIT_RULES.contains(&name) {
            return true;
        }
        name.rsplit_once('.').is_some_and(|(attribute, kind)| {
            self.attributes.contains_key(attribute) && matches!(kind, "applies" | "offered" | "determined")
        })
    }
}
