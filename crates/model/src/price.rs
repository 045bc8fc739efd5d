//! Price items, price books and the ordered tail: what a unit may cost, and how much that is.
//!
//! A catalog says *when* an item is incurred and by what quantity; a [`Book`] gives the amounts. An item is
//! amount x quantity x mark-up, rounded once, half away from zero. A percent item takes a percentage of each line of
//! the items it names; those are marked up and rounded already, so it is not marked up again. After all items the
//! tail runs in order.
//!
//! Always holds: a percent item names no percent item; a tail percentage is at least -100, so that the total after
//! the tail never falls as the subtotal rises.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::Date;

use crate::currency::Currency;
use crate::expression::Expression;
use crate::id::{AttributeIndex, FigureIndex, Id, PartIndex};
use astragal_exact::Number;

/// One amount that a unit may incur.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PriceItem {
    /// The id that the catalog declares; shared by the parts of a `per` item.
    pub id: Id,
    /// The part, where the item is `per` part.
    pub part: Option<PartIndex>,
    /// What a person reads.
    pub label: String,
    /// Goods, labour, fee or credit.
    pub class: Class,
    /// The caller's tax class.
    pub tax_class: Option<String>,
    /// When it is incurred, the existence of its part included; `None` means always.
    pub when: Option<Expression>,
    /// Where the amount comes from.
    pub amount: AmountKind,
    /// How many times the amount; `None` means once. Percent items have none.
    pub quantity: Option<Expression>,
}

/// What an item stands for.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum Class {
    /// Material.
    #[default]
    Goods,
    /// Work.
    Labour,
    /// A charge.
    Fee,
    /// Something given back.
    Credit,
}

/// Where the amount of an item comes from.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum AmountKind {
    /// One amount in the book.
    Flat,
    /// An amount by the options of these attributes; not incurred while one of them is not asked.
    By(Vec<AttributeIndex>),
    /// A cell of a grid of the book.
    Grid {
        /// The id of the grid in the book.
        grid: Id,
        /// The figures along its one or two axes, rows first.
        axes: Vec<FigureIndex>,
        /// What a size past the end, or an empty cell, means.
        beyond: Beyond,
    },
    /// A percentage of every line of the items named.
    Percent(BTreeSet<Id>),
}

/// What it means that a grid has no amount for a size.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum Beyond {
    /// The unit has no price: it breaks `has-a-price`.
    #[default]
    Break,
    /// The total is unknown, and the plant must sign off.
    SignOff,
}

/// The amounts of a catalog's price items.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Book {
    /// The id of the book.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The catalog for which it gives amounts.
    pub catalog: Id,
    /// The currency of all its amounts.
    pub currency: Currency,
    /// What every item is rounded to; a whole number of minor units.
    pub round_to: Number,
    /// The first day on which it is in force.
    pub from: Option<Date>,
    /// The last day on which it is in force.
    pub until: Option<Date>,
    /// The amount of each item that is neither `By` nor `Grid`; a percentage for percent items.
    pub amounts: BTreeMap<Id, Amount>,
    /// The sheets of items by attribute, by item id.
    pub sheets: BTreeMap<Id, Vec<SheetRow>>,
    /// The grids, by grid id.
    pub grids: BTreeMap<Id, Grid>,
    /// Steps after all items, in order.
    pub tail: Vec<TailStep>,
}

/// One entry of a book.
#[derive(Clone, PartialEq, Eq, Hash, Debug)]
pub enum Amount {
    /// Money in the book's currency.
    Money(Number),
    /// A percentage: 12.5 for 12.5 %.
    Percent(Number),
}

/// The amount for some options of the attributes of an item.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SheetRow {
    /// The options that the row covers, one set an attribute in the item's order; `None` means every option.
    pub options: Vec<Option<BTreeSet<Id>>>,
    /// Money in the book's currency.
    pub amount: Number,
}

/// Amounts by one or two sizes. Headers are upper bounds: lower < size <= upper.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Grid {
    /// One or two axes, rows first.
    pub axes: Vec<Axis>,
    /// The amounts, row by row; `None` where the cell is empty.
    pub cells: Vec<Option<Number>>,
}

/// One axis of a grid.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Axis {
    /// The lower end of the first bracket, which is outside of it.
    pub lower: Number,
    /// The upper ends, strictly increasing, which are inside. Inches, for lengths.
    pub uppers: Vec<Number>,
}

impl Axis {
    /// Which bracket holds a size; `None` at or below the lower end and past the last bracket.
    #[must_use]
    pub fn bracket(&self, size: &Number) -> Option<usize> {
        if *size <= self.lower {
            return None;
        }
        let position = self.uppers.partition_point(|upper| upper < size);
        (position < self.uppers.len()).then_some(position)
    }

    /// The ends of a bracket: lower (outside), upper (inside).
    #[must_use]
    pub fn ends(&self, bracket: usize) -> Option<(&Number, &Number)> {
        let upper = self.uppers.get(bracket)?;
        let lower = bracket
            .checked_sub(1)
            .and_then(|before| self.uppers.get(before))
            .unwrap_or(&self.lower);
        Some((lower, upper))
    }
}

/// One step after all items.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct TailStep {
    /// The id of the step.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Goods, labour, fee or credit.
    pub class: Class,
    /// The caller's tax class.
    pub tax_class: Option<String>,
    /// Added money, or a percentage of the running total (at least -100).
    pub amount: Amount,
}
