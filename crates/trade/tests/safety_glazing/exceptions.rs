//! Exceptions: stated by the caller, looked at by a person, never assumed.
//!
//! Source: the exceptions of IRC R308.4.1 to R308.4.7 and R324.4.2, R324.4.3, as quoted in secondary texts.

use super::{ask, with};
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::{Exception, Location, Overall, lite};

const PLACES: [(Location, &str); 7] = [
    (Location::InDoor, "in_door yes"),
    (Location::BesideDoor, "bottom 59; top 80; wall in plane; door 10"),
    (Location::LargePane, "area 1300; bottom 10; top 60; walk 10"),
    (Location::Guard, "guard yes"),
    (Location::WetPlace, "wet tub; wet_edge 10; water 0"),
    (Location::Stair, "stair yes; stair_edge 10; stair_far 0"),
    (Location::BottomLanding, "landing yes; landing_edge 10; tread 0"),
];

fn places_of(exception: Exception) -> &'static [Location] {
    match exception {
        Exception::Decorative => &[Location::InDoor, Location::BesideDoor, Location::LargePane],
        Exception::SmallDoorOpening => &[Location::InDoor],
        Exception::BarrierToDoor | Exception::ShallowCloset | Exception::BesideFixedPatioPanel => {
            &[Location::BesideDoor]
        }
        Exception::ProtectiveRail | Exception::OutboardPaneHighUp => &[Location::LargePane],
        Exception::GuardAwayFromGlass => &[Location::Stair, Location::BottomLanding],
    }
}

/// Source: the exceptions of IRC R308.4.1 to R308.4.3, IBC 2406.4.6 and 2406.4.7, each under its own section, as quoted.
#[test]
fn an_exception_may_excuse_its_own_locations_alone() {
    for exception in Exception::ALL {
        for (location, facts) in PLACES {
            let (pane, mut site) = with(facts);
            site.exceptions = vec![exception, exception];
            let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
            let expected = if places_of(exception).contains(&location) {
                Overall::MayBeExcused
            } else {
                Overall::CalledFor
            };
            assert_eq!(answer.overall, expected, "{exception:?}, {location:?}");
            let calling: Vec<Location> = answer.calling_for_it().map(|found| found.location).collect();
            assert_eq!(calling, [location], "{exception:?}");
            for found in &answer.locations {
                let once = usize::from(places_of(exception).contains(&found.location));
                assert_eq!(found.stated_exceptions.len(), once, "{exception:?}, {location:?}");
            }
        }
    }
}

#[test]
fn without_a_stated_exception_none_is_assumed() {
    for (location, facts) in PLACES {
        assert_eq!(
            ask(Edition::Irc2021, facts).overall,
            Overall::CalledFor,
            "{location:?}"
        );
    }
}

#[test]
fn one_location_that_is_not_excused_decides() {
    let (pane, mut site) = with("area 1300; bottom 10; top 60; walk 10; wet tub; wet_edge 10; water 0");
    site.exceptions = vec![Exception::ProtectiveRail];
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::CalledFor);
}

#[test]
fn an_excused_location_leaves_open_what_is_open() {
    let (pane, mut site) = with("area 1300; bottom 10; top 60; walk 10; wet ?; wet_edge 10; water 0");
    site.exceptions = vec![Exception::ProtectiveRail];
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::CannotDecide);
}

/// Beside a closet the door's rule may be excused; a large pane there is asked all the same.
#[test]
fn a_closet_excuses_no_large_pane() {
    let (pane, mut site) = with("area 1300; bottom 10; top 60; walk 10; wall in plane; door 10");
    site.exceptions = vec![Exception::ShallowCloset];
    let answer = lite(Edition::Irc2021, &pane, &site).unwrap();
    assert_eq!(answer.overall, Overall::CalledFor);
    let sentences = answer.sentences();
    assert_eq!(
        sentences,
        [
            "safety glazing is called for in `lite` by IRC 2021; check with the local code",
            "called for: beside a door (IRC 2021 R308.4.2); may be excused by a door to a closet or storage of at most 3 ft depth: have it looked at",
            "called for: a large pane near a walking surface (IRC 2021 R308.4.3)",
        ]
    );
}
