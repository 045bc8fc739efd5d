//! Samples in the Markdown pages under `docs`: blocks that a test turns into files.
//!
//! A sample is a fenced block under a comment that says what to do with it, invisible on the printed page:
//!
//! ````text
//! <!-- sample: append acorn/catalog.toml -->
//! ```toml
//! [[measure]]
//! id = "opening_width"
//! ```
//! ````
//!
//! The first word is the verb (`write` a file anew, `append` to it; a test may know others), the rest is its subject, mostly
//! a path. Always holds: every comment that begins `<!-- sample` is followed at once by a fenced block, and every fenced block
//! of the languages toml, csv and json has such a comment; anything else fails the test that asked.

#![allow(
    dead_code,
    reason = "each test that includes this module uses another part of it"
)]

use std::fs;
use std::path::Path;

/// One fenced block with what its comment says.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Sample {
    /// What to do with it: `write`, `append`, or a word that the test knows.
    pub(crate) verb: String,
    /// The rest of the comment, mostly a path.
    pub(crate) subject: String,
    /// The language after the fence.
    pub(crate) language: String,
    /// The lines between the fences, each with its line feed.
    pub(crate) text: String,
    /// The line of the page on which the block begins.
    pub(crate) line: usize,
}

/// Returns the samples of a page in order.
///
/// # Panics
/// Where a comment has no block, a block of toml, csv or json no comment, or a fence no end.
pub(crate) fn samples(page: &str) -> Vec<Sample> {
    let lines: Vec<&str> = page.lines().collect();
    let mut samples = Vec::new();
    let mut at = 0;
    while at < lines.len() {
        let Some(language) = lines[at].strip_prefix("```") else {
            assert!(
                !lines[at].starts_with("<!-- sample")
                    || lines.get(at + 1).is_some_and(|next| next.starts_with("```")),
                "line {}: a sample's comment without a block under it",
                at + 1
            );
            at += 1;
            continue;
        };
        let length = lines[at + 1..]
            .iter()
            .position(|line| *line == "```")
            .unwrap_or_else(|| panic!("line {}: a fence without its end", at + 1));
        let comment = at
            .checked_sub(1)
            .and_then(|above| lines[above].strip_prefix("<!-- sample: "))
            .and_then(|rest| rest.strip_suffix(" -->"));
        if let Some(comment) = comment {
            let (verb, subject) = comment.split_once(' ').unwrap_or((comment, ""));
            samples.push(Sample {
                verb: verb.to_owned(),
                subject: subject.to_owned(),
                language: language.to_owned(),
                text: lines[at + 1..=at + length]
                    .iter()
                    .flat_map(|line| [line, "\n"])
                    .collect(),
                line: at + 1,
            });
        } else {
            assert!(
                !["toml", "csv", "json"].contains(&language),
                "line {}: a block of {language} that no test reads",
                at + 1
            );
        }
        at += length + 2;
    }
    samples
}

/// Writes or appends a sample under a folder; says whether the verb was one of these two.
///
/// # Panics
/// Where the file cannot be written, or `append` finds no file.
pub(crate) fn carry_out(sample: &Sample, folder: &Path) -> bool {
    let path = folder.join(&sample.subject);
    let before = match sample.verb.as_str() {
        "write" => String::new(),
        "append" => fs::read_to_string(&path)
            .unwrap_or_else(|error| panic!("line {}: {}: {error}", sample.line, sample.subject)),
        _ => return false,
    };
    let gap = if before.is_empty() { "" } else { "\n" };
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent).expect("the folder of a sample");
    }
    fs::write(&path, format!("{before}{gap}{}", sample.text)).expect("the file of a sample");
    true
}
