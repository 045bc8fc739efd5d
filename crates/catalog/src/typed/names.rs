//! The names that expressions, table columns and messages may use, with their types.
//!
//! Attributes, measures, facts, figures and parts of a catalog share one namespace. A name that is `per` part stands
//! for one thing a part: `glazing.upper`, or bare `glazing` where "this part" is known.
//!
//! Always holds: a name means one thing. Built either while a catalog is read, or from a finished catalog when a
//! policy is read against it.

use std::cell::Cell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use astragal_model::measure_text::LengthUnit;
use astragal_model::{
    AttributeIndex, Declarations, DeductedBy, Expression, FactIndex, FigureIndex, Id, Indexed, MeasureIndex,
    OptionEntry, PartIndex, Subject, ValueType,
};

/// The names of one catalog.
#[derive(Debug, Clone)]
pub(crate) struct Names {
    pub(crate) length_unit: LengthUnit,
    named: BTreeMap<String, Named>,
    parts: Indexed<PartIndex, (Id, Id)>,
    conditions: Option<BTreeMap<PartIndex, Expression>>,
    attributes: BTreeMap<AttributeIndex, AttributeShape>,
    /// How many nodes the expressions that were typed with these names have.
    nodes: Cell<usize>,
}

/// What a name stands for.
#[derive(Debug, Clone)]
pub(crate) enum Named {
    /// An attribute.
    Attribute(PartWise<AttributeIndex>),
    /// A measure: a length or a number.
    Measure(MeasureIndex, ValueType),
    /// A site fact.
    Fact(FactIndex, Type),
    /// A figure; its type is not known until its formula is read.
    Figure(PartWise<FigureIndex>, Option<Type>),
    /// A part.
    Part(PartIndex),
}

/// One thing, or one thing a part of a kind.
#[derive(Debug, Clone)]
pub(crate) enum PartWise<I> {
    /// One thing for the whole unit.
    Whole(I),
    /// One thing a part.
    PerPart {
        /// The kind of part.
        kind: Id,
        /// The thing of each part of the kind.
        of: BTreeMap<PartIndex, I>,
    },
}

/// A type of expressions: a type of values and, for options, which options there may be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Type {
    pub(crate) value_type: ValueType,
    pub(crate) options: Option<Rc<OptionDomain>>,
}

/// The options that an expression may give.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct OptionDomain {
    /// Their ids.
    pub(crate) ids: BTreeSet<Id>,
    /// The attribute whose options they are, if it is one attribute's; its families may be named.
    pub(crate) attribute: Option<AttributeIndex>,
    /// What has these options, for findings: "`exterior`".
    pub(crate) of: String,
}

/// What expressions need to know of an attribute.
#[derive(Debug, Clone)]
pub(crate) struct AttributeShape {
    pub(crate) id: Id,
    pub(crate) options: Rc<Vec<OptionEntry>>,
    /// Whether the attribute itself has an `applies_when`, so that reading a property needs a guard.
    pub(crate) conditional: bool,
}

impl Type {
    /// A type without options.
    pub(crate) fn plain(value_type: ValueType) -> Self {
        Self {
            value_type,
            options: None,
        }
    }

    /// Options by their ids.
    pub(crate) fn of_options(ids: BTreeSet<Id>, attribute: Option<AttributeIndex>, of: String) -> Self {
        Self {
            value_type: ValueType::Option,
            options: Some(Rc::new(OptionDomain { ids, attribute, of })),
        }
    }
}

impl Names {
    /// No names yet.
    pub(crate) fn new(length_unit: LengthUnit) -> Self {
        Self {
            length_unit,
            named: BTreeMap::new(),
            parts: Indexed::default(),
            conditions: None,
            attributes: BTreeMap::new(),
            nodes: Cell::new(0),
        }
    }

    /// How many nodes the expressions that were typed with these names have.
    pub(crate) fn nodes(&self) -> usize {
        self.nodes.get()
    }

    /// Sets how many they have.
    pub(crate) fn set_nodes(&self, nodes: usize) {
        self.nodes.set(nodes);
    }

    /// The names of a finished catalog.
    pub(crate) fn of_catalog(declarations: &Declarations) -> Self {
        let mut names = Self::new(declarations.length_unit);
        for part in declarations.parts.values() {
            names.add_part(&part.id, &part.kind);
        }
        let conditions = declarations.parts.iter();
        names.set_part_conditions(
            conditions
                .filter_map(|(index, part)| Some((index, part.when.clone()?)))
                .collect(),
        );
        for (index, attribute) in declarations.attributes.iter() {
            let exists = attribute
                .part
                .and_then(|part| declarations.parts.get(part))
                .and_then(|part| part.when.clone());
            let shape = AttributeShape {
                id: attribute.id.clone(),
                options: Rc::new(attribute.options.clone()),
                conditional: attribute.applies_when != exists,
            };
            names.add_attribute(index, attribute.part, shape);
        }
        for (index, measure) in declarations.measures.iter() {
            names.add_measure(index, &measure.id, measure.value_type);
        }
        for (index, fact) in declarations.facts.iter() {
            let ids = fact.options.iter().map(|(id, _)| id.clone()).collect();
            names.add_fact(index, &fact.id, fact.value_type, ids);
        }
        for (index, figure) in declarations.figures.iter() {
            names.add_figure(
                index,
                &figure.id,
                figure.part,
                Some(Type::plain(figure.value_type)),
            );
        }
        names
    }

    /// Adds a part; parts are added in file order.
    pub(crate) fn add_part(&mut self, id: &Id, kind: &Id) -> PartIndex {
        let index = self.parts.push((id.clone(), kind.clone()));
        self.named.insert(id.to_string(), Named::Part(index));
        index
    }

    /// Says when each part exists; a part without a condition always does. Until then no expression can go over parts.
    pub(crate) fn set_part_conditions(&mut self, conditions: BTreeMap<PartIndex, Expression>) {
        self.conditions = Some(conditions);
    }

    /// When a part exists: `Some(None)` means always, `None` that it is not known yet.
    pub(crate) fn part_condition(&self, part: PartIndex) -> Option<Option<&Expression>> {
        self.conditions.as_ref().map(|conditions| conditions.get(&part))
    }

    /// Adds an attribute, or the attribute of one part.
    pub(crate) fn add_attribute(
        &mut self,
        index: AttributeIndex,
        part: Option<PartIndex>,
        shape: AttributeShape,
    ) {
        let kind = self.kind_of(part);
        let name = shape.id.to_string();
        self.attributes.insert(index, shape);
        match self.named.get_mut(&name) {
            Some(Named::Attribute(partwise)) => partwise.add(index, part),
            _ => {
                self.named
                    .insert(name, Named::Attribute(PartWise::new(index, part, kind)));
            }
        }
    }

    /// Adds a measure.
    pub(crate) fn add_measure(&mut self, index: MeasureIndex, id: &Id, value_type: ValueType) {
        self.named
            .insert(id.to_string(), Named::Measure(index, value_type));
    }

    /// Adds a site fact; `options` are those of an enumeration.
    pub(crate) fn add_fact(
        &mut self,
        index: FactIndex,
        id: &Id,
        value_type: ValueType,
        options: BTreeSet<Id>,
    ) {
        let fact_type = if value_type == ValueType::Option {
            Type::of_options(options, None, format!("`{id}`"))
        } else {
            Type::plain(value_type)
        };
        self.named.insert(id.to_string(), Named::Fact(index, fact_type));
    }

    /// Adds a figure, or the figure of one part; its type may follow later.
    pub(crate) fn add_figure(
        &mut self,
        index: FigureIndex,
        id: &Id,
        part: Option<PartIndex>,
        figure_type: Option<Type>,
    ) {
        let kind = self.kind_of(part);
        match self.named.get_mut(id.as_str()) {
            Some(Named::Figure(partwise, _)) => partwise.add(index, part),
            _ => {
                self.named.insert(
                    id.to_string(),
                    Named::Figure(PartWise::new(index, part, kind), figure_type),
                );
            }
        }
    }

    /// Says what the type of a figure is.
    pub(crate) fn set_figure_type(&mut self, id: &Id, figure_type: Type) {
        if let Some(Named::Figure(_, place)) = self.named.get_mut(id.as_str()) {
            *place = Some(figure_type);
        }
    }

    /// What a name stands for.
    pub(crate) fn find(&self, name: &str) -> Option<&Named> {
        self.named.get(name)
    }

    /// Whether some attribute has an option with this id.
    pub(crate) fn is_option(&self, id: &str) -> bool {
        self.attributes
            .iter()
            .any(|(_, shape)| shape.options.iter().any(|option| option.id.as_str() == id))
    }

    /// All names, sorted.
    pub(crate) fn all(&self) -> impl Iterator<Item = &str> {
        self.named.keys().map(String::as_str)
    }

    /// The part with this id.
    pub(crate) fn part(&self, id: &str) -> Option<PartIndex> {
        match self.named.get(id) {
            Some(Named::Part(index)) => Some(*index),
            _ => None,
        }
    }

    /// All parts of a kind, in file order.
    pub(crate) fn parts_of_kind(&self, kind: &Id) -> Vec<PartIndex> {
        self.parts
            .iter()
            .filter(|(_, (_, of))| of == kind)
            .map(|(index, _)| index)
            .collect()
    }

    /// The id of a part.
    pub(crate) fn part_id(&self, part: PartIndex) -> Option<&Id> {
        self.parts.get(part).map(|(id, _)| id)
    }

    /// The kinds of parts, sorted.
    pub(crate) fn kinds(&self) -> BTreeSet<&Id> {
        self.parts.values().map(|(_, kind)| kind).collect()
    }

    /// The kind of a part.
    pub(crate) fn kind_of(&self, part: Option<PartIndex>) -> Option<Id> {
        part.and_then(|part| self.parts.get(part))
            .map(|(_, kind)| kind.clone())
    }

    /// The kind of parts of which a name has one thing each, if it is `per` part.
    pub(crate) fn kind_of_named(&self, name: &str) -> Option<Id> {
        match self.named.get(name)? {
            Named::Attribute(PartWise::PerPart { kind, .. })
            | Named::Figure(PartWise::PerPart { kind, .. }, _) => Some(kind.clone()),
            _ => None,
        }
    }

    /// What is known of an attribute.
    pub(crate) fn attribute(&self, index: AttributeIndex) -> Option<&AttributeShape> {
        self.attributes.get(&index)
    }

    /// The type of a subject, where it is known already.
    pub(crate) fn type_of(&self, subject: Subject) -> Option<Type> {
        match subject {
            Subject::Attribute(index) => {
                let shape = self.attributes.get(&index)?;
                let ids = shape.options.iter().map(|option| option.id.clone()).collect();
                Some(Type::of_options(ids, Some(index), format!("`{}`", shape.id)))
            }
            Subject::DeductedBy(_) => {
                let ids = DeductedBy::ALL.iter().map(|by| Id::new(by.word())).collect();
                Some(Type::of_options(ids, None, "`deducted_by`".to_owned()))
            }
            Subject::Measure(index) => self.named.values().find_map(|named| match named {
                Named::Measure(found, value_type) if *found == index => Some(Type::plain(*value_type)),
                _ => None,
            }),
            Subject::Fact(index) => self.named.values().find_map(|named| match named {
                Named::Fact(found, fact_type) if *found == index => Some(fact_type.clone()),
                _ => None,
            }),
            Subject::Figure(index) => self.named.values().find_map(|named| match named {
                Named::Figure(partwise, figure_type) if partwise.has(index) => figure_type.clone(),
                _ => None,
            }),
        }
    }
}

impl<I: Copy + PartialEq> PartWise<I> {
    fn new(index: I, part: Option<PartIndex>, kind: Option<Id>) -> Self {
        match (part, kind) {
            (Some(part), Some(kind)) => Self::PerPart {
                kind,
                of: BTreeMap::from([(part, index)]),
            },
            _ => Self::Whole(index),
        }
    }

    fn add(&mut self, index: I, part: Option<PartIndex>) {
        if let (Self::PerPart { of, .. }, Some(part)) = (self, part) {
            of.insert(part, index);
        }
    }

    fn has(&self, index: I) -> bool {
        match self {
            Self::Whole(found) => *found == index,
            Self::PerPart { of, .. } => of.values().any(|found| *found == index),
        }
    }
}
