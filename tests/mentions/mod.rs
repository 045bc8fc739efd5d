//! Which attributes the rules and price items of a catalog mention.
//!
//! A mention is what a condition, a requirement, a table, a quantity or the choice of an amount reads, followed through
//! figures however deep. What a message shows is none, nor is a column that holds `*` in every row.

use std::collections::BTreeSet;

use astragal_model::{
    AmountKind, AttributeIndex, Catalog, Cell, Declarations, Definition, Expression, FigureIndex, PriceItem,
    Requirement, Rule, Subject, Table,
};

/// The names of attributes that no rule and no price item reaches.
pub(crate) fn idle(catalog: &Catalog, declarations: &Declarations) -> BTreeSet<String> {
    let rules = declarations.rules.iter().flat_map(rule_subjects);
    let items = declarations.items.values().flat_map(item_subjects);
    let mentioned = reached(declarations, rules.chain(items).collect());
    declarations
        .attributes
        .positions()
        .filter(|index| !mentioned.contains(index))
        .map(|index| catalog.name_of(Subject::Attribute(index)))
        .collect()
}

/// The attributes among these subjects, and those that their figures read, however deep.
pub(crate) fn reached(declarations: &Declarations, mut waiting: Vec<Subject>) -> BTreeSet<AttributeIndex> {
    let mut attributes = BTreeSet::new();
    let mut figures: BTreeSet<FigureIndex> = BTreeSet::new();
    while let Some(subject) = waiting.pop() {
        match subject {
            Subject::Attribute(index) => {
                attributes.insert(index);
            }
            Subject::Figure(index) if figures.insert(index) => {
                match &declarations.figures.at(index).definition {
                    Definition::Formula(formula) => waiting.extend(expression_subjects(formula)),
                    Definition::Table(table, _) => waiting.extend(table_subjects(table)),
                }
            }
            Subject::Figure(_) | Subject::Measure(_) | Subject::DeductedBy(_) | Subject::Fact(_) => {}
        }
    }
    attributes
}

/// What a rule reads in its condition and in what it requires; what its message shows does not count.
pub(crate) fn rule_subjects(rule: &Rule) -> Vec<Subject> {
    let mut subjects = rule.when.as_ref().map(expression_subjects).unwrap_or_default();
    subjects.extend(match &rule.requirement {
        Requirement::Expression(expression) => expression_subjects(expression),
        Requirement::Allowed(table) | Requirement::Forbidden(table) => table_subjects(table),
    });
    subjects
}

/// What a price item reads in its condition, its quantity and the choice of its amount.
pub(crate) fn item_subjects(item: &PriceItem) -> Vec<Subject> {
    let expressions = item.when.iter().chain(&item.quantity);
    let mut subjects: Vec<Subject> = expressions.flat_map(expression_subjects).collect();
    match &item.amount {
        AmountKind::Flat | AmountKind::Percent(_) => {}
        AmountKind::By(attributes) => subjects.extend(attributes.iter().map(|at| Subject::Attribute(*at))),
        AmountKind::Grid { axes, .. } => subjects.extend(axes.iter().map(|axis| Subject::Figure(*axis))),
    }
    subjects
}

/// What an expression reads, asks of, and takes a property of.
fn expression_subjects(expression: &Expression) -> Vec<Subject> {
    let mut subjects = Vec::new();
    expression.walk(|node| match node {
        Expression::Read(subject) => subjects.push(*subject),
        Expression::Property(attribute, _) | Expression::IsAsked(attribute) => {
            subjects.push(Subject::Attribute(*attribute));
        }
        _ => {}
    });
    subjects
}

/// The columns of a table that some row restricts: a column of `*` alone is no mention.
fn table_subjects(table: &Table) -> Vec<Subject> {
    let restricts = |column: usize| {
        let mut cells = table.rows.iter().filter_map(|row| row.cells.get(column));
        cells.any(|cell| *cell != Cell::Any)
    };
    let columns = table.columns.iter().enumerate();
    columns
        .filter(|(column, _)| restricts(*column))
        .map(|(_, subject)| *subject)
        .collect()
}
