//! What to say about a token that does not belong where it is.

use super::super::error::{Span, SyntaxError};
use super::super::token::TokenKind;
use super::Parser;

impl Parser<'_> {
    /// The error for the next token, or for the end of the text, where `expected` belongs.
    pub(super) fn unexpected(&self, expected: &str, related: Option<(Span, &str)>) -> SyntaxError {
        let message = format!("found {}, expected {expected}", self.found());
        let error = match self.slip() {
            Some(help) => SyntaxError::new(self.here(), message).with_help(help),
            None => SyntaxError::new(self.here(), message),
        };
        match related {
            Some((place, label)) => error.with_related(place, label),
            None => error,
        }
    }

    /// The error for a bracket opened at `open` where `closing` belongs.
    pub(super) fn unclosed(&self, closing: TokenKind, open: Span) -> SyntaxError {
        let bracket = self.slice(&open);
        let close = if closing == TokenKind::CloseList { "]" } else { ")" };
        if self.peek().is_none() {
            let end = self.here();
            return SyntaxError::new(open, format!("found `{bracket}` that is not closed"))
                .with_help(format!("close it with `{close}`"))
                .with_related(end, "the expression ends here");
        }
        let label = format!("this `{bracket}` is still open");
        let error = self.unexpected(&format!("an operator or `{close}`"), Some((open, &label)));
        match self.peek() {
            Some(TokenKind::CloseParenthesis | TokenKind::CloseList) => {
                error.with_help(format!("close `{bracket}` with `{close}` first"))
            }
            _ => error,
        }
    }

    fn found(&self) -> String {
        let text = self.slice(&self.here());
        match self.peek() {
            None => "the end of the expression".to_owned(),
            Some(TokenKind::Number) => format!("the number `{text}`"),
            Some(TokenKind::Text) => format!("the text `{text}`"),
            Some(TokenKind::Word) => format!("the name `{text}`"),
            Some(_) => format!("`{text}`"),
        }
    }

    /// What the writer probably meant.
    fn slip(&self) -> Option<&'static str> {
        let here = self.here();
        let next = self.slice(&here);
        let after_value = self.previous().is_some_and(|kind| !is_operator(kind));
        match self.peek()? {
            TokenKind::Word if after_value && next.eq_ignore_ascii_case("and") => {
                Some("\"and\" is written `&&`")
            }
            TokenKind::Word if after_value && next.eq_ignore_ascii_case("or") => {
                Some("\"or\" is written `||`")
            }
            TokenKind::Word if after_value && next.eq_ignore_ascii_case("not") => {
                Some("\"not\" is written `!`, \"not in\" `!(x in y)`")
            }
            _ if self.previous_text().eq_ignore_ascii_case("not") => Some("\"not\" is written `!`"),
            TokenKind::Comma if self.between_numbers() => Some("decimals are written with a point: `35.5`"),
            TokenKind::Comma if after_value => {
                Some("commas stand only in lists `[a, b]` and calls `f(a, b)`")
            }
            TokenKind::CloseParenthesis | TokenKind::CloseList if self.nesting == 0 => {
                Some("remove it, or write the bracket that opens it")
            }
            TokenKind::Colon => Some("`:` belongs to a conditional, `condition ? a : b`"),
            TokenKind::Text | TokenKind::Word | TokenKind::Number if after_value => {
                Some("put an operator between two values, such as `==`, `&&` or `+`")
            }
            _ => None,
        }
    }

    fn previous(&self) -> Option<TokenKind> {
        let previous = self.next.checked_sub(1)?;
        self.tokens.get(previous).map(|token| token.kind)
    }

    fn previous_text(&self) -> &str {
        let previous = self
            .next
            .checked_sub(1)
            .and_then(|previous| self.tokens.get(previous));
        previous.map_or("", |token| self.slice(&token.span))
    }

    fn between_numbers(&self) -> bool {
        let after = self.tokens.get(self.next + 1).map(|token| token.kind);
        self.previous() == Some(TokenKind::Number) && after == Some(TokenKind::Number)
    }
}

/// True for tokens after which a value follows.
fn is_operator(kind: TokenKind) -> bool {
    !matches!(
        kind,
        TokenKind::Number
            | TokenKind::Text
            | TokenKind::Word
            | TokenKind::True
            | TokenKind::False
            | TokenKind::CloseParenthesis
            | TokenKind::CloseList
    )
}
