//! The pages that teach the format: their samples become files, and their answers are what the program says.
//!
//! `docs/catalog.md` builds one library from nothing and `docs/reference.md` one that has every key. A page is walked from
//! top to bottom in an empty folder. Beside `write PATH` and `append PATH` a comment above a block may say
//!
//! - `change PATH`: lines with `-` go out, lines with `+` come in, the others find the place, which must be the only one;
//! - `mistake VERB PATH`: done, shown by the `run` that follows, which must fail, and undone;
//! - `run astragal ...`: the block is all that the program says. `UPDATE_EXPECT=1` writes it anew;
//! - `end astragal ...`: the block is the end of what it says, and the exit code is 0.

#![expect(
    clippy::panic,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;
mod samples;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use program::{program, without_times};
use samples::{Sample, carry_out, samples};

/// A page on its way from top to bottom.
struct Walk<'a> {
    folder: &'a Path,
    /// What the files of a mistake held before it: nothing for a file that was not there.
    before: BTreeMap<PathBuf, Option<String>>,
    /// The blocks of answers that differ: the line of the fence, and what the program said.
    differing: Vec<(usize, String)>,
}

impl Walk<'_> {
    fn step(&mut self, sample: &Sample) {
        match sample.verb.as_str() {
            "mistake" => self.mistake(sample),
            "change" => change(sample, self.folder),
            "run" => self.run(sample),
            "end" => self.end(sample),
            _ => assert!(
                carry_out(sample, self.folder),
                "line {}: what is `{}`?",
                sample.line,
                sample.verb
            ),
        }
    }

    fn mistake(&mut self, sample: &Sample) {
        let (verb, subject) = sample.subject.split_once(' ').expect("a verb and a path");
        let path = self.folder.join(subject);
        let before = fs::read_to_string(&path).ok();
        self.before.entry(path).or_insert(before);
        let (verb, subject) = (verb.to_owned(), subject.to_owned());
        self.step(&Sample {
            verb,
            subject,
            ..sample.clone()
        });
    }

    fn run(&mut self, sample: &Sample) {
        let (code, said) = answer(&sample.subject, self.folder);
        let is_mistake = !self.before.is_empty();
        assert!(
            !is_mistake || code != 0,
            "line {}: the mistake is none\n{said}",
            sample.line
        );
        for (path, text) in std::mem::take(&mut self.before) {
            match text {
                Some(text) => fs::write(path, text).expect("the file as it was"),
                None => fs::remove_file(path).expect("the file is gone again"),
            }
        }
        if without_times(&said) != without_times(&sample.text) {
            self.differing.push((sample.line, said));
        }
    }

    fn end(&self, sample: &Sample) {
        assert!(
            self.before.is_empty(),
            "line {}: a mistake is shown by `run`",
            sample.line
        );
        let (code, said) = answer(&sample.subject, self.folder);
        assert!(
            code == 0 && said.ends_with(&format!("\n{}", sample.text)),
            "line {}: it ends otherwise\n{said}",
            sample.line
        );
    }
}

/// Exit code and all that the program says, run in a folder.
fn answer(command: &str, folder: &Path) -> (i32, String) {
    let mut words = command.split(' ');
    assert_eq!(words.next(), Some("astragal"), "{command}");
    let output = program()
        .current_dir(folder)
        .args(words)
        .output()
        .expect("the program starts");
    let text = |bytes| String::from_utf8(bytes).expect("answers are UTF-8");
    let said = text(output.stdout) + &text(output.stderr);
    let code = output.status.code().expect("an exit code");
    (code, format!("{}\n", said.trim_end()))
}

/// Carries out a block of lines that go out and come in.
fn change(sample: &Sample, folder: &Path) {
    let path = folder.join(&sample.subject);
    let text = fs::read_to_string(&path).unwrap_or_else(|error| panic!("line {}: {error}", sample.line));
    let side = |left_out: char| -> String {
        let lines = sample.text.lines().filter(|line| !line.starts_with(left_out));
        lines
            .flat_map(|line| [line.get(1..).unwrap_or(""), "\n"])
            .collect()
    };
    let (old, new) = (side('+'), side('-'));
    let found = text.matches(&old).count();
    assert_eq!(
        found, 1,
        "line {}: in {} these lines stand {found} times\n{old}",
        sample.line, sample.subject
    );
    fs::write(path, text.replacen(&old, &new, 1)).expect("the changed file");
}

/// Walks a page; at its end the library must be without errors.
fn walk(page: &str, library: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(page);
    let text = fs::read_to_string(&path).expect("the page");
    let folder = tempfile::tempdir().expect("an empty folder");
    let mut walk = Walk {
        folder: folder.path(),
        before: BTreeMap::new(),
        differing: Vec::new(),
    };
    for sample in samples(&text) {
        walk.step(&sample);
    }
    assert!(walk.before.is_empty(), "the last mistake is not shown");
    let (code, said) = answer(&format!("astragal check {library}"), folder.path());
    assert_eq!(code, 0, "{page}\n{said}");
    if walk.differing.is_empty() {
        return;
    }
    if std::env::var_os("UPDATE_EXPECT").is_some() {
        fs::write(&path, rewritten(&text, &walk.differing)).expect("the page, written anew");
        return;
    }
    let lines: String = walk
        .differing
        .iter()
        .map(|(line, said)| format!("{page}:{line}: the program says\n{said}\n"))
        .collect();
    panic!("{lines}UPDATE_EXPECT=1 writes the page anew");
}

/// The page with other answers in the blocks that begin on these lines.
fn rewritten(page: &str, answers: &[(usize, String)]) -> String {
    let mut lines: Vec<&str> = page.lines().collect();
    for (line, answer) in answers.iter().rev() {
        let length = lines[*line..]
            .iter()
            .position(|line| *line == "```")
            .expect("the end of the block");
        lines.splice(*line..line + length, answer.lines());
    }
    lines.into_iter().flat_map(|line| [line, "\n"]).collect()
}

#[test]
fn the_page_that_teaches_builds_a_library_and_says_what_the_program_says() {
    walk("docs/catalog.md", "acorn");
}

#[test]
fn the_reference_is_a_library_that_the_program_reads() {
    walk("docs/reference.md", "library");
}

const DEDUCTIONS: &str = "acorn/windows/deductions.csv";
const AMOUNTS: &str = "acorn/book/amounts.csv";

/// What a spreadsheet did: to which file, how it looks then, and a piece of what the program says if it is an error.
const SPREADSHEETS: [(&str, &str, &[u8], Option<&str>); 18] = [
    ("sound", DEDUCTIONS, b"install,deduction\npocket,1/4\n", None),
    (
        "day and month",
        DEDUCTIONS,
        b"install,deduction\npocket,8-May\n",
        Some("was it a fraction"),
    ),
    (
        "month and day",
        DEDUCTIONS,
        b"install,deduction\npocket,5-Aug\n",
        Some("was it a fraction"),
    ),
    (
        "a whole date",
        DEDUCTIONS,
        b"install,deduction\npocket,5/8/2026\n",
        Some("was it a fraction"),
    ),
    (
        "decimal comma",
        AMOUNTS,
        b"item,amount\nsetting,\"12,50\"\n",
        Some("write a decimal point"),
    ),
    (
        "comma that splits",
        AMOUNTS,
        b"item,amount\nsetting,12,50\n",
        Some("RAGGED_ROW"),
    ),
    (
        "thousands",
        AMOUNTS,
        b"item,amount\nsetting,\"1,250.00\"\n",
        Some("write `1250.00`"),
    ),
    (
        "currency",
        AMOUNTS,
        b"item,amount\nsetting,$12.50\n",
        Some("write the number alone"),
    ),
    (
        "semicolons",
        DEDUCTIONS,
        b"install;deduction\npocket;1/4\n",
        Some("by semicolons; expected commas"),
    ),
    (
        "tabs",
        DEDUCTIONS,
        b"install\tdeduction\npocket\t1/4\n",
        Some("by tabs; expected commas"),
    ),
    (
        "byte-order mark",
        AMOUNTS,
        b"\xef\xbb\xbfitem,amount\nsetting,1\n",
        None,
    ),
    (
        "other encoding",
        DEDUCTIONS,
        b"install,deduction,#n\npocket,1/4,\xe9\n",
        Some("NOT_UTF8"),
    ),
    (
        "empty columns",
        DEDUCTIONS,
        b"install,deduction,,\npocket,1/4,,\n",
        None,
    ),
    (
        "a column without a name",
        DEDUCTIONS,
        b"install,deduction,\npocket,1/4,new\n",
        Some("EMPTY_COLUMN_NAME"),
    ),
    (
        "failed formula",
        DEDUCTIONS,
        b"install,deduction\npocket,#REF!\n",
        Some("formula of the spreadsheet failed"),
    ),
    (
        "narrow column",
        DEDUCTIONS,
        b"install,deduction\npocket,####\n",
        Some("too narrow"),
    ),
    (
        "shortened",
        AMOUNTS,
        b"item,amount\nsetting,1.2E+05\n",
        Some("shortened this number"),
    ),
    (
        "line ends and empty rows",
        DEDUCTIONS,
        b"install,deduction\r\n,\r\npocket,1/4\r\n\r\n",
        None,
    ),
];

/// The table "What a spreadsheet does to a file" of `docs/catalog.md`, row by row.
#[test]
fn a_spreadsheet_does_to_a_file_what_the_page_says() {
    for (name, path, bytes, expected) in SPREADSHEETS {
        let folder = tempfile::tempdir().expect("an empty folder");
        for sample in samples(SMALLEST_WITH_TABLES) {
            assert!(carry_out(&sample, folder.path()), "{}", sample.verb);
        }
        fs::write(folder.path().join(path), bytes).expect("the file of the spreadsheet");
        let (code, said) = answer("astragal check acorn", folder.path());
        match expected {
            Some(piece) => assert!(code == 5 && said.contains(piece), "{name}\n{said}"),
            None => assert_eq!(code, 0, "{name}\n{said}"),
        }
    }
}

const SMALLEST_WITH_TABLES: &str = r#"
<!-- sample: write acorn/library.toml -->
```toml
format = 1
library = { id = "acorn", label = "Acorn" }
```
<!-- sample: write acorn/windows/catalog.toml -->
```toml
format = 1
catalog = { id = "windows", label = "Acorn windows", length = { unit = "in" } }

[[attribute]]
id = "install"
label = "Installation"
options = [{ id = "pocket", label = "Pocket" }]
standard = "pocket"

[[figure]]
id = "deduction"
label = "Deducted here"
table = "deductions.csv"
type = "length"

[[price]]
id = "setting"
label = "Setting the window"
```
<!-- sample: write acorn/windows/deductions.csv -->
```csv
install,deduction
pocket,1/4
```
<!-- sample: write acorn/book/book.toml -->
```toml
format = 1
book = { id = "now", label = "Now", catalog = "windows", currency = "USD", round_to = "0.01", amounts = "amounts.csv" }
```
<!-- sample: write acorn/book/amounts.csv -->
```csv
item,amount
setting,95.00
```
"#;
