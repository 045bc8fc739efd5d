//! Reads the rules of a catalog and says where each stands in full.
//!
//! A rule on the authority of code, a programme or another one stands with that authority. A rule that demands something of
//! sizes and other figures alone stands with the sizes. Every other rule stands in the section of the last attribute, in
//! file order, that it demands something of, since that is where a reader who comes to this attribute looks; a rule that
//! demands nothing of attributes, in the section of the last one in its condition.
//!
//! Always holds: each rule stands in one place.

use std::collections::BTreeSet;

use astragal_catalog::DeclarationKind;
use astragal_model::{AttributeIndex, Declarations, Expression, Id, Requirement, RoomRule, Rule, Subject};

use super::chart::section_of;
use super::pages::{AuthorityRules, Demand, RuleGroup, RuleSheet};
use super::reading::{Reading, first_of_each};
use super::{limits, tables};

/// Where a rule stands.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Home {
    /// The authority that has a place of its own.
    pub(crate) authority: Option<Id>,
    /// Whether it is about sizes and other figures alone.
    pub(crate) is_size: bool,
    /// The section of an attribute.
    pub(crate) section: Option<String>,
}

/// The rules of a catalog, those that are not yet taken to their place.
pub(crate) struct Placed {
    waiting: Vec<(Home, RuleSheet)>,
    mentions: Vec<(Id, BTreeSet<Id>)>,
}

/// Reads all rules and says where they belong.
pub(crate) fn place(reading: Reading<'_>) -> Placed {
    let rules: Vec<&Rule> = first_of_each(&reading.declarations().rules, |rule| &rule.id).collect();
    let of_units = rules
        .iter()
        .map(|rule| (home(reading.declarations(), rule), sheet(reading, rule)));
    let of_rooms = reading.declarations().room_rules.iter();
    Placed {
        waiting: of_units
            .chain(of_rooms.map(|rule| of_room(reading, rule)))
            .collect(),
        mentions: rules
            .iter()
            .map(|rule| (rule.id.clone(), mentioned(reading.declarations(), rule)))
            .collect(),
    }
}

impl Placed {
    /// The rules that mention an attribute, in file order.
    pub(crate) fn mentioning(&self, attribute: &Id) -> Vec<Id> {
        let those = self
            .mentions
            .iter()
            .filter(|(_, attributes)| attributes.contains(attribute));
        those.map(|(rule, _)| rule.clone()).collect()
    }

    /// Takes the rules of the plant that belong somewhere.
    pub(crate) fn take(&mut self, belongs: impl Fn(&Home) -> bool) -> RuleGroup {
        let mut group = RuleGroup::default();
        let (taken, waiting) = std::mem::take(&mut self.waiting)
            .into_iter()
            .partition(|(home, _): &(Home, RuleSheet)| home.authority.is_none() && belongs(home));
        self.waiting = waiting;
        for (_, rule) in taken {
            add(&mut group, rule);
        }
        group
    }

    /// Takes the rules of each authority that has a place of its own, in the order in which they first come.
    pub(crate) fn authorities(&mut self, declarations: &Declarations) -> Vec<AuthorityRules> {
        let mut found: Vec<AuthorityRules> = Vec::new();
        for (home, rule) in std::mem::take(&mut self.waiting) {
            let Some(id) = home.authority.clone() else {
                self.waiting.push((home, rule));
                continue;
            };
            if let Some(known) = found.iter_mut().find(|known| known.id == id) {
                add(&mut known.rules, rule);
                continue;
            }
            let mut rules = RuleGroup::default();
            add(&mut rules, rule);
            let label = authority_label(declarations, &id);
            found.push(AuthorityRules { id, label, rules });
        }
        found
    }
}

fn add(group: &mut RuleGroup, rule: RuleSheet) {
    match rule.demand {
        Demand::Limits(..) => group.limits.push(rule),
        Demand::Condition(_) => group.conditions.push(rule),
        Demand::Allowed(_) | Demand::Forbidden(_) => group.tables.push(rule),
    }
}

fn authority_label(declarations: &Declarations, id: &Id) -> String {
    let declared = declarations.authorities.iter().find(|(known, _)| known == id);
    match (declared, id.as_str()) {
        (Some((_, label)), _) => label.clone(),
        (None, "code") => "Checks of published codes".to_owned(),
        (None, "programme") => "Programmes".to_owned(),
        (None, other) => format!("Rules of {other}"),
    }
}

fn home(declarations: &Declarations, rule: &Rule) -> Home {
    let (demanded, is_size) = match &rule.requirement {
        Requirement::Expression(expression) => {
            let reads = expression.reads();
            let is_size = !reads.is_empty() && expression.asks().is_empty() && reads.iter().all(is_size);
            (attributes_of(expression), is_size)
        }
        Requirement::Allowed(table) | Requirement::Forbidden(table) => {
            let attributes = table.columns.iter().filter_map(attribute_of).collect();
            (attributes, table.columns.iter().all(is_size))
        }
    };
    let conditional = rule.when.as_ref().map(attributes_of).unwrap_or_default();
    let last = demanded.last().or(conditional.last());
    let section = last.map(|index| section_of(declarations.attributes.at(*index)).to_owned());
    Home {
        authority: (rule.authority.as_str() != "plant").then(|| rule.authority.clone()),
        is_size,
        section: section.filter(|_| !is_size),
    }
}

/// A rule over a room stands with its authority, or with the sizes; its condition says that one opening meets it.
fn of_room(reading: Reading<'_>, rule: &RoomRule) -> (Home, RuleSheet) {
    let home = Home {
        authority: (rule.authority.as_str() != "plant").then(|| rule.authority.clone()),
        is_size: true,
        section: None,
    };
    let key = |key| (DeclarationKind::RoomRule, &rule.id, key);
    let mut condition = reading.demand(key("at_least_one"), None, &rule.at_least_one);
    condition.words = format!("of one opening of the room at least: {}", condition.words);
    let sheet = RuleSheet {
        id: rule.id.clone(),
        authority: rule.authority.clone(),
        effect: rule.effect,
        waivable: false,
        basis: rule.basis.clone(),
        parts: None,
        message: reading.message(&rule.message, None),
        when: reading.when(key("when"), None, rule.when.as_ref()),
        demand: Demand::Condition(condition),
    };
    (home, sheet)
}

fn is_size(subject: &Subject) -> bool {
    matches!(subject, Subject::Figure(_) | Subject::Measure(_))
}

fn attribute_of(subject: &Subject) -> Option<AttributeIndex> {
    if let Subject::Attribute(index) = subject {
        Some(*index)
    } else {
        None
    }
}

/// The attributes that an expression reads or asks for, sorted.
fn attributes_of(expression: &Expression) -> BTreeSet<AttributeIndex> {
    let reads = expression.reads();
    let mut attributes: BTreeSet<AttributeIndex> = reads.iter().filter_map(attribute_of).collect();
    attributes.extend(expression.asks());
    attributes
}

/// The ids of all attributes that a rule names itself.
fn mentioned(declarations: &Declarations, rule: &Rule) -> BTreeSet<Id> {
    let mut attributes = rule.when.as_ref().map(attributes_of).unwrap_or_default();
    match &rule.requirement {
        Requirement::Expression(expression) => attributes.extend(attributes_of(expression)),
        Requirement::Allowed(table) | Requirement::Forbidden(table) => {
            attributes.extend(table.columns.iter().filter_map(attribute_of));
        }
    }
    attributes
        .into_iter()
        .map(|index| declarations.attributes.at(index).id.clone())
        .collect()
}

fn sheet(reading: Reading<'_>, rule: &Rule) -> RuleSheet {
    let key = |key| (DeclarationKind::Rule, &rule.id, key);
    let words = reading.words(rule.part);
    let demand = match &rule.requirement {
        Requirement::Expression(expression) => {
            let condition = reading.demand(key("require"), rule.part, expression);
            match limits::limits(words, expression) {
                Some(limits) => Demand::Limits(limits, condition),
                None => Demand::Condition(condition),
            }
        }
        Requirement::Allowed(table) => Demand::Allowed(tables::drawing(reading, words, table, true)),
        Requirement::Forbidden(table) => Demand::Forbidden(tables::drawing(reading, words, table, false)),
    };
    RuleSheet {
        id: rule.id.clone(),
        authority: rule.authority.clone(),
        effect: rule.effect,
        waivable: rule.waivable,
        basis: rule.basis.clone(),
        parts: reading.parts(rule.part),
        message: reading.message(&rule.message, rule.part),
        when: reading.when(key("when"), rule.part, rule.when.as_ref()),
        demand,
    }
}
