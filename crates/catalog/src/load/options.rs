//! Options as the model has them, shared between the attributes that use one list.
//!
//! Always holds: options of one attribute have different ids, none of which is a family of it; a property has one type
//! over all of them; dates are in order; what replaces an option is another one.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use astragal_model::measure_text::{LengthUnit, parse_area, parse_length};
use astragal_model::{Date, Id, OptionEntry, Swatch, Validity, Value, ValueType};

use super::limits::{OPTIONS_LIMIT, within};
use crate::declare::{Declared, Head, RawOption, RawOptionList, RawOptions};
use crate::finding::{Finding, Findings, Place};
use crate::nearest::{nearest, quoted_list};
use crate::site_values::{RawFact, RawFactValue, number};
use crate::typed::PlacedText;

/// The lists that attributes share.
pub(crate) struct OptionLists<'a> {
    declared: BTreeMap<&'a str, &'a RawOptionList>,
    read: BTreeMap<String, Option<Rc<Vec<OptionEntry>>>>,
    unit: LengthUnit,
    findings: &'a Findings,
}

impl<'a> OptionLists<'a> {
    pub(crate) fn new(declared: &'a Declared, unit: LengthUnit, findings: &'a Findings) -> Self {
        let lists = declared
            .option_lists
            .iter()
            .map(|list| (list.head.id.as_str(), list));
        Self {
            declared: lists.collect(),
            read: BTreeMap::new(),
            unit,
            findings,
        }
    }

    /// The options of an attribute; `None` means that a finding says why.
    pub(crate) fn of(&mut self, options: &RawOptions, whose: &Head) -> Option<Rc<Vec<OptionEntry>>> {
        match options {
            RawOptions::Own(own) => {
                let whose = format!("attribute `{}`", whose.id);
                read(own, &whose, self.unit, self.findings).map(Rc::new)
            }
            RawOptions::List(name) => self.list(name),
        }
    }

    fn list(&mut self, name: &PlacedText) -> Option<Rc<Vec<OptionEntry>>> {
        if let Some(read) = self.read.get(&name.text) {
            return read.clone();
        }
        let Some(list) = self.declared.get(name.text.as_str()) else {
            let known = || self.declared.keys().copied();
            let help = match nearest(&name.text, known()) {
                Some(near) => format!("did you mean `{near}`?"),
                None if self.declared.is_empty() => "declare it with `[[option_list]]`".to_owned(),
                None => format!("option lists are {}", quoted_list(known())),
            };
            let message = format!("there is no option list `{}`", name.text);
            self.findings.push(
                Finding::error("UNKNOWN_OPTION_LIST", message)
                    .at(name.place.clone())
                    .with_help(help),
            );
            return None;
        };
        let whose = format!("option list `{}`", name.text);
        let options = list.options.as_ref();
        let options =
            options.and_then(|options| read(options, &whose, self.unit, self.findings).map(Rc::new));
        self.read.insert(name.text.clone(), options.clone());
        options
    }

    /// The lists that were asked for.
    pub(crate) fn used(&self) -> Vec<Id> {
        self.read.keys().map(|id| Id::new(id)).collect()
    }
}

fn read(raws: &[RawOption], whose: &str, unit: LengthUnit, findings: &Findings) -> Option<Vec<OptionEntry>> {
    let over = raws.get(OPTIONS_LIMIT).map(|option| &option.place);
    if !within(
        raws.len(),
        OPTIONS_LIMIT,
        &format!("options of {whose}"),
        over,
        findings,
    ) {
        return None;
    }
    let mut types: BTreeMap<String, (ValueType, Place)> = BTreeMap::new();
    let mut entries = Vec::new();
    let ids: BTreeSet<&str> = raws.iter().map(|raw| raw.id.as_str()).collect();
    for raw in raws {
        families_are_no_options(raw, &ids, whose, findings);
        replacement_is_there(raw, &ids, whose, findings);
        dates_are_in_order(raw, findings);
        let mut properties = BTreeMap::new();
        for property in &raw.properties {
            if let Some(value) = property_value(property, unit, findings) {
                has_one_type(property, value.value_type(), &mut types, findings);
                properties.insert(Id::new(&property.name), value);
            }
        }
        let date = |date: &Option<(Date, Place)>| date.as_ref().map(|(date, _)| *date);
        entries.push(OptionEntry {
            id: raw.id.clone(),
            label: raw.label.clone(),
            families: raw.families.iter().map(|family| Id::new(&family.text)).collect(),
            properties,
            swatch: raw.swatch.as_ref().and_then(|text| swatch(text, findings)),
            plant_code: raw.plant_code.clone(),
            validity: Validity {
                offered_from: date(&raw.offered_from),
                offered_until: date(&raw.offered_until),
                honoured_until: date(&raw.honoured_until),
                replaced_by: raw.replaced_by.as_ref().map(|text| Id::new(&text.text)),
            },
        });
    }
    Some(entries)
}

/// `#rrggbb` in small letters.
fn swatch(text: &PlacedText, findings: &Findings) -> Option<Swatch> {
    let digits = text.text.strip_prefix('#').filter(|digits| {
        digits.len() == 6
            && digits
                .bytes()
                .all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b))
    });
    let number = digits.and_then(|digits| u32::from_str_radix(digits, 16).ok());
    let Some(number) = number else {
        let message = format!("`{}` is no colour of a drawing", text.text);
        let finding = Finding::error("WRONG_VALUE", message).at(text.place.clone());
        findings.push(finding.with_help("write `#` and six of the digits 0 to 9 and a to f: `#f4f4f2`"));
        return None;
    };
    let [_, red, green, blue] = number.to_be_bytes();
    Some(Swatch { red, green, blue })
}

fn families_are_no_options(raw: &RawOption, ids: &BTreeSet<&str>, whose: &str, findings: &Findings) {
    for family in raw
        .families
        .iter()
        .filter(|family| ids.contains(family.text.as_str()))
    {
        let message = format!("`{}` is a family and an option of {whose}", family.text);
        findings.push(
            Finding::error("DUPLICATE_ID", message)
                .at(family.place.clone())
                .with_help("a cell of a table would mean both; rename one"),
        );
    }
}

fn replacement_is_there(raw: &RawOption, ids: &BTreeSet<&str>, whose: &str, findings: &Findings) {
    let Some(by) = &raw.replaced_by else { return };
    let help = if !ids.contains(by.text.as_str()) {
        match nearest(&by.text, ids.iter().copied()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("options are {}", quoted_list(ids.iter().copied())),
        }
    } else if by.text == raw.id.as_str() {
        "name another option".to_owned()
    } else {
        return;
    };
    let message = if by.text == raw.id.as_str() {
        format!("option `{}` replaces itself", raw.id)
    } else {
        format!("`{}` is not an option of {whose}", by.text)
    };
    findings.push(
        Finding::error("UNKNOWN_OPTION", message)
            .at(by.place.clone())
            .with_help(help),
    );
}

fn dates_are_in_order(raw: &RawOption, findings: &Findings) {
    let dates = [
        ("offered_from", &raw.offered_from),
        ("offered_until", &raw.offered_until),
        ("honoured_until", &raw.honoured_until),
    ];
    let written: Vec<(&str, Date, &Place)> = dates
        .iter()
        .filter_map(|(key, date)| date.as_ref().map(|(date, place)| (*key, *date, place)))
        .collect();
    for (before, after) in written.iter().zip(written.iter().skip(1)) {
        if before.1 > after.1 {
            let message = format!(
                "`{}` is {}, before `{}`, {}",
                after.0, after.1, before.0, before.1
            );
            findings.push(
                Finding::error("DATES_OUT_OF_ORDER", message)
                    .at(after.2.clone())
                    .with_help("the order is offered_from, offered_until, honoured_until")
                    .with_related(before.2.clone(), format!("`{}`", before.0)),
            );
        }
    }
    if let (Some((_, place)), None) = (&raw.honoured_until, &raw.offered_until) {
        let message = format!("option `{}` has `honoured_until` and no `offered_until`", raw.id);
        findings.push(
            Finding::error("MISSING_KEY", message)
                .at(place.clone())
                .with_help("say until when it is offered"),
        );
    }
}

fn property_value(raw: &RawFact, unit: LengthUnit, findings: &Findings) -> Option<Value> {
    match &raw.value {
        RawFactValue::Bool(value) => Some(Value::Bool(*value)),
        RawFactValue::Date(date) => Some(Value::Date(*date)),
        RawFactValue::Number(text) => number(text, &raw.place, findings).map(Value::Number),
        RawFactValue::Text(text) => {
            if let Ok(area) = parse_area(text) {
                return Some(Value::Area(area));
            }
            match parse_length(text, Some(unit)) {
                Ok(length) => Some(Value::Length(length)),
                Err(error) => {
                    let help = format!("a property in quotes is a length or an area; {}", error.help());
                    findings.push(
                        Finding::error("WRONG_VALUE", error.to_string())
                            .at(raw.place.clone())
                            .with_help(help),
                    );
                    None
                }
            }
        }
    }
}

fn has_one_type(
    property: &RawFact,
    found: ValueType,
    types: &mut BTreeMap<String, (ValueType, Place)>,
    findings: &Findings,
) {
    let (expected, first) = types
        .entry(property.name.clone())
        .or_insert_with(|| (found, property.place.clone()));
    if *expected != found {
        let message = format!(
            "property `{}` is {} here and {} at another option",
            property.name,
            found.words(),
            expected.words()
        );
        findings.push(
            Finding::error("WRONG_TYPE", message)
                .at(property.place.clone())
                .with_help("a property has one type; a length stands in quotes, a number does not")
                .with_related(first.clone(), expected.words()),
        );
    }
}
