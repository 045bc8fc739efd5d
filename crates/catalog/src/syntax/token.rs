//! The words of an expression: `width >= "15"` is a word, a sign and a text.
//!
//! What always holds: tokens follow each other in the text, do not overlap, and leave out only white space and comments.
//! What CEL has and the subset has not, and what is no CEL at all, is refused here, by name. Cost: one pass.
//! Source: the lexis of CEL, <https://github.com/google/cel-spec/blob/master/doc/langdef.md#syntax>.

use logos::Logos;

use super::error::{Span, SyntaxError};
use super::refused::refusal;

/// A token and where it stands.
#[derive(Debug, Clone)]
pub(super) struct Token {
    pub(super) kind: TokenKind,
    pub(super) span: Span,
}

/// What a token is.
#[derive(Logos, Debug, Clone, Copy, PartialEq, Eq)]
#[logos(skip r"[ \t\r\n\f]+")]
#[logos(skip(r"//[^\r\n]*", allow_greedy = true))]
pub(super) enum TokenKind {
    #[regex(r"[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?")]
    Number,
    #[regex(r#""([^"\\\r\n]|\\[^\r\n])*""#)]
    #[regex(r"'([^'\\\r\n]|\\[^\r\n])*'")]
    Text,
    #[regex(r"[A-Za-z_][A-Za-z0-9_]*")]
    Word,
    #[token("true")]
    True,
    #[token("false")]
    False,
    #[token("in")]
    In,
    #[token("(")]
    OpenParenthesis,
    #[token(")")]
    CloseParenthesis,
    #[token("[")]
    OpenList,
    #[token("]")]
    CloseList,
    #[token(",")]
    Comma,
    #[token(".")]
    Dot,
    #[token("?")]
    Question,
    #[token(":")]
    Colon,
    #[token("==")]
    Equal,
    #[token("!=")]
    NotEqual,
    #[token("<")]
    Less,
    #[token("<=")]
    LessOrEqual,
    #[token(">")]
    Greater,
    #[token(">=")]
    GreaterOrEqual,
    #[token("&&")]
    And,
    #[token("||")]
    Or,
    #[token("!")]
    Not,
    #[token("+")]
    Plus,
    #[token("-")]
    Minus,
    #[token("*")]
    Times,
    #[token("/")]
    Over,
    /// What deserves a message of its own; never leaves this module.
    #[regex(r"%|=|=>|=<|<>|&|\||\{|\}|`")]
    #[regex(r#"[bBrR]{1,2}["']"#)]
    #[regex(r#"[bBrR]{0,2}("""|''')"#)]
    #[regex(r"0[xX][0-9A-Fa-f]*[uU]?", priority = 20)]
    #[regex(r"[0-9]+[uU]")]
    #[regex(r"\.[0-9]+")]
    #[regex(r#""([^"\\\r\n]|\\[^\r\n])*"#, allow_greedy = true)]
    #[regex(r"'([^'\\\r\n]|\\[^\r\n])*", allow_greedy = true)]
    Refused,
}

/// The tokens of a text, or the first piece that is none.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, SyntaxError> {
    let mut tokens = Vec::new();
    for (kind, span) in TokenKind::lexer(text).spanned() {
        match kind {
            Err(()) | Ok(TokenKind::Refused) => return Err(refusal(text, span)),
            Ok(TokenKind::Number) => refuse_tail(text, &span)?,
            Ok(_) => {}
        }
        if let Ok(kind) = kind {
            tokens.push(Token { kind, span });
        }
    }
    Ok(tokens)
}

/// True for words that CEL keeps for itself, so that no expression can use them as a name.
///
/// # Examples
///
/// An attribute with such an id could not be named:
///
/// ```
/// use astragal_catalog::syntax::is_reserved;
///
/// assert!(is_reserved("package"));
/// assert!(!is_reserved("glazing"));
/// ```
pub fn is_reserved(word: &str) -> bool {
    is_keyword(word)
        || matches!(
            word,
            "as" | "break"
                | "const"
                | "continue"
                | "else"
                | "for"
                | "function"
                | "if"
                | "import"
                | "let"
                | "loop"
                | "package"
                | "namespace"
                | "return"
                | "var"
                | "void"
                | "while"
        )
}

/// True for words that no member may be called either: CEL gives them a meaning of their own.
pub(super) fn is_keyword(word: &str) -> bool {
    matches!(word, "true" | "false" | "null" | "in")
}

/// A number ends where its letters, digits and points end: `15in`, `1.` and `1.5.2` are no numbers.
fn refuse_tail(text: &str, number: &Span) -> Result<(), SyntaxError> {
    let after = text.get(number.end..).unwrap_or_default();
    let tail: usize = after
        .chars()
        .take_while(|c| c.is_alphanumeric() || matches!(c, '_' | '.'))
        .map(char::len_utf8)
        .sum();
    if tail == 0 {
        return Ok(());
    }
    let span = number.start..number.end + tail;
    let found = text.get(span.clone()).unwrap_or_default();
    let unit = after.get(..tail).unwrap_or_default();
    let help = if found.contains("..") {
        "ranges stand in table cells; here write `x >= 15 && x <= 36`"
    } else if unit
        .chars()
        .all(|c| !c.is_ascii_digit() && !matches!(c, '_' | '.' | 'e' | 'E'))
    {
        "a size is written in quotes and takes the unit of the other side: `\"35 5/8\"`"
    } else {
        "write a decimal number, such as `12` or `0.5`"
    };
    Err(SyntaxError::new(span, format!("found `{found}`, which is not a number")).with_help(help))
}
