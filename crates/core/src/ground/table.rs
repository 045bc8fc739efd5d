//! Tables over attributes alone, without terms: a row is a row.
//!
//! Allowed: a tuple that some row matches, *not asked* matching every cell. Forbidden: a tuple that some row matches, *not
//! asked* matching `*` alone. Where the rule can be waived, what it forbids carries the gate "waived" instead.

use astragal_model::{AttributeIndex, Catalog, Cell, Rule, Value};

use crate::ground::{attribute_of, is_unconditional, table_of, variable};
use crate::label::{GateId, Label};
use crate::rows::{Row, Rows};

/// The columns of a rule that is a table over attributes alone, each once, without a condition.
pub(crate) fn columns(rule: &Rule) -> Option<Vec<AttributeIndex>> {
    let (table, _) = table_of(rule)?;
    if !is_unconditional(rule) {
        return None;
    }
    let columns = table.columns.iter().map(|column| attribute_of(*column));
    let columns = columns.collect::<Option<Vec<_>>>()?;
    let distinct: std::collections::BTreeSet<_> = columns.iter().collect();
    (distinct.len() == columns.len()).then_some(columns)
}

/// The rows of a rule with these columns. `waived` is the gate that it is waived, where it can be.
pub(crate) fn rows(
    catalog: &Catalog,
    rule: &Rule,
    columns: &[AttributeIndex],
    waived: Option<GateId>,
) -> Option<Rows> {
    let (table, allowed) = table_of(rule)?;
    let attributes = &catalog.declarations().attributes;
    let values = columns.iter().map(|column| {
        let attribute = attributes.at(*column);
        let mut values: Vec<Value> = attribute
            .options
            .iter()
            .map(|option| Value::Option(option.id.clone()))
            .collect();
        values.extend(attribute.applies_when.is_some().then_some(Value::NotAsked));
        values
    });
    let values: Vec<Vec<Value>> = values.collect();
    let forbidden = waived.map(|waived| Label::new(vec![waived], Vec::new()));
    let row = |row: &astragal_model::Row| Row {
        cells: row
            .cells
            .iter()
            .zip(&values)
            .map(|(cell, values)| matching(cell, values, allowed))
            .collect(),
        label: if allowed {
            Some(Label::empty())
        } else {
            forbidden.clone()
        },
    };
    let scope = columns.iter().map(|column| variable(*column)).collect();
    let sizes = values.iter().map(Vec::len).collect();
    let otherwise = if allowed {
        forbidden.clone()
    } else {
        Some(Label::empty())
    };
    let rows = table.rows.iter().map(row).collect();
    Some(Rows::new(
        rule.id.as_str(),
        scope,
        sizes,
        rows,
        otherwise,
        usize::MAX,
    ))
}

/// The values that a cell lets through; `None` for all.
fn matching(cell: &Cell, values: &[Value], not_asked: bool) -> Option<Vec<usize>> {
    if *cell == Cell::Any {
        return None;
    }
    let passes = |value: &Value| match value {
        Value::NotAsked => not_asked,
        value => cell.admits(value),
    };
    let passing = values.iter().enumerate().filter(|(_, value)| passes(value));
    Some(passing.map(|(at, _)| at).collect())
}
