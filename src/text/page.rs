//! A page of text: lines of at most 100 columns, wrapped at words, amounts at the right edge.
//!
//! Always holds: nothing that stands in a file can send control characters to the terminal; the layout does not depend
//! on the terminal; no line has trailing spaces.
//! Cost: linear in the text. Columns are counted in characters.

use std::fmt::Write as _;

use anstyle::{AnsiColor, Style};

/// How wide a page is.
pub(crate) const WIDTH: usize = 100;

/// LIMIT: where text may begin beside its head; after a longer head it goes on below.
const HEAD_MAX: usize = 60;

/// LIMIT: the narrowest column that text is wrapped into, however deep it is indented.
const NARROWEST: usize = 20;

/// How a line looks on a terminal that shows colours.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Tone {
    Plain,
    Strong,
    Good,
    Bad,
    Unsure,
}

/// A page that is being written.
#[derive(Default)]
pub(crate) struct Page {
    lines: Vec<(Tone, String)>,
}

impl Page {
    /// An empty line.
    pub(crate) fn blank(&mut self) {
        self.lines.push((Tone::Plain, String::new()));
    }

    /// A line across the page.
    pub(crate) fn rule(&mut self, letter: &str) {
        self.lines.push((Tone::Plain, letter.repeat(WIDTH)));
    }

    /// A heading.
    pub(crate) fn heading(&mut self, indent: usize, tone: Tone, text: &str) {
        self.hang(tone, indent, "", text);
    }

    /// Wrapped text.
    pub(crate) fn text(&mut self, indent: usize, text: &str) {
        self.hang(Tone::Plain, indent, "", text);
    }

    /// A head with wrapped text beside it.
    pub(crate) fn entry(&mut self, indent: usize, head: &str, text: &str) {
        self.hang(Tone::Plain, indent, head, text);
    }

    /// Two texts, the second at the right edge of the last line.
    pub(crate) fn spread(&mut self, indent: usize, tone: Tone, left: &str, right: &str) {
        let right = visible(right);
        let taken = right.chars().count() + 2;
        let mut lines = wrapped(&visible(left), column(WIDTH.saturating_sub(indent + taken)));
        let last = lines.pop().unwrap_or_default();
        for line in lines {
            self.push(tone, indent, &line);
        }
        let filled = indent + last.chars().count() + right.chars().count();
        let gap = WIDTH.saturating_sub(filled).max(2);
        self.push(tone, indent, &format!("{last}{}{right}", " ".repeat(gap)));
    }

    /// A line of a file as it stands there, however long.
    pub(crate) fn source(&mut self, number: usize, line: &str) {
        self.push(Tone::Plain, 0, &format!("{number:>5} | {}", visible(line)));
    }

    /// The page as text, styled by escape sequences.
    pub(crate) fn into_text(self) -> String {
        let mut out = String::new();
        for (tone, line) in self.lines {
            let style = tone.style();
            let _ = if style == Style::new() {
                writeln!(out, "{line}")
            } else {
                writeln!(out, "{style}{line}{style:#}")
            };
        }
        out
    }

    fn hang(&mut self, tone: Tone, indent: usize, head: &str, text: &str) {
        let mut head = visible(head);
        let mut text = visible(text);
        if indent + head.chars().count() > HEAD_MAX {
            text = format!("{head}{text}");
            head.clear();
        }
        let inner = indent + head.chars().count();
        let mut lines = wrapped(&text, column(WIDTH.saturating_sub(inner))).into_iter();
        let first = lines.next().unwrap_or_default();
        self.push(tone, indent, &format!("{head}{first}"));
        for line in lines {
            self.push(tone, inner, &line);
        }
    }

    fn push(&mut self, tone: Tone, indent: usize, text: &str) {
        let line = format!("{}{text}", " ".repeat(indent));
        self.lines.push((tone, line.trim_end().to_owned()));
    }
}

impl Tone {
    fn style(self) -> Style {
        let colour = |colour: AnsiColor| colour.on_default().bold();
        match self {
            Self::Plain => Style::new(),
            Self::Strong => Style::new().bold(),
            Self::Good => colour(AnsiColor::Green),
            Self::Bad => colour(AnsiColor::Red),
            Self::Unsure => colour(AnsiColor::Yellow),
        }
    }
}

fn column(width: usize) -> usize {
    width.max(NARROWEST)
}

/// The text cut into lines at spaces; a word that is longer than a line is cut where the line ends.
fn wrapped(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut length = 0;
    for word in text.split_whitespace() {
        let mut letters: Vec<char> = word.chars().collect();
        if length > 0 && length + 1 + letters.len() > width {
            lines.push(std::mem::take(&mut line));
            length = 0;
        }
        if length > 0 {
            line.push(' ');
            length += 1;
        }
        while letters.len() > width {
            let rest = letters.split_off(width);
            lines.push(letters.into_iter().collect());
            letters = rest;
        }
        length += letters.len();
        line.extend(letters);
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

/// The text without control characters, and without those that reverse the direction of writing.
fn visible(text: &str) -> String {
    let is_hidden = |letter: char| {
        letter.is_control()
            || matches!(letter, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    let shown = |letter: char| match letter {
        '\t' | '\n' | '\r' => ' ',
        letter if is_hidden(letter) => '\u{fffd}',
        letter => letter,
    };
    text.chars().map(shown).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(write: impl FnOnce(&mut Page)) -> Vec<String> {
        let mut page = Page::default();
        write(&mut page);
        page.into_text().lines().map(str::to_owned).collect()
    }

    #[test]
    fn no_line_is_wider_than_the_page_and_no_word_is_lost() {
        let text = "word ".repeat(60) + &"x".repeat(250) + " end";
        let lines = lines(|page| page.entry(7, "head: ", &text));
        assert!(lines.iter().all(|line| line.chars().count() <= WIDTH));
        let joined: String = lines.concat().replace(' ', "");
        assert_eq!(
            joined,
            format!("head:{}{}end", "word".repeat(60), "x".repeat(250))
        );
        assert!(lines[1].starts_with(&" ".repeat(13)), "{lines:?}");
    }

    #[test]
    fn a_long_head_does_not_push_its_text_off_the_page() {
        let lines = lines(|page| page.entry(4, &"label ".repeat(20), "35 5/8 in"));
        assert!(
            lines.iter().all(|line| line.chars().count() <= WIDTH),
            "{lines:?}"
        );
        assert!(lines.last().unwrap().ends_with("35 5/8 in"));
    }

    #[test]
    fn an_amount_stands_at_the_right_edge_of_the_last_line() {
        let long = "a long label ".repeat(12);
        let lines = lines(|page| page.spread(4, Tone::Plain, &long, "1,234.50"));
        assert!(lines.len() > 1);
        let last = lines.last().unwrap();
        assert!(
            last.ends_with("1,234.50") && last.chars().count() == WIDTH,
            "{last}"
        );
    }

    #[test]
    fn a_file_cannot_send_control_characters_to_the_terminal() {
        let lines = lines(|page| {
            page.text(0, "a\u{1b}[31mb\nc\u{202e}");
            page.spread(0, Tone::Plain, "x\u{7}", "y\u{8}");
        });
        assert_eq!(lines[0], "a\u{fffd}[31mb c\u{fffd}");
        assert!(lines[1].starts_with("x\u{fffd}") && lines[1].ends_with("y\u{fffd}"));
    }

    #[test]
    fn a_plain_line_carries_no_escape_sequence_and_a_verdict_does() {
        let text = |tone| {
            let mut page = Page::default();
            page.heading(0, tone, "holds");
            page.into_text()
        };
        assert_eq!(text(Tone::Plain), "holds\n");
        assert!(text(Tone::Good).contains("\u{1b}["));
    }
}
