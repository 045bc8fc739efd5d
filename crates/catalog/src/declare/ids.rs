//! The forms of ids, and the ids that nothing may have.
//!
//! What an expression can name is `[a-z][a-z0-9_]*` and no word of the expression language; everything else may begin with a
//! digit and have hyphens. `screen_mesh` is a name, `colour-pairs` is the id of a rule.
//!
//! Always holds: an id that is fine here can be written wherever ids are written, without quotes in a cell.
//! Source: MEANING, "Files"; docs/reference.md.

use crate::finding::{Finding, Findings, Place};
use crate::syntax::is_reserved;
use crate::typed::FUNCTIONS;

/// Rules that every catalog has.
pub(crate) const IMPLICIT_RULES: [&str; 2] = ["has-a-price", "book-in-force"];

/// What an id names, as far as its form depends on it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum IdKind {
    /// Something that an expression can name.
    Name,
    /// An option of an attribute.
    Option,
    /// A value of an enumerated fact.
    FactOption,
    /// A rule.
    Rule,
    /// Anything else.
    Other,
}

/// Reports an id that its kind cannot have.
pub(crate) fn check(kind: IdKind, id: &str, place: &Place, findings: &Findings) {
    let Some((why, help)) = fault(kind, id) else {
        return;
    };
    let help = match respelt(kind, id) {
        Some(better) => format!("write `{better}`; {help}"),
        None => help.to_owned(),
    };
    findings.push(
        Finding::error("BAD_ID", format!("`{id}` {why}"))
            .at(place.clone())
            .with_help(help),
    );
}

/// The nearest thing that has the right form, for an id whose form is wrong.
fn respelt(kind: IdKind, id: &str) -> Option<String> {
    let between = if kind == IdKind::Name { '_' } else { '-' };
    let letter = |letter: char| match letter {
        'a'..='z' | '0'..='9' | '_' => Some(letter),
        'A'..='Z' => Some(letter.to_ascii_lowercase()),
        ' ' | '-' | '.' | '/' => Some(between),
        _ => None,
    };
    let better: String = id.trim().chars().map(letter).collect::<Option<_>>()?;
    (better != id && fault(kind, &better).is_none()).then_some(better)
}

fn fault(kind: IdKind, id: &str) -> Option<(&'static str, &'static str)> {
    match kind {
        IdKind::Name if !is_name(id) => Some((
            "is not a name",
            "begin with a small letter; go on with small letters, digits and `_`",
        )),
        IdKind::Name if is_reserved(id) => Some((
            "is a word that expressions keep for themselves",
            "choose another name",
        )),
        IdKind::Name if FUNCTIONS.contains(&id) => {
            Some(("is a function of expressions", "choose another name"))
        }
        IdKind::Name => None,
        _ if !is_id(id) => Some((
            "is not an id",
            "begin with a small letter or a digit; go on with small letters, digits, `-` and `_`",
        )),
        IdKind::Option if id == "ask" => Some((
            "cannot be an option: as a standard it means that nothing is filled in",
            "choose another id",
        )),
        IdKind::FactOption if id == "unknown" => Some((
            "cannot be a value: in an order it means that nobody knows",
            "leave it out",
        )),
        IdKind::Rule if IMPLICIT_RULES.contains(&id) => {
            Some(("is a rule that every catalog has", "choose another id"))
        }
        _ => None,
    }
}

/// Whether a text has the form of what an expression can name.
pub(crate) fn is_name(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase())
        && text
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_')
}

/// Whether a text has the form of an id.
pub(crate) fn is_id(text: &str) -> bool {
    text.starts_with(|c: char| c.is_ascii_lowercase() || c.is_ascii_digit())
        && text
            .bytes()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_' || b == b'-')
}
