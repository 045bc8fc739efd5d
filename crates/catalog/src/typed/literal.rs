//! Texts as values of a type: an option by its id, a length, an area, a number, a date.

use std::ops::Range;

use astragal_model::measure_text::{parse_area, parse_length};
use astragal_model::{Date, Id, Number, Value, ValueType};

use crate::finding::{Finding, Findings};
use crate::nearest::nearest;
use crate::typed::{Names, OptionDomain, PlacedText, Type};

/// LIMIT: how many options a help names before it says how many more there are.
const OPTIONS_NAMED: usize = 12;

/// A raw text as a value of the wanted type; `None` means that a finding at `span` says what is wrong.
///
/// A length without a unit is in the catalog's unit. An area always names its unit.
pub(crate) fn literal(
    text: &PlacedText,
    span: &Range<usize>,
    raw: &str,
    wanted: &Type,
    names: &Names,
    findings: &Findings,
) -> Option<Value> {
    let wrong = |message: String, help: Option<String>| {
        let mut finding = Finding::error("WRONG_VALUE", message).at(text.at(span));
        if let Some(help) = help {
            finding = finding.with_help(help);
        }
        findings.push(finding);
        None
    };
    match wanted.value_type {
        ValueType::Option => option(text, span, raw, wanted.options.as_deref(), findings),
        ValueType::Length => match parse_length(raw, Some(names.length_unit)) {
            Ok(inches) => Some(Value::Length(inches)),
            Err(error) => wrong(error.to_string(), Some(error.help())),
        },
        ValueType::Area => match parse_area(raw) {
            Ok(square_inches) => Some(Value::Area(square_inches)),
            Err(error) => wrong(error.to_string(), Some(error.help())),
        },
        ValueType::Number => match Number::from_decimal(raw) {
            Some(number) => Some(Value::Number(number)),
            None => wrong(
                format!("`{raw}` is not a decimal number"),
                Some("write it like 12.5".to_owned()),
            ),
        },
        ValueType::Date => match raw
            .parse::<Date>()
            .ok()
            .filter(|_| raw.len() == "2026-11-25".len())
        {
            Some(date) => Some(Value::Date(date)),
            None => wrong(
                format!("`{raw}` is not a date"),
                Some("write it like 2026-11-25".to_owned()),
            ),
        },
        ValueType::Bool => {
            let help = "in an expression write true or false, without quotes".to_owned();
            wrong(format!("`{raw}` is a text; expected a yes or no"), Some(help))
        }
    }
}

/// A text without a wanted type: only a length or an area that names its unit speaks for itself.
pub(crate) fn self_explaining(raw: &str) -> Option<Value> {
    if let Ok(inches) = parse_length(raw, None) {
        return Some(Value::Length(inches));
    }
    parse_area(raw).ok().map(Value::Area)
}

fn option(
    text: &PlacedText,
    span: &Range<usize>,
    raw: &str,
    domain: Option<&OptionDomain>,
    findings: &Findings,
) -> Option<Value> {
    let id = Id::new(raw);
    let Some(domain) = domain else {
        return Some(Value::Option(id));
    };
    if domain.ids.contains(&id) {
        return Some(Value::Option(id));
    }
    findings.push(
        Finding::error(
            "UNKNOWN_OPTION",
            format!("`{raw}` is not an option of {}", domain.of),
        )
        .at(text.at(span))
        .with_help(options_help(raw, domain)),
    );
    None
}

/// The nearest option, or the options there are.
pub(crate) fn options_help(raw: &str, domain: &OptionDomain) -> String {
    if let Some(near) = nearest(raw, domain.ids.iter().map(Id::as_str)) {
        return format!("did you mean `{near}`?");
    }
    let named: Vec<String> = domain
        .ids
        .iter()
        .take(OPTIONS_NAMED)
        .map(|id| format!("`{id}`"))
        .collect();
    let more = domain.ids.len().saturating_sub(OPTIONS_NAMED);
    let more = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    format!("options of {} are {}{more}", domain.of, named.join(", "))
}
