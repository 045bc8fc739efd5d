//! Values, outcomes, wants and money, by type, id and label.

use astragal_model::{
    Catalog, Id, Money, Number, Outcome, Subject, UndefinedCause, Value, ValueType, Want, Wants,
};
use serde::Serialize;

use crate::quote::words::item_name;
use crate::quote::work::QuotedUnit;

/// A thing by its id, and as a person calls it.
#[derive(Serialize)]
pub(crate) struct Named {
    pub(crate) id: String,
    pub(crate) label: String,
}

/// An amount of one currency, exactly.
#[derive(Serialize)]
pub(crate) struct Amount {
    amount: String,
    currency: &'static str,
}

/// A known value by its type.
#[derive(Serialize)]
#[serde(tag = "type", rename_all = "snake_case")]
pub(crate) enum TypedValue {
    Bool { value: bool, text: String },
    Number { number: String, text: String },
    Length { inches: String, text: String },
    Area { square_inches: String, text: String },
    Date { date: String },
    Option { id: String, label: String },
    NotAsked,
}

/// How an expression ends.
#[derive(Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
pub(crate) enum Ending {
    Known { value: TypedValue },
    Unknown { wants: Vec<Wanted> },
    Undefined { cause: Cause },
}

/// One thing that would have to be known.
#[derive(Serialize)]
pub(crate) struct Wanted {
    kind: &'static str,
    id: String,
    label: String,
    ask: String,
}

/// Why there is no value.
#[derive(Serialize)]
pub(crate) struct Cause {
    kind: &'static str,
    id: Option<String>,
    text: String,
}

/// Something that can be read.
#[derive(Serialize)]
pub(crate) struct Readable {
    kind: &'static str,
    id: String,
    label: String,
}

pub(crate) fn amount(money: &Money) -> Amount {
    let shown = money.to_string();
    let currency = money.currency().code();
    let amount = shown.strip_suffix(currency).map_or(shown.as_str(), str::trim_end);
    Amount {
        amount: amount.to_owned(),
        currency,
    }
}

pub(crate) fn readable(catalog: &Catalog, subject: Subject) -> Readable {
    let kind = match subject {
        Subject::Attribute(_) => "attribute",
        Subject::Measure(_) => "measure",
        Subject::DeductedBy(_) => "deducted_by",
        Subject::Fact(_) => "fact",
        Subject::Figure(_) => "figure",
    };
    Readable {
        kind,
        id: catalog.name_of(subject),
        label: catalog.label_of(subject),
    }
}

pub(crate) fn named(catalog: &Catalog, subject: Subject) -> Named {
    Named {
        id: catalog.name_of(subject),
        label: catalog.label_of(subject),
    }
}

/// An option of an attribute by id and label.
pub(crate) fn option(catalog: &Catalog, subject: Subject, id: &Id) -> Named {
    let label = catalog.show(subject, &Value::Option(id.clone()));
    Named {
        id: id.to_string(),
        label,
    }
}

pub(crate) fn value(catalog: &Catalog, subject: Subject, value: &Value) -> TypedValue {
    let text = catalog.show(subject, value);
    match value {
        Value::Bool(value) => TypedValue::Bool { value: *value, text },
        Value::Number(number) => TypedValue::Number {
            number: number.to_string(),
            text,
        },
        Value::Length(number) => TypedValue::Length {
            inches: number.to_string(),
            text,
        },
        Value::Area(number) => TypedValue::Area {
            square_inches: number.to_string(),
            text,
        },
        Value::Date(date) => TypedValue::Date {
            date: date.to_string(),
        },
        Value::Option(id) => TypedValue::Option {
            id: id.to_string(),
            label: text,
        },
        Value::NotAsked => TypedValue::NotAsked,
    }
}

/// A bare number that counts in the type of a figure.
pub(crate) fn magnitude(catalog: &Catalog, value_type: ValueType, number: &Number) -> TypedValue {
    let text = catalog.show_magnitude(value_type, number);
    match value_type {
        ValueType::Length => TypedValue::Length {
            inches: number.to_string(),
            text,
        },
        ValueType::Area => TypedValue::Area {
            square_inches: number.to_string(),
            text,
        },
        _ => TypedValue::Number {
            number: number.to_string(),
            text,
        },
    }
}

pub(crate) fn ending(unit: &QuotedUnit<'_>, subject: Subject, outcome: &Outcome) -> Ending {
    match outcome {
        Outcome::Known(known) => Ending::Known {
            value: value(unit.used.catalog, subject, known),
        },
        Outcome::Unknown(more) => Ending::Unknown {
            wants: wants(unit, more),
        },
        Outcome::Undefined(why) => Ending::Undefined {
            cause: cause(unit.used.catalog, why),
        },
    }
}

pub(crate) fn wants(unit: &QuotedUnit<'_>, wants: &Wants) -> Vec<Wanted> {
    wants.iter().map(|want| wanted(unit, want)).collect()
}

fn wanted(unit: &QuotedUnit<'_>, want: &Want) -> Wanted {
    let catalog = unit.used.catalog;
    let (kind, id) = match want {
        Want::Measure(index) => ("measure", catalog.name_of(Subject::Measure(*index))),
        Want::DeductedBy(index) => ("deducted_by", catalog.name_of(Subject::DeductedBy(*index))),
        Want::Fact(index) => ("fact", catalog.name_of(Subject::Fact(*index))),
        Want::Choice(index) => ("choice", catalog.name_of(Subject::Attribute(*index))),
        Want::SignOff(index) => ("sign_off", item_name(catalog, *index)),
    };
    Wanted {
        kind,
        id,
        label: catalog.show_want(want),
        ask: unit.ask(want),
    }
}

pub(crate) fn cause(catalog: &Catalog, cause: &UndefinedCause) -> Cause {
    let attribute = |index: &_| Some(catalog.name_of(Subject::Attribute(*index)));
    let (kind, id) = match cause {
        UndefinedCause::NoRow(figure) => ("no_row", Some(catalog.name_of(Subject::Figure(*figure)))),
        UndefinedCause::NotAsked(index) => ("not_asked", attribute(index)),
        UndefinedCause::NoProperty(index, property) => (
            "no_property",
            attribute(index).map(|name| format!("{name}.{property}")),
        ),
        UndefinedCause::NotCovered(_) => ("not_covered", None),
        UndefinedCause::TooLarge => ("too_large", None),
        UndefinedCause::IllTyped => ("ill_typed", None),
    };
    Cause {
        kind,
        id,
        text: catalog.show_cause(cause),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_carries_its_digits_and_no_float() {
        let dollar = astragal_model::Currency::from_code("USD").unwrap();
        for (written, shown) in [
            ("455", "455.00"),
            ("-0.1", "-0.10"),
            ("1234567.005", "1234567.005"),
        ] {
            let money = Money::new(Number::from_decimal(written).unwrap(), dollar);
            let found = amount(&money);
            assert_eq!((found.amount.as_str(), found.currency), (shown, "USD"));
        }
    }
}
