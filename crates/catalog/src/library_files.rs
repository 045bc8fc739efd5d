//! The files of a library: its root, what an include names, and the folders that hold something.
//!
//! A *library* is the folder that holds `library.toml`. From `windows/hinged/catalog.toml` in it, the
//! include `../common/colours.toml` names `windows/common/colours.toml`.
//!
//! What always holds: a path in a library is normalised, uses `/`, and stays below the root; none
//! that an include yields passes through a link. A link made between the check and the reading is not
//! seen: a library is not a defence against someone who may write into it.
//! Cost: one look at the disk for each part of a path. [`Library::members`] stops at [`FOLDER_DEPTH_LIMIT`]
//! levels and [`FOLDERS_LIMIT`] folders.
//! Source: MEANING, "Files".

use std::fmt;
use std::path::{Path, PathBuf};

use crate::finding::{Finding, Findings, Place};
use crate::source::{FileId, Sources};

/// LIMIT: how many levels of folders below the root are searched.
pub const FOLDER_DEPTH_LIMIT: usize = 8;

/// LIMIT: how many folders of a library are searched.
pub const FOLDERS_LIMIT: usize = 10_000;

/// The file that makes a folder a library.
pub const LIBRARY_FILE: &str = "library.toml";

/// A library on disk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Library {
    root: PathBuf,
}

/// A file or folder of a library: normalised, relative to the root, with `/`; empty for the root.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LibraryPath(String);

/// What a folder of a library holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum MemberKind {
    /// `catalog.toml`.
    Catalog,
    /// `book.toml`.
    Book,
    /// `policy.toml`.
    Policy,
}

/// A folder of a library that holds something.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Member {
    /// The folder.
    pub folder: LibraryPath,
    /// What it holds.
    pub kind: MemberKind,
}

/// What a path should lead to.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Wanted {
    File,
    Folder,
}

impl Library {
    /// The library that a file or folder is in: the nearest folder upwards with `library.toml`.
    pub fn find(path: &Path, findings: &Findings) -> Option<Library> {
        let shown = path.display();
        let Ok(start) = path.canonicalize() else {
            let text = format!("there is no file or folder `{shown}`");
            findings.push(Finding::error("NOT_THERE", text).with_help("look at the spelling"));
            return None;
        };
        let root = start
            .ancestors()
            .find(|folder| is_plain_file(&folder.join(LIBRARY_FILE)));
        if root.is_none() {
            let text = format!("`{shown}` is in no library: no folder above it holds `{LIBRARY_FILE}`");
            let help = format!("put a `{LIBRARY_FILE}` with `format = 1` into the folder of the library");
            findings.push(Finding::error("NO_LIBRARY", text).with_help(help));
        }
        root.map(|root| Library {
            root: root.to_owned(),
        })
    }

    /// The folder on disk.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The path of `library.toml`.
    #[must_use]
    pub fn library_file(&self) -> LibraryPath {
        LibraryPath(LIBRARY_FILE.to_owned())
    }

    /// Where a path of the library is on disk.
    #[must_use]
    pub fn disk(&self, path: &LibraryPath) -> PathBuf {
        let mut disk = self.root.clone();
        disk.extend(path.parts());
        disk
    }

    /// The path in the library of a file or folder on disk, when it is there and in it.
    #[must_use]
    pub fn locate(&self, disk: &Path) -> Option<LibraryPath> {
        let disk = disk.canonicalize().ok()?;
        let parts = disk
            .strip_prefix(&self.root)
            .ok()?
            .iter()
            .map(|part| part.to_str());
        Some(LibraryPath(parts.collect::<Option<Vec<_>>>()?.join("/")))
    }

    /// True when the library has this file.
    #[must_use]
    pub fn has_file(&self, path: &LibraryPath) -> bool {
        is_plain_file(&self.disk(path))
    }

    /// Reads a file of the library; see [`Sources::read`].
    pub fn read(
        &self,
        sources: &mut Sources,
        path: &LibraryPath,
        asked_at: Option<&Place>,
        findings: &Findings,
    ) -> Option<FileId> {
        sources.read(&self.disk(path), &path.0, asked_at, findings)
    }

    /// The file that a text in another file names, relative to that file.
    ///
    /// `from` is the file that holds the text, `place` where the text stands. `None` means that a
    /// finding says why.
    pub fn resolve_include(
        &self,
        from: &LibraryPath,
        text: &str,
        place: &Place,
        findings: &Findings,
    ) -> Option<LibraryPath> {
        self.resolve(from, text, Wanted::File)
            .map_err(|finding| findings.push((*finding).at(place.clone())))
            .ok()
    }

    /// The folder that a text in a file names, relative to that file.
    pub fn resolve_folder(
        &self,
        from: &LibraryPath,
        text: &str,
        place: &Place,
        findings: &Findings,
    ) -> Option<LibraryPath> {
        self.resolve(from, text, Wanted::Folder)
            .map_err(|finding| findings.push((*finding).at(place.clone())))
            .ok()
    }

    fn resolve(&self, from: &LibraryPath, text: &str, wanted: Wanted) -> Result<LibraryPath, Box<Finding>> {
        let path = normalised(from, text)?;
        let mut disk = self.root.clone();
        for part in path.parts() {
            disk.push(part);
            match disk.symlink_metadata() {
                Err(_) => return Err(not_there(&path, wanted).into()),
                Ok(about) if about.is_symlink() => {
                    let message = format!("`{text}` passes through the link `{part}`");
                    let finding = Finding::error("INCLUDE_THROUGH_LINK", message);
                    return Err(finding
                        .with_help("name the file itself; a library follows no links")
                        .into());
                }
                Ok(_) => {}
            }
        }
        match wanted {
            Wanted::File if disk.is_dir() => {
                let finding = Finding::error(
                    "FOLDER_NOT_FILE",
                    format!("`{path}` is a folder; expected a file"),
                );
                Err(finding.with_help("name a file in it").into())
            }
            Wanted::Folder if !disk.is_dir() => {
                let finding = Finding::error(
                    "FILE_NOT_FOLDER",
                    format!("`{path}` is a file; expected a folder"),
                );
                Err(finding.with_help("name the folder it is in").into())
            }
            _ => Ok(path),
        }
    }

    /// The folders that hold a catalog, a price book or a policy, by path.
    ///
    /// Hidden folders and links are left out. Where a limit ends the search, a finding says so.
    #[must_use]
    pub fn members(&self, findings: &Findings) -> Vec<Member> {
        let mut members = Vec::new();
        let mut open = vec![(LibraryPath(String::new()), 0_usize)];
        let mut searched = 0_usize;
        while let Some((folder, level)) = open.pop() {
            searched += 1;
            if searched > FOLDERS_LIMIT {
                let text =
                    format!("the library has more than {FOLDERS_LIMIT} folders, the most that are searched");
                findings
                    .push(Finding::error("TOO_MANY_FOLDERS", text).with_help("name the catalog's folder"));
                break;
            }
            for kind in MemberKind::ALL {
                if self.has_file(&folder.join(kind.file_name())) {
                    members.push(Member {
                        folder: folder.clone(),
                        kind,
                    });
                }
            }
            for inner in self.folders_in(&folder, findings) {
                if level < FOLDER_DEPTH_LIMIT {
                    open.push((inner, level + 1));
                } else {
                    findings.push(too_deep(&inner));
                }
            }
        }
        members.sort();
        members
    }

    fn folders_in(&self, folder: &LibraryPath, findings: &Findings) -> Vec<LibraryPath> {
        let entries = match std::fs::read_dir(self.disk(folder)) {
            Ok(entries) => entries,
            Err(error) => {
                let text = format!("folder `{folder}` cannot be read: {}", error.kind());
                findings.push(Finding::error("FOLDER_NOT_READABLE", text));
                return Vec::new();
            }
        };
        let folders = entries
            .flatten()
            .filter(|entry| entry.file_type().is_ok_and(|kind| kind.is_dir()));
        let mut inner = Vec::new();
        for name in folders.map(|entry| entry.file_name()) {
            match name.to_str() {
                Some(name) if name.starts_with('.') => {}
                Some(name) => inner.push(folder.join(name)),
                None => {
                    let text = format!(
                        "folder `{}` in `{folder}` has a name that is not UTF-8",
                        name.display()
                    );
                    findings.push(Finding::warning("NAME_NOT_UTF8", text).with_help("rename it"));
                }
            }
        }
        inner
    }
}

impl LibraryPath {
    /// The path as text, with `/`; empty for the root.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The folder that holds this file or folder; the root for the root.
    #[must_use]
    pub fn parent(&self) -> LibraryPath {
        LibraryPath(
            self.0
                .rsplit_once('/')
                .map_or("", |(parent, _)| parent)
                .to_owned(),
        )
    }

    /// A file or folder in this folder.
    #[must_use]
    pub fn join(&self, name: &str) -> LibraryPath {
        LibraryPath(if self.0.is_empty() {
            name.to_owned()
        } else {
            format!("{}/{name}", self.0)
        })
    }

    fn parts(&self) -> impl Iterator<Item = &str> {
        self.0.split('/').filter(|part| !part.is_empty())
    }
}

impl fmt::Display for LibraryPath {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(if self.0.is_empty() { "." } else { &self.0 })
    }
}

impl MemberKind {
    /// All kinds.
    pub const ALL: [MemberKind; 3] = [MemberKind::Catalog, MemberKind::Book, MemberKind::Policy];

    /// The file that makes a folder one of this kind.
    #[must_use]
    pub fn file_name(self) -> &'static str {
        match self {
            MemberKind::Catalog => "catalog.toml",
            MemberKind::Book => "book.toml",
            MemberKind::Policy => "policy.toml",
        }
    }
}

fn is_plain_file(disk: &Path) -> bool {
    disk.symlink_metadata().is_ok_and(|about| about.is_file())
}

fn normalised(from: &LibraryPath, text: &str) -> Result<LibraryPath, Box<Finding>> {
    let wrong = |code, why: &str, help| {
        Err(Finding::error(
            code,
            format!("`{text}` {why}; expected a path relative to this file"),
        )
        .with_help(help)
        .into())
    };
    let folder = from.parent();
    if text.trim().is_empty() {
        return wrong(
            "PATH_IS_EMPTY",
            "names no file",
            "name one, like `../common/colours.toml`",
        );
    }
    if text.contains('\\') {
        return wrong(
            "PATH_WITH_BACKSLASH",
            "has a backslash",
            "write `/` between folders, on every system",
        );
    }
    let has_drive = matches!(text.as_bytes(), [letter, b':', ..] if letter.is_ascii_alphabetic());
    if text.starts_with('/') || has_drive {
        return wrong(
            "PATH_IS_ABSOLUTE",
            "is an absolute path",
            "name the file from here, like `../common/colours.toml`",
        );
    }
    let mut parts: Vec<&str> = folder.parts().collect();
    for part in text.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                if parts.pop().is_none() {
                    let finding =
                        Finding::error("INCLUDE_LEAVES_LIBRARY", format!("`{text}` leaves the library"));
                    return Err(finding
                        .with_help("move the file into the library; one `..` goes up one folder")
                        .into());
                }
            }
            part => parts.push(part),
        }
    }
    Ok(LibraryPath(parts.join("/")))
}

fn not_there(path: &LibraryPath, wanted: Wanted) -> Finding {
    let (code, what) = match wanted {
        Wanted::File => ("FILE_NOT_THERE", "file"),
        Wanted::Folder => ("FOLDER_NOT_THERE", "folder"),
    };
    Finding::error(code, format!("the library has no {what} `{path}`"))
        .with_help("look at the spelling; the path starts from the folder of this file")
}

fn too_deep(folder: &LibraryPath) -> Finding {
    let text = format!("folder `{folder}` is not searched: it is more than {FOLDER_DEPTH_LIMIT} levels deep");
    Finding::warning("FOLDER_TOO_DEEP", text).with_help("move it up")
}

#[cfg(test)]
mod tests;
