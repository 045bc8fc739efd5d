//! Checks that every position inside declarations names something.

use super::{CatalogError, Declarations};
use crate::attribute::Standard;
use crate::expression::{Expression, Subject};
use crate::id::{Id, PartIndex, Position};
use crate::price::AmountKind;
use crate::rule::{Definition, Requirement, Rule};
use crate::template::{Piece, Template};

/// All expressions of a rule.
pub(super) fn rule_expressions(rule: &Rule) -> Vec<&Expression> {
    let requirement = match &rule.requirement {
        Requirement::Expression(expression) => Some(expression),
        Requirement::Allowed(_) | Requirement::Forbidden(_) => None,
    };
    rule.when.iter().chain(requirement).collect()
}

impl Declarations {
    pub(super) fn check_positions(&self) -> Result<(), CatalogError> {
        for part in self.parts.values() {
            self.check_expressions(part.when.iter(), &part.id)?;
        }
        for attribute in self.attributes.values() {
            let formula = if let Standard::Formula(formula) = &attribute.standard {
                Some(formula)
            } else {
                None
            };
            self.check_part(attribute.part, &attribute.id)?;
            self.check_expressions(attribute.applies_when.iter().chain(formula), &attribute.id)?;
        }
        for check in &self.site_checks {
            self.check_expression(&check.require, check.id.as_str())?;
        }
        for figure in self.figures.values() {
            self.check_part(figure.part, &figure.id)?;
            match &figure.definition {
                Definition::Formula(formula) => self.check_expression(formula, figure.id.as_str())?,
                Definition::Table(table, _) => {
                    self.check_subjects(table.columns.iter().copied(), &figure.id)?;
                }
            }
        }
        for rule in &self.rules {
            self.check_part(rule.part, &rule.id)?;
            self.check_expressions(rule_expressions(rule).into_iter(), &rule.id)?;
            self.check_columns(rule)?;
            self.check_template(&rule.message, &rule.id)?;
        }
        for rule in &self.room_rules {
            let expressions = rule.when.iter().chain([&rule.at_least_one]);
            self.check_expressions(expressions, &rule.id)?;
            self.check_template(&rule.message, &rule.id)?;
        }
        for item in self.items.values() {
            self.check_part(item.part, &item.id)?;
            self.check_expressions(item.when.iter().chain(&item.quantity), &item.id)?;
            let reads: Vec<_> = match &item.amount {
                AmountKind::By(attributes) => attributes
                    .iter()
                    .map(|index| Subject::Attribute(*index))
                    .collect(),
                AmountKind::Grid { axes, .. } => axes.iter().map(|index| Subject::Figure(*index)).collect(),
                AmountKind::Flat | AmountKind::Percent(_) => Vec::new(),
            };
            self.check_subjects(reads.into_iter(), &item.id)?;
        }
        for notice in &self.notices {
            self.check_part(notice.part, &notice.id)?;
            self.check_expressions(notice.when.iter(), &notice.id)?;
            self.check_template(&notice.text, &notice.id)?;
        }
        if let Some(drawing) = &self.drawing {
            let whose = Id::new("the drawing");
            let grilles = drawing.grilles.iter().map(|grille| grille.what.colour);
            let colours = grilles.chain([drawing.frame_colour]).map(Subject::Attribute);
            self.check_subjects(colours, &whose)?;
            self.check_expressions(drawing.expressions().into_iter(), &whose)?;
        }
        for example in &self.examples {
            let picked = example
                .picks
                .iter()
                .map(|pick| Subject::Attribute(pick.attribute));
            self.check_subjects(picked, &example.id)?;
        }
        Ok(())
    }

    pub(super) fn check_template(&self, template: &Template, whose: &Id) -> Result<(), CatalogError> {
        let subjects = template.pieces.iter().filter_map(|piece| match piece {
            Piece::Text(_) => None,
            Piece::Value(subject) => Some(*subject),
            Piece::Property(attribute, _) => Some(Subject::Attribute(*attribute)),
        });
        self.check_subjects(subjects, whose)
    }

    pub(super) fn check_columns(&self, rule: &Rule) -> Result<(), CatalogError> {
        match &rule.requirement {
            Requirement::Expression(_) => Ok(()),
            Requirement::Allowed(table) | Requirement::Forbidden(table) => {
                self.check_subjects(table.columns.iter().copied(), &rule.id)
            }
        }
    }

    fn check_part(&self, part: Option<PartIndex>, whose: &Id) -> Result<(), CatalogError> {
        if part.is_none_or(|part| part.to_usize() < self.parts.len()) {
            return Ok(());
        }
        Err(CatalogError::OutOfRange(whose.to_string()))
    }

    fn check_expressions<'a>(
        &self,
        mut expressions: impl Iterator<Item = &'a Expression>,
        whose: &Id,
    ) -> Result<(), CatalogError> {
        expressions.try_for_each(|expression| self.check_expression(expression, whose.as_str()))
    }

    pub(super) fn check_expression(&self, expression: &Expression, whose: &str) -> Result<(), CatalogError> {
        for subject in expression.reads() {
            self.check_subject(subject, whose)?;
        }
        for attribute in expression.asks() {
            self.check_subject(Subject::Attribute(attribute), whose)?;
        }
        Ok(())
    }

    fn check_subjects(
        &self,
        mut subjects: impl Iterator<Item = Subject>,
        whose: &Id,
    ) -> Result<(), CatalogError> {
        subjects.try_for_each(|subject| self.check_subject(subject, whose.as_str()))
    }

    pub(super) fn check_subject(&self, subject: Subject, whose: &str) -> Result<(), CatalogError> {
        let in_range = match subject {
            Subject::Attribute(index) => index.to_usize() < self.attributes.len(),
            Subject::Measure(index) | Subject::DeductedBy(index) => index.to_usize() < self.measures.len(),
            Subject::Fact(index) => index.to_usize() < self.facts.len(),
            Subject::Figure(index) => index.to_usize() < self.figures.len(),
        };
        if in_range {
            Ok(())
        } else {
            Err(CatalogError::OutOfRange(whose.to_owned()))
        }
    }
}
