//! Writes answers to standard output and findings to standard error.
//!
//! Always holds: a reader that stops listening (`astragal quote ... | head`) is no failure; colours are dropped
//! where nobody sees them and where `NO_COLOR` is set.

use std::io::{self, Write};

use astragal_catalog::finding::Finding;
use astragal_catalog::render::{RenderStyle, render};
use astragal_catalog::source::Sources;

use crate::exit::Exit;

/// Writes an answer for a person, in colour where the terminal shows it.
pub(crate) fn write_text(text: &str, exit: Exit) -> Exit {
    written(&mut anstream::stdout().lock(), text, exit)
}

/// Writes a document as it is.
pub(crate) fn write_document(text: &str, exit: Exit) -> Exit {
    written(&mut io::stdout().lock(), text, exit)
}

/// Writes an answer for a program, or says why there is none.
pub(crate) fn write_json(answer: Result<String, String>, exit: Exit) -> Exit {
    match answer {
        Ok(text) => written(&mut io::stdout().lock(), &text, exit),
        Err(error) => {
            write_message(&format!("error: the answer could not be written: {error}\n"));
            Exit::Unwritten
        }
    }
}

/// LIMIT: how many findings are written for a person; a program gets all of them.
const SHOWN_MAX: usize = 100;

/// Writes findings with their places, and a line that counts them and ends with `closing`.
///
/// What could not be checked for want of something else is no mistake of its own: it is listed under the count.
pub(crate) fn write_findings(findings: &[Finding], sources: &Sources, closing: &str) {
    let (left, mut said): (Vec<Finding>, Vec<Finding>) = findings
        .iter()
        .cloned()
        .partition(|finding| finding.code() == "NOT_CHECKED");
    let counts = counted(&said);
    let more = said.len().saturating_sub(SHOWN_MAX);
    said.truncate(SHOWN_MAX);
    let mut text = render(&said, sources, RenderStyle { colour: true });
    if more > 0 {
        text += &format!("... and {more} more; put these right first\n\n");
    }
    text += &format!("{counts}{closing}\n");
    for finding in left {
        text += &format!("  {}\n", finding.message());
    }
    write_message(&text);
}

/// Says that an argument names nothing that is there, and what is there.
pub(crate) fn usage(message: &str, help: &str) -> Exit {
    write_message(&format!("error: {message}\n  help: {help}\n"));
    Exit::Usage
}

/// Writes a message. Where standard error is closed, nobody is there to be told.
pub(crate) fn write_message(text: &str) {
    let _ = anstream::stderr().lock().write_all(text.as_bytes());
}

/// How many errors and warnings there are, in words; nothing when there are none.
fn counted(findings: &[Finding]) -> String {
    let errors = findings.iter().filter(|finding| finding.is_error()).count();
    let count = |count: usize, one: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        more => Some(format!("{more} {one}s")),
    };
    let counts = [count(errors, "error"), count(findings.len() - errors, "warning")];
    counts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn written(out: &mut dyn Write, text: &str, exit: Exit) -> Exit {
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => exit,
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => exit,
        Err(error) => {
            write_message(&format!("error: the answer could not be written: {error}\n"));
            Exit::Unwritten
        }
    }
}
