//! Reads a price book, with the items of its catalog, into price pages.
//!
//! Always holds: every amount of the book stands here, exactly; an amount that the book lacks is nothing, not 0.00.

use astragal_catalog::DeclarationKind;
use astragal_catalog::check::CheckedBook;
use astragal_model::{
    Amount, AmountKind, Attribute, AttributeIndex, Axis, Beyond, Book, Class, FigureIndex, Grid, Id, Money,
    Number, OptionEntry, PriceItem, SheetRow, Standard, Subject, TailStep, Value, ValueType,
};

use super::pages::{
    Amounts, AxisSheet, Bracket, ItemSheet, PricePages, PriceRow, Sheet, TailAmount, TailLine,
};
use super::reading::{Reading, first_of_each};
use super::words::exact;
use super::written::Files;

/// LIMIT: how many pairs of options are drawn for one item; with more the rows of the book are printed.
const PAIRS_MAX: usize = 10_000;

/// A book with the catalog that it prices.
#[derive(Clone, Copy)]
struct Pricing<'a> {
    reading: Reading<'a>,
    book: &'a Book,
}

/// The price pages of a book.
pub(crate) fn price_pages(checked: &CheckedBook, files: &Files) -> PricePages {
    let book = &checked.book;
    let pricing = Pricing {
        reading: Reading::new(&checked.catalog, files),
        book,
    };
    let declarations = pricing.reading.declarations();
    PricePages {
        id: book.id.clone(),
        label: book.label.clone(),
        revision: book.revision().into(),
        catalog: (declarations.id.clone(), declarations.label.clone()),
        catalog_revision: pricing.reading.catalog.revision().into(),
        currency: book.currency.code(),
        round_to: pricing.money(&book.round_to),
        from: book.from,
        until: book.until,
        items: first_of_each(declarations.items.values(), |item| &item.id)
            .map(|item| pricing.item(item))
            .collect(),
        tail: book.tail.iter().map(|step| pricing.step(step)).collect(),
    }
}

impl Pricing<'_> {
    fn money(self, amount: &Number) -> Money {
        Money::new(amount.clone(), self.book.currency)
    }

    fn item(self, item: &PriceItem) -> ItemSheet {
        let reading = self.reading;
        let key = |key| (DeclarationKind::Item, &item.id, key);
        let quantity = item.quantity.as_ref();
        ItemSheet {
            id: item.id.clone(),
            label: item.label.clone(),
            class: class_word(item.class),
            tax_class: item.tax_class.clone(),
            parts: reading.parts(item.part),
            when: reading.when(key("when"), item.part, item.when.as_ref()),
            quantity: quantity.map(|quantity| reading.formula(key("quantity"), item.part, quantity)),
            amounts: self.amounts(item),
        }
    }

    fn amounts(self, item: &PriceItem) -> Amounts {
        match &item.amount {
            AmountKind::Flat => Amounts::Flat(match self.book.amounts.get(&item.id) {
                Some(Amount::Money(amount)) => Some(self.money(amount)),
                _ => None,
            }),
            AmountKind::Percent(of) => {
                let percent = match self.book.amounts.get(&item.id) {
                    Some(Amount::Percent(percent)) => Some(exact(percent)),
                    _ => None,
                };
                let items = self.reading.declarations().items.values();
                let named = items.filter(|item| of.contains(&item.id));
                let named = first_of_each(named, |item| &item.id);
                Amounts::Percent(
                    percent,
                    named.map(|item| (item.id.clone(), item.label.clone())).collect(),
                )
            }
            AmountKind::By(attributes) => self.by(item, attributes),
            AmountKind::Grid { grid, axes, beyond } => {
                self.grid(item, grid, axes, *beyond == Beyond::SignOff)
            }
        }
    }

    fn by(self, item: &PriceItem, attributes: &[AttributeIndex]) -> Amounts {
        let rows = self.book.sheets.get(&item.id).map_or(&[][..], Vec::as_slice);
        let words = self.reading.words(item.part);
        let declared = &self.reading.declarations().attributes;
        let label = |index: &AttributeIndex| words.label(Subject::Attribute(*index));
        let amount = |options: &[&OptionEntry]| {
            let row = rows.iter().find(|row| covers(row, options));
            row.map(|row| self.money(&row.amount))
        };
        match attributes {
            [one] => Amounts::List {
                by: label(one),
                rows: declared
                    .at(*one)
                    .options
                    .iter()
                    .map(|option| PriceRow {
                        option: option.label.clone(),
                        is_standard: declared.at(*one).standard == Standard::Option(option.id.clone()),
                        offered_until: option.validity.offered_until,
                        amount: amount(&[option]),
                    })
                    .collect(),
            },
            [one, other] if pairs(declared.at(*one), declared.at(*other)) <= PAIRS_MAX => {
                let (down, across) = longer_first((one, declared.at(*one)), (other, declared.at(*other)));
                let is_turned = down.0 != one;
                let row = |option: &OptionEntry| {
                    let cells = across.1.options.iter().map(|other| match is_turned {
                        false => amount(&[option, other]),
                        true => amount(&[other, option]),
                    });
                    (option.label.clone(), cells.collect())
                };
                Amounts::Pairs(Sheet {
                    down: label(down.0),
                    across: label(across.0),
                    columns: across
                        .1
                        .options
                        .iter()
                        .map(|option| option.label.clone())
                        .collect(),
                    rows: down.1.options.iter().map(row).collect(),
                })
            }
            _ => Amounts::Rows {
                by: attributes.iter().map(label).collect(),
                rows: rows
                    .iter()
                    .map(|row| (self.cells(row, attributes), self.money(&row.amount)))
                    .collect(),
            },
        }
    }

    /// The options that a row of the book covers.
    fn cells(self, row: &SheetRow, attributes: &[AttributeIndex]) -> Vec<String> {
        let cell = |(options, index): (&Option<_>, &AttributeIndex)| match options {
            None => "any".to_owned(),
            Some(options) => {
                let options: &std::collections::BTreeSet<Id> = options;
                let show = |id: &Id| {
                    let value = Value::Option(id.clone());
                    self.reading.catalog.show(Subject::Attribute(*index), &value)
                };
                options.iter().map(show).collect::<Vec<_>>().join(" or ")
            }
        };
        row.options.iter().zip(attributes).map(cell).collect()
    }

    fn grid(self, item: &PriceItem, id: &Id, axes: &[FigureIndex], signs_off: bool) -> Amounts {
        let empty = Grid {
            axes: Vec::new(),
            cells: Vec::new(),
        };
        let grid = self.book.grids.get(id).unwrap_or(&empty);
        let mut sheets = axes
            .iter()
            .zip(&grid.axes)
            .map(|(figure, axis)| self.axis(item, *figure, axis));
        let first = sheets.next().unwrap_or_default();
        let amounts: Vec<Option<Money>> = grid
            .cells
            .iter()
            .map(|cell| cell.as_ref().map(|amount| self.money(amount)))
            .collect();
        match sheets.next() {
            None => Amounts::Sizes {
                grid: id.clone(),
                axis: first,
                amounts,
                signs_off,
            },
            Some(second) => Amounts::Grid {
                grid: id.clone(),
                rows: amounts
                    .chunks(second.brackets.len().max(1))
                    .map(<[_]>::to_vec)
                    .collect(),
                axes: [first, second],
                signs_off,
            },
        }
    }

    fn axis(self, item: &PriceItem, figure: FigureIndex, axis: &Axis) -> AxisSheet {
        let declared = self.reading.declarations().figures.at(figure);
        let shown = |number: &Number| self.reading.catalog.show_magnitude(declared.value_type, number);
        let unit = match declared.value_type {
            ValueType::Length => self.reading.declarations().length_unit.symbol().to_owned(),
            ValueType::Area => last_words(&shown(&Number::ONE)),
            _ => declared.unit.clone().unwrap_or_default(),
        };
        let bare = |number: &Number| {
            let text = shown(number);
            let bare = text.strip_suffix(&unit).map(|text| text.trim_end().to_owned());
            bare.unwrap_or(text)
        };
        let plain = |number: &Number| match declared.value_type {
            ValueType::Length => {
                let unit = self.reading.declarations().length_unit.in_inches();
                number
                    .checked_div(&unit)
                    .map_or_else(|| exact(number), |number| exact(&number))
            }
            ValueType::Area => bare(number),
            _ => exact(number),
        };
        let brackets = (0..axis.uppers.len()).filter_map(|position| axis.ends(position));
        AxisSheet {
            of: self.reading.words(item.part).label(Subject::Figure(figure)),
            unit: unit.clone(),
            brackets: brackets
                .map(|(lower, upper)| Bracket {
                    over: bare(lower),
                    is_from_zero: lower.is_zero(),
                    to: bare(upper),
                    upper: plain(upper),
                })
                .collect(),
        }
    }

    fn step(self, step: &TailStep) -> TailLine {
        TailLine {
            id: step.id.clone(),
            label: step.label.clone(),
            class: class_word(step.class),
            tax_class: step.tax_class.clone(),
            amount: match &step.amount {
                Amount::Money(amount) => TailAmount::Money(self.money(amount)),
                Amount::Percent(percent) => TailAmount::Percent(exact(percent)),
            },
        }
    }
}

/// The word for a class, as files write it.
fn class_word(class: Class) -> &'static str {
    match class {
        Class::Goods => "goods",
        Class::Labour => "labour",
        Class::Fee => "fee",
        Class::Credit => "credit",
    }
}

fn covers(row: &SheetRow, options: &[&OptionEntry]) -> bool {
    let mut cells = row.options.iter().zip(options);
    cells.all(|(cell, option)| cell.as_ref().is_none_or(|set| set.contains(&option.id)))
}

fn pairs(one: &Attribute, other: &Attribute) -> usize {
    one.options.len().saturating_mul(other.options.len())
}

/// What has more options goes down, so that the sheet is narrow.
fn longer_first<'a>(
    one: (&'a AttributeIndex, &'a Attribute),
    other: (&'a AttributeIndex, &'a Attribute),
) -> (
    (&'a AttributeIndex, &'a Attribute),
    (&'a AttributeIndex, &'a Attribute),
) {
    if other.1.options.len() > one.1.options.len() {
        (other, one)
    } else {
        (one, other)
    }
}

/// What stands after the number.
fn last_words(text: &str) -> String {
    text.split_once(' ')
        .map(|(_, unit)| unit.to_owned())
        .unwrap_or_default()
}
