//! Every code of the crate is in the list, and the other way round.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use super::CODES;

/// The texts in capitals in the sources of a folder, apart from remarks and tests.
fn codes_in(folder: &Path, found: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            if !path.ends_with("tests") {
                codes_in(&path, found);
            }
            continue;
        }
        if ["tests.rs", "codes.rs"].iter().any(|name| path.ends_with(name)) {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let code = text.split("#[cfg(test)]").next().unwrap();
        let lines = code.lines().filter(|line| !line.trim_start().starts_with("//"));
        let pieces = lines.flat_map(|line| line.split('"').skip(1).step_by(2));
        let is_code = |piece: &&str| {
            piece.len() > 3
                && piece
                    .bytes()
                    .all(|b| b.is_ascii_uppercase() || b == b'_' || b.is_ascii_digit())
                && piece.bytes().any(|b| b.is_ascii_uppercase())
        };
        found.extend(pieces.filter(is_code).map(str::to_owned));
    }
}

#[test]
fn every_code_has_a_meaning_and_every_meaning_a_code() {
    let mut found = BTreeSet::new();
    codes_in(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"), &mut found);
    let listed: BTreeSet<String> = CODES.iter().map(|(code, _)| (*code).to_owned()).collect();
    assert_eq!(
        listed.difference(&found).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "listed, and made nowhere"
    );
    assert_eq!(
        found.difference(&listed).collect::<Vec<_>>(),
        Vec::<&String>::new(),
        "made, and not listed"
    );
    assert!(CODES.is_sorted(), "in order of the alphabet");
}
