//! Whole answers: what calls for it, what was asked, what is missing, sections by edition, several lites, bad facts.

use super::text_rows::{number, rows};
use super::{ask, harmless, with};
use astragal_trade::building_code::Edition;
use astragal_trade::safety_glazing::{
    CATEGORY_BASIS, COVERED, COVERED_BASIS, Category, Lite, Location, Overall, Site, TEST_STANDARD,
    TESTS_BASIS, TESTS_SINCE, basis, category, lite, lites, notes,
};
use astragal_trade::{Status, Truth};
use proptest::prelude::*;

#[test]
fn nothing_called_for_says_what_was_asked() {
    let answer = ask(Edition::Irc2021, "");
    assert_eq!(answer.overall, Overall::NotByWhatWasAsked);
    assert_eq!(
        answer.sentences(),
        [
            "safety glazing is not called for in `lite` by what was asked of IRC 2021: in a door, beside a door, a large pane near a walking surface, in a guard or railing, by a tub, shower, spa, sauna or pool, beside a stair or ramp, at the bottom landing of a stair; check with the local code"
        ]
    );
}

#[test]
fn one_location_decides_and_the_open_ones_are_said_beside_it() {
    let answer = ask(Edition::Ibc2021, "guard yes; wet ?; wet_edge 10; water 0");
    assert_eq!(answer.overall, Overall::CalledFor);
    assert_eq!(answer.calls_for_it(), Truth::Yes);
    assert_eq!(ask(Edition::Irc2021, "").calls_for_it(), Truth::No);
    assert_eq!(
        answer.sentences()[2],
        "not known beside that: whether there is a tub, shower, spa, sauna or pool"
    );
}

#[test]
fn nothing_known_lists_every_fact_and_decides_nothing() {
    let answer = lite(Edition::Irc2021, &Lite::default(), &Site::default()).unwrap();
    assert_eq!(answer.overall, Overall::CannotDecide);
    assert_eq!(answer.missing.len(), 18);
    assert!(
        answer
            .locations
            .iter()
            .all(|found| matches!(found.calls_for_it, Truth::Unknown(_)))
    );
    assert!(
        answer.sentences()[0]
            .starts_with("whether safety glazing is called for in the lite by IRC 2021 cannot be decided")
    );
}

/// IRC 2018, 2021 and 2024, IBC 2406.4, as quoted; `recalled` where the text of that edition was not seen.
const SECTIONS: &str = "
    row           | IRC 2018           | IRC 2021           | IRC 2024           | IBC 2018           | IBC 2021
    InDoor        | R308.4.1           | R308.4.1           | R324.4.1 recalled  | 2406.4.1 recalled  | 2406.4.1 recalled
    BesideDoor    | R308.4.2           | R308.4.2           | R324.4.2           | 2406.4.2 recalled  | 2406.4.2 recalled
    LargePane     | R308.4.3           | R308.4.3           | R324.4.3           | 2406.4.3           | 2406.4.3
    Guard         | R308.4.4 recalled  | R308.4.4 recalled  | R324.4.4           | 2406.4.4 recalled  | 2406.4.4 recalled
    WetPlace      | R308.4.5           | R308.4.5           | R324.4.5 recalled  | 2406.4.5 recalled  | 2406.4.5 recalled
    Stair         | R308.4.6 recalled  | R308.4.6 recalled  | R324.4.6 recalled  | 2406.4.6           | 2406.4.6
    BottomLanding | R308.4.7           | R308.4.7           | R324.4.7 recalled  | 2406.4.7           | 2406.4.7
";

#[test]
fn each_location_names_its_section_by_edition_and_how_far_it_was_seen() {
    let editions = [
        Edition::Irc2018,
        Edition::Irc2021,
        Edition::Irc2024,
        Edition::Ibc2018,
        Edition::Ibc2021,
    ];
    for (row, location) in rows(SECTIONS).into_iter().zip(Location::ALL) {
        assert_eq!(row.first().copied(), Some(format!("{location:?}").as_str()));
        for (expected, edition) in row.iter().skip(1).zip(editions) {
            let found = basis(edition, location);
            let recalled = if found.status == Status::FromMemory {
                " recalled"
            } else {
                ""
            };
            assert_eq!(format!("{}{recalled}", found.section), *expected, "{edition}");
            assert_eq!(found.document, edition.name());
        }
    }
}

#[test]
fn a_value_from_memory_is_flagged_where_it_calls_for_glazing() {
    let sentences = ask(Edition::Irc2021, "stair yes; stair_edge 10; stair_far 0").sentences();
    assert_eq!(
        sentences[1],
        "called for: beside a stair or ramp (IRC 2021 R308.4.6 (from memory, to be confirmed))"
    );
}

#[test]
fn each_exposed_lite_is_asked_by_itself() {
    let inner = with("area 1300; bottom 20; top 60; walk 10");
    let outer = with("area 1300; bottom 10; top 60; walk 10");
    let open = with("area ?; bottom 10; top 60; walk 10");
    let overall = |given: &[(Lite, Site)]| lites(Edition::Irc2021, given).unwrap().overall;
    assert_eq!(overall(std::slice::from_ref(&inner)), Overall::NotByWhatWasAsked);
    assert_eq!(overall(&[inner.clone(), outer.clone()]), Overall::CalledFor);
    assert_eq!(overall(&[outer, open.clone()]), Overall::CalledFor);
    assert_eq!(overall(&[inner, open]), Overall::CannotDecide);
    assert_eq!(overall(&[]), Overall::CannotDecide);
}

#[test]
fn facts_that_no_lite_has_are_refused() {
    let rows = [
        ("area 0", "exposed area of the lite is `0 sq ft`"),
        ("area -5", "exposed area of the lite is `-0.0347… sq ft`"),
        ("area 360001", "exposed area of the lite is `2500.0069… sq ft`"),
        ("bottom -1", "exposed glass edge above the floor is `-1 in`"),
        (
            "bottom ?; top -1",
            "top edge of the exposed glass above the floor is `-1 in`",
        ),
        (
            "bottom 20; top 20",
            "top edge of the exposed glass above the floor is `20 in` and exposed glass edge above the floor is `20 in`; expected a top edge above the bottom edge",
        ),
        ("walk -1", "walking surface from the glass is `-1 in`"),
        ("door -1", "distance of the glass from a door is `-1 in`"),
        ("water -1", "water's edge from the glass is `-1 in`"),
        ("stair_far -1", "stair or ramp from the glass is `-1 in`"),
        (
            "tread 36001",
            "bottom tread of the stair from the glass is `36001 in`",
        ),
        (
            "wet_edge -36001",
            "exposed glass edge above where one stands in or at the water is `-36001 in`",
        ),
        (
            "stair_edge 36001",
            "exposed glass edge above the stair or ramp is `36001 in`",
        ),
        (
            "landing_edge 36001",
            "exposed glass edge above the landing is `36001 in`",
        ),
    ];
    for (facts, expected) in rows {
        let (pane, site) = with(facts);
        let refused = lite(Edition::Irc2021, &pane, &site).unwrap_err().to_string();
        assert!(refused.starts_with(expected), "{facts}: {refused}");
        assert!(refused.contains("; expected "), "{facts}: {refused}");
        assert!(
            lites(Edition::Irc2021, &[harmless(), (pane, site)]).is_err(),
            "{facts}"
        );
    }
    let (pane, site) = harmless();
    let nothing = lite(Edition::Nfpa101, &pane, &site).unwrap_err().to_string();
    assert!(nothing.starts_with("nothing about safety glazing is known here for `NFPA 101`"));
}

/// From memory: IRC Table R308.3.1(1), whose text was not seen.
const CATEGORIES: &str = "
    row                | place         | area | sliding | category
    hinged door, 9     | InDoor        | 1296 | no      | One
    hinged door, over  | InDoor        | 1297 | no      | Two
    sliding door, 9    | InDoor        | 1296 | yes     | Two
    by water           | WetPlace      | 10   | no      | Two
    large pane         | LargePane     | 1297 | no      | Two
    beside a door, 9   | BesideDoor    | 1296 | no      | -
    beside a door, over | BesideDoor   | 1297 | no      | Two
    guard              | Guard         | 1296 | no      | -
    stair              | Stair         | 1296 | no      | -
    landing            | BottomLanding | 1296 | no      | -
";

#[test]
fn a_category_is_said_only_as_recalled() {
    for row in rows(CATEGORIES) {
        let [name, place, area, sliding, expected] = row[..] else {
            panic!("{row:?}");
        };
        let location = Location::ALL
            .into_iter()
            .find(|it| format!("{it:?}") == place)
            .unwrap();
        let found = category(location, &number(area), sliding == "yes");
        let shown = found.map_or("-", |category| match category {
            Category::One => "One",
            Category::Two => "Two",
        });
        assert_eq!(shown, expected, "{name}");
    }
    assert_eq!(CATEGORY_BASIS.status, Status::FromMemory);
    assert_eq!(
        notes()
            .iter()
            .filter(|note| note.basis.status == Status::FromMemory)
            .count(),
        3
    );
}

/// Source: 16 CFR 1201 in a copy of its text; Category II in texts that quote it; Federal Register 2016-06523 for the tests.
#[test]
fn the_federal_standard_covers_doors_and_enclosures() {
    let rows = [
        "storm doors",
        "doors",
        "bath and shower doors and enclosures",
        "sliding doors of the patio kind",
    ];
    assert_eq!(COVERED, rows);
    assert_eq!(COVERED_BASIS.status, Status::Verified);
    let rows = [
        (Category::Two, 400, Status::SecondHand),
        (Category::One, 150, Status::FromMemory),
    ];
    for (category, foot_pounds, status) in rows {
        let (found, basis) = category.foot_pounds();
        assert_eq!((found, basis.status), (foot_pounds, status), "{category:?}");
    }
    assert_eq!(
        (TEST_STANDARD, TESTS_SINCE.to_string().as_str()),
        ("ANSI Z97.1-2015", "2016-04-22")
    );
    assert_eq!(TESTS_BASIS.status, Status::Verified);
    assert!(
        notes()
            .iter()
            .any(|note| note.basis == TESTS_BASIS && note.words.contains("since 22 April 2016"))
    );
}

proptest! {
    /// Every fact known: the verdict is that of the definition, written out a second time for the large pane, the door and the stair.
    #[test]
    fn known_facts_are_decided_as_the_definition_says(
        area in 1200_i64..1400, bottom in 0_i64..80, more in 1_i64..60, walk in 30_i64..42,
        door in 20_i64..28, edge in 30_i64..64, far in 30_i64..42,
    ) {
        let facts = format!(
            "area {area}; bottom {bottom}; top {}; walk {walk}; wall in plane; door {door}; stair yes; stair_edge {edge}; stair_far {far}",
            bottom + more
        );
        for edition in [Edition::Irc2021, Edition::Ibc2021] {
            let large = area > 1296 && bottom < 18 && bottom + more > 36 && walk <= 36;
            let by_door = bottom < 60 && door <= 24;
            let by_stair = edge < (if edition == Edition::Irc2021 { 36 } else { 60 }) && far < 36;
            let (pane, site) = with(&facts);
            let answer = lite(edition, &pane, &site).unwrap();
            prop_assert!(answer.missing.is_empty());
            prop_assert_eq!(answer.overall == Overall::CalledFor, large || by_door || by_stair);
        }
    }

    #[test]
    fn forgetting_a_fact_never_turns_a_location_round(
        area in 1200_i64..1400, bottom in 0_i64..80, walk in 30_i64..42, door in 20_i64..28, mask in any::<u8>(),
    ) {
        let facts = format!("area {area}; bottom {bottom}; top {}; walk {walk}; wall in plane; door {door}", bottom + 30);
        let (pane, site) = with(&facts);
        let all = lite(Edition::Irc2021, &pane, &site).unwrap();
        let (mut less_pane, mut less_site) = (pane, site);
        if mask & 1 != 0 { less_pane.area = None; }
        if mask & 2 != 0 { less_pane.bottom_edge = None; }
        if mask & 4 != 0 { less_pane.top_edge = None; }
        if mask & 8 != 0 { less_site.walking_surface = None; }
        if mask & 16 != 0 { less_site.door.wall = None; }
        if mask & 32 != 0 { less_site.door.distance = None; }
        if mask & 64 != 0 { less_site.in_guard = None; }
        let less = lite(Edition::Irc2021, &less_pane, &less_site).unwrap();
        for (before, after) in all.locations.iter().zip(&less.locations) {
            let same = before.calls_for_it == after.calls_for_it;
            prop_assert!(same || matches!(after.calls_for_it, Truth::Unknown(_)));
        }
    }
}
