//! Measures and site facts: what is known about an opening and its place.
//!
//! A *measure* is a number known about an opening, with who has deducted from it. A *site fact* is something known
//! about the place, inherited from house, floor, room or face. A catalog declares them; a [`Site`] holds the values
//! of one opening. What is not known is `None`, never a guess.

use std::collections::BTreeMap;

pub use astragal_trade::measuring::DeductedBy;
use jiff::civil::Date;

use crate::bounds::Bounds;
use crate::id::{FactIndex, Id, Indexed, MeasureIndex};
use crate::value::{Value, ValueType};
use astragal_exact::Number;

/// A measure that a catalog declares: a length or a number.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Measure {
    /// The id that expressions and orders name.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// `Length` or `Number`.
    pub value_type: ValueType,
    /// What a value must be a multiple of (inches, for a length); `None` means any value.
    pub step: Option<Number>,
    /// Between which numbers a value lies.
    pub bounds: Bounds,
    /// Which side of the opening it is, where it may be worked out from raw readings.
    pub taken_as: Option<TakenSide>,
}

/// A site fact that a catalog declares.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SiteFact {
    /// The id that expressions and orders name.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The type of its values; `Option` for an enumeration.
    pub value_type: ValueType,
    /// The values of an enumeration with their labels; empty otherwise.
    pub options: Vec<(Id, String)>,
    /// The highest scope at which it may be set.
    pub of: Scope,
    /// Between which numbers a value lies; for numbers and lengths.
    pub bounds: Bounds,
    /// What a value must be a multiple of (inches, for a length); `None` means any value.
    pub step: Option<Number>,
    /// What it says of the raw readings of an opening, where it may be worked out from them.
    pub taken_as: Option<TakenFact>,
}

/// A side of an opening that is worked out from raw readings: of the largest upright rectangle in it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum TakenSide {
    /// From left to right.
    Width,
    /// From sill to head.
    Height,
}

impl TakenSide {
    /// Both, in order.
    pub const ALL: [Self; 2] = [Self::Width, Self::Height];

    /// The word as catalogs write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Height => "height",
        }
    }
}

/// What a site fact says of the raw readings of an opening; a length.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum TakenFact {
    /// By how much the diagonals differ.
    DiagonalDifference,
    /// By how much the widths differ.
    WidthSpread,
    /// By how much the heights differ.
    HeightSpread,
}

impl TakenFact {
    /// All three, in order.
    pub const ALL: [Self; 3] = [Self::DiagonalDifference, Self::WidthSpread, Self::HeightSpread];

    /// The word as catalogs write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::DiagonalDifference => "diagonal-difference",
            Self::WidthSpread => "width-spread",
            Self::HeightSpread => "height-spread",
        }
    }
}

/// Where a fact is set, from the widest to the nearest.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Scope {
    /// The whole house.
    House,
    /// One storey.
    Floor,
    /// One room.
    Room,
    /// One side of the house.
    Face,
    /// One opening.
    Opening,
}

impl Scope {
    /// The word for the scope.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::House => "house",
            Self::Floor => "floor",
            Self::Room => "room",
            Self::Face => "face",
            Self::Opening => "opening",
        }
    }

    /// Whether a fact whose highest scope is `self` may be set at `at`: there or nearer. A room's fact is not set
    /// at a face, nor a face's at a room.
    #[must_use]
    pub fn may_be_set_at(self, at: Self) -> bool {
        match self {
            Self::House => true,
            Self::Floor => at != Self::House,
            Self::Room => matches!(at, Self::Room | Self::Opening),
            Self::Face => matches!(at, Self::Face | Self::Opening),
            Self::Opening => at == Self::Opening,
        }
    }
}

/// A measure as it was taken.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Measured {
    /// A length or a number, of the type that the measure declares.
    pub value: Value,
    /// Who has deducted; `None` when nobody said.
    pub deducted_by: Option<DeductedBy>,
}

/// What is known about one opening and its place, by the measures and facts of one catalog.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Site {
    /// The measures; `None` where it was not taken.
    pub measures: Indexed<MeasureIndex, Option<Measured>>,
    /// The facts; `None` where it is not known.
    pub facts: Indexed<FactIndex, Option<Value>>,
    /// Who has deducted from measures that were not taken, where somebody said.
    pub deducted: BTreeMap<MeasureIndex, DeductedBy>,
}

impl Site {
    /// Who has deducted from a measure; `None` when nobody said.
    #[must_use]
    pub fn deducted_by(&self, index: MeasureIndex) -> Option<DeductedBy> {
        match self.measures.get(index).and_then(Option::as_ref) {
            Some(measured) => measured.deducted_by,
            None => self.deducted.get(&index).copied(),
        }
    }
}

/// Reads the date of a value, for facts that are dates.
impl From<Date> for Value {
    fn from(date: Date) -> Self {
        Self::Date(date)
    }
}
