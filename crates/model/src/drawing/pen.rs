//! Works out the values of a drawing for one unit.
//!
//! Always holds: what is not known is what is wanted, and what has no value says where it is written.

use astragal_exact::Number;

use super::{DrawingKey, DrawnGrille, GlassMark, GrilleDrawing, GrillePattern, Layout, OnPanels, Undrawn};
use crate::evaluate::Environment;
use crate::expression::Expression;
use crate::id::{AttributeIndex, Id};
use crate::unit::Choice;
use crate::value::{Outcome, UndefinedCause, Value};

/// Works out values for a drawing; what is not known or has no value is why there is none.
pub(super) struct Pen<'a> {
    pub(super) environment: &'a Environment<'a>,
}

impl Pen<'_> {
    fn known(&self, expression: &Expression, key: DrawingKey) -> Result<Value, Undrawn> {
        match self.environment.evaluate(expression) {
            Outcome::Known(value) => Ok(value),
            Outcome::Unknown(wants) => Err(Undrawn::Unknown(wants)),
            Outcome::Undefined(cause) => Err(Undrawn::NoValue(key, cause)),
        }
    }

    pub(super) fn magnitude(&self, expression: &Expression, key: DrawingKey) -> Result<Number, Undrawn> {
        let value = self.known(expression, key)?;
        let magnitude = value.magnitude().cloned();
        magnitude.ok_or(Undrawn::NoValue(key, UndefinedCause::IllTyped))
    }

    fn holds(&self, when: Option<&Expression>, key: DrawingKey) -> Result<bool, Undrawn> {
        match when {
            None => Ok(true),
            Some(when) => Ok(self.known(when, key)? == Value::Bool(true)),
        }
    }

    pub(super) fn option(
        &self,
        attribute: AttributeIndex,
        key: DrawingKey,
    ) -> Result<(AttributeIndex, Id), Undrawn> {
        match self.environment.unit.choices.at(attribute) {
            Choice::Chosen { option, .. } => Ok((attribute, option.clone())),
            Choice::NotAsked => Err(Undrawn::NoValue(key, UndefinedCause::NotAsked(attribute))),
            Choice::Open => Err(Undrawn::Unknown(
                self.environment.open_wants.at(attribute).clone(),
            )),
        }
    }

    /// The first layout that is for this unit, and its position.
    pub(super) fn first<'l>(&self, layouts: &'l [Layout]) -> Result<(usize, &'l Layout), Undrawn> {
        for (number, layout) in layouts.iter().enumerate() {
            if self.holds(layout.when.as_ref(), DrawingKey::LayoutWhen(number))? {
                return Ok((number, layout));
            }
        }
        Err(Undrawn::NoLayout)
    }

    /// What lies on a panel, in the order of the catalog, each with its position there.
    pub(super) fn on<'l, T>(
        &self,
        all: &'l [OnPanels<T>],
        panel: usize,
        key: fn(usize) -> DrawingKey,
    ) -> Result<Vec<(usize, &'l T)>, Undrawn> {
        let mut there = Vec::new();
        for (number, one) in all.iter().enumerate() {
            let is_meant = one.panels.is_empty() || one.panels.contains(&panel);
            if is_meant && self.holds(one.when.as_ref(), key(number))? {
                there.push((number, &one.what));
            }
        }
        Ok(there)
    }

    pub(super) fn marks(&self, all: &[OnPanels<GlassMark>], panel: usize) -> Result<Vec<GlassMark>, Undrawn> {
        let there = self.on(all, panel, DrawingKey::MarkWhen)?;
        let mut marks: Vec<GlassMark> = there.into_iter().map(|(_, mark)| *mark).collect();
        marks.sort_unstable();
        marks.dedup();
        Ok(marks)
    }

    pub(super) fn grille(
        &self,
        all: &[OnPanels<GrilleDrawing>],
        panel: usize,
    ) -> Result<Option<DrawnGrille>, Undrawn> {
        let there = self.on(all, panel, DrawingKey::GrilleWhen)?;
        let Some(&(number, grille)) = there.first() else {
            return Ok(None);
        };
        let size = |expression| self.magnitude(expression, DrawingKey::GrillePattern(number));
        let pattern = match &grille.pattern {
            GrillePattern::Grid { columns, rows } => GrillePattern::Grid {
                columns: size(columns)?,
                rows: size(rows)?,
            },
            GrillePattern::Perimeter(inset) => GrillePattern::Perimeter(size(inset)?),
            GrillePattern::TopRow { columns, height } => GrillePattern::TopRow {
                columns: size(columns)?,
                height: size(height)?,
            },
        };
        Ok(Some(DrawnGrille {
            grille: number,
            pattern,
            bar: self.magnitude(&grille.bar, DrawingKey::GrilleBar(number))?,
            colour: self.option(grille.colour, DrawingKey::GrilleColour(number))?,
        }))
    }
}
