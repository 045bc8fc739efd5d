//! Escape asked of a room: the two rules of each file against the room of the crate.
//!
//! The files ask in addition whether another window or door of the room serves, which the crate leaves to its caller: here
//! none does. A room without any opening in the order is asked nothing by a rule, and the crate says that none was given.

use std::collections::BTreeMap;

use astragal_model::{RoomFinding, RoomState};
use astragal_trade::building_code::Edition;
use astragal_trade::escape::{Excuse, Room, RoomUse, room};
use astragal_trade::{Fact, Missing, Truth};

use crate::case::Case;
use crate::code_file::{CodeFile, building_codes};
use crate::escape::{WayOut, random_way_out};
use crate::random::Random;
use crate::said::Said;

/// The options of `room_use`, and what they are to the crate.
const USES: [(&str, RoomUse); 5] = [
    ("sleeping", RoomUse::Sleeping),
    ("habitable-basement", RoomUse::Basement),
    ("habitable-attic", RoomUse::HabitableAttic),
    ("below-sleeping-loft", RoomUse::BelowSleepingLoft),
    ("other", RoomUse::Other),
];

/// Rooms of which the wording in force was not seen: the two are shown apart below.
fn is_of_the_wording(edition: Edition, room_use: RoomUse) -> bool {
    match room_use {
        RoomUse::HabitableAttic => !edition.is_residential(),
        RoomUse::BelowSleepingLoft => edition != Edition::Irc2024,
        _ => false,
    }
}

fn found(findings: &[RoomFinding], rule: &str) -> Said {
    let found = findings.iter().find(|finding| finding.id.as_str() == rule);
    Said::from(found.map(|finding| finding.state))
}

fn cases(room_use: Option<&str>, ways_out: &[WayOut]) -> Vec<Case> {
    let of = |way_out: &WayOut| {
        way_out
            .case()
            .option("room_use", room_use)
            .truth("escape_opening_elsewhere", Some(false))
    };
    ways_out.iter().map(of).collect()
}

fn compare(
    codes: &[(Edition, CodeFile)],
    room_use: Option<(&str, RoomUse)>,
    ways_out: &[WayOut],
    counts: &mut BTreeMap<String, usize>,
) {
    let asked = Room {
        room_use: room_use.map(|(_, room_use)| room_use),
        openings: ways_out.iter().map(WayOut::opening).collect(),
    };
    let cases = cases(room_use.map(|(option, _)| option), ways_out);
    for (edition, file) in codes {
        if room_use.is_some_and(|(_, room_use)| is_of_the_wording(*edition, room_use)) {
            continue;
        }
        if edition.is_residential() && ways_out.iter().any(WayOut::is_far_below_the_ground) {
            continue;
        }
        let answer = room(*edition, &asked).unwrap();
        let findings = file.judge_room(&cases);
        let mut agree = |rule: &str, expected: Truth| {
            let said = found(&findings, rule);
            assert_eq!(
                said,
                Said::from(expected),
                "{edition} {rule}: {room_use:?} {ways_out:?}"
            );
            *counts.entry(format!("{rule} {said:?}")).or_default() += 1;
        };
        agree("escape-opening-not-excused", answer.has_what_is_asked());
        let waits_for_the_sill = answer
            .openings
            .iter()
            .any(|opening| opening.missing.contains(&Fact::SillAboveGrade));
        if waits_for_the_sill {
            continue;
        }
        let not_asked = match room_use {
            None => Truth::Unknown(Missing::from([Fact::RoomUse])),
            Some((_, room_use)) => Truth::known(room_use == RoomUse::Other),
        };
        let serves = answer.openings.iter().flat_map(|opening| {
            let excused = match &opening.excuse {
                Excuse::MayBeExcused { .. } => Truth::Yes,
                Excuse::Undecided(missing) => Truth::Unknown(missing.clone()),
                _ => Truth::No,
            };
            [opening.meets(), excused]
        });
        agree("escape-opening", Truth::any(serves.chain([not_asked])));
    }
}

#[test]
fn random_rooms_agree_whatever_is_missing() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for seed in 0..1_500 {
        let mut random = Random::new(seed);
        let openings = 1 + random.below(3);
        let ways_out: Vec<WayOut> = (0..openings).map(|_| random_way_out(&mut random)).collect();
        compare(&codes, random.known(&USES), &ways_out, &mut counts);
    }
    for rule in ["escape-opening", "escape-opening-not-excused"] {
        for said in ["Yes", "No", "Unknown"] {
            let seen = counts.get(&format!("{rule} {said}")).copied().unwrap_or(0);
            assert!(seen >= 50, "{rule} says {said} {seen} times");
        }
    }
}

/// The casement is just large enough, the slider is too small: one is enough, and the other is no error.
#[test]
fn a_second_smaller_window_changes_nothing() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    let small = WayOut {
        height: Some(crate::case::number("32")),
        ..WayOut::just_enough()
    };
    for (ways_out, said) in [
        (vec![WayOut::just_enough()], Said::Yes),
        (vec![small.clone(), WayOut::just_enough()], Said::Yes),
        (vec![small.clone(), small], Said::No),
    ] {
        compare(&codes, Some(USES[0]), &ways_out, &mut counts);
        for (edition, file) in &codes {
            let findings = file.judge_room(&cases(Some("sleeping"), &ways_out));
            assert_eq!(found(&findings, "escape-opening"), said, "{edition}");
        }
    }
}

/// The building code's own words about attics were not seen. The crate leaves the question open; the file asks for the
/// opening.
#[test]
fn an_attic_under_the_building_code_is_an_open_question_of_the_wording() {
    let small = WayOut {
        height: Some(crate::case::number("32")),
        ..WayOut::just_enough()
    };
    let ways_out = [small];
    for (edition, file) in building_codes() {
        let asked = Room {
            room_use: Some(RoomUse::HabitableAttic),
            openings: ways_out.iter().map(WayOut::opening).collect(),
        };
        let of_the_crate = Said::from(room(edition, &asked).unwrap().has_what_is_asked());
        let findings = file.judge_room(&cases(Some("habitable-attic"), &ways_out));
        let of_the_file = found(&findings, "escape-opening-not-excused");
        assert_eq!(found(&findings, "escape-opening"), Said::No, "{edition}");
        let expected = if edition.is_residential() {
            Said::No
        } else {
            Said::Unknown
        };
        assert_eq!((of_the_crate, of_the_file), (expected, Said::No), "{edition}");
    }
}

#[test]
fn a_room_that_has_an_opening_elsewhere_is_asked_nothing() {
    for (edition, file) in building_codes() {
        let small = WayOut {
            height: Some(crate::case::number("32")),
            ..WayOut::just_enough()
        };
        let at = |elsewhere| {
            let mut cases = cases(Some("sleeping"), std::slice::from_ref(&small));
            cases[0] = cases[0].clone().truth("escape_opening_elsewhere", elsewhere);
            file.judge_room(&cases).first().map(|finding| finding.state)
        };
        assert_eq!(at(Some(true)), None, "{edition}");
        assert_eq!(at(None), Some(RoomState::Undecided), "{edition}");
        assert_eq!(at(Some(false)), Some(RoomState::Broken), "{edition}");
    }
}

/// The files leave the question to the building department in a notice. The crate says that it is of the wording in force, but of the
/// edition that asks below a loft; and a basement is one to it whether lived in or not.
#[test]
fn rooms_below_a_loft_and_basements_that_nobody_lives_in_are_left_to_a_notice() {
    let small = WayOut {
        height: Some(crate::case::number("32")),
        ..WayOut::just_enough()
    };
    for (option, room_use) in [
        ("below-sleeping-loft", RoomUse::BelowSleepingLoft),
        ("basement-other", RoomUse::Basement),
    ] {
        for (edition, file) in building_codes() {
            let asked = Room {
                room_use: Some(room_use),
                openings: vec![small.opening()],
            };
            let of_the_crate = Said::from(room(edition, &asked).unwrap().has_what_is_asked());
            let is_compared = room_use == RoomUse::BelowSleepingLoft && !is_of_the_wording(edition, room_use);
            if is_compared {
                continue;
            }
            assert_ne!(of_the_crate, Said::Yes, "{edition} {option}");
            let cases = cases(Some(option), std::slice::from_ref(&small));
            assert_eq!(file.judge_room(&cases), [], "{edition} {option}");
            assert!(
                file.judge(&cases[0]).notice("room-not-asked").is_some(),
                "{edition} {option}"
            );
        }
    }
}
