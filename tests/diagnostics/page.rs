//! The page `docs/diagnostics.md`: every case with the lines as written and the finding as printed, and all codes.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use astragal_catalog::codes::CODES;

use crate::Copy;
use crate::cases::{Case, Edit, GROUPS};

const HEAD: &str = "\
# Mistakes, and what the program says

The mistakes that are made most, each in a small library that is right but for it. First the lines as written, then
what is printed. A finding says in its first line what is wrong and, in brackets, its code; then where; then, under
`help`, what to write. The rows and columns of a sheet are counted as a spreadsheet counts.

`astragal check library` finds them all at once, before anything is quoted. Under the last finding stands how many there
are, and what could not be checked because of them: a price book, say, while its catalog has errors.

This page is written by the tests from what the program prints.
";

const CODES_HEAD: &str = "
## All codes

Every finding has one. The text of a finding may change; its code stays.

| code | meaning |
|---|---|
";

/// The page.
pub(crate) fn page() -> String {
    let mut page = HEAD.to_owned();
    for group in GROUPS {
        let _ = write!(page, "\n## {}\n", group.title);
        for case in group.cases {
            add(&mut page, case);
        }
    }
    page += CODES_HEAD;
    for (code, meaning) in CODES {
        let _ = writeln!(page, "| `{code}` | {} |", meaning.replace('|', "\\|"));
    }
    page
}

fn add(page: &mut String, case: &Case) {
    let (_, _, err) = Copy::new(Some(case)).run(case.file, "text");
    let _ = write!(page, "\n### {}\n\n", case.title);
    if let Some(lines) = lines(case) {
        let _ = write!(page, "In `{}`:\n\n```text\n{lines}\n```\n\n", case.file);
    }
    let _ = write!(page, "```text\n{}\n```\n", finding(&err));
    if !case.advice.is_empty() {
        let _ = write!(page, "\n{}\n", case.advice);
    }
}

/// What is printed without the count at its end.
fn finding(printed: &str) -> &str {
    let end = printed.rfind("\n\n").expect("a blank line after each finding");
    printed.get(..end).expect("a piece of it").trim_end()
}

/// The lines in which the mistake is, or nothing where it cannot be seen.
fn lines(case: &Case) -> Option<String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/diagnostics/base");
    let before = fs::read_to_string(path.join(case.file)).expect("the file of the case");
    let after = String::from_utf8(case.edit.apply(&before, case.title)).ok()?;
    let (start, length) = match &case.edit {
        Edit::Replace(find, with) => (before.find(find)?, with.trim_end().len()),
        Edit::All(..) => (0, after.trim_end().len()),
        Edit::Mark | Edit::Utf16 => return None,
    };
    let skipped = after.get(start..)?.len() - after.get(start..)?.trim_start().len();
    let start = start + skipped.min(length);
    let end = start + length.saturating_sub(skipped);
    let from = after.get(..start)?.rfind('\n').map_or(0, |at| at + 1);
    let to = after.get(end..)?.find('\n').map_or(after.len(), |at| end + at);
    let lines = after.get(from..to)?;
    if !lines.trim().is_empty() {
        return Some(lines.to_owned());
    }
    // What was taken out cannot be shown; of a short file the rest can.
    (after.lines().count() <= 6).then(|| after.trim_end().to_owned())
}
