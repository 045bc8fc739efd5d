//! What is wrong with a piece of text, and where.
//!
//! A syntax error says what was found, what was expected and, where it can, what to do. In `grille = "none"` the second
//! word is underlined: found `=`, help: compare with `==`.
//!
//! What always holds: spans are byte ranges of the text that was parsed and end on character boundaries; messages are
//! one line, lower case, without a final stop.

use std::fmt;

/// A byte range of the text that was parsed.
pub type Span = std::ops::Range<usize>;

/// The first thing that is wrong with a piece of text.
///
/// One error a text: what follows a syntax error is guesswork.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SyntaxError {
    /// What was found and what was expected, in one line.
    pub message: String,
    /// What to do about it.
    pub help: Option<String>,
    /// Where: bytes of the text that was parsed. Empty at the end of the text.
    pub span: Span,
    /// A second place that explains the first, such as where a bracket was opened.
    pub related: Option<(Span, String)>,
}

impl SyntaxError {
    /// An error without help or a second place.
    pub fn new(span: Span, message: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            help: None,
            span,
            related: None,
        }
    }

    /// The same error, saying what to do.
    pub fn with_help(self, help: impl Into<String>) -> Self {
        Self {
            help: Some(help.into()),
            ..self
        }
    }

    /// The same error, pointing to a second place.
    pub fn with_related(self, span: Span, label: impl Into<String>) -> Self {
        Self {
            related: Some((span, label.into())),
            ..self
        }
    }
}

impl fmt::Display for SyntaxError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for SyntaxError {}

/// The error as tests show it: the text, what is underlined, what is said.
#[cfg(test)]
pub(super) fn shown(text: &str, error: &SyntaxError) -> String {
    let underlined = |span: &Span| {
        let width = text[span.clone()].chars().count().max(1);
        format!(
            "{}{}",
            " ".repeat(text[..span.start].chars().count()),
            "^".repeat(width)
        )
    };
    let mut shown = format!("{text}\n{} {}\n", underlined(&error.span), error.message);
    if let Some((span, label)) = &error.related {
        shown += &format!("{} {label}\n", underlined(span));
    }
    if let Some(help) = &error.help {
        shown += &format!("help: {help}\n");
    }
    shown
}
