//! One opening by each edition, with boundary rows on both sides of every limit.

use super::text_rows::{maybe, number, rows, said};
use super::{device, edition, shown, window};
use astragal_trade::escape::{Edition, Opening, Reach, Remark, Well, opening};

/// Sizes by IRC 2021 R310.2.1 and R310.2.2, arithmetic computed. `high` has its sill 120 in above the ground, `at grade` 0 in.
const SIZES: &str = "
    row                                    | clear        | high         | at grade
    both sides at their least              | 20 x 24      | short: area  | short: area
    area that rounds to 5.7                | 20 x 41      | short: area  | meets
    area of exactly 5.7                    | 20 x 41.04   | meets        | meets
    one sixteenth more                     | 20 x 657/16  | meets        | meets
    a tenth more                           | 20 x 41.1    | meets        | meets
    wide, area that rounds to 5.7          | 34 x 24      | short: area  | meets
    wide, area of exactly 5.7              | 34.2 x 24    | meets        | meets
    wide, a quarter more                   | 34.25 x 24   | meets        | meets
    area of exactly 5                      | 20 x 36      | short: area  | meets
    wide, area of exactly 5                | 30 x 24      | short: area  | meets
    area just under 5                      | 20 x 575/16  | short: area  | short: area
    area alone is not enough               | 19.75 x 44   | short: width | short: width
    width one sixteenth under              | 319/16 x 60  | short: width | short: width
    width one sixteenth over               | 321/16 x 60  | meets        | meets
    height one sixteenth under             | 60 x 383/16  | short: height | short: height
    height of exactly 24                   | 60 x 24      | meets        | meets
    height one sixteenth over              | 60 x 385/16  | meets        | meets
    hung 36 x 60 of losses 4 and 4 1/2     | 32 x 25.5    | short: area  | meets
    hung 36 x 60 1/2                       | 32 x 25.75   | meets        | meets
    hung 36 x 62                           | 32 x 26.5    | meets        | meets
    slider 60 x 42                         | 26 x 38      | meets        | meets
    slider 48 x 36                         | 20 x 32      | short: area  | short: area
    casement 28 x 48                       | 20 x 44      | meets        | meets
    a quarter narrower                     | 19.75 x 44   | short: width | short: width
    does not open                          | 0 x 0        | short: area, width, height | short: area, width, height
";

#[test]
fn sizes_are_compared_exactly_and_limits_are_taken() {
    for row in rows(SIZES) {
        for edition in [
            Edition::Irc2018,
            Edition::Irc2021,
            Edition::Irc2024,
            Edition::Ibc2018,
            Edition::Ibc2021,
        ] {
            let high = opening(edition, &window(row[1], "30", "120")).unwrap();
            assert_eq!(shown(&high), row[2], "{}, high, {edition}", row[0]);
            let low = opening(edition, &window(row[1], "30", "0")).unwrap();
            assert_eq!(shown(&low), row[3], "{}, at grade, {edition}", row[0]);
        }
        // The sheet of NFPA 101 24.2.2.3 prints 20 x 24 in as 3.33 sq ft, and has no smaller area at grade.
        let reached = |sill| Opening {
            reach: Reach {
                height_above_grade: maybe("0"),
                ..Reach::default()
            },
            ..window(row[1], "30", sill)
        };
        for sill in ["120", "0"] {
            let by_sheet = opening(Edition::Nfpa101, &reached(sill)).unwrap();
            assert_eq!(shown(&by_sheet), row[2], "{}, {sill}, NFPA 101", row[0]);
        }
    }
}

/// The bottom: IRC 2018 R310.2.2, IRC 2021 R310.2.3, IRC 2024 R319.2.3: at most 44 in.
const BOTTOMS: &str = "
    row                    | bottom  | answer
    on the floor           | 0       | meets
    one sixteenth under    | 703/16  | meets
    exactly 44             | 44      | meets
    one sixteenth over     | 705/16  | short: bottom
    not known              | ?       | open: bottom_of_clear_opening
";

#[test]
fn the_bottom_of_the_clear_opening_is_at_most_44_inches_above_the_floor() {
    for row in rows(BOTTOMS) {
        for edition in Edition::ALL {
            let opened = Opening {
                reach: Reach {
                    onto_balcony: Some(true),
                    ..Reach::default()
                },
                ..window("30 x 40", row[1], "120")
            };
            let answer = opening(*edition, &opened).unwrap();
            assert_eq!(shown(&answer), row[2], "{}, {edition}", row[0]);
        }
    }
}

/// Grade floor: the sill at most 44 in above or below the adjacent ground (definition of the IRC and IBC). Below the ground:
/// IRC 2021 R310.2.1, a state's wording of 2021; IRC 2018 and 2024 from memory; not seen in the IBC. The well is large enough.
const GROUND: &str = "
    row                               | edition  | clear       | sill    | answer
    44 above                          | IRC 2021 | 20 x 36     | 44      | meets
    one sixteenth more above          | IRC 2021 | 20 x 36     | 705/16  | short: area
    at the ground                     | IRC 2021 | 20 x 36     | 0       | meets
    44 below                          | IRC 2021 | 20 x 36     | -44     | meets
    further below                     | IRC 2021 | 20 x 36     | -705/16 | meets
    further below, 2018               | IRC 2018 | 20 x 36     | -705/16 | meets
    further below, 2024               | IRC 2024 | 20 x 36     | -705/16 | meets
    44 above by the IBC               | IBC 2021 | 20 x 36     | 44      | meets
    44 below by the IBC               | IBC 2021 | 20 x 36     | -44     | meets
    further below by the IBC          | IBC 2021 | 20 x 36     | -705/16 | short: area
    further below by the IBC of 2018  | IBC 2018 | 20 x 36     | -705/16 | short: area
    below, and under 5 sq ft          | IRC 2021 | 20 x 575/16 | -60     | short: area
    ground not known, over 5.7        | IRC 2021 | 20 x 41.04  | ?       | meets
    ground not known, between         | IRC 2021 | 20 x 41     | ?       | open: sill_above_grade
    ground not known, exactly 5       | IRC 2021 | 20 x 36     | ?       | open: sill_above_grade
    ground not known, under 5         | IRC 2021 | 20 x 575/16 | ?       | short: area
";

#[test]
fn the_smaller_area_counts_near_the_ground_and_not_by_storey() {
    for row in rows(GROUND) {
        let opened = Opening {
            well: roomy_well(),
            ..window(row[2], "30", row[3])
        };
        let answer = opening(edition(row[1]), &opened).unwrap();
        assert_eq!(shown(&answer), row[4], "{}", row[0]);
    }
}

#[test]
fn an_answer_that_rests_on_the_smaller_area_says_so() {
    let answer = |edition, sill| {
        let opened = Opening {
            well: roomy_well(),
            ..window("20 x 36", "30", sill)
        };
        opening(edition, &opened).unwrap()
    };
    assert_eq!(answer(Edition::Irc2021, "10").remarks, [Remark::GradeFloor]);
    assert_eq!(answer(Edition::Irc2021, "-60").remarks, [Remark::BelowGrade]);
    assert!(!answer(Edition::Irc2021, "10").rests_on_memory());
    for (edition, name) in [(Edition::Irc2018, "IRC 2018"), (Edition::Irc2021, "IRC 2021")] {
        let recalled = answer(edition, "-60");
        assert!(recalled.rests_on_memory());
        let last = recalled.sentences().pop().unwrap();
        assert_eq!(
            last,
            format!("rests on {name} R310.2.1, exception (from memory, to be confirmed)")
        );
    }
}

fn roomy_well() -> Well {
    Well {
        area: Some(number("2000")),
        projection: Some(number("40")),
        width: Some(number("50")),
        depth: Some(number("40")),
        ladder: None,
    }
}

/// IRC 2018 R310.2.3, IRC 2021 R310.4: 9 sq ft, 36 in out and wide, a ladder when deeper than 44 in. Values of code checklists.
const WELLS: &str = "
    row                            | sill  | area    | out     | wide   | deep   | ladder | answer
    just large enough              | -30   | 1296    | 36      | 36     | 44     | no     | meets
    area just under                | -30   | 1295.9  | 36      | 36     | 44     | no     | short: well area
    reaches out less               | -30   | 1296    | 575/16  | 40     | 44     | no     | short: well projection
    narrower                       | -30   | 1296    | 40      | 575/16 | 44     | no     | short: well width
    deeper without a ladder        | -30   | 1296    | 36      | 36     | 705/16 | no     | short: well ladder
    deeper with a ladder           | -30   | 1296    | 36      | 36     | 705/16 | yes    | meets
    deep, ladder not known         | -30   | 1296    | 36      | 36     | 705/16 | ?      | open: well_ladder
    depth not known, a ladder      | -30   | 1296    | 36      | 36     | ?      | yes    | meets
    depth and ladder not known     | -30   | 1296    | 36      | 36     | ?      | ?      | open: well_depth, well_ladder
    area not known                 | -30   | ?       | 36      | 36     | 40     | no     | open: well_area
    no well                        | -30   | 0       | 0       | 0      | 0      | no     | short: well area, well projection, well width
    nothing known of it            | -30   | ?       | ?       | ?      | ?      | ?      | open: well_area, well_projection, well_width, well_depth, well_ladder
    just below the ground          | -1/16 | ?       | 36      | 36     | 40     | no     | open: well_area
    at the ground, none is asked   | 0     | ?       | ?       | ?      | ?      | ?      | meets
    ground not known, nor a well   | ?     | ?       | ?       | ?      | ?      | ?      | open: sill_above_grade
    ground not known, small well   | ?     | 1200    | 36      | 36     | 40     | no     | open: sill_above_grade
    ground not known, fitting well | ?     | 1296    | 36      | 36     | 44     | no     | meets
";

#[test]
fn an_opening_below_the_ground_has_a_window_well() {
    for row in rows(WELLS) {
        let well = Well {
            area: maybe(row[2]),
            projection: maybe(row[3]),
            width: maybe(row[4]),
            depth: maybe(row[5]),
            ladder: said(row[6]),
        };
        let opened = Opening {
            well,
            ..window("30 x 40", "30", row[1])
        };
        let answer = opening(Edition::Irc2021, &opened).unwrap();
        assert_eq!(shown(&answer), row[7], "{}", row[0]);
    }
}

/// IRC 2021 R310.1.1 and IEBC 505.3.1 on control devices; that a vent latch has no standing: common practice, no source.
const DEVICES: &str = "
    row                          | device        | keys | answer
    none                         | none          | yes  | meets
    fixed stop                   | stop          | yes  | short: device
    vent latch                   | latch         | yes  | meets
    releasable                   | releasable    | yes  | meets
    guard that lets go           | guard lets go | yes  | meets
    guard that does not          | guard holds   | yes  | short: device
    guard of which it is unknown | guard         | yes  | open: device_releases
    not known                    | ?             | yes  | open: control_device
    needs a key                  | none          | no   | short: keys
    keys not known               | none          | ?    | open: opens_without_keys
    a stop decides               | stop          | ?    | short: device; open: opens_without_keys
";

#[test]
fn a_device_that_does_not_let_go_defeats_escape() {
    for row in rows(DEVICES) {
        let opened = Opening {
            device: device(row[1]),
            opens_without_keys: said(row[2]),
            ..window("30 x 40", "30", "120")
        };
        let answer = opening(Edition::Irc2021, &opened).unwrap();
        assert_eq!(shown(&answer), row[3], "{}", row[0]);
        assert_eq!(
            answer.remarks.contains(&Remark::VentLatch),
            row[1] == "latch",
            "{}",
            row[0]
        );
    }
}

/// NFPA 101 24.2.2.3, a state fire marshal's sheet of 2017: within 20 ft of the ground, or reached, or onto a balcony.
const REACH: &str = "
    row                      | height | reached | balcony | answer
    exactly 20 ft            | 240    | no      | no      | meets
    one sixteenth more       | 3841/16| no      | no      | short: reach
    higher, rescuers reach   | 300    | yes     | no      | meets
    higher, onto a balcony   | 300    | no      | yes     | meets
    higher, balcony unknown  | 300    | no      | ?       | open: balcony_outside
    nothing known            | ?      | ?       | ?       | open: height_above_grade, rescue_access, balcony_outside
";

#[test]
fn nfpa_101_asks_how_rescuers_reach_it() {
    for row in rows(REACH) {
        let reach = Reach {
            height_above_grade: maybe(row[1]),
            rescue_access: said(row[2]),
            onto_balcony: said(row[3]),
        };
        let opened = Opening {
            reach,
            ..window("30 x 40", "30", "120")
        };
        let answer = opening(Edition::Nfpa101, &opened).unwrap();
        assert_eq!(shown(&answer), row[4], "{}", row[0]);
        let by_irc = opening(Edition::Irc2021, &opened).unwrap();
        assert_eq!(shown(&by_irc), "meets", "{}", row[0]);
    }
}

/// One missing fact each, by IRC 2021; what is known to be lacking decides all the same.
const MISSING: &str = "
    row                              | clear       | bottom | answer
    width not known                  | ? x 40      | 30     | open: clear_width
    height not known                 | 30 x ?      | 30     | open: clear_height
    neither known                    | ? x ?       | 30     | open: clear_width, clear_height
    nothing known                    | ? x ?       | ?      | open: clear_width, clear_height, bottom_of_clear_opening
    too narrow, height not known     | 19 x ?      | 30     | short: width; open: clear_height
    too high, width not known        | ? x 40      | 45     | short: bottom; open: clear_width
    width between both sides of 20   | 19..21 x 60 | 30     | open: clear_width
    width between, all under         | 18..19 x 60 | 30     | short: width
    width from exactly 20            | 20..21 x 60 | 30     | meets
    area between both sides of 5.7   | 20..21 x 41 | 30     | open: clear_width
";

#[test]
fn what_is_missing_is_named_and_what_is_lacking_decides() {
    for row in rows(MISSING) {
        let answer = opening(Edition::Irc2021, &window(row[1], row[2], "120")).unwrap();
        assert_eq!(shown(&answer), row[3], "{}", row[0]);
    }
}

/// By how much, exactly. Computed; limits of IRC 2021.
#[test]
fn a_shortfall_says_by_how_much() {
    let answer = opening(Edition::Irc2021, &window("319/16 x 23", "44.0625", "120")).unwrap();
    let said = answer.sentences();
    let expected = [
        "the opening falls short of what IRC 2021 asks of an escape opening",
        "clear area is 3.1844… sq ft, 2.5155… sq ft less than 5.7 sq ft (IRC 2021 R310.2.1)",
        "clear width is 19 15/16 in, 1/16 in less than 20 in (IRC 2021 R310.2.2)",
        "clear height is 23 in, 1 in less than 24 in (IRC 2021 R310.2.2)",
        "bottom of the clear opening is 44 1/16 in above the floor, 1/16 in more than 44 in (IRC 2021 R310.2.3)",
    ];
    assert_eq!(said, expected);
    let amounts: Vec<String> = answer
        .shortfalls
        .iter()
        .map(|short| short.amount.as_ref().unwrap().by.to_string())
        .collect();
    assert_eq!(amounts, ["362.2375", "0.0625", "1", "0.0625"]);
    let near = opening(Edition::Irc2021, &window("20 x 35", "30", "10")).unwrap();
    assert_eq!(near.shortfalls[0].amount.as_ref().unwrap().limit, number("720"));
}
