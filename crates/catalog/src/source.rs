//! The texts that were read, each under a number, so that a place is a number and some bytes.
//!
//! A *source* is one file: the path to show, relative to the library or order, and its text. Of
//! `catalog.toml` with the text `a\nbc`, byte 3 is line 2, column 2.
//!
//! What always holds: a text is UTF-8 without a byte-order mark; a file that is read twice is kept
//! once; every failure to read is a finding.
//! Cost: the text is kept once and shared. Stops at [`FILE_BYTES_LIMIT`] bytes a file.
//! Source: common practice, no source.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::finding::{Finding, Findings, Place};

/// LIMIT: the longest file that is read, 64 MiB.
pub const FILE_BYTES_LIMIT: u64 = 64 * 1024 * 1024;

/// All files of one reading.
///
/// # Examples
///
/// A text that is at hand, and where its bytes stand:
///
/// ```
/// use astragal_catalog::finding::Place;
/// use astragal_catalog::source::Sources;
///
/// let mut sources = Sources::new();
/// let file = sources.add("catalog.toml", "a\nbc");
/// let position = sources.position(&Place::new(file, 3..4));
/// assert_eq!((position.line, position.column), (2, 2));
/// ```
#[derive(Debug, Default)]
pub struct Sources {
    files: Vec<Source>,
    /// What came of each file on disk; nothing for an empty one.
    known: BTreeMap<PathBuf, Option<FileId>>,
}

/// Names one file of a [`Sources`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(usize);

/// Lines and columns of a place, counted from 1; columns count characters, the end is excluded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Position {
    /// Line of the first character.
    pub line: usize,
    /// Column of the first character.
    pub column: usize,
    /// Line of the character after the last.
    pub end_line: usize,
    /// Column of the character after the last.
    pub end_column: usize,
}

#[derive(Debug)]
struct Source {
    path: String,
    text: Arc<str>,
    line_starts: Vec<usize>,
}

impl Sources {
    /// No files.
    #[must_use]
    pub fn new() -> Sources {
        Sources::default()
    }

    /// Keeps a text that is at hand, under the path to show.
    pub fn add(&mut self, path: impl Into<String>, text: impl Into<Arc<str>>) -> FileId {
        let text = text.into();
        let line_starts = std::iter::once(0)
            .chain(text.match_indices('\n').map(|(at, _)| at + 1))
            .collect();
        self.files.push(Source {
            path: path.into(),
            text,
            line_starts,
        });
        FileId(self.files.len() - 1)
    }

    /// Reads a file and keeps it under the path to show.
    ///
    /// `asked_at` is the place that names the file, where there is one: findings about a file that
    /// has no text stand there. `None` means that a finding says why.
    pub fn read(
        &mut self,
        disk: &Path,
        shown: &str,
        asked_at: Option<&Place>,
        findings: &Findings,
    ) -> Option<FileId> {
        self.read_limited(disk, shown, asked_at, FILE_BYTES_LIMIT, findings)
    }

    fn read_limited(
        &mut self,
        disk: &Path,
        shown: &str,
        asked_at: Option<&Place>,
        limit: u64,
        findings: &Findings,
    ) -> Option<FileId> {
        if let Some(file) = self.known.get(disk) {
            return *file;
        }
        let text = bytes_of(disk, shown, limit).and_then(|bytes| text_of(bytes, shown));
        let text = match text {
            Ok(text) => text,
            Err(finding) => {
                findings.push(finding.at_if_known(asked_at.cloned()));
                return None;
            }
        };
        let (text, has_mark) = match text.strip_prefix('\u{feff}') {
            Some(rest) => (rest.to_owned(), true),
            None => (text, false),
        };
        let is_blank = text.trim().is_empty();
        let file = self.add(shown, text);
        self.known.insert(disk.to_owned(), (!is_blank).then_some(file));
        // Spreadsheets write the mark when they are asked for CSV in UTF-8, and it says nothing else.
        if has_mark && !is_sheet(disk) {
            findings.push(byte_order_mark(shown).at(Place::new(file, 0..0)));
        }
        if is_blank {
            findings.push(
                Finding::error("EMPTY_FILE", format!("`{shown}` is empty"))
                    .at_if_known(asked_at.cloned().or(Some(Place::new(file, 0..0))))
                    .with_help("was it saved?"),
            );
            return None;
        }
        Some(file)
    }

    /// The path to show.
    #[must_use]
    pub fn path(&self, file: FileId) -> &str {
        self.files.get(file.0).map_or("", |source| &source.path)
    }

    /// The text, without a byte-order mark.
    #[must_use]
    pub fn text(&self, file: FileId) -> &str {
        self.files.get(file.0).map_or("", |source| &source.text)
    }

    /// The text, for one who keeps it while more files are read.
    #[must_use]
    pub fn shared_text(&self, file: FileId) -> Arc<str> {
        self.files
            .get(file.0)
            .map_or_else(|| Arc::from(""), |source| Arc::clone(&source.text))
    }

    /// The text of a place.
    #[must_use]
    pub fn text_at(&self, place: &Place) -> &str {
        self.text(place.file).get(place.span.clone()).unwrap_or("")
    }

    /// All files, in the order in which they were read.
    pub fn files(&self) -> impl Iterator<Item = FileId> + use<> {
        (0..self.files.len()).map(FileId)
    }

    /// Lines and columns of a place.
    #[must_use]
    pub fn position(&self, place: &Place) -> Position {
        let (line, column) = self.line_and_column(place.file, place.span.start);
        let (end_line, end_column) = self.line_and_column(place.file, place.span.end.max(place.span.start));
        Position {
            line,
            column,
            end_line,
            end_column,
        }
    }

    /// The first byte of a line, counted from 1; past the last line, the length of the text.
    pub(crate) fn line_start(&self, file: FileId, line: usize) -> usize {
        let starts = self
            .files
            .get(file.0)
            .map_or([].as_slice(), |source| &source.line_starts);
        let start = starts.get(line.saturating_sub(1)).copied();
        start.unwrap_or_else(|| self.text(file).len())
    }

    fn line_and_column(&self, file: FileId, offset: usize) -> (usize, usize) {
        let Some(source) = self.files.get(file.0) else {
            return (1, 1);
        };
        let offset = source.text.floor_char_boundary(offset);
        let line = source.line_starts.partition_point(|start| *start <= offset);
        let start = source
            .line_starts
            .get(line.saturating_sub(1))
            .copied()
            .unwrap_or(0);
        let before = source.text.get(start..offset).unwrap_or("");
        (line.max(1), before.chars().count() + 1)
    }
}

fn bytes_of(disk: &Path, shown: &str, limit: u64) -> Result<Vec<u8>, Box<Finding>> {
    let about = std::fs::metadata(disk).map_err(|error| not_readable(shown, &error))?;
    if about.is_dir() {
        let text = format!("`{shown}` is a folder; expected a file");
        return Err(Finding::error("FOLDER_NOT_FILE", text)
            .with_help("name a file in it")
            .into());
    }
    if !about.is_file() {
        return Err(Finding::error("FILE_NOT_READABLE", format!("`{shown}` is not a plain file")).into());
    }
    let mut bytes = Vec::new();
    let file = File::open(disk).map_err(|error| not_readable(shown, &error))?;
    file.take(limit.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(|error| not_readable(shown, &error))?;
    if u64::try_from(bytes.len()).unwrap_or(u64::MAX) > limit {
        let text = format!("`{shown}` is longer than {limit} bytes, the most that is read of one file");
        return Err(Finding::error("FILE_TOO_LARGE", text)
            .with_help("split it")
            .into());
    }
    Ok(bytes)
}

fn not_readable(shown: &str, error: &std::io::Error) -> Finding {
    match error.kind() {
        ErrorKind::NotFound | ErrorKind::NotADirectory => {
            Finding::error("FILE_NOT_THERE", format!("there is no file `{shown}`"))
                .with_help("look at the spelling, and at the folder the name starts from")
        }
        kind => Finding::error("FILE_NOT_READABLE", format!("`{shown}` cannot be read: {kind}")),
    }
}

fn text_of(bytes: Vec<u8>, shown: &str) -> Result<String, Box<Finding>> {
    let error = match String::from_utf8(bytes) {
        Ok(text) => return Ok(text),
        Err(error) => error,
    };
    let offset = error.utf8_error().valid_up_to();
    let bytes = error.as_bytes();
    let line = bytes.iter().take(offset).filter(|byte| **byte == b'\n').count() + 1;
    let found = bytes.get(offset).copied().unwrap_or(0);
    let (text, help) = match bytes {
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => (
            format!("`{shown}` is saved as UTF-16; expected UTF-8"),
            "save it as UTF-8 without a byte-order mark; a spreadsheet calls UTF-16 `Unicode text`",
        ),
        [b'P', b'K', 3, 4, ..] | [0xd0, 0xcf, 0x11, 0xe0, ..] => (
            format!("`{shown}` is a workbook of a spreadsheet; expected text"),
            "save the sheet as CSV with commas, and name that file",
        ),
        _ => (
            format!(
                "`{shown}` is not saved as UTF-8: line {line} has a letter that cannot be read (byte {offset}, 0x{found:02x})"
            ),
            "save it as UTF-8 without a byte-order mark; accents and other special letters are lost otherwise",
        ),
    };
    Err(Finding::error("NOT_UTF8", text).with_help(help).into())
}

fn is_sheet(disk: &Path) -> bool {
    disk.extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case("csv"))
}

fn byte_order_mark(shown: &str) -> Finding {
    Finding::error(
        "BYTE_ORDER_MARK",
        format!("`{shown}` begins with a byte-order mark, a sign that cannot be seen"),
    )
    .with_help("save it as UTF-8 without a byte-order mark: in editors `UTF-8`, not `UTF-8 with BOM`")
}

#[cfg(test)]
mod tests;
