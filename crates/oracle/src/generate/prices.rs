//! Random price items, and books that give most of them an amount.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    Amount, AmountKind, AttributeIndex, Axis, Beyond, Book, Class, Currency, Declarations, FigureIndex, Grid,
    Id, Number, PriceItem, SheetRow, TailStep, ValueType,
};

use crate::generate::expressions::Maker;
use crate::generate::shape::RANK_MAX;
use crate::generate::values::{inches, maybe_day, number, square_inches};

/// All classes.
pub(crate) const CLASSES: [Class; 4] = [Class::Goods, Class::Labour, Class::Fee, Class::Credit];

impl Maker<'_> {
    /// Price items: the percent items last, then all in another order.
    pub(crate) fn items(&mut self, declared: &mut Declarations, most: usize) {
        let mut items: Vec<PriceItem> = Vec::new();
        for count in 0..self.chance.between(0, most) {
            let id = Id::new(&format!("i{count}"));
            let class = self.chance.one_of(&CLASSES).copied().unwrap_or_default();
            let flat: BTreeSet<Id> = items
                .iter()
                .filter(|item| !matches!(item.amount, AmountKind::Percent(_)))
                .map(|item| item.id.clone())
                .collect();
            let kind = self.chance.below(5);
            for part in self.parts() {
                let amount = match kind {
                    0 => self.by(),
                    1 | 2 => self.by_grid(&id),
                    3 if !flat.is_empty() => {
                        let ids: Vec<Id> = flat.iter().cloned().collect();
                        AmountKind::Percent(self.chance.some_of(60, &ids).into_iter().collect())
                    }
                    _ => AmountKind::Flat,
                };
                let percent = matches!(amount, AmountKind::Percent(_));
                let quantity = (!percent && self.chance.percent(40))
                    .then(|| self.expression(ValueType::Number, self.depth, RANK_MAX + 1));
                items.push(PriceItem {
                    id: id.clone(),
                    part,
                    label: id.to_string(),
                    class,
                    tax_class: None,
                    when: self.when(declared, part),
                    amount,
                    quantity,
                });
            }
        }
        self.chance.shuffle(&mut items);
        declared.items = items.into();
    }

    fn by(&mut self) -> AmountKind {
        let all: Vec<AttributeIndex> = (0..self.shape.attributes.len()).map(AttributeIndex).collect();
        let mut attributes = Vec::new();
        for _ in 0..self.chance.between(1, 2) {
            if let Some(attribute) = self.chance.one_of(&all).filter(|one| !attributes.contains(*one)) {
                attributes.push(*attribute);
            }
        }
        AmountKind::By(attributes)
    }

    fn by_grid(&mut self, id: &Id) -> AmountKind {
        let sized: Vec<FigureIndex> = self
            .shape
            .figures
            .iter()
            .enumerate()
            .filter(|(_, figure)| {
                matches!(
                    figure.value_type,
                    ValueType::Number | ValueType::Length | ValueType::Area
                )
            })
            .map(|(index, _)| FigureIndex(index))
            .collect();
        let Some(first) = self.chance.one_of(&sized).copied() else {
            return AmountKind::Flat;
        };
        let mut axes = vec![first];
        if self.chance.percent(50) {
            axes.extend(self.chance.one_of(&sized).copied());
        }
        let beyond = if self.chance.percent(40) {
            Beyond::SignOff
        } else {
            Beyond::Break
        };
        let grid = Id::new(&format!(
            "{id}-{}-{}",
            axes.len(),
            axes.iter()
                .map(|axis| axis.0.to_string())
                .collect::<Vec<_>>()
                .join("-")
        ));
        AmountKind::Grid { grid, axes, beyond }
    }

    /// A book for the catalog; some entries are missing.
    pub(crate) fn book(&mut self, declared: &Declarations) -> Option<Book> {
        let mut book = Book {
            id: Id::new("book"),
            label: "Book".to_owned(),
            catalog: declared.id.clone(),
            currency: Currency::from_code("USD")?,
            round_to: self.rounding(),
            from: maybe_day(self.chance, 20),
            until: maybe_day(self.chance, 20),
            amounts: BTreeMap::new(),
            sheets: BTreeMap::new(),
            grids: BTreeMap::new(),
            tail: self.tail("t"),
        };
        for item in declared.items.values() {
            if self.chance.percent(4) {
                continue;
            }
            match &item.amount {
                AmountKind::Flat => {
                    book.amounts.insert(item.id.clone(), Amount::Money(self.money()));
                }
                AmountKind::Percent(_) => {
                    book.amounts
                        .insert(item.id.clone(), Amount::Percent(number(self.chance)));
                }
                AmountKind::By(attributes) => {
                    let rows = (0..self.chance.between(1, 5)).map(|_| self.sheet_row(attributes));
                    let rows = rows.collect();
                    book.sheets.insert(item.id.clone(), rows);
                }
                AmountKind::Grid { grid, axes, .. } => {
                    let made = self.grid(declared, axes);
                    book.grids.insert(grid.clone(), made);
                }
            }
        }
        Some(book)
    }

    fn sheet_row(&mut self, attributes: &[AttributeIndex]) -> SheetRow {
        let options = attributes.iter().map(|attribute| {
            let options = self
                .shape
                .attributes
                .get(attribute.0)
                .map(|shape| shape.options.clone());
            let chosen = self.chance.some_of(60, &options.unwrap_or_default());
            self.chance.percent(70).then(|| chosen.into_iter().collect())
        });
        SheetRow {
            options: options.collect(),
            amount: self.money(),
        }
    }

    fn grid(&mut self, declared: &Declarations, figures: &[FigureIndex]) -> Grid {
        let axes: Vec<Axis> = figures
            .iter()
            .map(|figure| {
                let of = declared.figures.at(*figure).value_type;
                let count = self.chance.between(2, 5);
                let mut ends: Vec<Number> = (0..count)
                    .map(|_| match of {
                        ValueType::Length => inches(self.chance),
                        ValueType::Area => square_inches(self.chance),
                        _ => number(self.chance),
                    })
                    .collect();
                ends.sort();
                ends.dedup();
                let lower = ends.first().cloned().unwrap_or_default();
                Axis {
                    lower,
                    uppers: ends.into_iter().skip(1).collect(),
                }
            })
            .collect();
        let count = axes.iter().map(|axis| axis.uppers.len()).product();
        let cells = (0..count).map(|_| self.chance.percent(85).then(|| self.money()));
        Grid {
            cells: cells.collect(),
            axes,
        }
    }

    fn money(&mut self) -> Number {
        let cents = [
            0, 1, 5, 99, 1000, 1234, 1250, 9995, 100_000, -1, -50, -1999, -30_000,
        ];
        Number::ratio(self.chance.one_of(&cents).copied().unwrap_or(0), 100).unwrap_or_default()
    }

    /// What amounts are rounded to.
    pub(crate) fn rounding(&mut self) -> Number {
        let (top, bottom) = self
            .chance
            .one_of(&[(1, 100), (5, 100), (1, 4), (1, 1), (5, 1)])
            .copied()
            .unwrap_or((1, 100));
        Number::ratio(top, bottom).unwrap_or_default()
    }

    /// Steps after all items; a percentage is at least -100.
    pub(crate) fn tail(&mut self, prefix: &str) -> Vec<TailStep> {
        let steps = (0..self.chance.between(0, 2)).map(|count| {
            let percents = [-100, -33, -10, 0, 8, 19, 100];
            let amount = if self.chance.percent(50) {
                Amount::Money(self.money())
            } else {
                let percent = self.chance.one_of(&percents).copied().unwrap_or(0);
                Amount::Percent(
                    Number::ratio(percent * 2 + 1, 2)
                        .filter(|_| percent > -100)
                        .unwrap_or_else(|| Number::from(percent)),
                )
            };
            let id = Id::new(&format!("{prefix}{count}"));
            TailStep {
                label: id.to_string(),
                id,
                class: Class::Fee,
                tax_class: None,
                amount,
            }
        });
        steps.collect()
    }
}
