//! Why a price is what it is: the steps of every item, in the order in which they were taken.

use astragal_model::{AttributeIndex, Id, ItemState, Money, Number, PriceStep, Subject, Value, ValueType};

use crate::quote::work::QuotedUnit;
use crate::text::opening::section;
use crate::text::page::{Page, Tone};
use crate::text::prices::item_label;

pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>) {
    section(page, "Why this price");
    for finding in &unit.judgement.items {
        let end = match &finding.state {
            ItemState::Amount(amount) => amount.grouped(),
            ItemState::Unknown(_) => "not known".to_owned(),
            ItemState::NoPrice => "no price".to_owned(),
        };
        page.spread(4, Tone::Plain, &item_label(unit, finding.item), &end);
        for step in &finding.steps {
            page.entry(6, "> ", &unit.price_step(step));
        }
    }
    for step in &unit.judgement.tail {
        page.spread(4, Tone::Plain, &step.label, &step.amount.grouped());
        let how = match &step.percent {
            Some(percent) => format!("{percent} % of what stands above it"),
            None => "a fixed amount after all items".to_owned(),
        };
        page.entry(
            6,
            "> ",
            &format!("{how}; the running total is {}", step.after.grouped()),
        );
    }
}

impl QuotedUnit<'_> {
    /// One step to a price, in words.
    pub(crate) fn price_step(&self, step: &PriceStep) -> String {
        let catalog = self.used.catalog;
        let money = |amount: &Number| Money::new(amount.clone(), self.used.book.currency).grouped();
        let plain = |number: &Number| catalog.show_magnitude(ValueType::Number, number);
        match step {
            PriceStep::Book(amount) => format!("the price book says {}", money(amount)),
            PriceStep::Sheet { key, amount } => {
                format!(
                    "the price book says {} for {}",
                    money(amount),
                    self.sheet_key(key)
                )
            }
            PriceStep::Bracket {
                axis,
                size,
                lower,
                upper,
            } => {
                let value_type = catalog.declarations().figures.at(*axis).value_type;
                let show = |number: &Number| catalog.show_magnitude(value_type, number);
                let label = catalog.label_of(Subject::Figure(*axis));
                let (size, lower, upper) = (show(size), show(lower), show(upper));
                format!("{label} {size} lies in the bracket over {lower} up to {upper}")
            }
            PriceStep::Cell(amount) => format!("the price grid says {}", money(amount)),
            PriceStep::Quantity(quantity) => format!("times {}", plain(quantity)),
            PriceStep::MarkUp(percent) => format!("plus a mark-up of {percent} %"),
            PriceStep::PercentOf {
                item,
                amount,
                percent,
                result,
            } => format!(
                "{percent} % of {} at {} is {}",
                item_label(self, *item),
                amount.grouped(),
                result.grouped()
            ),
            PriceStep::Rounded { exact, to } => {
                format!(
                    "{} is rounded to the nearest {}, a half away from zero",
                    money(exact),
                    money(to)
                )
            }
        }
    }

    /// The options of a row of a sheet with their attributes.
    fn sheet_key(&self, key: &[(AttributeIndex, Id)]) -> String {
        let catalog = self.used.catalog;
        let named = key.iter().map(|(attribute, option)| {
            let subject = Subject::Attribute(*attribute);
            let shown = catalog.show(subject, &Value::Option(option.clone()));
            format!("{} {shown}", catalog.label_of(subject))
        });
        named.collect::<Vec<_>>().join(", ")
    }
}
