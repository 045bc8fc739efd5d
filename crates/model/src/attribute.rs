//! Attributes and options: what there is to choose.
//!
//! An attribute that is `per` part stands here once for every part of that kind, with the same id and another part:
//! `glazing.upper`, `glazing.lower`.
//!
//! Always holds: an attribute has at least one option, and its options have different ids.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::Date;

use crate::expression::Expression;
use crate::id::{Id, PartIndex};
use crate::value::Value;

/// Something to choose.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Attribute {
    /// The id that the catalog declares; shared by the parts of a `per` attribute.
    pub id: Id,
    /// The part, where the attribute is `per` part.
    pub part: Option<PartIndex>,
    /// What a person reads.
    pub label: String,
    /// Where it is shown; display only.
    pub section: Option<String>,
    /// The options in display order.
    pub options: Vec<OptionEntry>,
    /// When it is asked at all, the existence of its part included; `None` means always.
    pub applies_when: Option<Expression>,
    /// What it is filled with when nobody picks.
    pub standard: Standard,
    /// Whom it is asked.
    pub audience: Audience,
}

/// One option of an attribute.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OptionEntry {
    /// The id; never used again for another thing.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Groups that rules and tables may name.
    pub families: BTreeSet<Id>,
    /// Values that expressions may read as `attribute.property`.
    pub properties: BTreeMap<Id, Value>,
    /// Its colour on a drawing.
    pub swatch: Option<Swatch>,
    /// What the plant calls it.
    pub plant_code: Option<String>,
    /// When it may be ordered.
    pub validity: Validity,
}

/// A colour on a screen or on paper, in sRGB. It stands for a finish and is not one.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Swatch {
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

/// When an option may be ordered. All dates are inclusive.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Validity {
    /// The first day on which it may be chosen.
    pub offered_from: Option<Date>,
    /// The last day on which it may be chosen.
    pub offered_until: Option<Date>,
    /// The last day on which a quote made while it was offered is still built.
    pub honoured_until: Option<Date>,
    /// What to choose instead.
    pub replaced_by: Option<Id>,
}

impl Validity {
    /// Whether the option may be chosen on a day.
    #[must_use]
    pub fn offers(&self, date: Date) -> bool {
        self.offered_from.is_none_or(|from| from <= date)
            && self.offered_until.is_none_or(|until| date <= until)
    }
}

/// What an attribute is filled with when nobody picks.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Standard {
    /// Never filled: somebody must choose.
    Ask,
    /// This option.
    Option(Id),
    /// What the expression gives.
    Formula(Expression),
}

/// Whom an attribute is asked.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum Audience {
    /// The customer: asked and shown.
    #[default]
    Customer,
    /// The plant: determined by its standard, not asked, not shown.
    Plant,
}

impl Attribute {
    /// The option with this id, if the attribute has it.
    #[must_use]
    pub fn option(&self, id: &Id) -> Option<&OptionEntry> {
        self.options.iter().find(|option| option.id == *id)
    }
}

impl OptionEntry {
    /// An option with this id, shown as its id, in no family and always offered.
    #[must_use]
    pub fn plain(id: &str) -> Self {
        Self {
            id: Id::new(id),
            label: id.to_owned(),
            families: BTreeSet::new(),
            properties: BTreeMap::new(),
            swatch: None,
            plant_code: None,
            validity: Validity::default(),
        }
    }
}
