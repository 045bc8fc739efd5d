//! Where the cells of one record of a CSV text stand.
//!
//! A *record* ends at a line end outside quotes; a cell is in quotes when its first character is one,
//! and inside them a quote is written twice. In `a,"b,""c",d` the second cell is bytes 2..9.
//!
//! What always holds: the cells are those that the crate `csv` finds (a test compares the two).
//! Cost: O(length of the record). Source: RFC 4180, and `csv` where that is silent.

use std::ops::Range;

/// The bytes of one record.
#[derive(Debug, Default)]
pub(super) struct RawRecord {
    /// The bytes of each cell, quotes included.
    pub(super) cells: Vec<Range<usize>>,
    /// The byte after the last.
    pub(super) end: usize,
    /// The opening quote that is never closed.
    pub(super) unclosed: Option<usize>,
    /// The first text after a closing quote.
    pub(super) stray: Option<Range<usize>>,
}

impl RawRecord {
    /// The record that begins at a byte.
    pub(super) fn scan(text: &str, start: usize) -> RawRecord {
        let mut record = RawRecord::default();
        let mut at = start;
        loop {
            let end = record.cell_end(text, at);
            record.cells.push(at..end);
            if text.as_bytes().get(end) != Some(&b',') {
                record.end = end;
                return record;
            }
            at = end + 1;
        }
    }

    fn cell_end(&mut self, text: &str, start: usize) -> usize {
        if text.as_bytes().get(start) != Some(&b'"') {
            return plain_end(text, start);
        }
        let Some(quote) = closing_quote(text, start) else {
            self.unclosed = Some(start);
            return text.len();
        };
        let end = plain_end(text, quote + 1);
        if end > quote + 1 && self.stray.is_none() {
            self.stray = Some(quote + 1..end);
        }
        end
    }
}

/// The first line end at or after a byte, or the end of the text.
pub(super) fn line_end(text: &str, from: usize) -> usize {
    position(text, from, |byte| matches!(byte, b'\n' | b'\r'))
}

/// The first byte at or after `from` that is in no line end, and how many line ends there are between.
pub(super) fn skip_line_ends(text: &str, from: usize) -> (usize, u32) {
    let bytes = text.as_bytes();
    let (mut at, mut count) = (from, 0_u32);
    loop {
        at += match (bytes.get(at), bytes.get(at + 1)) {
            (Some(b'\r'), Some(b'\n')) => 2,
            (Some(b'\r' | b'\n'), _) => 1,
            _ => return (at, count),
        };
        count = count.saturating_add(1);
    }
}

/// The same bytes without ASCII white space around them; an empty cell stays where it begins.
pub(super) fn trimmed(text: &str, span: Range<usize>) -> Range<usize> {
    let cell = text.get(span.clone()).unwrap_or("");
    let is_space = |letter: char| letter.is_ascii_whitespace();
    let start = span.start + (cell.len() - cell.trim_start_matches(is_space).len());
    let end = span.start + cell.trim_end_matches(is_space).len();
    if start >= end {
        span.start..span.start
    } else {
        start..end
    }
}

fn plain_end(text: &str, from: usize) -> usize {
    position(text, from, |byte| matches!(byte, b',' | b'\n' | b'\r'))
}

fn closing_quote(text: &str, open: usize) -> Option<usize> {
    let bytes = text.as_bytes();
    let mut at = open + 1;
    loop {
        at = position(text, at, |byte| byte == b'"');
        match (bytes.get(at), bytes.get(at + 1)) {
            (None, _) => return None,
            (Some(_), Some(b'"')) => at += 2,
            (Some(_), _) => return Some(at),
        }
    }
}

fn position(text: &str, from: usize, is_wanted: impl Fn(u8) -> bool) -> usize {
    let rest = text.as_bytes().get(from..).unwrap_or(&[]);
    rest.iter()
        .position(|byte| is_wanted(*byte))
        .map_or(text.len(), |at| from + at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn scanned(text: &str) -> Vec<Vec<String>> {
        let mut rows = Vec::new();
        let mut at = 0;
        loop {
            (at, _) = skip_line_ends(text, at);
            if at >= text.len() {
                return rows;
            }
            let record = RawRecord::scan(text, at);
            at = record.end;
            rows.push(
                record
                    .cells
                    .into_iter()
                    .map(|span| unquoted(&text[span]))
                    .collect(),
            );
        }
    }

    /// What a raw cell says, by the words of RFC 4180.
    fn unquoted(raw: &str) -> String {
        let Some(rest) = raw.strip_prefix('"') else {
            return raw.to_owned();
        };
        let mut out = String::new();
        let mut letters = rest.chars().peekable();
        while let Some(letter) = letters.next() {
            if letter == '"' && letters.next_if_eq(&'"').is_none() {
                return out + &letters.collect::<String>();
            }
            out.push(letter);
        }
        out
    }

    fn by_csv(text: &str) -> Vec<Vec<String>> {
        let mut builder = csv::ReaderBuilder::new();
        let mut reader = builder
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        reader
            .records()
            .map(|record| record.unwrap().iter().map(str::to_owned).collect())
            .collect()
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(5_000))]
        #[test]
        fn the_cells_are_those_that_csv_finds(text in "[a\", \r\né]{0,24}") {
            prop_assert_eq!(scanned(&text), by_csv(&text));
        }
    }

    #[test]
    fn a_quoted_cell_may_hold_commas_quotes_and_line_ends() {
        let text = "a,\"b,\"\"\nc\",d\nnext";
        let record = RawRecord::scan(text, 0);
        let cells: Vec<_> = record.cells.iter().map(|span| &text[span.clone()]).collect();
        assert_eq!(cells, ["a", "\"b,\"\"\nc\"", "d"]);
        assert_eq!((record.unclosed, record.stray), (None, None));
    }

    #[test]
    fn an_unclosed_quote_and_text_after_a_quote_are_told_apart() {
        assert_eq!(RawRecord::scan("a,\"b,c\nd", 0).unclosed, Some(2));
        assert_eq!(RawRecord::scan("\"5\"x,1", 0).stray, Some(3..4));
    }
}
