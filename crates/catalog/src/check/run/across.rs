//! What only the whole of a library shows: ids that two of its members have, option lists that nobody uses.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::Id;

use super::Check;
use crate::finding::{Finding, Place};
use crate::library_files::{LibraryPath, MemberKind};
use crate::load::ListUse;
use crate::source::FileId;

impl Check<'_> {
    /// No two catalogs, books or policies of the library have one id.
    pub(super) fn ids_are_unique(&self) {
        let mut first: BTreeMap<(MemberKind, &Id), (&Place, &LibraryPath)> = BTreeMap::new();
        for (member, peek) in &self.members {
            let Some((id, place)) = &peek.id else { continue };
            if let Some((before, folder)) = first.get(&(member.kind, id)) {
                let what = member.kind.word();
                let message = format!(
                    "the {what} in `{}` has the id `{id}` of the {what} in `{folder}`",
                    member.folder
                );
                self.findings.push(
                    Finding::error("DUPLICATE_ID", message)
                        .at(place.clone())
                        .with_help("give one of the two another id")
                        .with_related((*before).clone(), format!("`{id}` stands here first")),
                );
                continue;
            }
            first.insert((member.kind, id), (place, &member.folder));
        }
    }

    /// An option list is used by some catalog that includes it. Of a part of a library, only a catalog's own are asked.
    pub(super) fn lists_are_used(&self, is_whole: bool) {
        let loaded = self.selected.iter().filter_map(|folder| self.loaded(folder));
        let lists: Vec<&ListUse> = loaded.flat_map(|loaded| loaded.places.lists()).collect();
        let used: BTreeSet<(FileId, usize)> = lists
            .iter()
            .filter(|list| list.is_used)
            .map(|list| (list.place.file, list.place.span.start))
            .collect();
        for list in lists {
            let is_used = used.contains(&(list.place.file, list.place.span.start));
            if !is_used && (is_whole || list.is_own) {
                let message = format!("no attribute uses option list `{}`", list.id);
                let help = format!(
                    "write `options = \"{}\"` in an attribute, or take the list out",
                    list.id
                );
                self.findings.push(
                    Finding::warning("UNUSED_OPTION_LIST", message)
                        .at(list.place.clone())
                        .with_help(help),
                );
            }
        }
    }
}

impl MemberKind {
    /// What a folder of this kind holds, in words.
    fn word(self) -> &'static str {
        match self {
            Self::Catalog => "catalog",
            Self::Book => "price book",
            Self::Policy => "policy",
        }
    }
}
