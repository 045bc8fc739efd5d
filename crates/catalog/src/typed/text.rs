//! A text inside a file, with the place of every byte of it.
//!
//! An expression is read from a TOML text or a CSV cell; its syntax tree counts bytes from the start of the
//! expression. A [`PlacedText`] turns such a span into a place in the file. Where a text was written with escapes, bytes
//! cannot be told apart, and the whole text is the place.

use std::ops::Range;

use crate::finding::{Finding, Findings, Place};
use crate::source::Sources;
use crate::syntax::SyntaxError;

/// A text and where it stands.
#[derive(Debug, Clone)]
pub(crate) struct PlacedText {
    /// The text, escapes resolved.
    pub(crate) text: String,
    /// Where it stands, quotes included.
    pub(crate) place: Place,
    /// How far into the place the text begins, when its bytes stand there one by one.
    offset: Option<usize>,
}

impl PlacedText {
    /// A text of a file. `place` is the whole text as written, quotes included.
    pub(crate) fn new(text: String, place: Place, sources: &Sources) -> Self {
        let written = sources.text_at(&place);
        let offset = if text.is_empty() {
            None
        } else {
            written.find(text.as_str())
        };
        Self { text, place, offset }
    }

    /// The place of some bytes of the text.
    pub(crate) fn at(&self, span: &Range<usize>) -> Place {
        let Some(offset) = self.offset else {
            return self.place.clone();
        };
        self.place.part(offset + span.start..offset + span.end)
    }

    /// Reports an error of syntax.
    pub(crate) fn report(&self, error: SyntaxError, findings: &Findings) {
        let mut finding = Finding::error("SYNTAX", error.message.clone()).at(self.at(&error.span));
        if let Some(help) = &error.help {
            finding = finding.with_help(help.clone());
        }
        if let Some((span, what)) = &error.related {
            finding = finding.with_related(self.at(span), what.clone());
        }
        findings.push(finding);
    }
}
