//! Whether lead-safe work rules apply, row by row.
#![expect(clippy::unwrap_used, reason = "these are tests")]

use astragal_exact::{Number, parse_area};
use astragal_trade::lead::{
    BUILDING_BASIS, Building, CERTIFIED_FIRM_BASIS, FACILITY_NOT_DECIDED, MINOR_WORK_BASIS, NOT_DECIDED,
    Work, YEAR_BASIS, lead_safe, lead_safe_in,
};
use astragal_trade::{Fact, Missing, Status, Truth};

const RULE: &str = "40 CFR 745 subpart E";
const MINOR: &str = "EPA about 40 CFR 745.83";

fn area(text: &str) -> Option<Number> {
    Some(parse_area(text).unwrap())
}

fn little(in_room: &str, outside: &str) -> Work {
    Work {
        window_replaced: Some(false),
        paint_in_room: area(in_room),
        paint_outside: area(outside),
        demolition: Some(false),
        prohibited_practice: Some(false),
    }
}

fn unknown<const COUNT: usize>(facts: [Fact; COUNT]) -> Truth {
    Truth::Unknown(Missing::from(facts))
}

/// Source: 40 CFR 745 subpart E as quoted, before 1978; the EPA's answers about 745.83, read, for windows whatever their size.
#[test]
fn a_window_replacement_in_an_old_house_is_never_excused() {
    let window = |in_room: &str| Work {
        window_replaced: Some(true),
        ..little(in_room, "0 sq ft")
    };
    let rows = [
        (
            "1977, one window of 4 sq ft",
            Some(1977),
            window("4 sq ft"),
            Truth::Yes,
        ),
        (
            "1977, a window of nothing",
            Some(1977),
            window("0 sq ft"),
            Truth::Yes,
        ),
        ("1978", Some(1978), window("4 sq ft"), Truth::No),
        ("1979", Some(1979), window("4 sq ft"), Truth::No),
        ("1850", Some(1850), window("4 sq ft"), Truth::Yes),
        (
            "unknown year",
            None,
            window("4 sq ft"),
            unknown([Fact::YearBuilt]),
        ),
        (
            "nothing else known",
            Some(1977),
            Work::window_replacement(),
            Truth::Yes,
        ),
    ];
    for (name, year, work, expected) in rows {
        let answer = lead_safe(year, &work).unwrap();
        assert_eq!(answer.applies, expected, "{name} ({RULE})");
        assert_eq!(answer.minor, Truth::No, "{name} ({MINOR})");
        assert_eq!(answer.is_treated_as_applying(), expected != Truth::No, "{name}");
        assert_eq!(answer.caution().is_some(), expected != Truth::No, "{name}");
    }
}

/// Source: the EPA's answers about 40 CFR 745.83, read: housing and child-occupied facilities; before 1978, in texts that quote the rule.
#[test]
fn a_child_occupied_facility_is_asked_like_a_house_and_other_buildings_are_not() {
    use Building::{ChildOccupiedFacility, Housing, Neither};
    let rows = [
        ("a house of 1977", Some(Housing), Some(1977), Truth::Yes),
        ("a house of 1978", Some(Housing), Some(1978), Truth::No),
        (
            "a facility of 1977",
            Some(ChildOccupiedFacility),
            Some(1977),
            Truth::Yes,
        ),
        (
            "a facility of 1978",
            Some(ChildOccupiedFacility),
            Some(1978),
            Truth::No,
        ),
        (
            "a facility of no known year",
            Some(ChildOccupiedFacility),
            None,
            unknown([Fact::YearBuilt]),
        ),
        ("neither, of 1977", Some(Neither), Some(1977), Truth::No),
        ("neither, of no known year", Some(Neither), None, Truth::No),
        (
            "nobody says, of 1977",
            None,
            Some(1977),
            unknown([Fact::BuildingKind]),
        ),
        ("nobody says, of 1978", None, Some(1978), Truth::No),
        (
            "nothing is known",
            None,
            None,
            unknown([Fact::BuildingKind, Fact::YearBuilt]),
        ),
    ];
    let window = Work::window_replacement();
    for (name, building, year, expected) in rows {
        let answer = lead_safe_in(building, year, &window).unwrap();
        assert_eq!(answer.applies, expected, "{name} ({RULE})");
        assert_eq!(answer.minor, Truth::No, "{name} ({MINOR})");
        if building == Some(Housing) {
            assert_eq!(lead_safe(year, &window).unwrap(), answer, "{name}");
        }
        let minor = lead_safe_in(building, year, &little("6 sq ft", "20 sq ft")).unwrap();
        assert_eq!(minor.applies, Truth::No, "{name}, minor work ({MINOR})");
    }
    assert_eq!(BUILDING_BASIS.status, Status::Verified);
    let (what, basis) = FACILITY_NOT_DECIDED;
    assert!(
        what.starts_with("whether a building is a child-occupied facility"),
        "{what}"
    );
    assert_eq!(basis.status, Status::FromMemory);
    let caution = lead_safe_in(Some(ChildOccupiedFacility), Some(1977), &window).unwrap();
    assert!(
        caution
            .caution()
            .unwrap()
            .contains("a child-occupied facility from before 1978")
    );
}

/// Checks work in a house of 1977, of 1978 and of no known year.
fn check_minor(name: &str, work: &Work, minor: &Truth) {
    let answer = lead_safe(Some(1977), work).unwrap();
    assert_eq!(&answer.minor, minor, "{name} ({MINOR})");
    assert_eq!(answer.applies, minor.clone().opposite(), "{name} ({RULE})");
    assert_eq!(answer.missing(), minor.missing(), "{name}");
    let newer = lead_safe(Some(1978), work).unwrap();
    assert_eq!(newer.applies, Truth::No, "{name}, built in 1978 ({RULE})");
    let of_no_known_year = lead_safe(None, work).unwrap();
    assert_eq!(
        of_no_known_year.applies == Truth::No,
        *minor == Truth::Yes,
        "{name}, year unknown"
    );
}

/// Source: the EPA's answers about 40 CFR 745.83: 6 sq ft a room and 20 sq ft outside are within, a hair more is not.
#[test]
fn other_work_is_minor_up_to_its_limits() {
    let rows = [
        ("6 sq ft in a room", "6 sq ft", "0 sq ft", Truth::Yes),
        ("a hair more in a room", "864.001 sq in", "0 sq ft", Truth::No),
        ("20 sq ft outside", "0 sq ft", "20 sq ft", Truth::Yes),
        ("a hair more outside", "0 sq ft", "2880.001 sq in", Truth::No),
        ("both at their limit", "6 sq ft", "20 sq ft", Truth::Yes),
    ];
    for (name, in_room, outside, minor) in rows {
        check_minor(name, &little(in_room, outside), &minor);
    }
}

/// Source: the EPA's answers about 40 CFR 745.83, read: no window replacement, no demolition, no prohibited practice.
#[test]
fn some_work_is_never_minor() {
    let work = || little("1 sq ft", "0 sq ft");
    check_minor("little is disturbed", &work(), &Truth::Yes);
    let demolition = Some(true);
    check_minor(
        "something is torn out",
        &Work { demolition, ..work() },
        &Truth::No,
    );
    let prohibited_practice = Some(true);
    check_minor(
        "a prohibited practice",
        &Work {
            prohibited_practice,
            ..work()
        },
        &Truth::No,
    );
    let window_replaced = Some(true);
    check_minor(
        "a window is replaced",
        &Work {
            window_replaced,
            ..work()
        },
        &Truth::No,
    );
}

/// Source: what the EPA's answers about 40 CFR 745.83 ask, read; 7 sq ft in a room is above 6.
#[test]
fn what_is_not_known_of_the_work_is_asked_for() {
    let paint_outside = None;
    let half = Work {
        paint_outside,
        ..little("1 sq ft", "0 sq ft")
    };
    check_minor("how much outside", &half, &unknown([Fact::PaintDisturbedOutside]));
    let paint_in_room = area("7 sq ft");
    let much = Work {
        paint_in_room,
        ..Work::default()
    };
    check_minor("too much in a room, the rest unknown", &much, &Truth::No);
    let all = [
        Fact::WindowReplaced,
        Fact::PaintDisturbedInRoom,
        Fact::PaintDisturbedOutside,
        Fact::Demolition,
        Fact::ProhibitedPractice,
    ];
    check_minor("nothing is known", &Work::default(), &unknown(all));
}

#[test]
fn the_caution_says_check_and_asks() {
    let window = Work::window_replacement();
    let known = lead_safe(Some(1977), &window).unwrap().caution().unwrap();
    assert!(known.starts_with("check: lead-safe work rules apply"), "{known}");
    let asked = lead_safe(None, &window).unwrap().caution().unwrap();
    assert!(
        asked.starts_with("check: treat as if") && asked.contains("ask what is missing"),
        "{asked}"
    );
}

/// No source: the years and areas that are taken are our limits.
#[test]
fn slips_are_refused() {
    let rows = [
        (
            Some(1499),
            Work::default(),
            "year built is `1499`; expected a year from 1500 to 2200",
        ),
        (
            Some(2201),
            Work::default(),
            "year built is `2201`; expected a year from 1500 to 2200",
        ),
        (
            None,
            little("-1 sq ft", "0 sq ft"),
            "painted surface disturbed in one room is `-1 sq ft`; expected an area of 0 or more",
        ),
        (
            None,
            little("0 sq ft", "-1 sq ft"),
            "painted surface disturbed outside is `-1 sq ft`; expected an area of 0 or more",
        ),
    ];
    for (year, work, text) in rows {
        assert_eq!(lead_safe(year, &work).unwrap_err().to_string(), text);
    }
    assert!(
        lead_safe(Some(1500), &Work::default()).is_ok() && lead_safe(Some(2200), &Work::default()).is_ok()
    );
}

#[test]
fn what_was_only_recalled_says_so() {
    assert_eq!(YEAR_BASIS.status, Status::SecondHand);
    assert_eq!(MINOR_WORK_BASIS.status, Status::Verified);
    assert_eq!(CERTIFIED_FIRM_BASIS.status, Status::FromMemory);
    let applies = lead_safe(Some(1977), &Work::window_replacement()).unwrap();
    let caution = applies.caution().unwrap();
    assert!(
        caution.ends_with("a certified firm does the work (the firm from memory, to be confirmed)"),
        "{caution}"
    );
    assert!(
        NOT_DECIDED
            .iter()
            .all(|(_, basis)| basis.status == Status::FromMemory)
    );
}
