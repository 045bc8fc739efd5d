//! An instance: attributes with options by index, tables of allowed rows, clauses of which one membership must hold,
//! prices of options and of pairs of options.
//!
//! Always holds once read: every name is declared, every option index is below its attribute's number of options, every row is
//! as long as its scope, and the prices of a unit stay below what a weight can count.

use std::collections::BTreeMap;
use std::path::Path;

use astragal_core::label::{CellId, Label};
use astragal_core::limit::Limits;
use astragal_core::network::{Network, Variable};
use astragal_core::rows::{Row, Rows};
use astragal_core::weights::CENTS_LIMIT;
use serde::Deserialize;

use crate::problem::{Problem, read};

/// The file as it is written. `note` and `checks` are for people and tests.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    name: String,
    #[serde(default, rename = "note")]
    _note: serde::de::IgnoredAny,
    attributes: Vec<Attribute>,
    #[serde(default)]
    tables: Vec<Table>,
    #[serde(default)]
    clauses: Vec<Vec<Membership>>,
    option_prices: Vec<Vec<i64>>,
    #[serde(default)]
    pair_prices: Vec<PairPrices>,
    #[serde(default, rename = "checks")]
    _checks: serde::de::IgnoredAny,
}

/// An attribute and its number of options.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Attribute {
    pub(crate) name: String,
    pub(crate) options: usize,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    scope: Vec<String>,
    allowed: Vec<Vec<usize>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Membership {
    attribute: String,
    options: Vec<usize>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PairPrices {
    scope: [String; 2],
    price: Vec<Vec<i64>>,
}

/// The entries of a JSON object as they are written, repeated names and all.
struct Entries(Vec<(String, usize)>);

impl<'de> Deserialize<'de> for Entries {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reading;
        impl<'de> serde::de::Visitor<'de> for Reading {
            type Value = Entries;

            fn expecting(&self, text: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                text.write_str("an object from attribute to option index")
            }

            fn visit_map<A: serde::de::MapAccess<'de>>(self, mut map: A) -> Result<Entries, A::Error> {
                let mut entries = Vec::new();
                while let Some(entry) = map.next_entry()? {
                    entries.push(entry);
                }
                Ok(Entries(entries))
            }
        }
        deserializer.deserialize_map(Reading)
    }
}

/// A pick: the attribute's position and the option.
pub(crate) type Pick = (Variable, usize);

/// An instance whose names and numbers are all known to fit.
pub(crate) struct Instance {
    pub(crate) name: String,
    pub(crate) attributes: Vec<Attribute>,
    /// For each attribute the prices of its options.
    pub(crate) option_prices: Vec<Vec<i64>>,
    /// The price of each cell.
    pub(crate) cells: Vec<i64>,
    positions: BTreeMap<String, Variable>,
    relations: Vec<Rows>,
    place: String,
}

impl Instance {
    /// Reads a file.
    pub(crate) fn read(file: &Path) -> Result<Self, Problem> {
        let place = file.display().to_string();
        let written: Written =
            serde_json::from_str(&read(file)?).map_err(|error| Problem::wrong(&place, error.to_string()))?;
        let mut positions = BTreeMap::new();
        for (position, attribute) in written.attributes.iter().enumerate() {
            let name = &attribute.name;
            if positions.insert(name.clone(), Variable::at(position)).is_some() {
                return Err(Problem::wrong(&place, format!("attribute `{name}` stands twice")));
            }
            if !(1..=4096).contains(&attribute.options) {
                let what = format!(
                    "attribute `{name}` has {} options, expected 1 to 4096",
                    attribute.options
                );
                return Err(Problem::wrong(&place, what));
            }
        }
        let mut instance = Self {
            name: written.name,
            attributes: written.attributes,
            option_prices: written.option_prices,
            cells: Vec::new(),
            positions,
            relations: Vec::new(),
            place,
        };
        for (number, table) in written.tables.iter().enumerate() {
            instance.table(number, table)?;
        }
        for (number, clause) in written.clauses.iter().enumerate() {
            instance.clause(number, clause)?;
        }
        let mut largest = instance.largest_option_prices()?;
        for (number, pair) in written.pair_prices.iter().enumerate() {
            largest += instance.pair_prices(number, pair)?;
        }
        if largest >= i128::from(CENTS_LIMIT) {
            let what =
                format!("the prices of one unit could reach {largest}, expected less than {CENTS_LIMIT}");
            return Err(Problem::wrong(&instance.place, what));
        }
        Ok(instance)
    }

    /// The attributes and relations, to be compiled.
    pub(crate) fn network(&self) -> Network {
        let mut network = Network::default();
        for attribute in &self.attributes {
            network.variable(&attribute.name, attribute.options);
        }
        for relation in &self.relations {
            network.relations.push(Box::new(relation.clone()));
        }
        network
    }

    /// One line of selections: an object from attribute to option index.
    pub(crate) fn selection(&self, text: &str, place: &str) -> Result<Vec<Pick>, Problem> {
        let written: Entries =
            serde_json::from_str(text).map_err(|error| Problem::wrong(place, error.to_string()))?;
        let mut picks: Vec<Pick> = Vec::with_capacity(written.0.len());
        for (name, value) in &written.0 {
            let variable = self.named(name, place)?;
            self.known_option(variable, *value, place)?;
            if picks.iter().any(|(picked, _)| *picked == variable) {
                return Err(Problem::wrong(place, format!("attribute `{name}` stands twice")));
            }
            picks.push((variable, *value));
        }
        Ok(picks)
    }

    fn named(&self, name: &str, place: &str) -> Result<Variable, Problem> {
        let found = self.positions.get(name).copied();
        found.ok_or_else(|| Problem::wrong(place, format!("there is no attribute `{name}`")))
    }

    fn size(&self, variable: Variable) -> usize {
        let attribute = self.attributes.get(variable.index());
        attribute.map_or(0, |attribute| attribute.options)
    }

    fn known_option(&self, variable: Variable, value: usize, place: &str) -> Result<(), Problem> {
        let size = self.size(variable);
        if value < size {
            return Ok(());
        }
        let name = self.attributes.get(variable.index()).map_or("", |one| &one.name);
        let what = format!(
            "attribute `{name}` has the options 0 to {}, found {value}",
            size - 1
        );
        Err(Problem::wrong(place, what))
    }

    fn scope(&self, names: &[String], place: &str) -> Result<Vec<Variable>, Problem> {
        let scope = names
            .iter()
            .map(|name| self.named(name, place))
            .collect::<Result<Vec<_>, _>>()?;
        let distinct: std::collections::BTreeSet<_> = scope.iter().collect();
        if distinct.len() < scope.len() {
            return Err(Problem::wrong(place, "an attribute stands twice in a scope"));
        }
        Ok(scope)
    }

    fn table(&mut self, number: usize, table: &Table) -> Result<(), Problem> {
        let place = format!("{}: table {number}", self.place);
        let scope = self.scope(&table.scope, &place)?;
        let mut rows = Vec::with_capacity(table.allowed.len());
        for row in &table.allowed {
            if row.len() != scope.len() {
                let what = format!("a row has {} options, expected {}", row.len(), scope.len());
                return Err(Problem::wrong(&place, what));
            }
            for (variable, value) in scope.iter().zip(row) {
                self.known_option(*variable, *value, &place)?;
            }
            rows.push(Row {
                cells: row.iter().map(|value| Some(vec![*value])).collect(),
                label: Some(Label::empty()),
            });
        }
        self.relate(&format!("table {number}"), scope, rows);
        Ok(())
    }

    fn clause(&mut self, number: usize, clause: &[Membership]) -> Result<(), Problem> {
        let place = format!("{}: clause {number}", self.place);
        let mut scope = Vec::new();
        for member in clause {
            let variable = self.named(&member.attribute, &place)?;
            for value in &member.options {
                self.known_option(variable, *value, &place)?;
            }
            scope.push(variable);
        }
        let variables = scope.clone();
        scope.sort_unstable();
        scope.dedup();
        let row = |(member, variable): (&Membership, &Variable)| Row {
            cells: scope
                .iter()
                .map(|one| (one == variable).then(|| member.options.clone()))
                .collect(),
            label: Some(Label::empty()),
        };
        let rows = clause.iter().zip(&variables).map(row).collect();
        self.relate(&format!("clause {number}"), scope, rows);
        Ok(())
    }

    /// Adds one matrix of prices; returns the largest of them.
    fn pair_prices(&mut self, number: usize, pair: &PairPrices) -> Result<i128, Problem> {
        let place = format!("{}: pair prices {number}", self.place);
        let scope = self.scope(&pair.scope, &place)?;
        let sizes: Vec<usize> = scope.iter().map(|one| self.size(*one)).collect();
        let columns = sizes.last().copied().unwrap_or(0);
        if Some(&pair.price.len()) != sizes.first() || pair.price.iter().any(|row| row.len() != columns) {
            return Err(Problem::wrong(
                &place,
                format!("expected a matrix of {sizes:?} prices"),
            ));
        }
        let mut rows = Vec::new();
        let mut largest = 0;
        for (first, prices) in pair.price.iter().enumerate() {
            for (second, price) in prices.iter().enumerate() {
                largest = i128::from(*price).abs().max(largest);
                rows.push(Row {
                    cells: vec![Some(vec![first]), Some(vec![second])],
                    label: Some(self.label(*price)),
                });
            }
        }
        self.relate(&format!("pair prices {number}"), scope, rows);
        Ok(largest)
    }

    /// Checks the shape of the option prices; returns the sum of the largest of each attribute.
    fn largest_option_prices(&self) -> Result<i128, Problem> {
        let place = format!("{}: option_prices", self.place);
        if self.option_prices.len() != self.attributes.len() {
            let what = format!(
                "{} rows, expected {}",
                self.option_prices.len(),
                self.attributes.len()
            );
            return Err(Problem::wrong(&place, what));
        }
        let mut sum = 0;
        for (attribute, prices) in self.attributes.iter().zip(&self.option_prices) {
            if prices.len() != attribute.options {
                let what = format!(
                    "attribute `{}` has {} options, found {} prices",
                    attribute.name,
                    attribute.options,
                    prices.len()
                );
                return Err(Problem::wrong(&place, what));
            }
            sum += prices
                .iter()
                .map(|price| i128::from(*price).abs())
                .max()
                .unwrap_or(0);
        }
        Ok(sum)
    }

    /// The label that costs a price; nothing for zero.
    fn label(&mut self, price: i64) -> Label {
        if price == 0 {
            return Label::empty();
        }
        let place = self.cells.iter().position(|cell| *cell == price);
        let place = place.unwrap_or_else(|| {
            self.cells.push(price);
            self.cells.len() - 1
        });
        let cell = CellId(u32::try_from(place).unwrap_or(u32::MAX));
        Label::new(Vec::new(), vec![cell])
    }

    fn relate(&mut self, name: &str, scope: Vec<Variable>, rows: Vec<Row>) {
        let sizes = scope.iter().map(|one| self.size(*one)).collect();
        let limit = Limits::default().relation_states;
        self.relations
            .push(Rows::new(name, scope, sizes, rows, None, limit));
    }
}
