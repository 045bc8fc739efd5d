//! The openings of the demo house as requests, made from what `astragal quote --format json` says of them.

use serde_json::Value;

use super::{google_type, v1};
use crate::program::json;

pub(crate) const HOUSE: &str = "examples/corner-house/order.toml";

/// The quote of the demo house.
pub(crate) fn house(more: &[&str]) -> Value {
    let arguments: Vec<&str> = ["quote", HOUSE, "--format", "json"]
        .into_iter()
        .chain(more.iter().copied())
        .collect();
    json(&arguments)
}

/// One opening of a quote.
pub(crate) fn opening<'a>(quote: &'a Value, tag: &str) -> &'a Value {
    let mut openings = list(&quote["openings"]);
    openings.find(|one| one["tag"] == tag).expect("the opening")
}

/// The elements of a list.
pub(crate) fn list(value: &Value) -> std::slice::Iter<'_, Value> {
    value
        .as_array()
        .unwrap_or_else(|| panic!("no list: {value}"))
        .iter()
}

/// A text; nothing where there is none.
pub(crate) fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

/// The unit of an opening as a request asks about it.
pub(crate) fn unit(quote: &Value, opening: &Value) -> v1::Unit {
    let unit = &opening["unit"];
    let mut catalogs = list(&quote["catalogs"]);
    let used = catalogs
        .find(|one| one["id"] == unit["catalog"])
        .expect("its catalog");
    let name = |collection: &str, id: &Value| format!("{collection}/{}", text(id));
    v1::Unit {
        catalog: name("catalogs", &used["id"]),
        book: name("books", &used["book"]["id"]),
        policy: name("policies", &used["policy"]["id"]),
        date: date(&quote["order"]["date"]),
        measures: list(&opening["measures"]).filter_map(measured).collect(),
        facts: list(&opening["facts"]).filter_map(fact).collect(),
        picks: list(&unit["picks"]).map(pick).collect(),
        pins: list(&unit["pins"]).map(text).collect(),
        waivers: list(&unit["waivers"]).map(waiver).collect(),
    }
}

fn date(value: &Value) -> Option<google_type::Date> {
    let text = value.as_str()?;
    let mut parts = text.split('-').map(|part| part.parse::<i32>().expect("a date"));
    let mut part = || parts.next().expect("a date");
    Some(google_type::Date {
        year: part(),
        month: part(),
        day: part(),
    })
}

fn quantity(number: &Value, unit: &str) -> v1::Quantity {
    let number = text(number);
    v1::Quantity {
        number: Some(if number.contains('/') {
            v1::quantity::Number::Fraction(number)
        } else {
            v1::quantity::Number::Decimal(google_type::Decimal { value: number })
        }),
        unit: unit.to_owned(),
    }
}

/// A length or a number, as the JSON types it.
fn size(value: &Value) -> v1::Quantity {
    match value["type"].as_str() {
        Some("length") => quantity(&value["inches"], "[in_i]"),
        _ => quantity(&value["number"], "1"),
    }
}

fn measured(measure: &Value) -> Option<v1::Measured> {
    let value = measure.get("value").filter(|value| !value.is_null())?;
    let deducted_by = match measure["deducted_by"].as_str() {
        Some("nobody") => v1::DeductedBy::Nobody,
        Some("dealer") => v1::DeductedBy::Dealer,
        Some("customer") => v1::DeductedBy::Customer,
        _ => v1::DeductedBy::Unspecified,
    };
    Some(v1::Measured {
        measure: text(&measure["id"]),
        size: Some(size(value)),
        deducted_by: deducted_by.into(),
    })
}

fn fact(fact: &Value) -> Option<v1::KnownFact> {
    use v1::value::Kind;
    let value = fact.get("value").filter(|value| !value.is_null())?;
    let kind = match value["type"].as_str() {
        Some("bool") => Kind::Truth(value["value"] == true),
        Some("date") => Kind::Date(date(&value["date"])?),
        Some("option") => Kind::Option(text(&value["id"])),
        _ => Kind::Quantity(size(value)),
    };
    Some(v1::KnownFact {
        fact: text(&fact["id"]),
        value: Some(v1::Value {
            kind: Some(kind),
            text: String::new(),
        }),
    })
}

fn pick(pick: &Value) -> v1::Pick {
    v1::Pick {
        attribute: text(&pick["attribute"]["id"]),
        option: text(&pick["option"]["id"]),
        quoted: date(&pick["quoted"]),
    }
}

fn waiver(waiver: &Value) -> v1::Waiver {
    v1::Waiver {
        rule: text(&waiver["rule"]),
        reference: text(&waiver["reference"]),
        valid_from: date(&waiver["from"]),
        valid_until: date(&waiver["until"]),
    }
}

/// An amount of two decimals as the JSON writes it.
pub(crate) fn amount(money: Option<&google_type::Money>) -> Value {
    let Some(money) = money else { return Value::Null };
    let cents = i128::from(money.units) * 100 + i128::from(money.nanos) / 10_000_000;
    assert_eq!(i128::from(money.nanos) % 10_000_000, 0, "whole cents");
    let sign = if cents < 0 { "-" } else { "" };
    let size = cents.abs();
    serde_json::json!({
        "amount": format!("{sign}{}.{:02}", size / 100, size % 100),
        "currency": money.currency_code,
    })
}

/// The word of an enumeration without its prefix, as the JSON writes it.
pub(crate) fn word(name: &str, prefix: &str) -> String {
    name.strip_prefix(prefix).expect("the prefix").to_lowercase()
}
