//! The grade to look for.

use crate::wind::pressures;
use crate::{grade, number, site};
use astragal_exact::Number;
use astragal_trade::interval::Interval;
use astragal_trade::structure::{
    Exposure, Grade, GradeAnswer, NetPressures, grade_to_look_for, needed_pressure,
};
use astragal_trade::{Fact, Missing};
use proptest::prelude::*;

/// 36 x 60 in, 130 mph, 30 ft, near a corner. Source: computed, grade at least the larger pressure.
#[test]
fn the_worked_example_looks_for_these_grades() {
    let rows = [
        (Exposure::B, true, 25),
        (Exposure::C, true, 35),
        (Exposure::D, true, 40),
        (Exposure::B, false, 20),
        (Exposure::C, false, 30),
        (Exposure::D, false, 35),
    ];
    for (exposure, near_corner, psf) in rows {
        let found = pressures(&site("130", exposure, "30"), "15");
        let answer = grade_to_look_for(&found, Some(near_corner));
        assert_eq!(
            answer,
            GradeAnswer::Grade(grade(psf)),
            "{exposure}, near a corner: {near_corner}"
        );
    }
}

/// Source: computed, from the formula of ASCE 7-16 as quoted.
#[test]
fn near_a_corner_or_not_matters_only_where_the_grades_differ() {
    let large = pressures(&site("115", Exposure::B, "30"), "500");
    assert_eq!(grade_to_look_for(&large, None), GradeAnswer::Grade(grade(15)));
    let small = pressures(&site("130", Exposure::B, "30"), "15");
    let expected = GradeAnswer::ByCorner {
        near_corner: Box::new(GradeAnswer::Grade(grade(25))),
        away: Box::new(GradeAnswer::Grade(grade(20))),
        missing: Missing::from([Fact::NearCorner]),
    };
    assert_eq!(grade_to_look_for(&small, None), expected);
}

fn given(inward: Interval, outward: Interval) -> NetPressures {
    NetPressures {
        inward,
        outward_near_corner: outward.clone(),
        outward,
        assumptions: vec![],
    }
}

/// What stands around a pressure: it alone, or a millionth each way when it is written with `~`.
fn interval(text: &str) -> Interval {
    match text.strip_prefix('~') {
        Some(text) => Interval::around(&number(text), &number("0.000001")),
        None => Interval::exact(number(text)),
    }
}

fn words(answer: &GradeAnswer) -> String {
    match answer {
        GradeAnswer::Grade(grade) => grade.to_string(),
        GradeAnswer::CannotDecide { lower, higher } => {
            let higher = higher.map_or("none".to_owned(), |grade| grade.to_string());
            format!("{lower} or {higher}")
        }
        GradeAnswer::ByCorner { .. } => "by corner".to_owned(),
        GradeAnswer::AboveAllGrades => "above all".to_owned(),
    }
}

/// Source: grade at least the larger pressure, common practice; steps of 5 psf from memory.
#[test]
fn a_grade_is_at_least_the_larger_pressure() {
    let rows = [
        ("equal to a grade", "10", "-25", "PG25"),
        ("a little more", "10", "-25.000001", "PG30"),
        ("a little less", "10", "-24.999999", "PG25"),
        ("inwards decides", "25.1", "-20", "PG30"),
        ("very small", "1", "-1", "PG15"),
        ("at the lowest grade", "15", "-1", "PG15"),
        ("above the lowest grade", "15.01", "-1", "PG20"),
        ("the highest grade", "200", "-1", "PG200"),
        ("above all grades", "200.01", "-1", "above all"),
        ("cannot be told from a grade", "~25", "-1", "PG25 or PG30"),
        ("the same outwards", "1", "~-25", "PG25 or PG30"),
        ("the other side settles it", "~25", "-26", "PG30"),
        ("near but told apart", "~24.99", "-1", "PG25"),
        ("the upper end is the grade", "~24.999999", "-1", "PG25"),
        ("the lower end is the grade", "~25.000001", "-1", "PG25 or PG30"),
        (
            "cannot be told from the highest grade",
            "~200",
            "-1",
            "PG200 or none",
        ),
    ];
    for (name, inward, outward, expected) in rows {
        let found = given(interval(inward), interval(outward));
        for near_corner in [Some(true), Some(false), None] {
            assert_eq!(words(&grade_to_look_for(&found, near_corner)), expected, "{name}");
        }
    }
}

/// Source: ASCE 7, walls in zone 5 near a corner and zone 4 elsewhere, as quoted. The pressures are invented.
#[test]
fn the_corner_pressure_counts_only_near_a_corner() {
    let found = NetPressures {
        inward: interval("12"),
        outward: interval("-14"),
        outward_near_corner: interval("-22"),
        assumptions: vec![],
    };
    assert_eq!(needed_pressure(&found, true), interval("22"));
    assert_eq!(needed_pressure(&found, false), interval("14"));
}

proptest! {
    /// No grade below the one found is enough, and it is itself.
    #[test]
    fn the_grade_found_is_the_least_that_is_enough(inward in 1_i64..200_000, outward in 1_i64..200_000) {
        let thousandths = |value: i64| Number::ratio(value, 1000).unwrap();
        let found = given(Interval::exact(thousandths(inward)), Interval::exact(thousandths(-outward)));
        let larger = thousandths(inward.max(outward));
        let GradeAnswer::Grade(least) = grade_to_look_for(&found, None) else {
            return Err(TestCaseError::fail("a grade"));
        };
        prop_assert!(least.pounds_per_square_foot() >= larger);
        if let Ok(below) = Grade::new(&(least.pounds_per_square_foot() - Number::from(5))) {
            prop_assert!(below.pounds_per_square_foot() < larger);
        }
    }
}
