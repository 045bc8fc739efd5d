//! The measures and site facts of a request, held to what the catalog declares.
//!
//! As in the file of an order: a length is above zero, a number is a multiple of its step and within its bounds, a fact has a value
//! of its type, nothing is said twice, and all of it can be true together.
//!
//! Cost: one look-up a measure or fact.

use std::collections::BTreeSet;

use astragal_model::measure_text::{LengthUnit, format_length};
use astragal_model::{
    Bounds, DeductedBy, Id, Measure, Measured, Number, Refused, Site, SiteFact, Value, ValueType,
    contradictions,
};

use crate::serve::fault::{Faults, Reason, shown};
use crate::serve::product::Product;
use crate::serve::v1;
use crate::serve::{day, number};

/// What is known of an opening.
pub(super) fn site(written: &v1::Unit, product: &Product, faults: &mut Faults) -> Site {
    let declared = product.catalog.declarations();
    let mut site = Site {
        measures: declared.measures.values().map(|_| None).collect(),
        facts: declared.facts.values().map(|_| None).collect(),
        ..Site::default()
    };
    let mut seen = BTreeSet::new();
    for (at, measured) in written.measures.iter().enumerate() {
        let field = format!("unit.measures[{at}]");
        if !faults.has_name(&measured.measure, format!("{field}.measure"), "a measure") {
            continue;
        }
        let Some(index) = product.names.measures.get(&measured.measure) else {
            unknown(
                Reason::UnknownMeasure,
                &measured.measure,
                product,
                &format!("{field}.measure"),
                faults,
            );
            continue;
        };
        if !seen.insert(*index) {
            twice(&measured.measure, &format!("{field}.measure"), faults);
            continue;
        }
        let found = self::measured(measured, declared.measures.at(*index), product, &field, faults);
        site.measures.put(*index, found);
    }
    let mut seen = BTreeSet::new();
    for (at, known) in written.facts.iter().enumerate() {
        let field = format!("unit.facts[{at}]");
        if !faults.has_name(&known.fact, format!("{field}.fact"), "a site fact") {
            continue;
        }
        let Some(index) = product.names.facts.get(&known.fact) else {
            unknown(
                Reason::UnknownFact,
                &known.fact,
                product,
                &format!("{field}.fact"),
                faults,
            );
            continue;
        };
        if !seen.insert(*index) {
            twice(&known.fact, &format!("{field}.fact"), faults);
            continue;
        }
        let found = fact(
            known,
            declared.facts.at(*index),
            product,
            &format!("{field}.value"),
            faults,
        );
        site.facts.put(*index, found);
    }
    for found in contradictions(&product.catalog, &site) {
        let message = format!("{} (check `{}`)", found.check.message, found.check.id);
        faults.push(Reason::Contradiction, "unit", &message);
    }
    site
}

fn unknown(reason: Reason, name: &str, product: &Product, field: &str, faults: &mut Faults) {
    let (what, known): (_, Vec<&String>) = if reason == Reason::UnknownFact {
        ("site fact", product.names.facts.keys().collect())
    } else {
        ("measure", product.names.measures.keys().collect())
    };
    let message = format!("catalog `{}` has no {what} {}", product.id(), shown(name));
    let known = known.into_iter().map(String::as_str);
    faults.push_unknown(reason, field, &message, (name, known));
}

fn twice(name: &str, field: &str, faults: &mut Faults) {
    faults.push(
        Reason::Duplicate,
        field,
        &format!("{} is said twice", shown(name)),
    );
}

fn measured(
    written: &v1::Measured,
    declared: &Measure,
    product: &Product,
    field: &str,
    faults: &mut Faults,
) -> Option<Measured> {
    let deducted_by = match v1::DeductedBy::try_from(written.deducted_by) {
        Ok(v1::DeductedBy::Unspecified) => None,
        Ok(v1::DeductedBy::Nobody) => Some(DeductedBy::Nobody),
        Ok(v1::DeductedBy::Dealer) => Some(DeductedBy::Dealer),
        Ok(v1::DeductedBy::Customer) => Some(DeductedBy::Customer),
        Err(_) => {
            let message = format!("{} says nobody who deducts", written.deducted_by);
            faults.push(Reason::BadEnum, format!("{field}.deducted_by"), &message);
            None
        }
    };
    let field = format!("{field}.size");
    let Some(size) = &written.size else {
        faults.push(
            Reason::Required,
            field,
            "a size is asked for; leave the measure out while nobody has measured",
        );
        return None;
    };
    let is_length = declared.value_type == ValueType::Length;
    let found = if is_length {
        number::length(size, &field, faults)?
    } else {
        number::number(size, &field, faults)?
    };
    if is_length && !found.is_positive() {
        let message = format!("measure `{}` is not above zero", declared.id);
        faults.push(Reason::OutOfRange, field, &message);
        return None;
    }
    let taken = Taken {
        what: format!("measure `{}`", declared.id),
        is_length,
        step: declared.step.as_ref(),
        bounds: &declared.bounds,
        length_unit: product.catalog.declarations().length_unit,
    };
    taken.admits(&found, field, faults)?;
    let value = if is_length {
        Value::Length(found)
    } else {
        Value::Number(found)
    };
    Some(Measured { value, deducted_by })
}

/// Which numbers a measure or fact takes.
struct Taken<'a> {
    what: String,
    is_length: bool,
    step: Option<&'a Number>,
    bounds: &'a Bounds,
    length_unit: LengthUnit,
}

impl Taken<'_> {
    /// Whether it takes a number; `None` means that a fault says why not.
    fn admits(&self, found: &Number, field: String, faults: &mut Faults) -> Option<()> {
        let show = |number: &Number| {
            if self.is_length {
                format_length(number, self.length_unit)
            } else {
                number.to_string()
            }
        };
        let Some(refused) = self.bounds.refuse(found, self.step, show) else {
            return Some(());
        };
        let (reason, message) = match refused {
            Refused::OutOfRange { expected } => {
                let message = format!("{} is {}; expected {expected}", self.what, show(found));
                (Reason::OutOfRange, message)
            }
            Refused::OffStep { step, nearest } => {
                let nearest = nearest.map(|nearest| format!("; {nearest}")).unwrap_or_default();
                let message = format!("{} is not a multiple of {step}{nearest}", self.what);
                (Reason::OffStep, message)
            }
        };
        faults.push(reason, field, &message);
        None
    }
}

fn fact(
    written: &v1::KnownFact,
    declared: &SiteFact,
    product: &Product,
    field: &str,
    faults: &mut Faults,
) -> Option<Value> {
    use v1::value::Kind;
    let taken = |is_length| Taken {
        what: format!("fact `{}`", declared.id),
        is_length,
        step: declared.step.as_ref(),
        bounds: &declared.bounds,
        length_unit: product.catalog.declarations().length_unit,
    };
    let Some(kind) = written.value.as_ref().and_then(|value| value.kind.as_ref()) else {
        faults.push(
            Reason::Required,
            field,
            "a value is asked for; leave the fact out while it is not known",
        );
        return None;
    };
    match (declared.value_type, kind) {
        (ValueType::Bool, Kind::Truth(truth)) => Some(Value::Bool(*truth)),
        (ValueType::Number, Kind::Quantity(written)) => {
            let field = format!("{field}.quantity");
            let found = number::number(written, &field, faults)?;
            taken(false).admits(&found, field, faults)?;
            Some(Value::Number(found))
        }
        (ValueType::Length, Kind::Quantity(written)) => {
            let field = format!("{field}.quantity");
            let found = number::length(written, &field, faults)?;
            taken(true).admits(&found, field, faults)?;
            Some(Value::Length(found))
        }
        (ValueType::Date, Kind::Date(written)) => {
            day::read(written, &format!("{field}.date"), faults).map(Value::Date)
        }
        (ValueType::Option, Kind::Option(written)) => {
            option(written, declared, &format!("{field}.option"), faults)
        }
        (expected, found) => {
            let message = format!(
                "fact `{}` is {}; expected {}",
                declared.id,
                words(found),
                expected.words()
            );
            faults.push(Reason::WrongType, field, &message);
            None
        }
    }
}

/// The word for what a request says of a fact, as [`ValueType::words`] has it for what is asked for.
fn words(kind: &v1::value::Kind) -> &'static str {
    use v1::value::Kind;
    match kind {
        Kind::Truth(_) => ValueType::Bool.words(),
        Kind::Quantity(_) => "a quantity",
        Kind::Date(_) => ValueType::Date.words(),
        Kind::Option(_) => ValueType::Option.words(),
        Kind::NotAsked(_) => "*not asked*",
    }
}

fn option(written: &str, declared: &SiteFact, field: &str, faults: &mut Faults) -> Option<Value> {
    if !faults.has_name(written, field, "an option") {
        return None;
    }
    let is_declared = declared.options.iter().any(|(id, _)| id.as_str() == written);
    if is_declared {
        return Some(Value::Option(Id::new(written)));
    }
    let message = format!("fact `{}` has no value {}", declared.id, shown(written));
    let known = declared.options.iter().map(|(id, _)| id.as_str());
    faults.push_unknown(Reason::UnknownOption, field, &message, (written, known));
    None
}
