//! What all pages read from a catalog in the same way: conditions, parts, messages, revisions.
//!
//! Always holds: what is `per` part is read from its first part, and the condition under which that part exists is said
//! with the parts, not with the condition of the rule or item.

use astragal_catalog::{DeclarationKind, LoadedCatalog};
use astragal_model::{Catalog, Declarations, Expression, Id, PartIndex, Piece, Revision, Template};

use super::pages::{Condition, Message, MessagePiece, Parts, Revised};
use super::words::{Words, say_condition};
use super::written::{Files, Written};

/// A catalog that is being put on pages.
#[derive(Clone, Copy)]
pub(crate) struct Reading<'a> {
    pub(crate) catalog: &'a Catalog,
    written: Written<'a>,
}

impl<'a> Reading<'a> {
    pub(crate) fn new(loaded: &'a LoadedCatalog, files: &'a Files) -> Self {
        Self {
            catalog: &loaded.catalog,
            written: Written::new(files, &loaded.places),
        }
    }

    pub(crate) fn declarations(self) -> &'a Declarations {
        self.catalog.declarations()
    }

    pub(crate) fn words(self, part: Option<PartIndex>) -> Words<'a> {
        Words::new(self.catalog, part)
    }

    /// What a key of a declaration says in its file.
    pub(crate) fn written(self, kind: DeclarationKind, id: &Id, key: &str) -> Option<String> {
        self.written.text(kind, id, key)
    }

    /// The own condition of a declaration, without that of its part.
    pub(crate) fn when(
        self,
        (kind, id, key): (DeclarationKind, &Id, &str),
        part: Option<PartIndex>,
        when: Option<&Expression>,
    ) -> Option<Condition> {
        let own = own_condition(self.declarations(), part, when)?;
        Some(Condition {
            words: say_condition(self.words(part), own),
            written: self.written(kind, id, key),
        })
    }

    /// What a rule demands.
    pub(crate) fn demand(
        self,
        (kind, id, key): (DeclarationKind, &Id, &str),
        part: Option<PartIndex>,
        demand: &Expression,
    ) -> Condition {
        Condition {
            words: say_condition(self.words(part), demand),
            written: self.written(kind, id, key),
        }
    }

    /// A formula or a quantity.
    pub(crate) fn formula(
        self,
        (kind, id, key): (DeclarationKind, &Id, &str),
        part: Option<PartIndex>,
        formula: &Expression,
    ) -> Condition {
        Condition {
            words: self.words(part).say(formula),
            written: self.written(kind, id, key),
        }
    }

    /// The parts of the kind to which a part belongs.
    pub(crate) fn parts(self, part: Option<PartIndex>) -> Option<Parts> {
        let declared = &self.declarations().parts;
        let kind = &declared.at(part?).kind;
        let parts = declared.values().filter(|other| other.kind == *kind);
        let said = parts.map(|part| {
            let when = part.when.as_ref();
            let when = when.map(|when| say_condition(self.words(None), when));
            (part.label.clone(), when)
        });
        Some(Parts {
            kind: kind.clone(),
            parts: said.collect(),
        })
    }

    /// A message with its places named.
    pub(crate) fn message(self, template: &Template, part: Option<PartIndex>) -> Message {
        let words = self.words(part);
        let pieces = template.pieces.iter().map(|piece| match piece {
            Piece::Text(text) => MessagePiece::Text(text.clone()),
            Piece::Value(subject) => MessagePiece::Place(words.label(*subject)),
            Piece::Property(attribute, property) => MessagePiece::Place(words.property(*attribute, property)),
        });
        Message {
            pieces: pieces.collect(),
            written: template.written(self.catalog),
        }
    }
}

impl From<Revision> for Revised {
    fn from(revision: Revision) -> Self {
        Self {
            full: revision.to_string(),
            short: revision.short(),
        }
    }
}

/// Those of a list that stand for all parts of their declaration: the first of each id.
pub(crate) fn first_of_each<'a, T>(
    things: impl IntoIterator<Item = T> + 'a,
    id: impl Fn(&T) -> &'a Id + 'a,
) -> impl Iterator<Item = T> + 'a {
    let mut seen = std::collections::BTreeSet::new();
    things
        .into_iter()
        .filter(move |thing| seen.insert(id(thing).clone()))
}

fn own_condition<'a>(
    declarations: &Declarations,
    part: Option<PartIndex>,
    when: Option<&'a Expression>,
) -> Option<&'a Expression> {
    let when = when?;
    let exists = part.and_then(|part| declarations.parts.at(part).when.as_ref());
    match (exists, when) {
        (Some(exists), whole) if exists == whole => None,
        (Some(exists), Expression::And(both)) => match both.as_slice() {
            [first, own] if first == exists => Some(own),
            _ => Some(when),
        },
        _ => Some(when),
    }
}
