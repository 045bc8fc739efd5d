//! Tables about structure and wind. The window is invented.

use astragal_exact::Number;
use astragal_trade::Truth;
use astragal_trade::interval::Interval;
use astragal_trade::metric::pascals;
use astragal_trade::structure::{
    AIR_BASIS, AIR_TEST_BASIS, AIR_TEST_METHOD, Class, Exposure, ExposureReading, Grade, GradeAnswer, Market,
    NetPressures, Product, Size, WindAnswer, WindSite, WindStandard, air_leakage_compares, air_leakage_most,
    air_leakage_most_litres_printed, grade_to_look_for, net_pressures, size_is_qualified, structural_test,
    water_minimum_earlier, water_minimum_printed, water_test,
};

use crate::{Row, row, seen};

pub(crate) fn classes() -> Vec<Row> {
    Class::ALL
        .map(|class| {
            let printed = class.least_grade_pascals_printed();
            row([
                class.id(),
                &class.least_grade().to_string(),
                &format!("{printed} Pa"),
            ])
        })
        .to_vec()
}

pub(crate) fn grades() -> Vec<Row> {
    let rows = [15, 20, 25, 30, 35, 40, 50, 60, 80, 100];
    rows.map(|psf: i64| {
        let grade = Grade::new(&Number::from(psf)).unwrap();
        let pressure = grade.pounds_per_square_foot();
        let water = |class: Class, market: Market, minimum: &Number| {
            water_test(class, grade, market, minimum).map_or("-".to_owned(), |found| found.to_fixed(2))
        };
        let printed = water_minimum_printed();
        row([
            &grade.to_string(),
            &structural_test(&pressure, Product::WindowOrDoor)
                .unwrap()
                .to_string(),
            &water(Class::R, Market::UnitedStates, &printed),
            &water(Class::R, Market::UnitedStates, &water_minimum_earlier()),
            &water(Class::R, Market::Canada, &printed),
            &water(Class::AW, Market::UnitedStates, &printed),
            &pascals(&pressure).to_fixed(0),
        ])
    })
    .to_vec()
}

/// The most that may leak, whether the test is at the higher pressure, and with which classes the figure compares.
pub(crate) fn air() -> Vec<Row> {
    Class::ALL
        .map(|class| {
            let pressure = if class.is_air_tested_higher() {
                "higher; the number is not encoded"
            } else {
                "the usual one; the number is not encoded"
            };
            let all = Class::ALL.into_iter();
            let others: Vec<&str> = all
                .filter(|other| *other != class && air_leakage_compares(class, *other))
                .map(Class::id)
                .collect();
            let others = if others.is_empty() {
                "none".to_owned()
            } else {
                others.join(", ")
            };
            row([class.id(), pressure, &others])
        })
        .to_vec()
}

#[test]
fn what_the_page_says_of_leakage_is_what_the_crate_has() {
    assert_eq!(air_leakage_most().to_string(), "0.3");
    assert_eq!(air_leakage_most_litres_printed().to_string(), "1.5");
    let statuses = [AIR_BASIS, AIR_TEST_BASIS].map(|basis| seen(basis.status));
    assert_eq!((AIR_TEST_METHOD, statuses), ("ASTM E283", ["quoted", "quoted"]));
}

fn site(speed: i64, exposure: Exposure) -> WindSite {
    WindSite {
        standard: WindStandard::Asce7In2016,
        reading: ExposureReading::Printed,
        speed: Some(Number::from(speed)),
        exposure: Some(exposure),
        roof_height: Some(Number::from(360)),
        roof_slope: None,
        topographic_factor: Some(Number::ONE),
    }
}

fn pressures(site: &WindSite, square_feet: i64) -> NetPressures {
    let area = Number::from(square_feet * 144);
    match net_pressures(site, &area).unwrap() {
        WindAnswer::Pressures(found) => found,
        other => panic!("{other:?}"),
    }
}

/// One decimal, where both ends of the interval round to it.
fn one_decimal(pressure: &Interval) -> String {
    let (low, high) = (pressure.low().to_fixed(1), pressure.high().to_fixed(1));
    assert_eq!(low, high, "an interval that a decimal does not tell");
    if low.starts_with('-') {
        low
    } else {
        format!("+{low}")
    }
}

pub(crate) fn wind() -> Vec<Row> {
    let speeds = [110, 115, 120, 130, 140, 150];
    speeds
        .map(|speed| {
            let mut cells = vec![format!("{speed} mph")];
            cells.extend([10, 20, 50, 100].map(|square_feet| {
                let found = pressures(&site(speed, Exposure::B), square_feet);
                let three = [&found.inward, &found.outward, &found.outward_near_corner];
                three.map(one_decimal).join(" ")
            }));
            cells
        })
        .to_vec()
}

fn grade(answer: &GradeAnswer) -> String {
    match answer {
        GradeAnswer::Grade(grade) => grade.to_string(),
        GradeAnswer::ByCorner {
            near_corner, away, ..
        } => {
            format!("{} near a corner, {} elsewhere", grade(near_corner), grade(away))
        }
        other => panic!("{other:?}"),
    }
}

/// A window of 36 x 60 in at 130 mph, 30 ft.
pub(crate) fn wind_grades() -> Vec<Row> {
    Exposure::ALL
        .map(|exposure| {
            let found = pressures(&site(130, exposure), 15);
            let needed = &found.outward_near_corner;
            row([
                exposure.id(),
                &one_decimal(&found.inward),
                &one_decimal(&found.outward),
                &one_decimal(needed),
                &format!("{} to {}", needed.low(), needed.high()),
                &grade(&grade_to_look_for(&found, Some(true))),
                &grade(&grade_to_look_for(&found, None)),
            ])
        })
        .to_vec()
}

pub(crate) fn tested_size() -> Vec<Row> {
    let size = |width: &str, height: &str| Size {
        width: crate::inches(width),
        height: crate::inches(height),
    };
    let tested = size("36", "60");
    let rows = [
        ("36", "60", Some(false)),
        ("36 1/8", "48", Some(false)),
        ("30", "60 1/8", Some(false)),
        ("30", "48", Some(true)),
        ("30", "48", None),
    ];
    rows.map(|(width, height, mulled)| {
        let answer = size_is_qualified(&size(width, height), Some(&tested), mulled).unwrap();
        let joined = match mulled {
            Some(true) => "joined to others",
            Some(false) => "alone",
            None => "not known",
        };
        let said = match answer {
            Truth::Yes => "within".to_owned(),
            Truth::No => "not qualified".to_owned(),
            Truth::Unknown(missing) => {
                let facts: Vec<String> = missing.iter().map(ToString::to_string).collect();
                format!("cannot be decided; missing: {}", facts.join(", "))
            }
        };
        row([&format!("{width} x {height} in"), joined, &said])
    })
    .to_vec()
}
