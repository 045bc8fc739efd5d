//! Writes answers as indented JSON in which the numbers of `extra` keep their digits.
//!
//! `1.50` that a caller wrote stays `1.50`. Such a number is serialised as a position in a table of texts, in a type
//! that nothing else here uses (128 bits); the formatter writes the text instead.

use std::io::{self, Write};

use serde::Serialize;
use serde_json::ser::{Formatter, PrettyFormatter};

/// The answer as indented JSON with a line break at its end; `numbers` are the texts of the numbers of `extra`.
pub(crate) fn to_text(answer: &impl Serialize, numbers: &[String]) -> Result<String, String> {
    let mut bytes = Vec::new();
    let formatter = KeepingNumbers {
        pretty: PrettyFormatter::new(),
        numbers,
    };
    let mut serializer = serde_json::Serializer::with_formatter(&mut bytes, formatter);
    answer
        .serialize(&mut serializer)
        .map_err(|error| error.to_string())?;
    bytes.push(b'\n');
    String::from_utf8(bytes).map_err(|error| error.to_string())
}

/// Indents, and writes 128-bit numbers as the texts that they are positions of.
struct KeepingNumbers<'a> {
    pretty: PrettyFormatter<'static>,
    numbers: &'a [String],
}

macro_rules! as_pretty {
    ($($name:ident($($argument:ident: $kind:ty),*);)*) => {
        $(fn $name<W: ?Sized + Write>(&mut self, writer: &mut W $(, $argument: $kind)*) -> io::Result<()> {
            self.pretty.$name(writer $(, $argument)*)
        })*
    };
}

impl Formatter for KeepingNumbers<'_> {
    as_pretty! {
        begin_array();
        end_array();
        begin_array_value(first: bool);
        end_array_value();
        begin_object();
        end_object();
        begin_object_key(first: bool);
        begin_object_value();
        end_object_value();
    }

    fn write_u128<W: ?Sized + Write>(&mut self, writer: &mut W, value: u128) -> io::Result<()> {
        let position = usize::try_from(value).ok();
        match position.and_then(|position| self.numbers.get(position)) {
            Some(text) => writer.write_all(text.as_bytes()),
            None => writer.write_all(b"null"),
        }
    }
}
