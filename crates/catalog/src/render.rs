//! Findings as text for a person: what, where with the bytes underlined, and what to do.
//!
//! What always holds: the order of the findings is kept; nothing that stands in a file or a message
//! can send control characters to the terminal; no line is much longer than [`WIDTH`] characters.
//! Cost: O(length of the line) a finding, however long the file.
//! Source: the look is that of the crate `annotate-snippets`.

use std::fmt::Write as _;

use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};

use crate::finding::{Finding, Place, Severity};
use crate::source::Sources;

/// LIMIT: how wide the text is at most, apart from messages and paths.
pub const WIDTH: usize = 120;

/// LIMIT: how many characters of a line stand before the place in a line that is cut.
const BEFORE: usize = 30;

/// LIMIT: how many characters of a line are shown, and underlined.
const SHOWN: usize = 90;

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
    let origin = Origin::path(visible(sources.path(place.file)))
        .line(position.line)
        .char_column(position.column);
    let line = ShownLine::new(place, position.line, sources);
    let mark = kind.span(line.mark).label(label);
    let snippet = Snippet::source(line.text)
        .line_start(position.line)
        .annotation(mark);
    group.element(origin).element(snippet)
}

fn row_and_column(place: &Place) -> Option<String> {
    let row = place.row?;
    Some(match &place.column {
        Some(column) => format!("row {row}, column `{}`", visible(column)),
        None => format!("row {row}"),
    })
}

/// The line on which a place begins, cut where it is long, and the bytes of it to underline.
struct ShownLine {
    text: String,
    mark: std::ops::Range<usize>,
}

impl ShownLine {
    fn new(place: &Place, line: usize, sources: &Sources) -> ShownLine {
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

        let is_long = before.chars().nth(SHOWN).is_some() || text_is_long(before, rest);
        let cut_start = if is_long {
            last_letters(before, BEFORE)
        } else {
            before
        };
        let mut shown = if cut_start.len() < before.len() {
            "...".to_owned()
        } else {
            String::new()
        };
        shown += &visible(cut_start);
        let mark_start = shown.len();
        let marked = visible(first_letters(marked, SHOWN));
        let shown_rest = first_letters(rest, SHOWN);
        shown += &visible(shown_rest);
        if shown_rest.len() < rest.len() {
            shown += "...";
        }
        ShownLine {
            mark: mark_start..mark_start + marked.len(),
            text: shown,
        }
    }
}

fn text_is_long(before: &str, rest: &str) -> bool {
    before.chars().chain(rest.chars()).nth(SHOWN + BEFORE).is_some()
}

fn first_letters(text: &str, count: usize) -> &str {
    text.char_indices()
        .nth(count)
        .and_then(|(at, _)| text.get(..at))
        .unwrap_or(text)
}

fn last_letters(text: &str, count: usize) -> &str {
    let Some(last) = count.checked_sub(1) else {
        return "";
    };
    text.char_indices()
        .nth_back(last)
        .and_then(|(at, _)| text.get(at..))
        .unwrap_or(text)
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
