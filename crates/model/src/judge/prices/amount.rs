//! Finds the amount of an item in the price book: flat, by options, or in a grid by size.

use crate::expression::Subject;
use crate::id::{AttributeIndex, FigureIndex, Id};
use crate::judge::prices::{Lack, Pricing, no_entry};
use crate::judge::report::{PriceStep, RuleState};
use crate::price::{Amount, AmountKind, Axis, Beyond, Grid, PriceItem};
use crate::unit::Choice;
use crate::value::Outcome;
use astragal_exact::Number;

impl Pricing<'_> {
    /// The amount in the book, with the step that says where it stands.
    pub(crate) fn book_amount(&self, item: &PriceItem, steps: &mut Vec<PriceStep>) -> Result<Number, Lack> {
        match &item.amount {
            AmountKind::Flat | AmountKind::Percent(_) => {
                let Some(Amount::Money(amount)) = self.book.amounts.get(&item.id) else {
                    return Err(no_entry(self.book));
                };
                steps.push(PriceStep::Book(amount.clone()));
                Ok(amount.clone())
            }
            AmountKind::By(attributes) => self.sheet_amount(item, attributes, steps),
            AmountKind::Grid { grid, axes, beyond } => {
                let grid = self.book.grids.get(grid).ok_or_else(|| no_entry(self.book))?;
                self.grid_amount(grid, axes, *beyond, steps)
            }
        }
    }

    /// The row of a sheet for the options of the unit, all of them asked.
    fn sheet_amount(
        &self,
        item: &PriceItem,
        attributes: &[AttributeIndex],
        steps: &mut Vec<PriceStep>,
    ) -> Result<Number, Lack> {
        let choices = || {
            attributes
                .iter()
                .map(|attribute| (*attribute, self.environment.unit.choices.at(*attribute)))
        };
        let open = choices().filter(|(_, choice)| **choice == Choice::Open);
        let wants: crate::value::Wants = open
            .flat_map(|(attribute, _)| self.environment.open_wants.at(attribute).clone())
            .collect();
        if !wants.is_empty() {
            return Err(Lack::Unknown(wants));
        }
        let key: Vec<(AttributeIndex, Id)> = choices()
            .filter_map(|(attribute, choice)| Some((attribute, choice.option()?.clone())))
            .collect();
        let rows = self
            .book
            .sheets
            .get(&item.id)
            .ok_or_else(|| no_entry(self.book))?;
        let row = rows.iter().find(|row| {
            row.options
                .iter()
                .zip(&key)
                .all(|(cell, (_, option))| cell.as_ref().is_none_or(|set| set.contains(option)))
        });
        let Some(row) = row else {
            let options: Vec<String> = key
                .iter()
                .map(|(attribute, option)| {
                    let option = crate::value::Value::Option(option.clone());
                    self.setting.catalog.show(Subject::Attribute(*attribute), &option)
                })
                .collect();
            let reason = format!(
                "the price book {} has no row for {}",
                self.book.label,
                options.join(", ")
            );
            return Err(Lack::NoPrice(RuleState::Broken, reason));
        };
        steps.push(PriceStep::Sheet {
            key,
            amount: row.amount.clone(),
        });
        Ok(row.amount.clone())
    }

    /// The cell of a grid for the sizes of the unit.
    fn grid_amount(
        &self,
        grid: &Grid,
        figures: &[FigureIndex],
        beyond: Beyond,
        steps: &mut Vec<PriceStep>,
    ) -> Result<Number, Lack> {
        let mut sizes = Vec::new();
        let mut wants = crate::value::Wants::new();
        let mut undefined = None;
        for figure in figures {
            match self.environment.figures.at(*figure) {
                Outcome::Known(value) => sizes.extend(value.magnitude().cloned()),
                Outcome::Unknown(more) => wants.extend(more.iter().cloned()),
                Outcome::Undefined(cause) => undefined = undefined.or(Some(cause.clone())),
            }
        }
        if let Some(cause) = undefined {
            return Err(Lack::NoPrice(
                RuleState::NoRow(cause),
                "its size has no value here".to_owned(),
            ));
        }
        if !wants.is_empty() {
            return Err(Lack::Unknown(wants));
        }
        let mut cell = Some(0_usize);
        for ((axis, figure), size) in grid.axes.iter().zip(figures).zip(&sizes) {
            let bracket = axis.bracket(size);
            cell = cell
                .zip(bracket)
                .map(|(cell, bracket)| cell * axis.uppers.len() + bracket);
            steps.extend(bracket.and_then(|bracket| bracket_step(axis, *figure, size, bracket)));
        }
        match (
            cell.and_then(|cell| grid.cells.get(cell))
                .and_then(Option::as_ref),
            beyond,
        ) {
            (Some(amount), _) => {
                steps.push(PriceStep::Cell(amount.clone()));
                Ok(amount.clone())
            }
            (None, Beyond::SignOff) if !is_below(grid, &sizes) => {
                let reason = if cell.is_some() {
                    "its cell in the price grid is empty"
                } else {
                    "its size is past the end of the price grid"
                };
                Err(Lack::SignOff(reason.to_owned()))
            }
            (None, _) => Err(self.beyond(grid, figures, &sizes)),
        }
    }

    fn beyond(&self, grid: &Grid, figures: &[FigureIndex], sizes: &[Number]) -> Lack {
        let catalog = self.setting.catalog;
        let named = figures
            .iter()
            .zip(sizes)
            .zip(&grid.axes)
            .map(|((figure, size), axis)| {
                let subject = Subject::Figure(*figure);
                let outcome = self.environment.figures.at(*figure);
                let shown = catalog.show_outcome(subject, outcome);
                match (axis.bracket(size), axis.uppers.last()) {
                    (None, Some(last)) => {
                        let value_type = catalog.declarations().figures.at(*figure).value_type;
                        let show = |number: &Number| catalog.show_magnitude(value_type, number);
                        format!(
                            "{} is {shown}, and the grid goes from over {} to {}",
                            catalog.label_of(subject),
                            show(&axis.lower),
                            show(last)
                        )
                    }
                    _ => format!("{} is {shown}", catalog.label_of(subject)),
                }
            });
        let named: Vec<String> = named.collect();
        let reason = format!(
            "the price book {} has no amount for this size ({})",
            self.book.label,
            named.join("; ")
        );
        Lack::NoPrice(RuleState::Broken, reason)
    }
}

/// Whether a size lies at or below the lower end of its axis.
fn is_below(grid: &Grid, sizes: &[Number]) -> bool {
    grid.axes
        .iter()
        .zip(sizes)
        .any(|(axis, size)| *size <= axis.lower)
}

fn bracket_step(axis: &Axis, figure: FigureIndex, size: &Number, bracket: usize) -> Option<PriceStep> {
    let (lower, upper) = axis.ends(bracket)?;
    let (size, lower, upper) = (size.clone(), lower.clone(), upper.clone());
    Some(PriceStep::Bracket {
        axis: figure,
        size,
        lower,
        upper,
    })
}
