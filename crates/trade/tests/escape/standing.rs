//! Where the values stand, what is not known of them, and which facts are refused.

use super::text_rows::{number, rows};
use super::window;
use astragal_trade::escape::{
    Edition, Opening, OwnSection, Reach, Remark, Room, RoomUse, RoomVerdict, Values, Verdict, opening, room,
    values,
};
use astragal_trade::{Basis, Fact, FactsError, Status};

#[test]
fn what_is_not_known_of_a_window_well_is_said() {
    for (sill, remarks) in [
        ("-1/16", vec![Remark::WellNotKnown]),
        ("?", vec![Remark::WellNotKnown]),
        ("0", vec![]),
    ] {
        let opened = Opening {
            reach: Reach {
                onto_balcony: Some(true),
                ..Reach::default()
            },
            ..window("30 x 40", "30", sill)
        };
        let answer = opening(Edition::Nfpa101, &opened).unwrap();
        assert_eq!(answer.remarks, remarks, "{sill}");
        let verdict = if remarks.is_empty() {
            Verdict::Meets
        } else {
            Verdict::Undecided
        };
        assert_eq!(answer.verdict, verdict, "{sill}");
    }
}

/// Seen of NFPA 101 were the sizes and the bedrooms of which they are asked; of other rooms its wording has to be looked at.
#[test]
fn which_rooms_but_bedrooms_are_asked_by_nfpa_is_not_known() {
    for room_use in [
        RoomUse::Basement,
        RoomUse::HabitableAttic,
        RoomUse::BelowSleepingLoft,
        RoomUse::Other,
    ] {
        let asked = Room {
            room_use: Some(room_use),
            openings: Vec::new(),
        };
        let answer = room(Edition::Nfpa101, &asked).unwrap();
        assert_eq!(answer.verdict, RoomVerdict::Undecided, "{room_use:?}");
        assert!(answer.missing.contains(&Fact::WordingInForce), "{room_use:?}");
    }
    let bedroom = Room {
        room_use: Some(RoomUse::Sleeping),
        openings: Vec::new(),
    };
    let answer = room(Edition::Nfpa101, &bedroom).unwrap();
    assert_eq!(answer.verdict, RoomVerdict::NoOpeningsGiven);
}

/// Where the values stand: IRC 2018, 2021 and 2024 and NFPA 101 in texts that quote them, `recalled` where the text of that edition was
/// not seen; of the IBC of 2021 only a section number, in IEBC 505.3, as the equal of IRC R310.2.
const SECTIONS: &str = "
    row          | IRC 2018                      | IRC 2021            | IRC 2024                                | IBC 2018                | IBC 2021         | NFPA 101
    area         | R310.2.1                      | R310.2.1            | R319.2.1                                | 1030 recalled           | 1031.3 recalled  | 24.2.2.3
    grade floor  | R310.2.1, exception           | R310.2.1, exception | R319.2.1, exception                     | 1030 recalled           | 1031.3 recalled  | -
    below ground | R310.2.1, exception recalled  | R310.2.1, exception recalled | R319.2.1, exception recalled            | -                       | -                | -
    width        | R310.2.1                      | R310.2.2            | R319.2.2                                | 1030 recalled           | 1031.3 recalled  | 24.2.2.3
    height       | R310.2.1                      | R310.2.2            | R319.2.2                                | 1030 recalled           | 1031.3 recalled  | 24.2.2.3
    bottom       | R310.2.2                      | R310.2.3            | R319.2.3                                | 1030 recalled           | 1031.3 recalled  | 24.2.2.3
    without keys | R310.1.1                      | R310.1.1            | R319.2.2                                | 1030 recalled           | 1031 recalled    | 24.2.2.3
    devices      | R310.1.1                      | R310.1.1            | R319, control devices recalled          | 505.3.1                 | 505.3.1          | 24.2.2.3, control devices recalled
    reach        | -                             | -                   | -                                       | -                       | -                | 24.2.2.3
    well         | R310.2.3                      | R310.4              | R319.4 recalled                         | window wells recalled   | window wells recalled | -
    replacement  | R310.2.5                      | R310.5              | R319, section number not seen recalled  | 505.3 recalled          | 505.3            | -
    rooms        | R310.1                        | R310.1              | R319.1                                  | 1030 recalled           | 1031.2 recalled  | 24.2.2 recalled
";

fn basis_of(values: &Values, name: &str) -> Option<Basis> {
    match name {
        "area" => Some(values.area.basis),
        "grade floor" => values.area_grade_floor.as_ref().map(|limit| limit.basis),
        "below ground" => values.below_grade,
        "width" => Some(values.width.basis),
        "height" => Some(values.height.basis),
        "bottom" => Some(values.bottom.basis),
        "without keys" => Some(values.without_keys),
        "devices" => Some(values.devices),
        "reach" => values.reach.as_ref().map(|limit| limit.basis),
        "well" => values.well,
        "replacement" => values.replacement.map(|(basis, _)| basis),
        "rooms" => Some(values.rooms),
        other => panic!("`{other}` is no value"),
    }
}

#[test]
fn each_value_names_its_section_and_how_far_it_was_seen() {
    for row in rows(SECTIONS) {
        for (expected, edition) in row.iter().skip(1).zip(Edition::ALL) {
            let shown = basis_of(&values(*edition), row[0]).map_or("-".to_owned(), |basis| {
                let recalled = if basis.status == Status::FromMemory {
                    " recalled"
                } else {
                    ""
                };
                format!("{}{recalled}", basis.section)
            });
            assert_eq!(shown, *expected, "{}, {edition}", row[0]);
        }
    }
}

/// Headings of IRC 2021 in a state's map of adopted sections, no more of their text; the numbers of 2018 from memory.
const OWN_SECTIONS: &str = "
    row             | IRC 2018        | IRC 2021 | IRC 2024 | IBC 2018 | IBC 2021 | NFPA 101
    Addition        | R310.5 recalled | R310.6   | -        | -        | -        | -
    AlteredBasement | R310.6 recalled | R310.7   | -        | -        | -        | -
";

#[test]
fn work_with_a_section_of_its_own_is_named_and_not_decided() {
    for (row, work) in rows(OWN_SECTIONS).into_iter().zip(OwnSection::ALL) {
        assert_eq!(row[0], format!("{work:?}"));
        for (expected, edition) in row.iter().skip(1).zip(Edition::ALL) {
            let shown = work.basis(*edition).map_or("-".to_owned(), |basis| {
                assert_eq!(basis.document, edition.name());
                match basis.status {
                    Status::FromMemory => format!("{} recalled", basis.section),
                    _ => basis.section.to_owned(),
                }
            });
            assert_eq!(shown, *expected, "{work:?}, {edition}");
        }
    }
}

#[test]
fn facts_that_no_opening_has_are_refused() {
    let with = |change: fn(&mut Opening)| {
        let mut opened = window("30 x 40", "30", "120");
        change(&mut opened);
        opening(Edition::Irc2021, &opened)
    };
    let rows = [
        (
            "width below nothing",
            with(|it| it.clear_width = Some(number("-1").into())),
            Fact::ClearWidth,
        ),
        (
            "height past 50 ft",
            with(|it| it.clear_height = Some(number("601").into())),
            Fact::ClearHeight,
        ),
        (
            "bottom below the floor",
            with(|it| it.bottom = Some(number("-2"))),
            Fact::BottomOfClearOpening,
        ),
        (
            "sill past 3,000 ft",
            with(|it| it.sill_above_grade = Some(number("-36001"))),
            Fact::SillAboveGrade,
        ),
        (
            "height past 3,000 ft",
            with(|it| it.reach.height_above_grade = Some(number("36001"))),
            Fact::HeightAboveGrade,
        ),
        (
            "well projection below 0",
            with(|it| it.well.projection = Some(number("-1"))),
            Fact::WellProjection,
        ),
        (
            "well width below 0",
            with(|it| it.well.width = Some(number("-1"))),
            Fact::WellWidth,
        ),
        (
            "well depth below 0",
            with(|it| it.well.depth = Some(number("-1"))),
            Fact::WellDepth,
        ),
        (
            "well area below 0",
            with(|it| it.well.area = Some(number("-1"))),
            Fact::WellArea,
        ),
    ];
    for (name, refused, fact) in rows {
        match refused {
            Err(FactsError::Input(error)) => assert_eq!(error.fact, fact, "{name}"),
            other => panic!("{name}: {other:?}"),
        }
    }
    let larger = with(|it| {
        it.well.area = Some(number("1297"));
        it.well.projection = Some(number("36"));
        it.well.width = Some(number("36"));
    });
    assert_eq!(
        larger.unwrap_err().to_string(),
        "horizontal area of the window well is `9.0069… sq ft` and projection of the window well from the wall is `36 in by 36 in`; expected an area of at most projection times width"
    );
}
