//! What is known of one unit and its place, by the names of the catalog. What is not set is not known.

use std::collections::BTreeMap;

use astragal_model::{Choice, Id, Number, Value};

/// Choices, measures and facts by name.
#[derive(Clone, Default, Debug)]
pub(crate) struct Case {
    pub(crate) values: BTreeMap<&'static str, Value>,
    pub(crate) choices: BTreeMap<&'static str, Choice>,
}

impl Case {
    pub(crate) fn length(self, name: &'static str, inches: Option<&Number>) -> Case {
        self.value(name, inches.cloned().map(Value::Length))
    }

    pub(crate) fn number(self, name: &'static str, number: Option<&Number>) -> Case {
        self.value(name, number.cloned().map(Value::Number))
    }

    pub(crate) fn truth(self, name: &'static str, truth: Option<bool>) -> Case {
        self.value(name, truth.map(Value::Bool))
    }

    pub(crate) fn option(self, name: &'static str, option: Option<&str>) -> Case {
        self.value(name, option.map(|option| Value::Option(Id::new(option))))
    }

    /// A choice; open when it is not set.
    pub(crate) fn choice(mut self, name: &'static str, choice: Choice) -> Case {
        self.choices.insert(name, choice);
        self
    }

    fn value(mut self, name: &'static str, value: Option<Value>) -> Case {
        match value {
            Some(value) => self.values.insert(name, value),
            None => self.values.remove(name),
        };
        self
    }
}

/// A number as it is written: `41 1/16`, `0.30`, `-44`.
pub(crate) fn number(text: &str) -> Number {
    let (whole, fraction) = text.split_once(' ').unwrap_or((text, "0/1"));
    let (top, bottom) = fraction.split_once('/').unwrap();
    let fraction = Number::ratio(top.parse().unwrap(), bottom.parse().unwrap()).unwrap();
    let whole = Number::from_decimal(whole).unwrap();
    if text.starts_with('-') {
        &whole - &fraction
    } else {
        &whole + &fraction
    }
}

/// Both sides of limits and what lies between, in inches: each limit, a sixteenth below and above.
pub(crate) fn around(limits: &[&str]) -> Vec<Number> {
    let step = Number::ratio(1, 16).unwrap();
    let mut all = Vec::new();
    for limit in limits {
        let limit = number(limit);
        all.extend([&limit - &step, limit.clone(), &limit + &step]);
    }
    all
}
