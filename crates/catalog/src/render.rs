//! Findings as text for a person: what, where with the bytes underlined, and what to do.
//!
//! What always holds: the order of the findings is kept; nothing that stands in a file or a message
//! can send control characters to the terminal; no line is much longer than [`WIDTH`] characters.
//! Cost: O(length of the line) a finding, however long the file.
//! Source: the look is that of the crate `annotate-snippets`.

use std::fmt::Write as _;

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use crate::finding::{Finding, Place, Severity};
use crate::sheet::column_letters;
use crate::source::Sources;

/// LIMIT: how wide the text is at most, apart from messages, labels and paths.
pub const WIDTH: usize = 120;

/// LIMIT: the longest line that is shown with its place underlined, in bytes; of a longer one only
/// the place is quoted.
pub const LINE_BYTES_LIMIT: usize = 20_000;

/// LIMIT: how many characters are underlined or quoted.
const SHOWN: usize = 60;

/// How the text looks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RenderStyle {
    /// Colours by escape sequences, for a terminal.
    pub colour: bool,
}

/// The findings as text, each followed by a blank line; empty when there are none.
///
/// # Examples
///
/// ```
/// use astragal_catalog::finding::{Finding, Place};
/// use astragal_catalog::render::{RenderStyle, render};
/// use astragal_catalog::source::Sources;
///
/// let mut sources = Sources::new();
/// let file = sources.add("catalog.toml", "id = 1");
/// let finding = Finding::error("WRONG_TYPE", "`id` is a whole number; expected text").at(Place::new(file, 5..6));
/// let text = render(&[finding], &sources, RenderStyle::default());
/// assert!(text.starts_with("error[WRONG_TYPE]: `id` is a whole number; expected text\n --> catalog.toml:1:6\n"));
/// ```
#[must_use]
pub fn render(findings: &[Finding], sources: &Sources, style: RenderStyle) -> String {
    let renderer = if style.colour {
        Renderer::styled().hyperlink(false)
    } else {
        Renderer::plain()
    };
    let renderer = renderer.term_width(WIDTH);
    let mut out = String::new();
    for finding in findings {
        let _ = write!(out, "{}\n\n", renderer.render(&[group(finding, sources)]));
    }
    out
}

fn group<'a>(finding: &'a Finding, sources: &'a Sources) -> Group<'a> {
    let level = match finding.severity() {
        Severity::Error => Level::ERROR,
        Severity::Warning => Level::WARNING,
    };
    let mut group = Group::with_title(level.primary_title(visible(finding.message())).id(finding.code()));
    if let Some(place) = finding.place() {
        group = with_place(
            group,
            place,
            sources,
            AnnotationKind::Primary,
            row_and_column(place),
        );
    }
    for (place, what) in finding.related() {
        group = with_place(
            group,
            place,
            sources,
            AnnotationKind::Primary,
            Some(visible(what)),
        );
    }
    match finding.help() {
        Some(help) => group.element(Level::HELP.message(visible(help))),
        None => group,
    }
}

fn with_place<'a>(
    group: Group<'a>,
    place: &Place,
    sources: &'a Sources,
    kind: AnnotationKind,
    label: Option<String>,
) -> Group<'a> {
    let position = sources.position(place);
    let path = visible(sources.path(place.file));
    let line = ShownLine::new(place, position.line, sources);
    if line.before.len() + line.rest.len() > LINE_BYTES_LIMIT {
        let origin = Origin::path(path)
            .line(position.line)
            .char_column(position.column);
        let quoted = format!("the place reads `{}`", visible(line.marked));
        let label = label.map(|label| Level::NOTE.message(label));
        return group
            .element(origin)
            .elements(label)
            .element(Level::NOTE.message(quoted));
    }
    let before = visible(line.before);
    let mark = before.len()..before.len() + visible(line.marked).len();
    let snippet = Snippet::source(before + &visible(line.rest))
        .path(path)
        .line_start(position.line);
    group.element(snippet.annotation(kind.span(mark).label(label)))
}

fn row_and_column(place: &Place) -> Option<String> {
    let row = place.row?;
    let name = place.column.as_deref().filter(|name| !name.is_empty());
    let letters = place.column_number.map(column_letters);
    Some(match (letters, name) {
        (Some(letter), Some(name)) => format!("row {row}, column {letter} (`{}`)", visible(name)),
        (Some(letter), None) => format!("row {row}, column {letter}"),
        (None, Some(name)) => format!("row {row}, column `{}`", visible(name)),
        (None, None) => format!("row {row}"),
    })
}

/// The line on which a place begins.
struct ShownLine<'a> {
    before: &'a str,
    rest: &'a str,
    /// The beginning of `rest` that is in the place, cut where it is long.
    marked: &'a str,
}

impl<'a> ShownLine<'a> {
    fn new(place: &Place, line: usize, sources: &'a Sources) -> ShownLine<'a> {
        let text = sources.text(place.file);
        let line_start = sources.line_start(place.file, line);
        let start = text.floor_char_boundary(place.span.start).max(line_start);
        let end = text.ceil_char_boundary(place.span.end).max(start);
        let before = text.get(line_start..start).unwrap_or("");
        let rest = text
            .get(start..)
            .unwrap_or("")
            .split(['\n', '\r'])
            .next()
            .unwrap_or("");
        let marked = rest.get(..end - start).unwrap_or(rest);
        let cut = marked
            .char_indices()
            .nth(SHOWN)
            .map_or(marked.len(), |(at, _)| at);
        ShownLine {
            before,
            rest,
            marked: marked.get(..cut).unwrap_or(marked),
        }
    }
}

/// The text without control characters, and without those that reverse the direction of writing.
fn visible(text: &str) -> String {
    let is_hidden = |letter: char| {
        letter.is_control()
            || matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    text.chars()
        .map(|letter| match letter {
            '\t' => ' ',
            letter if is_hidden(letter) => '\u{fffd}',
            letter => letter,
        })
        .collect()
}

#[cfg(test)]
mod tests;
