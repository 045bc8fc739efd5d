//! The known word that a misspelt word was probably meant to be.
//!
//! Words are compared by the least number of letters to insert, leave out, change or swap with the
//! neighbour: `standart` is 1 from `standard`. A word is near when a third of its letters or fewer
//! differ, and at least one and at most three may.
//!
//! What always holds: of equally near words the first given is the answer.
//! Cost: O(length squared) a word. Stops at words of [`LETTERS_LIMIT`] letters, which have no near word.
//! Source: the optimal string alignment distance, from memory.

/// LIMIT: the longest word that is compared, in letters.
pub const LETTERS_LIMIT: usize = 64;

/// The nearest of the known words, if one is near.
///
/// # Examples
///
/// A slip of one letter, and a word that is like none:
///
/// ```
/// use astragal_catalog::nearest::nearest;
///
/// assert_eq!(nearest("standart", ["options", "standard"]), Some("standard"));
/// assert_eq!(nearest("colour", ["options", "standard"]), None);
/// ```
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let letters: Vec<char> = word.chars().take(LETTERS_LIMIT + 1).collect();
    let allowed = (letters.len() / 3).clamp(1, 3);
    let near = known.into_iter().filter_map(|candidate| {
        let other: Vec<char> = candidate.chars().take(LETTERS_LIMIT + 1).collect();
        let too_long = letters.len().max(other.len()) > LETTERS_LIMIT;
        if too_long || letters.len().abs_diff(other.len()) > allowed {
            return None;
        }
        let distance = distance(&letters, &other, allowed);
        (distance <= allowed && distance < letters.len()).then_some((distance, candidate))
    });
    near.min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// "`a`, `b`, `c`", cut after thirty words.
pub(crate) fn quoted_list<'a>(words: impl IntoIterator<Item = &'a str>) -> String {
    const WORDS_LIMIT: usize = 30;
    let words: Vec<&str> = words.into_iter().collect();
    let shown: Vec<String> = words
        .iter()
        .take(WORDS_LIMIT)
        .map(|word| format!("`{word}`"))
        .collect();
    match words.len().saturating_sub(WORDS_LIMIT) {
        0 => shown.join(", "),
        more => format!("{} and {more} more", shown.join(", ")),
    }
}

/// The distance, or any number above `most` when it is more than that.
fn distance(a: &[char], b: &[char], most: usize) -> usize {
    let mut before_last: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, letter) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, other) in b.iter().enumerate() {
            let cell = |row: &[usize], at: usize| row.get(at).copied().unwrap_or(usize::MAX / 2);
            let change = cell(&last, j) + usize::from(letter != other);
            let mut best = change.min(cell(&last, j + 1) + 1).min(cell(&row, j) + 1);
            let previous =
                |letters: &[char], at: usize| at.checked_sub(1).and_then(|at| letters.get(at).copied());
            if previous(a, i) == Some(*other) && previous(b, j) == Some(*letter) {
                best = best.min(cell(&before_last, j.saturating_sub(1)) + 1);
            }
            row.push(best);
        }
        before_last = std::mem::replace(&mut last, row);
        // A swap reaches back two rows, so both must be beyond.
        if before_last
            .iter()
            .chain(&last)
            .min()
            .is_some_and(|least| *least > most)
        {
            return usize::MAX;
        }
    }
    last.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_kind_of_slip_is_one_letter() {
        let one = |a: &str, b: &str| {
            distance(
                &a.chars().collect::<Vec<_>>(),
                &b.chars().collect::<Vec<_>>(),
                usize::MAX,
            )
        };
        for (row, slip, distance) in [
            ("same", "label", 0),
            ("changed", "lebel", 1),
            ("left out", "labl", 1),
            ("inserted", "labbel", 1),
            ("swapped", "lable", 1),
            ("two slips", "lbale", 2),
            ("nothing alike", "zzzzz", 5),
        ] {
            assert_eq!(one(slip, "label"), distance, "{row}");
        }
    }

    #[test]
    fn a_word_of_one_letter_is_near_to_no_other() {
        assert_eq!(nearest("a", ["b", "c"]), None);
    }

    #[test]
    fn very_long_words_are_not_compared() {
        let long = "x".repeat(LETTERS_LIMIT + 1);
        assert_eq!(nearest(&long, [long.as_str()]), None);
        let longest = "x".repeat(LETTERS_LIMIT);
        assert_eq!(nearest(&longest, [longest.as_str()]), Some(longest.as_str()));
    }
}
