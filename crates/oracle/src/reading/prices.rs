//! Prices a unit: items by demand, a percent item after those that it names, then the tail step by step.

use std::collections::BTreeMap;

use astragal_model::{
    Amount, AmountKind, AttributeIndex, Beyond, Book, FigureIndex, Grid, Id, ItemIndex, Number, PriceItem,
    Standing, TailStep,
};
use num_rational::BigRational;
use num_traits::Zero;

use crate::reading::answer::{Answer, Datum, all_wants};
use crate::reading::fraction::{Way, fraction, multiple, whole};
use crate::reading::reader::Reader;
use crate::reading::truth::Truth;
use crate::reading::{Failing, Line, Price, Stand, at_part};

/// What pricing comes to.
pub(crate) struct Priced {
    pub(crate) items: BTreeMap<String, (Line, bool)>,
    pub(crate) subtotal: Option<BigRational>,
    pub(crate) tail: Vec<(String, BigRational, BigRational)>,
    pub(crate) total: Price,
}

/// What an item comes to, and what it does to `has-a-price`.
#[derive(Clone)]
enum Found {
    NotIncurred,
    Amount(BigRational),
    Unknown(Answer),
    SignOff,
    NoPrice(Failing),
    NoPriceElsewhere,
}

impl Reader<'_> {
    /// The price of the unit; failures of `has-a-price` go to `rules`.
    pub(crate) fn priced(
        &self,
        alone: &Reader<'_>,
        rules: &mut BTreeMap<String, (Failing, Standing)>,
    ) -> Priced {
        let mut items = BTreeMap::new();
        let Some(book) = self.setting.book else {
            return Priced {
                items,
                subtotal: None,
                tail: Vec::new(),
                total: Price::NotPriced,
            };
        };
        for (index, item) in self.declared.items.iter() {
            let name = at_part(self.declared, &item.id, item.part);
            let rule = format!("has-a-price {name}");
            let line = match self.found(book, index) {
                Found::NotIncurred => continue,
                Found::Amount(amount) => Line::Amount(amount),
                Found::Unknown(answer) => Line::Unknown(all_wants(&[answer])),
                Found::SignOff => {
                    rules.insert(rule, (Failing::Broken, Standing::SignOff));
                    Line::Unknown([sign_off_want(&name)].into())
                }
                Found::NoPrice(failing) => {
                    rules.insert(rule, (failing, Standing::Binds));
                    Line::NoPrice
                }
                Found::NoPriceElsewhere => Line::NoPrice,
            };
            items.insert(name, (line, self.is_standard(item, alone)));
        }
        self.totalled(book, items)
    }

    fn totalled(&self, book: &Book, items: BTreeMap<String, (Line, bool)>) -> Priced {
        let mut subtotal = whole(0);
        let mut wants = std::collections::BTreeSet::new();
        let mut without = false;
        for (line, _) in items.values() {
            match line {
                Line::Amount(amount) => subtotal += amount,
                Line::Unknown(more) => wants.extend(more.iter().cloned()),
                Line::NoPrice => without = true,
            }
        }
        if without || !wants.is_empty() {
            let total = if without {
                Price::NoPrice
            } else {
                Price::Unknown(wants)
            };
            return Priced {
                items,
                subtotal: None,
                tail: Vec::new(),
                total,
            };
        }
        let mut running = subtotal.clone();
        let mut tail = Vec::new();
        let more = self.setting.policy.map_or(&[][..], |policy| &policy.terms.tail);
        for step in book.tail.iter().chain(more) {
            let after = self.after_step(book, step, &running);
            tail.push((step.id.as_str().to_owned(), &after - &running, after.clone()));
            running = after;
        }
        Priced {
            items,
            subtotal: Some(subtotal),
            tail,
            total: Price::Known(running),
        }
    }

    /// The running total after a step; it is the total that is rounded.
    fn after_step(&self, book: &Book, step: &TailStep, running: &BigRational) -> BigRational {
        let adds = match &step.amount {
            Amount::Money(amount) => fraction(amount),
            Amount::Percent(percent) => running * hundredths(percent),
        };
        self.round(book, &(running + adds))
    }

    /// What an item comes to.
    fn found(&self, book: &Book, index: ItemIndex) -> Found {
        let item = self.declared.items.at(index);
        if let AmountKind::By(attributes) = &item.amount
            && attributes
                .iter()
                .any(|attribute| self.stand(*attribute) == Stand::NotAsked)
        {
            self.meet("item by options", "not asked");
            return Found::NotIncurred;
        }
        if let Some(when) = &item.when {
            let when = self.answer(when);
            match (when.as_truth(), when) {
                (Truth::True, _) => {}
                (Truth::False, _) => return Found::NotIncurred,
                (_, Answer::Nothing(reason)) => {
                    // Nothing is incurred if an attribute that it goes by turns out not to be asked.
                    return match self.asking(item) {
                        Some(wants) => {
                            self.meet("item by options", "perhaps not asked, without an answer");
                            Found::Unknown(wants)
                        }
                        None => Found::NoPrice(Failing::NoRow(reason)),
                    };
                }
                (_, unsettled) => return Found::Unknown(unsettled),
            }
        }
        let amount = match &item.amount {
            AmountKind::Percent(named) => return self.percent(book, item, named),
            AmountKind::Flat => match book.amounts.get(&item.id) {
                Some(Amount::Money(amount)) => Found::Amount(fraction(amount)),
                _ => Found::NoPrice(Failing::Broken),
            },
            AmountKind::By(attributes) => self.by_options(book, item, attributes),
            AmountKind::Grid { grid, axes, beyond } => match book.grids.get(grid) {
                Some(grid) => self.by_size(grid, axes, *beyond),
                None => Found::NoPrice(Failing::Broken),
            },
        };
        let Found::Amount(amount) = amount else {
            return amount;
        };
        let quantity = match &item.quantity {
            None => whole(1),
            Some(quantity) => match self.answer(quantity) {
                Answer::Is(Datum::Number(quantity)) if quantity < whole(0) => {
                    self.meet("quantity", "below zero");
                    return Found::NoPrice(Failing::Broken);
                }
                Answer::Is(Datum::Number(quantity)) => quantity,
                Answer::Is(_) => return Found::NoPrice(Failing::NoRow("ill typed".to_owned())),
                Answer::Nothing(reason) => return Found::NoPrice(Failing::NoRow(reason)),
                wants @ Answer::Wants(_) => return Found::Unknown(wants),
            },
        };
        let mark_up = self
            .setting
            .policy
            .and_then(|policy| policy.terms.mark_ups.get(&item.class));
        let factor = mark_up.map_or_else(|| whole(1), |mark_up| whole(1) + hundredths(mark_up));
        Found::Amount(self.round(book, &(amount * quantity * factor)))
    }

    /// What is wanted to know whether an open attribute is asked that an item goes by; nothing where that is known.
    fn asking(&self, item: &PriceItem) -> Option<Answer> {
        let AmountKind::By(attributes) = &item.amount else {
            return None;
        };
        let open = attributes
            .iter()
            .filter(|one| matches!(self.stand(**one), Stand::Open(_)));
        let unsettled: Vec<Answer> = open
            .map(|attribute| self.asked(*attribute))
            .filter(|asked| matches!(asked, Answer::Wants(_)))
            .collect();
        (!unsettled.is_empty()).then(|| Answer::Wants(all_wants(&unsettled)))
    }

    /// A percentage of every line of the items named, each rounded; an absent one counts 0.
    fn percent(&self, book: &Book, item: &PriceItem, named: &std::collections::BTreeSet<Id>) -> Found {
        let Some(Amount::Percent(percent)) = book.amounts.get(&item.id) else {
            return Found::NoPrice(Failing::Broken);
        };
        let mut sum = whole(0);
        let mut unknown = Vec::new();
        let mut without = false;
        for (index, other) in self.declared.items.iter() {
            if !named.contains(&other.id) || matches!(other.amount, AmountKind::Percent(_)) {
                continue;
            }
            // Inside an item of a part, the name of an item of the same kind of part means the one of this part.
            let kind = |item: &PriceItem| item.part.map(|part| &self.declared.parts.at(part).kind);
            if kind(item).is_some() && kind(item) == kind(other) && item.part != other.part {
                self.meet("percent of an item", "of another part");
                continue;
            }
            match self.found(book, index) {
                Found::NotIncurred => self.meet("percent of an item", "absent"),
                Found::Amount(amount) => sum += self.round(book, &(amount * hundredths(percent))),
                Found::Unknown(answer) => unknown.push(answer),
                Found::SignOff => {
                    let name = at_part(self.declared, &other.id, other.part);
                    unknown.push(Answer::want(sign_off_want(&name)));
                }
                Found::NoPrice(_) | Found::NoPriceElsewhere => without = true,
            }
        }
        if without {
            self.meet("percent of an item", "without a price");
            return Found::NoPriceElsewhere;
        }
        if unknown.is_empty() {
            Found::Amount(sum)
        } else {
            Found::Unknown(Answer::Wants(all_wants(&unknown)))
        }
    }

    /// Not incurred while one of the attributes is not asked.
    fn by_options(&self, book: &Book, item: &PriceItem, attributes: &[AttributeIndex]) -> Found {
        let mut options = Vec::new();
        let mut open = Vec::new();
        for attribute in attributes {
            match self.stand(*attribute) {
                Stand::NotAsked => return Found::NotIncurred,
                Stand::Open(wants) => open.push(Answer::Wants(wants)),
                Stand::Filled(option) | Stand::Picked(option, _) => options.push(option),
            }
        }
        if !open.is_empty() {
            self.meet("item by options", "open");
            return Found::Unknown(Answer::Wants(all_wants(&open)));
        }
        for row in book.sheets.get(&item.id).into_iter().flatten() {
            let mut covers = true;
            for (cell, option) in row.options.iter().zip(&options) {
                if let Some(cell) = cell {
                    covers &= cell.iter().any(|id| id.as_str() == option);
                }
            }
            if covers {
                self.meet("item by options", "row");
                return Found::Amount(fraction(&row.amount));
            }
        }
        self.meet("item by options", "no row");
        Found::NoPrice(Failing::Broken)
    }

    /// The cell whose brackets hold the sizes: lower < size <= upper.
    fn by_size(&self, grid: &Grid, figures: &[FigureIndex], beyond: Beyond) -> Found {
        let sizes: Vec<Answer> = figures.iter().map(|figure| self.figure(*figure)).collect();
        for size in &sizes {
            if let Answer::Nothing(reason) = size {
                return Found::NoPrice(Failing::NoRow(reason.clone()));
            }
        }
        if sizes.iter().any(|size| matches!(size, Answer::Wants(_))) {
            return Found::Unknown(Answer::Wants(all_wants(&sizes)));
        }
        let mut position = 0;
        let mut inside = true;
        let mut too_small = false;
        for (axis, size) in grid.axes.iter().zip(&sizes) {
            let Answer::Is(size) = size else { continue };
            let Some(size) = size.size() else { continue };
            let mut lower = fraction(&axis.lower);
            too_small |= *size <= lower;
            let mut bracket = None;
            for (count, upper) in axis.uppers.iter().enumerate() {
                let upper = fraction(upper);
                if lower < *size && *size <= upper {
                    bracket = Some(count);
                }
                lower = upper;
            }
            self.meet(
                "bracket",
                if bracket.is_some() {
                    "found"
                } else {
                    "beyond an end"
                },
            );
            inside &= bracket.is_some();
            position = position * axis.uppers.len() + bracket.unwrap_or(0);
        }
        let cell = if inside { grid.cells.get(position) } else { None };
        match (cell, beyond) {
            (Some(Some(amount)), _) => Found::Amount(fraction(amount)),
            (_, Beyond::SignOff) if too_small => {
                self.meet("no price", "at or below the lower end");
                Found::NoPrice(Failing::Broken)
            }
            (empty, Beyond::SignOff) => {
                self.meet(
                    "sign-off",
                    if empty.is_some() {
                        "empty cell"
                    } else {
                        "beyond an end"
                    },
                );
                Found::SignOff
            }
            (empty, Beyond::Break) => {
                self.meet(
                    "no price",
                    if empty.is_some() {
                        "empty cell"
                    } else {
                        "beyond an end"
                    },
                );
                Found::NoPrice(Failing::Broken)
            }
        }
    }

    /// Standards alone would incur it as well, by the same options.
    fn is_standard(&self, item: &PriceItem, alone: &Reader<'_>) -> bool {
        if let Some(when) = &item.when
            && alone.answer(when).as_truth() != Truth::True
        {
            return false;
        }
        let AmountKind::By(attributes) = &item.amount else {
            return true;
        };
        let option = |reader: &Reader<'_>, attribute| match reader.stand(attribute) {
            Stand::Filled(option) | Stand::Picked(option, _) => Some(option),
            Stand::Open(_) | Stand::NotAsked => None,
        };
        attributes.iter().all(|attribute| {
            alone.stand(*attribute) != Stand::NotAsked
                && option(self, *attribute) == option(alone, *attribute)
        })
    }

    /// To the policy's unit if it has one, else the book's; a half goes away from zero.
    fn round(&self, book: &Book, exact: &BigRational) -> BigRational {
        let of_policy = self
            .setting
            .policy
            .and_then(|policy| policy.terms.round_to.as_ref());
        let unit = fraction(of_policy.unwrap_or(&book.round_to));
        let rounded = multiple(exact, &unit, Way::Nearest).unwrap_or_else(|| exact.clone());
        let as_is = if rounded == *exact { "exact" } else { "rounded" };
        self.meet(
            if exact < &BigRational::zero() {
                "money below zero"
            } else {
                "money"
            },
            as_is,
        );
        rounded
    }
}

/// How a sign-off is wanted.
pub(crate) fn sign_off_want(item: &str) -> String {
    format!("sign-off {item}")
}

fn hundredths(percent: &Number) -> BigRational {
    fraction(percent) / whole(100)
}
