//! Writes answers as indented JSON, one fact a line, in which the numbers of `extra` keep their digits.
//!
//! An object that is [`INLINE_DEPTH`] deep stands on one line with all that is in it, so that a rule, an item or a
//! choice is a line, and two answers compare line by line.
//!
//! `1.50` that a caller wrote stays `1.50`. Such a number is serialised as a position in a table of texts, in a type
//! that nothing else here uses (128 bits); the formatter writes the text instead.

use std::io::{self, Write};

use serde::Serialize;
use serde_json::ser::Formatter;

/// How deep an object is that stands on one line; the answer itself is 1 deep.
const INLINE_DEPTH: usize = 6;

/// The answer as indented JSON with a line break at its end; `numbers` are the texts of the numbers of `extra`.
pub(crate) fn to_text(answer: &impl Serialize, numbers: &[String]) -> Result<String, String> {
    let mut bytes = Vec::new();
    let formatter = Lines {
        numbers,
        depth: 0,
        inline_from: None,
        is_empty: true,
    };
    let mut serializer = serde_json::Serializer::with_formatter(&mut bytes, formatter);
    answer
        .serialize(&mut serializer)
        .map_err(|error| error.to_string())?;
    bytes.push(b'\n');
    String::from_utf8(bytes).map_err(|error| error.to_string())
}

/// Indents, and writes 128-bit numbers as the texts that they are positions of.
struct Lines<'a> {
    numbers: &'a [String],
    /// How many lists and objects are open.
    depth: usize,
    /// How deep the object is that began the line, inside of one.
    inline_from: Option<usize>,
    /// Whether the list or object that was opened last has had no entry.
    is_empty: bool,
}

impl Lines<'_> {
    fn open<W: ?Sized + Write>(&mut self, writer: &mut W, bracket: &[u8]) -> io::Result<()> {
        self.depth += 1;
        self.is_empty = true;
        writer.write_all(bracket)
    }

    fn close<W: ?Sized + Write>(&mut self, writer: &mut W, bracket: &[u8]) -> io::Result<()> {
        self.depth = self.depth.saturating_sub(1);
        if !self.is_empty && self.inline_from.is_none() {
            self.new_line(writer)?;
        }
        self.is_empty = false;
        writer.write_all(bracket)
    }

    /// What stands before an entry.
    fn entry<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.is_empty = false;
        match (self.inline_from, first) {
            (Some(_), true) => Ok(()),
            (Some(_), false) => writer.write_all(b", "),
            (None, true) => self.new_line(writer),
            (None, false) => writer.write_all(b",").and_then(|()| self.new_line(writer)),
        }
    }

    fn new_line<W: ?Sized + Write>(&self, writer: &mut W) -> io::Result<()> {
        writer.write_all(b"\n")?;
        (0..self.depth).try_for_each(|_| writer.write_all(b"  "))
    }
}

impl Formatter for Lines<'_> {
    fn begin_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.open(writer, b"[")
    }

    fn end_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.close(writer, b"]")
    }

    fn begin_array_value<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.entry(writer, first)
    }

    fn begin_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.open(writer, b"{")?;
        if self.depth >= INLINE_DEPTH {
            self.inline_from.get_or_insert(self.depth);
        }
        Ok(())
    }

    fn end_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        let depth = self.depth;
        self.close(writer, b"}")?;
        if self.inline_from == Some(depth) {
            self.inline_from = None;
        }
        Ok(())
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.entry(writer, first)
    }

    fn begin_object_value<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        writer.write_all(b": ")
    }

    fn write_u128<W: ?Sized + Write>(&mut self, writer: &mut W, value: u128) -> io::Result<()> {
        let position = usize::try_from(value).ok();
        match position.and_then(|position| self.numbers.get(position)) {
            Some(text) => writer.write_all(text.as_bytes()),
            None => writer.write_all(b"null"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    #[test]
    fn deep_objects_stand_on_one_line_and_nothing_is_lost() {
        let deep = json!({ "a": [[], {}, 1], "b": { "c": [{ "d": null }, "x"] } });
        let answer =
            json!({ "one": { "two": { "three": { "four": [deep, deep], "none": [], "more": {} } } } });
        let text = to_text(&answer, &[]).unwrap();
        assert_eq!(serde_json::from_str::<Value>(&text).unwrap(), answer);
        let lines: Vec<&str> = text.lines().map(str::trim_start).collect();
        let line = r#"{"a": [[], {}, 1], "b": {"c": [{"d": null}, "x"]}}"#;
        assert_eq!(
            lines
                .iter()
                .filter(|found| found.trim_end_matches(',') == line)
                .count(),
            2
        );
        assert!(
            lines.contains(&r#""none": [],"#) && lines.contains(&r#""more": {}"#),
            "{text}"
        );
    }
}
