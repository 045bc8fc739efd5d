//! Finds where a key that stands twice in a TOML file stood first.
//!
//! In `a = 1` followed by `a = 2`, the second `a` is the key that the parser reports and bytes 0..1 are
//! the answer. The parser keeps that place to itself, so it is looked up again.
//!
//! What always holds: the answer stands before the key that is reported and has the same name; where
//! the search is not sure there is no answer, which costs the finding its second place, nothing else.
//! Cost: O(length) a key. Source: TOML 1.0 (toml.io), on headings and dotted keys.

use std::ops::Range;

use toml::de::{DeTable, DeValue};

/// The bytes at which the key at `again` stood first.
pub(super) fn first(text: &str, again: &Range<usize>, root: &DeTable<'_>) -> Option<Range<usize>> {
    match heading_before(text, again.start) {
        Some(_) => first_heading(text, again),
        None => first_key(text, again, root),
    }
}

/// What stands between the brackets of a heading and the byte, when the byte is in a heading.
fn heading_before(text: &str, at: usize) -> Option<&str> {
    let before = text.get(..at)?;
    let line = before.rsplit('\n').next()?.trim_start();
    let inside = line.strip_prefix('[')?;
    (!inside.contains(['{', '=', ','])).then_some(inside)
}

fn first_heading(text: &str, again: &Range<usize>) -> Option<Range<usize>> {
    let line_start = text.get(..again.start)?.rfind('\n').map_or(0, |at| at + 1);
    let heading = heading_path(text.get(line_start..)?.lines().next()?)?;
    let mut start = 0;
    let mut is_before_headings = true;
    for line in text.get(..line_start)?.split_inclusive('\n') {
        let end = start + line.trim_end().len();
        let path = heading_path(line);
        is_before_headings &= path.is_none();
        let key = line.split('=').next().unwrap_or("");
        let is_key = is_before_headings && line.contains('=') && without_space(key) == heading;
        if is_key || path.is_some_and(|path| path == heading) {
            return Some(start + line.len() - line.trim_start().len()..end);
        }
        start += line.len();
    }
    None
}

/// `a.b` of the line `[ a.b ]  # remark`.
fn heading_path(line: &str) -> Option<String> {
    let inside = line.trim_start().strip_prefix('[')?;
    let inside = inside.strip_prefix('[').unwrap_or(inside);
    let (path, _) = inside.split_once(']')?;
    (!path.contains(['{', '=', ','])).then(|| without_space(path))
}

fn first_key(text: &str, again: &Range<usize>, root: &DeTable<'_>) -> Option<Range<usize>> {
    let name = text.get(again.clone())?.trim_matches(['"', '\'']);
    let prefix = dotted_prefix(text, again.start);
    let mut open = vec![root];
    let mut best: Option<Range<usize>> = None;
    while let Some(table) = open.pop() {
        for (key, node) in table {
            let is_first = key.get_ref() == name
                && key.span().start < again.start
                && dotted_prefix(text, key.span().start) == prefix;
            if is_first && best.as_ref().is_none_or(|best| best.start < key.span().start) {
                best = Some(key.span());
            }
            tables_open_at(text, node, again.start, &mut open);
        }
    }
    best
}

/// The tables directly in a node, but for those whose closing brace stands before the byte.
fn tables_open_at<'t, 'i>(
    text: &str,
    node: &'t toml::Spanned<DeValue<'i>>,
    at: usize,
    open: &mut Vec<&'t DeTable<'i>>,
) {
    let mut nodes = vec![node];
    while let Some(node) = nodes.pop() {
        let span = node.span();
        let is_inline = text.get(span.clone()).is_some_and(|text| text.starts_with('{'));
        match node.get_ref() {
            DeValue::Table(table) if !is_inline || span.end > at => open.push(table),
            DeValue::Array(array) => nodes.extend(array.iter()),
            _ => {}
        }
    }
}

/// `a.b.` of the key `c` in `a.b.c = 1`.
fn dotted_prefix(text: &str, at: usize) -> String {
    let before = text.get(..at).unwrap_or("");
    without_space(before.rsplit(['\n', '{', ',']).next().unwrap_or(""))
}

fn without_space(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}
