//! Figures: formulas typed, tables read.

use std::collections::BTreeMap;

use astragal_model::{Definition, Figure, FigureIndex, Indexed, PartIndex, Table, ValueType};

use super::resolver::Resolver;
use crate::declare::{Declared, RawDefinition, RawFigure};
use crate::finding::Finding;
use crate::typed::{Type, figure_table};

/// The figures of the model; `None` means that findings say why.
pub(crate) fn figures(
    declared: &Declared,
    slots: &[(usize, Option<PartIndex>)],
    resolver: &Resolver<'_>,
) -> Option<Indexed<FigureIndex, Figure>> {
    let mut tables: BTreeMap<usize, Option<std::vec::IntoIter<Table>>> = BTreeMap::new();
    // All are read, so that each one's findings are made.
    let read: Vec<Option<Figure>> = slots
        .iter()
        .map(|(position, part)| {
            let raw = declared.figures.get(*position)?;
            let RawDefinition::Table { row_match, .. } = raw.definition.as_ref()? else {
                return by_formula(raw, *part, resolver);
            };
            let next = tables
                .entry(*position)
                .or_insert_with(|| tables_of(raw, resolver).map(Vec::into_iter));
            let table = next.as_mut()?.next()?;
            let value_type = raw.declared_type.unwrap_or(ValueType::Number);
            figure(
                raw,
                *part,
                value_type,
                Definition::Table(table, *row_match),
                resolver,
            )
        })
        .collect();
    let is_whole = read.len() == slots.len();
    read.into_iter().collect::<Option<_>>().filter(|_| is_whole)
}

fn by_formula(raw: &RawFigure, part: Option<PartIndex>, resolver: &Resolver<'_>) -> Option<Figure> {
    let RawDefinition::Formula(formula) = raw.definition.as_ref()? else {
        return None;
    };
    let is_unreadable =
        resolver.unreadable.is_in(formula) || resolver.unreadable.is_name(raw.head.id.as_str());
    if is_unreadable {
        return None;
    }
    let scope = resolver.scope(part);
    let (value_type, expression) = match raw.declared_type {
        Some(declared) => (declared, scope.of_type(formula, &Type::plain(declared))?),
        None => {
            let typed = scope.any_type(formula)?;
            (typed.of.value_type, typed.expression)
        }
    };
    figure(raw, part, value_type, Definition::Formula(expression), resolver)
}

/// One table a part, their rows shared.
fn tables_of(raw: &RawFigure, resolver: &Resolver<'_>) -> Option<Vec<Table>> {
    let Some(RawDefinition::Table {
        file,
        keys,
        value,
        row_match,
    }) = &raw.definition
    else {
        return None;
    };
    let sheet = resolver.sheets.find(&raw.head.home, file)?;
    let names_unreadable = match keys {
        Some(keys) => keys.iter().any(|key| resolver.unreadable.is_name(&key.text)),
        None => resolver.unreadable.is_in_sheet(sheet),
    };
    if names_unreadable {
        return None;
    }
    let parts = resolver.parts_of(raw.per.as_ref())?;
    let value_type = raw.declared_type.unwrap_or(ValueType::Number);
    let scope = resolver.scope(None);
    figure_table(
        sheet,
        &scope,
        &parts,
        keys.as_deref(),
        value,
        value_type,
        *row_match,
    )
}

fn figure(
    raw: &RawFigure,
    part: Option<PartIndex>,
    value_type: ValueType,
    definition: Definition,
    resolver: &Resolver<'_>,
) -> Option<Figure> {
    if let Some(unit) = raw.unit.as_ref().filter(|_| value_type != ValueType::Number) {
        let message = format!(
            "figure `{}` is {} and has a `unit`",
            raw.head.id,
            value_type.words()
        );
        resolver.findings.push(
            Finding::error("KEYS_EXCLUDE", message)
                .at(unit.place.clone())
                .with_help("`unit` says what numbers count; leave it out"),
        );
        return None;
    }
    Some(Figure {
        id: raw.head.id.clone(),
        part,
        label: raw.label.clone(),
        value_type,
        unit: raw.unit.as_ref().map(|unit| unit.text.clone()),
        shown: raw.shown,
        definition,
    })
}
