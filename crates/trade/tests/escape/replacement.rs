//! The exception for replacement windows: never met, always a question for the official.

use super::text_rows::{maybe, rows, said};
use super::{device, edition, window};
use astragal_trade::escape::{Excuse, Existing, Opening, Verdict, opening};

/// IEBC 505.3 (read), IRC 2018 R310.2.5 and IRC 2021 R310.5 (second hand). The new window is 20 x 40 in, 800 sq in: too small.
const CONDITIONS: &str = "
    row                                  | largest | same | old area | change | answer
    all three hold                       | yes     | yes  | ?        | no     | may be excused
    another operation, equal area        | yes     | no   | 800      | no     | may be excused
    another operation, greater area      | yes     | no   | 799.99   | no     | may be excused
    another operation, smaller area      | yes     | no   | 800.01   | no     | not: SameOperationOrNoLess
    the same operation, smaller area     | yes     | yes  | 900      | no     | may be excused
    operation not known, equal area      | yes     | ?    | 800      | no     | may be excused
    operation not known, smaller area    | yes     | ?    | 900      | no     | open: existing_operation
    another operation, area not known    | yes     | no   | ?        | no     | open: existing_clear_area
    neither known                        | yes     | ?    | ?        | no     | open: existing_operation, existing_clear_area
    a larger standard size fits          | no      | yes  | ?        | no     | not: LargestStandardSize
    whether a larger fits is not known   | ?       | yes  | ?        | no     | open: largest_standard_size_fits
    a change of occupancy                | yes     | yes  | ?        | yes    | not: NoChangeOfOccupancy
    change of occupancy not known        | yes     | yes  | ?        | ?      | open: change_of_occupancy
    two fail                             | no      | yes  | ?        | yes    | not: LargestStandardSize, NoChangeOfOccupancy
    one fails, one not known             | no      | yes  | ?        | ?      | not: LargestStandardSize
";

fn shown(excuse: &Excuse) -> String {
    match excuse {
        Excuse::MayBeExcused { .. } => "may be excused".to_owned(),
        Excuse::NotExcused(conditions) => {
            let names: Vec<String> = conditions.iter().map(|it| format!("{it:?}")).collect();
            format!("not: {}", names.join(", "))
        }
        Excuse::Undecided(missing) => {
            let ids: Vec<&str> = missing.iter().map(|fact| fact.id()).collect();
            format!("open: {}", ids.join(", "))
        }
        other => format!("{other:?}"),
    }
}

fn excused(opened: Opening) -> Opening {
    Opening {
        existing: Some(Existing {
            largest_standard_size_fits: Some(true),
            same_operation: Some(true),
            clear_area: None,
            change_of_occupancy: Some(false),
        }),
        ..opened
    }
}

#[test]
fn a_replacement_may_be_excused_when_all_three_conditions_hold() {
    for row in rows(CONDITIONS) {
        let opened = Opening {
            existing: Some(Existing {
                largest_standard_size_fits: said(row[1]),
                same_operation: said(row[2]),
                clear_area: maybe(row[3]),
                change_of_occupancy: said(row[4]),
            }),
            ..window("20 x 40", "30", "120")
        };
        for by in ["IRC 2018", "IRC 2021", "IRC 2024", "IBC 2018", "IBC 2021"] {
            let answer = opening(edition(by), &opened).unwrap();
            assert_eq!(shown(&answer.excuse), row[5], "{}, {by}", row[0]);
            assert_eq!(answer.verdict, Verdict::FallsShort, "{}, {by}", row[0]);
        }
    }
}

#[test]
fn only_sizes_and_the_height_of_the_bottom_may_be_excused() {
    let rows = [
        ("too narrow", window("19 x 60", "30", "120"), true),
        ("too low an opening", window("60 x 20", "30", "120"), true),
        ("bottom too high", window("30 x 40", "50", "120"), true),
        (
            "a fixed stop",
            Opening {
                device: device("stop"),
                ..window("20 x 40", "30", "120")
            },
            false,
        ),
        (
            "a key",
            Opening {
                opens_without_keys: Some(false),
                ..window("30 x 40", "30", "120")
            },
            false,
        ),
    ];
    for (name, opened, may_be) in rows {
        let answer = opening(edition("IRC 2021"), &excused(opened)).unwrap();
        assert_eq!(answer.verdict, Verdict::FallsShort, "{name}");
        let expected = if may_be {
            "may be excused"
        } else {
            "not: OnlySizes"
        };
        assert_eq!(shown(&answer.excuse), expected, "{name}");
    }
}

#[test]
fn what_may_be_lacking_beside_sizes_is_asked_first() {
    let rows = [
        ("? x 40", "120", "none", "open: clear_width"),
        ("20 x ?", "120", "none", "open: clear_height"),
        ("0..20 x 40", "120", "none", "open: clear_width"),
        ("1..20 x 40", "120", "none", "may be excused"),
        ("20 x 40", "120", "?", "open: control_device"),
        ("20 x 40", "?", "none", "open: sill_above_grade"),
        ("20 x 40", "120", "stop", "not: OnlySizes"),
    ];
    for (sizes, sill, device_text, expected) in rows {
        let opened = Opening {
            device: device(device_text),
            ..window(sizes, "30", sill)
        };
        let answer = opening(edition("IRC 2021"), &excused(opened)).unwrap();
        assert_ne!(answer.verdict, Verdict::Meets);
        assert_eq!(shown(&answer.excuse), expected, "{sizes}, {device_text}");
    }
}

/// The new unit of 0 by something, or something by 0, with every other condition met; 1/16 in is a size again.
#[test]
fn a_unit_that_does_not_open_is_never_excused() {
    let rows = [
        ("a picture unit for a picture unit", "0 x 0", "0", "not: Opens"),
        ("does not open in its width", "0 x 40", "?", "not: Opens"),
        (
            "does not open in its height: an awning at 0 sq ft",
            "36 x 0",
            "0",
            "not: Opens",
        ),
        (
            "does not open, the other side not known",
            "? x 0",
            "?",
            "not: Opens",
        ),
        (
            "opens by a sixteenth in its width",
            "0.0625 x 40",
            "?",
            "may be excused",
        ),
        (
            "opens by a sixteenth in its height",
            "36 x 0.0625",
            "?",
            "may be excused",
        ),
    ];
    for (name, sizes, old_area, expected) in rows {
        for by in ["IRC 2018", "IRC 2021", "IRC 2024", "IBC 2018", "IBC 2021"] {
            let mut opened = excused(window(sizes, "30", "120"));
            if let Some(existing) = &mut opened.existing {
                existing.clear_area = maybe(old_area);
            }
            let answer = opening(edition(by), &opened).unwrap();
            assert_eq!(shown(&answer.excuse), expected, "{name}, {by}");
            assert_eq!(answer.verdict, Verdict::FallsShort, "{name}, {by}");
            let says = answer
                .sentences()
                .iter()
                .any(|it| it.contains("not excused") && it.contains("it does not open"));
            assert_eq!(says, expected == "not: Opens", "{name}, {by}");
        }
    }
}

/// What each edition is said to excuse, and how far its text was seen.
const BY_EDITION: &str = "
    row      | sentence
    IRC 2018 | as a replacement its size may be excused by IRC 2018 R310.2.5; ask the building official (the text of 2015, read for this edition, names the height of the sill and single sections)
    IRC 2021 | as a replacement its size may be excused by IRC 2021 R310.5; ask the building official (the whole section on sizes)
    IRC 2024 | as a replacement its size may be excused by IRC 2024 R319, section number not seen (from memory, to be confirmed); ask the building official (the text of this edition was not seen)
    IBC 2018 | as a replacement its size may be excused by IEBC 2018 505.3 (from memory, to be confirmed); ask the building official (the whole section on sizes)
    IBC 2021 | as a replacement its size may be excused by IEBC 2021 505.3; ask the building official (the whole section on sizes)
    NFPA 101 | no exception for replacements is known in this code
";

#[test]
fn each_edition_says_what_may_be_excused_and_how_far_it_was_seen() {
    for row in rows(BY_EDITION) {
        let answer = opening(edition(row[0]), &excused(window("20 x 40", "30", "120"))).unwrap();
        assert_eq!(answer.verdict, Verdict::FallsShort, "{}", row[0]);
        assert!(
            answer.sentences().contains(&row[1].to_owned()),
            "{}: {:?}",
            row[0],
            answer.sentences()
        );
    }
}

#[test]
fn nothing_is_excused_that_meets_or_is_no_replacement() {
    let meets = opening(edition("IRC 2021"), &excused(window("30 x 40", "30", "120"))).unwrap();
    assert_eq!((meets.verdict, meets.excuse), (Verdict::Meets, Excuse::NotAsked));
    let new = opening(edition("IRC 2021"), &window("20 x 40", "30", "120")).unwrap();
    assert_eq!((new.verdict, new.excuse), (Verdict::FallsShort, Excuse::NotAsked));
}

#[test]
fn an_existing_area_that_no_window_has_is_refused() {
    for area in ["-1", "360001"] {
        let mut opened = excused(window("20 x 40", "30", "120"));
        if let Some(existing) = &mut opened.existing {
            existing.clear_area = maybe(area);
        }
        let refused = opening(edition("IRC 2021"), &opened).unwrap_err().to_string();
        assert!(
            refused.starts_with("clear opening of the existing window is `"),
            "{refused}"
        );
    }
}
