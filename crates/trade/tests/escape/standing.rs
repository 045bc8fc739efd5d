//! Where the values stand, what is not known of them, and which facts are refused.

use super::text_rows::number;
use super::window;
use astragal_trade::escape::{Edition, Opening, Reach, Remark, opening, values};
use astragal_trade::{Fact, FactsError};

#[test]
fn what_is_not_known_of_a_window_well_is_said() {
    for (sill, remarks) in [
        ("-10", vec![Remark::WellNotKnown]),
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
    }
}

/// Where the values stand, as read in texts that quote IRC 2018, 2021 and 2024; IBC 2018 from memory.
#[test]
fn each_value_names_its_section() {
    let sections = |edition| {
        let values = values(edition);
        [
            values.area.basis,
            values.height.basis,
            values.bottom.basis,
            values.without_keys,
            values.rooms,
        ]
        .map(|basis| basis.to_string())
    };
    let rows = [
        (
            Edition::Irc2018,
            [
                "IRC 2018 R310.2.1",
                "IRC 2018 R310.2.1",
                "IRC 2018 R310.2.2",
                "IRC 2018 R310.1.1",
                "IRC 2018 R310.1",
            ],
        ),
        (
            Edition::Irc2021,
            [
                "IRC 2021 R310.2.1",
                "IRC 2021 R310.2.2",
                "IRC 2021 R310.2.3",
                "IRC 2021 R310.1.1",
                "IRC 2021 R310.1",
            ],
        ),
        (
            Edition::Irc2024,
            [
                "IRC 2024 R319.2.1",
                "IRC 2024 R319.2.2",
                "IRC 2024 R319.2.3",
                "IRC 2024 R319.2.2",
                "IRC 2024 R319.1",
            ],
        ),
        (
            Edition::Ibc2018,
            ["IBC 2018 1030 (from memory, to be confirmed)"; 5],
        ),
        (Edition::Ibc2021, ["IBC 2021 1031.3"; 5]),
        (Edition::Nfpa101, ["NFPA 101 24.2.2.3"; 5]),
    ];
    for (edition, expected) in rows {
        assert_eq!(sections(edition), expected);
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
