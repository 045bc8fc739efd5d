//! The names of a catalog with their positions, before any expression is looked at.
//!
//! Attributes and figures that are `per` part are written out here: `glazing` over the sashes `upper` and `lower` takes
//! two positions, one after the other.
//!
//! Always holds: positions follow the order of declaration, and of the parts in their file. What cannot be read has no
//! name here, and is remembered, so that naming it is not a second finding.

use std::collections::BTreeMap;
use std::rc::Rc;

use astragal_model::{
    AttributeIndex, FactIndex, FigureIndex, Id, MeasureIndex, OptionEntry, Part, PartIndex,
};

use super::limits::{ATTRIBUTES_LIMIT, FIGURES_LIMIT, MEASURES_LIMIT, PARTS_LIMIT, RULES_LIMIT, within};
use super::options::OptionLists;
use super::resolver::{Unreadable, parts_of};
use crate::declare::{Declared, Head, RawHeader};
use crate::finding::{Finding, Findings};
use crate::typed::{AttributeShape, Names, Type};

/// Names with positions.
#[derive(Debug)]
pub(crate) struct Skeleton {
    pub(crate) names: Names,
    /// For each attribute of the model: which declaration it is of, which part, and its options.
    pub(crate) attributes: Vec<AttributeSlot>,
    /// For each figure of the model: which declaration it is of, and which part.
    pub(crate) figures: Vec<(usize, Option<PartIndex>)>,
    /// The parts without their conditions.
    pub(crate) parts: Vec<Part>,
    /// Names of declarations that could not be read.
    pub(crate) unreadable: Unreadable,
    /// Which option lists an attribute uses.
    pub(crate) used_lists: Vec<Id>,
}

/// One attribute of the model.
#[derive(Debug, Clone)]
pub(crate) struct AttributeSlot {
    /// The position of its declaration.
    pub(crate) raw: usize,
    /// The part.
    pub(crate) part: Option<PartIndex>,
    /// The options.
    pub(crate) options: Rc<Vec<OptionEntry>>,
}

/// Gives every name its position; `None` when there is more of something than there may be.
pub(crate) fn skeleton(declared: &Declared, header: &RawHeader, findings: &Findings) -> Option<Skeleton> {
    check_counts(declared, findings)?;
    let mut skeleton = Skeleton {
        names: Names::new(header.length_unit),
        attributes: Vec::new(),
        figures: Vec::new(),
        parts: Vec::new(),
        unreadable: Unreadable::default(),
        used_lists: Vec::new(),
    };
    for raw in &declared.parts {
        skeleton.names.add_part(&raw.head.id, &raw.kind);
        skeleton.parts.push(Part {
            id: raw.head.id.clone(),
            kind: raw.kind.clone(),
            label: raw.label.clone(),
            when: None,
        });
    }
    skeleton.add_attributes(declared, header, findings)?;
    for (position, raw) in declared.measures.iter().enumerate() {
        skeleton
            .names
            .add_measure(MeasureIndex(position), &raw.head.id, raw.value_type);
    }
    for (position, raw) in declared.facts.iter().enumerate() {
        let ids = raw.options.iter().map(|(id, _)| id.clone()).collect();
        skeleton
            .names
            .add_fact(FactIndex(position), &raw.head.id, raw.value_type, ids);
    }
    skeleton.add_figures(declared, findings)?;
    Some(skeleton)
}

fn check_counts(declared: &Declared, findings: &Findings) -> Option<()> {
    let fits = |heads: Vec<&Head>, limit: usize, what: &str| {
        let place = heads.get(limit).map(|head| &head.place);
        within(heads.len(), limit, what, place, findings)
    };
    let all = [
        fits(
            declared.parts.iter().map(|it| &it.head).collect(),
            PARTS_LIMIT,
            "parts",
        ),
        fits(
            declared.measures.iter().map(|it| &it.head).collect(),
            MEASURES_LIMIT,
            "measures",
        ),
        fits(
            declared.facts.iter().map(|it| &it.head).collect(),
            MEASURES_LIMIT,
            "site facts",
        ),
        fits(
            declared.site_checks.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "site checks",
        ),
        fits(
            declared.rules.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "rules",
        ),
        fits(
            declared.room_rules.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "room rules",
        ),
        fits(
            declared.items.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "price items",
        ),
        fits(
            declared.notices.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "notices",
        ),
        fits(
            declared.examples.iter().map(|it| &it.head).collect(),
            RULES_LIMIT,
            "examples",
        ),
    ];
    all.into_iter().all(|fits| fits).then_some(())
}

impl Skeleton {
    fn add_attributes(&mut self, declared: &Declared, header: &RawHeader, findings: &Findings) -> Option<()> {
        let mut lists = OptionLists::new(declared, header.length_unit, findings);
        for (position, raw) in declared.attributes.iter().enumerate() {
            let parts = parts_of(raw.per.as_ref(), &self.names, findings);
            let options = raw
                .options
                .as_ref()
                .and_then(|options| lists.of(options, &raw.head));
            let (Some(parts), Some(options)) = (parts, options) else {
                self.unreadable.add(&raw.head.id);
                continue;
            };
            if raw.per.is_some() {
                parts_are_no_properties(declared, &raw.head, &options, findings);
            }
            let count = self.attributes.len() + parts.len();
            if !within(
                count,
                ATTRIBUTES_LIMIT,
                "attributes",
                Some(&raw.head.place),
                findings,
            ) {
                return None;
            }
            for part in parts {
                let shape = AttributeShape {
                    id: raw.head.id.clone(),
                    options: Rc::clone(&options),
                    conditional: raw.applies_when.is_some(),
                };
                self.names
                    .add_attribute(AttributeIndex(self.attributes.len()), part, shape);
                self.attributes.push(AttributeSlot {
                    raw: position,
                    part,
                    options: Rc::clone(&options),
                });
            }
        }
        self.used_lists = lists.used();
        Some(())
    }

    fn add_figures(&mut self, declared: &Declared, findings: &Findings) -> Option<()> {
        for (position, raw) in declared.figures.iter().enumerate() {
            let parts = parts_of(raw.per.as_ref(), &self.names, findings);
            let (Some(parts), Some(_)) = (parts, &raw.definition) else {
                self.unreadable.add(&raw.head.id);
                continue;
            };
            let count = self.figures.len() + parts.len();
            if !within(count, FIGURES_LIMIT, "figures", Some(&raw.head.place), findings) {
                return None;
            }
            for part in parts {
                let index = FigureIndex(self.figures.len());
                let declared_type = raw.declared_type.map(Type::plain);
                self.names.add_figure(index, &raw.head.id, part, declared_type);
                self.figures.push((position, part));
            }
        }
        Some(())
    }
}

/// `glazing.upper` would mean two things if `upper` were a property of `glazing` as well.
fn parts_are_no_properties(declared: &Declared, head: &Head, options: &[OptionEntry], findings: &Findings) {
    let parts: BTreeMap<&Id, &Head> = declared
        .parts
        .iter()
        .map(|part| (&part.head.id, &part.head))
        .collect();
    for property in options.iter().flat_map(|option| option.properties.keys()) {
        if let Some(part) = parts.get(property) {
            let message = format!("`{property}` is a property of `{}` and a part", head.id);
            findings.push(
                Finding::error("DUPLICATE_ID", message)
                    .at(head.place.clone())
                    .with_help(format!("`{}.{property}` would mean both; rename one", head.id))
                    .with_related(part.place.clone(), format!("part `{property}`")),
            );
        }
    }
}
