//! Labels: what a tuple of values, and with it an edge of the diagram, asks for and costs.
//!
//! A label is a set of gates, all of which must be open, and a bag of cells, all of which are paid. The label
//! `{gate 3; cells 7, 7}` says: only while gate 3 is open, and cell 7 twice.
//!
//! Always holds: gates are sorted and stand once, cells are sorted; equal labels have the same number in a [`Labels`].

use crate::index::number;
use rustc_hash::FxHashMap;

/// A condition on measures, facts and waivers, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct GateId(pub u32);

/// An amount, known once a question is prepared, by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct CellId(pub u32);

/// Gates that must be open and cells that are paid.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Label {
    gates: Vec<GateId>,
    cells: Vec<CellId>,
}

impl Label {
    /// The label that asks for nothing and costs nothing.
    #[must_use]
    pub fn empty() -> Self {
        Self::default()
    }

    /// A label of these gates and cells.
    #[must_use]
    pub fn new(mut gates: Vec<GateId>, mut cells: Vec<CellId>) -> Self {
        gates.sort_unstable();
        gates.dedup();
        cells.sort_unstable();
        Self { gates, cells }
    }

    /// The gates, sorted, each once.
    #[must_use]
    pub fn gates(&self) -> &[GateId] {
        &self.gates
    }

    /// The cells, sorted.
    #[must_use]
    pub fn cells(&self) -> &[CellId] {
        &self.cells
    }

    /// Both labels together.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        let gates = self.gates.iter().chain(&other.gates).copied().collect();
        let cells = self.cells.iter().chain(&other.cells).copied().collect();
        Self::new(gates, cells)
    }
}

/// A label by its number.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct LabelId(pub u32);

impl LabelId {
    /// The number of the empty label in every [`Labels`].
    pub const EMPTY: Self = Self(0);

    /// The number as an index.
    #[must_use]
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// Labels, each stored once.
#[derive(Clone, Debug)]
pub struct Labels {
    labels: Vec<Label>,
    numbers: FxHashMap<Label, LabelId>,
}

impl Default for Labels {
    fn default() -> Self {
        Self {
            labels: vec![Label::empty()],
            numbers: FxHashMap::from_iter([(Label::empty(), LabelId::EMPTY)]),
        }
    }
}

impl Labels {
    /// The number of a label.
    pub fn number(&mut self, label: Label) -> LabelId {
        if let Some(number) = self.numbers.get(&label) {
            return *number;
        }
        let number = LabelId(number(self.labels.len()));
        self.labels.push(label.clone());
        self.numbers.insert(label, number);
        number
    }

    /// The label with this number; the empty one for a number that was never given.
    #[must_use]
    pub fn label(&self, number: LabelId) -> &Label {
        static EMPTY: Label = Label {
            gates: Vec::new(),
            cells: Vec::new(),
        };
        self.labels.get(number.index()).unwrap_or(&EMPTY)
    }

    /// All labels by number.
    #[must_use]
    pub fn all(&self) -> &[Label] {
        &self.labels
    }
}
