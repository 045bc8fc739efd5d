//! Prices for a program: every item with its steps, the tail, and the total of one unit.

use astragal_model::{
    AttributeIndex, Catalog, Class, Id, ItemFinding, ItemState, Money, Number, PriceStep, Subject, Total,
    Value,
};
use serde::Serialize;

use crate::json::judgement::part_named;
use crate::json::values::{Amount, Named, TypedValue, Wanted, amount, magnitude, named, value, wants};
use crate::quote::words::item_name;
use crate::quote::work::QuotedUnit;

/// What one unit costs.
#[derive(Serialize)]
pub(crate) struct PriceAnswer {
    items: Vec<ItemAnswer>,
    subtotal: Option<Amount>,
    tail: Vec<TailAnswer>,
    /// `known`, `unknown`, `no_price` or `not_priced`.
    state: &'static str,
    total: Option<Amount>,
    wants: Vec<Wanted>,
}

#[derive(Serialize)]
struct ItemAnswer {
    id: String,
    label: String,
    part: Option<Named>,
    class: &'static str,
    tax_class: Option<String>,
    /// Whether standards alone would incur it; otherwise it is an upcharge.
    standard: bool,
    /// `known`, `unknown` or `no_price`.
    state: &'static str,
    amount: Option<Amount>,
    wants: Vec<Wanted>,
    about: Vec<Named>,
    steps: Vec<StepAnswer>,
}

#[derive(Serialize)]
struct TailAnswer {
    id: String,
    label: String,
    percent: Option<String>,
    amount: Amount,
    after: Amount,
}

/// One step to an amount, typed, and in words.
#[derive(Serialize)]
struct StepAnswer {
    text: String,
    #[serde(flatten)]
    step: TypedStep,
}

#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum TypedStep {
    Book {
        amount: Amount,
    },
    Sheet {
        key: Vec<KeyAnswer>,
        amount: Amount,
    },
    Bracket {
        axis: Named,
        size: TypedValue,
        over: TypedValue,
        up_to: TypedValue,
    },
    Cell {
        amount: Amount,
    },
    Quantity {
        quantity: String,
    },
    MarkUp {
        percent: String,
    },
    PercentOf {
        item: String,
        amount: Amount,
        percent: String,
        result: Amount,
    },
    Rounded {
        exact: Amount,
        to: Amount,
    },
}

#[derive(Serialize)]
struct KeyAnswer {
    attribute: Named,
    option: TypedValue,
}

impl PriceAnswer {
    pub(crate) fn new(unit: &QuotedUnit<'_>) -> Self {
        let judgement = &unit.judgement;
        let (state, wanted) = match &judgement.total {
            Total::NotPriced => ("not_priced", Vec::new()),
            Total::Known(_) => ("known", Vec::new()),
            Total::Unknown(more) => ("unknown", wants(unit, more)),
            Total::NoPrice => ("no_price", Vec::new()),
        };
        let tail = judgement.tail.iter().map(|step| TailAnswer {
            id: step.id.to_string(),
            label: step.label.clone(),
            percent: step.percent.as_ref().map(Number::to_string),
            amount: amount(&step.amount),
            after: amount(&step.after),
        });
        Self {
            items: judgement
                .items
                .iter()
                .map(|item| ItemAnswer::new(unit, item))
                .collect(),
            subtotal: judgement.subtotal.as_ref().map(amount),
            tail: tail.collect(),
            state,
            total: unit.unit_total().map(amount),
            wants: wanted,
        }
    }
}

impl ItemAnswer {
    fn new(unit: &QuotedUnit<'_>, finding: &ItemFinding) -> Self {
        let catalog = unit.used.catalog;
        let declared = catalog.declarations().items.at(finding.item);
        let (state, money, wanted) = match &finding.state {
            ItemState::Amount(money) => ("known", Some(amount(money)), Vec::new()),
            ItemState::Unknown(more) => ("unknown", None, wants(unit, more)),
            ItemState::NoPrice => ("no_price", None, Vec::new()),
        };
        let about = finding.about.iter();
        Self {
            id: declared.id.to_string(),
            label: declared.label.clone(),
            part: declared.part.map(|part| part_named(unit, part)),
            class: match declared.class {
                Class::Goods => "goods",
                Class::Labour => "labour",
                Class::Fee => "fee",
                Class::Credit => "credit",
            },
            tax_class: declared.tax_class.clone(),
            standard: finding.standard,
            state,
            amount: money,
            wants: wanted,
            about: about
                .map(|index| named(catalog, Subject::Attribute(*index)))
                .collect(),
            steps: finding
                .steps
                .iter()
                .map(|step| StepAnswer::new(unit, step))
                .collect(),
        }
    }
}

impl StepAnswer {
    fn new(unit: &QuotedUnit<'_>, step: &PriceStep) -> Self {
        Self {
            text: unit.price_step(step),
            step: TypedStep::new(unit, step),
        }
    }
}

impl TypedStep {
    fn new(unit: &QuotedUnit<'_>, step: &PriceStep) -> Self {
        let catalog = unit.used.catalog;
        let money = |number: &Number| amount(&Money::new(number.clone(), unit.used.book.currency));
        match step {
            PriceStep::Book(number) => Self::Book {
                amount: money(number),
            },
            PriceStep::Sheet { key, amount } => {
                let key = key
                    .iter()
                    .map(|(index, id)| KeyAnswer::new(catalog, *index, id))
                    .collect();
                Self::Sheet {
                    key,
                    amount: money(amount),
                }
            }
            PriceStep::Bracket {
                axis,
                size,
                lower,
                upper,
            } => {
                let value_type = catalog.declarations().figures.at(*axis).value_type;
                let show = |number: &Number| magnitude(catalog, value_type, number);
                let axis = named(catalog, Subject::Figure(*axis));
                Self::Bracket {
                    axis,
                    size: show(size),
                    over: show(lower),
                    up_to: show(upper),
                }
            }
            PriceStep::Cell(number) => Self::Cell {
                amount: money(number),
            },
            PriceStep::Quantity(number) => Self::Quantity {
                quantity: number.to_string(),
            },
            PriceStep::MarkUp(percent) => Self::MarkUp {
                percent: percent.to_string(),
            },
            PriceStep::PercentOf {
                item,
                amount: of,
                percent,
                result,
            } => Self::PercentOf {
                item: item_name(catalog, *item),
                amount: amount(of),
                percent: percent.to_string(),
                result: amount(result),
            },
            PriceStep::Rounded { exact, to } => Self::Rounded {
                exact: money(exact),
                to: money(to),
            },
        }
    }
}

impl KeyAnswer {
    fn new(catalog: &Catalog, index: AttributeIndex, id: &Id) -> Self {
        let subject = Subject::Attribute(index);
        Self {
            attribute: named(catalog, subject),
            option: value(catalog, subject, &Value::Option(id.clone())),
        }
    }
}
