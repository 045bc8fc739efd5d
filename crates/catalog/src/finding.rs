//! Findings: what is wrong with what was read, each with its place and a way out.
//!
//! A *finding* has a severity, a stable code, one line of text, and where possible the bytes it is
//! about and a help. ``unknown key `standart` in attribute`` at bytes 41..49 of `catalog.toml`, with
//! the help ``did you mean `standard`?``, is one.
//!
//! What always holds: reading goes on after a finding, so that all of them are returned at once; a
//! sorted list is in order of file, position, code and text, and says nothing twice.
//! Cost: O(n log n) to sort. No limit of its own; the reader of a long sheet stops repeating itself.
//! Source: common practice of compilers, no source.

use std::cell::RefCell;
use std::ops::Range;

use crate::source::{FileId, Sources};

/// LIMIT: how many characters of one piece of text a message quotes.
const QUOTED_LIMIT: usize = 400;

/// One thing that is wrong, or probably wrong, with what was read.
///
/// # Examples
///
/// A finding with a place and a help:
///
/// ```
/// use astragal_catalog::finding::{Finding, Place};
/// use astragal_catalog::source::Sources;
///
/// let mut sources = Sources::new();
/// let file = sources.add("catalog.toml", "standart = 1");
/// let finding = Finding::error("UNKNOWN_KEY", "unknown key `standart` in attribute")
///     .at(Place::new(file, 0..8))
///     .with_help("did you mean `standard`?");
/// assert_eq!(finding.code(), "UNKNOWN_KEY");
/// assert_eq!(finding.help(), Some("did you mean `standard`?"));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    severity: Severity,
    code: &'static str,
    message: String,
    help: Option<String>,
    place: Option<Place>,
    related: Vec<(Place, String)>,
}

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// What was read cannot be used.
    Error,
    /// What was read can be used, but is probably not what was meant.
    Warning,
}

/// Some bytes of a file, and for a sheet the row and column that a spreadsheet shows.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// The bytes of its text, end excluded.
    pub span: Range<usize>,
    /// The row of a sheet, counted from 1 with the header, as a spreadsheet counts.
    pub row: Option<u32>,
    /// The name of the column of a sheet.
    pub column: Option<String>,
    /// Which column of the sheet it is, counted from 1.
    pub column_number: Option<u32>,
}

/// The findings of one reading, in the order in which they were made.
///
/// Several readers hold the same collection, so pushing needs no exclusive access.
#[derive(Debug, Default)]
pub struct Findings {
    all: RefCell<Vec<Finding>>,
}

impl Finding {
    /// A finding that makes what was read unusable.
    #[must_use]
    pub fn error(code: &'static str, message: impl Into<String>) -> Finding {
        Finding::new(Severity::Error, code, message.into())
    }

    /// A finding that leaves what was read usable.
    #[must_use]
    pub fn warning(code: &'static str, message: impl Into<String>) -> Finding {
        Finding::new(Severity::Warning, code, message.into())
    }

    fn new(severity: Severity, code: &'static str, message: String) -> Finding {
        Finding {
            severity,
            code,
            message: clipped(message),
            help: None,
            place: None,
            related: Vec::new(),
        }
    }

    /// The same finding at a place.
    #[must_use]
    pub fn at(self, place: Place) -> Finding {
        self.at_if_known(Some(place))
    }

    /// The same finding at a place, where there is one.
    #[must_use]
    pub fn at_if_known(mut self, place: Option<Place>) -> Finding {
        self.place = place;
        self
    }

    /// The same finding with a sentence on what to do.
    #[must_use]
    pub fn with_help(mut self, help: impl Into<String>) -> Finding {
        self.help = Some(clipped(help.into()));
        self
    }

    /// The same finding with another place that explains it, and what is there.
    #[must_use]
    pub fn with_related(mut self, place: Place, what: impl Into<String>) -> Finding {
        self.related.push((place, what.into()));
        self
    }

    /// How much it weighs.
    #[must_use]
    pub fn severity(&self) -> Severity {
        self.severity
    }

    /// The stable, upper-case name of this kind of finding.
    #[must_use]
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// What was found, and what was expected.
    #[must_use]
    pub fn message(&self) -> &str {
        &self.message
    }

    /// What to do.
    #[must_use]
    pub fn help(&self) -> Option<&str> {
        self.help.as_deref()
    }

    /// Where it is.
    #[must_use]
    pub fn place(&self) -> Option<&Place> {
        self.place.as_ref()
    }

    /// Other places that explain it, each with what is there.
    #[must_use]
    pub fn related(&self) -> &[(Place, String)] {
        &self.related
    }

    /// True when what was read cannot be used.
    #[must_use]
    pub fn is_error(&self) -> bool {
        self.severity == Severity::Error
    }
}

impl Place {
    /// Some bytes of a file.
    #[must_use]
    pub fn new(file: FileId, span: Range<usize>) -> Place {
        Place {
            file,
            span,
            row: None,
            column: None,
            column_number: None,
        }
    }

    /// The part of this place from `span.start` to `span.end`, counted from the start of the place.
    ///
    /// The result never leaves the place. It is what a parser needs that was given only the text of
    /// one cell or one expression.
    #[must_use]
    pub fn part(&self, span: Range<usize>) -> Place {
        let start = self.span.start.saturating_add(span.start).min(self.span.end);
        let end = self
            .span
            .start
            .saturating_add(span.end)
            .clamp(start, self.span.end);
        Place {
            span: start..end,
            ..self.clone()
        }
    }
}

impl Findings {
    /// No findings.
    #[must_use]
    pub fn new() -> Findings {
        Findings::default()
    }

    /// Records one more.
    pub fn push(&self, finding: Finding) {
        self.all.borrow_mut().push(finding);
    }

    /// Records several more.
    pub fn extend(&self, findings: impl IntoIterator<Item = Finding>) {
        for finding in findings {
            self.push(finding);
        }
    }

    /// How many there are, repetitions counted.
    #[must_use]
    pub fn len(&self) -> usize {
        self.all.borrow().len()
    }

    /// True when nothing was found.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.all.borrow().is_empty()
    }

    /// True when one of them makes what was read unusable.
    #[must_use]
    pub fn has_errors(&self) -> bool {
        self.all.borrow().iter().any(Finding::is_error)
    }

    /// All of them by file, position, code and text, without repetitions.
    ///
    /// Findings without a place come first.
    #[must_use]
    pub fn into_sorted(self, sources: &Sources) -> Vec<Finding> {
        let mut all = self.all.into_inner();
        all.sort_by(|a, b| sort_key(a, sources).cmp(&sort_key(b, sources)));
        all.dedup_by(|a, b| a.code == b.code && a.message == b.message && a.place == b.place);
        all
    }
}

/// The text with what it quotes cut where that is very long.
fn clipped(text: String) -> String {
    if text.len() <= QUOTED_LIMIT {
        return text;
    }
    let pieces = text
        .split('`')
        .map(|piece| match piece.char_indices().nth(QUOTED_LIMIT) {
            Some((at, _)) => format!("{}...", piece.get(..at).unwrap_or("")),
            None => piece.to_owned(),
        });
    pieces.collect::<Vec<_>>().join("`")
}

fn sort_key<'a>(finding: &'a Finding, sources: &'a Sources) -> (&'a str, usize, &'a str, &'a str, usize) {
    let (path, start, end) = match finding.place() {
        None => ("", 0, 0),
        Some(place) => (sources.path(place.file), place.span.start, place.span.end),
    };
    (path, start, finding.code(), finding.message(), end)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sorted(make: impl FnOnce(FileId, FileId, &Findings)) -> Vec<String> {
        let mut sources = Sources::new();
        let (b, a) = (
            sources.add("b.toml", "0123456789"),
            sources.add("a.toml", "0123456789"),
        );
        let findings = Findings::new();
        make(a, b, &findings);
        let line = |f: &Finding| match f.place() {
            Some(p) => format!(
                "{}:{} {} {}",
                sources.path(p.file),
                p.span.start,
                f.code(),
                f.message()
            ),
            None => format!("{} {}", f.code(), f.message()),
        };
        findings.into_sorted(&sources).iter().map(line).collect()
    }

    #[test]
    fn findings_are_sorted_by_file_position_code_and_text() {
        let lines = sorted(|a, b, findings| {
            findings.push(Finding::error("Z", "last").at(Place::new(b, 1..2)));
            findings.push(Finding::error("B", "y").at(Place::new(a, 5..6)));
            findings.push(Finding::error("B", "x").at(Place::new(a, 5..6)));
            findings.push(Finding::error("A", "z").at(Place::new(a, 5..6)));
            findings.push(Finding::error("Z", "early").at(Place::new(a, 0..1)));
            findings.push(Finding::error("Z", "nowhere"));
        });
        assert_eq!(
            lines,
            [
                "Z nowhere",
                "a.toml:0 Z early",
                "a.toml:5 A z",
                "a.toml:5 B x",
                "a.toml:5 B y",
                "b.toml:1 Z last"
            ]
        );
    }

    #[test]
    fn a_finding_made_twice_is_said_once_and_at_two_places_twice() {
        let lines = sorted(|a, _, findings| {
            for start in [3, 1, 3] {
                findings.push(Finding::error("A", "same").at(Place::new(a, start..4)));
            }
        });
        assert_eq!(lines, ["a.toml:1 A same", "a.toml:3 A same"]);
    }

    #[test]
    fn only_an_error_counts_as_an_error() {
        let findings = Findings::new();
        findings.push(Finding::warning("A", "odd"));
        assert!(!findings.has_errors());
        findings.push(Finding::error("A", "wrong"));
        assert!(findings.has_errors());
    }

    #[test]
    fn a_very_long_text_is_quoted_in_part() {
        let finding = Finding::error("A", format!("`{}` is not an option", "x".repeat(10_000)));
        assert!(finding.message().ends_with("xxx...` is not an option"));
        assert!(finding.message().len() < QUOTED_LIMIT + 40);
    }

    #[test]
    fn a_part_of_a_place_never_leaves_it() {
        let mut sources = Sources::new();
        let place = Place::new(sources.add("a", "0123456789"), 2..6);
        assert_eq!(place.part(1..3).span, 3..5);
        assert_eq!(place.part(3..99).span, 5..6);
        assert_eq!(place.part(99..100).span, 6..6);
    }
}
