//! The price pages of a book, as plain data.

use astragal_model::{Date, Id, Money};

use super::{Condition, Parts, Revised};

/// The price pages of one book.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct PricePages {
    /// The book.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// Its revision.
    pub(crate) revision: Revised,
    /// The id and label of its catalog.
    pub(crate) catalog: (Id, String),
    /// The revision of its catalog.
    pub(crate) catalog_revision: Revised,
    /// ISO 4217.
    pub(crate) currency: &'static str,
    /// What each amount is rounded to.
    pub(crate) round_to: Money,
    /// The first day on which it is in force.
    pub(crate) from: Option<Date>,
    /// The last day on which it is in force.
    pub(crate) until: Option<Date>,
    /// The items in catalog order.
    pub(crate) items: Vec<ItemSheet>,
    /// The steps after all items, in order.
    pub(crate) tail: Vec<TailLine>,
}

/// One price item with its amounts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct ItemSheet {
    /// Its id.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// Goods, labour, fee or credit.
    pub(crate) class: &'static str,
    /// The caller's tax class.
    pub(crate) tax_class: Option<String>,
    /// The parts that are charged, each.
    pub(crate) parts: Option<Parts>,
    /// When it is charged; always when there is nothing.
    pub(crate) when: Option<Condition>,
    /// How many times; once when there is nothing.
    pub(crate) quantity: Option<Condition>,
    /// The amounts.
    pub(crate) amounts: Amounts,
}

/// The amounts of an item.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Amounts {
    /// One amount; nothing when the book has none.
    Flat(Option<Money>),
    /// A percentage of each line of the items named by id and label.
    Percent(Option<String>, Vec<(Id, String)>),
    /// By the options of one attribute.
    List {
        /// What the amount depends on.
        by: String,
        /// The options with their amounts.
        rows: Vec<PriceRow>,
    },
    /// By the options of two attributes.
    Pairs(Sheet),
    /// By the options of three or more attributes: the rows of the book.
    Rows {
        /// What the amount depends on.
        by: Vec<String>,
        /// Cells and amount.
        rows: Vec<(Vec<String>, Money)>,
    },
    /// By one size.
    Sizes {
        /// The grid in the book.
        grid: Id,
        /// What it goes by.
        axis: AxisSheet,
        /// An amount a bracket; nothing where the cell is empty.
        amounts: Vec<Option<Money>>,
        /// Whether a size without an amount is signed off by the plant.
        signs_off: bool,
    },
    /// By two sizes.
    Grid {
        /// The grid in the book.
        grid: Id,
        /// What goes down, and across.
        axes: [AxisSheet; 2],
        /// The amounts row by row.
        rows: Vec<Vec<Option<Money>>>,
        /// Whether a size without an amount is signed off by the plant.
        signs_off: bool,
    },
}

/// An option with its amount.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct PriceRow {
    /// What a person calls the option.
    pub(crate) option: String,
    /// Whether it is the standard.
    pub(crate) is_standard: bool,
    /// The last day on which the option may be ordered.
    pub(crate) offered_until: Option<Date>,
    /// The amount; nothing where the book has none.
    pub(crate) amount: Option<Money>,
}

/// Amounts by two attributes.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Sheet {
    /// What goes down.
    pub(crate) down: String,
    /// What goes across.
    pub(crate) across: String,
    /// The options that go across.
    pub(crate) columns: Vec<String>,
    /// The options that go down, each with an amount a column.
    pub(crate) rows: Vec<(String, Vec<Option<Money>>)>,
}

/// One axis of a grid.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct AxisSheet {
    /// The figure.
    pub(crate) of: String,
    /// The unit of its sizes; nothing for plain numbers.
    pub(crate) unit: String,
    /// The brackets in order.
    pub(crate) brackets: Vec<Bracket>,
}

/// One bracket: over the lower end, up to the upper end inclusive.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Bracket {
    /// The lower end, which is outside.
    pub(crate) over: String,
    /// Whether the lower end is nothing at all, which need not be said.
    pub(crate) is_from_zero: bool,
    /// The upper end, which is inside.
    pub(crate) to: String,
    /// The upper end as a plain number in the unit.
    pub(crate) upper: String,
}

/// One step after all items.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct TailLine {
    /// Its id.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// Goods, labour, fee or credit.
    pub(crate) class: &'static str,
    /// The caller's tax class.
    pub(crate) tax_class: Option<String>,
    /// The amount, or the percentage of the running total.
    pub(crate) amount: TailAmount,
}

/// What a step adds.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum TailAmount {
    /// Money.
    Money(Money),
    /// A percentage of what stands so far.
    Percent(String),
}
