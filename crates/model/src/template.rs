//! Messages with places for values: `this one is {unit_width}`.
//!
//! Always holds: a template reads only subjects of its own catalog. Filling it in never fails; what is not known is
//! named as not known.

use crate::catalog::Catalog;
use crate::expression::Subject;
use crate::id::{AttributeIndex, Id};

/// A message with places for values.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Template {
    /// The pieces in order.
    pub pieces: Vec<Piece>,
}

/// One piece of a template.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Piece {
    /// Text as it stands.
    Text(String),
    /// The value of a subject, as a person reads it.
    Value(Subject),
    /// A property of the option that an attribute has.
    Property(AttributeIndex, Id),
}

impl Template {
    /// A template of text alone.
    #[must_use]
    pub fn text(text: &str) -> Self {
        Self {
            pieces: vec![Piece::Text(text.to_owned())],
        }
    }

    /// Fills the template in; `show` says what a piece reads as.
    #[must_use]
    pub fn fill(&self, mut show: impl FnMut(&Piece) -> String) -> String {
        self.pieces
            .iter()
            .map(|piece| {
                if let Piece::Text(text) = piece {
                    text.clone()
                } else {
                    show(piece)
                }
            })
            .collect()
    }

    /// The template as its author wrote it, with names in braces.
    #[must_use]
    pub fn written(&self, catalog: &Catalog) -> String {
        self.fill(|piece| match piece {
            Piece::Text(text) => text.clone(),
            Piece::Value(subject) => format!("{{{}}}", catalog.name_of(*subject)),
            Piece::Property(attribute, property) => {
                format!(
                    "{{{}.{property}}}",
                    catalog.name_of(Subject::Attribute(*attribute))
                )
            }
        })
    }
}
