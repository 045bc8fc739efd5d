//! The cells of a table's key columns: `*`, `white|dark`, `15..36`.
//!
//! A cell is blank, everything (`*`), or members between `|`; a member is a piece of text or a range. `15..36` holds both
//! ends, `15<..36` not the lower one; `15..` and `..36` have one end. Whether `12` is an option, a number or a length is
//! for the typed layer, which knows the column.
//!
//! What always holds: a member's text is not empty and has no white space around it; a range has at least one end.
//! Cost: one pass over the cell.

#[cfg(test)]
mod tests;

use super::ast::Placed;
use super::error::{Span, SyntaxError};

/// What a key cell of a table holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cell {
    /// Nothing but white space; the caller decides what that means.
    Blank,
    /// `*`: every value.
    Any,
    /// What stands between the bars, in order; never empty. Repetitions are kept.
    Members(Vec<Member>),
}

/// One member of a cell's set, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// What the member is.
    pub kind: MemberKind,
    /// Bytes of the cell's text, without white space around the member.
    pub span: Span,
}

/// What a member of a cell's set is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MemberKind {
    /// One piece of text, as written: an option or family id, a number, a length, a date.
    Text(String),
    /// Values between two ends; at least one end is there.
    Range {
        /// The lower end.
        lower: Option<Lower>,
        /// The upper end, which the range holds.
        upper: Option<Placed>,
    },
}

/// The lower end of a range.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lower {
    /// The end as written.
    pub value: Placed,
    /// True for `15<..36`, which does not hold 15.
    pub open: bool,
}

/// Reads the text of a key cell.
///
/// # Examples
///
/// A set of options, and a range that is open below:
///
/// ```
/// use astragal_catalog::syntax::{Cell, MemberKind, parse_cell};
///
/// let Ok(Cell::Members(members)) = parse_cell("white | dark") else { panic!("two members") };
/// assert_eq!(members[1].kind, MemberKind::Text("dark".to_owned()));
/// assert_eq!(members[1].span, 8..12);
///
/// let Ok(Cell::Members(members)) = parse_cell("35 5/8<..71 7/8") else { panic!("one member") };
/// let MemberKind::Range { lower: Some(lower), upper: Some(upper) } = &members[0].kind else { panic!("a range") };
/// assert_eq!((lower.value.text.as_str(), lower.open, upper.text.as_str()), ("35 5/8", true, "71 7/8"));
/// ```
///
/// # Errors
///
/// An empty member, a star beside other members, a comma, and a range without an end, with two pairs of dots or with a sign
/// other than `<..`.
pub fn parse_cell(text: &str) -> Result<Cell, SyntaxError> {
    match text.trim() {
        "" => return Ok(Cell::Blank),
        "*" => return Ok(Cell::Any),
        _ => {}
    }
    let mut members = Vec::new();
    let mut start = 0;
    for piece in text.split('|') {
        members.push(member(trimmed(piece, start), start)?);
        start += piece.len() + 1;
    }
    Ok(Cell::Members(members))
}

/// What to do about a text that is no value of its column but looks like a range, such as `15-36` or `15 to 36`.
///
/// The typed layer asks when a member's text means nothing: `2024-05-08` and `35-5/8` are left alone here.
///
/// # Examples
///
/// A dash where two dots belong:
///
/// ```
/// use astragal_catalog::syntax::range_help;
///
/// assert_eq!(range_help("15-36").as_deref(), Some("a range is written with two dots: `15..36`"));
/// assert_eq!(range_help("35-5/8"), None);
/// ```
pub fn range_help(text: &str) -> Option<String> {
    let (lower, upper) = ["\u{2013}", "\u{2014}", "\u{2026}", " to ", "-"]
        .iter()
        .find_map(|sign| text.split_once(sign))?;
    let (lower, upper) = (lower.trim(), upper.trim());
    let is_number = |end: &str| end.starts_with(|c: char| c.is_ascii_digit());
    let is_fraction = upper.contains('/') && !upper.contains([' ', '-']);
    let is_date = upper.contains('-') && !upper.contains('/');
    (is_number(lower) && is_number(upper) && !is_fraction && !is_date)
        .then(|| format!("a range is written with two dots: `{lower}..{upper}`"))
}

fn member(piece: Placed, bar: usize) -> Result<Member, SyntaxError> {
    let Placed { text, span } = piece;
    if text.is_empty() {
        // Nothing is there to underline: the bar beside the hole is.
        let at = bar.saturating_sub(1);
        return Err(SyntaxError::new(
            at..at + 1,
            "found nothing beside `|`, expected a member of the set",
        )
        .with_help("remove the bar, or write what is missing"));
    }
    refuse_signs(&text, &span)?;
    let kind = match text.split_once("..") {
        None if text.contains(['<', '>']) => return Err(lone_sign(&text, span)),
        None => MemberKind::Text(text),
        Some((lower, upper)) => range(lower, upper, &span)?,
    };
    Ok(Member { kind, span })
}

fn range(before: &str, after: &str, span: &Span) -> Result<MemberKind, SyntaxError> {
    let dots = span.start + before.len();
    let below = trimmed(before, span.start);
    let above = trimmed(after, dots + 2);
    if above.text.contains("..") || above.text.starts_with('.') {
        return Err(
            SyntaxError::new(span.clone(), "found a range with more than one `..`")
                .with_help("a range has two ends; separate ranges with `|`: `15..20|30..36`"),
        );
    }
    if below.text.ends_with('>') {
        return Err(
            SyntaxError::new(dots - 1..dots + 2, "found `>..`, expected `..` or `<..`")
                .with_help("a range that does not hold its lower end is written `15<..36`"),
        );
    }
    if above.text.starts_with(['<', '>']) {
        return Err(SyntaxError::new(
            dots..above.span.start + 1,
            "found a sign after `..`, expected the upper end",
        )
        .with_help(
            "a range always holds its upper end, `15..36`; only the lower end can be left out, `15<..36`",
        ));
    }
    let open = below.text.ends_with('<');
    let below = trimmed(below.text.trim_end_matches('<'), below.span.start);
    if let Some(end) = [&below, &above]
        .into_iter()
        .find(|end| end.text.contains(['<', '>']))
    {
        return Err(lone_sign(&end.text, end.span.clone()));
    }
    if below.text.is_empty() && above.text.is_empty() {
        return Err(
            SyntaxError::new(span.clone(), "found a range with nothing on both sides")
                .with_help("write one end or both, `15..36`, `15..` or `..36`; `*` holds everything"),
        );
    }
    if open && below.text.is_empty() {
        return Err(SyntaxError::new(span.clone(), "found `<..` without a lower end")
            .with_help("write the lower end, `15<..36`, or only the upper one, `..36`"));
    }
    let present = |end: Placed| (!end.text.is_empty()).then_some(end);
    Ok(MemberKind::Range {
        lower: present(below).map(|value| Lower { value, open }),
        upper: present(above),
    })
}

/// Signs that no member holds.
fn refuse_signs(text: &str, span: &Span) -> Result<(), SyntaxError> {
    for (at, sign) in text.char_indices() {
        let place = span.start + at..span.start + at + sign.len_utf8();
        let is_decimal = || {
            let is_digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
            is_digit(text.chars().take_while(|c| *c != ',').last())
                && is_digit(text.split_once(',').and_then(|(_, after)| after.chars().next()))
        };
        let help = match sign {
            '*' => "`*` holds everything, so it stands alone",
            ',' if is_decimal() => "decimals are written with a point: `35.5`",
            ',' => "separate members with `|`: `white|dark`",
            '\u{2026}' => "a range is written with two dots: `15..36`",
            '"' | '\u{201c}' | '\u{201d}' => "leave the quotes out; a size in inches is written as `35 5/8`",
            _ => continue,
        };
        return Err(SyntaxError::new(place, format!("found `{sign}` inside a cell")).with_help(help));
    }
    Ok(())
}

fn lone_sign(text: &str, span: Span) -> SyntaxError {
    let sign = if text.contains('<') { '<' } else { '>' };
    SyntaxError::new(
        span,
        format!("found `{sign}` in `{text}`, expected a member or a range"),
    )
    .with_help("write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`")
}

/// The piece without white space around it; `start` is where the piece begins in the cell.
fn trimmed(piece: &str, start: usize) -> Placed {
    let text = piece.trim();
    let start = start + (piece.len() - piece.trim_start().len()).min(piece.len());
    Placed {
        text: text.to_owned(),
        span: start..start + text.len(),
    }
}
