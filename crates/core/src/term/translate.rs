//! Translates expressions and tables of a catalog into terms, figures seen through.
//!
//! Always holds: figures are translated in the order of the plan, each after all that it reads.

use astragal_model::{
    Catalog, Definition, Expression, FigureIndex, Indexed, Requirement, Rule, Subject, Table,
};

use crate::term::{LookUpRow, Term, TermId, Terms};

/// Translates for one catalog.
pub(crate) struct Translator<'a> {
    pub(crate) terms: &'a mut Terms,
    /// The figures translated so far.
    figures: Indexed<FigureIndex, TermId>,
}

impl<'a> Translator<'a> {
    /// Translates the figures of a catalog.
    pub(crate) fn new(catalog: &Catalog, terms: &'a mut Terms) -> Self {
        let undefined = terms.constant(None);
        let declared = &catalog.declarations().figures;
        let mut translator = Self {
            terms,
            figures: declared.values().map(|_| undefined).collect(),
        };
        for step in catalog.steps() {
            if let astragal_model::Step::Figure(figure) = step {
                let term = match &declared.at(*figure).definition {
                    Definition::Formula(formula) => translator.expression(formula),
                    Definition::Table(table, row_match) => {
                        let keys: Vec<TermId> = table
                            .columns
                            .iter()
                            .map(|column| translator.subject(*column))
                            .collect();
                        let rows: Vec<LookUpRow> =
                            table.rows.iter().filter_map(|row| translator.row(row)).collect();
                        let rows = translator.terms.rows_number(rows.into());
                        translator.terms.look_up(rows, *row_match, keys)
                    }
                };
                translator.figures.put(*figure, term);
            }
        }
        translator
    }

    fn row(&mut self, row: &astragal_model::Row) -> Option<LookUpRow> {
        let cells = row
            .cells
            .iter()
            .map(|cell| self.terms.cell_number(cell))
            .collect();
        Some((cells, row.value.clone()?))
    }

    /// What a subject is.
    pub(crate) fn subject(&mut self, subject: Subject) -> TermId {
        match subject {
            Subject::Attribute(index) => self.terms.leaf(Term::Attribute(index)),
            Subject::Measure(index) => self.terms.leaf(Term::Measure(index)),
            Subject::DeductedBy(index) => self.terms.leaf(Term::DeductedBy(index)),
            Subject::Fact(index) => self.terms.leaf(Term::Fact(index)),
            Subject::Figure(index) => *self.figures.at(index),
        }
    }

    /// An expression; as deep as the tree, which a catalog file keeps below 64.
    pub(crate) fn expression(&mut self, expression: &Expression) -> TermId {
        match expression {
            Expression::Literal(value) => self.terms.constant(Some(value.clone())),
            Expression::Read(subject) => self.subject(*subject),
            Expression::Property(attribute, property) => {
                self.terms.leaf(Term::Property(*attribute, property.clone()))
            }
            Expression::IsAsked(attribute) => self.terms.leaf(Term::IsAsked(*attribute)),
            Expression::Not(inner) => {
                let inner = self.expression(inner);
                self.terms.not(inner)
            }
            Expression::And(parts) => {
                let parts = self.expressions(parts);
                self.terms.and(parts)
            }
            Expression::Or(parts) => {
                let parts = self.expressions(parts);
                self.terms.or(parts)
            }
            Expression::Compare(comparison, left, right) => {
                let (left, right) = (self.expression(left), self.expression(right));
                self.terms.compare(*comparison, left, right)
            }
            Expression::In(item, members) => {
                let item = self.expression(item);
                let members = self.expressions(members);
                let equal = astragal_model::Comparison::Equal;
                let parts: Vec<TermId> = members
                    .into_iter()
                    .map(|member| self.terms.compare(equal, item, member))
                    .collect();
                self.terms.or(parts)
            }
            Expression::Add(parts) => {
                let parts = self.expressions(parts);
                self.terms.add(parts)
            }
            Expression::Negate(inner) => {
                let inner = self.expression(inner);
                self.terms.negate(inner)
            }
            Expression::Multiply(left, right) => {
                let (left, right) = (self.expression(left), self.expression(right));
                self.terms.multiply(left, right)
            }
            Expression::Divide(inner, divisor) => {
                let inner = self.expression(inner);
                self.terms.divide(inner, divisor)
            }
            Expression::Conditional(condition, then, otherwise) => {
                let condition = self.expression(condition);
                let (then, otherwise) = (self.expression(then), self.expression(otherwise));
                self.terms.conditional(condition, then, otherwise)
            }
            Expression::Call(function, parts) => {
                let parts = self.expressions(parts);
                self.terms.call(*function, parts)
            }
        }
    }

    fn expressions(&mut self, expressions: &[Expression]) -> Vec<TermId> {
        expressions.iter().map(|one| self.expression(one)).collect()
    }

    /// `!when || requirement`
    pub(crate) fn rule(&mut self, rule: &Rule) -> TermId {
        let when = match &rule.when {
            Some(when) => self.expression(when),
            None => self.terms.truth(true),
        };
        let not_when = self.terms.not(when);
        let requirement = match &rule.requirement {
            Requirement::Expression(expression) => self.expression(expression),
            Requirement::Allowed(table) => self.some_row(table, true),
            Requirement::Forbidden(table) => {
                let some = self.some_row(table, false);
                self.terms.not(some)
            }
        };
        self.terms.or(vec![not_when, requirement])
    }

    /// Whether some row matches; what a restricting cell says of a column that is not asked.
    fn some_row(&mut self, table: &Table, not_asked: bool) -> TermId {
        let keys: Vec<TermId> = table.columns.iter().map(|column| self.subject(*column)).collect();
        let mut rows = Vec::with_capacity(table.rows.len());
        for row in table.rows.iter() {
            let cells = row.cells.iter().zip(&keys);
            let cells: Vec<TermId> = cells
                .map(|(cell, key)| self.terms.admits(cell, *key, not_asked))
                .collect();
            rows.push(self.terms.and(cells));
        }
        self.terms.or(rows)
    }
}
