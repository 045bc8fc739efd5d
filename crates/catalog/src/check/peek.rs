//! Which catalog, book or policy a folder holds, and for which catalogs, without reading the rest.
//!
//! Says nothing about what is wrong: who reads the file in earnest does.

use astragal_model::Id;

use crate::finding::{Findings, Place};
use crate::library_files::{Library, Member, MemberKind};
use crate::source::{FILE_BYTES_LIMIT, Sources};
use crate::tree::{self, Node};

/// What the top of a file says.
#[derive(Clone, Debug, Default)]
pub(super) struct Peek {
    /// The id and where it stands.
    pub(super) id: Option<(Id, Place)>,
    /// For which catalogs a book or policy is.
    pub(super) catalogs: Vec<(Id, Place)>,
}

/// Looks at the top of a member's file.
pub(super) fn peek(library: &Library, member: &Member, sources: &mut Sources) -> Peek {
    let unsaid = Findings::new();
    let path = member.folder.join(member.kind.file_name());
    // A file that was looked at in vain is looked at again by its reader, which says why.
    let disk = library.disk(&path);
    if disk.metadata().is_ok_and(|about| about.len() > FILE_BYTES_LIMIT) {
        return Peek::default();
    }
    let Ok(text) = std::fs::read_to_string(disk) else {
        return Peek::default();
    };
    if text.trim().is_empty() || text.starts_with('\u{feff}') {
        return Peek::default();
    }
    let Some(file) = library.read(sources, &path, None, &unsaid) else {
        return Peek::default();
    };
    let Some(root) = tree::read(sources, file, &unsaid) else {
        return Peek::default();
    };
    let (table, catalogs) = match member.kind {
        MemberKind::Catalog => ("catalog", None),
        MemberKind::Book => ("book", Some("catalog")),
        MemberKind::Policy => ("policy", Some("catalogs")),
    };
    let named = |node: &Node| {
        let text = node.as_text()?;
        Some((Id::new(text), Place::new(file, node.span.clone())))
    };
    let table = value(&root, table);
    let found = table.and_then(|table| value(table, catalogs?));
    Peek {
        id: table.and_then(|table| value(table, "id")).and_then(named),
        catalogs: match found {
            None => Vec::new(),
            Some(node) => match (member.kind, node.as_array()) {
                (MemberKind::Policy, Some(nodes)) => nodes.iter().filter_map(named).collect(),
                (MemberKind::Policy, None) => Vec::new(),
                _ => named(node).into_iter().collect(),
            },
        },
    }
}

fn value<'n>(node: &'n Node, key: &str) -> Option<&'n Node> {
    let entry = node.as_table()?.iter().find(|entry| entry.key.value == key)?;
    Some(&entry.node)
}
