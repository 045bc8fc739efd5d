//! Measures and facts as an order or an example writes them, and as values of the types that a catalog declares.
//!
//! Reading has two steps, because one order may be judged by several catalogs: [`raw_measures`] and [`raw_facts`] take
//! what is written, [`measured`] and [`fact_value`] make values of it. With `opening_width = { size = "35 5/8",
//! deducted_by = "nobody" }` and a measure whose type is length, the value is 285/8 in and nobody has deducted.
//!
//! Always holds: nothing is rounded; what is not a multiple of the step, or lies outside what is taken, is a finding, never brought
//! to what would do.
//! Cost: linear in the text.

mod fits;
mod together;

use astragal_model::measure_text::{LengthUnit, parse_length};
use astragal_model::{Date, DeductedBy, Measure, Measured, Number, SiteFact, Value, ValueType};

use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};
use crate::tree::{Node, NodeValue, TableReader};
use fits::WrittenNumber;
pub(crate) use together::contradictions_of;

/// LIMIT: the most values of a fact that a finding says all of, and guesses at none.
const VALUES_SAID: usize = 12;

/// A measure as it was written.
#[derive(Clone, Debug)]
pub(crate) struct RawMeasure {
    /// The name of the measure.
    pub(crate) name: String,
    /// Where the name stands.
    pub(crate) name_place: Place,
    /// The size as text, whether it was written as text or as number.
    pub(crate) size: String,
    /// Where the size stands.
    pub(crate) size_place: Place,
    /// Who has deducted; `None` when it was not said.
    pub(crate) deducted_by: Option<DeductedBy>,
}

/// A fact as it was written.
#[derive(Clone, Debug)]
pub(crate) struct RawFact {
    /// The name of the fact.
    pub(crate) name: String,
    /// Where the name stands.
    pub(crate) name_place: Place,
    /// The value.
    pub(crate) value: RawFactValue,
    /// Where the value stands.
    pub(crate) place: Place,
}

/// The value of a fact as it was written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum RawFactValue {
    /// `true` or `false`.
    Bool(bool),
    /// A number, in digits.
    Number(String),
    /// A text.
    Text(String),
    /// A date.
    Date(Date),
}

/// The measures of the table under a key; none when the key is not there.
///
/// A measure that cannot be read is a finding and left out.
pub(crate) fn raw_measures(reader: &mut TableReader<'_>, key: &'static str) -> Vec<RawMeasure> {
    let Some(mut table) = reader.table(key, &format!("`{key}`")) else {
        return Vec::new();
    };
    let entries = table.rest();
    let read = entries.into_iter().filter_map(|entry| {
        let name = entry.key.value.as_str();
        let name_place = table.place_of(&entry.key.span);
        raw_measure(&table, name, name_place, &entry.node)
    });
    read.collect()
}

fn raw_measure(table: &TableReader<'_>, name: &str, name_place: Place, node: &Node) -> Option<RawMeasure> {
    let (size, deducted_by) = if matches!(node.value, NodeValue::Table(_)) {
        let mut inner = TableReader::new(node, table.file(), format!("measure `{name}`"), table.findings())?;
        let size = if inner.requires("size") {
            inner.decimal_text("size")
        } else {
            None
        };
        let deducted_by = deducted_by(&mut inner);
        inner.finish();
        (size?, deducted_by)
    } else {
        (table.as_decimal_text(node, &format!("measure `{name}`"))?, None)
    };
    Some(RawMeasure {
        name: name.to_owned(),
        name_place,
        size_place: table.place_of(&size.span),
        size: size.value,
        deducted_by,
    })
}

/// Who has deducted, where it is written.
pub(crate) fn deducted_by(reader: &mut TableReader<'_>) -> Option<DeductedBy> {
    let written = reader.optional_text("deducted_by")?;
    let known = DeductedBy::ALL.into_iter().find(|by| by.word() == written.value);
    if known.is_none() {
        let words = quoted_list(DeductedBy::ALL.map(DeductedBy::word));
        let message = format!("`deducted_by` is `{}`; expected one of {words}", written.value);
        reader.findings().push(
            Finding::error("UNKNOWN_WORD", message)
                .at(reader.place_of(&written.span))
                .with_help("leave it out when nobody said who deducts"),
        );
    }
    known
}

/// The facts of the table under a key; none when the key is not there.
///
/// A fact that cannot be read is a finding and left out.
pub(crate) fn raw_facts(reader: &mut TableReader<'_>, key: &'static str) -> Vec<RawFact> {
    raw_values(reader, key, "fact")
}

/// Values by name, whatever they are called; see [`raw_facts`].
pub(crate) fn raw_values(reader: &mut TableReader<'_>, key: &'static str, called: &str) -> Vec<RawFact> {
    let Some(mut table) = reader.table(key, &format!("`{key}`")) else {
        return Vec::new();
    };
    let entries = table.rest();
    let read = entries.into_iter().filter_map(|entry| {
        Some(RawFact {
            name: entry.key.value.clone(),
            name_place: table.place_of(&entry.key.span),
            value: raw_value(&table, &format!("{called} `{}`", entry.key.value), &entry.node)?,
            place: table.place_of(&entry.node.span),
        })
    });
    read.collect()
}

fn raw_value(table: &TableReader<'_>, what: &str, node: &Node) -> Option<RawFactValue> {
    match &node.value {
        NodeValue::Bool(value) => Some(RawFactValue::Bool(*value)),
        NodeValue::Text(text) => Some(RawFactValue::Text(text.clone())),
        NodeValue::Date(date) => Some(RawFactValue::Date(*date)),
        NodeValue::Integer(_) | NodeValue::Decimal(_) => {
            let number = table.as_decimal_text(node, what)?;
            Some(RawFactValue::Number(number.value))
        }
        NodeValue::Array(_) | NodeValue::Table(_) | NodeValue::Null => {
            let message = format!("{what} is {}; expected a single value", node.kind());
            table
                .findings()
                .push(Finding::error("WRONG_TYPE", message).at(table.place_of(&node.span)));
            None
        }
    }
}

/// The value of a measure that the catalog declares; `None` means that a finding says why.
///
/// A length without a unit is in `unit`, the catalog's.
pub(crate) fn measured(
    raw: &RawMeasure,
    measure: &Measure,
    unit: LengthUnit,
    findings: &Findings,
) -> Option<Measured> {
    let number = if measure.value_type == ValueType::Length {
        length(&raw.size, &raw.size_place, unit, findings)?
    } else {
        number(&raw.size, &raw.size_place, findings)?
    };
    if measure.value_type == ValueType::Length && !number.is_positive() {
        let message = format!(
            "measure `{}` is `{}`, which is not above zero",
            measure.id, raw.size
        );
        let help = "write the size as measured, or leave it out while nobody has measured";
        findings.push(
            Finding::error("NOT_ABOVE_ZERO", message)
                .at(raw.size_place.clone())
                .with_help(help),
        );
        return None;
    }
    let written = WrittenNumber {
        what: format!("measure `{}`", measure.id),
        text: &raw.size,
        place: &raw.size_place,
        is_length: measure.value_type == ValueType::Length,
        unit,
    };
    written.fits(&number, measure.step.as_ref(), &measure.bounds, findings)?;
    let value = if measure.value_type == ValueType::Length {
        Value::Length(number)
    } else {
        Value::Number(number)
    };
    Some(Measured {
        value,
        deducted_by: raw.deducted_by,
    })
}

/// The value of a fact that the catalog declares: `None` means that a finding says why, `Some(None)` that `unknown`
/// is written.
#[expect(
    clippy::option_option,
    reason = "unreadable and unknown are different answers"
)]
pub(crate) fn fact_value(
    raw: &RawFact,
    fact: &SiteFact,
    unit: LengthUnit,
    findings: &Findings,
) -> Option<Option<Value>> {
    let place = &raw.place;
    let value = match (fact.value_type, &raw.value) {
        (_, RawFactValue::Text(text)) if text == "unknown" => return Some(None),
        (ValueType::Bool, RawFactValue::Bool(value)) => Value::Bool(*value),
        (ValueType::Number, RawFactValue::Number(text) | RawFactValue::Text(text)) => {
            Value::Number(number(text, place, findings)?)
        }
        (ValueType::Length, RawFactValue::Number(text) | RawFactValue::Text(text)) => {
            Value::Length(length(text, place, unit, findings)?)
        }
        (ValueType::Date, RawFactValue::Date(date)) => Value::Date(*date),
        (ValueType::Date, RawFactValue::Text(text)) if plain_date(text).is_some() => {
            Value::Date(plain_date(text)?)
        }
        (ValueType::Option, RawFactValue::Text(text)) => option(text, fact, place, findings)?,
        (_, found) => {
            findings.push(wrong_fact(found, fact, place));
            return None;
        }
    };
    if let (Some(found), RawFactValue::Number(text) | RawFactValue::Text(text)) =
        (value.magnitude(), &raw.value)
    {
        let written = WrittenNumber {
            what: format!("fact `{}`", fact.id),
            text,
            place,
            is_length: fact.value_type == ValueType::Length,
            unit,
        };
        written.fits(found, fact.step.as_ref(), &fact.bounds, findings)?;
    }
    Some(Some(value))
}

/// The date that `2024-06-01` writes; a time of day beside it is none.
fn plain_date(text: &str) -> Option<Date> {
    if text.len() == 10 { text.parse().ok() } else { None }
}

fn option(text: &str, fact: &SiteFact, place: &Place, findings: &Findings) -> Option<Value> {
    let known = fact.options.iter().find(|(id, _)| id.as_str() == text);
    if let Some((id, _)) = known {
        return Some(Value::Option(id.clone()));
    }
    let ids = || fact.options.iter().map(|(id, _)| id.as_str());
    // A guess among `1` and `10` misleads; few values are all said instead.
    let near = nearest(text, ids()).filter(|_| fact.options.len() > VALUES_SAID);
    let help = match near {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!(
            "values of `{}` are {}, and `unknown`",
            fact.id,
            quoted_list(ids())
        ),
    };
    let message = format!("fact `{}` has no value `{text}`", fact.id);
    findings.push(
        Finding::error("UNKNOWN_OPTION", message)
            .at(place.clone())
            .with_help(help),
    );
    None
}

fn wrong_fact(found: &RawFactValue, fact: &SiteFact, place: &Place) -> Finding {
    let found = match found {
        RawFactValue::Bool(true) => "true".to_owned(),
        RawFactValue::Bool(false) => "false".to_owned(),
        RawFactValue::Number(text) | RawFactValue::Text(text) => format!("`{text}`"),
        RawFactValue::Date(date) => format!("the date {date}"),
    };
    let (expected, help) = match fact.value_type {
        ValueType::Bool => (
            "true or false",
            "write `true`, `false` or `\"unknown\"`".to_owned(),
        ),
        ValueType::Date => (
            "a date",
            "write a date like `2024-06-01`, or `\"unknown\"`".to_owned(),
        ),
        ValueType::Option => (
            "one of its values",
            format!(
                "values are {}, and `unknown`",
                quoted_list(fact.options.iter().map(|(id, _)| id.as_str()))
            ),
        ),
        other => (
            other.words(),
            format!("write {}, or `\"unknown\"`", other.words()),
        ),
    };
    let message = format!("fact `{}` is {found}; expected {expected}", fact.id);
    Finding::error("WRONG_TYPE", message)
        .at(place.clone())
        .with_help(help)
}

/// A length in inches; `None` means that a finding says why.
pub(crate) fn length(text: &str, place: &Place, unit: LengthUnit, findings: &Findings) -> Option<Number> {
    match parse_length(text, Some(unit)) {
        Ok(number) => Some(number),
        Err(error) => {
            let finding = Finding::error("WRONG_VALUE", error.to_string());
            findings.push(finding.at(place.clone()).with_help(error.help()));
            None
        }
    }
}

/// A number; `None` means that a finding says why.
pub(crate) fn number(text: &str, place: &Place, findings: &Findings) -> Option<Number> {
    let number = Number::from_decimal(text.trim());
    if number.is_none() {
        let help = crate::sheet::spreadsheet_help(text).unwrap_or("write a number such as `12.5`");
        findings.push(
            Finding::error("WRONG_VALUE", format!("`{text}` is not a number"))
                .at(place.clone())
                .with_help(help),
        );
    }
    number
}

#[cfg(test)]
mod tests;
