//! Prices one unit: every item that is incurred, the steps that led to its amount, the tail and the total.
//!
//! amount x quantity x mark-up, then one rounding, half away from zero. A percent item takes a percentage of every
//! line of the items it names, each rounded; those lines carry the mark-up already.
//!
//! Always holds: an amount is never guessed. An item without an amount breaks `has-a-price`; an item that cannot be
//! known leaves the total unknown.

mod amount;
mod reads;
mod tail;

use reads::{about, price_reads};

use crate::evaluate::Environment;
use crate::id::{Id, Indexed, ItemIndex};
use crate::judge::find::implicit;
use crate::judge::report::{
    ItemFinding, ItemState, PriceStep, RuleFinding, RuleName, RuleState, Standing, TailFinding, Total,
};
use crate::money::Money;
use crate::price::{Amount, AmountKind, Book, PriceItem};
use crate::setting::Setting;
use crate::unit::Choice;
use crate::value::{Outcome, UndefinedCause, Value, Wants};
use astragal_exact::Number;

/// What pricing a unit comes to.
pub(crate) struct Priced {
    pub(crate) items: Vec<ItemFinding>,
    pub(crate) subtotal: Option<Money>,
    pub(crate) tail: Vec<TailFinding>,
    pub(crate) total: Total,
    pub(crate) findings: Vec<RuleFinding>,
}

/// Prices the unit of `environment`; `alone` holds the same unit with standards alone.
pub(crate) fn price(setting: &Setting<'_>, environment: &Environment<'_>, alone: &Environment<'_>) -> Priced {
    let Some(book) = setting.book else {
        let total = Total::NotPriced;
        return Priced {
            items: Vec::new(),
            subtotal: None,
            tail: Vec::new(),
            total,
            findings: Vec::new(),
        };
    };
    let pricing = Pricing {
        setting,
        book,
        environment,
        alone,
    };
    let declared = &environment.declarations.items;
    let mut lines: Indexed<ItemIndex, Option<ItemFinding>> = declared.values().map(|_| None).collect();
    let mut findings = Vec::new();
    // Percent items name items that are not percents, so two rounds suffice.
    for percent_round in [false, true] {
        for (index, item) in declared.iter() {
            if matches!(item.amount, AmountKind::Percent(_)) == percent_round {
                lines.put(index, pricing.line(index, item, &lines, &mut findings));
            }
        }
    }
    let items: Vec<ItemFinding> = lines.values().flatten().cloned().collect();
    let (subtotal, tail, total) = pricing.total(&items);
    findings.sort_by_key(|finding| finding.rule);
    Priced {
        items,
        subtotal,
        tail,
        total,
        findings,
    }
}

/// What pricing looks at.
struct Pricing<'a> {
    setting: &'a Setting<'a>,
    book: &'a Book,
    environment: &'a Environment<'a>,
    alone: &'a Environment<'a>,
}

/// Why an incurred item has no amount.
enum Lack {
    /// It cannot be known yet.
    Unknown(Wants),
    /// There is no cell for the size, for this reason, and the plant must sign off.
    SignOff(String),
    /// There is no amount, for this reason.
    NoPrice(RuleState, String),
    /// An item that it names has none, which is reported there.
    NoPriceElsewhere,
}

impl Pricing<'_> {
    /// The line of one item, if it is incurred or may be.
    fn line(
        &self,
        index: ItemIndex,
        item: &PriceItem,
        lines: &Indexed<ItemIndex, Option<ItemFinding>>,
        findings: &mut Vec<RuleFinding>,
    ) -> Option<ItemFinding> {
        let mut steps = Vec::new();
        if not_asked(self.environment, item) {
            return None;
        }
        let mut incurred = item
            .when
            .as_ref()
            .map_or_else(|| Outcome::truth(true), |when| self.environment.evaluate(when));
        if let Outcome::Undefined(_) = incurred
            && let Some(wants) = self.may_not_be_asked(item)
        {
            incurred = Outcome::Unknown(wants);
        }
        let amount = match incurred {
            Outcome::Known(Value::Bool(true)) => self.amount(item, lines, &mut steps),
            Outcome::Known(_) => return None,
            Outcome::Unknown(wants) => Err(Lack::Unknown(wants)),
            Outcome::Undefined(cause) => {
                let reason = "whether it is incurred has no answer here".to_owned();
                Err(Lack::NoPrice(RuleState::NoRow(cause), reason))
            }
        };
        let state = match amount {
            Ok(money) => ItemState::Amount(money),
            Err(Lack::Unknown(wants)) => ItemState::Unknown(wants),
            Err(Lack::SignOff(reason)) => {
                let reason = format!("{reason}; the plant must sign off and price it");
                let mut finding = self.no_price(index, item, RuleState::Broken, &reason);
                finding.standing = Standing::SignOff;
                findings.push(finding);
                ItemState::Unknown(Wants::from([crate::value::Want::SignOff(index)]))
            }
            Err(Lack::NoPrice(state, reason)) => {
                findings.push(self.no_price(index, item, state, &reason));
                ItemState::NoPrice
            }
            Err(Lack::NoPriceElsewhere) => ItemState::NoPrice,
        };
        let standard = self.is_standard(item);
        Some(ItemFinding {
            item: index,
            state,
            standard,
            steps,
            about: about(item),
        })
    }

    /// The amount of an incurred item, with its steps.
    fn amount(
        &self,
        item: &PriceItem,
        lines: &Indexed<ItemIndex, Option<ItemFinding>>,
        steps: &mut Vec<PriceStep>,
    ) -> Result<Money, Lack> {
        if let AmountKind::Percent(named) = &item.amount {
            return self.percent(item, named, lines, steps);
        }
        let mut exact = self.book_amount(item, steps)?;
        if let Some(quantity) = &item.quantity {
            let quantity = match self.environment.evaluate(quantity) {
                Outcome::Known(Value::Number(quantity)) => quantity,
                Outcome::Known(_) => return Err(no_quantity(UndefinedCause::IllTyped)),
                Outcome::Unknown(wants) => return Err(Lack::Unknown(wants)),
                Outcome::Undefined(cause) => return Err(no_quantity(cause)),
            };
            if quantity < Number::from(0) {
                let reason = format!("its quantity is below zero: {quantity}");
                return Err(Lack::NoPrice(RuleState::Broken, reason));
            }
            exact = &exact * &quantity;
            steps.push(PriceStep::Quantity(quantity));
        }
        let mark_up = self
            .setting
            .policy
            .and_then(|policy| policy.terms.mark_ups.get(&item.class));
        if let Some(mark_up) = mark_up {
            exact = &exact + &percent_of(&exact, mark_up);
            steps.push(PriceStep::MarkUp(mark_up.clone()));
        }
        let rounded = self.rounded(&exact);
        if *rounded.amount() != exact {
            steps.push(PriceStep::Rounded {
                exact,
                to: self.unit().clone(),
            });
        }
        Ok(rounded)
    }

    fn percent(
        &self,
        item: &PriceItem,
        named: &std::collections::BTreeSet<Id>,
        lines: &Indexed<ItemIndex, Option<ItemFinding>>,
        steps: &mut Vec<PriceStep>,
    ) -> Result<Money, Lack> {
        let Some(Amount::Percent(percent)) = self.book.amounts.get(&item.id) else {
            return Err(no_entry(self.book));
        };
        let mut sum = Number::from(0);
        let mut wants = Wants::new();
        let mut without_price = false;
        for line in lines.values().flatten() {
            let other = self.environment.declarations.items.at(line.item);
            if !named.contains(&other.id) || !self.may_take(item, other) {
                continue;
            }
            match &line.state {
                ItemState::Amount(amount) => {
                    let result = self.rounded(&percent_of(amount.amount(), percent));
                    sum = &sum + result.amount();
                    let (amount, percent) = (amount.clone(), percent.clone());
                    steps.push(PriceStep::PercentOf {
                        item: line.item,
                        amount,
                        percent,
                        result,
                    });
                }
                ItemState::Unknown(more) => wants.extend(more.iter().cloned()),
                ItemState::NoPrice => without_price = true,
            }
        }
        match (without_price, wants.is_empty()) {
            (true, _) => Err(Lack::NoPriceElsewhere),
            (false, false) => Err(Lack::Unknown(wants)),
            (false, true) => Ok(Money::new(sum, self.book.currency)),
        }
    }

    /// What says whether an attribute is asked that an item goes by, where that is not known: if it is not, the item
    /// costs nothing, whatever its condition comes to.
    fn may_not_be_asked(&self, item: &PriceItem) -> Option<Wants> {
        let AmountKind::By(attributes) = &item.amount else {
            return None;
        };
        let mut wants = Wants::new();
        for attribute in attributes {
            let is_open = *self.environment.unit.choices.at(*attribute) == Choice::Open;
            if let Outcome::Unknown(more) = self.environment.asked.at(*attribute)
                && is_open
            {
                wants.extend(more.iter().cloned());
            }
        }
        (!wants.is_empty()).then_some(wants)
    }

    /// Whether a percent item takes a line of an item that it names: of another part of its own kind it does not.
    fn may_take(&self, item: &PriceItem, other: &PriceItem) -> bool {
        let (Some(own), Some(of)) = (item.part, other.part) else {
            return true;
        };
        let parts = &self.environment.declarations.parts;
        own == of || parts.at(own).kind != parts.at(of).kind
    }

    /// Whether standards alone would incur the item as well, with the same row where it goes by options.
    fn is_standard(&self, item: &PriceItem) -> bool {
        let condition = item
            .when
            .as_ref()
            .map_or_else(|| Outcome::truth(true), |when| self.alone.evaluate(when));
        if !condition.is_truth(true) {
            return false;
        }
        let AmountKind::By(attributes) = &item.amount else {
            return true;
        };
        let key = |environment: &Environment<'_>| -> Vec<Option<Id>> {
            attributes
                .iter()
                .map(|attribute| environment.unit.choices.at(*attribute).option().cloned())
                .collect()
        };
        !not_asked(self.alone, item) && key(self.environment) == key(self.alone)
    }

    fn no_price(&self, index: ItemIndex, item: &PriceItem, state: RuleState, reason: &str) -> RuleFinding {
        let label = match item.part {
            Some(part) => format!(
                "{} ({})",
                item.label,
                self.environment.declarations.parts.at(part).label
            ),
            None => item.label.clone(),
        };
        let message = format!("{label} has no price: {reason}.");
        let rule = RuleName::HasAPrice(index);
        let mut finding = implicit(
            self.environment,
            rule,
            "has-a-price".to_owned(),
            state,
            message,
            &price_reads(item),
        );
        finding.part = item.part;
        finding
    }

    fn unit(&self) -> &Number {
        let of_policy = self
            .setting
            .policy
            .and_then(|policy| policy.terms.round_to.as_ref());
        of_policy.unwrap_or(&self.book.round_to)
    }

    fn rounded(&self, exact: &Number) -> Money {
        let exact = Money::new(exact.clone(), self.book.currency);
        exact.rounded_to(self.unit()).unwrap_or(exact)
    }
}

/// Whether an item goes by an attribute that is not asked: what is not asked costs nothing, whatever else holds.
fn not_asked(environment: &Environment<'_>, item: &PriceItem) -> bool {
    let AmountKind::By(attributes) = &item.amount else {
        return false;
    };
    attributes
        .iter()
        .any(|attribute| *environment.unit.choices.at(*attribute) == Choice::NotAsked)
}

fn percent_of(amount: &Number, percent: &Number) -> Number {
    let product = amount * percent;
    product.checked_div(&Number::from(100)).unwrap_or(product)
}

fn no_quantity(cause: UndefinedCause) -> Lack {
    Lack::NoPrice(
        RuleState::NoRow(cause),
        "its quantity has no value here".to_owned(),
    )
}

fn no_entry(book: &Book) -> Lack {
    Lack::NoPrice(
        RuleState::Broken,
        format!("the price book {} has no amount for it", book.label),
    )
}
