//! What the files say to people: "check", never that something is approved.

use astragal_model::Effect;

use crate::code_file::{BUILDING, CodeFile};
use crate::energy_code::RATINGS;

/// Words that say more than a check can.
const TOO_MUCH: [&str; 9] = [
    "approved",
    "complies",
    "compliant",
    "legal",
    "certified safe",
    "guarantee",
    "permitted",
    "passes",
    "is safe",
];

fn said_by(file: &CodeFile) -> Vec<String> {
    let of = file.catalog().declarations();
    let rules = of.rules.iter().map(|rule| rule.message.written(file.catalog()));
    let rooms = of
        .room_rules
        .iter()
        .map(|rule| rule.message.written(file.catalog()));
    let notices = of
        .notices
        .iter()
        .map(|notice| notice.text.written(file.catalog()));
    rules.chain(rooms).chain(notices).collect()
}

const FILES: [(&str, &str); 8] = [
    ("irc-2018", BUILDING),
    ("irc-2021", BUILDING),
    ("irc-2024", BUILDING),
    ("ibc-2021", BUILDING),
    ("iecc-2021", RATINGS),
    ("iecc-2024", RATINGS),
    ("energy-star-7", RATINGS),
    ("lead-safe-40-cfr-745", ""),
];

#[test]
fn no_file_says_that_something_is_approved() {
    for (name, declarations) in FILES {
        let said = said_by(&CodeFile::load(name, declarations));
        assert!(!said.is_empty());
        for text in said {
            let plain = text.to_lowercase();
            let found = TOO_MUCH.iter().find(|word| plain.contains(*word));
            assert!(found.is_none(), "{name} says `{found:?}`: {text}");
        }
    }
}

#[test]
fn every_rule_of_a_code_that_blocks_says_check_and_where_it_stands() {
    for (name, declarations) in FILES {
        let file = CodeFile::load(name, declarations);
        let of = file.catalog().declarations();
        for rule in &of.rules {
            // Geometry has no section: two heights of one opening.
            let is_geometry = rule.id.as_str() == "lowest-part-below-bottom";
            assert_eq!(rule.basis.is_none(), is_geometry, "{name} {}", rule.id);
            if rule.authority.as_str() == "code" && rule.effect == Effect::Block {
                let text = rule.message.written(file.catalog());
                assert!(text.starts_with("Check "), "{name} {}: {text}", rule.id);
            }
        }
        assert!(of.room_rules.iter().all(|rule| rule.basis.is_some()), "{name}");
    }
}

#[test]
fn every_code_file_of_the_examples_is_looked_at() {
    let folder = crate::code_file::examples().join("codes");
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .filter_map(|name| name.strip_suffix(".toml").map(str::to_owned))
        .collect();
    names.sort();
    let mut looked_at: Vec<&str> = FILES
        .iter()
        .map(|(name, _)| *name)
        .chain(["wind-asce-7-16"])
        .collect();
    looked_at.sort_unstable();
    assert_eq!(names, looked_at);
}

/// A size fails only where the exception for replacements is ruled out, so that what it says promises none.
#[test]
fn a_size_that_fails_is_not_said_to_be_excused() {
    let mut looked_at = 0;
    for (name, declarations) in FILES {
        let file = CodeFile::load(name, declarations);
        let rules = &file.catalog().declarations().rules;
        for rule in rules
            .iter()
            .filter(|rule| rule.id.as_str().starts_with("escape-"))
        {
            let text = rule.message.written(file.catalog());
            let is_asked = rule.id.as_str() == "escape-exception";
            assert_eq!(text.contains("excused"), is_asked, "{name} {}: {text}", rule.id);
            looked_at += 1;
        }
    }
    assert_eq!(looked_at, 4 * 7);
}

/// A notice is shown as well where its condition is not known: what it says of the house must be so then too.
#[test]
fn a_notice_about_another_opening_or_about_the_room_says_if() {
    for (name, declarations) in FILES.iter().filter(|(_, declarations)| *declarations == BUILDING) {
        let file = CodeFile::load(name, declarations);
        let notices = &file.catalog().declarations().notices;
        for id in ["escape-elsewhere", "room-not-asked"] {
            let notice = notices.iter().find(|notice| notice.id.as_str() == id);
            let text = notice.map(|notice| notice.text.written(file.catalog()));
            assert!(text.is_some_and(|text| text.starts_with("If ")), "{name} {id}");
        }
    }
}
