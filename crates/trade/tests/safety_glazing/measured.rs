//! What can be measured of an exception: each limit, one step under, one step over, and each number missing.

use super::text_rows::{maybe, rows};
use super::{ask, with};
use astragal_trade::Status;
use astragal_trade::Truth;
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::{Exception, Location, Measured, Overall, Rail, lite};

/// A step of a sixteenth of an inch, or of a hundredth of a pound, on each side of every limit; `?` is what nobody measured.
///
/// Sources, all in texts that quote the code: the sphere in IRC 2015 R308.4.1; the closet in IRC 2015 R308.4.2; the rail and the
/// outboard pane in IRC R308.4.3, IRC 2024 R324.4.3 and a state's article on IBC 2406.4.3; the guard in IBC 2406.4.6 and 2406.4.7 and
/// IRC 2012 R308.4.7. That a sphere of 3 in passes 3 in exactly: our careful reading.
const LIMITS: &str = "
    row                                      | exception          | measured                               | its numbers hold     | source
    an opening of 3 in lets the sphere pass  | SmallDoorOpening   | opening 3                              | no                   | R308.4.1, our reading
    a sixteenth narrower                     | SmallDoorOpening   | opening 47/16                          | yes                  | R308.4.1
    a sixteenth wider                        | SmallDoorOpening   | opening 49/16                          | no                   | R308.4.1
    opening not measured                     | SmallDoorOpening   | opening ?                              | open: door_opening_width | R308.4.1
    a closet of 3 ft                         | ShallowCloset      | closet 36                              | yes                  | R308.4.2
    a sixteenth shallower                    | ShallowCloset      | closet 575/16                          | yes                  | R308.4.2
    a sixteenth deeper                       | ShallowCloset      | closet 577/16                          | no                   | R308.4.2
    closet not measured                      | ShallowCloset      | closet ?                               | open: closet_depth   | R308.4.2
    a rail at 34 in                          | ProtectiveRail     | rail 34; section 2; load 60            | yes                  | R308.4.3
    a sixteenth lower than 34                | ProtectiveRail     | rail 543/16; section 2; load 60        | no                   | R308.4.3
    a sixteenth higher than 34               | ProtectiveRail     | rail 545/16; section 2; load 60        | yes                  | R308.4.3
    a rail at 38 in                          | ProtectiveRail     | rail 38; section 2; load 60            | yes                  | R308.4.3
    a sixteenth lower than 38                | ProtectiveRail     | rail 607/16; section 2; load 60        | yes                  | R308.4.3
    a sixteenth higher than 38               | ProtectiveRail     | rail 609/16; section 2; load 60        | no                   | R308.4.3
    a section 1 1/2 in high                  | ProtectiveRail     | rail 36; section 1.5; load 60          | yes                  | R308.4.3
    a section a sixteenth less               | ProtectiveRail     | rail 36; section 23/16; load 60        | no                   | R308.4.3
    a section a sixteenth more               | ProtectiveRail     | rail 36; section 25/16; load 60        | yes                  | R308.4.3
    50 lb a foot                             | ProtectiveRail     | rail 36; section 2; load 50            | yes                  | R308.4.3
    a hundredth of a pound less              | ProtectiveRail     | rail 36; section 2; load 49.99         | no                   | R308.4.3
    a hundredth of a pound more              | ProtectiveRail     | rail 36; section 2; load 50.01         | yes                  | R308.4.3
    height of the rail not measured          | ProtectiveRail     | rail ?; section 2; load 60             | open: rail_height    | R308.4.3
    section of the rail not measured         | ProtectiveRail     | rail 36; section ?; load 60            | open: rail_section   | R308.4.3
    load of the rail not known               | ProtectiveRail     | rail 36; section 2; load ?             | open: rail_load      | R308.4.3
    nothing known of the rail                | ProtectiveRail     | rail ?; section ?; load ?              | open: rail_height, rail_section, rail_load | R308.4.3
    a low rail, nothing else known           | ProtectiveRail     | rail 33; section ?; load ?             | no                   | R308.4.3
    a thin rail, nothing else known          | ProtectiveRail     | rail ?; section 1; load ?              | no                   | R308.4.3
    an outboard pane 25 ft up                | OutboardPaneHighUp | pane 300                               | yes                  | R308.4.3
    a sixteenth lower than 25 ft             | OutboardPaneHighUp | pane 4799/16                           | no                   | R308.4.3
    a sixteenth higher than 25 ft            | OutboardPaneHighUp | pane 4801/16                           | yes                  | R308.4.3
    height of the pane not measured          | OutboardPaneHighUp | pane ?                                 | open: outboard_pane_height | R308.4.3
    a guard 18 in away                       | GuardAwayFromGlass | guard 18                               | no                   | 2406.4.6, 2406.4.7
    a sixteenth nearer                       | GuardAwayFromGlass | guard 287/16                           | no                   | 2406.4.6, 2406.4.7
    a sixteenth further                      | GuardAwayFromGlass | guard 289/16                           | yes                  | 2406.4.6, 2406.4.7
    guard not measured                       | GuardAwayFromGlass | guard ?                                | open: guard_distance | 2406.4.6, 2406.4.7
    decorative glass has no number           | Decorative         | guard 0                                | yes                  | R308.4.1 to R308.4.3
    a barrier has no number                  | BarrierToDoor      | guard 0                                | yes                  | R308.4.2
    a patio panel has no number              | BesideFixedPatioPanel | guard 0                             | yes                  | R308.4.2
";

/// Where each exception is asked, and everything else of the site is harmless.
fn place_of(exception: Exception) -> (Location, &'static str) {
    match exception {
        Exception::SmallDoorOpening => (Location::InDoor, "in_door yes"),
        Exception::Decorative
        | Exception::BarrierToDoor
        | Exception::ShallowCloset
        | Exception::BesideFixedPatioPanel => {
            (Location::BesideDoor, "bottom 59; top 80; wall in plane; door 10")
        }
        Exception::ProtectiveRail | Exception::OutboardPaneHighUp => {
            (Location::LargePane, "area 1300; bottom 10; top 60; walk 10")
        }
        Exception::GuardAwayFromGlass => (Location::Stair, "stair yes; stair_edge 10; stair_far 0"),
    }
}

fn measured(text: &str) -> Measured {
    let mut measured = Measured::default();
    for fact in text.split("; ") {
        let (name, value) = fact.split_once(' ').unwrap();
        let place = match name {
            "opening" => &mut measured.door_opening,
            "closet" => &mut measured.closet_depth,
            "rail" => &mut measured.rail.height,
            "section" => &mut measured.rail.section,
            "load" => &mut measured.rail.load,
            "pane" => &mut measured.outboard_pane,
            "guard" => &mut measured.guard,
            other => panic!("`{other}` is no measure"),
        };
        *place = maybe(value);
    }
    measured
}

fn exception_named(name: &str) -> Exception {
    let mut all = Exception::ALL.into_iter();
    all.find(|exception| format!("{exception:?}") == name)
        .unwrap_or_else(|| panic!("`{name}` is no exception"))
}

fn shown(truth: &Truth) -> String {
    match truth {
        Truth::Yes => "yes".to_owned(),
        Truth::No => "no".to_owned(),
        Truth::Unknown(missing) => {
            let ids: Vec<&str> = missing.iter().map(|fact| fact.id()).collect();
            format!("open: {}", ids.join(", "))
        }
    }
}

/// The numbers decide, and a stated exception whose numbers do not hold excuses nothing; one that holds or is open only may.
#[test]
fn each_number_of_an_exception_has_its_limit() {
    for row in rows(LIMITS) {
        let [name, exception, facts, expected, source] = row[..] else {
            panic!("{row:?}");
        };
        let exception = exception_named(exception);
        let measured = measured(facts);
        assert_eq!(
            shown(&exception.by_measures(&measured)),
            expected,
            "{name} ({source})"
        );
        let (location, place) = place_of(exception);
        let (pane, mut site) = with(place);
        site.exceptions = vec![exception];
        site.measured = measured;
        let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
        let overall = if expected == "no" {
            Overall::CalledFor
        } else {
            Overall::MayBeExcused
        };
        assert_eq!(answer.overall, overall, "{name} ({source})");
        let found = answer.calling_for_it().next().unwrap();
        assert_eq!(found.location, location, "{name}");
        let ruled_out = usize::from(expected == "no");
        assert_eq!(
            (found.stated_exceptions.len(), found.ruled_out.len()),
            (1 - ruled_out, ruled_out),
            "{name}"
        );
    }
}

#[test]
fn every_exception_has_a_row_and_words_with_its_numbers() {
    let named: Vec<Exception> = rows(LIMITS).iter().map(|row| exception_named(row[1])).collect();
    for exception in Exception::ALL {
        assert!(named.contains(&exception), "{exception:?}");
        assert!(!exception.to_be_looked_at().is_empty(), "{exception:?}");
        assert_eq!(exception.basis().status, Status::SecondHand, "{exception:?}");
    }
    let numbers = [
        (Exception::SmallDoorOpening, vec!["3 in"]),
        (Exception::ShallowCloset, vec!["at most 3 ft"]),
        (
            Exception::ProtectiveRail,
            vec![
                "34 to 38 in",
                "1 1/2 in",
                "50 lb a foot",
                "without touching the glass",
            ],
        ),
        (Exception::OutboardPaneHighUp, vec!["25 ft or more"]),
        (Exception::GuardAwayFromGlass, vec!["more than 18 in"]),
    ];
    for (exception, parts) in numbers {
        for part in parts {
            assert!(exception.words().contains(part), "{exception:?}: {part}");
        }
    }
}

/// A number alone excuses nothing: the exception has to be stated.
#[test]
fn what_was_measured_is_no_statement() {
    let (pane, mut site) = with("area 1300; bottom 10; top 60; walk 10");
    site.measured = measured("rail 36; section 2; load 60");
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::CalledFor);
    assert_eq!(
        answer,
        ask(Edition::Irc2021, "area 1300; bottom 10; top 60; walk 10")
    );
}

#[test]
fn one_exception_that_is_ruled_out_leaves_the_other() {
    let (pane, mut site) = with("area 1300; bottom 10; top 60; walk 10");
    site.exceptions = vec![Exception::ProtectiveRail, Exception::Decorative];
    site.measured = measured("rail 33");
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::MayBeExcused);
    assert_eq!(
        answer.sentences()[1],
        "called for: a large pane near a walking surface (IRC 2021 R308.4.3); may be excused by decorative glass: have it looked at; \
         by what was measured not excused by a protective rail 34 to 38 in above the walking surface that is at least 1 1/2 in high \
         in its section and takes 50 lb a foot without touching the glass"
    );
    site.exceptions = vec![Exception::ProtectiveRail];
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::CalledFor);
}

#[test]
fn measures_that_cannot_be_are_refused() {
    let rows = [
        (
            "opening -1",
            "narrowest way across the opening in the door is `-1 in`",
        ),
        (
            "closet 36001",
            "depth of the closet behind the door is `36001 in`",
        ),
        ("rail -1", "rail above the walking surface is `-1 in`"),
        ("section -1", "height of the rail's section is `-1 in`"),
        (
            "load -0.01",
            "load by the foot that the rail takes without touching the glass is `-0.01`",
        ),
        (
            "load 10000.01",
            "load by the foot that the rail takes without touching the glass is `10000.01`",
        ),
        (
            "pane -1",
            "bottom of the outboard pane above what lies below it is `-1 in`",
        ),
        ("guard -1", "railing of the guard from the glass is `-1 in`"),
    ];
    for (text, expected) in rows {
        let (pane, mut site) = with("");
        site.measured = measured(text);
        let refused = lite(Edition::Irc2021, &pane, &site).unwrap_err().to_string();
        assert!(refused.starts_with(expected), "{text}: {refused}");
        assert!(refused.contains("; expected "), "{text}: {refused}");
    }
    let (pane, mut site) = with("");
    site.measured.rail = Rail {
        load: maybe("10000"),
        ..Rail::default()
    };
    assert!(lite(Edition::Irc2021, &pane, &site).is_ok());
}
