//! Where the declarations of a catalog stand in its files.

use std::collections::BTreeMap;

use astragal_model::Id;

use super::names::Skeleton;
use crate::declare::{Declared, Head};
use crate::finding::Place;

/// Where the declarations of a catalog stand.
#[derive(Clone, Debug, Default)]
pub struct Places {
    declarations: BTreeMap<(DeclarationKind, Id), Declaration>,
    unused_lists: Vec<(Id, Declaration, bool)>,
}

/// Where one declaration stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Declaration {
    /// Its id.
    pub place: Place,
    /// All of it, from its heading to its last value.
    pub block: Place,
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

    /// The option lists that no attribute uses, and whether they stand in the catalog's own folder.
    pub(crate) fn unused_lists(&self) -> &[(Id, Declaration, bool)] {
        &self.unused_lists
    }

    pub(crate) fn of(declared: &Declared, skeleton: &Skeleton) -> Self {
        let mut places = Self::default();
        if let Some(header) = &declared.header {
            places.add(DeclarationKind::Catalog, [&header.head]);
        }
        places.add(DeclarationKind::Part, declared.parts.iter().map(|it| &it.head));
        places.add(DeclarationKind::Attribute, declared.attributes.iter().map(|it| &it.head));
        places.add(DeclarationKind::Measure, declared.measures.iter().map(|it| &it.head));
        places.add(DeclarationKind::Fact, declared.facts.iter().map(|it| &it.head));
        places.add(DeclarationKind::Figure, declared.figures.iter().map(|it| &it.head));
        places.add(DeclarationKind::Rule, declared.rules.iter().map(|it| &it.head));
        places.add(DeclarationKind::Item, declared.items.iter().map(|it| &it.head));
        places.add(DeclarationKind::Notice, declared.notices.iter().map(|it| &it.head));
        places.add(DeclarationKind::Example, declared.examples.iter().map(|it| &it.head));
        let home = declared.header.as_ref().map(|header| header.head.home.parent());
        let unused = declared
            .option_lists
            .iter()
            .filter(|list| !skeleton.used_lists.contains(&list.head.id));
        places.unused_lists = unused
            .map(|list| {
                let is_own = home
                    .as_ref()
                    .is_some_and(|folder| list.head.home.parent() == *folder);
                (list.head.id.clone(), declaration(&list.head), is_own)
            })
            .collect();
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
