//! How wide a text will be, and where its lines break.
//!
//! `28 in` in letters 2.6 mm high is 5.8 mm wide, before any program has laid it out.
//!
//! Always holds: a width is that of Arial and the faces made to its measure, rounded up; a letter that is not in the table
//! counts as a full square, which is more than it is.
//! Source: the advance widths of Liberation Sans Regular and Bold 2, which has the widths of Arial; read from the files.

/// Faces of one width. Liberation Sans and Helvetica are set alike.
pub(crate) const FAMILY: &str = "Arial, Helvetica, 'Liberation Sans', sans-serif";

/// Widths of space to tilde, in thousandths of the size.
const REGULAR: [i64; 95] = [
    278, 278, 355, 557, 557, 890, 667, 191, 334, 334, 390, 584, 278, 334, 278, 278, 557, 557, 557, 557, 557,
    557, 557, 557, 557, 557, 278, 278, 584, 584, 584, 557, 1016, 667, 667, 723, 723, 667, 611, 778, 723, 278,
    500, 667, 557, 834, 723, 778, 667, 778, 723, 667, 611, 723, 667, 944, 667, 667, 611, 278, 278, 278, 470,
    557, 334, 557, 557, 500, 557, 557, 278, 557, 557, 223, 223, 500, 223, 834, 557, 557, 557, 557, 334, 500,
    278, 557, 500, 723, 500, 500, 500, 334, 260, 334, 584,
];
const BOLD: [i64; 95] = [
    278, 334, 475, 557, 557, 890, 723, 238, 334, 334, 390, 584, 278, 334, 278, 278, 557, 557, 557, 557, 557,
    557, 557, 557, 557, 557, 334, 334, 584, 584, 584, 611, 976, 723, 723, 723, 723, 667, 611, 778, 723, 278,
    557, 723, 611, 834, 723, 778, 667, 778, 723, 667, 611, 723, 667, 944, 667, 667, 611, 334, 278, 334, 584,
    557, 334, 557, 611, 557, 611, 557, 334, 611, 611, 278, 278, 557, 278, 890, 611, 611, 611, 611, 390, 557,
    334, 611, 557, 778, 557, 557, 500, 390, 280, 390, 584,
];

/// How a text is set: its size in hundredths of a millimetre, and its weight.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Face {
    pub(crate) size: i64,
    pub(crate) bold: bool,
}

impl Face {
    pub(crate) const fn regular(size: i64) -> Face {
        Face { size, bold: false }
    }

    pub(crate) const fn bold(size: i64) -> Face {
        Face { size, bold: true }
    }

    /// The height of a capital, which is that of a digit.
    pub(crate) fn capital(self) -> i64 {
        self.size * 69 / 100
    }

    /// How far letters reach below the line they stand on.
    pub(crate) fn below(self) -> i64 {
        self.size * 22 / 100
    }

    /// From one line to the next.
    pub(crate) fn line(self) -> i64 {
        self.size * 130 / 100
    }

    /// The width of a text, rounded up.
    pub(crate) fn width(self, text: &str) -> i64 {
        let thousandths: i64 = text.chars().map(|letter| self.thousandths(letter)).sum();
        (thousandths * self.size + 999) / 1000
    }

    fn thousandths(self, letter: char) -> i64 {
        let table = if self.bold { &BOLD } else { &REGULAR };
        let position = u32::from(letter).checked_sub(u32::from(' '));
        let known = position.and_then(|position| usize::try_from(position).ok());
        known
            .and_then(|position| table.get(position))
            .copied()
            .unwrap_or(1_100)
    }

    /// A text in lines no wider than `most`; a word wider than that is broken.
    pub(crate) fn wrapped(self, text: &str, most: i64) -> Vec<String> {
        let mut lines = Vec::new();
        let mut line = String::new();
        for word in text.split_whitespace() {
            let longer = if line.is_empty() {
                word.to_owned()
            } else {
                format!("{line} {word}")
            };
            if self.width(&longer) <= most {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for letter in word.chars() {
                if !line.is_empty() && self.width(&line) + self.width(letter.encode_utf8(&mut [0; 4])) > most
                {
                    lines.push(std::mem::take(&mut line));
                }
                line.push(letter);
            }
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }
}

/// A text as XML can hold it, on one line: controls become spaces, what XML forbids and what turns the direction of
/// writing around is left out.
pub(crate) fn clean(text: &str) -> String {
    let kept = text.chars().filter_map(|letter| match letter {
        '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' | '\u{FFFE}' | '\u{FFFF}' => None,
        letter if letter.is_control() => Some(' '),
        letter => Some(letter),
    });
    kept.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_asked_for_and_no_letter_is_lost() {
        let face = Face::regular(260);
        for text in [
            "a b c",
            "Hinged left, opens out; tempered glass",
            "Donaudampfschifffahrtsgesellschaft x",
            "…×½",
            "",
        ] {
            for most in [300, 800, 2_000, 9_000] {
                let lines = face.wrapped(text, most);
                assert!(
                    lines.iter().all(|line| face.width(line) <= most),
                    "{lines:?} in {most}"
                );
                let kept: String = lines.concat().split_whitespace().collect();
                assert_eq!(kept, text.split_whitespace().collect::<String>());
            }
        }
    }

    #[test]
    fn what_xml_forbids_is_left_out() {
        assert_eq!(clean("a\u{0}b\nc\u{202E}d\u{FFFF}é"), "a b cdé");
    }
}
