//! Where the declarations of a catalog stand in its files.

use std::collections::BTreeMap;

use astragal_model::{DrawingKey, Id};

use super::names::Skeleton;
use super::sheets::Sheets;
use crate::declare::{Declared, Head, RawRequirement};
use crate::finding::Place;
use crate::source::FileId;

/// Where the declarations of a catalog stand.
#[derive(Clone, Debug, Default)]
pub struct Places {
    declarations: BTreeMap<(DeclarationKind, Id), Declaration>,
    sheets: BTreeMap<Id, (FileId, usize)>,
    books: BTreeMap<Id, Place>,
    lists: Vec<ListUse>,
    drawing: BTreeMap<DrawingKey, Place>,
}

/// Where one declaration stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Declaration {
    /// Its id.
    pub place: Place,
    /// All of it, from its heading to its last value.
    pub block: Place,
}

/// An option list as one catalog uses it.
#[derive(Clone, Debug)]
pub(crate) struct ListUse {
    pub(crate) id: Id,
    pub(crate) place: Place,
    /// Whether an attribute of the catalog uses it.
    pub(crate) is_used: bool,
    /// Whether it stands in the folder of the catalog.
    pub(crate) is_own: bool,
}

/// What sort of declaration it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum DeclarationKind {
    /// `[catalog]`.
    Catalog,
    /// `[[part]]`.
    Part,
    /// `[[attribute]]`.
    Attribute,
    /// `[[measure]]`.
    Measure,
    /// `[[site_fact]]`.
    Fact,
    /// `[[figure]]`.
    Figure,
    /// `[[rule]]`.
    Rule,
    /// `[[room_rule]]`.
    RoomRule,
    /// `[[price]]`.
    Item,
    /// `[[notice]]`.
    Notice,
    /// `[[example]]`.
    Example,
}

impl Places {
    /// The place of a declaration by its id; that of a `per` declaration is the same for all parts.
    #[must_use]
    pub fn of_kind(&self, kind: DeclarationKind, id: &Id) -> Option<&Declaration> {
        self.declarations.get(&(kind, id.clone()))
    }

    /// The sheet of a rule by table, and how many rows it has.
    #[must_use]
    pub fn sheet_of_rule(&self, rule: &Id) -> Option<(FileId, usize)> {
        self.sheets.get(rule).copied()
    }

    /// Where an example names the book of its total.
    pub(crate) fn book_of_example(&self, example: &Id) -> Option<&Place> {
        self.books.get(example)
    }

    /// Where a key of `[drawing]` stands; where it is left out, the drawing as a whole.
    pub(crate) fn of_drawing(&self, key: DrawingKey) -> Option<&Place> {
        let whole = || self.drawing.get(&DrawingKey::Whole);
        self.drawing.get(&key).or_else(whole)
    }

    /// The option lists, and whether an attribute uses them.
    pub(crate) fn lists(&self) -> &[ListUse] {
        &self.lists
    }

    pub(crate) fn of(declared: &Declared, skeleton: &Skeleton, sheets: &Sheets) -> Self {
        let mut places = Self::default();
        for rule in &declared.rules {
            if let Some(RawRequirement::Table { file, .. }) = &rule.requirement
                && let Some(sheet) = sheets.find(&rule.head.home, file)
            {
                let found = (sheet.file(), sheet.row_count());
                places.sheets.insert(rule.head.id.clone(), found);
            }
        }
        for example in &declared.examples {
            if let Some(total) = &example.total {
                places
                    .books
                    .insert(example.head.id.clone(), total.book.place.clone());
            }
        }
        if let Some(header) = &declared.header {
            places.add(DeclarationKind::Catalog, [&header.head]);
        }
        places.add(DeclarationKind::Part, declared.parts.iter().map(|it| &it.head));
        places.add(
            DeclarationKind::Attribute,
            declared.attributes.iter().map(|it| &it.head),
        );
        places.add(
            DeclarationKind::Measure,
            declared.measures.iter().map(|it| &it.head),
        );
        places.add(DeclarationKind::Fact, declared.facts.iter().map(|it| &it.head));
        places.add(
            DeclarationKind::Figure,
            declared.figures.iter().map(|it| &it.head),
        );
        places.add(DeclarationKind::Rule, declared.rules.iter().map(|it| &it.head));
        places.add(
            DeclarationKind::RoomRule,
            declared.room_rules.iter().map(|it| &it.head),
        );
        places.add(DeclarationKind::Item, declared.items.iter().map(|it| &it.head));
        places.add(
            DeclarationKind::Notice,
            declared.notices.iter().map(|it| &it.head),
        );
        places.add(
            DeclarationKind::Example,
            declared.examples.iter().map(|it| &it.head),
        );
        let home = declared.header.as_ref().map(|header| header.head.home.parent());
        let lists = declared.option_lists.iter().map(|list| ListUse {
            id: list.head.id.clone(),
            place: list.head.place.clone(),
            is_used: skeleton.used_lists.contains(&list.head.id),
            is_own: home.as_ref() == Some(&list.head.home.parent()),
        });
        places.lists = lists.collect();
        if let Some(drawing) = &declared.drawing {
            places.drawing = super::drawing::keys(drawing);
        }
        places
    }

    fn add<'a>(&mut self, kind: DeclarationKind, heads: impl IntoIterator<Item = &'a Head>) {
        for head in heads {
            self.declarations
                .insert((kind, head.id.clone()), declaration(head));
        }
    }
}

fn declaration(head: &Head) -> Declaration {
    Declaration {
        place: head.place.clone(),
        block: head.block.clone(),
    }
}
