//! Random declarations: everything that a catalog says, and what a policy adds.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    Attribute, Audience, Bounds, Declarations, Definition, Effect, Expression, Figure, Id, Measure, Notice,
    NoticeKind, OptionEntry, Part, PartIndex, PolicyTerms, Requirement, Rule, Scope, SiteFact, Standard,
    Template, Validity, ValueType,
};

use crate::generate::Size;
use crate::generate::expressions::Maker;
use crate::generate::shape::{AttributeShape, PROPERTIES, RANK_MAX, RANK_OF_PARTS};
use crate::generate::values::{maybe_day, number, value, word};

/// Rules, items and notices may read everything.
const READS_ALL: usize = RANK_MAX + 1;

impl Maker<'_> {
    /// Everything that the catalog says.
    pub(crate) fn declarations(&mut self, size: Size) -> Declarations {
        let mut declared = Declarations::empty("random");
        declared.authorities = vec![(Id::new("city"), "City".to_owned())];
        for id in &self.shape.parts {
            let when = if self.chance.percent(25) {
                None
            } else {
                Some(self.any_condition(RANK_OF_PARTS))
            };
            let (id, label) = (id.clone(), id.to_string());
            declared.parts.push(Part {
                id,
                kind: Id::new("sash"),
                label,
                when,
            });
        }
        for shape in &self.shape.attributes {
            let attribute = self.attribute(&declared, shape);
            declared.attributes.push(attribute);
        }
        for (id, value_type) in &self.shape.measures {
            let (id, label, value_type) = (id.clone(), id.to_string(), *value_type);
            declared.measures.push(Measure {
                id,
                label,
                value_type,
                step: None,
                bounds: Bounds::default(),
                taken_as: None,
            });
        }
        for (id, value_type) in &self.shape.facts {
            let (id, label, value_type) = (id.clone(), id.to_string(), *value_type);
            declared.facts.push(SiteFact {
                id,
                label,
                value_type,
                options: Vec::new(),
                of: Scope::House,
                bounds: Bounds::default(),
                step: None,
                taken_as: None,
            });
        }
        for shape in &self.shape.figures {
            let definition = if self.chance.percent(55) {
                Definition::Formula(self.expression(shape.value_type, self.depth, shape.rank))
            } else {
                let (table, row_match) = self.figure_table(shape.value_type, shape.rank);
                Definition::Table(table, row_match)
            };
            declared.figures.push(Figure {
                id: shape.id.clone(),
                part: shape.part,
                label: shape.id.to_string(),
                value_type: shape.value_type,
                unit: None,
                shown: true,
                definition,
            });
        }
        declared.rules = self.rules(&declared, "r", size.rules);
        self.items(&mut declared, size.items);
        declared.notices = self.notices(&declared, size.each);
        declared
    }

    fn attribute(&mut self, declared: &Declarations, shape: &AttributeShape) -> Attribute {
        let own = self.chance.percent(40).then(|| self.any_condition(shape.rank));
        let options = shape.options.iter().map(|id| self.option(id));
        Attribute {
            options: options.collect(),
            id: shape.id.clone(),
            part: shape.part,
            label: shape.id.to_string(),
            section: None,
            applies_when: existing(declared, shape.part, own),
            standard: self.standard(shape),
            audience: if self.chance.percent(20) {
                Audience::Plant
            } else {
                Audience::Customer
            },
        }
    }

    fn standard(&mut self, shape: &AttributeShape) -> Standard {
        match self.chance.below(10) {
            0 | 1 => Standard::Ask,
            2 | 3 => Standard::Formula(self.expression(ValueType::Option, self.depth.min(2), shape.rank)),
            _ => Standard::Option(
                self.chance
                    .one_of(&shape.options)
                    .cloned()
                    .unwrap_or_else(|| Id::new("none")),
            ),
        }
    }

    fn option(&mut self, id: &Id) -> OptionEntry {
        let mut entry = OptionEntry::plain(id.as_str());
        for (property, of) in PROPERTIES {
            if self.chance.percent(75) {
                entry.properties.insert(Id::new(property), value(self.chance, of));
            }
        }
        if self.chance.percent(25) {
            entry.validity = Validity {
                offered_from: maybe_day(self.chance, 30),
                offered_until: maybe_day(self.chance, 70),
                honoured_until: maybe_day(self.chance, 60),
                replaced_by: self.chance.percent(30).then(|| word(self.chance)),
            };
        }
        entry
    }

    /// Parts for one declaration: all of them, one after the other, or the whole unit.
    pub(crate) fn parts(&mut self) -> Vec<Option<PartIndex>> {
        let count = self.shape.parts.len();
        if count == 0 || self.chance.percent(70) {
            return vec![None];
        }
        (0..count).map(|part| Some(PartIndex(part))).collect()
    }

    /// A condition of a rule, item or notice, with the existence of its part.
    pub(crate) fn when(&mut self, declared: &Declarations, part: Option<PartIndex>) -> Option<Expression> {
        let own = self.chance.percent(60).then(|| self.any_condition(READS_ALL));
        existing(declared, part, own)
    }

    fn rules(&mut self, declared: &Declarations, prefix: &str, most: usize) -> Vec<Rule> {
        let mut rules = Vec::new();
        for count in 0..self.chance.between(0, most) {
            let id = Id::new(&format!("{prefix}{count}"));
            let authorities = ["plant", "code", "programme", "dealer", "city"];
            let authority = Id::new(self.chance.one_of(&authorities).copied().unwrap_or("plant"));
            let effects = [Effect::Block, Effect::Block, Effect::Warn, Effect::SignOff];
            let effect = self.chance.one_of(&effects).copied().unwrap_or_default();
            let waivable = self.chance.percent(50);
            for part in self.parts() {
                let requirement = match self.chance.below(4) {
                    0 => Requirement::Allowed(self.rule_table(READS_ALL)),
                    1 => Requirement::Forbidden(self.rule_table(READS_ALL)),
                    _ => Requirement::Expression(self.any_condition(READS_ALL)),
                };
                rules.push(Rule {
                    id: id.clone(),
                    part,
                    authority: authority.clone(),
                    effect,
                    when: self.when(declared, part),
                    requirement,
                    message: Template::text("does not hold"),
                    basis: None,
                    waivable,
                });
            }
        }
        rules
    }

    fn notices(&mut self, declared: &Declarations, most: usize) -> Vec<Notice> {
        let mut notices = Vec::new();
        for count in 0..self.chance.between(0, most) {
            for part in self.parts() {
                notices.push(Notice {
                    id: Id::new(&format!("n{count}")),
                    part,
                    kind: NoticeKind::Caution,
                    when: self.when(declared, part),
                    text: Template::text("take care"),
                    basis: None,
                });
            }
        }
        notices
    }

    /// What a policy says about the catalog.
    pub(crate) fn policy(&mut self, declared: &Declarations, size: Size) -> PolicyTerms {
        let mut hidden = BTreeMap::new();
        let mut standards = BTreeMap::new();
        for (index, attribute) in declared.attributes.iter() {
            let Some(shape) = self.shape.attributes.get(index.0) else {
                continue;
            };
            if self.chance.percent(25) {
                let ids: Vec<Id> = attribute.options.iter().map(|option| option.id.clone()).collect();
                hidden.insert(
                    index,
                    self.chance
                        .some_of(50, &ids)
                        .into_iter()
                        .collect::<BTreeSet<Id>>(),
                );
            }
            if self.chance.percent(25) {
                standards.insert(index, self.standard(shape));
            }
        }
        let mut rules = self.rules(declared, "d", size.rules.min(3));
        for rule in &mut rules {
            rule.authority = Id::new("dealer");
        }
        let mut mark_ups = BTreeMap::new();
        for class in crate::generate::prices::CLASSES {
            if self.chance.percent(60) {
                mark_ups.insert(class, number(self.chance));
            }
        }
        PolicyTerms {
            id: Id::new("dealer"),
            label: "Dealer".to_owned(),
            hidden,
            standards,
            rules,
            mark_ups,
            round_to: self.chance.percent(40).then(|| self.rounding()),
            tail: self.tail("p"),
        }
    }
}

/// A condition, and that the part exists.
fn existing(declared: &Declarations, part: Option<PartIndex>, own: Option<Expression>) -> Option<Expression> {
    let exists = part
        .and_then(|part| declared.parts.get(part))
        .and_then(|part| part.when.clone());
    match (exists, own) {
        (Some(exists), Some(own)) => Some(Expression::And(vec![exists, own])),
        (exists, own) => exists.or(own),
    }
}
