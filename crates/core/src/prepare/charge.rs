//! Works a charge out: amount x quantity x mark-up, then one rounding; percent items from the lines that they are of.
//!
//! Always holds: a charge comes to what the judge says of its item in the same unit.

use astragal_model::{
    Amount, AmountKind, Beyond, Book, Catalog, Grid, Id, ItemIndex, Money, Number, Outcome, PriceItem,
    Setting, Value, Want, Wants,
};
use rustc_hash::FxHashMap;

use crate::term::{Arena, Outcomes, Term, TermId};

/// What an item comes to.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Charge {
    /// So many minor units; nothing where it is not incurred.
    Amount(i64),
    Unknown(Wants),
    NoPrice,
    /// More minor units than can be added up.
    TooLarge,
}

/// Why there is no amount.
enum Lack {
    Unknown(Wants),
    NoPrice,
}

/// What charges are worked out from.
pub(crate) struct Charging<'a> {
    pub(crate) arena: &'a Arena,
    pub(crate) setting: &'a Setting<'a>,
    pub(crate) outcomes: &'a Outcomes,
}

impl Charging<'_> {
    /// The charges of cells; other charges, which percentages are of, are worked out on the way.
    pub(crate) fn all(&self, cells: &[TermId]) -> Vec<Charge> {
        let Some(book) = self.setting.book else {
            return cells.iter().map(|_| Charge::Amount(0)).collect();
        };
        let mut lines: FxHashMap<TermId, Result<Option<Money>, Charge>> = FxHashMap::default();
        for (number, term) in self.arena.iter() {
            if let Term::Charge { item, parts } = term {
                let line = self.line(book, *item, parts, &lines);
                lines.insert(number, line);
            }
        }
        let cell = |term: &TermId| match lines.get(term) {
            Some(Ok(Some(money))) => money.minor_units().map_or(Charge::TooLarge, Charge::Amount),
            Some(Ok(None)) => Charge::Amount(0),
            Some(Err(charge)) => charge.clone(),
            None if matches!(self.arena.term(*term), Term::Departure { .. }) => Charge::Amount(0),
            None => Charge::NoPrice,
        };
        cells.iter().map(cell).collect()
    }

    fn line(
        &self,
        book: &Book,
        index: ItemIndex,
        parts: &[TermId],
        lines: &FxHashMap<TermId, Result<Option<Money>, Charge>>,
    ) -> Result<Option<Money>, Charge> {
        let item = self.catalog().declarations().items.at(index);
        let Some((when, rest)) = parts.split_first() else {
            return Err(Charge::NoPrice);
        };
        match self.outcomes.of(*when) {
            Outcome::Known(Value::Bool(true)) => {}
            Outcome::Known(_) => return Ok(None),
            Outcome::Unknown(wants) => return Err(Charge::Unknown(wants.clone())),
            Outcome::Undefined(_) => return Err(Charge::NoPrice),
        }
        let amount = match &item.amount {
            AmountKind::Percent(_) => self.percent(book, item, rest, lines),
            _ => self.amount(book, index, rest),
        };
        match amount {
            Ok(money) => Ok(Some(money)),
            Err(Lack::Unknown(wants)) => Err(Charge::Unknown(wants)),
            Err(Lack::NoPrice) => Err(Charge::NoPrice),
        }
    }

    fn amount(&self, book: &Book, index: ItemIndex, rest: &[TermId]) -> Result<Money, Lack> {
        let item = self.catalog().declarations().items.at(index);
        let keys = rest
            .get(usize::from(item.quantity.is_some())..)
            .unwrap_or_default();
        let mut exact = match &item.amount {
            AmountKind::By(_) => self.by_option(book, item, keys)?,
            AmountKind::Grid { grid, beyond, .. } => {
                let grid = book.grids.get(grid).ok_or(Lack::NoPrice)?;
                self.by_size(grid, *beyond, index, keys)?
            }
            AmountKind::Flat | AmountKind::Percent(_) => match book.amounts.get(&item.id) {
                Some(Amount::Money(amount)) => amount.clone(),
                _ => return Err(Lack::NoPrice),
            },
        };
        if item.quantity.is_some() {
            let quantity = rest.first().map(|quantity| self.outcomes.of(*quantity));
            match quantity {
                Some(Outcome::Known(Value::Number(quantity))) if *quantity < Number::from(0) => {
                    return Err(Lack::NoPrice);
                }
                Some(Outcome::Known(Value::Number(quantity))) => exact = &exact * quantity,
                Some(Outcome::Unknown(wants)) => return Err(Lack::Unknown(wants.clone())),
                _ => return Err(Lack::NoPrice),
            }
        }
        let mark_ups = self.setting.policy.map(|policy| &policy.terms.mark_ups);
        if let Some(mark_up) = mark_ups.and_then(|mark_ups| mark_ups.get(&item.class)) {
            exact = &exact + &percent_of(&exact, mark_up);
        }
        Ok(self.rounded(book, exact))
    }

    fn by_option(&self, book: &Book, item: &PriceItem, keys: &[TermId]) -> Result<Number, Lack> {
        let rows = book.sheets.get(&item.id).ok_or(Lack::NoPrice)?;
        let key = |term: &TermId| match self.arena.term(*term) {
            Term::Constant(Some(Value::Option(option))) => Some(option.clone()),
            _ => None,
        };
        let key: Vec<Id> = keys.iter().filter_map(key).collect();
        let matches = |cells: &[Option<std::collections::BTreeSet<Id>>]| {
            let mut pairs = cells.iter().zip(&key);
            pairs.all(|(cell, option)| cell.as_ref().is_none_or(|set| set.contains(option)))
        };
        let row = rows.iter().find(|row| matches(&row.options));
        row.map(|row| row.amount.clone()).ok_or(Lack::NoPrice)
    }

    fn by_size(&self, grid: &Grid, beyond: Beyond, item: ItemIndex, keys: &[TermId]) -> Result<Number, Lack> {
        let mut sizes = Vec::new();
        let mut wants = Wants::new();
        for key in keys {
            match self.outcomes.of(*key) {
                Outcome::Known(value) => sizes.extend(value.magnitude()),
                Outcome::Unknown(more) => wants.extend(more.iter().cloned()),
                Outcome::Undefined(_) => return Err(Lack::NoPrice),
            }
        }
        if !wants.is_empty() {
            return Err(Lack::Unknown(wants));
        }
        let mut cell = Some(0_usize);
        for (axis, size) in grid.axes.iter().zip(&sizes) {
            if **size <= axis.lower {
                return Err(Lack::NoPrice);
            }
            let bracket = axis.bracket(size);
            cell = cell
                .zip(bracket)
                .map(|(cell, bracket)| cell * axis.uppers.len() + bracket);
        }
        match (cell.and_then(|cell| grid.cells.get(cell)?.clone()), beyond) {
            (Some(amount), _) => Ok(amount),
            (None, Beyond::SignOff) => Err(Lack::Unknown(Wants::from([Want::SignOff(item)]))),
            (None, Beyond::Break) => Err(Lack::NoPrice),
        }
    }

    fn percent(
        &self,
        book: &Book,
        item: &PriceItem,
        of: &[TermId],
        lines: &FxHashMap<TermId, Result<Option<Money>, Charge>>,
    ) -> Result<Money, Lack> {
        let Some(Amount::Percent(percent)) = book.amounts.get(&item.id) else {
            return Err(Lack::NoPrice);
        };
        let mut sum = Number::from(0);
        let mut wants = Wants::new();
        for line in of {
            match lines.get(line) {
                Some(Ok(Some(money))) => {
                    let share = self.rounded(book, percent_of(money.amount(), percent));
                    sum = &sum + share.amount();
                }
                Some(Err(Charge::Unknown(more))) => wants.extend(more.iter().cloned()),
                Some(Err(_)) => return Err(Lack::NoPrice),
                // Not incurred, or folded to nothing while the catalog was ground.
                Some(Ok(None)) | None => {}
            }
        }
        if wants.is_empty() {
            Ok(Money::new(sum, book.currency))
        } else {
            Err(Lack::Unknown(wants))
        }
    }

    fn rounded(&self, book: &Book, exact: Number) -> Money {
        let of_policy = self
            .setting
            .policy
            .and_then(|policy| policy.terms.round_to.as_ref());
        let exact = Money::new(exact, book.currency);
        exact
            .rounded_to(of_policy.unwrap_or(&book.round_to))
            .unwrap_or(exact)
    }

    fn catalog(&self) -> &Catalog {
        self.setting.catalog
    }
}

fn percent_of(amount: &Number, percent: &Number) -> Number {
    let product = amount * percent;
    product.checked_div(&Number::from(100)).unwrap_or(product)
}
