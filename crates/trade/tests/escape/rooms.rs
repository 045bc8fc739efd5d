//! Escape asked of a room: at least one of its openings.

use super::text_rows::rows;
use super::{edition, window};
use astragal_trade::Truth;
use astragal_trade::escape::{Existing, Opening, Room, RoomAnswer, RoomUse, RoomVerdict, room};

fn room_use(text: &str) -> Option<RoomUse> {
    match text {
        "?" => None,
        "sleeping" => Some(RoomUse::Sleeping),
        "basement" => Some(RoomUse::Basement),
        "attic" => Some(RoomUse::HabitableAttic),
        "below loft" => Some(RoomUse::BelowSleepingLoft),
        "other" => Some(RoomUse::Other),
        other => panic!("`{other}` is no use"),
    }
}

/// `good` has 20 x 44 in, `small` 20 x 32 in, `narrow` 19 in and an unknown height, `open` lacks its height, `no ground` has 20 x 44 in and an unknown ground.
fn window_named(name: &str) -> Opening {
    let opened = match name {
        "good" => window("20 x 44", "30", "120"),
        "small" => window("20 x 32", "30", "120"),
        "open" => window("20 x ?", "30", "120"),
        "narrow" => window("19 x ?", "30", "120"),
        "no ground" => window("20 x 44", "30", "?"),
        other => panic!("`{other}` is no window"),
    };
    Opening {
        name: name.to_owned(),
        ..opened
    }
}

fn asked(by: &str, use_text: &str, windows: &str) -> RoomAnswer {
    let openings = windows
        .split(", ")
        .filter(|name| *name != "-")
        .map(window_named)
        .collect();
    let asked = Room {
        room_use: room_use(use_text),
        openings,
    };
    room(edition(by), &asked).unwrap()
}

fn shown(answer: &RoomAnswer) -> String {
    let missing: Vec<&str> = answer.missing.iter().map(|fact| fact.id()).collect();
    assert_eq!(
        missing.is_empty(),
        answer.verdict != RoomVerdict::Undecided,
        "{answer:?}"
    );
    let truth = match answer.verdict {
        RoomVerdict::NotAsked | RoomVerdict::HasOne => Truth::Yes,
        RoomVerdict::NoneOfThoseGiven | RoomVerdict::NoOpeningsGiven => Truth::No,
        RoomVerdict::Undecided => Truth::Unknown(answer.missing.clone()),
    };
    assert_eq!(answer.has_what_is_asked(), truth);
    match answer.verdict {
        RoomVerdict::NotAsked => "not asked".to_owned(),
        RoomVerdict::HasOne => {
            let names: Vec<&str> = answer.qualifying().map(|it| it.name.as_str()).collect();
            format!("has: {}", names.join(", "))
        }
        RoomVerdict::NoneOfThoseGiven => "none".to_owned(),
        RoomVerdict::NoOpeningsGiven => "no openings given".to_owned(),
        RoomVerdict::Undecided => format!("open: {}", missing.join(", ")),
    }
}

/// Rooms: IRC 2018 and 2021 R310.1, IRC 2024 R319.1. The IBC was not seen to name attics, nor editions before 2024 lofts.
const ROOMS: &str = "
    row                                  | edition  | use        | windows     | answer
    one that qualifies                   | IRC 2021 | sleeping   | good        | has: good
    a second, smaller one is no error    | IRC 2021 | sleeping   | good, small | has: good
    in the other order                   | IRC 2021 | sleeping   | small, good | has: good
    both qualify                         | IRC 2021 | sleeping   | good, good  | has: good, good
    one that qualifies settles it        | IRC 2021 | sleeping   | open, good  | has: good
    only a small one                     | IRC 2021 | sleeping   | small       | none
    two small ones                       | IRC 2021 | sleeping   | small, small | none
    one might                            | IRC 2021 | sleeping   | open        | open: clear_height
    one small, one might                 | IRC 2021 | sleeping   | small, open | open: clear_height
    short, whatever its height           | IRC 2021 | sleeping   | narrow      | none
    short, whatever its height, another  | IRC 2021 | sleeping   | narrow, open | open: clear_height
    no opening given                     | IRC 2021 | sleeping   | -           | no openings given
    a basement                           | IRC 2021 | basement   | small       | none
    a basement of known ground           | IRC 2021 | basement   | good        | has: good
    a basement of unknown ground         | IRC 2021 | basement   | no ground   | open: sill_above_grade
    a bedroom of unknown ground          | IRC 2021 | sleeping   | no ground   | open: sill_above_grade
    a habitable attic                    | IRC 2018 | attic      | small       | none
    a habitable attic by the IBC         | IBC 2021 | attic      | small       | open: wording_in_force
    an attic by the IBC that has one     | IBC 2021 | attic      | good        | has: good
    below a loft by 2024                 | IRC 2024 | below loft | small       | none
    below a loft by 2021                 | IRC 2021 | below loft | small       | open: wording_in_force
    neither                              | IRC 2021 | other      | small       | not asked
    neither, nothing given               | IRC 2021 | other      | -           | not asked
    use unknown, one qualifies           | IRC 2021 | ?          | good        | has: good
    use unknown, none qualifies          | IRC 2021 | ?          | small       | open: room_use
    use unknown, one might               | IRC 2021 | ?          | open        | open: room_use, clear_height
    use unknown, nothing given           | IRC 2021 | ?          | -           | open: room_use
";

#[test]
fn a_room_needs_at_least_one_opening() {
    for row in rows(ROOMS) {
        let answer = asked(row[1], row[2], row[3]);
        assert_eq!(shown(&answer), row[4], "{}", row[0]);
    }
}

#[test]
fn a_room_that_has_one_does_not_complain_of_the_others() {
    let sentences = asked("IRC 2021", "sleeping", "good, small").sentences();
    assert_eq!(
        sentences,
        [
            "a sleeping room has at least one opening with what IRC 2021 asks: `good`; check with the local code"
        ]
    );
}

#[test]
fn a_room_without_one_says_why_of_each() {
    let sentences = asked("IRC 2021", "sleeping", "small").sentences();
    let expected = [
        "none of the openings given of a sleeping room has what IRC 2021 R310.1 asks for escape; another opening or a door to the outside may",
        "`small` falls short of what IRC 2021 asks of an escape opening",
        "clear area is 4.4444… sq ft, 1.2555… sq ft less than 5.7 sq ft (IRC 2021 R310.2.1)",
    ];
    assert_eq!(sentences, expected);
}

#[test]
fn what_was_not_given_is_said() {
    let given = asked("IRC 2021", "sleeping", "-").sentences();
    assert_eq!(
        given,
        ["IRC 2021 R310.1 asks an escape opening of a sleeping room, and no opening of it was given"]
    );
    let unknown = asked("IRC 2021", "?", "-").sentences();
    assert_eq!(unknown[1], "no opening of it was given");
}

/// The small window as a replacement that may be excused.
fn excusable() -> Opening {
    Opening {
        existing: Some(Existing {
            largest_standard_size_fits: Some(true),
            same_operation: Some(true),
            clear_area: None,
            change_of_occupancy: Some(false),
        }),
        ..window_named("small")
    }
}

#[test]
fn a_room_whose_only_window_may_be_excused_still_has_none() {
    let bedroom = |second: &str| Room {
        room_use: Some(RoomUse::Sleeping),
        openings: vec![excusable(), window_named(second)],
    };
    let answer = room(edition("IRC 2021"), &bedroom("small")).unwrap();
    assert_eq!(answer.verdict, RoomVerdict::NoneOfThoseGiven);
    assert_eq!(answer.excusable().count(), 1);
    let asks = "none qualifies, but one may be excused; ask the building official";
    assert_eq!(answer.sentences().last().map(String::as_str), Some(asks));
    for second in ["good", "open"] {
        let answer = room(edition("IRC 2021"), &bedroom(second)).unwrap();
        assert_ne!(answer.verdict, RoomVerdict::NoneOfThoseGiven);
        assert!(
            !answer.sentences().iter().any(|sentence| sentence == asks),
            "{second}"
        );
    }
}

#[test]
fn one_opening_that_cannot_be_is_an_error_of_the_room() {
    let bedroom = Room {
        room_use: Some(RoomUse::Sleeping),
        openings: vec![window_named("good"), window("-1 x 40", "30", "120")],
    };
    assert!(room(edition("IRC 2021"), &bedroom).is_err());
}

#[test]
fn no_answer_says_that_anything_is_approved() {
    for row in rows(ROOMS) {
        for sentence in asked(row[1], row[2], row[3]).sentences() {
            for word in ["approved", "complies", "compliant", "legal", "safe"] {
                assert!(!sentence.contains(word), "{}: {sentence}", row[0]);
            }
        }
    }
}
