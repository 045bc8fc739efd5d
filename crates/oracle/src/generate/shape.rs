//! What a random catalog has, before anything is said about it: names, types, and who may read whom.
//!
//! Every attribute and figure has a *rank* and reads only what has a lower one, so that nothing depends on itself.
//! Parts exist by conditions of low rank, and what is per part has a high one. Ranks have nothing to do with the
//! order of declaration.

use astragal_model::{
    AttributeIndex, FactIndex, FigureIndex, Id, MeasureIndex, PartIndex, Subject, ValueType,
};

use crate::chance::Chance;
use crate::generate::Size;

/// Ranks go from 0 to this.
pub(crate) const RANK_MAX: usize = 20;
/// Parts read below this rank; what is per part has this rank or a higher one.
pub(crate) const RANK_OF_PARTS: usize = 8;
/// Properties that options may have, with their types.
pub(crate) const PROPERTIES: [(&str, ValueType); 6] = [
    ("gloss", ValueType::Number),
    ("depth", ValueType::Length),
    ("pane", ValueType::Area),
    ("dark", ValueType::Bool),
    ("since", ValueType::Date),
    ("kin", ValueType::Option),
];
/// Words that name options.
pub(crate) const WORDS: [&str; 7] = ["none", "white", "grey", "oak", "clear", "nobody", "dealer"];
const TYPES: [ValueType; 6] = [
    ValueType::Bool,
    ValueType::Number,
    ValueType::Length,
    ValueType::Area,
    ValueType::Date,
    ValueType::Option,
];

/// An attribute to be.
pub(crate) struct AttributeShape {
    pub(crate) id: Id,
    pub(crate) part: Option<PartIndex>,
    pub(crate) rank: usize,
    pub(crate) options: Vec<Id>,
}

/// A figure to be.
pub(crate) struct FigureShape {
    pub(crate) id: Id,
    pub(crate) part: Option<PartIndex>,
    pub(crate) rank: usize,
    pub(crate) value_type: ValueType,
}

/// What a random catalog has.
pub(crate) struct Shape {
    pub(crate) parts: Vec<Id>,
    pub(crate) attributes: Vec<AttributeShape>,
    pub(crate) figures: Vec<FigureShape>,
    pub(crate) measures: Vec<(Id, ValueType)>,
    pub(crate) facts: Vec<(Id, ValueType)>,
}

impl Shape {
    /// A shape of at most this size.
    pub(crate) fn new(chance: &mut Chance, size: Size) -> Self {
        let part_count = if chance.percent(60) {
            chance.between(1, 3)
        } else {
            0
        };
        let parts: Vec<Id> = ["upper", "middle", "lower"]
            .into_iter()
            .take(part_count)
            .map(Id::new)
            .collect();
        let attributes = Self::attributes(chance, size, part_count);
        let figures = Self::figures(chance, size, part_count);
        let measures = (0..chance.between(1, size.each)).map(|count| {
            let value_type = if count == 0 || chance.percent(60) {
                ValueType::Length
            } else {
                ValueType::Number
            };
            (Id::new(&format!("m{count}")), value_type)
        });
        let measures = measures.collect();
        let facts = (0..chance.between(1, size.each)).map(|count| {
            (
                Id::new(&format!("s{count}")),
                chance.one_of(&TYPES).copied().unwrap_or(ValueType::Bool),
            )
        });
        let facts = facts.collect();
        Self {
            parts,
            attributes,
            figures,
            measures,
            facts,
        }
    }

    fn attributes(chance: &mut Chance, size: Size, part_count: usize) -> Vec<AttributeShape> {
        let mut attributes = Vec::new();
        for group in 0..chance.between(1, size.attributes) {
            let mut words = WORDS.map(Id::new).to_vec();
            chance.shuffle(&mut words);
            words.truncate(chance.between(1, 4));
            let per_part = part_count > 0 && chance.percent(40);
            for (part, rank) in Self::group(chance, part_count, per_part) {
                let (id, options) = (Id::new(&format!("a{group}")), words.clone());
                attributes.push(AttributeShape {
                    id,
                    part,
                    rank,
                    options,
                });
            }
        }
        if chance.percent(50) {
            chance.shuffle(&mut attributes);
        }
        attributes
    }

    fn figures(chance: &mut Chance, size: Size, part_count: usize) -> Vec<FigureShape> {
        let mut figures = Vec::new();
        for group in 0..chance.between(0, size.figures) {
            let value_type = chance.one_of(&TYPES).copied().unwrap_or(ValueType::Number);
            let per_part = part_count > 0 && chance.percent(30);
            for (part, rank) in Self::group(chance, part_count, per_part) {
                figures.push(FigureShape {
                    id: Id::new(&format!("f{group}")),
                    part,
                    rank,
                    value_type,
                });
            }
        }
        figures
    }

    fn group(chance: &mut Chance, part_count: usize, per_part: bool) -> Vec<(Option<PartIndex>, usize)> {
        if per_part {
            let rank = chance.between(RANK_OF_PARTS, RANK_MAX);
            (0..part_count)
                .map(|part| (Some(PartIndex(part)), rank))
                .collect()
        } else {
            vec![(None, chance.between(0, RANK_MAX))]
        }
    }

    /// Everything that something of this rank may read, with its type.
    pub(crate) fn subjects(&self, rank: usize) -> Vec<(Subject, ValueType)> {
        let mut subjects = Vec::new();
        for (index, attribute) in self.attributes.iter().enumerate() {
            if attribute.rank < rank {
                subjects.push((Subject::Attribute(AttributeIndex(index)), ValueType::Option));
            }
        }
        for (index, figure) in self.figures.iter().enumerate() {
            if figure.rank < rank {
                subjects.push((Subject::Figure(FigureIndex(index)), figure.value_type));
            }
        }
        for (index, (_, value_type)) in self.measures.iter().enumerate() {
            subjects.push((Subject::Measure(MeasureIndex(index)), *value_type));
            subjects.push((Subject::DeductedBy(MeasureIndex(index)), ValueType::Option));
        }
        for (index, (_, value_type)) in self.facts.iter().enumerate() {
            subjects.push((Subject::Fact(FactIndex(index)), *value_type));
        }
        subjects
    }

    /// The attributes that something of this rank may read.
    pub(crate) fn attributes_below(&self, rank: usize) -> Vec<AttributeIndex> {
        let attributes = self.attributes.iter().enumerate();
        attributes
            .filter(|(_, attribute)| attribute.rank < rank)
            .map(|(index, _)| AttributeIndex(index))
            .collect()
    }
}
